//! The picture of the parts under the hand.

use egui::accesskit::Role;
use egui::{
    Align2, FontId, Key, Pos2, Rect, RichText, Sense, Spinner, Stroke, StrokeKind, Ui, Vec2,
    WidgetInfo, pos2, vec2,
};
use latchwright_drawing::Ink;
use latchwright_session::Session;
use latchwright_solids::Part;

use super::parts::PartsView;
use crate::printed::{Made, Picked, Picture, Printed, Shown};
use crate::theme;

/// What a key turns by, degrees, and zooms by.
const KEY_TURN: f64 = 10.0;
const KEY_ZOOM: f64 = 1.2;

/// The picture; it follows the hand and asks for itself to be drawn anew.
pub fn solid_ui(ui: &mut Ui, session: &Session, printed: &mut Printed, view: &mut PartsView) {
    let revision = session.revision();
    if let Some(why) = printed.refused(revision, view.chosen()) {
        let colour = theme::ink(ui.ctx(), Ink::Blocks);
        ui.label(RichText::new("These parts cannot be printed yet").family(theme::bold()));
        for line in why.lines() {
            ui.label(RichText::new(format!("! {line}")).color(colour));
        }
        return;
    }
    let words = "Drag to turn, Shift and drag to move, wheel to zoom; keys: arrows, + and −, Home.";
    ui.label(RichText::new(words).small().weak());
    let space = ui.available_size() - Vec2::splat(2.0);
    let (rect, response) =
        ui.allocate_exact_size(space.max(Vec2::splat(16.0)), Sense::click_and_drag());
    let made = printed.parts(revision, view.chosen()).cloned();
    let parts = made.as_ref().map_or(&[][..], |made| made.parts.as_slice());
    take_over(ui, rect, printed, view, made.as_deref());
    hand(ui, rect, &response, printed, view);
    response.widget_info(|| {
        let camera = view.view.camera;
        let said = format!(
            "Printed parts, turned {:.0}°, from {:.0}° above",
            camera.turn, camera.tilt
        );
        WidgetInfo::labeled(Role::Image, true, said)
    });
    let painter = ui.painter_at(rect);
    let Some((picture, texture)) = printed.picture() else {
        ui.put(
            Rect::from_center_size(rect.center(), Vec2::splat(32.0)),
            Spinner::new(),
        );
        return;
    };
    let whole = Rect::from_min_max(pos2(0.0, 0.0), pos2(1.0, 1.0));
    painter.image(texture.id(), rect, whole, egui::Color32::WHITE);
    if response.has_focus() {
        let line = Stroke::new(1.5, theme::ink(ui.ctx(), Ink::Movable));
        painter.rect_stroke(rect.shrink(1.0), 4.0, line, StrokeKind::Inside);
    }
    if view.names {
        names_ui(ui, rect, picture, parts);
    }
}

/// Takes over what the picture was fitted to, and says how the next one is to be.
fn take_over(
    ui: &Ui,
    rect: Rect,
    printed: &mut Printed,
    view: &mut PartsView,
    made: Option<&Made>,
) {
    let scale = ui.ctx().pixels_per_point();
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a size on the screen"
    )]
    let pixels = |points: f32| (points * scale).round().clamp(1.0, 8192.0) as u32;
    let size = (pixels(rect.width()), pixels(rect.height()));
    if let Some((picture, _)) = printed.picture()
        && view.view.fit
        && (picture.view.shown, picture.view.size) == (view.view.shown, view.view.size)
        && made.is_some()
        && view.view.size == size
    {
        view.view.camera = picture.view.camera;
        view.view.fit = false;
    }
    if view.view.size != size {
        (view.view.size, view.view.fit) = (size, true);
    }
    (view.view.line, view.view.dark) = (scale, ui.ctx().theme() == egui::Theme::Dark);
    view.view.cut = view.plane(made);
    match printed.picked() {
        Some(Picked::Part(part)) => view.view.chosen = Some(part),
        Some(Picked::Nothing) => view.view.chosen = None,
        None => {}
    }
}

/// Mouse and keys.
fn hand(
    ui: &Ui,
    rect: Rect,
    response: &egui::Response,
    printed: &mut Printed,
    view: &mut PartsView,
) {
    let scale = ui.ctx().pixels_per_point();
    let at = |point: Pos2| {
        let from = (point - rect.min) * scale;
        (f64::from(from.x), f64::from(from.y))
    };
    if response.clicked() {
        response.request_focus();
        if let Some(point) = response.interact_pointer_pos() {
            let (x, y) = at(point);
            printed.pick_at(x, y);
        }
    }
    if response.double_clicked()
        && let Some(part) = view.view.chosen
    {
        view.show(Shown::One(part));
    }
    let drag = response.drag_delta();
    if drag != Vec2::ZERO {
        let moves = ui.input(|input| input.modifiers.shift)
            || response.dragged_by(egui::PointerButton::Secondary);
        let (right, down) = (f64::from(drag.x), f64::from(drag.y));
        let camera = view.view.camera;
        view.view.camera = if moves {
            camera.moved(right * f64::from(scale), down * f64::from(scale))
        } else {
            camera.dragged(right, down)
        };
        view.view.fit = false;
    }
    if let Some(point) = response.hover_pos() {
        let wheel =
            ui.input(|input| input.smooth_scroll_delta.y + (input.zoom_delta() - 1.0) * 200.0);
        if wheel != 0.0 {
            let (x, y) = at(point);
            let factor = (f64::from(wheel) / 200.0).exp();
            view.view.camera = view.view.camera.zoomed(factor, view.view.size, x, y);
            view.view.fit = false;
        }
    }
    if response.has_focus() {
        keys(ui, response, view);
    }
}

fn keys(ui: &Ui, response: &egui::Response, view: &mut PartsView) {
    // arrows turn, and do not carry the focus away
    ui.memory_mut(|memory| {
        let arrows = egui::EventFilter {
            horizontal_arrows: true,
            vertical_arrows: true,
            ..egui::EventFilter::default()
        };
        memory.set_focus_lock_filter(response.id, arrows);
    });
    let pressed = |key| ui.input(|input| input.key_pressed(key));
    let middle = (
        f64::from(view.view.size.0) / 2.0,
        f64::from(view.view.size.1) / 2.0,
    );
    let camera = view.view.camera;
    // a pixel of a drag is half a degree
    let turned =
        |right: f64, down: f64| camera.dragged(2.0 * right * KEY_TURN, 2.0 * down * KEY_TURN);
    let zoomed = |factor: f64| camera.zoomed(factor, view.view.size, middle.0, middle.1);
    let next = if pressed(Key::ArrowLeft) {
        turned(-1.0, 0.0)
    } else if pressed(Key::ArrowRight) {
        turned(1.0, 0.0)
    } else if pressed(Key::ArrowUp) {
        turned(0.0, -1.0)
    } else if pressed(Key::ArrowDown) {
        turned(0.0, 1.0)
    } else if pressed(Key::Plus) || pressed(Key::Equals) {
        zoomed(KEY_ZOOM)
    } else if pressed(Key::Minus) {
        zoomed(1.0 / KEY_ZOOM)
    } else if pressed(Key::Home) {
        view.view.fit = true;
        return;
    } else {
        return;
    };
    (view.view.camera, view.view.fit) = (next, false);
}

/// The parts' names where there is room for them.
fn names_ui(ui: &Ui, rect: Rect, picture: &Picture, parts: &[Part]) {
    let scale = ui.ctx().pixels_per_point();
    let painter = ui.painter_at(rect);
    let ink = theme::ink(ui.ctx(), Ink::Label);
    let ground = theme::ink(ui.ctx(), Ink::Paper).gamma_multiply(0.8);
    let mut taken: Vec<Rect> = Vec::new();
    for (index, x, y) in &picture.anchors {
        let Some(part) = parts.get(*index) else {
            continue;
        };
        #[expect(
            clippy::cast_possible_truncation,
            reason = "a screen needs no more than f32 shows"
        )]
        let at = rect.min + vec2(*x as f32, *y as f32) / scale;
        let font = FontId::proportional(theme::SMALL);
        let text = painter.layout_no_wrap(part.name.clone(), font, ink);
        let space = Align2::CENTER_CENTER
            .anchor_size(at, text.size())
            .expand(2.0);
        if taken.iter().any(|other| other.intersects(space)) {
            continue;
        }
        painter.rect_filled(space, 3.0, ground);
        painter.galley(space.min + Vec2::splat(2.0), text, ink);
        taken.push(space);
    }
}
