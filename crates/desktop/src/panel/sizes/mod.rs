//! The numbers of the design, editable, a group at a time.

mod dial;
mod rows;
mod wood;

use egui::{CollapsingHeader, RichText, ScrollArea, Ui};
use latchwright_session::Session;

use self::rows::{DesignRow, GROUPS, Group};
use crate::action::Action;
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
                wishes.push(Action::edit("title", move |design| design.title = title));
            }
            ui.add_space(4.0);
            heading(ui, "Dials", true, |ui| {
                dial::dials_ui(ui, session, view, wishes);
            });
            for group in &GROUPS {
                heading(ui, group.name, false, |ui| {
                    group_ui(ui, session, group, wishes);
                });
            }
            ui.add_space(8.0);
            ui.label(
                RichText::new("Sizes are finished sizes: after sanding, paint and finish.")
                    .small()
                    .weak(),
            );
        });
}

fn heading(ui: &mut Ui, name: &str, open: bool, contents: impl FnOnce(&mut Ui)) {
    CollapsingHeader::new(RichText::new(name).family(crate::theme::bold()))
        .default_open(open)
        .show_unindented(ui, contents);
}

fn group_ui(ui: &mut Ui, session: &Session, group: &Group, wishes: &mut Vec<Action>) {
    let design = session.design();
    for row in group.rows {
        let DesignRow {
            name,
            kind,
            get,
            set,
            why,
        } = *row;
        if let Some(value) = field::number_ui(ui, name, get(design), kind, design.units, why) {
            wishes.push(Action::edit(name.to_lowercase(), move |design| {
                set(design, value);
            }));
        }
    }
    match group.name {
        "Plate" => wood::plate_ui(ui, design, wishes),
        "Slider" => wood::slider_ui(ui, design, wishes),
        _ => {}
    }
}
