//! The scroll bar of a list that may be longer than any number of points on the screen.

use egui::accesskit::Role;
use egui::{Id, Rect, Sense, Ui, WidgetInfo, pos2, vec2};
use latchwright_drawing::Ink;
use latchwright_session::report::grouped;

use crate::theme;
use crate::view_state::Listed;

/// Width, points.
pub const WIDTH: f32 = 14.0;
/// Least height of the thumb, points.
const THUMB: f32 = 24.0;

/// Draws the bar in `rect` and moves the list with it; `most` is the last row that can be uppermost.
pub fn track_ui(ui: &Ui, id: Id, rect: Rect, listed: &mut Listed, rows: u128, most: u128) {
    let response = ui.interact(rect, id, Sense::CLICK | Sense::DRAG);
    let height = (rect.height() * narrow(share(rows, most + rows))).max(THUMB);
    let space = (rect.height() - height).max(1.0);
    let thumb = |first| rect.top() + space * narrow(share(first, most));
    if let Some(at) = response.interact_pointer_pos() {
        let top = thumb(listed.first);
        // a thumb stays under the hand that holds it, and comes to a hand beside it
        if response.drag_started() || response.clicked() {
            let held = at.y - top;
            listed.grab = if (0.0..=height).contains(&held) {
                held
            } else {
                height / 2.0
            };
        }
        if response.dragged() || response.clicked() {
            listed.first = place((at.y - listed.grab - rect.top()) / space, most);
        }
    }
    let last = listed.first + rows;
    let said = format!(
        "Place in the list: {} to {} of {}",
        grouped(listed.first + 1),
        grouped(last),
        grouped(most + rows)
    );
    response.widget_info(|| WidgetInfo::labeled(Role::ScrollBar, true, &said));
    let held = response.hovered() || response.dragged();
    let at = |role| theme::ink(ui.ctx(), role);
    let bar = Rect::from_min_size(
        pos2(rect.left() + 4.0, thumb(listed.first)),
        vec2(WIDTH - 6.0, height),
    );
    let ink = at(if held { Ink::Movable } else { Ink::Faint });
    ui.painter().rect_filled(bar, 4.0, ink);
    response.on_hover_text(said);
}

/// Which part of a whole, 0 to 1.
fn share(part: u128, whole: u128) -> f64 {
    if whole == 0 {
        0.0
    } else {
        part as f64 / whole as f64
    }
}

/// The row at a share of the way; the ends are exact at any length.
fn place(share: f32, most: u128) -> u128 {
    if share <= 0.0 {
        return 0;
    }
    if share >= 1.0 {
        return most;
    }
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "between 0 and the last row"
    )]
    let row = (f64::from(share) * most as f64).round() as u128;
    row.min(most)
}

#[expect(clippy::cast_possible_truncation, reason = "a share between 0 and 1")]
fn narrow(share: f64) -> f32 {
    share as f32
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_ends_are_met_exactly_and_nothing_lies_beyond_at_any_length() {
        for most in [0, 1, 505, u128::from(u64::MAX), 360_u128.pow(12), u128::MAX] {
            assert_eq!((place(-0.1, most), place(0.0, most)), (0, 0));
            assert_eq!((place(1.0, most), place(7.0, most)), (most, most));
            assert!(place(0.999_999_9, most) <= most);
        }
        assert_eq!(place(0.5, 100), 50);
    }
}
