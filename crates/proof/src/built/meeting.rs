//! One pin and one disc of a built latch: what the pin meets when the slider is drawn back.

use core::f64::consts::{FRAC_1_SQRT_2, PI, TAU};

use latchwright_geometry::{Point, trig};

use super::{BuiltDial, BuiltSlot};
use latchwright_model::slot::{MAX_SLOTS, SlotShape};
use latchwright_model::{Dial, Slot};

/// Beyond this turn (radians) of a mouth from its pin nothing is taken to enter: a 45° lead-in no
/// longer leads in.
const STEEPEST: f64 = 44.0 * PI / 180.0;

/// An opening in the rim of a real disc: a slot's mouth, or the far end of one cut right through.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Opening {
    /// Which slot of the disc, from 0.
    pub slot: usize,
    /// Clockwise from the true slot, radians, 0 ≤ . < 2π.
    turn: f64,
    /// Half-angle at the rim, radians.
    half_angle: f64,
    /// Outer corner: across from the slot's middle line and out from the disc's middle, mm.
    corner: (f64, f64),
    /// The corner is that of a lead-in.
    leads_in: bool,
    /// Between the walls, mm.
    width: f64,
    /// Deepest point of the floor, out from the disc's middle, mm; −∞ where there is no floor.
    floor: f64,
}

/// A pin that goes into a slot; each figure in mm, negative where it does not.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Entry {
    /// Which slot of the disc, from 0.
    pub slot: usize,
    /// How far aside the pin could still be moved before it met the mouth's outer corner.
    pub enters: f64,
    /// Slot wider than the pin.
    pub fits: f64,
    /// Slot left beyond the pin at full travel, the disc turned to let it in; ∞ without a floor.
    pub depth: f64,
    /// Travel at which the floor stops the pin for good, however the disc turns; the whole travel
    /// where it does not.
    pub caught: f64,
}

/// What the pin meets with the disc at one turn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Meets {
    /// Nothing within the whole travel.
    Nothing,
    /// Plain rim, after this travel and so far (mm along the rim) from the nearest mouth.
    Rim {
        /// Travel to the touch, mm.
        travel: f64,
        /// To the nearest mouth's corner, mm; ∞ on a disc without a slot.
        beside: f64,
    },
    /// A mouth, and whether it lets the pin in.
    Mouth {
        /// How far (mm along the rim) inside the mouth a whole rim would have been touched.
        inside: f64,
        /// What the mouth does.
        entry: Entry,
    },
}

impl Entry {
    /// The least of what lets the pin in for the whole travel, mm.
    pub fn margin(&self) -> f64 {
        self.enters.min(self.fits).min(self.depth)
    }
}

/// A pin before its disc, slider forward.
#[derive(Debug, Clone)]
pub struct Meeting<'a> {
    dial: &'a Dial,
    built: &'a BuiltDial,
    digit: u32,
    travel: f64,
    /// Middle of the pin from the middle of the shaft, slider forward, mm.
    pub pin: Point,
    /// Where a whole rim would be touched: travel (mm) and direction (radians clockwise from −y);
    /// `None` where the pin goes past the disc.
    touch: Option<(f64, f64)>,
    openings: Vec<Opening>,
}

impl<'a> Meeting<'a> {
    pub(super) fn new(
        dial: &'a Dial,
        built: &'a BuiltDial,
        digit: u32,
        pin: Point,
        travel: f64,
        mut openings: Vec<Opening>,
    ) -> Self {
        let reach = built.rim + built.pin_radius;
        let touch = (pin.x.abs() < reach).then(|| {
            let below = trig::sqrt(reach * reach - pin.x * pin.x);
            (-pin.y - below, -trig::asin(pin.x / reach))
        });
        openings.clear();
        let positions = i64::from(dial.positions.max(1));
        let slots = dial.disc.slots.iter().zip(&built.slots).take(MAX_SLOTS);
        for (index, (drawn, slot)) in slots.enumerate() {
            let steps = drawn.mark.rem_euclid(positions) as f64;
            let turn = steps * TAU / f64::from(dial.positions.max(1));
            open(&mut openings, built.rim, index, turn, slot);
        }
        Self {
            dial,
            built,
            digit,
            travel,
            pin,
            touch,
            openings,
        }
    }

    /// Gives back what [`super::Moment::meeting_in`] was given.
    pub fn into_buffer(self) -> Vec<Opening> {
        self.openings
    }

    /// How far the pin is clear of the whole rim, slider forward, mm.
    pub fn clear_at_rest(&self) -> f64 {
        self.pin.length() - self.built.rim - self.built.pin_radius
    }

    /// Travel at which a plain rim stops the pin, mm; `None` where the pin goes past the disc.
    pub fn rim_stop(&self) -> Option<f64> {
        self.touch.map(|(travel, _)| travel)
    }

    /// How far the pin's nearest point is inside the rim at full travel, mm: while it is, the rim
    /// beside its mouth stops the dial from turning.
    pub fn caught_at_full_travel(&self) -> f64 {
        let end = self.end();
        let before = if end.y < 0.0 { 1.0 } else { -1.0 };
        self.built.rim + self.built.pin_radius - before * end.length()
    }

    fn end(&self) -> Point {
        Point::new(self.pin.x, self.pin.y + self.travel)
    }

    /// Turn of the true slot from the direction that faces the pin, radians clockwise, the pointer
    /// standing at `mark` but for this reading and backlash (degrees).
    pub fn turn(&self, mark: u32, reading: f64, backlash: f64) -> f64 {
        let steps = f64::from(mark) - f64::from(self.digit);
        trig::radians(steps * self.dial.step_deg() + reading + backlash)
    }

    /// The same with the built dial's own reading and backlash.
    pub fn turn_at(&self, mark: u32) -> f64 {
        self.turn(mark, self.built.reading, self.built.backlash)
    }

    /// What the pin meets with the pointer at `mark`, off by the built dial's own reading and backlash.
    pub fn at_mark(&self, mark: u32) -> Meets {
        self.at_turn(self.turn_at(mark))
    }

    /// What the pin meets with the true slot turned by `turn` radians clockwise from its pin.
    pub fn at_turn(&self, turn: f64) -> Meets {
        let Some((travel, touched)) = self.touch.filter(|(travel, _)| *travel < self.travel) else {
            return Meets::Nothing;
        };
        let mut nearest: Option<(f64, f64, &Opening)> = None;
        for opening in &self.openings {
            let faces = wrapped(turn + opening.turn);
            let beside = wrapped(faces - touched).abs() - opening.half_angle;
            if nearest.is_none_or(|(least, ..)| beside < least) {
                nearest = Some((beside, faces, opening));
            }
        }
        match nearest {
            Some((beside, faces, opening)) if beside < 0.0 => Meets::Mouth {
                inside: -beside * self.built.rim,
                entry: self.entry(opening, faces),
            },
            nearest => Meets::Rim {
                travel,
                beside: nearest.map_or(f64::INFINITY, |(beside, ..)| beside * self.built.rim),
            },
        }
    }

    /// What the mouth of the true slot would do to the pin at this turn (radians clockwise); `None`
    /// on a disc without a true slot.
    pub fn true_entry(&self, turn: f64) -> Option<Entry> {
        let own = self.openings.iter().find(|opening| opening.turn == 0.0)?;
        Some(self.entry(own, wrapped(turn)))
    }

    fn entry(&self, opening: &Opening, turn: f64) -> Entry {
        let radius = self.built.pin_radius;
        let end = self.end();
        // before the disc's middle the slot turns to face its pin; past it the floor comes round
        let out = if end.y < 0.0 { 1.0 } else { -1.0 } * end.length();
        Entry {
            slot: opening.slot,
            enters: self.enters(opening, turn),
            fits: opening.width - 2.0 * radius,
            depth: out - opening.floor - radius,
            caught: self.caught(opening.floor + radius),
        }
    }

    /// See [`Entry::enters`]; −∞ where the mouth is turned too far away for anything to enter.
    ///
    /// A lead-in's flat may be touched anywhere inside its outer corner; the pin's middle is then
    /// r/√2 further in and out than the touch. Without one the corner itself must be passed; a wall
    /// that closes in on the pin is touched inside the mouth by a pin that would just brush the corner.
    fn enters(&self, opening: &Opening, turn: f64) -> f64 {
        if turn.abs() > STEEPEST {
            return f64::NEG_INFINITY;
        }
        let (sine, cosine) = (trig::sin(turn), trig::cos(turn));
        let radius = self.built.pin_radius;
        let (across, out) = opening.corner;
        let side = |sine: f64, aside: f64| {
            if opening.leads_in {
                let shift = radius * FRAC_1_SQRT_2;
                (across - shift) * cosine - (out + shift) * sine - aside
            } else {
                let needed = if sine < 0.0 { radius * cosine } else { radius };
                across * cosine - out * sine - needed - aside
            }
        };
        side(sine, self.pin.x).min(side(-sine, -self.pin.x))
    }

    /// Travel at which the pin's middle comes within `nearest` mm of the disc's middle.
    fn caught(&self, nearest: f64) -> f64 {
        let square = nearest * nearest - self.pin.x * self.pin.x;
        if nearest <= self.built.pin_radius || square <= 0.0 {
            return self.travel;
        }
        (-self.pin.y - trig::sqrt(square)).min(self.travel)
    }
}

/// Adds what one slot opens in the rim.
fn open(openings: &mut Vec<Opening>, rim: f64, index: usize, turn: f64, slot: &BuiltSlot) {
    if slot.width <= 0.0 || slot.depth <= 0.0 {
        return;
    }
    let half = slot.width / 2.0;
    let top = trig::sqrt(rim * rim - half * half);
    let through = slot.depth >= 2.0 * rim;
    let foot = if through {
        -top
    } else {
        rim - slot.depth + half
    };
    let shape = SlotShape::new(
        rim,
        &Slot {
            mark: 0,
            width: slot.width,
            depth: slot.depth,
            // no longer than the wall it is cut from
            lead_in: slot.lead_in.min(top - foot).max(0.0),
        },
    );
    let out = shape.lead_out;
    let near = Opening {
        slot: index,
        turn,
        half_angle: shape.half_angle,
        corner: (shape.rim_half + out, shape.wall_top() + out),
        leads_in: shape.lead_in > 0.0,
        width: slot.width,
        floor: if through {
            f64::NEG_INFINITY
        } else {
            rim - slot.depth
        },
    };
    openings.push(near);
    if through {
        openings.push(Opening {
            turn: if turn >= PI { turn - PI } else { turn + PI },
            half_angle: trig::atan2(half, top),
            corner: (half, top),
            leads_in: false,
            ..near
        });
    }
}

/// An angle of a few turns at most, brought to half a turn either way, radians.
fn wrapped(angle: f64) -> f64 {
    angle - TAU * (angle / TAU).round()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::built::{BuiltLatch, Moment};
    use crate::contact::{PinPath, reach};
    use crate::thin_latch::thin;
    use crate::verdict::StopsAt;
    use latchwright_model::Design;

    /// A latch whose first dial is the mechanism's own example: gap 1.5, slot 8 wide, lead-in 1.
    fn example() -> Design {
        let mut design = thin();
        design.dials[0].pin.gap = 1.5;
        design.dials[0].disc.slots[0].width = 8.0;
        design.combination = vec![0, 0, 0];
        design
    }

    fn meets(design: &Design, turn_deg: f64, aside: f64) -> Meets {
        let mut built = BuiltLatch::nominal(design);
        built.dials[0].pin.0 = aside;
        let moment = Moment::of(design, &built).unwrap();
        let meeting = moment.meeting(0).unwrap();
        meeting.at_turn(trig::radians(turn_deg))
    }

    /// The closed-form reach against a disc held still stops in the same place and kind.
    #[test]
    fn the_pin_meets_what_the_reach_says_it_meets() {
        let mut design = example();
        for lead_in in [1.0, 0.0] {
            design.dials[0].disc.slots[0].lead_in = lead_in;
            for turn in -179..180 {
                for aside in [-1.3, -0.4, 0.0, 0.9] {
                    let turn = f64::from(turn);
                    let path = PinPath {
                        aside,
                        ..PinPath::nominal(&design.dials[0], 8.0)
                    };
                    let stop = reach(&design.dials[0], path, turn);
                    match meets(&design, turn, aside) {
                        Meets::Rim { travel, .. } => {
                            assert_eq!(stop.stops_at, StopsAt::Rim, "{turn}° {aside}");
                            assert!((travel - stop.travel).abs() < 1e-9);
                        }
                        Meets::Mouth { entry, .. } if entry.enters < 0.0 => {
                            assert_eq!(stop.stops_at, StopsAt::Mouth, "{turn}° {aside}");
                            let (x, y) = stop.contact.unwrap();
                            let on_rim = trig::hypot(x, y);
                            assert!((on_rim - 18.0).abs() < 1e-9, "{turn}° {aside}: {on_rim}");
                        }
                        Meets::Mouth { .. } => {
                            let inside = stop
                                .contact
                                .is_none_or(|(x, y)| trig::hypot(x, y) < 18.0 - 1e-9);
                            assert!(inside, "{turn}° {aside}: {stop:?}");
                        }
                        Meets::Nothing => panic!("the disc is always in the way"),
                    }
                }
            }
        }
    }

    #[test]
    fn a_blind_slot_catches_its_pin_on_its_floor() {
        let mut design = example();
        design.dials[0].disc.slots[0].depth = 2.0;
        design.dials[0].disc.slots[0].lead_in = 0.0;
        let Meets::Mouth { entry, .. } = meets(&design, 0.0, 0.0) else {
            panic!("a blind slot is still a slot");
        };
        assert!(entry.enters > 0.0 && entry.depth < 0.0, "{entry:?}");
        assert!(
            (entry.caught - 3.5).abs() < 1e-9,
            "gap 1.5 and depth 2: {}",
            entry.caught
        );
        assert!((entry.depth - (3.5 - 8.0)).abs() < 1e-9);
    }

    #[test]
    fn a_slot_cut_through_lets_the_pin_in_from_either_side() {
        let mut design = example();
        design.dials[0].disc.slots[0].depth = 36.0;
        for turn in [0.0, 180.0] {
            let Meets::Mouth { entry, .. } = meets(&design, turn, 0.0) else {
                panic!("{turn}°: no mouth");
            };
            assert!(entry.margin() > 0.0, "{turn}°: {entry:?}");
        }
    }

    #[test]
    fn a_pin_too_far_away_meets_nothing() {
        let mut design = example();
        design.dials[0].pin.gap = 9.0;
        assert_eq!(meets(&design, 0.0, 0.0), Meets::Nothing);
        assert_eq!(meets(&example(), 90.0, 20.5), Meets::Nothing);
    }

    #[test]
    fn a_pin_is_caught_while_its_near_side_is_inside_the_rim() {
        let design = example();
        let built = BuiltLatch::nominal(&design);
        let moment = Moment::of(&design, &built).unwrap();
        let meeting = moment.meeting(0).unwrap();
        assert!((meeting.clear_at_rest() - 1.5).abs() < 1e-12);
        assert!((meeting.rim_stop().unwrap() - 1.5).abs() < 1e-12);
        assert!((meeting.caught_at_full_travel() - 6.5).abs() < 1e-12);
    }
}
