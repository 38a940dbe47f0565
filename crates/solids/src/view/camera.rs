//! From where a scene is looked at: without perspective, so that equal lengths stay equal.

use latchwright_geometry::trig;

use super::scene::Scene;
use crate::mesh::{Vector3, dot, less};

/// Least and most pixels for a millimetre.
const ZOOM: (f64, f64) = (0.01, 1000.0);

/// Furthest that the middle of the picture may lie from the origin, mm.
const FURTHEST: f64 = 100_000.0;

/// Clear border round a fitted scene, as a share of the picture.
const BORDER: f64 = 0.06;

/// A way of looking at a scene.
///
/// Numbers that are none, and zooms out of reach, are tamed when a picture is made: a camera never
/// fails.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Camera {
    /// How far one has walked round the scene, counter-clockwise seen from above, degrees; 0 looks
    /// along +y, with x to the right.
    pub turn: f64,
    /// How far from above, degrees: 0 from the side, 90 straight down, below 0 from beneath.
    pub tilt: f64,
    /// Pixels a millimetre.
    pub zoom: f64,
    /// What lies in the middle of the picture, mm.
    pub centre: Vector3,
}

impl Default for Camera {
    /// From the front right, from above, 3 pixels a millimetre.
    fn default() -> Self {
        Self {
            turn: -30.0,
            tilt: 35.0,
            zoom: 3.0,
            centre: Vector3::default(),
        }
    }
}

/// Directions of a picture in the scene.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Axes {
    pub right: Vector3,
    pub up: Vector3,
    /// Out of the picture, towards the eye.
    pub toward: Vector3,
}

impl Axes {
    /// A direction of the scene as right, up and toward.
    pub(super) fn of(&self, way: Vector3) -> Vector3 {
        [
            dot(self.right, way),
            dot(self.up, way),
            dot(self.toward, way),
        ]
    }
}

impl Camera {
    /// Looks at all of a scene from this side in a picture of this size.
    pub fn fit(scene: &Scene, turn: f64, tilt: f64, size: (u32, u32)) -> Self {
        let mut camera = Self {
            turn,
            tilt,
            ..Self::default()
        }
        .tamed();
        let axes = camera.axes();
        let mut low = [f64::INFINITY; 3];
        let mut high = [f64::NEG_INFINITY; 3];
        scene.each_outer_point(|place| {
            for (axis, value) in axes.of(place).into_iter().enumerate() {
                low[axis] = low[axis].min(value);
                high[axis] = high[axis].max(value);
            }
        });
        if low[0] > high[0] {
            return camera;
        }
        let middle = [0, 1, 2].map(|axis| f64::midpoint(low[axis], high[axis]));
        camera.centre = [0, 1, 2].map(|axis| {
            axes.right[axis] * middle[0] + axes.up[axis] * middle[1] + axes.toward[axis] * middle[2]
        });
        let space = |pixels: u32| f64::from(pixels.max(1)) * (1.0 - 2.0 * BORDER);
        let wide = space(size.0) / (high[0] - low[0]).max(0.1);
        let tall = space(size.1) / (high[1] - low[1]).max(0.1);
        camera.zoom = wide.min(tall);
        camera.tamed()
    }

    /// Turned by a drag of this many pixels, half a degree each: the near side follows the hand.
    #[must_use]
    pub fn dragged(&self, right: f64, down: f64) -> Self {
        Self {
            turn: self.turn - right / 2.0,
            tilt: self.tilt + down / 2.0,
            ..*self
        }
        .tamed()
    }

    /// Moved by this many pixels: the scene follows the hand.
    #[must_use]
    pub fn moved(&self, right: f64, down: f64) -> Self {
        let tame = self.tamed();
        let axes = tame.axes();
        let centre = [0, 1, 2].map(|axis| {
            let by = axes.right[axis] * right - axes.up[axis] * down;
            tame.centre[axis] - by / tame.zoom
        });
        Self { centre, ..tame }.tamed()
    }

    /// Zoomed by a factor about the pixel (x, y) of a picture of this size: what lies there stays.
    #[must_use]
    pub fn zoomed(&self, factor: f64, size: (u32, u32), x: f64, y: f64) -> Self {
        let before = self.tamed();
        let after = Self {
            zoom: before.zoom * factor,
            ..before
        }
        .tamed();
        let kept = before.zoom / after.zoom;
        let (right, down) = (x - f64::from(size.0) / 2.0, y - f64::from(size.1) / 2.0);
        // how far the scene under the pixel has moved away from it, in pixels of the new zoom
        after.moved(right - right / kept, down - down / kept)
    }

    /// With every number within reach; what is no number as by default.
    #[must_use]
    pub fn tamed(&self) -> Self {
        let usual = Self::default();
        let or = |value: f64, usual: f64| if value.is_finite() { value } else { usual };
        Self {
            turn: or(self.turn, usual.turn).rem_euclid(360.0),
            tilt: or(self.tilt, usual.tilt).clamp(-90.0, 90.0),
            zoom: or(self.zoom, usual.zoom).clamp(ZOOM.0, ZOOM.1),
            centre: self
                .centre
                .map(|value| or(value, 0.0).clamp(-FURTHEST, FURTHEST)),
        }
    }

    /// Its directions; exact at quarter turns.
    pub(super) fn axes(&self) -> Axes {
        let (sin, cos) = sin_cos(self.turn);
        let (high, flat) = sin_cos(self.tilt);
        Axes {
            right: [cos, sin, 0.0],
            up: [-sin * high, cos * high, flat],
            toward: [sin * flat, -cos * flat, high],
        }
    }

    /// A place of the scene as right, up and toward of the middle of the picture, mm.
    pub(super) fn seen(&self, axes: &Axes, place: Vector3) -> Vector3 {
        axes.of(less(place, self.centre))
    }
}

fn sin_cos(degrees: f64) -> (f64, f64) {
    if degrees.rem_euclid(90.0) == 0.0 {
        let quarter = (degrees / 90.0).rem_euclid(4.0);
        return if quarter == 0.0 {
            (0.0, 1.0)
        } else if quarter == 1.0 {
            (1.0, 0.0)
        } else if quarter == 2.0 {
            (0.0, -1.0)
        } else {
            (-1.0, 0.0)
        };
    }
    let angle = trig::radians(degrees);
    (trig::sin(angle), trig::cos(angle))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mesh::cross;

    #[test]
    fn the_axes_are_those_of_a_right_hand_from_every_side() {
        for turn in [0.0, 30.0, 90.0, 211.0] {
            for tilt in [-90.0, -20.0, 0.0, 45.0, 90.0] {
                let axes = Camera {
                    turn,
                    tilt,
                    ..Camera::default()
                }
                .axes();
                let third = cross(axes.right, axes.up);
                assert!((0..3).all(|axis| (third[axis] - axes.toward[axis]).abs() < 1e-12));
            }
        }
    }

    #[test]
    fn from_above_x_lies_to_the_right_and_y_up() {
        let axes = Camera {
            turn: 0.0,
            tilt: 90.0,
            ..Camera::default()
        }
        .axes();
        assert_eq!(axes.right, [1.0, 0.0, 0.0]);
        assert_eq!(axes.up, [0.0, 1.0, 0.0]);
        assert_eq!(axes.toward, [0.0, 0.0, 1.0]);
    }

    #[test]
    fn what_lies_under_the_mouse_stays_there_when_it_zooms() {
        let camera = Camera::default();
        let after = camera.zoomed(1.7, (800, 600), 620.0, 110.0);
        let place = |camera: &Camera| {
            let axes = camera.axes();
            let (right, up) = (220.0 / camera.zoom, 190.0 / camera.zoom);
            [0, 1, 2]
                .map(|axis| camera.centre[axis] + axes.right[axis] * right + axes.up[axis] * up)
        };
        let (one, two) = (place(&camera), place(&after));
        let axes = camera.axes();
        let apart = axes.of(less(one, two));
        assert!(apart[0].abs() < 1e-9 && apart[1].abs() < 1e-9, "{apart:?}");
    }

    #[test]
    fn what_is_near_follows_the_hand() {
        let camera = Camera::default();
        // a point 10 mm nearer than the centre
        let near = camera.axes().toward.map(|value| value * 10.0);
        let seen = |camera: Camera| camera.seen(&camera.axes(), near);
        let [right, up, _] = seen(camera.dragged(20.0, 0.0));
        assert!(right > 1.0 && up.abs() < 0.2, "{right} {up}");
        let [right, up, _] = seen(camera.dragged(0.0, 20.0));
        assert!(right.abs() < 1e-9 && up < -1.0, "{right} {up}");
        let moved = camera.moved(30.0, 12.0);
        let [right, up, _] = moved.seen(&moved.axes(), camera.centre);
        assert!((right - 10.0).abs() < 1e-9 && (up + 4.0).abs() < 1e-9);
    }

    #[test]
    fn nonsense_becomes_a_camera_that_can_be_used() {
        let odd = Camera {
            turn: f64::NAN,
            tilt: 1e9,
            zoom: f64::NEG_INFINITY,
            centre: [f64::INFINITY, 0.0, -1e300],
        };
        let tame = odd.tamed();
        assert_eq!(tame.tilt, 90.0);
        assert_eq!(tame.zoom, 3.0);
        assert_eq!(tame.centre, [0.0, 0.0, -FURTHEST]);
        assert_eq!(tame, tame.tamed());
        assert_eq!(odd.dragged(f64::NAN, 0.0).moved(f64::NAN, 1e308), {
            let again = odd.dragged(f64::NAN, 0.0).moved(f64::NAN, 1e308);
            again.tamed()
        });
    }
}
