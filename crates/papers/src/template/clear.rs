//! What already stands on a drawing where something else is to go.

use latchwright_drawing::{Item, Outline, Rect, Shape};
use latchwright_geometry::Point;

/// What words count for beside one line.
const WORDS: usize = 1000;

/// How much of `items` would lie under `room`: lines that run through it, words many times that.
pub(super) fn covered_by<'a>(items: impl IntoIterator<Item = &'a Item>, space: Rect) -> usize {
    items.into_iter().map(|item| covered(item, space)).sum()
}

/// How much of `item` would lie under words in `room`.
fn covered(item: &Item, space: Rect) -> usize {
    let extent = item.shape.extent();
    // Lines along x or y have no area of their own.
    let apart = extent.max.x < space.min.x
        || extent.min.x > space.max.x
        || extent.max.y < space.min.y
        || extent.min.y > space.max.y;
    if apart {
        return 0;
    }
    match &item.shape {
        Shape::Text(_) => WORDS,
        Shape::Circle { centre, radius } => crossings(&Outline::circle(*centre, *radius), space),
        Shape::Path { outlines } => outlines.iter().map(|line| crossings(line, space)).sum(),
    }
}

/// How many pieces of `line` run through `room`.
fn crossings(line: &Outline, space: Rect) -> usize {
    let mut points = line.flatten(0.2);
    if line.closed
        && let Some(first) = points.first().copied()
    {
        points.push(first);
    }
    let pairs = points.iter().zip(points.iter().skip(1));
    pairs.filter(|(a, b)| runs_through(**a, **b, space)).count()
}

/// Whether the line from `a` to `b` has a point in `room`.
fn runs_through(a: Point, b: Point, space: Rect) -> bool {
    let way = b - a;
    let (mut from, mut to) = (0.0_f64, 1.0_f64);
    let slabs = [
        (a.x, way.x, space.min.x, space.max.x),
        (a.y, way.y, space.min.y, space.max.y),
    ];
    for (start, step, low, high) in slabs {
        if step.abs() < 1e-12 {
            if start < low || start > high {
                return false;
            }
            continue;
        }
        let (one, other) = ((low - start) / step, (high - start) / step);
        from = from.max(one.min(other));
        to = to.min(one.max(other));
    }
    from <= to
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_runs_through_a_room_only_where_it_has_a_point_in_it() {
        let space = Rect::about(Point::new(5.0, 5.0), 2.0, 2.0);
        let at = Point::new;
        assert!(runs_through(at(0.0, 0.0), at(10.0, 10.0), space));
        assert!(runs_through(at(5.0, 0.0), at(5.0, 10.0), space));
        assert!(!runs_through(at(0.0, 0.0), at(3.0, 3.0), space));
        assert!(!runs_through(at(0.0, 3.0), at(10.0, 3.0), space));
        assert!(!runs_through(at(0.0, 8.0), at(8.0, 12.0), space));
    }
}
