//! The lid on the screen: the drawing crate's views painted, picked and turned.

mod dial;
mod handle;
mod lid;
mod paint;
mod reason;
mod slider;
mod struck;

pub use handle::Moving;
pub use lid::{Placed, lid_hand_ui, lid_head_ui, lid_ui, twin_ui};
pub use paint::{Frame, paint, picture_ui};
pub use reason::Reason;
