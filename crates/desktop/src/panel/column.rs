//! A column that scrolls by itself, beside what follows it in its row.

use egui::{Align, Layout, ScrollArea, Ui, Vec2};

/// Room that the scroll bar gets, points.
const BAR: f32 = 10.0;

/// Shows `contents` in a column of this size; `salt` tells it from others.
pub fn column_ui(ui: &mut Ui, size: Vec2, salt: &str, contents: impl FnOnce(&mut Ui)) {
    ui.allocate_ui_with_layout(size, Layout::top_down(Align::Min), |ui| {
        ui.set_width(size.x);
        ScrollArea::vertical()
            .id_salt(salt)
            .auto_shrink([false, false])
            .show(ui, |ui| {
                ui.set_max_width(size.x - BAR);
                contents(ui);
            });
    });
}
