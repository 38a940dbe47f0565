//! Giving it: the combination, how it is set at the back of the dials, and the card.

mod card;
mod combination;

use egui::{CollapsingHeader, RichText, Ui, vec2};
use latchwright_proof::Proof;
use latchwright_session::products::{Paper, Wanted};

use super::column::column_ui;
use super::page::page_ui;
use crate::action::Action;
use crate::command::Standing;
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

/// What the panel shows beside the open design.
pub struct Given<'a> {
    /// The open design, and which commands can be given.
    pub standing: Standing<'a>,
    /// Its proof.
    pub proof: &'a Proof,
    /// The card as it is set.
    pub pages: &'a Pages,
    /// How its dials stand.
    pub view: &'a ViewState,
}

/// The panel; `look` says how the card is looked at.
pub fn give_ui(ui: &mut Ui, given: &Given<'_>, look: &mut Look, wishes: &mut Vec<Action>) {
    let Given {
        standing,
        proof,
        pages,
        view,
    } = given;
    let session = standing.session;
    let size = ui.available_size();
    let column = COLUMN.min(size.x * 0.55);
    ui.horizontal_top(|ui| {
        column_ui(ui, vec2(column, size.y), "give", |ui| {
            let design = session.design();
            heading(ui, "Combination", |ui| {
                combination::combination_ui(ui, standing, view, wishes);
            });
            heading(ui, "Setting it", |ui| combination::setting_ui(ui, design));
            heading(ui, "Card for the recipient", |ui| {
                card::words_ui(ui, &design.card, wishes);
            });
        });
        ui.vertical(|ui| {
            card::save_ui(ui, standing, session.proven_by(proof), wishes);
            let name = "The card as it will be printed";
            page_ui(ui, session, pages, CARD, look, name);
        });
    });
}

fn heading(ui: &mut Ui, name: &str, contents: impl FnOnce(&mut Ui)) {
    CollapsingHeader::new(RichText::new(name).family(crate::theme::bold()))
        .default_open(true)
        .show_unindented(ui, contents);
}
