//! What the solver's promises mean in one real box, as figures that must not be negative.

use latchwright_geometry::Point;
use latchwright_model::Design;

use crate::outline::{Contact, Feature, RealSlot};
use crate::real_box::RealBox;

/// How well one box keeps a promise, mm; a promise is broken where either is negative.
#[derive(Debug, Clone, Copy)]
pub struct Kept {
    /// Where the pin touches: how far from the place at which the promise would break.
    pub place: f64,
    /// What must be left: tab under the keeper, or slot beyond the pin.
    pub amount: f64,
}

impl Kept {
    const SURELY: Self = Self {
        place: f64::INFINITY,
        amount: f64::INFINITY,
    };
}

/// *Holds*: the pin stops on plain rim, or goes into a slot whose floor catches it, and enough of
/// the tab is then under the keeper.
pub fn holds(design: &Design, built: &RealBox) -> Kept {
    let travel = design.slider.travel;
    let required = design.tab.required_hold;
    let touch = built
        .disc
        .first_contact(built.pin, built.pin_radius, travel);
    match touch {
        Some(touch) if touch.feature == Feature::Rim => Kept {
            place: to_nearest_corner(built, touch.at),
            amount: built.held(touch.travel) - required,
        },
        Some(Contact {
            feature: Feature::OuterCorner(_),
            at,
            travel,
        }) => Kept {
            place: -beside_the_rim(built, at, travel),
            amount: f64::INFINITY,
        },
        _ => Kept {
            place: room_at_corners(built, touch, travel),
            amount: built.held(caught_at(built, touch, travel)) - required,
        },
    }
}

/// *Passes*: the pin meets neither plain rim nor a mouth's outer corner, fits, and does not come to
/// the floor within the whole travel when the disc turns to let it in.
pub fn passes(design: &Design, built: &RealBox) -> Kept {
    let travel = design.slider.travel;
    let touch = built
        .disc
        .first_contact(built.pin, built.pin_radius, travel);
    let end = built.pin_at(travel);
    if touch.is_none() && end.x.hypot(end.y) >= built.disc.rim + built.pin_radius && end.y < 0.0 {
        return Kept::SURELY;
    }
    let place = match touch {
        Some(Contact {
            feature: Feature::Rim,
            at,
            ..
        }) => -to_nearest_corner(built, at),
        Some(Contact {
            feature: Feature::OuterCorner(_),
            ..
        }) => -1.0,
        _ => room_at_corners(built, touch, travel),
    };
    let amount = entered(built, touch).map_or(-1.0, |slot| {
        let fits = slot.width - 2.0 * built.pin_radius;
        fits.min(room_in(&slot, built, end))
    });
    Kept { place, amount }
}

/// How far the pin at `end` is clear of wall and floor of its slot when the disc turns so as to leave
/// it the most, mm.
fn room_in(slot: &RealSlot, built: &RealBox, end: Point) -> f64 {
    let room = slot.width / 2.0 - built.pin_radius;
    let floor = if slot.depth >= 2.0 * built.disc.rim {
        f64::NEG_INFINITY
    } else {
        built.disc.rim - slot.depth + slot.width / 2.0
    };
    let turned = |turn: f64| {
        let across = end.x * turn.cos() - end.y * turn.sin();
        let out = -end.x * turn.sin() - end.y * turn.cos();
        room - if out >= floor {
            across.abs()
        } else {
            across.hypot(out - floor)
        }
    };
    if end.y < 0.0 {
        // before the middle of the disc nothing is deeper than straight ahead of the pin
        return turned((-end.x).atan2(-end.y));
    }
    (-90..=90)
        .map(|degrees| turned(f64::from(degrees).to_radians()))
        .fold(f64::NEG_INFINITY, f64::max)
}

/// How far the pin is clear of the whole rim with the slider forward, mm.
pub fn clear_at_rest(built: &RealBox) -> f64 {
    built.pin.x.hypot(built.pin.y) - built.disc.rim - built.pin_radius
}

/// How far the pin's nearest point is inside the rim at full travel, mm: while it is, the rim beside
/// its mouth stops the dial from turning.
pub fn caught_at_full_travel(design: &Design, built: &RealBox) -> f64 {
    let end = built.pin_at(design.slider.travel);
    let along = end.x.hypot(end.y) * if end.y < 0.0 { 1.0 } else { -1.0 };
    built.disc.rim + built.pin_radius - along
}

/// How far the tab is out of the keeper at full travel, at the corner that leaves last, mm.
pub fn out_at_full_travel(design: &Design, built: &RealBox) -> f64 {
    -built.still_caught(design.slider.travel)
}

/// Tab under the keeper with the slider forward beyond what is required, mm.
pub fn held_at_rest(design: &Design, built: &RealBox) -> f64 {
    built.held(0.0) - design.tab.required_hold
}

fn to_nearest_corner(built: &RealBox, at: Point) -> f64 {
    built
        .disc
        .corners()
        .iter()
        .map(|(corner, _)| (corner.x - at.x).hypot(corner.y - at.y))
        .fold(f64::INFINITY, f64::min)
}

/// How far a touched corner is from where the same pin would touch a whole rim, mm.
fn beside_the_rim(built: &RealBox, corner: Point, travel: f64) -> f64 {
    let pin = built.pin_at(travel);
    let whole = pin * (built.disc.rim / pin.x.hypot(pin.y));
    (whole.x - corner.x).hypot(whole.y - corner.y)
}

/// How far the pin's way keeps off the mouths' outer corners, as the length of the tangent from the
/// corner to the pin where it is nearest: 0 where it touches, and on a lead-in's flat the distance
/// from the place it touches to the corner.
fn room_at_corners(built: &RealBox, touch: Option<Contact>, travel: f64) -> f64 {
    let (from, to) = (built.pin.y - 100.0, touch.map_or(travel, |t| t.travel));
    let to = built.pin.y + to;
    built
        .disc
        .corners()
        .iter()
        .map(|(corner, _)| {
            let y = corner.y.clamp(from, to);
            let far = (corner.x - built.pin.x).hypot(corner.y - y);
            let square = far * far - built.pin_radius * built.pin_radius;
            square.max(0.0).sqrt()
        })
        .fold(f64::INFINITY, f64::min)
}

/// The slot the pin is in: the one it touches, or the one that faces it.
fn entered(built: &RealBox, touch: Option<Contact>) -> Option<RealSlot> {
    let number = touch.and_then(|touch| match touch.feature {
        Feature::Rim => None,
        Feature::OuterCorner(number)
        | Feature::LeadIn(number)
        | Feature::Wall(number)
        | Feature::Floor(number) => Some(number),
    });
    let slots = &built.disc.slots;
    if let Some(number) = number {
        return slots.get(number).copied();
    }
    let facing = |slot: &RealSlot| {
        let through = slot.depth >= 2.0 * built.disc.rim;
        let turn = slot.turn.cos();
        if through { turn.abs() } else { turn }
    };
    slots
        .iter()
        .max_by(|one, other| facing(one).total_cmp(&facing(other)))
        .copied()
}

/// Travel at which the floor of the slot that the pin has gone into stops it for good, however the
/// disc turns; the whole travel where no floor does.
fn caught_at(built: &RealBox, touch: Option<Contact>, travel: f64) -> f64 {
    let Some(slot) = touch.and(entered(built, touch)) else {
        return travel;
    };
    let nearest = built.disc.rim - slot.depth + built.pin_radius;
    let square = nearest * nearest - built.pin.x * built.pin.x;
    if nearest <= built.pin_radius || square <= 0.0 {
        return travel;
    }
    (-square.sqrt() - built.pin.y).min(travel)
}
