//! Room between parts: disc to disc, disc to other pins, knobs for fingers, wood left in the plate,
//! slots and the key inside a disc.

use super::CheckKind;
use itertools::Itertools;
use latchwright_geometry::{EPSILON, Point, trig};

use super::finger_knob;
use super::worst_place::{To, beside_pin, in_plate};
use super::{Sums, worst_case};
use crate::bounds::DialBounds;
use crate::results::Check;
use crate::worst::{figure::Between, figure::OfSlider};
use latchwright_model::Dial;

/// Room for fingers between two knobs, mm.
///
/// # Source
/// Common practice, no source. MIL-STD-1472E, Table VII, asks 25 mm of instruments that are worked
/// in haste.
pub const FINGERS: f64 = 15.0;

/// Wood that should stay between two holes or a hole and an edge, mm.
///
/// # Source
/// Common practice, no source.
pub const WOOD_LEFT: f64 = 5.0;

/// Wall that should stay between a slot's floor and the star in a printed disc, mm: two lines of a
/// 0.4 mm nozzle and their overlap.
///
/// # Source
/// Common practice, no source.
pub const PRINTED_WALL: f64 = 1.2;

pub(super) fn checks(sums: &Sums<'_>) -> Vec<Check> {
    let mut checks = Vec::new();
    let plate = InPlate::of(sums);
    for [(i, one, bounds), (j, other, others)] in sums.each().array_combinations() {
        let apart = centre(one).distance(centre(other));
        checks.push(disc_to_disc(&plate, (i, one, bounds), (j, other, others)));
        checks.push(knob_to_knob((i, one), (j, other), apart));
        checks.push(bore_to_bore(&plate, (i, one), (j, other)));
    }
    checks.extend(tightest_pin(sums));
    for (index, dial, bounds) in sums.each() {
        checks.push(bore_to_edge(&plate, index, dial));
        checks.push(bore_to_guide_slot(&plate, index, dial));
        checks.push(finger_knob::room(sums.design, index, dial));
        checks.push(finger_knob::way(&plate, index, dial));
        checks.push(slot_to_star(sums, index, dial, bounds));
    }
    // only the tightest of each kind matters to a maker with many dials
    let mut tightest: Vec<Check> = Vec::new();
    for check in checks {
        match tightest.iter_mut().find(|kept| kept.kind == check.kind) {
            Some(kept) if check.margin < kept.margin => *kept = check,
            Some(_) => {}
            None => tightest.push(check),
        }
    }
    tightest
}

fn centre(dial: &Dial) -> Point {
    Point::new(dial.centre.0, dial.centre.1)
}

type Numbered<'a> = (usize, &'a Dial, &'a DialBounds);

/// Places in the plate over all boxes.
pub(super) struct InPlate<'a> {
    pub(super) sums: &'a Sums<'a>,
    /// Least growth of the plate along x and y over the year, as fractions.
    growth: (f64, f64),
    /// ± on each axis for a bore, mm.
    place: f64,
}

impl<'a> InPlate<'a> {
    fn of(sums: &'a Sums<'a>) -> Self {
        let least = |of, strains: &crate::season::Strains| {
            let plain = strains.apart(1.0, 0.0).0;
            sums.slider_worst
                .get(of)
                .map_or(plain, |least| least.bound.max(plain))
        };
        Self {
            sums,
            growth: (
                least(OfSlider::PlateX, &sums.drift.x),
                least(OfSlider::PlateY, &sums.drift.y),
            ),
            place: sums.design.workmanship.bore_place,
        }
    }

    /// Least distance between two places that are (`across`, `along`) apart when nothing is off and
    /// of which `bores` are bores, mm: each may be off on both axes at once, in a plate at its
    /// smallest.
    pub(super) fn apart(&self, (across, along): (f64, f64), bores: f64) -> f64 {
        let error = bores * self.place;
        let axis = |length: f64, growth: f64| (length.abs() - error).max(0.0) * (1.0 + growth);
        let (x, y) = (axis(across, self.growth.0), axis(along, self.growth.1));
        trig::hypot(x, y) - EPSILON
    }

    /// What places and season take from a distance, for the maker.
    pub(super) fn taken(
        &self,
        (across, along): (f64, f64),
        bores: f64,
    ) -> [(&'static str, f64); 2] {
        let still = Self {
            growth: (0.0, 0.0),
            ..*self
        };
        let (worst, dry) = (
            self.apart((across, along), bores),
            still.apart((across, along), bores),
        );
        [
            ("bore_place", trig::hypot(across, along) - dry),
            ("season", dry - worst),
        ]
    }
}

fn disc_to_disc(
    plate: &InPlate<'_>,
    (i, one, a): Numbered<'_>,
    (j, other, b): Numbered<'_>,
) -> Check {
    let between = between(one, other);
    let play = one.bore.shaft_play + other.bore.shaft_play;
    let value = plate.apart(between, 2.0) - a.rim.hi - b.rim.hi - play;
    let prints = (a.rim.hi - a.rim.lo + b.rim.hi - b.rim.lo) / 2.0;
    let mut parts = vec![("shaft_play", play), ("print", prints)];
    parts.extend(plate.taken(between, 2.0));
    let title = format!("Discs of dials {} and {} keep apart", i + 1, j + 1);
    let check = worst_case(
        CheckKind::DiscToDisc,
        Some(i),
        title,
        (value, 0.5),
        parts,
        |short| {
            format!(
                "move dials {} and {} apart by about {short:.2} mm or make their discs smaller",
                i + 1,
                j + 1
            )
        },
    );
    in_plate(plate.sums, (i, To::Dial(j)), 0.0, true, check)
}

/// From one dial to another along x and y, mm.
fn between(one: &Dial, other: &Dial) -> (f64, f64) {
    (other.centre.0 - one.centre.0, other.centre.1 - one.centre.1)
}

fn knob_to_knob((i, one): (usize, &Dial), (j, other): (usize, &Dial), apart: f64) -> Check {
    let value = apart - f64::midpoint(one.knob.diameter, other.knob.diameter);
    let parts = vec![(
        "knob diameter",
        f64::midpoint(one.knob.diameter, other.knob.diameter),
    )];
    let title = format!("Fingers get between knobs {} and {}", i + 1, j + 1);
    worst_case(
        CheckKind::KnobToKnob,
        Some(i),
        title,
        (value, FINGERS),
        parts,
        |short| {
            format!(
                "move dials {} and {} apart by about {short:.2} mm or make their knobs smaller",
                i + 1,
                j + 1
            )
        },
    )
}

fn bore_to_bore(
    plate: &InPlate<'_>,
    (i, one): (usize, &Dial),
    (j, other): (usize, &Dial),
) -> Check {
    let between = between(one, other);
    let value = plate.apart(between, 2.0) - f64::midpoint(one.bore.diameter, other.bore.diameter);
    let title = format!("Wood between the bores of dials {} and {}", i + 1, j + 1);
    let check = worst_case(
        CheckKind::BoreToBore,
        Some(i),
        title,
        (value, WOOD_LEFT),
        plate.taken(between, 2.0).into(),
        |short| {
            format!(
                "move dials {} and {} apart by about {short:.2} mm",
                i + 1,
                j + 1
            )
        },
    );
    let taken = f64::midpoint(one.bore.diameter, other.bore.diameter);
    in_plate(plate.sums, (i, To::Dial(j)), taken, false, check)
}

/// The disc that comes nearest to another dial's pin.
///
/// The plain sums put the pairs in order; a pair is looked at exactly only while it may be the
/// tightest.
fn tightest_pin(sums: &Sums<'_>) -> Option<Check> {
    let mut pairs: Vec<(f64, Numbered<'_>, Numbered<'_>)> = sums
        .each()
        .cartesian_product(sums.each())
        .filter(|((i, ..), (j, ..))| i != j)
        .map(|(one, other)| (disc_to_pin_plainly(sums, one, other), one, other))
        .collect();
    pairs.sort_by(|one, other| one.0.total_cmp(&other.0));
    let mut tightest: Option<Check> = None;
    for (plain, one, other) in pairs {
        if tightest.as_ref().is_some_and(|check| check.value <= plain) {
            break;
        }
        let check = disc_to_pin(sums, plain, one, other);
        if tightest
            .as_ref()
            .is_none_or(|kept| check.value < kept.value)
        {
            tightest = Some(check);
        }
    }
    tightest
}

/// Clear distance between a disc and another dial's pin over the whole travel, by the plain sums, mm.
fn disc_to_pin_plainly(
    sums: &Sums<'_>,
    (_, dial, a): Numbered<'_>,
    (_, other, b): Numbered<'_>,
) -> f64 {
    let (x, y) = other.pin_at();
    let travel = sums.design.slider.travel;
    let apart = centre(dial).distance_to_segment(Point::new(x, y), Point::new(x, y + travel));
    let work = &sums.design.workmanship;
    let places = core::f64::consts::SQRT_2 * sums.slider.swell * (work.bore_place + work.pin_place);
    let (aside, up) = (b.aside_parts[3].1, b.lift);
    let season = drift_towards(sums, dial, (x, y));
    apart - a.rim.hi - b.pin.hi - places - dial.bore.shaft_play - trig::hypot(aside, up) - season
}

/// A disc must stay clear of every other dial's pin over the whole travel; `plain` is what the plain
/// sums leave.
fn disc_to_pin(
    sums: &Sums<'_>,
    plain: f64,
    (i, dial, a): Numbered<'_>,
    (j, other, b): Numbered<'_>,
) -> Check {
    let play = dial.bore.shaft_play;
    let solid = a.rim.hi + b.pin.hi + play;
    let exact = sums.moved.and_then(|moved| {
        let between = Between {
            moved,
            bore: dial,
            pin: other,
        };
        between.least(solid + DISC_TO_PIN)
    });
    let value = exact.map_or(plain, |least| (least.bound - solid - EPSILON).max(plain));
    let work = &sums.design.workmanship;
    let parts = vec![
        ("bore_place", core::f64::consts::SQRT_2 * work.bore_place),
        ("pin_place", core::f64::consts::SQRT_2 * work.pin_place),
        ("shaft_play", play),
        ("guide_play", trig::hypot(b.aside_parts[3].1, b.lift)),
        ("season", drift_towards(sums, dial, other.pin_at())),
    ];
    let title = format!("Disc of dial {} stays clear of pin {}", i + 1, j + 1);
    let check = worst_case(
        CheckKind::DiscToPin,
        Some(i),
        title,
        (value, DISC_TO_PIN),
        parts,
        |short| {
            format!(
                "move dials {} and {} apart by about {short:.2} mm or make disc {} smaller",
                i + 1,
                j + 1,
                i + 1
            )
        },
    );
    match exact {
        Some(found) => beside_pin(sums, (i, j), &found, check),
        None => check,
    }
}

/// Clear distance that a disc must keep from a foreign pin, mm.
///
/// # Source
/// Common practice, no source.
pub const DISC_TO_PIN: f64 = 0.5;

/// How far a foreign pin and a dial can move towards one another over the year, mm.
fn drift_towards(sums: &Sums<'_>, dial: &Dial, pin: (f64, f64)) -> f64 {
    let guide = sums.design.slider.guide_at;
    let x = sums.drift.x.apart(dial.centre.0 - guide.0, pin.0 - guide.0);
    let y = sums.drift.y.apart(dial.centre.1 - guide.1, pin.1 - guide.1);
    trig::hypot(x.1.max(-x.0), y.1.max(-y.0))
}

fn bore_to_edge(plate: &InPlate<'_>, index: usize, dial: &Dial) -> Check {
    let wood = &plate.sums.design.plate;
    let (x, y) = dial.centre;
    let to_side = (wood.width / 2.0 - x.abs(), 0.0);
    let to_front = (0.0, y.min(wood.depth - y));
    // a bore past the edge has less than nothing left
    let left = |(across, along): (f64, f64)| {
        let outside = across.min(0.0) + along.min(0.0);
        plate.apart((across.max(0.0), along.max(0.0)), 1.0) + outside
    };
    let (distance, nearest) = if left(to_side) < left(to_front) {
        (left(to_side), to_side)
    } else {
        (left(to_front), to_front)
    };
    let value = distance - dial.bore.diameter / 2.0;
    let title = format!(
        "Wood between the bore of dial {} and the plate's edge",
        index + 1
    );
    let check = worst_case(
        CheckKind::BoreToEdge,
        Some(index),
        title,
        (value, WOOD_LEFT),
        plate.taken(nearest, 1.0).into(),
        |short| {
            format!(
                "move dial {} inwards by about {short:.2} mm or make the plate larger",
                index + 1
            )
        },
    );
    let edge = if nearest == to_side {
        To::Place(wood.width / 2.0 * if x < 0.0 { -1.0 } else { 1.0 }, y)
    } else {
        To::Place(x, if y < wood.depth - y { 0.0 } else { wood.depth })
    };
    in_plate(
        plate.sums,
        (index, edge),
        dial.bore.diameter / 2.0,
        false,
        check,
    )
}

/// The finger knob's shank runs in a slot through the plate.
fn bore_to_guide_slot(plate: &InPlate<'_>, index: usize, dial: &Dial) -> Check {
    let slider = &plate.sums.design.slider;
    let between = finger_knob::nearest(slider, dial);
    let value = plate.apart(between, 1.0)
        - dial.bore.diameter / 2.0
        - slider.shank / 2.0
        - slider.guide_play;
    let title = format!(
        "Wood between the bore of dial {} and the guide slot",
        index + 1
    );
    let mut parts = vec![("guide_play", slider.guide_play)];
    parts.extend(plate.taken(between, 1.0));
    let check = worst_case(
        CheckKind::BoreToGuideSlot,
        Some(index),
        title,
        (value, WOOD_LEFT),
        parts,
        |short| {
            format!(
                "move the finger knob or dial {} apart by about {short:.2} mm",
                index + 1
            )
        },
    );
    let nearest = finger_knob::nearest_place(slider, dial);
    let taken = dial.bore.diameter / 2.0 + slider.shank / 2.0 + slider.guide_play;
    in_plate(plate.sums, (index, nearest), taken, false, check)
}

/// The deepest slot leaves a wall around the star.
fn slot_to_star(sums: &Sums<'_>, index: usize, dial: &Dial, bounds: &DialBounds) -> Check {
    let deepest = dial
        .disc
        .slots
        .iter()
        .map(|slot| slot.depth)
        .fold(0.0, f64::max);
    let star = (dial.key.apothem + dial.key.clearance)
        / trig::cos(core::f64::consts::PI / f64::from(dial.key.sides.max(3)));
    let work = &sums.design.workmanship;
    // rim and depth are two sizes of one print, each off by itself
    let off = dial.disc.radius - bounds.rim.lo + work.print + work.film_spread;
    let value = dial.disc.radius - deepest - star - off;
    let title = format!(
        "Wall between slot and star in the disc of dial {}",
        index + 1
    );
    worst_case(
        CheckKind::SlotToStar,
        Some(index),
        title,
        (value, PRINTED_WALL),
        vec![
            ("print", 1.5 * work.print),
            ("film_spread", 2.0 * work.film_spread),
        ],
        |short| {
            format!(
                "make the disc of dial {} larger, or its slot shallower, by about {short:.2} mm",
                index + 1
            )
        },
    )
}
