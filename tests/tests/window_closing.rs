//! A window that closes while something is being saved waits until that is done.

use std::path::Path;

use egui::{Key, Modifiers, ViewportCommand};
use egui_kittest::kittest::Queryable;
use latchwright_desktop::stage::Stage;
use latchwright_tests::window::{
    Window, click_and_wait, closes, commands, demo, go, type_over, until, wait_for,
};

fn folder() -> tempfile::TempDir {
    tempfile::tempdir().expect("a folder")
}

fn shows(window: &Window, part: &str) -> bool {
    window.query_all_by_label_contains(part).next().is_some()
}

/// A window in which this is just being saved.
fn saving(stage: Stage, button: &str, to: &Path) -> Window {
    let mut window = demo("tea-box");
    go(&mut window, stage);
    click_and_wait(&mut window, button, "Path");
    type_over(&mut window, "Path", &to.to_string_lossy());
    window.get_by_label("Save here").click_accesskit();
    window.step();
    window
}

#[test]
fn closing_waits_for_papers_and_then_closes() {
    let folder = folder();
    let papers = folder.path().join("papers");
    let mut window = saving(Stage::Make, "Save all papers…", &papers);
    assert!(!closes(&mut window));
    assert!(shows(&window, "Still saving"));
    assert!(shows(&window, "All papers are being saved."));
    let closed = |window: &mut Window| commands(window).contains(&ViewportCommand::Close);
    assert!(until(&mut window, closed), "it never closed");
    for file in ["templates.pdf", "cut-list.pdf", "setting.pdf"] {
        assert!(papers.join(file).exists(), "{file}");
    }
    assert!(closes(&mut window), "and now it simply goes");
}

#[test]
fn the_window_can_be_kept_open_while_it_waits() {
    let folder = folder();
    let card = folder.path().join("card.pdf");
    let mut window = saving(Stage::Give, "Save the card…", &card);
    assert!(!closes(&mut window));
    window
        .get_by_label("Keep the window open")
        .click_accesskit();
    // before the card is done
    window.step();
    let mut closed = false;
    let saved = until(&mut window, |window| {
        closed |= commands(window).contains(&ViewportCommand::Close);
        shows(window, "Card saved as")
    });
    assert!(saved && !closed && card.exists());
}

#[test]
fn what_goes_wrong_while_it_waits_keeps_the_window_open() {
    let folder = folder();
    let nowhere = folder.path().join("no such folder").join("card.pdf");
    let mut window = saving(Stage::Give, "Save the card…", &nowhere);
    assert!(!closes(&mut window));
    wait_for(&mut window, "there is no such file or folder");
    assert!(!shows(&window, "Still saving"));
    assert!(!commands(&window).contains(&ViewportCommand::Close));
}

#[test]
fn a_window_that_is_gone_has_saved_what_was_begun() {
    let folder = folder();
    let card = folder.path().join("card.pdf");
    drop(saving(Stage::Give, "Save the card…", &card));
    let kept = std::fs::metadata(&card).expect("it is there");
    assert!(kept.len() > 500, "{} bytes", kept.len());
}

#[test]
fn changes_thrown_away_at_closing_wait_for_what_is_being_saved_too() {
    let folder = folder();
    let card = folder.path().join("card.pdf");
    let mut window = saving(Stage::Give, "Save the card…", &card);
    window.key_press_modifiers(Modifiers::COMMAND, Key::U);
    window.step();
    assert!(!closes(&mut window));
    window.get_by_label("Save your changes first?");
    window.get_by_label("Throw them away").click_accesskit();
    let closed = |window: &mut Window| commands(window).contains(&ViewportCommand::Close);
    assert!(until(&mut window, closed), "it never closed");
    assert!(card.exists());
}
