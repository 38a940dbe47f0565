//! The holes of a design: places, sizes, depths, bits and names.

use latchwright_geometry::Point;
use latchwright_model::{Design, Material, Units};
use latchwright_workshop::inch::Rule;
use latchwright_workshop::{
    Depth, Feature, Hand, Hole, HoleKind, HoleNote, HoleNoteKind, SlotKind, Tool, WoodPart, holes,
    step_lines,
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
            "finger knob socket",
            "keeper screw left",
            "keeper screw right",
            "guide screw front left",
            "guide screw front right",
            "guide screw back left",
            "guide screw back right",
        ]
    );
    assert_eq!(found.slots.len(), 1);
}

/// The usual box of a maker who has no bit for its bores, nor for the slot.
fn few_bits() -> Design {
    let mut design = Design::default();
    design.bench.bits.retain(|bit| ![14.3, 9.5].contains(bit));
    design
}

#[test]
fn a_bore_stands_at_its_dial_and_its_bit_is_never_smaller() {
    let bore = hole(&few_bits(), HoleKind::Bore(1));
    assert_eq!(
        (bore.kind.part(), bore.centre),
        (WoodPart::Plate, Point::new(0.0, 106.0))
    );
    let [step] = bore.steps.as_slice() else {
        panic!("one diameter")
    };
    assert_eq!((step.diameter, step.depth), (14.3, Depth::Through(12.0)));
    assert_eq!(
        step_lines(step, MILLIMETRES),
        [
            "14.3 mm through",
            "bit 15 mm, 0.7 mm over",
            "none within 0.3 mm"
        ]
    );
}

#[test]
fn a_pin_stands_below_its_disc_and_its_hole_goes_through_its_finger() {
    let pin = hole(&Design::default(), HoleKind::Pin(2));
    // 106 − (19 + 3 + 4 / 2); it was 95, 18 and 2 of the box before its fingers ran below the discs
    assert_eq!(
        (pin.kind.part(), pin.centre),
        (WoodPart::Slider, Point::new(55.0, 82.0))
    );
    // a rod of 13 through a finger of 13 − 7.5
    assert_eq!(pin.steps[0].depth, Depth::Through(5.5));
    assert_eq!(
        step_lines(&pin.steps[0], MILLIMETRES),
        ["4 mm through", "bit 4 mm"]
    );
}

#[test]
fn a_pin_shorter_than_the_slider_is_thick_stands_in_a_blind_hole() {
    let mut design = Design::default();
    design.dials[0].pin.height = 9.0;
    // 9 less the 7.5 that stand free: it was told of a pin as long as its hole is deep, before pins stood free
    assert_eq!(
        hole(&design, HoleKind::Pin(0)).steps[0].depth,
        Depth::Blind(1.5)
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
    // a No. 4 has a shank of 0.112 in, which was rounded to 2.84
    let needed = 0.112 * 25.4 + 2.0 * 2.0;
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
fn the_finger_knobs_slot_stops_the_shank_at_both_ends_and_never_leads_it() {
    let found = holes(&few_bits());
    let slot = &found.slots[0];
    assert_eq!(slot.kind, SlotKind::FingerKnob);
    assert_eq!(slot.kind.name(), "finger knob slot");
    assert_eq!(
        (slot.from, slot.to),
        (Point::new(0.0, 29.7), Point::new(0.0, 39.3))
    );
    // shank 8 and 0.7 on each side: play 0.1, places of pin and bore 0.25 each, half of 0.2; its ends, 0.7 further in,
    // stop the shank at 29 and at 29 + 11. It was as wide as shank and play, and led the slider beside the strips.
    assert!((slot.width - 9.4).abs() < 1e-9 && slot.bit.owned == Some(10.0));
    // 5 − √(5² − 1.6²)
    assert!(slot.row.count == 4 && (slot.row.pitch - 3.2).abs() < 1e-9);
    assert!(
        (slot.row.cusp - 0.262_912).abs() < 1e-5,
        "{}",
        slot.row.cusp
    );
    let centres: Vec<f64> = slot.centres().iter().map(|centre| centre.y).collect();
    for (found, wanted) in centres.iter().zip([29.7, 32.9, 36.1, 39.3]) {
        assert!((found - wanted).abs() < 1e-9);
    }
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
    assert!(far(Feature::FingerKnobSlot, 0.6), "{notes:?}");
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
        // two bores, two pins, the guide's four
        assert_eq!(found.holes.len(), 8, "{bad}");
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
            Feature::ShankSocket,
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
