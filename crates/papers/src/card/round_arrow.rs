//! An arrow round a knob, heavy enough for a small drawing.

use core::f64::consts::TAU;

use latchwright_drawing::Outline;
use latchwright_geometry::Point;

/// Shares of the radius: half the shaft's width, half the head's width and its length.
const SHAFT: f64 = 0.065;
const HEAD: f64 = 0.17;
const LENGTH: f64 = 0.36;
/// The head takes at most this share of a short arrow.
const MOST_HEAD: f64 = 0.7;
/// Left free before the pointer that the arrow leads to, radians.
const CLEAR: f64 = 0.09;
/// Less than this is no turn, radians.
const NOTHING: f64 = 1e-6;

/// The point `radius` from `middle`, `angle` radians clockwise from the top.
pub(super) fn on_circle(middle: Point, radius: f64, angle: f64) -> Point {
    middle + Point::at_angle(TAU / 4.0 - angle) * radius
}

/// An arrow round `middle` that begins at the top and goes on by `angle` radians, clockwise positive;
/// nothing where it does not turn.
pub(super) fn round_arrow(middle: Point, radius: f64, angle: f64) -> Option<Outline> {
    if angle.abs() < NOTHING {
        return None;
    }
    let clockwise = angle > 0.0;
    let way = if clockwise { 1.0 } else { -1.0 };
    let tip = angle.abs() - CLEAR.min(angle.abs() * 0.2);
    let neck = tip - LENGTH.min(tip * MOST_HEAD);
    let on = |turned: f64, share: f64| on_circle(middle, radius * (1.0 + share), turned * way);
    Some(
        Outline::from(on(0.0, SHAFT))
            .arc_to(on(neck, SHAFT), middle, clockwise)
            .line_to(on(neck, HEAD))
            .line_to(on(tip, 0.0))
            .line_to(on(neck, -HEAD))
            .line_to(on(neck, -SHAFT))
            .arc_to(on(0.0, -SHAFT), middle, !clockwise)
            .closed(),
    )
}
