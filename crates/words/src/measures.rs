//! The numbers of a built latch, as people read them.

use latchwright_model::Units;
use latchwright_proof::built::{Measure, MeasureUnit, Number};

use crate::figure::{mm_per, unit_name};

/// What the number is and whose, without its value.
pub fn number_name(number: &Number) -> String {
    let name = measure(number.measure);
    match (number.dial, number.slot) {
        (Some(dial), Some(slot)) => format!("dial {}, slot {}: {name}", dial + 1, slot + 1),
        (Some(dial), None) => format!("dial {}: {name}", dial + 1),
        (None, _) => name.to_owned(),
    }
}

/// Its value in the maker's unit, and the name of that unit; empty for a share.
pub fn number_value(number: &Number, units: Units) -> (f64, &'static str) {
    match number.measure.unit() {
        MeasureUnit::Celsius => (number.value, "°C"),
        MeasureUnit::Percent => (number.value, "%"),
        MeasureUnit::Millimetre => (number.value / mm_per(units), unit_name(units)),
        MeasureUnit::Degree => (number.value, "°"),
        MeasureUnit::Share => (number.value, ""),
    }
}

/// What a number of a built latch is.
pub const fn measure(measure: Measure) -> &'static str {
    match measure {
        Measure::Temperature => "temperature",
        Measure::Humidity => "relative humidity",
        Measure::Keeper => "keeper off along y",
        Measure::Front => "front of the guide, share of its play",
        Measure::Back => "back of the guide, share of its play",
        Measure::PinX => "pin off along x",
        Measure::PinY => "pin off along y",
        Measure::BoreX => "bore off along x",
        Measure::BoreY => "bore off along y",
        Measure::Rim => "rim radius",
        Measure::PinRadius => "pin radius",
        Measure::ShaftX => "shaft in its bore along x",
        Measure::ShaftY => "shaft in its bore along y",
        Measure::Reading => "pointer off its mark",
        Measure::Backlash => "disc turned on its key",
        Measure::SlotWidth => "slot width",
        Measure::SlotDepth => "slot depth",
        Measure::LeadIn => "lead-in",
    }
}
