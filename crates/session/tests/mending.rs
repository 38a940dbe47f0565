//! What is said of a design that needs no mending, or only some.

use core::ops::ControlFlow;

use latchwright_model::Design;
use latchwright_proof::prove;
use latchwright_search::remedy::{self, Mend};
use latchwright_session::demos;
use latchwright_session::report::{mend_sentence, not_mended_sentences};

fn mend(design: &Design) -> Option<Mend> {
    remedy::mend(design, &[], &mut |_| ControlFlow::Continue(()))
}

#[test]
fn a_box_that_opens_twice_is_told_that_nothing_is_to_be_mended_if_it_is_meant() {
    let design = demos::demo("two-ways").unwrap().design().unwrap();
    let proof = prove(&design);
    assert_eq!(mend(&design), None);
    let said = not_mended_sentences(&design, &proof, false);
    for words in [
        "if the box is meant to open so",
        "2 settings open",
        "dial 2 at ",
    ] {
        assert!(said.contains(words), "{said}");
    }
    assert!(said.contains("leave those slots out"), "{said}");

    let mut off = design;
    off.dials[0].pin.gap = 0.8;
    let found = mend(&off).expect("a wider gap");
    let said = mend_sentence(&off, &found);
    assert!(said.starts_with("Widen the gap of dial 1"), "{said}");
    assert!(said.contains("2 settings open"), "{said}");
}
