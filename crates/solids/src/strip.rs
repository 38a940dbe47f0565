//! What lies within a distance to the left of an outline, as pieces to be laid over one another.

use latchwright_geometry::{Point, trig};

use crate::outline::Outline;

/// A mitre longer than this many distances is cut off.
const LONGEST_MITRE: f64 = 3.0;

/// How a strip ends at a corner.
#[derive(Clone, Copy)]
struct Corner {
    at: Point,
    /// The unit vectors to the left of the edge before and of the edge after.
    before: Point,
    after: Point,
    /// Where the moved edges meet, if both reach it.
    mitre: Option<Point>,
}

impl Corner {
    fn turns_right(&self) -> bool {
        self.before.cross(self.after) < 0.0
    }
}

/// Pieces that together cover all points within `by` (mm) on the left of each edge, and the sharp
/// corners where the outline turns away from them.
///
/// Where the moved edges meet, their strips share that mitre, so that they join without overlap.
/// Where an edge is too short for it, strips end square and overlap instead: the union is right
/// either way.
pub(crate) fn strips(outline: &Outline, by: f64) -> Vec<Outline> {
    let corners = settled(outline, by);
    let count = corners.len();
    let mut pieces = Vec::with_capacity(count);
    for index in 0..count {
        let (one, two) = (corners[index], corners[(index + 1) % count]);
        let [start, end] = moved(&one, &two, by);
        pieces.push(Outline::new(vec![one.at, two.at, end, start]));
        if one.mitre.is_none() && one.turns_right() {
            pieces.push(wedge(&one, by));
        }
    }
    pieces
}

/// From each corner to where its moved edges meet.
pub(crate) fn creases(outline: &Outline, by: f64) -> Vec<(Point, Point)> {
    settled(outline, by)
        .iter()
        .filter_map(|corner| Some((corner.at, corner.mitre?)))
        .collect()
}

/// Corners with mitres only where both edges are long enough for them; none for an outline that is
/// no area.
fn settled(outline: &Outline, by: f64) -> Vec<Corner> {
    let mut corners = corners(outline, by);
    let count = corners.len();
    if count < 3 {
        return Vec::new();
    }
    // an edge that would turn round takes the mitres at both its ends away, which may turn round
    // its neighbours
    for _ in 0..count {
        let mut settled = true;
        for index in 0..count {
            let next = (index + 1) % count;
            let (one, two) = (corners[index], corners[next]);
            let [start, end] = moved(&one, &two, by);
            let turns_round = (end - start).dot(two.at - one.at) <= 0.0;
            if turns_round && (one.mitre.is_some() || two.mitre.is_some()) {
                corners[index].mitre = None;
                corners[next].mitre = None;
                settled = false;
            }
        }
        if settled {
            break;
        }
    }
    corners
}

fn corners(outline: &Outline, by: f64) -> Vec<Corner> {
    let mut points: Vec<Point> = outline.points().to_vec();
    points.dedup_by(|a, b| a.distance(*b) < 1e-6);
    let count = points.len();
    let left = |from: Point, to: Point| {
        let along = to - from;
        along.perpendicular() * (1.0 / along.length().max(1e-12))
    };
    (0..count)
        .map(|index| {
            let at = points[index];
            let before = left(points[(index + count - 1) % count], at);
            let after = left(at, points[(index + 1) % count]);
            let mitre = mitre(before, after).map(|mitre| at + mitre * by);
            Corner {
                at,
                before,
                after,
                mitre,
            }
        })
        .collect()
}

/// From a corner to where two edges moved by 1 meet; `None` where that is too far.
fn mitre(before: Point, after: Point) -> Option<Point> {
    let half = trig::sqrt(f64::midpoint(1.0, before.dot(after)));
    let middle = before + after;
    (half * LONGEST_MITRE > 1.0).then(|| middle * (1.0 / (middle.length() * half)))
}

/// Both ends of the edge from corner `one` to corner `two`, moved to the left.
fn moved(one: &Corner, two: &Corner, by: f64) -> [Point; 2] {
    [
        one.mitre.unwrap_or(one.at + one.after * by),
        two.mitre.unwrap_or(two.at + two.before * by),
    ]
}

/// What two square ends leave open where the outline turns away.
fn wedge(corner: &Corner, by: f64) -> Outline {
    let mut points = vec![corner.at, corner.at + corner.after * by];
    points.extend(mitre(corner.before, corner.after).map(|mitre| corner.at + mitre * by));
    points.push(corner.at + corner.before * by);
    Outline::new(points)
}
