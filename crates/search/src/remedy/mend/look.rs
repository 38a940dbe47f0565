//! Going every way from one design.

use super::BEGINNINGS;
use super::every_way::every_way;
use crate::remedy::aim::{Aim, Left};
use crate::remedy::line::{Line, Search, Start, first_that};
use crate::remedy::price::{Trial, movement};
use crate::remedy::way::Way;

/// Goes every way from `from`; what leaves nothing to mend is kept if it is the best. As long as nothing is,
/// of each way that leaves less the place that leaves least is handed back to begin from.
pub(super) fn look(search: &mut Search<'_, '_>, from: &Trial) -> Vec<Trial> {
    let start = Start::new(search.original, from, Aim::whole(&from.proof));
    let ways = every_way(&start.design);
    let begun = ways.iter().map(|way| search.begin(&start, way));
    let mut lines: Vec<Line<'_>> = begun.collect();
    // the most promising first, what does not help at once last: what the first find keeps the others short
    let cost = |line: &Line<'_>| {
        let one = line.way.change(&start.design, 1)?;
        Some(line.needed()? * movement(&one))
    };
    let cost = |line: &Line<'_>| cost(line).unwrap_or(f64::INFINITY);
    lines.sort_by(|one, other| {
        let idle = one.is_idle().cmp(&other.is_idle());
        idle.then(cost(one).total_cmp(&cost(other)))
    });
    for line in &mut lines {
        if !line.is_idle() || search.further_on(&start, line) {
            search.follow(&start, line);
        }
    }
    beginnings(search, &start, &lines)
}

/// A place that leaves less to mend, on a way of which the place before is known too.
struct Beginning<'w> {
    way: &'w Way,
    before: i64,
    steps: i64,
    left: Left,
}

impl<'w> Beginning<'w> {
    /// The place of a way that leaves least.
    fn of(line: &Line<'w>) -> Option<Self> {
        let befores = line.places.iter();
        let places = befores.zip(line.places.iter().skip(1));
        let (before, here) =
            places.min_by(|(_, one), (_, other)| one.near.left.order(&other.near.left))?;
        Some(Self {
            way: line.way,
            before: before.steps,
            steps: here.steps,
            left: here.near.left,
        })
    }
}

/// Of each way that leaves less to mend, the nearest place that leaves as little as its best.
fn beginnings(search: &mut Search<'_, '_>, start: &Start<'_>, lines: &[Line<'_>]) -> Vec<Trial> {
    if search.best.is_some() {
        return Vec::new();
    }
    let now = Left::of(&start.trial.proof);
    let begun = lines.iter().filter_map(Beginning::of);
    let mut begun: Vec<_> = begun
        .filter(|begun| begun.left.order(&now).is_lt())
        .collect();
    begun.sort_by(|one, other| one.left.order(&other.left));
    begun.truncate(BEGINNINGS);
    let mut trials = Vec::new();
    for begun in begun {
        let as_little = |steps| {
            let place = search.look(start, begun.way, steps)?;
            Some(place.near.left.is_no_more(&begun.left))
        };
        let nearest = first_that(begun.before, begun.steps, as_little).unwrap_or(begun.steps);
        trials.extend(search.trial(start.trial.price.moves.and(begun.way, nearest)));
    }
    trials
}
