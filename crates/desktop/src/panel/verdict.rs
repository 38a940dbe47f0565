//! The verdict in one sentence, at the head of every panel.

use egui::containers::menu::{MenuButton, MenuConfig};
use egui::{PopupCloseBehavior, ProgressBar, RichText, Ui};
use latchwright_drawing::Ink;
use latchwright_proof::Proof;
use latchwright_session::cut_already::CutAlready;
use latchwright_session::report;

use crate::action::Action;
use crate::command::{Command, Standing};
use crate::mending::Mending;
use crate::theme;

/// What the verdict is read from.
#[derive(Clone, Copy)]
pub struct Judged<'a> {
    /// The open design, and which commands can be given.
    pub standing: Standing<'a>,
    /// The last proof made.
    pub proof: &'a Proof,
    /// Whether it is that of what is shown.
    pub fresh: bool,
}

/// The word, the sentence, and mending what is not proven. While the proof is not fresh, nothing is
/// promised of what is shown.
pub fn verdict_ui(
    ui: &mut Ui,
    judged: &Judged<'_>,
    mending: &mut Mending,
    wishes: &mut Vec<Action>,
) {
    let Judged {
        standing,
        proof,
        fresh,
    } = judged;
    let session = standing.session;
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
    if *fresh {
        ui.label(format!("{sentence}."));
    } else {
        ui.weak(format!("Before: {sentence}."));
    }
    if !proof.proven {
        mend_ui(ui, standing, mending, wishes);
    }
    ui.separator();
}

/// The smallest change that proves it, with what is cut already left alone.
fn mend_ui(ui: &mut Ui, standing: &Standing<'_>, mending: &mut Mending, wishes: &mut Vec<Action>) {
    ui.horizontal(|ui| {
        Command::Mend.button_ui(ui, standing, wishes);
        let menu = MenuConfig::new().close_behavior(PopupCloseBehavior::CloseOnClickOutside);
        MenuButton::new("Cut already…").config(menu).ui(ui, |ui| {
            for (part, cut) in CutAlready::ALL.into_iter().zip(&mut mending.cut) {
                ui.checkbox(cut, part.stays());
            }
        });
    });
    if let Some(done) = mending.progress() {
        ui.horizontal(|ui| {
            ui.add(ProgressBar::new(done).desired_width(110.0));
            Command::StopMending.button_ui(ui, standing, wishes);
        });
    }
}
