//! The marks of the maker's ruler that can be told apart at a scale.

use latchwright_model::Units;

use latchwright_model::unit::MM_PER_INCH;

/// Marks at equal distances from nought: so many to so many millimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Marks {
    /// Marks.
    count: f64,
    /// The length that they divide, mm.
    over: f64,
}

impl Marks {
    /// Hundredths of a millimetre: what a free hand is rounded to, so that no figure is endless.
    pub const HUNDREDTH: Self = Self {
        count: 100.0,
        over: 1.0,
    };

    /// Those that a hand can aim at at `scale` points a millimetre: of the usual lid whole millimetres,
    /// or sixteenths of an inch; on a rule divided into `denominator` parts never finer ones.
    pub fn at_scale(units: Units, denominator: u32, scale: f64) -> Self {
        match units {
            Units::Millimetre => {
                let (count, over) = match scale {
                    10.0.. => (2.0, 1.0),
                    1.5.. => (1.0, 1.0),
                    0.5.. => (1.0, 5.0),
                    _ => (1.0, 10.0),
                };
                Self { count, over }
            }
            Units::Inch => {
                let parts = match scale {
                    10.0.. => 32.0,
                    1.0.. => 16.0,
                    0.5.. => 8.0,
                    _ => 4.0,
                };
                Self {
                    count: f64::min(parts, f64::from(denominator.clamp(1, 64))),
                    over: MM_PER_INCH,
                }
            }
        }
    }

    /// What is finer than a ruler is read: tenths of a millimetre, or sixty-fourths of an inch.
    pub fn fine(units: Units) -> Self {
        match units {
            Units::Millimetre => Self {
                count: 10.0,
                over: 1.0,
            },
            Units::Inch => Self {
                count: 64.0,
                over: MM_PER_INCH,
            },
        }
    }

    /// From one mark to the next, mm.
    pub fn step(self) -> f64 {
        self.over / self.count
    }

    /// The nearest mark, of two the one further from nought, mm.
    pub fn nearest(self, mm: f64) -> f64 {
        self.mark((mm * self.count / self.over).round())
    }

    /// The next mark up, or down, from `mm`.
    pub fn next(self, mm: f64, up: bool) -> f64 {
        // what is a mark but for rounding is one
        let slack = 1e-6;
        let at = mm * self.count / self.over;
        self.mark(if up {
            (at + slack).floor() + 1.0
        } else {
            (at - slack).ceil() - 1.0
        })
    }

    fn mark(self, number: f64) -> f64 {
        // + 0.0 makes nought of minus nought
        number * self.over / self.count + 0.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn marks_are_those_that_a_hand_can_aim_at() {
        let step = |units, scale| Marks::at_scale(units, 32, scale).step();
        assert_eq!(step(Units::Millimetre, 4.0), 1.0);
        assert_eq!(step(Units::Millimetre, 12.0), 0.5);
        assert_eq!(step(Units::Millimetre, 0.2), 10.0);
        assert_eq!(step(Units::Inch, 4.0), 25.4 / 16.0);
        assert_eq!(step(Units::Inch, 12.0), 25.4 / 32.0);
        assert_eq!(Marks::at_scale(Units::Inch, 8, 4.0).step(), 25.4 / 8.0);
        assert_eq!(Marks::at_scale(Units::Inch, 0, 4.0).step(), 25.4);
    }

    #[test]
    fn a_mark_has_no_endless_figures() {
        let tenths = Marks::fine(Units::Millimetre);
        assert_eq!(tenths.nearest(0.31), 0.3);
        assert_eq!(tenths.next(0.3, true), 0.4);
        assert_eq!(tenths.next(0.1, false), 0.0);
        assert!(tenths.nearest(-0.01).is_sign_positive(), "no minus nought");
    }

    #[test]
    fn the_next_mark_is_never_the_same_and_never_further_than_a_step() {
        for marks in [
            Marks::fine(Units::Millimetre),
            Marks::fine(Units::Inch),
            Marks::at_scale(Units::Inch, 32, 4.0),
            Marks::at_scale(Units::Millimetre, 32, 4.0),
        ] {
            let mut at = -3.137;
            for _ in 0..200 {
                let next = marks.next(at, true);
                assert!(next > at && next - at <= marks.step() + 1e-9, "{at} {next}");
                if at == marks.nearest(at) {
                    assert_eq!(marks.next(next, false), at);
                }
                at = next;
            }
        }
    }
}
