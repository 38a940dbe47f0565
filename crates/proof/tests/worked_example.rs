//! A worked example, to first order and ± 0.005, and the full proof of the
//! same latch.

#[path = "../../../tests/src/thin_latch.rs"]
mod thin_latch;

use latchwright_geometry::trig;
use latchwright_model::slot::slot_turn_deg;
use latchwright_model::{Design, Season};
use latchwright_proof::CheckKind;
use latchwright_proof::bounds::{DialBounds, SliderBounds, Terms};
use latchwright_proof::dial_judge::DialJudge;
use latchwright_proof::season::Drift;
use latchwright_proof::{CheckVerdict, Verdict, prove};
use thin_latch::thin;

/// Three dials of eight (or another number of) marks, with the page's guide; no season.
fn example(positions: u32) -> Design {
    let mut design = thin();
    (design.slider.guide_length, design.slider.guide_play) = (60.0, 0.25);
    design.slider.guide_at = (0.0, 45.0);
    design.season = Season::still(design.season.built);
    for dial in &mut design.dials {
        dial.positions = positions;
    }
    design
}

fn bounds(design: &Design, dial: usize, terms: Terms) -> (SliderBounds, DialBounds) {
    let drift = Drift::of(design).expect("a wood of the table");
    let slider = SliderBounds::of(design, &drift, terms);
    (
        slider,
        DialBounds::of(design, &design.dials[dial], &slider, &drift, terms),
    )
}

fn close(found: f64, expected: f64, what: &str) {
    assert!(
        (found - expected).abs() <= 0.005,
        "{what}: {found} instead of {expected}"
    );
}

#[test]
fn first_order_sums_are_those_of_the_page() {
    let design = example(8);
    for (dial, at_rest, hold) in [(0, 0.592, 0.504), (1, 1.050, 0.963), (2, 0.592, 0.504)] {
        let (slider, sums) = bounds(&design, dial, Terms::FirstOrder);
        close(trig::degrees(slider.yaw), 0.477, "yaw");
        close(sums.backlash_deg, 2.191, "backlash");
        close(sums.turn_deg, 5.191, "turn");
        close(sums.aside_parts.guide, 0.25, "side");
        close(sums.aside, 0.90, "lateral");
        close(sums.radial, 0.65, "radial");
        close(sums.rest_gap(), at_rest, "at rest");
        let creep = sums.creep(sums.rim.lo + sums.pin.lo).unwrap();
        close(creep, 2.971, "creep");
        close(sums.hold_margin(&design, creep), hold, "hold");
        let judge = DialJudge::new(&design, &design.dials[dial], sums);
        close(
            judge.angle_to_mouth(45.0),
            18.995,
            "angle to the mouth at the next mark",
        );
        let entry = judge.entry_at_digit().unwrap();
        close(entry.enters, 0.458, "enters");
        close(entry.fits, 4.400, "fits");
        // the page leaves the slider's yaw out of the depth; the promise does not
        close(entry.depth + sums.lift, 1.800, "depth");
    }
}

#[test]
fn more_marks_bring_the_mouth_nearer_until_nothing_can_be_promised() {
    for (positions, spare) in [(12, 3.995), (16, -3.505)] {
        let design = example(positions);
        let (_, sums) = bounds(&design, 0, Terms::FirstOrder);
        let judge = DialJudge::new(&design, &design.dials[0], sums);
        close(
            judge.angle_to_mouth(360.0 / f64::from(positions)),
            spare,
            "to the mouth",
        );
    }
    let proof = prove(&example(12));
    assert!(
        proof.dials[0]
            .marks
            .iter()
            .all(|mark| mark.verdict != Verdict::Unsure)
    );
    let proof = prove(&example(16));
    for dial in &proof.dials {
        let digit = dial.digit as usize;
        assert_eq!(
            dial.marks[(digit + 1) % 16].verdict,
            Verdict::Unsure,
            "never locked"
        );
        assert_eq!(
            dial.marks[(digit + 15) % 16].verdict,
            Verdict::Unsure,
            "never locked"
        );
        assert_eq!(dial.marks[(digit + 2) % 16].verdict, Verdict::Holds);
    }
    assert!(!proof.proven);
}

#[test]
fn checks_on_the_whole_latch_have_the_pages_figures() {
    let proof = prove(&example(8));
    let value = |name| {
        proof
            .checks
            .iter()
            .find(|check| check.kind.code() == name)
            .unwrap()
            .value
    };
    close(value("free"), 1.433, "tab free at full travel");
    close(value("key-bite"), 1.165, "key bite");
    let twelve = prove(&example(12));
    let bite = twelve
        .checks
        .iter()
        .find(|check| check.kind == CheckKind::KeyBite)
        .unwrap();
    close(bite.value, 0.865, "key bite of twelve");
}

#[test]
fn second_order_terms_only_ever_take_away() {
    let design = example(8);
    for dial in 0..3 {
        let (_, first) = bounds(&design, dial, Terms::FirstOrder);
        let (_, all) = bounds(&design, dial, Terms::All);
        let hold = |sums: &DialBounds| {
            sums.hold_margin(&design, sums.creep(sums.rim.lo + sums.pin.lo).unwrap())
        };
        assert!(all.rest_gap() < first.rest_gap());
        assert!(hold(&all) < hold(&first) && hold(&first) - hold(&all) < 0.05);
        assert!(all.aside > first.aside && all.aside - first.aside < 0.05);
    }
}

#[test]
fn the_example_is_proven_with_one_opening_of_512() {
    // the page's guide is longer than strips between keeper and bar can be
    let mut still = low();
    still.season = Season::still(still.season.built);
    for design in [still, low()] {
        let proof = prove(&design);
        let failed: Vec<_> = proof
            .checks
            .iter()
            .filter(|check| check.verdict != CheckVerdict::Passes)
            .collect();
        assert!(failed.is_empty(), "{failed:#?}");
        assert!(proof.proven, "{:?}", proof.faults);
        let counts = proof.settings;
        assert_eq!(
            (counts.total, counts.opens, counts.locks, counts.unsure),
            (512, 1, 511, 0)
        );
        assert!(proof.states.rows.iter().all(|row| row.as_meant));
    }
}

#[test]
fn of_the_pages_example_only_the_guide_cannot_be_made() {
    // its strips would run into the slider's bar, and begin under the keeper's rabbet
    let proof = prove(&example(8));
    let failed = proof
        .checks
        .iter()
        .filter(|check| check.verdict != CheckVerdict::Passes);
    let failed: Vec<_> = failed.map(|check| check.kind.code()).collect();
    // and its fingers are as high as its discs
    assert_eq!(
        failed,
        ["strips-to-bar", "disc-to-finger", "strips-to-keeper"]
    );
}

/// The latch of the figures with its fingers below the discs, which changes nothing in the plane.
fn low() -> Design {
    let mut design = thin();
    (design.slider.thickness, design.plate.room) = (13.0, 24.0);
    for dial in &mut design.dials {
        (dial.pin.free, dial.pin.height) = (7.5, 13.0);
    }
    design
}

#[test]
fn a_mark_is_turned_clockwise_from_the_digit() {
    let design = example(8);
    assert_eq!(slot_turn_deg(&design.dials[0], 3, 3), 0.0);
    assert_eq!(slot_turn_deg(&design.dials[0], 3, 4), 45.0);
    assert_eq!(slot_turn_deg(&design.dials[0], 3, 2), -45.0);
    assert_eq!(slot_turn_deg(&design.dials[0], 3, 7), 180.0);
}
