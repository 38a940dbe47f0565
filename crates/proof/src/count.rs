//! Exact counts of settings, from the verdicts of the dials alone.

use latchwright_model::Design;
use latchwright_model::validate::{MAX_DIALS, MAX_POSITIONS};

use crate::together::HeldTogether;
use crate::verdict::{DialProof, Verdict};

/// How many settings open, lock or are unsure; together they are `total`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Counts {
    /// All settings there are.
    pub total: u128,
    /// All dials pass.
    pub opens: u128,
    /// At least one dial holds.
    pub locks: u128,
    /// Neither can be promised.
    pub unsure: u128,
}

impl Counts {
    /// These counts with dials that hold together counted as holding.
    #[must_use]
    pub fn with(mut self, together: &HeldTogether) -> Self {
        let held = together.settings().min(self.unsure);
        self.locks += held;
        self.unsure -= held;
        self
    }
}

/// How many settings a design has, whatever they do: the product of its dials' marks; 0 without dials.
pub fn settings_on_paper(design: &Design) -> u128 {
    let dials = design.dials.iter().take(MAX_DIALS);
    let marks = dials.map(|dial| u128::from(dial.positions.min(MAX_POSITIONS)));
    marks.reduce(u128::saturating_mul).unwrap_or(0)
}

/// Counts the settings of these dials.
///
/// Twelve dials of 360 marks are 360^12 ≈ 4.7·10^30 settings, well inside `u128`; anything that
/// would not fit saturates, and a design with that many dials is at fault anyway.
pub fn count(dials: &[DialProof]) -> Counts {
    let product = |part: fn(&DialProof) -> usize| {
        dials
            .iter()
            .fold(1_u128, |sum, dial| sum.saturating_mul(part(dial) as u128))
    };
    if dials.is_empty() {
        return Counts::default();
    }
    let number = |dial: &DialProof, verdict| {
        dial.marks
            .iter()
            .filter(|mark| mark.verdict == verdict)
            .count()
    };
    let total = product(|dial| dial.marks.len());
    let opens = dials.iter().fold(1_u128, |sum, dial| {
        sum.saturating_mul(number(dial, Verdict::Passes) as u128)
    });
    let held_by_none = dials.iter().fold(1_u128, |sum, dial| {
        sum.saturating_mul((dial.marks.len() - number(dial, Verdict::Holds)) as u128)
    });
    Counts {
        total,
        opens,
        locks: total - held_by_none,
        unsure: held_by_none - opens,
    }
}
