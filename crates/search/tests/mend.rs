//! Mending: the smallest change found makes the whole design proven, and what is cut stays as it is.

use core::ops::ControlFlow;

use latchwright_model::change::{DialSize, LatchSize, Size, Step};
use latchwright_model::{Change, Unit};
use latchwright_model::{Design, Slot};
use latchwright_proof::prove;
use latchwright_search::propose::{DialWish, Go, Outcome, Wishes, propose};
use latchwright_search::remedy::{self, Mend, Part, all_but_meant, settled};
use rand::RngExt;
use rand::SeedableRng;
use rand::seq::IndexedRandom;
use rand_chacha::ChaCha8Rng;

fn mend(design: &Design, cut: &[Part]) -> Option<Mend> {
    remedy::mend(design, cut, &mut |_| ControlFlow::Continue(()))
}

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
        let sound = !proof.faults.iter().any(latchwright_model::Fault::is_error);
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

/// Proven designs that differ: the usual one, and what is proposed for some lids.
fn proven() -> Vec<Design> {
    let mut designs = vec![Design::default()];
    for (lid, dials, marks) in [
        ((220.0, 140.0), 2, 12),
        ((320.0, 200.0), 4, 8),
        ((200.0, 160.0), 1, 16),
    ] {
        let mut wishes = Wishes::of(Design::default()).with_lid(lid.0, lid.1);
        wishes.dials = vec![DialWish::numbered(marks); dials];
        wishes.pins = vec![3.0, 4.0, 5.0];
        let Outcome::Found(found) = propose(&wishes, &mut |_| Go::On) else {
            panic!("{lid:?}");
        };
        designs.extend(found.into_iter().map(|found| found.design));
    }
    designs
}

/// Sizes of parts that a maker can make otherwise: not the lid, the room, what is asked, nor the plays.
fn can_be_made_otherwise(size: Size) -> bool {
    let given = matches!(
        size,
        Size::Latch(
            LatchSize::PlateWidth
                | LatchSize::PlateDepth
                | LatchSize::InsideWidth
                | LatchSize::InsideDepth
                | LatchSize::InsideHeight
                | LatchSize::RequiredHold
                | LatchSize::GuidePlay
        ) | Size::Dial(_, DialSize::ShaftPlay | DialSize::Clearance)
    );
    size.is_built() && size.unit() == Unit::Millimetre && !given
}

/// A proven design, and the same with one size some twentieths of a millimetre off, so that nothing is
/// proven any more.
fn broken(rng: &mut ChaCha8Rng, designs: &[Design], sizes: usize) -> Option<(Design, String, f64)> {
    let mut design = designs.choose(rng)?.clone();
    let (mut named, mut moved) = (Vec::new(), 0.0);
    for _ in 0..sizes {
        let mut all = Size::all(&design);
        all.retain(|size| can_be_made_otherwise(*size));
        let size = *all.choose(rng)?;
        let was = size.get(&design)?;
        let by = f64::from(rng.random_range(1..=80)) / 20.0;
        let by = if rng.random() { by } else { -by };
        let off = ((was + by) * 20.0).round() / 20.0;
        size.set(&mut design, off);
        named.push(format!("{} {was} to {off}", size.name()));
        moved += (off - was).abs();
    }
    let proof = prove(&design);
    let sound = !proof.faults.iter().any(latchwright_model::Fault::is_error);
    (!proof.proven && sound).then(|| (design, named.join(", "), moved))
}

#[test]
fn a_proven_design_with_one_size_off_is_mended_by_no_more_than_that() {
    let hunt = std::env::var_os("LATCHWRIGHT_HUNT").is_some();
    let (designs, wanted) = (proven(), if hunt { 600 } else { 24 });
    let mut rng = ChaCha8Rng::seed_from_u64(60);
    let (mut tried, mut missed) = (0, Vec::new());
    while tried < wanted {
        let Some((design, name, by)) = broken(&mut rng, &designs, 1) else {
            continue;
        };
        tried += 1;
        let Some(found) = mend(&design, &[]) else {
            println!("nothing mends {name}");
            missed.push(name);
            continue;
        };
        holds(&design, &found);
        if found.sizes > 1 || found.movement > by + 1e-6 {
            println!(
                "{name}: {} sizes, {} mm: {:?}",
                found.sizes, found.movement, found.change
            );
            missed.push(name);
        }
    }
    assert!(
        missed.is_empty(),
        "{} of {tried}: {missed:#?}",
        missed.len()
    );
}

#[test]
fn two_sizes_off_are_mended_by_no_more_sizes_than_that() {
    let hunt = std::env::var_os("LATCHWRIGHT_HUNT").is_some();
    let (designs, wanted) = (proven(), if hunt { 200 } else { 6 });
    let mut rng = ChaCha8Rng::seed_from_u64(61);
    let (mut tried, mut missed) = (0, Vec::new());
    while tried < wanted {
        let Some((design, name, _)) = broken(&mut rng, &designs, 2) else {
            continue;
        };
        tried += 1;
        let found = mend(&design, &[]);
        if let Some(found) = &found {
            holds(&design, found);
        }
        if found.as_ref().is_none_or(|found| found.sizes > 2) {
            println!("{name}: {:?}", found.map(|found| found.change));
            missed.push(name);
        }
    }
    println!("{} of {tried} not mended by two sizes", missed.len());
    assert!(missed.len() * 20 <= tried, "{missed:#?}");
}

#[test]
fn a_second_opening_that_is_meant_is_left_alone_and_the_rest_is_mended() {
    let mut twice = Design::default();
    let slots = &mut twice.dials[1].disc.slots;
    let second = Slot {
        mark: 4,
        ..slots[0].clone()
    };
    slots.push(second);
    let proof = prove(&twice);
    assert!(!proof.proven && all_but_meant(&twice, &proof) && settled(&twice, &proof));
    assert_eq!(mend(&twice, &[]), None);

    let mut off = twice.clone();
    off.dials[0].pin.gap = 0.8;
    let found = mend(&off, &[]).expect("a wider gap");
    assert_eq!(found.sizes, 1, "{:?}", found.change);
    let after = found.change.apply(&off);
    assert_eq!(after.dials[1].disc.slots, twice.dials[1].disc.slots);
    assert!(settled(&after, &found.proof) && !found.proof.proven);

    // a decoy that lets its pin in by mistake is none that is meant
    let mut decoy = twice;
    decoy.dials[1].disc.slots[1].depth = 8.0;
    let proof = prove(&decoy);
    assert!(!settled(&decoy, &proof));
}
