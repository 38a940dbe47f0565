//! How long the verdicts take that follow every drag, beside a polygon library that works out the
//! reach of a single dial, and the whole proof of a larger latch. Every run checks its answer.

mod polygon;

use divan::{Bencher, black_box};
use geo::{BooleanOps, Distance, Euclidean};
use latchwright_model::{Design, Dial};
use latchwright_proof::contact::{PinPath, reach};
use latchwright_proof::{Verdict, prove, verdicts};

use polygon::{circle, ring};

fn main() {
    divan::main();
}

/// Three dials of eight marks.
fn small() -> Design {
    Design::default()
}

/// Four dials of twelve marks on a wider plate, one of them with a blind slot.
fn large() -> Design {
    let mut design = Design::default();
    design.plate.width = 300.0;
    let mut dials = vec![design.dials[0].clone(); 4];
    for (number, dial) in (0_u8..).zip(&mut dials) {
        dial.positions = 12;
        dial.centre.0 = f64::from(number) * 62.0 - 93.0;
    }
    let mut blind = dials[1].disc.slots[0].clone();
    (blind.mark, blind.depth, blind.lead_in) = (5, 2.0, 0.0);
    dials[1].disc.slots.push(blind);
    design.dials = dials;
    design.combination = vec![3, 7, 0, 11];
    design
}

#[divan::bench]
fn all_verdicts_of_three_dials_of_eight(bencher: Bencher) {
    let design = small();
    bencher.bench_local(|| {
        let dials = verdicts(black_box(&design));
        let passing = dials
            .iter()
            .flat_map(|dial| &dial.marks)
            .filter(|mark| mark.verdict == Verdict::Passes)
            .count();
        assert_eq!(passing, 3);
        dials
    });
}

#[divan::bench]
fn the_whole_proof_of_three_dials_of_eight(bencher: Bencher) {
    let design = small();
    bencher.bench_local(|| {
        let proof = prove(black_box(&design));
        assert!(proof.proven);
        proof
    });
}

#[divan::bench]
fn the_whole_proof_of_four_dials_of_twelve(bencher: Bencher) {
    let design = large();
    bencher.bench_local(|| {
        let proof = prove(black_box(&design));
        assert_eq!(proof.settings.total, 12_u128.pow(4));
        proof
    });
}

/// What the proof takes over all boxes, a polygon library does for a single one: where each pin stops
/// at each of its 48 marks, nothing being off.
#[divan::bench(sample_count = 20)]
fn every_mark_of_four_dials_of_twelve_in_one_box_by_polygons(bencher: Bencher) {
    let design = large();
    bencher.bench_local(|| {
        let mut shortest = f64::INFINITY;
        for dial in &black_box(&design).dials {
            let path = PinPath::nominal(dial, design.slider.travel);
            let mut plain = dial.clone();
            plain.disc.slots.truncate(1);
            for mark in 0..dial.positions {
                let turn = dial.step_deg() * f64::from(mark);
                let found = reach_by_polygons(&plain, path, turn);
                let closed = reach(&plain, path, turn).travel;
                assert!((found - closed).abs() < 5e-3, "{found} {closed}");
                shortest = shortest.min(found);
            }
        }
        shortest
    });
}

/// Turn (degrees) and reach (mm) of the worked example where its pin meets the lead-in.
const TURN: f64 = 10.0;

#[divan::bench]
fn reach_of_one_dial_in_closed_form(bencher: Bencher) {
    let dial = worked();
    let path = PinPath::nominal(&dial, 8.0);
    bencher.bench_local(|| {
        let found = reach(black_box(&dial), path, TURN).travel;
        assert!((found - 2.5415).abs() < 5e-4, "{found}");
        found
    });
}

#[divan::bench]
fn reach_of_one_dial_by_polygons(bencher: Bencher) {
    let dial = worked();
    let path = PinPath::nominal(&dial, 8.0);
    bencher.bench_local(|| {
        let found = reach_by_polygons(black_box(&dial), path, TURN);
        assert!((found - 2.5415).abs() < 5e-3, "{found}");
        found
    });
}

/// The mechanism's own example: radius 18, pin 4 across, gap 1.5, slot 8 wide, lead-in 1.
fn worked() -> Dial {
    let mut dial = Dial::default();
    dial.pin.gap = 1.5;
    dial.disc.slots[0].width = 8.0;
    dial
}

/// The disc cut out of plain shapes, the pin slid up as far as the disc is away.
fn reach_by_polygons(dial: &Dial, path: PinPath, turn_deg: f64) -> f64 {
    let (radius, slot) = (dial.disc.radius, &dial.disc.slots[0]);
    let (sin, cos) = turn_deg.to_radians().sin_cos();
    let at = |l: f64, a: f64| (l * cos - a * sin, -l * sin - a * cos);
    let half = slot.width / 2.0;
    let floor = radius - slot.depth + half;
    let foot = (radius * radius - half * half).sqrt() - slot.lead_in;
    let (top, out) = (2.0 * radius, 2.0 * radius - foot);
    let strip = ring([
        at(-half, floor),
        at(half, floor),
        at(half, top),
        at(-half, top),
    ]);
    let (round_x, round_y) = at(0.0, floor);
    let mut disc = circle((0.0, 0.0), radius)
        .difference(&strip)
        .difference(&circle((round_x, round_y), half));
    for side in [-1.0, 1.0] {
        let wedge = ring([
            at(0.0, foot),
            at(side * half, foot),
            at(side * (half + out), top),
            at(0.0, top),
        ]);
        disc = disc.difference(&wedge);
    }
    let clear = |travel: f64| {
        let pin = geo::Point::new(path.aside, travel - path.below);
        Euclidean.distance(&disc, &pin) - path.radius
    };
    let mut travel = 0.0;
    while travel < path.travel {
        let gap = clear(travel);
        if gap < 1e-4 {
            return travel;
        }
        travel += gap;
    }
    path.travel
}
