//! Found by the law of the mirror at its full size: for more settings the search looked round its finds
//! with the flats of the first dial's post for all, took the first dial's post for the simplicity of all,
//! and went another way through two rows when the dials were asked for from right to left.

use std::ops::ControlFlow;

use latchwright_model::{Design, Grain, Material};
use latchwright_search::propose::{DialWish, Outcome, Wishes, propose};

/// What is found for dials of so many marks, from left to right: room, settings, area, in each kind.
fn found(marks: &[u32]) -> Vec<(f64, u128, f64)> {
    let mut base = Design::default();
    base.plate.grain = Grain::AlongX;
    base.slider.material = Material::Plywood;
    let mut wishes = Wishes::of(base).with_lid(230.0, 200.0);
    wishes.dials = marks
        .iter()
        .map(|marks| DialWish::numbered(*marks))
        .collect();
    match propose(&wishes, &mut |_| ControlFlow::Continue(())) {
        Outcome::Found(found) => found
            .iter()
            .map(|one| (one.room_to_spare, one.settings, one.area))
            .collect(),
        other => panic!("{other:?}"),
    }
}

#[test]
fn four_unlike_dials_have_the_same_latches_from_either_side() {
    for marks in [[5, 8, 6, 7], [4, 4, 6, 9]] {
        let mut reversed = marks;
        reversed.reverse();
        assert_eq!(found(&marks), found(&reversed), "{marks:?}");
    }
}
