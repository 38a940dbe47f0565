//! Each dial at each mark: passes, holds or unsure, by sign as well as by colour.

use egui::accesskit::Role;
use egui::{
    Align2, CollapsingHeader, FontId, RichText, Sense, Stroke, Ui, Vec2, WidgetInfo, pos2, vec2,
};
use latchwright_drawing::Ink;
use latchwright_model::Design;
use latchwright_proof::{DialProof, MarkProof, Proof, StopsAt, Verdict};

use crate::action::Action;
use crate::theme;
use crate::view_state::{PoseChange, ViewState};
use crate::words;

/// Above this many marks a dial's row becomes a strip of narrow cells without labels.
const CELLS: usize = 24;

/// Width of the names in front of the rows.
const NAME: f32 = 52.0;

/// Above this many marks a dial's row folds away behind how many there are of each kind.
const FOLDED: usize = 72;

/// The grid and its legend.
pub fn grid_ui(
    ui: &mut Ui,
    design: &Design,
    proof: &Proof,
    view: &ViewState,
    wishes: &mut Vec<Action>,
) {
    ui.label(RichText::new("Each dial at each mark").weak());
    for (index, found) in proof.dials.iter().enumerate().take(design.dials.len()) {
        if found.marks.len() > FOLDED {
            CollapsingHeader::new(summary(index, found))
                .id_salt(("marks of dial", index))
                .default_open(index == view.dial && proof.dials.len() == 1)
                .show_unindented(ui, |ui| cells_ui(ui, design, index, found, view, wishes));
        } else {
            ui.horizontal_top(|ui| {
                ui.spacing_mut().item_spacing = vec2(3.0, 3.0);
                let name = egui::Label::new(format!("dial {}", index + 1));
                let size = cell_size(ui.available_width() - NAME, found.marks.len(), 0);
                ui.add_sized(vec2(NAME - 3.0, size.y), name);
                cells_ui(ui, design, index, found, view, wishes);
            });
        }
    }
    legend_ui(ui);
}

/// How many marks of a dial are of each kind.
fn summary(index: usize, found: &DialProof) -> String {
    let number = |verdict| {
        let marks = found.marks.iter();
        marks.filter(|mark| mark.verdict == verdict).count()
    };
    format!(
        "dial {}: {} pass, {} hold, {} unsure",
        index + 1,
        number(Verdict::Passes),
        number(Verdict::Holds),
        number(Verdict::Unsure)
    )
}

/// The cells of one dial; a click turns it there.
fn cells_ui(
    ui: &mut Ui,
    design: &Design,
    index: usize,
    found: &DialProof,
    view: &ViewState,
    wishes: &mut Vec<Action>,
) {
    let Some(dial) = design.dials.get(index) else {
        return;
    };
    let shown = view.mark(design, index) as usize;
    let longest = (0..dial.positions.min(360))
        .map(|mark| dial.label(mark).chars().count())
        .max();
    let size = cell_size(
        ui.available_width(),
        found.marks.len(),
        longest.unwrap_or(0),
    );
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = vec2(3.0, 3.0);
        // rows as low as their cells
        ui.spacing_mut().interact_size.y = size.y;
        for (mark, proof) in (0_u32..).zip(&found.marks) {
            let cell = Cell {
                dial: index,
                label: dial.label(mark),
                proof,
                shown: mark as usize == shown,
                size,
            };
            if cell_ui(ui, design, &cell) {
                wishes.push(Action::Pose(PoseChange::Mark { dial: index, mark }));
            }
        }
    });
}

/// Long words take as many rows as let them be read, more than twelve marks two rows, very many a
/// strip of narrow cells.
fn cell_size(space: f32, marks: usize, letters: usize) -> Vec2 {
    if marks > CELLS {
        return vec2(9.0, 16.0);
    }
    let wordy = letters > 3;
    let rows = match marks {
        _ if wordy => {
            let letters = f32::from(u8::try_from(letters.min(8)).unwrap_or(8));
            let need = letters * 6.5 + 9.5;
            (1..marks).find(|rows| each(space, marks.div_ceil(*rows)) >= need)
        }
        13.. => Some(2),
        _ => Some(1),
    };
    let in_row = marks.div_ceil(rows.unwrap_or(marks).max(1));
    let width = each(space, in_row) - 3.5;
    vec2(width.clamp(18.0, if wordy { 70.0 } else { 40.0 }), 34.0)
}

/// Room for each of so many cells, points.
fn each(space: f32, cells: usize) -> f32 {
    space / u8::try_from(cells.max(1)).map_or(255.0, f32::from)
}

struct Cell<'a> {
    dial: usize,
    label: String,
    proof: &'a MarkProof,
    shown: bool,
    size: Vec2,
}

/// Paints a cell; whether it was clicked.
fn cell_ui(ui: &mut Ui, design: &Design, cell: &Cell<'_>) -> bool {
    let (rect, response) = ui.allocate_exact_size(cell.size, Sense::click());
    let said = sentence(design, cell);
    response.widget_info(|| WidgetInfo::selected(Role::Button, true, cell.shown, &said));
    if ui.is_rect_visible(rect) {
        let at = |role| theme::ink(ui.ctx(), role);
        let (ink, ground) = match cell.proof.verdict {
            Verdict::Passes => (at(Ink::Passes), at(Ink::Part)),
            Verdict::Holds => (at(Ink::Label), at(Ink::Paper)),
            Verdict::Unsure => (at(Ink::Blocks), at(Ink::BlocksTint)),
        };
        let edge = if cell.shown || response.has_focus() {
            Stroke::new(2.0, at(Ink::Movable))
        } else if cell.proof.verdict == Verdict::Passes {
            Stroke::new(1.5, ink)
        } else {
            Stroke::new(1.0, at(Ink::DeepWood))
        };
        let painter = ui.painter();
        painter.rect(rect, 3.0, ground, edge, egui::StrokeKind::Inside);
        let tall = cell.size.y > 20.0;
        let middle = pos2(
            rect.center().x,
            if tall {
                rect.top() + 11.0
            } else {
                rect.center().y
            },
        );
        sign(
            ui,
            middle,
            cell.proof.verdict,
            ink,
            if tall { 4.5 } else { 2.5 },
        );
        if tall {
            let text: String = cell.label.chars().take(8).collect();
            let font = FontId::proportional(11.0);
            let place = pos2(rect.center().x, rect.bottom() - 9.0);
            let clipped = painter.with_clip_rect(rect);
            clipped.text(place, Align2::CENTER_CENTER, text, font, at(Ink::Note));
        }
    }
    response.on_hover_text(said).clicked()
}

/// A ring for passes, a bar for holds, a cross for unsure.
pub fn sign(ui: &Ui, at: egui::Pos2, verdict: Verdict, ink: egui::Color32, size: f32) {
    let painter = ui.painter();
    let stroke = Stroke::new(2.0, ink);
    match verdict {
        Verdict::Passes => {
            painter.circle_stroke(at, size, stroke);
        }
        Verdict::Holds => {
            painter.line_segment([at - vec2(size, 0.0), at + vec2(size, 0.0)], stroke);
        }
        Verdict::Unsure => {
            let arm = size * 0.8;
            painter.line_segment([at - vec2(arm, arm), at + vec2(arm, arm)], stroke);
            painter.line_segment([at + vec2(-arm, arm), at + vec2(arm, -arm)], stroke);
        }
    }
}

fn sentence(design: &Design, cell: &Cell<'_>) -> String {
    let proof = cell.proof;
    let margin = words::length(proof.margin, design.units);
    let what = match proof.verdict {
        Verdict::Passes => format!("passes, {margin} clear"),
        Verdict::Holds => format!("holds, {margin} of tab to spare"),
        Verdict::Unsure if proof.reach.stops_at == StopsAt::Free => {
            "unsure, though nothing stops it with nothing off".to_owned()
        }
        Verdict::Unsure => {
            format!(
                "unsure, meets {} with nothing off",
                words::touched(proof.reach.stops_at)
            )
        }
    };
    format!("Dial {} at {}: {what}", cell.dial + 1, cell.label)
}

fn legend_ui(ui: &mut Ui) {
    ui.horizontal(|ui| {
        ui.add_space(NAME);
        for (verdict, word, role) in [
            (Verdict::Passes, "passes", Ink::Passes),
            (Verdict::Holds, "holds", Ink::Label),
            (Verdict::Unsure, "unsure", Ink::Blocks),
        ] {
            let (rect, _) = ui.allocate_exact_size(vec2(14.0, 16.0), Sense::hover());
            sign(ui, rect.center(), verdict, theme::ink(ui.ctx(), role), 4.5);
            ui.label(RichText::new(word).small().weak());
            ui.add_space(8.0);
        }
    });
}
