//! A new box from six questions, and mending: what comes out is proven, or it says why not.

use egui::Key;
use egui_kittest::kittest::Queryable;
use latchwright_model::Design;
use latchwright_session::Session;
use latchwright_tests::window::{
    app, click_and_wait, command, demo, open, type_into, wait_for, wait_until_gone,
};

#[test]
fn six_answers_give_three_proven_latches_and_one_is_taken() {
    let mut window = demo("tea-box");
    command(&mut window, Key::N);
    window.get_by_label("A new box: six questions");
    type_into(&mut window, "Width of the lid", "240");
    click_and_wait(&mut window, "Propose", "Smallest lid");
    for name in ["Roomiest", "Most settings", "Smallest lid"] {
        assert!(window.query_all_by_label(name).next().is_some(), "{name}");
    }
    let since = "An answer has changed since";
    assert!(window.query_by_label_contains(since).is_none());
    type_into(&mut window, "Number of dials", "4");
    window.get_by_label_contains(since);
    type_into(&mut window, "Number of dials", "3");
    assert!(window.query_by_label_contains(since).is_none());
    window.get_by_label("Take: roomiest").click_accesskit();
    window.run_steps(6);
    let design = app(&window).session().design();
    assert_eq!((design.plate.width, design.plate.depth), (240.0, 140.0));
    assert!(app(&window).proof().proven);
    assert!(app(&window).session().path().is_none());
    window.get_by_label("Proven");
}

#[test]
fn what_cannot_be_had_is_said_and_what_makes_no_sense_is_not_taken() {
    let mut window = demo("tea-box");
    command(&mut window, Key::N);
    type_into(&mut window, "Width of the lid", "lots");
    window.get_by_label("Propose").click_accesskit();
    window.run_steps(4);
    window.get_by_label_contains("Not taken: width of the lid");
    type_into(&mut window, "Width of the lid", "90");
    type_into(&mut window, "Number of dials", "6");
    click_and_wait(&mut window, "Propose", "Nothing that is proven was found");
}

#[test]
fn a_latch_that_is_not_proven_is_mended_in_one_step_that_undo_takes_back() {
    let mut design = Design::default();
    design.tab.engagement = 5.0;
    let mut window = open(Session::of(design));
    assert!(!app(&window).proof().proven);
    click_and_wait(&mut window, "Mend it", "then it is proven");
    assert!(app(&window).proof().proven);
    assert_eq!(app(&window).session().history().undo_label(), Some("mend"));
    command(&mut window, Key::Z);
    assert!((app(&window).session().design().tab.engagement - 5.0).abs() < 1e-12);
    wait_for(&mut window, "Mend it");
}

#[test]
fn what_is_cut_already_is_left_as_it_is() {
    let mut design = Design::default();
    design.tab.engagement = 5.0;
    let slider = (design.slider.clone(), design.tab.clone());
    let mut window = open(Session::of(design));
    window.get_by_label("Cut already…").click_accesskit();
    window.run_steps(4);
    window
        .get_by_label("The slider stays as it is")
        .click_accesskit();
    window.run_steps(4);
    window.key_press(Key::Escape);
    window.run_steps(4);
    window.get_by_label("Mend it").click_accesskit();
    // it is begun in one frame and shown in the next
    window.run_steps(2);
    wait_until_gone(&mut window, "Looking…");
    let after = app(&window).session().design();
    assert_eq!((after.slider.clone(), after.tab.clone()), slider);
}

#[test]
fn the_best_so_far_is_shown_and_can_be_taken_while_better_is_looked_for() {
    let mut window = demo("tea-box");
    command(&mut window, Key::N);
    // a search that takes a second or two
    for (name, text) in [
        ("Width of the lid", "400"),
        ("Depth of the lid", "300"),
        ("Number of dials", "6"),
    ] {
        type_into(&mut window, name, text);
    }
    click_and_wait(&mut window, "Propose", "Take: roomiest");
    window.get_by_label_contains("The best so far, each of them proven");
    window.get_by_label("Stop");
    window.get_by_label("Take: roomiest").click_accesskit();
    window.run_steps(6);
    let design = app(&window).session().design();
    assert_eq!(
        (design.plate.width, design.dials.len()),
        (400.0, 6),
        "what was taken"
    );
    assert!(app(&window).proof().proven);
    command(&mut window, Key::N);
    // the search does not go on though one was taken
    wait_until_gone(&mut window, "Stop");
}

#[test]
fn mending_that_is_given_up_changes_nothing_and_can_be_begun_again() {
    let mut design = Design::default();
    design.tab.engagement = 5.0;
    let mut window = open(Session::of(design.clone()));
    window.get_by_label("Mend it").click_accesskit();
    window.run_steps(2);
    // either still looking, and given up, or already done on a quick machine
    if let Some(stop) = window.query_by_label("Stop mending") {
        stop.click_accesskit();
        window.run_steps(2);
        assert!(window.query_by_label("Looking…").is_none());
        assert_eq!(app(&window).session().design().as_ref(), &design);
        window.get_by_label("Mend it").click_accesskit();
    }
    wait_for(&mut window, "then it is proven");
    assert!(app(&window).proof().proven);
}
