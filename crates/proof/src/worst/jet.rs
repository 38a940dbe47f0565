//! A figure over a cell of boxes: its bounds, and the bounds of its slope along each variable.

use core::ops::{Add, Mul, Neg, Sub};

use latchwright_geometry::Interval;

/// Bounds of a figure and of its partial derivatives over a cell of up to 16 variables.
///
/// A variable that has one value only in this cell has no slope worth knowing: it counts as 0.
#[derive(Debug, Clone, Copy)]
pub struct Jet<const N: usize> {
    /// The figure.
    pub value: Interval,
    /// Its partial derivatives.
    pub slope: [Interval; N],
    /// One bit for each variable whose slope may differ from 0.
    moves: u16,
}

impl<const N: usize> Jet<N> {
    /// A figure that is the same in every box.
    #[inline]
    pub fn constant(value: Interval) -> Self {
        Self {
            value,
            slope: [Interval::ZERO; N],
            moves: 0,
        }
    }

    /// The variable `index` itself.
    #[inline]
    pub fn variable(value: Interval, index: usize) -> Self {
        let mut jet = Self::constant(value);
        if !value.is_point() {
            jet.set_slope(index, Interval::at(1.0));
        }
        jet
    }

    /// A figure of which only some slopes are known to differ from 0.
    #[inline]
    pub fn with_slopes(
        value: Interval,
        slopes: impl IntoIterator<Item = (usize, Interval)>,
    ) -> Self {
        let mut jet = Self::constant(value);
        for (index, slope) in slopes {
            jet.set_slope(index, slope);
        }
        jet
    }

    #[inline]
    fn set_slope(&mut self, index: usize, to: Interval) {
        if let Some(slope) = self.slope.get_mut(index)
            && to != Interval::ZERO
        {
            *slope = to;
            self.moves |= 1 << index;
        }
    }

    /// Changes every slope that is not 0.
    #[inline]
    fn map(mut self, value: Interval, change: impl Fn(Interval) -> Interval) -> Self {
        self.value = value;
        let mut left = self.moves;
        while left != 0 {
            if let Some(slope) = self.slope.get_mut(left.trailing_zeros() as usize) {
                *slope = change(*slope);
            }
            left &= left - 1;
        }
        self
    }

    /// Joins the slopes of two figures, where either is not 0.
    #[inline]
    fn join(
        mut self,
        other: &Self,
        value: Interval,
        both: impl Fn(Interval, Interval) -> Interval,
    ) -> Self {
        self.value = value;
        self.moves |= other.moves;
        let mut left = self.moves;
        while left != 0 {
            let index = left.trailing_zeros() as usize;
            if let (Some(slope), Some(of_other)) =
                (self.slope.get_mut(index), other.slope.get(index))
            {
                *slope = both(*slope, *of_other);
            }
            left &= left - 1;
        }
        self
    }

    /// `outer` applied to the figure, its derivative over the cell being `by`.
    #[inline]
    fn chain(self, value: Interval, by: Interval) -> Self {
        self.map(value, |slope| slope * by)
    }

    /// The figure plus the same number everywhere.
    #[inline]
    #[must_use]
    pub fn plus(mut self, number: f64) -> Self {
        self.value = self.value + Interval::at(number);
        self
    }

    /// The figure times the same number everywhere.
    #[inline]
    #[must_use]
    pub fn times(self, number: f64) -> Self {
        self.map(self.value * number, |slope| slope * number)
    }

    /// Its square.
    #[inline]
    #[must_use]
    pub fn square(self) -> Self {
        self.chain(self.value.square(), self.value * 2.0)
    }

    /// Its square root; the figure must lie above zero.
    #[inline]
    #[must_use]
    pub fn sqrt(self) -> Self {
        let root = self.value.sqrt();
        self.chain(root, root.recip_positive() * 0.5)
    }

    /// One over it; the figure must lie above zero.
    #[inline]
    #[must_use]
    pub fn recip(self) -> Self {
        let over = self.value.recip_positive();
        self.chain(over, -over.square())
    }

    /// The figure where it is at least `floor`, else `floor`.
    #[inline]
    #[must_use]
    pub fn at_least(self, floor: f64) -> Self {
        self.held(Interval::new(floor, f64::INFINITY))
    }

    /// The figure where it is at most `ceiling`, else `ceiling`.
    #[inline]
    #[must_use]
    pub fn at_most(self, ceiling: f64) -> Self {
        self.held(Interval::new(f64::NEG_INFINITY, ceiling))
    }

    /// The figure kept between the bounds of `range`.
    #[inline]
    #[must_use]
    pub fn held(self, range: Interval) -> Self {
        if range.covers(self.value) {
            return self;
        }
        let value = self.value.within(range);
        if self.value.hi <= range.lo || self.value.lo >= range.hi {
            return Self::constant(value);
        }
        self.map(value, |slope| slope.hull(Interval::ZERO))
    }

    /// The lesser of two figures in each box.
    #[inline]
    #[must_use]
    pub fn lesser(self, other: Self) -> Self {
        if self.value.hi <= other.value.lo {
            self
        } else if other.value.hi <= self.value.lo {
            other
        } else {
            let value = Interval {
                lo: self.value.lo.min(other.value.lo),
                hi: self.value.hi.min(other.value.hi),
            };
            self.join(&other, value, Interval::hull)
        }
    }

    /// The greater of two figures in each box.
    #[inline]
    #[must_use]
    pub fn greater(self, other: Self) -> Self {
        -(-self).lesser(-other)
    }

    /// Length of the vector (self, other).
    #[inline]
    #[must_use]
    pub fn hypot(self, other: Self) -> Self {
        let value = (self.value.square() + other.value.square()).sqrt();
        // a share of the length is never more than the whole
        let share = |part: Interval| {
            let unit = Interval::new(-1.0, 1.0);
            if value.lo > 0.0 {
                (part * value.recip_positive()).within(unit)
            } else {
                unit
            }
        };
        let (along, across) = (share(self.value), share(other.value));
        self.join(&other, value, |slope, of_other| {
            slope * along + of_other * across
        })
    }
}

impl<const N: usize> Add for Jet<N> {
    type Output = Self;
    #[inline]
    fn add(self, other: Self) -> Self {
        self.join(&other, self.value + other.value, |slope, of_other| {
            slope + of_other
        })
    }
}

impl<const N: usize> Neg for Jet<N> {
    type Output = Self;
    #[inline]
    fn neg(self) -> Self {
        self.map(-self.value, |slope| -slope)
    }
}

impl<const N: usize> Sub for Jet<N> {
    type Output = Self;
    #[inline]
    fn sub(self, other: Self) -> Self {
        self.join(&other, self.value - other.value, |slope, of_other| {
            slope - of_other
        })
    }
}

impl<const N: usize> Mul for Jet<N> {
    type Output = Self;
    #[inline]
    fn mul(self, other: Self) -> Self {
        let (one, two) = (self.value, other.value);
        let product = one * two;
        self.join(&other, product, |slope, of_other| {
            (slope * two).plus(of_other * one)
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    type Two = Jet<2>;

    /// Slopes by steps of plain numbers lie in the bounds of the slopes.
    #[test]
    fn slopes_enclose_differences() {
        let figure = |x: Two, y: Two| {
            (x * y).plus(3.0).sqrt().hypot(x - y.times(2.0)) + (x.square().plus(1.0)).recip()
        };
        let plain = |x: f64, y: f64| (x * y + 3.0).sqrt().hypot(x - 2.0 * y) + 1.0 / (x * x + 1.0);
        let (cell_x, cell_y) = (Interval::new(0.4, 0.9), Interval::new(-0.5, 0.7));
        let whole = figure(Two::variable(cell_x, 0), Two::variable(cell_y, 1));
        for i in 0..10 {
            for j in 0..10 {
                let x = cell_x.lo + cell_x.width() * f64::from(i) / 10.0;
                let y = cell_y.lo + cell_y.width() * f64::from(j) / 10.0;
                let (here, step) = (plain(x, y), 1e-6);
                assert!(whole.value.lo <= here && here <= whole.value.hi);
                let along_x = (plain(x + step, y) - here) / step;
                let along_y = (plain(x, y + step) - here) / step;
                for (slope, found) in whole.slope.iter().zip([along_x, along_y]) {
                    assert!(slope.lo - 1e-5 <= found && found <= slope.hi + 1e-5);
                }
            }
        }
    }

    #[test]
    fn a_held_figure_has_no_slope_beyond_its_bound() {
        let held = Two::variable(Interval::new(-2.0, -1.0), 0).at_least(0.0);
        assert_eq!(
            (held.value, held.slope[0]),
            (Interval::ZERO, Interval::ZERO)
        );
        let partly = Two::variable(Interval::new(-1.0, 1.0), 0).at_least(0.0);
        assert_eq!(partly.slope[0], Interval::new(0.0, 1.0));
    }
}
