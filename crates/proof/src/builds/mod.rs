//! Virtual builds: many latches drawn from the stated workmanship, and what becomes of them.
//!
//! A [`Trial`] is a design ready to be built. It draws in blocks of [`BLOCK`] builds, each block with
//! its own stream of random numbers, so that block n is the same whoever draws it and whenever:
//! [`Trial::block`] gives a [`Tally`], tallies are added in the order of the blocks, and
//! [`Trial::summary`] says what they come to. A tally does not grow with the number of builds.
//!
//! **What a build is.** One built latch at one moment of its use, as in [`crate::built`]:
//! - what the maker's hands and printer leave open (places, prints, coats, and how exactly a pointer
//!   is read) is drawn from its ±, each axis and each size for itself, by [`Spread`];
//! - the air of the moment is any of the year that the proof holds over: temperature and humidity
//!   evenly and independently between the extremes of the three airs that the design names;
//! - plays are taken as they come: both guide points evenly within what the season leaves them, each
//!   shaft evenly over its disc, each disc evenly within its backlash.
//!
//! **What is asked of it.** It *opens the first time* when every dial turns free of its pin, the slider
//! can move in its guide, every pin goes through at the combination, and the tab comes out of the
//! keeper. *Every wrong setting holds* when every dial, at each of its marks but that of the
//! combination, stops its pin on plain rim or on a blind slot's floor with enough tab still held.
//! A wrong setting has at least one dial at such a mark, and what that dial does to its pin does not
//! depend on the others: the slider stops at the first that stops it. So trying each dial alone at
//! each wrong mark tries all wrong settings. The pointer is set anew for each mark: reading and
//! backlash are drawn for each.
//!
//! **What decides a margin.** The share of a margin's variance that one contributor explains is the
//! first-order index S = Var(E(margin | contributor)) / Var(margin). It is estimated from the builds
//! themselves: the range of each drawn number is cut into 16 cells, and the variance between the
//! cells' means is compared with the whole (the correlation ratio). What would show by chance
//! alone is taken off (ε², Kelley 1935). A contributor of several independent numbers, as a
//! place along x and y, counts for their sum. Shares need not add up to 1: what numbers do only together
//! (a slider's yaw takes both guide points) belongs to none of them.

mod dice;
mod figures;
mod limits;
mod row;
mod summary;
mod tally;
mod trial;

pub use figures::BuildFigure;
pub use limits::Share;
pub use summary::{Builds, Margin};
pub use tally::Tally;
pub use trial::{Contradiction, Promise, Trial};

/// Builds in a block.
pub const BLOCK: u64 = 4096;

/// How an error lies within its ±.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Spread {
    /// Any as likely as any other.
    #[default]
    Uniform,
    /// Mostly near the middle: a normal distribution of which the ± is two standard deviations, cut
    /// off at the ±.
    Normal,
}

/// How many latches are drawn, and how.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Plan {
    /// How many.
    pub count: u64,
    /// Where the random numbers begin: the same seed draws the same latches.
    pub seed: u64,
    /// How errors lie within their ±.
    pub spread: Spread,
}
