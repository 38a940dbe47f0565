//! The numbers of the design, editable, a group at a time.

mod bench;
mod body;
mod dial;
mod list;
mod own_woods;
mod rows;
mod wood;

use egui::{CollapsingHeader, RichText, ScrollArea, Ui};
use latchwright_session::Session;

use crate::action::Action;
use crate::edit::Edit;
use crate::field;
use crate::view_state::ViewState;

/// The panel of sizes.
pub fn sizes_ui(ui: &mut Ui, session: &Session, view: &mut ViewState, wishes: &mut Vec<Action>) {
    let design = session.design();
    ScrollArea::vertical()
        .auto_shrink([false, false])
        .show(ui, |ui| {
            // leaves the scroll bar its room
            ui.set_max_width(ui.available_width() - 10.0);
            if let Some(title) =
                field::text_ui(ui, "Title", &design.title, "What you call this box")
            {
                wishes.push(Action::Edit(Edit::Title(title)));
            }
            ui.add_space(4.0);
            groups_ui(ui, session, view, wishes);
            ui.add_space(8.0);
            note_ui(
                ui,
                "Sizes are finished sizes: after sanding, paint and finish.",
            );
        });
}

/// Every group under its heading, each with a line on why it matters.
fn groups_ui(ui: &mut Ui, session: &Session, view: &mut ViewState, wishes: &mut Vec<Action>) {
    let design = session.design();
    let why = "What the lid shuts: the cut list and the templates of the sides come from it.";
    group_ui(ui, "Box", why, false, |ui| {
        body::body_ui(ui, design, wishes);
    });
    let why = "The wooden top that carries the dials; its wood and grain decide how far it moves \
               over the year.";
    group_ui(ui, "Plate", why, false, |ui| {
        rows::rows_ui(ui, design, rows::PLATE, wishes);
        wood::plate_ui(ui, design, wishes);
    });
    let why = "One dial that holds is enough to keep the box shut; its slot and pin decide whether \
               it does.";
    group_ui(ui, "Dials", why, true, |ui| {
        dial::dials_ui(ui, design, view, wishes);
    });
    let why = "What slides, how far, and how much of the tab stays under the keeper when a dial stops \
               it.";
    group_ui(ui, "Slider and keeper", why, false, |ui| {
        rows::rows_ui(ui, design, rows::SLIDER, wishes);
        wood::slider_ui(ui, design, wishes);
        caption(ui, "Tab and keeper");
        wood::keeper_ui(ui, design, wishes);
        rows::rows_ui(ui, design, rows::HELD, wishes);
    });
    let why = "Papers name the nearest of your bits and pack parts on your boards; prints are drawn \
               for your printer.";
    group_ui(ui, "What you have", why, false, |ui| {
        bench::bench_ui(ui, design, wishes);
    });
    let why = "How exactly you work. What is proven holds for every box within these, and for no \
               other.";
    group_ui(ui, "Workmanship", why, false, |ui| {
        rows::rows_ui(ui, design, rows::WORKMANSHIP, wishes);
    });
    let why = "Wood swells in damp air and shrinks in dry. What is proven holds for all the air between \
               these three.";
    group_ui(ui, "Season", why, false, |ui| {
        rows::rows_ui(ui, design, rows::SEASON, wishes);
    });
}

/// A group that folds away, with why it matters first.
fn group_ui(ui: &mut Ui, name: &str, why: &str, open: bool, contents: impl FnOnce(&mut Ui)) {
    CollapsingHeader::new(RichText::new(name).family(crate::theme::bold()))
        .default_open(open)
        .show_unindented(ui, |ui| {
            note_ui(ui, why);
            contents(ui);
            ui.add_space(8.0);
        });
}

/// A part of a group that folds away by itself.
fn part_ui(ui: &mut Ui, name: &str, open: bool, contents: impl FnOnce(&mut Ui)) {
    CollapsingHeader::new(name)
        .default_open(open)
        .show_unindented(ui, contents);
}

/// What the rows below have in common.
fn caption(ui: &mut Ui, words: &str) {
    ui.add_space(4.0);
    ui.label(RichText::new(words).weak());
}

/// A line in small letters.
fn note_ui(ui: &mut Ui, words: &str) {
    ui.label(RichText::new(words).small().weak());
}
