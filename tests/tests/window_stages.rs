//! The stages of the work as a maker goes through them: trying, making, giving.

use egui::Key;
use egui_kittest::kittest::Queryable;
use latchwright_desktop::action::Product;
use latchwright_desktop::stage::Stage;
use latchwright_desktop::tasks::TaskKind;
use latchwright_tests::window::{
    Window, app, click_and_wait, command, demo, gate, go, goes_on, marks as shown, settle,
    type_into, type_over, until, wait_for,
};

fn click(window: &mut Window, label: &str) {
    window.get_by_label(label).click();
    settle(window);
}

#[test]
fn the_card_is_made_beside_the_window_and_saved() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("card.pdf");
    let mut window = demo("tea-box");
    command(&mut window, Key::Num5);
    window.get_by_label("Card for the recipient");
    window.get_by_label("For").click_accesskit();
    type_over(&mut window, "For", "花子");
    assert_eq!(app(&window).session().design().card.recipient, "花子");
    wait_for(&mut window, "The card as it will be printed");
    window.get_by_label("Save the card…").click_accesskit();
    settle(&mut window);
    type_over(&mut window, "Path", &path.to_string_lossy());
    window.get_by_label("Save here").click_accesskit();
    window.step();
    let card = TaskKind::Write(Product::Card);
    let app = window
        .state_mut()
        .as_mut()
        .expect("made in the first frame");
    assert!(app.tasks().goes_on(card), "the window does not wait for it");
    wait_for(&mut window, "Card saved as");
    let pdf = lopdf::Document::load(&path).expect("a PDF");
    assert_eq!(pdf.get_pages().len(), 1);
}

#[test]
fn a_maker_tries_the_latch_finds_the_way_and_hunts_for_openings() {
    let mut window = demo("tea-box");
    assert_eq!(app(&window).stage(), Stage::Try);
    window.get_by_label("Turn dial 2 by 1 mark clockwise.");
    click(&mut window, "Turn the dials there");
    assert_eq!(shown(&window), [3, 6, 1]);
    window.get_by_label_contains("This is the combination");
    click(&mut window, "Slide");
    assert_eq!(app(&window).view().pose.travel, 11.0);
    click_and_wait(&mut window, "Hunt for them", "All 512 settings tried");
    click(&mut window, "As the recipient");
    assert_eq!(app(&window).view().veil, 1.0);
    click(&mut window, "Shuffle the dials");
    assert_eq!(app(&window).view().pose.travel, 0.0);
}

#[test]
fn a_hunt_names_the_setting_that_opens_too() {
    let mut window = demo("two-ways");
    let found = "1 of 1728 settings open beside the combination:";
    click_and_wait(&mut window, "Hunt for them", found);
}

#[test]
fn a_hunt_goes_on_beside_the_window_stops_when_asked_and_ends_with_the_design_it_is_of() {
    let mut window = demo("tea-box");
    let gate = gate(&mut window);
    let held = gate.lock().expect("nobody fell over");
    click_and_wait(&mut window, "Hunt for them", "Stop hunting");
    // the window stays usable
    click(&mut window, "As the recipient");
    assert_eq!(app(&window).view().veil, 1.0);
    click_and_wait(&mut window, "Stop hunting", "Hunt for them");
    click_and_wait(&mut window, "Hunt for them", "Stop hunting");
    command(&mut window, Key::U);
    wait_for(&mut window, "Hunt for them");
    drop(held);
    let hunts = |window: &mut Window| goes_on(window, TaskKind::Hunt);
    assert!(until(&mut window, |window| !hunts(window)));
    assert!(window.query_by_label_contains("settings tried").is_none());
}

#[test]
fn every_paper_is_looked_at_and_all_are_saved_in_one_folder() {
    let folder = tempfile::tempdir().expect("a folder");
    let out = folder.path().join("papers");
    let mut window = demo("tea-box");
    command(&mut window, Key::Num4);
    wait_for(&mut window, "Templates as printed");
    window.get_by_label_contains("Page 1 of");
    click(&mut window, "On a page");
    window.get_by_label_contains("Page 2 of");
    for paper in ["Cut list", "Order of work", "Setting the combination"] {
        click_and_wait(&mut window, paper, &format!("{paper} as printed"));
    }
    click_and_wait(
        &mut window,
        "Save all papers…",
        "Save all papers in a folder",
    );
    type_over(&mut window, "Path", &out.to_string_lossy());
    click_and_wait(&mut window, "Save here", "All papers saved in");
    for file in [
        "templates.pdf",
        "setting.pdf",
        "for-the-recipient/card.pdf",
        "drawings/front.dxf",
    ] {
        assert!(out.join(file).exists(), "{file}");
    }
    // again, into the same folder: it is asked first
    click_and_wait(
        &mut window,
        "Save all papers…",
        "Save all papers in a folder",
    );
    type_over(&mut window, "Path", &out.to_string_lossy());
    click_and_wait(&mut window, "Save here", "Save over it?");
    click_and_wait(&mut window, "Save over it", "All papers saved in");
}

#[test]
fn what_the_ruler_says_puts_the_templates_right_and_slips_are_said() {
    let mut window = demo("tea-box");
    go(&mut window, Stage::Make);
    click(&mut window, "A print that came out wrong");
    type_over(&mut window, "Line along x", "97,98");
    window.get_by_label_contains("Not taken: the line along y");
    type_over(&mut window, "Line along y", "100");
    window.get_by_label_contains("Drawn x × 1.0206, y × 1.0000");
    type_over(&mut window, "Line along y", "10");
    window.get_by_label_contains("slip of the ruler");
}

#[test]
fn a_combination_is_chosen_drawn_by_rules_and_undone_in_one() {
    let mut window = demo("tea-box");
    go(&mut window, Stage::Give);
    let seat = "Dial 1 opens at 4: 3 of 8 seats clockwise from the front";
    assert!(window.query_all_by_label(seat).next().is_some());
    let before = app(&window).session().design().combination.clone();
    click(&mut window, "Draw one at random");
    let design = app(&window).session().design().clone();
    assert_eq!(
        latchwright_model::combination::weakness(&design, &design.combination, &before),
        None
    );
    assert!(app(&window).proof().proven);
    window.get_by_label("Undo: combination drawn");
    command(&mut window, Key::Z);
    assert_eq!(app(&window).session().design().combination, before);
    click(&mut window, "Take what the dials show");
    assert_eq!(app(&window).session().design().combination, [3, 5, 1]);
}

#[test]
fn parts_are_turned_by_keys_cut_chosen_and_saved() {
    let folder = tempfile::tempdir().expect("a folder");
    let out = folder.path().join("parts");
    let mut window = demo("tea-box");
    go(&mut window, Stage::Make);
    window.get_by_label("Parts to print").click();
    wait_for(&mut window, "of filament");
    wait_for(&mut window, "Printed parts, turned 330°, from 30° above");
    window
        .get_by_label("Printed parts, turned 330°, from 30° above")
        .focus();
    window.run_steps(2);
    window.key_press(Key::ArrowRight);
    window.run_steps(2);
    window.get_by_label("Printed parts, turned 320°, from 30° above");
    window.key_press(Key::ArrowUp);
    wait_for(&mut window, "Printed parts, turned 320°, from 20° above");
    for label in ["As printed", "level", "In the lid", "lobed"] {
        window.get_by_label(label).click_accesskit();
        window.run_steps(4);
    }
    wait_for(&mut window, "of filament");
    window.get_by_label("Disc 2").click_accesskit();
    window.run_steps(3);
    window.get_by_label("Sizes: said, drawn, expected (mm)");
    window.get_by_label("One alone").click_accesskit();
    window.run_steps(3);
    click_and_wait(&mut window, "Save all parts…", "Save all parts in a folder");
    type_over(&mut window, "Path", &out.to_string_lossy());
    click_and_wait(&mut window, "Save here", "All parts saved in");
    for file in ["parts.txt", "disc-2.stl", "parts-1.3mf"] {
        assert!(out.join(file).exists(), "{file}");
    }
}

#[test]
fn what_the_gauge_measured_becomes_the_printer_and_slips_are_said() {
    let mut window = demo("tea-box");
    go(&mut window, Stage::Make);
    window.get_by_label("Parts to print").click();
    wait_for(&mut window, "of filament");
    window
        .get_by_label("What the gauge measured")
        .click_accesskit();
    window.run_steps(30);
    type_into(&mut window, "Hole of 10 mm", "9,85");
    window.get_by_label("Take these readings").click_accesskit();
    window.run_steps(3);
    let printer = app(&window).session().design().bench.printer.clone();
    assert_eq!(printer.holes.len(), 1);
    assert!((printer.holes[0].under - 0.15).abs() < 1e-9);
    window.get_by_label("Undo: what the gauge measured");
    type_into(&mut window, "Hole of 10 mm", "98");
    window.get_by_label("Take these readings").click_accesskit();
    window.run_steps(3);
    window.get_by_label_contains("Not taken: ");
}

#[test]
fn parts_that_cannot_be_printed_say_why() {
    let mut design = latchwright_model::Design::default();
    design.dials[0].key.apothem = 2.0;
    let mut window = latchwright_tests::window::open(latchwright_session::Session::of(design));
    go(&mut window, Stage::Make);
    window.get_by_label("Parts to print").click();
    wait_for(&mut window, "These parts cannot be printed yet");
    window.get_by_label_contains("mm of wall");
}

#[test]
fn a_card_speaks_the_language_that_is_chosen() {
    let mut window = demo("tea-box");
    go(&mut window, Stage::Give);
    window.get_by_label("Language").click_accesskit();
    window.run_steps(4);
    window.get_by_label("Français").click_accesskit();
    window.run_steps(4);
    let card = &app(&window).session().design().card;
    assert_eq!(card.language.name(), "Français");
    window
        .get_by_label("In pictures, for a child")
        .click_accesskit();
    window.run_steps(4);
    window.get_by_label("Undo: style of the card");
    wait_for(&mut window, "The card as it will be printed");
}
