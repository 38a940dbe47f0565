//! How prisms whose outlines touch in a point are moved against one another, and how far at most.

use latchwright_geometry::Point;

use crate::region::Region;

/// How far two prisms that can touch are moved against one another at least, and how far each is then
/// grown, so that what touches itself in a point is joined there or parted; mm. The first that helps
/// is taken.
pub(crate) const NUDGES: [(f64, f64); 5] = [
    (0.0, 0.0),
    (0.0015, 0.0),
    (0.004, 0.0),
    (0.0, 0.003),
    (0.004, 0.003),
];

/// Rings of places round the first one. With 3 there are 37 places, and as many prisms can lie over
/// one another before two share a place; with more, the outermost would be moved further.
const RINGS: i32 = 3;

/// How far each of the prisms over `regions` is moved where those that can touch are to be moved
/// against one another by `shift` at least, both in mm. None is moved by more than √10 times that.
///
/// Prisms that lie beside one another do not touch and have the same place: the first one stays, and
/// of a plate with many holes all holes move alike.
pub(crate) fn moves(regions: &[&Region], shift: f64) -> Vec<Point> {
    let places = places(shift);
    let mut taken: Vec<usize> = Vec::with_capacity(regions.len());
    for (index, region) in regions.iter().enumerate() {
        let beside = regions.iter().zip(&taken).take(index);
        let others: Vec<usize> = beside
            .filter(|(other, _)| can_touch(region, other))
            .map(|(_, place)| *place)
            .collect();
        let free = (0..places.len()).find(|place| !others.contains(place));
        // more than there are places for lie over one another: some two of them move alike
        taken.push(free.unwrap_or(index % places.len()));
    }
    taken
        .iter()
        .map(|place| places.get(*place).copied().unwrap_or_default())
        .collect()
}

/// Places in a triangular pattern, the nearest first, `shift` or a little more from one another; none
/// lies straight along an axis from the first.
fn places(shift: f64) -> Vec<Point> {
    let one = Point::new(shift, shift / 3.0);
    // a sixth of a turn further
    let half_root_3 = 0.75_f64.sqrt();
    let other = Point::new(
        0.5 * one.x - half_root_3 * one.y,
        half_root_3 * one.x + 0.5 * one.y,
    );
    let mut steps: Vec<(i32, i32)> = (-RINGS..=RINGS)
        .flat_map(|one| (-RINGS..=RINGS).map(move |other| (one, other)))
        .filter(|steps| ring(*steps) <= RINGS)
        .collect();
    steps.sort_by_key(|steps| (ring(*steps), -steps.0, -steps.1));
    steps
        .iter()
        .map(|(along, across)| one * f64::from(*along) + other * f64::from(*across))
        .collect()
}

/// The ring round the first place on which the place so many steps away lies.
fn ring((one, other): (i32, i32)) -> i32 {
    one.abs().max(other.abs()).max((one + other).abs())
}

/// Boxes nearer than this may touch once they are moved: far more than any of them is, mm.
const NEAR_MM: f64 = 0.1;

/// Whether the outlines may meet, as far as can be told by the boxes round them.
fn can_touch(one: &Region, other: &Region) -> bool {
    let (Some((low, high)), Some((other_low, other_high))) = (one.bounds(), other.bounds()) else {
        return false;
    };
    low.x - NEAR_MM <= other_high.x
        && other_low.x - NEAR_MM <= high.x
        && low.y - NEAR_MM <= other_high.y
        && other_low.y - NEAR_MM <= high.y
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::outline::Outline;

    /// What the comments promise, mm: √10 times the largest shift.
    const FURTHEST_MM: f64 = 0.013;

    fn largest_shift() -> f64 {
        NUDGES.iter().map(|(shift, _)| *shift).fold(0.0, f64::max)
    }

    fn blocks(count: u32, step: f64) -> Vec<Region> {
        let block = |index| {
            let at = f64::from(index) * step;
            Region::from(Outline::block(Point::new(at, at), 2.0, 2.0))
        };
        (0..count).map(block).collect()
    }

    #[test]
    fn nothing_is_moved_by_more_than_thirteen_thousandths_however_many_there_are() {
        // over one another, in a chain corner to corner, and far apart
        for step in [0.0, 0.01, 2.0, 50.0] {
            let regions = blocks(200, step);
            let all: Vec<&Region> = regions.iter().collect();
            let moves = moves(&all, largest_shift());
            let furthest = moves.iter().map(|by| by.length()).fold(0.0, f64::max);
            assert!(furthest <= FURTHEST_MM, "{step}: {furthest}");
            assert_eq!(moves[0], Point::default(), "the first stays");
        }
    }

    #[test]
    fn all_that_lie_over_one_another_part_by_the_shift() {
        let regions = blocks(37, 0.0);
        let all: Vec<&Region> = regions.iter().collect();
        for (shift, _) in NUDGES {
            let moves = moves(&all, shift);
            for (index, one) in moves.iter().enumerate() {
                for other in &moves[..index] {
                    assert!((*one - *other).length() >= shift, "{one:?} {other:?}");
                }
            }
        }
    }

    #[test]
    fn what_lies_apart_stays_and_neighbours_in_a_chain_move_by_one_step() {
        let (apart, chain) = (blocks(60, 50.0), blocks(60, 2.0));
        let all = |regions: &[Region]| moves(&regions.iter().collect::<Vec<_>>(), 0.004);
        assert!(all(&apart).iter().all(|by| *by == Point::default()));
        let moved = all(&chain);
        let step = Point::new(0.004, 0.004 / 3.0);
        for (index, by) in moved.iter().enumerate() {
            let expected = if index % 2 == 0 {
                Point::default()
            } else {
                step
            };
            assert_eq!(*by, expected, "{index}");
        }
    }
}
