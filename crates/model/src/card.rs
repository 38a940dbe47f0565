//! The card that goes with the gift: whose it is and what it says.

/// What the recipient is handed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Card {
    /// The language of the fixed text.
    pub language: Language,
    /// Whether it tells in words or in pictures.
    pub style: CardStyle,
    /// Sheet.
    pub paper: CardPaper,
    /// Name of the recipient, in any script; may be empty.
    pub recipient: String,
    /// Age in years of the youngest who will live with the box: it decides what small parts and
    /// rooms that latch are asked.
    pub youngest: u32,
    /// The maker's own words of greeting; may be empty.
    pub greeting: String,
    /// The maker's name under the greeting; may be empty.
    pub from: String,
    /// Whether the combination stands on the card.
    pub show_combination: bool,
}

/// The language of a card's fixed text.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Language {
    /// English.
    #[default]
    English,
    /// German.
    German,
    /// French.
    French,
    /// Spanish.
    Spanish,
    /// Japanese.
    Japanese,
}

impl Language {
    /// Every language a card can speak.
    pub const ALL: [Self; 5] = [
        Self::English,
        Self::German,
        Self::French,
        Self::Spanish,
        Self::Japanese,
    ];

    /// What the language calls itself.
    pub const fn name(self) -> &'static str {
        match self {
            Self::English => "English",
            Self::German => "Deutsch",
            Self::French => "Français",
            Self::Spanish => "Español",
            Self::Japanese => "日本語",
        }
    }
}

/// How a card tells its steps.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum CardStyle {
    /// In sentences, with small drawings.
    #[default]
    Words,
    /// In large pictures, for a child or whoever reads no language of ours; only the cautions for
    /// grown-ups are in words.
    Pictures,
}

impl CardStyle {
    /// Every style.
    pub const ALL: [Self; 2] = [Self::Words, Self::Pictures];

    /// What the maker is shown, in English.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Words => "In words",
            Self::Pictures => "In pictures, for a child",
        }
    }
}

/// The sheet a card is made for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum CardPaper {
    /// 105 × 148 mm.
    #[default]
    A6,
    /// 148 × 210 mm.
    A5,
    /// One A4 sheet, 297 × 210 mm, folded once to A5.
    FoldedA4,
}

impl Default for Card {
    fn default() -> Self {
        Self {
            language: Language::English,
            style: CardStyle::Words,
            paper: CardPaper::A6,
            recipient: String::new(),
            youngest: 14,
            greeting: String::new(),
            from: String::new(),
            show_combination: true,
        }
    }
}
