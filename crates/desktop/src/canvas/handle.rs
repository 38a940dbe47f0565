//! Handles on the plan: the dials' centres and the tab, moved by drag or by arrow keys. The knob round
//! a dial's handle still turns it.

use egui::accesskit::Role;
use egui::{CursorIcon, Event, EventFilter, Id, Key, Painter, Pos2, Rect, Response, Sense, Ui};
use egui::{Stroke, Vec2, WidgetInfo, vec2};
use latchwright_drawing::Ink;
use latchwright_geometry::Point;
use latchwright_model::Design;
use latchwright_model::validate::MAX_DIALS;
use latchwright_workshop::set_out::{Look, Marks, TabPlace, dial_at, tab_at};

use super::paint::Frame;
use super::{dial, struck};
use crate::action::Action;
use crate::edit::{Edit, Handle};
use crate::theme;
use crate::view_state::{PoseChange, ViewState};
use crate::words::length;

/// Side of what a hand can take, points: at least 24 by WCAG 2.2, 2.5.8.
const TARGET: f32 = 28.0;
/// Radius of the sign, points.
const SIGN: f32 = 10.0;
/// Over how many points a line draws.
const PULL: f64 = 6.0;

/// A handle on its way, by keys or held by a hand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Moving {
    /// Which.
    pub handle: Handle,
    held: Option<Held>,
}

/// A handle in the hand.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Held {
    frame: Frame,
    /// Where it was taken, on the plan.
    taken: Point,
    /// The two numbers that it moves, as they were.
    before: (f64, f64),
}

impl Moving {
    /// How the lid lies while a hand holds something on it.
    pub fn frame(&self) -> Option<Frame> {
        self.held.map(|held| held.frame)
    }
}

impl Handle {
    fn all(design: &Design) -> impl Iterator<Item = Self> + use<> {
        let dials = design.dials.len().min(MAX_DIALS);
        (0..dials).map(Self::Dial).chain([Self::Tab])
    }

    fn id(self) -> Id {
        match self {
            Self::Dial(index) => Id::unique(("centre on the lid", index)),
            Self::Tab => Id::unique("tab on the lid"),
        }
    }

    fn numbers(self, design: &Design) -> Option<(f64, f64)> {
        let [one, other] = self.sizes();
        let (one, other) = (one.get(design)?, other.get(design)?);
        (one.is_finite() && other.is_finite()).then_some((one, other))
    }

    /// Where it stands on the plan.
    pub(super) fn place(self, design: &Design, view: &ViewState) -> Option<Point> {
        let (x, y) = self.numbers(design)?;
        let y = match self {
            Self::Dial(_) => y,
            // in the middle of what reaches under the keeper
            Self::Tab => design.keeper.edge - y / 2.0 + view.pose.travel,
        };
        y.is_finite().then(|| Point::new(x, y))
    }

    /// What it is and where, for those who do not see it; while it moves also what it is in line with.
    fn name(self, design: &Design, view: &ViewState) -> String {
        let moves = view.moving.is_some_and(|moving| moving.handle == self);
        let reasons = if moves {
            struck::reasons(design, self)
        } else {
            Vec::new()
        };
        std::iter::once(self.where_it_is(design))
            .chain(reasons)
            .collect::<Vec<_>>()
            .join(", ")
    }

    fn where_it_is(self, design: &Design) -> String {
        let (x, y) = self.numbers(design).unwrap_or_default();
        let (x, y) = (length(x, design.units), length(y, design.units));
        match self {
            Self::Dial(index) => format!("Dial {} centre at {x}, {y}", index + 1),
            Self::Tab => format!("Tab at {x}, {y} under the keeper"),
        }
    }

    fn about(self) -> &'static str {
        match self {
            Self::Dial(_) => {
                "Drag, or arrow keys: moves the dial. Right of the middle, behind the front edge. Shift with \
                 the keys: finely. Alt with the drag: freely. Round it the knob still turns."
            }
            Self::Tab => {
                "Drag, or arrow keys: moves the tab and its keeper sideways, and the tab in or out under it. \
                 Shift with the keys: finely. Alt with the drag: freely."
            }
        }
    }

    /// The wish that gives it these two numbers while it is still moving.
    fn drag(self, to: (f64, f64)) -> Action {
        Action::Drag(Edit::Move { handle: self, to })
    }
}

/// Takes what the hand does to every handle.
pub fn handles_ui(
    ui: &mut Ui,
    frame: Frame,
    design: &Design,
    view: &mut ViewState,
    wishes: &mut Vec<Action>,
) {
    for handle in Handle::all(design) {
        let Some(at) = handle.place(design, view) else {
            continue;
        };
        let target = Rect::from_center_size(frame.screen(at), Vec2::splat(TARGET));
        let response = ui.interact(target, handle.id(), Sense::click_and_drag());
        response
            .widget_info(|| WidgetInfo::labeled(Role::SpinButton, true, handle.name(design, view)));
        if response.clicked() {
            response.request_focus();
        }
        // its sizes are shown beside the lid, and its section below
        let taken = response.gained_focus() || response.clicked() || response.drag_started();
        if taken && let Handle::Dial(index) = handle {
            view.dial = index;
        }
        drag(&response, handle, frame, design, view, wishes);
        keys(&response, handle, frame, design, view, wishes);
        if response.hovered() || response.dragged() {
            ui.ctx().set_cursor_icon(CursorIcon::Move);
        }
        if response.hovered()
            && let Handle::Dial(index) = handle
        {
            wishes.extend(dial::wheel(ui, index).map(Action::Pose));
        }
        if view.moving.is_none() {
            response.on_hover_text(handle.about());
        }
    }
}

/// The handle follows the hand; lines and marks draw it unless Alt is held, Escape puts it back.
fn drag(
    response: &Response,
    handle: Handle,
    frame: Frame,
    design: &Design,
    view: &mut ViewState,
    wishes: &mut Vec<Action>,
) {
    let ctx = &response.ctx;
    if response.drag_started()
        && let Some(from) = ctx.input(|input| input.pointer.press_origin())
        && let Some(before) = handle.numbers(design)
    {
        response.request_focus();
        // what the keys did before is a step of its own
        wishes.push(Action::LetGo);
        view.moving = Some(Moving {
            handle,
            held: Some(Held {
                frame,
                taken: frame.drawing(from),
                before,
            }),
        });
    }
    let Some(held) = view.moving.filter(|moving| moving.handle == handle) else {
        return;
    };
    let Some(held) = held.held else {
        return;
    };
    if response.drag_stopped() || !response.dragged() {
        let given_up = ctx.input(|input| input.key_pressed(Key::Escape));
        wishes.push(if given_up {
            Action::PutBack
        } else {
            Action::LetGo
        });
        view.moving = None;
    } else if let Some(to) = response.interact_pointer_pos() {
        let free = ctx.input(|input| input.modifiers.alt);
        let look = Look {
            free,
            ..Look::at_scale(design, f64::from(frame.scale), PULL)
        };
        let moved = frame.drawing(to) - held.taken;
        if let Some(numbers) = wanted(design, handle, held.before, moved, &look) {
            wishes.push(handle.drag(numbers));
        }
    }
}

/// The two numbers of a handle that was taken at `before` and `moved` so far.
fn wanted(
    design: &Design,
    handle: Handle,
    before: (f64, f64),
    moved: Point,
    look: &Look,
) -> Option<(f64, f64)> {
    match handle {
        Handle::Dial(index) => {
            let to = Point::new(before.0 + moved.x, before.1 + moved.y);
            let placed = dial_at(design, index, to, look)?;
            Some((placed.at.x, placed.at.y))
        }
        Handle::Tab => {
            // towards the hinge it comes out from under the keeper
            let (at, engagement) = before;
            let before = TabPlace { at, engagement };
            let to = TabPlace {
                at: at + moved.x,
                engagement: engagement - moved.y,
            };
            let placed = tab_at(design, before, to, look)?;
            Some((placed.at, placed.engagement))
        }
    }
}

/// Arrow keys move it to the next mark of the ruler, with Shift finely; a run of them is one step.
fn keys(
    response: &Response,
    handle: Handle,
    frame: Frame,
    design: &Design,
    view: &mut ViewState,
    wishes: &mut Vec<Action>,
) {
    let ctx = &response.ctx;
    let runs = view
        .moving
        .is_some_and(|moving| moving.handle == handle && moving.held.is_none());
    if response.lost_focus() && runs {
        wishes.push(Action::LetGo);
        view.moving = None;
    }
    if !response.has_focus() {
        return;
    }
    let filter = EventFilter {
        horizontal_arrows: true,
        vertical_arrows: true,
        ..EventFilter::default()
    };
    ctx.memory_mut(|memory| memory.set_focus_lock_filter(handle.id(), filter));
    let (right, up, fine, slide) = ctx.input(|input| {
        let pressed = |key| i32::try_from(input.num_presses(key)).unwrap_or(0);
        (
            pressed(Key::ArrowRight) - pressed(Key::ArrowLeft),
            pressed(Key::ArrowUp) - pressed(Key::ArrowDown),
            input.events.iter().any(with_shift),
            input.key_pressed(Key::Space),
        )
    });
    if slide {
        wishes.push(Action::Pose(PoseChange::SlideOver));
    }
    let held = view.moving.is_some_and(|moving| moving.held.is_some());
    if (right, up) == (0, 0) || held {
        return;
    }
    let marks = if fine {
        Marks::fine(design.units)
    } else {
        Look::at_scale(design, f64::from(frame.scale), PULL).marks
    };
    if let Some(numbers) = stepped(design, handle, right, up, marks) {
        view.moving = Some(Moving { handle, held: None });
        wishes.push(handle.drag(numbers));
    }
}

/// A key pressed together with Shift, whatever became of Shift since.
fn with_shift(event: &Event) -> bool {
    matches!(event, Event::Key { pressed: true, modifiers, .. } if modifiers.shift)
}

/// The two numbers of a handle after so many steps to the right and up, kept on the plate.
fn stepped(
    design: &Design,
    handle: Handle,
    right: i32,
    up: i32,
    marks: Marks,
) -> Option<(f64, f64)> {
    let (x, y) = handle.numbers(design)?;
    let step = |mut at: f64, steps: i32| {
        for _ in 0..steps.unsigned_abs().min(100) {
            at = marks.next(at, steps > 0);
        }
        at
    };
    // the marks are right already: nothing else is to draw
    let still = Look {
        marks,
        reach: 0.0,
        free: false,
    };
    let within = |(x, y): (f64, f64)| match handle {
        Handle::Dial(index) => {
            let placed = dial_at(design, index, Point::new(x, y), &still)?;
            Some((placed.at.x, placed.at.y))
        }
        Handle::Tab => {
            let tab = TabPlace {
                at: x,
                engagement: y,
            };
            let placed = tab_at(design, tab, tab, &still)?;
            Some((placed.at, placed.engagement))
        }
    };
    let to = match handle {
        Handle::Dial(_) => (step(x, right), step(y, up)),
        Handle::Tab => (step(x, right), step(y, -up)),
    };
    let (x_at, y_at) = within(to)?;
    // what no key moved stays, on a mark or not
    Some((
        if right == 0 { x } else { x_at },
        if up == 0 { y } else { y_at },
    ))
}

/// The signs: a ring with four arrows, and a ring round the one that has the focus.
pub fn paint_ui(ui: &Ui, painter: &Painter, frame: Frame, design: &Design, view: &ViewState) {
    let focused = ui.memory(egui::Memory::focused);
    for handle in Handle::all(design) {
        let Some(at) = handle.place(design, view) else {
            continue;
        };
        let at = frame.screen(at);
        let lively = ui
            .ctx()
            .read_response(handle.id())
            .is_some_and(|response| response.hovered() || response.dragged());
        sign(ui, painter, at, lively);
        if focused == Some(handle.id()) {
            let stroke = Stroke::new(2.0, theme::ink(ui.ctx(), Ink::Focus));
            painter.circle_stroke(at, TARGET / 2.0 + 2.0, stroke);
        }
    }
}

fn sign(ui: &Ui, painter: &Painter, at: Pos2, lively: bool) {
    let (part, movable) = (
        theme::ink(ui.ctx(), Ink::Part),
        theme::ink(ui.ctx(), Ink::Movable),
    );
    let line = Stroke::new(if lively { 1.6 } else { 1.2 }, movable);
    painter.circle(at, SIGN, part, line);
    let reach = SIGN - 3.0;
    for way in [
        vec2(1.0, 0.0),
        vec2(-1.0, 0.0),
        vec2(0.0, 1.0),
        vec2(0.0, -1.0),
    ] {
        let (tip, aside) = (at + way * reach, way.rot90() * 2.5);
        painter.line_segment([at, tip], line);
        painter.line_segment([tip, tip - way * 2.5 + aside], line);
        painter.line_segment([tip, tip - way * 2.5 - aside], line);
    }
}
