//! Virtual builds against what is known beforehand: nothing off, one number off, a proof, a wrong
//! proof.

#[path = "../../../tests/src/thin_latch.rs"]
mod thin_latch;

use latchwright_model::{Design, Season, Slot, Workmanship};
use latchwright_proof::builds::{BLOCK, BuildFigure, Builds, Plan, Promise, Spread, Trial};
use latchwright_proof::built::{Meets, Moment};
use latchwright_proof::check::Contributor;
use latchwright_proof::{CheckVerdict, Proof, Verdict, prove};
use thin_latch::thin;

fn plan(count: u64) -> Plan {
    Plan {
        count,
        seed: 1,
        spread: Spread::Uniform,
    }
}

fn held_against(design: &Design, proof: &Proof, plan: Plan) -> Builds {
    let trial = Trial::of(design, proof, plan).expect("a design without errors");
    let mut tally = trial.tally();
    for number in 0..trial.blocks() {
        tally.add(&trial.block(number));
    }
    assert_eq!(tally.count(), plan.count);
    trial.summary(&tally)
}

fn builds(design: &Design, plan: Plan) -> Builds {
    held_against(design, &prove(design), plan)
}

/// Nothing of the default design is off, and the air never changes.
fn exact() -> Design {
    let mut design = thin();
    design.workmanship = Workmanship {
        thickness: 0.0,
        pin_place: 0.0,
        bore_place: 0.0,
        keeper_place: 0.0,
        print: 0.0,
        film: 0.0,
        film_spread: 0.0,
        reading: 0.0,
    };
    design.season = Season::still(design.season.built);
    design.slider.guide_play = 0.0;
    for dial in &mut design.dials {
        dial.bore.shaft_play = 0.0;
        dial.key.clearance = 0.0;
    }
    design
}

#[test]
fn with_nothing_off_every_build_is_the_design_itself() {
    let design = exact();
    let builds = builds(&design, plan(BLOCK + 7));
    assert!(builds.all_as_meant());
    assert_eq!(builds.opens.count, BLOCK + 7);
    assert_eq!(builds.margins.len(), 3 * 4 + 3);
    for margin in &builds.margins {
        assert_eq!(margin.sd, 0.0, "{margin:?}");
        let ends = (margin.least, margin.largest, margin.low, margin.high);
        let same = margin.nominal;
        assert_eq!(ends, (same, same, same, same), "{margin:?}");
        assert_eq!(margin.mean, margin.nominal);
        assert!(margin.explained.is_empty());
    }
    let nominal = |figure| {
        let mut margins = builds.margins.iter();
        margins
            .find(|margin| margin.figure == figure)
            .unwrap()
            .nominal
    };
    // gap 2; 9 wide at the mouth and 1.0 of lead-in; depth 9 + gap 2 − travel 8; 6 − 2 − 1.5
    assert!((nominal(BuildFigure::ClearAtRest) - 2.0).abs() < 1e-9);
    assert!((nominal(BuildFigure::Depth) - 3.0).abs() < 1e-9);
    assert!((nominal(BuildFigure::HeldAtRim) - 2.5).abs() < 1e-9);
    assert!((nominal(BuildFigure::Free) - 2.0).abs() < 1e-9);
    assert!((nominal(BuildFigure::HeldAtRest) - 4.5).abs() < 1e-9);
}

#[test]
fn a_proven_design_opens_and_holds_in_every_build() {
    let design = Design::default();
    let proof = prove(&design);
    assert!(proof.proven);
    for spread in [Spread::Uniform, Spread::Normal] {
        let plan = Plan {
            spread,
            ..plan(40_000)
        };
        let builds = held_against(&design, &proof, plan);
        assert!(builds.all_as_meant(), "{spread:?}");
        assert_eq!(builds.contradictions, 0);
        assert!(builds.opens.low > 0.9999 && builds.opens.high == 1.0);
        for margin in &builds.margins {
            assert!(margin.least > 0.0, "{margin:?}");
            if margin.sd == 0.0 {
                // plate and slider of one wood leave the guide its play
                assert_eq!(margin.figure, BuildFigure::GuidePlay);
                continue;
            }
            assert!(margin.least <= margin.low && margin.low < margin.mean);
            assert!(margin.mean < margin.high && margin.high <= margin.largest);
            // no build is off by more than all its numbers at their most, or hardly
            let most = (margin.largest - margin.nominal).max(margin.nominal - margin.least);
            assert!(most < 1.25 * margin.worst, "{margin:?}");
            assert!(margin.sd < margin.rss && margin.rss < margin.worst);
        }
    }
}

#[test]
fn errors_that_keep_to_the_middle_spread_a_margin_less() {
    let design = thin();
    let normal = Plan {
        spread: Spread::Normal,
        ..plan(20_000)
    };
    let pairs = builds(&design, plan(20_000)).margins;
    let others = builds(&design, normal).margins;
    assert!(pairs.len() > 10 && pairs.len() == others.len());
    for (even, middle) in pairs.iter().zip(&others) {
        assert_eq!(even.figure, middle.figure);
        if even.figure != BuildFigure::GuidePlay {
            assert!(middle.sd < even.sd, "{:?}", even.figure);
        }
    }
}

/// Clear at rest is nearly √(x² + y²) with y far the larger: linear in the places along y, so that
/// its variance is Σ a²/3 over what is off by ± a along y.
#[test]
fn shares_of_the_variance_are_those_of_the_closed_formula() {
    let mut design = exact();
    design.workmanship.pin_place = 0.3;
    design.workmanship.bore_place = 0.2;
    design.workmanship.print = 0.2;
    let builds = builds(&design, plan(200_000));
    let margin = builds
        .margins
        .iter()
        .find(|margin| margin.figure == BuildFigure::ClearAtRest && margin.dial == Some(1))
        .unwrap();
    // pin and bore along y; rim and pin by half the print each
    let parts = [
        (Contributor::PinPlace, 0.3 * 0.3),
        (Contributor::BorePlace, 0.2 * 0.2),
        (Contributor::Print, 0.1 * 0.1 + 0.1 * 0.1),
    ];
    let whole: f64 = parts.iter().map(|(_, square)| square).sum();
    assert!(
        (margin.sd - (whole / 3.0).sqrt()).abs() < 2e-3,
        "{margin:?}"
    );
    assert_eq!(margin.explained[0].0, Contributor::PinPlace);
    for (contributor, square) in parts {
        let own = |(whose, _): &&(Contributor, f64)| *whose == contributor;
        let found = margin.explained.iter().find(own).unwrap().1;
        // 16 cells leave 1/256 of a number's own variance inside them
        assert!(
            (found - square / whole).abs() < 0.01,
            "{contributor:?}: {found}"
        );
    }
    // whatever is not off explains nothing, or what chance leaves of it
    for (contributor, share) in &margin.explained {
        let planted = parts.iter().any(|(whose, _)| whose == contributor);
        assert!(planted || *share < 1e-3, "{contributor:?}: {share}");
    }
}

#[test]
fn play_in_the_guide_decides_the_outer_dials_more_than_the_middle_one() {
    let builds = builds(&thin(), plan(40_000));
    let guide = |dial| {
        let mut margins = builds.margins.iter();
        let margin = margins
            .find(|margin| margin.figure == BuildFigure::ClearAtRest && margin.dial == Some(dial))
            .unwrap();
        let mut parts = margin.explained.iter();
        let found = parts.find(|(whose, _)| *whose == Contributor::GuidePlay);
        found.map_or(0.0, |(_, share)| *share)
    };
    assert!(
        guide(0) > 0.2 && guide(2) > 0.2,
        "{} {}",
        guide(0),
        guide(2)
    );
    assert!(guide(1) < 0.05, "{}", guide(1));
}

/// A latch that is wrong on purpose, with a proof that says it is right.
fn contradicted(change: impl FnOnce(&mut Design), name: &str) -> (Design, Builds) {
    let mut proof = prove(&thin());
    let mut design = thin();
    change(&mut design);
    proof.checks.retain(|check| check.kind.code() == name);
    if !proof.checks.is_empty() {
        // only the check is looked at
        let marks = proof.dials.iter_mut().flat_map(|dial| &mut dial.marks);
        marks.for_each(|mark| mark.verdict = Verdict::Unsure);
    }
    assert!(
        proof
            .checks
            .iter()
            .all(|check| check.verdict == CheckVerdict::Passes)
    );
    let builds = held_against(&design, &proof, plan(3000));
    (design, builds)
}

#[test]
fn a_build_that_breaks_a_promise_is_kept_with_all_its_numbers() {
    type Case = (&'static str, fn(&mut Design), Promise);
    let cases: [Case; 5] = [
        (
            "none",
            |d| d.dials[1].disc.slots[0].width = 4.4,
            Promise::Passes,
        ),
        ("none", |d| d.tab.required_hold = 3.4, Promise::Holds),
        ("at-rest", |d| d.dials[0].pin.gap = 0.9, Promise::AtRest),
        ("free", |d| d.tab.engagement = 7.6, Promise::Free),
        (
            "held-at-rest",
            |d| d.tab.required_hold = 5.6,
            Promise::HeldAtRest,
        ),
    ];
    for (name, change, promise) in cases {
        let (design, builds) = contradicted(change, name);
        assert!(builds.contradictions > 0, "{promise:?}");
        assert!(builds.first_contradictions.len() <= 5);
        let mut kept = builds.first_contradictions.iter();
        let found = kept.find(|found| found.promise == promise).unwrap();
        // built again from its numbers it breaks the same promise by the same figure
        let moment = Moment::of(&design, &found.latch).unwrap();
        let meeting = found.dial.map(|dial| moment.meeting(dial).unwrap());
        let meets = |mark: Option<u32>| meeting.as_ref().unwrap().at_mark(mark.unwrap());
        let again = match promise {
            Promise::Passes => match meets(found.mark) {
                Meets::Mouth { entry, .. } => entry.margin(),
                Meets::Rim { beside, .. } => -beside,
                Meets::Nothing => f64::INFINITY,
            },
            Promise::Holds => match meets(found.mark) {
                Meets::Rim { travel, .. } => moment.held(travel) - design.tab.required_hold,
                other => panic!("{other:?}"),
            },
            Promise::AtRest => meeting.as_ref().unwrap().clear_at_rest(),
            Promise::Free => moment.out_at_full_travel(),
            Promise::HeldAtRest => moment.held_at_rest(),
            Promise::Captive | Promise::Guide => unreachable!(),
        };
        assert!(found.figure < 0.0);
        assert!(
            (again - found.figure).abs() < 1e-9,
            "{promise:?}: {again} {}",
            found.figure
        );
        assert!(found.build < 3000 && found.seed == 1);
    }
}

#[test]
fn a_promise_about_the_wrong_mark_is_found_out() {
    let design = thin();
    let mut proof = prove(&design);
    proof.dials[2].marks[5].verdict = Verdict::Passes;
    proof.dials[0].marks[3].verdict = Verdict::Holds;
    let builds = held_against(&design, &proof, plan(100));
    assert_eq!(builds.contradictions, 200);
    let kept: Vec<_> = builds
        .first_contradictions
        .iter()
        .map(|found| (found.promise, found.dial, found.mark))
        .collect();
    assert!(
        kept.contains(&(Promise::Passes, Some(2), Some(5))),
        "{kept:?}"
    );
    assert!(
        kept.contains(&(Promise::Holds, Some(0), Some(3))),
        "{kept:?}"
    );
}

#[test]
fn a_loose_latch_falls_short_of_a_hundred_per_cent() {
    let mut design = thin();
    design.workmanship.reading = 14.0;
    let builds = builds(&design, plan(20_000));
    let opens = builds.opens.value();
    assert!(opens > 0.05 && opens < 0.9, "{opens}");
    assert!(builds.opens.low < opens && opens < builds.opens.high);
    assert_eq!(builds.contradictions, 0);
}

#[test]
fn a_second_slot_that_opens_is_a_wrong_setting_that_does_not_hold() {
    let mut design = thin();
    let twin = Slot {
        mark: 4,
        ..design.dials[0].disc.slots[0].clone()
    };
    design.dials[0].disc.slots.push(twin);
    let builds = builds(&design, plan(2000));
    assert_eq!((builds.opens.hits, builds.holds.hits), (2000, 0));
    assert_eq!(builds.contradictions, 0);
}

#[test]
fn a_block_is_the_same_whenever_it_is_drawn() {
    let design = thin();
    let proof = prove(&design);
    let long = Trial::of(&design, &proof, plan(3 * BLOCK + 10)).unwrap();
    assert_eq!(long.blocks(), 4);
    let third = long.block(2);
    assert_eq!(long.block(3).count(), 10);
    assert_eq!(third, long.block(2));
    let other = Trial::of(
        &design,
        &proof,
        Plan {
            seed: 2,
            ..long.plan()
        },
    )
    .unwrap();
    assert_ne!(third, other.block(2));
}

#[test]
fn a_design_with_an_error_is_not_built() {
    let mut design = thin();
    design.dials[0].disc.radius = f64::NAN;
    assert!(Trial::of(&design, &prove(&design), plan(10)).is_none());
}
