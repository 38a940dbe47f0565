//! Dials, slots, keys and the combination: relations that a design can get wrong.

use latchwright_geometry::{Point, point::segment_distance, trig};

use super::{error, notice};
use crate::fault::{Fault, Place};
use crate::slot::{MAX_SLOTS, SlotShape};
use crate::{Design, Dial, Labels, Slot};

/// Most dials a latch may have.
pub const MAX_DIALS: usize = 12;

/// Most marks a dial may have.
pub const MAX_POSITIONS: u32 = 360;

/// Dials whose faults are listed one by one; a file with more is wrong as a whole.
const LISTED: usize = 24;

pub(super) fn check(design: &Design, faults: &mut Vec<Fault>) {
    let dials = design.dials.len();
    if dials == 0 || dials > MAX_DIALS {
        faults.push(error(
            "number-of-dials",
            Place::Design,
            format!("the design has {dials} dials; a latch has 1 to {MAX_DIALS}"),
            if dials == 0 {
                "add a dial".to_owned()
            } else {
                format!(
                    "leave out {}; only the first {MAX_DIALS} are looked at",
                    dials - MAX_DIALS
                )
            },
        ));
    }
    for (index, dial) in design.dials.iter().take(LISTED).enumerate() {
        positions(index, dial, faults);
        labels(index, dial, faults);
        slots(index, dial, faults);
    }
    combination(design, faults);
}

fn positions(index: usize, dial: &Dial, faults: &mut Vec<Fault>) {
    let place = Place::Dial(index);
    if !(2..=MAX_POSITIONS).contains(&dial.positions) {
        faults.push(error(
            "number-of-positions",
            place,
            format!(
                "{} positions; a dial has 2 to {MAX_POSITIONS}",
                dial.positions
            ),
            format!("give 2 to {MAX_POSITIONS} positions"),
        ));
    }
    if !(3..=64).contains(&dial.key.sides) {
        faults.push(error(
            "key-sides",
            place,
            format!(
                "a key post with {} sides; a post has 3 to 64",
                dial.key.sides
            ),
            "give the post 3 or 4 sides".to_owned(),
        ));
    }
}

fn labels(index: usize, dial: &Dial, faults: &mut Vec<Fault>) {
    let (Labels::Words(words) | Labels::Pictures(words)) = &dial.labels else {
        return;
    };
    if words.len() != dial.positions as usize {
        faults.push(notice(
            "number-of-labels",
            Place::Dial(index),
            format!("{} labels for {} positions", words.len(), dial.positions),
            "give one label a position; a mark without one shows its number".to_owned(),
        ));
    }
    let mut sorted: Vec<&String> = words.iter().collect();
    sorted.sort();
    let twice = sorted
        .iter()
        .zip(sorted.iter().skip(1))
        .find(|(one, next)| one == next);
    if let Some((twice, _)) = twice {
        faults.push(notice(
            "label-twice",
            Place::Dial(index),
            format!("the label \"{twice}\" stands at more than one mark"),
            "give every mark a label of its own".to_owned(),
        ));
    }
}

fn slots(index: usize, dial: &Dial, faults: &mut Vec<Fault>) {
    let slots = &dial.disc.slots;
    if slots.len() > MAX_SLOTS {
        faults.push(error(
            "number-of-slots",
            Place::Dial(index),
            format!(
                "{} slots in one disc; at most {MAX_SLOTS} are looked at",
                slots.len()
            ),
            format!("leave out {}", slots.len() - MAX_SLOTS),
        ));
    }
    if !slots.iter().any(|slot| slot.mark == 0) {
        faults.push(error(
            "no-true-slot",
            Place::Dial(index),
            "no slot at mark 0: nothing lets the pin in at the combination".to_owned(),
            "give the disc a slot with `mark: 0`".to_owned(),
        ));
    }
    for (number, slot) in slots.iter().take(MAX_SLOTS).enumerate() {
        one_slot(Place::Slot(index, number), dial, slot, faults);
    }
    meeting_slots(index, dial, faults);
}

fn one_slot(place: Place, dial: &Dial, slot: &Slot, faults: &mut Vec<Fault>) {
    if slot.mark < 0 || slot.mark >= i64::from(dial.positions) {
        faults.push(error(
            "slot-mark-out-of-range",
            place,
            format!(
                "slot at mark {}; marks run from 0 to {}",
                slot.mark,
                i64::from(dial.positions) - 1
            ),
            format!("give a mark from 0 to {}", i64::from(dial.positions) - 1),
        ));
    }
    let across = 2.0 * dial.disc.radius;
    if slot.width >= across {
        faults.push(error(
            "slot-wider-than-disc",
            place,
            format!(
                "a slot {:.2} mm wide in a disc {across:.2} mm across",
                slot.width
            ),
            format!("make the slot narrower than {across:.2} mm or the disc larger"),
        ));
        return;
    }
    if slot.width <= dial.pin.diameter {
        faults.push(notice(
            "slot-too-narrow",
            place,
            format!(
                "the pin needs {:.2} mm, the slot is {:.2} mm wide",
                dial.pin.diameter, slot.width
            ),
            format!(
                "widen the slot by more than {:.2} mm",
                dial.pin.diameter - slot.width
            ),
        ));
    }
    let shape = SlotShape::new(dial.disc.radius, slot);
    let wall = if shape.shallow {
        0.0
    } else {
        shape.rim_top - shape.floor_centre
    };
    if slot.lead_in > wall && !shape.through {
        faults.push(error(
            "lead-in-longer-than-wall",
            place,
            format!(
                "a lead-in of {:.2} mm on a wall of {wall:.2} mm",
                slot.lead_in
            ),
            format!("make the lead-in at most {wall:.2} mm or the slot deeper"),
        ));
    }
}

/// Slots whose walls meet inside the disc: what is left between them is no wall.
fn meeting_slots(index: usize, dial: &Dial, faults: &mut Vec<Fault>) {
    let radius = dial.disc.radius;
    let spine = |slot: &Slot| {
        let along = Point::at_angle(trig::radians(slot.mark as f64 * dial.step_deg()));
        let floor = (radius - slot.depth + slot.width / 2.0)
            .min(radius)
            .max(-radius);
        (along * floor, along * radius)
    };
    let slots: Vec<&Slot> = dial.disc.slots.iter().take(MAX_SLOTS).collect();
    for (number, slot) in slots.iter().enumerate() {
        for (before, other) in slots.iter().take(number).enumerate() {
            let ((a, b), (c, d)) = (spine(slot), spine(other));
            let wall = segment_distance(a, b, c, d)
                - f64::midpoint(slot.width, other.width)
                - (slot.lead_in + other.lead_in);
            if wall.is_finite() && wall <= 0.0 {
                faults.push(error(
                    "slots-meet",
                    Place::Slot(index, number),
                    format!(
                        "runs into slot {} of the same disc: {:.2} mm too little between them",
                        before + 1,
                        -wall
                    ),
                    "move it to another mark, or make the slots narrower or shallower".to_owned(),
                ));
                return;
            }
        }
    }
}

fn combination(design: &Design, faults: &mut Vec<Fault>) {
    let (marks, dials) = (design.combination.len(), design.dials.len());
    if marks != dials {
        faults.push(error(
            "combination-length",
            Place::Combination,
            format!("{marks} marks for {dials} dials"),
            "give one mark a dial".to_owned(),
        ));
    }
    for (index, (mark, dial)) in design
        .combination
        .iter()
        .zip(&design.dials)
        .take(LISTED)
        .enumerate()
    {
        if *mark >= dial.positions {
            faults.push(error(
                "combination-mark-out-of-range",
                Place::Dial(index),
                format!(
                    "the combination stands at mark {mark}; marks run from 0 to {}",
                    dial.positions.saturating_sub(1)
                ),
                format!("give a mark from 0 to {}", dial.positions.saturating_sub(1)),
            ));
        }
    }
}
