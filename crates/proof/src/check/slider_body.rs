//! The slider's wood: its fingers keep clear of one another, its bar has room, the finger knob stands on it and clear of the keeper, and the tab clears the keeper as the lid
//! swings up.

use itertools::Itertools;
use latchwright_geometry::{Point, trig};

use super::advice::Estimate;
use super::spacing::WOOD_LEFT;
use super::travel::longer_travel;
use super::{About, Advice, CheckKind, Contributor, Draft, Sums, free_margin};
use crate::results::Check;
use crate::slider_body::{FINGERS_APART, SliderBody, finger_width, swings_forward};
use latchwright_model::{Design, Dial};

/// Wood that should stay on the slider around the finger knob's shank, mm.
///
/// # Source
/// Common practice, no source.
pub const AROUND_SHANK: f64 = 3.0;

pub(super) fn checks(sums: &Sums<'_>, body: &SliderBody) -> Vec<Check> {
    let design = sums.design;
    let mut checks = Vec::new();
    checks.extend(fingers_apart(design));
    checks.push(bar_has_room(design, body));
    checks.push(shank_on_slider(design, body));
    checks.push(shank_to_keeper(design));
    checks.push(swings_clear(sums));
    checks
}

/// What lies between the fingers of two dials along x, mm.
pub fn fingers_clear(one: &Dial, other: &Dial) -> f64 {
    let apart = (one.pin_at().0 - other.pin_at().0).abs();
    apart - f64::midpoint(finger_width(&one.pin), finger_width(&other.pin))
}

/// Two fingers that would run into one another cannot both be made.
fn fingers_apart(design: &Design) -> Option<Check> {
    let pairs = design.dials.iter().enumerate().array_combinations();
    let all = pairs.map(|[(i, one), (j, other)]| (i, j, fingers_clear(one, other)));
    let (i, j, clear) = all.min_by(|one, other| one.2.total_cmp(&other.2))?;
    let draft = Draft {
        kind: CheckKind::FingerToFinger,
        about: About::Pair(i, j),
        value: clear,
        limit: FINGERS_APART,
        decided_by: Vec::new(),
    };
    Some(draft.judged(|short| Advice::Change(Estimate::ApartAlongFront(short))))
}

/// What the bar has along y beyond its depth, mm, its marking out counted.
pub fn bar_room(design: &Design, body: &SliderBody) -> f64 {
    -body.bar_short(design) - design.workmanship.pin_place
}

/// Between the discs, when the slider is back, and the front of the box there is room for the bar.
fn bar_has_room(design: &Design, body: &SliderBody) -> Check {
    let draft = Draft {
        kind: CheckKind::BarRoom,
        about: About::Latch,
        value: bar_room(design, body),
        limit: 0.0,
        decided_by: vec![(Contributor::PinPlace, design.workmanship.pin_place)],
    };
    draft.judged(|short| Advice::Change(Estimate::DialsToHingeOrLessTravel(short)))
}

/// Wood on the slider around the finger knob's shank, mm.
pub fn around_shank(design: &Design, body: &SliderBody) -> f64 {
    let slider = &design.slider;
    let at = Point::new(slider.pull_at, slider.guide_at.1);
    body.wood_around(at, slider.shank / 2.0) - design.workmanship.pin_place
}

/// The finger knob's shank goes into the slider: there has to be some.
fn shank_on_slider(design: &Design, body: &SliderBody) -> Check {
    let draft = Draft {
        kind: CheckKind::FingerKnobSeat,
        about: About::Latch,
        value: around_shank(design, body),
        limit: AROUND_SHANK,
        decided_by: vec![(Contributor::PinPlace, design.workmanship.pin_place)],
    };
    draft.judged(|short| Advice::Change(Estimate::FingerKnobOverWood(short)))
}

/// Wood between the finger knob's slot in the plate and the rabbet in which the keeper lies, mm.
pub fn slot_to_rabbet(design: &Design) -> f64 {
    let (slider, keeper) = (&design.slider, &design.keeper);
    let aside = (slider.pull_at - design.tab.at).abs() - keeper.width / 2.0;
    let behind = slider.guide_at.1 - keeper.edge;
    let apart = if aside > 0.0 && behind > 0.0 {
        trig::hypot(aside, behind)
    } else {
        aside.max(behind)
    };
    apart - slider.shank / 2.0 - slider.guide_play - design.workmanship.keeper_place
}

/// The finger knob's shank must not run against the keeper.
fn shank_to_keeper(design: &Design) -> Check {
    let parts = vec![
        (Contributor::GuidePlay, design.slider.guide_play),
        (Contributor::KeeperPlace, design.workmanship.keeper_place),
    ];
    let draft = Draft {
        kind: CheckKind::GuideSlotToKeeper,
        about: About::Latch,
        value: slot_to_rabbet(design),
        limit: WOOD_LEFT,
        decided_by: parts,
    };
    draft.judged(|short| Advice::Change(Estimate::GuideToHinge(short)))
}

/// What the tab clears the keeper by as the lid swings up, worst case, mm.
pub fn swing_margin(sums: &Sums<'_>) -> f64 {
    free_margin(sums) - swings_forward(sums.design, sums.design.keeper.edge)
}

/// The tab hangs below the hinge, and so comes forward again as the lid swings up.
fn swings_clear(sums: &Sums<'_>) -> Check {
    let design = sums.design;
    let swing = swings_forward(design, design.keeper.edge);
    let travel = design.slider.travel;
    let draft = Draft {
        kind: CheckKind::SwingsClear,
        about: About::Latch,
        value: swing_margin(sums),
        limit: 0.0,
        decided_by: vec![
            (Contributor::Swing, swing),
            (Contributor::Engagement, design.tab.engagement),
            (Contributor::KeeperPlace, design.workmanship.keeper_place),
        ],
    };
    draft.judged(|short| longer_travel(travel, short))
}
