//! Where a pin is stopped: a mark on the point that touches, a hatch on what blocks, and words.

use latchwright_geometry::{Point, trig};
use latchwright_proof::StopsAt;

use crate::hatch::hatch;
use crate::item::{Item, Layer, Subject};
use crate::outline::Outline;
use crate::shape::{Anchor, Text};
use crate::style::Ink;
use crate::text::text_width;
use latchwright_geometry::Rect;

/// What stops the slider, as it is drawn and said.
#[derive(Debug, Clone, PartialEq)]
pub struct ContactMark {
    /// The dial (from 0) whose disc stops its pin.
    pub dial: usize,
    /// Where they touch, from the dial's centre in plan axes, mm.
    pub at: Point,
    /// What the pin touches.
    pub stops_at: StopsAt,
    /// What is said about it, for example "2.0 mm, then no further"; may be empty.
    pub label: String,
}

/// Radius of the ring round the point and of the dot on it, mm.
const RING: f64 = 4.6;
const DOT: f64 = 0.7;
/// Radius within which the disc is hatched, mm.
const HATCHED: f64 = 6.5;
/// Sizes of type, mm.
const HEADLINE: f64 = 4.4;
const LINE: f64 = 3.8;
/// Paper round the words, mm.
const MARGIN: f64 = 2.0;

/// What the pin touches, in the maker's words.
pub(crate) fn name(stops_at: StopsAt) -> &'static str {
    match stops_at {
        StopsAt::Free => "nothing in its way",
        StopsAt::Rim => "plain rim",
        StopsAt::Mouth => "mouth corner",
        StopsAt::Wall => "slot wall",
        StopsAt::Floor => "floor of a blind slot",
    }
}

/// The hatch on the touched part of the disc; to be drawn over the disc and under its outline.
pub(crate) fn blocked_hatch(disc: &[Outline], at: Point) -> Item {
    let near = [Outline::circle(at, HATCHED)];
    let lines = hatch(&[disc, &near], 1.3, 45.0);
    Item::strokes(Layer::Contact, Ink::BlocksHatch, lines)
}

/// The mark on the point `at` and the flag with its words, placed clear of `obstacles` and inside
/// `sheet` where there is such a place.
pub(crate) fn contact_items(
    mark: &ContactMark,
    at: Point,
    sheet: Rect,
    obstacles: &[Rect],
) -> Vec<Item> {
    let arm = |x: f64, y: f64| {
        let way = Point::new(x, y);
        [Outline::line(at + way * RING, at + way * (RING * 1.45))]
    };
    let cross: Vec<Outline> = [
        (0.707, 0.707),
        (-0.707, 0.707),
        (-0.707, -0.707),
        (0.707, -0.707),
    ]
    .into_iter()
    .flat_map(|(x, y)| arm(x, y))
    .collect();
    let mut items = flag(mark, at, sheet, obstacles);
    let ring = Item::circle(Layer::Contact, None, Some(Ink::Blocks), at, RING);
    items.push(ring.picked_as(Subject::Contact(mark.dial)));
    items.push(Item::strokes(Layer::Contact, Ink::Blocks, cross));
    items.push(Item::circle(
        Layer::Contact,
        Some(Ink::Blocks),
        None,
        at,
        DOT,
    ));
    items
}

/// The words on a slip of paper with a leader to the point.
fn flag(mark: &ContactMark, at: Point, sheet: Rect, obstacles: &[Rect]) -> Vec<Item> {
    let headline = name(mark.stops_at);
    let two_lines = !mark.label.is_empty();
    let width = text_width(headline, HEADLINE * 1.06).max(text_width(&mark.label, LINE));
    let height = if two_lines {
        HEADLINE + LINE + 1.6
    } else {
        HEADLINE
    };
    let slip = place(
        at,
        width + 2.0 * MARGIN,
        height + 1.6 * MARGIN,
        sheet,
        obstacles,
    );
    let left = slip.min.x + MARGIN;
    let first = slip.max.y - 0.8 * MARGIN - HEADLINE / 2.0;
    let leader = Outline::line(rim(at, slip.centre()), nearest(slip, at));
    let slip_corners = slip.corners().map(|corner| (corner, 1.2));
    let mut items = vec![
        Item::stroke(Layer::Contact, Ink::BlocksHatch, leader),
        Item::area(
            Layer::Contact,
            Ink::Paper,
            Some(Ink::BlocksHatch),
            Outline::rounded(&slip_corners),
        ),
        Item::text(
            Layer::Contact,
            Ink::Blocks,
            Text::new(Point::new(left, first), headline, HEADLINE)
                .anchored(Anchor::Start)
                .bold(),
        ),
    ];
    if two_lines {
        let second = slip.min.y + 0.8 * MARGIN + LINE / 2.0;
        let words = Text::new(Point::new(left, second), mark.label.as_str(), LINE);
        items.push(Item::text(
            Layer::Contact,
            Ink::Blocks,
            words.anchored(Anchor::Start),
        ));
    }
    items
}

/// The point of the ring about `at` that faces `towards`.
fn rim(at: Point, towards: Point) -> Point {
    let way = towards - at;
    let length = way.length();
    if length < RING {
        at
    } else {
        at + way * (RING / length)
    }
}

/// The point of the rectangle nearest to `at`.
fn nearest(slip: Rect, at: Point) -> Point {
    Point::new(
        at.x.clamp(slip.min.x, slip.max.x),
        at.y.clamp(slip.min.y, slip.max.y),
    )
}

/// Ways from the point to a slip, degrees against the clock from the right. Lower right first: there the eye goes on
/// reading.
const ASLANT: [f64; 10] = [
    -35.0, -55.0, -145.0, -125.0, -15.0, -165.0, 25.0, 155.0, 60.0, 120.0,
];
/// Straight up or down the leader runs through the pin and the label beside it.
const STRAIGHT: [f64; 2] = [-90.0, 90.0];
/// How far a slip is from the point, mm; only where there is no room near is it put further off.
const NEAR: [f64; 4] = [11.0, 13.0, 18.0, 25.0];
const FAR: [f64; 3] = [34.0, 45.0, 60.0];

/// A free place for a slip of the given size: the nearest of rings of places round the point.
fn place(at: Point, width: f64, height: f64, sheet: Rect, obstacles: &[Rect]) -> Rect {
    let fits = |slip: &Rect| {
        sheet.holds(*slip)
            && !obstacles
                .iter()
                .any(|obstacle| obstacle.overlaps(slip.grown(1.0)))
    };
    let slip = |distance: f64, turn: f64| {
        let way = Point::at_angle(trig::radians(turn));
        // So far out that the slip's near corner or edge is `distance` away.
        let corner = at + way * distance;
        let half = Point::new(width / 2.0 * way.x.signum(), height / 2.0 * way.y.signum());
        let half = if way.x.abs() < 0.1 {
            Point::new(0.0, half.y)
        } else {
            half
        };
        Rect::about(corner + half, width, height)
    };
    let places = |distances: &'static [f64], turns: &'static [f64]| {
        let round = |distance: &f64| turns.iter().map(|turn| slip(*distance, *turn)).find(fits);
        distances.iter().find_map(round)
    };
    places(&NEAR, &ASLANT)
        .or_else(|| places(&NEAR, &STRAIGHT))
        .or_else(|| places(&FAR, &ASLANT))
        .or_else(|| places(&FAR, &STRAIGHT))
        .unwrap_or_else(|| slip(11.0, -35.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_slip_keeps_clear_of_what_is_there() {
        let sheet = Rect::about(Point::default(), 200.0, 140.0);
        let taken = [Rect::new(Point::new(0.0, -40.0), Point::new(60.0, 10.0))];
        let slip = place(Point::default(), 50.0, 12.0, sheet, &taken);
        assert!(sheet.holds(slip));
        assert!(!slip.overlaps(taken[0]));
    }

    #[test]
    fn the_leader_is_aslant_wherever_there_is_room_near() {
        let sheet = Rect::about(Point::default(), 200.0, 140.0);
        // neighbours on both sides, free only below their level
        let side = |x: f64| Rect::new(Point::new(x - 20.0, -14.0), Point::new(x + 20.0, 60.0));
        let taken = [side(-40.0), side(40.0), side(0.0)];
        let slip = place(Point::default(), 50.0, 12.0, sheet, &taken);
        assert!(!slip.overlaps(taken[1]));
        assert!(slip.min.x > 1.0 || slip.max.x < -1.0, "{slip:?}");
    }

    #[test]
    fn a_sheet_without_room_still_gets_its_words() {
        let mark = ContactMark {
            dial: 0,
            at: Point::default(),
            stops_at: StopsAt::Rim,
            label: "2.0 mm, then no further".to_owned(),
        };
        let sheet = Rect::about(Point::default(), 5.0, 5.0);
        let items = contact_items(&mark, Point::default(), sheet, &[sheet]);
        let words = items
            .iter()
            .filter(|item| matches!(item.shape, crate::Shape::Text(_)))
            .count();
        assert_eq!(words, 2);
    }
}
