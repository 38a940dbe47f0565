//! Every setting with its verdict: filtered, found by its labels, listed at any length.

mod list;
mod row;
mod track;

use egui::accesskit::Role;
use egui::{CollapsingHeader, Id, Key, Label, RichText, TextEdit, Ui, WidgetInfo};
use latchwright_drawing::Ink;
use latchwright_model::Design;
use latchwright_model::typed::read_setting;
use latchwright_proof::settings::Filter;
use latchwright_proof::{Proof, Ranked, Verdict};
use latchwright_words::{grouped, setting_error};

use self::row::Look;
use crate::action::Action;
use crate::field;
use crate::theme;
use crate::view_state::{PoseChange, ViewState};

/// What can be listed, and what it is called.
const WANTED: [(Filter, &str); 4] = [
    (None, "all"),
    (Some(Verdict::Passes), "opens"),
    (Some(Verdict::Holds), "locks"),
    (Some(Verdict::Unsure), "unsure"),
];

/// What a whole setting does.
fn word(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Passes => "opens",
        Verdict::Holds => "locks",
        Verdict::Unsure => "unsure",
    }
}

/// What the list is made of.
#[derive(Clone, Copy)]
struct Shown<'a> {
    design: &'a Design,
    ranked: &'a Ranked<'a>,
}

/// The list, and what finds a setting in it.
pub fn settings_ui(
    ui: &mut Ui,
    design: &Design,
    proof: &Proof,
    view: &mut ViewState,
    wishes: &mut Vec<Action>,
) {
    CollapsingHeader::new("Every setting")
        .default_open(true)
        .show_unindented(ui, |ui| {
            if proof.dials.is_empty() || proof.dials.len() != design.dials.len() {
                ui.label("No settings to list: mend what is wrong with the dials first.");
                return;
            }
            let ranked = Ranked::new(&proof.dials, &proof.together);
            let shown = Shown {
                design,
                ranked: &ranked,
            };
            filter_ui(ui, &ranked, view);
            let look = Look::of(ui, design);
            find_ui(ui, shown, &look, view, wishes);
            list::list_ui(ui, shown, &look, view, wishes);
            number_ui(ui, &ranked, view);
        });
}

fn filter_ui(ui: &mut Ui, ranked: &Ranked<'_>, view: &mut ViewState) {
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = 4.0;
        for (filter, name) in WANTED {
            let on = view.listed.filter == filter;
            let count = grouped(ranked.count(filter));
            let button = ui.selectable_label(on, name);
            let said = format!("Settings: {name}");
            button.widget_info(|| WidgetInfo::selected(Role::Button, true, on, &said));
            if button.on_hover_text(count).clicked() && !on {
                view.listed.filter = filter;
                (view.listed.first, view.listed.at) = (0, 0);
            }
        }
        ui.add_space(4.0);
        let count = ranked.count(view.listed.filter);
        let settings = if count == 1 { "setting" } else { "settings" };
        let said = format!("{} {settings}", grouped(count));
        ui.add(Label::new(RichText::new(said).small().weak()).extend());
    });
}

/// The field for labels, and the setting that was typed.
fn find_ui(
    ui: &mut Ui,
    shown: Shown<'_>,
    look: &Look,
    view: &mut ViewState,
    wishes: &mut Vec<Action>,
) {
    let id = Id::unique("find a setting");
    let response = ui
        .horizontal(|ui| {
            let label = ui.label("Find");
            let field = TextEdit::singleline(&mut view.listed.find)
                .id(id)
                .hint_text("one label a dial")
                .desired_width(f32::INFINITY);
            let why = "Type a setting as the dials show it; Enter turns the dials there";
            ui.add(field).labelled_by(label.id).on_hover_text(why)
        })
        .inner;
    if view.listed.find.trim().is_empty() {
        return;
    }
    let typed = read_setting(shown.design, &view.listed.find);
    let marks = typed.map_err(|err| setting_error(&err)).and_then(|marks| {
        let marks: Vec<u16> = marks
            .into_iter()
            .filter_map(|mark| u16::try_from(mark).ok())
            .collect();
        let none = || "this design has no such setting".to_owned();
        let before = shown.ranked.before(view.listed.filter, &marks);
        before.map(|before| (marks, before)).ok_or_else(none)
    });
    match marks {
        Err(why) => {
            let ink = theme::ink(ui.ctx(), Ink::Note);
            let said = format!("Not found: {why}.");
            ui.label(RichText::new(said).small().color(ink));
        }
        Ok((marks, before)) => {
            if response.changed() {
                (view.listed.first, view.listed.at) = (before, before);
            }
            let entered = response.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
            if found_ui(ui, shown, look, &marks, view) || entered {
                wishes.push(Action::Pose(PoseChange::all(&marks)));
            }
        }
    }
}

/// The row of the setting that was found; whether it was clicked.
fn found_ui(ui: &mut Ui, shown: Shown<'_>, look: &Look, marks: &[u16], view: &ViewState) -> bool {
    let Some(setting) = shown.ranked.setting(marks) else {
        return false;
    };
    let size = egui::vec2(ui.available_width(), look.height);
    let (rect, response) = ui.allocate_exact_size(size, egui::Sense::click());
    let named = format!("Found {}", row::sentence(shown.design, &setting));
    let state = row::State {
        shown: row::shown(shown.design, view, marks),
        at: response.has_focus(),
        ruled: true,
    };
    row::row_ui(ui, shown.design, &setting, look, rect, state);
    response.widget_info(|| WidgetInfo::selected(Role::Button, true, state.shown, &named));
    response.clicked()
}

/// Goes to a row by its number; nothing where every row is in sight.
fn number_ui(ui: &mut Ui, ranked: &Ranked<'_>, view: &mut ViewState) {
    let count = ranked.count(view.listed.filter);
    if count <= list::ROWS {
        return;
    }
    let from = grouped(view.listed.first + 1);
    let why = format!("Which of {} stands in the uppermost row", grouped(count));
    let entered = field::word_ui(ui, "From number", &from, &why, |text| number(text, count));
    if let Some(number) = entered {
        (view.listed.first, view.listed.at) = (number - 1, number - 1);
    }
}

/// A whole number from 1 to `count`, grouped or not.
fn number(text: &str, count: u128) -> Result<u128, String> {
    let digits: String = text
        .chars()
        .filter(|letter| !letter.is_whitespace())
        .collect();
    let number = digits.parse::<u128>().ok();
    let number = number.filter(|number| (1..=count).contains(number));
    number.ok_or_else(|| format!("type a whole number from 1 to {}", grouped(count)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_number_is_read_as_it_is_shown_and_none_beyond_the_list_is_taken() {
        let many = 360_u128.pow(12);
        assert_eq!(number(&grouped(many), many), Ok(many));
        assert_eq!(number(" 12 345 ", many), Ok(12_345));
        for text in ["0", "513", "-1", "1.5", "", "x", "9".repeat(60).as_str()] {
            let why = number(text, 512).unwrap_err();
            assert_eq!(why, "type a whole number from 1 to 512", "{text}");
        }
    }
}
