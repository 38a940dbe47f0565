//! The combination: chosen or drawn by rules, and how each disc goes into its knob for it.

use egui::{ComboBox, Id, RichText, Ui, WidgetInfo, vec2};
use latchwright_drawing::{Ink, disc_from_back};
use latchwright_model::Design;
use latchwright_model::combination::{Weakness, weakness};
use latchwright_papers::DiscSeat;
use latchwright_words::weakness_rule;

use crate::action::Action;
use crate::canvas::picture_ui;
use crate::command::{Command, Standing};
use crate::edit::Edit;
use crate::theme;
use crate::view_state::ViewState;

/// Side of the picture of a disc, points.
const LEAST_DISC: f32 = 84.0;
const MOST_DISC: f32 = 128.0;

/// Choosing and drawing.
pub fn combination_ui(
    ui: &mut Ui,
    standing: &Standing<'_>,
    view: &ViewState,
    wishes: &mut Vec<Action>,
) {
    let design = standing.session.design();
    let marks: Vec<u32> = (0..design.dials.len())
        .map(|dial| design.digit(dial))
        .collect();
    ui.horizontal_wrapped(|ui| {
        for (index, dial) in design.dials.iter().enumerate() {
            let now = design.digit(index);
            let name = format!("Dial {} opens at", index + 1);
            let combo = ComboBox::from_id_salt(Id::unique("digit").with(index))
                .width(56.0)
                .selected_text(dial.label(now));
            let response = combo.show_ui(ui, |ui| {
                for mark in 0..dial.positions.min(360) {
                    if ui.selectable_label(mark == now, dial.label(mark)).clicked() && mark != now {
                        let mut marks = marks.clone();
                        marks[index] = mark;
                        wishes.push(take(marks));
                    }
                }
            });
            response.response.widget_info(|| {
                let said = format!("{name} {}", dial.label(now));
                WidgetInfo::labeled(egui::accesskit::Role::ComboBox, true, said)
            });
        }
    });
    ui.horizontal_wrapped(|ui| {
        Command::DrawCombination.button_ui(ui, standing, wishes);
        let shown = view.marks(design);
        let differs = shown != marks;
        let button = egui::Button::new("Take what the dials show");
        if ui.add_enabled(differs, button).clicked() {
            wishes.push(take(shown));
        }
    });
    let rules = Weakness::ALL.map(weakness_rule).join("; ");
    ui.label(
        RichText::new(format!("Drawn by these rules: {rules}."))
            .small()
            .weak(),
    );
    // what it was before is not known here, so that only the first two rules can be held against it
    if let Some(weak) = weakness(design, &marks, &[])
        && design.dials.len() > 1
    {
        let words = format!("! Easy to guess; better: {}.", weakness_rule(weak));
        let colour = theme::ink(ui.ctx(), Ink::Blocks);
        ui.label(RichText::new(words).small().color(colour));
    }
}

/// The wish for this combination.
fn take(marks: Vec<u32>) -> Action {
    Action::Edit(Edit::Combination(marks))
}

/// How each disc goes into its knob, from the back.
pub fn setting_ui(ui: &mut Ui, design: &Design) {
    let words = "From the back, hinge away from you, every pointer at the mark nearest the hinge: the filled slot is the true one.";
    ui.label(RichText::new(words).small().weak());
    // three beside each other where there is room
    let side = ((ui.available_width() - 18.0) / 3.0).clamp(LEAST_DISC, MOST_DISC);
    ui.horizontal_wrapped(|ui| {
        for (seat, dial) in DiscSeat::all(design).iter().zip(&design.dials) {
            ui.vertical(|ui| {
                ui.set_width(side);
                let drawing = disc_from_back(dial, seat.clockwise);
                let said = format!("{} opens at {}: {}", seat.name, seat.label, seat.words);
                picture_ui(ui, vec2(side, side), &drawing, &said);
                ui.label(RichText::new(said.as_str()).small());
            });
        }
    });
    for notice in DiscSeat::notices(design) {
        let colour = theme::ink(ui.ctx(), Ink::Blocks);
        ui.label(RichText::new(format!("! {notice}")).small().color(colour));
    }
    let words = "How to change it later, with a check, stands on the paper “Setting the combination” under Make.";
    ui.label(RichText::new(words).small().weak());
}
