//! Laws that every proof obeys, whatever the design: mirrored, renumbered, doubled, made more
//! carefully, or full of nonsense.

use latchwright_model::{Design, Labels, Slot};
use latchwright_proof::worst::figure::GAP;
use latchwright_proof::{DialProof, Proof, Verdict, prove};
use latchwright_tests::designs;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

const DESIGNS: usize = 150;

/// The same worst case, bounded in another order, comes out within this, mm: a bound lies at most
/// `GAP` under the worst real box.
const ROUNDING: f64 = GAP + 1e-7;

/// What `ROUNDING` across is at the rim of the smallest disc, degrees.
const SWAY: f64 = 0.03;

fn each(seed: u64, mut law: impl FnMut(&mut ChaCha8Rng, Design)) {
    let mut rng = ChaCha8Rng::seed_from_u64(seed);
    for _ in 0..DESIGNS {
        let design = designs::any(&mut rng);
        law(&mut rng, design);
    }
}

/// The same verdicts and margins, `scale` times as large, at marks renumbered by `mark`.
fn same(one: &DialProof, other: &DialProof, scale: f64, mark: impl Fn(usize) -> usize) -> usize {
    let mut promises = 0;
    assert_eq!(one.marks.len(), other.marks.len());
    for (number, found) in one.marks.iter().enumerate() {
        let again = &other.marks[mark(number)];
        assert_eq!(found.verdict, again.verdict, "mark {number}");
        assert!(
            (found.margin * scale - again.margin).abs() < ROUNDING * (1.0 + scale),
            "mark {number}: {} and {}",
            found.margin,
            again.margin
        );
        assert!((found.reach.travel * scale - again.reach.travel).abs() < 1e-6);
        promises += usize::from(found.verdict != Verdict::Unsure);
    }
    promises
}

#[test]
fn a_mirrored_latch_has_the_same_margins() {
    let mut promises = 0;
    each(11, |_, design| {
        let (one, other) = (prove(&design), prove(&design.mirrored()));
        for (one, other) in one.dials.iter().zip(&other.dials) {
            let marks = one.marks.len();
            promises += same(one, other, 1.0, |mark| (marks - mark) % marks);
        }
        assert_eq!(one.settings, other.settings);
    });
    assert!(promises > 1000, "{promises}");
}

#[test]
fn turning_every_dial_on_by_one_only_renumbers_the_marks() {
    let mut promises = 0;
    each(12, |_, design| {
        let mut turned = design.clone();
        for (dial, digit) in turned.dials.iter().zip(&mut turned.combination) {
            *digit = (*digit + 1) % dial.positions;
        }
        for (one, other) in prove(&design).dials.iter().zip(&prove(&turned).dials) {
            let marks = one.marks.len();
            promises += same(one, other, 1.0, |mark| (mark + 1) % marks);
        }
    });
    assert!(promises > 1000, "{promises}");
}

#[test]
fn dials_in_another_order_are_the_same_dials() {
    each(13, |_, design| {
        let mut swapped = design.clone();
        swapped.dials.reverse();
        swapped.combination.reverse();
        let (one, other) = (prove(&design), prove(&swapped));
        for (one, other) in one.dials.iter().zip(other.dials.iter().rev()) {
            assert_eq!(one, other);
        }
        assert_eq!(one.settings, other.settings);
    });
}

/// Every length twice as long, angles and air as they are.
fn doubled(design: &Design) -> Design {
    let mut twice = design.clone();
    let two = |lengths: &mut [&mut f64]| lengths.iter_mut().for_each(|length| **length *= 2.0);
    let (slider, tab, keeper) = (&mut twice.slider, &mut twice.tab, &mut twice.keeper);
    two(&mut [
        &mut twice.plate.width,
        &mut twice.plate.depth,
        &mut twice.plate.thickness,
    ]);
    two(&mut [
        &mut slider.travel,
        &mut slider.guide_length,
        &mut slider.guide_play,
        &mut slider.guide_at.0,
        &mut slider.guide_at.1,
        &mut slider.pull_at,
        &mut slider.shank,
        &mut slider.thickness,
    ]);
    two(&mut [
        &mut tab.at,
        &mut tab.width,
        &mut tab.engagement,
        &mut tab.required_hold,
    ]);
    two(&mut [
        &mut keeper.edge,
        &mut keeper.width,
        &mut keeper.depth,
        &mut keeper.thickness,
    ]);
    let work = &mut twice.workmanship;
    two(&mut [
        &mut work.pin_place,
        &mut work.bore_place,
        &mut work.keeper_place,
        &mut work.print,
        &mut work.film,
        &mut work.film_spread,
    ]);
    for dial in &mut twice.dials {
        two(&mut [
            &mut dial.centre.0,
            &mut dial.centre.1,
            &mut dial.disc.radius,
            &mut dial.disc.thickness,
            &mut dial.pin.offset,
            &mut dial.pin.diameter,
            &mut dial.pin.gap,
            &mut dial.key.apothem,
            &mut dial.key.clearance,
            &mut dial.bore.diameter,
            &mut dial.bore.shaft_play,
            &mut dial.knob.diameter,
            &mut dial.knob.height,
        ]);
        for slot in &mut dial.disc.slots {
            two(&mut [&mut slot.width, &mut slot.depth, &mut slot.lead_in]);
        }
    }
    twice
}

#[test]
fn a_latch_of_twice_the_size_has_twice_the_margins() {
    let scaling = [
        "at-rest",
        "lets-in",
        "captive",
        "stays-held",
        "free",
        "held-at-rest",
        "guide",
        "key-bite",
    ];
    let mut compared = 0;
    each(14, |_, design| {
        let (one, other) = (prove(&design), prove(&doubled(&design)));
        for (one, other) in one.dials.iter().zip(&other.dials) {
            same(one, other, 2.0, |mark| mark);
            assert!((one.sure_window_deg - other.sure_window_deg).abs() < SWAY);
            assert!((one.possible_window_deg - other.possible_window_deg).abs() < SWAY);
        }
        for check in one
            .checks
            .iter()
            .filter(|check| scaling.contains(&check.kind.code()))
        {
            let again = other
                .checks
                .iter()
                .find(|again| (again.kind, again.dial()) == (check.kind, check.dial()))
                .unwrap();
            assert!(
                (check.margin * 2.0 - again.margin).abs() < ROUNDING * 3.0,
                "{}: {} and {}",
                check.kind.code(),
                check.margin,
                again.margin
            );
            compared += 1;
        }
    });
    assert!(compared > 5 * DESIGNS, "{compared}");
}

type Tighten = (&'static str, fn(&mut Design, f64));

/// Everything a maker can do more exactly.
const TIGHTEN: [Tighten; 9] = [
    ("pin_place", |design, by| design.workmanship.pin_place *= by),
    ("bore_place", |design, by| {
        design.workmanship.bore_place *= by;
    }),
    ("keeper_place", |design, by| {
        design.workmanship.keeper_place *= by;
    }),
    ("print", |design, by| design.workmanship.print *= by),
    ("film_spread", |design, by| {
        design.workmanship.film_spread *= by;
    }),
    ("reading", |design, by| design.workmanship.reading *= by),
    ("guide_play", |design, by| design.slider.guide_play *= by),
    ("shaft_play", |design, by| {
        for dial in &mut design.dials {
            dial.bore.shaft_play *= by;
        }
    }),
    ("clearance", |design, by| {
        for dial in &mut design.dials {
            dial.key.clearance *= by;
        }
    }),
];

#[test]
fn working_more_exactly_never_loses_a_promise_nor_a_margin() {
    let mut gained = 0;
    each(15, |rng, design| {
        let before = prove(&design);
        for (name, tighten) in TIGHTEN {
            let by = if rng.random() {
                0.0
            } else {
                rng.random_range(0.0..1.0)
            };
            let mut tight = design.clone();
            tighten(&mut tight, by);
            let after = prove(&tight);
            for (one, other) in before.dials.iter().zip(&after.dials) {
                for (one, other) in one.marks.iter().zip(&other.marks) {
                    if one.verdict == Verdict::Unsure {
                        gained += usize::from(other.verdict != Verdict::Unsure);
                        continue;
                    }
                    assert_eq!(one.verdict, other.verdict, "{name} × {by}: {design:?}");
                    assert!(
                        other.margin >= one.margin - ROUNDING,
                        "{name} × {by}: {} to {}, {design:?}",
                        one.margin,
                        other.margin
                    );
                }
            }
        }
    });
    assert!(gained > 50, "{gained} marks became sure");
}

/// No number of the proof is without meaning.
fn all_finite(proof: &Proof) -> bool {
    let dials = proof.dials.iter().all(|dial| {
        let marks = dial.marks.iter().all(|mark| {
            let contact = mark
                .reach
                .contact
                .is_none_or(|at| at.0.is_finite() && at.1.is_finite());
            contact
                && mark.reach.travel.is_finite()
                && mark.margin.is_finite()
                && mark.creep.is_none_or(f64::is_finite)
                && mark.hold_margin.is_none_or(f64::is_finite)
        });
        marks && dial.sure_window_deg.is_finite() && dial.possible_window_deg.is_finite()
    });
    dials
        && proof.checks.iter().all(|check| {
            [check.value, check.limit, check.margin]
                .into_iter()
                .chain(check.decided_by.iter().map(|(_, amount)| *amount))
                .all(f64::is_finite)
        })
}

const NASTY: [f64; 15] = [
    0.0,
    -0.0,
    1e-300,
    -1e-9,
    1e-9,
    0.5,
    -3.0,
    40.0,
    360.0,
    5000.0,
    1e12,
    1e300,
    f64::NAN,
    f64::INFINITY,
    f64::NEG_INFINITY,
];

/// Puts a nasty value into one size in `rarity`.
fn spoil(rng: &mut ChaCha8Rng, design: &mut Design, rarity: u32) {
    let mut nasty = |size: &mut f64| {
        if rng.random_ratio(1, rarity) {
            *size = NASTY[rng.random_range(0..NASTY.len())];
        }
    };
    let (slider, tab, work) = (&mut design.slider, &mut design.tab, &mut design.workmanship);
    for size in [
        &mut design.plate.width,
        &mut design.plate.depth,
        &mut design.plate.thickness,
        &mut slider.travel,
        &mut slider.guide_length,
        &mut slider.guide_play,
        &mut slider.guide_at.0,
        &mut slider.guide_at.1,
        &mut slider.pull_at,
        &mut tab.at,
        &mut tab.width,
        &mut tab.engagement,
        &mut tab.required_hold,
        &mut design.keeper.edge,
        &mut work.pin_place,
        &mut work.bore_place,
        &mut work.keeper_place,
        &mut work.print,
        &mut work.film_spread,
        &mut work.reading,
        &mut design.season.built.celsius,
        &mut design.season.built.humidity,
        &mut design.season.dampest.humidity,
    ] {
        nasty(size);
    }
    for dial in &mut design.dials {
        for size in [
            &mut dial.centre.0,
            &mut dial.centre.1,
            &mut dial.disc.radius,
            &mut dial.disc.thickness,
            &mut dial.pin.offset,
            &mut dial.pin.diameter,
            &mut dial.pin.gap,
            &mut dial.key.apothem,
            &mut dial.key.clearance,
            &mut dial.bore.diameter,
            &mut dial.bore.shaft_play,
            &mut dial.knob.diameter,
        ] {
            nasty(size);
        }
        for slot in &mut dial.disc.slots {
            for size in [&mut slot.width, &mut slot.depth, &mut slot.lead_in] {
                nasty(size);
            }
        }
    }
}

/// Puts nonsense into what is counted.
fn miscount(rng: &mut ChaCha8Rng, design: &mut Design) {
    for (dial, digit) in design.dials.iter_mut().zip(&mut design.combination) {
        match rng.random_range(0..12) {
            0 => dial.positions = [0, 1, 361, u32::MAX][rng.random_range(0..4)],
            1 => dial.disc.slots.clear(),
            2 => dial.disc.slots = vec![Slot::default(); 1000],
            3 => dial.disc.slots[0].mark = [i64::MIN, i64::MAX, -1][rng.random_range(0..3)],
            4 => dial.labels = Labels::Words(vec![String::new()]),
            5 => dial.key.sides = [0, 1, 2, 65, u32::MAX][rng.random_range(0..5)],
            6 => *digit = u32::MAX,
            _ => {}
        }
    }
    match rng.random_range(0..20) {
        0 => design.dials.clear(),
        1 => design.dials = vec![design.dials[0].clone(); 13],
        2 => design.dials = vec![design.dials[0].clone(); 1000],
        3 => design.combination.clear(),
        4 => design.plate.wood = "no such tree".into(),
        _ => {}
    }
}

#[test]
fn nonsense_gets_a_finite_answer_and_is_never_proven() {
    let mut rng = ChaCha8Rng::seed_from_u64(16);
    let mut faulty = 0;
    for round in 0..3000_u32 {
        let mut design = designs::any(&mut rng);
        spoil(&mut rng, &mut design, [8, 40, 200][round as usize % 3]);
        miscount(&mut rng, &mut design);
        let started = std::time::Instant::now();
        let proof = prove(&design);
        assert!(
            started.elapsed().as_secs_f64() < 1.0,
            "{:?}",
            started.elapsed()
        );
        assert!(all_finite(&proof), "{proof:?}\n{design:?}");
        let counts = proof.settings;
        assert_eq!(counts.opens + counts.locks + counts.unsure, counts.total);
        let sound = !proof.faults.iter().any(latchwright_model::Fault::is_error);
        assert!(sound || !proof.proven);
        faulty += usize::from(!sound);
    }
    assert!(faulty > 2000, "{faulty}");
}
