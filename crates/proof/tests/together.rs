//! Dials that hold together where none of them does alone: counted, listed, and kept by real boxes.

#[path = "../../../tests/src/thin_latch.rs"]
mod thin_latch;

use latchwright_model::Sound;
use latchwright_model::validate::faults;
use latchwright_model::{Design, Season};
use latchwright_proof::built::{BuiltLatch, Moment, Movement};
use latchwright_proof::settings::Settings;
use latchwright_proof::worst::pin_and_disc::travel_to;
use latchwright_proof::{SureStop, Verdict, prove};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use thin_latch::thin;

/// The default latch in still air, of which more tab is asked than either outer dial holds alone:
/// a slider that turns about one of them lifts the far corner of the tab. The middle one has no
/// far corner, and still holds.
fn asked_for_much() -> Design {
    let mut design = thin();
    design.season = Season::still(design.season.built);
    design.tab.required_hold += 0.6;
    design
}

#[test]
fn two_outer_dials_hold_together_what_neither_holds_alone() {
    let design = asked_for_much();
    let proof = prove(&design);
    for (dial, verdict) in [
        (0, Verdict::Unsure),
        (1, Verdict::Holds),
        (2, Verdict::Unsure),
    ] {
        let wrong = (proof.dials[dial].digit as usize + 3) % 8;
        assert_eq!(proof.dials[dial].marks[wrong].verdict, verdict);
        assert_eq!(proof.dials[dial].marks[wrong].stop, Some(SureStop::Rim));
    }
    let [group] = proof.together.groups.as_slice() else {
        panic!("{:?}", proof.together);
    };
    assert_eq!(group.stops, [(0, SureStop::Rim), (2, SureStop::Rim)]);
    assert!(group.margin > 0.0 && group.margin < 0.6, "{group:?}");
    // the middle dial at its digit, both others wrong
    assert_eq!(group.settings, 7 * 7);
    assert_eq!(proof.settings.unsure, 7 + 7);
    assert_eq!(proof.settings.locks, 512 - 1 - 14);
    assert!(!proof.proven, "one outer dial wrong is still unsure");
}

#[test]
fn the_list_agrees_with_the_counts() {
    let proof = prove(&asked_for_much());
    let listed = |filter| {
        let mut walk = Settings::new(&proof.dials, filter).with(&proof.together);
        let mut count = 0_u128;
        while let Some(setting) = walk.next_setting() {
            assert!(filter.is_none_or(|wanted| wanted == setting.verdict));
            count += 1;
        }
        count
    };
    assert_eq!(listed(Some(Verdict::Holds)), proof.settings.locks);
    assert_eq!(listed(Some(Verdict::Unsure)), proof.settings.unsure);
    assert_eq!(listed(Some(Verdict::Passes)), proof.settings.opens);
    assert_eq!(listed(None), proof.settings.total);
}

/// Boxes with everything at its ends, and some in between: both pins on plain rim, the slider where
/// the first of them stops it.
#[test]
fn real_boxes_keep_what_two_dials_promise_together() {
    let design = asked_for_much();
    let margin = prove(&design).together.groups[0].margin;
    let movement = Movement::of(&Sound::of(&design, &faults(&design)).unwrap());
    let work = &design.workmanship;
    let mut rng = ChaCha8Rng::seed_from_u64(5);
    let mut least = f64::INFINITY;
    for round in 0..200_000 {
        let mut off = |most: f64| {
            let share: f64 = rng.random_range(-1.0..=1.0);
            most * if round % 2 == 0 {
                share.signum()
            } else {
                share
            }
        };
        let mut latch = BuiltLatch::nominal(&design);
        (latch.front, latch.back, latch.keeper) = (off(1.0), off(1.0), off(work.keeper_place));
        for dial in &mut latch.dials {
            dial.pin = (off(work.pin_place), off(work.pin_place));
            dial.bore = (off(work.bore_place), off(work.bore_place));
            dial.rim += off(work.print / 2.0 + work.film_spread);
            dial.pin_radius += off(work.print / 2.0 + work.film_spread);
            dial.shaft = (0.0, off(0.15));
        }
        let moment = Moment::grown(&design, &latch, movement.until(latch.air));
        let travel = [0, 2]
            .into_iter()
            .filter_map(|index| travel_to(moment.pin(index)?, latch.dials[index].touches_at()))
            .fold(f64::INFINITY, f64::min);
        least = least.min(moment.held(travel) - design.tab.required_hold);
    }
    assert!(least >= margin, "{least} and {margin}");
    assert!(
        least < margin + 0.4,
        "the promise is near to what boxes do: {least}"
    );
}
