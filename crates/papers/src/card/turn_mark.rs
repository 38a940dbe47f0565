//! How one dial is turned, drawn: an arrow from the mark nearest the hinge to where it ends.

use core::f64::consts::TAU;

use latchwright_drawing::{Drawing, Ink, Item, Layer, Outline, Palette, Rect, svg as write_svg};
use latchwright_geometry::Point;

use super::round_arrow::on_circle;
use super::text::DialTurn;

/// Side of the square sheet, mm.
const SIDE: f64 = 16.0;
/// The knob, mm.
const KNOB: f64 = 4.4;
/// Ticks from here to the tips below, mm.
const TICK: f64 = 4.9;
/// The path of the arrow, mm.
const PATH: f64 = 6.6;
/// Length of the arrow's head, mm.
const HEAD: f64 = 1.7;
/// More ticks than this run together at the size of print.
const MOST_TICKS: u32 = 24;

/// The point `radius` from the middle, `angle` radians clockwise from the top.
fn on(angle: f64, radius: f64) -> Point {
    on_circle(Point::default(), radius, angle)
}

/// The drawing as SVG, with the top towards the hinge.
pub(super) fn svg(turn: &DialTurn) -> String {
    let mut drawing = Drawing::new(Rect::about(Point::default(), SIDE, SIDE));
    ticks(&mut drawing, turn.positions);
    let knob = Item::circle(
        Layer::Above,
        Some(Ink::Part),
        Some(Ink::Outline),
        Point::default(),
        KNOB,
    );
    let end = turn.angle();
    let pointer = Outline::line(on(end, KNOB * 0.15), on(end, KNOB));
    drawing
        .items
        .extend([knob, Item::stroke(Layer::Above, Ink::Movable, pointer)]);
    if turn.marks > 0 {
        arrow(&mut drawing, turn.clockwise, end);
    }
    write_svg(&drawing, &Palette::LIGHT)
}

fn ticks(drawing: &mut Drawing, positions: u32) {
    let shown = if positions > MOST_TICKS { 4 } else { positions };
    for tick in 0..shown {
        let at = f64::from(tick) / f64::from(shown) * TAU;
        let tip = if tick == 0 { TICK + 0.9 } else { TICK + 0.5 };
        let line = Outline::line(on(at, TICK), on(at, tip));
        drawing
            .items
            .push(Item::stroke(Layer::Marks, Ink::Faint, line));
    }
}

fn arrow(drawing: &mut Drawing, clockwise: bool, end: f64) {
    // The shaft ends inside the head, so that the tip stays sharp.
    let back = HEAD / PATH * if clockwise { 1.0 } else { -1.0 };
    let neck = end - back * 0.6;
    let shaft = Outline::from(on(0.0, PATH)).arc_to(on(neck, PATH), Point::default(), clockwise);
    let root = end - back;
    let head = [
        on(end, PATH),
        on(root, PATH + HEAD * 0.45),
        on(root, PATH - HEAD * 0.45),
    ];
    drawing
        .items
        .push(Item::stroke(Layer::Notes, Ink::Movable, shaft));
    drawing.items.push(Item::area(
        Layer::Notes,
        Ink::Movable,
        None,
        Outline::polygon(&head),
    ));
}
