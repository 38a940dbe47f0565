//! The plane cut into triangles along outlines, and how often each group of outlines winds round
//! each of them.
//!
//! Triangles that no outline parts belong to one zone.

use spade::handles::FixedVertexHandle;
use spade::{ConstrainedDelaunayTriangulation, HasPosition, Point2, Triangulation};

use crate::fault::MeshFault;
use crate::flip::flip_thin;
use crate::grid::Node;
use crate::noding::{Along, Crease, Network, network};
use crate::outline::Outline;

/// A triangle of the plane, counter-clockwise.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Tile {
    pub nodes: [usize; 3],
    /// Across the edge from node i to node i + 1; `None` beyond the hull.
    pub beyond: [Option<usize>; 3],
    pub zone: usize,
}

/// The triangulated plane.
pub(crate) struct Plane {
    pub nodes: Vec<Node>,
    pub tiles: Vec<Tile>,
    /// For each zone, how often each group winds round it.
    pub windings: Vec<Vec<i32>>,
    /// (node, group) for every node on an outline of the group; sorted.
    pub on: Vec<(usize, usize)>,
}

struct Vertex {
    node: usize,
    at: Point2<f64>,
}

impl HasPosition for Vertex {
    type Scalar = f64;
    fn position(&self) -> Point2<f64> {
        self.at
    }
}

impl Plane {
    /// Cuts the plane along the outlines of all `groups` and along `creases`.
    pub(crate) fn new(groups: &[&[Outline]], creases: &[Crease]) -> Result<Self, MeshFault> {
        let network = network(groups, creases)?;
        let mut on: Vec<(usize, usize)> = network
            .edges
            .iter()
            .flat_map(|((low, high), along)| {
                along
                    .iter()
                    .flat_map(move |(group, _)| [(*low, *group), (*high, *group)])
            })
            .collect();
        on.sort_unstable();
        on.dedup();
        let mut tiles = tiles(&network)?;
        flip_thin(&mut tiles, &network.nodes, |edge| {
            network.edges.contains_key(&edge)
        });
        let mut plane = Self {
            nodes: network.nodes,
            tiles,
            windings: Vec::new(),
            on,
        };
        plane.wind(groups.len(), &network.edges);
        Ok(plane)
    }

    /// Whether `node` lies on an outline of `group`.
    pub(crate) fn lies_on(&self, node: usize, group: usize) -> bool {
        self.on.binary_search(&(node, group)).is_ok()
    }

    /// Gives every triangle its zone, from the hull inwards.
    fn wind(&mut self, groups: usize, edges: &std::collections::BTreeMap<(usize, usize), Along>) {
        let none = usize::MAX;
        let outside = vec![0; groups];
        let mut open: Vec<(usize, Vec<i32>)> = Vec::new();
        for (index, tile) in self.tiles.iter().enumerate() {
            for side in 0..3 {
                if tile.beyond[side].is_none() {
                    open.push((index, crossed(tile, side, &outside, edges, 1)));
                }
            }
        }
        while let Some((start, winding)) = open.pop() {
            if self.tiles[start].zone != none {
                continue;
            }
            let zone = self.windings.len();
            let mut inside = vec![start];
            self.tiles[start].zone = zone;
            while let Some(index) = inside.pop() {
                let tile = self.tiles[index];
                for side in 0..3 {
                    let Some(next) = tile.beyond[side] else {
                        continue;
                    };
                    if self.tiles[next].zone != none {
                        continue;
                    }
                    if edges.contains_key(&key(&tile, side)) {
                        open.push((next, crossed(&tile, side, &winding, edges, -1)));
                    } else {
                        self.tiles[next].zone = zone;
                        inside.push(next);
                    }
                }
            }
            self.windings.push(winding);
        }
    }
}

fn key(tile: &Tile, side: usize) -> (usize, usize) {
    let (a, b) = (tile.nodes[side], tile.nodes[(side + 1) % 3]);
    (a.min(b), a.max(b))
}

/// The winding on the other side of an edge of `tile`; `sign` is 1 on the way in, −1 on the way out.
fn crossed(
    tile: &Tile,
    side: usize,
    winding: &[i32],
    edges: &std::collections::BTreeMap<(usize, usize), Along>,
    sign: i32,
) -> Vec<i32> {
    let mut winding = winding.to_vec();
    let key = key(tile, side);
    let forward = if tile.nodes[side] == key.0 { 1 } else { -1 };
    for (group, times) in edges.get(&key).into_iter().flatten() {
        if let Some(count) = winding.get_mut(*group) {
            *count += sign * forward * times;
        }
    }
    winding
}

/// Constrained triangles, with neighbours.
fn tiles(network: &Network) -> Result<Vec<Tile>, MeshFault> {
    let mut used: Vec<usize> = network
        .edges
        .keys()
        .flat_map(|(low, high)| [*low, *high])
        .collect();
    used.sort_unstable();
    used.dedup();
    let vertices = used
        .iter()
        .map(|node| {
            let [x, y] = network.nodes[*node];
            let at = Point2::new(x as f64, y as f64);
            Vertex { node: *node, at }
        })
        .collect();
    let rank = |node: usize| used.binary_search(&node).unwrap_or(0);
    let edges: Vec<[usize; 2]> = network
        .edges
        .keys()
        .map(|(low, high)| [rank(*low), rank(*high)])
        .collect();
    let wanted = edges.len();
    let mut crossings = 0;
    let cdt: ConstrainedDelaunayTriangulation<Vertex> =
        ConstrainedDelaunayTriangulation::try_bulk_load_cdt(vertices, edges, |_| crossings += 1)
            .map_err(|err| MeshFault::NoTriangles {
                reason: err.to_string(),
            })?;
    if crossings > 0 || cdt.num_constraints() != wanted {
        return Err(MeshFault::Tangled {
            crossings: crossings.max(1),
        });
    }
    let node = |handle: FixedVertexHandle| cdt.vertex(handle).data().node;
    let tiles = cdt
        .inner_faces()
        .map(|face| {
            let edges = face.adjacent_edges();
            Tile {
                nodes: edges.map(|edge| node(edge.from().fix())),
                // spade numbers inner faces from 1, the outer one is 0
                beyond: edges.map(|edge| edge.rev().face().index().checked_sub(1)),
                zone: usize::MAX,
            }
        })
        .collect();
    Ok(tiles)
}
