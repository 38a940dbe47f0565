//! The dials: which one, its sizes, its slots, its labels, and the combination.

use egui::{ComboBox, RichText, Ui};
use latchwright_session::Session;
use latchwright_solver::model::{Design, Dial, Labels, PinMake, Slot};
use latchwright_solver::validate::MAX_DIALS;

use super::rows::{DIAL, DialRow, PLACE};
use super::wood::choice_ui;
use crate::action::Action;
use crate::field::{self, Kind};
use crate::view_state::ViewState;

/// Everything about the dials.
pub fn dials_ui(ui: &mut Ui, session: &Session, view: &mut ViewState, wishes: &mut Vec<Action>) {
    let design = session.design();
    choose_ui(ui, design, view, wishes);
    let Some(dial) = design.dials.get(view.dial) else {
        ui.label("This latch has no dial yet.");
        return;
    };
    combination_ui(ui, design, view, wishes);
    ui.checkbox(&mut view.all_dials, "Change all dials alike")
        .on_hover_text("Sizes, slots and labels of every dial follow the one you change");
    let of = Target {
        dial: view.dial,
        all: view.all_dials,
    };
    rows_ui(ui, design, dial, PLACE, Target { all: false, ..of }, wishes);
    let positions = f64::from(dial.positions);
    let why = "Marks round the dial; a multiple of the key's sides";
    if let Some(count) =
        field::number_ui(ui, "Positions", positions, Kind::Count, design.units, why)
    {
        of.edit("positions", wishes, move |dial| {
            dial.positions = whole(count);
        });
    }
    labels_ui(ui, dial, of, wishes);
    slots_ui(ui, design, dial, of, wishes);
    rows_ui(ui, design, dial, DIAL, of, wishes);
    let makes = [
        PinMake::Steel,
        PinMake::Dowel,
        PinMake::PrintedLying,
        PinMake::PrintedStanding,
    ];
    if let Some(make) = choice_ui(ui, "Pin make", dial.pin.make, &makes, make_name) {
        of.edit("pin make", wishes, move |dial| dial.pin.make = make);
    }
    let sides = f64::from(dial.key.sides);
    let why = "Flats of the post that joins knob and disc";
    if let Some(count) = field::number_ui(ui, "Key sides", sides, Kind::Count, design.units, why) {
        of.edit("key sides", wishes, move |dial| {
            dial.key.sides = whole(count);
        });
    }
}

fn make_name(make: PinMake) -> &'static str {
    match make {
        PinMake::Steel => "steel rod",
        PinMake::Dowel => "hardwood dowel",
        PinMake::PrintedLying => "printed lying",
        PinMake::PrintedStanding => "printed standing",
    }
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "parsed as a u32"
)]
fn whole(count: f64) -> u32 {
    count as u32
}

/// Which dials a change is for.
#[derive(Clone, Copy)]
struct Target {
    dial: usize,
    all: bool,
}

impl Target {
    fn edit(self, what: &str, wishes: &mut Vec<Action>, change: impl Fn(&mut Dial) + 'static) {
        let label = if self.all {
            format!("{what} of all dials")
        } else {
            format!("{what} of dial {}", self.dial + 1)
        };
        wishes.push(Action::edit(label, move |design| {
            for (index, dial) in design.dials.iter_mut().enumerate() {
                if self.all || index == self.dial {
                    change(dial);
                }
            }
        }));
    }
}

fn rows_ui(
    ui: &mut Ui,
    design: &Design,
    dial: &Dial,
    rows: &[DialRow],
    of: Target,
    wishes: &mut Vec<Action>,
) {
    for row in rows {
        let DialRow {
            name,
            kind,
            get,
            set,
            why,
        } = *row;
        if let Some(value) = field::number_ui(ui, name, get(dial), kind, design.units, why) {
            of.edit(&name.to_lowercase(), wishes, move |dial| set(dial, value));
        }
    }
}

/// Which dial; add one, take one away.
fn choose_ui(ui: &mut Ui, design: &Design, view: &mut ViewState, wishes: &mut Vec<Action>) {
    ui.horizontal_wrapped(|ui| {
        for index in 0..design.dials.len().min(MAX_DIALS) {
            let chosen = view.dial == index;
            if ui
                .selectable_label(chosen, format!("Dial {}", index + 1))
                .clicked()
            {
                view.dial = index;
            }
        }
    });
    ui.horizontal(|ui| {
        let few = design.dials.len() < MAX_DIALS;
        if ui
            .add_enabled(few, egui::Button::new("Add a dial"))
            .clicked()
        {
            wishes.push(Action::edit("add a dial", add_dial));
        }
        let index = view.dial;
        let many = design.dials.len() > 1;
        let remove = egui::Button::new(format!("Take dial {} away", index + 1));
        if ui.add_enabled(many, remove).clicked() {
            wishes.push(Action::edit(
                format!("take dial {} away", index + 1),
                move |design| {
                    if index < design.dials.len() {
                        design.dials.remove(index);
                    }
                    if index < design.combination.len() {
                        design.combination.remove(index);
                    }
                },
            ));
        }
    });
}

/// A copy of the last dial, to the right of it by knob and fingers.
fn add_dial(design: &mut Design) {
    let mut dial = design.dials.last().cloned().unwrap_or_default();
    dial.centre.0 += dial.knob.diameter + 20.0;
    design.dials.push(dial);
    design.combination.resize(design.dials.len(), 0);
}

fn combination_ui(ui: &mut Ui, design: &Design, view: &ViewState, wishes: &mut Vec<Action>) {
    let labels: Vec<String> = design
        .dials
        .iter()
        .enumerate()
        .map(|(index, dial)| dial.label(design.digit(index)))
        .collect();
    ui.label(format!("Combination: {}", labels.join(" ")));
    let marks = view.marks(design);
    let same = marks == design.combination;
    let button = egui::Button::new("Take what the dials show as combination");
    if ui.add_enabled(!same, button).clicked() {
        wishes.push(Action::edit("combination", move |design| {
            design.combination = marks;
        }));
    }
}

#[derive(Clone, Copy, PartialEq)]
enum Kinds {
    Digits,
    Letters,
    Words,
    Pictures,
}

impl Kinds {
    const ALL: [(Self, &'static str); 4] = [
        (Self::Digits, "figures"),
        (Self::Letters, "letters"),
        (Self::Words, "words"),
        (Self::Pictures, "pictures"),
    ];

    fn of(labels: &Labels) -> Self {
        match labels {
            Labels::Digits => Self::Digits,
            Labels::Letters => Self::Letters,
            Labels::Words(_) => Self::Words,
            Labels::Pictures(_) => Self::Pictures,
        }
    }

    fn labels(self, dial: &Dial) -> Labels {
        let plain = |labels: &Labels| {
            (0..dial.positions.min(360))
                .map(|mark| labels.label(mark, dial.positions))
                .collect()
        };
        match self {
            Self::Digits => Labels::Digits,
            Self::Letters => Labels::Letters,
            Self::Words => Labels::Words(plain(&dial.labels)),
            Self::Pictures => Labels::Pictures(
                latchwright_drawing::PICTURES
                    .iter()
                    .cycle()
                    .take(dial.positions.min(12) as usize)
                    .map(|name| (*name).to_owned())
                    .collect(),
            ),
        }
    }
}

fn labels_ui(ui: &mut Ui, dial: &Dial, of: Target, wishes: &mut Vec<Action>) {
    let now = Kinds::of(&dial.labels);
    let mut chosen = now;
    let label = ui.label("Labels");
    let word = Kinds::ALL
        .iter()
        .find(|(kind, _)| *kind == now)
        .map_or("", |(_, word)| word);
    ComboBox::from_id_salt("labels")
        .selected_text(word)
        .width(ui.available_width() - 8.0)
        .show_ui(ui, |ui| {
            for (kind, word) in Kinds::ALL {
                ui.selectable_value(&mut chosen, kind, word);
            }
        })
        .response
        .labelled_by(label.id);
    if chosen != now {
        of.edit("labels", wishes, move |dial| {
            dial.labels = chosen.labels(dial);
        });
    }
    let (Labels::Words(words) | Labels::Pictures(words)) = &dial.labels else {
        return;
    };
    let hint = "one a mark, with commas between";
    if let Some(text) = field::text_ui(ui, "Label words", &words.join(", "), hint) {
        let words: Vec<String> = text.split(',').map(|word| word.trim().to_owned()).collect();
        of.edit("labels", wishes, move |dial| match &mut dial.labels {
            Labels::Words(old) | Labels::Pictures(old) => old.clone_from(&words),
            Labels::Digits | Labels::Letters => {}
        });
    }
    if matches!(dial.labels, Labels::Pictures(_)) {
        let known = latchwright_drawing::PICTURES.join(", ");
        ui.label(
            RichText::new(format!("Pictures that can be drawn: {known}"))
                .small()
                .weak(),
        );
    }
}

/// A number of a slot: name, how to read and write it, why it matters.
type SlotRow = (
    &'static str,
    fn(&Slot) -> f64,
    fn(&mut Slot, f64),
    &'static str,
);

const SLOT_ROWS: [SlotRow; 3] = [
    (
        "width",
        |s| s.width,
        |s, v| s.width = v,
        "Between the walls",
    ),
    (
        "depth",
        |s| s.depth,
        |s, v| s.depth = v,
        "From the rim to the deepest point; a shallow one is blind",
    ),
    (
        "lead-in",
        |s| s.lead_in,
        |s, v| s.lead_in = v,
        "45° chamfer that helps the pin in; 0 for none",
    ),
];

fn slots_ui(ui: &mut Ui, design: &Design, dial: &Dial, of: Target, wishes: &mut Vec<Action>) {
    for (number, slot) in dial.disc.slots.iter().take(16).enumerate() {
        let name = if slot.mark == 0 {
            "True slot".to_owned()
        } else {
            format!("Slot {}", number + 1)
        };
        for (what, get, set, why) in SLOT_ROWS {
            let title = format!("{name} {what}");
            if let Some(value) =
                field::number_ui(ui, &title, get(slot), Kind::Length, design.units, why)
            {
                of.edit(&title.to_lowercase(), wishes, move |dial| {
                    if let Some(slot) = dial.disc.slots.get_mut(number) {
                        set(slot, value);
                    }
                });
            }
        }
        if slot.mark != 0 {
            extra_slot_ui(ui, design, slot, number, of, wishes);
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

fn extra_slot_ui(
    ui: &mut Ui,
    design: &Design,
    slot: &Slot,
    number: usize,
    of: Target,
    wishes: &mut Vec<Action>,
) {
    #[expect(clippy::cast_precision_loss, reason = "a mark is far below 2^52")]
    let mark = slot.mark as f64;
    let title = format!("Slot {} steps on", number + 1);
    let why = "Marks clockwise from the true slot";
    if let Some(value) = field::number_ui(ui, &title, mark, Kind::Count, design.units, why) {
        of.edit(&title.to_lowercase(), wishes, move |dial| {
            if let Some(slot) = dial.disc.slots.get_mut(number) {
                slot.mark = i64::from(whole(value));
            }
        });
    }
    if ui.button(format!("Fill slot {} up", number + 1)).clicked() {
        of.edit("fill a slot up", wishes, move |dial| {
            if number < dial.disc.slots.len() {
                dial.disc.slots.remove(number);
            }
        });
    }
}
