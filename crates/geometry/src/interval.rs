//! Numbers that are known between two bounds; every operation rounds outward, so that what is true
//! of all numbers between the bounds stays true of the answer.

use core::ops::{Add, Mul, Neg, Sub};

/// All numbers from `lo` to `hi`, both included.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Interval {
    /// Least.
    pub lo: f64,
    /// Largest.
    pub hi: f64,
}

/// A bound that is surely not above the exact result of the last operation.
///
/// One operation errs by at most half a unit in the last place; this goes down by at least one.
#[inline]
pub fn round_down(rounded: f64) -> f64 {
    rounded - rounded.abs() * f64::EPSILON - f64::MIN_POSITIVE
}

/// A bound that is surely not below the exact result of the last operation.
#[inline]
pub fn round_up(rounded: f64) -> f64 {
    rounded + rounded.abs() * f64::EPSILON + f64::MIN_POSITIVE
}

#[inline]
fn least(one: f64, other: f64) -> f64 {
    if one < other { one } else { other }
}

#[inline]
fn most(one: f64, other: f64) -> f64 {
    if one > other { one } else { other }
}

impl Interval {
    /// Zero and nothing else.
    pub const ZERO: Self = Self { lo: 0.0, hi: 0.0 };

    /// From the smaller of the two to the larger.
    #[inline]
    pub fn new(one: f64, other: f64) -> Self {
        Self {
            lo: least(one, other),
            hi: most(one, other),
        }
    }

    /// One number.
    #[inline]
    pub const fn at(number: f64) -> Self {
        Self {
            lo: number,
            hi: number,
        }
    }

    /// From `-error` to `error`.
    #[inline]
    pub fn about_zero(error: f64) -> Self {
        Self::new(-error, error)
    }

    /// `hi − lo`.
    #[inline]
    pub fn width(self) -> f64 {
        self.hi - self.lo
    }

    /// A number in the middle, never outside the bounds.
    #[inline]
    pub fn middle(self) -> f64 {
        f64::midpoint(self.lo, self.hi)
    }

    /// Whether it is one number.
    #[inline]
    pub fn is_point(self) -> bool {
        self.lo == self.hi
    }

    /// Whether all of `other` lies in it.
    #[inline]
    pub fn covers(self, other: Self) -> bool {
        self.lo <= other.lo && other.hi <= self.hi
    }

    /// From the lesser of both least to the larger of both largest.
    #[inline]
    #[must_use]
    pub fn hull(self, other: Self) -> Self {
        Self {
            lo: least(self.lo, other.lo),
            hi: most(self.hi, other.hi),
        }
    }

    /// What both have in common; where they have nothing, the bound of `other` that is nearest.
    #[inline]
    #[must_use]
    pub fn within(self, other: Self) -> Self {
        Self {
            lo: least(most(self.lo, other.lo), other.hi),
            hi: most(least(self.hi, other.hi), other.lo),
        }
    }

    /// The sum of both.
    #[inline]
    #[must_use]
    pub fn plus(self, other: Self) -> Self {
        Self {
            lo: round_down(self.lo + other.lo),
            hi: round_up(self.hi + other.hi),
        }
    }

    /// Its square.
    #[inline]
    #[must_use]
    pub fn square(self) -> Self {
        let (a, b) = (self.lo * self.lo, self.hi * self.hi);
        let lo = if self.lo <= 0.0 && self.hi >= 0.0 {
            0.0
        } else {
            most(round_down(least(a, b)), 0.0)
        };
        Self {
            lo,
            hi: round_up(most(a, b)),
        }
    }

    /// Its square root; what is below zero counts as zero.
    #[inline]
    #[must_use]
    pub fn sqrt(self) -> Self {
        let root = |number: f64| crate::trig::sqrt(number);
        Self {
            lo: most(round_down(root(self.lo)), 0.0),
            hi: round_up(root(self.hi)),
        }
    }

    /// One over it, for an interval that lies above zero; infinite at zero.
    #[inline]
    #[must_use]
    pub fn recip_positive(self) -> Self {
        Self {
            lo: most(round_down(1.0 / self.hi), 0.0),
            hi: if self.lo > 0.0 {
                round_up(1.0 / self.lo)
            } else {
                f64::INFINITY
            },
        }
    }
}

impl Add for Interval {
    type Output = Self;
    #[inline]
    fn add(self, other: Self) -> Self {
        self.plus(other)
    }
}

impl Sub for Interval {
    type Output = Self;
    #[inline]
    fn sub(self, other: Self) -> Self {
        Self {
            lo: round_down(self.lo - other.hi),
            hi: round_up(self.hi - other.lo),
        }
    }
}

impl Neg for Interval {
    type Output = Self;
    #[inline]
    fn neg(self) -> Self {
        Self {
            lo: -self.hi,
            hi: -self.lo,
        }
    }
}

impl Mul for Interval {
    type Output = Self;
    #[inline]
    fn mul(self, other: Self) -> Self {
        let (a, b) = (self.lo * other.lo, self.lo * other.hi);
        let (c, d) = (self.hi * other.lo, self.hi * other.hi);
        Self {
            lo: round_down(least(least(a, b), least(c, d))),
            hi: round_up(most(most(a, b), most(c, d))),
        }
    }
}

impl Mul<f64> for Interval {
    type Output = Self;
    #[inline]
    fn mul(self, factor: f64) -> Self {
        let (a, b) = (self.lo * factor, self.hi * factor);
        Self {
            lo: round_down(least(a, b)),
            hi: round_up(most(a, b)),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A third is no binary fraction: its bounds must differ and lie on either side of three thirds.
    #[test]
    fn bounds_lie_on_either_side_of_what_cannot_be_written() {
        let third = Interval::at(3.0).recip_positive();
        assert!(third.lo < third.hi);
        let whole = third * 3.0;
        assert!(whole.lo < 1.0 && whole.hi > 1.0 && whole.width() < 1e-14);
    }

    #[test]
    fn every_operation_encloses_what_numbers_do() {
        let (a, b) = (Interval::new(-1.5, 2.25), Interval::new(0.3, 4.0));
        for i in 0..=10 {
            for j in 0..=10 {
                let x = a.lo + a.width() * f64::from(i) / 10.0;
                let y = b.lo + b.width() * f64::from(j) / 10.0;
                let holds = |all: Interval, one: f64| all.lo <= one && one <= all.hi;
                assert!(holds(a + b, x + y) && holds(a - b, x - y) && holds(a * b, x * y));
                assert!(holds(a.square(), x * x) && holds(b.sqrt(), y.sqrt()));
                assert!(holds(b.recip_positive(), 1.0 / y) && holds(a * -0.7, x * -0.7));
            }
        }
    }

    #[test]
    fn a_square_of_what_straddles_zero_starts_at_zero() {
        assert_eq!(Interval::new(-1.0, 2.0).square().lo, 0.0);
        assert!(Interval::new(-3.0, -2.0).square().lo > 3.999);
    }
}
