//! A surface of indexed triangles, in millimetres, z up.

use latchwright_geometry::trig;

/// A point of space, mm.
pub type Vector3 = [f64; 3];

/// Triangles that share their points by index, counter-clockwise seen from outside.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Mesh {
    /// Points, mm.
    pub points: Vec<Vector3>,
    /// Three points a triangle.
    pub triangles: Vec<[u32; 3]>,
}

/// The box around a mesh, mm.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Extent {
    /// Lowest corner.
    pub low: Vector3,
    /// Highest corner.
    pub high: Vector3,
}

impl Extent {
    /// Sizes along x, y and z, mm.
    pub fn size(&self) -> Vector3 {
        [
            self.high[0] - self.low[0],
            self.high[1] - self.low[1],
            self.high[2] - self.low[2],
        ]
    }
}

/// Where a mesh is put: first stood up and turned over (or not), then turned about z, then moved.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Pose {
    /// Stood up again, if it was [laid](Mesh::laid).
    pub stood: bool,
    /// Turned over about the x axis: y and z change sign.
    pub over: bool,
    /// Then counter-clockwise about z seen from above, degrees.
    pub turn_deg: f64,
    /// Then moved, mm.
    pub to: Vector3,
}

impl Pose {
    /// Moved only.
    pub fn to(x: f64, y: f64, z: f64) -> Self {
        Self {
            to: [x, y, z],
            ..Self::default()
        }
    }

    /// A point of the part, where it comes to stand.
    pub fn of(&self, place: Vector3) -> Vector3 {
        let place = if self.stood {
            [place[0], place[2], -place[1]]
        } else {
            place
        };
        let sign = if self.over { -1.0 } else { 1.0 };
        let [x, y, z] = [place[0], place[1] * sign, place[2] * sign];
        let angle = trig::radians(self.turn_deg);
        let (sin, cos) = quarter(self.turn_deg).unwrap_or((trig::sin(angle), trig::cos(angle)));
        [
            x * cos - y * sin + self.to[0],
            x * sin + y * cos + self.to[1],
            z + self.to[2],
        ]
    }
}

/// Sine and cosine of whole quarter turns, exact.
fn quarter(degrees: f64) -> Option<(f64, f64)> {
    let quarters = [(0.0, 1.0), (1.0, 0.0), (0.0, -1.0), (-1.0, 0.0)];
    let turn = degrees.rem_euclid(360.0);
    [0.0, 90.0, 180.0, 270.0]
        .iter()
        .position(|right| *right == turn)
        .and_then(|index| quarters.get(index).copied())
}

impl Mesh {
    /// A box from the origin to (x, y, z).
    pub fn cuboid(x: f64, y: f64, z: f64) -> Self {
        let points = (0..8)
            .map(|corner| {
                let on = |bit: u32, size: f64| if corner >> bit & 1 == 1 { size } else { 0.0 };
                [on(0, x), on(1, y), on(2, z)]
            })
            .collect();
        let quads: [[u32; 4]; 6] = [
            [0, 2, 3, 1],
            [4, 5, 7, 6],
            [0, 1, 5, 4],
            [2, 6, 7, 3],
            [0, 4, 6, 2],
            [1, 3, 7, 5],
        ];
        let triangles = quads
            .iter()
            .flat_map(|[a, b, c, d]| [[*a, *b, *c], [*a, *c, *d]])
            .collect();
        Self { points, triangles }
    }

    /// The three corners of a triangle.
    pub fn corners(&self, triangle: [u32; 3]) -> [Vector3; 3] {
        triangle.map(|index| self.points.get(index as usize).copied().unwrap_or_default())
    }

    /// Signed volume, mm³: above 0 if the triangles face outwards.
    pub fn volume(&self) -> f64 {
        let origin = self.points.first().copied().unwrap_or_default();
        let six: f64 = self
            .triangles
            .iter()
            .map(|triangle| {
                let [a, b, c] = self.corners(*triangle).map(|corner| less(corner, origin));
                dot(a, cross(b, c))
            })
            .sum();
        six / 6.0
    }

    /// Area of the surface, mm².
    pub fn area(&self) -> f64 {
        let twice: f64 = self
            .triangles
            .iter()
            .map(|triangle| {
                let [a, b, c] = self.corners(*triangle);
                length(cross(less(b, a), less(c, a)))
            })
            .sum();
        twice / 2.0
    }

    /// The box around it; all zero without points.
    pub fn extent(&self) -> Extent {
        let Some(first) = self.points.first() else {
            return Extent::default();
        };
        let mut extent = Extent {
            low: *first,
            high: *first,
        };
        for point in &self.points {
            for (axis, value) in point.iter().enumerate() {
                extent.low[axis] = extent.low[axis].min(*value);
                extent.high[axis] = extent.high[axis].max(*value);
            }
        }
        extent
    }

    /// Put elsewhere; what faced outwards still does.
    #[must_use]
    pub fn posed(&self, pose: &Pose) -> Self {
        Self {
            points: self.points.iter().map(|point| pose.of(*point)).collect(),
            triangles: self.triangles.clone(),
        }
    }

    /// Mirrored in the plane x = 0; every triangle is turned round, so that it still faces outwards.
    #[must_use]
    pub fn mirrored(&self) -> Self {
        Self {
            points: self.points.iter().map(|[x, y, z]| [-x, *y, *z]).collect(),
            triangles: self
                .triangles
                .iter()
                .map(|[a, b, c]| [*a, *c, *b])
                .collect(),
        }
    }

    /// Laid down: turned about the x axis so that what stood along +z lies along −y and what faced
    /// +y faces up.
    #[must_use]
    pub fn laid(&self) -> Self {
        Self {
            points: self.points.iter().map(|[x, y, z]| [*x, -z, *y]).collect(),
            triangles: self.triangles.clone(),
        }
    }

    /// With every coordinate as a 32-bit float keeps it.
    #[must_use]
    pub fn rounded_to_f32(&self) -> Self {
        #[expect(clippy::cast_possible_truncation, reason = "that is what it shows")]
        let round = |value: f64| f64::from(value as f32);
        Self {
            points: self.points.iter().map(|point| point.map(round)).collect(),
            triangles: self.triangles.clone(),
        }
    }
}

pub(crate) fn less(a: Vector3, b: Vector3) -> Vector3 {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

pub(crate) fn dot(a: Vector3, b: Vector3) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

pub(crate) fn cross(a: Vector3, b: Vector3) -> Vector3 {
    [
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
    ]
}

pub(crate) fn length(a: Vector3) -> f64 {
    trig::sqrt(dot(a, a))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_box_keeps_its_volume_when_it_is_mirrored_turned_and_laid() {
        let cuboid = Mesh::cuboid(10.0, 20.0, 5.0);
        assert_eq!(cuboid.volume(), 1000.0);
        assert_eq!(cuboid.mirrored().volume(), 1000.0);
        assert_eq!(cuboid.laid().volume(), 1000.0);
        let pose = Pose {
            over: true,
            stood: true,
            turn_deg: 37.0,
            to: [1.0, 2.0, 3.0],
        };
        assert!((cuboid.posed(&pose).volume() - 1000.0).abs() < 1e-9);
        assert_eq!(cuboid.area(), 700.0);
        assert_eq!(cuboid.extent().size(), [10.0, 20.0, 5.0]);
    }

    #[test]
    fn what_was_laid_stands_up_again() {
        let cuboid = Mesh::cuboid(10.0, 20.0, 5.0);
        let stood = Pose {
            stood: true,
            ..Pose::default()
        };
        let places = cuboid.laid().posed(&stood).points;
        assert_eq!((places.len(), cuboid.points.len()), (8, 8));
        for (place, was) in places.iter().zip(&cuboid.points) {
            assert!((0..3).all(|axis| place[axis] == was[axis]));
        }
    }

    #[test]
    fn quarter_turns_are_exact() {
        let pose = Pose {
            turn_deg: -90.0,
            ..Pose::default()
        };
        assert_eq!(pose.of([1.0, 2.0, 3.0]), [2.0, -1.0, 3.0]);
    }
}
