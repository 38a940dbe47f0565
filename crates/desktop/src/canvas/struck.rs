//! The lines that a moving handle lies on, struck across the plan, each with its reason in words.

use egui::{FontId, Painter, Pos2, Rect, Shape, Stroke, StrokeKind, Ui, pos2, vec2};
use latchwright_drawing::Ink;
use latchwright_geometry::Point;
use latchwright_model::Design;
use latchwright_proof::check::near::Axis;
use latchwright_workshop::set_out::{Because, Look, Marks, TabPlace, dial_at, tab_at};

use super::paint::Frame;
use super::reason::Reason;
use crate::edit::Handle;
use crate::theme;
use crate::view_state::ViewState;
use crate::words::length;

/// How near a line a handle must be to lie on it, mm.
const ON: f64 = 1e-5;
/// Dash and gap of a struck line, points.
const DASH: [f32; 2] = [6.0, 4.0];
/// Round the words, points.
const EDGE: f32 = 6.0;
/// Widest line of words, points.
const WIDEST: f32 = 400.0;
/// Beyond a knob, what its labels take, mm.
const LABELS: f64 = 7.0;

/// Lines and words of the handle that is moving.
pub fn struck_ui(ui: &Ui, painter: &Painter, frame: Frame, design: &Design, view: &ViewState) {
    let Some(handle) = view.moving.map(|moving| moving.handle) else {
        return;
    };
    let Some(at) = handle.place(design, view) else {
        return;
    };
    let numbers = |mm: [f64; 2]| mm.map(|mm| length(mm, design.units));
    let (mut words, clear) = match handle {
        Handle::Dial(index) => {
            let knob = design
                .dials
                .get(index)
                .map_or(0.0, |dial| dial.knob.diameter);
            let [x, y] = numbers([at.x, at.y]);
            (vec![format!("{x}, {y}")], knob / 2.0 + LABELS)
        }
        Handle::Tab => {
            let tab = &design.tab;
            let [x, held] = numbers([tab.at, tab.engagement]);
            (vec![format!("{x}, {held} under the keeper")], 0.0)
        }
    };
    for (axis, because) in lies_on(design, handle) {
        line(ui, painter, frame, design, axis, at, because);
    }
    words.extend(reasons(design, handle));
    let clear = frame.length(clear).clamp(0.0, 160.0) + 24.0;
    words_ui(ui, painter, frame.screen(at), clear, &words);
}

/// What a handle lies on, in words.
pub fn reasons(design: &Design, handle: Handle) -> Vec<String> {
    let of = |(axis, because)| Reason::of(design, handle, axis, because).words(design.units);
    lies_on(design, handle).into_iter().map(of).collect()
}

/// The lines that a handle lies on, and the axis that each crosses.
fn lies_on(design: &Design, handle: Handle) -> Vec<(Axis, Because)> {
    let on = Look {
        marks: Marks::HUNDREDTH,
        reach: ON,
        free: false,
    };
    let (x, y) = match handle {
        Handle::Dial(index) => {
            let centre = design.dials.get(index).map(|dial| dial.centre);
            let at = centre.map(|(x, y)| Point::new(x, y));
            let placed = at.and_then(|at| dial_at(design, index, at, &on));
            placed.map_or((None, None), |placed| (placed.x, placed.y))
        }
        Handle::Tab => {
            let now = TabPlace {
                at: design.tab.at,
                engagement: design.tab.engagement,
            };
            // taken so far away that it does not lie on where it was
            let far = TabPlace {
                at: f64::MAX,
                engagement: f64::MAX,
            };
            let placed = tab_at(design, far, now, &on);
            (placed.and_then(|placed| placed.x), None)
        }
    };
    let both = [(Axis::X, x), (Axis::Y, y)].into_iter();
    both.filter_map(|(axis, because)| Some((axis, because?)))
        .collect()
}

/// A thin dashed line through `at` across `axis`: to the other centre where it is in line with one,
/// over the whole plate where not.
fn line(
    ui: &Ui,
    painter: &Painter,
    frame: Frame,
    design: &Design,
    axis: Axis,
    at: Point,
    because: Because,
) {
    let half = design.plate.width / 2.0;
    let (from, to) = match because {
        Because::InLine(dial) => {
            let other = design
                .dials
                .get(dial)
                .map_or((at.x, at.y), |dial| dial.centre);
            (Point::new(other.0, other.1), at)
        }
        _ if axis == Axis::X => (Point::new(at.x, 0.0), Point::new(at.x, design.plate.depth)),
        _ => (Point::new(-half, at.y), Point::new(half, at.y)),
    };
    let stroke = Stroke::new(1.25, theme::ink(ui.ctx(), Ink::Movable));
    let ends = [frame.screen(from), frame.screen(to)];
    painter.extend(Shape::dashed_line(&ends, stroke, DASH[0], DASH[1]));
    if let Because::InLine(_) = because {
        painter.circle_stroke(frame.screen(from), 5.0, stroke);
    }
}

/// The words on a slip of paper, `clear` points above `at`, or below where there is no room.
fn words_ui(ui: &Ui, painter: &Painter, at: Pos2, clear: f32, words: &[String]) {
    let ink = |role| theme::ink(ui.ctx(), role);
    let font = FontId::proportional(theme::BODY);
    let text = painter.layout(words.join("\n"), font, ink(Ink::Label), WIDEST);
    let size = text.size() + vec2(2.0 * EDGE, 2.0 * EDGE);
    let space = painter.clip_rect();
    let above = at.y - clear - size.y;
    let top = if above >= space.top() {
        above
    } else {
        at.y + clear
    };
    let most = (space.max - size).max(space.min);
    let corner = pos2(at.x - size.x / 2.0, top).clamp(space.min, most);
    let slip = Rect::from_min_size(corner, size);
    let edge = Stroke::new(1.0, ink(Ink::Movable));
    painter.rect(slip, 4.0, ink(Ink::Paper), edge, StrokeKind::Inside);
    painter.galley(slip.min + vec2(EDGE, EDGE), text, ink(Ink::Label));
}
