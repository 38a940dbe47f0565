//! How long a maker waits: for the first design that is proven, and for the reason why there is none.
//! Goal for the first: 0.2 s. All three proposals are measured in the session's bench, where there are
//! threads. Every run checks its answer.

use std::ops::ControlFlow;

use divan::{Bencher, black_box};
use latchwright_model::{Design, Grain, Material};
use latchwright_proof::prove;
use latchwright_search::Progress;
use latchwright_search::propose::{DialWish, Outcome, Proposal, Wishes, propose};

fn main() {
    divan::main();
}

fn wishes(width: f64, depth: f64, dials: usize, marks: u32) -> Wishes {
    let mut wishes = Wishes::of(Design::default()).with_lid(width, depth);
    wishes.dials = vec![DialWish::numbered(marks); dials];
    wishes.pins = vec![3.0, 4.0, 5.0, 6.0];
    wishes
}

/// A lid for three, four and six dials; the last with a printed slider that drifts under its plate.
fn sizes() -> [Wishes; 3] {
    let mut large = wishes(400.0, 300.0, 6, 10);
    large.base.plate.grain = Grain::AlongX;
    large.base.slider.material = Material::Printed;
    [
        wishes(220.0, 140.0, 3, 8),
        wishes(300.0, 180.0, 4, 12),
        large,
    ]
}

#[divan::bench(args = [0, 1, 2], sample_count = 20)]
fn the_first_design_that_is_proven(bencher: Bencher, size: usize) {
    let wishes = &sizes()[size];
    bencher.bench_local(|| {
        let found = propose(black_box(wishes), &mut |progress| {
            if progress.found.is_empty() {
                ControlFlow::Continue(())
            } else {
                ControlFlow::Break(())
            }
        });
        let Outcome::Found(found) = found else {
            panic!("there is one");
        };
        assert!(found[0].proof.proven);
        found
    });
}

/// What the others are measured against: the whole proof of the roomiest of the same wishes, once.
#[divan::bench(args = [0, 1, 2], sample_count = 20)]
fn for_comparison_one_whole_proof(bencher: Bencher, size: usize) {
    let stop = |progress: Progress<'_, Proposal>| {
        if progress.found.is_empty() {
            ControlFlow::Continue(())
        } else {
            ControlFlow::Break(())
        }
    };
    let Outcome::Found(found) = propose(&sizes()[size], &mut { stop }) else {
        panic!("there is one");
    };
    bencher.bench_local(|| {
        let proof = prove(black_box(&found[0].design));
        assert!(proof.proven);
        proof
    });
}

#[divan::bench(sample_count = 5)]
fn why_five_dials_of_36_marks_cannot_be_had(bencher: Bencher) {
    let wishes = wishes(220.0, 140.0, 5, 36);
    bencher.bench_local(|| {
        let Outcome::Nothing(why) = propose(black_box(&wishes), &mut |_| ControlFlow::Continue(()))
        else {
            panic!("there is no room for them");
        };
        assert_eq!(why.conflict.len(), why.nearest.len());
        why
    });
}
