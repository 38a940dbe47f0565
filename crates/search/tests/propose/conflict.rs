//! Where nothing fits: each demand that is blamed is needed for the blame, and the nearest really can
//! be had. Demands are let go by rules of this file's own.

use std::ops::ControlFlow;

use latchwright_model::change::{DialSize, LatchSize, Size, SlotSize};
use latchwright_model::{Design, Labels, Season};
use latchwright_proof::prove;
use latchwright_search::propose::{
    Demand, DialWish, Marks, Nothing, Outcome, ROOMIEST, Wishes, propose, unmet,
};

use crate::lids;

/// Dials of as many marks on a lid, with a few pins at hand.
fn on_lid(lid: (f64, f64), dials: usize, marks: u32) -> Wishes {
    let mut wishes = Wishes::of(Design::default()).with_lid(lid.0, lid.1);
    wishes.dials = vec![DialWish::numbered(marks); dials];
    wishes.pins = vec![3.0, 4.0, 5.0, 6.0];
    wishes
}

/// The usual lid and dials, with something about them changed.
fn usual(change: impl Fn(&mut Wishes)) -> Wishes {
    let mut wishes = on_lid((220.0, 140.0), 3, 8);
    change(&mut wishes);
    wishes
}

/// Wishes of which none can be met, by what is wrong with them.
fn hopeless() -> Vec<(&'static str, Wishes)> {
    vec![
        (
            "a tiny lid for many large dials",
            on_lid((120.0, 100.0), 5, 36),
        ),
        ("large dials", on_lid((220.0, 140.0), 5, 36)),
        ("twelve dials", on_lid((200.0, 120.0), 12, 20)),
        ("a lid like a matchbox", on_lid((60.0, 50.0), 1, 3)),
        ("very many marks", on_lid((220.0, 140.0), 1, 100)),
        (
            "a thin plate",
            usual(|wishes| wishes.base.plate.thickness = 4.0),
        ),
        (
            "no room below",
            usual(|wishes| wishes.base.plate.room = 5.0),
        ),
        (
            "bits too large",
            usual(|wishes| wishes.base.bench.bits = vec![30.0, 35.0]),
        ),
        (
            "pins without a bit",
            usual(|wishes| wishes.pins = vec![7.3]),
        ),
        ("thin pins", usual(|wishes| wishes.pins = vec![1.0])),
        (
            "a steel pin and a small child",
            usual(|wishes| wishes.base.card.youngest = 2),
        ),
        (
            "a hold beyond the box",
            usual(|wishes| wishes.base.tab.required_hold = 20.0),
        ),
        (
            "a pull of many people",
            usual(|wishes| wishes.base.slider.pull = 900.0),
        ),
    ]
}

/// More of them.
fn hopeless_too() -> Vec<(&'static str, Wishes)> {
    let held = |size, value| usual(|wishes| wishes.pinned = vec![(size, value)]);
    vec![
        (
            "a tiny printer",
            // discs of 24 mm are large enough for three dials of 8 marks
            usual(|wishes| wishes.base.bench.printer.bed = (20.0, 20.0)),
        ),
        (
            "long hinges",
            usual(|wishes| wishes.base.body.hinge.length = 100.0),
        ),
        (
            "pointers read to 25°",
            usual(|wishes| wishes.base.workmanship.reading = 25.0),
        ),
        (
            "places off by 4 mm",
            usual(|wishes| wishes.base.workmanship.bore_place = 4.0),
        ),
        (
            "loose keys",
            usual(|wishes| {
                for dial in &mut wishes.base.dials {
                    dial.key.clearance = 4.0;
                }
            }),
        ),
        (
            "a slot narrower than its pin",
            held(Size::Slot(0, 0, SlotSize::Width), 2.0),
        ),
        ("a gap too small", held(Size::Dial(0, DialSize::Gap), 0.1)),
        (
            "a short travel",
            usual(|wishes| {
                let size = |size, value| (Size::Latch(size), value);
                wishes.pinned = vec![
                    size(LatchSize::Travel, 3.0),
                    size(LatchSize::Engagement, 8.0),
                ];
            }),
        ),
    ]
}

/// Looks for the first that is proven and no further.
fn can_be_had(wishes: &Wishes) -> bool {
    let outcome = propose(wishes, &mut |progress| {
        // from there on it looks for reasons
        if progress.found.is_empty() && progress.done < ROOMIEST {
            ControlFlow::Continue(())
        } else {
            ControlFlow::Break(())
        }
    });
    matches!(outcome, Outcome::Found(found) if found.iter().all(|found| found.proof.proven))
}

fn why(name: &str, wishes: &Wishes) -> Nothing {
    match propose(wishes, &mut |_| ControlFlow::Continue(())) {
        Outcome::Nothing(why) => *why,
        _ => panic!("{name}: there is no reason, or not for nothing"),
    }
}

/// These wishes without `gone`.
fn without(wishes: &Wishes, gone: &[Demand]) -> Wishes {
    let mut eased = wishes.clone();
    for demand in gone {
        let base = &mut eased.base;
        let lid = (base.plate.width, base.plate.depth);
        match demand {
            Demand::Width => eased = eased.with_lid(1_200.0, lid.1),
            Demand::Depth => eased = eased.with_lid(lid.0, 1_200.0),
            Demand::Dials => eased.dials.truncate(1),
            Demand::Marks => {
                for dial in &mut eased.dials {
                    (dial.marks, dial.labels) = (Marks::AtLeast(3), Labels::Digits);
                }
            }
            Demand::Workmanship => {
                let work = &mut base.workmanship;
                (work.pin_place, work.bore_place, work.keeper_place) = (0.0, 0.0, 0.0);
                (work.thickness, work.print, work.film_spread) = (0.0, 0.0, 0.0);
                (work.reading, base.slider.guide_play) = (0.0, 0.0);
                for dial in &mut base.dials {
                    (dial.bore.shaft_play, dial.key.clearance) = (0.0, 0.0);
                }
            }
            Demand::Season => base.season = Season::still(base.season.built),
            Demand::Bits => {
                let all = (2..=52_u32).map(|halves| f64::from(halves) / 2.0);
                base.bench
                    .bits
                    .extend(all.chain(wishes.pins.iter().copied()));
            }
            Demand::Pins => {
                let all = (3..=20_u32).map(|halves| f64::from(halves) / 2.0);
                eased.pins.extend(all);
            }
            Demand::Thickness => base.plate.thickness = 50.0,
            Demand::Room => base.plate.room = 150.0,
            Demand::Pull => base.slider.pull = 1.0,
            Demand::Hold => base.tab.required_hold = 0.05,
            Demand::Hinges => (base.body.hinge.length, base.body.hinge.inset) = (10.0, 0.0),
            Demand::Bed => base.bench.printer.bed = (300.0, 300.0),
            Demand::Age => base.card.youngest = 30,
            Demand::Pinned(_) => {}
        }
    }
    let held = wishes.pinned.iter().enumerate();
    let held = held.filter(|(number, _)| !gone.contains(&Demand::Pinned(*number)));
    eased.pinned = held.map(|(_, held)| *held).collect();
    eased
}

fn all(wishes: &Wishes) -> Vec<Demand> {
    let mut all = Demand::USUAL.to_vec();
    all.extend((0..wishes.pinned.len()).map(Demand::Pinned));
    all
}

/// A few by default, as they take seconds each.
fn looked_at() -> Vec<(&'static str, Wishes)> {
    let every = if lids() > 100 { 1 } else { 3 };
    let all = hopeless().into_iter().chain(hopeless_too());
    all.step_by(every).collect()
}

#[test]
fn each_demand_that_is_blamed_is_needed_for_the_blame() {
    for (name, wishes) in looked_at() {
        let why = why(name, &wishes);
        let demands = all(&wishes);
        assert!(!why.conflict.is_empty(), "{name}: {:?}", why.besides);
        for core in core::iter::once(&why.conflict).chain(&why.besides) {
            let gone: Vec<Demand> = demands
                .iter()
                .copied()
                .filter(|demand| !core.contains(demand))
                .collect();
            assert!(!can_be_had(&without(&wishes, &gone)), "{name}: {core:?}");
            for demand in core {
                let mut more = gone.clone();
                more.push(*demand);
                let eased = without(&wishes, &more);
                assert!(can_be_had(&eased), "{name}: {core:?} without {demand:?}");
            }
        }
    }
}

#[test]
fn the_nearest_is_proven_gives_in_every_conflict_and_only_where_it_says() {
    for (name, wishes) in looked_at() {
        let why = why(name, &wishes);
        assert!(!why.nearest.is_empty(), "{name}: {:?}", why.conflict);
        for near in &why.nearest {
            assert!(prove(&near.proposal.design).proven, "{name}");
            let unmet = unmet(&near.wishes, &near.proposal.design);
            assert!(unmet.is_empty(), "{name}: {unmet:?}");
            assert!(can_be_had(&near.wishes), "{name}: {:?}", near.demands);
            for core in core::iter::once(&why.conflict).chain(&why.besides) {
                assert!(
                    near.demands.iter().any(|demand| core.contains(demand)),
                    "{name}"
                );
            }
            // what does not give way is as it was wished
            let eased = without(&near.wishes, &near.demands);
            let wished = without(&wishes, &near.demands);
            let mut kept = eased.clone();
            kept.pinned.clone_from(&wished.pinned);
            kept.pins.clone_from(&wished.pins);
            kept.base.bench.bits.clone_from(&wished.base.bench.bits);
            assert_eq!(kept, wished, "{name}: {:?}", near.demands);
        }
    }
}

#[test]
fn a_lid_that_is_said_to_do_is_the_least_that_does() {
    let mut looked_at = 0;
    for (name, wishes) in hopeless().into_iter().take(4) {
        for near in why(name, &wishes).nearest {
            let plate = &near.wishes.base.plate;
            let (width, depth) = (plate.width, plate.depth);
            let smaller = match near.demands.as_slice() {
                [Demand::Width] => vec![(width - 5.0, depth)],
                [Demand::Depth] => vec![(width, depth - 5.0)],
                [Demand::Width, Demand::Depth] => vec![(width - 5.0, depth), (width, depth - 5.0)],
                _ => continue,
            };
            for lid in smaller {
                looked_at += 1;
                let smaller = near.wishes.clone().with_lid(lid.0, lid.1);
                assert!(
                    !can_be_had(&smaller),
                    "{name}: {:?} but {lid:?}",
                    near.demands
                );
            }
        }
    }
    assert!(looked_at > 1, "{looked_at}");
}

#[test]
fn a_lid_too_small_for_many_large_dials_has_a_nearest_that_gives_in_all_that_is_wrong() {
    // it used to say "a lid 120 mm wide cannot be had", and nothing else
    let wishes = on_lid((120.0, 100.0), 5, 36);
    let why = why("5 × 36", &wishes);
    assert!(!why.nearest.is_empty(), "{:?}", why.conflict);
    let blamed: Vec<Demand> = core::iter::once(&why.conflict)
        .chain(&why.besides)
        .flatten()
        .copied()
        .collect();
    assert!(blamed.contains(&Demand::Width), "{blamed:?}");
}
