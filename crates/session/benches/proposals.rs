//! How long a maker waits for the three proposals on all cores, beside the same on one. Goal on a
//! machine of two cores: 3 s. Every run checks its answer.

use std::ops::ControlFlow;

use std::thread::available_parallelism;

use divan::{Bencher, black_box};
use latchwright_model::{Design, Grain, Material};
use latchwright_search::propose::{DialWish, Outcome, Wishes};
use latchwright_session::proposals::run;

fn main() {
    divan::main();
}

fn wishes(width: f64, depth: f64, marks: &[u32]) -> Wishes {
    let mut wishes = Wishes::of(Design::default()).with_lid(width, depth);
    wishes.dials = marks
        .iter()
        .map(|marks| DialWish::numbered(*marks))
        .collect();
    wishes.pins = vec![3.0, 4.0, 5.0, 6.0];
    wishes
}

/// A lid for three dials and for four, then three of a printed slider that drifts under its plate: six
/// dials alike, five and six with unlike marks.
fn sizes() -> [Wishes; 5] {
    let drifting = |marks: &[u32]| {
        let mut wishes = wishes(400.0, 300.0, marks);
        wishes.base.plate.grain = Grain::AlongX;
        wishes.base.slider.material = Material::Printed;
        wishes
    };
    [
        wishes(220.0, 140.0, &[8; 3]),
        wishes(300.0, 180.0, &[12; 4]),
        drifting(&[10; 6]),
        drifting(&[6, 8, 10, 8, 12]),
        drifting(&[6, 8, 10, 8, 12, 10]),
    ]
}

fn three(bencher: Bencher, size: usize, threads: usize) {
    let wishes = &sizes()[size];
    bencher.bench_local(|| {
        let Outcome::Found(found) = run(black_box(wishes), threads, &mut |_| {
            ControlFlow::Continue(())
        }) else {
            panic!("there are three");
        };
        assert_eq!(found.len(), 3);
        found
    });
}

#[divan::bench(args = [0, 1, 2, 3, 4], sample_count = 5)]
fn the_three_proposals(bencher: Bencher, size: usize) {
    three(
        bencher,
        size,
        available_parallelism().map_or(1, usize::from),
    );
}

#[divan::bench(args = [0, 1, 2, 3, 4], sample_count = 5)]
fn for_comparison_on_one_thread(bencher: Bencher, size: usize) {
    three(bencher, size, 1);
}
