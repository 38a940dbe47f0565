//! Which dial; one more, one less, in another order.

use egui::{Button, Ui};
use latchwright_model::Design;
use latchwright_model::validate::MAX_DIALS;

use crate::action::Action;
use crate::edit::{DialsEdit, Edit};
use crate::view_state::{PoseChange, ViewState};

/// The dials in a row and what can be done with the one that is chosen; the dial that is chosen
/// from now on.
pub fn choose_ui(
    ui: &mut Ui,
    design: &Design,
    view: &ViewState,
    wishes: &mut Vec<Action>,
) -> usize {
    let mut next = view.dial;
    ui.horizontal_wrapped(|ui| {
        for index in 0..design.dials.len().min(MAX_DIALS) {
            let chosen = view.dial == index;
            if ui
                .selectable_label(chosen, format!("Dial {}", index + 1))
                .clicked()
            {
                next = index;
            }
        }
    });
    ui.horizontal_wrapped(|ui| {
        let few = design.dials.len() < MAX_DIALS;
        let add = Edit::Dials(DialsEdit::Add);
        if ui.add_enabled(few, Button::new(add.button())).clicked() {
            wishes.push(Action::Edit(add));
            next = design.dials.len();
        }
        if view.dial < design.dials.len() {
            ui.menu_button(format!("Change dial {}…", view.dial + 1), |ui| {
                if let Some(index) = change_ui(ui, design, view.dial, wishes) {
                    next = index;
                }
            });
        }
    });
    next
}

/// What can be done with the chosen dial as a whole; the one to choose after it.
fn change_ui(ui: &mut Ui, design: &Design, dial: usize, wishes: &mut Vec<Action>) -> Option<usize> {
    let dials = design.dials.len();
    let (few, others) = (dials < MAX_DIALS, dials > 1);
    let mut wish = |ui: &mut Ui, enabled, edit: DialsEdit, pose: Option<PoseChange>| {
        let edit = Edit::Dials(edit);
        let clicked = ui
            .add_enabled(enabled, Button::new(edit.button()))
            .clicked();
        if clicked {
            // a click by a screen reader has no pointer that would close the menu
            ui.close();
            wishes.push(Action::Edit(edit));
            wishes.extend(pose.map(Action::Pose));
        }
        clicked
    };
    if wish(ui, few, DialsEdit::Copy(dial), None) {
        return Some(dials);
    }
    wish(ui, others, DialsEdit::Spread(dial), None);
    let neighbours = [
        (dial > 0, dial.saturating_sub(1)),
        (dial + 1 < dials, dial + 1),
    ];
    for (enabled, with) in neighbours {
        let pose = PoseChange::Exchanged(dial, with);
        if wish(ui, enabled, DialsEdit::Exchange { dial, with }, Some(pose)) {
            return Some(with);
        }
    }
    let pose = PoseChange::TakenAway(dial);
    if wish(ui, others, DialsEdit::TakeAway(dial), Some(pose)) {
        return Some(dial.min(dials.saturating_sub(2)));
    }
    None
}
