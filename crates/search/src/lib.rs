//! Proven latches for a lid, and what mends a design that is not proven.
//!
//! [`propose`] goes from what a maker knows (the lid, the bits, how many marks) to designs that are
//! proven; [`remedy`] from a design that is not to the least change after which it is. Both judge by
//! [`latchwright_proof::prove`] and by nothing else.

// values in, values out, the same bits everywhere: `clippy.toml` has the list; tests may do as they like
#![cfg_attr(
    not(test),
    warn(
        clippy::disallowed_macros,
        clippy::disallowed_methods,
        clippy::disallowed_types
    )
)]

pub mod propose;
pub mod remedy;
mod tick;

pub use remedy::Remedy;
pub use tick::{Progress, Tick};
