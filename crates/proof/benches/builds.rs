//! How long a million builds of three dials take on two cores, and one block of them on one, beside a
//! polygon library that works out a few pins' contacts. Every run checks its answer.

mod polygon;

use std::sync::atomic::{AtomicU64, Ordering};
use std::thread;

use divan::{Bencher, black_box};
use geo::{BooleanOps, Distance, Euclidean};
use latchwright_model::Design;
use latchwright_proof::builds::{BLOCK, Plan, Spread, Trial};
use latchwright_proof::built::{BuiltDial, BuiltLatch, Moment};
use latchwright_proof::prove;

use polygon::{circle, ring};

fn main() {
    divan::main();
}

fn plan(count: u64) -> Plan {
    Plan {
        count,
        seed: 1,
        spread: Spread::Uniform,
    }
}

/// Blocks are taken in turn by two threads, as the program does it; a block's tally is checked.
#[divan::bench(sample_count = 3, sample_size = 1)]
fn a_million_builds_of_three_dials_on_two_cores(bencher: Bencher) {
    let design = Design::default();
    let proof = prove(&design);
    let trial = Trial::of(&design, &proof, plan(1_000_000)).expect("a design without errors");
    bencher.bench_local(|| {
        let (next, count) = (AtomicU64::new(0), AtomicU64::new(0));
        thread::scope(|scope| {
            for _ in 0..2 {
                scope.spawn(|| {
                    loop {
                        let number = next.fetch_add(1, Ordering::Relaxed);
                        if number >= trial.blocks() {
                            break;
                        }
                        let tally = black_box(trial.block(number));
                        let builds = trial.summary(&tally);
                        assert!(builds.all_as_meant() && builds.contradictions == 0);
                        count.fetch_add(tally.count(), Ordering::Relaxed);
                    }
                });
            }
        });
        assert_eq!(count.load(Ordering::Relaxed), 1_000_000);
    });
}

#[divan::bench]
fn one_block_of_builds_of_three_dials(bencher: Bencher) {
    let design = Design::default();
    let proof = prove(&design);
    let trial = Trial::of(&design, &proof, plan(BLOCK)).expect("a design without errors");
    bencher.bench_local(|| {
        let tally = black_box(&trial).block(0);
        assert_eq!(tally.count(), BLOCK);
        tally
    });
}

/// The mark at which the contacts are compared: two steps from the digit, plain rim to the pin.
const MARK: u32 = 1;

/// What the pins of one built latch meet, in closed form.
#[divan::bench]
fn contacts_of_one_build(bencher: Bencher) {
    let (design, built) = some_build();
    bencher.bench_local(|| {
        let moment = Moment::of(black_box(&design), &built).expect("woods of the table");
        let stops = (0..3).map(|index| {
            let meeting = moment.meeting(index).expect("a dial");
            assert!(matches!(
                meeting.at_mark(MARK + design.digit(index)),
                latchwright_proof::built::Meets::Rim { .. }
            ));
            meeting.rim_stop().expect("a disc in the way")
        });
        let creep = stops.fold(f64::INFINITY, f64::min);
        assert!((creep - 1.9).abs() < 0.5, "{creep}");
        creep
    });
}

/// The same by polygons: each disc cut out of plain shapes, its pin slid up as far as the disc is away.
#[divan::bench]
fn contacts_of_one_build_by_polygons(bencher: Bencher) {
    let (design, built) = some_build();
    let moment = Moment::of(&design, &built).expect("woods of the table");
    bencher.bench_local(|| {
        let stops = (0..3).map(|index| {
            let meeting = moment.meeting(index).expect("a dial");
            let turn = meeting.turn_at(MARK + design.digit(index));
            let dial = &built.dials[index];
            let stop = stop_by_polygons(dial, (meeting.pin.x, meeting.pin.y), turn);
            let closed = meeting.rim_stop().expect("a disc in the way");
            assert!((stop - closed).abs() < 5e-3, "{stop} {closed}");
            stop
        });
        stops.fold(f64::INFINITY, f64::min)
    });
}

/// The default latch with a little of everything off.
fn some_build() -> (Design, BuiltLatch) {
    let design = Design::default();
    let mut built = BuiltLatch::nominal(&design);
    (built.front, built.back, built.air.humidity) = (0.6, -0.3, 60.0);
    for (number, dial) in (1_u8..).zip(&mut built.dials) {
        let share = f64::from(number) / 4.0;
        (dial.pin, dial.bore) = ((0.2 * share, -0.1), (-0.1, 0.2 * share));
        dial.rim += 0.1 * share;
        (dial.reading, dial.backlash) = (2.0 * share, -1.0);
    }
    (design, built)
}

/// Travel of the pin until the disc is no more than 0.0001 mm away.
fn stop_by_polygons(dial: &BuiltDial, pin: (f64, f64), turn: f64) -> f64 {
    let slot = dial.slots[0];
    let (sin, cos) = turn.sin_cos();
    let at = |l: f64, a: f64| (l * cos - a * sin, -l * sin - a * cos);
    let half = slot.width / 2.0;
    let floor = dial.rim - slot.depth + half;
    let foot = (dial.rim * dial.rim - half * half).sqrt() - slot.lead_in;
    let (top, out) = (2.0 * dial.rim, 2.0 * dial.rim - foot);
    let strip = ring([
        at(-half, floor),
        at(half, floor),
        at(half, top),
        at(-half, top),
    ]);
    let mut disc = circle((0.0, 0.0), dial.rim)
        .difference(&strip)
        .difference(&circle(at(0.0, floor), half));
    for side in [-1.0, 1.0] {
        let wedge = ring([
            at(0.0, foot),
            at(side * half, foot),
            at(side * (half + out), top),
            at(0.0, top),
        ]);
        disc = disc.difference(&wedge);
    }
    let mut travel = 0.0;
    loop {
        let middle = geo::Point::new(pin.0, pin.1 + travel);
        let gap = Euclidean.distance(&disc, &middle) - dial.pin_radius;
        if gap < 1e-4 || travel > 8.0 {
            return travel;
        }
        travel += gap;
    }
}
