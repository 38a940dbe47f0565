//! Room for words: what is taken on a sheet, and the nearest free place.

use latchwright_drawing::{Outline, Rect, Shape};
use latchwright_geometry::Point;

/// Clear distance between words and anything else, mm.
const AIR: f64 = 0.9;
/// Furthest that words are moved away from what they are about, mm.
const FURTHEST: f64 = 60.0;
/// Most pieces that one line is cut into.
const MOST_PIECES: u32 = 400;

/// What is taken on a sheet.
#[derive(Default)]
pub(super) struct Taken {
    /// Lines, in short pieces, and areas.
    drawn: Vec<Rect>,
    /// Words, which no leader may cross.
    words: Vec<Rect>,
}

/// A free place, and whether it is so far off that a leader is wanted.
pub(super) struct FreePlace {
    /// What the words take up.
    pub space: Rect,
    /// From where to where a leader runs.
    pub leader: Option<(Point, Point)>,
}

impl Taken {
    /// Takes the room of `shape`: its lines, not what they enclose.
    pub(super) fn line(&mut self, shape: &Shape) {
        match shape {
            Shape::Path { outlines } => outlines.iter().for_each(|line| self.pieces(line)),
            Shape::Circle { centre, radius } => self.pieces(&Outline::circle(*centre, *radius)),
            Shape::Text(text) => self.words.push(text.extent()),
        }
    }

    /// Takes all of `area`.
    pub(super) fn area(&mut self, area: Rect) {
        self.drawn.push(area);
    }

    /// Takes `area` for words.
    pub(super) fn words(&mut self, area: Rect) {
        self.words.push(area);
    }

    fn pieces(&mut self, line: &Outline) {
        let mut points = line.flatten(0.2);
        if line.closed
            && let Some(first) = points.first().copied()
        {
            points.push(first);
        }
        for (a, b) in points.iter().zip(points.iter().skip(1)) {
            let straight = a.x == b.x || a.y == b.y;
            let length = a.distance(*b);
            let mut pieces = 1_u32;
            while !straight && length / f64::from(pieces) > 2.0 && pieces < MOST_PIECES {
                pieces += 1;
            }
            let at = |piece: u32| *a + (*b - *a) * (f64::from(piece) / f64::from(pieces));
            for piece in 0..pieces {
                self.drawn.push(Rect::new(at(piece), at(piece + 1)));
            }
        }
    }

    /// Whether nothing stands in `room`.
    pub(super) fn is_free(&self, space: Rect) -> bool {
        let space = space.grown(AIR);
        let clear = |taken: &Rect| !overlaps(space, *taken);
        self.drawn.iter().all(clear) && self.words.iter().all(clear)
    }

    /// What is taken in and about `area`.
    fn around(&self, area: Rect) -> Self {
        let near = |all: &[Rect]| {
            let all = all.iter().copied();
            all.filter(|taken| overlaps(*taken, area)).collect()
        };
        Self {
            drawn: near(&self.drawn),
            words: near(&self.words),
        }
    }

    /// Whether a leader keeps clear of words and, beyond the first `own` mm, of all that is drawn.
    fn is_clear(&self, (from, to): (Point, Point), own: f64) -> bool {
        let length = from.distance(to);
        (0..=80_u32).all(|step| {
            let share = f64::from(step) / 80.0;
            let dot = Rect::about(from + (to - from) * share, 1.0, 1.0);
            let free = |taken: &Rect| !overlaps(*taken, dot);
            self.words.iter().all(free) && (length * share < own || self.drawn.iter().all(free))
        })
    }

    /// The nearest free place for `size` (mm) beside the circle of `clear` mm about `at`, as far as
    /// `allowed` says so; `None` where there is none within reach.
    ///
    /// A leader that crosses lines is taken only where there is no other; none ever crosses words.
    pub(super) fn beside(
        &self,
        at: Point,
        clear: f64,
        size: (f64, f64),
        allowed: impl Fn(Rect) -> bool,
    ) -> Option<FreePlace> {
        let near_hole = 4.0;
        let reach = clear + FURTHEST + size.0 + size.1 + 2.0 * AIR;
        let around = self.around(Rect::about(at, 2.0 * reach, 2.0 * reach));
        around
            .search(at, clear, size, |space, leader| {
                allowed(space) && leader.is_none_or(|line| around.is_clear(line, near_hole))
            })
            .or_else(|| {
                around.search(at, clear, size, |space, leader| {
                    allowed(space) && leader.is_none_or(|line| around.is_clear(line, f64::INFINITY))
                })
            })
    }

    fn search(
        &self,
        at: Point,
        clear: f64,
        (width, height): (f64, f64),
        allowed: impl Fn(Rect, Option<(Point, Point)>) -> bool,
    ) -> Option<FreePlace> {
        let ways = [
            (0.0, -1.0),
            (0.0, 1.0),
            (1.0, 0.0),
            (-1.0, 0.0),
            (0.8, -0.6),
            (-0.8, -0.6),
            (0.8, 0.6),
            (-0.8, 0.6),
            (0.45, -0.9),
            (-0.45, -0.9),
        ];
        let mut off = 0.0;
        while off <= FURTHEST {
            for (x, y) in ways {
                let way = Point::new(x, y);
                let reach = clear + AIR + 0.1 + off;
                let half = Point::new(width / 2.0 * x.signum(), height / 2.0 * y.signum());
                let aside = Point::new(
                    if x == 0.0 { 0.0 } else { half.x },
                    if y == 0.0 { 0.0 } else { half.y },
                );
                let space = Rect::about(at + way * reach + aside, width, height);
                let leader = (off > 3.0).then(|| leader(at, clear, space));
                if self.is_free(space) && allowed(space, leader) {
                    return Some(FreePlace { space, leader });
                }
            }
            off += 1.5;
        }
        None
    }
}

/// From the edge of the circle of `clear` mm about `at` to the nearest point of `room`.
fn leader(at: Point, clear: f64, space: Rect) -> (Point, Point) {
    let to = Point::new(
        at.x.clamp(space.min.x, space.max.x),
        at.y.clamp(space.min.y, space.max.y),
    );
    let way = to - at;
    let length = way.length().max(1e-9);
    let way = way * (1.0 / length);
    (at + way * clear, at + way * (length - 0.4).max(clear))
}

/// Whether two rectangles meet; unlike [`Rect::overlaps`], one without width counts too.
fn overlaps(a: Rect, b: Rect) -> bool {
    a.min.x <= b.max.x && b.min.x <= a.max.x && a.min.y <= b.max.y && b.min.y <= a.max.y
}

/// Whether `room` lies inside the closed line through `edge`.
pub(super) fn inside(edge: &[Point], space: Rect) -> bool {
    let corners = space.corners();
    corners.into_iter().all(|corner| holds(edge, corner))
}

/// Even-odd, by the crossings of a level ray.
fn holds(edge: &[Point], at: Point) -> bool {
    let next = edge.iter().cycle().skip(1);
    let crossings = edge.iter().zip(next).filter(|(a, b)| {
        (a.y > at.y) != (b.y > at.y) && at.x < a.x + (at.y - a.y) / (b.y - a.y) * (b.x - a.x)
    });
    crossings.count() % 2 == 1
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_find_the_nearest_free_place_and_a_leader_where_it_is_far() {
        let mut taken = Taken::default();
        let at = Point::new(0.0, 0.0);
        let near = taken.beside(at, 5.0, (10.0, 4.0), |_| true).unwrap();
        assert!(near.leader.is_none() && near.space.max.y < -5.0);
        taken.area(Rect::about(at, 40.0, 40.0));
        let far = taken.beside(at, 5.0, (10.0, 4.0), |_| true).unwrap();
        assert!(far.leader.is_some() && taken.is_free(far.space));
        assert!(taken.beside(at, 5.0, (10.0, 4.0), |_| false).is_none());
    }

    #[test]
    fn a_slanted_line_takes_only_what_it_runs_through() {
        let mut taken = Taken::default();
        let slant = Outline::line(Point::new(0.0, 0.0), Point::new(40.0, 40.0));
        taken.line(&Shape::path(slant));
        assert!(taken.is_free(Rect::about(Point::new(30.0, 10.0), 6.0, 6.0)));
        assert!(!taken.is_free(Rect::about(Point::new(20.0, 20.0), 6.0, 6.0)));
    }

    #[test]
    fn inside_an_l_is_not_inside_its_box() {
        let corner = |x, y| Point::new(x, y);
        let edge = [
            corner(0.0, 0.0),
            corner(30.0, 0.0),
            corner(30.0, 10.0),
            corner(10.0, 10.0),
            corner(10.0, 30.0),
            corner(0.0, 30.0),
        ];
        assert!(inside(&edge, Rect::about(corner(5.0, 20.0), 6.0, 6.0)));
        assert!(!inside(&edge, Rect::about(corner(20.0, 20.0), 6.0, 6.0)));
    }
}
