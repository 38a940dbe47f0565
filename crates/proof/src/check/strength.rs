//! Pin and tab under a hard pull with one hand.

use super::CheckKind;
use super::{Sums, stress};
use crate::bounds::DialBounds;
use crate::results::Check;
use crate::strength::{
    Bears, peg_bending, peg_diameter, peg_lever, peg_shear, tongue_bending, tongue_shear,
    tongue_thickness,
};
use latchwright_model::Dial;

pub(super) fn checks(sums: &Sums<'_>) -> Vec<Check> {
    let mut checks: Vec<Check> = sums
        .each()
        .map(|(index, dial, bounds)| pin(sums, index, dial, bounds))
        .collect();
    checks.push(tab(sums));
    checks
}

/// Which of the two uses up more of what is borne.
fn nearer(bending: (f64, f64), shear: (f64, f64)) -> (f64, f64) {
    // stress over what is borne, without dividing
    if shear.0 * bending.1 > bending.0 * shear.1 {
        shear
    } else {
        bending
    }
}

/// One pin takes the whole pull, at its free end.
fn pin(sums: &Sums<'_>, index: usize, dial: &Dial, bounds: &DialBounds) -> Check {
    let (force, free) = (sums.design.slider.pull, dial.pin.free);
    let error = sums.design.workmanship.thickness;
    let diameter = 2.0 * bounds.pin.lo.max(1e-3);
    let bears = Bears::of_pin(dial.pin.make);
    let bending = peg_bending(force, free + error, diameter);
    let shear = peg_shear(force, diameter);
    let (found, borne) = nearer((bending, bears.bending), (shear, bears.shear));
    stress(
        (CheckKind::PinStrength, Some(index)),
        format!("Pin of dial {} bears a pull of {force:.0} N", index + 1),
        (borne, found),
        vec![("bending", bending), ("shear", shear)],
        || {
            let lever = peg_lever(force, bears.bending, diameter) - error;
            // down, so that what is told bears it
            let lever = (lever * 100.0).floor() / 100.0;
            if shear <= bears.shear && lever >= 0.0 {
                format!(
                    "let the finger hold more of the pin of dial {}, so that at most {lever:.2} mm \
                     stand free, not {free:.2} mm, or set in a steel rod",
                    index + 1
                )
            } else {
                let thicker =
                    peg_diameter(force, free + error, bears) + dial.pin.diameter - diameter;
                format!(
                    "give dial {} a pin of at least {:.2} mm, not {:.2} mm, with slots to suit, or a \
                     steel rod",
                    index + 1,
                    (thicker * 100.0).ceil() / 100.0,
                    dial.pin.diameter
                )
            }
        },
    )
}

/// A hand pulls the locked lid up: the keeper presses on the tab at its edge, and the tab bends
/// where the guide's front point leaves off.
fn tab(sums: &Sums<'_>) -> Check {
    let design = sums.design;
    let (slider, tab) = (&design.slider, &design.tab);
    let creeps = sums
        .proofs
        .iter()
        .flat_map(|dial| &dial.marks)
        .filter_map(|mark| mark.creep);
    // the guide's points move with the slider, away from the keeper
    let creep = creeps.fold(0.0, f64::max);
    let root = slider.guide_at.1 - slider.guide_length / 2.0;
    let lever = (root - design.keeper.edge + creep + design.workmanship.keeper_place).max(0.0);
    let error = design.workmanship.thickness;
    let thickness = (slider.thickness - error).max(1e-3);
    let bears = Bears::of_tab(&slider.material);
    let bending = tongue_bending(slider.pull, lever, tab.width, thickness);
    let shear = tongue_shear(slider.pull, tab.width, thickness);
    let (found, borne) = nearer((bending, bears.bending), (shear, bears.shear));
    stress(
        (CheckKind::TabStrength, None),
        format!("Tab bears a pull of {:.0} N on the lid", slider.pull),
        (borne, found),
        vec![("bending", bending), ("shear", shear)],
        || {
            let least = tongue_thickness(slider.pull, lever, tab.width, bears) + error;
            format!(
                "thicken the slider from {:.2} to at least {:.2} mm, run its grain from front to \
                 hinge, or bring the guide's front end nearer to the keeper",
                slider.thickness,
                (least * 100.0).ceil() / 100.0
            )
        },
    )
}
