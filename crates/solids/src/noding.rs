//! Outlines on the grid, cut wherever they meet, so that no two edges cross or overlap.

use std::collections::BTreeMap;

use latchwright_geometry::Point;

use crate::fault::MeshFault;
use crate::grid::{self, MERGE, Node, PASS};
use crate::outline::Outline;

/// Rounds after which outlines must have settled; two or three are usual.
const ROUNDS: usize = 12;

/// What runs along an edge from its lower to its higher node: which group of outlines, and how
/// often it does so, less how often it runs back.
pub(crate) type Along = Vec<(usize, i32)>;

/// Outlines as nodes and edges that meet only in nodes.
pub(crate) struct Network {
    pub nodes: Vec<Node>,
    /// By (lower, higher) node.
    pub edges: BTreeMap<(usize, usize), Along>,
}

#[derive(Clone, Copy)]
struct Piece {
    from: usize,
    to: usize,
    group: usize,
}

/// A line that belongs to no group: an edge of the network that nothing winds round.
pub(crate) type Crease = (Point, Point);

/// The group of creases.
const CREASE: usize = usize::MAX;

/// Cuts all outlines of all groups, and all creases, at one another.
pub(crate) fn network(groups: &[&[Outline]], creases: &[Crease]) -> Result<Network, MeshFault> {
    let mut nodes = Nodes::default();
    let mut pieces = Vec::new();
    for (group, outlines) in groups.iter().enumerate() {
        for outline in *outlines {
            let places = outline
                .points()
                .iter()
                .map(|point| Ok(nodes.at([grid::checked(point.x)?, grid::checked(point.y)?])))
                .collect::<Result<Vec<usize>, MeshFault>>()?;
            for (index, from) in places.iter().enumerate() {
                let to = places[(index + 1) % places.len()];
                if *from != to {
                    let from = *from;
                    pieces.push(Piece { from, to, group });
                }
            }
        }
    }
    for (from, to) in creases {
        let mut at =
            |point: &Point| Ok(nodes.at([grid::checked(point.x)?, grid::checked(point.y)?]));
        let (from, to) = (at(from)?, at(to)?);
        if from != to {
            let group = CREASE;
            pieces.push(Piece { from, to, group });
        }
    }
    let most = 50 * pieces.len() + 10_000;
    for _ in 0..ROUNDS {
        let cuts = cuts(&pieces, &mut nodes);
        if cuts.len() > most {
            break;
        }
        if cuts.is_empty() {
            return Ok(gathered(nodes.nodes, &pieces));
        }
        pieces = cut_up(&pieces, cuts, &nodes.nodes);
    }
    let crossings = cuts(&pieces, &mut nodes).len();
    if crossings > 0 {
        return Err(MeshFault::Tangled { crossings });
    }
    Ok(gathered(nodes.nodes, &pieces))
}

fn gathered(nodes: Vec<Node>, pieces: &[Piece]) -> Network {
    let mut edges: BTreeMap<(usize, usize), Along> = BTreeMap::new();
    for piece in pieces {
        let (key, sign) = if piece.from < piece.to {
            ((piece.from, piece.to), 1)
        } else {
            ((piece.to, piece.from), -1)
        };
        let along = edges.entry(key).or_default();
        match along.iter_mut().find(|(group, _)| *group == piece.group) {
            Some((_, times)) => *times += sign,
            None => along.push((piece.group, sign)),
        }
    }
    edges.retain(|_, along| {
        let creased = along.iter().any(|(group, _)| *group == CREASE);
        along.retain(|(group, times)| *times != 0 && *group != CREASE);
        creased || !along.is_empty()
    });
    Network { nodes, edges }
}

/// Nodes found again by place; near ones are one.
#[derive(Default)]
struct Nodes {
    nodes: Vec<Node>,
    cells: BTreeMap<Node, Vec<usize>>,
}

impl Nodes {
    fn at(&mut self, place: Node) -> usize {
        let cell = [place[0].div_euclid(MERGE), place[1].div_euclid(MERGE)];
        for dx in -1..=1 {
            for dy in -1..=1 {
                let known = self.cells.get(&[cell[0] + dx, cell[1] + dy]);
                for index in known.into_iter().flatten() {
                    let there = self.nodes[*index];
                    let (x, y) = (there[0] - place[0], there[1] - place[1]);
                    if x * x + y * y < MERGE * MERGE {
                        return *index;
                    }
                }
            }
        }
        self.nodes.push(place);
        let index = self.nodes.len() - 1;
        self.cells.entry(cell).or_default().push(index);
        index
    }
}

/// All (piece, node) where a piece must be cut.
fn cuts(pieces: &[Piece], nodes: &mut Nodes) -> Vec<(usize, usize)> {
    let spans: Vec<[i64; 4]> = pieces
        .iter()
        .map(|piece| span(nodes.nodes[piece.from], nodes.nodes[piece.to]))
        .collect();
    let mut order: Vec<usize> = (0..pieces.len()).collect();
    order.sort_by_key(|index| spans[*index][0]);
    let mut cuts = Vec::new();
    for (rank, one) in order.iter().enumerate() {
        let [_, high_x, low_y, high_y] = spans[*one];
        for other in &order[rank + 1..] {
            let apart = spans[*other];
            if apart[0] > high_x + MERGE {
                break;
            }
            if apart[2] <= high_y + MERGE && apart[3] + MERGE >= low_y {
                meet((*one, *other), pieces, nodes, &mut cuts);
            }
        }
    }
    cuts.sort_unstable();
    cuts.dedup();
    cuts
}

fn span(a: Node, b: Node) -> [i64; 4] {
    [
        a[0].min(b[0]),
        a[0].max(b[0]),
        a[1].min(b[1]),
        a[1].max(b[1]),
    ]
}

fn meet(pair: (usize, usize), pieces: &[Piece], nodes: &mut Nodes, cuts: &mut Vec<(usize, usize)>) {
    let (one, other) = (pieces[pair.0], pieces[pair.1]);
    let before = cuts.len();
    for (index, piece, end) in [
        (pair.0, one, other.from),
        (pair.0, one, other.to),
        (pair.1, other, one.from),
        (pair.1, other, one.to),
    ] {
        if end != piece.from && end != piece.to && passes(piece, end, &nodes.nodes) {
            cuts.push((index, end));
        }
    }
    let shared = one.from == other.from
        || one.from == other.to
        || one.to == other.from
        || one.to == other.to;
    if cuts.len() > before || shared {
        return;
    }
    if let Some(place) = crossing(one, other, &nodes.nodes) {
        let node = nodes.at(place);
        for (index, piece) in [(pair.0, one), (pair.1, other)] {
            if node != piece.from && node != piece.to {
                cuts.push((index, node));
            }
        }
    }
}

/// Whether `piece` passes within [`PASS`] of a node that is not its end.
fn passes(piece: Piece, node: usize, nodes: &[Node]) -> bool {
    let (a, b, p) = (nodes[piece.from], nodes[piece.to], nodes[node]);
    let (x, y) = ((b[0] - a[0]) as f64, (b[1] - a[1]) as f64);
    let square = x * x + y * y;
    let along = (p[0] - a[0]) as f64 * x + (p[1] - a[1]) as f64 * y;
    if along <= 0.0 || along >= square {
        return false;
    }
    let off = grid::turn(a, b, p) as f64;
    off * off < PASS * PASS * square
}

/// Where two pieces cross in their inside, to the nearest step.
fn crossing(one: Piece, other: Piece, nodes: &[Node]) -> Option<Node> {
    let (a, b) = (nodes[one.from], nodes[one.to]);
    let (c, d) = (nodes[other.from], nodes[other.to]);
    let (left, right) = (grid::turn(c, d, a), grid::turn(c, d, b));
    let (low, high) = (grid::turn(a, b, c), grid::turn(a, b, d));
    if (left > 0) == (right > 0) || (low > 0) == (high > 0) {
        return None;
    }
    let share = left as f64 / (left - right) as f64;
    let at = |from: i64, to: i64| {
        let length = grid::millimetres(to - from) * share;
        grid::steps(length).map(|steps| from + steps)
    };
    Some([at(a[0], b[0])?, at(a[1], b[1])?])
}

fn cut_up(pieces: &[Piece], cuts: Vec<(usize, usize)>, nodes: &[Node]) -> Vec<Piece> {
    let mut whole = Vec::with_capacity(pieces.len() + cuts.len());
    let mut rest = cuts.into_iter().peekable();
    for (index, piece) in pieces.iter().enumerate() {
        let (a, b) = (nodes[piece.from], nodes[piece.to]);
        let mut between = Vec::new();
        while let Some((_, node)) = rest.next_if(|(cut, _)| *cut == index) {
            let p = nodes[node];
            let along = i128::from(p[0] - a[0]) * i128::from(b[0] - a[0])
                + i128::from(p[1] - a[1]) * i128::from(b[1] - a[1]);
            between.push((along, node));
        }
        between.sort_unstable();
        let mut from = piece.from;
        for (_, node) in between.into_iter().chain([(0, piece.to)]) {
            if node != from {
                let (to, group) = (node, piece.group);
                whole.push(Piece { from, to, group });
            }
            from = node;
        }
    }
    whole
}
