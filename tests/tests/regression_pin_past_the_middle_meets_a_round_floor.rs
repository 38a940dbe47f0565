//! A pin that goes past the middle of its disc beside the slot's middle line comes to the round
//! floor sooner than one on that line, and turning the disc makes it worse, not better. The depth
//! was once promised as if the pin were on the line.

use latchwright_model::Design;
use latchwright_proof::{Verdict, verdicts};
use latchwright_tests::planted::{SIZES, to_the_edge};
use latchwright_tests::real_box::Workshop;
use latchwright_tests::{promise, search};
use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;

/// One small disc whose slot runs past its middle, the pin well to the side.
fn latch() -> Design {
    let mut design = Design::default();
    design.dials.remove(2);
    design.dials.remove(0);
    design.combination = vec![0];
    design.slider.travel = 16.0;
    let dial = &mut design.dials[0];
    dial.disc.radius = 10.0;
    dial.pin.diameter = 3.0;
    dial.pin.offset = 1.2;
    dial.disc.slots[0].width = 9.0;
    dial.disc.slots[0].depth = 18.0;
    dial.disc.slots[0].lead_in = 0.0;
    let work = &mut design.workmanship;
    (work.pin_place, work.bore_place, work.reading) = (0.1, 0.1, 0.5);
    design
}

#[test]
fn a_slot_past_the_middle_passes_only_a_pin_that_clears_its_round_floor() {
    let mut rng = ChaCha8Rng::seed_from_u64(8);
    let mut design = latch();
    assert_eq!(verdicts(&design)[0].marks[0].verdict, Verdict::Passes);
    let depth = SIZES
        .iter()
        .find(|size| size.name == "shallower true slot")
        .unwrap();
    let mark = (0..20).find_map(|_| to_the_edge(&mut design, 0, depth, &mut rng));
    assert_eq!(mark, Some(0));
    let workshop = Workshop::of(&design, 0).expect("a dial of the design");
    let measure = |shares: &[f64]| {
        let built = workshop.build(0, shares);
        built.map_or(f64::INFINITY, |built| {
            promise::passes(&design, &built).amount
        })
    };
    let kept = search::worst(&mut rng, workshop.shares(), 12, measure).kept;
    assert!(kept > -1e-6, "{:.4} mm short", -kept);
}
