//! Small pictures for the steps of opening and shutting, each 24 × 24 mm.

use latchwright_geometry::{Point, trig};

use crate::dimension::arrow_head;
use crate::drawing::Drawing;
use crate::item::{Item, Layer};
use crate::marks::direction;
use crate::outline::Outline;
use crate::style::Ink;
use latchwright_geometry::Rect;

/// One thing that the recipient does.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pictogram {
    /// Turn a dial.
    Turn {
        /// Which way round, seen from outside.
        clockwise: bool,
    },
    /// Point a dial at the hinge, from either side.
    PointAtHinge,
    /// Slide the finger knob back, towards the hinge.
    SlideBack,
    /// Lift the lid.
    LiftLid,
    /// Lower the lid.
    LowerLid,
    /// Slide the finger knob forward again.
    SlideForward,
    /// Turn the dials off their setting, either way.
    TurnAway,
}

/// Side of a picture, mm.
const SIDE: f64 = 24.0;
/// Length of an arrow head, mm.
const HEAD: f64 = 2.8;
/// Radius of the arrows round a knob, mm.
const ROUND: f64 = 9.6;

impl Pictogram {
    /// Every step, in the order in which a box is opened and shut.
    pub const ALL: [Self; 8] = [
        Self::PointAtHinge,
        Self::Turn { clockwise: true },
        Self::Turn { clockwise: false },
        Self::SlideBack,
        Self::LiftLid,
        Self::LowerLid,
        Self::SlideForward,
        Self::TurnAway,
    ];
}

/// A picture of `step`, 24 × 24 mm about the origin.
pub fn pictogram(step: Pictogram) -> Drawing {
    let items = match step {
        Pictogram::Turn { clockwise: true } => turning(-80.0, &[(-80.0, 80.0)]),
        Pictogram::Turn { clockwise: false } => turning(80.0, &[(80.0, -80.0)]),
        Pictogram::PointAtHinge => pointing_at_hinge(),
        Pictogram::TurnAway => turning(0.0, &[(18.0, 110.0), (-18.0, -110.0)]),
        Pictogram::SlideBack => sliding(-4.2, 1.0),
        Pictogram::SlideForward => sliding(4.2, -1.0),
        Pictogram::LiftLid => lid(true),
        Pictogram::LowerLid => lid(false),
    };
    Drawing {
        bounds: Rect::about(Point::default(), SIDE, SIDE),
        items,
    }
}

fn movable(outlines: Vec<Outline>) -> Item {
    Item::strokes(Layer::Above, Ink::Movable, outlines)
}

/// A knob that points at the hinge above it, and arrows that bring it there from both sides.
fn pointing_at_hinge() -> Vec<Item> {
    let mut items = turning(0.0, &[(-112.0, -20.0), (112.0, 20.0)]);
    items.extend(hinge(Point::new(0.0, 10.6), 15.0, 1.9));
    items
}

/// A hinge from above, its pin along x: three knuckles of `height` mm, together `width` mm wide.
pub fn hinge(middle: Point, width: f64, height: f64) -> [Item; 3] {
    [-1.0, 0.0, 1.0].map(|place| {
        let knuckle = Point::new(middle.x + place * width / 3.0, middle.y);
        let corners = Rect::about(knuckle, width / 3.0, height)
            .corners()
            .map(|corner| (corner, height * 0.3));
        Item::area(
            Layer::Above,
            Ink::Part,
            Some(Ink::Outline),
            Outline::rounded(&corners),
        )
    })
}

/// A knob with its pointer, and arrows round it from one angle to another (degrees clockwise from
/// the top).
fn turning(pointer: f64, arrows: &[(f64, f64)]) -> Vec<Item> {
    // With the arrow over it, a knob in the middle would look too high.
    let centre = Point::new(0.0, -1.5);
    let way = direction(pointer);
    let mut items = vec![
        Item::circle(
            Layer::Above,
            Some(Ink::Part),
            Some(Ink::Outline),
            centre,
            6.6,
        ),
        Item::stroke(
            Layer::Above,
            Ink::Outline,
            Outline::line(centre + way, centre + way * 6.2),
        ),
        Item::circle(Layer::Above, Some(Ink::Outline), None, centre, 0.9),
    ];
    for &(from, to) in arrows {
        items.push(movable(round_arrow(centre, ROUND, from, to)));
    }
    items
}

/// An arrow round `centre`, angles in degrees clockwise from the top.
fn round_arrow(centre: Point, radius: f64, from: f64, to: f64) -> Vec<Outline> {
    let clockwise = to > from;
    let (start, tip) = (
        centre + direction(from) * radius,
        centre + direction(to) * radius,
    );
    let arc = Outline::from(start).arc_to(tip, centre, clockwise);
    // The head lies along the chord over its own length, so that it sits well on the bend.
    let lag = trig::degrees(HEAD / radius) / 2.0;
    let back = if clockwise {
        to - lag - 90.0
    } else {
        to + lag + 90.0
    };
    vec![arc, arrow_head(tip, direction(back), HEAD)]
}

/// The lid from outside with its finger knob at `knob` mm above the middle, and an arrow that goes
/// on from it, up (1) or down (−1).
fn sliding(knob: f64, way: f64) -> Vec<Item> {
    let corners = Rect::about(Point::new(0.0, -0.6), 19.0, 19.8)
        .corners()
        .map(|corner| (corner, 1.6));
    let at = Point::new(0.0, knob);
    let up = Point::new(0.0, way);
    let slot = Outline::stadium(Point::new(0.0, -4.2), Point::new(0.0, 4.2), 1.5);
    let (from, tip) = (at + up * 4.4, at + up * 12.2);
    let mut items = vec![
        Item::area(
            Layer::Wood,
            Ink::Wood,
            Some(Ink::Outline),
            Outline::rounded(&corners),
        ),
        Item::area(Layer::Marks, Ink::DeepWood, Some(Ink::Thin), slot),
        Item::circle(Layer::Above, Some(Ink::Part), Some(Ink::Outline), at, 3.2),
    ];
    items.extend(hinge(Point::new(0.0, 10.2), 11.0, 1.8));
    items.push(movable(vec![
        Outline::line(from, tip),
        arrow_head(tip, -up, HEAD),
    ]));
    items
}

/// The box from the side with its lid up, and an arrow that lifts or lowers it.
fn lid(up: bool) -> Vec<Item> {
    let hinge = Point::new(8.6, -1.2);
    let open = trig::radians(-38.0);
    let leaf = Rect::new(Point::new(-17.6, 0.0), Point::new(0.0, 2.2));
    let lid = Outline::polygon(&leaf.corners().map(|corner| hinge + corner.rotated(open)));
    let case = Rect::new(Point::new(-9.0, -10.4), Point::new(9.0, -1.4));
    // Round the hinge, from where the lid's edge lies shut to where it stands open.
    let (low, high) = (-88.0, -60.0);
    let (from, to) = if up { (low, high) } else { (high, low) };
    vec![
        Item::area(
            Layer::Wood,
            Ink::Wood,
            Some(Ink::Outline),
            Outline::rectangle(case),
        ),
        Item::area(Layer::Wood, Ink::DeepWood, Some(Ink::Outline), lid),
        Item::circle(Layer::Above, Some(Ink::Outline), None, hinge, 0.9),
        movable(round_arrow(hinge, 18.4, from, to)),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_picture_stays_on_its_sheet() {
        for step in Pictogram::ALL {
            let picture = pictogram(step);
            assert_eq!(picture.bounds.width(), 24.0);
            assert!(!picture.items.is_empty(), "{step:?}");
            for item in &picture.items {
                assert!(
                    picture.bounds.holds(item.shape.extent()),
                    "{step:?}: {item:?}"
                );
            }
        }
    }

    #[test]
    fn the_two_ways_of_turning_are_mirror_images() {
        let end = |clockwise| {
            let picture = pictogram(Pictogram::Turn { clockwise });
            let crate::Shape::Path { outlines } = &picture.items[3].shape else {
                panic!("arrow")
            };
            outlines[0].end()
        };
        let (right, left) = (end(true), end(false));
        assert!(right.x > 9.0, "clockwise over the top ends on the right");
        assert!((right.x + left.x).abs() < 1e-9 && (right.y - left.y).abs() < 1e-9);
    }
}
