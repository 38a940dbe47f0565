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

#[cfg(test)]
mod tests {
    use super::*;

    fn corners(angle: f64) -> Vec<Point> {
        let arrow = round_arrow(Point::new(5.0, 7.0), 10.0, angle).expect("it turns");
        let from_middle = |point: Point| point - Point::new(5.0, 7.0);
        let steps = arrow
            .segments
            .iter()
            .map(|segment| from_middle(segment.to()));
        steps.collect()
    }

    #[test]
    fn a_quarter_clockwise_ends_on_the_right_just_before_the_pointer() {
        let tip = corners(TAU / 4.0)[2];
        assert!((tip.length() - 10.0).abs() < 1e-9);
        assert!(tip.x > 9.8 && tip.y > 0.0 && tip.y < 1.0, "{tip:?}");
    }

    #[test]
    fn the_other_way_is_its_mirror_image() {
        for angle in [0.01, 0.3, 1.0, TAU / 2.0] {
            for (one, other) in corners(angle).into_iter().zip(corners(-angle)) {
                assert!((one.x + other.x).abs() < 1e-9 && (one.y - other.y).abs() < 1e-9);
            }
        }
    }

    #[test]
    fn no_turn_has_no_arrow() {
        assert!(round_arrow(Point::default(), 10.0, 0.0).is_none());
    }
}
