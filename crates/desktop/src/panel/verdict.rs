//! The verdict in one sentence, at the head of every panel.

use egui::containers::menu::{MenuButton, MenuConfig};
use egui::{Button, PopupCloseBehavior, RichText, Ui};
use latchwright_drawing::Ink;
use latchwright_proof::Proof;
use latchwright_session::cut_already::CutAlready;
use latchwright_session::{Session, report};

use crate::action::Action;
use crate::proposing::Mending;
use crate::theme;

/// The word, the sentence, and mending what is not proven. While the proof is not fresh, nothing is
/// promised of what is shown.
pub fn verdict_ui(
    ui: &mut Ui,
    session: &Session,
    (proof, fresh): (&Proof, bool),
    mending: &mut Mending,
    wishes: &mut Vec<Action>,
) {
    let (word, role) = if !fresh {
        ("Being proven anew…", Ink::Note)
    } else if session.proven_by(proof) {
        ("Proven", Ink::Passes)
    } else {
        ("Not proven", Ink::Blocks)
    };
    let colour = theme::ink(ui.ctx(), role);
    ui.label(RichText::new(word).heading().color(colour));
    let sentence = report::verdict_sentence(session.design(), proof);
    if fresh {
        ui.label(format!("{sentence}."));
    } else {
        ui.weak(format!("Before: {sentence}."));
    }
    if !proof.proven {
        mend_ui(ui, mending, wishes);
    }
    ui.separator();
}

/// The smallest change that proves it, with what is cut already left alone.
fn mend_ui(ui: &mut Ui, mending: &mut Mending, wishes: &mut Vec<Action>) {
    ui.horizontal(|ui| {
        let busy = mending.busy();
        let button = Button::new(if busy { "Looking…" } else { "Mend it" });
        let about =
            "The smallest change that makes it proven, made in one step that undo takes back";
        if ui.add_enabled(!busy, button).on_hover_text(about).clicked() {
            wishes.push(Action::Mend);
        }
        let menu = MenuConfig::new().close_behavior(PopupCloseBehavior::CloseOnClickOutside);
        MenuButton::new("Cut already…").config(menu).ui(ui, |ui| {
            for (part, cut) in CutAlready::ALL.into_iter().zip(&mut mending.cut) {
                ui.checkbox(cut, part.stays());
            }
        });
    });
}
