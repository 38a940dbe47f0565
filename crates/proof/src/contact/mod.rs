//! One pin against one disc, nothing off: how far the pin gets.

mod reach;

pub use reach::{PinPath, reach};
