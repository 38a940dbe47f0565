//! The card that goes with the gift: whose it is and what it says.

/// What the recipient is handed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Card {
    /// The language of the fixed text.
    pub language: Language,
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
            paper: CardPaper::A6,
            recipient: String::new(),
            youngest: 14,
            greeting: String::new(),
            from: String::new(),
            show_combination: true,
        }
    }
}
