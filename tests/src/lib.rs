//! What the tests across the crates share: a simulator of built boxes that knows nothing of the
//! solver's sums, designs to try it on, a search for the box that breaks a
//! promise, and the window driven by the names of its controls.

pub mod designs;
pub mod outline;
pub mod planted;
pub mod polygon;
pub mod promise;
pub mod real_box;
pub mod rendered;
pub mod search;
pub mod thin_latch;
pub mod window;
