//! Slider and pins: at rest, free, captive, the slot lets its pin in, the tab holds.

use latchwright_geometry::{EPSILON, trig};

use super::advice::{Estimate, FromTo};
use super::{About, Advice, CheckKind, Contributor, Draft, Sums, worst_box};
use crate::bounds::DialBounds;
use crate::dial_judge::DialJudge;
use crate::results::Check;
use crate::worst::figure::SliderFigureKind;
use latchwright_model::slot::slot_turn_deg;
use latchwright_model::slot::{SlotShape, mouths};
use latchwright_model::{Dial, Slot};

pub(super) fn checks(sums: &Sums<'_>) -> Vec<Check> {
    let mut checks = Vec::new();
    for index in 0..sums.dials.len() {
        let worst = |check| worst_box::at_rest(sums, index, check);
        checks.extend(at_rest(sums, index).map(worst));
        let worst = |check| worst_box::lets_in(sums, index, check);
        checks.extend(lets_in(sums, index).map(worst));
        let worst = |check| worst_box::captive(sums, index, check);
        checks.extend(captive(sums, index).map(worst));
        checks.extend(stays_held(sums, index));
    }
    checks.push(worst_box::of_slider(
        sums,
        SliderFigureKind::MostOverlap,
        free(sums),
    ));
    checks.push(worst_box::of_slider(
        sums,
        SliderFigureKind::Overlap,
        held_at_rest(sums),
    ));
    checks
}

/// Least clear distance between pin and rim with the slider forward, worst case, mm.
pub fn rest_gap(sums: &Sums<'_>, index: usize) -> Option<f64> {
    match sums.exact(index) {
        Some(exact) => Some(exact.rest_gap()),
        None => sums.dials.get(index).map(DialBounds::rest_gap),
    }
}

/// The dial turns free of its pin at u = 0.
fn at_rest(sums: &Sums<'_>, index: usize) -> Option<Check> {
    let (_, dial, bounds) = sums.each().nth(index)?;
    let work = &sums.design.workmanship;
    let parts = vec![
        (Contributor::GuidePlay, bounds.lift),
        (Contributor::PinPlace, work.pin_place),
        (Contributor::BorePlace, work.bore_place),
        (Contributor::Print, work.print),
        (Contributor::FilmSpread, 2.0 * work.film_spread),
        (Contributor::ShaftPlay, dial.bore.shaft_play),
        (Contributor::Season, -bounds.apart_y.0),
    ];
    let gap = dial.pin.gap;
    let draft = Draft {
        kind: CheckKind::AtRest,
        about: About::Dial(index),
        value: rest_gap(sums, index)?,
        limit: 0.0,
        decided_by: parts,
    };
    Some(draft.judged(|short| {
        Advice::Change(Estimate::WidenGap(FromTo {
            from: gap,
            to: gap + short,
        }))
    }))
}

/// The slot at the digit lets its pin in for the whole travel.
pub(super) fn lets_in(sums: &Sums<'_>, index: usize) -> Option<Check> {
    let (_, dial, bounds) = sums.each().nth(index)?;
    let entry = match sums.exact(index) {
        Some(exact) => exact.entry_at_digit()?,
        None => DialJudge::new(sums.design, dial, *bounds).entry_at_digit()?,
    };
    let work = &sums.design.workmanship;
    let margin = entry.margin();
    let swing = |degrees: f64| bounds.rim.hi * trig::sin(trig::radians(degrees.min(90.0)));
    let mut parts = vec![
        (Contributor::Reading, swing(work.reading)),
        (Contributor::Backlash, swing(bounds.backlash_deg)),
        (Contributor::Print, work.print * 1.5),
        (Contributor::FilmSpread, 2.0 * work.film_spread),
    ];
    parts.extend(super::contributor::aside(&bounds.aside_parts));
    let slot = dial.disc.slots.iter().find(|slot| slot.mark == 0)?;
    let draft = Draft {
        kind: CheckKind::LetsIn,
        about: About::Dial(index),
        value: margin,
        limit: 0.0,
        decided_by: parts,
    };
    Some(draft.judged(|short| {
        Advice::Change(if entry.depth <= margin {
            Estimate::DeepenSlot(FromTo {
                from: slot.depth,
                to: slot.depth + short,
            })
        } else {
            Estimate::WidenSlot(FromTo {
                from: slot.width,
                to: slot.width + 2.0 * short,
            })
        })
    }))
}

/// How much deeper than the top of its slot's wall the pin's middle stands at full travel, mm,
/// worst case; `None` without a true slot.
pub fn captive_margin(sums: &Sums<'_>, index: usize) -> Option<f64> {
    let (_, dial, bounds) = sums.each().nth(index)?;
    let wall_top = least_wall_top(dial, bounds.rim.lo, sums)?;
    let middle =
        bounds.below + bounds.radial + bounds.apart_y.1 + bounds.lift - sums.design.slider.travel;
    // a slot that is turned towards a pin aside of it is longer than it is high
    let plain = wall_top - trig::hypot(middle.max(0.0), bounds.aside);
    let exact = sums.exact(index).filter(|exact| !exact.pin.past_middle);
    Some(exact.map_or(plain, |exact| {
        let furthest = dial.bore.shaft_play - exact.pin.far_at_end.bound;
        wall_top - furthest - EPSILON
    }))
}

/// Height above the dial's centre at which the true slot's wall ends, in the worst box, mm.
fn least_wall_top(dial: &Dial, rim: f64, sums: &Sums<'_>) -> Option<f64> {
    let work = &sums.design.workmanship;
    let mouth = mouths(dial, 0.0).find(|mouth| mouth.turn_deg == 0.0)?;
    let lead_in = if mouth.lead_in > 0.0 {
        mouth.lead_in + work.print
    } else {
        0.0
    };
    let widest = Slot {
        mark: 0,
        width: mouth.width + work.print + 2.0 * work.film_spread,
        depth: mouth.depth,
        lead_in: 0.0,
    };
    Some(SlotShape::new(rim, &widest).rim_top - lead_in)
}

/// At u = travel the pin sits between the walls of its slot, so that the dial cannot turn.
fn captive(sums: &Sums<'_>, index: usize) -> Option<Check> {
    let (_, dial, bounds) = sums.each().nth(index)?;
    let work = &sums.design.workmanship;
    let value = captive_margin(sums, index)?;
    let lead_in = mouths(dial, 0.0)
        .find(|mouth| mouth.turn_deg == 0.0)?
        .lead_in;
    let parts = vec![
        (Contributor::Gap, dial.pin.gap),
        (Contributor::LeadIn, lead_in),
        (Contributor::GuidePlay, bounds.lift),
        (Contributor::PinPlace, work.pin_place),
        (Contributor::BorePlace, work.bore_place),
        (Contributor::Print, work.print * 1.5),
        (Contributor::ShaftPlay, dial.bore.shaft_play),
        (Contributor::Season, bounds.apart_y.1),
    ];
    let travel = sums.design.slider.travel;
    let draft = Draft {
        kind: CheckKind::Captive,
        about: About::Dial(index),
        value,
        limit: 0.0,
        decided_by: parts,
    };
    Some(draft.judged(|short| longer_travel(travel, short)))
}

/// The worst stop of this dial leaves the tab held.
fn stays_held(sums: &Sums<'_>, index: usize) -> Option<Check> {
    let proof = sums.proofs.get(index)?;
    // at its digit a dial is there to let its pin in, and `lets-in` says whether it does
    let (mark, margin) = (0_u32..)
        .zip(&proof.marks)
        .filter(|(mark, _)| *mark != proof.digit)
        .filter_map(|(mark, found)| Some((mark, found.hold_margin?)))
        .min_by(|one, other| one.1.total_cmp(&other.1))?;
    held_at(sums, index, mark, margin)
}

/// The same at one mark, whose margin is known.
pub(super) fn held_at(sums: &Sums<'_>, index: usize, mark: u32, margin: f64) -> Option<Check> {
    let (_, dial, bounds) = sums.each().nth(index)?;
    let design = sums.design;
    let turn = slot_turn_deg(dial, sums.proofs.get(index)?.digit, mark);
    let work = &design.workmanship;
    let parts = vec![
        (Contributor::Gap, dial.pin.gap),
        (Contributor::GuidePlay, bounds.tab_lift),
        (Contributor::KeeperPlace, work.keeper_place),
        (Contributor::PinPlace, work.pin_place),
        (Contributor::BorePlace, work.bore_place),
        (Contributor::Print, work.print),
        (Contributor::FilmSpread, 2.0 * work.film_spread),
        (Contributor::ShaftPlay, dial.bore.shaft_play),
        (Contributor::Season, -bounds.hold_drift),
    ];
    let limit = design.tab.required_hold;
    let engagement = design.tab.engagement;
    let draft = Draft {
        kind: CheckKind::StaysHeld,
        about: About::Dial(index),
        value: margin + limit,
        limit,
        decided_by: parts,
    };
    let check = draft.judged(|short| longer_engagement(engagement, short));
    Some(worst_box::stays_held(sums, index, turn, check))
}

/// What the tab clears the keeper by at u = travel, at its last corner, worst case, mm.
pub fn free_margin(sums: &Sums<'_>) -> f64 {
    let design = sums.design;
    let (guide_x, guide_y) = design.slider.guide_at;
    let corner = (design.tab.at - guide_x).abs() + design.tab.width / 2.0;
    let tip = design.keeper.edge - design.tab.engagement;
    let turned = (sums.slider.lift(corner) + (tip - guide_y).abs() * sums.slider.shorten)
        * sums.slider.swell;
    let travel_left = design.slider.travel - design.workmanship.keeper_place;
    let plain = travel_left - design.tab.engagement - turned - tip_drift(sums).1.max(0.0);
    sums.slider_worst
        .get(SliderFigureKind::MostOverlap)
        .map_or(plain, |most| {
            (travel_left + most.bound - EPSILON).max(plain)
        })
}

/// Season: least and largest growth of what the tab has under the keeper with the slider at one of
/// its own stops, mm.
fn tip_drift(sums: &Sums<'_>) -> (f64, f64) {
    let design = sums.design;
    let guide_y = design.slider.guide_at.1;
    let tip = design.keeper.edge - design.tab.engagement;
    sums.drift
        .y
        .apart(design.keeper.edge - guide_y, tip - guide_y)
}

/// The tab has left the keeper when the slider is back.
fn free(sums: &Sums<'_>) -> Check {
    let design = sums.design;
    let corner = (design.tab.at - design.slider.guide_at.0).abs() + design.tab.width / 2.0;
    let parts = vec![
        (Contributor::Engagement, design.tab.engagement),
        (Contributor::KeeperPlace, design.workmanship.keeper_place),
        (Contributor::GuidePlay, sums.slider.lift(corner)),
        (Contributor::Season, tip_drift(sums).1),
    ];
    let travel = design.slider.travel;
    let draft = Draft {
        kind: CheckKind::Free,
        about: About::Latch,
        value: free_margin(sums),
        limit: 0.0,
        decided_by: parts,
    };
    draft.judged(|short| longer_travel(travel, short))
}

/// Tab under the keeper at u = 0 beyond what is required, worst case, mm.
pub fn rest_hold_margin(sums: &Sums<'_>) -> f64 {
    let design = sums.design;
    let (guide_x, guide_y) = design.slider.guide_at;
    let corner = (design.tab.at - guide_x).abs() + design.tab.width / 2.0;
    let tip = design.keeper.edge - design.tab.engagement;
    let turned = (sums.slider.lift(corner) + (tip - guide_y).abs() * sums.slider.shorten)
        * sums.slider.swell;
    let limit = design.workmanship.keeper_place + design.tab.required_hold;
    let plain = design.tab.engagement - limit - turned + tip_drift(sums).0.min(0.0);
    sums.slider_worst
        .get(SliderFigureKind::Overlap)
        .map_or(plain, |least| (least.bound - limit - EPSILON).max(plain))
}

/// The tab is held when the slider is forward.
fn held_at_rest(sums: &Sums<'_>) -> Check {
    let design = sums.design;
    let corner = (design.tab.at - design.slider.guide_at.0).abs() + design.tab.width / 2.0;
    let parts = vec![
        (Contributor::KeeperPlace, design.workmanship.keeper_place),
        (Contributor::GuidePlay, sums.slider.lift(corner)),
        (Contributor::Season, -tip_drift(sums).0),
    ];
    let (limit, engagement) = (design.tab.required_hold, design.tab.engagement);
    let draft = Draft {
        kind: CheckKind::HeldAtRest,
        about: About::Latch,
        value: rest_hold_margin(sums) + limit,
        limit,
        decided_by: parts,
    };
    draft.judged(|short| longer_engagement(engagement, short))
}

/// The travel, mm, lengthened by what is short.
pub(super) fn longer_travel(travel: f64, short: f64) -> Advice {
    Advice::Change(Estimate::LengthenTravel(FromTo {
        from: travel,
        to: travel + short,
    }))
}

fn longer_engagement(engagement: f64, short: f64) -> Advice {
    Advice::Change(Estimate::LengthenEngagement(FromTo {
        from: engagement,
        to: engagement + short,
    }))
}
