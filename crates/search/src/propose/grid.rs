//! Round figures of the maker's unit: every size that is proposed stands on one of these grids.

use latchwright_model::Units;
use latchwright_model::unit::MM_PER_INCH;

/// Steps of one unit, mm.
///
/// # Source
/// Common practice, no source: half and whole millimetres on a rule, thirty-seconds and sixteenths
/// of an inch; clearances by a feeler gauge or a shim.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Grid {
    /// Of places on the lid: 1 mm or 1/16 in.
    pub place: f64,
    /// Of sizes: 0.5 mm or 1/32 in.
    pub size: f64,
    /// Of clearances and plays: 0.05 mm or 0.002 in.
    pub clearance: f64,
    /// Of lids: 5 mm or 1/4 in.
    pub lid: f64,
}

/// What binary fractions may leave between a number and its place on a grid, in steps.
const DUST: f64 = 1e-6;

impl Grid {
    /// The grid of this unit.
    pub fn of(units: Units) -> Self {
        match units {
            Units::Millimetre => Self {
                place: 1.0,
                size: 0.5,
                clearance: 0.05,
                lid: 5.0,
            },
            Units::Inch => Self {
                place: MM_PER_INCH / 16.0,
                size: MM_PER_INCH / 32.0,
                clearance: 0.0508,
                lid: MM_PER_INCH / 4.0,
            },
        }
    }
}

/// The first place on a grid of `step` that is not below `value`.
pub(super) fn up(value: f64, step: f64) -> f64 {
    stand((value / step - DUST).ceil(), step)
}

/// The last place on a grid of `step` that is not above `value`.
pub(super) fn down(value: f64, step: f64) -> f64 {
    stand((value / step + DUST).floor(), step)
}

/// How many whole steps reach over `length`; none for what is no length.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "held between nought and a million"
)]
pub(super) fn steps(length: f64, step: f64) -> u32 {
    // no number becomes nought as well
    (length / step - DUST).ceil().clamp(0.0, 1e6) as u32
}

/// Whether `value` stands on a grid of `step`.
pub(super) fn stands_on(value: f64, step: f64) -> bool {
    let steps = value / step;
    (steps - steps.round()).abs() < 1e-4
}

/// So many steps.
fn stand(steps: f64, step: f64) -> f64 {
    clear(steps * step)
}

/// This length, clear of the dust that sums and products of binary fractions gather.
pub(super) fn clear(length: f64) -> f64 {
    // adding nought makes no negative one
    (length * 1e9).round() / 1e9 + 0.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_value_goes_to_the_next_place_and_one_on_the_grid_stays() {
        for (value, step, lower, upper) in [
            (7.2, 0.5, 7.0, 7.5),
            (7.5, 0.5, 7.5, 7.5),
            (0.1 + 0.2, 0.05, 0.3, 0.3),
            (-3.3, 1.0, -4.0, -3.0),
        ] {
            assert_eq!((down(value, step), up(value, step)), (lower, upper));
        }
        let inch = Grid::of(Units::Inch);
        assert!(stands_on(MM_PER_INCH * 1.75, inch.size));
        assert!(!stands_on(25.0, inch.size));
    }
}
