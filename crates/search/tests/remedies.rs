//! A remedy is a promise: made, it gives the margin that was told, and nothing less would do.

use core::ops::ControlFlow;

use latchwright_model::change::{Change, LatchSize, Size, Step};
use latchwright_model::{Design, Material, Slot};
use latchwright_model::{Fault, Unit};
use latchwright_proof::check::of_kind;
use latchwright_proof::{Check, CheckVerdict, Proof, prove};
use latchwright_search::remedy;
use latchwright_search::remedy::Remedy;
use rand::RngExt;
use rand::SeedableRng;
use rand::seq::IndexedRandom;
use rand_chacha::ChaCha8Rng;

fn found(design: &Design, proof: &Proof, check: &Check) -> Option<Remedy> {
    remedy::find(design, proof, check, &mut |_| ControlFlow::Continue(()))
}

/// The usual box with one to three of its sizes spoilt, some of them badly.
fn spoilt(number: u64) -> Design {
    let mut rng = ChaCha8Rng::seed_from_u64(number);
    let mut design = Design::default();
    let sizes = Size::all(&design);
    for _ in 0..rng.random_range(1..=3) {
        let size = *sizes.choose(&mut rng).expect("a design has sizes");
        let was = size.get(&design).expect("one of its sizes");
        let now = match size.unit() {
            Unit::Count => f64::from(rng.random_range(2..=16_u32)),
            _ => was * rng.random_range(0.5..1.7) + rng.random_range(-0.5..0.5),
        };
        assert!(size.set(&mut design, now));
    }
    design
}

fn failing(proof: &Proof) -> impl Iterator<Item = &Check> {
    let checks = proof.checks.iter();
    checks.filter(|check| check.verdict != CheckVerdict::Passes)
}

fn sound(proof: &Proof) -> bool {
    !proof.faults.iter().any(Fault::is_error)
}

/// Every failing check of the first spoilt designs that has a remedy, with the design.
fn mended(designs: u64, mut look: impl FnMut(&Design, &Proof, &Check, &Remedy)) {
    let (mut all, mut mended) = (0, 0);
    for number in 0..designs {
        let design = spoilt(number);
        let proof = prove(&design);
        for check in failing(&proof).filter(|_| sound(&proof)) {
            all += 1;
            if let Some(remedy) = found(&design, &proof, check) {
                mended += 1;
                look(&design, &proof, check, &remedy);
            }
        }
    }
    assert!(all > designs / 4, "only {all} checks failed");
    assert!(mended * 10 >= all * 9, "{mended} remedies for {all} checks");
}

#[test]
fn a_remedy_that_is_made_gives_the_margin_that_was_told() {
    mended(60, |design, before, check, remedy| {
        let after = prove(&remedy.change.apply(design));
        let mended = of_kind(&after, check.kind, check.dial()).unwrap();
        assert_eq!(mended.margin.to_bits(), remedy.margin.to_bits());
        assert!(mended.margin >= 0.0 && mended.verdict == CheckVerdict::Passes);
        assert!(sound(&after));
        assert_eq!(after.proven, remedy.proven);
        let newly = failing(&after).filter(|now| {
            let was = of_kind(before, now.kind, now.dial());
            was.is_none_or(|was| was.verdict == CheckVerdict::Passes)
        });
        assert!(newly.eq(&remedy.also), "{:?}", check.kind);
    });
}

#[test]
fn one_step_less_would_not_do() {
    let mut looked_at = 0;
    mended(40, |design, _, check, remedy| {
        let [Step::Resize { size, from, to }] = remedy.change.steps.as_slice() else {
            return;
        };
        if check.unit == Unit::Count || size.unit() == Unit::Count {
            return;
        }
        let guide_length = *size == Size::Latch(LatchSize::GuideLength);
        let step = if guide_length { 1.0 } else { 0.05 };
        let less = to - step * (to - from).signum();
        if (less - from) * (to - from) <= 0.0 {
            return;
        }
        looked_at += 1;
        let less = Change::of(design, *size, less).unwrap().apply(design);
        let after = prove(&less);
        // a remedy does not count on dials that only hold together
        if !after.together.groups.is_empty() {
            return;
        }
        let still = of_kind(&after, check.kind, check.dial());
        assert!(
            still.is_none_or(|still| still.verdict != CheckVerdict::Passes),
            "{:?}: {size:?} from {from} to {to}, where {less:?} would do",
            check.kind,
            less = size.get(&less)
        );
    });
    assert!(looked_at > 8, "only {looked_at}");
}

#[test]
fn the_same_check_has_the_same_remedy_every_time() {
    mended(20, |design, proof, check, remedy| {
        assert_eq!(found(design, proof, check).as_ref(), Some(remedy));
    });
}

#[test]
fn a_check_that_passes_and_a_design_with_faults_have_no_remedy() {
    let design = Design::default();
    let proof = prove(&design);
    for check in &proof.checks {
        assert_eq!(found(&design, &proof, check), None);
    }
    let mut faulty = Design::default();
    faulty.dials[0].pin.gap = 0.1;
    faulty.combination.pop();
    let proof = prove(&faulty);
    assert!(failing(&proof).count() > 0);
    for check in failing(&proof) {
        assert_eq!(found(&faulty, &proof, check), None);
    }
}

#[test]
fn every_kind_of_check_that_fails_can_be_mended_by_itself() {
    type Spoil = fn(&mut Design);
    let spoilt: [(&str, Spoil); 29] = [
        ("at-rest", |d| d.dials[1].pin.gap = 1.2),
        ("lets-in", |d| d.dials[1].disc.slots[0].depth = 9.0),
        ("captive", |d| d.dials[1].pin.gap = 6.5),
        ("stays-held", |d| d.tab.engagement = 6.0),
        ("free", |d| d.tab.engagement = 10.6),
        ("held-at-rest", |d| d.tab.engagement = 1.6),
        ("guide", |d| {
            d.slider.material = Material::Printed;
            d.slider.guide_play = 0.0;
        }),
        ("disc-to-disc", |d| d.dials[1].centre.0 = 20.0),
        ("disc-to-pin", |d| {
            d.dials[1].centre = (40.0, 131.0);
            d.dials[1].knob.diameter = 24.0;
        }),
        ("knob-to-knob", |d| d.dials[1].knob.diameter = 46.0),
        ("bore-to-bore", |d| d.dials[1].centre.0 = 38.0),
        ("bore-to-edge", |d| d.dials[2].centre.0 = 100.0),
        ("bore-to-guide-slot", |d| d.dials[1].centre.1 = 53.0),
        ("finger-knob-room", |d| d.slider.guide_at.1 = 64.0),
        ("finger-knob-way", |d| d.dials[1].centre.1 = 55.0),
        ("disc-to-finger", |d| d.dials[1].pin.free = 6.0),
        ("finger-to-finger", |d| d.dials[1].centre = (55.0, 161.0)),
        ("bar-room", |d| d.dials[1].centre.1 = 51.0),
        ("finger-knob-seat", |d| d.slider.pull_at = 17.0),
        ("guide-slot-to-keeper", |d| d.slider.guide_at.1 = 22.0),
        ("strips-to-bar", |d| d.slider.guide_at.1 = 33.0),
        ("strips-to-keeper", |d| d.slider.guide_at.1 = 27.0),
        ("swings-clear", |d| d.tab.engagement = 10.3),
        ("slot-to-star", |d| d.dials[2].disc.slots[0].depth = 14.0),
        ("key-seats", |d| d.dials[2].key.sides = 5),
        ("key-bite", |d| d.dials[2].key.clearance = 1.4),
        ("idle-dial", |d| d.dials[0].pin.gap = 12.0),
        ("twin-openings", |d| {
            d.dials[0].disc.slots.push(true_slot_at(4));
        }),
        ("undecided", |d| d.dials[0].positions = 36),
    ];
    for (name, spoil) in spoilt {
        let mut design = Design::default();
        spoil(&mut design);
        let proof = prove(&design);
        assert!(sound(&proof), "{name}: {:?}", proof.faults);
        let failed: Vec<_> = failing(&proof).map(|check| check.kind.code()).collect();
        let check = failing(&proof).find(|check| check.kind.code() == name);
        let check = check.unwrap_or_else(|| panic!("{name} passes; {failed:?} fail"));
        let remedy = found(&design, &proof, check);
        let remedy = remedy.unwrap_or_else(|| panic!("{name} has no remedy"));
        let after = prove(&remedy.change.apply(&design));
        let mended = of_kind(&after, check.kind, check.dial()).unwrap();
        assert_eq!(mended.margin.to_bits(), remedy.margin.to_bits());
    }
}

fn true_slot_at(mark: i64) -> Slot {
    Slot {
        mark,
        ..Slot::default()
    }
}

#[test]
fn all_remedies_are_those_of_each_check() {
    let mut few = Design::default();
    few.tab.engagement = 5.0;
    let proof = prove(&few);
    let remedies = remedy::all(&few, &proof, &mut |_| ControlFlow::Continue(()));
    assert_eq!(remedies.len(), proof.checks.len());
    for (check, remedy) in proof.checks.iter().zip(&remedies).take(3) {
        assert_eq!(&found(&few, &proof, check), remedy);
    }
}
