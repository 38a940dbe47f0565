//! The holes of a design: places, sizes, depths, bits and names.

use latchwright_geometry::Point;
use latchwright_model::{Design, Material, Units};
use latchwright_workshop::inch::Rule;
use latchwright_workshop::{
    Depth, Feature, Hand, Hole, HoleKind, HoleNote, HoleNoteKind, SlotKind, Tool, WoodPart, holes,
};

const MILLIMETRES: Rule = Rule {
    units: Units::Millimetre,
    denominator: 32,
};

fn hole(design: &Design, kind: HoleKind) -> Hole {
    let found = holes(design).holes;
    let hole = found.iter().find(|hole| hole.kind == kind);
    hole.unwrap_or_else(|| panic!("no {kind:?}")).clone()
}

#[test]
fn the_default_latch_has_bores_pins_screws_and_one_slot() {
    let found = holes(&Design::default());
    let names: Vec<String> = found.holes.iter().map(|hole| hole.kind.name()).collect();
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
    let bore = hole(&few_bits(), HoleKind::Bore(1));
    assert_eq!(
        (bore.kind.part(), bore.centre),
        (WoodPart::Plate, Point::new(0.0, 95.0))
    );
    let [step] = bore.steps.as_slice() else {
        panic!("one diameter")
    };
    assert_eq!((step.diameter, step.depth), (14.3, Depth::Through(12.0)));
    assert_eq!(
        step.lines(MILLIMETRES),
        [
            "14.3 mm through",
            "bit 15 mm, 0.7 mm over",
            "none within 0.3 mm"
        ]
    );
}

#[test]
fn a_pin_stands_below_its_disc_and_its_hole_is_as_deep_as_it_is_long() {
    let pin = hole(&Design::default(), HoleKind::Pin(2));
    // 95 − (18 + 2 + 4 / 2)
    assert_eq!(
        (pin.kind.part(), pin.centre),
        (WoodPart::Slider, Point::new(55.0, 73.0))
    );
    assert_eq!(pin.steps[0].depth, Depth::Blind(6.0));
    assert_eq!(
        pin.steps[0].lines(MILLIMETRES),
        ["4 mm, 6 mm deep", "bit 4 mm"]
    );
}

#[test]
fn a_pin_longer_than_the_slider_is_thick_goes_right_through() {
    let mut design = Design::default();
    design.dials[0].pin.height = 9.0;
    assert_eq!(
        hole(&design, HoleKind::Pin(0)).steps[0].depth,
        Depth::Through(8.0)
    );
}

#[test]
fn the_keepers_screws_go_beside_the_tab_into_the_front() {
    let design = Design::default();
    let (left, right) = (
        hole(&design, HoleKind::KeeperScrew(Hand::Left)),
        hole(&design, HoleKind::KeeperScrew(Hand::Right)),
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
    let needed = 2.84 + 2.0 * 2.0;
    let little = |kind: HoleNoteKind| HoleNote {
        about: Feature::KeeperScrews,
        kind,
    };
    let on_front = little(HoleNoteKind::LittleUnderKeeper {
        on_front: 3.0,
        needed,
    });
    assert_eq!(holes(&design).notes, [on_front]);
    design.keeper.width = 42.0;
    let beside_tab = little(HoleNoteKind::LittleBesideTab {
        shoulder: 1.0,
        needed,
        width: 40.0 + 2.0 * needed,
    });
    assert_eq!(holes(&design).notes, [on_front, beside_tab]);
}

#[test]
fn the_finger_knobs_slot_is_as_long_as_the_travel_and_as_wide_as_shank_and_play() {
    let found = holes(&few_bits());
    let slot = &found.slots[0];
    assert_eq!(slot.kind, SlotKind::FingerKnob);
    assert_eq!(slot.kind.name(), "finger knob slot");
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
    assert!(
        found
            .holes
            .iter()
            .all(|hole| hole.kind.part() != WoodPart::Slider)
    );
}

#[test]
fn what_no_bit_is_near_for_is_said_by_what_it_is() {
    let notes = holes(&few_bits()).notes;
    let far = |about: Feature, over: f64| {
        notes.iter().any(|note| {
            let HoleNoteKind::NoNearBit(bit) = note.kind else {
                return false;
            };
            note.about == about && (bit.over().unwrap() - over).abs() < 1e-9
        })
    };
    for dial in 0..3 {
        assert!(far(Feature::Bore(dial), 0.7), "{notes:?}");
    }
    assert!(far(Feature::FingerKnobSlot, 0.8), "{notes:?}");
    assert_eq!(notes.len(), 4, "{notes:?}");
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
        let left_out: Vec<Feature> = found
            .notes
            .iter()
            .filter(|note| note.kind == HoleNoteKind::LeftOut)
            .map(|note| note.about)
            .collect();
        let wanted = [
            Feature::Bore(1),
            Feature::Pin(2),
            Feature::KeeperScrews,
            Feature::FingerKnobSlot,
        ];
        assert_eq!(left_out, wanted, "{bad}");
    }
}

#[test]
fn what_is_alike_of_several_holes_is_said_once() {
    let notes = holes(&few_bits()).notes;
    let alike = latchwright_workshop::alike_once(&notes);
    let about: Vec<&[Feature]> = alike.iter().map(|notes| &notes.about[..]).collect();
    let bores: Vec<Feature> = (0..3).map(Feature::Bore).collect();
    assert_eq!(about, [&bores[..], &[Feature::FingerKnobSlot]]);
}
