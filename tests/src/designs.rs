//! Designs as a maker might type them, drawn at random: mostly sensible, with every feature a proof
//! must cope with.

use latchwright_model::{
    Climate, Design, Dial, Grain, Key, Material, Sawn, Season, Slot, Workmanship,
};
use latchwright_search::propose::{DialWish, Wishes};
use rand::RngExt;
use rand::seq::IndexedRandom;
use rand_chacha::ChaCha8Rng;

const WOODS: [&str; 5] = [
    "white oak",
    "walnut",
    "American beech",
    "teak",
    "eastern white pine",
];

/// A design with 1 to 4 dials of 2 to 36 marks.
pub fn any(rng: &mut ChaCha8Rng) -> Design {
    let mut design = Design {
        workmanship: workmanship(rng),
        season: season(rng),
        ..Design::default()
    };
    design.plate.wood = (*WOODS.choose(rng).unwrap_or(&"teak")).to_owned();
    design.plate.grain = grain(rng);
    design.plate.sawn = sawn(rng);
    design.slider.material = material(rng, &design);
    design.slider.travel = rng.random_range(5.0..14.0);
    design.slider.guide_length = rng.random_range(25.0..90.0);
    design.slider.guide_play = sometimes(rng, 0.35);
    design.slider.guide_at = (rng.random_range(-20.0..20.0), rng.random_range(30.0..75.0));
    design.tab.at = rng.random_range(-15.0..15.0);
    design.tab.width = rng.random_range(10.0..60.0);
    design.tab.engagement = design.slider.travel - rng.random_range(0.3..2.5);
    design.tab.required_hold = rng.random_range(0.2..1.5);
    let dials = rng.random_range(1..=4_u32);
    design.dials = (0..dials)
        .map(|number| {
            let x = (f64::from(number) - f64::from(dials - 1) / 2.0) * 52.0;
            dial(rng, x, design.slider.travel)
        })
        .collect();
    design.combination = design
        .dials
        .iter()
        .map(|dial| rng.random_range(0..dial.positions))
        .collect();
    design
}

/// What a maker might wish for, with all of [`any`] that is not found: workmanship, woods, air, plays.
pub fn wishes(rng: &mut ChaCha8Rng) -> Wishes {
    let mut wishes = Wishes::of(any(rng)).with_lid(
        rng.random_range(140.0..360.0_f64).round(),
        rng.random_range(100.0..260.0_f64).round(),
    );
    let dials = rng.random_range(1..=4);
    wishes.dials = (0..dials)
        .map(|_| DialWish::numbered(rng.random_range(3..=14)))
        .collect();
    wishes.pins = vec![3.0, 4.0, 5.0, 6.0];
    wishes
}

/// 0 once in four times, else up to `most`.
fn sometimes(rng: &mut ChaCha8Rng, most: f64) -> f64 {
    if rng.random_ratio(1, 4) {
        0.0
    } else {
        rng.random_range(0.0..most)
    }
}

fn grain(rng: &mut ChaCha8Rng) -> Grain {
    if rng.random() {
        Grain::AlongX
    } else {
        Grain::AlongY
    }
}

fn sawn(rng: &mut ChaCha8Rng) -> Sawn {
    if rng.random() {
        Sawn::Flat
    } else {
        Sawn::Quarter
    }
}

fn material(rng: &mut ChaCha8Rng, design: &Design) -> Material {
    match rng.random_range(0..8) {
        0 => Material::Plywood,
        1 => Material::Hardboard,
        2 => Material::Mdf,
        3 => Material::Printed,
        4 => Material::Wood {
            species: (*WOODS.choose(rng).unwrap_or(&"teak")).to_owned(),
            sawn: sawn(rng),
            grain: grain(rng),
        },
        _ => Material::Wood {
            species: design.plate.wood.clone(),
            sawn: design.plate.sawn,
            grain: design.plate.grain,
        },
    }
}

/// From a careful maker's, a tenth of the usual, to a hasty one's.
fn workmanship(rng: &mut ChaCha8Rng) -> Workmanship {
    let haste = rng.random_range(0.1..1.1);
    let mut off = |usual: f64| sometimes(rng, usual * haste);
    Workmanship {
        pin_place: off(0.3),
        bore_place: off(0.3),
        keeper_place: off(0.4),
        thickness: off(0.15),
        print: off(0.25),
        film: 0.1,
        film_spread: off(0.06),
        reading: off(3.5),
    }
}

fn season(rng: &mut ChaCha8Rng) -> Season {
    let mut air = |dry: f64, damp: f64| Climate {
        celsius: rng.random_range(10.0..28.0),
        humidity: rng.random_range(dry..damp),
    };
    let built = air(40.0, 55.0);
    if rng.random_ratio(1, 4) {
        return Season::still(built);
    }
    let mut air = |dry: f64, damp: f64| Climate {
        celsius: rng.random_range(10.0..28.0),
        humidity: rng.random_range(dry..damp),
    };
    Season {
        built,
        driest: air(15.0, 40.0),
        dampest: air(55.0, 85.0),
    }
}

/// A dial at `x`, its true slot deep enough for the travel and now and then blind ones beside it.
fn dial(rng: &mut ChaCha8Rng, x: f64, travel: f64) -> Dial {
    let most = if rng.random_ratio(1, 3) { 36 } else { 12 };
    let mut dial = Dial {
        centre: (x, rng.random_range(80.0..100.0)),
        positions: rng.random_range(2..=most),
        key: Key {
            sides: *[3, 4, 4, 6].choose(rng).unwrap_or(&4),
            apothem: rng.random_range(3.0..6.0),
            clearance: sometimes(rng, 0.2),
        },
        ..Dial::default()
    };
    dial.disc.radius = rng.random_range(9.0..24.0);
    dial.pin.diameter = rng.random_range(2.0..6.0);
    dial.pin.gap = rng.random_range(0.6..3.0);
    dial.pin.offset = sometimes(rng, 2.0) - sometimes(rng, 2.0);
    dial.bore.shaft_play = sometimes(rng, 0.2);
    let depth = travel - dial.pin.gap + rng.random_range(0.5..4.0);
    let width = dial.pin.diameter + rng.random_range(0.8..7.0);
    let width = width.min(dial.disc.radius);
    dial.disc.slots = vec![Slot {
        mark: 0,
        width,
        depth: depth.min(1.9 * dial.disc.radius),
        lead_in: sometimes(rng, 1.5),
    }];
    if rng.random_ratio(1, 40) {
        dial.disc.slots[0].depth = 2.0 * dial.disc.radius + rng.random_range(-0.5..1.5);
    }
    let others = if rng.random_ratio(1, 2) {
        0
    } else {
        rng.random_range(1..=2)
    };
    for _ in 0..others {
        let blind = other_slot(rng, &dial);
        dial.disc.slots.push(blind);
    }
    dial
}

/// A slot at another mark: mostly blind, often too shallow to have walls, sometimes a second true
/// one.
fn other_slot(rng: &mut ChaCha8Rng, dial: &Dial) -> Slot {
    let own = &dial.disc.slots[0];
    let depth = match rng.random_range(0..6) {
        0 => own.depth,
        1 => rng.random_range(0.3..1.2),
        _ => rng.random_range(0.8..5.0),
    };
    let width = dial.pin.diameter + rng.random_range(1.5..9.0);
    let width = width.min(dial.disc.radius);
    let lead_in = if rng.random() { 0.0 } else { 0.4 };
    Slot {
        mark: rng.random_range(1..i64::from(dial.positions)),
        width,
        depth,
        // a slot shallower than half its width has no wall for a lead-in
        lead_in: if depth > width / 2.0 + 1.2 {
            lead_in
        } else {
            0.0
        },
    }
}
