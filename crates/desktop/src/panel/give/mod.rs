//! Giving it: the combination, how it is set at the back of the dials, and the card.

mod card;
mod combination;

use egui::{CollapsingHeader, RichText, Ui, vec2};
use latchwright_proof::Proof;
use latchwright_session::Session;
use latchwright_session::products::{Paper, Wanted};

use super::column::column_ui;
use super::page::page_ui;
use crate::action::Action;
use crate::pages::{Look, Pages};
use crate::view_state::ViewState;

/// Width of the column beside the card, points.
const COLUMN: f32 = 330.0;

/// The card as it is asked for.
pub const CARD: Wanted = Wanted {
    paper: Paper::Card,
    mirrored: false,
    correction: None,
};

/// The panel.
pub fn give_ui(
    ui: &mut Ui,
    (session, proof): (&Session, &Proof),
    (pages, look): (&Pages, &mut Look),
    view: &ViewState,
    wishes: &mut Vec<Action>,
) {
    let size = ui.available_size();
    let column = COLUMN.min(size.x * 0.55);
    ui.horizontal_top(|ui| {
        column_ui(ui, vec2(column, size.y), "give", |ui| {
            let design = session.design();
            heading(ui, "Combination", |ui| {
                combination::combination_ui(ui, design, view, wishes);
            });
            heading(ui, "Setting it", |ui| combination::setting_ui(ui, design));
            heading(ui, "Card for the recipient", |ui| {
                card::words_ui(ui, &design.card, wishes);
            });
        });
        ui.vertical(|ui| {
            let refused = pages.refused(session.revision(), CARD).is_some();
            card::save_ui(ui, session.proven_by(proof), refused, wishes);
            page_ui(
                ui,
                session,
                pages,
                CARD,
                look,
                "The card as it will be printed",
            );
        });
    });
}

fn heading(ui: &mut Ui, name: &str, contents: impl FnOnce(&mut Ui)) {
    CollapsingHeader::new(RichText::new(name).family(crate::theme::bold()))
        .default_open(true)
        .show_unindented(ui, contents);
}
