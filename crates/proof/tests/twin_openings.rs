//! Designs that open more often, or less often, than their maker thinks.

#[path = "../../../tests/src/thin_latch.rs"]
mod thin_latch;

use latchwright_model::Slot;
use latchwright_proof::CheckKind;
use latchwright_proof::check::Advice;
use latchwright_proof::check::advice::{Estimate, OtherMarks};
use latchwright_proof::{CheckVerdict, Proof, Verdict, prove};
use thin_latch::thin;

fn verdict_of(proof: &Proof, name: &str) -> CheckVerdict {
    proof
        .checks
        .iter()
        .filter(|check| check.kind.code() == name)
        .map(|check| check.verdict)
        .min()
        .expect("a check of that name")
}

#[test]
fn a_slot_cut_right_through_opens_twice_a_dial() {
    let mut design = thin();
    for dial in &mut design.dials {
        dial.disc.slots[0].width = 13.0;
        dial.disc.slots[0].depth = 2.0 * dial.disc.radius + 1.0;
    }
    let proof = prove(&design);
    assert_eq!(
        proof.settings.opens, 8,
        "two openings on each of three dials"
    );
    assert_eq!(verdict_of(&proof, "twin-openings"), CheckVerdict::Fails);
    assert!(!proof.proven);
}

#[test]
fn a_slot_that_is_cut_through_only_in_some_boxes_is_unsure_on_its_far_side() {
    let mut design = thin();
    design.dials[0].disc.slots[0].width = 13.0;
    for depth in [35.9, 36.0, 36.1] {
        design.dials[0].disc.slots[0].depth = depth;
        let proof = prove(&design);
        let digit = proof.dials[0].digit as usize;
        assert_eq!(
            proof.dials[0].marks[(digit + 4) % 8].verdict,
            Verdict::Unsure,
            "{depth}"
        );
    }
}

#[test]
fn a_second_true_slot_opens_at_the_digit_less_its_mark() {
    let mut design = thin();
    for dial in &mut design.dials {
        dial.positions = 12;
    }
    design.combination = vec![7, 7, 7];
    design.dials[1].disc.slots.push(Slot {
        mark: 5,
        ..Slot::default()
    });
    let proof = prove(&design);
    let passes: Vec<usize> = (0..12)
        .filter(|mark| proof.dials[1].marks[*mark].verdict == Verdict::Passes)
        .collect();
    assert_eq!(passes, [2, 7], "q and q − 5");
    assert_eq!(proof.settings.opens, 2);
    let twin = proof
        .checks
        .iter()
        .find(|check| check.kind == CheckKind::TwinOpenings)
        .unwrap();
    let other = OtherMarks {
        dial: 1,
        own: 7,
        marks: vec![2],
        every: false,
    };
    assert_eq!(
        twin.advice,
        Advice::Change(Estimate::LeaveOutSecondSlot(vec![other]))
    );
}

#[test]
fn a_disc_that_never_reaches_its_pin_is_idle() {
    let mut design = thin();
    design.dials[2].pin.gap = 12.0;
    let proof = prove(&design);
    assert!(
        proof.dials[2]
            .marks
            .iter()
            .all(|mark| mark.verdict == Verdict::Passes)
    );
    assert_eq!(proof.settings.opens, 8);
    let idle = proof
        .checks
        .iter()
        .find(|check| check.kind == CheckKind::IdleDial && check.dial() == Some(2));
    assert_eq!(idle.unwrap().verdict, CheckVerdict::Fails);
}

#[test]
fn a_blind_slot_feels_right_and_holds_all_the_same() {
    let mut design = thin();
    design.tab.engagement = 6.8;
    design.slider.travel = 9.0;
    design.dials[0].disc.slots.push(Slot {
        mark: 4,
        width: 11.0,
        depth: 0.6,
        lead_in: 0.0,
    });
    let proof = prove(&design);
    let digit = proof.dials[0].digit as usize;
    let blind = &proof.dials[0].marks[(digit + 4) % 8];
    assert_eq!(blind.reach.stops_at, latchwright_proof::StopsAt::Floor);
    assert_ne!(blind.verdict, Verdict::Passes);
}

#[test]
fn ten_marks_on_a_square_post_fall_between_its_seats() {
    let mut design = thin();
    design.dials[0].positions = 10;
    let proof = prove(&design);
    assert_eq!(verdict_of(&proof, "key-seats"), CheckVerdict::Fails);
    assert!(!proof.proven);
}
