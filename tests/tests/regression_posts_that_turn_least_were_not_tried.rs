//! Found by holding proposals for "at least 6" marks against those for "at least 8": posts of four flats are
//! thick enough in a bore where those of three are not, and turn less in it than those of six, but six marks
//! were sought with posts of three or six alone.

use std::ops::ControlFlow;

use latchwright_model::Design;
use latchwright_search::propose::{Kind, Outcome, propose};
use latchwright_session::questions::{Answers, Signs};

fn roomiest_of(marks: u32) -> (f64, u128) {
    let answers = Answers {
        lid: (220.0, 140.0),
        dials: 3,
        signs: Signs::Figures(marks),
        ..Answers::default()
    };
    let Outcome::Found(found) = propose(&answers.wishes(&Design::default()), &mut |_| {
        ControlFlow::Continue(())
    }) else {
        panic!("{marks} marks: nothing is found");
    };
    assert_eq!(found[0].kind, Kind::Roomiest);
    (found[0].room_to_spare, found[0].settings)
}

#[test]
fn at_least_six_marks_have_the_room_that_eight_have() {
    let ((six, settings), (eight, more_settings)) = (roomiest_of(6), roomiest_of(8));
    assert!(six >= 0.95 * eight, "{six} and {eight}");
    // six with as much room are as good as eight: of two as good as each other the simpler is taken
    assert!(
        settings >= 216 && more_settings >= 512,
        "{settings} {more_settings}"
    );
}
