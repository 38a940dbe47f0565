//! The list of settings under Prove: filtered, found at once, quick at any length, by mouse and keys.

use std::time::{Duration, Instant};

use egui::Key;
use egui::accesskit::Role;
use egui_kittest::kittest::{NodeT, Queryable};
use latchwright_desktop::stage::Stage;
use latchwright_model::{Design, Dial, Season};
use latchwright_session::Session;
use latchwright_tests::window::{Window, app, demo, focus, go, marks, open, press, text};

/// The window on the proof of a design.
fn proof_of(design: Design) -> Window {
    let mut window = open(Session::of(design));
    go(&mut window, Stage::Prove);
    window
}

fn click(window: &mut Window, label: &str) {
    window.get_by_label(label).click_accesskit();
    window.run();
}

/// Puts what is typed into the field of this name, in place of what stood there.
fn type_into(window: &mut Window, label: &str, typed: &str) {
    focus(window, label);
    window.key_press_modifiers(egui::Modifiers::COMMAND, Key::A);
    window.run();
    text(window, typed);
}

/// What the list says of the row that the keys are at.
fn at(window: &Window) -> String {
    let list = window.get_by_label_contains("List of settings, at");
    list.accesskit_node().label().unwrap_or_default()
}

/// The row that begins so, as a node of the tree that a screen reader gets.
fn row<'a>(window: &'a Window, begins: &'a str) -> egui_kittest::Node<'a> {
    try_row(window, begins).unwrap_or_else(|| panic!("no row begins \"{begins}\""))
}

fn try_row<'a>(window: &'a Window, begins: &'a str) -> Option<egui_kittest::Node<'a>> {
    let is_row = |node: &egui_kittest::Node<'a>| {
        let node = node.accesskit_node();
        node.role() == Role::Button && node.label().unwrap_or_default().starts_with(begins)
    };
    window.query_all_by_label_contains(begins).find(is_row)
}

/// Twelve dials of as many marks as a dial can have.
fn as_many_as_can_be() -> Design {
    let mut design = Design::default();
    let dial = design.dials[0].clone();
    design.dials = (0..12)
        .map(|n| Dial {
            centre: (f64::from(n) * 56.0, 95.0),
            positions: 360,
            ..dial.clone()
        })
        .collect();
    design.combination = vec![216; 12];
    design
}

#[test]
fn each_row_says_labels_verdict_who_decides_and_by_how_much() {
    let mut window = demo("tea-box");
    go(&mut window, Stage::Prove);
    let first = row(&window, "1 of 512: 1 1 1 locks, dial");
    let said = first.accesskit_node().label().unwrap_or_default();
    assert!(said.ends_with(" mm of tab to spare"), "{said}");
    row(&window, "6 of 512: 1 1 6 locks");
    assert!(try_row(&window, "7 of 512").is_none());
}

#[test]
fn a_filter_leaves_only_what_is_wanted_and_says_when_there_is_none() {
    let mut window = demo("tea-box");
    go(&mut window, Stage::Prove);
    click(&mut window, "Settings: opens");
    row(&window, "1 of 1: 4 7 2 opens, dial");
    click(&mut window, "Settings: locks");
    row(&window, "1 of 511: 1 1 1 locks");
    click(&mut window, "Settings: unsure");
    window.get_by_label("None of 512 settings is unsure.");
}

#[test]
fn a_setting_that_is_typed_is_shown_at_once_and_enter_turns_the_dials() {
    let mut window = demo("tea-box");
    go(&mut window, Stage::Prove);
    type_into(&mut window, "Find", "472");
    row(&window, "Found 4 7 2 opens, dial");
    assert!(
        at(&window).contains("at 242 of 512: 4 7 2 opens"),
        "{}",
        at(&window)
    );
    press(&mut window, Key::Enter);
    assert_eq!(marks(&window), [3, 6, 1]);
    type_into(&mut window, "Find", "4 9 2");
    window.get_by_label("Not found: dial 2 has no \"9\": its labels go from 1 to 8.");
    type_into(&mut window, "Find", "8 8 8");
    row(&window, "512 of 512: 8 8 8 locks");
}

#[test]
fn a_click_on_a_row_turns_the_dials_there_and_marks_the_row() {
    let mut window = demo("tea-box");
    go(&mut window, Stage::Prove);
    row(&window, "3 of 512: 1 1 3 locks").click_accesskit();
    window.run();
    assert_eq!(marks(&window), [0, 0, 2]);
    let chosen = row(&window, "3 of 512: 1 1 3 locks");
    let node = chosen.accesskit_node();
    assert_eq!(node.role(), Role::Button);
    assert_eq!(node.toggled(), Some(egui::accesskit::Toggled::True));
}

#[test]
fn the_keys_go_through_the_list_without_leaving_it() {
    let mut window = demo("tea-box");
    go(&mut window, Stage::Prove);
    let list = window.get_by_label_contains("List of settings, at");
    list.focus();
    window.run();
    press(&mut window, Key::ArrowDown);
    press(&mut window, Key::ArrowDown);
    assert!(
        at(&window).contains("at 3 of 512: 1 1 3"),
        "{}",
        at(&window)
    );
    press(&mut window, Key::Enter);
    assert_eq!(marks(&window), [0, 0, 2]);
    press(&mut window, Key::End);
    row(&window, "512 of 512: 8 8 8 locks");
    press(&mut window, Key::PageUp);
    press(&mut window, Key::ArrowUp);
    assert!(at(&window).contains("at 505 of 512"), "{}", at(&window));
    press(&mut window, Key::Home);
    press(&mut window, Key::Space);
    assert_eq!(marks(&window), [0, 0, 0]);
}

#[test]
fn dials_that_hold_together_are_listed_as_they_are_counted() {
    let mut design = Design::default();
    design.season = Season::still(design.season.built);
    design.tab.required_hold += 1.7;
    let mut window = proof_of(design);
    assert_eq!(app(&window).proof().settings.unsure, 14);
    click(&mut window, "Settings: unsure");
    row(&window, "1 of 14:");
    click(&mut window, "Settings: locks");
    row(&window, "1 of 497:");
}

#[test]
fn the_longest_list_there_can_be_is_as_quick_as_a_short_one() {
    let mut window = proof_of(as_many_as_can_be());
    let total = app(&window).proof().settings.total;
    assert_eq!(total, 360_u128.pow(12));
    let list = window.get_by_label_contains("List of settings, at 1 of 4");
    list.focus();
    window.run();
    press(&mut window, Key::End);
    let last = ["360"; 12].join(" ");
    assert!(at(&window).contains(&last), "{}", at(&window));
    type_into(&mut window, "Find", &["217"; 12].join(" "));
    window.get_by_label_contains(&format!("Found {}", ["217"; 12].join(" ")));
    type_into(&mut window, "From number", &(total / 2 + 1).to_string());
    press(&mut window, Key::Tab);
    assert!(at(&window).contains(": 181 1 1 1"), "{}", at(&window));
    let begun = Instant::now();
    for _ in 0..5 {
        window.step();
    }
    // all of the window without optimisation, two lists of 360 marks for each dial among it
    let frame = begun.elapsed() / 5;
    assert!(frame < Duration::from_secs(2), "{frame:?}");
}

#[test]
fn a_number_beyond_the_list_is_not_taken_and_says_so() {
    let mut window = demo("tea-box");
    go(&mut window, Stage::Prove);
    type_into(&mut window, "From number", "513");
    press(&mut window, Key::Tab);
    window.get_by_label("Not taken: type a whole number from 1 to 512");
    row(&window, "1 of 512: 1 1 1 locks");
}

#[test]
fn a_filter_begins_anew_and_a_latch_without_dials_lists_nothing() {
    let mut design = Design::default();
    design.dials[0].positions = 12;
    let mut window = proof_of(design);
    let list = window.get_by_label_contains("List of settings, at");
    list.focus();
    window.run();
    press(&mut window, Key::End);
    row(&window, "768 of 768: 12 8 8");
    click(&mut window, "Settings: opens");
    row(&window, "1 of 1:");
    let none = Design {
        dials: Vec::new(),
        combination: Vec::new(),
        ..Design::default()
    };
    let window = proof_of(none);
    window.get_by_label_contains("No settings to list");
}

#[test]
fn a_dial_of_very_many_marks_folds_behind_how_many_there_are_of_each_kind() {
    let mut window = proof_of(as_many_as_can_be());
    assert!(try_row(&window, "Dial 1 at 217:").is_none());
    let folded = window.query_all_by_label_contains("dial 1: ").next();
    folded.expect("dial 1 in short").click_accesskit();
    window.run();
    assert!(try_row(&window, "Dial 1 at 217:").is_some());
    assert!(try_row(&window, "Dial 2 at 217:").is_none());
}
