//! What the window's fields do with what is typed: Tab, undo, decimal commas, fractions, nonsense.

use egui::Key;
use egui_kittest::kittest::Queryable;
use latchwright_model::{Design, Units};
use latchwright_tests::window::{
    Window, click, design, enter, focus, press, shown, text, undo, undo_label, window,
};

fn room_of_20_30_40() -> Window {
    let mut design = Design::default();
    (design.inside.width, design.inside.depth) = (20.0, 30.0);
    design.inside.height = 40.0;
    let mut window = window(design);
    click(&mut window, "Box");
    window
}

fn room(window: &Window) -> [f64; 3] {
    let inside = &design(window).inside;
    [inside.width, inside.depth, inside.height]
}

#[test]
fn three_numbers_typed_with_tabs_between_land_in_their_three_fields() {
    let mut window = room_of_20_30_40();
    focus(&mut window, "Inside width");
    for (typed, so_far) in [
        ("21", [21.0, 30.0, 40.0]),
        ("31", [21.0, 31.0, 40.0]),
        ("41", [21.0, 31.0, 41.0]),
    ] {
        text(&mut window, typed);
        press(&mut window, Key::Tab);
        assert_eq!(room(&window), so_far);
    }
    for (field, value) in [("width", "21.0"), ("depth", "31.0"), ("height", "41.0")] {
        assert_eq!(shown(&window, &format!("Inside {field}")), value);
    }
}

#[test]
fn undo_in_a_field_shows_the_undone_value_and_leaving_keeps_it() {
    let mut window = room_of_20_30_40();
    enter(&mut window, "Inside width", "21");
    enter(&mut window, "Inside depth", "31");
    focus(&mut window, "Inside depth");
    undo(&mut window);
    assert_eq!(shown(&window, "Inside depth"), "30.0");
    press(&mut window, Key::Tab);
    assert_eq!(room(&window), [21.0, 30.0, 40.0]);
}

#[test]
fn undo_while_typing_takes_back_what_is_typed_and_only_then_what_was_done() {
    let mut window = room_of_20_30_40();
    focus(&mut window, "Inside width");
    text(&mut window, "21");
    press(&mut window, Key::Tab);
    text(&mut window, "31");
    undo(&mut window);
    assert_eq!(shown(&window, "Inside depth"), "30.0");
    assert_eq!(room(&window), [21.0, 30.0, 40.0]);
    undo(&mut window);
    assert_eq!(room(&window), [20.0, 30.0, 40.0]);
    press(&mut window, Key::Tab);
    assert_eq!(room(&window), [20.0, 30.0, 40.0]);
}

#[test]
fn a_title_that_is_being_typed_is_taken_back_like_a_number() {
    let mut window = window(Design::default());
    focus(&mut window, "Title");
    text(&mut window, "花子");
    assert_eq!(shown(&window, "Title"), "花子");
    undo(&mut window);
    assert_eq!(shown(&window, "Title"), "Untitled box");
    text(&mut window, "Zoë");
    press(&mut window, Key::Tab);
    assert_eq!(undo_label(&window), Some("title"));
    undo(&mut window);
    assert_eq!(design(&window), &Design::default());
}

#[test]
fn a_screen_reader_may_set_a_number_without_the_focus() {
    let mut window = room_of_20_30_40();
    let field = window.get_by_label("Inside depth");
    field.set_text_value_accesskit("31,5 mm");
    window.run();
    assert_eq!(room(&window), [20.0, 31.5, 40.0]);
    assert_eq!(undo_label(&window), Some("inside depth"));
}

#[test]
fn lengths_are_taken_as_makers_write_them() {
    let mut window = room_of_20_30_40();
    for (typed, mm) in [
        ("12,5", 12.5),
        ("1/2\"", 12.7),
        ("1 3/8 in", 34.925),
        ("3-3/8\"", 85.725),
        ("12.7 mm", 12.7),
    ] {
        enter(&mut window, "Inside width", typed);
        assert!((room(&window)[0] - mm).abs() < 1e-9, "{typed}");
    }
}

#[test]
fn what_cannot_be_taken_is_said_and_the_old_value_stays() {
    let mut window = room_of_20_30_40();
    for (typed, word) in [
        ("1.234,5", "has a point and a comma"),
        ("nan", "`nan` is no number"),
        ("inf", "`inf` is no number"),
        ("twelve", "`twelve` is no number"),
        ("1e3", "`1e3` is no number"),
    ] {
        enter(&mut window, "Inside width", typed);
        window.get_by_label_contains(word);
        assert_eq!(room(&window), [20.0, 30.0, 40.0]);
        assert_eq!(shown(&window, "Inside width"), "20.0");
    }
    assert_eq!(undo_label(&window), None);
    enter(&mut window, "Inside width", "21");
    assert!(window.query_by_label_contains("Not taken").is_none());
}

#[test]
fn airs_and_angles_are_shown_without_their_sign_and_taken_with_it() {
    let mut window = window(Design::default());
    click(&mut window, "Season");
    click(&mut window, "Workmanship");
    assert_eq!(shown(&window, "Driest humidity"), "25.0");
    enter(&mut window, "Driest humidity", "30 %");
    enter(&mut window, "Driest at", "-2,5 °C");
    enter(&mut window, "Pointer read within", "2°");
    let now = design(&window);
    assert_eq!(now.season.driest.humidity, 30.0);
    assert_eq!(now.season.driest.celsius, -2.5);
    assert_eq!(now.workmanship.reading, 2.0);
}

#[test]
fn typing_again_what_is_shown_in_inches_changes_nothing() {
    let inches = Design {
        units: Units::Inch,
        ..Design::default()
    };
    let mut window = window(inches);
    assert_eq!(shown(&window, "Disc radius"), "0.7480");
    enter(&mut window, "Disc radius", "0.7480");
    assert_eq!(undo_label(&window), None);
    assert_eq!(design(&window).dials[0].disc.radius, 19.0);
}

#[test]
fn what_is_typed_for_one_dial_is_not_given_to_the_next() {
    let mut window = window(Design::default());
    click(&mut window, "Change all dials alike");
    click(&mut window, "Dial 1");
    focus(&mut window, "Gap to rim");
    text(&mut window, "1.5");
    window.get_by_label("Dial 3").click();
    window.run();
    let gaps: Vec<f64> = design(&window).dials.iter().map(|d| d.pin.gap).collect();
    assert_eq!(gaps, [1.5, 3.0, 3.0]);
    assert_eq!(shown(&window, "Gap to rim"), "3.0");
    assert_eq!(undo_label(&window), Some("gap to rim of dial 1"));
}
