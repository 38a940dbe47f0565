//! From a finished size to what must be drawn, and to what is then expected.
//!
//! Finished sizes are as used, coats and all. A coat makes outside sizes larger and holes smaller,
//! so it is taken off first; then the printer's own errors are taken off.

use latchwright_model::{HoleReading, Printer};

use crate::feature::Feature;

/// Which way a size goes wrong.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// A width or diameter of material.
    Outside,
    /// A hole or a recess all round.
    Hole,
    /// The gap between two walls of an open slot.
    Gap,
    /// A height above the bed.
    Height,
    /// Clearance on each side.
    PerSide,
    /// Clearance of both sides together.
    Total,
}

/// One size of a part, as designed, as drawn, and as expected once printed and coated; mm.
#[derive(Debug, Clone, PartialEq)]
pub struct Size {
    /// What is measured.
    pub what: Feature,
    /// Which way it goes wrong.
    pub kind: Kind,
    /// As the design says.
    pub nominal: f64,
    /// As drawn.
    pub drawn: f64,
    /// As expected when it is finished.
    pub expected: f64,
}

/// What lies between a design and its print.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fit<'a> {
    /// The printer and how far it is off.
    pub printer: &'a Printer,
    /// Thickness of the coats on one face, mm; 0 for a part that stays bare.
    pub film: f64,
}

impl Fit<'_> {
    /// A width or diameter of material.
    pub fn outside(&self, what: Feature, nominal: f64) -> Size {
        let drawn = nominal - 2.0 * self.film - self.printer.outside;
        size(
            what,
            Kind::Outside,
            nominal,
            drawn,
            drawn + self.printer.outside + 2.0 * self.film,
        )
    }

    /// A hole or recess.
    pub fn hole(&self, what: Feature, nominal: f64) -> Size {
        let bare = nominal + 2.0 * self.film;
        // the reading is by the drawn diameter, which is what is sought
        let mut drawn = bare;
        for _ in 0..32 {
            drawn = bare + under(&self.printer.holes, drawn);
        }
        let expected = drawn - under(&self.printer.holes, drawn) - 2.0 * self.film;
        size(what, Kind::Hole, nominal, drawn, expected)
    }

    /// The gap between two walls: each grows by half of what an outside width does.
    pub fn gap(&self, what: Feature, nominal: f64) -> Size {
        let drawn = nominal + 2.0 * self.film + self.printer.outside;
        size(
            what,
            Kind::Gap,
            nominal,
            drawn,
            drawn - self.printer.outside - 2.0 * self.film,
        )
    }

    /// A height with `faces` coated ends: whole layers, at least one.
    pub fn height(&self, what: Feature, nominal: f64, faces: f64) -> Size {
        let layer = self.printer.layer;
        let bare = nominal - faces * self.film;
        let drawn = ((bare / layer).round().max(1.0)) * layer;
        size(
            what,
            Kind::Height,
            nominal,
            drawn,
            drawn + faces * self.film,
        )
    }

    /// How far a wall of the print, coats and all, stands outside its drawn line, mm.
    pub fn growth(&self) -> f64 {
        self.film + self.printer.outside / 2.0
    }

    /// The thinnest wall that prints: two lines, mm.
    pub fn least_wall(&self) -> f64 {
        2.0 * self.printer.nozzle
    }
}

fn size(what: Feature, kind: Kind, nominal: f64, drawn: f64, expected: f64) -> Size {
    Size {
        what,
        kind,
        nominal,
        drawn,
        expected,
    }
}

/// Clearance of a peg in its hole, told per side and in total; mm.
pub fn clearance([per_side, total]: [Feature; 2], peg: &Size, hole: &Size) -> [Size; 2] {
    let of = |pick: fn(&Size) -> f64| pick(hole) - pick(peg);
    let (nominal, drawn, expected) = (
        of(|size| size.nominal),
        of(|size| size.drawn),
        of(|size| size.expected),
    );
    [(per_side, Kind::PerSide, 0.5), (total, Kind::Total, 1.0)].map(|(what, kind, share)| Size {
        what,
        kind,
        nominal: nominal * share,
        drawn: drawn * share,
        expected: expected * share,
    })
}

/// How much too small a hole of this drawn diameter comes out, mm: straight between readings, the
/// nearest one beyond them, 0 without any.
pub fn under(readings: &[HoleReading], diameter: f64) -> f64 {
    let mut sorted: Vec<&HoleReading> = readings.iter().collect();
    sorted.sort_by(|a, b| a.diameter.total_cmp(&b.diameter));
    let above = sorted.partition_point(|reading| reading.diameter < diameter);
    match (
        above.checked_sub(1).and_then(|i| sorted.get(i)),
        sorted.get(above),
    ) {
        (Some(low), Some(high)) => {
            let share = (diameter - low.diameter) / (high.diameter - low.diameter).max(1e-9);
            low.under + (high.under - low.under) * share
        }
        (Some(only), None) | (None, Some(only)) => only.under,
        (None, None) => 0.0,
    }
}

/// What was measured on a printed fit gauge, mm: each pair is drawn and measured.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Readings {
    /// Diameters of holes.
    pub holes: Vec<(f64, f64)>,
    /// Outside widths.
    pub outside: Vec<(f64, f64)>,
    /// A width at the bed and well above it.
    pub foot: Option<(f64, f64)>,
    /// Side of a square hole as drawn, and its diagonal as measured.
    pub square: Option<(f64, f64)>,
}

/// A reading of the gauge.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Reading {
    /// The diameter of a hole.
    Hole,
    /// An outside width.
    OutsideWidth,
    /// The width at the bed.
    WidthAtBed,
    /// The diagonal of the square hole.
    Diagonal,
}

/// A reading that cannot be what was meant; mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ReadingFault {
    /// Which.
    pub which: Reading,
    /// As measured; may be no number.
    pub value: f64,
    /// Least that is believed.
    pub least: f64,
    /// Most that is believed.
    pub most: f64,
}

/// The printer's profile as these readings make it; what was not measured stays as it is.
///
/// # Errors
/// [`ReadingFault`] for a reading that is no number, or more than 2 mm off what was drawn.
pub fn profile(printer: &Printer, readings: &Readings) -> Result<Printer, ReadingFault> {
    let mut printer = printer.clone();
    if !readings.holes.is_empty() {
        printer.holes = holes(&readings.holes)?;
    }
    if !readings.outside.is_empty() {
        let mut sum = 0.0;
        for (drawn, measured) in &readings.outside {
            sum -= off(Reading::OutsideWidth, *drawn, *measured)?;
        }
        printer.outside = sum / readings.outside.len() as f64;
    }
    if let Some((bed, above)) = readings.foot {
        printer.foot = (-off(Reading::WidthAtBed, above, bed)? / 2.0).max(0.0);
    }
    if let Some((side, diagonal)) = readings.square {
        // a corner of radius ρ is (√2 − 1) ρ short of its tip; the hole itself is smaller as well
        let shrunk = under(&printer.holes, side);
        let tips = (side - shrunk) * core::f64::consts::SQRT_2;
        let short = off(Reading::Diagonal, tips, diagonal)?;
        printer.corner = (short / 2.0 / (core::f64::consts::SQRT_2 - 1.0)).max(0.0);
    }
    Ok(printer)
}

/// Readings by rising diameter; several of one hole are taken to their mean.
fn holes(measured: &[(f64, f64)]) -> Result<Vec<HoleReading>, ReadingFault> {
    let mut all = measured
        .iter()
        .map(|(drawn, measured)| Ok((*drawn, off(Reading::Hole, *drawn, *measured)?)))
        .collect::<Result<Vec<(f64, f64)>, ReadingFault>>()?;
    all.sort_by(|one, two| one.0.total_cmp(&two.0).then(one.1.total_cmp(&two.1)));
    let same = all.chunk_by(|one, two| two.0 - one.0 < 1e-6);
    Ok(same
        .map(|same| HoleReading {
            diameter: same.first().map_or(0.0, |(drawn, _)| *drawn),
            under: same.iter().map(|(_, under)| under).sum::<f64>() / same.len() as f64,
        })
        .collect())
}

/// How much smaller than drawn it was measured, if both make sense.
fn off(which: Reading, drawn: f64, measured: f64) -> Result<f64, ReadingFault> {
    let off = drawn - measured;
    if drawn > 0.0 && drawn.is_finite() && off.abs() <= 2.0 {
        return Ok(off);
    }
    Err(ReadingFault {
        which,
        value: measured,
        least: drawn - 2.0,
        most: drawn + 2.0,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn small_holes(under: f64) -> Printer {
        Printer {
            holes: vec![HoleReading {
                diameter: 10.0,
                under,
            }],
            outside: 0.0,
            ..Printer::default()
        }
    }

    #[test]
    fn a_peg_of_ten_with_a_quarter_a_side_is_drawn_at_ten_sixty_five() {
        // a worked example
        let printer = small_holes(0.15);
        let fit = Fit {
            printer: &printer,
            film: 0.0,
        };
        let hole = fit.hole(Feature::Star, 10.0 + 2.0 * 0.25);
        assert!((hole.drawn - 10.65).abs() < 1e-9);
        assert!((hole.expected - 10.5).abs() < 1e-9);
        let [side, total] = clearance(
            [Feature::PostInStarPerSide, Feature::PostInStarTotal],
            &fit.outside(Feature::Post, 10.0),
            &hole,
        );
        assert!((side.expected - 0.25).abs() < 1e-9, "{side:?}");
        assert!((total.expected - 0.5).abs() < 1e-9);
        assert_eq!(side.what, Feature::PostInStarPerSide);
    }

    #[test]
    fn coats_are_taken_off_outsides_and_holes_alike() {
        let printer = small_holes(0.0);
        let fit = Fit {
            printer: &printer,
            film: 0.1,
        };
        assert!((fit.outside(Feature::Disc, 10.0).drawn - 9.8).abs() < 1e-12);
        assert!((fit.hole(Feature::Disc, 10.0).drawn - 10.2).abs() < 1e-12);
        assert!((fit.gap(Feature::Disc, 10.0).drawn - 10.2).abs() < 1e-12);
        assert!((fit.height(Feature::Disc, 6.0, 2.0).drawn - 5.8).abs() < 1e-12);
    }

    #[test]
    fn expected_is_nominal_whatever_the_profile() {
        let printer = Printer::default();
        let fit = Fit {
            printer: &printer,
            film: 0.07,
        };
        for nominal in [2.0, 3.1, 7.7, 14.3, 29.0, 80.0] {
            for size in [
                fit.outside(Feature::Disc, nominal),
                fit.hole(Feature::Disc, nominal),
                fit.gap(Feature::Disc, nominal),
            ] {
                assert!((size.expected - nominal).abs() < 1e-9, "{size:?}");
            }
        }
    }

    #[test]
    fn between_two_readings_the_hole_is_between_them() {
        let printer = Printer::default();
        assert!((under(&printer.holes, 7.5) - 0.275).abs() < 1e-12);
        assert_eq!(under(&printer.holes, 1.0), 0.4);
        assert_eq!(under(&printer.holes, 99.0), 0.15);
        assert_eq!(under(&[], 5.0), 0.0);
    }

    #[test]
    fn the_gauges_readings_set_the_profile() {
        let readings = Readings {
            holes: vec![(5.0, 4.7), (10.0, 9.8)],
            outside: vec![(20.0, 20.1), (40.0, 40.2)],
            foot: Some((20.5, 20.1)),
            square: Some((10.0, 9.8 * core::f64::consts::SQRT_2 - 0.4 * 0.414_213_562)),
        };
        let printer = profile(&Printer::default(), &readings).unwrap();
        assert_eq!(printer.holes.len(), 2);
        assert!((printer.holes[0].under - 0.3).abs() < 1e-9);
        assert!((printer.outside - 0.15).abs() < 1e-9);
        assert!((printer.foot - 0.2).abs() < 1e-9);
        assert!((printer.corner - 0.2).abs() < 1e-6);
    }

    #[test]
    fn a_gauge_that_reads_its_holes_0_15_small_draws_the_hole_of_a_peg_of_ten_at_10_65() {
        // a worked example, from readings of the gauge on
        let drawn = crate::part::Gauge::default().holes;
        let readings = Readings {
            holes: drawn.iter().map(|hole| (*hole, hole - 0.15)).collect(),
            outside: vec![(30.0, 30.0)],
            ..Readings::default()
        };
        let printer = profile(&Printer::default(), &readings).unwrap();
        let fit = Fit {
            printer: &printer,
            film: 0.0,
        };
        let (peg, hole) = (
            fit.outside(Feature::Post, 10.0),
            fit.hole(Feature::Star, 10.5),
        );
        assert!((peg.drawn - 10.0).abs() < 1e-9);
        assert!((hole.drawn - 10.65).abs() < 1e-9 && (hole.expected - 10.5).abs() < 1e-9);
    }

    #[test]
    fn a_gauge_printed_as_the_profile_says_gives_that_profile_back() {
        let known = Printer {
            corner: 0.35,
            foot: 0.2,
            outside: 0.08,
            ..Printer::default()
        };
        let mut design = latchwright_model::Design::default();
        design.bench.printer = known.clone();
        let parts = crate::parts(&design, &crate::Options::default()).unwrap();
        let gauge = parts.last().unwrap();
        let size = |what: Feature| {
            let size = gauge.sizes.iter().find(|size| size.what == what).unwrap();
            (size.drawn, size.expected)
        };
        let holes = gauge
            .sizes
            .iter()
            .filter(|size| matches!(size.what, Feature::GaugeHole(_)));
        let readings = Readings {
            holes: holes.map(|size| (size.drawn, size.expected)).collect(),
            outside: vec![size(Feature::BarWidth)],
            foot: Some((size(Feature::BarWidthAtBed).1, size(Feature::BarWidth).1)),
            square: Some((10.0, size(Feature::SquareDiagonal).1)),
        };
        let found = profile(&Printer::default(), &readings).unwrap();
        assert!((found.corner - known.corner).abs() < 1e-9);
        assert!((found.foot - known.foot).abs() < 1e-9);
        assert!((found.outside - known.outside).abs() < 1e-9);
        for reading in &found.holes {
            let wanted = under(&known.holes, reading.diameter);
            assert!((reading.under - wanted).abs() < 1e-9, "{reading:?}");
        }
    }

    #[test]
    fn several_readings_of_one_hole_are_taken_to_their_mean() {
        let readings = Readings {
            holes: vec![(10.0, 9.8), (5.0, 4.7), (10.0, 9.9)],
            ..Readings::default()
        };
        let printer = profile(&Printer::default(), &readings).unwrap();
        assert_eq!(printer.holes.len(), 2);
        assert!((printer.holes[1].under - 0.15).abs() < 1e-9);
    }

    #[test]
    fn a_reading_that_makes_no_sense_is_refused() {
        let readings = Readings {
            holes: vec![(5.0, f64::NAN)],
            ..Readings::default()
        };
        assert!(profile(&Printer::default(), &readings).is_err());
    }
}
