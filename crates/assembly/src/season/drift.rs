//! How far places on plate and slider move apart over the year.

use latchwright_model::wood::moisture_content;
use latchwright_model::wood::{Air, Mover};
use latchwright_model::{Climate, Design};

/// Cells along each side of the year: temperature and humidity between their extremes.
const CELLS: usize = 6;
/// Nodes along each side.
const NODES: usize = CELLS + 1;

/// Change of size of plate and slider along one axis, at the nodes of a net over the year.
///
/// The year is every air whose temperature and humidity both lie between the extremes of the three
/// that the design names, not only the way from one to the next: a warm dry day and a cool damp one
/// are in it. Within a cell of the net a size only grows or only shrinks with either of the two, so
/// that the values at the cell's corners enclose it.
#[derive(Debug, Clone, PartialEq)]
pub struct Strains {
    /// Plate and slider at the nodes, row by row; each between its least and largest, because two
    /// formulas meet at the ends of the table of movement.
    nodes: Vec<(Range, Range)>,
    /// Least and largest of the plate, and of the slider, over all nodes; nought is among them.
    plate: Range,
    slider: Range,
    /// What encloses plate and slider in all cells of the net: the corners of the least convex polygon
    /// about them, the plate along one axis and the slider along the other.
    corners: Vec<(f64, f64)>,
    /// Same wood, same cut, same direction: they move as one.
    alike: bool,
}

/// Least and largest.
type Range = (f64, f64);

/// Drift over the whole year; every length it is asked about is counted from the guide's middle.
#[derive(Debug, Clone, PartialEq)]
pub struct Drift {
    /// Along x, across the slider's travel.
    pub x: Strains,
    /// Along y, the slider's travel.
    pub y: Strains,
}

impl Drift {
    /// The drift of this design; `None` if a wood is not in the table.
    pub fn of(design: &Design) -> Option<Self> {
        let year = Year::of(design);
        let axis = |along_x| {
            let plate = Mover::of_plate(design, along_x)?;
            let slider = Mover::of_slider(design, along_x)?;
            Some(year.strains(plate, slider))
        };
        Some(Self {
            x: axis(true)?,
            y: axis(false)?,
        })
    }

    /// No drift at all: a year in which the air never changes.
    pub fn none() -> Self {
        let still = Strains::of(vec![((0.0, 0.0), (0.0, 0.0)); NODES * NODES], true);
        Self {
            x: still.clone(),
            y: still,
        }
    }
}

/// The air of the year at the nodes of the net.
struct Year {
    built: Air,
    nodes: Vec<Air>,
    /// Wood leaves the range of the table of movement at some time.
    leaves_table: bool,
}

impl Year {
    fn of(design: &Design) -> Self {
        let season = &design.season;
        let named = [season.built, season.driest, season.dampest];
        let range = |of: fn(&Climate) -> f64| {
            let values = named.iter().map(of);
            let least = values.clone().fold(f64::INFINITY, f64::min);
            (least, values.fold(f64::NEG_INFINITY, f64::max))
        };
        let (warmth, damp) = (range(|air| air.celsius), range(|air| air.humidity));
        let at = |(least, most): Range, node: usize| {
            least + (most - least) * (node as f64 / CELLS as f64)
        };
        let air = |celsius, humidity| Air::of(Climate { celsius, humidity });
        let nodes: Vec<Air> = (0..NODES * NODES)
            .map(|node| air(at(warmth, node / NODES), at(damp, node % NODES)))
            .collect();
        let leaves_table = nodes.iter().any(Air::outside_table);
        Self {
            built: Air::of(season.built),
            nodes,
            leaves_table,
        }
    }

    fn strains(&self, plate: Mover, slider: Mover) -> Strains {
        let range = |mover: Mover, air: &Air| mover.strain(self.built, *air, self.leaves_table);
        let nodes: Vec<(Range, Range)> = self
            .nodes
            .iter()
            .map(|air| (range(plate, air), range(slider, air)))
            .collect();
        Strains::of(nodes, plate == slider)
    }
}

impl Strains {
    fn of(nodes: Vec<(Range, Range)>, alike: bool) -> Self {
        let wider = |(lo, hi): Range, (least, most): Range| (lo.min(least), hi.max(most));
        let over = |of: fn(&(Range, Range)) -> Range| nodes.iter().map(of).fold((0.0, 0.0), wider);
        Self {
            plate: over(|(plate, _)| *plate),
            slider: over(|(_, slider)| *slider),
            corners: if alike { Vec::new() } else { corners(&nodes) },
            nodes,
            alike,
        }
    }

    /// Most that any length on plate or slider grows over the year, as a fraction of it.
    pub fn most_growth(&self) -> f64 {
        self.plate.1.max(self.slider.1)
    }

    /// Most that a length on the slider shrinks over the year, as a fraction of it.
    pub fn slider_shrinks(&self) -> f64 {
        -self.slider.0
    }

    /// Least and largest of `on_plate`·(plate's strain) − `on_slider`·(slider's strain) over the
    /// year: how far a place that far out on the plate moves ahead of one that far out on the
    /// slider, mm for lengths in mm.
    pub fn apart(&self, on_plate: f64, on_slider: f64) -> (f64, f64) {
        if self.alike {
            return times(self.plate, on_plate - on_slider);
        }
        let corners = self.corners.iter();
        let moved = corners.map(|(plate, slider)| plate * on_plate - slider * on_slider);
        moved.fold((0.0, 0.0), |(lo, hi): Range, at| (lo.min(at), hi.max(at)))
    }
}

/// The corners of the least convex polygon about what plate and slider can be in any cell of the net.
fn corners(nodes: &[(Range, Range)]) -> Vec<(f64, f64)> {
    let cells = (0..CELLS * CELLS).map(|cell| hull(nodes, cell / CELLS, cell % CELLS));
    let mut all: Vec<(f64, f64)> = cells
        .flat_map(|((p, more_p), (s, more_s))| [(p, s), (p, more_s), (more_p, s), (more_p, more_s)])
        .collect();
    all.sort_by(|one, other| one.0.total_cmp(&other.0).then(one.1.total_cmp(&other.1)));
    all.dedup();
    let mut polygon = Vec::new();
    // one side from left to right, then the other back
    chain(&mut polygon, all.iter().copied());
    chain(&mut polygon, all.iter().rev().copied());
    polygon
}

/// Adds one side of the polygon about these, which come in order: every corner turns left.
fn chain(polygon: &mut Vec<(f64, f64)>, points: impl Iterator<Item = (f64, f64)>) {
    let first = polygon.len();
    for (x, y) in points {
        while let [.., (ax, ay), (bx, by)] = polygon[first..]
            && (bx - ax) * (y - ay) - (by - ay) * (x - ax) < 0.0
        {
            polygon.pop();
        }
        polygon.push((x, y));
    }
}

/// What encloses plate and slider in one cell.
fn hull(nodes: &[(Range, Range)], row: usize, column: usize) -> (Range, Range) {
    let first = row * NODES + column;
    let none = (f64::INFINITY, f64::NEG_INFINITY);
    [first, first + 1, first + NODES, first + NODES + 1]
        .into_iter()
        .filter_map(|node| nodes.get(node))
        .fold((none, none), |(plate, slider), (p, s)| {
            (
                (plate.0.min(p.0), plate.1.max(p.1)),
                (slider.0.min(s.0), slider.1.max(s.1)),
            )
        })
}

fn times((least, most): Range, factor: f64) -> Range {
    let (one, other) = (least * factor, most * factor);
    (one.min(other), one.max(other))
}

/// Moisture contents at which the design's wood stands over the year: driest, built, dampest.
pub fn moistures(design: &Design) -> [f64; 3] {
    let season = &design.season;
    [season.driest, season.built, season.dampest].map(moisture_content)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::thin_latch::thin;
    use latchwright_model::{Grain, Material, Sawn, Season};

    #[test]
    fn the_same_wood_the_same_way_does_not_drift_over_the_same_distance() {
        let drift = Drift::of(&thin()).unwrap();
        assert_eq!(drift.y.apart(50.0, 50.0), (0.0, 0.0));
        assert_eq!(drift.x.apart(-55.0, -55.0), (0.0, 0.0));
    }

    #[test]
    fn a_printed_slider_under_a_cross_grain_plate_drifts_much() {
        let mut design = thin();
        design.plate.grain = Grain::AlongY;
        design.slider.material = Material::Printed;
        let (dry, damp) = Drift::of(&design).unwrap().x.apart(55.0, 55.0);
        // white oak, flat: 0.00365 · 55 mm · about 5.4 − 8.5 and 13.0 − 8.5 per cent
        assert!((-0.75..-0.5).contains(&dry), "{dry}");
        assert!((0.75..1.1).contains(&damp), "{damp}");
    }

    #[test]
    fn the_polygon_moves_as_far_as_all_cells_together() {
        let mut design = thin();
        design.plate.grain = Grain::AlongX;
        design.slider.material = Material::Printed;
        let year = Year::of(&design);
        let drift = Drift::of(&design).unwrap();
        let plate = Mover::of_plate(&design, false).unwrap();
        let slider = Mover::of_slider(&design, false).unwrap();
        let nodes = year.strains(plate, slider).nodes;
        assert!(drift.y.corners.len() < 40, "{}", drift.y.corners.len());
        for step in 0..64 {
            let angle = f64::from(step) * core::f64::consts::TAU / 64.0;
            let (on_plate, on_slider) = (300.0 * angle.cos(), 300.0 * angle.sin());
            let mut slow: Range = (0.0, 0.0);
            for cell in 0..CELLS * CELLS {
                let (p, s) = hull(&nodes, cell / CELLS, cell % CELLS);
                let (p, s) = (times(p, on_plate), times(s, on_slider));
                slow = (slow.0.min(p.0 - s.1), slow.1.max(p.1 - s.0));
            }
            let fast = drift.y.apart(on_plate, on_slider);
            assert!((fast.0 - slow.0).abs() < 1e-12, "{fast:?} {slow:?}");
            assert!((fast.1 - slow.1).abs() < 1e-12, "{fast:?} {slow:?}");
        }
    }

    #[test]
    fn still_air_moves_nothing_and_an_unknown_wood_is_not_guessed() {
        let mut design = thin();
        design.slider.material = Material::Wood {
            species: "balsa".into(),
            sawn: Sawn::Quarter,
            grain: Grain::AlongY,
        };
        design.season = Season::still(design.season.built);
        assert_eq!(Drift::of(&design).unwrap().x.apart(80.0, 80.0), (0.0, 0.0));
        design.plate.wood = "no such tree".into();
        assert_eq!(Drift::of(&design), None);
    }
}
