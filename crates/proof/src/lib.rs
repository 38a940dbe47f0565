//! What can be promised of a latch, over every box that could be built from it.
//!
//! [`prove`] takes a [`latchwright_model::Design`] and gives a [`Proof`]: for each dial and mark a
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

// values in, values out, the same bits everywhere: `clippy.toml` has the list; tests may do as they like
#![cfg_attr(
    not(test),
    warn(
        clippy::disallowed_macros,
        clippy::disallowed_methods,
        clippy::disallowed_types
    )
)]

pub mod bounds;
pub mod builds;
pub mod built;
pub mod check;
pub mod contact;
pub mod count;
pub mod dial_judge;
pub mod hunt;
pub mod motion;
mod prove;
pub mod ranked;
pub mod results;
pub mod season;
pub mod settings;
pub mod slider_body;
pub mod states;
pub mod strength;
pub mod together;
pub mod tolerance;
pub mod verdict;
pub mod worst;

pub use check::CheckKind;
pub use count::Counts;
pub use motion::{Stop, slide};
pub use prove::{prove, prove_each_alone, prove_mark, unsure_dials, verdicts};
pub use ranked::Ranked;
pub use results::{Check, Proof};
pub use settings::{Setting, Settings};
pub use together::Together;
pub use verdict::{CheckVerdict, DialProof, MarkProof, Reach, StopsAt, SureStop, Verdict};
