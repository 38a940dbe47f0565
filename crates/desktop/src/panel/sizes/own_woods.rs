//! Woods that the maker has measured.

use egui::Ui;
use latchwright_model::Design;
use latchwright_model::Size;
use latchwright_model::change::WoodSize;

use super::bench::{add_ui, of_entry, take_away_ui};
use super::list::{Entry, pick_ui};
use super::note_ui;
use crate::action::Action;
use crate::edit::{BenchEdit, Edit};
use crate::field::{self, Kind};

/// All of them, and the one that is chosen.
pub fn woods_ui(ui: &mut Ui, design: &Design, wishes: &mut Vec<Action>) {
    note_ui(
        ui,
        "For a wood that the table lacks: how far it moves, as a part of its width for each per cent \
         of moisture. 0.002 is 0.2 mm on 100 mm.",
    );
    let woods = &design.own_woods;
    let entries: Vec<Entry> = (1..)
        .zip(woods)
        .map(|(number, wood)| Entry {
            shown: wood.name.clone(),
            name: format!("Wood {number}: {}", wood.name),
        })
        .collect();
    if let Some(index) = pick_ui(ui, "woods", &entries) {
        wood_ui(ui, design, index, wishes);
    }
    add_ui(ui, "woods", woods.len(), BenchEdit::AddWood, wishes);
}

fn wood_ui(ui: &mut Ui, design: &Design, index: usize, wishes: &mut Vec<Action>) {
    let Some(wood) = design.own_woods.get(index) else {
        return;
    };
    let name = format!("Wood {}", index + 1);
    let hint = "What plate, slider and sides call it";
    if let Some(text) = field::text_ui(ui, &format!("{name} name"), &wood.name, hint) {
        wishes.push(Action::Edit(Edit::Bench(BenchEdit::RenameWood {
            wood: index,
            name: text,
        })));
    }
    for (what, size, why) in [
        (
            "radial",
            WoodSize::Radial,
            "The width of a quarter-sawn board moves by this; woods lie between 0.0007 and 0.0045",
        ),
        (
            "tangential",
            WoodSize::Tangential,
            "The width of a flat-sawn board moves by this; more than the radial one",
        ),
    ] {
        of_entry(
            ui,
            design,
            &format!("{name} {what}"),
            Kind::Ratio,
            Size::Wood(index, size),
            why,
            wishes,
        );
    }
    take_away_ui(ui, "woods", BenchEdit::TakeWood(index), wishes);
}
