//! Mirror images of drawings: exact, and their words can still be read.
//!
//! A mirror that is used twice must give back the very same bytes. Plain subtraction rounds, so
//! what is to be mirrored is first put on a grid that binary numbers hold exactly.

use latchwright_geometry::{Point, Rect};

use crate::drawing::Drawing;
use crate::outline::Outline;
use crate::shape::{Anchor, Shape, Text};
use latchwright_model::sound::within;

/// Steps of the grid in one millimetre: about a nanometre apart, and with ten metres far from the
/// end of what a number holds.
const GRID: f64 = 1_048_576.0;

/// `value` on the grid; what is not a number becomes zero, what is beyond ten metres is cut down.
pub(crate) fn on_grid(value: f64) -> f64 {
    (within(value) * GRID).round() / GRID
}

fn point_on_grid(point: Point) -> Point {
    Point::new(on_grid(point.x), on_grid(point.y))
}

/// The same rectangle with its corners on the grid of a nanometre on which mirrors are exact.
pub fn rect_on_grid(rect: Rect) -> Rect {
    Rect {
        min: point_on_grid(rect.min),
        max: point_on_grid(rect.max),
    }
}

impl Outline {
    /// The same line with its points on the grid on which mirrors are exact.
    #[must_use]
    pub fn on_grid(&self) -> Self {
        self.placed(point_on_grid)
    }
}

impl Shape {
    /// The same shape on the grid on which mirrors are exact.
    #[must_use]
    pub fn on_grid(&self) -> Self {
        match self {
            Self::Path { outlines } => Self::Path {
                outlines: outlines.iter().map(Outline::on_grid).collect(),
            },
            Self::Circle { centre, radius } => Self::Circle {
                centre: point_on_grid(*centre),
                radius: on_grid(*radius),
            },
            Self::Text(text) => Self::Text(Text {
                at: point_on_grid(text.at),
                turned_deg: on_grid(text.turned_deg),
                height_mm: on_grid(text.height_mm),
                ..text.clone()
            }),
        }
    }

    /// Its image in the upright line at `axis_x`; words take the mirrored place and stay readable.
    #[must_use]
    pub fn mirrored(&self, axis_x: f64) -> Self {
        let mirror = |point: Point| Point::new(2.0 * axis_x - point.x, point.y);
        match self {
            Self::Path { outlines } => Self::Path {
                outlines: outlines.iter().map(|line| line.mirrored(axis_x)).collect(),
            },
            Self::Circle { centre, radius } => Self::Circle {
                centre: mirror(*centre),
                radius: *radius,
            },
            Self::Text(text) => Self::Text(mirrored_text(text, mirror(text.at))),
        }
    }

    /// The same shape shifted by `by`.
    #[must_use]
    pub fn shifted(&self, by: Point) -> Self {
        match self {
            Self::Path { outlines } => Self::Path {
                outlines: outlines
                    .iter()
                    .map(|line: &Outline| line.placed(|point| point + by))
                    .collect(),
            },
            Self::Circle { centre, radius } => Self::Circle {
                centre: *centre + by,
                radius: *radius,
            },
            Self::Text(text) => Self::Text(Text {
                at: text.at + by,
                ..text.clone()
            }),
        }
    }
}

/// Words that run up or down keep their way; others lean the other way and end where they began.
fn mirrored_text(text: &Text, at: Point) -> Text {
    let upright = text.turned_deg.abs() == 90.0;
    let anchor = match text.anchor {
        same if upright => same,
        Anchor::Start => Anchor::End,
        Anchor::Middle => Anchor::Middle,
        Anchor::End => Anchor::Start,
    };
    let turned_deg = if upright || text.turned_deg == 0.0 {
        text.turned_deg
    } else {
        -text.turned_deg
    };
    Text {
        at,
        anchor,
        turned_deg,
        ..text.clone()
    }
}

impl Drawing {
    /// The same drawing on the grid on which mirrors are exact; nothing moves by a nanometre.
    #[must_use]
    pub fn on_grid(&self) -> Self {
        let mut same = self.clone();
        same.bounds = rect_on_grid(same.bounds);
        for item in &mut same.items {
            item.shape = item.shape.on_grid();
        }
        same
    }

    /// Its image in the upright line at `axis_x`; words stay readable. Twice gives the same drawing
    /// if drawing and axis are on the grid ([`Drawing::on_grid`]).
    #[must_use]
    pub fn mirrored(&self, axis_x: f64) -> Self {
        let mut image = self.clone();
        image.bounds = image.bounds.mirrored(axis_x);
        for item in &mut image.items {
            item.shape = item.shape.mirrored(axis_x);
        }
        image
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::item::{Item, Layer};
    use crate::outline::Segment;
    use crate::style::Ink;

    /// Whether every arc of `line` ends as far from its centre as it began, to within a micrometre.
    fn arcs_are_round(line: &Outline) -> bool {
        let mut at = line.start;
        line.segments.iter().all(|segment| {
            let from = core::mem::replace(&mut at, segment.to());
            match segment {
                Segment::Line { .. } => true,
                Segment::Arc { to, centre, .. } => {
                    (from.distance(*centre) - to.distance(*centre)).abs() < 1e-5
                }
            }
        })
    }

    fn drawing() -> Drawing {
        let mut drawing = Drawing::new(Rect::new(
            Point::new(-0.1, -0.3),
            Point::new(120.7 / 3.0, 80.1),
        ));
        let slot = Outline::stadium(Point::new(0.1, 0.2), Point::new(7.0 / 3.0, 9.9), 1.0 / 3.0);
        let mut words = Text::new(Point::new(1.0 / 7.0, 3.3), "left", 3.0).anchored(Anchor::Start);
        words.turned_deg = 100.0 / 3.0;
        drawing.items = vec![
            Item::stroke(Layer::Wood, Ink::Edge, slot),
            Item::circle(
                Layer::Wood,
                None,
                Some(Ink::Edge),
                Point::new(0.3, 0.4),
                2.2,
            ),
            Item::text(Layer::Notes, Ink::Note, words),
        ];
        drawing.on_grid()
    }

    #[test]
    fn mirrored_twice_is_the_same_drawing() {
        let once = drawing();
        for axis in [0.0, 60.0, on_grid(110.1), on_grid(1.0 / 3.0)] {
            assert_ne!(once.mirrored(axis), once);
            assert_eq!(once.mirrored(axis).mirrored(axis), once);
        }
    }

    #[test]
    fn words_take_the_mirrored_box_and_stay_readable() {
        for turned in [0.0, 30.0, -45.0, 90.0, -90.0] {
            for anchor in [Anchor::Start, Anchor::Middle, Anchor::End] {
                let mut text = Text::new(Point::new(30.0, 20.0), "oak", 4.0).anchored(anchor);
                text.turned_deg = turned;
                let Shape::Text(image) = Shape::Text(text.clone()).mirrored(60.0) else {
                    panic!("words")
                };
                assert_eq!(image.text, "oak");
                let (wanted, found) = (text.extent().mirrored(60.0), image.extent());
                assert!(wanted.min.distance(found.min) < 1e-9, "{turned} {anchor:?}");
                assert!(wanted.max.distance(found.max) < 1e-9, "{turned} {anchor:?}");
            }
        }
    }

    #[test]
    fn the_grid_leaves_arcs_round_and_cuts_nonsense_down() {
        let slot = Outline::stadium(Point::new(0.1, 0.2), Point::new(7.0 / 3.0, 9.9), 1.0 / 3.0);
        assert!(arcs_are_round(&slot.on_grid()));
        assert_eq!(on_grid(f64::NAN), 0.0);
        assert_eq!(on_grid(f64::INFINITY), 5e4);
        assert_eq!(on_grid(-1e300), -5e4);
    }
}
