//! The panel of sizes, driven through the names of its controls: every number, every list, and what
//! fields do with what is typed.

use egui::accesskit::Role;
use egui::{Event, Key, Modifiers, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT, Queryable};
use latchwright_desktop::LatchwrightApp;
use latchwright_session::Session;
use latchwright_solver::Size;
use latchwright_solver::model::{Board, Design, LidKind, OwnWood, Slot, Units};

type Window = Harness<'static, Option<LatchwrightApp>>;

/// The panel's right edge, points.
const PANEL: f32 = 290.0;

const GROUPS: [&str; 7] = [
    "Box",
    "Plate",
    "Dials",
    "Slider and keeper",
    "What you have",
    "Workmanship",
    "Season",
];

/// What folds away inside a group and is folded at first.
const PARTS: [&str; 9] = [
    "Bits",
    "Boards",
    "Saw and finish",
    "Paper and rule",
    "Printer",
    "Woods measured",
    "Marks and labels",
    "Key, shaft and bore",
    "Knob",
];

fn window(design: Design) -> Window {
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
    harness
}

fn app(window: &Window) -> &LatchwrightApp {
    window.state().as_ref().expect("made in the first frame")
}

fn design(window: &Window) -> &Design {
    app(window).session().design()
}

fn undo_label(window: &Window) -> Option<&str> {
    app(window).session().history().undo_label()
}

fn press(window: &mut Window, key: Key) {
    window.key_press(key);
    window.run();
}

fn undo(window: &mut Window) {
    window.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    window.run();
}

fn text(window: &mut Window, typed: &str) {
    window.event(Event::Text(typed.to_owned()));
    window.run();
}

/// Clicks what may lie further down than the window shows.
fn click(window: &mut Window, label: &str) {
    let node = window
        .query_all_by_label(label)
        .rfind(|node| node.rect().left() < PANEL && node.accesskit_node().role() != Role::Label)
        .unwrap_or_else(|| panic!("no control is called {label}"));
    node.click_accesskit();
    window.run();
}

fn focus(window: &mut Window, label: &str) {
    window.get_by_label(label).focus();
    window.run();
}

/// Types into the field of this name and leaves it. What stood there goes.
fn enter(window: &mut Window, label: &str, typed: &str) {
    focus(window, label);
    text(window, typed);
    press(window, Key::Tab);
}

fn shown(window: &Window, label: &str) -> String {
    let node = window.get_by_label(label);
    node.accesskit_node().value().unwrap_or_default()
}

/// One dial with a blind slot, a lid cut off as a band, and one thing in every list.
fn one_of_each() -> Design {
    let mut design = Design::default();
    design.dials.truncate(1);
    design.combination.truncate(1);
    design.dials[0].disc.slots.push(Slot {
        mark: 4,
        depth: 3.0,
        ..Slot::default()
    });
    design.body.lid = LidKind::Band { height: 20.0 };
    design.own_woods.push(OwnWood {
        name: "pear".to_owned(),
        ..OwnWood::default()
    });
    let bench = &mut design.bench;
    bench.bits = vec![14.3];
    bench.boards = vec![Board::default()];
    bench.printer.holes.truncate(1);
    design
}

/// A window in which nothing is folded away and the only entry of each list is chosen.
fn unfolded(design: Design) -> Window {
    let mut window = window(design);
    for name in GROUPS.iter().filter(|name| **name != "Dials") {
        click(&mut window, name);
    }
    for name in PARTS {
        click(&mut window, name);
    }
    window
}

fn numbers(design: &Design) -> Vec<(Size, f64)> {
    let mut sizes = Size::all(design);
    sizes.extend(Size::beside(design));
    let value = |size: Size| Some((size, size.get(design)?));
    sizes.into_iter().filter_map(value).collect()
}

/// Names of all fields of the panel.
fn fields(window: &Window) -> Vec<String> {
    window
        .root()
        .children_recursive()
        .filter(|node| node.accesskit_node().role() == Role::TextInput)
        .filter(|node| node.rect().left() < PANEL)
        .map(|node| node.accesskit_node().label().unwrap_or_default())
        .collect()
}

#[test]
fn every_number_of_a_design_can_be_typed_in_a_field_of_its_own() {
    let mut window = unfolded(one_of_each());
    for entry in [
        "Bit 1: 14.3 mm",
        "Board 1: 1 × white oak, 1200.0 × 150.0 × 12.0 mm",
        "Reading 1: 2.5 too small by 0.4",
        "Wood 1: pear",
    ] {
        click(&mut window, entry);
    }
    let mut typed = Vec::new();
    for field in fields(&window) {
        if ["Title", "Label words", "Wood 1 name", "New bit"].contains(&field.as_str()) {
            continue;
        }
        let before = numbers(design(&window));
        let value = if field == "Opens at" { "2" } else { "237" };
        enter(&mut window, &field, value);
        let after = numbers(design(&window));
        let changed: Vec<(Size, f64)> = after
            .into_iter()
            .zip(before)
            .filter(|(now, was)| now != was)
            .map(|(now, _)| now)
            .collect();
        assert_eq!(changed.len(), 1, "{field}: {changed:?}");
        let expected = if field == "Opens at" { 1.0 } else { 237.0 };
        assert_eq!(changed[0].1, expected, "{field}");
        assert!(
            !typed.contains(&changed[0].0),
            "{field} is the second field for one number"
        );
        typed.push(changed[0].0);
    }
    let mut untyped: Vec<Size> = numbers(design(&window))
        .into_iter()
        .map(|(size, _)| size)
        .filter(|size| !typed.contains(size))
        .collect();
    untyped.sort_unstable();
    // marks are counted from the true slot; a fraction is chosen; the age stands beside the card
    assert_eq!(
        untyped,
        [Size::SlotMark(0, 0), Size::Fraction, Size::Youngest]
    );
}

#[test]
fn no_two_controls_share_a_name_when_nothing_is_folded_away() {
    let window = unfolded(one_of_each());
    let mut seen = Vec::new();
    for node in window.root().children_recursive() {
        let node = node.accesskit_node();
        if matches!(
            node.role(),
            Role::Button | Role::TextInput | Role::SpinButton | Role::CheckBox | Role::ComboBox
        ) {
            let label = node.label().unwrap_or_default();
            assert!(!label.trim().is_empty(), "a control without a name");
            seen.push(label);
        }
    }
    seen.sort();
    let twice: Vec<_> = seen.windows(2).filter(|pair| pair[0] == pair[1]).collect();
    assert!(twice.is_empty(), "{twice:?}");
}

#[test]
fn only_the_dials_lie_open_at_first_and_every_group_says_why_it_matters() {
    let mut window = window(Design::default());
    assert!(fields(&window).contains(&"Gap to rim".to_owned()));
    assert!(
        fields(&window).len() < 20,
        "a wall of {} fields",
        fields(&window).len()
    );
    for (group, why) in [
        ("Box", "cut list"),
        ("Plate", "moves over the year"),
        ("Slider and keeper", "under the keeper"),
        ("What you have", "nearest of your bits"),
        ("Workmanship", "exactly you work"),
        ("Season", "swells in damp air"),
    ] {
        click(&mut window, group);
        let said = window.query_all_by_label_contains(why).count();
        assert!(said > 0, "{group}");
        click(&mut window, group);
    }
}

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
    assert_eq!(shown(&window, "Disc radius"), "0.7087");
    enter(&mut window, "Disc radius", "0.7087");
    assert_eq!(undo_label(&window), None);
    assert_eq!(design(&window).dials[0].disc.radius, 18.0);
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
    assert_eq!(gaps, [1.5, 2.0, 2.0]);
    assert_eq!(shown(&window, "Gap to rim"), "2.0");
    assert_eq!(undo_label(&window), Some("gap to rim of dial 1"));
}

#[test]
fn a_dial_opens_at_the_label_that_is_typed() {
    let mut window = window(Design::default());
    click(&mut window, "Dial 2");
    click(&mut window, "Marks and labels");
    assert_eq!(shown(&window, "Opens at"), "7");
    enter(&mut window, "Opens at", "9");
    window.get_by_label_contains("they go from 1 to 8");
    enter(&mut window, "Opens at", "8");
    assert_eq!(design(&window).combination, [3, 7, 1]);
    window.get_by_label("Combination: 4 8 2");
}

#[test]
fn dials_are_added_copied_renumbered_and_taken_away() {
    let mut window = window(Design::default());
    let places = |window: &Window| -> Vec<f64> {
        let dials = design(window).dials.iter();
        dials.map(|dial| dial.centre.0).collect()
    };
    click(&mut window, "Dial 1");
    click(&mut window, "Change dial 1");
    click(&mut window, "Copy dial 1");
    assert_eq!(places(&window), [-55.0, 0.0, 55.0, 111.0]);
    assert_eq!(design(&window).combination, [3, 6, 1, 3]);
    assert_eq!(undo_label(&window), Some("copy dial 1"));
    assert_eq!(app(&window).view().dial, 3, "the copy is chosen");
    click(&mut window, "Change dial 4");
    click(&mut window, "Make dial 4 dial 3");
    assert_eq!(places(&window), [-55.0, 0.0, 111.0, 55.0]);
    assert_eq!(design(&window).combination, [3, 6, 3, 1]);
    click(&mut window, "Dial 2");
    click(&mut window, "Change dial 2");
    click(&mut window, "Take dial 2 away");
    assert_eq!(places(&window), [-55.0, 111.0, 55.0]);
    assert_eq!(design(&window).combination, [3, 3, 1]);
    click(&mut window, "Add a dial");
    assert_eq!(places(&window), [-55.0, 111.0, 55.0, 167.0]);
    for _ in 0..4 {
        undo(&mut window);
    }
    assert_eq!(design(&window), &Design::default());
}

#[test]
fn all_dials_become_as_one_and_stay_where_they_stand() {
    let mut uneven = Design::default();
    uneven.dials[2].disc.radius = 16.0;
    uneven.dials[2].knob.diameter = 30.0;
    let mut window = window(uneven);
    click(&mut window, "Dial 3");
    click(&mut window, "Change dial 3");
    click(&mut window, "Make all as dial 3");
    let dials = &design(&window).dials;
    for dial in dials {
        assert_eq!((dial.disc.radius, dial.knob.diameter), (16.0, 30.0));
    }
    assert_eq!(dials[0].centre, (-55.0, 95.0));
    undo(&mut window);
    assert_eq!(design(&window).dials[0].disc.radius, 18.0);
}

#[test]
fn bits_are_added_in_their_place_changed_and_taken_away() {
    let mut window = window(Design::default());
    let bits = |window: &Window| design(window).bench.bits.clone();
    let before = bits(&window);
    click(&mut window, "What you have");
    click(&mut window, "Bits");
    enter(&mut window, "New bit", "1/2\"");
    let at = bits(&window)
        .iter()
        .position(|bit| (bit - 12.7).abs() < 1e-9)
        .expect("it joined the others");
    assert!(bits(&window).windows(2).all(|pair| pair[0] < pair[1]));
    assert_eq!(shown(&window, "New bit"), "");
    click(&mut window, &format!("Bit {}: 12.7 mm", at + 1));
    enter(&mut window, &format!("Bit {}", at + 1), "13");
    assert_eq!(bits(&window)[at], 13.0);
    click(&mut window, &format!("Take bit {} away", at + 1));
    assert_eq!(bits(&window), before);
    undo(&mut window);
    assert_eq!(bits(&window)[at], 13.0);
    enter(&mut window, "New bit", "big");
    window.get_by_label_contains("`big` is no number");
}

#[test]
fn boards_are_added_chosen_and_taken_away() {
    let mut window = window(Design::default());
    click(&mut window, "What you have");
    click(&mut window, "Boards");
    window.get_by_label_contains("says what to buy");
    click(&mut window, "Add a board");
    enter(&mut window, "Board 1 length", "900");
    enter(&mut window, "Board 1 pieces", "2");
    click(&mut window, "Add a board");
    let boards = design(&window).bench.boards.clone();
    assert_eq!(boards.len(), 2);
    assert_eq!(boards[0], boards[1], "the next is like the chosen one");
    assert_eq!((boards[0].length, boards[0].count), (900.0, 2));
    assert_eq!(boards[0].thickness, Design::default().body.thickness);
    click(&mut window, "Board 2 wood");
    window.get_by_label("plywood").click();
    window.run();
    assert_eq!(design(&window).bench.boards[1].wood, "plywood");
    click(&mut window, "Take board 2 away");
    assert_eq!(design(&window).bench.boards.len(), 1);
}

#[test]
fn readings_of_the_fit_gauge_are_added_and_taken_away() {
    let mut window = window(one_of_each());
    click(&mut window, "What you have");
    click(&mut window, "Printer");
    click(&mut window, "Add a reading");
    enter(&mut window, "Reading 2 hole drawn", "8");
    enter(&mut window, "Reading 2 too small by", "0,3");
    let holes = design(&window).bench.printer.holes.clone();
    assert_eq!((holes[1].diameter, holes[1].under), (8.0, 0.3));
    click(&mut window, "Take reading 2 away");
    assert_eq!(design(&window).bench.printer.holes.len(), 1);
}

#[test]
fn a_wood_of_the_makers_own_is_named_and_what_is_made_of_it_follows() {
    let mut window = window(Design::default());
    click(&mut window, "What you have");
    click(&mut window, "Woods measured");
    click(&mut window, "Add a wood");
    click(&mut window, "Plate");
    click(&mut window, "Plate wood");
    window.get_by_label("my wood").click();
    window.run();
    assert_eq!(design(&window).plate.wood, "my wood");
    enter(&mut window, "Wood 1 name", "梨");
    enter(&mut window, "Wood 1 radial", "0,0018");
    let now = design(&window);
    assert_eq!(
        (now.plate.wood.as_str(), now.own_woods[0].radial),
        ("梨", 0.0018)
    );
    click(&mut window, "Add a wood");
    assert_eq!(design(&window).own_woods[1].name, "my wood");
    click(&mut window, "Take wood 2 away");
    assert_eq!(design(&window).own_woods.len(), 1);
}

#[test]
fn the_box_is_cut_with_a_band_and_back_in_steps_that_undo_takes_back() {
    let mut window = window(Design::default());
    click(&mut window, "Box");
    assert!(!fields(&window).contains(&"Band height".to_owned()));
    click(&mut window, "Lid");
    window
        .get_by_label("plate in a band cut off the sides")
        .click();
    window.run();
    enter(&mut window, "Band height", "25");
    assert_eq!(design(&window).body.lid, LidKind::Band { height: 25.0 });
    click(&mut window, "Floor material");
    window.get_by_label("solid wood").click();
    window.run();
    window.get_by_label("Floor grain");
    for _ in 0..3 {
        undo(&mut window);
    }
    assert_eq!(design(&window), &Design::default());
}

#[test]
fn the_fraction_of_an_inch_is_chosen_among_those_that_rules_have() {
    let mut window = window(Design::default());
    click(&mut window, "What you have");
    click(&mut window, "Paper and rule");
    click(&mut window, "Inches on papers in");
    window.get_by_label("sixteenths").click();
    window.run();
    assert_eq!(design(&window).bench.fraction, 16);
}
