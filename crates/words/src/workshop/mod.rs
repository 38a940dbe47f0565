//! Words for what the workshop tells: notes on holes, parts and boards, faults of the box, and why a
//! sheet or a reading is refused. Each is one sentence without capital and trailing stop.

mod boards;
mod holes;
mod joinery;
mod parts;
mod sheets;

#[cfg(test)]
mod tests;

pub use boards::{grain_round, plan_fault, plan_note, rounded_sum, shortfall};
pub use holes::{hole_note, notes_alike, todo};
pub use joinery::{joinery_fault, joinery_message, joinery_remedy};
pub use parts::{part_note, part_size};
pub use sheets::{no_template, ruler_fault, tiles_fault};

use latchwright_workshop::{LEAST_SIZE, MOST_SIZE};

use crate::figure::mm_per;
use latchwright_model::Units;
use latchwright_model::unit::MM_PER_INCH;

/// The least and the largest size on a bench: `0.001 mm to 10 m`.
fn sizes_on_a_bench(units: Units) -> String {
    match units {
        Units::Millimetre => format!("{LEAST_SIZE} mm to {} m", MOST_SIZE / 1000.0),
        // inwards, so that what is named is taken
        Units::Inch => format!(
            "{:.5} in to {:.0} in",
            LEAST_SIZE / MM_PER_INCH,
            (MOST_SIZE / MM_PER_INCH).floor()
        ),
    }
}

/// `mm` as a bare number of the maker's unit, as exact as a ruler's hundredth of a millimetre.
fn bare(mm: f64, units: Units) -> String {
    match units {
        Units::Millimetre => latchwright_workshop::inch::decimal(mm),
        Units::Inch => {
            let inches = mm / mm_per(units);
            format!("{inches:.3}")
        }
    }
}
