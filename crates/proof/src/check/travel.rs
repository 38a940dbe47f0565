//! Slider and pins: at rest, free, captive, the slot lets its pin in, the tab holds.

use super::CheckKind;
use latchwright_geometry::{EPSILON, trig};

use super::{Sums, worst_box, worst_case};
use crate::bounds::DialBounds;
use crate::dial_judge::DialJudge;
use crate::results::Check;
use crate::worst::figure::OfSlider;
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
        OfSlider::MostOverlap,
        free(sums),
    ));
    checks.push(worst_box::of_slider(
        sums,
        OfSlider::Overlap,
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
        ("guide_play", bounds.lift),
        ("pin_place", work.pin_place),
        ("bore_place", work.bore_place),
        ("print", work.print),
        ("film_spread", 2.0 * work.film_spread),
        ("shaft_play", dial.bore.shaft_play),
        ("season", -bounds.apart_y.0),
    ];
    let title = format!("Dial {} turns free of its pin at rest", index + 1);
    let gap = dial.pin.gap;
    Some(worst_case(
        CheckKind::AtRest,
        Some(index),
        title,
        (rest_gap(sums, index)?, 0.0),
        parts,
        |short| {
            format!(
                "widen the gap of dial {} from {gap:.2} to about {:.2} mm",
                index + 1,
                gap + short
            )
        },
    ))
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
        ("reading", swing(work.reading)),
        ("backlash", swing(bounds.backlash_deg)),
        ("print", work.print * 1.5),
        ("film_spread", 2.0 * work.film_spread),
    ];
    parts.extend(bounds.aside_parts);
    let slot = dial.disc.slots.iter().find(|slot| slot.mark == 0)?;
    let title = format!("Slot of dial {} lets its pin in", index + 1);
    Some(worst_case(
        CheckKind::LetsIn,
        Some(index),
        title,
        (margin, 0.0),
        parts,
        |short| {
            if entry.depth <= margin {
                format!(
                    "deepen the slot of dial {} from {:.2} to about {:.2} mm",
                    index + 1,
                    slot.depth,
                    slot.depth + short
                )
            } else {
                format!(
                    "widen the slot of dial {} from {:.2} to about {:.2} mm",
                    index + 1,
                    slot.width,
                    slot.width + 2.0 * short
                )
            }
        },
    ))
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
        ("gap", dial.pin.gap),
        ("lead_in", lead_in),
        ("guide_play", bounds.lift),
        ("pin_place", work.pin_place),
        ("bore_place", work.bore_place),
        ("print", work.print * 1.5),
        ("shaft_play", dial.bore.shaft_play),
        ("season", bounds.apart_y.1),
    ];
    let travel = sums.design.slider.travel;
    let title = format!("Dial {} is held by its pin while open", index + 1);
    Some(worst_case(
        CheckKind::Captive,
        Some(index),
        title,
        (value, 0.0),
        parts,
        |short| {
            format!(
                "lengthen the travel from {travel:.2} to about {:.2} mm",
                travel + short
            )
        },
    ))
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
        ("gap", dial.pin.gap),
        ("guide_play", bounds.tab_lift),
        ("keeper_place", work.keeper_place),
        ("pin_place", work.pin_place),
        ("bore_place", work.bore_place),
        ("print", work.print),
        ("film_spread", 2.0 * work.film_spread),
        ("shaft_play", dial.bore.shaft_play),
        ("season", -bounds.hold_drift),
    ];
    let limit = design.tab.required_hold;
    let engagement = design.tab.engagement;
    let title = format!("Tab stays held when dial {} stops the slider", index + 1);
    let figures = (margin + limit, limit);
    let check = worst_case(
        CheckKind::StaysHeld,
        Some(index),
        title,
        figures,
        parts,
        |short| {
            format!(
                "lengthen the engagement from {engagement:.2} to about {:.2} mm",
                engagement + short
            )
        },
    );
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
    let room = design.slider.travel - design.workmanship.keeper_place;
    let plain = room - design.tab.engagement - turned - tip_drift(sums).1.max(0.0);
    sums.slider_worst
        .get(OfSlider::MostOverlap)
        .map_or(plain, |most| (room + most.bound - EPSILON).max(plain))
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
        ("engagement", design.tab.engagement),
        ("keeper_place", design.workmanship.keeper_place),
        ("guide_play", sums.slider.lift(corner)),
        ("season", tip_drift(sums).1),
    ];
    let travel = design.slider.travel;
    let title = "Tab clears the keeper when the slider is back".to_owned();
    worst_case(
        CheckKind::Free,
        None,
        title,
        (free_margin(sums), 0.0),
        parts,
        |short| {
            format!(
                "lengthen the travel from {travel:.2} to about {:.2} mm",
                travel + short
            )
        },
    )
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
        .get(OfSlider::Overlap)
        .map_or(plain, |least| (least.bound - limit - EPSILON).max(plain))
}

/// The tab is held when the slider is forward.
fn held_at_rest(sums: &Sums<'_>) -> Check {
    let design = sums.design;
    let corner = (design.tab.at - design.slider.guide_at.0).abs() + design.tab.width / 2.0;
    let parts = vec![
        ("keeper_place", design.workmanship.keeper_place),
        ("guide_play", sums.slider.lift(corner)),
        ("season", -tip_drift(sums).0),
    ];
    let (limit, engagement) = (design.tab.required_hold, design.tab.engagement);
    let value = rest_hold_margin(sums) + limit;
    let title = "Tab is under the keeper when the slider is forward".to_owned();
    worst_case(
        CheckKind::HeldAtRest,
        None,
        title,
        (value, limit),
        parts,
        |short| {
            format!(
                "lengthen the engagement from {engagement:.2} to about {:.2} mm",
                engagement + short
            )
        },
    )
}
