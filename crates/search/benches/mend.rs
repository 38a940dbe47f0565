//! How long a maker waits for what mends a design. Goals: half a second for the remedies of a design that
//! fails nearly everywhere, two seconds to mend one size that is off, and ten where nothing does. Every run
//! checks its answer.

use core::ops::ControlFlow;

use divan::{Bencher, black_box};
use latchwright_model::Design;
use latchwright_proof::prove;
use latchwright_search::remedy::{all, mend};

fn main() {
    divan::main();
}

/// The usual box with its guide's play this wide, mm: most checks fail.
fn loose(play: f64) -> Design {
    let mut design = Design::default();
    design.slider.guide_play = play;
    design
}

/// What the others are measured against: the whole proof of the same design, once.
#[divan::bench(args = [0.2, 0.6], sample_count = 20)]
fn for_comparison_one_whole_proof(bencher: Bencher, play: f64) {
    let design = loose(play);
    bencher.bench_local(|| {
        let proof = prove(black_box(&design));
        assert!(!proof.proven);
        proof
    });
}

#[divan::bench(args = [0.2, 0.6], sample_count = 5)]
fn remedies_of_a_design_that_fails_nearly_everywhere(bencher: Bencher, play: f64) {
    let design = loose(play);
    let proof = prove(&design);
    bencher.bench_local(|| {
        let found = all(black_box(&design), &proof, &mut |_| {
            ControlFlow::Continue(())
        });
        assert!(found.iter().flatten().count() > 5);
        found
    });
}

#[divan::bench(args = [0.2, 0.6], sample_count = 5)]
fn mending_one_size_that_is_off(bencher: Bencher, play: f64) {
    let design = loose(play);
    bencher.bench_local(|| {
        let mended = mend(black_box(&design), &[], &mut |_| ControlFlow::Continue(()));
        assert!(mended.as_ref().is_some_and(|mended| mended.sizes == 1));
        mended
    });
}

#[divan::bench(sample_count = 5)]
fn mending_two_things_that_are_wrong(bencher: Bencher) {
    let mut design = Design::default();
    design.dials[1].pin.gap = 0.8;
    design.slider.below = 0.3;
    bencher.bench_local(|| {
        let mended = mend(black_box(&design), &[], &mut |_| ControlFlow::Continue(()));
        assert!(mended.as_ref().is_some_and(|mended| mended.sizes == 2));
        mended
    });
}

#[divan::bench(sample_count = 2)]
fn giving_up_where_nothing_mends(bencher: Bencher) {
    let mut design = Design::default();
    design.workmanship.print = 1.0;
    bencher.bench_local(|| {
        let mended = mend(black_box(&design), &[], &mut |_| ControlFlow::Continue(()));
        assert_eq!(mended, None);
    });
}
