//! Triangles of the plane that are too thin, cut the other way together with a neighbour.
//!
//! A node that rounding puts a step beside the line between two others leaves a triangle one step
//! high: no circle test forbids it where no other node is near.

use crate::grid::{self, Node, PASS};
use crate::plane::Tile;

/// Rounds after which no more is tried: one is usual.
const ROUNDS: usize = 8;

/// Cuts pairs of triangles the other way where that makes the thinner one higher, beginning with
/// triangles less high than half the distance that nodes keep. Edges for which `fixed` holds stay.
pub(crate) fn flip_thin(
    tiles: &mut [Tile],
    nodes: &[Node],
    fixed: impl Fn((usize, usize)) -> bool,
) {
    for _ in 0..ROUNDS {
        let mut flipped = false;
        for index in 0..tiles.len() {
            if height(tiles[index].nodes, nodes) >= PASS {
                continue;
            }
            let side = longest(tiles[index].nodes, nodes);
            flipped |= flip(tiles, index, side, nodes, &fixed);
        }
        if !flipped {
            break;
        }
    }
}

/// Flips the edge on `side` of a tile if the two tiles beside it gain by it.
fn flip(
    tiles: &mut [Tile],
    index: usize,
    side: usize,
    nodes: &[Node],
    fixed: impl Fn((usize, usize)) -> bool,
) -> bool {
    let one = tiles[index];
    let Some(beyond) = one.beyond[side] else {
        return false;
    };
    let other = tiles[beyond];
    let Some(back) = (0..3).find(|back| other.beyond[*back] == Some(index)) else {
        return false;
    };
    // the edge runs from a to b in `one`; c and d are the corners off it
    let (a, b) = (one.nodes[side], one.nodes[(side + 1) % 3]);
    let (c, d) = (one.nodes[(side + 2) % 3], other.nodes[(back + 2) % 3]);
    if fixed((a.min(b), a.max(b))) || other.nodes[back] != b {
        return false;
    }
    let (left, right) = ([a, d, c], [d, b, c]);
    let turns = [left, right].map(|[p, q, r]| grid::turn(nodes[p], nodes[q], nodes[r]));
    if turns.iter().any(|turn| *turn <= 0) {
        return false;
    }
    let thinner = |one: [usize; 3], two: [usize; 3]| height(one, nodes).min(height(two, nodes));
    if thinner(left, right) <= thinner(one.nodes, other.nodes) {
        return false;
    }
    let (bc, ca) = (one.beyond[(side + 1) % 3], one.beyond[(side + 2) % 3]);
    let (ad, db) = (other.beyond[(back + 1) % 3], other.beyond[(back + 2) % 3]);
    tiles[index] = Tile {
        nodes: left,
        beyond: [ad, Some(beyond), ca],
        zone: one.zone,
    };
    tiles[beyond] = Tile {
        nodes: right,
        beyond: [db, bc, Some(index)],
        zone: other.zone,
    };
    for (outside, was, is) in [(ad, beyond, index), (bc, index, beyond)] {
        let Some(outside) = outside else { continue };
        for next in &mut tiles[outside].beyond {
            if *next == Some(was) {
                *next = Some(is);
            }
        }
    }
    true
}

/// The least height of a triangle, in steps.
fn height(corners: [usize; 3], nodes: &[Node]) -> f64 {
    let [a, b, c] = corners.map(|node| nodes[node]);
    let long = side(a, b).max(side(b, c)).max(side(c, a));
    grid::turn(a, b, c) as f64 / long.max(1.0)
}

/// From node to node, in steps.
fn side(a: Node, b: Node) -> f64 {
    grid::point(a).distance(grid::point(b)) * grid::STEPS
}

/// The side on which the longest edge lies.
fn longest(corners: [usize; 3], nodes: &[Node]) -> usize {
    let long = |at: usize| side(nodes[corners[at]], nodes[corners[(at + 1) % 3]]);
    (1..3).fold(0, |best, at| if long(at) > long(best) { at } else { best })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Two triangles over the edge from node 0 to node 1, which node 2 nearly meets.
    fn pair() -> (Vec<Tile>, Vec<Node>) {
        let nodes = vec![[0, 0], [1000, 0], [400, 1], [500, -800]];
        let tile = |nodes, beyond| Tile {
            nodes,
            beyond,
            zone: 0,
        };
        let tiles = vec![
            tile([0, 1, 2], [Some(1), None, None]),
            tile([1, 0, 3], [Some(0), None, None]),
        ];
        (tiles, nodes)
    }

    #[test]
    fn a_triangle_one_step_high_is_cut_the_other_way() {
        let (mut tiles, nodes) = pair();
        assert!(height(tiles[0].nodes, &nodes) < 1.1);
        flip_thin(&mut tiles, &nodes, |_| false);
        for tile in &tiles {
            let [a, b, c] = tile.nodes.map(|node| nodes[node]);
            assert!(grid::turn(a, b, c) > 0);
            assert!(height(tile.nodes, &nodes) > 300.0, "{tile:?}");
        }
        // they still know one another, and the hull stays the hull
        let shared = |tile: &Tile, other| tile.beyond.iter().filter(|b| **b == Some(other)).count();
        assert_eq!((shared(&tiles[0], 1), shared(&tiles[1], 0)), (1, 1));
        let hull = tiles.iter().flat_map(|tile| tile.beyond).flatten().count();
        assert_eq!(hull, 2);
    }

    #[test]
    fn an_edge_of_an_outline_is_never_flipped() {
        let (mut tiles, nodes) = pair();
        flip_thin(&mut tiles, &nodes, |edge| edge == (0, 1));
        assert_eq!(tiles[0].nodes, [0, 1, 2]);
    }

    #[test]
    fn a_bent_pair_is_left_as_it_is() {
        let (mut tiles, mut nodes) = pair();
        // seen from node 3 the edge lies behind node 2's neighbour: no other cut is possible
        nodes[3] = [4000, -1];
        flip_thin(&mut tiles, &nodes, |_| false);
        assert_eq!(tiles[0].nodes, [0, 1, 2]);
    }
}
