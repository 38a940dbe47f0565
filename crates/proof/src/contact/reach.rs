//! Reach of one pin against a disc that is held still: the first hit of a ray on the disc's outline
//! grown by the pin's radius, in closed form.

use latchwright_geometry::{EPSILON, Point, Ray, trig};

use crate::verdict::{Reach, StopsAt};
use latchwright_model::slot::{Mouth, SlotShape, mouths};
use latchwright_model::{Dial, Slot};

/// The pin's straight way, from the dial's centre: x = `aside`, starting `below` under it, up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PinPath {
    /// Radius of the pin, mm.
    pub radius: f64,
    /// x of its middle line from the dial's centre, mm.
    pub aside: f64,
    /// How far its middle starts below the dial's centre, mm.
    pub below: f64,
    /// How far it may go, mm.
    pub travel: f64,
}

impl PinPath {
    /// The pin of `dial` with nothing off, for a slider of this `travel`.
    pub fn nominal(dial: &Dial, travel: f64) -> Self {
        Self {
            radius: dial.pin.diameter / 2.0,
            aside: dial.pin.offset,
            below: dial.pin_below(),
            travel,
        }
    }
}

/// A slot with its place: shape and clockwise turn from the direction that faces the pin, radians.
struct Placed {
    shape: SlotShape,
    turn: f64,
}

/// Reach of the pin on `path` against the disc of `dial` whose true slot is turned clockwise by
/// `turn_deg` from the direction that faces the pin (−y). Touching is allowed, overlap is not.
///
/// Slots that run into one another (a fault of the design) are treated by leaving out contacts that
/// lie in another slot.
pub fn reach(dial: &Dial, path: PinPath, turn_deg: f64) -> Reach {
    let radius = dial.disc.radius;
    let free = Reach {
        travel: path.travel,
        stops_at: StopsAt::Free,
        contact: None,
    };
    if !(radius > 0.0 && path.radius > 0.0 && path.below.is_finite() && path.aside.is_finite()) {
        return free;
    }
    let placed: Vec<Placed> = mouths(dial, 0.0)
        .map(|mouth| Placed {
            shape: shape_of(radius, &mouth),
            turn: trig::radians(trig::wrap_deg(turn_deg + mouth.turn_deg)),
        })
        .collect();

    let mut first = Hit {
        travel: path.travel,
        stops_at: StopsAt::Free,
        contact: None,
    };
    rim_hit(radius, path, &placed, &mut first);
    for (index, slot) in placed.iter().enumerate() {
        // the path in the slot's frame: (l, a)
        let (sin, cos) = (trig::sin(slot.turn), trig::cos(slot.turn));
        let ray = Ray {
            start: Point::new(
                path.aside * cos + path.below * sin,
                path.below * cos - path.aside * sin,
            ),
            direction: Point::new(-sin, -cos),
        };
        for (travel, stops_at, at) in slot_hits(&slot.shape, ray, path.radius)
            .into_iter()
            .flatten()
        {
            let contact = Point::new(at.x * cos - at.y * sin, -at.x * sin - at.y * cos);
            let elsewhere = placed
                .iter()
                .enumerate()
                .any(|(other, slot)| other != index && lies_in(slot, contact));
            if !elsewhere {
                first.offer(travel, stops_at, contact);
            }
        }
    }
    Reach {
        travel: first.travel,
        stops_at: first.stops_at,
        contact: first.contact.map(|at| (at.x, at.y)),
    }
}

struct Hit {
    travel: f64,
    stops_at: StopsAt,
    contact: Option<Point>,
}

impl Hit {
    fn offer(&mut self, travel: f64, stops_at: StopsAt, contact: Point) {
        if travel < self.travel - EPSILON {
            *self = Self {
                travel,
                stops_at,
                contact: Some(contact),
            };
        }
    }
}

fn shape_of(radius: f64, mouth: &Mouth) -> SlotShape {
    SlotShape::new(
        radius,
        &Slot {
            mark: 0,
            width: mouth.width,
            depth: mouth.depth,
            lead_in: mouth.lead_in,
        },
    )
}

/// The rim stops the pin if it first comes within reach of the centre outside every mouth.
fn rim_hit(radius: f64, path: PinPath, placed: &[Placed], first: &mut Hit) {
    let ray = Ray {
        start: Point::new(path.aside, -path.below),
        direction: Point::new(0.0, 1.0),
    };
    let Some(travel) = ray.enters_circle(Point::default(), radius + path.radius) else {
        return;
    };
    let towards = ray.at(travel) * (radius / (radius + path.radius));
    // clockwise from −y, the sense in which slots are turned
    let angle = trig::atan2(-towards.x, -towards.y);
    let in_mouth = placed.iter().any(|slot| {
        let apart = trig::radians(trig::wrap_deg(trig::degrees(angle - slot.turn))).abs();
        apart < slot.shape.half_angle
    });
    if !in_mouth {
        first.offer(travel, StopsAt::Rim, towards);
    }
}

type SlotHit = Option<(f64, StopsAt, Point)>;

/// What the pin may hit of one slot, in the slot's frame.
fn slot_hits(slot: &SlotShape, ray: Ray, pin: f64) -> [SlotHit; 9] {
    let mut hits = [None; 9];
    for (side, chunk) in [-1.0, 1.0].into_iter().zip(hits.chunks_mut(4)) {
        let at = |l: f64, a: f64| Point::new(side * l, a);
        let corner = |at: Point| {
            ray.enters_circle(at, pin)
                .map(|travel| (travel, StopsAt::Mouth, at))
        };
        let outer = at(
            slot.rim_half + slot.lead_out,
            slot.wall_top() + slot.lead_out,
        );
        let inner = at(slot.rim_half, slot.wall_top());
        let edge = |from: Point, to: Point, void: Point, what: StopsAt| {
            ray.meets_edge(from, to, void, pin)
                .map(|travel| (travel, what, ray.at(travel) - void * pin))
        };
        let slope = Point::new(-side, 1.0) * core::f64::consts::FRAC_1_SQRT_2;
        let lead = (slot.lead_in > 0.0).then(|| edge(inner, outer, slope, StopsAt::Mouth));
        let wall = (!slot.shallow).then(|| {
            let foot = if slot.through {
                -slot.rim_top
            } else {
                slot.floor_centre
            };
            edge(
                at(slot.half_width, foot),
                inner,
                Point::new(-side, 0.0),
                StopsAt::Wall,
            )
        });
        chunk.copy_from_slice(&[
            corner(outer),
            (slot.lead_in > 0.0).then(|| corner(inner)).flatten(),
            lead.flatten(),
            wall.flatten(),
        ]);
    }
    hits[8] = floor_hit(slot, ray, pin);
    hits
}

/// The round floor is met from inside: the centre leaves the circle that is smaller by the pin.
fn floor_hit(slot: &SlotShape, ray: Ray, pin: f64) -> SlotHit {
    let clearance = slot.half_width - pin;
    if slot.through || clearance < -EPSILON {
        return None;
    }
    let centre = Point::new(0.0, slot.floor_centre);
    let travel = ray.leaves_circle(centre, clearance.max(0.0))?;
    let outward = ray.at(travel) - centre;
    let length = outward.length();
    let contact = if length > EPSILON {
        centre + outward * (slot.half_width / length)
    } else {
        centre + ray.direction * slot.half_width
    };
    let top = if slot.shallow {
        slot.rim_top
    } else {
        slot.floor_centre
    };
    (contact.y <= top + EPSILON).then_some((travel, StopsAt::Floor, contact))
}

/// Whether a point of the plan (from the dial's centre) lies inside what this slot cuts away.
fn lies_in(slot: &Placed, point: Point) -> bool {
    let (sin, cos) = (trig::sin(slot.turn), trig::cos(slot.turn));
    let l = (point.x * cos - point.y * sin).abs();
    let a = -point.x * sin - point.y * cos;
    let shape = &slot.shape;
    let in_strip = l < shape.half_width - EPSILON && (shape.through || a > shape.floor_centre);
    let in_floor = trig::hypot(l, a - shape.floor_centre) < shape.half_width - EPSILON;
    let in_lead = shape.lead_in > 0.0
        && a > shape.wall_top()
        && l < shape.half_width + (a - shape.wall_top()) - EPSILON;
    in_strip || in_floor || in_lead
}

#[cfg(test)]
mod tests {
    use super::*;
    use latchwright_model::{Disc, Pin};

    fn example() -> Dial {
        let slots = vec![Slot {
            mark: 0,
            width: 8.0,
            depth: 9.0,
            lead_in: 1.0,
        }];
        Dial {
            disc: Disc {
                radius: 18.0,
                slots,
                ..Disc::default()
            },
            pin: Pin {
                offset: 0.0,
                diameter: 4.0,
                gap: 1.5,
                ..Pin::default()
            },
            ..Dial::default()
        }
    }

    /// Check values made with an independent polygon library with the outline within 0.0001 mm; they hold
    /// within ± 0.0005.
    #[test]
    fn reach_agrees_with_the_published_table() {
        let table = [
            (0.0, [8.0, 8.0, 8.0]),
            (4.0, [8.0, 8.0, 3.918]),
            (6.0, [8.0, 8.0, 2.986]),
            (7.0, [8.0, 4.156, 2.5575]),
            (10.0, [8.0, 2.5415, 1.713]),
            (14.0, [2.138, 1.559, 1.525]),
            (20.0, [1.525, 1.500, 1.525]),
            (45.0, [1.525, 1.500, 1.525]),
        ];
        for (turn, row) in table {
            for (aside, expected) in [-1.0, 0.0, 1.0].into_iter().zip(row) {
                let path = PinPath {
                    aside,
                    ..PinPath::nominal(&example(), 8.0)
                };
                let found = reach(&example(), path, turn).travel;
                assert!(
                    (found - expected).abs() <= 0.0005,
                    "{turn}° e = {aside}: {found}"
                );
            }
        }
    }

    #[test]
    fn the_place_of_contact_is_named() {
        let stop = |turn, aside| {
            let path = PinPath {
                aside,
                ..PinPath::nominal(&example(), 8.0)
            };
            reach(&example(), path, turn).stops_at
        };
        assert_eq!(stop(0.0, 0.0), StopsAt::Free);
        assert_eq!(stop(7.0, 0.0), StopsAt::Mouth);
        assert_eq!(stop(4.0, 1.0), StopsAt::Mouth);
        assert_eq!(stop(14.0, 0.0), StopsAt::Mouth);
        assert_eq!(stop(20.0, 0.0), StopsAt::Rim);
    }

    #[test]
    fn the_floor_stops_a_pin_that_would_go_deeper() {
        let path = PinPath::nominal(&example(), 20.0);
        let stop = reach(&example(), path, 0.0);
        assert_eq!(stop.stops_at, StopsAt::Floor);
        assert!(
            (stop.travel - 10.5).abs() < 1e-9,
            "gap 1.5 and depth 9: {}",
            stop.travel
        );
    }

    #[test]
    fn a_pin_as_wide_as_its_slot_still_goes_in() {
        let mut dial = example();
        dial.pin.diameter = 8.0;
        let stop = reach(&dial, PinPath::nominal(&dial, 8.0), 0.0);
        assert_eq!(stop.stops_at, StopsAt::Free, "touching is allowed");
    }

    #[test]
    fn a_shallow_blind_slot_lets_the_pin_in_as_far_as_its_floor() {
        let mut dial = example();
        dial.disc.slots[0] = Slot {
            mark: 0,
            width: 9.0,
            depth: 2.0,
            lead_in: 0.0,
        };
        let stop = reach(&dial, PinPath::nominal(&dial, 8.0), 0.0);
        assert_eq!(stop.stops_at, StopsAt::Floor);
        assert!((stop.travel - 3.5).abs() < 1e-9);
    }

    #[test]
    fn a_slot_cut_through_lets_the_pin_in_from_either_side() {
        let mut dial = example();
        dial.disc.slots[0].depth = 36.0;
        for turn in [0.0, 180.0] {
            let stop = reach(&dial, PinPath::nominal(&dial, 8.0), turn);
            assert_eq!(stop.stops_at, StopsAt::Free, "{turn}°");
        }
    }
}
