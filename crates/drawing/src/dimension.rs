//! Dimension lines: two ends, a line beside them, and the length between.

use latchwright_geometry::Point;
use latchwright_model::Units;
use latchwright_model::unit::MM_PER_INCH;

use crate::item::{Item, Layer};
use crate::number::number;
use crate::outline::Outline;
use crate::shape::Text;
use crate::style::Ink;

/// Length of the arrow heads, mm.
const HEAD: f64 = 1.8;
/// Size of type, mm.
const TYPE: f64 = 3.4;

/// A length in the maker's unit: `12.5 mm`, or `1.375 in` to the nearest thousandth.
pub(crate) fn length(mm: f64, units: Units) -> String {
    match units {
        Units::Millimetre => format!("{} mm", number((mm * 100.0).round() / 100.0)),
        Units::Inch => format!(
            "{} in",
            number((mm / MM_PER_INCH * 1000.0).round() / 1000.0)
        ),
    }
}

/// A dimension between `a` and `b`, its line shifted by `aside` from them.
///
/// The words stand in the middle of the line, on the side of the shift; they read from below or
/// from the right. Nothing is drawn for two points that fall together.
pub(crate) fn dimension(a: Point, b: Point, aside: Point, words: String) -> Vec<Item> {
    let along = b - a;
    let span = along.length();
    if span < 1e-6 {
        return Vec::new();
    }
    let way = along * (1.0 / span);
    let (from, to) = (a + aside, b + aside);
    let beyond = aside * (1.0 + 1.2 / aside.length().max(1e-6));
    let near = aside * (1.0 / aside.length().max(1e-6));
    let mut lines = vec![
        Outline::line(a + near, a + beyond),
        Outline::line(b + near, b + beyond),
        Outline::line(from, to),
    ];
    let head = HEAD.min(span / 3.0);
    lines.extend([arrow_head(from, way, head), arrow_head(to, -way, head)]);
    let mut text = Text::new((from + to) * 0.5 + near * (TYPE * 0.85), words, TYPE);
    if way.y.abs() > way.x.abs() {
        text.turned_deg = 90.0;
    }
    vec![
        Item::strokes(Layer::Notes, Ink::Faint, lines),
        Item::text(Layer::Notes, Ink::Note, text),
    ]
}

/// An open arrow head at `tip`, its barbs lying along `way`.
pub(crate) fn arrow_head(tip: Point, way: Point, length: f64) -> Outline {
    let side = way.perpendicular() * (length * 0.3);
    let back = tip + way * length;
    Outline::polyline(&[back + side, tip, back - side])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_speak_the_makers_unit() {
        assert_eq!(length(220.0, Units::Millimetre), "220 mm");
        assert_eq!(length(12.345, Units::Millimetre), "12.35 mm");
        assert_eq!(length(34.925, Units::Inch), "1.375 in");
    }

    #[test]
    fn two_points_that_fall_together_have_no_dimension() {
        let at = Point::new(3.0, 3.0);
        assert!(dimension(at, at, Point::new(0.0, 5.0), String::new()).is_empty());
    }
}
