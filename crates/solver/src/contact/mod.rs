//! One pin against one disc, nothing off: where the slots are and how far the pin gets.

mod reach;
mod slot;

pub use reach::{PinPath, reach};
pub use slot::{MAX_SLOTS, Mouth, SlotShape, mouth_half_angle, mouth_half_width, mouths};
