//! Going every way from one design.

use super::BEGINNINGS;
use super::every_way::{Family, every_way};
use crate::remedy::aim::{Aim, Left};
use crate::remedy::line::{Line, Search, Start, first_that};
use crate::remedy::price::{Trial, movement};
use crate::remedy::way::Way;

/// Goes every way from `from`; what leaves nothing to mend is kept if it is the best. As long as nothing is,
/// of each way that leaves less the place that leaves least is handed back to begin from.
pub(super) fn look(search: &mut Search<'_, '_>, from: &Trial) -> Vec<Trial> {
    let start = Start::new(search.original, from, Aim::whole(&from.proof));
    let families = every_way(&start.design);
    let mut lines: Vec<Line<'_>> = Vec::new();
    // what helps nothing on all dials at once speaks for each of them
    let mut idle: Vec<(Line<'_>, &[Way])> = Vec::new();
    for Family { all, each } in &families {
        let line = search.begin(&start, all);
        if line.is_idle() {
            idle.push((line, each));
        } else {
            lines.push(line);
            lines.extend(each.iter().map(|way| search.begin(&start, way)));
        }
    }
    follow_all(search, &start, &mut lines);
    for (line, each) in idle {
        let mut further = vec![line];
        follow_all(search, &start, &mut further);
        if further.iter().any(Line::gains) {
            let mut each: Vec<_> = each.iter().map(|way| search.begin(&start, way)).collect();
            follow_all(search, &start, &mut each);
            lines.extend(further.into_iter().chain(each));
        }
    }
    beginnings(search, &start, &lines)
}

/// Follows the most promising first, what does not help at once last: what the first find keeps the others
/// short.
fn follow_all(search: &mut Search<'_, '_>, start: &Start<'_>, lines: &mut [Line<'_>]) {
    let cost = |line: &Line<'_>| {
        let one = line.way.change(&start.design, 1)?;
        Some(line.needed()? * movement(&one))
    };
    let cost = |line: &Line<'_>| cost(line).unwrap_or(f64::INFINITY);
    lines.sort_by(|one, other| {
        let idle = one.is_idle().cmp(&other.is_idle());
        idle.then(cost(one).total_cmp(&cost(other)))
    });
    for line in lines {
        if !line.is_idle() || search.further_on(start, line) {
            search.follow(start, line);
        }
    }
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
