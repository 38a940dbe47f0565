//! A disc as a polygon of a foreign library, cut out of plain shapes, and the reach of a pin
//! against it.

use std::f64::consts::PI;

use geo::{BooleanOps, Contains, Distance, Euclidean, LineString, MultiPolygon, Polygon};
use latchwright_geometry::Point;

use crate::outline::RealSlot;

/// Shortest step of a pin on its way, mm.
const STEP: f64 = 5e-4;

/// The disc with its slots cut out; its arcs are replaced by chords that stray at most `accuracy`
/// mm from them.
pub fn disc(rim: f64, slots: &[RealSlot], accuracy: f64) -> MultiPolygon {
    let whole = MultiPolygon::new(vec![circle(Point::default(), rim, accuracy)]);
    slots.iter().fold(whole, |left, slot| {
        left.difference(&cut(rim, slot, accuracy))
    })
}

/// What one slot takes away: the strip, its round floor and the lead-in's two wedges.
fn cut(rim: f64, slot: &RealSlot, accuracy: f64) -> MultiPolygon {
    let (out, across) = (
        Point::new(-slot.turn.sin(), -slot.turn.cos()),
        Point::new(slot.turn.cos(), -slot.turn.sin()),
    );
    let at = |l: f64, a: f64| across * l + out * a;
    let half = slot.width / 2.0;
    let through = slot.depth >= 2.0 * rim;
    let floor = if through {
        -2.0 * rim
    } else {
        rim - slot.depth + half
    };
    let far = 2.0 * rim + slot.depth;
    let strip = ring(&[
        at(-half, floor),
        at(half, floor),
        at(half, far),
        at(-half, far),
    ]);
    let mut gone = MultiPolygon::new(vec![strip]);
    if !through {
        let round = MultiPolygon::new(vec![circle(at(0.0, floor), half, accuracy)]);
        gone = gone.union(&round);
    }
    let top = (rim * rim - half * half).sqrt();
    // a lead-in is no longer than the wall, and a slot without walls has none
    let foot = (top - slot.lead_in).max(floor);
    if slot.lead_in > 0.0 && floor < top {
        for side in [-1.0, 1.0] {
            // from the middle line outwards, so that no edge is shared with the strip
            let wedge = ring(&[
                at(0.0, foot),
                at(side * half, foot),
                at(side * (half + far), foot + far),
                at(0.0, foot + far),
            ]);
            gone = gone.union(&MultiPolygon::new(vec![wedge]));
        }
    }
    gone
}

/// Chords half inside and half outside the circle.
fn circle(middle: Point, radius: f64, accuracy: f64) -> Polygon {
    let chords = (PI / (accuracy / radius).sqrt()).ceil().max(12.0);
    let outside = radius / (1.0 - (1.0 - (PI / chords).cos()) / 2.0);
    let corner = |number: f64| {
        let angle = 2.0 * PI * number / chords;
        middle + Point::new(angle.cos(), angle.sin()) * outside
    };
    let corners: Vec<Point> = (0..4096)
        .map(f64::from)
        .take_while(|number| *number < chords)
        .map(corner)
        .collect();
    ring(&corners)
}

fn ring(corners: &[Point]) -> Polygon {
    let line: LineString = corners.iter().map(|at| (at.x, at.y)).collect();
    Polygon::new(line, Vec::new())
}

/// Travel at which a pin of `radius` that starts at `start` and slides up first comes nearer to
/// the disc than its radius, and the place it touches; `None` within `travel`.
pub fn first_contact(
    disc: &MultiPolygon,
    start: Point,
    radius: f64,
    travel: f64,
) -> Option<(f64, Point)> {
    let clear = |done: f64| {
        let at = geo::Point::new(start.x, start.y + done);
        if disc.contains(&at) {
            -radius
        } else {
            Euclidean.distance(disc, &at) - radius
        }
    };
    let mut done = 0.0;
    loop {
        let gap = clear(done);
        if gap < 0.0 {
            let (mut yes, mut no) = ((done - STEP).max(0.0), done);
            for _ in 0..24 {
                let middle = f64::midpoint(yes, no);
                if clear(middle) >= 0.0 {
                    yes = middle;
                } else {
                    no = middle;
                }
            }
            let at = Point::new(start.x, start.y + yes);
            return Some((yes, nearest(disc, at)));
        }
        if done >= travel {
            return None;
        }
        done = (done + gap.max(STEP)).min(travel);
    }
}

fn nearest(disc: &MultiPolygon, from: Point) -> Point {
    let mut best = (f64::INFINITY, Point::default());
    for line in disc.iter().flat_map(|part| part.exterior().lines()) {
        let (a, b) = (
            Point::new(line.start.x, line.start.y),
            Point::new(line.end.x, line.end.y),
        );
        let (along, to) = (b - a, from - a);
        let square = along.x * along.x + along.y * along.y;
        let share = if square > 0.0 {
            ((to.x * along.x + to.y * along.y) / square).clamp(0.0, 1.0)
        } else {
            0.0
        };
        let at = a + along * share;
        let far = (at.x - from.x).hypot(at.y - from.y);
        if far < best.0 {
            best = (far, at);
        }
    }
    best.1
}
