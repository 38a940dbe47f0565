//! What is to spare in the plate: wood round the bores, and room between the finger knob and the dials'
//! knobs.

use latchwright_geometry::trig;

use super::figure::Question;
use super::plain::Sink;
use latchwright_model::{Design, Dial, Slider};
use latchwright_proof::check::finger_knob;
use latchwright_proof::check::{spacing::FINGERS, spacing::WOOD_LEFT};

/// Places in the plate at its smallest, each bore off on both axes.
pub(super) struct Plate {
    growth: (f64, f64),
    place: f64,
}

impl Plate {
    /// The plate of `design`, which grows by at least so much.
    pub(super) fn of(growth: (f64, f64), design: &Design) -> Self {
        Self {
            growth,
            place: design.workmanship.bore_place,
        }
    }

    /// The same where nothing is off.
    pub(super) fn still() -> Self {
        Self {
            growth: (0.0, 0.0),
            place: 0.0,
        }
    }

    /// Least distance between two places that are so far apart across and along when nothing is off, mm.
    pub(super) fn apart(&self, (across, along): (f64, f64), bores: f64) -> f64 {
        let error = bores * self.place;
        let axis = |length: f64, growth: f64| (length.abs() - error).max(0.0) * (1.0 + growth);
        trig::hypot(axis(across, self.growth.0), axis(along, self.growth.1))
    }
}

/// Every margin of one dial in the plate.
pub(super) fn in_plate(
    design: &Design,
    plate: &Plate,
    (index, dial): (usize, &Dial),
    out: &mut Sink<'_>,
) {
    let (wood, slider) = (&design.plate, &design.slider);
    let (x, y) = dial.centre;
    let left = |(across, along): (f64, f64)| {
        let outside = across.min(0.0) + along.min(0.0);
        plate.apart((across.max(0.0), along.max(0.0)), 1.0) + outside
    };
    let side = left((wood.width / 2.0 - x.abs(), 0.0));
    let front = left((0.0, y.min(wood.depth - y)));
    let bore = dial.bore.diameter / 2.0;
    out(
        Question::Edge,
        Some(index),
        side.min(front) - bore - WOOD_LEFT,
    );
    let apart = plate.apart(finger_knob::nearest(slider, dial), 1.0);
    let taken = bore + slider.shank / 2.0 + slider.guide_play;
    out(Question::GuideSlot, Some(index), apart - taken - WOOD_LEFT);
    out(Question::PullRoom, Some(index), pull_room(slider, dial));
    out(
        Question::PullWay,
        Some(index),
        pull_way(plate, slider, dial),
    );
}

/// What fingers have to spare between the finger knob and a dial's knob, mm.
pub(super) fn pull_room(slider: &Slider, dial: &Dial) -> f64 {
    finger_knob::at_rest(slider, dial) - finger_knob::knobs(slider, dial) - FINGERS
}

/// What is to spare between the two on the finger knob's way, mm.
pub(super) fn pull_way(plate: &Plate, slider: &Slider, dial: &Dial) -> f64 {
    let apart = plate.apart(finger_knob::nearest(slider, dial), 1.0);
    let knobs = finger_knob::knobs(slider, dial);
    apart - knobs - finger_knob::plays(slider, dial) - finger_knob::PASSING
}
