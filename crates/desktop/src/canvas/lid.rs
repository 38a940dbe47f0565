//! Plan and section, live: everything the hand can reach, and the sentence that says what stops it.

use egui::accesskit::{Live, Role};
use egui::{Id, Rect, RichText, Sense, Ui, WidgetInfo, vec2};
use latchwright_drawing::{ContactMark, Drawing, PlanOptions, plan, plan_sheet, section};
use latchwright_geometry::Point;
use latchwright_solver::model::Design;
use latchwright_solver::{Pose, Stop, StopsAt};

use super::paint::{Frame, paint, picture_ui};
use super::{dial, handle, slider, struck};
use crate::action::Action;
use crate::theme;
use crate::view_state::ViewState;
use crate::words;

/// How long the slider takes to its stop, seconds.
const SETTLE: f32 = 0.12;

/// The plan in words, before all else that a screen reader comes to; it says what changes as it does.
pub fn twin_ui(ui: &Ui, design: &Design, view: &ViewState) {
    let id = Id::unique("the plan in words");
    let response = ui.interact(ui.max_rect(), id, Sense::hover());
    let said = words::plan(design, view);
    response.widget_info(|| WidgetInfo::labeled(Role::Status, true, &said));
    ui.ctx()
        .accesskit_node_builder(id, |node| node.set_live(Live::Polite));
}

/// The lid: plan, sentence, section; with `handles`, what can be moved on it is.
pub fn lid_ui(
    ui: &mut Ui,
    design: &Design,
    view: &mut ViewState,
    handles: bool,
    wishes: &mut Vec<Action>,
) {
    if !handles {
        view.moving = None;
    }
    head_ui(ui, view);
    let below = section_height(ui.available_height());
    let room = ui.available_rect_before_wrap();
    let plan_room = Rect::from_min_max(room.min, room.max - vec2(0.0, below + 48.0));
    plan_ui(ui, plan_room, design, view, handles.then_some(wishes));
    ui.advance_cursor_after_rect(plan_room);
    sentence_ui(ui, design, view);
    section_ui(ui, design, view);
}

fn section_height(available: f32) -> f32 {
    (available * 0.25).clamp(120.0, 240.0)
}

fn head_ui(ui: &mut Ui, view: &mut ViewState) {
    ui.horizontal(|ui| {
        let room = ui.available_width();
        let wide = room > 600.0;
        // what is not said where there is no room is said on hover
        let title = if wide {
            "Plan, seen from outside"
        } else if room > 430.0 {
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

fn plan_ui(
    ui: &mut Ui,
    room: Rect,
    design: &Design,
    view: &mut ViewState,
    wishes: Option<&mut Vec<Action>>,
) {
    let shown = PlanOptions {
        show_dimensions: view.dimensions,
        ..PlanOptions::default()
    };
    // the lid keeps still under a hand that moves something on it
    let held = view.moving.and_then(|moving| moving.frame());
    let fit = || Frame::fit(plan_sheet(design, &shown), room.shrink(8.0));
    let frame = held.unwrap_or_else(fit);
    for index in 0..design
        .dials
        .len()
        .min(latchwright_solver::validate::MAX_DIALS)
    {
        dial::dial_ui(ui, frame, design, view, index);
    }
    slider::slider_ui(ui, frame, design, view);
    let handles = wishes.is_some();
    if let Some(wishes) = wishes {
        handle::handles_ui(ui, frame, design, view, wishes);
    }
    let drawing = plan_drawing(ui, design, view);
    let painter = ui.painter_at(room);
    paint(&painter, &drawing, theme::palette(ui.ctx()), frame);
    dial::focus_ui(ui, &painter, frame, design);
    slider::focus_ui(ui, &painter, frame, design, view);
    if handles {
        handle::paint_ui(ui, &painter, frame, design, view);
        struck::struck_ui(ui, &painter, frame, design, view);
    }
}

fn plan_drawing(ui: &Ui, design: &Design, view: &ViewState) -> Drawing {
    let stop = view.stop(design);
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
    let reaches = latchwright_solver::motion::reaches(design, &view.pose.turns_deg);
    let options = PlanOptions {
        veil: view.veil,
        contact,
        focus: None,
        passing: reaches
            .iter()
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

fn sentence_ui(ui: &mut Ui, design: &Design, view: &ViewState) {
    let stop: Stop = view.stop(design);
    ui.horizontal_wrapped(|ui| {
        ui.set_min_height(40.0);
        let setting = format!("{}.", words::setting(design, view));
        ui.label(RichText::new(setting).family(theme::bold()).size(17.0));
        ui.label(RichText::new(words::stop_sentence(design, &stop)).size(17.0));
    });
}

fn section_ui(ui: &mut Ui, design: &Design, view: &ViewState) {
    ui.separator();
    let title = if design.dials.is_empty() {
        "Section".to_owned()
    } else {
        format!("Section through dial {} and the keeper", view.dial + 1)
    };
    ui.label(RichText::new(title).weak());
    let room = ui.available_rect_before_wrap();
    let said = format!(
        "Section through dial {}: slider {} back",
        view.dial + 1,
        words::short_length(view.pose.travel, design.units)
    );
    let drawing = section(design, &settled(ui, view), view.dial);
    picture_ui(ui, room.size(), &drawing, &said);
}
