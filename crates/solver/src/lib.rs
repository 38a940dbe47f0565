//! The latch as plain values, and the proof of it.
//!
//! [`prove`] takes a [`model::Design`] and gives a [`Proof`]: for each dial and mark a
//! [`Verdict`] that holds over every box the maker could build within the stated workmanship and
//! season, exact counts of settings, the checks and the lock-state table. The model and the meaning
//! of the words are in `DEVELOPERS.md`.
//!
//! Promises of this crate:
//! - a verdict is never more than a real box keeps: *passes* and *holds* are proofs, *unsure* is
//!   the honest rest;
//! - no file, clock or thread, and no chance but what a seed gives: values in, values out, the same
//!   bits everywhere;
//! - no panic: a design with faults still gets an answer, with the faults listed and nothing
//!   promised where they touch it.

pub mod bounds;
pub mod builds;
pub mod built;
pub mod change;
pub mod check;
pub mod combination;
pub mod contact;
pub mod count;
pub mod fault;
pub mod hunt;
pub mod key;
pub mod model;
pub mod motion;
pub mod pose;
pub mod proof;
pub mod propose;
mod prove;
pub mod ranked;
pub mod remedy;
pub mod season;
pub mod settings;
pub mod slider_body;
pub mod states;
pub mod strength;
pub mod together;
pub mod tolerance;
pub mod typed;
pub mod validate;
pub mod verdict;
pub mod worst;

pub use change::{Change, Size, Step};
pub use count::Counts;
pub use fault::{Fault, Place, Severity};
pub use motion::{Stop, slide};
pub use pose::Pose;
pub use proof::{
    Check, CheckVerdict, DialProof, MarkProof, Proof, Reach, StopsAt, SureStop, Unit, Verdict,
};
pub use prove::{prove, prove_mark, verdicts};
pub use ranked::Ranked;
pub use remedy::Remedy;
pub use settings::{Setting, Settings};
pub use together::Together;
