//! The surface of a body: upper sides, undersides and walls of all its piles, sharing their points.

use std::collections::BTreeMap;

use crate::fault::MeshFault;
use crate::grid::{self, MERGE};
use crate::mesh::Mesh;
use crate::pile::{End, Pile};
use crate::plane::Plane;
use crate::slope::Slope;

/// Ends that lie nearer than this many steps over one node are one: a slope that runs out into a
/// level face would leave walls a step high.
const ONE: i64 = MERGE / 2;

/// One upright edge of a wall: its node, and the levels between which it stands.
#[derive(Clone, Copy)]
struct UprightEdge {
    node: usize,
    low: i64,
    high: i64,
}

/// Points and triangles of a body's surface.
pub(crate) struct Surface<'a> {
    plane: &'a Plane,
    piles: Vec<Pile>,
    /// z of each slope over the nodes of its ring, in steps.
    sloped: BTreeMap<(usize, usize), i64>,
    /// For each node, every z at which something ends over it; sorted.
    levels: Vec<Vec<i64>>,
    /// Where an end over a node is put instead, to be one with another.
    merged: BTreeMap<(usize, i64), i64>,
    triangles: Vec<[(usize, i64); 3]>,
}

impl<'a> Surface<'a> {
    pub(crate) fn new(
        plane: &'a Plane,
        piles: Vec<Pile>,
        slopes: &[Slope],
    ) -> Result<Self, MeshFault> {
        let mut sloped = BTreeMap::new();
        for tile in &plane.tiles {
            for (low, high) in &piles[tile.zone] {
                for end in [low, high] {
                    let End::On(index) = *end else { continue };
                    let Some(slope) = slopes.get(index) else {
                        continue;
                    };
                    for node in tile.nodes {
                        if let std::collections::btree_map::Entry::Vacant(entry) =
                            sloped.entry((index, node))
                        {
                            entry.insert(grid::checked(slope.at(plane, node))?);
                        }
                    }
                }
            }
        }
        let mut surface = Self {
            plane,
            piles,
            sloped,
            levels: vec![Vec::new(); plane.nodes.len()],
            merged: BTreeMap::new(),
            triangles: Vec::new(),
        };
        surface.find_levels();
        Ok(surface)
    }

    /// Every height over every node, near ones as one: a level end before a sloped one, so that
    /// level faces stay level.
    fn find_levels(&mut self) {
        let mut ends: Vec<Vec<(i64, bool)>> = vec![Vec::new(); self.plane.nodes.len()];
        for tile in &self.plane.tiles {
            for end in self.piles[tile.zone].iter().flat_map(|(a, b)| [*a, *b]) {
                let slopes = matches!(end, End::On(_));
                for node in tile.nodes {
                    ends[node].push((self.z(end, node), slopes));
                }
            }
        }
        for (node, mut ends) in ends.into_iter().enumerate() {
            ends.sort_unstable();
            ends.dedup();
            while let Some((first, _)) = ends.first().copied() {
                let near = ends.partition_point(|(z, _)| z - first < ONE);
                let level = ends[..near].iter().find(|(_, slopes)| !slopes);
                let kept = level.map_or(first, |(z, _)| *z);
                self.levels[node].push(kept);
                for (z, _) in ends.drain(..near).filter(|(z, _)| *z != kept) {
                    self.merged.insert((node, z), kept);
                }
            }
        }
    }

    fn z(&self, end: End, node: usize) -> i64 {
        let z = match end {
            End::Level(level) => level,
            End::On(slope) => self.sloped.get(&(slope, node)).copied().unwrap_or(0),
        };
        self.merged.get(&(node, z)).copied().unwrap_or(z)
    }

    pub(crate) fn mesh(mut self) -> Result<Mesh, MeshFault> {
        self.faces();
        for index in 0..self.plane.tiles.len() {
            let tile = self.plane.tiles[index];
            for side in 0..3 {
                let beyond = tile.beyond[side].map(|next| self.plane.tiles[next].zone);
                if beyond != Some(tile.zone) {
                    let edge = (tile.nodes[side], tile.nodes[(side + 1) % 3]);
                    self.walls(edge, tile.zone, beyond)?;
                }
            }
        }
        Ok(self.gathered())
    }

    /// Upper sides and undersides.
    fn faces(&mut self) {
        for tile in &self.plane.tiles {
            let [a, b, c] = tile.nodes;
            for (low, high) in &self.piles[tile.zone] {
                let at = |end: End, node: usize| (node, self.z(end, node));
                let top = [at(*high, a), at(*high, b), at(*high, c)];
                let bottom = [at(*low, a), at(*low, c), at(*low, b)];
                // an interval that has run out at all three corners is nothing
                if [top[0], top[2], top[1]] != bottom {
                    self.triangles.push(top);
                    self.triangles.push(bottom);
                }
            }
        }
    }

    /// Walls where there is material on the left of an edge and none on its right.
    fn walls(
        &mut self,
        (a, b): (usize, usize),
        left: usize,
        right: Option<usize>,
    ) -> Result<(), MeshFault> {
        let none = Pile::new();
        let right = right.map_or(&none, |zone| &self.piles[zone]);
        let mut ends: Vec<(i64, i64, bool)> = Vec::new();
        for (pile, is_left) in [(&self.piles[left], true), (right, false)] {
            for (low, high) in pile {
                for end in [*low, *high] {
                    ends.push((self.z(end, a), self.z(end, b), is_left));
                }
            }
        }
        ends.sort_by_key(|(at_a, at_b, _)| (at_a + at_b, *at_a));
        let (mut in_left, mut in_right) = (false, false);
        let mut walls = Vec::new();
        for (index, (low_a, low_b, is_left)) in ends.iter().enumerate() {
            if *is_left {
                in_left = !in_left;
            } else {
                in_right = !in_right;
            }
            let Some((high_a, high_b, _)) = ends.get(index + 1) else {
                break;
            };
            if !in_left || in_right || (low_a, low_b) == (high_a, high_b) {
                continue;
            }
            if low_a > high_a || low_b > high_b {
                let at = grid::point(self.plane.nodes[a]);
                return Err(MeshFault::SlopesCross {
                    x_mm: at.x,
                    y_mm: at.y,
                });
            }
            let upright = |node, low, high| UprightEdge { node, low, high };
            walls.push((upright(a, *low_a, *high_a), upright(b, *low_b, *high_b)));
        }
        for (span_a, span_b) in walls {
            self.wall(span_a, span_b);
        }
        Ok(())
    }

    /// One upright face from node a to node b, with every level that lies on its upright edges.
    fn wall(&mut self, a: UprightEdge, b: UprightEdge) {
        let chain = |UprightEdge { node, low, high }: UprightEdge| -> Vec<(usize, i64)> {
            self.levels[node]
                .iter()
                .filter(|level| (low..=high).contains(*level))
                .map(|level| (node, *level))
                .collect()
        };
        let (left, right) = (chain(a), chain(b));
        let (mut i, mut j) = (0, 0);
        loop {
            let up_left = left.get(i + 1);
            let up_right = right.get(j + 1);
            let (Some(at_left), Some(at_right)) = (left.get(i), right.get(j)) else {
                return;
            };
            let (next, on_left) = match (up_left, up_right) {
                (None, None) => return,
                (Some(up), None) => (up, true),
                (None, Some(up)) => (up, false),
                // the shorter diagonal: between nodes a few µm apart any other leaves slivers
                (Some(left), Some(right)) => {
                    if (left.1 - at_right.1).abs() < (right.1 - at_left.1).abs() {
                        (left, true)
                    } else {
                        (right, false)
                    }
                }
            };
            self.triangles.push([*at_left, *at_right, *next]);
            if on_left {
                i += 1;
            } else {
                j += 1;
            }
        }
    }

    /// Only the points that are used, in the order of node and height.
    fn gathered(&self) -> Mesh {
        let mut used: Vec<(usize, i64)> = self.triangles.iter().flatten().copied().collect();
        used.sort_unstable();
        used.dedup();
        let number = |corner: &(usize, i64)| {
            used.binary_search(corner)
                .ok()
                .and_then(|index| u32::try_from(index).ok())
                .unwrap_or(0)
        };
        let points = used
            .iter()
            .map(|(node, z)| {
                let at = grid::point(self.plane.nodes[*node]);
                [at.x, at.y, grid::millimetres(*z)]
            })
            .collect();
        let triangles = self
            .triangles
            .iter()
            .map(|[a, b, c]| [number(a), number(b), number(c)])
            .collect();
        Mesh { points, triangles }
    }
}
