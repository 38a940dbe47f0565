//! A latch was called proven whose finger knob ran into the knob of the middle dial before the slider was
//! back: knobs were held against each other, but never against the finger knob, which goes with the
//! slider over the plate. The search for proposals, which likes a dial near the front, found it.

use std::ops::ControlFlow;

use latchwright_model::Design;
use latchwright_proof::CheckKind;
use latchwright_proof::prove;
use latchwright_search::propose::{DialWish, Outcome, Wishes, propose};

/// The least room between the finger knob and any dial's knob on the slider's whole way, mm, by looking
/// at many places of it; nothing is off.
fn room_on_the_way(design: &Design) -> f64 {
    let slider = &design.slider;
    let mut least = f64::INFINITY;
    for step in 0..=400 {
        let y = slider.guide_at.1 + slider.travel * f64::from(step) / 400.0;
        for dial in &design.dials {
            let (x, dial_y) = dial.centre;
            let apart = (x - slider.pull_at).hypot(dial_y - y);
            let radii = f64::midpoint(slider.finger_knob(), dial.knob.diameter);
            least = least.min(apart - radii);
        }
    }
    least
}

#[test]
fn a_finger_knob_that_meets_a_knob_on_its_way_is_not_proven() {
    let mut design = Design::default();
    assert!(prove(&design).proven && room_on_the_way(&design) > 0.0);
    // 11 mm of travel, and 9 mm of room when shut
    design.slider.guide_at.1 = 68.0;
    assert!(room_on_the_way(&design) < 0.0);
    let proof = prove(&design);
    assert!(!proof.proven);
    let check = proof
        .checks
        .iter()
        .find(|check| check.kind == CheckKind::FingerKnobWay);
    assert!(check.expect("it is made").margin < 0.0);
}

#[test]
fn no_proposal_has_a_finger_knob_that_meets_a_knob() {
    for (width, depth, dials) in [(220.0, 140.0, 3), (260.0, 120.0, 5), (300.0, 180.0, 4)] {
        let mut wishes = Wishes::of(Design::default()).with_lid(width, depth);
        wishes.dials = vec![DialWish::numbered(8); dials];
        let Outcome::Found(found) = propose(&wishes, &mut |_| ControlFlow::Continue(())) else {
            panic!("{width} × {depth} has room for {dials} dials");
        };
        assert!(!found.is_empty(), "{width} × {depth}");
        for proposal in found {
            let room = room_on_the_way(&proposal.design);
            assert!(room >= 2.0, "{width} × {depth}, {dials} dials: {room}");
        }
    }
}
