//! An upright rectangle: bounds of drawings and of what is in them.

use crate::Point;

/// An upright rectangle in millimetres, x to the right, y up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rect {
    /// Lower left corner.
    pub min: Point,
    /// Upper right corner.
    pub max: Point,
}

impl Rect {
    /// The rectangle between two opposite corners, in either order.
    pub fn new(a: Point, b: Point) -> Self {
        Self {
            min: Point::new(a.x.min(b.x), a.y.min(b.y)),
            max: Point::new(a.x.max(b.x), a.y.max(b.y)),
        }
    }

    /// The rectangle of `width` × `height` mm about `centre`.
    pub fn about(centre: Point, width: f64, height: f64) -> Self {
        let half = Point::new(width.abs() / 2.0, height.abs() / 2.0);
        Self {
            min: centre - half,
            max: centre + half,
        }
    }

    /// The least rectangle around `points`; `None` if there are none.
    pub fn around(points: impl IntoIterator<Item = Point>) -> Option<Self> {
        points
            .into_iter()
            .map(|point| Self {
                min: point,
                max: point,
            })
            .reduce(Self::union)
    }

    /// Size along x, mm.
    pub fn width(self) -> f64 {
        self.max.x - self.min.x
    }

    /// Size along y, mm.
    pub fn height(self) -> f64 {
        self.max.y - self.min.y
    }

    /// Its middle.
    pub fn centre(self) -> Point {
        (self.min + self.max) * 0.5
    }

    /// The least rectangle that holds both.
    #[must_use]
    pub fn union(self, other: Self) -> Self {
        Self {
            min: Point::new(self.min.x.min(other.min.x), self.min.y.min(other.min.y)),
            max: Point::new(self.max.x.max(other.max.x), self.max.y.max(other.max.y)),
        }
    }

    /// The rectangle with `by` mm more on every side; never turned inside out.
    #[must_use]
    pub fn grown(self, by: f64) -> Self {
        let by = by.max(-self.width().min(self.height()) / 2.0);
        let margin = Point::new(by, by);
        Self {
            min: self.min - margin,
            max: self.max + margin,
        }
    }

    /// Whether `other` lies inside or on the edge, to within a ten-thousandth of a millimetre.
    pub fn holds(self, other: Self) -> bool {
        let slack = 1e-4;
        other.min.x >= self.min.x - slack
            && other.min.y >= self.min.y - slack
            && other.max.x <= self.max.x + slack
            && other.max.y <= self.max.y + slack
    }

    /// Whether the two have an area in common; touching edges have none.
    pub fn overlaps(self, other: Self) -> bool {
        self.min.x < other.max.x
            && other.min.x < self.max.x
            && self.min.y < other.max.y
            && other.min.y < self.max.y
    }

    /// Its image in the upright line at `axis_x`.
    #[must_use]
    pub fn mirrored(self, axis_x: f64) -> Self {
        let mirror = |x: f64| 2.0 * axis_x - x;
        Self {
            min: Point::new(mirror(self.max.x), self.min.y),
            max: Point::new(mirror(self.min.x), self.max.y),
        }
    }

    /// The corners, counter-clockwise from the lower left.
    pub fn corners(self) -> [Point; 4] {
        let Self { min, max } = self;
        [min, Point::new(max.x, min.y), max, Point::new(min.x, max.y)]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn touching_rectangles_do_not_overlap() {
        let left = Rect::new(Point::new(0.0, 0.0), Point::new(2.0, 2.0));
        let right = Rect::new(Point::new(2.0, 0.0), Point::new(4.0, 2.0));
        assert!(!left.overlaps(right));
        assert!(left.overlaps(right.grown(0.1)));
        assert!(left.union(right).holds(right));
    }

    #[test]
    fn shrinking_too_far_stops_at_the_middle() {
        let small = Rect::about(Point::new(1.0, 1.0), 2.0, 4.0).grown(-10.0);
        assert_eq!(small.width(), 0.0);
        assert_eq!(small.height(), 2.0);
    }
}
