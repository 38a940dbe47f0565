//! The box: room inside, sides, floor, how the lid comes off, hinges.

use egui::Ui;
use latchwright_model::{Corner, Design, LidKind};

use super::caption;
use super::rows::{self, rows_ui};
use super::wood::{self, choice_ui};
use crate::action::Action;
use crate::edit::Edit;

/// Everything about the box.
pub fn body_ui(ui: &mut Ui, design: &Design, wishes: &mut Vec<Action>) {
    caption(ui, "Room inside");
    rows_ui(ui, design, rows::INSIDE, wishes);
    caption(ui, "Sides");
    rows_ui(ui, design, rows::SIDES, wishes);
    wood::sides_ui(ui, design, wishes);
    let corners = [Corner::Mitred, Corner::Butted, Corner::Rabbeted];
    let why =
        "Mitres hide the end grain and want a true saw; a rabbet gives more face for the glue";
    if let Some(corner) = choice_ui(
        ui,
        "Corners",
        why,
        design.body.corner,
        &corners,
        corner_name,
    ) {
        wishes.push(Action::Edit(Edit::Corners(corner)));
    }
    caption(ui, "Floor");
    rows_ui(ui, design, rows::FLOOR, wishes);
    wood::floor_ui(ui, design, wishes);
    caption(ui, "Lid and hinges");
    lid_ui(ui, design, wishes);
    rows_ui(ui, design, rows::HINGE, wishes);
}

fn corner_name(corner: Corner) -> &'static str {
    match corner {
        Corner::Mitred => "mitred",
        Corner::Butted => "butted, short sides between",
        Corner::Rabbeted => "rabbeted, short sides sunk in",
    }
}

fn lid_ui(ui: &mut Ui, design: &Design, wishes: &mut Vec<Action>) {
    let banded = matches!(design.body.lid, LidKind::Band { .. });
    let name = |banded| {
        if banded {
            "plate in a band cut off the sides"
        } else {
            "plate alone, on the sides"
        }
    };
    let why = "A band is cut off the glued-up box, so that lid and box match";
    if let Some(banded) = choice_ui(ui, "Lid", why, banded, &[false, true], name) {
        let lid = if banded {
            // a hand's hold on it, and deeper than the groove for the plate
            LidKind::Band { height: 20.0 }
        } else {
            LidKind::Plate
        };
        wishes.push(Action::Edit(Edit::Lid(lid)));
    }
    rows_ui(ui, design, rows::BAND, wishes);
}
