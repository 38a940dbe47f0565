//! Making it: papers for the bench and parts to print.

mod gauge;
mod papers;
mod parts;
mod solid;

use egui::{Align, Button, Layout, Ui};
use latchwright_session::Session;

use crate::action::Action;
use crate::pages::Pages;
use crate::printed::Printed;

pub use papers::PapersView;
pub use parts::PartsView;

/// What is being made.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Making {
    /// Papers for the bench.
    #[default]
    Papers,
    /// Parts to print.
    Parts,
}

/// How papers and parts are looked at.
#[derive(Default)]
pub struct MakeView {
    /// Which of both.
    pub making: Making,
    /// The papers.
    pub papers: PapersView,
    /// The parts.
    pub parts: PartsView,
}

/// The panel.
pub fn make_ui(
    ui: &mut Ui,
    session: &Session,
    (pages, printed): (&Pages, &mut Printed),
    view: &mut MakeView,
    saving: bool,
    wishes: &mut Vec<Action>,
) {
    ui.horizontal(|ui| {
        for (making, name) in [
            (Making::Papers, "Papers for the bench"),
            (Making::Parts, "Parts to print"),
        ] {
            let button = Button::selectable(view.making == making, name);
            if ui.add(button).clicked() {
                view.making = making;
            }
        }
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            save_ui(ui, view.making, saving, wishes);
        });
    });
    match view.making {
        Making::Papers => papers::papers_ui(ui, session, pages, &mut view.papers),
        Making::Parts => parts::parts_ui(ui, session, printed, &mut view.parts, wishes),
    }
}

/// All of it in one folder.
fn save_ui(ui: &mut Ui, making: Making, saving: bool, wishes: &mut Vec<Action>) {
    let (name, about) = match making {
        Making::Papers => (
            "Save all papers…",
            "These papers, the card, and each part as SVG and DXF, in one folder",
        ),
        Making::Parts => (
            "Save all parts…",
            "A 3MF for each bed, an STL for each part, and a list of sizes, in one folder",
        ),
    };
    let button = Button::new(if saving { "Saving…" } else { name });
    if ui
        .add_enabled(!saving, button)
        .on_hover_text(about)
        .clicked()
    {
        wishes.push(match making {
            Making::Papers => Action::AskPapersPath,
            Making::Parts => Action::AskPartsPath,
        });
    }
}
