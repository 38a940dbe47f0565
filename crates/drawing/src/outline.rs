//! A line of straight segments and true arcs, open or closed.

use core::f64::consts::{FRAC_PI_2, TAU};

use latchwright_geometry::{Point, trig};

use latchwright_geometry::Rect;

/// One step of an outline, from where the last one ended.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Segment {
    /// Straight on.
    Line {
        /// Where it ends.
        to: Point,
    },
    /// Round a centre; less than a full turn.
    Arc {
        /// Where it ends.
        to: Point,
        /// The centre; as far from the start as from the end.
        centre: Point,
        /// Which way round, as seen.
        clockwise: bool,
    },
}

/// A line of straight segments and true arcs.
#[derive(Debug, Clone, PartialEq)]
pub struct Outline {
    /// Where it begins.
    pub start: Point,
    /// The steps.
    pub segments: Vec<Segment>,
    /// Whether its end is joined to its beginning.
    pub closed: bool,
}

/// An arc by its angles, worked out from its ends.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Sweep {
    /// Radius, mm.
    pub radius: f64,
    /// Angle of the start, radians counter-clockwise from +x.
    pub from: f64,
    /// Signed turn, radians, counter-clockwise positive; less than a full turn.
    pub turn: f64,
}

/// Most points one arc is flattened into.
const MOST_STEPS: u32 = 720;

impl Segment {
    /// Where it ends.
    pub fn to(&self) -> Point {
        match *self {
            Self::Line { to } | Self::Arc { to, .. } => to,
        }
    }
}

impl Sweep {
    /// The arc from `from` to `to` about `centre`.
    pub(crate) fn new(from: Point, to: Point, centre: Point, clockwise: bool) -> Self {
        let (a, b) = (from - centre, to - centre);
        let start = trig::atan2(a.y, a.x);
        let ahead = trig::atan2(b.y, b.x) - start;
        let turn = if clockwise {
            -(-ahead).rem_euclid(TAU)
        } else {
            ahead.rem_euclid(TAU)
        };
        // An arc of no length must not become a full turn by rounding.
        let turn = if turn.abs() > TAU - 1e-9 { 0.0 } else { turn };
        Self {
            radius: a.length(),
            from: start,
            turn,
        }
    }

    /// The ways along the axes that lie within the turn: where the arc reaches furthest.
    fn furthest(self) -> impl Iterator<Item = Point> {
        let ways = [(1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0)];
        let passed = move |quarter: u32| {
            let ahead = f64::from(quarter) * FRAC_PI_2 - self.from;
            if self.turn < 0.0 {
                (-ahead).rem_euclid(TAU) < -self.turn
            } else {
                ahead.rem_euclid(TAU) < self.turn
            }
        };
        (0..4_u32)
            .zip(ways)
            .filter(move |(quarter, _)| passed(*quarter))
            .map(|(_, (x, y))| Point::new(x, y))
    }

    /// The point after the share `t` of the turn, about `centre`.
    fn at(self, centre: Point, t: f64) -> Point {
        centre + Point::at_angle(self.from + self.turn * t) * self.radius
    }

    /// Number of chords that stay within `tolerance` mm of the arc.
    fn steps(self, tolerance: f64) -> u32 {
        let tolerance = tolerance.max(1e-6);
        let half = trig::acos(1.0 - tolerance / self.radius.max(tolerance));
        let wanted = (self.turn.abs() / (2.0 * half)).ceil();
        let mut steps = 1;
        while f64::from(steps) < wanted && steps < MOST_STEPS {
            steps += 1;
        }
        steps
    }
}

impl Outline {
    /// An open line that begins at `start`.
    pub fn from(start: Point) -> Self {
        Self {
            start,
            segments: Vec::new(),
            closed: false,
        }
    }

    /// The straight segment from `a` to `b`.
    pub fn line(a: Point, b: Point) -> Self {
        Self::from(a).line_to(b)
    }

    /// The polygon through `points`, closed; empty where there are none.
    pub fn polygon(points: &[Point]) -> Self {
        Self::polyline(points).closed()
    }

    /// The open line through `points`; empty where there are none.
    pub fn polyline(points: &[Point]) -> Self {
        let start = points.first().copied().unwrap_or_default();
        points
            .iter()
            .skip(1)
            .fold(Self::from(start), |line, &point| line.line_to(point))
    }

    /// The rectangle, closed.
    pub fn rectangle(rect: Rect) -> Self {
        Self::polygon(&rect.corners())
    }

    /// The full circle, closed, counter-clockwise from its right side, as two half arcs.
    pub fn circle(centre: Point, radius: f64) -> Self {
        let side = Point::new(radius, 0.0);
        Self::from(centre + side)
            .arc_to(centre - side, centre, false)
            .arc_to(centre + side, centre, false)
            .closed()
    }

    /// A stadium: all points within `radius` of the segment from `a` to `b`.
    pub fn stadium(a: Point, b: Point, radius: f64) -> Self {
        let along = b - a;
        let length = along.length();
        if length <= 1e-9 {
            return Self::circle(a, radius);
        }
        let side = along.perpendicular() * (radius / length);
        Self::from(a - side)
            .line_to(b - side)
            .arc_to(b + side, b, false)
            .line_to(a + side)
            .arc_to(a - side, a, false)
            .closed()
    }

    /// The closed polygon through `corners`, each rounded by its own radius (mm).
    ///
    /// A radius is cut down to what half the shorter neighbouring edge has room for.
    pub fn rounded(corners: &[(Point, f64)]) -> Self {
        let count = corners.len();
        let near = |index: usize| corners.get(index % count.max(1)).map(|corner| corner.0);
        let mut line: Option<Self> = None;
        for (index, &(corner, radius)) in corners.iter().enumerate() {
            let before = near(index + count - 1).unwrap_or(corner);
            let after = near(index + 1).unwrap_or(corner);
            let round = Round::new(before, corner, after, radius);
            let up_to = match line {
                None => Self::from(round.enter),
                Some(line) => line.line_to(round.enter),
            };
            line = Some(match round.centre {
                None => up_to,
                Some(centre) => up_to.arc_to(round.leave, centre, round.clockwise),
            });
        }
        line.unwrap_or_else(|| Self::from(Point::default()))
            .closed()
    }

    /// Goes straight on to `to`.
    #[must_use]
    pub fn line_to(mut self, to: Point) -> Self {
        self.segments.push(Segment::Line { to });
        self
    }

    /// Goes round `centre` to `to`.
    #[must_use]
    pub fn arc_to(mut self, to: Point, centre: Point, clockwise: bool) -> Self {
        self.segments.push(Segment::Arc {
            to,
            centre,
            clockwise,
        });
        self
    }

    /// Joins the end to the beginning.
    #[must_use]
    pub fn closed(mut self) -> Self {
        self.closed = true;
        self
    }

    /// Where the last step ends.
    pub fn end(&self) -> Point {
        self.segments.last().map_or(self.start, Segment::to)
    }

    /// The same line with every point taken through `place`, which must keep shapes and handedness
    /// (shift, turn or scale evenly).
    #[must_use]
    pub fn placed(&self, place: impl Fn(Point) -> Point) -> Self {
        let step = |segment: &Segment| match *segment {
            Segment::Line { to } => Segment::Line { to: place(to) },
            Segment::Arc {
                to,
                centre,
                clockwise,
            } => Segment::Arc {
                to: place(to),
                centre: place(centre),
                clockwise,
            },
        };
        Self {
            start: place(self.start),
            segments: self.segments.iter().map(step).collect(),
            closed: self.closed,
        }
    }

    /// Points along the line, no further than `tolerance_mm` from it; the first is not repeated at
    /// the end of a closed line.
    pub fn flatten(&self, tolerance_mm: f64) -> Vec<Point> {
        let mut points = self.points(|points, sweep, centre| {
            let steps = sweep.steps(tolerance_mm);
            let share = |step: u32| f64::from(step) / f64::from(steps);
            points.extend((1..steps).map(|step| sweep.at(centre, share(step))));
        });
        let repeats = points.len() > 1
            && points
                .last()
                .is_some_and(|last| last.distance(self.start) < 1e-9);
        if self.closed && repeats {
            points.pop();
        }
        points
    }

    /// The ends of all segments in order, with what `on_arc` adds of each arc between its ends; it is
    /// given the arc's sweep and centre.
    fn points(&self, on_arc: impl Fn(&mut Vec<Point>, &Sweep, Point)) -> Vec<Point> {
        let mut points = vec![self.start];
        let mut at = self.start;
        for segment in &self.segments {
            if let Segment::Arc {
                to,
                centre,
                clockwise,
            } = *segment
            {
                on_arc(&mut points, &Sweep::new(at, to, centre, clockwise), centre);
            }
            at = segment.to();
            points.push(at);
        }
        points
    }

    /// The same line after a mirror in the upright line at `axis_x`: a left turn becomes a right one.
    #[must_use]
    pub fn mirrored(&self, axis_x: f64) -> Self {
        let mirror = |point: Point| Point::new(2.0 * axis_x - point.x, point.y);
        let mut mirrored = self.placed(mirror);
        for segment in &mut mirrored.segments {
            if let Segment::Arc { clockwise, .. } = segment {
                *clockwise = !*clockwise;
            }
        }
        mirrored
    }

    /// The least rectangle around it.
    pub fn extent(&self) -> Rect {
        let points = self.points(|points, sweep, centre| {
            points.extend(sweep.furthest().map(|way| centre + way * sweep.radius));
        });
        let none = Rect {
            min: self.start,
            max: self.start,
        };
        Rect::around(points).unwrap_or(none)
    }
}

/// One rounded corner: where the line bends off, round which centre, and where it goes on.
struct Round {
    enter: Point,
    leave: Point,
    centre: Option<Point>,
    clockwise: bool,
}

impl Round {
    fn new(before: Point, corner: Point, after: Point, radius: f64) -> Self {
        let sharp = Self {
            enter: corner,
            leave: corner,
            centre: None,
            clockwise: false,
        };
        let (back, on) = (before - corner, after - corner);
        let space = back.length().min(on.length()) / 2.0;
        if space <= 1e-9 || radius <= 1e-9 {
            return sharp;
        }
        let (back, on) = (back * (1.0 / back.length()), on * (1.0 / on.length()));
        let half = trig::acos(back.dot(on)) / 2.0;
        let (sin, cos) = (trig::sin(half), trig::cos(half));
        if sin < 1e-6 || cos < 1e-6 {
            return sharp;
        }
        let setback = (radius * cos / sin).min(space);
        let middle = back + on;
        let centre = corner + middle * (setback / cos / middle.length());
        Self {
            enter: corner + back * setback,
            leave: corner + on * setback,
            centre: Some(centre),
            clockwise: back.cross(on) > 0.0,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn area(points: &[Point]) -> f64 {
        let next = points.iter().cycle().skip(1);
        points
            .iter()
            .zip(next)
            .map(|(a, b)| a.cross(*b))
            .sum::<f64>()
            / 2.0
    }

    #[test]
    fn a_flattened_circle_has_the_area_of_a_circle() {
        let points = Outline::circle(Point::new(3.0, 4.0), 18.0).flatten(0.0005);
        let wanted = core::f64::consts::PI * 18.0 * 18.0;
        assert!((area(&points) - wanted).abs() < 0.1, "{}", area(&points));
    }

    #[test]
    fn the_extent_reaches_to_the_top_of_every_arc() {
        let slot = Outline::stadium(Point::new(1.0, 2.0), Point::new(1.0, 22.0), 4.0);
        let wanted = Rect::new(Point::new(-3.0, -2.0), Point::new(5.0, 26.0));
        for line in [&slot, &slot.mirrored(1.0)] {
            let extent = line.extent();
            assert!(extent.min.distance(wanted.min) < 1e-9, "{extent:?}");
            assert!(extent.max.distance(wanted.max) < 1e-9, "{extent:?}");
        }
        // a quarter that ends before it reaches an axis
        let bow = Outline::from(Point::new(3.0, 4.0)).arc_to(
            Point::new(4.0, 3.0),
            Point::default(),
            true,
        );
        assert_eq!(bow.extent().max, Point::new(4.0, 4.0));
    }

    #[test]
    fn a_mirror_takes_right_for_left_and_turns_arcs_over() {
        let line = Outline::rounded(&[
            (Point::new(0.0, 0.0), 0.0),
            (Point::new(30.0, 0.0), 5.0),
            (Point::new(10.0, 20.0), 2.0),
        ]);
        let mirrored = line.mirrored(60.0);
        let (points, image) = (line.flatten(0.01), mirrored.flatten(0.01));
        assert!(points.len() > 6 && points.len() == image.len());
        let points = points.into_iter();
        let taken = points.map(|point| Point::new(120.0 - point.x, point.y));
        for (a, b) in taken.zip(image) {
            assert!(a.distance(b) < 1e-9);
        }
    }

    #[test]
    fn flattened_points_stay_within_the_tolerance() {
        let points = Outline::circle(Point::default(), 50.0).flatten(0.05);
        let middles = points
            .iter()
            .zip(points.iter().skip(1))
            .map(|(a, b)| (*a + *b) * 0.5);
        assert!(points.len() < 200);
        for middle in middles {
            assert!(50.0 - middle.length() <= 0.0501);
        }
    }

    #[test]
    fn a_rounded_square_loses_only_its_corners() {
        let corner = |x, y| (Point::new(x, y), 2.0);
        let square = Outline::rounded(&[
            corner(0.0, 0.0),
            corner(10.0, 0.0),
            corner(10.0, 10.0),
            corner(0.0, 10.0),
        ]);
        let wanted = 100.0 - (4.0 - core::f64::consts::PI) * 4.0;
        assert!((area(&square.flatten(0.0001)) - wanted).abs() < 0.01);
        assert!(square.closed);
    }

    #[test]
    fn a_radius_too_large_for_its_edges_is_cut_down() {
        let corner = |x, y| (Point::new(x, y), 99.0);
        let end = Outline::rounded(&[
            corner(0.0, 0.0),
            corner(4.0, 0.0),
            corner(4.0, 4.0),
            corner(0.0, 4.0),
        ]);
        assert!((area(&end.flatten(0.0001)) - core::f64::consts::PI * 4.0).abs() < 0.01);
    }

    #[test]
    fn sharp_and_round_corners_may_follow_each_other() {
        let at = Point::new;
        let corners = [
            (at(0.0, 0.0), 0.0),
            (at(8.0, 0.0), 2.0),
            (at(8.0, 6.0), 0.0),
            (at(0.0, 6.0), 0.0),
        ];
        let outline = Outline::rounded(&corners);
        let wanted = 48.0 - (4.0 - core::f64::consts::PI);
        assert!((area(&outline.flatten(0.0001)) - wanted).abs() < 0.01);
    }

    #[test]
    fn an_arc_of_no_length_is_no_full_turn() {
        let at = Point::new(5.0, 0.0);
        let sweep = Sweep::new(at, at, Point::default(), true);
        assert_eq!(sweep.turn, 0.0);
    }

    #[test]
    fn a_stadium_is_as_long_as_its_segment_and_two_radii() {
        let stadium = Outline::stadium(Point::new(0.0, 0.0), Point::new(0.0, 8.0), 4.0);
        let extent = stadium.extent();
        assert!((extent.height() - 16.0).abs() < 0.02 && (extent.width() - 8.0).abs() < 0.02);
    }
}
