//! Small line pictures for dials, in one simple style: an even line on a square of 24 units.

use latchwright_geometry::Point;

use crate::outline::Outline;

/// Names of the pictures that can be drawn, in alphabetical order.
pub const PICTURES: [&str; 12] = [
    "anchor", "apple", "bell", "bird", "boat", "fish", "key", "leaf", "moon", "star", "sun", "tree",
];

/// Side of the square in which pictures are laid out, units.
const GRID: f64 = 24.0;
/// Chords for one stretch of a smooth line.
const CHORDS: u32 = 6;

/// One stroke of a picture, on the grid, y up.
enum Piece {
    /// A line through the points.
    Line(&'static [(f64, f64)]),
    /// A closed line through the points.
    Polygon(&'static [(f64, f64)]),
    /// A smooth line through the points.
    Smooth(&'static [(f64, f64)]),
    /// A smooth closed line through the points.
    Loop(&'static [(f64, f64)]),
    /// A circle by its middle and radius.
    Ring(f64, f64, f64),
}

use Piece::{Line, Loop, Polygon, Ring, Smooth};

const ANCHOR: &[Piece] = &[
    Ring(12.0, 20.5, 2.2),
    Line(&[(12.0, 18.3), (12.0, 1.8)]),
    Line(&[(7.0, 15.0), (17.0, 15.0)]),
    Smooth(&[
        (3.0, 9.5),
        (5.5, 4.5),
        (12.0, 1.8),
        (18.5, 4.5),
        (21.0, 9.5),
    ]),
    Line(&[(1.0, 7.0), (3.0, 9.8), (6.2, 8.3)]),
    Line(&[(23.0, 7.0), (21.0, 9.8), (17.8, 8.3)]),
];
const APPLE: &[Piece] = &[
    Loop(&[
        (12.0, 16.2),
        (16.0, 17.6),
        (20.0, 15.5),
        (20.6, 10.0),
        (16.6, 3.0),
        (12.0, 3.4),
        (7.4, 3.0),
        (3.4, 10.0),
        (4.0, 15.5),
        (8.0, 17.6),
    ]),
    Smooth(&[(12.0, 16.2), (12.2, 19.0), (13.6, 21.5)]),
    Loop(&[(13.2, 20.0), (16.0, 22.4), (19.4, 22.2), (17.0, 19.8)]),
];
const BELL: &[Piece] = &[
    Smooth(&[
        (3.4, 6.0),
        (6.0, 8.6),
        (6.8, 13.6),
        (9.0, 17.8),
        (12.0, 18.8),
    ]),
    Smooth(&[
        (12.0, 18.8),
        (15.0, 17.8),
        (17.2, 13.6),
        (18.0, 8.6),
        (20.6, 6.0),
    ]),
    Line(&[(3.4, 6.0), (20.6, 6.0)]),
    Ring(12.0, 20.6, 1.8),
    Smooth(&[
        (9.4, 6.0),
        (10.2, 3.4),
        (12.0, 2.6),
        (13.8, 3.4),
        (14.6, 6.0),
    ]),
];
const BIRD: &[Piece] = &[
    Smooth(&[
        (20.2, 16.8),
        (18.6, 19.2),
        (15.6, 19.2),
        (13.0, 16.4),
        (9.0, 13.6),
        (1.6, 12.6),
    ]),
    Smooth(&[
        (1.6, 12.6),
        (5.6, 8.4),
        (11.0, 5.6),
        (16.4, 6.8),
        (19.8, 11.0),
        (20.4, 14.6),
    ]),
    Line(&[(20.2, 16.8), (23.2, 15.4), (20.4, 14.6)]),
    Ring(17.2, 16.6, 0.55),
    Smooth(&[(7.0, 11.8), (10.2, 8.8), (14.2, 9.4), (16.0, 12.4)]),
    Line(&[(11.4, 5.6), (10.6, 1.8), (13.0, 1.8)]),
    Line(&[(14.4, 5.9), (14.0, 1.8), (16.4, 1.8)]),
];
const BOAT: &[Piece] = &[
    Polygon(&[(2.0, 7.6), (22.0, 7.6), (18.4, 2.6), (6.0, 2.6)]),
    Line(&[(12.0, 7.6), (12.0, 22.6)]),
    Polygon(&[(13.6, 21.6), (13.6, 10.0), (20.8, 10.0)]),
    Polygon(&[(10.4, 18.4), (10.4, 10.0), (4.6, 10.0)]),
];
const FISH: &[Piece] = &[
    Smooth(&[
        (1.6, 12.0),
        (5.0, 16.0),
        (10.4, 17.4),
        (16.0, 14.0),
        (22.4, 6.6),
    ]),
    Smooth(&[
        (1.6, 12.0),
        (5.0, 8.0),
        (10.4, 6.6),
        (16.0, 10.0),
        (22.4, 17.4),
    ]),
    Smooth(&[(22.4, 6.6), (20.6, 12.0), (22.4, 17.4)]),
    Ring(5.8, 13.0, 0.6),
    Smooth(&[(9.4, 9.2), (10.6, 12.0), (9.4, 14.8)]),
];
const KEY: &[Piece] = &[
    Ring(7.4, 16.6, 5.2),
    Ring(6.2, 17.8, 1.4),
    Line(&[(11.1, 12.9), (21.4, 2.6), (23.6, 4.8)]),
    Line(&[(18.4, 5.6), (20.4, 7.6)]),
];
const LEAF: &[Piece] = &[
    Smooth(&[(4.6, 4.6), (4.2, 12.6), (10.0, 19.4), (21.0, 21.0)]),
    Smooth(&[(4.6, 4.6), (12.6, 4.2), (19.4, 10.0), (21.0, 21.0)]),
    Line(&[(1.8, 1.8), (16.0, 16.0)]),
    Line(&[(8.4, 8.4), (8.2, 13.0)]),
    Line(&[(8.4, 8.4), (13.0, 8.2)]),
    Line(&[(12.4, 12.4), (12.4, 16.8)]),
    Line(&[(12.4, 12.4), (16.8, 12.4)]),
];
const MOON: &[Piece] = &[
    Smooth(&[
        (17.4, 20.6),
        (11.8, 22.0),
        (5.6, 19.0),
        (3.0, 12.0),
        (5.6, 5.0),
        (11.8, 2.0),
        (17.4, 3.4),
    ]),
    Smooth(&[
        (17.4, 20.6),
        (12.4, 17.2),
        (10.6, 12.0),
        (12.4, 6.8),
        (17.4, 3.4),
    ]),
];
const STAR: &[Piece] = &[Polygon(&[
    (12.0, 23.0),
    (9.1, 15.5),
    (1.5, 15.1),
    (7.3, 10.1),
    (5.4, 2.8),
    (12.0, 7.0),
    (18.6, 2.8),
    (16.7, 10.1),
    (22.5, 15.1),
    (14.9, 15.5),
])];
const SUN: &[Piece] = &[
    Ring(12.0, 12.0, 5.0),
    Line(&[(12.0, 19.4), (12.0, 23.0)]),
    Line(&[(12.0, 4.6), (12.0, 1.0)]),
    Line(&[(19.4, 12.0), (23.0, 12.0)]),
    Line(&[(4.6, 12.0), (1.0, 12.0)]),
    Line(&[(17.2, 17.2), (19.8, 19.8)]),
    Line(&[(6.8, 6.8), (4.2, 4.2)]),
    Line(&[(17.2, 6.8), (19.8, 4.2)]),
    Line(&[(6.8, 17.2), (4.2, 19.8)]),
];
const TREE: &[Piece] = &[
    Loop(&[
        (12.0, 23.0),
        (17.4, 21.2),
        (20.6, 16.0),
        (18.4, 10.2),
        (12.0, 8.0),
        (5.6, 10.2),
        (3.4, 16.0),
        (6.6, 21.2),
    ]),
    Line(&[(12.0, 15.6), (12.0, 1.6)]),
    Line(&[(12.0, 10.8), (15.4, 14.2)]),
    Line(&[(6.4, 1.6), (17.6, 1.6)]),
];

/// Whether a label of this name is drawn as a picture.
pub fn is_picture(name: &str) -> bool {
    PICTURES.contains(&name)
}

/// The lines of the picture `name` on a square of `size` mm about `centre`; `None` for a name that
/// has no picture.
pub fn picture(name: &str, centre: Point, size: f64) -> Option<Vec<Outline>> {
    let pieces = match name {
        "anchor" => ANCHOR,
        "apple" => APPLE,
        "bell" => BELL,
        "bird" => BIRD,
        "boat" => BOAT,
        "fish" => FISH,
        "key" => KEY,
        "leaf" => LEAF,
        "moon" => MOON,
        "star" => STAR,
        "sun" => SUN,
        "tree" => TREE,
        _ => return None,
    };
    let scale = size / GRID;
    let place = |at: Point| centre + (at - Point::new(GRID / 2.0, GRID / 2.0)) * scale;
    Some(
        pieces
            .iter()
            .map(|piece| piece.outline().placed(place))
            .collect(),
    )
}

impl Piece {
    fn outline(&self) -> Outline {
        match *self {
            Line(points) => Outline::polyline(&on_grid(points)),
            Polygon(points) => Outline::polygon(&on_grid(points)),
            Smooth(points) => Outline::polyline(&smooth(&on_grid(points), false)),
            Loop(points) => Outline::polygon(&smooth(&on_grid(points), true)),
            Ring(x, y, radius) => Outline::circle(Point::new(x, y), radius),
        }
    }
}

fn on_grid(points: &[(f64, f64)]) -> Vec<Point> {
    points.iter().map(|&(x, y)| Point::new(x, y)).collect()
}

/// A smooth line through `points` (Catmull–Rom), as short chords.
fn smooth(points: &[Point], closed: bool) -> Vec<Point> {
    let count = points.len();
    let at = |index: usize, back: usize| {
        // `back` shifts by one so that the point before the first can be asked for.
        let index = if closed {
            (index + count - back) % count.max(1)
        } else {
            (index.saturating_sub(back)).min(count.saturating_sub(1))
        };
        points.get(index).copied().unwrap_or_default()
    };
    let stretches = if closed {
        count
    } else {
        count.saturating_sub(1)
    };
    let mut line = Vec::new();
    for index in 0..stretches {
        let (p, a, b, n) = (
            at(index, 1),
            at(index, 0),
            at(index + 1, 0),
            at(index + 2, 0),
        );
        for chord in 0..CHORDS {
            let t = f64::from(chord) / f64::from(CHORDS);
            let (t2, t3) = (t * t, t * t * t);
            let sum = a * 2.0
                + (b - p) * t
                + (p * 2.0 - a * 5.0 + b * 4.0 - n) * t2
                + (a * 3.0 - p - b * 3.0 + n) * t3;
            line.push(sum * 0.5);
        }
    }
    if !closed {
        line.push(at(count.saturating_sub(1), 0));
    }
    line
}

#[cfg(test)]
mod tests {
    use super::*;
    use latchwright_geometry::Rect;

    #[test]
    fn every_named_picture_is_drawn_inside_its_square() {
        for name in PICTURES {
            let lines = picture(name, Point::new(50.0, 20.0), 6.0).expect(name);
            let square = Rect::about(Point::new(50.0, 20.0), 6.0, 6.0);
            let extent = lines
                .iter()
                .map(Outline::extent)
                .reduce(Rect::union)
                .expect(name);
            assert!(square.holds(extent), "{name}: {extent:?}");
            assert!(
                extent.height() > 2.5 && extent.width() > 3.5,
                "{name} is too small: {extent:?}"
            );
        }
    }

    #[test]
    fn an_unknown_name_has_no_picture() {
        assert!(picture("dragon", Point::default(), 6.0).is_none());
        assert!(!is_picture("dragon"));
    }

    #[test]
    fn a_smooth_line_goes_through_its_points() {
        let points = [
            Point::new(0.0, 0.0),
            Point::new(4.0, 3.0),
            Point::new(9.0, 1.0),
        ];
        let line = smooth(&points, false);
        for point in points {
            assert!(line.iter().any(|at| at.distance(point) < 1e-9));
        }
    }
}
