//! What the air does: moisture of wood, movement of plate and slider, and the drift between them.
//!
//! Wood across the grain swells and shrinks, along the grain hardly. What reaches the lock is how
//! far a place on the plate and a place on the slider move apart: over the same distance, the same
//! wood cut the same way moves alike and nothing drifts.

mod drift;
mod year;

pub use drift::{Drift, Strains, moistures};
pub use year::{DialDrift, Year, YearPoint, year};
