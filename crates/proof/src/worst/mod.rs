//! The exact worst case: for a figure of the latch a bound that no real box breaks, and beside it
//! the worst real box found.

pub mod figure;
pub mod jet;
pub mod judge;
pub mod known;
pub mod least;
pub mod over_year;
pub mod pin_and_disc;
pub mod witness;
mod year;
