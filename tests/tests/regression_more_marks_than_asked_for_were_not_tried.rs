//! Found by holding proposals for "at least 4" marks against those for "at least 5": the search kept to the
//! fewest marks that were asked for, and said that nothing fits. In a bore of 9 mm a square post is too
//! thin and one with five or six flats is not; a latch with more marks meets the wish as well.

use std::ops::ControlFlow;

use latchwright_model::Design;
use latchwright_search::propose::{Kind, Outcome, Proposal, propose};
use latchwright_session::questions::{Answers, Signs};

fn three_dials_of(marks: u32, lid: (f64, f64)) -> Vec<Proposal> {
    let answers = Answers {
        lid,
        dials: 3,
        signs: Signs::Figures(marks),
        ..Answers::default()
    };
    match propose(&answers.wishes(&Design::default()), &mut |_| {
        ControlFlow::Continue(())
    }) {
        Outcome::Found(found) => found,
        other => panic!("{marks} marks: {other:?}"),
    }
}

fn best(found: &[Proposal], kind: Kind) -> &Proposal {
    let best = found.iter().find(|one| one.kind == kind);
    best.expect("figures are free, so there are all three")
}

#[test]
fn at_least_so_many_marks_is_never_harder_to_have_than_more() {
    for lid in [(160.0, 120.0), (220.0, 140.0)] {
        let mut more: Option<Vec<Proposal>> = None;
        // 3, 4 and 9 marks had nothing on the smaller lid, and less on the larger than more marks had
        for marks in [10, 9, 6, 5, 4, 3] {
            let found = three_dials_of(marks, lid);
            for dial in found.iter().flat_map(|one| &one.design.dials) {
                assert!(dial.positions >= marks);
            }
            if let Some(more) = &more {
                let of = |kind| (best(&found, kind), best(more, kind));
                let (now, was) = of(Kind::Roomiest);
                assert!(
                    now.room_to_spare >= 0.95 * was.room_to_spare - 0.015,
                    "{marks} on {lid:?}"
                );
                let (now, was) = of(Kind::MostSettings);
                assert!(now.settings >= was.settings, "{marks} on {lid:?}");
                let (now, was) = of(Kind::Smallest);
                assert!(now.area <= 1.05 * was.area, "{marks} on {lid:?}");
            }
            more = Some(found);
        }
    }
}
