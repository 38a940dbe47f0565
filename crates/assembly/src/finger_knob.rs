//! What the hand pulls: a knob over the plate, its shank through the slot, its end in a socket of the slider, a screw from
//! below. The ends of the slot are the slider's stops.

use latchwright_geometry::Point;
use latchwright_model::Design;

use crate::screw::{Reach, SINK};

/// Height of what the fingers hold, mm.
pub const GRIP: f64 = 10.0;
/// Clear distance from the grip to the plate, mm.
pub const FLOAT: f64 = 1.0;
/// Play of the shank in its socket, mm in diameter: common practice, no source.
pub const SHANK_PLAY: f64 = 0.2;
/// What the shank's slot is wider than the shank beside the guide's play and the places of both, mm in all: common
/// practice, no source.
const SLOT_AIR: f64 = 0.2;

/// The finger knob with its seat, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FingerKnob {
    /// Its middle when the slider is forward.
    pub at: Point,
    /// Diameter of the grip.
    pub diameter: f64,
    /// Diameter of the shank.
    pub shank: f64,
    /// Length of the shank under the grip: float, plate, air, and half the slider.
    pub shank_length: f64,
    /// Diameter of the socket in the slider's upper face.
    pub socket: f64,
    /// Depth of the socket.
    pub socket_depth: f64,
    /// What the screw from below goes through, and what the shank gives its thread.
    pub reach: Reach,
    /// The screw's length; `None` where none that is sold will do.
    pub screw: Option<f64>,
}

/// The finger knob of `design`.
pub fn finger_knob(design: &Design) -> FingerKnob {
    let (plate, slider) = (&design.plate, &design.slider);
    let deep = slider.thickness / 2.0;
    let shank_length = FLOAT + plate.thickness + slider.below + deep;
    let reach = Reach {
        through: slider.thickness - deep,
        into: shank_length,
    };
    FingerKnob {
        at: Point::new(slider.pull_at, slider.guide_at.1),
        diameter: slider.finger_knob(),
        shank: slider.shank,
        shank_length,
        socket: slider.shank + SHANK_PLAY,
        socket_depth: deep,
        reach,
        screw: reach.shortest(HELD),
    }
}

/// Thread in the shank, mm, at least: it runs along the layers' direction and may part them; common practice, no source.
const HELD: f64 = 8.0;

/// The slot in the plate in which the shank runs: from stop to stop along y, and so wide that its walls never lead.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ShankSlot {
    /// Middle of its front end's round, mm.
    pub from: Point,
    /// Middle of its back end's round, mm.
    pub to: Point,
    /// Width, mm.
    pub width: f64,
}

/// How much further to each side than its own radius the shank's slot reaches, mm: guide, places and a little air.
fn slot_air(design: &Design) -> f64 {
    let work = &design.workmanship;
    design.slider.guide_play + work.pin_place + work.bore_place + SLOT_AIR / 2.0
}

/// The shank's slot. Its walls stand further off than guide and places together can bring the shank, so that only the
/// strips lead the slider; its ends stop it at u = 0 and at full travel.
pub fn shank_slot(design: &Design) -> ShankSlot {
    let slider = &design.slider;
    let air = slot_air(design).max(0.0);
    let front = Point::new(slider.pull_at, slider.guide_at.1);
    // its rounds are wider than the shank, which meets them in the middle
    let in_from_ends = air.min(slider.travel.max(0.0) / 2.0);
    ShankSlot {
        from: front + Point::new(0.0, in_from_ends),
        to: front + Point::new(0.0, slider.travel - in_from_ends),
        width: slider.shank + 2.0 * air,
    }
}

/// How far the head of the screw from below is sunk into the slider, mm: never half through what is under the socket.
pub fn screw_sink(design: &Design) -> f64 {
    SINK.min(finger_knob(design).reach.through / 2.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_shank_runs_from_stop_to_stop_and_is_never_led_by_its_slot() {
        let design = Design::default();
        let slot = shank_slot(&design);
        let (radius, half) = (design.slider.shank / 2.0, slot.width / 2.0);
        let front = design.slider.guide_at.1;
        assert!((slot.from.y - half - (front - radius)).abs() < 1e-9);
        let back = front + design.slider.travel;
        assert!((slot.to.y + half - (back + radius)).abs() < 1e-9);
        let work = &design.workmanship;
        let aside = design.slider.guide_play + work.pin_place + work.bore_place;
        assert!(half - radius > aside);
    }

    #[test]
    fn the_knob_stands_on_the_bottom_of_its_socket_a_millimetre_over_the_plate() {
        let design = Design::default();
        let knob = finger_knob(&design);
        let socket_floor = design.slider.below + knob.socket_depth;
        let top = knob.shank_length - socket_floor;
        assert!((top - design.plate.thickness - FLOAT).abs() < 1e-9);
        let screw = knob.screw.unwrap();
        assert!(screw - knob.reach.through >= HELD - 1e-9);
    }
}
