//! Room between parts: disc to disc, disc to other pins, knobs for fingers, wood left in the plate,
//! slots and the key inside a disc.

use itertools::Itertools;
use latchwright_geometry::{EPSILON, Point, trig};

use super::advice::Estimate;
use super::finger_knob;
use super::worst_place::{To, beside_pin, in_plate};
use super::{About, Advice, CheckKind, Contributor, Draft, Sums};
use crate::bounds::DialBounds;
use crate::results::Check;
use crate::season::Drift;
use crate::worst::{figure::PinToBore, figure::SliderFigureKind};
use latchwright_model::{Design, Dial, Slider};

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
    for [one, other] in numbered(sums).array_combinations() {
        checks.push(disc_to_disc(&plate, one, other));
        checks.push(knob_to_knob(one, other));
        checks.push(bore_to_bore(&plate, one, other));
    }
    checks.extend(tightest_pin(sums));
    for (index, dial, bounds) in sums.each() {
        checks.push(bore_to_edge(&plate, index, dial));
        checks.push(bore_to_guide_slot(&plate, index, dial));
        checks.push(finger_knob::between_knobs(sums.design, index, dial));
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

/// Places in the plate at its smallest, each bore off on both axes at once.
#[derive(Debug, Clone, Copy)]
pub struct Places {
    /// Least growth of the plate along x and y over the year, as fractions.
    growth: (f64, f64),
    /// ± on each axis for a bore, mm.
    place: f64,
}

impl Places {
    /// In a plate that grows by at least so much along x and y, as fractions.
    pub fn of(design: &Design, growth: (f64, f64)) -> Self {
        Self {
            growth,
            place: design.workmanship.bore_place,
        }
    }

    /// Least growth of the plate along x and y over this year, as fractions, by the plain sums.
    pub fn plain_growth(drift: &Drift) -> (f64, f64) {
        (drift.x.apart(1.0, 0.0).0, drift.y.apart(1.0, 0.0).0)
    }

    /// Least distance between two places that are (`across`, `along`) apart when nothing is off and
    /// of which `bores` are bores, mm.
    pub fn apart(&self, (across, along): (f64, f64), bores: f64) -> f64 {
        let error = bores * self.place;
        let axis = |length: f64, growth: f64| (length.abs() - error).max(0.0) * (1.0 + growth);
        let (x, y) = (axis(across, self.growth.0), axis(along, self.growth.1));
        trig::hypot(x, y) - EPSILON
    }

    /// What places and season take from a distance, for the maker.
    pub(super) fn taken(&self, apart: (f64, f64), bores: f64) -> [(Contributor, f64); 2] {
        let still = Self {
            growth: (0.0, 0.0),
            ..*self
        };
        let (worst, dry) = (self.apart(apart, bores), still.apart(apart, bores));
        [
            (Contributor::BorePlace, trig::hypot(apart.0, apart.1) - dry),
            (Contributor::Season, dry - worst),
        ]
    }
}

/// Places in the plate over all boxes.
pub(super) struct InPlate<'a> {
    pub(super) sums: &'a Sums<'a>,
    pub(super) places: Places,
}

impl<'a> InPlate<'a> {
    fn of(sums: &'a Sums<'a>) -> Self {
        let plain = Places::plain_growth(sums.drift);
        let least = |of, plain: f64| {
            let least = sums.slider_worst.get(of);
            least.map_or(plain, |least| least.bound.max(plain))
        };
        let growth = (
            least(SliderFigureKind::PlateX, plain.0),
            least(SliderFigureKind::PlateY, plain.1),
        );
        Self {
            sums,
            places: Places::of(sums.design, growth),
        }
    }
}

/// A dial with its number and its sums.
#[derive(Clone, Copy)]
struct NumberedDial<'a> {
    /// From 0.
    index: usize,
    dial: &'a Dial,
    bounds: &'a DialBounds,
}

fn numbered<'a>(sums: &'a Sums<'_>) -> impl Iterator<Item = NumberedDial<'a>> + Clone {
    sums.each().map(|(index, dial, bounds)| NumberedDial {
        index,
        dial,
        bounds,
    })
}

/// Clear distance between two discs, worst case, mm.
pub fn discs_apart(
    places: &Places,
    (one, a): (&Dial, &DialBounds),
    (other, b): (&Dial, &DialBounds),
) -> f64 {
    let play = one.bore.shaft_play + other.bore.shaft_play;
    places.apart(between(one, other), 2.0) - a.rim.hi - b.rim.hi - play
}

fn disc_to_disc(plate: &InPlate<'_>, one: NumberedDial<'_>, other: NumberedDial<'_>) -> Check {
    let play = one.dial.bore.shaft_play + other.dial.bore.shaft_play;
    let (a, b) = (one.bounds.rim, other.bounds.rim);
    let prints = (a.hi - a.lo + b.hi - b.lo) / 2.0;
    let mut parts = vec![(Contributor::ShaftPlay, play), (Contributor::Print, prints)];
    let apart = between(one.dial, other.dial);
    parts.extend(plate.places.taken(apart, 2.0));
    let draft = Draft {
        kind: CheckKind::DiscToDisc,
        about: About::Pair(one.index, other.index),
        value: discs_apart(
            &plate.places,
            (one.dial, one.bounds),
            (other.dial, other.bounds),
        ),
        limit: DISCS_APART,
        decided_by: parts,
    };
    let check = draft.judged(|short| Advice::Change(Estimate::ApartOrSmallerDiscs(short)));
    let to = To::Dial(other.index);
    in_plate(plate.sums, one.index, to, 0.0, true, check)
}

/// From one dial to another along x and y, mm.
fn between(one: &Dial, other: &Dial) -> (f64, f64) {
    (other.centre.0 - one.centre.0, other.centre.1 - one.centre.1)
}

/// Room for fingers between two knobs, mm.
pub fn knobs_apart(one: &Dial, other: &Dial) -> f64 {
    centre(one).distance(centre(other)) - f64::midpoint(one.knob.diameter, other.knob.diameter)
}

fn knob_to_knob(one: NumberedDial<'_>, other: NumberedDial<'_>) -> Check {
    let knobs = f64::midpoint(one.dial.knob.diameter, other.dial.knob.diameter);
    let draft = Draft {
        kind: CheckKind::KnobToKnob,
        about: About::Pair(one.index, other.index),
        value: knobs_apart(one.dial, other.dial),
        limit: FINGERS,
        decided_by: vec![(Contributor::KnobDiameter, knobs)],
    };
    draft.judged(|short| Advice::Change(Estimate::ApartOrSmallerKnobs(short)))
}

/// Wood between two bores, worst case, mm.
pub fn bores_apart(places: &Places, one: &Dial, other: &Dial) -> f64 {
    places.apart(between(one, other), 2.0) - f64::midpoint(one.bore.diameter, other.bore.diameter)
}

fn bore_to_bore(plate: &InPlate<'_>, one: NumberedDial<'_>, other: NumberedDial<'_>) -> Check {
    let apart = between(one.dial, other.dial);
    let draft = Draft {
        kind: CheckKind::BoreToBore,
        about: About::Pair(one.index, other.index),
        value: bores_apart(&plate.places, one.dial, other.dial),
        limit: WOOD_LEFT,
        decided_by: plate.places.taken(apart, 2.0).into(),
    };
    let check = draft.judged(|short| Advice::Change(Estimate::Apart(short)));
    let taken = f64::midpoint(one.dial.bore.diameter, other.dial.bore.diameter);
    let to = To::Dial(other.index);
    in_plate(plate.sums, one.index, to, taken, false, check)
}

/// The disc that comes nearest to another dial's pin.
///
/// The plain sums put the pairs in order; a pair is looked at exactly only while it may be the
/// tightest.
fn tightest_pin(sums: &Sums<'_>) -> Option<Check> {
    let mut pairs: Vec<(f64, NumberedDial<'_>, NumberedDial<'_>)> = numbered(sums)
        .cartesian_product(numbered(sums))
        .filter(|(one, other)| one.index != other.index)
        .map(|(one, other)| {
            let (disc, pin) = ((one.dial, one.bounds), (other.dial, other.bounds));
            (disc_to_pin_plainly(sums, disc, pin), one, other)
        })
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
pub fn disc_to_pin_plainly(
    sums: &Sums<'_>,
    (dial, a): (&Dial, &DialBounds),
    (other, b): (&Dial, &DialBounds),
) -> f64 {
    let (x, y) = other.pin_at();
    let travel = sums.design.slider.travel;
    let apart = centre(dial).distance_to_segment(Point::new(x, y), Point::new(x, y + travel));
    let work = &sums.design.workmanship;
    let places = core::f64::consts::SQRT_2 * sums.slider.swell * (work.bore_place + work.pin_place);
    let (aside, up) = (b.aside_parts.guide, b.lift);
    let season = drift_towards(sums, dial, (x, y));
    apart - a.rim.hi - b.pin.hi - places - dial.bore.shaft_play - trig::hypot(aside, up) - season
}

/// A disc must stay clear of every other dial's pin over the whole travel; `plain` is what the plain
/// sums leave.
fn disc_to_pin(
    sums: &Sums<'_>,
    plain: f64,
    disc: NumberedDial<'_>,
    pin: NumberedDial<'_>,
) -> Check {
    let (dial, other) = (disc.dial, pin.dial);
    let (a, b) = (disc.bounds, pin.bounds);
    let play = dial.bore.shaft_play;
    let solid = a.rim.hi + b.pin.hi + play;
    let exact = sums.over_year.and_then(|over_year| {
        let between = PinToBore {
            over_year,
            bore: dial,
            pin: other,
        };
        between.least(solid + DISC_TO_PIN)
    });
    let value = exact.map_or(plain, |least| (least.bound - solid - EPSILON).max(plain));
    let work = &sums.design.workmanship;
    let parts = vec![
        (
            Contributor::BorePlace,
            core::f64::consts::SQRT_2 * work.bore_place,
        ),
        (
            Contributor::PinPlace,
            core::f64::consts::SQRT_2 * work.pin_place,
        ),
        (Contributor::ShaftPlay, play),
        (
            Contributor::GuidePlay,
            trig::hypot(b.aside_parts.guide, b.lift),
        ),
        (
            Contributor::Season,
            drift_towards(sums, dial, other.pin_at()),
        ),
    ];
    let draft = Draft {
        kind: CheckKind::DiscToPin,
        about: About::Pair(disc.index, pin.index),
        value,
        limit: DISC_TO_PIN,
        decided_by: parts,
    };
    let check = draft.judged(|short| Advice::Change(Estimate::ApartOrSmallerDisc(short)));
    match exact {
        Some(found) => beside_pin(sums, disc.index, pin.index, &found, check),
        None => check,
    }
}

/// Clear distance that two discs must keep, mm.
///
/// # Source
/// Common practice, no source.
pub const DISCS_APART: f64 = 0.5;

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

/// The plate's edge that comes nearest to a bore.
struct NearestEdge {
    /// From the bore to it along x and y, mm.
    apart: (f64, f64),
    /// The nearest place on it, mm.
    place: (f64, f64),
    /// Wood between the two, worst case, mm; less than nothing for a bore past the edge.
    wood: f64,
}

impl NearestEdge {
    fn of(places: &Places, design: &Design, dial: &Dial) -> Self {
        let wood = &design.plate;
        let (x, y) = dial.centre;
        let to_side = (wood.width / 2.0 - x.abs(), 0.0);
        let to_front = (0.0, y.min(wood.depth - y));
        let left = |(across, along): (f64, f64)| {
            let outside = across.min(0.0) + along.min(0.0);
            places.apart((across.max(0.0), along.max(0.0)), 1.0) + outside
        };
        let side = left(to_side) < left(to_front);
        let apart = if side { to_side } else { to_front };
        Self {
            apart,
            place: if side {
                (wood.width / 2.0 * if x < 0.0 { -1.0 } else { 1.0 }, y)
            } else {
                (x, if y < wood.depth - y { 0.0 } else { wood.depth })
            },
            wood: left(apart) - dial.bore.diameter / 2.0,
        }
    }
}

/// Wood between a bore and the plate's nearest edge, worst case, mm.
pub fn wood_to_edge(places: &Places, design: &Design, dial: &Dial) -> f64 {
    NearestEdge::of(places, design, dial).wood
}

fn bore_to_edge(plate: &InPlate<'_>, index: usize, dial: &Dial) -> Check {
    let edge = NearestEdge::of(&plate.places, plate.sums.design, dial);
    let draft = Draft {
        kind: CheckKind::BoreToEdge,
        about: About::Dial(index),
        value: edge.wood,
        limit: WOOD_LEFT,
        decided_by: plate.places.taken(edge.apart, 1.0).into(),
    };
    let check = draft.judged(|short| Advice::Change(Estimate::InwardsOrLargerPlate(short)));
    in_plate(
        plate.sums,
        index,
        To::Place(edge.place.0, edge.place.1),
        dial.bore.diameter / 2.0,
        false,
        check,
    )
}

/// Wood between a bore and the slot in which the finger knob's shank runs, worst case, mm.
pub fn wood_to_guide_slot(places: &Places, slider: &Slider, dial: &Dial) -> f64 {
    places.apart(finger_knob::nearest(slider, dial), 1.0)
        - dial.bore.diameter / 2.0
        - slider.shank / 2.0
        - slider.guide_play
}

/// The finger knob's shank runs in a slot through the plate.
fn bore_to_guide_slot(plate: &InPlate<'_>, index: usize, dial: &Dial) -> Check {
    let slider = &plate.sums.design.slider;
    let between = finger_knob::nearest(slider, dial);
    let mut parts = vec![(Contributor::GuidePlay, slider.guide_play)];
    parts.extend(plate.places.taken(between, 1.0));
    let draft = Draft {
        kind: CheckKind::BoreToGuideSlot,
        about: About::Dial(index),
        value: wood_to_guide_slot(&plate.places, slider, dial),
        limit: WOOD_LEFT,
        decided_by: parts,
    };
    let check = draft.judged(|short| Advice::Change(Estimate::FingerKnobApart(short)));
    let nearest = finger_knob::nearest_place(slider, dial);
    let taken = dial.bore.diameter / 2.0 + slider.shank / 2.0 + slider.guide_play;
    in_plate(plate.sums, index, nearest, taken, false, check)
}

/// From the middle of the star to its tips, mm.
pub fn star_reach(dial: &Dial) -> f64 {
    (dial.key.apothem + dial.key.clearance)
        / trig::cos(core::f64::consts::PI / f64::from(dial.key.sides.max(3)))
}

/// Wall between the deepest slot and the star, worst case, mm.
pub fn wall_to_star(design: &Design, dial: &Dial, bounds: &DialBounds) -> f64 {
    let depths = dial.disc.slots.iter().map(|slot| slot.depth);
    let deepest = depths.fold(0.0, f64::max);
    let work = &design.workmanship;
    // rim and depth are two sizes of one print, each off by itself
    let off = dial.disc.radius - bounds.rim.lo + work.print + work.film_spread;
    dial.disc.radius - deepest - star_reach(dial) - off
}

/// The deepest slot leaves a wall around the star.
fn slot_to_star(sums: &Sums<'_>, index: usize, dial: &Dial, bounds: &DialBounds) -> Check {
    let work = &sums.design.workmanship;
    let draft = Draft {
        kind: CheckKind::SlotToStar,
        about: About::Dial(index),
        value: wall_to_star(sums.design, dial, bounds),
        limit: PRINTED_WALL,
        decided_by: vec![
            (Contributor::Print, 1.5 * work.print),
            (Contributor::FilmSpread, 2.0 * work.film_spread),
        ],
    };
    draft.judged(|short| Advice::Change(Estimate::LargerDiscOrShallowerSlot(short)))
}
