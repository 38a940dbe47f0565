//! One part made ready to be drawn many times: where it stands, its facets' normals and the edges
//! that can ever become lines.

use crate::mesh::{Extent, Mesh, Place, Pose, cross, dot, length, less};

/// Facets that meet at less than this are one smooth surface: cosine of 32°, just above the 30° of
/// the coarsest circle that is ever drawn (twelve chords).
const CREASE: f64 = 0.848_048;

/// Facets that meet at less than this are one plane: cosine of 0.25°.
const FLAT: f64 = 0.999_990_5;

/// No point lies further out, mm: beyond it is taken for a slip.
const FURTHEST: f64 = 100_000.0;

/// An edge that is a line from some side.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Edge {
    pub ends: [u32; 2],
    /// Its facets; twice the same one at an open border.
    pub facets: [u32; 2],
    /// Drawn wherever one of its facets is seen, not only as an outline.
    pub crease: bool,
}

/// A part made ready.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Shape {
    /// Its place in the list that the scene was made of.
    pub part: usize,
    pub points: Vec<Place>,
    pub triangles: Vec<[u32; 3]>,
    /// Unit normals, outwards.
    pub normals: Vec<Place>,
    pub edges: Vec<Edge>,
    pub extent: Extent,
}

impl Shape {
    pub(super) fn new(part: usize, mesh: &Mesh, pose: &Pose) -> Self {
        let tame = |value: f64| {
            if value.is_finite() {
                value.clamp(-FURTHEST, FURTHEST)
            } else {
                0.0
            }
        };
        let posed = Mesh {
            points: mesh
                .points
                .iter()
                .map(|point| pose.of(*point).map(tame))
                .collect(),
            triangles: Vec::new(),
        };
        let known = posed.points.len();
        let triangles: Vec<[u32; 3]> = mesh
            .triangles
            .iter()
            .filter(|triangle| triangle.iter().all(|index| (*index as usize) < known))
            .copied()
            .collect();
        let normals: Vec<Place> = triangles
            .iter()
            .map(|triangle| normal(posed.corners(*triangle)))
            .collect();
        Self {
            part,
            edges: edges(&triangles, &normals),
            extent: posed.extent(),
            points: posed.points,
            triangles,
            normals,
        }
    }
}

/// The unit normal, or none at all of a facet without area.
fn normal([a, b, c]: [Place; 3]) -> Place {
    let across = cross(less(b, a), less(c, a));
    let long = length(across);
    if long > 0.0 {
        across.map(|value| value / long)
    } else {
        Place::default()
    }
}

/// All edges but those within a plane.
fn edges(triangles: &[[u32; 3]], normals: &[Place]) -> Vec<Edge> {
    let mut sides: Vec<(u32, u32, u32)> = Vec::with_capacity(triangles.len() * 3);
    for (facet, [a, b, c]) in (0_u32..).zip(triangles) {
        for (from, to) in [(*a, *b), (*b, *c), (*c, *a)] {
            sides.push((from.min(to), from.max(to), facet));
        }
    }
    sides.sort_unstable();
    let mut edges = Vec::new();
    for group in sides.chunk_by(|one, two| (one.0, one.1) == (two.0, two.1)) {
        let [first, .., last] = group else {
            let (a, b, facet) = group[0];
            edges.push(Edge {
                ends: [a, b],
                facets: [facet; 2],
                crease: true,
            });
            continue;
        };
        let facets = [first.2, last.2];
        let [one, two] = facets.map(|facet| normals[facet as usize]);
        let together = dot(one, two);
        if together < FLAT {
            edges.push(Edge {
                ends: [first.0, first.1],
                facets,
                crease: together < CREASE,
            });
        }
    }
    edges
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_box_has_twelve_creases_and_no_other_edge() {
        let shape = Shape::new(0, &Mesh::cuboid(1.0, 2.0, 3.0), &Pose::default());
        assert_eq!(shape.edges.len(), 12);
        assert!(shape.edges.iter().all(|edge| edge.crease));
        assert!(shape.normals.iter().all(|normal| length(*normal) == 1.0));
    }

    #[test]
    fn a_border_without_a_second_facet_is_a_crease() {
        let mut mesh = Mesh::cuboid(1.0, 1.0, 1.0);
        mesh.triangles.truncate(2);
        let shape = Shape::new(0, &mesh, &Pose::default());
        assert_eq!(shape.edges.len(), 4, "the diagonal lies within a plane");
    }

    #[test]
    fn triangles_of_unknown_points_are_left_out_and_odd_numbers_tamed() {
        let mesh = Mesh {
            points: vec![[f64::NAN, 0.0, 1e300], [1.0, 0.0, 0.0], [0.0, 1.0, 0.0]],
            triangles: vec![[0, 1, 2], [0, 1, 9]],
        };
        let shape = Shape::new(0, &mesh, &Pose::default());
        assert_eq!(shape.triangles.len(), 1);
        assert_eq!(shape.points[0], [0.0, 0.0, FURTHEST]);
    }
}
