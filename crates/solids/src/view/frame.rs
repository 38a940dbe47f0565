//! One picture in the making: a scene brought onto samples as seen by a camera, perhaps cut.

use super::camera::{Axes, Camera};
use super::cast::{narrow, short, signed, whole};
use super::cut::Cut;
use super::raster::{CUT, STEPS, Samples, Slope, Spot};
use super::scene::Scene;
use super::shape::Shape;
use crate::mesh::{Extent, Vector3, dot};

/// A face flatter against the line of sight than this is seen from its edge: cosine of 89.95°.
pub(super) const EDGE_ON: f64 = 1e-3;

/// How far a line may reach beyond its part, pixels.
const REACH: u32 = 16;

/// Where samples are taken.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Frame {
    pub camera: Camera,
    pub axes: Axes,
    pub cut: Option<Cut>,
    pub width: usize,
    pub height: usize,
    /// Samples a pixel each way.
    pub fine: u32,
    /// Samples a millimetre.
    pub scale: f64,
    /// The sample at which the camera's centre lies.
    pub middle: (f64, f64),
}

/// Where one shape came to lie; without spots if that is outside the picture.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Laid {
    /// Its points.
    pub spots: Vec<Spot>,
    /// Whether the cut takes each point; empty without a cut.
    pub taken: Vec<bool>,
    /// Lines that the cut made.
    pub rim: Vec<[Spot; 2]>,
}

impl Frame {
    pub(super) fn new(camera: &Camera, cut: Option<Cut>, size: (usize, usize), fine: u32) -> Self {
        let camera = camera.tamed();
        let samples = |pixels: usize| pixels * fine as usize;
        Self {
            camera,
            axes: camera.axes(),
            cut: Cut::sound(cut),
            width: samples(size.0),
            height: samples(size.1),
            fine,
            scale: camera.zoom * f64::from(fine),
            middle: (samples(size.0) as f64 / 2.0, samples(size.1) as f64 / 2.0),
        }
    }

    /// The one sample in the middle of the point (x, y) of this frame, in pixels.
    pub(super) fn at_point(mut self, x: f64, y: f64) -> Self {
        let fine = f64::from(self.fine);
        (self.width, self.height) = (1, 1);
        self.middle.0 += 0.5 - x * fine;
        self.middle.1 += 0.5 - y * fine;
        self
    }

    /// Where a place of the scene lies.
    pub(super) fn spot(&self, place: Vector3) -> Spot {
        let [right, up, toward] = self.camera.seen(&self.axes, place);
        let steps = STEPS as f64;
        Spot {
            x: whole(((self.middle.0 + right * self.scale) * steps).round()),
            y: whole(((self.middle.1 - up * self.scale) * steps).round()),
            z: narrow(toward),
        }
    }

    /// How a plane with this normal (right, up, toward) slopes over the samples; none from its edge.
    pub(super) fn slope(&self, normal: Vector3) -> Option<Slope> {
        let steep = normal[2] * self.scale;
        (normal[2].abs() > 1e-9).then(|| Slope {
            x: -normal[0] / steep,
            y: normal[1] / steep,
        })
    }

    /// All shapes onto the samples; gives where each of them came to lie.
    ///
    /// The samples then name a facet by one more than its place in the scene, a cut face by its
    /// shape.
    pub(super) fn fill(&self, scene: &Scene, samples: &mut Samples) -> Vec<Laid> {
        samples.clear(self.width, self.height);
        let mut first = 1;
        let mut all = Vec::new();
        for (number, (shape, lift)) in scene.shapes.iter().zip(&scene.lifts).enumerate() {
            let laid = if self.may_show(shape, *lift) {
                self.fill_shape(shape, *lift, first, samples)
            } else {
                Laid::default()
            };
            self.cap(&laid.rim, number, samples);
            all.push(laid);
            first += shape.triangles.len();
        }
        all
    }

    /// Whether a shape lies in the picture, or close enough for its lines to reach into it.
    fn may_show(&self, shape: &Shape, lift: f64) -> bool {
        let Extent { low, high } = shape.extent;
        let reach = i64::from(REACH) * i64::from(self.fine) * STEPS;
        let (mut least, mut most) = ([i64::MAX; 2], [i64::MIN; 2]);
        for corner in 0..8 {
            let place = [0, 1, 2].map(|axis| {
                if corner >> axis & 1 == 0 {
                    low[axis]
                } else {
                    high[axis]
                }
            });
            let spot = self.spot(raised(place, lift));
            for (axis, value) in [spot.x, spot.y].into_iter().enumerate() {
                least[axis] = least[axis].min(i64::from(value) - reach);
                most[axis] = most[axis].max(i64::from(value) + reach);
            }
        }
        let ends = [self.width, self.height].map(|samples| signed(samples) * STEPS);
        (0..2).all(|axis| most[axis] >= 0 && least[axis] <= ends[axis])
    }

    fn fill_shape(&self, shape: &Shape, lift: f64, first: usize, samples: &mut Samples) -> Laid {
        let places = || shape.points.iter().map(|place| raised(*place, lift));
        let spots: Vec<Spot> = places().map(|place| self.spot(place)).collect();
        let taken: Vec<bool> = self.cut.map_or_else(Vec::new, |cut| {
            places().map(|place| cut.takes(place)).collect()
        });
        let mut rim = Vec::new();
        for (facet, triangle) in shape.triangles.iter().enumerate() {
            let corners = triangle.map(|at| at as usize);
            let name = short(first + facet);
            if taken.is_empty() || corners.iter().all(|at| !taken[*at]) {
                let slope = self.facet_slope(shape, facet);
                samples.triangle(corners.map(|at| spots[at]), slope, name);
            } else if let Some(cut) = self.cut {
                let flags = corners.map(|at| taken[at]);
                let places = corners.map(|at| raised(shape.points[at], lift));
                let Some((left, edge)) = self.cut_facet(&cut, places, flags) else {
                    continue;
                };
                rim.push(edge);
                let slope = self.facet_slope(shape, facet);
                for two in 1..left.len().saturating_sub(1) {
                    samples.triangle([left[0], left[two], left[two + 1]], slope, name);
                }
            }
        }
        Laid { spots, taken, rim }
    }

    fn facet_slope(&self, shape: &Shape, facet: usize) -> Slope {
        let normal = self.axes.of(shape.normals[facet]);
        self.slope(normal).unwrap_or_default()
    }

    /// What the cut leaves of a facet, and the line that it makes; nothing of one all taken.
    fn cut_facet(
        &self,
        cut: &Cut,
        places: [Vector3; 3],
        taken: [bool; 3],
    ) -> Option<(Vec<Spot>, [Spot; 2])> {
        if taken.iter().all(|taken| *taken) {
            return None;
        }
        let mut left = Vec::with_capacity(4);
        let mut made = Vec::with_capacity(2);
        for one in 0..3 {
            let two = (one + 1) % 3;
            if !taken[one] {
                left.push(self.spot(places[one]));
            }
            if taken[one] != taken[two] {
                let spot = self.spot(cut.crossing(places[one], places[two]));
                left.push(spot);
                made.push(spot);
            }
        }
        match made[..] {
            [one, two] => Some((left, [one, two])),
            _ => None,
        }
    }

    /// The cut face of a shape, if it can be seen.
    fn cap(&self, rim: &[[Spot; 2]], number: usize, samples: &mut Samples) {
        let Some(outwards) = self.cut.map(|cut| cut.outwards(&self.axes)) else {
            return;
        };
        if outwards[2] > EDGE_ON
            && let Some(slope) = self.slope(outwards)
        {
            samples.even_odd(rim, slope, CUT | short(number));
        }
    }

    /// Whether each facet of a shape faces the eye; from its edge it does not, so that all facets
    /// of a face that rounding has bent a little say the same.
    pub(super) fn facing(&self, shape: &Shape) -> Vec<bool> {
        let toward = self.axes.toward;
        let seen = |normal: &Vector3| dot(*normal, toward) > EDGE_ON;
        shape.normals.iter().map(seen).collect()
    }
}

/// A place of a shape that is lifted.
pub(super) fn raised([x, y, z]: Vector3, lift: f64) -> Vector3 {
    [x, y, z + lift]
}
