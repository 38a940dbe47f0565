//! Mending: the smallest change found makes the whole design proven, and what is cut stays as it is.

use latchwright_solver::change::{LatchSize, Size, Step};
use latchwright_solver::model::Design;
use latchwright_solver::propose::{Mend, Part, mend};
use latchwright_solver::{Change, Severity, Unit, prove};
use rand::RngExt;
use rand::SeedableRng;
use rand::seq::IndexedRandom;
use rand_chacha::ChaCha8Rng;

fn spoilt(spoil: impl Fn(&mut Design)) -> Design {
    let mut design = Design::default();
    spoil(&mut design);
    assert!(!prove(&design).proven);
    design
}

fn holds(design: &Design, mend: &Mend) {
    let after = mend.change.apply(design);
    let proof = prove(&after);
    assert!(proof.proven);
    assert_eq!(proof, mend.proof);
}

#[test]
fn one_size_that_was_spoilt_is_one_size_to_mend_and_no_step_too_much() {
    for spoil in [
        (|design: &mut Design| design.tab.engagement = 5.0) as fn(&mut Design),
        |design| design.dials[1].pin.gap = 0.8,
        |design| design.slider.below = 0.3,
        |design| design.plate.rabbet = 6.2,
        |design| design.dials[0].disc.slots[0].width = 6.5,
    ] {
        let design = spoilt(spoil);
        let mend = mend(&design, &[]).expect("a change that mends it");
        holds(&design, &mend);
        assert_eq!(mend.sizes, 1, "{:?}", mend.change);
        // a step of the finest grid less on everything that moves does not do
        let mut less = mend.change.clone();
        for step in &mut less.steps {
            if let Step::Resize { from, to, .. } = step {
                *to -= 0.05 * (*to - *from).signum();
            }
        }
        assert!(!prove(&less.apply(&design)).proven, "{less:?}");
    }
}

#[test]
fn two_things_wrong_are_two_sizes_to_mend() {
    let design = spoilt(|design| {
        design.dials[1].pin.gap = 0.8;
        design.slider.below = 0.3;
    });
    let mend = mend(&design, &[]).expect("a change that mends it");
    holds(&design, &mend);
    assert_eq!(mend.sizes, 2, "{:?}", mend.change);
}

#[test]
fn what_is_cut_stays_as_it_was_cut() {
    let design = spoilt(|design| design.dials[1].pin.gap = 0.8);
    let cut = [Part::Plate, Part::Slider];
    let mended = mend(&design, &cut).expect("a smaller disc");
    holds(&design, &mended);
    let after = mended.change.apply(&design);
    for (before, after) in design.dials.iter().zip(&after.dials) {
        assert_eq!(before.centre, after.centre);
        assert!((before.pin_at().1 - after.pin_at().1).abs() < 1e-9);
    }
    assert!(after.dials[1].disc.radius < 18.0);
    // with the discs printed too, nothing is left to change
    let all = [cut[0], cut[1], Part::Disc(0), Part::Disc(1), Part::Disc(2)];
    assert_eq!(mend(&design, &all), None);
}

#[test]
fn a_keeper_that_is_still_loose_makes_up_for_a_tab_that_is_cut() {
    let design = spoilt(|design| design.tab.engagement = 5.2);
    let mended = mend(&design, &[Part::Plate, Part::Slider]);
    let Some(mended) = mended else {
        panic!("the keeper could be set further back");
    };
    holds(&design, &mended);
    let after = mended.change.apply(&design);
    let tip = |design: &Design| design.keeper.edge - design.tab.engagement;
    assert!((tip(&design) - tip(&after)).abs() < 1e-9);
}

#[test]
fn a_design_that_is_proven_or_has_faults_is_not_mended() {
    assert_eq!(mend(&Design::default(), &[]), None);
    let mut faulty = Design::default();
    faulty.combination.pop();
    assert_eq!(mend(&faulty, &[]), None);
}

fn is_of_the_slider(size: Size) -> bool {
    matches!(
        size,
        Size::Latch(LatchSize::Travel | LatchSize::Engagement | LatchSize::SliderBelow)
    )
}

#[test]
fn most_designs_with_two_sizes_spoilt_are_mended_and_never_in_vain() {
    let hunt = std::env::var_os("LATCHWRIGHT_HUNT").is_some();
    let (mut tried, mut found) = (0, 0);
    for number in 0..if hunt { 60 } else { 8 } {
        let mut rng = ChaCha8Rng::seed_from_u64(number);
        let mut design = Design::default();
        let mut sizes = Size::all(&design);
        let lengths = |size: &Size| size.is_built() && size.unit() == Unit::Millimetre;
        sizes.retain(|size| lengths(size) && (size.dial().is_some() || is_of_the_slider(*size)));
        for _ in 0..2 {
            let size = *sizes.choose(&mut rng).expect("a design has sizes");
            let was = size.get(&design).expect("one of its sizes");
            size.set(&mut design, was * rng.random_range(0.7..1.4));
        }
        let proof = prove(&design);
        let sound = !proof
            .faults
            .iter()
            .any(|fault| fault.severity == Severity::Error);
        if proof.proven || !sound {
            continue;
        }
        tried += 1;
        if let Some(mend) = mend(&design, &[]) {
            found += 1;
            holds(&design, &mend);
            let nothing = Change { steps: Vec::new() };
            assert_ne!(mend.change, nothing);
        }
    }
    println!("{found} of {tried} mended");
    assert!(tried > 0 && found * 10 >= tried * 7, "{found} of {tried}");
}
