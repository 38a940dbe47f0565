//! The dials: which one, its sizes, its slots, its labels, and the combination.

mod labels;
mod order;
mod slots;

use egui::{RichText, Ui};
use latchwright_model::change::DialSize;
use latchwright_model::{Design, Dial, PinMake};

use super::rows::{self, DISC, KNOB, PIN, PLACE, Row, SHAFT};
use super::wood::choice_ui;
use super::{caption, part_ui};
use crate::action::Action;
use crate::edit::{DialEdit, DialNumber, Edit, Target};
use crate::field::{self, Kind};
use crate::view_state::ViewState;

/// Everything about the dials.
pub fn dials_ui(ui: &mut Ui, design: &Design, view: &mut ViewState, wishes: &mut Vec<Action>) {
    let next = order::choose_ui(ui, design, view, wishes);
    if let Some(dial) = design.dials.get(view.dial) {
        dial_ui(ui, design, dial, view, wishes);
    } else {
        ui.label("This latch has no dial yet.");
    }
    // not before the fields of this dial have handed over what was typed into them
    view.dial = next;
}

fn dial_ui(
    ui: &mut Ui,
    design: &Design,
    dial: &Dial,
    view: &mut ViewState,
    wishes: &mut Vec<Action>,
) {
    combination_ui(ui, design, view, wishes);
    ui.checkbox(&mut view.all_dials, "Change all dials alike")
        .on_hover_text("Sizes, slots and labels of every dial follow the one you change");
    let of = Target {
        dial: view.dial,
        all: view.all_dials,
    };
    let own = Target { all: false, ..of };
    caption(ui, &format!("Where dial {} stands", view.dial + 1));
    dial_rows_ui(ui, design, PLACE, own, wishes);
    part_ui(ui, "Marks and labels", false, |ui| {
        labels::opens_at_ui(ui, design, dial, own, wishes);
        let row = NumberRow {
            name: "Positions",
            kind: Kind::Count,
            number: DialNumber::Positions,
            why: "Marks round the dial; a multiple of the key's sides",
        };
        number_ui(ui, design, of, &row, wishes);
        labels::labels_ui(ui, dial, of, wishes);
    });
    part_ui(ui, "Disc and slots", true, |ui| {
        dial_rows_ui(ui, design, DISC, of, wishes);
        slots::slots_ui(ui, design, dial, of, wishes);
    });
    part_ui(ui, "Pin", true, |ui| {
        dial_rows_ui(ui, design, PIN, of, wishes);
        pin_make_ui(ui, dial, of, wishes);
    });
    part_ui(ui, "Key, shaft and bore", false, |ui| {
        let row = NumberRow {
            name: "Key sides",
            kind: Kind::Count,
            number: DialNumber::KeySides,
            why: "Flats of the post that joins knob and disc",
        };
        number_ui(ui, design, of, &row, wishes);
        dial_rows_ui(ui, design, SHAFT, of, wishes);
    });
    part_ui(ui, "Knob", false, |ui| {
        dial_rows_ui(ui, design, KNOB, of, wishes);
    });
}

fn pin_make_ui(ui: &mut Ui, dial: &Dial, of: Target, wishes: &mut Vec<Action>) {
    let makes = [
        PinMake::Steel,
        PinMake::Dowel,
        PinMake::PrintedLying,
        PinMake::PrintedStanding,
    ];
    let name = |make| match make {
        PinMake::Steel => "steel rod",
        PinMake::Dowel => "hardwood dowel",
        PinMake::PrintedLying => "printed lying",
        PinMake::PrintedStanding => "printed standing",
    };
    let why = "What it bears where it leaves its finger; a print standing up is weakest there";
    if let Some(make) = choice_ui(ui, "Pin make", why, dial.pin.make, &makes, name) {
        wishes.push(edit(of, DialEdit::PinMake(make)));
    }
}

/// The wish to change these dials.
fn edit(of: Target, edit: DialEdit) -> Action {
    Action::Edit(Edit::Dial(of, edit))
}

/// What a number's row is called, what it means, and why it matters.
struct NumberRow<'a> {
    name: &'a str,
    kind: Kind,
    number: DialNumber,
    why: &'a str,
}

/// A row for a number of these dials, where they have it.
fn number_ui(
    ui: &mut Ui,
    design: &Design,
    of: Target,
    row: &NumberRow<'_>,
    wishes: &mut Vec<Action>,
) {
    let Some(now) = row.number.of(of.dial).get(design) else {
        return;
    };
    let NumberRow {
        name,
        kind,
        number,
        why,
    } = *row;
    if let Some(value) = field::number_ui(ui, name, now, kind, design.units, why) {
        let name = name.to_owned();
        wishes.push(edit(
            of,
            DialEdit::Number {
                name,
                number,
                value,
            },
        ));
    }
}

fn dial_rows_ui(
    ui: &mut Ui,
    design: &Design,
    rows: &[Row<DialSize>],
    of: Target,
    wishes: &mut Vec<Action>,
) {
    for row in rows {
        let rows::Row {
            name,
            kind,
            size,
            why,
        } = *row;
        let number = DialNumber::Size(size);
        let row = NumberRow {
            name,
            kind,
            number,
            why,
        };
        number_ui(ui, design, of, &row, wishes);
    }
}

fn combination_ui(ui: &mut Ui, design: &Design, view: &ViewState, wishes: &mut Vec<Action>) {
    let labels: Vec<String> = design
        .dials
        .iter()
        .enumerate()
        .map(|(index, dial)| dial.label(design.digit(index)))
        .collect();
    ui.label(RichText::new(format!("Combination: {}", labels.join(" "))));
    let marks = view.marks(design);
    let same = marks == design.combination;
    let button = egui::Button::new("Take what the dials show as combination");
    if ui.add_enabled(!same, button).clicked() {
        wishes.push(Action::Edit(Edit::Combination(marks)));
    }
}
