//! What a change costs a maker, and what it leads to.

use core::cmp::Ordering;

use super::way::Moves;
use latchwright_model::Design;
use latchwright_model::change::{Change, Size, Step};
use latchwright_proof::results::Proof;

/// A change, with what it costs a maker.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Price {
    /// How it was come by.
    pub moves: Moves,
    /// What is changed.
    pub change: Change,
    /// Sizes that it moves; alike ones of several dials, moved alike, count once.
    pub sizes: usize,
    /// How far all sizes move together.
    pub movement: f64,
}

/// A change with what it leads to.
#[derive(Debug, Clone)]
pub(super) struct Trial {
    pub price: Price,
    /// Of the changed design; dials that only hold together do not count in it.
    pub proof: Proof,
}

impl Price {
    /// Of what these moves change; `None` where one of them cannot be gone.
    pub fn of(moves: Moves, design: &Design) -> Option<Self> {
        let change = moves.change(design)?;
        Some(Self {
            sizes: sizes(&change),
            movement: movement(&change),
            moves,
            change,
        })
    }

    /// Fewest sizes, then least movement.
    pub fn order(&self, other: &Self) -> Ordering {
        let few = self.sizes.cmp(&other.sizes);
        few.then(self.movement.total_cmp(&other.movement))
    }
}

fn sizes(change: &Change) -> usize {
    let mut seen: Vec<(&Size, f64)> = Vec::new();
    let mut others = 0;
    for step in &change.steps {
        let Step::Resize { size, from, to } = step else {
            others += 1;
            continue;
        };
        let by = to - from;
        let again = |(other, moved): &(&Size, f64)| other.alike(*size) && (moved - by).abs() < 1e-6;
        // a digit follows the positions
        if !matches!(size, Size::Digit(_)) && !seen.iter().any(again) {
            seen.push((size, by));
        }
    }
    seen.len() + others
}

/// How far all sizes of a change move together, mm; a mark or a slot that is left out counts as one.
pub(super) fn movement(change: &Change) -> f64 {
    let steps = change.steps.iter().map(|step| match step {
        Step::Resize {
            size: Size::Digit(_),
            ..
        } => 0.0,
        Step::Resize { from, to, .. } => (to - from).abs(),
        Step::LeaveOutSlot { .. }
        | Step::PlateSawn(_)
        | Step::PlateGrain(_)
        | Step::SliderMaterial(_) => 1.0,
    });
    steps.sum()
}
