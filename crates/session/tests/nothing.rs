//! Why nothing can be had, in sentences that name what is to blame and what would do.

use std::ops::ControlFlow;

use latchwright_model::Design;
use latchwright_model::change::{DialSize, Size};
use latchwright_search::propose::{Demand, DialWish, Nothing, Outcome, Wishes, propose};
use latchwright_session::report::{nearest_in_words, nothing_sentence, nothing_text};

fn why(wishes: &Wishes) -> Nothing {
    match propose(wishes, &mut |_| ControlFlow::Continue(())) {
        Outcome::Nothing(why) => *why,
        other => panic!("{other:?}"),
    }
}

fn on_lid(width: f64, depth: f64, dials: usize, marks: u32) -> Wishes {
    let mut wishes = Wishes::of(Design::default()).with_lid(width, depth);
    wishes.dials = vec![DialWish::numbered(marks); dials];
    wishes.pins = vec![3.0, 4.0, 5.0, 6.0];
    wishes
}

#[test]
fn a_lid_too_small_is_named_with_its_size_and_the_nearest() {
    // it used to say "a lid 120 mm wide cannot be had", and nothing else
    let why = why(&on_lid(120.0, 100.0, 5, 36));
    let sentence = nothing_sentence(&why);
    assert!(sentence.contains("120 mm"), "{sentence}");
    assert!(sentence.contains("nearest"), "{sentence}");
    for near in &why.nearest {
        let words = nearest_in_words(&why.wishes, near);
        assert!(sentence.contains(&words), "{sentence}: {words}");
        assert!(nothing_text(&why).contains(&words));
    }
}

#[test]
fn where_the_lid_alone_can_give_it_is_said_how_wide_it_has_to_be_and_how_wide_it_is() {
    let mut wishes = on_lid(180.0, 140.0, 5, 8);
    wishes.pinned = (0..5)
        .map(|dial| (Size::Dial(dial, DialSize::KnobDiameter), 40.0))
        .collect();
    let why = why(&wishes);
    let mut nearest = why.nearest.iter();
    let wide = nearest.find(|near| near.demands == [Demand::Width]);
    let words = nearest_in_words(&wishes, wide.expect("a wider lid will do"));
    let sentence = nothing_sentence(&why);
    assert!(sentence.contains("yours is 180 mm"), "{sentence}");
    assert!(sentence.contains(&words), "{sentence}: {words}");
}

#[test]
fn more_marks_than_a_dial_can_have_are_told_by_their_number() {
    for marks in [361, u32::MAX] {
        let sentence = nothing_sentence(&why(&on_lid(220.0, 140.0, 1, marks)));
        assert!(sentence.contains(&marks.to_string()), "{sentence}");
    }
}
