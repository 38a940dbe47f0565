//! The holes of a design: places, sizes, depths, bits and names.

use latchwright_geometry::Point;
use latchwright_model::{Design, Material, Units};
use latchwright_workshop::inch::Rule;
use latchwright_workshop::{Depth, Hole, Tool, WoodPart, holes};

const MILLIMETRES: Rule = Rule {
    units: Units::Millimetre,
    denominator: 32,
};

fn named(design: &Design, name: &str) -> Hole {
    let found = holes(design).holes;
    let hole = found.iter().find(|hole| hole.name == name);
    hole.unwrap_or_else(|| panic!("no {name}")).clone()
}

#[test]
fn the_default_latch_has_bores_pins_screws_and_one_slot() {
    let found = holes(&Design::default());
    let names: Vec<&str> = found.holes.iter().map(|hole| hole.name.as_str()).collect();
    assert_eq!(
        names,
        [
            "dial 1 bore",
            "dial 2 bore",
            "dial 3 bore",
            "dial 1 pin",
            "dial 2 pin",
            "dial 3 pin",
            "keeper screw left",
            "keeper screw right",
        ]
    );
    assert_eq!(found.slots.len(), 1);
}

/// The usual box of a maker who has no bit for its bores, nor for the slot.
fn few_bits() -> Design {
    let mut design = Design::default();
    design.bench.bits.retain(|bit| ![14.3, 8.5].contains(bit));
    design
}

#[test]
fn a_bore_stands_at_its_dial_and_its_bit_is_never_smaller() {
    let bore = named(&few_bits(), "dial 2 bore");
    assert_eq!(
        (bore.part, bore.centre),
        (WoodPart::Plate, Point::new(0.0, 95.0))
    );
    let [step] = bore.steps.as_slice() else {
        panic!("one diameter")
    };
    assert_eq!((step.diameter, step.depth), (14.3, Depth::Through(12.0)));
    assert_eq!(
        step.words(MILLIMETRES),
        "14.3 mm through: bit 15 mm, 0.7 mm over: none within 0.3 mm"
    );
}

#[test]
fn a_pin_stands_below_its_disc_and_its_hole_is_as_deep_as_it_is_long() {
    let pin = named(&Design::default(), "dial 3 pin");
    // 95 − (18 + 2 + 4 / 2)
    assert_eq!(
        (pin.part, pin.centre),
        (WoodPart::Slider, Point::new(55.0, 73.0))
    );
    assert_eq!(pin.steps[0].depth, Depth::Blind(6.0));
    assert_eq!(pin.steps[0].words(MILLIMETRES), "4 mm, 6 mm deep: bit 4 mm");
}

#[test]
fn a_pin_longer_than_the_slider_is_thick_goes_right_through() {
    let mut design = Design::default();
    design.dials[0].pin.height = 9.0;
    assert_eq!(
        named(&design, "dial 1 pin").steps[0].depth,
        Depth::Through(8.0)
    );
}

#[test]
fn the_keepers_screws_go_beside_the_tab_into_the_front() {
    let design = Design::default();
    let (left, right) = (
        named(&design, "keeper screw left"),
        named(&design, "keeper screw right"),
    );
    // keeper ± 28, tab ± 20: shoulders of 8; keeper 0 to 14 over a front from 0 to 12
    assert_eq!(left.centre, Point::new(-24.0, 6.0));
    assert_eq!(right.centre, Point::new(24.0, 6.0));
    assert!(matches!(right.steps[0].tool, Tool::Bit(_)));
    assert_eq!(right.steps[1].tool, Tool::Countersink);
    assert!(right.steps[1].diameter > right.steps[0].diameter);
}

#[test]
fn a_keeper_with_too_little_wood_under_it_is_said() {
    let mut design = Design::default();
    design.keeper.edge = 3.0;
    let notes = holes(&design).notes.join("\n");
    assert!(
        notes.contains("the keeper lies on 3 mm of the front"),
        "{notes}"
    );
    design.keeper.width = 42.0;
    let notes = holes(&design).notes.join("\n");
    assert!(
        notes.contains("the keeper stands 1 mm beyond the tab"),
        "{notes}"
    );
}

#[test]
fn the_finger_knobs_slot_is_as_long_as_the_travel_and_as_wide_as_shank_and_play() {
    let found = holes(&few_bits());
    let slot = &found.slots[0];
    assert_eq!(slot.name, "finger knob slot");
    assert_eq!(
        (slot.from, slot.to),
        (Point::new(0.0, 27.0), Point::new(0.0, 35.0))
    );
    assert_eq!((slot.width, slot.bit.owned), (8.2, Some(9.0)));
    // 4.5 − √(4.5² − 2²)
    assert_eq!((slot.row.count, slot.row.pitch), (3, 4.0));
    assert!((slot.row.cusp - 0.468_871).abs() < 1e-6);
    let centres: Vec<f64> = slot.centres().iter().map(|centre| centre.y).collect();
    assert_eq!(centres, [27.0, 31.0, 35.0]);
}

#[test]
fn a_printed_slider_has_no_holes_to_bore() {
    let mut design = Design::default();
    design.slider.material = Material::Printed;
    let found = holes(&design);
    assert!(found.holes.iter().all(|hole| hole.part != WoodPart::Slider));
}

#[test]
fn what_no_bit_is_near_for_is_said_by_name() {
    let notes = holes(&few_bits()).notes.join("\n");
    assert!(
        notes.contains("dial 1 bore: 14.3 mm asked for; bit 15 mm, 0.7 mm over"),
        "{notes}"
    );
    assert!(!notes.contains("pin"), "{notes}");
    assert!(holes(&Design::default()).notes.is_empty());
}

#[test]
fn nonsense_is_left_out_and_named() {
    for bad in [f64::NAN, f64::INFINITY, 0.0, -4.0, 1e300] {
        let mut design = Design::default();
        design.dials[1].bore.diameter = bad;
        design.dials[2].pin.height = bad;
        design.slider.shank = bad;
        design.keeper.width = bad;
        let found = holes(&design);
        assert_eq!(found.holes.len(), 4, "{bad}");
        assert!(found.slots.is_empty(), "{bad}");
        for name in [
            "dial 2 bore",
            "dial 3 pin",
            "the keeper's screws",
            "finger knob slot",
        ] {
            let said = found.notes.iter().any(|note| note.starts_with(name));
            assert!(said, "{bad}: {name}");
        }
    }
}
