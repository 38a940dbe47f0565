//! The slots of a disc.

use egui::Ui;
use latchwright_model::change::SlotSize;
use latchwright_model::{Design, Dial};

use super::{NumberRow, edit, number_ui};
use crate::action::Action;
use crate::edit::{DialEdit, DialNumber, Target};
use crate::field::Kind;

/// Slots of one disc that are shown.
const SHOWN: usize = 16;

const ROWS: [(&str, SlotSize, &str); 3] = [
    ("width", SlotSize::Width, "Between the walls"),
    (
        "depth",
        SlotSize::Depth,
        "From the rim to the deepest point; a shallow one is blind",
    ),
    (
        "lead-in",
        SlotSize::LeadIn,
        "45° chamfer that helps the pin in; 0 for none",
    ),
];

/// The true slot and any others.
pub(super) fn slots_ui(
    ui: &mut Ui,
    design: &Design,
    dial: &Dial,
    of: Target,
    wishes: &mut Vec<Action>,
) {
    let true_slot = dial.disc.slots.iter().position(|slot| slot.mark == 0);
    for number in 0..dial.disc.slots.len().min(SHOWN) {
        let true_one = true_slot == Some(number);
        let name = if true_one {
            "True slot".to_owned()
        } else {
            format!("Slot {}", number + 1)
        };
        for (what, size, why) in ROWS {
            let title = format!("{name} {what}");
            let row = NumberRow {
                name: &title,
                kind: Kind::Length,
                number: DialNumber::Slot(number, size),
                why,
            };
            number_ui(ui, design, of, &row, wishes);
        }
        if !true_one {
            other_slot_ui(ui, design, number, of, wishes);
        }
    }
    if ui.button("Add a blind slot").clicked() {
        wishes.push(edit(of, DialEdit::AddBlindSlot));
    }
}

fn other_slot_ui(
    ui: &mut Ui,
    design: &Design,
    number: usize,
    of: Target,
    wishes: &mut Vec<Action>,
) {
    let row = NumberRow {
        name: &format!("Slot {} steps on", number + 1),
        kind: Kind::Count,
        number: DialNumber::SlotMark(number),
        why: "Marks clockwise from the true slot",
    };
    number_ui(ui, design, of, &row, wishes);
    if ui.button(format!("Fill slot {} up", number + 1)).clicked() {
        wishes.push(edit(of, DialEdit::FillSlot(number)));
    }
}
