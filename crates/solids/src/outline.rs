//! Closed outlines as polylines, and the shapes that parts are made of.
//!
//! Arcs become chords no further than [`CHORD`] from the true curve, with their points on it. Every
//! outline made here runs counter-clockwise.

use core::f64::consts::{PI, TAU};

use latchwright_geometry::{Point, trig};
use latchwright_model::key::inner_corner_ratio;

/// How far a chord may be from its arc, mm.
pub const CHORD: f64 = 0.01;

/// Most chords round a full circle, whatever its size.
const MOST_CHORDS: u32 = 720;

/// A closed polyline, mm; the last point is joined to the first.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Outline {
    points: Vec<Point>,
}

/// Chords for a full circle of this radius: a multiple of four, so that its extremes are true.
fn chords(radius: f64) -> u32 {
    let ratio = CHORD / radius.abs().max(CHORD);
    let half_angle = trig::acos(1.0 - ratio);
    let wanted = (PI / half_angle / 4.0).ceil() * 4.0;
    let mut count = 12;
    while f64::from(count) < wanted && count < MOST_CHORDS {
        count += 4;
    }
    count
}

impl Outline {
    /// The outline through these points, in their order; points that are no numbers are left out.
    pub fn new(points: Vec<Point>) -> Self {
        let mut points = points;
        points.retain(|point| point.x.is_finite() && point.y.is_finite());
        Self { points }
    }

    /// Its points, mm.
    pub fn points(&self) -> &[Point] {
        &self.points
    }

    /// A circle.
    pub fn circle(centre: Point, radius: f64) -> Self {
        let count = chords(radius);
        let points = (0..count)
            .map(|index| {
                centre + Point::at_angle(TAU * f64::from(index) / f64::from(count)) * radius
            })
            .collect();
        Self::new(points)
    }

    /// A regular polygon about the origin with `sides` flats at `apothem` (mm); one corner points
    /// to `angle` (radians, counter-clockwise from +x).
    pub fn regular(sides: u32, apothem: f64, angle: f64) -> Self {
        let sides = sides.max(3);
        let reach = apothem / trig::cos(PI / f64::from(sides));
        let points = (0..sides)
            .map(|index| Point::at_angle(angle + TAU * f64::from(index) / f64::from(sides)) * reach)
            .collect();
        Self::new(points)
    }

    /// The star in which a post of `sides` flats seats in `positions` ways: all polygons of this
    /// apothem (mm) laid over one another. One tip points to `angle` (radians).
    ///
    /// With as many positions as sides it is that polygon itself.
    pub fn star(positions: u32, sides: u32, apothem: f64, angle: f64) -> Self {
        let (positions, sides) = (positions.max(3), sides.max(3));
        if positions <= sides {
            return Self::regular(sides, apothem, angle);
        }
        let reach = apothem / trig::cos(PI / f64::from(sides));
        let inner = reach * inner_corner_ratio(positions, sides);
        let half_step = PI / f64::from(positions);
        let points = (0..positions)
            .flat_map(|index| {
                let tip = angle + 2.0 * half_step * f64::from(index);
                [
                    Point::at_angle(tip) * reach,
                    Point::at_angle(tip + half_step) * inner,
                ]
            })
            .collect();
        Self::new(points)
    }

    /// A rectangle from its lower left to its upper right corner.
    pub fn rectangle(low: Point, high: Point) -> Self {
        Self::new(vec![
            low,
            Point::new(high.x, low.y),
            high,
            Point::new(low.x, high.y),
        ])
    }

    /// A rectangle of this width (x) and depth (y) about `centre`.
    pub fn block(centre: Point, width: f64, depth: f64) -> Self {
        let half = Point::new(width / 2.0, depth / 2.0);
        Self::rectangle(centre - half, centre + half)
    }

    /// All points within `radius` of the line from `a` to `b`.
    pub fn capsule(a: Point, b: Point, radius: f64) -> Self {
        let along = b - a;
        let facing = trig::atan2(along.y, along.x);
        let half = chords(radius) / 2;
        let arc = |centre: Point, from: f64| {
            (0..=half).map(move |index| {
                centre + Point::at_angle(from + PI * f64::from(index) / f64::from(half)) * radius
            })
        };
        let points = arc(b, facing - PI / 2.0)
            .chain(arc(a, facing + PI / 2.0))
            .collect();
        Self::new(points)
    }

    /// The polyline given by a radius at each angle about the origin, `count` points from `angle` on.
    pub fn polar(count: u32, angle: f64, radius_at: impl Fn(f64) -> f64) -> Self {
        let points = (0..count)
            .map(|index| {
                let turn = TAU * f64::from(index) / f64::from(count.max(1));
                Point::at_angle(angle + turn) * radius_at(turn)
            })
            .collect();
        Self::new(points)
    }

    /// The same with every corner rounded to `radius` (mm), or as far as half its shorter edge lets.
    #[must_use]
    pub fn rounded(&self, radius: f64) -> Self {
        let count = self.points.len();
        if count < 3 || radius <= 0.0 {
            return self.clone();
        }
        let mut points = Vec::new();
        for (index, corner) in self.points.iter().enumerate() {
            let before = self.points[(index + count - 1) % count];
            let after = self.points[(index + 1) % count];
            points.extend(fillet(before, *corner, after, radius));
        }
        Self::new(points)
    }

    /// Area, mm²; above 0 if it runs counter-clockwise.
    pub fn signed_area(&self) -> f64 {
        let count = self.points.len();
        let twice: f64 = (0..count)
            .map(|index| self.points[index].cross(self.points[(index + 1) % count]))
            .sum();
        twice / 2.0
    }

    /// The same, running counter-clockwise.
    #[must_use]
    pub fn counter_clockwise(mut self) -> Self {
        if self.signed_area() < 0.0 {
            self.points.reverse();
        }
        self
    }

    /// The same, run the other way.
    #[must_use]
    pub fn reversed(mut self) -> Self {
        self.points.reverse();
        self
    }

    /// Moved by `by`.
    #[must_use]
    pub fn moved(&self, by: Point) -> Self {
        Self::new(self.points.iter().map(|point| *point + by).collect())
    }

    /// Turned about the origin by `angle` radians, counter-clockwise.
    #[must_use]
    pub fn turned(&self, angle: f64) -> Self {
        Self::new(
            self.points
                .iter()
                .map(|point| point.rotated(angle))
                .collect(),
        )
    }

    /// Scaled about the origin by `factor`, which is above 0.
    #[must_use]
    pub fn scaled(&self, factor: f64) -> Self {
        Self::new(self.points.iter().map(|point| *point * factor).collect())
    }

    /// The same without points that lie within `off` (mm) of the line between those that are kept.
    #[must_use]
    pub fn simplified(&self, off: f64) -> Self {
        let Some(first) = self.points.first() else {
            return self.clone();
        };
        let mut kept = vec![*first];
        let (mut from, mut passed) = (*first, Vec::new());
        for point in self.points.iter().skip(1).chain([first]) {
            let near = |over: &Point| over.distance_to_segment(from, *point) <= off;
            if !passed.iter().all(near) {
                from = passed.last().copied().unwrap_or(from);
                kept.push(from);
                passed.clear();
            }
            passed.push(*point);
        }
        Self::new(kept)
    }

    /// Lowest and highest corner of the box around it; `None` without points.
    pub fn bounds(&self) -> Option<(Point, Point)> {
        let first = *self.points.first()?;
        Some(
            self.points
                .iter()
                .fold((first, first), |(low, high), point| {
                    (
                        Point::new(low.x.min(point.x), low.y.min(point.y)),
                        Point::new(high.x.max(point.x), high.y.max(point.y)),
                    )
                }),
        )
    }

    /// Its edges, in order.
    pub fn edges(&self) -> impl Iterator<Item = (Point, Point)> + '_ {
        let next = self.points.iter().cycle().skip(1);
        self.points.iter().zip(next).map(|(from, to)| (*from, *to))
    }
}

/// The arc that rounds one corner, from the edge before to the edge after.
fn fillet(before: Point, corner: Point, after: Point, radius: f64) -> Vec<Point> {
    let (back, ahead) = (before - corner, after - corner);
    let (back_length, ahead_length) = (back.length(), ahead.length());
    if back_length < 1e-9 || ahead_length < 1e-9 {
        return vec![corner];
    }
    let (back, ahead) = (back * (1.0 / back_length), ahead * (1.0 / ahead_length));
    let half = trig::acos(back.dot(ahead)) / 2.0;
    let tangent = trig::sin(half) / trig::cos(half).max(1e-9);
    if !(1e-3..=PI / 2.0 - 1e-3).contains(&half) {
        return vec![corner];
    }
    let most = back_length.min(ahead_length) * 0.49;
    let cut = (radius / tangent).min(most);
    let radius = cut * tangent;
    let middle = back + ahead;
    let centre = corner + middle * (radius / trig::sin(half) / middle.length().max(1e-12));
    let (from, to) = (corner + back * cut - centre, corner + ahead * cut - centre);
    let sweep = trig::atan2(from.cross(to), from.dot(to));
    let parts = (f64::from(chords(radius)) * sweep.abs() / TAU)
        .ceil()
        .max(1.0);
    let mut points = Vec::new();
    let mut step = 0.0;
    while step <= parts {
        points.push(centre + from.rotated(sweep * step / parts));
        step += 1.0;
    }
    points
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_circles_chords_stay_within_a_hundredth_of_a_millimetre() {
        for radius in [0.3, 2.0, 18.0, 90.0] {
            let circle = Outline::circle(Point::default(), radius);
            for (from, to) in circle.edges() {
                let middle = (from + to) * 0.5;
                assert!(radius - middle.length() <= CHORD + 1e-12, "radius {radius}");
                assert!((from.length() - radius).abs() < 1e-12);
            }
        }
    }

    #[test]
    fn a_star_is_its_polygons_laid_over_one_another() {
        // area of 2 squares of apothem a, turned by 45 degrees: 8 a² (√2 tip less four corners):
        // one square 4 a² and four tips, each a right triangle of height (√2 − 1) a
        let star = Outline::star(8, 4, 4.0, 0.3);
        let tip = (core::f64::consts::SQRT_2 - 1.0) * 4.0;
        assert!((star.signed_area() - (64.0 + 4.0 * tip * tip)).abs() < 1e-9);
        assert_eq!(star.points().len(), 16);
    }

    #[test]
    fn a_rounded_square_loses_what_its_corners_lose() {
        let square = Outline::block(Point::default(), 10.0, 10.0).rounded(2.0);
        let lost = (4.0 - PI) * 4.0;
        assert!((square.signed_area() - (100.0 - lost)).abs() < 0.1);
        assert!(square.signed_area() < 100.0 - lost + 1e-9);
    }

    #[test]
    fn a_finely_cut_curve_is_simplified_no_further_than_asked() {
        let fine = Outline::polar(7_000, 0.0, |_| 2.0);
        let plain = fine.simplified(0.005);
        assert!(plain.points().len() < 120, "{}", plain.points().len());
        for (from, to) in plain.edges() {
            assert!(2.0 - ((from + to) * 0.5).length() < 0.0051);
        }
        let block = Outline::block(Point::default(), 3.0, 4.0);
        assert_eq!(block.simplified(0.005), block);
    }

    #[test]
    fn a_capsule_runs_counter_clockwise() {
        let capsule = Outline::capsule(Point::new(1.0, 2.0), Point::new(1.0, 8.0), 2.0);
        assert!((capsule.signed_area() - (24.0 + 4.0 * PI)).abs() < 0.2);
    }

    #[test]
    fn points_that_are_no_numbers_are_left_out() {
        let outline = Outline::new(vec![Point::new(f64::NAN, 0.0), Point::new(1.0, 1.0)]);
        assert_eq!(outline.points().len(), 1);
    }
}
