//! The verdict in one sentence, and under it what it rests on.

use egui::{CollapsingHeader, RichText, ScrollArea, Ui};
use latchwright_drawing::Ink;
use latchwright_session::{Session, report};
use latchwright_solver::Proof;

use super::{checks, faults, grid, season, states};
use crate::theme;
use crate::view_state::ViewState;

/// The panel of the proof.
pub fn proof_ui(ui: &mut Ui, session: &Session, proof: &Proof, view: &mut ViewState) {
    let design = session.design();
    ScrollArea::vertical()
        .auto_shrink([false, false])
        .show(ui, |ui| {
            // leaves the scroll bar its room
            ui.set_max_width(ui.available_width() - 10.0);
            let proven = proof.proven && !session.blocks_proof();
            let (word, role) = if proven {
                ("Proven", Ink::Passes)
            } else {
                ("Not proven", Ink::Blocks)
            };
            ui.label(
                RichText::new(word)
                    .heading()
                    .color(theme::ink(ui.ctx(), role)),
            );
            ui.label(format!("{}.", report::verdict_sentence(design, proof)));
            faults::faults_ui(ui, session, proof);
            ui.add_space(4.0);
            ui.separator();
            grid::grid_ui(ui, design, proof, view);
            ui.separator();
            checks::checks_ui(ui, design, proof);
            season::season_ui(ui, design);
            ui.separator();
            CollapsingHeader::new("What moves when")
                .default_open(true)
                .show_unindented(ui, |ui| {
                    states::states_ui(ui, proof);
                });
            ui.add_space(8.0);
            ui.label(
                RichText::new("It keeps a secret, not valuables.")
                    .small()
                    .weak(),
            );
        });
}
