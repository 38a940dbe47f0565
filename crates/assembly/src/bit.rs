//! The bit for a hole: the nearest that the maker owns, and how far it is off.

use latchwright_model::unit::MM_PER_INCH;
use latchwright_model::{Bench, Units};

/// How far a bit may be off the finished diameter and still count as the right one, mm.
pub const NEAR: f64 = 0.3;

/// Nearest to a sixty-fourth that still counts as one, in.
const SAME: f64 = 0.0005;

/// Nothing larger is a bit, mm.
const LARGEST: f64 = 500.0;

/// What a hole has to do.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fit {
    /// Something moves in it: a bit must never be smaller.
    Running,
    /// Something sits fast in it: a bit may be off to either side.
    Fast,
}

/// The bit that is taken for a hole.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bit {
    /// Finished diameter asked for, mm.
    pub wanted: f64,
    /// What the hole has to do.
    pub fit: Fit,
    /// The nearest bit at hand that will do, mm; `None` where none will.
    pub owned: Option<f64>,
    /// The nearest smaller one where a smaller one will not do, mm.
    pub smaller: Option<f64>,
}

impl Bit {
    /// The nearest bit on `bench` for a hole of `wanted` mm.
    ///
    /// Of two that are equally far off, the smaller; sizes that are no sizes are passed over.
    pub fn nearest(bench: &Bench, wanted: f64, fit: Fit) -> Self {
        // A ten-thousandth is rounding, such as 9/16 in typed in millimetres.
        let slack = 1e-4;
        let sound = || {
            let bits = bench.bits.iter().copied();
            bits.filter(|bit| (0.1..=LARGEST).contains(bit))
        };
        let near = |a: &f64, b: &f64| {
            let off = (a - wanted).abs().total_cmp(&(b - wanted).abs());
            off.then(a.total_cmp(b))
        };
        let too_small = |bit: &f64| *bit < wanted - slack;
        let owned = match fit {
            Fit::Running => sound().filter(|bit| !too_small(bit)).min_by(near),
            Fit::Fast => sound().min_by(near),
        };
        let smaller = match fit {
            Fit::Running => sound().filter(too_small).max_by(f64::total_cmp),
            Fit::Fast => None,
        };
        Self {
            wanted,
            fit,
            owned,
            smaller,
        }
    }

    /// Bit less finished diameter, mm; `None` where there is no bit.
    pub fn over(&self) -> Option<f64> {
        let over = self.owned? - self.wanted;
        Some(if over.abs() < 1e-4 { 0.0 } else { over })
    }

    /// Whether it is within [`NEAR`] of the finished diameter.
    pub fn is_near(&self) -> bool {
        self.over().is_some_and(|over| over.abs() <= NEAR + 1e-9)
    }

    /// Diameter of the hole as it comes out: the bit's, or the finished one where there is no bit, mm.
    pub fn bored(&self) -> f64 {
        self.owned.unwrap_or(self.wanted)
    }

    /// The bit in few words: `bit 15 mm, 0.7 mm over: none within 0.3 mm`.
    pub fn words(&self, units: Units) -> String {
        self.lines(units).join(": ")
    }

    /// The same as lines for a drawing; where no bit is near, that is a line of its own.
    pub fn lines(&self, units: Units) -> Vec<String> {
        let say = |mm: f64| length(mm, units);
        let (Some(owned), Some(over)) = (self.owned, self.over()) else {
            return vec![match self.smaller {
                Some(smaller) => format!("no bit as large; the largest is {}", say(smaller)),
                None => "no bit at hand".to_owned(),
            }];
        };
        let off = if over == 0.0 {
            String::new()
        } else if over > 0.0 {
            format!(", {} over", say(over))
        } else {
            format!(", {} under", say(-over))
        };
        let mut lines = vec![format!("bit {}{off}", say(owned))];
        if !self.is_near() {
            lines.push(format!("none within {}", say(NEAR)));
        }
        lines
    }
}

/// A bit's own size in the maker's unit, whatever their rule is divided into: `14.3 mm`; `9/16 in`, or `0.118 in` where no
/// sixty-fourth is near.
pub fn length(mm: f64, units: Units) -> String {
    match units {
        Units::Millimetre => format!("{} mm", decimals(mm, 2)),
        Units::Inch => inches(mm / MM_PER_INCH),
    }
}

/// `value` rounded to `places` decimals, without zeros at the end and without minus zero.
fn decimals(value: f64, places: usize) -> String {
    if !value.is_finite() {
        return "?".to_owned();
    }
    let text = format!("{value:.places$}");
    let short = if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.')
    } else {
        text.as_str()
    };
    if short == "-0" { "0" } else { short }.to_owned()
}

fn inches(value: f64) -> String {
    let parts = (value * 64.0).round();
    let near = (value - parts / 64.0).abs() <= SAME;
    if !near || !(1.0..=64_000.0).contains(&parts) {
        return format!("{} in", decimals(value, 3));
    }
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "1 to 64 000"
    )]
    let parts = parts as u32;
    let (whole, mut rest, mut of) = (parts / 64, parts % 64, 64);
    while rest != 0 && rest.is_multiple_of(2) {
        (rest, of) = (rest / 2, of / 2);
    }
    match (whole, rest) {
        (0, _) => format!("{rest}/{of} in"),
        (_, 0) => format!("{whole} in"),
        _ => format!("{whole} {rest}/{of} in"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn with(bits: &[f64]) -> Bench {
        Bench {
            bits: bits.to_vec(),
            ..Bench::default()
        }
    }

    #[test]
    fn a_running_hole_never_gets_a_smaller_bit() {
        let bench = with(&[14.0, 15.0]);
        let bit = Bit::nearest(&bench, 14.3, Fit::Running);
        assert_eq!((bit.owned, bit.smaller), (Some(15.0), Some(14.0)));
        assert!((bit.over().unwrap() - 0.7).abs() < 1e-9);
        assert!(!bit.is_near());
        assert_eq!(
            bit.words(Units::Millimetre),
            "bit 15 mm, 0.7 mm over: none within 0.3 mm"
        );
    }

    #[test]
    fn a_fast_hole_takes_the_nearest_of_both_sides_and_of_two_the_smaller() {
        let bench = with(&[3.5, 4.5, 9.0]);
        assert_eq!(Bit::nearest(&bench, 4.1, Fit::Fast).owned, Some(4.5));
        assert_eq!(Bit::nearest(&bench, 4.0, Fit::Fast).owned, Some(3.5));
    }

    #[test]
    fn three_tenths_are_near_and_a_little_more_is_not() {
        let bench = with(&[10.0]);
        assert!(Bit::nearest(&bench, 9.7, Fit::Running).is_near());
        assert!(!Bit::nearest(&bench, 9.69, Fit::Running).is_near());
    }

    #[test]
    fn the_same_size_in_inches_is_not_off() {
        let bit = Bit::nearest(&with(&[14.2875]), 14.287_500_000_000_2, Fit::Running);
        assert_eq!(bit.over(), Some(0.0));
        assert_eq!(bit.words(Units::Inch), "bit 9/16 in");
    }

    #[test]
    fn no_bit_is_said() {
        let bit = Bit::nearest(&with(&[5.0, f64::NAN, -3.0]), 8.5, Fit::Running);
        assert_eq!(bit.owned, None);
        assert_eq!(bit.bored(), 8.5);
        assert_eq!(
            bit.words(Units::Millimetre),
            "no bit as large; the largest is 5 mm"
        );
        let none = Bit::nearest(&with(&[]), f64::NAN, Fit::Fast);
        assert_eq!(none.words(Units::Millimetre), "no bit at hand");
    }

    #[test]
    fn a_bits_size_speaks_the_makers_unit() {
        assert_eq!(length(14.3, Units::Millimetre), "14.3 mm");
        assert_eq!(length(-0.001, Units::Millimetre), "0 mm");
        assert_eq!(length(14.2875, Units::Inch), "9/16 in");
        assert_eq!(length(50.8, Units::Inch), "2 in");
        assert_eq!(length(228.6 + 1.5875, Units::Inch), "9 1/16 in");
        assert_eq!(length(3.0, Units::Inch), "0.118 in");
        assert_eq!(length(f64::NAN, Units::Inch), "? in");
    }
}
