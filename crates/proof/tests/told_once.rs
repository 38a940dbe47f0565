//! Nothing is told twice: a proof has each check once for the latch, the dial or the pair that it is about.

use std::collections::BTreeSet;

use latchwright_model::change::Size;
use latchwright_model::{Design, Material, Slot, Unit};
use latchwright_proof::check::{About, CheckKind, of_kind};
use latchwright_proof::{Proof, prove};
use latchwright_session::demos::DEMOS;
use rand::RngExt;
use rand::SeedableRng;
use rand::seq::IndexedRandom;
use rand_chacha::ChaCha8Rng;

/// The kinds of a proof that tells each of its checks once.
fn told_once(name: &str, proof: &Proof) -> BTreeSet<CheckKind> {
    let mut told = BTreeSet::new();
    for check in &proof.checks {
        // two dials are the same pair whichever of them comes first
        let about = match check.about {
            About::Pair(one, other) => About::Pair(one.min(other), one.max(other)),
            about @ (About::Latch | About::Dial(_)) => about,
        };
        assert!(
            told.insert((check.kind, about)),
            "{name}: {:?} of {about:?} twice",
            check.kind
        );
        // who asks for it by its kind and dial is given no other
        let asked = of_kind(proof, check.kind, check.dial()).expect("it is there");
        assert!(
            core::ptr::eq(asked, check),
            "{name}: {:?} of {:?} hides that of {about:?}",
            check.kind,
            asked.about
        );
    }
    let tightest = |kind: &CheckKind| told.iter().filter(|(other, _)| other == kind).count();
    let kinds: BTreeSet<CheckKind> = told.iter().map(|(kind, _)| *kind).collect();
    for kind in kinds.iter().filter(|kind| kind.told_once()) {
        assert_eq!(tightest(kind), 1, "{name}: {kind:?}");
    }
    kinds
}

/// The usual box with more or fewer dials somewhere on its lid, some with another slot, and a few sizes off.
fn random(number: u64) -> Design {
    let mut rng = ChaCha8Rng::seed_from_u64(number);
    let mut design = Design::default();
    let first = design.dials[0].clone();
    let dials = rng.random_range(1..=6);
    design.dials.resize(dials, first);
    design.combination.resize(dials, 1);
    for dial in &mut design.dials {
        if rng.random() {
            dial.centre.0 += rng.random_range(-80.0..80.0);
            dial.centre.1 += rng.random_range(-20.0..20.0);
        }
        if rng.random_range(0..3) == 0 {
            dial.disc.slots.push(Slot {
                mark: rng.random_range(0..8),
                depth: rng.random_range(1.0..14.0),
                ..Slot::default()
            });
        }
    }
    if rng.random() {
        design.slider.material = Material::Printed;
    }
    let sizes = Size::all(&design);
    for _ in 0..rng.random_range(0..4) {
        let size = *sizes.choose(&mut rng).expect("a design has sizes");
        let was = size.get(&design).expect("one of its sizes");
        let now = match size.unit() {
            Unit::Count => f64::from(rng.random_range(1..=24_u32)),
            _ => was * rng.random_range(0.3..2.0) + rng.random_range(-0.5..0.5),
        };
        size.set(&mut design, now);
    }
    design
}

#[test]
fn no_check_of_a_demo_is_told_twice() {
    for demo in DEMOS {
        let design = demo.design().expect("a demo can be read");
        told_once(demo.name, &prove(&design));
    }
}

#[test]
fn no_check_of_any_design_is_told_twice() {
    let mut kinds = BTreeSet::new();
    for number in 0..300 {
        kinds.extend(told_once(
            &format!("design {number}"),
            &prove(&random(number)),
        ));
    }
    // what the search alone weighs is part of another check and never told
    let weighed = [
        CheckKind::Enters,
        CheckKind::Fits,
        CheckKind::Deep,
        CheckKind::SlotWall,
        CheckKind::NextMark,
    ];
    let mut never = CheckKind::ALL.iter().filter(|kind| !kinds.contains(kind));
    assert!(never.all(|kind| weighed.contains(kind)), "{kinds:?}");
}
