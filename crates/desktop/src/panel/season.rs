//! The year as a small drawing: how moist the wood stands and what play the guide keeps. The same is
//! said in words below it.

use egui::accesskit::Role;
use egui::{
    Align2, CollapsingHeader, FontId, Rect, RichText, Sense, Shape, Stroke, Ui, WidgetInfo, pos2,
    vec2,
};
use latchwright_drawing::Ink;
use latchwright_model::unit::MM_PER_INCH;
use latchwright_model::{Design, Units};
use latchwright_proof::season::{Year, YearPoint, year};
use latchwright_session::report;

use crate::theme;

/// Moments of the curve: smooth at this size.
const POINTS: usize = 49;
/// Height of the drawing, points.
const HEIGHT: f32 = 132.0;
/// Room for a row of words, points.
const ROW: f32 = 16.0;
/// Room above and below a curve, so that figures of two curves do not meet, points.
const APART: f32 = 9.0;
/// Room for the names on the left and for the figures on the right, points.
const NAMES: f32 = 60.0;
const FIGURES: f32 = 60.0;
/// Size of the words in the drawing, points.
const WORDS: f32 = 11.0;

/// The panel of the year; nothing where the design has none that could be drawn.
pub fn season_ui(ui: &mut Ui, design: &Design) {
    let Some(year) = year(design, POINTS) else {
        return;
    };
    ui.separator();
    CollapsingHeader::new("The year")
        .default_open(true)
        .show_unindented(ui, |ui| {
            let said = report::season_sentences(design, &year).join(" ");
            let size = vec2(ui.available_width(), HEIGHT);
            let (rect, response) = ui.allocate_exact_size(size, Sense::hover());
            let name = format!("Curve of the year. {said}");
            response.widget_info(|| WidgetInfo::labeled(Role::Image, true, &name));
            if ui.is_rect_visible(rect) {
                curve_ui(ui, rect, design, &year);
            }
            ui.label(RichText::new(said).small());
        });
}

fn curve_ui(ui: &Ui, rect: Rect, design: &Design, year: &Year) {
    let field = Rect::from_min_max(
        pos2(rect.left() + NAMES, rect.top() + ROW),
        pos2(rect.right() - FIGURES, rect.bottom() - ROW),
    );
    times_ui(ui, field, year);
    let (upper, lower) = field.split_top_bottom_at_y(field.center().y);
    let moisture = Curve::of(year, |point| point.moisture);
    let lane = Lane {
        rect: upper.shrink2(vec2(0.0, APART)),
        name: "moisture",
        least: moisture.least,
        most: moisture.most,
        ink: Ink::Label,
    };
    lane.paint(ui, &moisture);
    let figure = |value: f64| format!("{value:.1} %");
    lane.figure(ui, moisture.most, &figure(moisture.most));
    if lane.apart(moisture.least, moisture.most) {
        lane.figure(ui, moisture.least, &figure(moisture.least));
    }
    let play = Curve::of(year, |point| point.guide_play);
    let lane = Lane {
        rect: lower.shrink2(vec2(0.0, APART)),
        name: "guide play",
        least: play.least.min(0.0),
        most: play.most.max(0.0),
        ink: if play.least < 0.0 {
            Ink::Blocks
        } else {
            Ink::Label
        },
    };
    let faint = Stroke::new(1.0, theme::ink(ui.ctx(), Ink::Faint));
    let closed = lane.y(0.0);
    ui.painter().hline(lane.rect.x_range(), closed, faint);
    lane.paint(ui, &play);
    lane.figure(ui, 0.0, "closed");
    if lane.apart(0.0, play.most) {
        lane.figure(ui, play.most, &length(play.most, design.units));
    }
}

/// When it is driest and dampest, and when wood is as moist as on the day the latch was built.
fn times_ui(ui: &Ui, field: Rect, year: &Year) {
    let at = |role| theme::ink(ui.ctx(), role);
    let font = || FontId::proportional(WORDS);
    let painter = ui.painter();
    let below = field.bottom() + 2.0;
    for (x, anchor, word) in [
        (field.left(), Align2::LEFT_TOP, "driest"),
        (field.center().x, Align2::CENTER_TOP, "dampest"),
        (field.right(), Align2::RIGHT_TOP, "driest"),
    ] {
        painter.text(pos2(x, below), anchor, word, font(), at(Ink::Note));
    }
    let Some(built) = year.built_at else {
        return;
    };
    let mut written_to = f32::NEG_INFINITY;
    for share in [built, 1.0 - built] {
        let x = across(field, share);
        let line = [pos2(x, field.top()), pos2(x, field.bottom())];
        let stroke = Stroke::new(1.0, at(Ink::Faint));
        painter.extend(Shape::dashed_line(&line, stroke, 3.0, 3.0));
        // twice the same word, unless the two would touch
        if x - written_to > 20.0 {
            let place = pos2(x, field.top() - 2.0);
            let word = painter.text(place, Align2::CENTER_BOTTOM, "built", font(), at(Ink::Note));
            written_to = word.right();
        }
    }
}

/// One figure through the year.
struct Curve {
    /// Share of the year and figure.
    points: Vec<(f64, f64)>,
    least: f64,
    most: f64,
}

impl Curve {
    fn of(year: &Year, figure: fn(&YearPoint) -> f64) -> Self {
        let points: Vec<(f64, f64)> = year
            .points
            .iter()
            .map(|point| (point.at, figure(point)))
            .collect();
        let figures = points.iter().map(|(_, figure)| *figure);
        Self {
            least: figures.clone().fold(f64::INFINITY, f64::min),
            most: figures.fold(f64::NEG_INFINITY, f64::max),
            points,
        }
    }
}

/// The strip in which one curve runs, from its least figure at the bottom to its most at the top.
struct Lane {
    rect: Rect,
    name: &'static str,
    least: f64,
    most: f64,
    ink: Ink,
}

impl Lane {
    /// How high a figure stands; one that never changes stands in the middle.
    fn y(&self, figure: f64) -> f32 {
        let range = self.most - self.least;
        let share = if range > 1e-9 {
            (figure - self.least) / range
        } else {
            0.5
        };
        self.rect.bottom() - self.rect.height() * narrow(share)
    }

    /// Whether two figures can both be written without touching.
    fn apart(&self, one: f64, other: f64) -> bool {
        (self.y(one) - self.y(other)).abs() > WORDS
    }

    fn paint(&self, ui: &Ui, curve: &Curve) {
        let painter = ui.painter();
        let place = |(at, figure): &(f64, f64)| pos2(across(self.rect, *at), self.y(*figure));
        let points = curve.points.iter().map(place).collect();
        let stroke = Stroke::new(1.8, theme::ink(ui.ctx(), self.ink));
        painter.add(Shape::line(points, stroke));
        let left = pos2(self.rect.left() - NAMES, self.rect.center().y);
        let note = theme::ink(ui.ctx(), Ink::Note);
        let font = FontId::proportional(WORDS);
        painter.text(left, Align2::LEFT_CENTER, self.name, font, note);
    }

    /// Writes a figure beside its height.
    fn figure(&self, ui: &Ui, figure: f64, text: &str) {
        let place = pos2(self.rect.right() + 6.0, self.y(figure));
        let note = theme::ink(ui.ctx(), Ink::Note);
        let font = FontId::proportional(WORDS);
        ui.painter()
            .text(place, Align2::LEFT_CENTER, text, font, note);
    }
}

/// Where a share of the year lies.
fn across(field: Rect, share: f64) -> f32 {
    field.left() + field.width() * narrow(share)
}

#[expect(clippy::cast_possible_truncation, reason = "a share of a few points")]
fn narrow(share: f64) -> f32 {
    share as f32
}

fn length(mm: f64, units: Units) -> String {
    match units {
        Units::Millimetre => format!("{mm:.2} mm"),
        Units::Inch => format!("{:.3} in", mm / MM_PER_INCH),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_lane_stands_on_its_least_figure_and_one_that_never_changes_in_its_middle() {
        let rect = Rect::from_min_max(pos2(0.0, 10.0), pos2(100.0, 50.0));
        let lane = |least, most| Lane {
            rect,
            name: "",
            least,
            most,
            ink: Ink::Label,
        };
        let moving = lane(4.0, 8.0);
        assert!((moving.y(4.0) - 50.0).abs() < 1e-4);
        assert!((moving.y(8.0) - 10.0).abs() < 1e-4);
        assert!(moving.apart(4.0, 8.0) && !moving.apart(4.0, 4.5));
        assert!((lane(4.0, 4.0).y(4.0) - 30.0).abs() < 1e-4);
        assert!((across(rect, 0.25) - 25.0).abs() < 1e-4);
    }
}
