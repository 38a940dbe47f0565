//! The lid on the screen: the drawing crate's views painted, picked and turned.

mod dial;
mod handle;
mod lid;
mod paint;
mod slider;
mod struck;

pub use handle::Moving;
pub use lid::{lid_ui, twin_ui};
pub use paint::{Frame, paint, picture_ui};
