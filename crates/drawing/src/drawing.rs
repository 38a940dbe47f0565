//! A whole drawing: a sheet of known size with items on it.

use crate::item::Item;
use latchwright_geometry::Rect;

/// A sheet in millimetres, x to the right, y up, with what is drawn on it.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawing {
    /// The sheet.
    pub bounds: Rect,
    /// What is on it, in the order in which it is painted.
    pub items: Vec<Item>,
}

impl Drawing {
    /// An empty sheet.
    pub fn new(bounds: Rect) -> Self {
        Self {
            bounds,
            items: Vec::new(),
        }
    }
}
