//! Virtual builds: the button, progress, and what they come to, each margin's spread drawn and said.

use std::iter;

use egui::accesskit::Role;
use egui::{
    CollapsingHeader, ProgressBar, Rect, RichText, Sense, Stroke, StrokeKind, Ui, WidgetInfo, pos2,
    vec2,
};
use latchwright_drawing::Ink;
use latchwright_model::Units;
use latchwright_proof::builds::{Builds, Margin};
use latchwright_session::report;

use crate::action::Action;
use crate::command::{Command, Standing};
use crate::theme;
use crate::virtual_builds::{COUNT, VirtualBuilds};
use crate::words::length;

/// Height of one margin's drawing, points.
const ROW: f32 = 14.0;

/// The panel of the virtual builds of a design in this state.
pub fn builds_ui(
    ui: &mut Ui,
    standing: &Standing<'_>,
    builds: &VirtualBuilds,
    wishes: &mut Vec<Action>,
) {
    let session = standing.session;
    CollapsingHeader::new("Virtual builds")
        .default_open(true)
        .show_unindented(ui, |ui| {
            if let Some(done) = builds.progress() {
                progress_ui(ui, standing, done, wishes);
                return;
            }
            Command::Build.button_ui(ui, standing, wishes);
            if let Some(found) = builds.of(session.revision()) {
                found_ui(ui, session.design().units, found);
            }
        });
}

#[expect(clippy::cast_possible_truncation, reason = "a share between 0 and 1")]
fn progress_ui(ui: &mut Ui, standing: &Standing<'_>, done: u64, wishes: &mut Vec<Action>) {
    ui.horizontal(|ui| {
        Command::StopBuilding.button_ui(ui, standing, wishes);
        let share = (done as f64 / COUNT as f64) as f32;
        ui.add(ProgressBar::new(share).text(format!("{done} of {COUNT} built")));
    });
}

fn found_ui(ui: &mut Ui, units: Units, found: &Builds) {
    for sentence in report::builds_sentences(found) {
        ui.label(sentence);
    }
    if found.contradictions > 0 {
        let colour = theme::ink(ui.ctx(), Ink::Blocks);
        ui.label(RichText::new(report::builds_fault(found)).color(colour));
    }
    ui.label(
        RichText::new(
            "Spread of each margin: line from least to largest, bar for nine builds in ten, stroke at 0",
        )
        .small()
        .weak(),
    );
    let most = found.margins.iter().map(|margin| margin.largest);
    let least = found.margins.iter().map(|margin| margin.least);
    let range = (least.fold(0.0, f64::min), most.fold(0.1, f64::max));
    for margin in &found.margins {
        margin_ui(ui, units, margin, range);
    }
}

fn margin_ui(ui: &mut Ui, units: Units, margin: &Margin, range: (f64, f64)) {
    let name = report::margin_name(margin);
    let said = format!(
        "{name}: least {}, nine in ten from {} to {}",
        length(margin.least, units),
        length(margin.low, units),
        length(margin.high, units)
    );
    ui.horizontal(|ui| {
        ui.label(RichText::new(name).small());
        ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
            ui.label(RichText::new(format!("least {}", length(margin.least, units))).small());
        });
    });
    let size = vec2(ui.available_width(), ROW);
    let (rect, response) = ui.allocate_exact_size(size, Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Image, true, &said));
    let response = response.on_hover_text(explained(&said, margin));
    if ui.is_rect_visible(response.rect) {
        strip_ui(ui, rect, margin, range);
    }
}

fn explained(said: &str, margin: &Margin) -> String {
    let parts = margin.explained.iter().take(3).map(|(who, share)| {
        let who = report::contributor(*who);
        format!("\n{:.0} % of the spread: {who}", share * 100.0)
    });
    iter::once(said.to_owned()).chain(parts).collect()
}

#[expect(clippy::cast_possible_truncation, reason = "points on the screen")]
fn strip_ui(ui: &Ui, rect: Rect, margin: &Margin, (least, most): (f64, f64)) {
    let x = |value: f64| {
        let share = ((value - least) / (most - least)).clamp(0.0, 1.0) as f32;
        rect.left() + share * rect.width()
    };
    let colour = |ink| theme::ink(ui.ctx(), ink);
    let painter = ui.painter();
    let middle = rect.center().y;
    let ink = if margin.least < 0.0 {
        Ink::Blocks
    } else {
        Ink::Label
    };
    painter.hline(
        x(margin.least)..=x(margin.largest),
        middle,
        Stroke::new(1.0, colour(ink)),
    );
    let bar = Rect::from_min_max(
        pos2(x(margin.low), middle - 3.0),
        pos2(x(margin.high), middle + 3.0),
    );
    painter.rect(
        bar,
        0.0,
        theme::ink(ui.ctx(), Ink::Faint),
        Stroke::new(1.0, colour(ink)),
        StrokeKind::Inside,
    );
    painter.vline(
        x(margin.mean),
        middle - 5.0..=middle + 5.0,
        Stroke::new(1.5, colour(ink)),
    );
    painter.vline(x(0.0), rect.y_range(), Stroke::new(1.0, colour(Ink::Note)));
}
