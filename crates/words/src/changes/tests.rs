//! Changes and sizes as people read them.

use super::*;
use latchwright_model::Design;
use latchwright_model::change::{DialSize, LatchSize, SlotSize};
use latchwright_model::{Board, LidKind, OwnWood};

fn resize(size: Size, from: f64, to: f64) -> Step {
    Step::Resize { size, from, to }
}

fn change(steps: &[Step]) -> Change {
    let steps = steps.to_vec();
    Change { steps }
}

#[test]
fn a_title_names_two_deeds_and_counts_the_rest() {
    let steps = [
        resize(Size::Dial(0, DialSize::Gap), 2.0, 2.15),
        resize(Size::Dial(1, DialSize::CentreX), 0.0, -1.0),
        Step::LeaveOutSlot { dial: 0, slot: 1 },
    ];
    assert_eq!(
        change_title(&change(&steps[..1])),
        "Widen the gap of dial 1"
    );
    assert_eq!(
        change_title(&change(&steps[..2])),
        "Widen the gap of dial 1 and move the centre of dial 2 to the left"
    );
    assert_eq!(
        change_title(&change(&steps)),
        "Widen the gap of dial 1, move the centre of dial 2 to the left and 1 more"
    );
    assert_eq!(
        change_title(&change(&steps[2..])),
        "Leave out slot 2 of dial 1"
    );
    let digit = change(&[resize(Size::Digit(1), 9.0, 7.0)]);
    assert_eq!(
        change_sentence(&digit, Units::Millimetre),
        "choose another mark for the combination of dial 2"
    );
}

#[test]
fn what_is_done_alike_to_several_dials_is_told_once() {
    let deeper = |dial, to| resize(Size::Slot(dial, 0, SlotSize::Depth), 9.0, to);
    let travel = resize(Size::Latch(LatchSize::Travel), 8.0, 8.5);
    assert_eq!(
        change_sentence(
            &change(&[travel, deeper(0, 9.5), deeper(1, 9.5), deeper(2, 9.6)]),
            Units::Millimetre
        ),
        "lengthen the travel from 8.00 mm to 8.50 mm, increase the depth of slot 1 of dials 1 and 2 \
         from 9.00 mm to 9.50 mm and increase the depth of slot 1 of dial 3 from 9.00 mm to 9.60 mm"
    );
    assert_eq!(
        change_title(&change(&[deeper(0, 9.5), deeper(1, 9.5), deeper(2, 9.6)])),
        "Increase the depth of slot 1 of dials 1, 2 and 3"
    );
}

#[test]
fn figures_of_a_change_are_in_the_makers_unit() {
    let travel = change(&[resize(Size::Latch(LatchSize::Travel), 12.7, 25.4)]);
    assert_eq!(
        change_sentence(&travel, Units::Inch),
        "lengthen the travel from 0.500 in to 1.000 in"
    );
}

#[test]
fn a_change_without_a_step_changes_nothing_and_a_size_without_a_dial_is_none_of_a_dial() {
    let nothing = change(&[]);
    assert_eq!(change_title(&nothing), "Change nothing");
    assert_eq!(
        change_sentence(&nothing, Units::Millimetre),
        "change nothing"
    );
    assert_eq!(size_name_on(Size::Dial(0, DialSize::Gap), &[]), "the gap");
}

#[test]
fn no_two_sizes_of_a_design_bear_the_same_name() {
    // what Size::beside speaks of has to be there
    let mut design = Design {
        own_woods: vec![OwnWood::default(); 2],
        ..Design::default()
    };
    design.body.lid = LidKind::Band { height: 20.0 };
    design.bench.boards = vec![Board::default(); 2];
    let mut sizes = Size::all(&design);
    sizes.extend(Size::beside(&design));
    let mut names: Vec<String> = sizes.iter().map(|size| size_name(*size)).collect();
    names.sort();
    names.dedup();
    assert_eq!(names.len(), sizes.len());
}
