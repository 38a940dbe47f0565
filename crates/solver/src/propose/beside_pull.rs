//! Room between the finger knob, which stands at the guide's middle, and the dials' knobs.

use latchwright_geometry::trig;

use crate::check::finger_knob::{PASSING, at_rest, knobs, nearest, plays};
use crate::check::spacing::FINGERS;
use crate::model::{Design, Dial, Slider};

/// How many times all that may be off is kept free, so that this room is not what decides.
const SPARE: f64 = 4.0;

/// What is kept free beyond the least, mm.
fn spare(slider: &Slider, dial: &Dial, bore_place: f64) -> f64 {
    PASSING + SPARE * (plays(slider, dial) + 1.5 * bore_place)
}

/// How far towards the hinge the finger knob may stand so that fingers get between it and the dial's
/// knob, and it goes clear of it on its whole way; y, mm.
pub(super) fn before_knob(slider: &Slider, dial: &Dial, bore_place: f64) -> f64 {
    let knobs = knobs(slider, dial);
    let aside = dial.centre.0 - slider.pull_at;
    let before = |apart: f64| {
        let along = apart.powi(2) - aside.powi(2);
        if along > 0.0 {
            dial.centre.1 - along.sqrt()
        } else {
            f64::INFINITY
        }
    };
    let passing = before(knobs + spare(slider, dial, bore_place)) - slider.travel;
    before(knobs + FINGERS).min(passing)
}

/// The widest knob that the finger knob of `design` leaves room for, mm in diameter.
pub(super) fn widest_knob(design: &Design, dial: &Dial) -> f64 {
    let (slider, place) = (&design.slider, design.workmanship.bore_place);
    let (x, y) = nearest(slider, dial);
    let way = trig::hypot(x, y) - spare(slider, dial, place);
    2.0 * (at_rest(slider, dial) - FINGERS).min(way) - slider.finger_knob()
}
