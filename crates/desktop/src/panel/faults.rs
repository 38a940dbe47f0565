//! What is wrong with the design, and what the file did not say.

use egui::{CollapsingHeader, RichText, Ui};
use latchwright_drawing::Ink;
use latchwright_model::Severity;
use latchwright_proof::Proof;
use latchwright_session::Session;

use crate::theme;

/// Most faults shown one by one.
const SHOWN: usize = 12;

/// Faults first, then notices; nothing where there are none.
pub fn faults_ui(ui: &mut Ui, session: &Session, proof: &Proof) {
    let grave = theme::ink(ui.ctx(), Ink::Blocks);
    for field in session.unknown().iter().take(SHOWN) {
        ui.label(RichText::new(format!("! {field}")).color(grave));
    }
    let errors: Vec<_> = proof
        .faults
        .iter()
        .filter(|fault| fault.severity == Severity::Error)
        .collect();
    for fault in errors.iter().take(SHOWN) {
        ui.label(RichText::new(format!("! {fault}")).color(grave));
    }
    if errors.len() > SHOWN {
        ui.label(RichText::new(format!("and {} more", errors.len() - SHOWN)).color(grave));
    }
    let notices: Vec<String> = proof
        .faults
        .iter()
        .filter(|fault| fault.severity == Severity::Notice)
        .map(ToString::to_string)
        .chain(session.notices().iter().map(ToString::to_string))
        .collect();
    if notices.is_empty() {
        return;
    }
    let title = match notices.len() {
        1 => "1 notice".to_owned(),
        many => format!("{many} notices"),
    };
    CollapsingHeader::new(RichText::new(title).small())
        .id_salt("notices")
        .show(ui, |ui| {
            for notice in notices.iter().take(40) {
                ui.label(RichText::new(notice).small());
            }
        });
}
