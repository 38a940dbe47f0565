//! Hatching: parallel lines clipped to an area.

use latchwright_geometry::{Point, trig};

use crate::outline::Outline;

/// Most lines one area is hatched with; a larger area is hatched more widely.
const MOST_LINES: u32 = 300;

/// Lines `spacing` mm apart, `angle_deg` counter-clockwise from +x, inside all of `areas`.
///
/// Each area is a set of closed outlines, even-odd; the lines lie on a grid through the origin, so
/// neighbouring areas are hatched in line.
pub fn hatch(areas: &[&[Outline]], spacing: f64, angle_deg: f64) -> Vec<Outline> {
    let turn = trig::radians(angle_deg);
    let turned: Vec<Vec<Vec<Point>>> = areas
        .iter()
        .map(|area| area.iter().map(|line| flat(line, -turn)).collect())
        .collect();
    let heights = turned
        .first()
        .into_iter()
        .flatten()
        .flatten()
        .map(|point| point.y);
    let (low, high) = heights.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), y| {
        (low.min(y), high.max(y))
    });
    if low >= high {
        return Vec::new();
    }
    let spacing = spacing.max(0.1).max((high - low) / f64::from(MOST_LINES));
    let first = (low / spacing).ceil() * spacing;
    let mut lines = Vec::new();
    for step in 0..=MOST_LINES {
        // A hair off the grid, so that no line runs along an edge.
        let y = first + f64::from(step) * spacing + 1e-7;
        if y >= high {
            break;
        }
        for (from, to) in inside_all(&turned, y) {
            let place = |x: f64| Point::new(x, y).rotated(turn);
            lines.push(Outline::line(place(from), place(to)));
        }
    }
    lines
}

fn flat(line: &Outline, turn: f64) -> Vec<Point> {
    line.flatten(0.02)
        .into_iter()
        .map(|point| point.rotated(turn))
        .collect()
}

/// The stretches of the level line at `y` that lie inside every area.
fn inside_all(areas: &[Vec<Vec<Point>>], y: f64) -> Vec<(f64, f64)> {
    let mut all: Option<Vec<(f64, f64)>> = None;
    for area in areas {
        let inside = spans(area, y);
        all = Some(match all {
            None => inside,
            Some(before) => common(&before, &inside),
        });
    }
    all.unwrap_or_default()
}

/// The stretches of the level line at `y` inside an even-odd area of closed polygons.
pub(crate) fn spans(polygons: &[Vec<Point>], y: f64) -> Vec<(f64, f64)> {
    let mut crossings = Vec::new();
    for polygon in polygons {
        let next = polygon.iter().cycle().skip(1);
        for (a, b) in polygon.iter().zip(next) {
            if (a.y > y) != (b.y > y) {
                crossings.push(a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x));
            }
        }
    }
    crossings.sort_by(f64::total_cmp);
    let pair = |pair: &[f64]| match *pair {
        [from, to] if to > from => Some((from, to)),
        _ => None,
    };
    crossings.chunks(2).filter_map(pair).collect()
}

/// What two sets of stretches have in common.
fn common(a: &[(f64, f64)], b: &[(f64, f64)]) -> Vec<(f64, f64)> {
    let pairs = a
        .iter()
        .flat_map(|&a| b.iter().map(move |&b| (a.0.max(b.0), a.1.min(b.1))));
    pairs.filter(|(from, to)| to > from).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use latchwright_geometry::Rect;

    #[test]
    fn hatching_stays_inside_and_leaves_holes_out() {
        let outer = Outline::rectangle(Rect::about(Point::default(), 10.0, 10.0));
        let hole = Outline::circle(Point::default(), 3.0);
        let lines = hatch(&[&[outer, hole]], 1.0, 45.0);
        assert!(lines.len() > 10);
        for line in &lines {
            let middle = (line.start + line.end()) * 0.5;
            assert!(middle.length() > 2.9 && middle.x.abs() < 5.0 && middle.y.abs() < 5.0);
        }
    }

    #[test]
    fn two_areas_are_hatched_only_where_they_meet() {
        let left = [Outline::rectangle(Rect::new(
            Point::new(0.0, 0.0),
            Point::new(6.0, 6.0),
        ))];
        let right = [Outline::rectangle(Rect::new(
            Point::new(4.0, 0.0),
            Point::new(9.0, 6.0),
        ))];
        let lines = hatch(&[&left, &right], 1.0, 0.0);
        assert!((5..=7).contains(&lines.len()), "a line a millimetre");
        for line in lines {
            assert!((line.start.x - 4.0).abs() < 1e-9 && (line.end().x - 6.0).abs() < 1e-9);
        }
    }

    #[test]
    fn a_huge_area_gets_a_bounded_number_of_lines() {
        let field = [Outline::rectangle(Rect::about(Point::default(), 1e4, 1e4))];
        assert!(hatch(&[&field], 0.5, 30.0).len() <= 301);
    }
}
