//! The checks, what fails first, then by margin; each opens to its figures and its remedy.

use egui::accesskit::Role;
use egui::collapsing_header::{CollapsingState, paint_default_icon};
use egui::{Button, CollapsingHeader, Label, RichText, Sense, Stroke, Ui, WidgetInfo, pos2, vec2};
use latchwright_drawing::Ink;
use latchwright_model::Design;
use latchwright_model::Unit;
use latchwright_proof::{Check, CheckVerdict};
use latchwright_session::report::{self, Sought};
use latchwright_session::units;
use latchwright_words::{advice, capital, change_title, check_title};

use super::proof::Proven;
use crate::action::Action;
use crate::edit::Edit;
use crate::theme;

/// Room for the figure and its unit.
const FIGURE: f32 = 84.0;

/// All checks: one row a kind, its tightest; the other dials are in its detail.
pub fn checks_ui(ui: &mut Ui, proven: &Proven<'_>, wishes: &mut Vec<Action>) {
    let design = proven.standing.session.design();
    let width = ui.available_width();
    ui.horizontal(|ui| {
        ui.label(RichText::new("Checks, tightest first").weak());
        ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
            ui.label(RichText::new("margin").weak());
        });
    });
    let mut kinds: Vec<Vec<Told<'_>>> = Vec::new();
    for (index, check) in proven.proof.checks.iter().enumerate() {
        let told = Told {
            check,
            sought: Sought::of(proven.remedies, index),
        };
        let same =
            |kind: &&mut Vec<Told<'_>>| kind.iter().any(|other| other.check.kind == check.kind);
        match kinds.iter_mut().find(same) {
            Some(kind) => kind.push(told),
            None => kinds.push(vec![told]),
        }
    }
    let measured = |check: &Check| check.unit == Unit::Millimetre;
    let shown = |check: &Check| measured(check) || check.verdict != CheckVerdict::Passes;
    for kind in &kinds {
        if let Some((first, others)) = kind.split_first().filter(|(first, _)| shown(first.check)) {
            check_ui(ui, design, first, others, width);
            remedy_ui(ui, design, first, wishes);
        }
    }
    let counted: Vec<&Check> = kinds
        .iter()
        .filter_map(|kind| kind.first().map(|first| first.check))
        .filter(|first| !shown(first))
        .collect();
    if !counted.is_empty() {
        CollapsingHeader::new(RichText::new(format!("{} more that hold", counted.len())).small())
            .id_salt("checks that hold")
            .show(ui, |ui| {
                for check in counted {
                    ui.label(RichText::new(check_title(check, design)).small());
                    if check.advises() {
                        ui.label(
                            RichText::new(sentence(&advice(check, design)))
                                .small()
                                .weak(),
                        );
                    }
                }
            });
    }
}

/// A check, and what was found to mend it.
#[derive(Clone, Copy)]
struct Told<'a> {
    check: &'a Check,
    sought: Sought<'a>,
}

/// The change that mends a check that fails, one click away.
fn remedy_ui(ui: &mut Ui, design: &Design, told: &Told<'_>, wishes: &mut Vec<Action>) {
    let Sought::Found(remedy) = told.sought else {
        return;
    };
    let title = change_title(&remedy.change);
    let said = sentence(&report::remedy_sentence(design, told.check, told.sought));
    let button = ui.add(Button::new(RichText::new(&title).small()).wrap());
    let name = format!("{title}: {}", check_title(told.check, design));
    button.widget_info(|| WidgetInfo::labeled(Role::Button, true, &name));
    if button.on_hover_text(said).clicked() {
        wishes.push(Action::Edit(Edit::Remedy {
            label: title,
            change: remedy.change.clone(),
        }));
    }
}

fn check_ui(ui: &mut Ui, design: &Design, told: &Told<'_>, others: &[Told<'_>], width: f32) {
    let check = told.check;
    let passes = check.verdict == CheckVerdict::Passes;
    let role = if passes { Ink::Label } else { Ink::Blocks };
    let id = ui.make_persistent_id(check.kind.code());
    let asks = check_title(check, design);
    let mut open = CollapsingState::load_with_default_open(ui.ctx(), id, false);
    ui.horizontal_top(|ui| {
        ui.spacing_mut().item_spacing.x = 4.0;
        let arrow = open.show_toggle_button(ui, paint_default_icon);
        arrow.widget_info(|| WidgetInfo::labeled(Role::DisclosureTriangle, true, &asks));
        let sign = if passes { "" } else { "✗ " };
        let title = RichText::new(format!("{sign}{asks}"));
        let title = title.color(theme::ink(ui.ctx(), role));
        let space = (width - FIGURE - 40.0).max(80.0);
        ui.vertical(|ui| {
            ui.set_width(space);
            if ui
                .add(Label::new(title).wrap().sense(Sense::click()))
                .clicked()
            {
                open.toggle(ui);
            }
        });
        figure_ui(ui, design, check);
    });
    open.show_body_unindented(ui, |ui| {
        ui.set_max_width(width);
        detail_ui(ui, design, told);
        others_ui(ui, design, others);
    });
}

/// The same check on other dials.
fn others_ui(ui: &mut Ui, design: &Design, others: &[Told<'_>]) {
    let margins: Vec<String> = others
        .iter()
        .filter_map(|Told { check, .. }| {
            let (figure, unit) = figure(check.margin, check.unit, design);
            Some(format!("dial {} {figure} {unit}", check.dial()? + 1))
        })
        .collect();
    if !margins.is_empty() {
        ui.label(
            RichText::new(format!("Margin elsewhere: {}", margins.join(", ")))
                .small()
                .weak(),
        );
    }
}

fn figure_ui(ui: &mut Ui, design: &Design, check: &Check) {
    let passes = check.verdict == CheckVerdict::Passes;
    ui.vertical(|ui| {
        ui.set_width(FIGURE);
        ui.spacing_mut().item_spacing.y = 2.0;
        ui.horizontal(|ui| {
            ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
                if check.unit == Unit::Count {
                    return;
                }
                let (figure, unit) = figure(check.margin, check.unit, design);
                ui.add_sized(
                    vec2(22.0, 20.0),
                    egui::Label::new(RichText::new(unit).weak()),
                );
                let role = if passes { Ink::Label } else { Ink::Blocks };
                ui.label(RichText::new(figure).color(theme::ink(ui.ctx(), role)));
            });
        });
        if check.unit == Unit::Millimetre {
            bar_ui(ui, check.margin, passes);
        }
    });
}

/// The margin as a bar, 3 mm full; short of the limit it is hatched to the left.
fn bar_ui(ui: &mut Ui, margin: f64, passes: bool) {
    let (rect, _) = ui.allocate_exact_size(vec2(FIGURE, 6.0), Sense::hover());
    let at = |role| theme::ink(ui.ctx(), role);
    let painter = ui.painter();
    painter.rect_filled(rect, 0.0, at(Ink::DeepWood));
    #[expect(clippy::cast_possible_truncation, reason = "a share of a bar")]
    let share = (margin.abs() / 3.0).clamp(0.02, 1.0) as f32;
    let mut filled = rect;
    filled.set_width(rect.width() * share);
    if passes {
        painter.rect_filled(filled, 0.0, at(Ink::Passes));
    } else {
        painter.rect_filled(filled, 0.0, at(Ink::Blocks));
        let stroke = Stroke::new(1.0, at(Ink::Paper));
        let mut x = filled.left() + 3.0;
        while x < filled.right() {
            painter.line_segment([pos2(x, rect.top()), pos2(x, rect.bottom())], stroke);
            x += 4.0;
        }
    }
}

fn figure(value: f64, unit: Unit, design: &Design) -> (String, &'static str) {
    match unit {
        Unit::Millimetre => {
            let per = units::mm_per(design.units);
            let places = if per > 1.0 { 3 } else { 2 };
            (
                format!("{:.places$}", value / per),
                units::unit_name(design.units),
            )
        }
        Unit::Degree => (format!("{value:.2}"), "°"),
        Unit::Newton => (format!("{value:.1}"), "N"),
        Unit::Ratio => (format!("{value:.2}"), ""),
        Unit::Megapascal => (format!("{value:.1}"), "MPa"),
        Unit::Count => (format!("{value:.0}"), ""),
    }
}

fn detail_ui(ui: &mut Ui, design: &Design, told: &Told<'_>) {
    let check = told.check;
    let said = |value| {
        let (figure, unit) = figure(value, check.unit, design);
        format!("{figure} {unit}")
    };
    let small = |text: String| RichText::new(text).small();
    ui.label(small(format!(
        "Worst case {}, must be at least {}",
        said(check.value),
        said(check.limit)
    )));
    if !check.decided_by.is_empty() {
        let parts: Vec<String> = check
            .decided_by
            .iter()
            .take(5)
            .map(|(what, amount)| format!("{} {}", report::contributor(*what), said(*amount)))
            .collect();
        ui.label(small(format!("Decided by {}", parts.join(", "))).weak());
    }
    let what_to_do = report::remedy_sentence(design, check, told.sought);
    ui.label(small(sentence(&what_to_do)));
}

/// With a capital and a full stop.
fn sentence(text: &str) -> String {
    format!("{}.", capital(text))
}
