//! Proposals: always proven, within what was wished, and never beaten by designs drawn at random.
//!
//! A few lids by default; three hundred where `LATCHWRIGHT_HUNT` is set.

use latchwright_solver::model::{Climate, Design, Grain, Material, Sawn, Season, Units};
use latchwright_solver::propose::{
    DialWish, Go, Kind, Outcome, Proposal, Wishes, grid_of, least_room, propose, unmet,
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
    base.plate.wood = (*woods.choose(&mut rng).unwrap()).to_owned();
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
    let far = *[1, 1, 2, 4, 10].choose(rng).unwrap();
    for _ in 0..rng.random_range(1..=5) {
        let by = f64::from(rng.random_range(-far..=far));
        let (size, place) = (by * grid.size, by * grid.place);
        match rng.random_range(0..14) {
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
            11 => {
                let share = 1.0 + by / 40.0;
                each_dial(&mut design, |dial| {
                    dial.centre.0 = (dial.centre.0 * share / grid.place).round() * grid.place;
                });
            }
            12 => {
                let bits = wishes.base.bench.bits.clone();
                let bore = *bits.choose(rng).unwrap();
                each_dial(&mut design, |dial| {
                    dial.bore.diameter = bore;
                    let round = bore / 2.0 - dial.bore.shaft_play - 0.5;
                    let half = std::f64::consts::PI / f64::from(dial.key.sides);
                    dial.key.apothem = (round * half.cos() / grid.size).floor() * grid.size;
                    dial.knob.diameter = dial.knob.diameter.max(bore + 8.0);
                });
            }
            _ => {
                let pin = *wishes.pins.choose(rng).unwrap();
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
    // the guide as long as it can be
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
    design
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
