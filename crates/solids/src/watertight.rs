//! Whether a mesh bounds a solid: closed, oriented, no slivers, still so in 32-bit floats.

use crate::fault::MeshFault;
use crate::mesh::{Mesh, cross, dot, length, less};

/// The least height of a triangle, mm.
///
/// Within 512 mm a 32-bit float is off by at most 2⁻¹⁶ mm, so a corner by √3 times that and a height
/// by twice as much again: 0.000053 mm. Of two such heights one is left, and nothing turns over.
pub const LEAST_HEIGHT: f64 = 1e-4;

/// What a sound mesh is like.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Soundness {
    /// Separate closed surfaces.
    pub shells: usize,
    /// Handles of all of them together: 1 for a ring.
    pub genus: usize,
    /// Volume, mm³.
    pub volume: f64,
    /// The least height of any triangle, mm.
    pub least_height: f64,
}

/// Looks at every edge, point and triangle of `mesh`.
///
/// # Errors
/// [`MeshFault::Open`] if an edge is not shared by exactly two triangles that run along it in
/// opposite directions; [`MeshFault::Pinched`] if a point joins two sheets; [`MeshFault::Sliver`];
/// [`MeshFault::NoVolume`] if it is empty or inside out.
pub fn check(mesh: &Mesh) -> Result<Soundness, MeshFault> {
    let next = successors(mesh)?;
    let shells = sheets(mesh, &next)?;
    let least_height = no_sliver(mesh)?;
    let volume = mesh.volume();
    if volume <= 0.0 {
        return Err(MeshFault::NoVolume { volume_mm3: volume });
    }
    // V − E + F = 2 · shells − 2 · genus, with E = 3F/2
    let (points, faces) = (mesh.points.len(), mesh.triangles.len());
    let genus = (2 * shells + faces / 2).saturating_sub(points) / 2;
    Ok(Soundness {
        shells,
        genus,
        volume,
        least_height,
    })
}

/// Whether every edge has two triangles, every point one fan, and no triangle is a sliver: all of
/// [`check`] that moving outlines by a few µm may mend.
pub(crate) fn closed(mesh: &Mesh) -> Result<(), MeshFault> {
    let next = successors(mesh)?;
    sheets(mesh, &next)?;
    no_sliver(mesh).map(|_| ())
}

/// The least height of a triangle, mm.
fn no_sliver(mesh: &Mesh) -> Result<f64, MeshFault> {
    let height_mm = least_height(mesh);
    if height_mm < LEAST_HEIGHT {
        return Err(MeshFault::Sliver {
            height_mm,
            least_mm: LEAST_HEIGHT,
        });
    }
    Ok(height_mm)
}

/// As [`check`], and again with every coordinate rounded to a 32-bit float: no two points fall
/// together, no triangle turns over.
pub fn check_rounded(mesh: &Mesh) -> Result<Soundness, MeshFault> {
    let sound = check(mesh)?;
    let rounded = mesh.rounded_to_f32();
    let height = least_height(&rounded);
    let turned = mesh.triangles.iter().any(|triangle| {
        let normal = |[a, b, c]: [[f64; 3]; 3]| cross(less(b, a), less(c, a));
        dot(
            normal(mesh.corners(*triangle)),
            normal(rounded.corners(*triangle)),
        ) <= 0.0
    });
    if turned || height <= 0.0 {
        return Err(MeshFault::Sliver {
            height_mm: height,
            least_mm: LEAST_HEIGHT,
        });
    }
    Ok(sound)
}

/// Directed edges in order, each with the third corner of its triangle.
struct Edges(Vec<((u32, u32), u32)>);

impl Edges {
    fn third(&self, edge: (u32, u32)) -> Option<u32> {
        let index = self.0.binary_search_by_key(&edge, |(edge, _)| *edge).ok()?;
        self.0.get(index).map(|(_, third)| *third)
    }
}

fn successors(mesh: &Mesh) -> Result<Edges, MeshFault> {
    let mut edges: Vec<((u32, u32), u32)> = mesh
        .triangles
        .iter()
        .flat_map(|[a, b, c]| [((*a, *b), *c), ((*b, *c), *a), ((*c, *a), *b)])
        .collect();
    edges.sort_unstable();
    let twice = edges
        .iter()
        .zip(edges.iter().skip(1))
        .filter(|(one, two)| one.0 == two.0)
        .count();
    let edges = Edges(edges);
    let alone = |(from, to): (u32, u32)| from == to || edges.third((to, from)).is_none();
    let single = edges.0.iter().filter(|(edge, _)| alone(*edge)).count();
    if twice + single > 0 || edges.0.is_empty() {
        return Err(MeshFault::Open {
            edges: twice + single,
        });
    }
    Ok(edges)
}

/// How many surfaces there are; every point must be the middle of one fan of triangles.
fn sheets(mesh: &Mesh, next: &Edges) -> Result<usize, MeshFault> {
    let count = mesh.points.len();
    let mut degree = vec![0_usize; count];
    let mut begin = vec![None; count];
    for [a, b, c] in &mesh.triangles {
        for (at, to) in [(*a, *b), (*b, *c), (*c, *a)] {
            if let Some(degree) = degree.get_mut(at as usize) {
                *degree += 1;
            }
            if let Some(begin) = begin.get_mut(at as usize) {
                *begin = Some(to);
            }
        }
    }
    let mut pinched = 0;
    for (at, start) in (0_u32..).zip(&begin) {
        let wanted = degree.get(at as usize).copied().unwrap_or(0);
        let Some(start) = *start else {
            pinched += 1;
            continue;
        };
        let (mut to, mut seen) = (start, 0);
        while seen <= wanted {
            // the triangle (at, to, third) is followed by the one on (at, third)
            let Some(third) = next.third((at, to)) else {
                break;
            };
            seen += 1;
            to = third;
            if to == start {
                break;
            }
        }
        if seen != wanted {
            pinched += 1;
        }
    }
    if pinched > 0 {
        return Err(MeshFault::Pinched { points: pinched });
    }
    Ok(shells(mesh))
}

/// Groups of triangles that share points.
fn shells(mesh: &Mesh) -> usize {
    let mut parent: Vec<usize> = (0..mesh.points.len()).collect();
    let mut shells = parent.len();
    for [a, b, c] in &mesh.triangles {
        for (one, two) in [(*a, *b), (*b, *c)] {
            let one = root(&mut parent, one as usize);
            let two = root(&mut parent, two as usize);
            if one != two {
                parent[one] = two;
                shells -= 1;
            }
        }
    }
    shells
}

fn root(parent: &mut [usize], mut at: usize) -> usize {
    while parent[at] != at {
        parent[at] = parent[parent[at]];
        at = parent[at];
    }
    at
}

fn least_height(mesh: &Mesh) -> f64 {
    mesh.triangles
        .iter()
        .map(|triangle| {
            let [a, b, c] = mesh.corners(*triangle);
            let twice = length(cross(less(b, a), less(c, a)));
            let longest = length(less(b, a))
                .max(length(less(c, b)))
                .max(length(less(a, c)));
            if longest > 0.0 { twice / longest } else { 0.0 }
        })
        .fold(f64::INFINITY, f64::min)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_box_is_sound() {
        let sound = check_rounded(&Mesh::cuboid(10.0, 20.0, 5.0)).unwrap();
        assert_eq!((sound.shells, sound.genus), (1, 0));
        assert_eq!(sound.volume, 1000.0);
    }

    #[test]
    fn a_missing_a_doubled_and_a_turned_triangle_are_found() {
        let whole = Mesh::cuboid(1.0, 1.0, 1.0);
        let mut missing = whole.clone();
        missing.triangles.pop();
        assert_eq!(check(&missing), Err(MeshFault::Open { edges: 3 }));
        let mut doubled = whole.clone();
        doubled.triangles.push(whole.triangles[0]);
        assert!(matches!(check(&doubled), Err(MeshFault::Open { .. })));
        let mut turned = whole.clone();
        turned.triangles[0].swap(0, 1);
        assert!(matches!(check(&turned), Err(MeshFault::Open { .. })));
        let mut inside_out = whole;
        for triangle in &mut inside_out.triangles {
            triangle.swap(0, 1);
        }
        assert!(matches!(
            check(&inside_out),
            Err(MeshFault::NoVolume { .. })
        ));
    }

    #[test]
    fn two_boxes_that_share_a_corner_are_pinched() {
        let one = Mesh::cuboid(1.0, 1.0, 1.0);
        let mut both = one.clone();
        // the second box lies beyond the first one's far corner, which is point 7
        let at = |index: u32| if index == 0 { 7 } else { index + 7 };
        both.points.extend(
            one.points
                .iter()
                .skip(1)
                .map(|p| p.map(|value| value + 1.0)),
        );
        both.triangles
            .extend(one.triangles.iter().map(|triangle| triangle.map(at)));
        assert_eq!(check(&both), Err(MeshFault::Pinched { points: 1 }));
    }

    #[test]
    fn a_sliver_is_found() {
        let flat = Mesh::cuboid(10.0, 10.0, 0.00001);
        assert!(matches!(check(&flat), Err(MeshFault::Sliver { .. })));
    }
}
