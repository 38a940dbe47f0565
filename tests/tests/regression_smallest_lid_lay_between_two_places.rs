//! Found by asking for the same latch on a smaller lid: the smallest lid was sought at the places of the
//! lattice and round what was found there. The roomiest is sought between the places too, and stood on a
//! lid a step smaller than the smallest.

use std::ops::ControlFlow;

use latchwright_model::Design;
use latchwright_search::propose::{Kind, Outcome, propose};
use latchwright_session::questions::{Answers, Signs};

#[test]
fn what_stands_on_a_small_lid_is_the_smallest_of_a_large_one() {
    let area = |lid: (f64, f64)| {
        let answers = Answers {
            lid,
            dials: 3,
            signs: Signs::Figures(8),
            ..Answers::default()
        };
        let Outcome::Found(found) = propose(&answers.wishes(&Design::default()), &mut |_| {
            ControlFlow::Continue(())
        }) else {
            panic!("nothing on {lid:?}");
        };
        let smallest = found.iter().find(|one| one.kind == Kind::Smallest);
        smallest.expect("always proposed").area
    };
    // 16 100 mm² before on the larger
    assert!(area((160.0, 110.0)) <= 15_400.0);
    assert!(area((220.0, 140.0)) <= 15_400.0);
}
