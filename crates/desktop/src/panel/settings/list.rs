//! The rows in sight, worked out one by one from their numbers, so that no list is too long.

use egui::accesskit::Role;
use egui::{EventFilter, Id, Key, Modifiers, Rect, Response, Sense, Ui, WidgetInfo};
use egui::{pos2, vec2};
use latchwright_drawing::Ink;
use latchwright_session::report::grouped;

use super::row::{self, Look, State};
use super::{Shown, WANTED, track};
use crate::action::Action;
use crate::theme;
use crate::view_state::{Listed, PoseChange, ViewState};

/// Rows in sight.
pub const ROWS: u128 = 6;

/// The list: one stop of the Tab key, in which the arrow keys go from row to row.
pub fn list_ui(
    ui: &mut Ui,
    shown: Shown<'_>,
    look: &Look,
    view: &mut ViewState,
    wishes: &mut Vec<Action>,
) {
    let count = shown.ranked.count(view.listed.filter);
    if count == 0 {
        none_ui(ui, shown, view);
        return;
    }
    let rows = count.min(ROWS);
    let most = count - rows;
    let bar = if most > 0 { track::WIDTH } else { 0.0 };
    row::head_ui(ui, look, bar);
    let narrow = u8::try_from(rows).map_or(1.0, f32::from);
    let size = vec2(ui.available_width(), look.height * narrow + 2.0);
    let (_, rect) = ui.allocate_space(size);
    let id = Id::unique("list of settings");
    let list = ui.interact(rect, id, Sense::focusable_noninteractive());
    let turn = keys(ui, &list, &mut view.listed, rows, count);
    wheel(ui, &list, &mut view.listed, look.height, most);
    view.listed.first = view.listed.first.min(most);
    view.listed.at = view.listed.at.min(count - 1);
    frame(ui, rect);
    let lines = Rect::from_min_max(
        rect.min + vec2(1.0, 1.0),
        pos2(rect.right() - bar - 1.0, rect.bottom()),
    );
    if most > 0 {
        let track = Rect::from_min_max(pos2(rect.right() - bar, lines.top()), rect.max);
        track::track_ui(ui, id.with("track"), track, &mut view.listed, rows, most);
    }
    let mut marks = Vec::new();
    let named = name(shown, &view.listed, count, &mut marks);
    list.widget_info(|| WidgetInfo::labeled(Role::ListBox, true, &named));
    if turn {
        wishes.push(Action::Pose(PoseChange::all(&marks)));
    }
    if let Some(change) = rows_ui(ui, &list, lines, shown, look, view) {
        wishes.push(Action::Pose(change));
    }
}

/// What the list is, and the row that the keys are at, whose marks are left in `marks`.
fn name(shown: Shown<'_>, listed: &Listed, count: u128, marks: &mut Vec<u16>) -> String {
    let setting = shown.ranked.nth(listed.filter, listed.at, marks);
    let said = setting.map(|setting| row::sentence(shown.design, &setting));
    format!(
        "List of settings, at {} of {}: {}",
        grouped(listed.at + 1),
        grouped(count),
        said.unwrap_or_default()
    )
}

fn none_ui(ui: &mut Ui, shown: Shown<'_>, view: &ViewState) {
    let wanted = WANTED
        .iter()
        .find(|(filter, _)| *filter == view.listed.filter);
    let total = grouped(shown.ranked.count(None));
    let said = match wanted {
        Some((Some(_), "unsure")) => format!("None of {total} settings is unsure."),
        Some((Some(_), does)) => format!("None of {total} settings {does}."),
        _ => "There are no settings.".to_owned(),
    };
    ui.label(said);
}

fn frame(ui: &Ui, rect: Rect) {
    let ground = theme::ink(ui.ctx(), Ink::Part);
    let edge = egui::Stroke::new(1.0, theme::ink(ui.ctx(), Ink::DeepWood));
    let inside = egui::StrokeKind::Inside;
    ui.painter().rect(rect, 3.0, ground, edge, inside);
}

/// Each row in sight; where the dials are turned by a click on one.
fn rows_ui(
    ui: &Ui,
    list: &Response,
    lines: Rect,
    shown: Shown<'_>,
    look: &Look,
    view: &mut ViewState,
) -> Option<PoseChange> {
    let count = shown.ranked.count(view.listed.filter);
    let mut chosen = None;
    let mut marks = Vec::new();
    let mut top = lines.top();
    for line in 0..count.min(ROWS) {
        let number = view.listed.first + line;
        let rect = Rect::from_min_size(pos2(lines.left(), top), vec2(lines.width(), look.height));
        top += look.height;
        let Some(setting) = shown.ranked.nth(view.listed.filter, number, &mut marks) else {
            break;
        };
        // no stop of its own for the Tab key: that is the list's
        let response = ui.interact(rect, list.id.with(("row", line)), Sense::CLICK);
        let state = State {
            shown: row::shown(shown.design, view, setting.marks),
            at: list.has_focus() && view.listed.at == number || response.hovered(),
            ruled: false,
        };
        row::row_ui(ui, shown.design, &setting, look, rect, state);
        let (which, of) = (grouped(number + 1), grouped(count));
        let said = row::sentence(shown.design, &setting);
        let named = format!("{which} of {of}: {said}");
        response.widget_info(|| WidgetInfo::selected(Role::Button, true, state.shown, &named));
        if response.clicked() {
            chosen = Some((number, PoseChange::all(setting.marks)));
        }
    }
    let (number, change) = chosen?;
    view.listed.at = number;
    list.request_focus();
    Some(change)
}

/// Goes from row to row by the keys; whether the dials are to be turned.
fn keys(ui: &Ui, list: &Response, listed: &mut Listed, rows: u128, count: u128) -> bool {
    if !list.has_focus() {
        return false;
    }
    let arrows = EventFilter {
        vertical_arrows: true,
        ..EventFilter::default()
    };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(list.id, arrows));
    let (at, last) = (listed.at.min(count - 1), count - 1);
    let pressed = |key| ui.input_mut(|input| input.consume_key(Modifiers::NONE, key));
    let ways = [
        (Key::ArrowDown, at.saturating_add(1)),
        (Key::ArrowUp, at.saturating_sub(1)),
        (Key::PageDown, at.saturating_add(rows)),
        (Key::PageUp, at.saturating_sub(rows)),
        (Key::Home, 0),
        (Key::End, last),
    ];
    if let Some((_, to)) = ways.into_iter().find(|(key, _)| pressed(*key)) {
        listed.at = to.min(last);
        let lowest = (listed.at + 1).saturating_sub(rows);
        listed.first = listed.first.clamp(lowest, listed.at);
    }
    pressed(Key::Enter) || pressed(Key::Space)
}

/// Rolls the list under the pointer; at its ends the panel rolls on.
fn wheel(ui: &Ui, list: &Response, listed: &mut Listed, height: f32, most: u128) {
    if most == 0 || !list.contains_pointer() {
        return;
    }
    let turned = ui.input(|input| input.smooth_scroll_delta().y);
    let (at_start, at_end) = (listed.first == 0, listed.first >= most);
    if turned == 0.0 || (turned > 0.0 && at_start) || (turned < 0.0 && at_end) {
        listed.spill = 0.0;
        return;
    }
    ui.input_mut(|input| input.smooth_scroll_delta.y = 0.0);
    let by = listed.spill + turned;
    let steps = (by / height).trunc();
    listed.spill = by - steps * height;
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "whole rows, far fewer than fit"
    )]
    let rows = u128::from(steps.abs() as u32);
    listed.first = if steps > 0.0 {
        listed.first.saturating_sub(rows)
    } else {
        listed.first.saturating_add(rows).min(most)
    };
}
