//! Where things stand: bar on top, rail left, lid in the middle, the stage's panel right.

use egui::{CentralPanel, Frame, Margin, Panel, RichText, Stroke, Ui};
use latchwright_drawing::Ink;

use super::{LatchwrightApp, Tone};
use crate::action::Action;
use crate::canvas::{lid_ui, twin_ui};
use crate::panel::{
    Dialog, Proven, dialog_ui, give_ui, make_ui, new_box_ui, proof_ui, rail_ui, sizes_ui, top_ui,
    try_ui, verdict_ui,
};
use crate::stage::Stage;
use crate::theme;

/// Below this width the panels give way to the lid, points.
const NARROW: f32 = 1250.0;
/// Widths of the rail, points.
const RAIL: [f32; 2] = [134.0, 142.0];
/// Least width that the lid keeps beside the pages, points.
const LID: f32 = 330.0;

impl LatchwrightApp {
    pub(super) fn window_ui(&mut self, ui: &mut Ui) -> Vec<Action> {
        let mut wishes = Vec::new();
        twin_ui(ui, self.session.design(), &self.view);
        let wide = ui.available_width() >= NARROW;
        Panel::top("top").frame(room(ui, 8, 12)).show(ui, |ui| {
            top_ui(ui, &self.session, &self.recents, &mut wishes);
        });
        self.notice_ui(ui);
        Panel::left("rail")
            .resizable(false)
            .exact_size(RAIL[usize::from(wide)])
            .frame(room(ui, 8, 0))
            .show(ui, |ui| rail_ui(ui, self.stage, &mut wishes));
        let panel = panel_width(self.stage, wide, ui.available_width());
        Panel::right("stage")
            .resizable(false)
            .exact_size(panel)
            .frame(room(ui, 12, 12))
            .show(ui, |ui| self.stage_ui(ui, &mut wishes));
        CentralPanel::default()
            .frame(room(ui, 12, 8))
            .show(ui, |ui| {
                let design = self.session.design().clone();
                let handles = self.stage == Stage::LayOut;
                lid_ui(ui, &design, &mut self.view, handles, &mut wishes);
            });
        self.over_ui(ui, &mut wishes);
        wishes
    }

    /// The panel of the stage that is shown, the verdict at its head.
    fn stage_ui(&mut self, ui: &mut Ui, wishes: &mut Vec<Action>) {
        let fresh = self.proving.fresh(&self.session).is_some();
        let proof = (self.proving.proof().as_ref(), fresh);
        verdict_ui(ui, &self.session, proof, &mut self.mending, wishes);
        let proof = self.proving.proof();
        match self.stage {
            Stage::LayOut => sizes_ui(ui, &self.session, &mut self.view, wishes),
            Stage::Try => try_ui(ui, &self.session, &mut self.view, &mut self.tried, wishes),
            Stage::Prove => {
                let proof = Proven {
                    session: &self.session,
                    proof,
                    remedies: self.remedies.of(self.session.revision()),
                    builds: &self.builds,
                };
                proof_ui(ui, &proof, &mut self.view, wishes);
            }
            Stage::Make => {
                let (session, saving) = (&self.session, self.saving.busy());
                let made = (&self.pages, &mut self.printed);
                make_ui(ui, session, made, &mut self.make, saving, wishes);
            }
            Stage::Give => {
                let paper = (&self.pages, &mut self.card);
                give_ui(ui, (&self.session, proof), paper, &self.view, wishes);
            }
        }
    }

    fn over_ui(&mut self, ui: &Ui, wishes: &mut Vec<Action>) {
        let ctx = ui.ctx().clone();
        match &mut self.dialog {
            Some(Dialog::NewBox(asked)) => {
                let design = self.session.design().clone();
                new_box_ui(&ctx, &design, asked, &mut self.proposing, wishes);
            }
            Some(dialog) => dialog_ui(&ctx, dialog, wishes),
            None => {}
        }
    }

    /// What last happened, until it is put away.
    fn notice_ui(&mut self, ui: &mut Ui) {
        let Some((text, tone)) = self.notice.clone() else {
            return;
        };
        let (sign, role) = match tone {
            Tone::Welcome => ("", Ink::Label),
            Tone::Done => ("✓ ", Ink::Passes),
            Tone::Grave => ("! ", Ink::Blocks),
        };
        let colour = theme::ink(ui.ctx(), role);
        Panel::bottom("notice")
            .frame(room(ui, 6, 12))
            .show(ui, |ui| {
                ui.horizontal_wrapped(|ui| {
                    if ui.button("Put away").clicked() {
                        self.notice = None;
                    }
                    ui.label(RichText::new(format!("{sign}{text}")).color(colour));
                });
            });
    }
}

/// How wide the panel of a stage is, of what is free beside the rail: pages take what the lid can spare.
fn panel_width(stage: Stage, wide: bool, free: f32) -> f32 {
    match (stage, wide) {
        (Stage::Make | Stage::Give, _) => (free * 0.62).min(free - LID).max(0.0),
        (Stage::Prove, true) => 410.0,
        (Stage::LayOut | Stage::Try, true) => 340.0,
        (_, false) => 320.0,
    }
}

fn room(ui: &Ui, vertical: i8, horizontal: i8) -> Frame {
    Frame::new()
        .fill(ui.visuals().panel_fill)
        .stroke(Stroke::NONE)
        .inner_margin(Margin::symmetric(horizontal, vertical))
}
