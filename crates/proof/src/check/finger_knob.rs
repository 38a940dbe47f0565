//! The finger knob above the plate: fingers get round it and the dials' knobs while the box is shut, and
//! on its whole way it meets none of them.

use super::CheckKind;
use latchwright_geometry::trig;

use super::spacing::{FINGERS, InPlate};
use super::worst_case;
use super::worst_place::{To, in_plate};
use crate::results::Check;
use latchwright_model::{Design, Dial, Slider};

/// What must be left between the finger knob and a dial's knob on its way, mm: knobs are printed, and
/// wobble a little.
///
/// # Source
/// Common practice, no source.
pub const PASSING: f64 = 2.0;

/// The radii of both knobs, mm.
pub fn knobs(slider: &Slider, dial: &Dial) -> f64 {
    f64::midpoint(slider.finger_knob(), dial.knob.diameter)
}

/// From the finger knob to the dial when the slider is forward, mm from middle to middle.
pub fn at_rest(slider: &Slider, dial: &Dial) -> f64 {
    let (x, y) = (slider.pull_at, slider.guide_at.1);
    trig::hypot(dial.centre.0 - x, dial.centre.1 - y)
}

/// From the finger knob to the dial along x and y where it comes nearest on its way, mm.
pub fn nearest(slider: &Slider, dial: &Dial) -> (f64, f64) {
    (
        dial.centre.0 - slider.pull_at,
        beyond(slider, dial.centre.1),
    )
}

/// How far `y` lies before or behind the finger knob's way, mm.
pub fn beyond(slider: &Slider, y: f64) -> f64 {
    let (front, back) = (slider.guide_at.1, slider.guide_at.1 + slider.travel);
    (front - y).max(y - back).max(0.0)
}

/// Where on its way the finger knob comes nearest to the dial.
pub(super) fn nearest_place(slider: &Slider, dial: &Dial) -> To {
    let (front, back) = (slider.guide_at.1, slider.guide_at.1 + slider.travel);
    To::Place(slider.pull_at, dial.centre.1.clamp(front, back.max(front)))
}

/// The plays that bring the two knobs nearer to each other, mm.
pub fn plays(slider: &Slider, dial: &Dial) -> f64 {
    slider.guide_play + dial.bore.shaft_play
}

/// Dials are turned with the slider forward: fingers get between then.
pub(super) fn room(design: &Design, index: usize, dial: &Dial) -> Check {
    let slider = &design.slider;
    let value = at_rest(slider, dial) - knobs(slider, dial);
    worst_case(
        CheckKind::FingerKnobRoom,
        Some(index),
        format!("Fingers get between the finger knob and knob {}", index + 1),
        (value, FINGERS),
        vec![("knob diameter", knobs(slider, dial))],
        |short| {
            format!(
                "move dial {} by about {short:.2} mm away from the finger knob or make its knob smaller",
                index + 1
            )
        },
    )
}

/// The finger knob goes with the slider, over the plate: it must not meet a dial's knob.
pub(super) fn way(plate: &InPlate<'_>, index: usize, dial: &Dial) -> Check {
    let slider = &plate.sums.design.slider;
    let between = nearest(slider, dial);
    let taken = knobs(slider, dial) + plays(slider, dial);
    let mut parts = vec![
        ("guide_play", slider.guide_play),
        ("shaft_play", dial.bore.shaft_play),
    ];
    parts.extend(plate.taken(between, 1.0));
    let check = worst_case(
        CheckKind::FingerKnobWay,
        Some(index),
        format!("Finger knob goes clear of knob {} all the way", index + 1),
        (plate.apart(between, 1.0) - taken, PASSING),
        parts,
        |short| {
            format!(
                "move dial {} by about {short:.2} mm away from the finger knob's way or make its knob smaller",
                index + 1
            )
        },
    );
    let place = nearest_place(slider, dial);
    in_plate(plate.sums, (index, place), taken, false, check)
}
