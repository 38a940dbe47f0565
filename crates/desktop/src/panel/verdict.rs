//! The verdict in one sentence, at the head of every panel.

use egui::{RichText, Ui};
use latchwright_drawing::Ink;
use latchwright_session::{Session, report};
use latchwright_solver::Proof;

use crate::theme;

/// Whether the open design is proven: nothing in its file stands against it either.
pub fn is_proven(session: &Session, proof: &Proof) -> bool {
    proof.proven && !session.blocks_proof()
}

/// The word and the sentence.
pub fn verdict_ui(ui: &mut Ui, session: &Session, proof: &Proof) {
    let (word, role) = if is_proven(session, proof) {
        ("Proven", Ink::Passes)
    } else {
        ("Not proven", Ink::Blocks)
    };
    let colour = theme::ink(ui.ctx(), role);
    ui.label(RichText::new(word).heading().color(colour));
    ui.label(format!(
        "{}.",
        report::verdict_sentence(session.design(), proof)
    ));
    ui.separator();
}
