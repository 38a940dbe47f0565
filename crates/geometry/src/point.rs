//! A point or vector of the plane, in millimetres.

use core::ops::{Add, Mul, Neg, Sub};

use crate::trig;

/// A point, or the vector to it from the origin; millimetres, x to the right, y up.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Point {
    /// To the right.
    pub x: f64,
    /// Up the page, which on a lid is towards the hinge.
    pub y: f64,
}

impl Point {
    /// The point (x, y).
    pub const fn new(x: f64, y: f64) -> Self {
        Self { x, y }
    }

    /// The unit vector at `angle` radians, counter-clockwise from +x.
    pub fn at_angle(angle: f64) -> Self {
        Self::new(trig::cos(angle), trig::sin(angle))
    }

    /// Length of the vector.
    pub fn length(self) -> f64 {
        trig::hypot(self.x, self.y)
    }

    /// Scalar product.
    pub fn dot(self, other: Self) -> f64 {
        self.x * other.x + self.y * other.y
    }

    /// The z of the vector product: positive if `other` lies counter-clockwise of `self`.
    pub fn cross(self, other: Self) -> f64 {
        self.x * other.y - self.y * other.x
    }

    /// The vector turned a quarter turn counter-clockwise.
    #[must_use]
    pub fn perpendicular(self) -> Self {
        Self::new(-self.y, self.x)
    }

    /// The vector turned counter-clockwise by `angle` radians about the origin.
    #[must_use]
    pub fn rotated(self, angle: f64) -> Self {
        let (sin, cos) = (trig::sin(angle), trig::cos(angle));
        Self::new(self.x * cos - self.y * sin, self.x * sin + self.y * cos)
    }

    /// Distance between two points.
    pub fn distance(self, other: Self) -> f64 {
        (self - other).length()
    }

    /// Distance from this point to the segment from `a` to `b`.
    pub fn distance_to_segment(self, a: Self, b: Self) -> f64 {
        let along = b - a;
        let square = along.dot(along);
        let t = if square > 0.0 {
            ((self - a).dot(along) / square).clamp(0.0, 1.0)
        } else {
            0.0
        };
        self.distance(a + along * t)
    }
}

/// The least distance between the segments from `a` to `b` and from `c` to `d`; zero if they cross.
pub fn segment_distance(a: Point, b: Point, c: Point, d: Point) -> f64 {
    let (ab, cd) = (b - a, d - c);
    let crosses =
        ab.cross(c - a) * ab.cross(d - a) < 0.0 && cd.cross(a - c) * cd.cross(b - c) < 0.0;
    if crosses {
        return 0.0;
    }
    let ends = [
        a.distance_to_segment(c, d),
        b.distance_to_segment(c, d),
        c.distance_to_segment(a, b),
        d.distance_to_segment(a, b),
    ];
    ends.into_iter().fold(f64::INFINITY, f64::min)
}

impl Add for Point {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::new(self.x + other.x, self.y + other.y)
    }
}

impl Sub for Point {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::new(self.x - other.x, self.y - other.y)
    }
}

impl Mul<f64> for Point {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self::new(self.x * factor, self.y * factor)
    }
}

impl Neg for Point {
    type Output = Self;
    fn neg(self) -> Self {
        Self::new(-self.x, -self.y)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_quarter_turn_takes_x_to_y() {
        let turned = Point::new(3.0, 0.0).rotated(core::f64::consts::FRAC_PI_2);
        assert!(turned.distance(Point::new(0.0, 3.0)) < 1e-12);
    }

    #[test]
    fn crossing_segments_are_at_distance_zero() {
        let p = Point::new;
        assert_eq!(
            segment_distance(p(0.0, 0.0), p(2.0, 2.0), p(0.0, 2.0), p(2.0, 0.0)),
            0.0
        );
        assert_eq!(
            segment_distance(p(0.0, 0.0), p(2.0, 0.0), p(0.0, 3.0), p(2.0, 3.0)),
            3.0
        );
    }

    #[test]
    fn a_segment_of_no_length_is_a_point() {
        let p = Point::new(3.0, 4.0);
        assert_eq!(
            p.distance_to_segment(Point::default(), Point::default()),
            5.0
        );
    }
}
