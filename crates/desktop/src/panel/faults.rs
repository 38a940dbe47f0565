//! What is wrong with the design, and what the file did not say.

use egui::{CollapsingHeader, RichText, Ui};
use latchwright_drawing::Ink;
use latchwright_model::Fault;
use latchwright_proof::Proof;
use latchwright_session::Session;
use latchwright_words::fault_sentence;

use crate::theme;

/// Most faults shown one by one.
const SHOWN: usize = 12;

/// Faults first, then notices; nothing where there are none.
pub fn faults_ui(ui: &mut Ui, session: &Session, proof: &Proof) {
    let grave = theme::ink(ui.ctx(), Ink::Blocks);
    for field in session.unknown().iter().take(SHOWN) {
        ui.label(RichText::new(format!("! {field}")).color(grave));
    }
    let units = session.design().units;
    let (errors, notices): (Vec<&Fault>, Vec<&Fault>) =
        proof.faults.iter().partition(|fault| fault.is_error());
    for fault in errors.iter().take(SHOWN) {
        let said = format!("! {}", fault_sentence(fault, units));
        ui.label(RichText::new(said).color(grave));
    }
    if errors.len() > SHOWN {
        ui.label(RichText::new(format!("and {} more", errors.len() - SHOWN)).color(grave));
    }
    let notices: Vec<String> = notices
        .into_iter()
        .map(|fault| fault_sentence(fault, units))
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
