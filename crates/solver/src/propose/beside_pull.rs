//! The guide, and room between the finger knob, which stands at its middle, and the dials' knobs.

use latchwright_geometry::trig;

use super::grid::{Grid, down};
use super::lattice::GUIDE_FROM;
use crate::check::finger_knob::{PASSING, at_rest, knobs, nearest, plays};
use crate::check::slider_body::AROUND_SHANK;
use crate::check::spacing::FINGERS;
use crate::model::{Design, Dial, Slider};
use crate::season::Drift;
use crate::slider_body::SliderBody;

/// How many times all that may be off is kept free, so that this room is not what decides.
const SPARE: f64 = 4.0;

/// What is kept free beyond the least, mm.
fn spare(slider: &Slider, dial: &Dial, bore_place: f64) -> f64 {
    PASSING + SPARE * (plays(slider, dial) + 1.5 * bore_place)
}

/// How far towards the hinge the finger knob may stand so that fingers get between it and the dial's
/// knob, and it goes clear of it on its whole way; y, mm.
fn before_knob(slider: &Slider, dial: &Dial, bore_place: f64) -> f64 {
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

/// Rounds in which the guide's length and the room that the bar needs settle.
const SETTLING: usize = 4;

/// The longest guide up to the pins, at `pins` along y, whose middle, where the finger knob stands,
/// keeps clear of the dials' knobs and has the slider's wood under it.
pub(super) fn set_guide(design: &mut Design, drift: &Drift, pins: f64, grid: Grid) {
    let from = design.keeper.edge + GUIDE_FROM;
    let (slider, work) = (&design.slider, &design.workmanship);
    let dials = design.dials.iter();
    let knob_at = dials.map(|dial| before_knob(slider, dial, work.bore_place));
    let knob_at = knob_at.fold(f64::INFINITY, f64::min);
    let around = slider.shank / 2.0 + AROUND_SHANK + (1.0 + SPARE) * work.pin_place;
    let mut length = (pins - from).min(2.0 * (knob_at - from));
    for _ in 0..SETTLING {
        design.slider.guide_length = down(length, grid.place);
        design.slider.guide_at.1 = from + design.slider.guide_length / 2.0;
        // a shorter guide turns more, and the bar makes room for it
        let seat_at = SliderBody::over(design, drift).bar_max.y - around;
        let seated = 2.0 * (seat_at - from);
        if seated >= design.slider.guide_length || length <= 0.0 {
            break;
        }
        length = seated;
    }
}
