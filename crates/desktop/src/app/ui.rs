//! Where things stand: bar on top, rail left, lid in the middle, the stage's panel right.

use std::sync::Arc;

use egui::{CentralPanel, Frame, Margin, Panel, RichText, Stroke, Ui};
use latchwright_drawing::Ink;

use super::opening::Opening;
use super::{LatchwrightApp, Tone, standing};
use crate::action::Action;
use crate::canvas::{lid_hand_ui, lid_head_ui, lid_ui, twin_ui};
use crate::command::Command;
use crate::panel::{
    Dialog, Given, Judged, Proven, dialog_ui, give_ui, make_ui, new_box_ui, proof_ui, rail_ui,
    sizes_ui, top_ui, try_ui, verdict_ui,
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
        twin_ui(ui, self.session.design(), &self.view, &self.scene);
        let wide = ui.available_width() >= NARROW;
        Panel::top("top").frame(room(ui, 8, 12)).show(ui, |ui| {
            top_ui(ui, &self.standing(), &self.recents, &mut wishes);
        });
        self.opening_ui(ui, &mut wishes);
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
            .show(ui, |ui| self.lid_ui(ui, &mut wishes));
        self.over_ui(ui, &mut wishes);
        wishes
    }

    /// The lid. What a hand does on it is a wish like any other, and granted before the lid is drawn, so that
    /// a dial does not lag a frame behind the hand; unless something was wished for before it.
    fn lid_ui(&mut self, ui: &mut Ui, wishes: &mut Vec<Action>) {
        lid_head_ui(ui, &mut self.view);
        let design = Arc::clone(self.session.design());
        self.scene
            .follow(&design, self.session.revision(), &self.view);
        let handles = self.stage == Stage::LayOut;
        let (view, scene, mut by_hand) = (&mut self.view, &self.scene, Vec::new());
        let placed = lid_hand_ui(ui, &design, view, scene, handles, &mut by_hand);
        if wishes.is_empty() {
            self.apply_all(&ui.ctx().clone(), by_hand);
        } else {
            wishes.append(&mut by_hand);
        }
        let design = Arc::clone(self.session.design());
        self.scene
            .follow(&design, self.session.revision(), &self.view);
        lid_ui(ui, placed, &design, &self.view, &mut self.scene);
    }

    /// The panel of the stage that is shown, the verdict at its head.
    fn stage_ui(&mut self, ui: &mut Ui, wishes: &mut Vec<Action>) {
        let session = &self.session;
        let standing = standing(session, &self.saving, &self.mending, &self.pages);
        let proof = self.proving.proof();
        let judged = Judged {
            standing,
            proof,
            fresh: self.proving.fresh(session).is_some(),
        };
        verdict_ui(ui, &judged, &mut self.mending, wishes);
        match self.stage {
            Stage::LayOut => sizes_ui(ui, session, &mut self.view, wishes),
            Stage::Try => try_ui(ui, &standing, &mut self.view, &self.hunting, wishes),
            Stage::Prove => {
                let proven = Proven {
                    standing,
                    proof,
                    remedies: self.remedies.of(session.revision()),
                    builds: &self.builds,
                };
                proof_ui(ui, &proven, &mut self.view, wishes);
            }
            Stage::Make => {
                let (pages, printed) = (&self.pages, &mut self.printed);
                make_ui(ui, &standing, pages, printed, &mut self.make, wishes);
            }
            Stage::Give => {
                let given = Given {
                    standing,
                    proof,
                    pages: &self.pages,
                    view: &self.view,
                };
                give_ui(ui, &given, &mut self.card, wishes);
            }
        }
    }

    fn over_ui(&mut self, ui: &Ui, wishes: &mut Vec<Action>) {
        let ctx = ui.ctx().clone();
        // taken out, so that what stands there can be read meanwhile
        let Some(mut dialog) = self.dialog.take() else {
            return;
        };
        let standing = self.standing();
        match &mut dialog {
            Dialog::NewBox(asked) => {
                new_box_ui(&ctx, &standing, asked, &self.proposing, wishes);
            }
            dialog => dialog_ui(&ctx, dialog, &standing, wishes),
        }
        self.dialog = Some(dialog);
    }

    /// What is being opened, where that takes long.
    fn opening_ui(&self, ui: &mut Ui, wishes: &mut Vec<Action>) {
        let Some(what) = self.opening.as_ref().and_then(Opening::told) else {
            return;
        };
        Panel::bottom("opening")
            .frame(room(ui, 6, 12))
            .show(ui, |ui| {
                ui.horizontal_wrapped(|ui| {
                    Command::StopOpening.button_ui(ui, &self.standing(), wishes);
                    ui.label(format!("Opening {what}…"));
                });
            });
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
