//! A window driven through the names of its controls, for tests of its panel of sizes.

use egui::accesskit::Role;
use egui::{Event, Key, Modifiers, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT, Queryable};
use latchwright_desktop::LatchwrightApp;
use latchwright_session::Session;
use latchwright_solver::model::Design;

pub type Window = Harness<'static, Option<LatchwrightApp>>;

/// The panel's left edge, points.
pub const PANEL: f32 = 1440.0 - 340.0;

pub fn window(design: Design) -> Window {
    let mut session = Some(Session::of(design));
    let mut harness = Harness::builder()
        .with_size(vec2(1440.0, 900.0))
        .with_max_steps(60)
        .build_ui_state(
            move |ui, app: &mut Option<LatchwrightApp>| {
                let ctx = ui.ctx().clone();
                let app = app.get_or_insert_with(|| {
                    LatchwrightApp::new(&ctx, session.take().unwrap_or_default(), None)
                });
                app.logic(&ctx);
                app.draw(ui);
            },
            None,
        );
    harness.run();
    harness.get_by_label("Lay out").click();
    harness.run();
    harness
}

pub fn app(window: &Window) -> &LatchwrightApp {
    window.state().as_ref().expect("made in the first frame")
}

pub fn design(window: &Window) -> &Design {
    app(window).session().design()
}

pub fn undo_label(window: &Window) -> Option<&str> {
    app(window).session().history().undo_label()
}

pub fn press(window: &mut Window, key: Key) {
    window.key_press(key);
    window.run();
}

pub fn undo(window: &mut Window) {
    window.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    window.run();
}

pub fn text(window: &mut Window, typed: &str) {
    window.event(Event::Text(typed.to_owned()));
    window.run();
}

/// Clicks what may lie further down than the window shows.
pub fn click(window: &mut Window, label: &str) {
    let node = window
        .query_all_by_label(label)
        .rfind(|node| node.rect().left() > PANEL && node.accesskit_node().role() != Role::Label)
        .unwrap_or_else(|| panic!("no control is called {label}"));
    node.click_accesskit();
    window.run();
}

pub fn focus(window: &mut Window, label: &str) {
    window.get_by_label(label).focus();
    window.run();
}

/// Types into the field of this name and leaves it. What stood there goes.
pub fn enter(window: &mut Window, label: &str, typed: &str) {
    focus(window, label);
    text(window, typed);
    press(window, Key::Tab);
}

pub fn shown(window: &Window, label: &str) -> String {
    let node = window.get_by_label(label);
    node.accesskit_node().value().unwrap_or_default()
}
