//! The lid on the screen: the drawing crate's views painted, picked and turned.

mod dial;
mod lid;
mod paint;
mod slider;

pub use lid::lid_ui;
pub use paint::{Frame, paint, picture_ui};
