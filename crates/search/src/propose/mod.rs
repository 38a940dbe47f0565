//! From a lid to a proven latch: what the maker knows goes in, complete and proven designs come out,
//! or the reason why there are none.
//!
//! Every proposal is on a grid of round figures, with bits, pins and stock that the maker has; all
//! its dials are alike but for their marks, so that one disc, one pin and one bore serve them all.
//! The search looks at every place of a fixed lattice (`lattice`); sizes that follow are solved for
//! (`solve`) by the plain sums (`plain`). Nothing is handed out that [`latchwright_proof::prove`] does not
//! call proven.
//!
//! First the roomiest is looked for, in one way through the lattice (`pass`); what was found is looked
//! round, between its places and beyond them (`climb`). From there pursuits go on that know nothing of
//! each other (`pursuit`): more room with other marks, more settings, a smaller lid. Where nothing is
//! found, demands are let go until it is plain which cannot all be had (`conflict`), then each only as
//! far as it must be (`nearest`).

mod bears;
mod beside_pull;
mod climb;
mod conflict;
mod demand;
mod demands;
mod figure;
mod floor;
mod found;
mod frontier;
mod grid;
mod in_plate;
mod lattice;
mod more_marks;
mod nearest;
mod neighbours;
mod pass;
mod place;
mod plain;
mod posts;
mod proposal;
mod pursuit;
mod raise;
mod round;
mod say;
mod search;
mod sizes;
mod solve;
mod stack;
mod unreadable;
mod wishes;

pub use conflict::Nothing;
pub use demand::Demand;
pub use demands::{grid_of, unmet};
pub use figure::{Figure, Question};
pub use frontier::{Better, Frontier, OnLid, frontier};
pub use grid::Grid;
pub use nearest::Nearest;
pub use place::at_place;
pub use plain::{figures, least_room};
pub use proposal::{Kind, Proposal};
pub use pursuit::{News, Pursuit};
pub use search::{Go, Outcome, Progress, Search, propose};
pub use unreadable::Unreadable;
pub use wishes::{DialWish, Marks, Wishes};
