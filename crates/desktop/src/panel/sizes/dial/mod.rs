//! The dials: which one, its sizes, its slots, its labels, and the combination.

mod labels;
mod order;
mod slots;

use egui::{RichText, Ui};
use latchwright_model::Size;
use latchwright_model::change::DialSize;
use latchwright_model::{Design, Dial, PinMake};

use super::rows::{self, DISC, KNOB, PIN, PLACE, Row, SHAFT};
use super::wood::choice_ui;
use super::{caption, part_ui};
use crate::action::Action;
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
        let why = "Marks round the dial; a multiple of the key's sides";
        let row = (Kind::Count, why);
        of.size_ui(ui, design, "Positions", row, Size::Positions, wishes);
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
        let why = "Flats of the post that joins knob and disc";
        let row = (Kind::Count, why);
        of.size_ui(ui, design, "Key sides", row, Size::KeySides, wishes);
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
    if let Some(make) = choice_ui(ui, ("Pin make", why), dial.pin.make, &makes, name) {
        of.edit("pin make", wishes, move |dial| dial.pin.make = make);
    }
}

/// Which dials a change is for.
#[derive(Clone, Copy)]
struct Target {
    dial: usize,
    all: bool,
}

impl Target {
    fn covers(self, dial: usize) -> bool {
        self.all || dial == self.dial
    }

    fn label(self, what: &str) -> String {
        if self.all {
            format!("{what} of all dials")
        } else {
            format!("{what} of dial {}", self.dial + 1)
        }
    }

    fn edit(self, what: &str, wishes: &mut Vec<Action>, change: impl Fn(&mut Dial) + 'static) {
        wishes.push(Action::edit(self.label(what), move |design| {
            for (index, dial) in design.dials.iter_mut().enumerate() {
                if self.covers(index) {
                    change(dial);
                }
            }
        }));
    }

    /// A row for a number; `size` says where it stands on the dial of a number.
    fn size_ui(
        self,
        ui: &mut Ui,
        design: &Design,
        name: &str,
        (kind, why): (Kind, &str),
        size: impl Fn(usize) -> Size + 'static,
        wishes: &mut Vec<Action>,
    ) {
        let Some(now) = size(self.dial).get(design) else {
            return;
        };
        if let Some(value) = field::number_ui(ui, name, now, kind, design.units, why) {
            let label = self.label(&name.to_lowercase());
            wishes.push(Action::edit(label, move |design| {
                for dial in (0..design.dials.len()).filter(|dial| self.covers(*dial)) {
                    size(dial).set(design, value);
                }
            }));
        }
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
        let size = move |dial| Size::Dial(dial, size);
        of.size_ui(ui, design, name, (kind, why), size, wishes);
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
        wishes.push(Action::edit("combination", move |design| {
            design.combination = marks;
        }));
    }
}
