//! The papers as the very pages that are printed, and what the maker's ruler says of an earlier print.

use egui::{CollapsingHeader, Layout, RichText, TextEdit, Ui, vec2};
use latchwright_drawing::Ink;
use latchwright_model::Units;
use latchwright_papers::TemplateOptions;
use latchwright_session::Session;
use latchwright_session::products::{Paper, Wanted};
use latchwright_session::ruler::{self, DiagonalsTyped, LinesTyped};
use latchwright_session::words::typed::reading_error;
use latchwright_workshop::ruler::Correction;

use super::super::column::column_ui;
use super::super::page::page_ui;
use crate::pages::{Look, Pages};
use crate::theme;

/// Width of the column beside the page, points, and where the window is narrow.
const COLUMN: f32 = 240.0;
const NARROW: f32 = 190.0;

/// The papers of the bench, what they are called and what each is for.
const PAPERS: [(Paper, &str, &str); 4] = [
    (
        Paper::Templates,
        "Templates",
        "Every part of wood at true size, to be glued on and worked to",
    ),
    (
        Paper::CutList,
        "Cut list",
        "Sizes, boards, and every hole from its edges",
    ),
    (
        Paper::Work,
        "Order of work",
        "Steps with their settings and cautions",
    ),
    (
        Paper::Setting,
        "Setting the combination",
        "For you alone: it tells the combination",
    ),
];

/// The measured lines, in the order of their fields.
const LINES: [(&str, &str); 4] = [
    (
        "Line along x",
        "What your ruler says of the line at the foot of a sheet",
    ),
    (
        "Line along y",
        "What it says of the line at the left of a sheet",
    ),
    (
        "Rising diagonal",
        "From the lower left corner mark to the upper right one",
    ),
    (
        "Falling diagonal",
        "From the upper left corner mark to the lower right one",
    ),
];

/// What is shown, and what was typed of the ruler.
#[derive(Default)]
pub struct PapersView {
    paper: Paper,
    mirrored: bool,
    look: Look,
    lines: [String; 4],
}

impl PapersView {
    /// How large the page is looked at, and which.
    pub fn look(&self) -> Look {
        self.look
    }

    /// What is asked for; readings that cannot be are left out.
    pub fn wanted(&self, units: Units) -> Wanted {
        let templates = self.paper == Paper::Templates;
        Wanted {
            paper: self.paper,
            mirrored: templates && self.mirrored,
            correction: self
                .correction(units)
                .and_then(Result::ok)
                .filter(|_| templates),
        }
    }

    /// What the files are made with.
    pub fn options(&self, units: Units) -> TemplateOptions {
        TemplateOptions {
            date: None,
            measured: self.correction(units).and_then(Result::ok),
            mirrored: self.mirrored,
        }
    }

    /// What the readings ask for, or why they cannot be; `None` where nothing was typed.
    fn correction(&self, units: Units) -> Option<Result<Correction, String>> {
        let [x, y, rising, falling] = self.lines.each_ref().map(|line| line.trim());
        if self.lines.iter().all(|line| line.trim().is_empty()) {
            return None;
        }
        let diagonals = (!(rising.is_empty() && falling.is_empty()))
            .then_some(DiagonalsTyped { rising, falling });
        let typed = LinesTyped { x, y, diagonals };
        Some(ruler::correction(typed, units).map_err(|err| reading_error(&err, units)))
    }
}

/// The panel.
pub fn papers_ui(ui: &mut Ui, session: &Session, pages: &Pages, view: &mut PapersView) {
    let size = ui.available_size();
    let column = if size.x < 620.0 { NARROW } else { COLUMN };
    ui.horizontal_top(|ui| {
        column_ui(ui, vec2(column, size.y), "papers", |ui| {
            choose_ui(ui, view);
            printer_ui(ui, session.design().units, view);
            cautions_ui(ui);
        });
        ui.vertical(|ui| {
            let wanted = view.wanted(session.design().units);
            let name = PAPERS
                .iter()
                .find(|(paper, ..)| *paper == view.paper)
                .map_or("Page", |(_, name, _)| name);
            let alt = format!("{name} as printed");
            page_ui(ui, session, pages, wanted, &mut view.look, &alt);
        });
    });
}

fn choose_ui(ui: &mut Ui, view: &mut PapersView) {
    for (paper, name, about) in PAPERS {
        let shown = view.paper == paper;
        if ui
            .selectable_label(shown, name)
            .on_hover_text(about)
            .clicked()
            && !shown
        {
            (view.paper, view.look.page) = (paper, 0);
        }
        if shown {
            ui.label(RichText::new(about).small().weak());
        }
    }
    ui.checkbox(&mut view.mirrored, "Mirrored templates")
        .on_hover_text(
            "To be glued on the other face or ironed on: the exact image, words readable",
        );
}

/// What the ruler says, and what follows from it.
fn printer_ui(ui: &mut Ui, units: Units, view: &mut PapersView) {
    CollapsingHeader::new("A print that came out wrong")
        .default_open(false)
        .show_unindented(ui, |ui| {
            let words = "Print one sheet, measure its lines, and type what the ruler says: the templates are then put right for this printer.";
            ui.label(RichText::new(words).small().weak());
            for ((name, about), text) in LINES.into_iter().zip(&mut view.lines) {
                ui.horizontal(|ui| {
                    let label = ui.label(name);
                    ui.with_layout(Layout::right_to_left(egui::Align::Center), |ui| {
                        let hint = match units {
                            Units::Millimetre => "mm",
                            Units::Inch => "in",
                        };
                        let field = TextEdit::singleline(text).hint_text(hint).desired_width(56.0);
                        ui.add(field).labelled_by(label.id).on_hover_text(about);
                    });
                });
            }
            match view.correction(units) {
                None => {
                    let words = "A line in mm is the one of 100 mm, in inches the one of 4 in. Both diagonals are 141.4 mm; leave them out where the corners are square.";
                    ui.label(RichText::new(words).small().weak());
                }
                Some(Ok(correction)) => {
                    let words = format!(
                        "Drawn x × {:.4}, y × {:.4}, skew {:.2}°. Each sheet says how far off it would have been.",
                        correction.x, correction.y, correction.skew_deg
                    );
                    ui.label(RichText::new(words).small().color(theme::ink(ui.ctx(), Ink::Passes)));
                }
                Some(Err(why)) => {
                    let words = format!("Not taken: {why}");
                    ui.label(RichText::new(words).small().color(theme::ink(ui.ctx(), Ink::Blocks)));
                }
            }
        });
}

fn cautions_ui(ui: &mut Ui) {
    ui.add_space(8.0);
    let words = "Print at 100 %, not “fit to page”, and measure both lines before you cut. The papers carry the usual cautions; the manuals of your tools come before them.";
    ui.label(RichText::new(words).small().weak());
}
