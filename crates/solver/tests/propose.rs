//! Proposals: always proven, within what was wished, and never beaten by designs drawn at random.
//!
//! A few lids by default; three hundred where `LATCHWRIGHT_HUNT` is set.

use latchwright_solver::change::{DialSize, LatchSize, Size};
use latchwright_solver::model::{Climate, Design, Grain, Material, Sawn, Season, Units};
use latchwright_solver::propose::{
    Demand, DialWish, Go, Grid, Kind, Outcome, Progress, Proposal, Search, Wishes, grid_of,
    least_room, propose, unmet,
};
use latchwright_solver::prove;
use rand::RngExt;
use rand::SeedableRng;
use rand::seq::IndexedRandom;
use rand_chacha::ChaCha8Rng;

/// Lids and workmanships that are looked at.
fn lids() -> u64 {
    if std::env::var_os("LATCHWRIGHT_HUNT").is_some() {
        300
    } else {
        12
    }
}

/// One of a few.
fn one_of<T: Copy>(rng: &mut ChaCha8Rng, all: &[T]) -> T {
    *all.choose(rng).expect("there are some")
}

/// What some maker might wish for.
fn wishes(number: u64) -> Wishes {
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

fn proposals(wishes: &Wishes) -> Option<Vec<Proposal>> {
    match propose(wishes, &mut |_| Go::On) {
        Outcome::Found(found) => Some(found),
        _ => None,
    }
}

/// Every proposal of the random wishes, with what was wished.
fn each(mut look: impl FnMut(u64, &Wishes, &[Proposal])) {
    let mut found = 0;
    for number in 0..lids() {
        let wishes = wishes(number);
        if let Some(proposals) = proposals(&wishes) {
            found += 1;
            look(number, &wishes, &proposals);
        }
    }
    println!("{found} of {} lids have a latch", lids());
    assert!(found * 2 > lids(), "only {found}");
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
                other.room <= roomiest.room + 0.02,
                "{number} {:?}",
                other.kind
            );
        }
        if let Some(most) = of(Kind::MostSettings) {
            assert!(most.settings >= roomiest.settings);
        }
        assert!(of(Kind::Smallest).unwrap().area <= roomiest.area);
    });
}

/// What a random design is the better by, if it is.
fn beats(kind: Kind, proposal: &Proposal, design: &Design) -> Option<String> {
    let room = least_room(design)?.0;
    let settings: u128 = design
        .dials
        .iter()
        .map(|dial| u128::from(dial.positions))
        .product();
    let area = design.plate.width * design.plate.depth;
    let better = match kind {
        Kind::Roomiest => room > proposal.room + 0.0125 && room < 3.0,
        Kind::MostSettings => settings > proposal.settings && room > -0.05,
        Kind::Smallest => area < proposal.area - 1e-6 && room > -0.05,
    };
    (better && prove(design).proven)
        .then(|| format!("{kind:?}: room {room}, {settings} settings, {area} mm²; {design:#?}"))
}

/// A design near `from`: one to five of its sizes some steps of the grid elsewhere.
fn neighbour(rng: &mut ChaCha8Rng, wishes: &Wishes, from: &Design, kind: Kind) -> Design {
    let grid = grid_of(wishes);
    let mut design = from.clone();
    let far = one_of(rng, &[1, 1, 2, 4, 10]);
    for _ in 0..rng.random_range(1..=5) {
        let by = f64::from(rng.random_range(-far..=far));
        let (size, place) = (by * grid.size, by * grid.place);
        match rng.random_range(0..15) {
            0 => design.slider.travel += size,
            1 => design.tab.engagement += size,
            2 => {
                design.tab.width += by * grid.lid;
                design.keeper.width = design.tab.width + 16.0;
            }
            3 => each_dial(&mut design, |dial| dial.disc.radius += size),
            4 => each_dial(&mut design, |dial| dial.pin.gap += size),
            5 => each_dial(&mut design, |dial| dial.disc.slots[0].width += size),
            6 => each_dial(&mut design, |dial| dial.disc.slots[0].depth += size),
            7 => each_dial(&mut design, |dial| dial.disc.slots[0].lead_in += size.abs()),
            8 => {
                let number = rng.random_range(0..design.dials.len());
                design.dials[number].centre.0 += place;
            }
            9 => {
                let number = rng.random_range(0..design.dials.len());
                design.dials[number].centre.1 += place;
            }
            10 => each_dial(&mut design, |dial| dial.centre.1 += place),
            13 => each_dial(&mut design, |dial| dial.knob.diameter += size),
            11 => {
                let share = 1.0 + by / 40.0;
                each_dial(&mut design, |dial| {
                    dial.centre.0 = (dial.centre.0 * share / grid.place).round() * grid.place;
                });
            }
            12 => {
                let bore = one_of(rng, &wishes.base.bench.bits);
                each_dial(&mut design, |dial| {
                    dial.bore.diameter = bore;
                    let round = bore / 2.0 - dial.bore.shaft_play - 0.5;
                    let half = std::f64::consts::PI / f64::from(dial.key.sides);
                    dial.key.apothem = (round * half.cos() / grid.size).floor() * grid.size;
                    let least = ((bore + 8.0) / grid.size).ceil() * grid.size;
                    dial.knob.diameter = dial.knob.diameter.max(least);
                });
            }
            _ => {
                let pin = one_of(rng, &wishes.pins);
                each_dial(&mut design, |dial| dial.pin.diameter = pin);
            }
        }
    }
    match kind {
        Kind::Roomiest => {}
        Kind::MostSettings => {
            let number = rng.random_range(0..design.dials.len());
            let sides = design.dials[number].key.sides;
            design.dials[number].positions += sides;
        }
        Kind::Smallest => {
            let by = -grid.lid;
            if rng.random() {
                design.plate.width += by;
                design.inside.width += by;
            } else {
                design.plate.depth += by;
                design.inside.depth += by;
            }
        }
    }
    longest_guide(&mut design, grid);
    design
}

/// Gives it a guide as long as it can be.
fn longest_guide(design: &mut Design, grid: Grid) {
    let first = &design.dials[0];
    let top = design
        .dials
        .iter()
        .map(|dial| dial.centre.1)
        .fold(0.0, f64::max);
    let from = design.keeper.edge + 1.0;
    let length = top - first.disc.radius - first.pin.gap - from;
    design.slider.guide_length = (length / grid.place).floor() * grid.place;
    design.slider.guide_at.1 = from + design.slider.guide_length / 2.0;
}

fn each_dial(design: &mut Design, mut change: impl FnMut(&mut latchwright_solver::model::Dial)) {
    for dial in &mut design.dials {
        change(dial);
    }
}

#[test]
fn no_proposal_is_beaten_by_two_thousand_random_designs() {
    let (mut tried, mut beaten, mut all) = (0_u32, Vec::new(), 0_u32);
    each(|number, wishes, proposals| {
        let mut rng = ChaCha8Rng::seed_from_u64(1_000 + number);
        for proposal in proposals {
            all += 1;
            for _ in 0..2_000 {
                let start = &proposals.choose(&mut rng).unwrap().design;
                let from = if rng.random_ratio(3, 4) {
                    &proposal.design
                } else {
                    start
                };
                let other = neighbour(&mut rng, wishes, from, proposal.kind);
                if !unmet(wishes, &other).is_empty() {
                    continue;
                }
                tried += 1;
                if let Some(said) = beats(proposal.kind, proposal, &other) {
                    let before = least_room(&proposal.design).unwrap();
                    beaten.push(format!(
                        "{number} from {before:?} {:#?}\n to {said}",
                        proposal.design
                    ));
                    break;
                }
            }
        }
    });
    println!("{tried} designs within the demands against {all} proposals");
    assert!(tried > 500 * all / 4, "only {tried}");
    assert!(
        beaten.is_empty(),
        "{} of {all} beaten; {}",
        beaten.len(),
        beaten[0]
    );
}

/// The same wishes with one thing made better.
fn eased(wishes: &Wishes, number: u64) -> (&'static str, Wishes) {
    let mut eased = wishes.clone();
    let (width, depth) = (wishes.base.plate.width, wishes.base.plate.depth);
    let work = &mut eased.base.workmanship;
    let name = match number % 6 {
        0 => {
            eased = eased.with_lid(width + 37.0, depth);
            "a wider lid"
        }
        1 => {
            eased = eased.with_lid(width, depth + 40.0);
            "a deeper lid"
        }
        2 => {
            eased.base.bench.bits.extend([11.0, 13.0, 17.0]);
            eased.pins.push(3.5);
            "more bits and pins"
        }
        3 => {
            (work.bore_place, work.pin_place) = (work.bore_place / 2.0, work.pin_place / 2.0);
            "finer places"
        }
        4 => {
            work.reading /= 2.0;
            "finer reading"
        }
        _ => {
            (work.print, work.film_spread) = (work.print / 2.0, work.film_spread / 2.0);
            work.keeper_place /= 2.0;
            "finer prints, coats and keeper"
        }
    };
    (name, eased)
}

/// What two rooms may differ by that are as good as each other, and what a search by halving leaves.
const ALIKE: f64 = 0.0125;

#[test]
fn more_to_work_with_never_makes_the_best_worse() {
    let mut looked_at = 0;
    for number in 0..lids() * 2 {
        let wishes = wishes(number % 40);
        let Some(before) = proposals(&wishes) else {
            continue;
        };
        let (name, eased) = eased(&wishes, number / 2 + number);
        let after = proposals(&eased).unwrap_or_default();
        for was in &before {
            let now = after.iter().find(|now| now.kind == was.kind);
            let now = now.unwrap_or_else(|| panic!("{number}: {name} loses {:?}", was.kind));
            looked_at += 1;
            match was.kind {
                Kind::Roomiest => assert!(
                    now.room >= was.room.min(2.9) - ALIKE,
                    "{number}: {name} from {} to {}",
                    was.room,
                    now.room
                ),
                Kind::MostSettings => assert!(
                    now.settings >= was.settings,
                    "{number}: {name} from {} to {}",
                    was.settings,
                    now.settings
                ),
                Kind::Smallest => assert!(
                    now.area <= was.area + 1e-6,
                    "{number}: {name} from {} to {}",
                    was.area,
                    now.area
                ),
            }
        }
    }
    assert!(looked_at > 20);
}

#[test]
fn dials_in_the_other_order_give_the_mirror_image() {
    for number in 0..lids() / 2 {
        let wishes = wishes(number);
        let mut mirrored = wishes.clone();
        mirrored.dials.reverse();
        let (one, other) = (proposals(&wishes), proposals(&mirrored));
        assert_eq!(one.is_some(), other.is_some());
        for (one, other) in one.iter().flatten().zip(other.iter().flatten()) {
            assert_eq!(one.kind, other.kind);
            assert!((one.room - other.room).abs() < ALIKE);
            assert_eq!(one.area, other.area);
            let mut image = one.design.clone();
            image.dials.reverse();
            image.combination.reverse();
            for dial in &mut image.dials {
                dial.centre.0 = -dial.centre.0;
            }
            let (room, _) = least_room(&image).unwrap();
            assert!((room - one.room).abs() < 1e-9);
            assert!(prove(&image).proven);
        }
    }
}

#[test]
fn the_same_wishes_give_the_same_proposals_however_the_steps_are_taken() {
    let wishes = wishes(5);
    let at_once = propose(&wishes, &mut |_| Go::On);
    let mut search = Search::new(&wishes);
    while search.step() {
        std::thread::yield_now();
    }
    assert_eq!(search.outcome(), at_once);
    let other = std::thread::spawn(move || propose(&wishes, &mut |_| Go::On));
    assert_eq!(other.join().unwrap(), at_once);
}

#[test]
fn a_search_that_is_stopped_keeps_what_it_has() {
    let wishes = wishes(5);
    assert_eq!(propose(&wishes, &mut |_| Go::Stop), Outcome::Stopped);
    let stop_at_first = |progress: Progress<'_>| {
        if progress.best.is_empty() {
            Go::On
        } else {
            Go::Stop
        }
    };
    let Outcome::Found(found) = propose(&wishes, &mut { stop_at_first }) else {
        panic!("nothing found");
    };
    assert!(found.len() == 1 && found[0].proof.proven);
}

#[test]
fn a_pinned_size_stays_and_the_rest_is_found_again() {
    let mut wishes = Wishes::of(Design::default());
    wishes.pins = vec![3.0, 4.0, 5.0];
    let travel = Size::Latch(LatchSize::Travel);
    let radius = |dial| Size::Dial(dial, DialSize::DiscRadius);
    wishes.pinned = vec![
        (travel, 8.3),
        (radius(0), 17.0),
        (radius(1), 17.0),
        (radius(2), 17.0),
    ];
    let found = proposals(&wishes).unwrap();
    for proposal in &found {
        assert_eq!(proposal.design.slider.travel, 8.3);
        assert!(
            proposal
                .design
                .dials
                .iter()
                .all(|dial| dial.disc.radius == 17.0)
        );
        assert!(
            unmet(&wishes, &proposal.design).is_empty(),
            "{:?}",
            unmet(&wishes, &proposal.design)
        );
    }
    let free = proposals(&Wishes {
        pinned: Vec::new(),
        ..wishes
    })
    .unwrap();
    assert!(free[0].room > found[0].room);
}

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
    let faults = proof
        .faults
        .iter()
        .filter(|fault| fault.severity == latchwright_solver::Severity::Error);
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
fn where_nothing_fits_a_search_by_proofs_alone_finds_nothing_either() {
    let mut nothing = 0;
    for number in 0..lids() {
        let wishes = hard(number);
        let start = sketch(&wishes);
        match propose(&wishes, &mut |_| Go::On) {
            Outcome::Nothing(why) => {
                nothing += 1;
                assert!(!why.conflict.is_empty(), "{number}: {}", why.sentence);
                assert!(!why.nearest.is_empty(), "{number}: {}", why.sentence);
                for near in &why.nearest {
                    assert!(near.proposal.proof.proven && prove(&near.proposal.design).proven);
                }
                for seed in 0..climbers() {
                    let found = climbs(&wishes, seed, &start, TRIALS);
                    assert!(found.is_none(), "{number}: {} but {found:#?}", why.sentence);
                }
            }
            Outcome::Found(_) => {}
            Outcome::Stopped => panic!("nobody stopped it"),
        }
    }
    assert!(nothing > lids() / 4);
}

#[test]
fn five_dials_with_wide_knobs_need_a_wider_lid_and_the_sentence_says_how_wide() {
    let mut wishes = Wishes::of(Design::default()).with_lid(180.0, 90.0);
    wishes.dials = vec![DialWish::numbered(8); 5];
    wishes.pinned = (0..5)
        .map(|dial| (Size::Dial(dial, DialSize::KnobDiameter), 40.0))
        .collect();
    let Outcome::Nothing(why) = propose(&wishes, &mut |_| Go::On) else {
        panic!("there is no room for five knobs");
    };
    let wide = why
        .nearest
        .iter()
        .find(|near| near.demand == Demand::Width)
        .unwrap();
    assert!(
        why.sentence.contains("cannot all be had"),
        "{}",
        why.sentence
    );
    assert!(why.sentence.contains(&wide.sentence), "{}", why.sentence);
    // five knobs of 40 with 15 between them, less what two rows save
    assert!(wide.proposal.design.plate.width > 180.0);
    let narrower = wishes.with_lid(wide.proposal.design.plate.width - 5.0, 90.0);
    assert!(proposals(&narrower).is_none());
}

#[test]
fn wishes_that_are_no_latch_are_refused_with_a_sentence() {
    let mut none = Wishes::of(Design::default());
    none.dials.clear();
    let mut odd = Wishes::of(Design::default());
    odd.base.plate.wood = "no such tree".to_owned();
    let mut nan = Wishes::of(Design::default());
    nan.base.workmanship.reading = f64::NAN;
    let mut pinned = Wishes::of(Design::default());
    pinned.pinned = vec![(Size::Dial(7, DialSize::Gap), 2.0)];
    for (wishes, word) in [
        (none, "0 dials"),
        (odd, "no such tree"),
        (nan, "reading"),
        (pinned, "dial 8"),
    ] {
        let Outcome::Nothing(why) = propose(&wishes, &mut |_| Go::On) else {
            panic!("{word}");
        };
        assert!(why.sentence.contains(word), "{}", why.sentence);
        assert!(why.conflict.is_empty());
    }
}
