//! Which dial; one more, one less, in another order.

use egui::{Button, Ui};
use latchwright_model::validate::MAX_DIALS;
use latchwright_model::{Design, Dial};

use crate::action::Action;
use crate::view_state::ViewState;

/// Room for fingers between two knobs, mm: common practice, no source.
const FINGERS: f64 = 20.0;

/// The dials in a row and what can be done with the one that is chosen; the dial that is chosen
/// from now on.
pub fn choose_ui(
    ui: &mut Ui,
    design: &Design,
    view: &mut ViewState,
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
        if ui.add_enabled(few, Button::new("Add a dial")).clicked() {
            let last = design.dials.len().checked_sub(1);
            wishes.push(Action::edit("add a dial", move |design| {
                let dial = last.and_then(|last| design.dials.get(last)).cloned();
                add(design, dial.unwrap_or_default(), 0);
            }));
            next = design.dials.len();
        }
        if view.dial < design.dials.len() {
            ui.menu_button(format!("Change dial {}…", view.dial + 1), |ui| {
                if let Some(index) = change_ui(ui, design, view, wishes) {
                    next = index;
                }
            });
        }
    });
    next
}

/// What can be done with the chosen dial as a whole; the one to choose after it.
fn change_ui(
    ui: &mut Ui,
    design: &Design,
    view: &mut ViewState,
    wishes: &mut Vec<Action>,
) -> Option<usize> {
    let (index, dials) = (view.dial, design.dials.len());
    let number = index + 1;
    let mut wish = |ui: &mut Ui, enabled, words: String, change: fn(&mut Design, usize)| {
        let clicked = ui
            .add_enabled(enabled, Button::new(words.as_str()))
            .clicked();
        if clicked {
            // a click by a screen reader has no pointer that would close the menu
            ui.close();
            let mut label = words;
            if let Some(first) = label.get_mut(..1) {
                first.make_ascii_lowercase();
            }
            wishes.push(Action::edit(label, move |design| change(design, index)));
        }
        clicked
    };
    let few = dials < MAX_DIALS;
    if wish(ui, few, format!("Copy dial {number}"), copy) {
        return Some(dials);
    }
    let others = dials > 1;
    wish(
        ui,
        others,
        format!("Make all dials as dial {number}"),
        spread,
    );
    if wish(
        ui,
        index > 0,
        format!("Renumber dial {number} to {index}"),
        |design, index| {
            exchange(design, index, index.saturating_sub(1));
        },
    ) {
        exchange_shown(view, index, index.saturating_sub(1));
        return Some(index.saturating_sub(1));
    }
    let later = index + 1 < dials;
    if wish(
        ui,
        later,
        format!("Renumber dial {number} to {}", number + 1),
        |design, index| exchange(design, index, index + 1),
    ) {
        exchange_shown(view, index, index + 1);
        return Some(index + 1);
    }
    if wish(ui, others, format!("Take dial {number} away"), take_away) {
        // those behind it keep showing what they show
        let turns = &mut view.pose.turns_deg;
        if let Some(behind) = turns.get_mut(index..) {
            behind.rotate_left(1.min(behind.len()));
        }
        return Some(index.min(dials.saturating_sub(2)));
    }
    None
}

/// One more dial, to the right of all others by knob and fingers.
fn add(design: &mut Design, mut dial: Dial, digit: u32) {
    let right = design.dials.iter().map(|dial| dial.centre.0);
    if let Some(right) = right.reduce(f64::max) {
        dial.centre.0 = right + dial.knob.diameter + FINGERS;
    }
    design.combination.resize(design.dials.len(), 0);
    design.dials.push(dial);
    design.combination.push(digit);
}

fn copy(design: &mut Design, index: usize) {
    let digit = design.digit(index);
    if let Some(dial) = design.dials.get(index).cloned() {
        add(design, dial, digit);
    }
}

/// All dials become as this one, each where it stands.
fn spread(design: &mut Design, index: usize) {
    let Some(like) = design.dials.get(index).cloned() else {
        return;
    };
    for dial in &mut design.dials {
        *dial = Dial {
            centre: dial.centre,
            ..like.clone()
        };
    }
}

/// Two dials exchange their numbers; each stays where it stands and opens where it did.
fn exchange(design: &mut Design, one: usize, other: usize) {
    if one.max(other) < design.dials.len() {
        design.combination.resize(design.dials.len(), 0);
        design.dials.swap(one, other);
        design.combination.swap(one, other);
    }
}

fn exchange_shown(view: &mut ViewState, one: usize, other: usize) {
    if one.max(other) < view.pose.turns_deg.len() {
        view.pose.turns_deg.swap(one, other);
    }
}

fn take_away(design: &mut Design, index: usize) {
    if index < design.dials.len() {
        design.dials.remove(index);
    }
    if index < design.combination.len() {
        design.combination.remove(index);
    }
}
