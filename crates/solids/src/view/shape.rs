//! One part made ready to be drawn many times: where it stands, its facets' normals and the edges
//! that can ever become lines.

use crate::mesh::{Extent, Mesh, Pose, Vector3, cross, dot, length, less};

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
    pub points: Vec<Vector3>,
    pub triangles: Vec<[u32; 3]>,
    /// Unit normals, outwards.
    pub normals: Vec<Vector3>,
    /// Whether each facet belongs to a raised or sunk sign.
    pub signs: Vec<bool>,
    pub edges: Vec<Edge>,
    pub extent: Extent,
}

impl Shape {
    /// A mesh in its place; `colour_change` is the height, before it is put there, from which its
    /// signs rise or to which they are sunk.
    pub(super) fn new(part: usize, mesh: &Mesh, pose: &Pose, colour_change: Option<f64>) -> Self {
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
        let normals: Vec<Vector3> = triangles
            .iter()
            .map(|triangle| normal(posed.corners(*triangle)))
            .collect();
        let signs = colour_change.map_or_else(Vec::new, |height| {
            let corners = triangles.iter().map(|triangle| mesh.corners(*triangle));
            signs(corners, height)
        });
        Self {
            part,
            signs,
            edges: edges(&triangles, &normals),
            extent: posed.extent(),
            points: posed.points,
            triangles,
            normals,
        }
    }
}

/// The unit normal, or none at all of a facet without area.
fn normal([a, b, c]: [Vector3; 3]) -> Vector3 {
    let across = cross(less(b, a), less(c, a));
    let long = length(across);
    if long > 0.0 {
        across.map(|value| value / long)
    } else {
        Vector3::default()
    }
}

/// Which facets are signs: what stands above the height, or what lies in it, whichever is less.
fn signs(facets: impl Iterator<Item = [Vector3; 3]>, height: f64) -> Vec<bool> {
    const NEAR: f64 = 1e-3;
    let mut areas = [0.0; 2];
    let kinds: Vec<[bool; 2]> = facets
        .map(|[a, b, c]| {
            let z = [a[2], b[2], c[2]].map(|z| z - height);
            let within = z.iter().all(|z| z.abs() < NEAR);
            let above = !within && z.iter().all(|z| *z > -NEAR);
            // as seen from above, so that walls do not count
            let area = cross(less(b, a), less(c, a))[2].max(0.0);
            areas[0] += if above { area } else { 0.0 };
            areas[1] += if within { area } else { 0.0 };
            [above, within && area > 0.0]
        })
        .collect();
    let kind = usize::from(areas[1] < areas[0]);
    kinds.into_iter().map(|kinds| kinds[kind]).collect()
}

/// All edges but those within a plane.
fn edges(triangles: &[[u32; 3]], normals: &[Vector3]) -> Vec<Edge> {
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
        let shape = Shape::new(0, &Mesh::cuboid(1.0, 2.0, 3.0), &Pose::default(), None);
        assert_eq!(shape.edges.len(), 12);
        assert!(shape.edges.iter().all(|edge| edge.crease));
        assert!(shape.normals.iter().all(|normal| length(*normal) == 1.0));
    }

    #[test]
    fn a_border_without_a_second_facet_is_a_crease() {
        let mut mesh = Mesh::cuboid(1.0, 1.0, 1.0);
        mesh.triangles.truncate(2);
        let shape = Shape::new(0, &mesh, &Pose::default(), None);
        assert_eq!(shape.edges.len(), 4, "the diagonal lies within a plane");
    }

    #[test]
    fn signs_are_what_is_less_whether_raised_or_sunk() {
        let at = |low: [f64; 3], size: [f64; 3]| {
            Mesh::cuboid(size[0], size[1], size[2]).posed(&Pose::to(low[0], low[1], low[2]))
        };
        let count = |meshes: [Mesh; 2], height| {
            let shapes = meshes.map(|mesh| {
                let corners = mesh.triangles.iter().map(|facet| mesh.corners(*facet));
                corners.collect::<Vec<_>>()
            });
            let found = signs(shapes.concat().into_iter(), height);
            found.iter().filter(|sign| **sign).count()
        };
        let ground = at([0.0; 3], [9.0, 9.0, 2.0]);
        // four walls, the upper face, and the lower one that lies in the ground
        let raised = at([1.0, 1.0, 2.0], [1.0, 1.0, 1.0]);
        assert_eq!(count([ground.clone(), raised], 2.0), 10);
        // a body up to 1 under signs of air: its upper face is small where the rest goes on to 2
        let floor = at([1.0, 1.0, 0.0], [1.0, 1.0, 1.0]);
        assert_eq!(count([ground, floor], 1.0), 2);
    }

    #[test]
    fn triangles_of_unknown_points_are_left_out_and_odd_numbers_tamed() {
        let mesh = Mesh {
            points: vec![[f64::NAN, 0.0, 1e300], [1.0, 0.0, 0.0], [0.0, 1.0, 0.0]],
            triangles: vec![[0, 1, 2], [0, 1, 9]],
        };
        let shape = Shape::new(0, &mesh, &Pose::default(), None);
        assert_eq!(shape.triangles.len(), 1);
        assert_eq!(shape.points[0], [0.0, 0.0, FURTHEST]);
    }
}
