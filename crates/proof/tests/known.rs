//! What is known already gives the same proof as bounding everything again.

use latchwright_model::change::Size;
use latchwright_model::{Design, Grain, Material, Unit};
use latchwright_proof::{Known, Proof, prove_each_alone, prove_known};
use rand::RngExt;
use rand::SeedableRng;
use rand::seq::IndexedRandom;
use rand_chacha::ChaCha8Rng;

/// Another step of a search: one size a little off, now and then another stuff, the air, or back to where
/// it began.
fn step(rng: &mut ChaCha8Rng, first: &Design, design: &mut Design) {
    match rng.random_range(0..20) {
        0 => *design = first.clone(),
        1 => design.slider.material = Material::Printed,
        2 => design.slider.material = Material::Plywood,
        3 => design.plate.grain = Grain::AlongX,
        4 => design.season.dampest.humidity += 1.0,
        _ => {
            let sizes = Size::all(design);
            let size = *sizes.choose(rng).expect("a design has sizes");
            let was = size.get(design).expect("one of its sizes");
            let now = match size.unit() {
                Unit::Count => f64::from(rng.random_range(2..=16_u32)),
                _ => was * rng.random_range(0.95..1.05) + rng.random_range(-0.05..0.05),
            };
            size.set(design, now);
        }
    }
}

/// The proof without the worst boxes, and what is read off them.
fn without_boxes(mut proof: Proof) -> Proof {
    for check in &mut proof.checks {
        check.worst = None;
        check.decided_by.clear();
    }
    proof
}

#[test]
fn what_is_known_gives_the_same_proof_along_any_search() {
    let known = Known::default();
    let mut rng = ChaCha8Rng::seed_from_u64(20);
    let first = Design::default();
    let mut design = first.clone();
    for _ in 0..400 {
        step(&mut rng, &first, &mut design);
        let again = without_boxes(prove_each_alone(&design));
        assert_eq!(without_boxes(prove_known(&design, &known)), again);
        // and once more, now that all of it is known
        assert_eq!(without_boxes(prove_known(&design, &known)), again);
    }
}

#[test]
fn every_size_alone_is_told_apart_from_what_is_known_of_the_others() {
    let known = Known::default();
    for material in [Design::default().slider.material, Material::Mdf] {
        let mut first = Design::default();
        first.slider.material = material;
        prove_known(&first, &known);
        for size in Size::all(&first) {
            let mut moved = first.clone();
            let was = size.get(&first).expect("one of its sizes");
            let by = if size.unit() == Unit::Count {
                1.0
            } else {
                0.01
            };
            size.set(&mut moved, was + by);
            let again = without_boxes(prove_each_alone(&moved));
            assert_eq!(
                without_boxes(prove_known(&moved, &known)),
                again,
                "{size:?}"
            );
        }
    }
}
