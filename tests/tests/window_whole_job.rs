//! The whole job in one window, driven by the names of its controls alone: from six questions to a
//! saved design that opens again, with papers, parts and card on the way.

use std::fs;
use std::path::Path;

use egui::Key;
use egui_kittest::kittest::Queryable;
use latchwright_desktop::stage::Stage;
use latchwright_model::{Design, combination};
use latchwright_session::files;
use latchwright_tests::window::{
    Window, app, click_and_wait, command, demo, design, go, marks, type_into, type_over, wait_for,
};

fn click(window: &mut Window, label: &str) {
    window.get_by_label(label).click_accesskit();
    window.run_steps(6);
}

fn answer(window: &mut Window, path: &Path, said: &str) {
    type_over(window, "Path", &path.to_string_lossy());
    click_and_wait(window, "Save here", said);
}

/// From the lid in the maker's head to a latch that is proven.
fn six_questions(window: &mut Window) {
    command(window, Key::N);
    type_into(window, "Width of the lid", "260");
    click_and_wait(window, "Propose", "Take: most settings");
    click(window, "Take: most settings");
    assert_eq!(design(window).plate.width, 260.0);
    assert!(app(window).proof().proven);
}

/// One size is changed, looked at under Prove, and what breaks the promise is taken back.
fn change_and_prove(window: &mut Window) {
    go(window, Stage::LayOut);
    type_over(window, "Title", "Box for the whole job");
    let proven = design(window).clone();
    click(window, "Slider and keeper");
    type_over(window, "Engagement", "0.5");
    assert_eq!(design(window).tab.engagement, 0.5);
    go(window, Stage::Prove);
    assert!(!app(window).proof().proven);
    wait_for(window, "Mend it");
    command(window, Key::Z);
    assert_eq!(*design(window), proven);
    wait_for(window, "Proven");
}

/// The recipient's way: nothing opens until the dials stand at the combination.
fn try_it(window: &mut Window) {
    go(window, Stage::Try);
    click(window, "Shuffle the dials");
    click(window, "Turn the dials there");
    assert_eq!(marks(window), design(window).combination);
    click(window, "Slide");
    let travel = design(window).slider.travel;
    assert!((app(window).view().pose.travel - travel).abs() < 1e-9);
    click(window, "Slide");
}

fn papers_and_parts(window: &mut Window, folder: &Path) {
    go(window, Stage::Make);
    wait_for(window, "Templates as printed");
    click_and_wait(window, "Save all papers…", "Save all papers in a folder");
    answer(window, &folder.join("papers"), "All papers saved in");
    click(window, "Parts to print");
    wait_for(window, "of filament");
    click_and_wait(window, "Save all parts…", "Save all parts in a folder");
    answer(window, &folder.join("parts"), "All parts saved in");
}

fn combination_and_card(window: &mut Window, folder: &Path) {
    go(window, Stage::Give);
    let before = design(window).combination.clone();
    click(window, "Draw one at random");
    let drawn = design(window).combination.clone();
    assert_eq!(combination::weakness(design(window), &drawn, &before), None);
    assert!(app(window).proof().proven);
    type_over(window, "For", "Łukasz");
    wait_for(window, "The card as it will be printed");
    click_and_wait(window, "Save the card…", "Path");
    answer(window, &folder.join("card.pdf"), "Card saved as");
}

fn save_and_open_again(window: &mut Window, file: &Path) -> Design {
    command(window, Key::S);
    type_over(window, "Path", &file.to_string_lossy());
    click_and_wait(window, "Save here", "Saved as");
    assert!(!app(window).session().unsaved());
    let kept = design(window).clone();
    // something else in between, so that what comes back is what the file holds
    type_over_title(window);
    command(window, Key::O);
    type_over(window, "Path", &file.to_string_lossy());
    click_and_wait(window, "Open this file", "whole.latch.ron, saved");
    kept
}

fn type_over_title(window: &mut Window) {
    go(window, Stage::LayOut);
    type_over(window, "Title", "Another");
    command(window, Key::Z);
}

#[test]
fn from_six_questions_to_a_saved_design_with_papers_parts_and_card() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("whole.latch.ron");
    let mut window = demo("two-ways");
    six_questions(&mut window);
    change_and_prove(&mut window);
    try_it(&mut window);
    papers_and_parts(&mut window, folder.path());
    combination_and_card(&mut window, folder.path());
    let kept = save_and_open_again(&mut window, &file);
    assert_eq!(*design(&window), kept);
    assert_eq!(files::load(&file).expect("it opens").loaded.design, kept);
    assert_eq!(kept.title, "Box for the whole job");
    for made in [
        "papers/templates.pdf",
        "papers/cut-list.pdf",
        "papers/order-of-work.pdf",
        "papers/setting.pdf",
        "papers/for-the-recipient/card.pdf",
        "parts/parts.txt",
        "card.pdf",
    ] {
        let size = fs::metadata(folder.path().join(made)).map_or(0, |found| found.len());
        assert!(size > 500, "{made}: {size} bytes");
    }
}
