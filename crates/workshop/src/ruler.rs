//! A print that is not true to size: from what the ruler says to the factors that put it right.
//!
//! Every sheet bears a line along x and one along y of known length, and the diagonals between
//! their ends. A printer draws the point (x, y) at x·(one vector) + y·(another); the two lines give
//! their lengths, the diagonals the angle between them.

use latchwright_geometry::{Point, trig};

use crate::frame::Axis;

/// A line that is shorter than this share of its nominal length, or longer than [`MOST`], is a slip
/// of the ruler: no printer is that far off, but centimetres taken for inches are.
pub const LEAST: f64 = 0.80;
/// See [`LEAST`].
pub const MOST: f64 = 1.25;
/// Greatest skew that is believed, degrees.
pub const MOST_SKEW_DEG: f64 = 5.0;
/// How far the diagonals may disagree with the sides, as a share of what the sides give: about a
/// millimetre on 150.
const DIAGONALS_AGREE: f64 = 0.008;
/// Nothing is told to be further off than this share.
const MOST_OFF: f64 = 1e3;

/// What the ruler says of the measured lines of one sheet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Measured {
    /// Nominal lengths of the lines along x and y, mm.
    pub nominal: (f64, f64),
    /// Length of the line along x as measured, mm.
    pub x: f64,
    /// Length of the line along y as measured, mm.
    pub y: f64,
    /// The two diagonals as measured, mm: the one that rises to the right, then the other.
    pub diagonals: Option<(f64, f64)>,
}

/// What a printer does, and what undoes it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Correction {
    /// Print this many times as wide: nominal over measured, along x.
    pub x: f64,
    /// Print this many times as high: nominal over measured, along y.
    pub y: f64,
    /// How far upright lines lean to the right on the print, degrees; 0 where no diagonals were
    /// measured.
    pub skew_deg: f64,
}

/// One of the two diagonals of a sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Diagonal {
    /// The one that rises to the right.
    Rising,
    /// The other.
    Falling,
}

/// Why readings are not believed. Lengths are in mm and finite.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum RulerFault {
    /// A line has no length to compare with.
    NoNominal {
        /// Along which axis it runs.
        axis: Axis,
    },
    /// A line was not measured, or what was typed is no length.
    NotMeasured {
        /// Along which axis it runs.
        axis: Axis,
    },
    /// No printer is that far off.
    Factor {
        /// Along which axis the line runs.
        axis: Axis,
        /// Its length as measured.
        measured: f64,
        /// As it should be.
        nominal: f64,
        /// Nominal over measured, outside [`LEAST`] to [`MOST`].
        factor: f64,
    },
    /// A diagonal is no length.
    NoDiagonal {
        /// Which.
        which: Diagonal,
    },
    /// The diagonals do not belong to the sides.
    DiagonalsOff {
        /// The diagonals as measured: the one that rises to the right, then the other.
        diagonals: (f64, f64),
        /// The sides as measured, along x and y.
        sides: (f64, f64),
        /// How much the diagonals are off together, as a share of what the sides give; below 0 where
        /// they are short.
        off: f64,
    },
    /// The print leans by more than [`MOST_SKEW_DEG`].
    Leans {
        /// The diagonals as measured: the one that rises to the right, then the other.
        diagonals: (f64, f64),
        /// How far, degrees, above 0.
        lean_deg: f64,
    },
}

impl Measured {
    /// The correction that these readings ask for.
    ///
    /// # Errors
    /// Where a reading cannot be what was meant: no number, a factor below 0.80 or above 1.25,
    /// diagonals that do not belong to these sides, or a skew beyond five degrees.
    pub fn correction(&self) -> Result<Correction, RulerFault> {
        let x = factor(Axis::X, self.nominal.0, self.x)?;
        let y = factor(Axis::Y, self.nominal.1, self.y)?;
        let skew_deg = match self.diagonals {
            None => 0.0,
            Some(diagonals) => self.skew(diagonals)?,
        };
        Ok(Correction { x, y, skew_deg })
    }

    /// Lean of upright lines, degrees: p² − q² = 4·a·b·sin(lean) for sides a, b and diagonals p, q.
    fn skew(&self, diagonals: (f64, f64)) -> Result<f64, RulerFault> {
        let (rising, falling) = diagonals;
        for (which, diagonal) in [(Diagonal::Rising, rising), (Diagonal::Falling, falling)] {
            if !(diagonal.is_finite() && diagonal > 0.0) {
                return Err(RulerFault::NoDiagonal { which });
            }
        }
        let (p, q) = (rising * rising, falling * falling);
        // by the parallelogram law
        let sides = 2.0 * (self.x * self.x + self.y * self.y);
        let off = ((p + q) / sides).sqrt() - 1.0;
        if !off.is_finite() || off.abs() > DIAGONALS_AGREE {
            return Err(RulerFault::DiagonalsOff {
                diagonals,
                sides: (self.x, self.y),
                // endlessly large where a diagonal is
                off: off.min(MOST_OFF),
            });
        }
        let sine = (p - q) / (4.0 * self.x * self.y);
        let lean = trig::degrees(trig::asin(sine.clamp(-1.0, 1.0)));
        if lean.abs() > MOST_SKEW_DEG {
            return Err(RulerFault::Leans {
                diagonals,
                lean_deg: lean.abs(),
            });
        }
        Ok(lean)
    }
}

fn factor(axis: Axis, nominal: f64, measured: f64) -> Result<f64, RulerFault> {
    if !(nominal.is_finite() && nominal > 0.0) {
        return Err(RulerFault::NoNominal { axis });
    }
    if !(measured.is_finite() && measured > 0.0) {
        return Err(RulerFault::NotMeasured { axis });
    }
    let factor = nominal / measured;
    if (LEAST..=MOST).contains(&factor) {
        return Ok(factor);
    }
    Err(RulerFault::Factor {
        axis,
        measured,
        nominal,
        factor,
    })
}

impl Correction {
    /// Nothing to correct.
    pub const NONE: Self = Self {
        x: 1.0,
        y: 1.0,
        skew_deg: 0.0,
    };

    /// Where the printer puts the point that is drawn at `point`, both from the middle of the
    /// measured lines or from any place that is laid down right; mm.
    pub fn printed(&self, point: Point) -> Point {
        let lean = trig::radians(self.skew_deg);
        let up = point.y / self.y;
        Point::new(
            point.x / self.x + up * trig::sin(lean),
            up * trig::cos(lean),
        )
    }

    /// Where to draw so that the printer puts it at `point`; undoes [`Self::printed`].
    pub fn corrected(&self, point: Point) -> Point {
        let [a, b, c, d] = self.matrix();
        Point::new(a * point.x + b * point.y, c * point.x + d * point.y)
    }

    /// The correction as numbers: x' = m\[0\]·x + m\[1\]·y, y' = m\[2\]·x + m\[3\]·y.
    pub fn matrix(&self) -> [f64; 4] {
        let lean = trig::radians(self.skew_deg);
        let upright = trig::cos(lean).max(0.1);
        [
            self.x,
            -self.x * trig::sin(lean) / upright,
            0.0,
            self.y / upright,
        ]
    }

    /// How far from its true place `point` comes out on an uncorrected print that is laid down right
    /// at `from`, mm.
    pub fn off(&self, point: Point, from: Point) -> f64 {
        let along = point - from;
        self.printed(along).distance(along)
    }

    /// Which of `points` comes out furthest from its true place on an uncorrected print laid down
    /// right at `from`, as its number in the list and how far off it is, mm; `None` for no points.
    pub fn furthest(&self, points: &[Point], from: Point) -> Option<(usize, f64)> {
        let mut worst: Option<(usize, f64)> = None;
        for (index, point) in points.iter().enumerate() {
            let off = self.off(*point, from);
            if off.is_finite() && worst.is_none_or(|(_, most)| off > most) {
                worst = Some((index, off));
            }
        }
        worst
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lines(nominal: (f64, f64), x: f64, y: f64) -> Measured {
        Measured {
            nominal,
            x,
            y,
            diagonals: None,
        }
    }

    /// A worked example: 100 measured as 97.98; 250 × 173 of 250 × 175.
    #[test]
    fn a_reading_gives_the_published_factors() {
        let found = lines((100.0, 100.0), 97.98, 100.0).correction().unwrap();
        assert!((found.x - 1.0206).abs() < 5e-5 && found.y == 1.0);
        let found = lines((250.0, 175.0), 250.0, 173.0).correction().unwrap();
        assert!((found.y - 1.011_56).abs() < 5e-6 && found.x == 1.0);
    }

    #[test]
    fn a_factor_beyond_its_limits_is_a_slip_of_the_ruler() {
        for (measured, fits) in [(80.0, true), (79.9, false), (125.0, true), (125.1, false)] {
            let found = lines((100.0, 100.0), measured, 100.0).correction();
            assert_eq!(found.is_ok(), fits, "{measured}");
        }
        let refused = lines((100.0, 100.0), 100.0, 4.0).correction().unwrap_err();
        assert_eq!(
            refused,
            RulerFault::Factor {
                axis: Axis::Y,
                measured: 4.0,
                nominal: 100.0,
                factor: 25.0
            }
        );
        for silly in [f64::NAN, f64::INFINITY, 0.0, -100.0] {
            assert!(lines((100.0, 100.0), silly, 100.0).correction().is_err());
            assert!(lines((silly, 100.0), 100.0, 100.0).correction().is_err());
        }
    }

    /// A planted printer: its readings give it back.
    #[test]
    fn what_was_planted_is_found_and_undone() {
        for lean in [-1.5, -0.2, 0.0, 0.3, 2.0] {
            let planted = Correction {
                x: 1.013,
                y: 0.991,
                skew_deg: lean,
            };
            let corner = |x, y| planted.printed(Point::new(x, y)).length();
            let readings = Measured {
                nominal: (100.0, 150.0),
                x: corner(100.0, 0.0),
                y: corner(0.0, 150.0),
                diagonals: Some((corner(100.0, 150.0), corner(-100.0, 150.0))),
            };
            let found = readings.correction().unwrap();
            assert!((found.x - planted.x).abs() < 1e-9 && (found.y - planted.y).abs() < 1e-9);
            assert!((found.skew_deg - lean).abs() < 1e-9, "{found:?}");
            let there = Point::new(73.0, -41.0);
            assert!(found.printed(found.corrected(there)).distance(there) < 1e-9);
        }
    }

    #[test]
    fn diagonals_that_do_not_belong_to_the_sides_are_refused() {
        let mut readings = lines((100.0, 100.0), 100.0, 100.0);
        readings.diagonals = Some((141.42, 144.0));
        assert!(matches!(
            readings.correction(),
            Err(RulerFault::DiagonalsOff { off, .. }) if (off - 0.0092).abs() < 1e-4
        ));
        readings.diagonals = Some((155.0, 126.2));
        assert!(matches!(
            readings.correction(),
            Err(RulerFault::Leans { lean_deg, .. }) if (11.0..13.0).contains(&lean_deg)
        ));
        readings.diagonals = Some((f64::NAN, 141.42));
        let which = Diagonal::Rising;
        assert_eq!(readings.correction(), Err(RulerFault::NoDiagonal { which }));
    }

    #[test]
    fn the_furthest_hole_is_off_by_the_share_of_its_distance() {
        let found = lines((100.0, 100.0), 98.0, 100.0).correction().unwrap();
        let holes = [
            Point::new(-55.0, 95.0),
            Point::new(0.0, 95.0),
            Point::new(90.0, 10.0),
        ];
        let (which, off) = found.furthest(&holes, Point::default()).unwrap();
        assert_eq!(which, 2);
        assert!((off - 1.8).abs() < 1e-9);
        assert_eq!(found.furthest(&[], Point::default()), None);
        assert_eq!(Correction::NONE.furthest(&holes, holes[0]).unwrap().1, 0.0);
    }
}
