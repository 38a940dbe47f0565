//! Plan and section, live: everything the hand can reach, and the sentence that says what stops it.

use std::sync::Arc;

use egui::accesskit::{Live, Role};
use egui::text::{LayoutJob, TextFormat};
use egui::{FontFamily, FontId, Galley, Id, Label, Pos2, Rect, RichText, Sense, Ui};
use egui::{Vec2, WidgetInfo, vec2};
use latchwright_drawing::{ContactMark, Drawing, PlanOptions, Rect as Rectangle, plan};
use latchwright_geometry::Point;
use latchwright_model::Design;
use latchwright_model::Pose;
use latchwright_model::validate::MAX_DIALS;
use latchwright_proof::StopsAt;

use super::paint::{Frame, paint, picture_ui};
use super::{dial, handle, slider, struck};
use crate::action::Action;
use crate::scene::Scene;
use crate::theme;
use crate::view_state::ViewState;
use crate::words;

/// Room above and below the sentence under the plan, points.
const AROUND: f32 = 20.0;
/// Height of the section's title, points.
const TITLE: f32 = 36.0;
/// Height of letters that can be read, points.
const READABLE: f32 = 12.0;
/// How long the slider takes to its stop, seconds.
const SETTLE: f32 = 0.12;

/// The plan in words, before all else that a screen reader comes to; it says what changes as it does.
pub fn twin_ui(ui: &Ui, design: &Design, view: &ViewState, scene: &Scene) {
    let id = Id::unique("the plan in words");
    let response = ui.interact(ui.max_rect(), id, Sense::hover());
    let said = words::plan(design, view, &scene.stop);
    response.widget_info(|| WidgetInfo::labeled(Role::Status, true, &said));
    ui.ctx()
        .accesskit_node_builder(id, |node| node.set_live(Live::Polite));
}

/// Where plan and sentence stand.
pub struct Placed {
    /// Room of the plan.
    plan: Rect,
    /// Where the plan lies in it.
    frame: Frame,
    /// The sentence below it.
    sentence: Arc<Galley>,
    /// Whether what can be moved on the plan is shown.
    handles: bool,
}

/// Takes what the hand does on the plan, before it is drawn; with `handles`, what can be moved on it is.
pub fn lid_hand_ui(
    ui: &mut Ui,
    design: &Design,
    view: &mut ViewState,
    scene: &Scene,
    handles: bool,
    wishes: &mut Vec<Action>,
) -> Placed {
    if !handles {
        view.moving = None;
    }
    let space = ui.available_rect_before_wrap();
    let sentence = sentence(ui, design, view, scene, space.width());
    let lines = sentence.size().y + AROUND;
    let size = space.size() - vec2(0.0, lines);
    let below = section_height(size, scene.sheet, scene.section_sheet);
    let plan = Rect::from_min_max(space.min, space.max - vec2(0.0, below + lines));
    // the lid keeps still under a hand that moves something on it
    let held = view.moving.and_then(|moving| moving.frame());
    let frame = held.unwrap_or_else(|| Frame::fit(scene.shown_sheet, plan.shrink(8.0)));
    for index in 0..design.dials.len().min(MAX_DIALS) {
        dial::dial_ui(ui, frame, design, view, index, wishes);
    }
    slider::slider_ui(ui, frame, design, view, wishes);
    if handles {
        handle::handles_ui(ui, frame, design, view, wishes);
    }
    Placed {
        plan,
        frame,
        sentence,
        handles,
    }
}

/// The lid: plan, sentence, section.
pub fn lid_ui(ui: &mut Ui, placed: Placed, design: &Design, view: &ViewState, scene: &mut Scene) {
    plan_ui(ui, &placed, design, view, scene);
    ui.advance_cursor_after_rect(placed.plan);
    ui.add_space(AROUND / 2.0);
    ui.add(Label::new(placed.sentence));
    section_ui(ui, design, view, scene);
}

/// How much of this room is the section's: plan and section are shown at one scale where both fit.
fn section_height(space: Vec2, plan: Rectangle, section: Rectangle) -> f32 {
    #[expect(
        clippy::cast_possible_truncation,
        reason = "two ratios of sizes on paper"
    )]
    let high = |sheet: Rectangle| (sheet.height() / sheet.width().max(1.0)) as f32;
    let (plan, section) = (high(plan), high(section));
    let share = (section / (plan + section)).clamp(0.2, 0.5);
    let left = space.y - TITLE - space.x * plan;
    (space.y * share).max(left).min(space.x * section) + TITLE
}

/// How high names are on a sheet in room of this size so that they can be read on the screen, mm.
fn letters(space: Vec2, sheet: Rectangle) -> Option<f64> {
    let scale = Frame::fit(sheet, Rect::from_min_size(Pos2::ZERO, space)).length(1.0);
    (scale > 0.0).then(|| f64::from(READABLE / scale))
}

/// What is shown of the lid, and how clearly.
pub fn lid_head_ui(ui: &mut Ui, view: &mut ViewState) {
    ui.horizontal(|ui| {
        let space = ui.available_width();
        let wide = space > 600.0;
        // what is not said where there is no room is said on hover
        let title = if wide {
            "Plan, seen from outside"
        } else if space > 430.0 {
            "From outside"
        } else {
            ""
        };
        ui.label(RichText::new(title).weak());
        ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
            ui.checkbox(&mut view.dimensions, "Dimensions");
            let narrow = title.is_empty();
            if !narrow {
                ui.add_space(16.0);
                ui.label(RichText::new("clear").weak());
            }
            ui.spacing_mut().slider_width = if wide { 140.0 } else { 80.0 };
            let mut clear = 1.0 - view.veil;
            let response = ui.add(egui::Slider::new(&mut clear, 0.0..=1.0).show_value(false));
            response.widget_info(|| egui::WidgetInfo::slider(true, clear, "Veil"));
            response.on_hover_text("From solid wood to clear, with all that moves beneath");
            view.veil = 1.0 - clear;
            let word = if narrow { "Veil" } else { "Veil: wood" };
            ui.label(RichText::new(word).weak());
        });
    });
}

fn plan_ui(ui: &Ui, placed: &Placed, design: &Design, view: &ViewState, scene: &Scene) {
    let frame = placed.frame;
    let drawing = plan_drawing(ui, design, view, scene);
    let painter = ui.painter_at(placed.plan);
    paint(&painter, &drawing, theme::palette(ui.ctx()), frame);
    dial::focus_ui(ui, &painter, frame, design);
    slider::focus_ui(ui, &painter, frame, design, view);
    if placed.handles {
        handle::paint_ui(ui, &painter, frame, design, view);
        struck::struck_ui(ui, &painter, frame, design, view);
    }
}

fn plan_drawing(ui: &Ui, design: &Design, view: &ViewState, scene: &Scene) -> Drawing {
    let stop = &scene.stop;
    let shown = settled(ui, view);
    let at_stop = view.pose.travel >= stop.travel - 1e-6;
    let contact = stop
        .by
        .as_ref()
        .filter(|_| at_stop)
        .and_then(|(dial, reach)| {
            let (x, y) = reach.contact?;
            Some(ContactMark {
                dial: *dial,
                at: Point::new(x, y),
                stops_at: reach.stops_at,
                label: format!(
                    "{}, then no further",
                    words::short_length(reach.travel, design.units)
                ),
            })
        });
    let reaches = scene.reaches.iter();
    let options = PlanOptions {
        veil: view.veil,
        contact,
        focus: None,
        passing: reaches
            .map(|reach| reach.stops_at == StopsAt::Free)
            .collect(),
        show_dimensions: view.dimensions,
        ..PlanOptions::default()
    };
    plan(design, &shown, &options)
}

/// The pose with the slider on its way to where it is.
fn settled(ui: &Ui, view: &ViewState) -> Pose {
    #[expect(
        clippy::cast_possible_truncation,
        reason = "a screen needs no more than f32 shows"
    )]
    let target = view.pose.travel as f32;
    let id = ui.scope_id().with("slider on its way");
    let travel = ui.ctx().animate_value_with_time(id, target, SETTLE);
    Pose {
        travel: f64::from(travel),
        turns_deg: view.pose.turns_deg.clone(),
    }
}

/// What is set, and what stops the slider, laid out at this width.
fn sentence(ui: &Ui, design: &Design, view: &ViewState, scene: &Scene, width: f32) -> Arc<Galley> {
    let format = |family| TextFormat::simple(FontId::new(17.0, family), ui.visuals().text_color());
    let mut line = LayoutJob::default();
    let setting = format!("{}. ", words::setting(design, view));
    line.append(&setting, 0.0, format(theme::bold()));
    let sentence = words::stop_sentence(design, &scene.stop);
    line.append(&sentence, 4.0, format(FontFamily::Proportional));
    line.wrap.max_width = width;
    ui.painter().layout_job(line)
}

fn section_ui(ui: &mut Ui, design: &Design, view: &ViewState, scene: &mut Scene) {
    ui.separator();
    let title = if design.dials.is_empty() {
        "Section".to_owned()
    } else {
        format!("Section through dial {} and the keeper", view.dial + 1)
    };
    ui.label(RichText::new(title).weak());
    let space = ui.available_rect_before_wrap();
    let said = format!(
        "Section through dial {}: slider {} back",
        view.dial + 1,
        words::short_length(view.pose.travel, design.units)
    );
    let pose = settled(ui, view);
    let letters = letters(space.size(), scene.section_sheet);
    let drawing = scene.section(design, &pose, letters);
    picture_ui(ui, space.size(), drawing, &said);
}
