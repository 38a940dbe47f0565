//! Where things stand: bar on top, sizes left, lid in the middle, proof right.

use egui::{CentralPanel, Frame, Margin, Panel, RichText, Stroke, Ui};
use latchwright_drawing::Ink;

use super::LatchwrightApp;
use crate::action::Action;
use crate::canvas::lid_ui;
use crate::panel::{Dialog, Proven, card_ui, dialog_ui, proof_ui, sizes_ui, top_ui};
use crate::theme;

/// Widths of the panels, points: the lid keeps what is left.
const SIZES: f32 = 290.0;
const PROOF: f32 = 410.0;
/// Below this width the panels give way to the lid.
const NARROW: f32 = 1250.0;

impl LatchwrightApp {
    pub(super) fn window_ui(&mut self, ui: &mut Ui) -> Vec<Action> {
        let mut wishes = Vec::new();
        let narrow = ui.available_width() < NARROW;
        let (sizes, proof) = if narrow {
            (250.0, 320.0)
        } else {
            (SIZES, PROOF)
        };
        Panel::top("top").frame(room(ui, 8, 12)).show(ui, |ui| {
            top_ui(ui, &self.session, &mut wishes);
        });
        self.notice_ui(ui);
        Panel::left("sizes")
            .resizable(false)
            .exact_size(sizes)
            .frame(room(ui, 12, 12))
            .show(ui, |ui| {
                sizes_ui(ui, &self.session, &mut self.view, &mut wishes);
            });
        Panel::right("proof")
            .resizable(false)
            .exact_size(proof)
            .frame(room(ui, 12, 12))
            .show(ui, |ui| {
                let proof = Proven {
                    session: &self.session,
                    proof: &self.proof,
                    remedies: self.remedies.of(self.session.revision()),
                    builds: &self.builds,
                };
                proof_ui(ui, &proof, &mut self.view, &mut wishes);
            });
        CentralPanel::default()
            .frame(room(ui, 12, 8))
            .show(ui, |ui| {
                let design = self.session.design().clone();
                lid_ui(ui, &design, &mut self.view);
            });
        self.over_ui(ui, &mut wishes);
        wishes
    }

    fn over_ui(&mut self, ui: &Ui, wishes: &mut Vec<Action>) {
        let ctx = ui.ctx().clone();
        match &mut self.dialog {
            Some(Dialog::Card) => {
                let proven = self.proof.proven && !self.session.blocks_proof();
                card_ui(&ctx, &self.session, proven, &self.card, wishes);
            }
            Some(dialog) => dialog_ui(&ctx, dialog, wishes),
            None => {}
        }
    }

    /// What last happened, until it is put away.
    fn notice_ui(&mut self, ui: &mut Ui) {
        let Some((text, grave)) = self.notice.clone() else {
            return;
        };
        let role = if grave { Ink::Blocks } else { Ink::Passes };
        let colour = theme::ink(ui.ctx(), role);
        Panel::bottom("notice")
            .frame(room(ui, 6, 12))
            .show(ui, |ui| {
                ui.horizontal_wrapped(|ui| {
                    if ui.button("Put away").clicked() {
                        self.notice = None;
                    }
                    let sign = if grave { "!" } else { "✓" };
                    ui.label(RichText::new(format!("{sign} {text}")).color(colour));
                });
            });
    }
}

fn room(ui: &Ui, vertical: i8, horizontal: i8) -> Frame {
    Frame::new()
        .fill(ui.visuals().panel_fill)
        .stroke(Stroke::NONE)
        .inner_margin(Margin::symmetric(horizontal, vertical))
}
