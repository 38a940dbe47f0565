//! The bar on top: what is open, and what can be done with it as a whole.

use std::path::Path;

use egui::{Button, RichText, Ui, WidgetInfo};
use latchwright_model::Units;
use latchwright_session::demos::DEMOS;

use crate::action::{Action, Product, Source};
use crate::command::{Command, Standing};
use crate::recents::{Known, Recents};
use crate::theme;

/// The bar.
pub fn top_ui(ui: &mut Ui, standing: &Standing<'_>, recents: &Recents, wishes: &mut Vec<Action>) {
    ui.horizontal_wrapped(|ui| {
        name_ui(ui, standing);
        ui.add_space(8.0);
        Command::NewBox.button_ui(ui, standing, wishes);
        Command::Open.button_ui(ui, standing, wishes);
        recent_ui(ui, recents, wishes);
        ui.menu_button("Demos", |ui| {
            for demo in &DEMOS {
                let title = demo
                    .design()
                    .map_or_else(|_| demo.name.to_owned(), |design| design.title);
                if ui.button(title).on_hover_text(demo.about).clicked() {
                    wishes.push(Action::open(Source::Demo(demo.name)));
                }
            }
        });
        Command::Save.button_ui(ui, standing, wishes);
        Command::SaveAs(Product::Design).button_ui(ui, standing, wishes);
        history_ui(ui, standing, wishes);
        view_ui(ui, standing, wishes);
    });
}

/// Width of the list of designs used lately, points.
const RECENT: f32 = 420.0;

fn recent_ui(ui: &mut Ui, recents: &Recents, wishes: &mut Vec<Action>) {
    let answer = ui.menu_button("Recent", |ui| {
        ui.set_width(RECENT);
        if recents.known().is_empty() {
            ui.label("No design has been opened or saved yet.");
        }
        for known in recents.known() {
            let button = Button::new(place(known)).truncate();
            let path = known.path.display().to_string();
            let response = ui.add_enabled(known.there, button);
            if response.on_hover_text(path).clicked() {
                wishes.push(Action::open(Source::File(known.path.clone())));
            }
        }
    });
    if answer.response.clicked() {
        wishes.push(Action::LookForRecent);
    }
}

/// Name and folder of a design, and whether it is gone.
fn place(known: &Known) -> String {
    let name = known.path.file_name().unwrap_or_default();
    let folder = known.path.parent().and_then(Path::file_name);
    let (name, folder) = (
        name.to_string_lossy(),
        folder.unwrap_or_default().to_string_lossy(),
    );
    let gone = if known.there { "" } else { " (missing)" };
    format!("{name}{gone}, in {folder}")
}

fn name_ui(ui: &mut Ui, standing: &Standing<'_>) {
    let session = standing.session;
    let title = session.design().title.trim();
    let title = if title.is_empty() {
        "Untitled box"
    } else {
        title
    };
    ui.label(RichText::new(title).family(theme::bold()).size(17.0));
    let saving = standing.writing.contains(&Product::Design);
    let state = match (session.path(), session.unsaved()) {
        _ if saving => "being saved…".to_owned(),
        (None, _) => "not saved yet".to_owned(),
        (Some(path), unsaved) => {
            let name = path
                .file_name()
                .unwrap_or(path.as_os_str())
                .to_string_lossy();
            if unsaved {
                format!("{name}, changed")
            } else {
                format!("{name}, saved")
            }
        }
    };
    ui.label(RichText::new(state).weak());
}

/// Letters of a change that stand on its button; all of it is told on hover and to a screen reader.
const SHOWN: usize = 16;

fn history_ui(ui: &mut Ui, standing: &Standing<'_>, wishes: &mut Vec<Action>) {
    let history = standing.session.history();
    for (command, what) in [
        (Command::Undo, history.undo_label()),
        (Command::Redo, history.redo_label()),
    ] {
        let verb = command.label(standing);
        let whole = what.map_or_else(|| verb.to_owned(), |what| format!("{verb}: {what}"));
        let mut short: String = what.unwrap_or_default().chars().take(SHOWN).collect();
        if what.is_some_and(|what| what.chars().count() > SHOWN) {
            short.push('…');
        }
        let words = if short.is_empty() {
            verb.to_owned()
        } else {
            format!("{verb}: {short}")
        };
        let response = command.shown_ui(ui, standing, Button::new(words), &whole, wishes);
        response.widget_info(|| {
            WidgetInfo::labeled(
                egui::accesskit::Role::Button,
                what.is_some(),
                whole.as_str(),
            )
        });
    }
}

fn view_ui(ui: &mut Ui, standing: &Standing<'_>, wishes: &mut Vec<Action>) {
    let units = standing.session.design().units;
    for (unit, word, name) in [
        (Units::Millimetre, "mm", "Millimetres"),
        (Units::Inch, "in", "Inches"),
    ] {
        let response = ui.selectable_label(units == unit, word).on_hover_text(name);
        if response.clicked() && units != unit {
            wishes.push(Action::Do(Command::SwitchUnits));
        }
    }
    let dark = ui.ctx().theme() == egui::Theme::Dark;
    // it is called what it leads to
    let other = Button::new(if dark { "Daylight" } else { "Slate" });
    Command::SwitchTheme.shown_ui(ui, standing, other, "", wishes);
    Command::Help.button_ui(ui, standing, wishes);
}
