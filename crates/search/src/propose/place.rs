//! One place of the lattice, as the search sees it: for those who look after the search.

use super::lattice::Point;
use super::pass::{Aim, Pass};
use super::wishes::Wishes;
use latchwright_model::Design;

/// The least latch with this room at one place of all that the search goes over; `None` where there is
/// none. With a room of 0 it has nothing to spare by the plain sums.
///
/// Which place is said by two shares from 0 to 1: of all places, and of the places of the back row at
/// it. With `free_marks` dials have as many marks as can be.
pub fn at_place(
    wishes: &Wishes,
    free_marks: bool,
    (place, back): (f64, f64),
    room: f64,
) -> Option<Design> {
    let mut pass = *Pass::of(wishes, free_marks, Aim::Settings(room))?;
    let solver = &mut pass.solver;
    let of = |share: f64, all: usize| {
        let at = (0..all).find(|at| share * (all as f64) < (at + 1) as f64);
        at.unwrap_or_default()
    };
    let backs = solver.lattice.backs();
    let point = Point {
        back: *backs.get(of(back, backs.len()))?,
        ..solver.lattice.point(of(place, solver.lattice.len()))?
    };
    let sizes = solver.least(&point, room, None)?;
    solver.finish(&point, &sizes, room)
}
