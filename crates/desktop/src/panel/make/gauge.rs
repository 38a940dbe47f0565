//! What was measured on the printed gauge, taken as the printer's errors.

use egui::{CollapsingHeader, Layout, RichText, TextEdit, Ui};
use latchwright_drawing::Ink;
use latchwright_model::{Design, Units};
use latchwright_session::units;
use latchwright_session::words::typed::typed_error;
use latchwright_solids::fit::{Readings, profile};
use latchwright_solids::part::Gauge;
use latchwright_words::solids::reading_fault;

use crate::action::Action;
use crate::edit::{BenchEdit, Edit};
use crate::theme;

/// What was typed, by the name of its field.
#[derive(Default)]
pub struct GaugeView {
    typed: Vec<String>,
    refused: Option<String>,
}

/// The fields, and taking what stands in them.
pub fn gauge_ui(ui: &mut Ui, design: &Design, view: &mut GaugeView, wishes: &mut Vec<Action>) {
    let gauge = Gauge::default();
    let mut names: Vec<String> = gauge
        .holes
        .iter()
        .map(|hole| format!("Hole of {hole} mm"))
        .collect();
    names.push(format!("Bar of {} mm, at the bed", gauge.width));
    names.push(format!("Bar of {} mm, above", gauge.width));
    names.push("Diagonal of the square".to_owned());
    view.typed.resize(names.len(), String::new());
    CollapsingHeader::new("What the gauge measured")
        .default_open(false)
        .show_unindented(ui, |ui| {
            let words = "Print the fit gauge as all other parts, measure it with callipers, and type what you read. What you leave empty stays as it is.";
            ui.label(RichText::new(words).small().weak());
            for (name, text) in names.iter().zip(&mut view.typed) {
                ui.horizontal(|ui| {
                    let label = ui.label(RichText::new(name.as_str()).small());
                    ui.with_layout(Layout::right_to_left(egui::Align::Center), |ui| {
                        let field = TextEdit::singleline(text).hint_text("mm").desired_width(64.0);
                        ui.add(field).labelled_by(label.id);
                    });
                });
            }
            let any = view.typed.iter().any(|text| !text.trim().is_empty());
            if ui.add_enabled(any, egui::Button::new("Take these readings")).clicked() {
                view.refused = take(design, &gauge, &names, &view.typed, wishes).err();
            }
            if let Some(why) = &view.refused {
                let colour = theme::ink(ui.ctx(), Ink::Blocks);
                ui.label(RichText::new(format!("Not taken: {why}")).small().color(colour));
            }
        });
}

fn take(
    design: &Design,
    gauge: &Gauge,
    names: &[String],
    typed: &[String],
    wishes: &mut Vec<Action>,
) -> Result<(), String> {
    let mut read = Vec::with_capacity(typed.len());
    for (name, text) in names.iter().zip(typed) {
        let text = text.trim();
        read.push(if text.is_empty() {
            None
        } else {
            let mm = units::parse_length(text, Units::Millimetre);
            Some(mm.map_err(|err| format!("{}: {}", name.to_lowercase(), typed_error(&err)))?)
        });
    }
    let holes = gauge.holes.iter().zip(&read);
    let [bed, above, diagonal] =
        [0, 1, 2].map(|on| read.get(gauge.holes.len() + on).copied().flatten());
    let readings = Readings {
        holes: holes
            .filter_map(|(drawn, read)| Some((*drawn, (*read)?)))
            .collect(),
        outside: above
            .map(|above| (gauge.width, above))
            .into_iter()
            .collect(),
        foot: bed.zip(above),
        square: diagonal.map(|diagonal| (gauge.square, diagonal)),
    };
    let printer =
        profile(&design.bench.printer, &readings).map_err(|fault| reading_fault(&fault))?;
    let edit = BenchEdit::Printer(Box::new(printer));
    wishes.push(Action::Edit(Edit::Bench(edit)));
    Ok(())
}
