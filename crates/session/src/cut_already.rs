//! What the maker may have cut, bored or printed already, and what stays as it is for that.

use latchwright_search::remedy::Part;

/// Parts of one kind that may be cut, bored or printed already.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CutAlready {
    /// The plate with its bores.
    Plate,
    /// The slider with tab and pins.
    Slider,
    /// The keeper.
    Keeper,
    /// All discs.
    Discs,
    /// All knobs.
    Knobs,
}

impl CutAlready {
    /// In the order in which they are asked for.
    pub const ALL: [Self; 5] = [
        Self::Plate,
        Self::Slider,
        Self::Keeper,
        Self::Discs,
        Self::Knobs,
    ];

    /// What the maker says of it.
    pub const fn stays(self) -> &'static str {
        match self {
            Self::Plate => "The plate stays as it is",
            Self::Slider => "The slider stays as it is",
            Self::Keeper => "The keeper stays as it is",
            Self::Discs => "The discs stay as they are",
            Self::Knobs => "The knobs stay as they are",
        }
    }

    /// The parts it stands for, on a latch of so many dials.
    pub fn parts(self, dials: usize) -> Vec<Part> {
        match self {
            Self::Plate => vec![Part::Plate],
            Self::Slider => vec![Part::Slider],
            Self::Keeper => vec![Part::Keeper],
            Self::Discs => (0..dials).map(Part::Disc).collect(),
            Self::Knobs => (0..dials).map(Part::Knob).collect(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn all_discs_are_as_many_as_there_are_dials() {
        assert_eq!(CutAlready::Discs.parts(2), [Part::Disc(0), Part::Disc(1)]);
        assert_eq!(CutAlready::Keeper.parts(2), [Part::Keeper]);
        assert!(CutAlready::Knobs.parts(0).is_empty());
    }
}
