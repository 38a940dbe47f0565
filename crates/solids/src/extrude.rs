//! Bodies made of upright prisms, added and cut one after the other, meshed in one go.
//!
//! Over every point of the plane a body is a pile of intervals of z. The ends of an interval are
//! level, or slope down towards the outline of the prism they come from (a chamfer, a rounded edge,
//! the fillet at the root of a pin).

use std::collections::BTreeMap;

use latchwright_geometry::Point;

use crate::fault::MeshFault;
use crate::grid::{self, FURTHEST_MM};
use crate::mesh::Mesh;
use crate::noding::Crease;
use crate::outline::Outline;
use crate::plane::Plane;
use crate::region::Region;
use crate::slope::{Edge, Slope};
use crate::watertight;

/// A region between two heights.
#[derive(Debug, Clone, PartialEq)]
pub struct Prism {
    /// Its outline seen from above.
    pub region: Region,
    /// z of its underside, mm.
    pub low: f64,
    /// z of its upper side, mm.
    pub high: f64,
    /// How the edge round its underside is shaped.
    pub low_edge: Edge,
    /// How the edge round its upper side is shaped.
    pub high_edge: Edge,
}

impl Prism {
    /// A prism with sharp edges.
    pub fn new(region: impl Into<Region>, low: f64, high: f64) -> Self {
        Self {
            region: region.into(),
            low,
            high,
            low_edge: Edge::sharp(),
            high_edge: Edge::sharp(),
        }
    }

    /// The same with its lower edge shaped.
    #[must_use]
    pub fn with_low(mut self, edge: Edge) -> Self {
        self.low_edge = edge;
        self
    }

    /// The same with its upper edge shaped.
    #[must_use]
    pub fn with_high(mut self, edge: Edge) -> Self {
        self.high_edge = edge;
        self
    }
}

/// How far prisms are moved against one another if their outlines touch, mm.
const NUDGES: [f64; 3] = [0.0, 0.0015, 0.004];

/// A solid in the making.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Body {
    steps: Vec<(bool, Prism)>,
}

/// One end of an interval of z.
#[derive(Debug, Clone, Copy, PartialEq)]
enum End {
    /// At this height, in steps of the grid.
    Level(i64),
    /// On the slope of this number.
    On(usize),
}

type Pile = Vec<(End, End)>;

/// The group of a prism's outline; its lower and upper end, each with the group inside which it is
/// level.
type Ends = (usize, (End, usize), (End, usize));

impl Body {
    /// Nothing yet.
    pub fn new() -> Self {
        Self::default()
    }

    /// Adds a prism to what is there.
    pub fn add(&mut self, prism: Prism) -> &mut Self {
        self.steps.push((true, prism));
        self
    }

    /// Cuts a prism away from what is there.
    pub fn cut(&mut self, prism: Prism) -> &mut Self {
        self.steps.push((false, prism));
        self
    }

    /// The surface of the body, closed.
    ///
    /// Outlines that touch in a single point to within the grid would leave an upright edge with
    /// four faces; then each prism after the first is moved by a few µm, no more than it takes.
    ///
    /// # Errors
    /// [`MeshFault`] if coordinates are out of range, outlines tangle, slopes cross, or the surface
    /// does not close even so.
    pub fn mesh(&self) -> Result<Mesh, MeshFault> {
        let mut last = MeshFault::NoVolume { volume_mm3: 0.0 };
        for nudge in NUDGES {
            let mesh = self.nudged(nudge).surface()?;
            match watertight::closed(&mesh) {
                Ok(()) => return Ok(mesh),
                Err(fault) => last = fault,
            }
        }
        Err(last)
    }

    /// Each prism moved by `by` (mm) further than the one before it.
    fn nudged(&self, by: f64) -> Self {
        let mut body = self.clone();
        if by > 0.0 {
            for (index, (_, prism)) in body.steps.iter_mut().enumerate() {
                let shift = Point::new(by, by / 3.0) * index as f64;
                prism.region = prism.region.each(|outline| outline.moved(shift));
            }
        }
        body
    }

    fn surface(&self) -> Result<Mesh, MeshFault> {
        let mut groups: Vec<Vec<Outline>> = Vec::new();
        let mut slopes = Vec::new();
        let mut ends: Vec<Ends> = Vec::new();
        for (_, prism) in &self.steps {
            let outline = groups.len();
            groups.push(prism.region.outlines().to_vec());
            let mut end = |edge: &Edge, height: f64, up: f64| -> Result<(End, usize), MeshFault> {
                let level = grid::checked(height)?;
                let Some(slope) = Slope::new(edge, &prism.region, outline, height, up)? else {
                    return Ok((End::Level(level), outline));
                };
                let slope = slope.with_groups(&mut groups);
                let inner = slope.innermost();
                slopes.push(slope);
                Ok((End::On(slopes.len() - 1), inner))
            };
            let low = end(&prism.low_edge, prism.low, 1.0)?;
            let high = end(&prism.high_edge, prism.high, -1.0)?;
            ends.push((outline, low, high));
        }
        let borrowed: Vec<&[Outline]> = groups.iter().map(Vec::as_slice).collect();
        let creases: Vec<Crease> = slopes.iter().flat_map(Slope::creases).collect();
        let plane = Plane::new(&borrowed, &creases)?;
        let piles = plane
            .windings
            .iter()
            .enumerate()
            .map(|(zone, winding)| {
                self.pile(winding, &ends, &slopes)
                    .ok_or_else(|| slopes_cross(&plane, zone))
            })
            .collect::<Result<Vec<Pile>, MeshFault>>()?;
        Surface::new(&plane, piles, &slopes)?.mesh()
    }

    /// The intervals over one zone; `None` where an end lies within the slope of another, so that
    /// neither is the higher one throughout.
    fn pile(&self, winding: &[i32], ends: &[Ends], slopes: &[Slope]) -> Option<Pile> {
        let inside = |group: usize| winding.get(group).is_some_and(|times| *times > 0);
        let mut pile = Pile::new();
        for ((adds, prism), (outline, low, high)) in self.steps.iter().zip(ends) {
            if !inside(*outline) {
                continue;
            }
            let at = |(end, inner): (End, usize), height: f64| {
                if inside(inner) && inner != *outline {
                    End::Level(grid::steps(height).unwrap_or(0))
                } else {
                    end
                }
            };
            let (low, high) = (at(*low, prism.low), at(*high, prism.high));
            let known = pile.iter().flat_map(|(low, high)| [*low, *high]);
            let apart = |other: End| [low, high].iter().all(|end| tell(*end, other, slopes));
            if !tell(low, high, slopes) || !known.into_iter().all(apart) {
                return None;
            }
            if *adds {
                join(&mut pile, low, high, slopes);
            } else {
                pile = parted(&pile, low, high, slopes);
            }
        }
        Some(pile)
    }
}

/// Whether one of two ends is nowhere below the other.
fn tell(one: End, other: End, slopes: &[Slope]) -> bool {
    let span = |end: End| match end {
        End::Level(level) => {
            let height = grid::millimetres(level);
            (height, height)
        }
        End::On(slope) => slopes.get(slope).map_or((0.0, 0.0), Slope::span),
    };
    let ((low, high), (other_low, other_high)) = (span(one), span(other));
    let slack = 1.0 / grid::STEPS;
    one == other || high <= other_low + slack || other_high <= low + slack
}

/// The fault, at the middle of a triangle of the zone.
fn slopes_cross(plane: &Plane, zone: usize) -> MeshFault {
    let tile = plane.tiles.iter().find(|tile| tile.zone == zone);
    let at = tile.map_or_else(Point::default, |tile| {
        let [a, b, c] = tile.nodes.map(|node| grid::point(plane.nodes[node]));
        (a + b + c) * (1.0 / 3.0)
    });
    MeshFault::SlopesCross {
        x_mm: at.x,
        y_mm: at.y,
    }
}

/// Where an end lies, for telling which of two is higher: the middle of its slope.
fn height(end: End, slopes: &[Slope]) -> f64 {
    match end {
        End::Level(level) => grid::millimetres(level),
        End::On(slope) => slopes.get(slope).map_or(0.0, Slope::middle),
    }
}

/// Adds an interval, joined with those it overlaps or touches.
fn join(pile: &mut Pile, low: End, high: End, slopes: &[Slope]) {
    let at = |end| height(end, slopes);
    if at(low) >= at(high) {
        return;
    }
    let (mut low, mut high) = (low, high);
    pile.retain(|(other_low, other_high)| {
        if at(*other_high) < at(low) || at(*other_low) > at(high) {
            return true;
        }
        if at(*other_low) < at(low) {
            low = *other_low;
        }
        if at(*other_high) > at(high) {
            high = *other_high;
        }
        false
    });
    pile.push((low, high));
    pile.sort_by(|one, two| at(one.0).total_cmp(&at(two.0)));
}

/// What is left of a pile when an interval is cut out.
fn parted(pile: &Pile, low: End, high: End, slopes: &[Slope]) -> Pile {
    let at = |end| height(end, slopes);
    let mut left = Pile::new();
    for (bottom, top) in pile {
        if at(high) <= at(*bottom) || at(low) >= at(*top) || at(low) >= at(high) {
            left.push((*bottom, *top));
            continue;
        }
        if at(low) > at(*bottom) {
            left.push((*bottom, low));
        }
        if at(high) < at(*top) {
            left.push((high, *top));
        }
    }
    left
}

/// Points and triangles of a body's surface.
struct Surface<'a> {
    plane: &'a Plane,
    piles: Vec<Pile>,
    /// z of each slope over the nodes of its ring, in steps.
    sloped: BTreeMap<(usize, usize), i64>,
    /// For each node, every z at which something ends over it; sorted.
    levels: Vec<Vec<i64>>,
    triangles: Vec<[(usize, i64); 3]>,
}

impl<'a> Surface<'a> {
    fn new(plane: &'a Plane, piles: Vec<Pile>, slopes: &[Slope]) -> Result<Self, MeshFault> {
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
            triangles: Vec::new(),
        };
        for tile in &plane.tiles {
            for (low, high) in &surface.piles[tile.zone] {
                for node in tile.nodes {
                    let ends = [surface.z(*low, node), surface.z(*high, node)];
                    surface.levels[node].extend(ends);
                }
            }
        }
        for levels in &mut surface.levels {
            levels.sort_unstable();
            levels.dedup();
        }
        Ok(surface)
    }

    fn z(&self, end: End, node: usize) -> i64 {
        match end {
            End::Level(level) => level,
            End::On(slope) => self.sloped.get(&(slope, node)).copied().unwrap_or(0),
        }
    }

    fn mesh(mut self) -> Result<Mesh, MeshFault> {
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
                self.triangles.push(top);
                self.triangles.push(bottom);
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
            walls.push(((*low_a, *high_a), (*low_b, *high_b)));
        }
        for (span_a, span_b) in walls {
            self.wall((a, span_a), (b, span_b));
        }
        Ok(())
    }

    /// One upright face from node a to node b, with every level that lies on its upright edges.
    fn wall(&mut self, (a, span_a): (usize, (i64, i64)), (b, span_b): (usize, (i64, i64))) {
        let chain = |node: usize, (low, high): (i64, i64)| -> Vec<(usize, i64)> {
            self.levels[node]
                .iter()
                .filter(|level| (low..=high).contains(*level))
                .map(|level| (node, *level))
                .collect()
        };
        let (left, right) = (chain(a, span_a), chain(b, span_b));
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
                (Some(left), Some(right)) => {
                    if left.1 < right.1 {
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

/// A height far above and below any part, mm: for cuts that go right through.
pub const THROUGH: f64 = FURTHEST_MM / 2.0;

#[cfg(test)]
mod tests {
    use core::f64::consts::PI;

    use latchwright_geometry::Point;

    use super::*;
    use crate::watertight::check_rounded;

    fn circle(radius: f64) -> Outline {
        Outline::circle(Point::default(), radius)
    }

    #[test]
    fn a_disc_measures_what_it_should() {
        let mesh = Body::new()
            .add(Prism::new(circle(15.0), 0.0, 6.0))
            .mesh()
            .unwrap();
        assert_eq!(mesh.extent().size(), [30.0, 30.0, 6.0]);
        assert!(mesh.volume() < PI * 225.0 * 6.0);
        assert!(mesh.volume() > PI * 225.0 * 6.0 * 0.998);
        check_rounded(&mesh).unwrap();
    }

    #[test]
    fn a_chamfered_block_loses_what_a_chamfer_takes() {
        let block = Outline::block(Point::default(), 10.0, 20.0);
        let mesh = Body::new()
            .add(Prism::new(block, 0.0, 5.0).with_low(Edge::chamfer(0.4)))
            .mesh()
            .unwrap();
        // a frustum over the lowest 0.4 mm: h/3 (A + B + √AB) holds for similar sections only, so
        // the prismoid: h/6 (A + 4 M + B)
        let frustum = 0.4 / 6.0 * (200.0 + 4.0 * 9.6 * 19.6 + 9.2 * 19.2);
        assert!((mesh.volume() - (200.0 * 4.6 + frustum)).abs() < 1e-6);
        assert_eq!(check_rounded(&mesh).unwrap().genus, 0);
    }

    #[test]
    fn a_ring_with_a_countersink_is_a_ring() {
        let mut body = Body::new();
        body.add(Prism::new(circle(10.0), 0.0, 6.0).with_low(Edge::chamfer(0.4)));
        body.cut(Prism::new(circle(1.7), -THROUGH, THROUGH));
        body.cut(Prism::new(circle(3.2), -1.0, 1.5).with_high(Edge::chamfer(1.5)));
        let sound = check_rounded(&body.mesh().unwrap()).unwrap();
        assert_eq!((sound.shells, sound.genus), (1, 1));
        // disc less bore less countersink: π/3 h (a² + ab + b²) − π b² h, and less the chamfer
        let sink = PI * 1.5 / 3.0 * (3.2 * 3.2 + 3.2 * 1.7 + 1.7 * 1.7) - PI * 1.7 * 1.7 * 1.5;
        let rim = PI * 100.0 * 0.4 - PI * 0.4 / 3.0 * (100.0 + 96.0 + 92.16);
        let wanted = PI * 6.0 * (100.0 - 1.7 * 1.7) - sink - rim;
        assert!((sound.volume / wanted - 1.0).abs() < 0.003, "{sound:?}");
    }

    #[test]
    fn a_pin_with_a_fillet_stands_on_its_foot() {
        let mut body = Body::new();
        body.add(Prism::new(
            Outline::block(Point::default(), 20.0, 20.0),
            0.0,
            3.0,
        ));
        body.add(Prism::new(circle(3.0), 3.0, 4.0).with_high(Edge::hollow(1.0)));
        body.add(Prism::new(circle(2.0), 0.0, 8.0).with_high(Edge::chamfer(0.3)));
        let sound = check_rounded(&body.mesh().unwrap()).unwrap();
        assert_eq!((sound.shells, sound.genus), (1, 0));
        assert!(sound.volume > 1200.0 + PI * 4.0 * 4.6);
    }

    #[test]
    fn a_tunnel_makes_a_handle_and_a_hollow_a_second_shell() {
        let block = |side: f64| Outline::block(Point::default(), side, side);
        let mut tunnel = Body::new();
        tunnel.add(Prism::new(block(10.0), 0.0, 10.0));
        tunnel.cut(Prism::new(
            Outline::block(Point::default(), 20.0, 4.0),
            3.0,
            6.0,
        ));
        let sound = check_rounded(&tunnel.mesh().unwrap()).unwrap();
        assert_eq!((sound.shells, sound.genus), (1, 1));
        assert!((sound.volume - 880.0).abs() < 1e-9);
        let mut hollow = Body::new();
        hollow.add(Prism::new(block(10.0), 0.0, 10.0));
        hollow.cut(Prism::new(block(4.0), 3.0, 6.0));
        let sound = check_rounded(&hollow.mesh().unwrap()).unwrap();
        assert_eq!((sound.shells, sound.genus), (2, 0));
    }

    #[test]
    fn blocks_that_touch_along_an_upright_edge_are_moved_apart_or_together() {
        let block = |x: f64| Outline::block(Point::new(x, x), 2.0, 2.0);
        let mut body = Body::new();
        body.add(Prism::new(block(0.0), 0.0, 2.0));
        body.add(Prism::new(block(2.0), 0.0, 2.0));
        let sound = check_rounded(&body.mesh().unwrap()).unwrap();
        assert!((sound.volume - 16.0).abs() < 1e-3);
    }

    #[test]
    fn an_end_within_the_slope_of_another_is_refused() {
        let mut body = Body::new();
        body.add(Prism::new(circle(10.0), 0.0, 5.0).with_high(Edge::chamfer(2.0)));
        body.cut(Prism::new(circle(12.0), 4.0, 6.0));
        assert!(matches!(body.mesh(), Err(MeshFault::SlopesCross { .. })));
    }

    #[test]
    fn outlines_beyond_the_grid_are_refused() {
        let far = Outline::block(Point::new(1e7, 0.0), 1.0, 1.0);
        let mut body = Body::new();
        assert!(matches!(
            body.add(Prism::new(far, 0.0, 1.0)).mesh(),
            Err(MeshFault::TooLarge { .. })
        ));
    }
}
