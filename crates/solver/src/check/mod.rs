//! The checks on the whole design: each with figure, limit, margin, what decides it and a remedy.
//!
//! One file a kind of check; each takes the [`Sums`] of the design and gives its checks. To add
//! one, write its file and call it in [`all`].

mod guide;
mod key;
mod settings;
mod spacing;
mod travel;
mod window;
mod workmanship;

use core::cmp::Ordering;

use crate::bounds::{DialBounds, SliderBounds};
use crate::model::{Design, Dial};
use crate::proof::{Check, CheckVerdict, DialProof, Unit};
use crate::season::Drift;

pub use guide::closes_at;
pub use travel::{captive_margin, free_margin, rest_hold_margin};
pub use window::told_apart;
pub use workmanship::most_positions;

/// What every check may look at.
pub struct Sums<'a> {
    /// The design.
    pub design: &'a Design,
    /// What the slider can do out of line.
    pub slider: SliderBounds,
    /// The year.
    pub drift: &'a Drift,
    /// The sums of each dial looked at.
    pub dials: Vec<DialBounds>,
    /// The verdicts of each dial looked at.
    pub proofs: &'a [DialProof],
}

impl Sums<'_> {
    /// Dials with their number and sums.
    pub fn each(&self) -> impl Iterator<Item = (usize, &Dial, &DialBounds)> + Clone {
        self.design
            .dials
            .iter()
            .zip(&self.dials)
            .enumerate()
            .map(|(index, (dial, bounds))| (index, dial, bounds))
    }
}

/// All checks: what fails first, then what is unsure, then what passes, each by margin.
pub fn all(sums: &Sums<'_>) -> Vec<Check> {
    let mut checks = travel::checks(sums);
    checks.push(guide::check(sums));
    checks.extend(spacing::checks(sums));
    checks.extend(key::checks(sums));
    checks.extend(settings::checks(sums));
    checks.extend(window::checks(sums));
    checks.extend(workmanship::check(sums));
    // stable: equal margins keep the order in which they were made
    checks.sort_by(|one, other| {
        let by_unit = (one.unit != Unit::Millimetre).cmp(&(other.unit != Unit::Millimetre));
        one.verdict.cmp(&other.verdict).then(by_unit).then(
            one.margin
                .partial_cmp(&other.margin)
                .unwrap_or(Ordering::Equal),
        )
    });
    checks
}

/// A check in millimetres whose figure is a worst case: it passes, or it cannot be promised and
/// fails.
fn worst_case(
    name: &'static str,
    dial: Option<usize>,
    title: String,
    (value, limit): (f64, f64),
    decided_by: Vec<(&'static str, f64)>,
    remedy: impl FnOnce(f64) -> String,
) -> Check {
    let margin = value - limit;
    Check {
        name,
        dial,
        title,
        value,
        limit,
        margin,
        unit: Unit::Millimetre,
        verdict: if margin >= 0.0 {
            CheckVerdict::Passes
        } else {
            CheckVerdict::Fails
        },
        decided_by: largest_first(decided_by),
        remedy: if margin >= 0.0 {
            format!("nothing to do: {margin:.2} mm to spare")
        } else {
            remedy(-margin)
        },
    }
}

/// Contributors that count for something, largest first.
fn largest_first(mut parts: Vec<(&'static str, f64)>) -> Vec<(&'static str, f64)> {
    parts.retain(|(_, amount)| amount.abs() > 5e-4);
    parts.sort_by(|one, other| other.1.abs().total_cmp(&one.1.abs()));
    parts
}
