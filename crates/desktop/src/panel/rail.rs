//! The rail on the left: the stages of the work, one below the other.

use egui::{Align2, FontId, Sense, Stroke, StrokeKind, Ui, WidgetInfo, pos2, vec2};
use latchwright_drawing::Ink;

use crate::action::Action;
use crate::command::Command;
use crate::stage::Stage;
use crate::theme;

/// Height of one stage, points.
const HEIGHT: f32 = 64.0;
/// Width of the bar beside the stage that is shown, points.
const BAR: f32 = 4.0;

/// The rail.
pub fn rail_ui(ui: &mut Ui, shown: Stage, wishes: &mut Vec<Action>) {
    ui.spacing_mut().item_spacing.y = 8.0;
    ui.add_space(8.0);
    for stage in Stage::ALL {
        if stage_ui(ui, stage, stage == shown) {
            wishes.push(Action::Do(Command::Show(stage)));
        }
    }
}

/// One stage; whether it was chosen.
fn stage_ui(ui: &mut Ui, stage: Stage, shown: bool) -> bool {
    let size = vec2(ui.available_width(), HEIGHT);
    let (rect, response) = ui.allocate_exact_size(size, Sense::click());
    response.widget_info(|| {
        WidgetInfo::selected(egui::accesskit::Role::Tab, true, shown, stage.name())
    });
    let response = response.on_hover_text(stage.about());
    let ctx = ui.ctx().clone();
    let painter = ui.painter_at(rect);
    if shown {
        let bar = egui::Rect::from_min_size(rect.min, vec2(BAR, HEIGHT));
        painter.rect_filled(bar, 0.0, theme::ink(&ctx, Ink::Movable));
    }
    if response.hovered() || response.has_focus() {
        let line = Stroke::new(1.5, theme::ink(&ctx, Ink::Movable));
        painter.rect_stroke(rect.shrink(1.0), 4.0, line, StrokeKind::Inside);
    }
    let family = if shown {
        theme::bold()
    } else {
        egui::FontFamily::Proportional
    };
    let left = rect.left() + BAR + 10.0;
    painter.text(
        pos2(left, rect.center().y - 10.0),
        Align2::LEFT_CENTER,
        stage.name(),
        FontId::new(17.0, family),
        theme::ink(&ctx, Ink::Label),
    );
    painter.text(
        pos2(left, rect.center().y + 12.0),
        Align2::LEFT_CENTER,
        stage.about(),
        FontId::proportional(theme::SMALL),
        theme::ink(&ctx, Ink::Note),
    );
    response.clicked()
}
