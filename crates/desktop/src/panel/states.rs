//! The lock-state table, as computed.

use egui::{Grid, RichText, Ui};
use latchwright_drawing::Ink;
use latchwright_proof::Proof;
use latchwright_session::report;

use crate::theme;

/// The table: what the lid, the slider and the dials do in each state.
pub fn states_ui(ui: &mut Ui, proof: &Proof) {
    Grid::new("lock states")
        .num_columns(4)
        .spacing([14.0, 4.0])
        .show(ui, |ui| {
            for head in ["", "lid lifts", "slider goes", "dials turn"] {
                ui.label(RichText::new(head).small().weak());
            }
            ui.end_row();
            for row in &proof.states.rows {
                let role = if row.as_meant {
                    Ink::Label
                } else {
                    Ink::Blocks
                };
                let colour = theme::ink(ui.ctx(), role);
                for cell in [
                    report::state_name(row.state),
                    report::sure_word(row.lid_lifts),
                    report::slides_word(row.slider),
                    report::sure_word(row.dials_turn),
                ] {
                    ui.label(RichText::new(cell).small().color(colour));
                }
                ui.end_row();
            }
        });
}
