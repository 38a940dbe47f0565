//! What a check is about.

/// The whole latch, one dial or two. Dials count from 0 here and from 1 in words.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum About {
    /// The latch as a whole.
    Latch,
    /// A dial with its disc, pin and knob.
    Dial(usize),
    /// A dial, and the other one that it comes too near to: of a disc beside a foreign pin the disc's
    /// first.
    Pair(usize, usize),
}

impl About {
    /// The dial, or the first of two.
    pub const fn dial(self) -> Option<usize> {
        match self {
            Self::Latch => None,
            Self::Dial(dial) | Self::Pair(dial, _) => Some(dial),
        }
    }
}
