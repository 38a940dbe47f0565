//! Triangles and cut faces to samples: which surface is the nearest, and how near.
//!
//! Corners are snapped to 1/256 of a sample and all that decides which samples a triangle covers is
//! whole numbers, so that facets that share an edge never leave a gap nor cover a sample twice.

use super::cast::{index, narrow, signed};

/// Steps of a sample.
pub(super) const STEPS: i64 = 256;
const HALF: i64 = STEPS / 2;

/// Nothing covers this sample.
pub(super) const EMPTY: u32 = 0;
/// Set in the name of a face that is a cut.
pub(super) const CUT: u32 = 1 << 31;

/// A point of the picture.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Spot {
    /// In steps of a sample, to the right and down.
    pub x: i32,
    pub y: i32,
    /// Towards the eye, mm.
    pub z: f32,
}

/// How near a plane is over the samples: z at the sample's corner (0, 0), and its slopes.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Slope {
    pub x: f64,
    pub y: f64,
}

/// Samples of one picture.
#[derive(Debug, Clone, Default, PartialEq)]
pub(super) struct Samples {
    pub width: usize,
    pub height: usize,
    /// Nearest so far, mm towards the eye.
    pub depth: Vec<f32>,
    /// What that is.
    pub what: Vec<u32>,
}

/// The part of a row that lies on the inner side of an edge.
struct Side {
    /// Gain from one sample to the next, and from row to row.
    along: i64,
    down: i64,
    /// At sample (0, 0); at least 0 is inside.
    start: i64,
}

impl Side {
    /// The side of the edge from `a` to `b` on which a triangle with positive area lies; samples on
    /// the edge count if it is a left or upper one.
    fn new(a: Spot, b: Spot) -> Self {
        let [ax, ay, bx, by] = [a.x, a.y, b.x, b.y].map(i64::from);
        let (dx, dy) = (bx - ax, by - ay);
        let counts = dy < 0 || (dy == 0 && dx > 0);
        Self {
            along: -dy * STEPS,
            down: dx * STEPS,
            start: dx * (HALF - ay) - dy * (HALF - ax) - i64::from(!counts),
        }
    }

    /// Narrows a row to the samples inside, from the first to one past the last.
    fn narrow(&self, row: i64, (from, to): (i64, i64)) -> (i64, i64) {
        let at = self.start + self.down * row;
        match self.along {
            0 if at < 0 => (from, from),
            0 => (from, to),
            // first whole i with along · i + at at least 0
            along if along > 0 => (from.max(-at.div_euclid(along)), to),
            along => (from, to.min(at.div_euclid(-along) + 1)),
        }
    }
}

impl Samples {
    /// Empties all samples, of which there are as many as the picture needs.
    pub(super) fn clear(&mut self, width: usize, height: usize) {
        (self.width, self.height) = (width, height);
        self.depth.clear();
        self.depth.resize(width * height, f32::NEG_INFINITY);
        self.what.clear();
        self.what.resize(width * height, EMPTY);
    }

    /// What covers a sample, and how near; nothing outside the picture.
    pub(super) fn at(&self, x: i64, y: i64) -> (u32, f32) {
        let inside = x >= 0 && y >= 0 && x < signed(self.width) && y < signed(self.height);
        if !inside {
            return (EMPTY, f32::NEG_INFINITY);
        }
        let place = index(y) * self.width + index(x);
        (self.what[place], self.depth[place])
    }

    /// The least of the depths of a sample and the eight around it.
    pub(super) fn furthest_around(&self, x: i64, y: i64) -> f32 {
        let (right, low) = (signed(self.width) - 1, signed(self.height) - 1);
        if x < 1 || y < 1 || x >= right || y >= low {
            // beyond the picture's border there is nothing
            return f32::NEG_INFINITY;
        }
        let start = index(y - 1) * self.width + index(x - 1);
        [0, self.width, 2 * self.width]
            .iter()
            .flat_map(|row| &self.depth[start + row..start + row + 3])
            .fold(f32::INFINITY, |least, depth| least.min(*depth))
    }

    /// A facet that faces the eye; one that does not, or that has no area here, is left out.
    pub(super) fn triangle(&mut self, [a, b, c]: [Spot; 3], slope: Slope, what: u32) {
        if area(a, b, c) >= 0 {
            return;
        }
        let (low, high) = (a.z.min(b.z).min(c.z), a.z.max(b.z).max(c.z));
        let rows = span(a.y.min(b.y).min(c.y), a.y.max(b.y).max(c.y), self.height);
        let columns = span(a.x.min(b.x).min(c.x), a.x.max(b.x).max(c.x), self.width);
        if rows.is_empty() || columns.is_empty() {
            return;
        }
        let (from, to) = (columns.start, columns.end);
        let sides = [Side::new(a, c), Side::new(c, b), Side::new(b, a)];
        for row in rows {
            let (from, to) = sides
                .iter()
                .fold((from, to), |span, side| side.narrow(row, span));
            if from < to {
                let z = depth_at(a, slope, from, row);
                let depths = Depths {
                    first: z,
                    step: narrow(slope.x),
                    low,
                    high,
                };
                self.row(Stretch { row, from, to }, depths, what);
            }
        }
    }

    /// All that an odd number of edges (in any order, of closed outlines) lies to the left of.
    pub(super) fn even_odd(&mut self, edges: &[[Spot; 2]], slope: Slope, what: u32) {
        let mut crossings: Vec<(i64, i64)> = Vec::new();
        for [a, b] in edges {
            let (a, b) = if a.y <= b.y { (a, b) } else { (b, a) };
            let [ax, ay, bx, by] = [a.x, a.y, b.x, b.y].map(i64::from);
            for row in span(a.y, b.y, self.height) {
                let y = row * STEPS + HALF;
                if y >= ay && y < by {
                    // the first sample whose middle lies on it or to its right
                    let x = ax + (bx - ax) * (y - ay) / (by - ay);
                    crossings.push((row, -(HALF - x).div_euclid(STEPS)));
                }
            }
        }
        crossings.sort_unstable();
        let Some([reference, _]) = edges.first().copied() else {
            return;
        };
        for line in crossings.chunk_by(|one, two| one.0 == two.0) {
            for pair in line.chunks_exact(2) {
                let (row, from) = (pair[0].0, pair[0].1.max(0));
                let to = pair[1].1.min(signed(self.width));
                if from < to {
                    let z = depth_at(reference, slope, from, row);
                    let depths = Depths {
                        first: z,
                        step: narrow(slope.x),
                        low: f32::NEG_INFINITY,
                        high: f32::INFINITY,
                    };
                    self.row(Stretch { row, from, to }, depths, what);
                }
            }
        }
    }

    fn row(&mut self, Stretch { row, from, to }: Stretch, depths: Depths, what: u32) {
        let Depths {
            first,
            step,
            low,
            high,
        } = depths;
        let start = index(row) * self.width;
        let range = start + index(from)..start + index(to);
        let depths = &mut self.depth[range.clone()];
        let names = &mut self.what[range];
        let mut count = 0.0_f32;
        for (depth, name) in depths.iter_mut().zip(names) {
            let z = (first + step * count).max(low).min(high);
            count += 1.0;
            if z > *depth {
                *depth = z;
                *name = what;
            }
        }
    }
}

/// Samples of one row, from the first to one past the last.
#[derive(Clone, Copy)]
struct Stretch {
    row: i64,
    from: i64,
    to: i64,
}

/// Depths along a row: the first, what each adds, and between which two they are kept.
#[derive(Clone, Copy)]
struct Depths {
    first: f32,
    step: f32,
    low: f32,
    high: f32,
}

/// Twice the area, y down: below 0 for a facet that faces the eye.
fn area(a: Spot, b: Spot, c: Spot) -> i64 {
    let [ax, ay, bx, by] = [a.x, a.y, b.x, b.y].map(i64::from);
    let (cx, cy) = (i64::from(c.x), i64::from(c.y));
    (bx - ax) * (cy - ay) - (cx - ax) * (by - ay)
}

/// The samples, of so many, whose middles lie between two steps.
fn span(low: i32, high: i32, count: usize) -> core::ops::Range<i64> {
    let first = (i64::from(low) + HALF - 1).div_euclid(STEPS);
    let last = (i64::from(high) - HALF).div_euclid(STEPS);
    first.max(0)..(last + 1).min(signed(count))
}

fn depth_at(reference: Spot, slope: Slope, x: i64, y: i64) -> f32 {
    let away =
        |samples: i64, from: i32| (samples * STEPS + HALF - i64::from(from)) as f64 / STEPS as f64;
    let z =
        f64::from(reference.z) + slope.x * away(x, reference.x) + slope.y * away(y, reference.y);
    narrow(z)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn spot(x: i32, y: i32, z: f32) -> Spot {
        Spot { x, y, z }
    }

    fn count(samples: &Samples, what: u32) -> usize {
        samples.what.iter().filter(|name| **name == what).count()
    }

    #[test]
    fn two_halves_of_a_square_cover_every_sample_once() {
        let (one, far) = (3 * 256 + 128, 9 * 256 + 128);
        let [a, b, c, d] = [
            spot(one, one, 0.0),
            spot(one, far, 0.0),
            spot(far, far, 0.0),
            spot(far, one, 0.0),
        ];
        let mut samples = Samples::default();
        samples.clear(20, 20);
        samples.triangle([a, b, c], Slope::default(), 1);
        let first = count(&samples, 1);
        samples.triangle([a, c, d], Slope::default(), 2);
        assert_eq!(count(&samples, 1), first, "the first was not touched");
        assert_eq!(count(&samples, 1) + count(&samples, 2), 36);
    }

    #[test]
    fn fans_round_a_point_leave_no_gap_and_no_overlap_wherever_it_lies() {
        for shift in 0..90 {
            let middle = spot(2000 + shift * 31, 2100 + shift * 17, 0.0);
            let ring = [(100, 90), (60, 5000), (4900, 5100), (5050, 120)];
            let mut whole = 0;
            let mut samples = Samples::default();
            samples.clear(24, 24);
            for step in 0..4 {
                let [one, two] = [ring[step], ring[(step + 1) % 4]].map(|(x, y)| spot(x, y, 0.0));
                let mut alone = Samples::default();
                alone.clear(24, 24);
                alone.triangle([middle, one, two], Slope::default(), 1);
                whole += count(&alone, 1);
                samples.triangle([middle, one, two], Slope::default(), 1);
            }
            assert_eq!(count(&samples, 1), whole, "some sample was covered twice");
            let mut outline = Samples::default();
            outline.clear(24, 24);
            let edges: Vec<[Spot; 2]> = (0..4)
                .map(|step| [ring[step], ring[(step + 1) % 4]].map(|(x, y)| spot(x, y, 0.0)))
                .collect();
            outline.even_odd(&edges, Slope::default(), 1);
            let differ = outline
                .what
                .iter()
                .zip(&samples.what)
                .filter(|(a, b)| a != b);
            assert!(differ.count() <= 2, "only samples right on the edge");
        }
    }

    #[test]
    fn a_facet_that_faces_away_is_not_drawn_and_one_far_outside_does_no_harm() {
        let mut samples = Samples::default();
        samples.clear(8, 8);
        let far = i32::MAX / 8;
        let corners = [
            spot(-far, -far, 1.0),
            spot(-far, far, 1.0),
            spot(far, 0, 1.0),
        ];
        samples.triangle([corners[0], corners[2], corners[1]], Slope::default(), 3);
        assert_eq!(count(&samples, 3), 0);
        samples.triangle(corners, Slope::default(), 3);
        assert_eq!(count(&samples, 3), 64);
    }

    #[test]
    fn a_sloping_facet_is_as_near_as_its_plane_says() {
        let mut samples = Samples::default();
        samples.clear(10, 10);
        let at = |x: i32, y: i32| spot(x * 256, y * 256, narrow(f64::from(x) * 0.5 - f64::from(y)));
        let slope = Slope { x: 0.5, y: -1.0 };
        samples.triangle([at(0, 0), at(0, 10), at(10, 10)], slope, 1);
        let (_, z) = samples.at(3, 7);
        assert!((z - (3.5 * 0.5 - 7.5)).abs() < 1e-5, "{z}");
    }
}
