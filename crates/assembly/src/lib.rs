//! The box that is built: one description, from which proof, drawings, papers, parts and steps are all asked.
//!
//! [`whole`] has every part with the joints that hold it, and tells what nothing holds.
//! What it is made of stands beside it, each size once: [`joinery`] the sides, floor, hinges and the keeper's seat;
//! [`slider_body`] the bar, its fingers and the tab; [`guide`] the strips and bridges that lead it; [`finger_knob`]
//! what the hand pulls; [`keeper`] what holds the tab; [`hinge`] the hinges' screws; [`dial`] washer, shaft, post and
//! screw of a dial; [`screw`] the screws; [`holes`] every hole and bored slot. [`bounds`] and [`season`] say how far
//! places and plays may put it all off, which the slider's body must know to keep clear of the discs.
//!
//! Lengths are millimetres, finished unless a name says bare. Frame: that of the design, seen from outside the closed
//! lid, origin in the middle of the plate's front edge, x to the right, y towards the hinge; z up from the plate's
//! underside. The slider is forward (u = 0). Nothing here refuses a design: what has no size is left out and told.

// values in, values out, the same bits everywhere: `clippy.toml` has the list; tests may do as they like
#![cfg_attr(
    not(test),
    warn(
        clippy::disallowed_macros,
        clippy::disallowed_methods,
        clippy::disallowed_types
    )
)]

pub mod bit;
pub mod bounds;
pub mod dial;
pub mod feature;
pub mod finger_knob;
pub mod frame;
pub mod guide;
pub mod hinge;
pub mod holes;
pub mod joinery;
pub mod keeper;
#[cfg(test)]
mod nonsense;
pub mod note;
pub mod row;
pub mod screw;
pub mod season;
pub mod slider_body;
#[cfg(test)]
#[path = "../../../tests/src/thin_latch.rs"]
mod thin_latch;
pub mod whole;

pub use whole::Assembly;
