//! The window, driven through the names of its controls; no display and no driver needed.

#![expect(
    clippy::missing_panics_doc,
    reason = "a helper of tests fails them by panicking"
)]
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex};
use std::time::{Duration, Instant};

use egui::accesskit::Role;
use egui::{Event, Key, Modifiers, Vec2, ViewportCommand, ViewportEvent, ViewportId, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT, Queryable};
use image::RgbaImage;
use latchwright_desktop::LatchwrightApp;
use latchwright_desktop::stage::Stage;
use latchwright_desktop::tasks::{TaskKind, Tasks};
use latchwright_model::Design;
use latchwright_session::Session;

use crate::rendered::Rendered;

/// The window under test; its state is made in the first frame.
pub type Window = Harness<'static, Option<LatchwrightApp>>;

/// The window's size where a test does not say, points.
const SIZE: Vec2 = vec2(1440.0, 900.0);
/// How long after a change a window under test copies it.
const COPIED: Duration = Duration::from_millis(20);
/// How often the window draws what work beside it has come to.
const LOOK: Duration = Duration::from_millis(100);
/// How long work beside the window may take before a test gives up waiting for its end.
const LONG: Duration = Duration::from_mins(1);
/// The smallest useful window, points.
const SMALLEST: Vec2 = vec2(1024.0, 700.0);

/// The panel's left edge, points.
pub const PANEL: f32 = 1440.0 - 340.0;

/// A window on `session`, as it opens.
pub fn open(session: Session) -> Window {
    open_with(session, None, SIZE)
}

/// The window of somebody who has never been here.
pub fn first_window() -> Window {
    let mut window = demo("tea-box");
    let app = window.state_mut().take().expect("made in the first frame");
    *window.state_mut() = Some(app.welcoming());
    window.run();
    window
}

/// A window on `session` that keeps what it remembers in `folder`, copies a short while after a change.
pub fn remembering(session: Session, folder: &Path) -> Window {
    open_with(session, Some(folder.to_owned()), SIZE)
}

/// A window on `session` at the smallest useful size, to be looked at: see [`picture`].
pub fn smallest(session: Session) -> Window {
    open_with(session, None, SMALLEST)
}

/// What the window shows once it has come to rest.
pub fn picture(window: &mut Window) -> RgbaImage {
    until(window, |window| window.try_run().is_ok());
    window.render().expect("it can be drawn")
}

fn open_with(session: Session, folder: Option<PathBuf>, size: Vec2) -> Window {
    let mut session = Some(session);
    let mut harness = Harness::builder()
        .with_size(size)
        .renderer(Rendered::default())
        .with_render_cursor(false)
        .with_max_steps(60)
        .build_ui_state(
            move |ui, app: &mut Option<LatchwrightApp>| {
                let ctx = ui.ctx().clone();
                let app = app.get_or_insert_with(|| {
                    let app = LatchwrightApp::new(&ctx, session.take().unwrap_or_default(), None);
                    match &folder {
                        Some(folder) => app.remembering_after(&ctx, folder, COPIED),
                        None => app,
                    }
                });
                app.logic(&ctx);
                app.draw(ui);
            },
            None,
        );
    harness.run();
    harness
}

/// A window on a demo.
pub fn demo(name: &str) -> Window {
    open(Session::demo(name).expect("a demo of that name"))
}

/// A window on `design`, its sizes beside the lid.
pub fn window(design: Design) -> Window {
    let mut window = open(Session::of(design));
    go(&mut window, Stage::LayOut);
    window
}

/// Lets the window come to rest, or go on for as many frames as it would get until then: while work
/// goes on beside it a spinner turns.
pub fn settle(window: &mut Window) {
    // that it does come to rest has a test of its own
    let _ = window.run_ok();
}

/// Goes to a stage of the work by the rail.
pub fn go(window: &mut Window, stage: Stage) {
    window.get_by_label(stage.name()).click();
    // pages are still being set, so that the window does not come to rest
    window.run_steps(4);
    assert_eq!(app(window).stage(), stage);
}

/// Steps the window until this is so, and waits meanwhile for work beside it to come to something; whether it
/// came to be so.
pub fn until(window: &mut Window, mut so: impl FnMut(&mut Window) -> bool) -> bool {
    let begun = Instant::now();
    while !so(window) {
        if begun.elapsed() > LONG {
            return false;
        }
        if let Some(app) = window.state_mut() {
            app.tasks().wait_for_news(LOOK);
        }
        window.step();
    }
    true
}

/// Waits for work beside the window until its result is shown.
pub fn wait_for(window: &mut Window, result: &str) {
    window.step();
    let shown = |window: &mut Window| window.query_all_by_label_contains(result).next().is_some();
    assert!(until(window, shown), "{result} never came");
}

/// Waits until nothing of this label is there any more.
pub fn wait_until_gone(window: &mut Window, label: &str) {
    window.step();
    let gone = |window: &mut Window| window.query_by_label(label).is_none();
    assert!(until(window, gone), "{label} never went");
}

/// Waits until the design of this title is open.
pub fn wait_for_design(window: &mut Window, title: &str) {
    let open = until(window, |window| design(window).title == title);
    assert!(open, "“{title}” was never opened");
}

/// Waits until the design is in its file as it stands.
pub fn wait_for_save(window: &mut Window) {
    let saved = until(window, |window| !app(window).session().unsaved());
    assert!(saved, "it was never saved");
}

/// While this is locked, all work beside the window that was not begun before takes long.
pub fn gate(window: &mut Window) -> Arc<Mutex<()>> {
    tasks(window).gate()
}

/// Whether work of this kind goes on beside the window.
pub fn goes_on(window: &mut Window, kind: TaskKind) -> bool {
    tasks(window).goes_on(kind)
}

fn tasks(window: &mut Window) -> &mut Tasks {
    let app = window.state_mut().as_mut();
    app.expect("made in the first frame").tasks()
}

/// Clicks what begins a job, even far down a panel, and waits until its result is shown.
pub fn click_and_wait(window: &mut Window, label: &str, result: &str) {
    window.get_by_label(label).click_accesskit();
    wait_for(window, result);
}

/// The marks that the dials show.
pub fn marks(window: &Window) -> Vec<u32> {
    app(window).view().marks(app(window).session().design())
}

/// Presses a key with the command key.
pub fn command(window: &mut Window, key: Key) {
    window.key_press_modifiers(Modifiers::COMMAND, key);
    // work may be going on beside the window, so that it does not come to rest
    window.run_steps(6);
}

/// What is behind it.
pub fn app(window: &Window) -> &LatchwrightApp {
    window.state().as_ref().expect("made in the first frame")
}

/// The open design.
pub fn design(window: &Window) -> &Design {
    app(window).session().design()
}

/// What undo would take back.
pub fn undo_label(window: &Window) -> Option<&str> {
    app(window).session().history().undo_label()
}

/// Presses a key.
pub fn press(window: &mut Window, key: Key) {
    window.key_press(key);
    settle(window);
}

/// Takes the last change back.
pub fn undo(window: &mut Window) {
    window.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    settle(window);
}

/// Types into what has the focus.
pub fn text(window: &mut Window, typed: &str) {
    window.event(Event::Text(typed.to_owned()));
    settle(window);
}

/// Clicks what may lie further down than the window shows.
pub fn click(window: &mut Window, label: &str) {
    let node = window
        .query_all_by_label(label)
        .rfind(|node| node.rect().left() > PANEL && node.accesskit_node().role() != Role::Label)
        .unwrap_or_else(|| panic!("no control is called {label}"));
    node.click_accesskit();
    settle(window);
}

/// Gives the focus to the control of this name.
pub fn focus(window: &mut Window, label: &str) {
    window.get_by_label(label).focus();
    settle(window);
}

/// Types into the field of this name and leaves it. What stood there goes.
pub fn enter(window: &mut Window, label: &str, typed: &str) {
    focus(window, label);
    text(window, typed);
    press(window, Key::Tab);
}

/// What stands in the field of this name.
pub fn shown(window: &Window, label: &str) -> String {
    let node = window.get_by_label(label);
    node.accesskit_node().value().unwrap_or_default()
}

/// Replaces what stands in the field of this name, even far down a panel. Work may be going on beside
/// the window.
pub fn type_into(window: &mut Window, label: &str, typed: &str) {
    window.get_by_label(label).focus();
    window.run_steps(2);
    window.key_press_modifiers(Modifiers::COMMAND, Key::A);
    window.run_steps(2);
    window.event(Event::Text(typed.to_owned()));
    window.run_steps(2);
}

/// As [`type_into`], and leaves the field.
pub fn type_over(window: &mut Window, label: &str, typed: &str) {
    type_into(window, label, typed);
    press(window, Key::Tab);
}

/// What the window told the desktop since the last frame.
pub fn commands(window: &Window) -> &[ViewportCommand] {
    &window.output().viewport_output[&ViewportId::ROOT].commands
}

/// The desktop asks the window to close, for one frame; whether it does.
pub fn closes(window: &mut Window) -> bool {
    let viewports = &mut window.input_mut().viewports;
    let events = &mut viewports.entry(ViewportId::ROOT).or_default().events;
    events.push(ViewportEvent::Close);
    window.step();
    let stays = commands(window).contains(&ViewportCommand::CancelClose);
    let viewports = &mut window.input_mut().viewports;
    viewports
        .entry(ViewportId::ROOT)
        .or_default()
        .events
        .clear();
    !stays
}
