//! One dial under the hand: drag, wheel, click, arrow keys, typed label.

use egui::accesskit::Role;
use egui::{
    EventFilter, Id, Key, Painter, Pos2, Rect, Response, Sense, Stroke, Ui, WidgetInfo, vec2,
};
use latchwright_drawing::Ink;
use latchwright_geometry::{Point, trig};
use latchwright_model::{Design, Dial};

use super::paint::Frame;
use crate::action::Action;
use crate::theme;
use crate::view_state::{PoseChange, ViewState};

fn dial_id(index: usize) -> Id {
    Id::unique(("dial on the lid", index))
}

fn middle(dial: &Dial) -> Point {
    Point::new(dial.centre.0, dial.centre.1)
}

fn place(frame: Frame, dial: &Dial) -> (Pos2, f32) {
    let radius = frame
        .length((dial.knob.diameter / 2.0).clamp(1.0, 500.0))
        .max(14.0);
    (frame.screen(middle(dial)), radius)
}

/// Takes what the hand does to dial `index`.
pub fn dial_ui(
    ui: &mut Ui,
    frame: Frame,
    design: &Design,
    view: &mut ViewState,
    index: usize,
    wishes: &mut Vec<Action>,
) {
    let Some(dial) = design.dials.get(index) else {
        return;
    };
    let (centre, radius) = place(frame, dial);
    let rect = Rect::from_center_size(centre, vec2(2.0 * radius, 2.0 * radius));
    let response = ui.interact(rect, dial_id(index), Sense::click_and_drag());
    let label = dial.label(view.mark(design, index));
    response.widget_info(|| {
        WidgetInfo::labeled(
            Role::SpinButton,
            true,
            format!("Dial {} at {label}", index + 1),
        )
    });
    let mut wish = |change| wishes.push(Action::Pose(change));
    if let Some(degrees) = drag(ui, &response, frame, dial) {
        wish(PoseChange::TurnTo {
            dial: index,
            degrees,
        });
    }
    if let Some(marks) = click(&response, centre) {
        wish(PoseChange::Step { dial: index, marks });
    }
    if response.hovered() {
        ui.ctx().set_cursor_icon(egui::CursorIcon::Grab);
        if let Some(change) = wheel(ui, index) {
            wish(change);
        }
    }
    if response.gained_focus() {
        view.dial = index;
        view.typed.clear();
    }
    if response.has_focus() {
        keys(ui, view, index, wishes);
    }
}

/// Where the pointer follows the hand round the centre, degrees clockwise from the mark nearest the hinge;
/// marks attract it unless Alt is held.
fn drag(ui: &Ui, response: &Response, frame: Frame, dial: &Dial) -> Option<f64> {
    let at = response.interact_pointer_pos()?;
    if response.drag_started() {
        response.request_focus();
    }
    if !response.dragged() {
        return None;
    }
    let to = frame.drawing(at) - middle(dial);
    if to.length() < 1.0 {
        return None;
    }
    let angle = trig::degrees(trig::atan2(to.x, to.y));
    let step = dial.step_deg();
    let free = ui.input(|input| input.modifiers.alt);
    Some(if free {
        angle
    } else {
        (angle / step).round() * step
    })
}

/// The right half turns it on by a mark, the left half back.
fn click(response: &Response, centre: Pos2) -> Option<i32> {
    if !response.clicked() {
        return None;
    }
    response.request_focus();
    let at = response.interact_pointer_pos()?;
    Some(if at.x >= centre.x { 1 } else { -1 })
}

/// The wheel turns it mark by mark.
pub(super) fn wheel(ui: &Ui, dial: usize) -> Option<PoseChange> {
    let turned = ui.input(|input| {
        input.events.iter().find_map(|event| match event {
            egui::Event::MouseWheel { delta, .. } if delta.y != 0.0 => Some(delta.y),
            _ => None,
        })
    })?;
    let marks = if turned < 0.0 { 1 } else { -1 };
    Some(PoseChange::Step { dial, marks })
}

fn keys(ui: &Ui, view: &mut ViewState, index: usize, wishes: &mut Vec<Action>) {
    let filter = EventFilter {
        horizontal_arrows: true,
        vertical_arrows: true,
        ..EventFilter::default()
    };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(dial_id(index), filter));
    let (marks, text) = ui.input(|input| {
        let pressed = |key| i32::try_from(input.num_presses(key)).unwrap_or(0);
        let on = pressed(Key::ArrowRight) + pressed(Key::ArrowUp);
        let back = pressed(Key::ArrowLeft) + pressed(Key::ArrowDown);
        let typed: String = input
            .events
            .iter()
            .filter_map(|event| match event {
                egui::Event::Text(text) if !text.trim().is_empty() => Some(text.as_str()),
                _ => None,
            })
            .collect();
        (on - back, typed)
    });
    let mut wish = |change| wishes.push(Action::Pose(change));
    if ui.input(|input| input.key_pressed(Key::Space)) {
        wish(PoseChange::SlideOver);
    }
    if marks != 0 {
        view.typed.clear();
        wish(PoseChange::Step { dial: index, marks });
    }
    if !text.is_empty() {
        wish(PoseChange::Type { dial: index, text });
    }
}

/// A dotted ring round the dial that has the focus.
pub fn focus_ui(ui: &Ui, painter: &Painter, frame: Frame, design: &Design) {
    let focused = ui.memory(egui::Memory::focused);
    for (index, dial) in design.dials.iter().enumerate() {
        if focused == Some(dial_id(index)) {
            let (centre, radius) = place(frame, dial);
            let stroke = Stroke::new(2.0, theme::ink(ui.ctx(), Ink::Focus));
            painter.circle_stroke(centre, radius + 4.0, stroke);
        }
    }
}
