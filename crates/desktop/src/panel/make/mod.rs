//! Making it: papers for the bench and parts to print.

mod gauge;
mod papers;
mod parts;
mod solid;

use egui::{Align, Button, Layout, Ui};

use crate::action::{Action, Product};
use crate::command::{Command, Standing};
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
    standing: &Standing<'_>,
    pages: &Pages,
    printed: &mut Printed,
    view: &mut MakeView,
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
            let product = match view.making {
                Making::Papers => Product::Papers,
                Making::Parts => Product::Parts,
            };
            Command::SaveAs(product).button_ui(ui, standing, wishes);
        });
    });
    let session = standing.session;
    match view.making {
        Making::Papers => papers::papers_ui(ui, session, pages, &mut view.papers),
        Making::Parts => parts::parts_ui(ui, session, printed, &mut view.parts, wishes),
    }
}
