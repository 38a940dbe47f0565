//! A horizontal section through a mesh: what a printer lays down at one height.

use std::collections::BTreeMap;

use latchwright_geometry::Point;

use crate::mesh::Mesh;
use crate::outline::Outline;
use crate::region::Region;

/// The section of a closed mesh at height `z` (mm): outlines counter-clockwise around the material.
///
/// A height at which points of the mesh lie is taken a hair above, so that flat faces do not count.
pub fn section(mesh: &Mesh, z: f64) -> Region {
    let z = z + 1e-7;
    // each crossed triangle joins two crossed edges; an edge is named by its points
    let mut follows: BTreeMap<(u32, u32), (u32, u32)> = BTreeMap::new();
    for triangle in &mesh.triangles {
        let above = mesh.corners(*triangle).map(|corner| corner[2] > z);
        let Some(odd) = (0..3).find(|index| {
            above[*index] != above[(index + 1) % 3] && above[*index] != above[(index + 2) % 3]
        }) else {
            continue;
        };
        let [a, b, c] = [0, 1, 2].map(|step| triangle[(odd + step) % 3]);
        // seen from outside with z up, the section runs with the material on its left
        let (enter, leave) = if above[odd] {
            ((a, b), (c, a))
        } else {
            ((c, a), (a, b))
        };
        follows.insert(ordered(enter), ordered(leave));
    }
    let mut outlines = Vec::new();
    while let Some((start, _)) = follows.first_key_value() {
        let start = *start;
        let mut points = Vec::new();
        let mut at = start;
        while let Some(next) = follows.remove(&at) {
            points.extend(crossing(mesh, at, z));
            at = next;
        }
        points.dedup_by(|a, b| a.distance(*b) < 1e-9);
        outlines.push(Outline::new(points));
    }
    Region::wound(outlines)
}

fn ordered((a, b): (u32, u32)) -> (u32, u32) {
    (a.min(b), a.max(b))
}

fn crossing(mesh: &Mesh, (a, b): (u32, u32), z: f64) -> Option<Point> {
    let (a, b) = (mesh.points.get(a as usize)?, mesh.points.get(b as usize)?);
    let share = (z - a[2]) / (b[2] - a[2]);
    Some(Point::new(
        a[0] + (b[0] - a[0]) * share,
        a[1] + (b[1] - a[1]) * share,
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_boxs_section_is_its_rectangle_counter_clockwise() {
        let section = section(&Mesh::cuboid(10.0, 20.0, 5.0), 2.0);
        assert_eq!(section.outlines().len(), 1);
        assert!((section.area() - 200.0).abs() < 1e-9);
    }
}
