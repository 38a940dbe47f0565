//! Bodies made of upright prisms, added and cut one after the other, meshed in one go.
//!
//! Over every point of the plane a body is a pile of intervals of z. The ends of an interval are
//! level, or slope down towards the outline of the prism they come from (a chamfer, a rounded edge,
//! the fillet at the root of a pin).

use latchwright_geometry::Point;

use crate::fault::MeshFault;
use crate::grid::{self, FURTHEST_MM};
use crate::mesh::Mesh;
use crate::noding::Crease;
use crate::nudge;
use crate::outline::Outline;
use crate::pile::{End, Pile, join, parted, tell};
use crate::plane::Plane;
use crate::region::Region;
use crate::slope::{Edge, Slope};
use crate::surface::Surface;
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

/// A solid in the making.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Body {
    steps: Vec<(bool, Prism)>,
}

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
    /// four faces; then prisms that can touch are moved against one another, or all are grown, by a
    /// few µm: by 1.5 µm where that will do, and none by more than 13 µm however many there are.
    ///
    /// # Errors
    /// [`MeshFault`] if coordinates are out of range, outlines tangle, slopes cross, or the surface
    /// does not close even so.
    pub fn mesh(&self) -> Result<Mesh, MeshFault> {
        let mut last = MeshFault::NoVolume { volume_mm3: 0.0 };
        for (shift, grow) in nudge::NUDGES {
            let mesh = self.nudged(shift, grow)?.surface()?;
            match watertight::closed(&mesh) {
                Ok(()) => return Ok(mesh),
                Err(fault) => last = fault,
            }
        }
        Err(last)
    }

    /// Prisms that can touch moved against one another by `shift` (mm), and all grown by `grow` (mm).
    fn nudged(&self, shift: f64, grow: f64) -> Result<Self, MeshFault> {
        let mut body = self.clone();
        if grow > 0.0 {
            for (_, prism) in &mut body.steps {
                prism.region = prism.region.outset(grow)?;
            }
        }
        if shift > 0.0 {
            let regions: Vec<&Region> = body.steps.iter().map(|(_, prism)| &prism.region).collect();
            let moves = nudge::moves(&regions, shift);
            for ((_, prism), by) in body.steps.iter_mut().zip(moves) {
                prism.region = prism.region.each(|outline| outline.moved(by));
            }
        }
        Ok(body)
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

    /// How far the box round `mesh` is off the one from `low` to `high`, mm.
    fn off_box(mesh: &Mesh, low: [f64; 3], high: [f64; 3]) -> f64 {
        let extent = mesh.extent();
        let ends = extent
            .low
            .iter()
            .zip(low)
            .chain(extent.high.iter().zip(high));
        ends.map(|(is, wanted)| (is - wanted).abs())
            .fold(0.0, f64::max)
    }

    #[test]
    fn a_long_chain_of_blocks_that_touch_stays_where_it_is_and_closes() {
        for count in [12, 60, 120] {
            let mut body = Body::new();
            for index in 0..count {
                let at = 2.0 * f64::from(index);
                let block = Outline::block(Point::new(at, at), 2.0, 2.0);
                body.add(Prism::new(block, 0.0, 2.0));
            }
            let mesh = body.mesh().unwrap();
            let sound = check_rounded(&mesh).unwrap();
            assert!((sound.volume - 8.0 * f64::from(count)).abs() < 1e-3 * f64::from(count));
            let far = 2.0 * f64::from(count) - 1.0;
            let off = off_box(&mesh, [-1.0, -1.0, 0.0], [far, far, 2.0]);
            assert!(off <= 0.0015 + 1e-4, "{count} blocks: {off}");
        }
    }

    #[test]
    fn blades_that_all_touch_in_one_point_close_and_none_is_moved_far() {
        for count in 3..=24_u32 {
            let mut body = Body::new();
            for index in 0..count {
                let angle = 2.0 * PI * f64::from(index) / f64::from(count) + 0.1;
                let tip = |off: f64| Point::at_angle(angle + off / f64::from(count)) * 10.0;
                let blade = Outline::new(vec![Point::default(), tip(-1.0), tip(1.0)]);
                body.add(Prism::new(blade, 0.0, 2.0));
            }
            let mesh = body
                .mesh()
                .unwrap_or_else(|fault| panic!("{count} blades: {fault:?}"));
            check_rounded(&mesh).unwrap_or_else(|fault| panic!("{count} blades: {fault:?}"));
            let furthest = mesh
                .points
                .iter()
                .map(|[x, y, _]| Point::new(*x, *y).length());
            let furthest = furthest.fold(0.0, f64::max);
            // moved by at most 13 µm and grown by 3, which a sharp corner makes a few times as much
            assert!(furthest < 10.0 + 0.013 + 0.05, "{count} blades: {furthest}");
        }
    }

    #[test]
    fn an_outline_that_touches_itself_in_a_point_is_joined_there() {
        // two squares of one region, corner to corner, and a hole that touches the rim in a point
        let block = |x: f64| Outline::block(Point::new(x, x), 2.0, 2.0);
        let mut body = Body::new();
        body.add(Prism::new(
            Region::union([block(0.0), block(2.0)]),
            0.0,
            2.0,
        ));
        let sound = check_rounded(&body.mesh().unwrap()).unwrap();
        assert!((sound.volume - 16.0).abs() < 0.2, "{sound:?}");
        let hole = Outline::new(vec![
            Point::new(-1.0, 0.0),
            Point::new(0.0, -0.5),
            Point::new(0.0, 0.5),
        ]);
        let pierced = Region::from(block(0.0)).minus(&hole.into()).unwrap();
        let mut body = Body::new();
        body.add(Prism::new(pierced, 0.0, 2.0));
        let sound = check_rounded(&body.mesh().unwrap()).unwrap();
        assert!((sound.volume - 7.0).abs() < 0.1, "{sound:?}");
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
