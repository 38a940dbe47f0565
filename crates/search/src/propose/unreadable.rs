//! Wishes that are no latch at all, said before anything is searched.

use super::conflict::Nothing;
use super::say::length;
use super::wishes::{Wishes, prepared};
use latchwright_model::Design;
use latchwright_model::fault::{Place, Severity};
use latchwright_model::validate::{MAX_DIALS, faults};

/// Why nothing can be made of these wishes at all: what is given has faults of its own.
pub(super) fn unreadable(wishes: &Wishes) -> Option<Nothing> {
    let mut design = prepared(wishes);
    let mut said = Vec::new();
    let dials = wishes.dials.len();
    if !(1..=MAX_DIALS).contains(&dials) {
        said.push(format!(
            "{dials} dials are asked for; a latch has 1 to {MAX_DIALS}"
        ));
    }
    // what is found anyway is not looked at as it was typed
    let usual = Design::default();
    let first = usual.dials.first().cloned().unwrap_or_default();
    for dial in &mut design.dials {
        (dial.centre, dial.disc.radius) = (first.centre, first.disc.radius);
        dial.disc.slots.clone_from(&first.disc.slots);
        (dial.pin.diameter, dial.pin.gap) = (first.pin.diameter, first.pin.gap);
        dial.disc.below = first.disc.below;
        dial.key.apothem = first.key.apothem;
        dial.key.sides = first.key.sides;
        dial.bore.diameter = first.bore.diameter;
        (dial.pin.height, dial.pin.offset) = (first.pin.height, 0.0);
    }
    design.combination = vec![0; design.dials.len()];
    design.slider.travel = usual.slider.travel;
    design.slider.guide_length = usual.slider.guide_length;
    (design.slider.guide_at, design.slider.below) = (usual.slider.guide_at, usual.slider.below);
    design.tab.engagement = design.tab.required_hold.max(usual.tab.engagement);
    (design.tab.width, design.keeper.edge) = (usual.tab.width, usual.keeper.edge);
    design.plate.rabbet = usual.plate.rabbet;
    let (plate, inside) = (&design.plate, &design.inside);
    let both = [
        ("wide", plate.width, inside.width),
        ("deep", plate.depth, inside.depth),
    ];
    let all_sides = both.iter().any(|(.., room)| *room <= 0.0);
    let say = |mm: f64| length(mm, design.units);
    let solid = both
        .iter()
        .filter(|(_, lid, room)| *lid > 0.0 && *room <= 0.0);
    for (way, lid, room) in solid {
        said.push(format!(
            "a lid {} {way} leaves nothing inside: the sides alone take {}; give a larger one",
            say(*lid),
            say(lid - room)
        ));
    }
    let faults = faults(&design);
    let errors = faults.iter().filter(|fault| {
        // the inside follows from the lid, of which it was said
        fault.severity == Severity::Error && !(all_sides && fault.place == Place::Inside)
    });
    said.extend(errors.map(ToString::to_string));
    for (size, value) in &wishes.pinned {
        if !value.is_finite() || size.get(&prepared(wishes)).is_none() {
            said.push(format!("{} cannot be pinned to {value}", size.name()));
        }
    }
    (!said.is_empty()).then(|| Nothing::unreadable(said.join("; ")))
}
