//! Where nothing fits: the reason, the nearest that does, and a search by proofs alone that agrees.

use std::ops::ControlFlow;

use itertools::Itertools;
use latchwright_model::change::{DialSize, Size};
use latchwright_model::{Design, FaultKind};
use latchwright_proof::prove;
use latchwright_search::propose::{
    Demand, DialWish, Kind, Outcome, Unreadable, Wishes, grid_of, propose, unmet,
};
use rand::RngExt;
use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;

use crate::random::neighbour;
use crate::{lids, numbers, proposals, wishes};

/// Wishes that are hard to meet, and some that just can be.
fn hard(number: u64) -> Wishes {
    let mut wishes = wishes(number);
    let mut rng = ChaCha8Rng::seed_from_u64(7_000 + number);
    match number % 4 {
        0 => wishes.dials = vec![DialWish::numbered(rng.random_range(22..40)); 3],
        1 => wishes = wishes.with_lid(150.0, rng.random_range(60.0_f64..80.0).round()),
        2 => {
            wishes.dials = vec![DialWish::numbered(8); 6];
            wishes = wishes.with_lid(145.0, 85.0);
        }
        _ => {
            let work = &mut wishes.base.workmanship;
            for error in [&mut work.pin_place, &mut work.bore_place, &mut work.reading] {
                *error *= 3.0;
            }
        }
    }
    wishes
}

/// How far a design is from being proven and allowed: a search that knows proofs alone.
fn short(wishes: &Wishes, design: &Design) -> f64 {
    let unmet = unmet(wishes, design).len() as f64;
    let proof = prove(design);
    let faults = proof.faults.iter().filter(|fault| fault.is_error());
    let margins = proof.checks.iter().filter(|check| check.margin < 0.0);
    10.0 * unmet
        + 1e4 * faults.count() as f64
        + margins.map(|check| (-check.margin).min(5.0)).sum::<f64>()
}

/// Designs that a climb tries.
const TRIALS: u32 = 300;

/// Climbs from different chances.
fn climbers() -> u64 {
    if lids() > 100 { 3 } else { 1 }
}

/// Climbs from a plain beginning towards a proven design by trial alone.
fn climbs(wishes: &Wishes, seed: u64, start: &Design, trials: u32) -> Option<Design> {
    let mut rng = ChaCha8Rng::seed_from_u64(seed);
    let mut best = start.clone();
    let mut least = short(wishes, &best);
    for _ in 0..trials {
        if least == 0.0 && prove(&best).proven {
            return Some(best);
        }
        let other = neighbour(&mut rng, wishes, &best, Kind::Roomiest);
        let now = short(wishes, &other);
        if now <= least {
            (best, least) = (other, now);
        }
    }
    None
}

/// The same in two rows of larger discs, every second dial nearer to the front.
fn sketch_in_two_rows(wishes: &Wishes) -> Design {
    let grid = grid_of(wishes);
    let on = |value: f64, step: f64| (value / step).floor() * step;
    let mut design = sketch(wishes);
    let dials = design.dials.len() as f64;
    let inside = &design.inside;
    // spacing and radius nearly the same, and half the box for the rows
    let radius = ((inside.width - 4.0) / (1.12 * (dials - 1.0) + 2.0)).min(inside.depth / 7.0);
    let radius = on(radius, grid.size);
    let (apart, nearer) = (on(1.12 * radius, grid.place), on(1.8 * radius, grid.place));
    let back = on(
        design.body.thickness + inside.depth - radius - 1.0,
        grid.place,
    );
    for (number, dial) in design.dials.iter_mut().enumerate() {
        let x = (number as f64 - (dials - 1.0) / 2.0) * apart;
        let y = if number % 2 == 1 { back - nearer } else { back };
        (dial.centre, dial.disc.radius) = ((x, y), radius);
    }
    design
}

/// A latch for these wishes as a maker might first sketch it.
fn sketch(wishes: &Wishes) -> Design {
    let grid = grid_of(wishes);
    let on = |value: f64, step: f64| (value / step).floor() * step;
    let mut design = wishes.base.clone();
    let first = design.dials[0].clone();
    let dials = wishes.dials.len();
    let front = design.body.thickness;
    let apart = on((design.inside.width - 4.0) / dials as f64, grid.place);
    let radius = on(
        (apart / 2.0 - 2.0).min(design.inside.depth / 4.0),
        grid.size,
    );
    let back = on(front + design.inside.depth - radius - 1.0, grid.place);
    design.dials = (0..dials)
        .map(|number| {
            let mut dial = first.clone();
            dial.labels = wishes.dials[number].labels.clone();
            dial.positions = wishes.dials[number].marks.number();
            let seats = (3..24).find(|sides| dial.positions.is_multiple_of(*sides));
            dial.key.sides = seats.unwrap_or(4);
            dial.bore.diameter = 14.3;
            let half = std::f64::consts::PI / f64::from(dial.key.sides);
            dial.key.apothem = on((7.15 - dial.bore.shaft_play - 0.5) * half.cos(), grid.size);
            dial.disc.radius = radius;
            dial.knob.diameter = on(23.5, grid.size);
            dial.pin.diameter = wishes.pins[1];
            dial.pin.gap = on(2.5, grid.size);
            let slot = &mut dial.disc.slots[0];
            (slot.width, slot.depth) = (on(9.0, grid.size), on(9.0, grid.size));
            slot.lead_in = 0.0;
            let x = (number as f64 - (dials as f64 - 1.0) / 2.0) * apart;
            dial.centre = (x, back);
            dial
        })
        .collect();
    design.combination = vec![0; dials];
    design.keeper.edge = on(front + 2.0 + grid.size * 0.999, grid.size);
    design.slider.travel = on(8.5, grid.size);
    design.tab.engagement = on(7.0, grid.size);
    design.tab.width = on(30.0, grid.lid);
    design.keeper.width = design.tab.width + 16.0;
    design
}

#[test]
fn the_climb_finds_a_latch_where_there_is_one() {
    for number in [0, 1, 8] {
        let wishes = wishes(number);
        let start = sketch(&wishes);
        let found = (0..4).find_map(|seed| climbs(&wishes, seed, &start, TRIALS));
        let found = found.unwrap_or_else(|| panic!("{number}: nothing"));
        assert!(unmet(&wishes, &found).is_empty());
    }
}

#[test]
fn the_climb_finds_two_rows_too() {
    let wishes = Wishes::of(Design::default()).with_lid(200.0, 240.0);
    let wishes = Wishes {
        dials: vec![DialWish::numbered(6); 5],
        pins: vec![3.0, 4.0, 5.0],
        ..wishes
    };
    let start = sketch_in_two_rows(&wishes);
    let found = (0..6).find_map(|seed| climbs(&wishes, seed, &start, TRIALS));
    let found = found.expect("a latch in two rows");
    assert!(found.dials[0].centre.1 - found.dials[1].centre.1 > found.dials[0].disc.radius);
}

#[test]
fn where_nothing_fits_a_search_by_proofs_alone_finds_nothing_either() {
    let mut nothing = 0;
    let numbers = numbers(lids());
    for &number in &numbers {
        let wishes = hard(number);
        let starts = [sketch(&wishes), sketch_in_two_rows(&wishes)];
        match propose(&wishes, &mut |_| ControlFlow::Continue(())) {
            Outcome::Nothing(why) => {
                nothing += 1;
                assert!(!why.conflict.is_empty(), "{number}: {:?}", why.wishes);
                assert!(!why.nearest.is_empty(), "{number}: {:?}", why.wishes);
                for near in &why.nearest {
                    assert!(near.proposal.proof.proven && prove(&near.proposal.design).proven);
                }
                for (start, seed) in starts.iter().cartesian_product(0..climbers()) {
                    let found = climbs(&wishes, seed, start, TRIALS);
                    assert!(
                        found.is_none(),
                        "{number}: {:?} but {found:#?}",
                        why.conflict
                    );
                }
                println!("{number}: none, as the climbs say");
            }
            Outcome::Found(_) => {}
            Outcome::Stopped => panic!("nobody stopped it"),
        }
    }
    println!("{nothing} of {} have none", numbers.len());
    assert!(nothing * 4 > numbers.len());
}

#[test]
fn five_dials_with_wide_knobs_need_a_wider_lid_and_the_sentence_says_how_wide() {
    // deep enough that the finger knob has its room before the middle knob
    let mut wishes = Wishes::of(Design::default()).with_lid(180.0, 140.0);
    wishes.dials = vec![DialWish::numbered(8); 5];
    wishes.pinned = (0..5)
        .map(|dial| (Size::Dial(dial, DialSize::KnobDiameter), 40.0))
        .collect();
    let Outcome::Nothing(why) = propose(&wishes, &mut |_| ControlFlow::Continue(())) else {
        panic!("there is no room for five knobs");
    };
    let wide = why
        .nearest
        .iter()
        .find(|near| near.demands == [Demand::Width])
        .unwrap();
    // five knobs of 40 with 15 between them, less what two rows save
    assert!(wide.proposal.design.plate.width > 180.0);
    let narrower = wishes.with_lid(wide.proposal.design.plate.width - 5.0, 140.0);
    assert!(proposals(&narrower).is_none());
}

#[test]
fn wishes_that_are_no_latch_are_refused_with_the_reason() {
    let mut none = Wishes::of(Design::default());
    none.dials.clear();
    let mut odd = Wishes::of(Design::default());
    odd.base.plate.wood = "no such tree".to_owned();
    let mut nan = Wishes::of(Design::default());
    nan.base.workmanship.reading = f64::NAN;
    let mut pinned = Wishes::of(Design::default());
    pinned.pinned = vec![(Size::Dial(7, DialSize::Gap), 2.0)];
    let solid = Wishes::of(Design::default()).with_lid(20.0, 140.0);
    let wood = |kind: &FaultKind| matches!(kind, FaultKind::UnknownWood { .. });
    let number = |kind: &FaultKind| matches!(kind, FaultKind::NotANumber { .. });
    let pin = Size::Dial(7, DialSize::Gap);
    let told = |wishes: &Wishes, meant: &dyn Fn(&Unreadable) -> bool| {
        let Outcome::Nothing(why) = propose(wishes, &mut |_| ControlFlow::Continue(())) else {
            panic!("something was found");
        };
        assert!(why.unreadable.iter().any(meant), "{:?}", why.unreadable);
        assert!(why.conflict.is_empty());
    };
    let fault = |reason: &Unreadable, kind: &dyn Fn(&FaultKind) -> bool| matches!(reason, Unreadable::Fault(fault) if kind(&fault.kind));
    told(&none, &|why| *why == Unreadable::NumberOfDials(0));
    told(&odd, &|why| fault(why, &wood));
    told(&nan, &|why| fault(why, &number));
    told(
        &pinned,
        &|why| matches!(why, Unreadable::CannotPin { size, .. } if *size == pin),
    );
    told(&solid, &|why| {
        matches!(why, Unreadable::NothingInside { wide: true, .. })
    });
}

#[test]
fn more_marks_than_a_dial_can_have_are_told_and_nothing_falls_over() {
    for marks in [361, u32::MAX] {
        let mut wishes = Wishes::of(Design::default());
        wishes.dials = vec![DialWish::numbered(marks)];
        let Outcome::Nothing(why) = propose(&wishes, &mut |_| ControlFlow::Continue(())) else {
            panic!("{marks} marks");
        };
        assert_eq!(why.conflict, [Demand::Marks], "{marks}");
    }
}
