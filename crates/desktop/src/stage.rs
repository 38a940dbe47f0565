//! The stages of the work, each with one panel beside the lid.

/// A stage.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Stage {
    /// Sizes, and what the maker has.
    LayOut,
    /// Turning and sliding as the recipient will.
    #[default]
    Try,
    /// What can be promised.
    Prove,
    /// Papers and parts.
    Make,
    /// Combination and card.
    Give,
}

impl Stage {
    /// In the order of the work.
    pub const ALL: [Self; 5] = [Self::LayOut, Self::Try, Self::Prove, Self::Make, Self::Give];

    /// What the rail calls it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::LayOut => "Lay out",
            Self::Try => "Try",
            Self::Prove => "Prove",
            Self::Make => "Make",
            Self::Give => "Give",
        }
    }

    /// What it is for, in two or three words.
    pub const fn about(self) -> &'static str {
        match self {
            Self::LayOut => "sizes and stock",
            Self::Try => "turn and slide",
            Self::Prove => "does it hold?",
            Self::Make => "papers and parts",
            Self::Give => "combination, card",
        }
    }
}
