//! Wishes that are no latch at all, said before anything is searched.

use super::why::Nothing;
use super::wishes::{Wishes, prepared};
use latchwright_model::fault::{Fault, Place};
use latchwright_model::validate::{MAX_DIALS, faults};
use latchwright_model::{Design, Size};

/// Why wishes are no latch at all. Lengths are mm.
#[derive(Debug, Clone, PartialEq)]
pub enum Unreadable {
    /// No dial is asked for, or more than a latch may have.
    NumberOfDials(usize),
    /// A lid of which the box's sides leave nothing inside.
    NothingInside {
        /// Whether the lid's width is meant, or else its depth.
        wide: bool,
        /// Width or depth of the lid.
        lid: f64,
        /// What the sides take of it.
        sides: f64,
    },
    /// What is given has a fault of its own.
    Fault(Fault),
    /// A size that is not there, or a value that is none.
    CannotPin {
        /// The size.
        size: Size,
        /// What it was to be kept at.
        value: f64,
    },
}

/// Why nothing can be made of these wishes at all: what is given has faults of its own.
pub(super) fn unreadable(wishes: &Wishes) -> Option<Nothing> {
    let mut design = prepared(wishes);
    let mut found = Vec::new();
    let dials = wishes.dials.len();
    if !(1..=MAX_DIALS).contains(&dials) {
        found.push(Unreadable::NumberOfDials(dials));
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
        (true, plate.width, inside.width),
        (false, plate.depth, inside.depth),
    ];
    let all_sides = both.iter().any(|(.., room)| *room <= 0.0);
    let solid = both
        .iter()
        .filter(|(_, lid, room)| *lid > 0.0 && *room <= 0.0);
    found.extend(solid.map(|(wide, lid, room)| Unreadable::NothingInside {
        wide: *wide,
        lid: *lid,
        sides: lid - room,
    }));
    let errors = faults(&design).into_iter().filter(|fault| {
        // the inside follows from the lid, of which it was said
        fault.is_error() && !(all_sides && fault.place == Place::Inside)
    });
    found.extend(errors.map(Unreadable::Fault));
    for (size, value) in &wishes.pinned {
        if !value.is_finite() || size.get(&prepared(wishes)).is_none() {
            let (size, value) = (*size, *value);
            found.push(Unreadable::CannotPin { size, value });
        }
    }
    (!found.is_empty()).then(|| Nothing {
        wishes: wishes.clone(),
        conflict: Vec::new(),
        besides: Vec::new(),
        unreadable: found,
        nearest: Vec::new(),
    })
}
