//! The finger knob above the plate: fingers get round it and the dials' knobs while the box is shut, and
//! on its whole way it meets none of them.

use latchwright_geometry::trig;

use super::advice::Estimate;
use super::spacing::{FINGERS, InPlate, Places};
use super::worst_place::{To, in_plate};
use super::{About, Advice, CheckKind, Contributor, Draft};
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

/// What fingers have between the finger knob and a dial's knob when the slider is forward, mm.
pub fn fingers_between(slider: &Slider, dial: &Dial) -> f64 {
    at_rest(slider, dial) - knobs(slider, dial)
}

/// What is left between the two knobs where they come nearest on the finger knob's way, worst case, mm.
pub fn passes_at(places: &Places, slider: &Slider, dial: &Dial) -> f64 {
    places.apart(nearest(slider, dial), 1.0) - knobs(slider, dial) - plays(slider, dial)
}

/// Dials are turned with the slider forward: fingers get between then.
pub(super) fn between_knobs(design: &Design, index: usize, dial: &Dial) -> Check {
    let slider = &design.slider;
    let draft = Draft {
        kind: CheckKind::FingerKnobRoom,
        about: About::Dial(index),
        value: fingers_between(slider, dial),
        limit: FINGERS,
        decided_by: vec![(Contributor::KnobDiameter, knobs(slider, dial))],
    };
    draft.judged(|short| Advice::Change(Estimate::AwayFromFingerKnob(short)))
}

/// The finger knob goes with the slider, over the plate: it must not meet a dial's knob.
pub(super) fn way(plate: &InPlate<'_>, index: usize, dial: &Dial) -> Check {
    let slider = &plate.sums.design.slider;
    let between = nearest(slider, dial);
    let taken = knobs(slider, dial) + plays(slider, dial);
    let mut parts = vec![
        (Contributor::GuidePlay, slider.guide_play),
        (Contributor::ShaftPlay, dial.bore.shaft_play),
    ];
    parts.extend(plate.places.taken(between, 1.0));
    let draft = Draft {
        kind: CheckKind::FingerKnobWay,
        about: About::Dial(index),
        value: passes_at(&plate.places, slider, dial),
        limit: PASSING,
        decided_by: parts,
    };
    let check = draft.judged(|short| Advice::Change(Estimate::AwayFromFingerKnobsWay(short)));
    let place = nearest_place(slider, dial);
    in_plate(plate.sums, index, place, taken, false, check)
}
