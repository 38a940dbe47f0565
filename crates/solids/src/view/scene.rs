//! What is looked at: parts made ready, where they stand, and the quiet helpers around them.

use super::cast::short;
use super::shape::Shape;
use crate::mesh::{Extent, Mesh, Pose, Vector3};
use crate::part::Part;
use crate::plate_up::Bed;

/// Clear distance between parts that are shown side by side, and of the grid round them, mm.
const APART: f64 = 8.0;

/// Clear distance between parts that are pulled apart, mm.
const GAP: f64 = 9.0;

/// A square of the bed, mm.
const SQUARE: f64 = 10.0;

/// Dashes of the line along which a part was pulled: long, gap, short, gap, mm.
const DASHES: [f64; 4] = [5.0, 1.5, 1.0, 1.5];

/// Most dashes along one line.
const MOST_DASHES: usize = 400;

/// Most lines of the grid each way.
const MOST_LINES: u32 = 200;

/// A straight helper line, mm.
pub(super) type Line = [Vector3; 2];

/// Parts made ready to be drawn many times.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Scene {
    pub(super) shapes: Vec<Shape>,
    /// How far each shape is lifted by now, mm.
    pub(super) lifts: Vec<f64>,
    /// How far each shape is lifted when all is pulled apart, mm.
    full: Vec<f64>,
    /// Where each shape belongs, for the line along which it is pulled.
    homes: Vec<Vector3>,
    /// The bed's squares, seen from above only.
    pub(super) grid: Vec<Line>,
    /// Edges of bodies that are no parts.
    pub(super) bodies: Vec<Line>,
    /// Dashes along which parts were pulled.
    pub(super) trails: Vec<Line>,
}

impl Scene {
    /// Meshes where they are, numbered in their order.
    pub fn meshes<'a>(meshes: impl IntoIterator<Item = &'a Mesh>) -> Self {
        Self::of(
            meshes
                .into_iter()
                .enumerate()
                .map(|(index, mesh)| (index, mesh, None, Pose::default())),
        )
    }

    /// Parts as they lie to be printed, one beside the other in rows, on squares of 10 mm.
    pub fn parts(parts: &[Part]) -> Self {
        let poses = side_by_side(parts);
        let mut scene = Self::of(
            parts
                .iter()
                .zip(poses)
                .enumerate()
                .map(|(index, (part, pose))| (index, &part.mesh, part.colour_change, pose)),
        );
        let around = scene.extent();
        if !scene.shapes.is_empty() {
            let out = |value: f64, way: f64| ((value + way * APART) * way / SQUARE).ceil();
            let low = [0, 1].map(|axis| -out(around.low[axis], -1.0) * SQUARE);
            let high = [0, 1].map(|axis| out(around.high[axis], 1.0) * SQUARE);
            scene.grid = grid(low, high);
        }
        scene
    }

    /// Parts on a bed of this width and depth (mm) where [`plate_up`](crate::plate_up()) put them.
    pub fn bed(parts: &[Part], bed: &Bed, size: (f64, f64)) -> Self {
        let mut scene = Self::of(bed.placed.iter().filter_map(|(index, pose)| {
            let part = parts.get(*index)?;
            Some((*index, &part.mesh, part.colour_change, *pose))
        }));
        scene.grid = grid([0.0, 0.0], [size.0, size.1]);
        scene
    }

    /// Parts where they sit in the closed lid, pulled apart in their order by a share of 0 (together)
    /// to 1. Tools, which have no place there, are left out.
    pub fn assembly(parts: &[Part], pulled: f64) -> Self {
        let placed: Vec<(usize, &Part, Pose)> = parts
            .iter()
            .enumerate()
            .filter_map(|(index, part)| Some((index, part, part.assembled?)))
            .collect();
        let mut scene = Self::of(
            placed
                .iter()
                .map(|(index, part, pose)| (*index, &part.mesh, part.colour_change, *pose)),
        );
        let steps: Vec<i32> = placed.iter().map(|(_, part, _)| part.apart).collect();
        scene.full = full_lifts(&scene.shapes, &steps);
        scene.homes = placed.iter().map(|(.., pose)| pose.to).collect();
        scene.pull(pulled);
        scene
    }

    /// Shows a body that is no part, such as the wooden plate, by its edges.
    #[must_use]
    pub fn with_body(mut self, body: Extent) -> Self {
        self.bodies.extend(edges_of(&body));
        self
    }

    /// Pulls an assembly apart, or puts it together again; cheap enough for every frame.
    pub fn pull(&mut self, pulled: f64) {
        let share = if pulled.is_finite() {
            pulled.clamp(0.0, 1.0)
        } else {
            0.0
        };
        for (lift, full) in self.lifts.iter_mut().zip(&self.full) {
            *lift = full * share;
        }
        self.lay_trails();
    }

    /// The box around all parts as they stand now, mm; all zero without parts.
    pub fn extent(&self) -> Extent {
        let there = |shape: &Shape| !shape.points.is_empty();
        let shapes = self.shapes.iter().zip(&self.lifts);
        let boxes = shapes
            .filter(|(shape, _)| there(shape))
            .map(|(shape, lift)| {
                let raised = |[x, y, z]: Vector3| [x, y, z + lift];
                Extent {
                    low: raised(shape.extent.low),
                    high: raised(shape.extent.high),
                }
            });
        boxes.reduce(around).unwrap_or_default()
    }

    /// Triangles of all its parts.
    pub fn triangles(&self) -> usize {
        let counts = self.shapes.iter().map(|shape| shape.triangles.len());
        counts.sum()
    }

    fn of<'a>(placed: impl Iterator<Item = (usize, &'a Mesh, Option<f64>, Pose)>) -> Self {
        let shapes: Vec<Shape> = placed
            .map(|(part, mesh, change, pose)| Shape::new(part, mesh, &pose, change))
            .collect();
        Self {
            lifts: vec![0.0; shapes.len()],
            full: vec![0.0; shapes.len()],
            shapes,
            ..Self::default()
        }
    }

    /// The name of each shape's first facet in the samples.
    pub(super) fn firsts(&self) -> Vec<u32> {
        let mut first = 1;
        let mut firsts = Vec::with_capacity(self.shapes.len());
        for shape in &self.shapes {
            firsts.push(short(first));
            first += shape.triangles.len();
        }
        firsts
    }

    /// Every point that a fitted picture has to hold.
    pub(super) fn each_outer_point(&self, mut take: impl FnMut(Vector3)) {
        for (shape, lift) in self.shapes.iter().zip(&self.lifts) {
            for [x, y, z] in &shape.points {
                take([*x, *y, z + lift]);
            }
        }
        for line in self.grid.iter().chain(&self.bodies) {
            for place in line {
                take(*place);
            }
        }
    }

    fn lay_trails(&mut self) {
        self.trails.clear();
        let mut spans: Vec<(Vector3, f64)> = Vec::new();
        for ((shape, lift), home) in self.shapes.iter().zip(&self.lifts).zip(&self.homes) {
            if *lift == 0.0 {
                continue;
            }
            // from the end that is left behind to where the part begins now
            let (from, to) = if *lift > 0.0 {
                (shape.extent.low[2], shape.extent.low[2] + lift)
            } else {
                (shape.extent.high[2], shape.extent.high[2] + lift)
            };
            spans.push(([home[0], home[1], from.min(to)], from.max(to)));
        }
        spans.sort_by(|one, two| {
            let order = |axis: usize| one.0[axis].total_cmp(&two.0[axis]);
            order(0).then(order(1)).then(order(2))
        });
        let same = |one: &(Vector3, f64), two: &(Vector3, f64)| one.0[..2] == two.0[..2];
        for column in spans.chunk_by(same) {
            let high = column.iter().map(|span| span.1).fold(f64::MIN, f64::max);
            dash(column[0].0, high, &mut self.trails);
        }
    }
}

fn around(one: Extent, two: Extent) -> Extent {
    Extent {
        low: [0, 1, 2].map(|axis| one.low[axis].min(two.low[axis])),
        high: [0, 1, 2].map(|axis| one.high[axis].max(two.high[axis])),
    }
}

/// Rows about as wide as all is deep, in the parts' order; a single part stays where it is.
fn side_by_side(parts: &[Part]) -> Vec<Pose> {
    if parts.len() < 2 {
        return vec![Pose::default(); parts.len()];
    }
    let boxes: Vec<Extent> = parts.iter().map(Part::extent).collect();
    let area: f64 = boxes
        .iter()
        .map(|extent| (extent.size()[0] + APART) * (extent.size()[1] + APART))
        .sum();
    let widest = boxes
        .iter()
        .map(|extent| extent.size()[0])
        .fold(0.0, f64::max);
    let limit = latchwright_geometry::trig::sqrt(area * 1.5).max(widest);
    let (mut x, mut y, mut deep) = (0.0, 0.0, 0.0_f64);
    boxes
        .iter()
        .map(|extent| {
            let [wide, long, _] = extent.size();
            if x > 0.0 && x + wide > limit {
                (x, y, deep) = (0.0, y - deep - APART, 0.0);
            }
            let pose = Pose::to(x - extent.low[0], y - long - extent.low[1], -extent.low[2]);
            x += wide + APART;
            deep = deep.max(long);
            pose
        })
        .collect()
}

/// How far every shape has to be lifted so that none hides in another: one layer a step, each clear
/// of the layer before it.
fn full_lifts(shapes: &[Shape], steps: &[i32]) -> Vec<f64> {
    let mut lifts = vec![0.0; shapes.len()];
    for up in [true, false] {
        let sign = if up { 1.0 } else { -1.0 };
        let mut layers: Vec<i32> = steps
            .iter()
            .copied()
            .filter(|step| if up { *step > 0 } else { *step < 0 })
            .collect();
        layers.sort_unstable_by_key(|step| step.unsigned_abs());
        layers.dedup();
        // where the layers so far end, as heights in the direction of the pull
        let (mut end, mut lift) = (f64::NEG_INFINITY, 0.0_f64);
        for layer in layers {
            let mut begin = f64::INFINITY;
            let mut far = f64::NEG_INFINITY;
            let of_layer = || shapes.iter().zip(steps).filter(|(_, step)| **step == layer);
            for (shape, _) in of_layer() {
                let ends = [shape.extent.low[2] * sign, shape.extent.high[2] * sign];
                begin = begin.min(ends[0].min(ends[1]));
                far = far.max(ends[0].max(ends[1]));
            }
            lift = (lift + GAP).max(end + GAP - begin);
            end = far + lift;
            for (index, step) in steps.iter().enumerate() {
                if *step == layer {
                    lifts[index] = lift * sign;
                }
            }
        }
    }
    lifts
}

fn grid(low: [f64; 2], high: [f64; 2]) -> Vec<Line> {
    let mut lines = Vec::new();
    if !low.iter().chain(&high).all(|value| value.abs() < 1e5) {
        return lines;
    }
    for axis in [0, 1] {
        let other = 1 - axis;
        let mut line = |at: f64| {
            let end = |along: f64| {
                let mut place = [0.0; 3];
                place[axis] = at;
                place[other] = along;
                place
            };
            lines.push([end(low[other]), end(high[other])]);
        };
        for count in 0..MOST_LINES {
            let at = low[axis] + f64::from(count) * SQUARE;
            if at > high[axis] - SQUARE / 100.0 {
                break;
            }
            line(at);
        }
        line(high[axis]);
    }
    lines
}

fn dash(from: Vector3, to: f64, lines: &mut Vec<Line>) {
    let [x, y, mut z] = from;
    for step in 0..MOST_DASHES {
        if z >= to {
            break;
        }
        let end = (z + DASHES[step % 4]).min(to);
        if step % 2 == 0 {
            lines.push([[x, y, z], [x, y, end]]);
        }
        z = end;
    }
}

fn edges_of(body: &Extent) -> Vec<Line> {
    let corner = |bits: usize| {
        [0, 1, 2].map(|axis| {
            let value = if bits >> axis & 1 == 1 {
                body.high[axis]
            } else {
                body.low[axis]
            };
            if value.is_finite() {
                value.clamp(-1e5, 1e5)
            } else {
                0.0
            }
        })
    };
    (0..8)
        .flat_map(|bits| (0..3).map(move |axis| (bits, axis)))
        .filter(|(bits, axis)| bits >> axis & 1 == 0)
        .map(|(bits, axis)| [corner(bits), corner(bits | 1 << axis)])
        .collect()
}
