//! Lines with smooth edges: how much of each pixel they cover.
//!
//! Where lines overlap the larger share counts, so that joints of a fine polyline are no darker than
//! the rest.

use latchwright_geometry::trig;

use super::cast::{byte, index, narrow, signed, whole};

/// A point of the picture in pixels, y down.
pub(super) type Pixel = [f64; 2];

/// What a line is for, the later one over the earlier.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Ink {
    /// Squares of the bed and other helpers.
    Faint,
    /// Edges within a part.
    Thin,
    /// Outlines of parts and of cut faces.
    Heavy,
    /// Any line of the chosen part.
    Chosen,
}

/// Shares of each pixel that lines of every ink cover, 0 to 255.
#[derive(Debug, Clone, Default, PartialEq)]
pub(super) struct Strokes {
    pub width: usize,
    pub height: usize,
    pub shares: Vec<[u8; 4]>,
}

impl Strokes {
    pub(super) fn clear(&mut self, width: usize, height: usize) {
        (self.width, self.height) = (width, height);
        self.shares.clear();
        self.shares.resize(width * height, [0; 4]);
    }

    /// A straight line with round ends, this many pixels wide.
    pub(super) fn line(&mut self, [a, b]: [Pixel; 2], wide: f64, ink: Ink) {
        let way = [b[0] - a[0], b[1] - a[1]];
        let reach = wide / 2.0 + 0.5;
        // walk along the longer direction and cross over a few pixels at each step
        let main = usize::from(way[1].abs() > way[0].abs());
        let ends = [self.width, self.height].map(signed);
        let (low, high) = (a[main].min(b[main]), a[main].max(b[main]));
        let from = i64::from(whole((low - reach).floor())).max(0);
        let to = (i64::from(whole((high + reach).ceil())) + 1).min(ends[main]);
        let lean = if way[main] == 0.0 {
            0.0
        } else {
            way[1 - main] / way[main]
        };
        let across = reach * trig::sqrt(1.0 + lean * lean) + lean.abs() / 2.0;
        let cover = Cover::new(a, way, reach);
        for at in from..to {
            let along = (at as f64 + 0.5).clamp(low, high);
            let middle = a[1 - main] + (along - a[main]) * lean;
            let begin = i64::from(whole((middle - across).floor())).max(0);
            let end = (i64::from(whole((middle + across).ceil())) + 1).min(ends[1 - main]);
            for other in begin..end {
                let (x, y) = if main == 0 { (at, other) } else { (other, at) };
                let share = cover.of(x as f64 + 0.5, y as f64 + 0.5);
                if share > 0.0 {
                    let pixel = &mut self.shares[index(y) * self.width + index(x)][ink as usize];
                    *pixel = (*pixel).max(byte(narrow(share * 255.0)));
                }
            }
        }
    }
}

/// How much of a pixel a line covers, by the distance of the pixel's middle.
struct Cover {
    a: Pixel,
    /// Unit direction, and length.
    way: Pixel,
    long: f64,
    reach: f64,
}

impl Cover {
    fn new(a: Pixel, way: Pixel, reach: f64) -> Self {
        let long = trig::sqrt(way[0] * way[0] + way[1] * way[1]);
        let unit = if long > 0.0 {
            [way[0] / long, way[1] / long]
        } else {
            [1.0, 0.0]
        };
        Self {
            a,
            way: unit,
            long,
            reach,
        }
    }

    fn of(&self, x: f64, y: f64) -> f64 {
        let (x, y) = (x - self.a[0], y - self.a[1]);
        let along = x * self.way[0] + y * self.way[1];
        let beside = (x * self.way[1] - y * self.way[0]).abs();
        let past = (-along).max(along - self.long).max(0.0);
        let distance = if past > 0.0 {
            trig::sqrt(beside * beside + past * past)
        } else {
            beside
        };
        (self.reach - distance).min(1.0).min(2.0 * self.reach - 1.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn share(line: [Pixel; 2], wide: f64) -> f64 {
        let mut strokes = Strokes::default();
        strokes.clear(60, 60);
        strokes.line(line, wide, Ink::Thin);
        let sum: u32 = strokes.shares.iter().map(|pixel| u32::from(pixel[1])).sum();
        f64::from(sum) / 255.0
    }

    #[test]
    fn a_line_covers_its_length_times_its_width_whichever_way_it_runs() {
        for way in [[40.0, 0.0], [0.0, 40.0], [32.0, 24.0], [-24.0, 32.0]] {
            for wide in [1.0, 2.0, 3.0] {
                let a = [30.3 - way[0] / 2.0, 30.1 - way[1] / 2.0];
                let b = [a[0] + way[0], a[1] + way[1]];
                let wanted = 40.0 * wide + core::f64::consts::PI / 4.0 * wide * wide;
                let found = share([a, b], wide);
                assert!(
                    (found - wanted).abs() < 0.05 * wanted,
                    "{way:?} {wide}: {found}"
                );
            }
        }
    }

    #[test]
    fn a_line_in_two_pieces_is_the_same_line() {
        let [a, b, c] = [[5.0, 7.0], [20.0, 17.0], [35.0, 27.0]];
        let mut strokes = Strokes::default();
        strokes.clear(60, 60);
        strokes.line([a, b], 1.5, Ink::Heavy);
        strokes.line([b, c], 1.5, Ink::Heavy);
        let mut whole = Strokes::default();
        whole.clear(60, 60);
        whole.line([a, c], 1.5, Ink::Heavy);
        let apart = strokes.shares.iter().zip(&whole.shares);
        assert!(
            apart
                .into_iter()
                .all(|(one, two)| one[2].abs_diff(two[2]) <= 1)
        );
    }

    #[test]
    fn lines_outside_the_picture_leave_no_trace() {
        assert_eq!(share([[-50.0, -3.0], [200.0, -3.0]], 2.0), 0.0);
        assert!(share([[-1e7, 30.5], [1e7, 30.5]], 1.0) > 59.0);
    }
}
