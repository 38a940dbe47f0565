//! What one pin of a built latch does with its disc, for the figures of the checks: the same closed
//! forms whose bounds the exact worst case takes, on one box.

use latchwright_geometry::{Point, trig};

use crate::built::{BuiltDial, BuiltSlot};
use latchwright_model::slot::mouth_half_angle;

/// Travel after which a pin whose middle is at `pin` from the shaft has come as near as `within`, mm;
/// `None` where it slips past.
pub fn travel_to(pin: Point, within: f64) -> Option<f64> {
    let square = within * within - pin.x * pin.x;
    (square > 0.0).then(|| -pin.y - trig::sqrt(square))
}

/// How far a pin keeps clear of what could stop it at a mouth, mm: of plain rim, of the mouth's
/// outer corner, and where there is no lead-in of the corner of the wall.
///
/// `pin` is its middle from the middle of the shaft, the mouth's middle is turned clockwise by
/// `turn_deg` from straight ahead. It comes straight along y, the disc held still.
pub fn mouth_clearance(dial: &BuiltDial, slot: &BuiltSlot, pin: Point, turn_deg: f64) -> f64 {
    let turn = trig::radians(turn_deg);
    let (sine, cosine) = (trig::sin(turn), trig::cos(turn));
    let angle = mouth_half_angle(dial.rim, slot.width / 2.0, slot.lead_in);
    let (across, out) = (dial.rim * trig::sin(angle), dial.rim * trig::cos(angle));
    let side = |sine: f64, aside: f64| {
        if slot.lead_in > 0.0 {
            // on the lead-in's flat the pin's middle is r/√2 further in and out
            let shift = dial.pin_radius * core::f64::consts::FRAC_1_SQRT_2;
            (across - shift) * cosine - (out + shift) * sine - aside
        } else {
            across * cosine - out * sine - dial.pin_radius - aside
        }
    };
    // clockwise takes the slot to the left, so that its right corner comes towards the pin
    side(sine, pin.x).min(side(-sine, -pin.x))
}

/// How much deeper the floor of a slot is than a pin goes whose middle ends at `end` from the shaft,
/// the disc turned so that its slot faces the pin, mm.
pub fn depth_left(dial: &BuiltDial, slot: &BuiltSlot, end: Point) -> f64 {
    slot.depth - dial.rim - dial.pin_radius + end.length()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::built::{BuiltLatch, Moment};
    use crate::thin_latch::thin;

    #[test]
    fn with_nothing_off_a_pin_travels_its_gap_to_the_rim() {
        let design = thin();
        let latch = BuiltLatch::nominal(&design);
        let moment = Moment::of(&design, &latch).unwrap();
        for (index, built) in latch.dials.iter().enumerate() {
            let travel = travel_to(moment.pin(index).unwrap(), built.touches_at());
            assert_eq!(travel, Some(2.0));
        }
    }
}
