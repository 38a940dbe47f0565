//! The frontier: every lid's latch is proven, more lid never bears less, finer work buys something.

use std::ops::ControlFlow;

use latchwright_model::change::LatchSize;
use latchwright_model::{Design, Size, Step};
use latchwright_proof::prove;
use latchwright_search::propose::{DialWish, Finer, Frontier, Outcome, Wishes, frontier, propose};

fn wishes() -> Wishes {
    let mut wishes = Wishes::of(Design::default()).with_lid(240.0, 150.0);
    wishes.pins = vec![3.0, 4.0];
    wishes
}

fn whole(wishes: &Wishes) -> Frontier {
    let mut before = 0.0;
    let found = frontier(wishes, &mut |done| {
        assert!((before..=1.0 + 1e-9).contains(&done), "{before} {done}");
        before = done;
        ControlFlow::Continue(())
    });
    assert!(!found.stopped);
    assert!((before - 1.0).abs() < 1e-9, "{before}");
    found
}

#[test]
fn each_larger_lid_bears_more_settings_and_every_latch_is_proven() {
    let wishes = wishes();
    let found = whole(&wishes);
    assert!(found.lids.len() > 2);
    for lid in &found.lids {
        let design = &lid.proposal.design;
        let proof = prove(design);
        assert!(proof.proven && proof.settings.total == lid.settings);
        assert_eq!(
            (design.plate.width, design.plate.depth),
            (lid.width, lid.depth)
        );
        assert!(lid.width <= 1.3 * 240.0 && lid.depth <= 1.3 * 150.0);
        let marks = lid.marks.iter().map(|marks| u128::from(*marks));
        assert_eq!(marks.product::<u128>(), lid.settings);
    }
    for (small, large) in found.lids.iter().zip(found.lids.iter().skip(1)) {
        assert!(small.settings < large.settings);
        assert!(small.width * small.depth < large.width * large.depth);
    }
    // what the maker has, and what more of it would buy
    let with = |width: f64| found.lids.iter().any(|lid| lid.width == width);
    assert!(with(240.0) && with(275.0) && with(310.0));
    // a single dial has the lid to itself, and bears at least as many as any of several
    let most = found.most_marks.unwrap();
    let mine = found.lids.iter().filter(|lid| lid.width <= 240.0);
    let several = mine.flat_map(|lid| &lid.marks).max().unwrap();
    assert!(most >= *several, "{most} {several}");
}

#[test]
fn what_it_is_measured_from_is_what_is_proposed() {
    let found = whole(&wishes());
    let Outcome::Found(proposals) = propose(&wishes(), &mut |_| ControlFlow::Continue(())) else {
        panic!("there are proposals");
    };
    for better in &found.better {
        assert_eq!(better.room.0, Some(proposals[0].room_to_spare));
        assert_eq!(better.settings.0, proposals[1].settings);
    }
    // nor does the lid bear less than that
    let mine = found
        .lids
        .iter()
        .find(|lid| (lid.width, lid.depth) == found.given);
    assert!(mine.unwrap().settings >= proposals[1].settings);
}

#[test]
fn on_a_lid_for_one_dial_all_that_is_said_of_it_agrees() {
    let mut wishes = Wishes::of(Design::default()).with_lid(75.0, 125.0);
    // two short hinges side by side
    let hinge = &mut wishes.base.body.hinge;
    (hinge.length, hinge.inset) = (20.0, 14.0);
    wishes.dials = vec![DialWish::numbered(5)];
    wishes.pins = vec![3.0, 4.0];
    let found = whole(&wishes);
    let mine = found
        .lids
        .iter()
        .find(|lid| (lid.width, lid.depth) == found.given);
    let mine = mine.expect("one dial fits");
    assert_eq!(mine.marks, [found.most_marks.unwrap()]);
    assert_eq!(mine.settings, found.better[0].settings.0);
}

#[test]
fn stopped_among_the_steps_it_says_nothing_of_those_that_are_left() {
    let whole = whole(&wishes());
    let found = frontier(&wishes(), &mut |done| {
        if done > 0.75 {
            ControlFlow::Break(())
        } else {
            ControlFlow::Continue(())
        }
    });
    assert!(found.stopped && found.better.len() < whole.better.len());
    assert_eq!(found.better, whole.better[..found.better.len()]);
}

#[test]
fn a_jig_and_finer_marks_never_take_anything_and_finer_marks_buy_settings() {
    let found = whole(&wishes());
    let of = |finer: Finer| {
        let mut better = found.better.iter();
        better.find(|better| better.finer == finer).unwrap()
    };
    // the usual plate is quarter-sawn already
    assert!(
        !found
            .better
            .iter()
            .any(|better| better.finer == Finer::QuarterSawn)
    );
    for finer in [Finer::Jig, Finer::Marks] {
        let better = of(finer);
        assert!(better.settings.1 >= better.settings.0, "{better:?}");
        // two rooms that differ by less than a hundredth are as good as each other
        assert!(
            better.room.1 >= better.room.0.map(|room| room - 0.01),
            "{better:?}"
        );
    }
    let finer = of(Finer::Marks);
    assert!(finer.settings.1 > finer.settings.0);
    assert!(
        matches!(
            finer.change.steps[..],
            [Step::Resize { size: Size::Latch(LatchSize::Reading), from, to }] if to < from
        ),
        "{finer:?}"
    );
    assert!(of(Finer::PrintedSlider).room.0.is_some());
}

#[test]
fn it_stops_when_it_is_told_to() {
    let found = frontier(&wishes(), &mut |_| ControlFlow::Break(()));
    assert!(found.stopped && found.lids.len() < 2);
}
