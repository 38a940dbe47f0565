//! What is wrong with a design as typed: each fault with place, figures and remedy.

use core::fmt;

/// How bad it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// No proof can be given while it stands.
    Error,
    /// Worth a look; the proof stands without it.
    Notice,
}

/// The part a fault is about. Dials and slots count from 0 here and from 1 in words.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Place {
    /// The design as a whole.
    Design,
    /// The plate.
    Plate,
    /// The slider.
    Slider,
    /// The tab.
    Tab,
    /// The keeper.
    Keeper,
    /// The room under the lid.
    Inside,
    /// The sides and floor of the box.
    Body,
    /// A dial.
    Dial(usize),
    /// A slot of a dial's disc.
    Slot(usize, usize),
    /// The combination.
    Combination,
    /// Workmanship.
    Workmanship,
    /// Season.
    Season,
    /// What the maker has.
    Bench,
    /// The card.
    Card,
}

/// One fault: what, where, by how much and what to do.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// How bad.
    pub severity: Severity,
    /// Stable name, for example `slot-too-wide`.
    pub code: &'static str,
    /// Which part.
    pub place: Place,
    /// One sentence with the figures, without a trailing stop.
    pub message: String,
    /// What to do, without a trailing stop.
    pub remedy: String,
}

impl Fault {
    /// The dial this fault is about, if it is about one.
    pub fn dial(&self) -> Option<usize> {
        match self.place {
            Place::Dial(dial) | Place::Slot(dial, _) => Some(dial),
            _ => None,
        }
    }
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Design => f.write_str("design"),
            Self::Plate => f.write_str("plate"),
            Self::Slider => f.write_str("slider"),
            Self::Tab => f.write_str("tab"),
            Self::Keeper => f.write_str("keeper"),
            Self::Inside => f.write_str("inside"),
            Self::Body => f.write_str("body"),
            Self::Dial(dial) => write!(f, "dial {}", dial + 1),
            Self::Slot(dial, slot) => write!(f, "dial {}, slot {}", dial + 1, slot + 1),
            Self::Combination => f.write_str("combination"),
            Self::Workmanship => f.write_str("workmanship"),
            Self::Season => f.write_str("season"),
            Self::Bench => f.write_str("bench"),
            Self::Card => f.write_str("card"),
        }
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}; {}", self.place, self.message, self.remedy)
    }
}
