//! The printed parts in 3D: turned by mouse and keys, one alone or all in the lid, pulled apart, cut.

use egui::{Button, CollapsingHeader, Grid, RichText, Slider, Ui, vec2};
use latchwright_drawing::Ink;
use latchwright_model::Units;
use latchwright_session::Session;
use latchwright_solids::view::{Across, Camera, Cut};
use latchwright_solids::{Grip, Part, Relief};
use latchwright_words::solids::warning;

use super::super::column::column_ui;
use super::gauge::{GaugeView, gauge_ui};
use super::solid::solid_ui;
use crate::action::Action;
use crate::printed::{Chosen, Made, Printed, Shown, View};
use crate::theme;

/// Width of the column beside the picture, points.
const COLUMN: f32 = 250.0;
/// Where one looks from first, degrees.
const FROM: (f64, f64) = (-30.0, 30.0);

/// How the parts are looked at, and what was chosen for them.
pub struct PartsView {
    pub(super) view: View,
    chosen: Chosen,
    /// Across which axis it is cut, and where between the ends of all parts, 0 to 1.
    cut: Option<(Across, f64)>,
    pub(super) names: bool,
    gauge: GaugeView,
}

impl Default for PartsView {
    fn default() -> Self {
        let (turn, tilt) = FROM;
        Self {
            view: View {
                shown: Shown::default(),
                camera: Camera {
                    turn,
                    tilt,
                    ..Camera::default()
                },
                fit: true,
                pulled: 0.6,
                cut: None,
                chosen: None,
                size: (0, 0),
                line: 1.0,
                dark: false,
            },
            chosen: Chosen::default(),
            cut: None,
            names: true,
            gauge: GaugeView::default(),
        }
    }
}

impl PartsView {
    /// What the parts are made with.
    pub fn chosen(&self) -> Chosen {
        self.chosen
    }

    /// How they are looked at.
    pub fn view(&self) -> &View {
        &self.view
    }

    /// Another design: all of it into the picture.
    pub fn anew(&mut self) {
        (self.view.fit, self.view.chosen) = (true, None);
        if let Shown::One(_) = self.view.shown {
            self.view.shown = Shown::default();
        }
    }

    pub(super) fn show(&mut self, shown: Shown) {
        if self.view.shown != shown {
            (self.view.shown, self.view.fit) = (shown, true);
        }
    }
}

/// The panel.
pub fn parts_ui(
    ui: &mut Ui,
    session: &Session,
    printed: &mut Printed,
    view: &mut PartsView,
    wishes: &mut Vec<Action>,
) {
    let size = ui.available_size();
    ui.horizontal_top(|ui| {
        column_ui(ui, vec2(COLUMN, size.y), "parts", |ui| {
            contents_ui(ui, session, printed, view, wishes);
        });
        ui.vertical(|ui| solid_ui(ui, session, printed, view));
    });
}

fn contents_ui(
    ui: &mut Ui,
    session: &Session,
    printed: &Printed,
    view: &mut PartsView,
    wishes: &mut Vec<Action>,
) {
    looks_ui(ui, view);
    let made = printed.parts(session.revision(), view.chosen);
    let parts = made.map_or(&[][..], |made| made.parts.as_slice());
    ui.separator();
    list_ui(ui, parts, view);
    if let Some(part) = view.view.chosen.and_then(|index| parts.get(index)) {
        part_ui(ui, part, session.design().units);
    }
    ui.separator();
    choices_ui(ui, view);
    cautions_ui(ui);
    gauge_ui(ui, session.design(), &mut view.gauge, wishes);
}

/// What is looked at and how.
fn looks_ui(ui: &mut Ui, view: &mut PartsView) {
    let alone = view.view.chosen;
    ui.horizontal_wrapped(|ui| {
        for (shown, name) in [
            (Some(Shown::InTheLid), "In the lid"),
            (Some(Shown::Lying), "As printed"),
            (alone.map(Shown::One), "One alone"),
        ] {
            let on = shown == Some(view.view.shown);
            let button = Button::selectable(on, name);
            if ui.add_enabled(shown.is_some(), button).clicked()
                && let Some(shown) = shown
            {
                view.show(shown);
            }
        }
    });
    let lid = view.view.shown == Shown::InTheLid;
    ui.add_enabled_ui(lid, |ui| {
        let label = ui.label("Pulled apart");
        ui.spacing_mut().slider_width = COLUMN - 30.0;
        let slider = Slider::new(&mut view.view.pulled, 0.0..=1.0).show_value(false);
        ui.add(slider).labelled_by(label.id);
    });
    let mut cut = view.cut;
    ui.horizontal_wrapped(|ui| {
        ui.label("Cut");
        for (across, name) in [
            (None, "not"),
            (Some(Across::X), "left to right"),
            (Some(Across::Y), "front to back"),
            (Some(Across::Z), "level"),
        ] {
            let on = cut.map(|(across, _)| across) == across;
            if ui.add(Button::selectable(on, name)).clicked() {
                cut = across.map(|across| (across, cut.map_or(0.5, |(_, at)| at)));
            }
        }
    });
    if let Some((_, at)) = &mut cut {
        let label = ui.label("Where");
        ui.spacing_mut().slider_width = COLUMN - 30.0;
        ui.add(Slider::new(at, 0.0..=1.0).show_value(false))
            .labelled_by(label.id);
    }
    view.cut = cut;
    ui.checkbox(&mut view.names, "Names");
}

impl PartsView {
    /// The section plane where the parts stand now: between the ends of what is looked at.
    pub(super) fn plane(&self, made: Option<&Made>) -> Option<Cut> {
        let (across, share) = self.cut?;
        let extent = made?.extent(self.view.shown);
        let axis = match across {
            Across::X => 0,
            Across::Y => 1,
            Across::Z => 2,
        };
        let (low, high) = (extent.low[axis], extent.high[axis]);
        let at = low + (high - low) * share;
        Some(Cut::facing(across, at, &self.view.camera))
    }
}

/// Every part, to be chosen.
fn list_ui(ui: &mut Ui, parts: &[Part], view: &mut PartsView) {
    if parts.is_empty() {
        ui.label(RichText::new("The parts are being made…").weak());
        return;
    }
    let grams: f64 = parts.iter().map(|part| part.mass_g).sum();
    let metres: f64 = parts.iter().map(|part| part.filament_mm).sum::<f64>() / 1000.0;
    let words = format!(
        "{} parts, {grams:.0} g and {metres:.1} m of filament if printed solid",
        parts.len()
    );
    ui.label(RichText::new(words).small().weak());
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = vec2(4.0, 2.0);
        for (index, part) in parts.iter().enumerate() {
            let on = view.view.chosen == Some(index);
            let sign = if part.warnings.is_empty() { "" } else { " !" };
            let name = RichText::new(format!("{}{sign}", part.name)).small();
            if ui.add(Button::selectable(on, name)).clicked() {
                view.view.chosen = (!on).then_some(index);
                if let Shown::One(_) = view.view.shown {
                    view.show(Shown::One(index));
                }
            }
        }
    });
}

/// What is to be known of one part.
fn part_ui(ui: &mut Ui, part: &Part, units: Units) {
    let [x, y, z] = [0, 1, 2].map(|axis| {
        let extent = part.extent();
        extent.high[axis] - extent.low[axis]
    });
    ui.add_space(4.0);
    ui.label(RichText::new(part.name.as_str()).family(theme::bold()));
    let words = format!("{x:.2} × {y:.2} × {z:.2} mm, {:.1} g", part.mass_g);
    ui.label(RichText::new(words).small());
    for one in &part.warnings {
        let colour = theme::ink(ui.ctx(), Ink::Blocks);
        let words = format!("! {}", warning(one, units));
        ui.label(RichText::new(words).small().color(colour));
    }
    CollapsingHeader::new("Sizes: said, drawn, expected (mm)")
        .default_open(false)
        .show_unindented(ui, |ui| {
            Grid::new("sizes of the part")
                .num_columns(2)
                .show(ui, |ui| {
                    for size in &part.sizes {
                        ui.label(RichText::new(size.what.name()).small());
                        let words = format!(
                            "{:.2} → {:.2} → {:.2}",
                            size.nominal, size.drawn, size.expected
                        );
                        ui.label(RichText::new(words).small());
                        ui.end_row();
                    }
                });
        });
}

fn choices_ui(ui: &mut Ui, view: &mut PartsView) {
    ui.label(RichText::new("Knobs").weak());
    ui.horizontal_wrapped(|ui| {
        for (grip, name) in [
            (Grip::Fluted, "fluted"),
            (Grip::Lobed, "lobed"),
            (Grip::Faceted, "faceted"),
            (Grip::Plain, "plain"),
        ] {
            if ui
                .add(Button::selectable(view.chosen.grip == grip, name))
                .clicked()
            {
                view.chosen.grip = grip;
            }
        }
    });
    let mut sunk = view.chosen.relief == Relief::Sunk;
    ui.checkbox(&mut sunk, "Pointers and labels sunk")
        .on_hover_text("To be filled with paint; raised ones take a second filament");
    view.chosen.relief = if sunk { Relief::Sunk } else { Relief::Raised };
    ui.checkbox(&mut view.chosen.pin_strip, "Pins in one strip")
        .on_hover_text("Standing pins of a wooden slider, joined");
}

fn cautions_ui(ui: &mut Ui) {
    let words = "Print the fit gauge first. Small parts: keep them from small children. Nozzle and bed are hot; mind your printer's manual.";
    ui.label(RichText::new(words).small().weak());
}
