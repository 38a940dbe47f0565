//! The checks, what fails first, then by margin; each opens to its figures and its remedy.

use egui::{CollapsingHeader, RichText, Sense, Stroke, Ui, pos2, vec2};
use latchwright_drawing::Ink;
use latchwright_session::report;
use latchwright_session::units;
use latchwright_solver::model::Design;
use latchwright_solver::{Check, CheckVerdict, Proof, Unit};

use crate::theme;

/// Room for the figure and its unit.
const FIGURE: f32 = 96.0;

/// All checks.
pub fn checks_ui(ui: &mut Ui, design: &Design, proof: &Proof) {
    ui.horizontal(|ui| {
        ui.label(RichText::new("Checks, tightest first").weak());
        ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
            ui.label(RichText::new("margin").weak());
        });
    });
    let fails = |check: &&Check| check.verdict != CheckVerdict::Passes;
    let (failing, passing): (Vec<&Check>, Vec<&Check>) = proof.checks.iter().partition(fails);
    for check in failing {
        check_ui(ui, design, check);
    }
    for check in passing.iter().filter(|check| check.unit == Unit::Millimetre) {
        check_ui(ui, design, check);
    }
    let counted: Vec<_> =
        passing.iter().filter(|check| check.unit != Unit::Millimetre).collect();
    if !counted.is_empty() {
        CollapsingHeader::new(RichText::new(format!("{} more that hold", counted.len())).small())
            .id_salt("checks that hold")
            .show(ui, |ui| {
                for check in counted {
                    ui.label(RichText::new(&check.title).small());
                }
            });
    }
}

fn check_ui(ui: &mut Ui, design: &Design, check: &Check) {
    let passes = check.verdict == CheckVerdict::Passes;
    let role = if passes { Ink::Label } else { Ink::Blocks };
    let id = format!("{} {:?}", check.name, check.dial);
    ui.horizontal_top(|ui| {
        let room = ui.available_width() - FIGURE;
        ui.vertical(|ui| {
            ui.set_width(room);
            let sign = if passes { "" } else { "✗ " };
            let title = RichText::new(format!("{sign}{}", check.title));
            let title = title.color(theme::ink(ui.ctx(), role));
            CollapsingHeader::new(title).id_salt(id).show(ui, |ui| detail_ui(ui, design, check));
        });
        figure_ui(ui, design, check);
    });
}

fn figure_ui(ui: &mut Ui, design: &Design, check: &Check) {
    let passes = check.verdict == CheckVerdict::Passes;
    ui.vertical(|ui| {
        ui.spacing_mut().item_spacing.y = 2.0;
        ui.horizontal(|ui| {
            ui.set_width(FIGURE - 4.0);
            ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
                let (figure, unit) = figure(check.margin, check.unit, design);
                ui.add_sized(vec2(22.0, 20.0), egui::Label::new(RichText::new(unit).weak()));
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
    let (rect, _) = ui.allocate_exact_size(vec2(FIGURE - 4.0, 6.0), Sense::hover());
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
            (format!("{:.places$}", value / per), units::unit_name(design.units))
        }
        Unit::Degree => (format!("{value:.2}"), "°"),
        Unit::Count => (format!("{value:.0}"), ""),
    }
}

fn detail_ui(ui: &mut Ui, design: &Design, check: &Check) {
    let said = |value| {
        let (figure, unit) = figure(value, check.unit, design);
        format!("{figure} {unit}")
    };
    let small = |text: String| RichText::new(text).small();
    ui.label(small(format!("Worst case {}, must be at least {}", said(check.value), said(check.limit))));
    if !check.decided_by.is_empty() {
        let parts: Vec<String> = check
            .decided_by
            .iter()
            .take(5)
            .map(|(name, amount)| format!("{} {}", report::contributor(name), said(*amount)))
            .collect();
        ui.label(small(format!("Decided by {}", parts.join(", "))).weak());
    }
    ui.label(small(sentence(&check.remedy)));
}

/// With a capital and a full stop.
fn sentence(text: &str) -> String {
    let mut letters = text.chars();
    match letters.next() {
        Some(first) => format!("{}{}.", first.to_uppercase(), letters.as_str()),
        None => String::new(),
    }
}
