//! Pin and tab under a hard pull with one hand.

use super::advice::{Estimate, FromTo};
use super::{About, Advice, CheckKind, Contributor, Draft, Sums};
use crate::bounds::DialBounds;
use crate::results::Check;
use crate::strength::{
    Bears, peg_bending, peg_diameter, peg_lever, peg_shear, tongue_bending, tongue_shear,
    tongue_thickness,
};
use latchwright_model::{Design, Dial};

pub(super) fn checks(sums: &Sums<'_>) -> Vec<Check> {
    let mut checks: Vec<Check> = sums
        .each()
        .map(|(index, dial, bounds)| pin(sums, index, dial, bounds))
        .collect();
    checks.push(tab(sums));
    checks
}

/// A part in one way of breaking, MPa.
#[derive(Clone, Copy)]
struct Load {
    put_to: f64,
    borne: f64,
}

/// Which of the two uses up more of what is borne.
fn nearer(bending: Load, shear: Load) -> Load {
    // stress over what is borne, without dividing
    if shear.put_to * bending.borne > bending.put_to * shear.borne {
        shear
    } else {
        bending
    }
}

/// What a part is put to and what it bears, MPa.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stress {
    /// In bending.
    bending: f64,
    /// In shear.
    shear: f64,
    /// Of bending or shear, whichever uses up more: what it is put to.
    found: f64,
    /// What is borne of the same.
    borne: f64,
}

impl Stress {
    fn of(bending: f64, shear: f64, bears: Bears) -> Self {
        let load = |put_to, borne| Load { put_to, borne };
        let nearer = nearer(load(bending, bears.bending), load(shear, bears.shear));
        Self {
            bending,
            shear,
            found: nearer.put_to,
            borne: nearer.borne,
        }
    }

    /// What is borne beyond what it is put to, MPa.
    pub fn margin(self) -> f64 {
        self.borne - self.found
    }

    fn draft(self, kind: CheckKind, about: About) -> Draft {
        Draft {
            kind,
            about,
            value: self.borne,
            limit: self.found,
            decided_by: vec![
                (Contributor::Bending, self.bending),
                (Contributor::Shear, self.shear),
            ],
        }
    }
}

/// The least diameter of a pin, mm; thinner ones are taken to have it, so that nothing is divided by
/// nought.
const THINNEST: f64 = 1e-3;

/// The stress in a pin that takes the whole pull at its free end.
pub fn pin_stress(design: &Design, dial: &Dial, bounds: &DialBounds) -> Stress {
    let force = design.slider.pull;
    let lever = dial.pin.free + design.workmanship.thickness;
    let diameter = 2.0 * bounds.pin.lo.max(THINNEST);
    Stress::of(
        peg_bending(force, lever, diameter),
        peg_shear(force, diameter),
        Bears::of_pin(dial.pin.make),
    )
}

/// One pin takes the whole pull, at its free end.
fn pin(sums: &Sums<'_>, index: usize, dial: &Dial, bounds: &DialBounds) -> Check {
    let (force, free) = (sums.design.slider.pull, dial.pin.free);
    let error = sums.design.workmanship.thickness;
    let diameter = 2.0 * bounds.pin.lo.max(THINNEST);
    let bears = Bears::of_pin(dial.pin.make);
    let stress = pin_stress(sums.design, dial, bounds);
    let draft = stress.draft(CheckKind::PinStrength, About::Dial(index));
    draft.judged(|_| {
        let lever = peg_lever(force, bears.bending, diameter) - error;
        // down, so that what is told bears it
        let lever = (lever * 100.0).floor() / 100.0;
        Advice::Change(if stress.shear <= bears.shear && lever >= 0.0 {
            Estimate::ShorterFreePin(FromTo {
                from: free,
                to: lever,
            })
        } else {
            let thicker = peg_diameter(force, free + error, bears) + dial.pin.diameter - diameter;
            Estimate::ThickerPin(FromTo {
                from: dial.pin.diameter,
                to: (thicker * 100.0).ceil() / 100.0,
            })
        })
    })
}

/// How far the tab stands out from where the guide's front point leaves off to the keeper's edge, when
/// the slider has crept so far, worst case, mm.
fn tab_lever(design: &Design, creep: f64) -> f64 {
    // the guide's points move with the slider, away from the keeper
    let root = design.slider.guide_at.1 - design.slider.guide_length / 2.0;
    (root - design.keeper.edge + creep + design.workmanship.keeper_place).max(0.0)
}

/// The stress in the tab under a hard pull on the lid, the slider crept so far, mm.
pub fn tab_stress(design: &Design, creep: f64) -> Stress {
    let (slider, tab) = (&design.slider, &design.tab);
    let lever = tab_lever(design, creep);
    let thickness = (slider.thickness - design.workmanship.thickness).max(THINNEST);
    Stress::of(
        tongue_bending(slider.pull, lever, tab.width, thickness),
        tongue_shear(slider.pull, tab.width, thickness),
        Bears::of_tab(&slider.material),
    )
}

/// A hand pulls the locked lid up: the keeper presses on the tab at its edge, and the tab bends
/// where the guide's front point leaves off.
fn tab(sums: &Sums<'_>) -> Check {
    let design = sums.design;
    let slider = &design.slider;
    let creeps = sums
        .proofs
        .iter()
        .flat_map(|dial| &dial.marks)
        .filter_map(|mark| mark.creep);
    let creep = creeps.fold(0.0, f64::max);
    let draft = tab_stress(design, creep).draft(CheckKind::TabStrength, About::Latch);
    draft.judged(|_| {
        let bears = Bears::of_tab(&slider.material);
        let lever = tab_lever(design, creep);
        let least = tongue_thickness(slider.pull, lever, design.tab.width, bears)
            + design.workmanship.thickness;
        Advice::Change(Estimate::ThickerSlider(FromTo {
            from: slider.thickness,
            to: (least * 100.0).ceil() / 100.0,
        }))
    })
}
