//! Where a drawing is parted, and where its tiles are marked for joining.

use latchwright_drawing::Rect;
use latchwright_geometry::Point;

use super::{Avoid, JoinMark, tile_name};

/// From where to where a tile reaches along one axis, mm.
pub(super) type Stretch = (f64, f64);
/// What a tile shows, and where it lies among the others.
#[derive(Clone, Copy)]
pub(super) struct Window {
    /// From the top, from 0.
    pub row: usize,
    /// From the left, from 0.
    pub column: usize,
    /// In the drawing, mm.
    pub area: Rect,
}

/// Room about a mark that is kept free if it can be, half its side, mm.
const MARK: f64 = 5.0;
/// Places that are tried for one seam or one mark.
const TRIES: u32 = 60;

/// What each column reaches over, from the left, and each row, from the top.
pub(super) fn stretches(
    bounds: Rect,
    space: (f64, f64),
    columns: usize,
    rows: usize,
    overlap: f64,
    avoid: &[Avoid],
) -> (Vec<Stretch>, Vec<Stretch>) {
    let seams = |space: f64, span: fn(Rect) -> Stretch| Seams {
        space,
        overlap,
        avoid: avoid
            .iter()
            .map(|one| (span(one.area), one.weight))
            .collect(),
    };
    // Rows are cut from the top, so along −y.
    let (across, down) = (
        |area: Rect| (area.min.x, area.max.x),
        |area: Rect| (-area.max.y, -area.min.y),
    );
    let columns = seams(space.0, across).cut(across(bounds), columns);
    let rows = seams(space.1, down).cut(down(bounds), rows);
    let rows = rows.into_iter().map(|(from, to)| (-to, -from));
    (columns, rows.collect())
}

/// The seams along one axis.
struct Seams {
    space: f64,
    overlap: f64,
    avoid: Vec<(Stretch, f64)>,
}

impl Seams {
    /// Cuts what lies between `from` and `to` into `count` stretches that all have room.
    fn cut(&self, (from, to): Stretch, count: usize) -> Vec<Stretch> {
        let mut all = Vec::new();
        let mut start = from;
        for left in (1..count).rev() {
            // What is to come must still find room, and this tile too.
            let rest = left as f64 * (self.space - self.overlap) + self.overlap;
            let least = (to - rest + self.overlap).max(start + self.overlap);
            // No tile is hardly more than the overlap.
            let most = (start + self.space).min(to - self.overlap).max(least);
            let end = self.best(least, most);
            all.push((start, end));
            start = end - self.overlap;
        }
        all.push((start, to));
        all
    }

    /// The end between `least` and `most` whose overlap meets least; the furthest of those.
    fn best(&self, least: f64, most: f64) -> f64 {
        let mut best = (self.cost(most), most);
        for step in 1..=TRIES {
            let end = most - (most - least) * (f64::from(step) / f64::from(TRIES));
            let cost = self.cost(end);
            if cost < best.0 - 1e-9 {
                best = (cost, end);
            }
        }
        best.1
    }

    fn cost(&self, end: f64) -> f64 {
        let start = end - self.overlap;
        let met = |((from, to), _): &&(Stretch, f64)| *from < end && *to > start;
        self.avoid
            .iter()
            .filter(met)
            .map(|(_, weight)| weight)
            .sum()
    }
}

/// Two marks that the tiles at these places, with these windows, have in common.
///
/// They stand at uneven shares of the seam, so that a sheet turned round does not fit.
pub(super) fn marks(first: Window, second: Window, avoid: &[Avoid]) -> [JoinMark; 2] {
    let (one, other) = (first.area, second.area);
    let low = Point::new(one.min.x.max(other.min.x), one.min.y.max(other.min.y));
    let high = Point::new(one.max.x.min(other.max.x), one.max.y.min(other.max.y));
    let middle = (low + high) * 0.5;
    let names = format!(
        "{}–{}",
        tile_name(first.row, first.column),
        tile_name(second.row, second.column)
    );
    let at = |share: f64| {
        if first.row == second.row {
            Point::new(middle.x, low.y + (high.y - low.y) * share)
        } else {
            Point::new(low.x + (high.x - low.x) * share, middle.y)
        }
    };
    let cost = |share: f64| -> f64 {
        let space = Rect::about(at(share), 2.0 * MARK, 2.0 * MARK);
        let met = avoid.iter().filter(|one| one.area.overlaps(space));
        met.map(|one| one.weight).sum()
    };
    // No share of the one is as far from its end as one of the other from the other end.
    [("a", 0.1, 0.3), ("b", 0.5, 0.69)].map(|(letter, from, to)| {
        let wanted = f64::midpoint(from, to);
        let mut best = (cost(wanted), wanted);
        for step in 0..=TRIES {
            let share = from + (to - from) * (f64::from(step) / f64::from(TRIES));
            let cost = cost(share);
            let nearer = (share - wanted).abs() < (best.1 - wanted).abs();
            if cost < best.0 - 1e-9 || (nearer && cost < best.0 + 1e-9) {
                best = (cost, share);
            }
        }
        JoinMark {
            at: at(best.1),
            label: format!("{names} {letter}"),
        }
    })
}
