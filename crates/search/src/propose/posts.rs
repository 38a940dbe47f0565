//! The posts that go into a bore, one a dial: worked out once for each bore and number of flats.

use core::f64::consts::PI;

use latchwright_geometry::trig;

use super::grid::{Grid, down};
use super::wishes::Marks;
use latchwright_model::key;
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

/// The most flats that a post gets for the sake of an odd number of marks.
const MOST_SIDES: u32 = 24;

/// Posts of all dials in one bore.
pub(super) struct Posts {
    /// The bore, mm.
    pub bore: f64,
    /// Flats of posts whose marks are not fixed; 0 where all are.
    pub sides: u32,
    /// One a dial.
    pub keys: Vec<Key>,
    /// Backlash of each, radians.
    pub backlash: Vec<f64>,
    /// How far the largest star reaches, mm.
    pub star: f64,
    /// Every dial's marks find a post that is thick enough.
    pub fit: bool,
}

impl Posts {
    pub(super) fn of(base: &Design, asked: &[Marks], grid: Grid, bore: f64, sides: u32) -> Self {
        let dials = base.dials.iter().zip(asked);
        let keys: Vec<Key> = dials
            .map(|(dial, marks)| post(dial, *marks, grid, (bore, sides)))
            .collect();
        let turn = |key: &Key| key::backlash(key.sides, key.apothem, key.clearance);
        let reach =
            |key: &Key| (key.apothem + key.clearance) / trig::cos(PI / f64::from(key.sides.max(3)));
        Self {
            bore,
            sides,
            backlash: keys.iter().map(turn).collect(),
            star: keys.iter().map(reach).fold(0.0, f64::max),
            fit: keys.iter().all(|key| key.apothem >= LEAST_POST),
            keys,
        }
    }
}

/// The post of a dial of so many marks: with the flats that are wished, else with those that seat its
/// marks and have the least backlash.
fn post(dial: &Dial, marks: Marks, grid: Grid, (bore, sides): (f64, u32)) -> Key {
    let of = |sides: u32| {
        let round = bore / 2.0 - dial.bore.shaft_play - ROUND_POST;
        Key {
            sides,
            apothem: down(round * trig::cos(PI / f64::from(sides.max(3))), grid.size),
            clearance: dial.key.clearance,
        }
    };
    if sides > 0 && matches!(marks, Marks::AtLeast(_)) {
        return of(sides);
    }
    let turn = |key: &Key| key::backlash(key.sides, key.apothem, key.clearance);
    let seats = (3..=MOST_SIDES).filter(|sides| dial.positions.is_multiple_of(*sides));
    seats
        .map(of)
        .filter(|key| key.apothem >= LEAST_POST)
        .min_by(|one, other| turn(one).total_cmp(&turn(other)))
        // no post seats so many marks in this bore
        .unwrap_or(Key {
            sides: 3,
            apothem: 0.0,
            clearance: 0.0,
        })
}
