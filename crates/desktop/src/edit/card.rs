//! What a hand changes of the card.

use latchwright_model::{Card, CardPaper, CardStyle, Language};

/// One thing that stands on the card, or how it stands there.
#[derive(Debug, Clone, PartialEq)]
pub enum CardEdit {
    /// Whose the box is.
    Recipient(String),
    /// Age of the youngest who will live with it, years.
    Youngest(u32),
    /// The maker's own words.
    Greeting(String),
    /// Who gives it.
    From(String),
    /// Which language it speaks.
    Language(Language),
    /// In words or in pictures.
    Style(CardStyle),
    /// The sheet it is printed on.
    Paper(CardPaper),
    /// Whether the combination stands on it.
    ShowCombination(bool),
}

impl CardEdit {
    /// What the history calls it.
    pub const fn label(&self) -> &'static str {
        match self {
            Self::Recipient(_) => "recipient",
            Self::Youngest(_) => "age of the youngest",
            Self::Greeting(_) => "greeting",
            Self::From(_) => "maker's name",
            Self::Language(_) => "language of the card",
            Self::Style(_) => "style of the card",
            Self::Paper(_) => "sheet of the card",
            Self::ShowCombination(_) => "combination on the card",
        }
    }

    pub(super) fn make(self, card: &mut Card) {
        match self {
            Self::Recipient(name) => card.recipient = name,
            Self::Youngest(years) => card.youngest = years,
            Self::Greeting(text) => card.greeting = text,
            Self::From(name) => card.from = name,
            Self::Language(language) => card.language = language,
            Self::Style(style) => card.style = style,
            Self::Paper(paper) => card.paper = paper,
            Self::ShowCombination(shown) => card.show_combination = shown,
        }
    }
}
