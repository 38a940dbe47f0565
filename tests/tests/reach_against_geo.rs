//! The closed form of reach against a foreign polygon library, on discs drawn at random.

use latchwright_geometry::Point;
use latchwright_model::{Dial, Slot};
use latchwright_proof::StopsAt;
use latchwright_proof::contact::{PinPath, reach};
use latchwright_tests::outline::{Feature, Outline, RealSlot};
use latchwright_tests::polygon;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

const DISCS: usize = 2000;

/// How far the polygon's chords stray from its arcs, mm.
const CHORDS: f64 = 1e-4;

struct Case {
    dial: Dial,
    turn_deg: f64,
    travel: f64,
}

fn slot(rng: &mut ChaCha8Rng, radius: f64, mark: i64) -> Slot {
    let width = rng.random_range(1.0..radius * 0.7);
    let depth = match rng.random_range(0..12) {
        0 => 2.0 * radius + 1.0,
        1..4 => rng.random_range(0.3..width / 2.0 + 0.3),
        _ => rng.random_range(width / 2.0 + 0.3..radius * 0.9 + width / 2.0),
    };
    let (half, floor) = (width / 2.0, radius - depth + width / 2.0);
    let wall = (radius * radius - half * half).sqrt() - floor;
    let lead_in = if rng.random() && wall > 0.3 {
        rng.random_range(0.1..wall.min(2.0))
    } else {
        0.0
    };
    Slot {
        mark,
        width,
        depth,
        lead_in,
    }
}

fn case(rng: &mut ChaCha8Rng) -> Case {
    let mut dial = Dial {
        positions: 4,
        ..Dial::default()
    };
    let radius = rng.random_range(5.0..30.0);
    dial.disc.radius = radius;
    dial.disc.slots = vec![slot(rng, radius, 0)];
    let through = dial.disc.slots[0].depth >= 2.0 * radius;
    if rng.random() && !through {
        let mut other = slot(rng, radius, 2);
        other.depth = other.depth.min(radius * 0.8);
        other.lead_in = other.lead_in.min(0.05);
        if other.depth < 2.0 * radius - dial.disc.slots[0].depth - 1.0 {
            dial.disc.slots.push(other);
        }
    }
    dial.pin.diameter = rng.random_range(0.5..0.5 * radius);
    dial.pin.gap = rng.random_range(0.1..3.0);
    dial.pin.offset = rng.random_range(-0.5..0.5) * radius;
    let turn_deg = match rng.random_range(0..4) {
        0 => rng.random_range(-180.0..180.0),
        1 => 0.0,
        _ => rng.random_range(-25.0..25.0),
    };
    Case {
        dial,
        turn_deg,
        travel: rng.random_range(2.0..1.8 * radius),
    }
}

fn real_slots(case: &Case) -> Vec<RealSlot> {
    case.dial
        .disc
        .slots
        .iter()
        .map(|slot| RealSlot {
            turn: (case.turn_deg + slot.mark as f64 * 90.0).to_radians(),
            width: slot.width,
            depth: slot.depth,
            lead_in: slot.lead_in,
        })
        .collect()
}

fn kind(feature: Feature) -> StopsAt {
    match feature {
        Feature::Rim => StopsAt::Rim,
        Feature::OuterCorner(_) | Feature::LeadIn(_) => StopsAt::Mouth,
        Feature::Wall(_) => StopsAt::Wall,
        Feature::Floor(_) => StopsAt::Floor,
    }
}

#[test]
fn reach_agrees_with_a_polygon_cut_out_of_plain_shapes() {
    let mut rng = ChaCha8Rng::seed_from_u64(3);
    let (mut worst, mut stopped, mut grazes) = (0.0_f64, 0, 0);
    for number in 0..DISCS {
        let case = case(&mut rng);
        let path = PinPath::nominal(&case.dial, case.travel);
        let start = Point::new(path.aside, -path.below);
        let found = reach(&case.dial, path, case.turn_deg);
        let disc = polygon::disc(case.dial.disc.radius, &real_slots(&case), CHORDS);
        let stop = |radius: f64| {
            polygon::first_contact(&disc, start, radius, case.travel)
                .map_or(case.travel, |(travel, _)| travel)
        };
        // Where the way only just grazes an edge, a hair of radius decides whether it stops there:
        // the true answer lies between those of a pin that much thinner and that much thicker.
        let hair = 2.0 * CHORDS;
        let (thick, thin) = (stop(path.radius + hair), stop(path.radius - hair));
        let off = (thick - found.travel).max(found.travel - thin);
        let plain = (stop(path.radius) - found.travel).abs();
        if plain > 0.002 {
            grazes += 1;
        } else {
            worst = worst.max(plain);
        }
        assert!(
            off <= 0.002,
            "disc {number}: {} but between {thick} and {thin}; turned {}° {:?}",
            found.travel,
            case.turn_deg,
            case.dial
        );
        stopped += usize::from(found.stops_at != StopsAt::Free);
    }
    println!(
        "{DISCS} discs, {stopped} stop their pin, {grazes} only just, else within {worst:.6} mm"
    );
    assert!(stopped > DISCS / 2 && stopped < DISCS && grazes < DISCS / 50);
}

#[test]
fn reach_agrees_with_the_stepped_outline_in_place_and_kind() {
    let mut rng = ChaCha8Rng::seed_from_u64(4);
    let mut seen = [0_usize; 5];
    for number in 0..10 * DISCS {
        let case = case(&mut rng);
        let path = PinPath::nominal(&case.dial, case.travel);
        let start = Point::new(path.aside, -path.below);
        let found = reach(&case.dial, path, case.turn_deg);
        let Some(disc) = Outline::new(case.dial.disc.radius, &real_slots(&case)) else {
            continue;
        };
        let (travel, stops_at) = disc
            .first_contact(start, path.radius, case.travel)
            .map_or((case.travel, StopsAt::Free), |touch| {
                (touch.travel, kind(touch.feature))
            });
        seen[stops_at as usize] += 1;
        assert!(
            (found.travel - travel).abs() < 1e-5,
            "disc {number}: {} at {:?}, stepped {travel} at {stops_at:?}; turned {}° {:?}",
            found.travel,
            found.stops_at,
            case.turn_deg,
            case.dial
        );
        // a wall ends where the lead-in or the floor begins: there both names are right
        let neighbours = |one, other| {
            matches!(
                (one, other),
                (StopsAt::Wall, StopsAt::Mouth | StopsAt::Floor)
            )
        };
        assert!(
            found.stops_at == stops_at
                || neighbours(found.stops_at, stops_at)
                || neighbours(stops_at, found.stops_at)
                || found.travel > case.travel - 1e-5,
            "disc {number}: {:?} or {stops_at:?}; turned {}° {:?}",
            found.stops_at,
            case.turn_deg,
            case.dial
        );
    }
    println!("free, rim, mouth, wall, floor: {seen:?}");
    assert!(seen.iter().all(|times| *times > 100), "{seen:?}");
}
