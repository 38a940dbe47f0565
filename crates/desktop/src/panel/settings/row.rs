//! One row of the list of settings: labels, sign and word of its verdict, the dial that decides, its
//! margin.

use egui::{Align2, Color32, FontId, Galley, Rect, Sense, Stroke, StrokeKind, Ui, pos2, vec2};
use latchwright_drawing::Ink;
use latchwright_model::Design;
use latchwright_proof::{Setting, Verdict};
use latchwright_session::report::length;
use std::sync::Arc;

use super::word;
use crate::panel::grid::sign;
use crate::theme;
use crate::view_state::ViewState;

/// Height of a line of words, points.
const LINE: f32 = 28.0;
/// Height of the heads of the columns, points.
const HEAD: f32 = 16.0;
/// Room on both sides of a row, points.
const PAD: f32 = 8.0;
/// Room for sign and word, and for the dial and its margin, points.
const VERDICT: f32 = 72.0;
const DECIDES: f32 = 124.0;
/// Most lines for labels.
const LINES: usize = 3;

/// How rows look, the same for all of a design, so that a list never jumps.
pub struct Look {
    /// Height of a row, points.
    pub height: f32,
    /// Labels stand above the rest.
    stacked: bool,
}

/// How one row stands out.
#[derive(Clone, Copy)]
pub struct State {
    /// The dials stand so.
    pub shown: bool,
    /// The keys are here.
    pub at: bool,
    /// A frame all round, for a row that stands alone.
    pub ruled: bool,
}

impl Look {
    /// Rows that are high enough for the longest labels of every dial.
    pub fn of(ui: &Ui, design: &Design) -> Self {
        let longest = design.dials.iter().map(|dial| {
            let labels = (0..dial.positions.min(360)).map(|mark| dial.label(mark));
            labels.max_by_key(|label| label.chars().count())
        });
        let longest: Vec<String> = longest.flatten().collect();
        // leaves the scroll bar its room
        let width = ui.available_width() - 2.0 * PAD - super::track::WIDTH;
        let words = laid_out(ui, longest.join(" "), width, Color32::PLACEHOLDER);
        let stacked = words.size().x + PAD > width - VERDICT - DECIDES || words.rows.len() > 1;
        let height = if stacked { words.size().y + LINE } else { LINE };
        Self { height, stacked }
    }
}

fn laid_out(ui: &Ui, text: String, width: f32, ink: Color32) -> Arc<Galley> {
    let font = FontId::proportional(theme::BODY);
    let mut job = egui::text::LayoutJob::simple(text, font, ink, width.max(40.0));
    job.wrap.max_rows = LINES;
    ui.fonts_mut(|fonts| fonts.layout_job(job))
}

/// What stands in the columns, over rows of this width.
pub fn head_ui(ui: &mut Ui, look: &Look, bar: f32) {
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), HEAD), Sense::hover());
    let right = rect.right() - bar - PAD - 1.0;
    let left = rect.left() + PAD + 1.0;
    let verdict = if look.stacked {
        left
    } else {
        right - VERDICT - DECIDES
    };
    let note = theme::ink(ui.ctx(), Ink::Note);
    let write = |x, anchor, text: &str| {
        let font = FontId::proportional(theme::SMALL);
        let place = pos2(x, rect.center().y);
        ui.painter().text(place, anchor, text, font, note);
    };
    if !look.stacked {
        write(left, Align2::LEFT_CENTER, "labels");
    }
    write(verdict, Align2::LEFT_CENTER, "verdict");
    write(right - DECIDES, Align2::LEFT_CENTER, "decides");
    write(right, Align2::RIGHT_CENTER, "margin");
}

/// Labels of these marks, dial by dial.
pub fn labels(design: &Design, marks: &[u16]) -> String {
    let labels = design.dials.iter().zip(marks);
    let labels: Vec<String> = labels
        .map(|(dial, mark)| dial.label(u32::from(*mark)))
        .collect();
    labels.join(" ")
}

/// Whether the dials stand at these marks.
pub fn shown(design: &Design, view: &ViewState, marks: &[u16]) -> bool {
    let stand = view.marks(design);
    stand.len() == marks.len()
        && stand
            .iter()
            .zip(marks)
            .all(|(on, mark)| *on == u32::from(*mark))
}

/// The row in words.
pub fn sentence(design: &Design, setting: &Setting<'_>) -> String {
    let labels = labels(design, setting.marks);
    let dial = setting.decided_by + 1;
    let margin = length(setting.margin, design.units);
    // rounded down as it stands, so that what is short is never told too small
    let margin = margin.trim_start_matches('−');
    match setting.verdict {
        Verdict::Passes => format!("{labels} opens, dial {dial} is tightest with {margin} clear"),
        Verdict::Holds => {
            format!("{labels} locks, dial {dial} holds with {margin} of tab to spare")
        }
        Verdict::Unsure if setting.margin < 0.0 => {
            format!("{labels} is unsure, dial {dial} comes nearest, {margin} short")
        }
        Verdict::Unsure => format!("{labels} is unsure, dial {dial} can promise nothing"),
    }
}

/// Paints a row.
pub fn row_ui(
    ui: &Ui,
    design: &Design,
    setting: &Setting<'_>,
    look: &Look,
    rect: Rect,
    state: State,
) {
    if !ui.is_rect_visible(rect) {
        return;
    }
    let at = |role| theme::ink(ui.ctx(), role);
    let painter = ui.painter();
    let ink = match setting.verdict {
        Verdict::Passes => at(Ink::Passes),
        Verdict::Holds => at(Ink::Label),
        Verdict::Unsure => at(Ink::Blocks),
    };
    if state.shown {
        painter.rect_filled(rect, 3.0, at(Ink::MovableTint));
    }
    let edge = if state.at {
        Stroke::new(2.0, at(Ink::Movable))
    } else if state.ruled {
        Stroke::new(1.0, at(Ink::Faint))
    } else {
        Stroke::NONE
    };
    painter.rect_stroke(rect, 3.0, edge, StrokeKind::Inside);
    let inner = rect.shrink2(vec2(PAD, 0.0));
    let width = if look.stacked {
        inner.width()
    } else {
        inner.width() - VERDICT - DECIDES
    };
    let words = laid_out(ui, labels(design, setting.marks), width, at(Ink::Label));
    let line = Rect::from_min_max(pos2(inner.left(), rect.bottom() - LINE), inner.max);
    let top = if look.stacked {
        rect.top() + 4.0
    } else {
        line.center().y - words.size().y / 2.0
    };
    painter.galley(pos2(inner.left(), top), words, at(Ink::Label));
    let middle = line.center().y;
    let left = if look.stacked {
        inner.left()
    } else {
        inner.right() - VERDICT - DECIDES
    };
    sign(ui, pos2(left + 6.0, middle), setting.verdict, ink, 4.5);
    let write = |x, anchor, text: String, ink| {
        let font = FontId::proportional(theme::SMALL);
        painter.text(pos2(x, middle), anchor, text, font, ink);
    };
    write(
        left + 17.0,
        Align2::LEFT_CENTER,
        word(setting.verdict).to_owned(),
        ink,
    );
    let note = at(Ink::Note);
    let dial = format!("dial {}", setting.decided_by + 1);
    write(inner.right() - DECIDES, Align2::LEFT_CENTER, dial, note);
    let margin = length(setting.margin, design.units);
    write(inner.right(), Align2::RIGHT_CENTER, margin, at(Ink::Label));
}
