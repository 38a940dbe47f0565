//! From a lid to a proven latch: what the maker knows goes in, complete and proven designs come out,
//! or the reason why there are none.
//!
//! Every proposal is on a grid of round figures, with bits, pins and stock that the maker has; all
//! its dials are alike but for their marks, so that one disc, one pin and one bore serve them all.
//! The sizes that are chosen first make up a list of `choices`; for each of them the sizes that follow
//! are solved for (`solve`) by the plain sums (`weigh`), which are the proof's own margins. A `sweep`
//! goes over all choices for one kind of latch and climbs from the best. Nothing is handed out that
//! [`latchwright_proof::prove`] does not call proven.
//!
//! First the roomiest is looked for; from there (`search`) more settings and a smaller lid, which know
//! nothing of each other. Where nothing is found, demands are let go until it is plain which cannot all
//! be had (`why`), then each only as far as it must be (`nearest`).
//!
//! A proposal may be beaten by up to a twentieth in room or area and by one seat of one dial in settings:
//! what only served the last per cent was taken out. That it is proven, and that nothing fits, stays
//! strict.

mod choices;
mod demand;
mod floor;
mod frontier;
mod grid;
mod grow;
mod latch;
mod margin;
mod marking;
mod nearest;
mod proposal;
mod search;
mod solve;
mod stack;
mod sweep;
mod unmet;
mod unreadable;
mod weigh;
mod why;
mod wishes;

use latchwright_model::Design;

pub use demand::{Demand, alike};
pub use frontier::{Better, Finer, Frontier, OnLid, frontier};
pub use grid::Grid;
pub use margin::Margin;
pub use nearest::Nearest;
pub use proposal::{Kind, Proposal};
pub use search::{Outcome, ROOMIEST, better, others, propose, roomiest};
pub use unmet::{Unmet, grid_of, unmet};
pub use unreadable::Unreadable;
pub use weigh::{margins, room_to_spare};
pub use why::Nothing;
pub use wishes::{DialWish, Marks, Wishes};

/// The least latch with this room to spare at one of all choices that the search goes over; `None` where
/// there is none. With a room of 0 it has nothing to spare by the plain sums.
///
/// Which choice is said by two shares from 0 to 1: of all choices, and of the places of the back row at
/// it. With `as_many` dials have as many marks as can be. For those who look after the search.
pub fn at_choice(
    wishes: &Wishes,
    as_many: bool,
    choice: f64,
    back: f64,
    room: f64,
) -> Option<Design> {
    sweep::at(wishes, as_many, choice, back, room)
}
