//! A disc that travels straight ahead, and when it first touches a point, an edge or a hollow.
//!
//! The travelling disc (a pin, radius r) is shrunk to its centre and what it may meet is grown by
//! r. Touching is allowed: a path that grazes at exactly r is not stopped.

use crate::{EPSILON, Point, trig};

/// The path of a centre: from `start` along the unit vector `direction`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ray {
    /// Where the centre is when nothing has moved.
    pub start: Point,
    /// Where it goes; length one.
    pub direction: Point,
}

impl Ray {
    /// The centre after `travel` millimetres.
    pub fn at(&self, travel: f64) -> Point {
        self.start + self.direction * travel
    }

    /// Travel at which the centre comes within `radius` of `centre`, from outside.
    ///
    /// `None` if it never does, if it only grazes, or if that lies behind the start.
    pub fn enters_circle(&self, centre: Point, radius: f64) -> Option<f64> {
        let to_centre = centre - self.start;
        let aside = self.direction.cross(to_centre);
        if aside.abs() >= radius - EPSILON {
            return None;
        }
        let travel = self.direction.dot(to_centre) - trig::sqrt(radius * radius - aside * aside);
        (travel >= -EPSILON).then_some(travel.max(0.0))
    }

    /// Travel at which the centre leaves the circle of `radius` about `centre` from inside.
    ///
    /// `None` if the path misses the circle by more than the rounding slack.
    pub fn leaves_circle(&self, centre: Point, radius: f64) -> Option<f64> {
        let to_centre = centre - self.start;
        let aside = self.direction.cross(to_centre);
        if aside.abs() > radius + EPSILON {
            return None;
        }
        let travel = self.direction.dot(to_centre) + trig::sqrt(radius * radius - aside * aside);
        (travel >= -EPSILON).then_some(travel.max(0.0))
    }

    /// Travel at which the centre comes within `radius` of the inside of the edge from `a` to `b`,
    /// coming from the side of the unit vector `void`.
    ///
    /// Ends count as their own points ([`Ray::enters_circle`]), not here.
    pub fn meets_edge(&self, a: Point, b: Point, void: Point, radius: f64) -> Option<f64> {
        let approach = self.direction.dot(void);
        if approach >= -1e-12 {
            return None;
        }
        let travel = ((self.start - a).dot(void) - radius) / -approach;
        if travel < -EPSILON {
            return None;
        }
        let along = b - a;
        let t = (self.at(travel) - a).dot(along);
        (0.0..=along.dot(along))
            .contains(&t)
            .then_some(travel.max(0.0))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn up_from(x: f64) -> Ray {
        Ray {
            start: Point::new(x, -10.0),
            direction: Point::new(0.0, 1.0),
        }
    }

    #[test]
    fn a_circle_is_entered_at_its_near_side() {
        assert_eq!(up_from(0.0).enters_circle(Point::default(), 4.0), Some(6.0));
        assert_eq!(
            up_from(0.0).leaves_circle(Point::default(), 4.0),
            Some(14.0)
        );
        assert_eq!(up_from(3.0).enters_circle(Point::default(), 5.0), Some(6.0));
    }

    #[test]
    fn a_graze_is_not_a_hit() {
        assert_eq!(up_from(4.0).enters_circle(Point::default(), 4.0), None);
    }

    #[test]
    fn an_edge_is_met_only_between_its_ends() {
        let (a, b, down) = (
            Point::new(-1.0, 0.0),
            Point::new(1.0, 0.0),
            Point::new(0.0, -1.0),
        );
        assert_eq!(up_from(0.5).meets_edge(a, b, down, 2.0), Some(8.0));
        assert_eq!(up_from(1.5).meets_edge(a, b, down, 2.0), None);
        let wall = Ray {
            start: Point::new(0.0, -3.0),
            direction: Point::new(1.0, 0.0),
        };
        assert_eq!(wall.meets_edge(a, b, down, 2.0), None);
    }
}
