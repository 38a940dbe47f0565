//! One page of a paper, whole or close to, with the way to the next.

use egui::{Button, Image, RichText, ScrollArea, Spinner, Stroke, Ui, Vec2};
use latchwright_drawing::Ink;
use latchwright_session::Session;
use latchwright_session::products::Wanted;

use crate::pages::{Look, Pages};
use crate::theme;

/// The page and its bar; `name` says what it is to those who do not see it.
pub fn page_ui(
    ui: &mut Ui,
    session: &Session,
    pages: &Pages,
    wanted: Wanted,
    look: &mut Look,
    name: &str,
) {
    let count = pages.count(wanted);
    if let Some(count) = count {
        look.page = look.page.min(count.saturating_sub(1));
    }
    bar_ui(ui, count, look);
    if let Some(why) = pages.refused(session.revision(), wanted) {
        let colour = theme::ink(ui.ctx(), Ink::Blocks);
        ui.label(RichText::new(format!("! {why}")).color(colour));
        return;
    }
    let space = ui.available_size();
    let Some(texture) = pages.texture(wanted) else {
        ui.horizontal(|ui| {
            ui.add(Spinner::new());
            ui.label(RichText::new("The page is being set…").weak());
        });
        return;
    };
    let size = texture.size_vec2();
    let (id, alt) = (texture.id(), name.to_owned());
    let show = |ui: &mut Ui, size: Vec2| {
        let line = Stroke::new(1.0, theme::ink(ui.ctx(), Ink::Faint));
        egui::Frame::new().stroke(line).show(ui, |ui| {
            ui.add(Image::new((id, size)).alt_text(alt));
        });
    };
    if look.close {
        ScrollArea::both()
            .id_salt("page close to")
            .auto_shrink([false, false])
            .show(ui, |ui| show(ui, size / ui.ctx().pixels_per_point()));
    } else {
        let space = space - Vec2::splat(4.0);
        let scale = (space.x / size.x).min(space.y / size.y).max(0.01);
        show(ui, size * scale);
    }
}

fn bar_ui(ui: &mut Ui, count: Option<usize>, look: &mut Look) {
    ui.horizontal_wrapped(|ui| {
        let many = count.unwrap_or(1);
        if many > 1 {
            let back = ui.add_enabled(look.page > 0, Button::new("Back a page"));
            if back.clicked() {
                look.page -= 1;
            }
            ui.label(format!("Page {} of {many}", look.page + 1));
            let on = ui.add_enabled(look.page + 1 < many, Button::new("On a page"));
            if on.clicked() {
                look.page += 1;
            }
        } else {
            ui.label(if count.is_some() { "One page" } else { "" });
        }
        ui.checkbox(&mut look.close, "Close to")
            .on_hover_text("Large enough to read the fine print");
    });
}
