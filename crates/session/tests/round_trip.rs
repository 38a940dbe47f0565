//! Saving, loading and saving again gives the same bytes, for any design.

mod any_design;
#[path = "../../../tests/src/thin_latch.rs"]
mod thin_latch;

use latchwright_model::Design;
use latchwright_session::format::{read, write};
use proptest::prelude::*;
use thin_latch::thin;

const THREE_DIALS: &str = include_str!("fixtures/three-dials.ron");

proptest! {
    #[test]
    fn what_is_written_reads_back_as_the_same_design(design in any_design::design()) {
        let text = write(&design).unwrap();
        let loaded = read(text.as_bytes()).unwrap();
        prop_assert_eq!(&loaded.design, &design);
        prop_assert!(loaded.notices.is_empty() && loaded.unknown.is_empty());
        prop_assert_eq!(write(&loaded.design).unwrap(), text);
    }

    #[test]
    fn any_text_is_read_or_refused_without_a_panic(text in "[(){}\\[\\]\"'#r/*:,a-c0-9. \n-]{0,200}") {
        let _ = read(text.as_bytes());
        let _ = read(format!("(format: 1, {text})").as_bytes());
    }

    #[test]
    fn any_bytes_are_read_or_refused_without_a_panic(bytes in proptest::collection::vec(any::<u8>(), 0..200)) {
        let _ = read(&bytes);
    }
}

#[test]
fn the_format_comes_first() {
    let text = write(&Design::default()).unwrap();
    assert!(
        text.starts_with("(\n    format: 1,\n    title: \"Untitled box\",\n"),
        "{text}"
    );
}

#[test]
fn short_parts_stay_on_one_line() {
    let text = write(&Design::default()).unwrap();
    for line in [
        "    tab: (at: 0.0, width: 40.0, engagement: 8.0, required_hold: 1.5),",
        "            pin: (offset: 0.0, diameter: 4.0, gap: 3.0, height: 13.0, free: 7.5, make: Steel),",
        "    combination: [3, 6, 1],",
        "        floor: (thickness: 6.0, material: Plywood),",
    ] {
        assert!(text.lines().any(|has| has == line), "{line}\n{text}");
    }
    assert!(text.lines().all(|line| line.chars().count() <= 120));
}

#[test]
fn minus_nought_is_nought() {
    let mut design = Design::default();
    design.tab.at = -0.0;
    let text = write(&design).unwrap();
    assert!(text.contains("tab: (at: 0.0,"));
    let by_hand = text.replace("tab: (at: 0.0,", "tab: (at: -0.0,");
    let loaded = read(by_hand.as_bytes()).unwrap();
    assert!(loaded.design.tab.at.is_sign_positive());
}

#[test]
fn a_size_that_is_no_number_is_not_written() {
    let mut design = Design::default();
    design.dials[1].key.apothem = f64::INFINITY;
    assert_eq!(
        write(&design).unwrap_err().to_string(),
        "dials[1].key.apothem is inf, which cannot be saved; give it a plain number"
    );
}

#[test]
fn a_byte_order_mark_does_no_harm() {
    let marked = format!("\u{FEFF}{THREE_DIALS}");
    assert_eq!(read(marked.as_bytes()), read(THREE_DIALS.as_bytes()));
}

#[test]
fn a_file_written_by_hand_reads_as_the_usual_box_with_its_gaps_listed() {
    let loaded = read(THREE_DIALS.as_bytes()).unwrap();
    // what it gives are the sizes that figures were worked out for; what it leaves out is that of the usual box
    let mut usual = Design {
        title: "Tea box for the window seat".to_owned(),
        ..thin()
    };
    let default = Design::default();
    usual.plate.room = default.plate.room;
    for (dial, of) in usual.dials.iter_mut().zip(&default.dials) {
        dial.disc.below = of.disc.below;
        (dial.pin.height, dial.pin.free) = (of.pin.height, of.pin.free);
    }
    usual.slider.thickness = 6.0;
    (usual.slider.guide_length, usual.slider.guide_play) = (60.0, 0.25);
    usual.slider.guide_at = (0.0, 45.0);
    assert_eq!(loaded.design, usual);
    let fields: Vec<_> = loaded
        .notices
        .iter()
        .map(|notice| notice.field.as_str())
        .collect();
    // the file is older than the fields through the thickness, of strength and of the recipient
    let of_dial = |dial: usize| {
        ["disc.below", "pin.height", "pin.free", "pin.make"]
            .map(|field| format!("dials[{dial}].{field}"))
    };
    let slider = ["shank", "below", "pull", "friction"].map(|field| format!("slider.{field}"));
    let expected: Vec<String> = ["plate.rabbet", "plate.room"]
        .map(str::to_owned)
        .into_iter()
        .chain(slider)
        .chain(["keeper", "inside", "body"].map(str::to_owned))
        .chain((0..3).flat_map(of_dial))
        .chain(["workmanship.thickness", "bench", "card"].map(str::to_owned))
        .collect();
    assert_eq!(fields, expected);
    assert!(!loaded.blocks_proof());
}

#[test]
fn a_missing_part_is_one_notice_with_what_is_taken() {
    let loaded = read(b"(format: 1, dials: [(bore: (diameter: 9.0))], season: ())").unwrap();
    let messages: Vec<_> = loaded.notices.iter().map(ToString::to_string).collect();
    for expected in [
        "dial 1: `knob` is not given: taken as (diameter: 36.0, height: 14.0)",
        "dial 1, bore: `shaft_play` is not given: taken as 0.15",
        "season: `driest` is not given: taken as (celsius: 21.0, humidity: 25.0)",
        "`tab` is not given: taken as (at: 0.0, width: 40.0, engagement: 8.0, required_hold: 1.5)",
        "`combination` is not given: taken as [0]",
        "`own_woods` is not given: taken as []",
    ] {
        assert!(
            messages.iter().any(|message| message == expected),
            "{expected}\n{messages:#?}"
        );
    }
    assert_eq!(messages.len(), 24, "{messages:#?}");
}

#[test]
fn an_unknown_field_is_named_with_its_place_and_what_was_meant() {
    let text = THREE_DIALS
        .replacen("shaft_play: 0.15", "shaft_ply: 0.15, shaft_play: 0.15", 2)
        .replacen("shaft_ply: 0.15, ", "", 1)
        .replace("title:", "colour: (a: [1]),\n    title:")
        .replace("required_hold: 1.5", "required_hold: 1.5, guide_play: 1.0")
        .replace("species:", "specie: \"x\", species:");
    let loaded = read(text.as_bytes()).unwrap();
    let messages: Vec<_> = loaded.unknown.iter().map(ToString::to_string).collect();
    assert_eq!(
        messages,
        [
            "line 4, column 5: `colour` is not a field of a design; \
             remove it, or it is lost in the next save",
            "line 10, column 24: `specie` is not a field of slider, material; \
             remove it, or it is lost in the next save",
            "line 12, column 70: `guide_play` is not a field of tab; it belongs in `slider`",
            "line 27, column 36: `shaft_ply` is not a field of dial 2, bore; \
             did you mean `shaft_play`?",
        ]
    );
    assert_eq!(loaded.unknown[3].path, "dials[1].bore.shaft_ply");
    assert_eq!(loaded.unknown[3].suggestion.as_deref(), Some("shaft_play"));
    assert!(loaded.blocks_proof());
}

#[test]
fn more_dials_than_a_latch_can_have_still_load() {
    let text = format!("(format: 1, dials: [{}])", "(),".repeat(40));
    assert_eq!(read(text.as_bytes()).unwrap().design.dials.len(), 40);
}

#[test]
fn whole_numbers_will_do_for_lengths_and_brackets_round_a_value_for_itself() {
    let text = THREE_DIALS.replace("radius: 18.0", "radius: Some(18)");
    assert_eq!(
        read(text.as_bytes()).unwrap().design.dials[0].disc.radius,
        18.0
    );
}
