//! Wood: the species with what they swell, the moisture that air gives them, how far a part moves.

mod moisture;
mod movement;
mod woods;

pub use moisture::moisture_content;
pub use movement::{Air, Fibre, Mover, Rates, Swelling, TABLE, swelling};
pub use woods::{Shrinkage, Wood, find_wood, own_wood, wood_names};
