//! Trying the latch as its recipient will: what the dials show, what that does, and a hunt for
//! openings that should not be there.

use egui::{ProgressBar, RichText, ScrollArea, Ui};
use latchwright_drawing::Ink;
use latchwright_model::Design;
use latchwright_proof::hunt::Hunt;

use crate::action::Action;
use crate::command::{Command, Standing};
use crate::hunting::Hunting;
use crate::theme;
use crate::view_state::{PoseChange, ViewState};
use crate::words;

/// The panel.
pub fn try_ui(
    ui: &mut Ui,
    standing: &Standing<'_>,
    view: &mut ViewState,
    hunting: &Hunting,
    wishes: &mut Vec<Action>,
) {
    let session = standing.session;
    let design = session.design();
    ScrollArea::vertical()
        .auto_shrink([false, false])
        .show(ui, |ui| {
            // leaves the scroll bar its room
            ui.set_max_width(ui.available_width() - 10.0);
            if design.dials.is_empty() {
                ui.label("This latch has no dial yet: add one under Lay out.");
                return;
            }
            shown_ui(ui, design, view);
            opening_ui(ui, design, view, wishes);
            ui.horizontal_wrapped(|ui| {
                Command::Shuffle.button_ui(ui, standing, wishes);
                Command::Slide.button_ui(ui, standing, wishes);
            });
            ui.separator();
            eyes_ui(ui, view);
            ui.separator();
            hunt_ui(ui, standing, hunting, wishes);
        });
}

fn shown_ui(ui: &mut Ui, design: &Design, view: &ViewState) {
    ui.label(RichText::new("The dials show").weak());
    let labels = words::setting(design, view);
    ui.label(RichText::new(labels).family(theme::bold()).size(28.0));
}

/// The nearest setting that opens, and the way there.
fn opening_ui(ui: &mut Ui, design: &Design, view: &ViewState, wishes: &mut Vec<Action>) {
    let marks = view.marks(design);
    let turns: Vec<(usize, i64)> = marks
        .iter()
        .enumerate()
        .filter_map(|(dial, mark)| {
            let turn = shorter_way(design, dial, *mark);
            (turn != 0).then_some((dial, turn))
        })
        .collect();
    ui.add_space(8.0);
    if turns.is_empty() {
        ui.label("This is the combination: slide, and lift the lid.");
        return;
    }
    ui.label(RichText::new("Nearest setting that opens").weak());
    for (dial, turn) in &turns {
        let marks = turn.unsigned_abs();
        let (s, way) = (
            if marks == 1 { "" } else { "s" },
            if *turn > 0 {
                "clockwise"
            } else {
                "anticlockwise"
            },
        );
        ui.label(format!("Turn dial {} by {marks} mark{s} {way}.", dial + 1));
    }
    if ui.button("Turn the dials there").clicked() {
        let marks = turns.iter().map(|(dial, _)| (*dial, design.digit(*dial)));
        wishes.push(Action::Pose(PoseChange::Marks(marks.collect())));
    }
}

/// Marks from `mark` to the digit, clockwise above 0, the shorter way round.
fn shorter_way(design: &Design, dial: usize, mark: u32) -> i64 {
    let Some(of) = design.dials.get(dial) else {
        return 0;
    };
    let round = i64::from(of.positions.max(1));
    let on = (i64::from(design.digit(dial)) - i64::from(mark)).rem_euclid(round);
    if on * 2 > round { on - round } else { on }
}

/// What one sees: the lid as given, or what moves beneath.
fn eyes_ui(ui: &mut Ui, view: &mut ViewState) {
    ui.label(RichText::new("What is seen").weak());
    ui.horizontal_wrapped(|ui| {
        for (name, veil) in [("As the recipient", 1.0), ("What moves beneath", 0.0)] {
            let on = (view.veil - veil).abs() < 1e-9;
            if ui.selectable_label(on, name).clicked() {
                view.veil = veil;
            }
        }
    });
}

fn hunt_ui(ui: &mut Ui, standing: &Standing<'_>, hunting: &Hunting, wishes: &mut Vec<Action>) {
    ui.label(RichText::new("Openings that should not be there").weak());
    if let Some(done) = hunting.progress() {
        ui.horizontal(|ui| {
            ui.add(ProgressBar::new(done).desired_width(110.0));
            Command::StopHunting.button_ui(ui, standing, wishes);
        });
        return;
    }
    Command::Hunt.button_ui(ui, standing, wishes);
    let session = standing.session;
    if let Some(found) = hunting.of(session.revision()) {
        found_ui(ui, session.design(), found);
    }
}

fn found_ui(ui: &mut Ui, design: &Design, found: &Hunt) {
    let others: Vec<&Vec<u32>> = found
        .found
        .iter()
        .filter(|marks| **marks != design.combination)
        .collect();
    let wrong = found
        .open
        .saturating_sub(u128::from(others.len() < found.found.len()));
    let reading = design.workmanship.reading;
    let (words, role) = if wrong == 0 {
        let words = format!(
            "All {} settings tried, each pointer up to {reading}° off its mark: none opens but the combination.",
            found.settings
        );
        (words, Ink::Passes)
    } else {
        (
            format!(
                "{wrong} of {} settings open beside the combination:",
                found.settings
            ),
            Ink::Blocks,
        )
    };
    ui.label(RichText::new(words).color(theme::ink(ui.ctx(), role)));
    for marks in others {
        let labels = design.dials.iter().zip(marks.iter());
        let labels: Vec<String> = labels.map(|(dial, mark)| dial.label(*mark)).collect();
        ui.label(labels.join(" "));
    }
    let words = "Tried on the latch exactly as drawn. What holds after errors, wear and weather is under Prove.";
    ui.label(RichText::new(words).small().weak());
}
