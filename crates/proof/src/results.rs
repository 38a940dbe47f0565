//! What the solver answers: verdicts, figures and checks, as plain values.

use crate::check::{About, Advice, CheckKind, Contributor};
use crate::count::Counts;
use crate::states::LockStates;
use crate::together::HeldTogether;
use crate::verdict::{CheckVerdict, DialProof};
use crate::worst::witness::Witness;
use latchwright_model::Unit;
use latchwright_model::fault::Fault;

/// One named check, with its figure and what decides it.
#[derive(Debug, Clone, PartialEq)]
pub struct Check {
    /// What is checked.
    pub kind: CheckKind,
    /// What it is about.
    pub about: About,
    /// The worst-case figure.
    pub value: f64,
    /// What the figure must at least be.
    pub limit: f64,
    /// `value − limit`: negative when the check is not met.
    pub margin: f64,
    /// Unit of the three figures.
    pub unit: Unit,
    /// Outcome.
    pub verdict: CheckVerdict,
    /// What eats the figure, largest first, each with its amount in `unit`.
    pub decided_by: Vec<(Contributor, f64)>,
    /// What to do about it; why nothing, where it passes.
    pub advice: Advice,
    /// The worst real box found, where the figure is a worst case over all boxes.
    pub worst: Option<Witness>,
}

impl Check {
    /// Whether there is something to do or to know beyond the figures, even where it passes.
    pub const fn advises(&self) -> bool {
        self.advice.advises()
    }

    /// The dial it is about, from 0; `None` for the whole latch.
    pub const fn dial(&self) -> Option<usize> {
        self.about.dial()
    }
}

/// The whole answer for one design.
#[derive(Debug, Clone, PartialEq)]
pub struct Proof {
    /// What is wrong with the design as typed.
    pub faults: Vec<Fault>,
    /// One entry a dial.
    pub dials: Vec<DialProof>,
    /// Dials that hold together where none of them does alone.
    pub together: HeldTogether,
    /// How many settings open, lock or are unsure.
    pub settings: Counts,
    /// Checks, worst margin first within each verdict; what fails comes first.
    pub checks: Vec<Check>,
    /// The lock-state table, computed.
    pub states: LockStates,
    /// Exactly one setting opens, all others lock, every check passes, nothing is wrong.
    pub proven: bool,
}

impl Proof {
    /// The design has an error, so that building it makes no sense.
    pub fn blocks_building(&self) -> bool {
        self.faults.iter().any(Fault::is_error)
    }
}
