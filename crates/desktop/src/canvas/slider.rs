//! The finger knob: drag it, or move the slider with the space bar.

use egui::accesskit::Role;
use egui::{Id, Painter, Pos2, Rect, Sense, Stroke, Ui, WidgetInfo, vec2};
use latchwright_drawing::Ink;
use latchwright_geometry::Point;
use latchwright_model::Design;

use super::paint::Frame;
use crate::action::Action;
use crate::theme;
use crate::view_state::{PoseChange, ViewState};
use crate::words;

fn pull_id() -> Id {
    Id::unique("finger knob on the lid")
}

fn place(frame: Frame, design: &Design, view: &ViewState) -> (Pos2, f32) {
    let slider = &design.slider;
    let at = Point::new(slider.pull_at, slider.guide_at.1 + view.pose.travel);
    (
        frame.screen(at),
        frame.length(slider.shank.clamp(1.0, 200.0)).max(16.0),
    )
}

/// Takes what the hand does to the finger knob.
pub fn slider_ui(
    ui: &mut Ui,
    frame: Frame,
    design: &Design,
    view: &ViewState,
    wishes: &mut Vec<Action>,
) {
    let (centre, radius) = place(frame, design, view);
    let rect = Rect::from_center_size(centre, vec2(2.0 * radius, 2.0 * radius));
    let response = ui.interact(rect, pull_id(), Sense::click_and_drag());
    let back = words::short_length(view.pose.travel, design.units);
    response.widget_info(|| {
        WidgetInfo::labeled(
            Role::Button,
            true,
            format!("Finger knob, slider {back} back"),
        )
    });
    if response.dragged() {
        let moved = f64::from(response.drag_delta().y / frame.scale);
        // what the hand asks for is kept, so that it need not be dragged back past the stop
        let asked = ui.data_mut(|data| {
            let asked = data.get_temp_mut_or(pull_id(), view.pose.travel);
            *asked -= moved;
            *asked
        });
        wishes.push(Action::Pose(PoseChange::SlideTo(asked)));
    } else {
        ui.data_mut(|data| data.insert_temp(pull_id(), view.pose.travel));
    }
    if response.clicked() {
        wishes.push(Action::Pose(PoseChange::SlideOver));
        response.request_focus();
    }
    if response.hovered() {
        ui.ctx().set_cursor_icon(egui::CursorIcon::ResizeVertical);
    }
}

/// A ring round the finger knob while it has the focus.
pub fn focus_ui(ui: &Ui, painter: &Painter, frame: Frame, design: &Design, view: &ViewState) {
    if ui.memory(egui::Memory::focused) == Some(pull_id()) {
        let (centre, radius) = place(frame, design, view);
        let stroke = Stroke::new(2.0, theme::ink(ui.ctx(), Ink::Focus));
        painter.circle_stroke(centre, radius + 4.0, stroke);
    }
}
