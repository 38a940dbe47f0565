//! Inches as fractions, with what rounding costs, and sums of rounded parts against the rounded whole.

use core::fmt;

use latchwright_model::{Design, Units};

use latchwright_model::sound::within;
use latchwright_model::unit::MM_PER_INCH;

/// Denominators that a rule is divided into; anything else is taken as the nearest of them below.
const DENOMINATORS: [u32; 7] = [64, 32, 16, 8, 4, 2, 1];

/// A length in inches to the nearest tick of a rule, and how far that is from the true length.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fraction {
    /// Ticks of `1/denominator` inch; below 0 for a length below 0.
    pub ticks: i64,
    /// Ticks in an inch: 1 to 64, a power of two.
    pub denominator: u32,
    /// The true length, mm.
    pub true_mm: f64,
}

/// Rounded parts, laid end to end, against their rounded sum.
#[derive(Debug, Clone, PartialEq)]
pub struct RoundedSum {
    /// The parts, each rounded by itself.
    pub parts: Vec<Fraction>,
    /// What the rounded parts make together.
    pub laid: Fraction,
    /// The true sum, rounded once.
    pub whole: Fraction,
}

/// How this maker reads lengths: millimetres, or inches by a rule of so many ticks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Rule {
    /// The unit.
    pub units: Units,
    /// Ticks in an inch, where the unit is the inch.
    pub denominator: u32,
}

impl Rule {
    /// The rule that `design` speaks of.
    pub fn of(design: &Design) -> Self {
        Self {
            units: design.units,
            denominator: design.bench.fraction,
        }
    }

    /// `mm` in words: `12.5 mm`, or `31/64 in` to the nearest tick.
    pub fn say(self, mm: f64) -> String {
        match self.units {
            Units::Millimetre => format!("{} mm", decimal(mm)),
            Units::Inch => format!("{} in", fraction(mm, self.denominator)),
        }
    }

    /// As [`Self::say`], without the unit.
    pub fn say_bare(self, mm: f64) -> String {
        match self.units {
            Units::Millimetre => decimal(mm),
            Units::Inch => fraction(mm, self.denominator).to_string(),
        }
    }

    /// `mm` in words, never less than it is: to the whole millimetre or tick above.
    pub fn say_at_least(self, mm: f64) -> String {
        match self.units {
            Units::Millimetre => self.say((within(mm) - 1e-6).ceil()),
            Units::Inch => {
                let near = fraction(mm, self.denominator);
                let ticks = near.ticks + i64::from(near.error_mm() < -1e-6);
                format!("{} in", Fraction { ticks, ..near })
            }
        }
    }

    /// `mm` in words with what rounding costs: `12.5 mm`, `15/32 scant, by 0.004 in`; in thousandths of
    /// an inch where a tick is too coarse.
    pub fn say_exactly(self, mm: f64) -> String {
        match self.exactly(mm) {
            (number, None) => format!("{number} {}", self.unit()),
            (number, Some(cost)) => format!("{number} {cost}"),
        }
    }

    /// As [`Self::say_exactly`], without the unit where rounding costs nothing.
    pub fn say_exactly_bare(self, mm: f64) -> String {
        match self.exactly(mm) {
            (number, None) => number,
            (number, Some(cost)) => format!("{number} {cost}"),
        }
    }

    /// The number and what its rounding costs, if that is a thousandth of an inch or more.
    fn exactly(self, mm: f64) -> (String, Option<String>) {
        if self.units == Units::Millimetre {
            return (decimal(mm), None);
        }
        let near = fraction(mm, self.denominator);
        if near.ticks.abs() < 4 && near.error_mm().abs() > 1e-6 {
            return (thousandths(mm), None);
        }
        let off = (near.error_mm() / MM_PER_INCH * 1000.0).round() / 1000.0;
        if off == 0.0 {
            return (near.to_string(), None);
        }
        // as the trade says it: full is a little more than the fraction
        let way = if off > 0.0 { "scant" } else { "full" };
        let cost = format!("{way}, by {:.3} in", off.abs());
        (near.to_string(), Some(cost))
    }

    /// A No. 4 screw of this length, as shops sell it: `No. 4 × 19 mm (3/4 in)`, `No. 4 × 3/4 in`.
    pub fn say_screw(self, mm: f64) -> String {
        let inches = fraction(mm, 16);
        match self.units {
            Units::Millimetre => format!("No. 4 × {:.0} mm ({inches} in)", within(mm)),
            Units::Inch => format!("No. 4 × {inches} in"),
        }
    }

    /// `mm` in words for what is finer than a tick, such as coats and clearances: `0.15 mm`, or
    /// `0.006 in` in thousandths.
    pub fn say_fine(self, mm: f64) -> String {
        match self.units {
            Units::Millimetre => format!("{} mm", decimal(mm)),
            Units::Inch => format!("{} in", thousandths(mm)),
        }
    }

    const fn unit(self) -> &'static str {
        match self.units {
            Units::Millimetre => "mm",
            Units::Inch => "in",
        }
    }
}

/// `mm` with at most two decimals and none that are nought.
pub fn decimal(mm: f64) -> String {
    let text = format!("{:.2}", plain_nought((within(mm) * 100.0).round() / 100.0));
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// `mm` in inches with three decimals.
fn thousandths(mm: f64) -> String {
    format!("{:.3}", plain_nought(within(mm) / MM_PER_INCH))
}

fn plain_nought(value: f64) -> f64 {
    if value == 0.0 { 0.0 } else { value }
}

/// `mm` to the nearest tick of `1/denominator` inch; halves go away from nought.
///
/// A denominator that no rule has becomes the next smaller one that it has. A length that is no
/// number is nought, one beyond a hundred metres is a hundred metres.
pub fn fraction(mm: f64, denominator: u32) -> Fraction {
    let denominator = DENOMINATORS
        .into_iter()
        .find(|ticks| *ticks <= denominator)
        .unwrap_or(1);
    let true_mm = within(mm);
    #[expect(
        clippy::cast_possible_truncation,
        reason = "a hundred metres are 252 000 ticks of a sixty-fourth"
    )]
    let ticks = (true_mm / MM_PER_INCH * f64::from(denominator)).round() as i64;
    Fraction {
        ticks,
        denominator,
        true_mm,
    }
}

/// `parts` (mm) rounded one by one and laid end to end, against the whole rounded once.
///
/// Three of 37 mm to 32nds: each is 1 15/32, together 4 13/32, but the whole is 4 3/8.
pub fn rounded_sum(parts: &[f64], denominator: u32) -> RoundedSum {
    let whole_mm = parts.iter().map(|mm| within(*mm)).sum();
    let parts: Vec<Fraction> = parts.iter().map(|mm| fraction(*mm, denominator)).collect();
    let whole = fraction(whole_mm, denominator);
    let laid = Fraction {
        ticks: parts.iter().map(|part| part.ticks).sum(),
        ..whole
    };
    RoundedSum { parts, laid, whole }
}

impl Fraction {
    /// What the ticks stand for, mm.
    pub fn mm(self) -> f64 {
        self.ticks as f64 / f64::from(self.denominator.max(1)) * MM_PER_INCH
    }

    /// How much longer the rounded length is than the true one, mm; at most half a tick.
    pub fn error_mm(self) -> f64 {
        self.mm() - self.true_mm
    }
}

impl fmt::Display for Fraction {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let under = u64::from(self.denominator.max(1));
        let ticks = self.ticks.unsigned_abs();
        if self.ticks < 0 {
            f.write_str("−")?;
        }
        let (whole, mut over, mut under) = (ticks / under, ticks % under, under);
        while over > 0 && over % 2 == 0 && under % 2 == 0 {
            (over, under) = (over / 2, under / 2);
        }
        match (whole, over) {
            (whole, 0) => write!(f, "{whole}"),
            (0, over) => write!(f, "{over}/{under}"),
            (whole, over) => write!(f, "{whole} {over}/{under}"),
        }
    }
}

impl RoundedSum {
    /// Ticks by which the laid parts are longer than the whole.
    pub fn off_ticks(&self) -> i64 {
        self.laid.ticks - self.whole.ticks
    }

    /// `+ 1/32` or `− 1/16`; `None` where the parts make the whole.
    pub fn off(&self) -> Option<String> {
        let ticks = self.off_ticks();
        let size = Fraction {
            ticks: ticks.abs(),
            ..self.whole
        };
        match ticks {
            0 => None,
            1.. => Some(format!("+ {size}")),
            _ => Some(format!("− {size}")),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn three_of_37_mm_are_a_thirty_second_too_long_when_rounded_one_by_one() {
        let sum = rounded_sum(&[37.0; 3], 32);
        assert!(sum.parts.iter().all(|part| part.to_string() == "1 15/32"));
        assert_eq!(sum.laid.to_string(), "4 13/32");
        assert_eq!(sum.whole.to_string(), "4 3/8");
        assert_eq!(sum.off().as_deref(), Some("+ 1/32"));
    }

    #[test]
    fn parts_that_make_the_whole_say_nothing() {
        let sum = rounded_sum(&[25.4, 12.7, 12.7], 32);
        assert_eq!(sum.off(), None);
        assert_eq!(sum.whole.to_string(), "2");
    }

    #[test]
    fn fractions_are_shown_in_their_lowest_terms() {
        for (mm, denominator, text) in [
            (12.7, 64, "1/2"),
            (34.925, 32, "1 3/8"),
            (-9.525, 16, "−3/8"),
            (0.0, 32, "0"),
            (-0.1, 8, "0"),
            (76.2, 8, "3"),
            (25.0, 32, "31/32"),
            (25.0, 33, "31/32"),
            (25.0, 0, "1"),
        ] {
            assert_eq!(
                fraction(mm, denominator).to_string(),
                text,
                "{mm} to {denominator}"
            );
        }
    }

    #[test]
    fn the_rounding_error_is_told_and_never_more_than_half_a_tick() {
        // 1 15/32 in is 37.306 25 mm
        assert!((fraction(37.0, 32).error_mm() - 0.306_25).abs() < 1e-9);
        for hundredths in -4000..4000 {
            for denominator in [8, 16, 32, 64] {
                let mm = f64::from(hundredths) / 37.0;
                let error = fraction(mm, denominator).error_mm().abs();
                assert!(error <= 25.4 / f64::from(denominator) / 2.0 + 1e-9);
            }
        }
    }

    #[test]
    fn nonsense_becomes_a_length_that_can_be_written() {
        assert_eq!(fraction(f64::NAN, 32).to_string(), "0");
        assert_eq!(fraction(f64::INFINITY, 64).true_mm, 5e4);
        assert_eq!(decimal(f64::NAN), "0");
        assert_eq!(decimal(-0.001), "0");
    }

    #[test]
    fn lengths_are_said_in_the_makers_unit() {
        let mm = Rule {
            units: Units::Millimetre,
            denominator: 32,
        };
        let inch = Rule {
            units: Units::Inch,
            ..mm
        };
        assert_eq!(
            (mm.say(12.345), mm.say(12.0)),
            ("12.35 mm".into(), "12 mm".into())
        );
        assert_eq!(inch.say(19.05), "3/4 in");
        assert_eq!(inch.say_screw(19.05), "No. 4 × 3/4 in");
        assert_eq!(mm.say_screw(19.05), "No. 4 × 19 mm (3/4 in)");
        assert_eq!(inch.say_fine(0.15), "0.006 in");
        assert_eq!(inch.say_exactly(11.8), "15/32 scant, by 0.004 in");
        assert_eq!(inch.say_exactly(37.0), "1 15/32 scant, by 0.012 in");
        assert_eq!(inch.say_exactly(36.6), "1 7/16 full, by 0.003 in");
        assert_eq!(
            (inch.say_exactly(19.05), inch.say_exactly(0.5)),
            ("3/4 in".into(), "0.020 in".into())
        );
        assert_eq!(mm.say_exactly(11.8), "11.8 mm");
        // 36.5125 is 1 7/16
        assert_eq!(
            (inch.say_at_least(36.5125), inch.say_at_least(36.6)),
            ("1 7/16 in".into(), "1 15/32 in".into())
        );
        assert_eq!(
            (mm.say_at_least(142.8), mm.say_at_least(143.0)),
            ("143 mm".into(), "143 mm".into())
        );
    }
}
