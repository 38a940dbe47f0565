//! Dials, slots, keys and the combination: relations that a design can get wrong.

use latchwright_geometry::{Point, point::segment_distance, trig};

use crate::fault::{Fault, FaultKind, Place};
use crate::slot::{MAX_SLOTS, SlotShape};
use crate::{Design, Dial, Labels, Slot};

/// Most dials a latch may have.
pub const MAX_DIALS: usize = 12;

/// Most marks a dial may have.
pub const MAX_POSITIONS: u32 = 360;

/// Fewest and most sides a key post may have.
pub const KEY_SIDES: (u32, u32) = (3, 64);

/// Dials whose faults are listed one by one; a file with more is wrong as a whole.
const LISTED: usize = 24;

pub(super) fn check(design: &Design, faults: &mut Vec<Fault>) {
    let dials = design.dials.len();
    if dials == 0 || dials > MAX_DIALS {
        faults.push(Fault {
            place: Place::Design,
            kind: FaultKind::NumberOfDials { dials },
        });
    }
    for (index, dial) in design.dials.iter().take(LISTED).enumerate() {
        let of_dial = [counts(dial), labels(dial), numbers_of_slots(dial)];
        faults.extend(of_dial.into_iter().flatten().map(|kind| Fault {
            place: Place::Dial(index),
            kind,
        }));
        for (number, slot) in dial.disc.slots.iter().take(MAX_SLOTS).enumerate() {
            let place = Place::Slot(index, number);
            let kinds = one_slot(dial, slot).into_iter();
            faults.extend(kinds.map(|kind| Fault { place, kind }));
        }
        faults.extend(meeting_slots(index, dial));
    }
    combination(design, faults);
}

/// Marks of the dial and sides of its key.
fn counts(dial: &Dial) -> Vec<FaultKind> {
    let (positions, sides) = (dial.positions, dial.key.sides);
    let mut found = Vec::new();
    if !(2..=MAX_POSITIONS).contains(&positions) {
        found.push(FaultKind::NumberOfPositions { positions });
    }
    if !(KEY_SIDES.0..=KEY_SIDES.1).contains(&sides) {
        found.push(FaultKind::KeySides { sides });
    }
    found
}

fn labels(dial: &Dial) -> Vec<FaultKind> {
    let (Labels::Words(words) | Labels::Pictures(words)) = &dial.labels else {
        return Vec::new();
    };
    let mut found = Vec::new();
    if words.len() != dial.positions as usize {
        found.push(FaultKind::NumberOfLabels {
            labels: words.len(),
            positions: dial.positions,
        });
    }
    let mut sorted: Vec<&String> = words.iter().collect();
    sorted.sort();
    let twice = sorted
        .iter()
        .zip(sorted.iter().skip(1))
        .find(|(one, next)| one == next);
    if let Some((twice, _)) = twice {
        let label = (*twice).clone();
        found.push(FaultKind::LabelTwice { label });
    }
    found
}

fn numbers_of_slots(dial: &Dial) -> Vec<FaultKind> {
    let slots = &dial.disc.slots;
    let mut found = Vec::new();
    if slots.len() > MAX_SLOTS {
        found.push(FaultKind::NumberOfSlots { slots: slots.len() });
    }
    if !slots.iter().any(|slot| slot.mark == 0) {
        found.push(FaultKind::NoTrueSlot);
    }
    found
}

fn one_slot(dial: &Dial, slot: &Slot) -> Vec<FaultKind> {
    let (mark, positions) = (slot.mark, dial.positions);
    let mut found = Vec::new();
    if mark < 0 || mark >= i64::from(positions) {
        found.push(FaultKind::SlotMarkOutOfRange { mark, positions });
    }
    let (width, across) = (slot.width, 2.0 * dial.disc.radius);
    if width >= across {
        found.push(FaultKind::SlotWiderThanDisc { width, across });
        return found;
    }
    if width <= dial.pin.diameter {
        found.push(FaultKind::SlotTooNarrow {
            pin: dial.pin.diameter,
            width,
        });
    }
    let shape = SlotShape::new(dial.disc.radius, slot);
    let wall = if shape.shallow {
        0.0
    } else {
        shape.rim_top - shape.floor_centre
    };
    if slot.lead_in > wall && !shape.through {
        found.push(FaultKind::LeadInLongerThanWall {
            lead_in: slot.lead_in,
            wall,
        });
    }
    found
}

/// Slots whose walls meet inside the disc: what is left between them is no wall.
fn meeting_slots(index: usize, dial: &Dial) -> Option<Fault> {
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
                let (place, short) = (Place::Slot(index, number), -wall);
                let kind = FaultKind::SlotsMeet {
                    other: before,
                    short,
                };
                return Some(Fault { place, kind });
            }
        }
    }
    None
}

fn combination(design: &Design, faults: &mut Vec<Fault>) {
    let (marks, dials) = (design.combination.len(), design.dials.len());
    if marks != dials {
        faults.push(Fault {
            place: Place::Combination,
            kind: FaultKind::CombinationLength { marks, dials },
        });
    }
    let standing = design.combination.iter().zip(&design.dials).take(LISTED);
    for (index, (mark, dial)) in standing.enumerate() {
        let (mark, positions) = (*mark, dial.positions);
        if mark >= positions {
            faults.push(Fault {
                place: Place::Dial(index),
                kind: FaultKind::CombinationMarkOutOfRange { mark, positions },
            });
        }
    }
}
