//! What tab and pins bear, by the plain sums.

use super::figure::{Figure, Question};
use latchwright_model::{Design, Dial};
use latchwright_proof::bounds::DialBounds;
use latchwright_proof::strength::{Bears, peg_bending, peg_shear, tongue_bending, tongue_shear};

/// What the tab bears beyond what it is put to, MPa; the nearer of bending and shear.
pub(super) fn tab_bears(design: &Design, creep: f64) -> f64 {
    let (slider, tab) = (&design.slider, &design.tab);
    let root = slider.guide_at.1 - slider.guide_length / 2.0;
    let lever = (root - design.keeper.edge + creep + design.workmanship.keeper_place).max(0.0);
    let thickness = (slider.thickness - design.workmanship.thickness).max(1e-3);
    let bears = Bears::of_tab(&slider.material);
    let bending = tongue_bending(slider.pull, lever, tab.width, thickness);
    let shear = tongue_shear(slider.pull, tab.width, thickness);
    (bears.bending - bending).min(bears.shear - shear)
}

/// What a dial's pin bears beyond what it is put to, MPa; the nearer of bending and shear.
pub(super) fn pin_bears(design: &Design, dial: &Dial, bounds: &DialBounds) -> f64 {
    let diameter = 2.0 * bounds.pin.lo;
    bears_as(dial, design, (diameter, design.workmanship.thickness))
}

/// The same of a pin that is at least so thick where its slider may be so much thinner, mm.
fn bears_as(dial: &Dial, design: &Design, (diameter, thinner): (f64, f64)) -> f64 {
    let force = design.slider.pull;
    let diameter = diameter.max(1e-3);
    let bears = Bears::of_pin(dial.pin.make);
    let lever = dial.pin.free + thinner;
    let bending = peg_bending(force, lever, diameter);
    (bears.bending - bending).min(bears.shear - peg_shear(force, diameter))
}

/// What the weakest dial's pin bears with this room if it is so thick, MPa.
pub(super) fn pin_left(base: &Design, diameter: f64, room: f64) -> f64 {
    let work = &base.workmanship;
    let thin = diameter - work.print - 2.0 * work.film_spread;
    let left = |dial: &Dial| {
        let figure = Figure {
            question: Question::PinBears,
            dial: None,
            nominal: bears_as(dial, base, (diameter, 0.0)),
            worst: bears_as(dial, base, (thin, work.thickness)),
        };
        figure.left_at(room)
    };
    base.dials.iter().map(left).fold(f64::INFINITY, f64::min)
}
