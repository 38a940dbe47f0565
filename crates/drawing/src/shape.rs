//! What an item looks like: lines, circles and words.

use latchwright_geometry::{Point, trig};

use crate::outline::Outline;
use crate::text::text_width;
use latchwright_geometry::Rect;

/// The geometry of one item, in millimetres.
#[derive(Debug, Clone, PartialEq)]
pub enum Shape {
    /// One or more lines; where they are filled, a part inside an even number of closed outlines
    /// is a hole.
    Path {
        /// The lines.
        outlines: Vec<Outline>,
    },
    /// A full circle.
    Circle {
        /// Its middle.
        centre: Point,
        /// Its radius, mm.
        radius: f64,
    },
    /// Words on one line.
    Text(Text),
}

/// Words on one line.
#[derive(Debug, Clone, PartialEq)]
pub struct Text {
    /// Where the anchor stands, at the middle of the height of a capital letter.
    pub at: Point,
    /// The words.
    pub text: String,
    /// Size of the type (em), mm; a capital letter is [`Text::CAPITAL`] of it high.
    pub height_mm: f64,
    /// Which part of the line stands at `at`.
    pub anchor: Anchor,
    /// Turned counter-clockwise about `at`, degrees.
    pub turned_deg: f64,
    /// Regular or bold.
    pub weight: Weight,
}

/// Which part of a line of text stands at its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Anchor {
    /// Its beginning.
    Start,
    /// Its middle.
    #[default]
    Middle,
    /// Its end.
    End,
}

/// The weight of type.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Weight {
    /// The weight of running text.
    #[default]
    Regular,
    /// Heavier.
    Bold,
}

impl Text {
    /// Height of a capital letter as a share of the size of the type.
    pub const CAPITAL: f64 = 0.714;

    /// Upright regular words in the middle of `at`.
    pub fn new(at: Point, text: impl Into<String>, height_mm: f64) -> Self {
        Self {
            at,
            text: text.into(),
            height_mm,
            anchor: Anchor::Middle,
            turned_deg: 0.0,
            weight: Weight::Regular,
        }
    }

    /// The same words anchored otherwise.
    #[must_use]
    pub fn anchored(mut self, anchor: Anchor) -> Self {
        self.anchor = anchor;
        self
    }

    /// The same words in bold.
    #[must_use]
    pub fn bold(mut self) -> Self {
        self.weight = Weight::Bold;
        self
    }

    /// The least upright rectangle around them, by estimate, descenders included.
    pub fn extent(&self) -> Rect {
        let none = Rect {
            min: self.at,
            max: self.at,
        };
        Rect::around(self.corners()).unwrap_or(none)
    }

    /// The corners of the box they take up, by estimate, counter-clockwise from the lower left as
    /// they are read.
    pub fn corners(&self) -> [Point; 4] {
        let width = text_width(&self.text, self.height_mm);
        let left = match self.anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => -width / 2.0,
            Anchor::End => -width,
        };
        let half = self.height_mm * Self::CAPITAL / 2.0;
        let hangs = self.text.chars().any(|c| "gjpqy,;()".contains(c));
        let below = if hangs { 0.22 * self.height_mm } else { 0.0 };
        let flat = Rect {
            min: Point::new(left, -half - below),
            max: Point::new(left + width, half),
        };
        let turn = trig::radians(self.turned_deg);
        flat.corners().map(|corner| self.at + corner.rotated(turn))
    }

    /// Whether the boxes of two lines of words have an area in common, however they are turned.
    pub fn overlaps(&self, other: &Self) -> bool {
        let (own, others) = (self.corners(), other.corners());
        let sides = |turned_deg: f64| {
            let along = Point::at_angle(trig::radians(turned_deg));
            [along, along.perpendicular()]
        };
        // Two boxes are apart if they are so along a side of either.
        let mut axes = sides(self.turned_deg)
            .into_iter()
            .chain(sides(other.turned_deg));
        !axes.any(|axis| {
            let (a, b) = (shadow(&own, axis), shadow(&others, axis));
            a.1 <= b.0 || b.1 <= a.0
        })
    }
}

/// From where to where the points reach along `axis`.
fn shadow(points: &[Point], axis: Point) -> (f64, f64) {
    let along = points.iter().map(|point| point.dot(axis));
    along.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| {
        (low.min(at), high.max(at))
    })
}

impl Shape {
    /// One line.
    pub fn path(outline: Outline) -> Self {
        Self::Path {
            outlines: vec![outline],
        }
    }

    /// The least rectangle around it; text by estimate.
    pub fn extent(&self) -> Rect {
        match self {
            Self::Path { outlines } => outlines
                .iter()
                .map(Outline::extent)
                .reduce(Rect::union)
                .unwrap_or(Rect {
                    min: Point::default(),
                    max: Point::default(),
                }),
            Self::Circle { centre, radius } => Rect::about(*centre, 2.0 * radius, 2.0 * radius),
            Self::Text(text) => text.extent(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn turned_words_overlap_only_where_their_boxes_do() {
        let flat = Text::new(Point::default(), "walnut", 4.0);
        let mut turned = Text::new(Point::new(11.0, 6.0), "walnut", 4.0);
        turned.turned_deg = -45.0;
        assert!(flat.extent().overlaps(turned.extent()));
        assert!(!flat.overlaps(&turned));
        turned.at = Point::new(7.0, 2.0);
        assert!(flat.overlaps(&turned));
    }

    #[test]
    fn the_anchor_says_which_end_stands_at_the_place() {
        let at = Point::new(3.0, 0.0);
        let start = Text::new(at, "pin", 4.0).anchored(Anchor::Start).extent();
        let end = Text::new(at, "pin", 4.0).anchored(Anchor::End).extent();
        assert_eq!((start.min.x, end.max.x), (3.0, 3.0));
    }
}
