//! The slots of a disc.

use egui::Ui;
use latchwright_model::Size;
use latchwright_model::change::SlotSize;
use latchwright_model::{Design, Dial, Slot};

use super::Target;
use crate::action::Action;
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
            let size = move |dial| Size::Slot(dial, number, size);
            of.size_ui(ui, design, &title, (Kind::Length, why), size, wishes);
        }
        if !true_one {
            other_slot_ui(ui, design, number, of, wishes);
        }
    }
    if ui.button("Add a blind slot").clicked() {
        of.edit("add a blind slot", wishes, |dial| {
            let width = dial.disc.slots.first().map_or(9.0, |slot| slot.width);
            let mark = i64::from(dial.positions / 2);
            dial.disc.slots.push(Slot {
                mark,
                width,
                depth: 2.0,
                lead_in: 0.0,
            });
        });
    }
}

fn other_slot_ui(
    ui: &mut Ui,
    design: &Design,
    number: usize,
    of: Target,
    wishes: &mut Vec<Action>,
) {
    let title = format!("Slot {} steps on", number + 1);
    let row = (Kind::Count, "Marks clockwise from the true slot");
    let size = move |dial| Size::SlotMark(dial, number);
    of.size_ui(ui, design, &title, row, size, wishes);
    if ui.button(format!("Fill slot {} up", number + 1)).clicked() {
        of.edit("fill a slot up", wishes, move |dial| {
            if number < dial.disc.slots.len() {
                dial.disc.slots.remove(number);
            }
        });
    }
}
