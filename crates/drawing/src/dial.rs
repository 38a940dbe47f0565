//! One dial as it is seen on the lid: knob, pointer, marks and labels.

use latchwright_geometry::Point;
use latchwright_model::{Design, Dial};

use crate::drawing::Drawing;
use crate::item::{Item, Layer, Subject};
use crate::marks::{LabelSize, direction, knob_radius, mark_at, marks, marks_radius};
use crate::outline::Outline;
use crate::shape::Shape;
use crate::style::Ink;
use latchwright_geometry::Rect;
use latchwright_model::shown;
use latchwright_model::sound::within;

/// Grip lines round a knob.
const KNURLS: u32 = 72;
/// Half the width of the pointer at the hub, mm.
const POINTER_HALF: f64 = 0.9;

/// Dial `dial` (from 0) alone, seen from outside, about its own centre: knob with its pointer
/// `turn_deg` degrees clockwise from mark 0, marks and labels. An empty sheet where there is no
/// such dial.
pub fn dial_face(design: &Design, dial: usize, turn_deg: f64) -> Drawing {
    let design = shown(design);
    let Some(one) = design.dials.get(dial) else {
        return Drawing::new(Rect::about(Point::default(), 20.0, 20.0));
    };
    let side = 2.0 * (marks_radius(one.knob.diameter) + 2.0);
    let sheet = Rect::about(Point::default(), side, side);
    let turn = within(turn_deg);
    let mut drawing = Drawing::new(sheet);
    drawing.items.extend(marks(
        one,
        Point::default(),
        mark_at(one, turn),
        sheet,
        None,
        LabelSize::Usual,
    ));
    drawing
        .items
        .extend(knob(one, dial, Point::default(), Some(turn), 1.0));
    drawing.bounds = extent(&drawing.items).map_or(sheet, |needed| sheet.union(needed.grown(1.0)));
    drawing
}

/// The least rectangle around all items.
pub(crate) fn extent(items: &[Item]) -> Option<Rect> {
    items
        .iter()
        .map(|item| item.shape.extent())
        .reduce(Rect::union)
}

/// The knob of `dial` (the `index`-th, from 0) at `centre`; without a pointer where `turn_deg` is
/// `None`. The thinner the `veil` (1 to 0), the more of what lies below shows through.
pub(crate) fn knob(
    dial: &Dial,
    index: usize,
    centre: Point,
    turn_deg: Option<f64>,
    veil: f64,
) -> Vec<Item> {
    let radius = knob_radius(dial.knob.diameter);
    let hub = (dial.bore.diameter / 2.0).clamp(radius * 0.3, radius * 0.6);
    let circle = |fill, line, radius| Item::circle(Layer::Above, fill, line, centre, radius);
    let mut items = vec![
        circle(Some(Ink::Part), None, radius)
            .faded(veil)
            .picked_as(Subject::Dial(index)),
        circle(None, Some(Ink::Movable), radius).faded(veil),
        knurls(centre, radius, turn_deg.unwrap_or(0.0)).faded(veil),
    ];
    if let Some(turn) = turn_deg {
        let way = direction(turn);
        let notch = Outline::line(centre - way * radius, centre - way * (radius * 0.84));
        items.push(pointer(centre, way, hub, radius));
        items.push(Item::stroke(Layer::Above, Ink::Movable, notch).faded(veil));
    }
    items.push(circle(Some(Ink::Part), Some(Ink::Movable), hub));
    items.push(circle(Some(Ink::Outline), None, (hub * 0.16).max(0.3)));
    items
}

/// Short grip lines round the rim, turning with the knob.
fn knurls(centre: Point, radius: f64, turn_deg: f64) -> Item {
    let knurl = |index: u32| {
        let way = direction(turn_deg + f64::from(index) * (360.0 / f64::from(KNURLS)));
        Outline::line(
            centre + way * (radius * 0.93),
            centre + way * (radius * 0.99),
        )
    };
    Item::strokes(Layer::Above, Ink::Faint, (0..KNURLS).map(knurl).collect())
}

/// The pointer: a slim wedge from the hub to the rim.
fn pointer(centre: Point, way: Point, hub: f64, radius: f64) -> Item {
    let side = way.perpendicular() * POINTER_HALF.min(radius * 0.1);
    let (root, tip) = (centre + way * (hub * 0.8), centre + way * (radius - 0.3));
    let wedge = Outline::polygon(&[
        root - side,
        tip - side * 0.35,
        tip + side * 0.35,
        root + side,
    ]);
    Item {
        layer: Layer::Above,
        fill: Some(Ink::Movable),
        line: Some(Ink::Movable),
        opacity: 1.0,
        shape: Shape::path(wedge),
        subject: None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_dial_that_is_not_there_gives_an_empty_sheet() {
        assert!(dial_face(&Design::default(), 9, 0.0).items.is_empty());
    }

    #[test]
    fn everything_on_the_face_lies_on_its_sheet() {
        let face = dial_face(&Design::default(), 0, 45.0);
        assert!(face.items.len() > 8, "a figure at each mark at least");
        for item in &face.items {
            assert!(face.bounds.holds(item.shape.extent()), "{item:?}");
        }
    }
}
