//! A disk that answers late keeps nobody waiting: a design is opened and saved beside the window, and what
//! was to come after that comes.

use std::path::{Path, PathBuf};
use std::sync::{Mutex, MutexGuard};

use egui::{Key, ViewportCommand};
use egui_kittest::kittest::Queryable;
use latchwright_desktop::action::Product;
use latchwright_desktop::stage::Stage;
use latchwright_desktop::tasks::TaskKind;
use latchwright_model::Design;
use latchwright_session::{Session, files};
use latchwright_tests::window::{
    Window, app, click_and_wait, closes, command, commands, design, gate, go, goes_on, open,
    type_into, type_over, until, wait_for, wait_for_design, wait_for_save, wait_until_gone,
};

const SAVE: TaskKind = TaskKind::Write(Product::Design);

fn folder() -> tempfile::TempDir {
    tempfile::tempdir().expect("a folder")
}

fn file(folder: &Path, name: &str) -> PathBuf {
    let path = folder.join(format!("{name}.latch.ron"));
    let design = Design {
        title: name.to_owned(),
        ..Design::default()
    };
    files::save(&path, &design).expect("saved");
    path
}

fn window(path: &Path) -> Window {
    open(Session::open(path).expect("opens"))
}

/// All work that is begun from now on takes until this is let go.
fn slow(gate: &Mutex<()>) -> MutexGuard<'_, ()> {
    gate.lock().expect("nobody fell over")
}

fn click(window: &mut Window, label: &str) {
    window.get_by_label(label).click_accesskit();
    window.run_steps(6);
}

fn shows(window: &Window, part: &str) -> bool {
    window.query_all_by_label_contains(part).next().is_some()
}

fn retitle(window: &mut Window, title: &str) {
    go(window, Stage::LayOut);
    type_over(window, "Title", title);
    assert_eq!(design(window).title, title);
}

/// Asks for this file to be opened.
fn ask_for(window: &mut Window, path: &Path) {
    command(window, Key::O);
    type_into(window, "Path", &path.to_string_lossy());
    click(window, "Open this file");
}

fn title_in(path: &Path) -> String {
    Session::open(path).expect("opens").design().title.clone()
}

/// It closes by itself, once what it waits for is done.
fn closes_at_last(window: &mut Window) {
    let closed = |window: &mut Window| commands(window).contains(&ViewportCommand::Close);
    assert!(until(window, closed), "it never closed");
}

fn at_rest(window: &mut Window, kind: TaskKind) {
    assert!(until(window, |window| !goes_on(window, kind)));
    window.run_steps(2);
}

#[test]
fn a_file_that_takes_long_is_said_to_be_opened_and_can_be_given_up() {
    let folder = folder();
    let (one, other) = (file(folder.path(), "One"), file(folder.path(), "Other"));
    let mut window = window(&one);
    let gate = gate(&mut window);
    let held = slow(&gate);
    ask_for(&mut window, &other);
    wait_for(&mut window, &format!("Opening {}…", other.display()));
    // the window stays usable
    go(&mut window, Stage::Try);
    click(&mut window, "As the recipient");
    assert_eq!(app(&window).view().veil, 1.0);
    click(&mut window, "Stop opening");
    assert!(!shows(&window, "Stop opening"));
    drop(held);
    at_rest(&mut window, TaskKind::Open);
    assert_eq!(design(&window).title, "One");
    ask_for(&mut window, &other);
    wait_for_design(&mut window, "Other");
    assert!(!shows(&window, "Stop opening"));
}

#[test]
fn the_file_that_was_asked_for_last_is_opened() {
    let folder = folder();
    let one = file(folder.path(), "One");
    let others = ["Second", "Third"].map(|name| file(folder.path(), name));
    let mut window = window(&one);
    let gate = gate(&mut window);
    let held = slow(&gate);
    for other in &others {
        ask_for(&mut window, other);
    }
    drop(held);
    wait_for_design(&mut window, "Third");
    at_rest(&mut window, TaskKind::Open);
    assert_eq!(design(&window).title, "Third");
}

#[test]
fn what_is_changed_while_a_file_is_opened_is_asked_about() {
    let folder = folder();
    let (one, other) = (file(folder.path(), "One"), file(folder.path(), "Other"));
    let mut window = window(&one);
    let gate = gate(&mut window);
    let held = slow(&gate);
    ask_for(&mut window, &other);
    retitle(&mut window, "Changed meanwhile");
    drop(held);
    wait_for(&mut window, "Save your changes first?");
    assert_eq!(design(&window).title, "Changed meanwhile");
    click(&mut window, "Save, then go on");
    wait_for_design(&mut window, "Other");
    assert_eq!(title_in(&one), "Changed meanwhile");
}

#[test]
fn a_path_that_cannot_be_opened_is_asked_for_again() {
    let folder = folder();
    let one = file(folder.path(), "One");
    let mut window = window(&one);
    ask_for(&mut window, &folder.path().join("none.latch.ron"));
    wait_for(&mut window, "none.latch.ron cannot be read");
    type_into(&mut window, "Path", &one.to_string_lossy());
    click_and_wait(&mut window, "Open this file", "One.latch.ron, saved");
}

#[test]
fn a_save_that_takes_long_keeps_nobody_from_working_and_what_is_changed_meanwhile_is_not_saved() {
    let folder = folder();
    let one = file(folder.path(), "One");
    let mut window = window(&one);
    retitle(&mut window, "Saved");
    let gate = gate(&mut window);
    let held = slow(&gate);
    command(&mut window, Key::S);
    wait_for(&mut window, "being saved…");
    retitle(&mut window, "Changed meanwhile");
    drop(held);
    at_rest(&mut window, SAVE);
    wait_for(&mut window, "One.latch.ron, changed");
    assert_eq!(title_in(&one), "Saved");
    command(&mut window, Key::Z);
    wait_for(&mut window, "One.latch.ron, saved");
}

#[test]
fn a_second_save_follows_the_first() {
    let folder = folder();
    let one = file(folder.path(), "One");
    let mut window = window(&one);
    let gate = gate(&mut window);
    let held = slow(&gate);
    for title in ["First", "Second"] {
        retitle(&mut window, title);
        command(&mut window, Key::S);
    }
    drop(held);
    wait_for_save(&mut window);
    at_rest(&mut window, SAVE);
    assert_eq!(title_in(&one), "Second");
    assert!(!shows(&window, "still being saved"));
}

#[test]
fn what_comes_after_a_slow_save_comes_and_nothing_is_asked_again() {
    let folder = folder();
    let (one, other) = (file(folder.path(), "One"), file(folder.path(), "Other"));
    let mut window = window(&one);
    retitle(&mut window, "Kept");
    ask_for(&mut window, &other);
    let gate = gate(&mut window);
    let held = slow(&gate);
    click(&mut window, "Save, then go on");
    wait_for(&mut window, "being saved…");
    assert_eq!(design(&window).title, "Kept");
    drop(held);
    wait_for_design(&mut window, "Other");
    assert_eq!(title_in(&one), "Kept");
}

#[test]
fn another_design_is_opened_as_soon_as_this_one_is_saved() {
    let folder = folder();
    let (one, other) = (file(folder.path(), "One"), file(folder.path(), "Other"));
    let mut window = window(&one);
    retitle(&mut window, "Kept");
    let gate = gate(&mut window);
    let held = slow(&gate);
    command(&mut window, Key::S);
    ask_for(&mut window, &other);
    assert!(!shows(&window, "Save your changes first?"));
    drop(held);
    wait_for_design(&mut window, "Other");
    assert_eq!(title_in(&one), "Kept");
}

#[test]
fn what_is_changed_while_it_is_saved_is_asked_about_before_the_next_is_opened() {
    let folder = folder();
    let (one, other) = (file(folder.path(), "One"), file(folder.path(), "Other"));
    let mut window = window(&one);
    retitle(&mut window, "Kept");
    ask_for(&mut window, &other);
    let gate = gate(&mut window);
    let held = slow(&gate);
    click(&mut window, "Save, then go on");
    retitle(&mut window, "Changed meanwhile");
    drop(held);
    wait_for(&mut window, "Save your changes first?");
    assert_eq!(design(&window).title, "Changed meanwhile");
    assert_eq!(title_in(&one), "Kept");
    click(&mut window, "Throw them away");
    wait_for_design(&mut window, "Other");
}

#[test]
fn a_save_of_a_design_that_is_shown_no_more_says_nothing_of_the_next() {
    let folder = folder();
    let (one, other) = (file(folder.path(), "One"), file(folder.path(), "Other"));
    let mut window = window(&one);
    retitle(&mut window, "Kept");
    let gate = gate(&mut window);
    let held = slow(&gate);
    command(&mut window, Key::S);
    retitle(&mut window, "Thrown away");
    let demo = Session::demo("two-ways").expect("a demo");
    let title = demo.design().title.clone();
    click(&mut window, "Demos");
    click(&mut window, &title);
    click(&mut window, "Throw them away");
    wait_for_design(&mut window, &title);
    drop(held);
    at_rest(&mut window, SAVE);
    assert_eq!(title_in(&one), "Kept");
    assert_eq!(app(&window).session().path(), None);
    ask_for(&mut window, &other);
    wait_for_design(&mut window, "Other");
}

#[test]
fn closing_waits_for_the_design_without_a_question_and_then_closes() {
    let folder = folder();
    let one = file(folder.path(), "One");
    let mut window = window(&one);
    retitle(&mut window, "Kept");
    let gate = gate(&mut window);
    let held = slow(&gate);
    command(&mut window, Key::S);
    assert!(!closes(&mut window));
    window.run_steps(2);
    assert!(shows(&window, "The design is being saved."));
    assert!(!shows(&window, "Save your changes first?"));
    drop(held);
    closes_at_last(&mut window);
    assert_eq!(title_in(&one), "Kept");
}

#[test]
fn a_window_that_is_gone_has_saved_its_design() {
    let folder = folder();
    let one = file(folder.path(), "One");
    let mut window = window(&one);
    retitle(&mut window, "Kept");
    window.key_press_modifiers(egui::Modifiers::COMMAND, Key::S);
    window.step();
    drop(window);
    assert_eq!(title_in(&one), "Kept");
}

#[test]
fn saving_at_closing_closes_once_it_is_saved_however_long_that_takes() {
    let folder = folder();
    let one = file(folder.path(), "One");
    let mut window = window(&one);
    retitle(&mut window, "Kept");
    assert!(!closes(&mut window));
    window.run_steps(2);
    let gate = gate(&mut window);
    let held = slow(&gate);
    click(&mut window, "Save, then go on");
    wait_for(&mut window, "being saved…");
    assert!(!commands(&window).contains(&ViewportCommand::Close));
    // asked again meanwhile it waits
    assert!(!closes(&mut window));
    drop(held);
    closes_at_last(&mut window);
    assert_eq!(title_in(&one), "Kept");
}

#[test]
fn a_save_that_fails_while_the_window_waits_for_it_keeps_it_open() {
    let folder = folder();
    let one = file(folder.path(), "One");
    let mut window = window(&one);
    retitle(&mut window, "Not lost");
    let nowhere = folder.path().join("no such folder").join("x.latch.ron");
    command(&mut window, Key::S);
    wait_for_save(&mut window);
    retitle(&mut window, "Not lost either");
    window.key_press_modifiers(egui::Modifiers::COMMAND | egui::Modifiers::SHIFT, Key::S);
    window.run_steps(6);
    type_into(&mut window, "Path", &nowhere.to_string_lossy());
    let gate = gate(&mut window);
    let held = slow(&gate);
    click(&mut window, "Save here");
    assert!(!closes(&mut window));
    window.run_steps(2);
    assert!(shows(&window, "Still saving"));
    drop(held);
    wait_for(&mut window, "there is no such file or folder");
    wait_until_gone(&mut window, "Still saving");
    assert!(!commands(&window).contains(&ViewportCommand::Close));
    assert!(app(&window).session().unsaved());
}
