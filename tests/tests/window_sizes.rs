//! The panel of sizes, driven through the names of its controls: every number, every list.

use egui::accesskit::Role;
use egui_kittest::kittest::{NodeT, Queryable};
use latchwright_model::Size;
use latchwright_model::{Board, Design, KeeperMake, LidKind, OwnWood, Slot};
use latchwright_tests::window::{
    PANEL, Window, app, click, design, enter, shown, undo, undo_label, window,
};

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
        .filter(|node| node.rect().left() > PANEL)
        .map(|node| node.accesskit_node().label().unwrap_or_default())
        .collect()
}

#[test]
fn every_number_of_a_design_can_be_typed_in_a_field_of_its_own() {
    let mut window = unfolded(one_of_each());
    for entry in [
        "Bit 1: 14.3 mm",
        "Board 1: 1 × white oak, 1200 × 150 × 12 mm",
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
    click(&mut window, "Change dial 1…");
    click(&mut window, "Copy dial 1");
    assert_eq!(places(&window), [-55.0, 0.0, 55.0, 111.0]);
    assert_eq!(design(&window).combination, [3, 6, 1, 3]);
    assert_eq!(undo_label(&window), Some("copy dial 1"));
    assert_eq!(app(&window).view().dial, 3, "the copy is chosen");
    click(&mut window, "Change dial 4…");
    click(&mut window, "Renumber dial 4 to 3");
    assert_eq!(places(&window), [-55.0, 0.0, 111.0, 55.0]);
    assert_eq!(design(&window).combination, [3, 6, 3, 1]);
    click(&mut window, "Dial 2");
    click(&mut window, "Change dial 2…");
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
    click(&mut window, "Change dial 3…");
    click(&mut window, "Make all dials as dial 3");
    let dials = &design(&window).dials;
    for dial in dials {
        assert_eq!((dial.disc.radius, dial.knob.diameter), (16.0, 30.0));
    }
    assert_eq!(dials[0].centre, (-55.0, 106.0));
    undo(&mut window);
    assert_eq!(design(&window).dials[0].disc.radius, 19.0);
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
    enter(&mut window, "New bit", "13");
    assert_eq!(bits(&window).len(), before.len() + 1, "it is there already");
    window.get_by_label(&format!("Bit {}", at + 1));
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

#[test]
fn the_keeper_is_of_wood_until_it_is_printed_and_undo_names_the_step() {
    let mut window = window(Design::default());
    click(&mut window, "Slider and keeper");
    click(&mut window, "Keeper");
    window.get_by_label("printed").click();
    window.run();
    assert_eq!(design(&window).keeper.make, KeeperMake::Printed);
    assert_eq!(undo_label(&window), Some("keeper material"));
    undo(&mut window);
    assert_eq!(design(&window), &Design::default());
}

#[test]
fn prints_stay_bare_until_the_maker_coats_them_too() {
    let mut window = window(Design::default());
    click(&mut window, "What you have");
    click(&mut window, "Saw and finish");
    click(&mut window, "Coat the prints too");
    window.get_by_label("yes").click();
    window.run();
    assert!(design(&window).bench.coated_prints);
    assert_eq!(undo_label(&window), Some("coats on prints"));
    undo(&mut window);
    assert_eq!(design(&window), &Design::default());
}
