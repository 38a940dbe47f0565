//! How many marks the dials have, and the posts that seat them.
//!
//! A post of three flats turns least in its bore, but in a thin bore posts of more flats are thick enough
//! and those of fewer are not: where marks are not fixed, a few more of them may well have more room, or
//! a latch where there is none.

use core::f64::consts::PI;

use itertools::Itertools;
use latchwright_geometry::trig;

use super::grid::{Grid, down};
use super::wishes::{DialWish, Marks, Wishes};
use latchwright_model::key;
use latchwright_model::validate::MAX_POSITIONS;
use latchwright_model::{Design, Dial, Key};

/// What the shaft has round its post's corners, mm.
///
/// # Source
/// Common practice, no source.
pub(super) const ROUND_POST: f64 = 0.5;

/// The thinnest post, mm to a flat: a thinner one is twisted off by hand.
///
/// # Source
/// Common practice, no source.
pub(super) const LEAST_POST: f64 = 3.0;

/// Flats of a post where the marks are not fixed: with more it is a round one that spins.
pub(super) const SIDES: [u32; 4] = [3, 4, 5, 6];

/// The most flats that a post gets for the sake of an odd number of marks: with more it spins.
const MOST_SIDES: u32 = 24;

/// Flats that the posts of dials may have whose marks are raised: one number for all dials, or the
/// nearest of two or three. With fewer sets, wishes of thin bores and unlike marks have no latch.
const FLATS: [&[u32]; 8] = [
    &[3],
    &[4],
    &[5],
    &[6],
    &[3, 4],
    &[4, 5],
    &[5, 6],
    &[4, 5, 6],
];

/// How many marks each dial has.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Marking {
    /// One entry a dial; the least where they are as many as can be.
    pub positions: Vec<u32>,
    /// Flats of all posts whose marks are not fixed, where they are as many as can be.
    pub as_many_as_can_be: Option<u32>,
}

impl Marking {
    /// As many marks as are asked for, and a few more where that suits other posts.
    pub(super) fn as_asked(asked: &[Marks]) -> Vec<Self> {
        let of = |raised: &dyn Fn(u32) -> u32| Self {
            positions: asked.iter().map(|marks| seated(*marks, raised)).collect(),
            as_many_as_can_be: None,
        };
        let any = |number| first_from(number, &SIDES);
        let more = FLATS
            .iter()
            .map(|flats| of(&|number| first_from(any(number), flats)));
        core::iter::once(of(&any))
            .chain(more)
            .unique_by(|marking| marking.positions.clone())
            .collect()
    }

    /// As many marks as can be where they are not fixed, with each number of flats.
    pub(super) fn as_many(asked: &[Marks]) -> Vec<Self> {
        let of = |sides: u32| Self {
            positions: asked
                .iter()
                .map(|marks| seated(*marks, &|number| first_from(number, &[sides])))
                .collect(),
            as_many_as_can_be: Some(sides),
        };
        SIDES.into_iter().map(of).collect()
    }

    /// The number, among those with as many marks as can be, of that with the flats of a latch.
    pub(super) fn with_flats_of(wishes: &Wishes, latch: &Design) -> usize {
        let free = |(wish, _): &(&DialWish, &Dial)| matches!(wish.marks, Marks::AtLeast(_));
        let dial = wishes.dials.iter().zip(&latch.dials).find(free);
        let sides = dial.map(|(_, dial)| dial.key.sides);
        let number = SIDES.iter().position(|flats| Some(*flats) == sides);
        number.unwrap_or_default()
    }
}

/// The number of marks, raised where it is not fixed.
fn seated(marks: Marks, raised: &dyn Fn(u32) -> u32) -> u32 {
    match marks {
        Marks::Exactly(number) => number,
        Marks::AtLeast(number) => raised(number.max(3)),
    }
}

/// The first number from this one on that a post with one of these numbers of flats seats, of those that
/// a dial can have; itself where none does.
fn first_from(number: u32, flats: &[u32]) -> u32 {
    let seats = |number: &u32| flats.iter().any(|flats| number.is_multiple_of(*flats));
    (number..=MAX_POSITIONS).find(seats).unwrap_or(number)
}

/// Posts of all dials in one bore.
pub(super) struct Posts {
    /// One a dial.
    pub keys: Vec<Key>,
    /// Backlash of each, radians.
    pub backlash: Vec<f64>,
    /// How far the largest star reaches, mm.
    pub star: f64,
}

impl Posts {
    /// Posts for these marks in a bore of so many mm; `None` where one would be too thin.
    pub(super) fn of(
        base: &Design,
        asked: &[Marks],
        marking: &Marking,
        grid: Grid,
        bore: f64,
    ) -> Option<Self> {
        let dials = base.dials.iter().zip(asked).zip(&marking.positions);
        let keys: Vec<Key> = dials
            .map(|((dial, marks), positions)| {
                let sides = marking.as_many_as_can_be;
                match (marks, sides) {
                    (Marks::AtLeast(_), Some(sides)) => thick(post(dial, grid, bore, sides)),
                    _ => least_turning(dial, *positions, grid, bore),
                }
            })
            .collect::<Option<_>>()?;
        let reach =
            |key: &Key| (key.apothem + key.clearance) / trig::cos(PI / f64::from(key.sides.max(3)));
        Some(Self {
            backlash: keys.iter().map(turn).collect(),
            star: keys.iter().map(reach).fold(0.0, f64::max),
            keys,
        })
    }
}

fn turn(key: &Key) -> f64 {
    key::backlash(key.sides, key.apothem, key.clearance)
}

/// The thickest post with so many flats in this bore, mm.
fn post(dial: &Dial, grid: Grid, bore: f64, sides: u32) -> Key {
    let round = bore / 2.0 - dial.bore.shaft_play - ROUND_POST;
    Key {
        sides,
        apothem: down(round * trig::cos(PI / f64::from(sides.max(3))), grid.size),
        clearance: dial.key.clearance,
    }
}

fn thick(key: Key) -> Option<Key> {
    (key.apothem >= LEAST_POST).then_some(key)
}

/// The post that seats so many marks and turns least.
fn least_turning(dial: &Dial, positions: u32, grid: Grid, bore: f64) -> Option<Key> {
    let seats = (3..=MOST_SIDES).filter(|sides| positions.is_multiple_of(*sides));
    seats
        .filter_map(|sides| thick(post(dial, grid, bore, sides)))
        .min_by(|one, other| turn(one).total_cmp(&turn(other)))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(asked: &[Marks]) -> Vec<Vec<u32>> {
        let all = Marking::as_asked(asked);
        all.into_iter().map(|marking| marking.positions).collect()
    }

    #[test]
    fn dials_get_the_marks_of_posts_that_turn_least_or_are_thickest() {
        let at_least = |marks: &[u32]| {
            let asked: Vec<Marks> = marks.iter().map(|marks| Marks::AtLeast(*marks)).collect();
            of(&asked)
        };
        assert_eq!(at_least(&[8, 8]), [[8, 8], [9, 9], [10, 10], [12, 12]]);
        assert_eq!(at_least(&[3]), [[3], [4], [5], [6]]);
        assert_eq!(at_least(&[7])[0], [8], "no post seats 7");
        assert_eq!(at_least(&[60]), [[60]]);
        let unlike = at_least(&[5, 8]);
        for marks in [[6, 9], [5, 8], [5, 10], [6, 12], [6, 8]] {
            assert!(unlike.contains(&marks.to_vec()), "{marks:?}");
        }
    }

    #[test]
    fn fixed_marks_stay_and_none_are_more_than_a_dial_can_have() {
        assert_eq!(of(&[Marks::Exactly(7)]), [[7]]);
        for marks in [MAX_POSITIONS - 1, MAX_POSITIONS] {
            let all = of(&[Marks::AtLeast(marks)]).concat();
            assert!(all.into_iter().all(|marks| marks <= MAX_POSITIONS));
        }
    }
}
