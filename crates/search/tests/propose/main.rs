//! Proposals: always proven, within what was wished, and never beaten by designs drawn at random.
//!
//! A few lids by default; three hundred where `LATCHWRIGHT_HUNT` is set; where it is a list such as
//! `LATCHWRIGHT_HUNT=29,42`, those alone.

mod anywhere;
mod conflict;
mod laws;
mod nothing;
mod random;

use std::ops::ControlFlow;

use latchwright_model::{Climate, Design, Grain, Material, Sawn, Season, Units};
use latchwright_proof::prove;
use latchwright_search::propose::{
    DialWish, Kind, Marks, Outcome, Proposal, Wishes, propose, unmet,
};
use rand::RngExt;
use rand::SeedableRng;
use rand::seq::IndexedRandom;
use rand_chacha::ChaCha8Rng;

/// Whether more is looked at than by default.
pub(crate) fn hunted() -> bool {
    std::env::var_os("LATCHWRIGHT_HUNT").is_some()
}

/// Lids and workmanships that are looked at.
pub(crate) fn lids() -> u64 {
    if hunted() { 300 } else { 6 }
}

/// The numbers named for a hunt, else those below `count`.
pub(crate) fn numbers(count: u64) -> Vec<u64> {
    let named = std::env::var("LATCHWRIGHT_HUNT").unwrap_or_default();
    let named: Vec<u64> = named
        .split(',')
        .filter_map(|one| one.parse().ok())
        .collect();
    if named.len() > 1 {
        named
    } else {
        (0..count).collect()
    }
}

/// One of a few.
pub(crate) fn one_of<T: Copy>(rng: &mut ChaCha8Rng, all: &[T]) -> T {
    *all.choose(rng).expect("there are some")
}

/// What some maker might wish for.
pub(crate) fn wishes(number: u64) -> Wishes {
    let mut rng = ChaCha8Rng::seed_from_u64(number);
    let mut base = Design::default();
    let haste: f64 = rng.random_range(0.4..1.3);
    let work = &mut base.workmanship;
    for error in [
        &mut work.pin_place,
        &mut work.bore_place,
        &mut work.keeper_place,
        &mut work.print,
        &mut work.film_spread,
        &mut work.reading,
    ] {
        *error *= haste * rng.random_range(0.6..1.4);
    }
    if rng.random_ratio(1, 3) {
        base.units = Units::Inch;
    }
    let woods = ["white oak", "walnut", "teak", "eastern white pine"];
    one_of(&mut rng, &woods).clone_into(&mut base.plate.wood);
    base.plate.sawn = if rng.random() {
        Sawn::Flat
    } else {
        Sawn::Quarter
    };
    base.plate.grain = if rng.random() {
        Grain::AlongX
    } else {
        Grain::AlongY
    };
    base.slider.material = match rng.random_range(0..4) {
        0 => Material::Printed,
        1 => Material::Plywood,
        _ => Material::Wood {
            species: base.plate.wood.clone(),
            sawn: base.plate.sawn,
            grain: base.plate.grain,
        },
    };
    if rng.random_ratio(1, 4) {
        base.season = Season::still(base.season.built);
    } else {
        base.season.dampest = Climate {
            celsius: 24.0,
            humidity: rng.random_range(50.0..75.0),
        };
    }
    let mut wishes = Wishes::of(base).with_lid(
        rng.random_range(140.0..420.0_f64).round(),
        rng.random_range(90.0..320.0_f64).round(),
    );
    let dials = rng.random_range(1..=6);
    wishes.dials = (0..dials)
        .map(|_| {
            let marks = rng.random_range(3..=16);
            if rng.random_ratio(1, 4) {
                DialWish::words((0..marks).map(|word| format!("word {word}")).collect())
            } else {
                DialWish::numbered(marks)
            }
        })
        .collect();
    wishes.pins = vec![3.0, 4.0, 5.0, 6.0, 8.0];
    wishes
}

pub(crate) fn proposals(wishes: &Wishes) -> Option<Vec<Proposal>> {
    match propose(wishes, &mut |_| ControlFlow::Continue(())) {
        Outcome::Found(found) => Some(found),
        _ => None,
    }
}

/// Every proposal of the random wishes, with what was wished.
pub(crate) fn each(mut look: impl FnMut(u64, &Wishes, &[Proposal])) {
    let mut found = 0;
    let numbers = numbers(lids());
    for &number in &numbers {
        let wishes = wishes(number);
        if let Some(proposals) = proposals(&wishes) {
            found += 1;
            look(number, &wishes, &proposals);
        }
    }
    println!("{found} of {} lids have a latch", numbers.len());
    assert!(found * 2 > numbers.len(), "only {found}");
}

#[test]
fn every_proposal_is_proven_and_keeps_to_the_wishes() {
    each(|number, wishes, proposals| {
        for proposal in proposals {
            let kind = proposal.kind;
            let proof = prove(&proposal.design);
            assert!(proof.proven, "{number} {kind:?}");
            assert_eq!(proof, proposal.proof);
            assert_eq!(proof.settings.locks, proof.settings.total - 1);
            let unmet = unmet(wishes, &proposal.design);
            assert!(unmet.is_empty(), "{number} {kind:?}: {unmet:?}");
        }
        let of = |kind| proposals.iter().find(|proposal| proposal.kind == kind);
        let roomiest = of(Kind::Roomiest).unwrap();
        for other in proposals {
            assert!(
                random::eased_room(other.room_to_spare) <= roomiest.room_to_spare,
                "{number} {:?}",
                other.kind
            );
        }
        let mut dials = wishes.dials.iter();
        let free = dials.any(|dial| matches!(dial.marks, Marks::AtLeast(_)));
        let most = of(Kind::MostSettings).map(|most| most.settings);
        assert_eq!(most.is_some(), free, "{number}");
        assert!(most.is_none_or(|most| most >= roomiest.settings));
        assert!(of(Kind::Smallest).unwrap().area <= roomiest.area);
    });
}
