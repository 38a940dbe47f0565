//! Room between parts: disc to disc, disc to other pins, knobs for fingers, wood left in the plate,
//! slots and the key inside a disc.

use itertools::Itertools;
use latchwright_geometry::{Point, trig};

use super::{Sums, worst_case};
use crate::bounds::DialBounds;
use crate::model::Dial;
use crate::proof::Check;

/// Room for fingers between two knobs, mm.
///
/// # Source
/// Common practice, no source. MIL-STD-1472E, Table VII, asks 25 mm of instruments that are worked
/// in haste.
const FINGERS: f64 = 15.0;

/// Wood that should stay between two holes or a hole and an edge, mm.
///
/// # Source
/// Common practice, no source.
const WOOD_LEFT: f64 = 5.0;

/// Wall that should stay between a slot's floor and the star in a printed disc, mm: two lines of a
/// 0.4 mm nozzle and their overlap.
///
/// # Source
/// Common practice, no source.
const PRINTED_WALL: f64 = 1.2;

pub(super) fn checks(sums: &Sums<'_>) -> Vec<Check> {
    let mut checks = Vec::new();
    for [(i, one, bounds), (j, other, others)] in sums.each().array_combinations() {
        let apart = centre(one).distance(centre(other));
        checks.push(disc_to_disc(
            sums,
            (i, one, bounds),
            (j, other, others),
            apart,
        ));
        checks.push(knob_to_knob((i, one), (j, other), apart));
        checks.push(bore_to_bore(sums, (i, one), (j, other), apart));
    }
    for ((i, dial, bounds), (j, other, others)) in sums
        .each()
        .cartesian_product(sums.each())
        .filter(|((i, ..), (j, ..))| i != j)
    {
        checks.push(disc_to_pin(sums, (i, dial, bounds), (j, other, others)));
    }
    for (index, dial, bounds) in sums.each() {
        checks.push(bore_to_edge(sums, index, dial));
        checks.push(bore_to_guide_slot(sums, index, dial));
        checks.push(slot_to_star(index, dial, bounds));
    }
    // only the tightest of each kind matters to a maker with many dials
    let mut tightest: Vec<Check> = Vec::new();
    for check in checks {
        match tightest.iter_mut().find(|kept| kept.name == check.name) {
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

/// How far two places with ± `error` on each axis can come nearer to one another, mm.
fn nearer(error: f64) -> f64 {
    2.0 * core::f64::consts::SQRT_2 * error
}

type Numbered<'a> = (usize, &'a Dial, &'a DialBounds);

fn disc_to_disc(
    sums: &Sums<'_>,
    (i, one, a): Numbered<'_>,
    (j, other, b): Numbered<'_>,
    apart: f64,
) -> Check {
    let places = nearer(sums.design.workmanship.bore_place);
    let play = one.bore.shaft_play + other.bore.shaft_play;
    let shrunk = plate_shrinks(sums, apart);
    let value = apart - a.rim.hi - b.rim.hi - places - play - shrunk;
    let prints = (a.rim.hi - a.rim.lo + b.rim.hi - b.rim.lo) / 2.0;
    let parts = vec![
        ("bore_place", places),
        ("shaft_play", play),
        ("print", prints),
        ("season", shrunk),
    ];
    let title = format!("Discs of dials {} and {} keep apart", i + 1, j + 1);
    worst_case(
        "disc-to-disc",
        Some(i),
        title,
        (value, 0.5),
        parts,
        |short| {
            format!(
                "move dials {} and {} apart by {short:.2} mm or make their discs smaller",
                i + 1,
                j + 1
            )
        },
    )
}

/// How much nearer two places in the plate can come over the year, mm.
fn plate_shrinks(sums: &Sums<'_>, apart: f64) -> f64 {
    let x = sums.drift.x.apart(apart, 0.0);
    let y = sums.drift.y.apart(apart, 0.0);
    -(x.0.min(y.0).min(0.0))
}

fn knob_to_knob((i, one): (usize, &Dial), (j, other): (usize, &Dial), apart: f64) -> Check {
    let value = apart - f64::midpoint(one.knob.diameter, other.knob.diameter);
    let parts = vec![(
        "knob diameter",
        f64::midpoint(one.knob.diameter, other.knob.diameter),
    )];
    let title = format!("Fingers get between knobs {} and {}", i + 1, j + 1);
    worst_case(
        "knob-to-knob",
        Some(i),
        title,
        (value, FINGERS),
        parts,
        |short| {
            format!(
                "move dials {} and {} apart by {short:.2} mm or make their knobs smaller",
                i + 1,
                j + 1
            )
        },
    )
}

fn bore_to_bore(
    sums: &Sums<'_>,
    (i, one): (usize, &Dial),
    (j, other): (usize, &Dial),
    apart: f64,
) -> Check {
    let places = nearer(sums.design.workmanship.bore_place);
    let value = apart - f64::midpoint(one.bore.diameter, other.bore.diameter) - places;
    let title = format!("Wood between the bores of dials {} and {}", i + 1, j + 1);
    worst_case(
        "bore-to-bore",
        Some(i),
        title,
        (value, WOOD_LEFT),
        vec![("bore_place", places)],
        |short| format!("move dials {} and {} apart by {short:.2} mm", i + 1, j + 1),
    )
}

/// A disc must stay clear of every other dial's pin over the whole travel.
fn disc_to_pin(sums: &Sums<'_>, (i, dial, a): Numbered<'_>, (j, other, b): Numbered<'_>) -> Check {
    let (x, y) = other.pin_at();
    let travel = sums.design.slider.travel;
    let apart = centre(dial).distance_to_segment(Point::new(x, y), Point::new(x, y + travel));
    let work = &sums.design.workmanship;
    let places =
        core::f64::consts::SQRT_2 * (work.bore_place + work.pin_place) + dial.bore.shaft_play;
    let (aside, up) = (b.aside_parts[3].1 + b.aside_parts[4].1, b.lift);
    let season = drift_towards(sums, dial, (x, y));
    let value = apart - a.rim.hi - b.pin.hi - places - trig::hypot(aside, up) - season;
    let parts = vec![
        ("place", places),
        ("guide_play", trig::hypot(aside, up)),
        ("season", season),
    ];
    let title = format!("Disc of dial {} stays clear of pin {}", i + 1, j + 1);
    worst_case(
        "disc-to-pin",
        Some(i),
        title,
        (value, 0.5),
        parts,
        |short| {
            format!(
                "move dials {} and {} apart by {short:.2} mm or make disc {} smaller",
                i + 1,
                j + 1,
                i + 1
            )
        },
    )
}

/// How far a foreign pin and a dial can move towards one another over the year, mm.
fn drift_towards(sums: &Sums<'_>, dial: &Dial, pin: (f64, f64)) -> f64 {
    let guide = sums.design.slider.guide_at;
    let x = sums.drift.x.apart(dial.centre.0 - guide.0, pin.0 - guide.0);
    let y = sums.drift.y.apart(dial.centre.1 - guide.1, pin.1 - guide.1);
    trig::hypot(x.1.max(-x.0), y.1.max(-y.0))
}

fn bore_to_edge(sums: &Sums<'_>, index: usize, dial: &Dial) -> Check {
    let plate = &sums.design.plate;
    let (x, y) = dial.centre;
    let nearest = (plate.width / 2.0 - x.abs()).min(y).min(plate.depth - y);
    let place = sums.design.workmanship.bore_place;
    let value = nearest - dial.bore.diameter / 2.0 - place;
    let title = format!(
        "Wood between the bore of dial {} and the plate's edge",
        index + 1
    );
    worst_case(
        "bore-to-edge",
        Some(index),
        title,
        (value, WOOD_LEFT),
        vec![("bore_place", place)],
        |short| {
            format!(
                "move dial {} inwards by {short:.2} mm or make the plate larger",
                index + 1
            )
        },
    )
}

/// The finger knob's shank runs in a slot through the plate.
fn bore_to_guide_slot(sums: &Sums<'_>, index: usize, dial: &Dial) -> Check {
    let slider = &sums.design.slider;
    let from = Point::new(slider.pull_at, slider.guide_at.1);
    let to = Point::new(slider.pull_at, slider.guide_at.1 + slider.travel);
    let place = core::f64::consts::SQRT_2 * sums.design.workmanship.bore_place;
    let value = centre(dial).distance_to_segment(from, to)
        - dial.bore.diameter / 2.0
        - slider.shank / 2.0
        - slider.guide_play
        - place;
    let title = format!(
        "Wood between the bore of dial {} and the guide slot",
        index + 1
    );
    let parts = vec![("bore_place", place), ("guide_play", slider.guide_play)];
    worst_case(
        "bore-to-guide-slot",
        Some(index),
        title,
        (value, WOOD_LEFT),
        parts,
        |short| {
            format!(
                "move the finger knob or dial {} apart by {short:.2} mm",
                index + 1
            )
        },
    )
}

/// The deepest slot leaves a wall around the star.
fn slot_to_star(index: usize, dial: &Dial, bounds: &DialBounds) -> Check {
    let deepest = dial
        .disc
        .slots
        .iter()
        .map(|slot| slot.depth)
        .fold(0.0, f64::max);
    let star = (dial.key.apothem + dial.key.clearance)
        / trig::cos(core::f64::consts::PI / f64::from(dial.key.sides.max(3)));
    let print = dial.disc.radius - bounds.rim.lo;
    let value = dial.disc.radius - deepest - star - 2.0 * print;
    let title = format!(
        "Wall between slot and star in the disc of dial {}",
        index + 1
    );
    worst_case(
        "slot-to-star",
        Some(index),
        title,
        (value, PRINTED_WALL),
        vec![("print", 2.0 * print)],
        |short| {
            format!(
                "make the disc of dial {} larger, or its slot shallower, by {short:.2} mm",
                index + 1
            )
        },
    )
}
