//! What the verdict rests on.

use egui::{CollapsingHeader, RichText, ScrollArea, Ui};
use latchwright_proof::Proof;
use latchwright_search::Remedy;

use super::{builds, checks, faults, grid, season, settings, states};
use crate::action::Action;
use crate::command::Standing;
use crate::view_state::ViewState;
use crate::virtual_builds::VirtualBuilds;

/// What the panel shows: a proof of the open design, and what was found to mend it.
#[derive(Clone, Copy)]
pub struct Proven<'a> {
    /// The open design, and which commands can be given.
    pub standing: Standing<'a>,
    /// Its proof.
    pub proof: &'a Proof,
    /// Remedies in the order of its checks; none while they are looked for.
    pub remedies: &'a [Option<Remedy>],
    /// Virtual builds.
    pub builds: &'a VirtualBuilds,
}

/// The panel of the proof.
pub fn proof_ui(ui: &mut Ui, proven: &Proven<'_>, view: &mut ViewState, wishes: &mut Vec<Action>) {
    let Proven {
        standing, proof, ..
    } = *proven;
    let session = standing.session;
    let design = session.design();
    ScrollArea::vertical()
        .auto_shrink([false, false])
        .show(ui, |ui| {
            // leaves the scroll bar its room
            ui.set_max_width(ui.available_width() - 10.0);
            faults::faults_ui(ui, session, proof);
            ui.add_space(4.0);
            ui.separator();
            grid::grid_ui(ui, design, proof, view, wishes);
            ui.separator();
            settings::settings_ui(ui, design, proof, view, wishes);
            ui.separator();
            checks::checks_ui(ui, proven, wishes);
            season::season_ui(ui, design);
            ui.separator();
            builds::builds_ui(ui, &proven.standing, proven.builds, wishes);
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
