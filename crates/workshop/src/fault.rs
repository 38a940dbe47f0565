//! What is wrong with the parts of a box, in the words of this crate and the maker's unit.

use latchwright_model::{Place, Severity};

/// One fault: what, where, by how much and what to do.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// How bad.
    pub severity: Severity,
    /// Stable name, for example `groove-too-deep`.
    pub code: &'static str,
    /// Which part.
    pub place: Place,
    /// One sentence with the figures, without a trailing stop.
    pub message: String,
    /// What to do, without a trailing stop.
    pub remedy: String,
}
