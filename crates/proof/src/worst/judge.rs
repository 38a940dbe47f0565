//! What can be promised of one dial at each of its marks, by the exact worst case.
//!
//! Where the pin stands is bounded over all boxes by [`super::figure`]; what a disc does with a pin
//! that stands there is in closed form here. The plain sums of [`crate::dial_judge`] come first and stay
//! as a floor: they are sound too, and where they are as good they decide.

use std::cell::RefCell;

use latchwright_geometry::{EPSILON, Interval, trig};

use super::figure::{DialFigure, DialFigureKind};
use super::least::Least;
use super::over_year::{LatchOverYear, VARIABLES};
use crate::bounds::DialBounds;
use crate::dial_judge::{DialJudge, Entry, Judgement, MouthBounds, finite, wall_between};
use crate::verdict::{DialProof, MarkProof, SureStop, Verdict};
use latchwright_model::slot::mouth_half_angle;
use latchwright_model::{Design, Dial};

/// Pieces of the range of rim radii over which a mouth is looked at.
const RIMS: u32 = 8;

/// A figure over all boxes: what no box falls short of, and the worst box found.
pub type LeastOverBoxes = Least<VARIABLES>;

/// Where the middle of the pin stands from the middle of its shaft, over all boxes, mm.
#[derive(Debug, Clone, Copy)]
pub struct PinBounds {
    /// To the right.
    pub aside: Interval,
    /// Boxes with the pin furthest to the left and furthest to the right.
    pub asides: [LeastOverBoxes; 2],
    /// Nearest, slider forward; the shaft apart.
    pub near: LeastOverBoxes,
    /// Nearest, slider back; the shaft apart.
    pub near_at_end: LeastOverBoxes,
    /// Furthest, slider back, as a negative number; the shaft apart.
    pub far_at_end: LeastOverBoxes,
    /// In some box the pin passes the middle of the disc, where the plain sums have to do.
    pub past_middle: bool,
}

/// Bounds figures of this dial from below, each until it is known to be above what decides.
fn least_of<'a>(
    over_year: &'a LatchOverYear<'a>,
    dial: &'a Dial,
) -> impl Fn(DialFigureKind, f64) -> Option<Least<VARIABLES>> + 'a {
    move |kind, decides| {
        DialFigure {
            over_year,
            dial,
            kind,
        }
        .least(decides)
    }
}

impl PinBounds {
    /// Bounds of this dial's pin; `None` where none can be had.
    pub fn of(over_year: &LatchOverYear<'_>, dial: &Dial, bounds: &DialBounds) -> Option<Self> {
        let least = least_of(over_year, dial);
        let (left, right) = (
            least(DialFigureKind::Left, 0.0)?,
            least(DialFigureKind::Right, 0.0)?,
        );
        let shaft = dial.bore.shaft_play;
        let touches = bounds.rim.hi + bounds.pin.hi + shaft;
        let deepest = dial.disc.slots.iter().find(|slot| slot.mark == 0);
        let floor = deepest.map_or(0.0, |slot| touches - slot.depth);
        let near = least(DialFigureKind::Near, touches)?;
        let past_middle = least(DialFigureKind::BeforeMiddle, shaft)?.bound <= shaft + EPSILON;
        // what a pin past the middle is away from it says nothing: then nobody asks
        let (near_at_end, far_at_end) = if past_middle {
            (near, near)
        } else {
            (
                least(DialFigureKind::NearAtEnd, floor)?,
                least(DialFigureKind::FarAtEnd, 0.0)?,
            )
        };
        Some(Self {
            aside: Interval {
                lo: left.bound - shaft,
                hi: shaft - right.bound,
            },
            asides: [left, right],
            near,
            near_at_end,
            far_at_end,
            past_middle,
        })
    }
}

/// Where a pin is stopped for good, over all boxes.
#[derive(Debug, Clone, Copy)]
pub struct Stopped {
    /// Middle of the pin from the middle of the bore when it is stopped latest, mm.
    pub within: f64,
    /// Furthest travel, as a negative number.
    pub creep: LeastOverBoxes,
    /// Tab under the keeper then, where the keeper was drawn.
    pub held: LeastOverBoxes,
}

/// The dial's promises.
pub struct ExactJudge<'a> {
    over_year: &'a LatchOverYear<'a>,
    dial: &'a Dial,
    plain: DialJudge<'a>,
    /// Bounds of its pin.
    pub pin: PinBounds,
    /// For each mouth, see [`ExactJudge::touch_deg`].
    touches: Vec<(f64, f64)>,
    stops: RefCell<Vec<(f64, Option<Stopped>)>>,
    out_of_reach: bool,
}

impl<'a> ExactJudge<'a> {
    /// Bounds the dial's pin over all boxes; `None` where that cannot be done.
    pub fn new(
        over_year: &'a LatchOverYear<'a>,
        dial: &'a Dial,
        plain: DialJudge<'a>,
    ) -> Option<Self> {
        let pin = PinBounds::of(over_year, dial, plain.bounds())?;
        let mut judge = Self {
            over_year,
            dial,
            plain,
            pin,
            touches: Vec::new(),
            stops: RefCell::default(),
            out_of_reach: false,
        };
        let mouths = judge.plain.mouths.iter();
        judge.touches = mouths.map(|mouth| judge.touch_deg(mouth)).collect();
        judge.out_of_reach = judge.rest_gap() - over_year.design.slider.travel >= EPSILON;
        Some(judge)
    }

    fn design(&self) -> &'a Design {
        self.over_year.design
    }

    /// The plain sums.
    pub fn bounds(&self) -> &DialBounds {
        self.plain.bounds()
    }

    /// Least clear distance between pin and rim, slider forward, mm.
    pub fn rest_gap(&self) -> f64 {
        let b = self.bounds();
        let exact = self.pin.near.bound - b.rim.hi - b.pin.hi - self.dial.bore.shaft_play;
        (exact - EPSILON).max(b.rest_gap())
    }

    /// Where the pin is stopped for good.
    pub fn stopped(&self, stop: SureStop) -> Option<Stopped> {
        let within = self.within(stop)?;
        if let Some((_, known)) = self.stops.borrow().iter().find(|(at, _)| *at == within) {
            return *known;
        }
        let stopped = self.stopped_anew(within);
        self.stops.borrow_mut().push((within, stopped));
        stopped
    }

    fn stopped_anew(&self, within: f64) -> Option<Stopped> {
        let (over_year, dial) = (self.over_year, self.dial);
        let design = self.design();
        let limit = design.tab.required_hold + design.workmanship.keeper_place;
        let least = least_of(over_year, dial);
        Some(Stopped {
            within,
            creep: least(DialFigureKind::Creep(within), f64::NEG_INFINITY)?,
            held: least(DialFigureKind::Held(within), limit + EPSILON)?,
        })
    }

    /// Furthest turn (degrees) of a mouth's middle from straight ahead, towards the right (first)
    /// and the left, at which the pin may still meet the mouth; the reading and backlash apart.
    fn touch_deg(&self, mouth: &MouthBounds) -> (f64, f64) {
        let b = self.bounds();
        let furthest = |aside: f64| {
            let pieces = pieces(b.rim.lo, b.rim.hi).map(|(small, large)| {
                let widest = mouth_half_angle(small, mouth.half.hi, mouth.lead_in.hi);
                let from = if aside >= 0.0 {
                    small + b.pin.lo
                } else {
                    large + b.pin.hi
                };
                trig::degrees(widest + trig::asin(aside / from))
            });
            pieces.fold(f64::NEG_INFINITY, f64::max) + 1e-9
        };
        (furthest(self.pin.aside.hi), furthest(-self.pin.aside.lo))
    }

    /// Degrees to spare to the nearest mouth when the true slot is turned by `turn_deg`.
    pub fn angle_to_mouth(&self, turn_deg: f64) -> f64 {
        let off = self.bounds().turn_deg;
        self.plain
            .mouths
            .iter()
            .zip(&self.touches)
            .map(|(mouth, (right, left))| {
                // clockwise takes the mouth to the left; the pin may be on either side of it
                let turn = trig::wrap_deg(turn_deg + mouth.mouth.turn_deg);
                let spare = |clockwise: f64| (clockwise - left).min(360.0 - clockwise - right);
                let best = [turn, turn + 360.0].map(spare);
                best[0].max(best[1]) - off
            })
            .fold(180.0, f64::min)
            .max(self.plain.angle_to_mouth(turn_deg))
    }

    /// How far the pin keeps clear of what could stop it at this mouth when the mouth's middle is
    /// turned clockwise by any of `turns` degrees, mm.
    fn enters(&self, mouth: &MouthBounds, turns: Interval) -> f64 {
        let b = &self.bounds();
        let most = turns.hi.abs().max(turns.lo.abs());
        // as far as this a narrower mouth, a shorter lead-in and a thicker pin only ever take away
        if most > 44.0 || trig::degrees(mouth.widest) > 45.0 {
            return f64::NEG_INFINITY;
        }
        let side = |turn_deg: f64, aside: f64| {
            let turn = trig::radians(turn_deg);
            let (sine, cosine) = (trig::sin(turn), trig::cos(turn));
            pieces(b.rim.lo, b.rim.hi)
                .map(|(small, large)| {
                    let (across, out) = corner(mouth, small);
                    let (_, furthest_out) = corner(mouth, large);
                    // further out only takes away where the mouth is turned towards the pin
                    let out = if sine >= 0.0 { furthest_out } else { out };
                    if mouth.lead_in.lo > 0.0 {
                        // on the lead-in's flat the pin's middle is r/√2 further in and out
                        let shift = b.pin.hi * core::f64::consts::FRAC_1_SQRT_2;
                        (across - shift) * cosine - (out + shift) * sine - aside
                    } else {
                        across * cosine - out * sine - b.pin.hi - aside
                    }
                })
                .fold(f64::INFINITY, f64::min)
        };
        // clockwise takes the slot to the left, so that its right corner comes towards the pin
        let right = side(turns.hi, self.pin.aside.hi);
        let left = side(-turns.lo, -self.pin.aside.lo);
        right.min(left) - EPSILON
    }

    /// What `mouth` promises when its middle is turned by `turn_deg`, give or take `off_deg`.
    fn entry(&self, mouth: &MouthBounds, turn_deg: f64, off_deg: f64) -> Entry {
        let b = self.bounds();
        let turn = trig::wrap_deg(turn_deg + mouth.mouth.turn_deg);
        let plain = self.plain.entry(mouth, turn.abs() + off_deg);
        // a far end that is only cut through in some boxes lets nothing in for sure
        let open = if mouth.mouth.far {
            mouth.depth.lo - 2.0 * b.rim.hi
        } else {
            f64::INFINITY
        };
        let enters = self
            .enters(mouth, Interval::new(turn - off_deg, turn + off_deg))
            .min(open);
        let depth = if self.pin.past_middle {
            plain.depth
        } else {
            let floor = b.rim.hi + b.pin.hi + self.dial.bore.shaft_play - mouth.depth.lo;
            self.pin.near_at_end.bound - floor - EPSILON
        };
        Entry {
            enters: enters.max(plain.enters),
            fits: plain.fits,
            depth: depth.max(plain.depth),
        }
    }

    /// What the slot that faces the pin at the digit promises at the digit itself.
    pub fn entry_at_digit(&self) -> Option<Entry> {
        let own = self.own_mouth()?;
        Some(self.entry(own, 0.0, self.bounds().turn_deg))
    }

    fn own_mouth(&self) -> Option<&MouthBounds> {
        let mut mouths = self.plain.mouths.iter();
        mouths.find(|mouth| mouth.mouth.turn_deg == 0.0)
    }

    /// The mouth of a blind slot that surely catches the pin at this turn, and nothing else does.
    fn floor_mouth(&self, turn_deg: f64) -> Option<&MouthBounds> {
        let b = self.bounds();
        let mouths = &self.plain.mouths;
        let (index, mouth) = mouths.iter().enumerate().find(|(_, mouth)| {
            let entry = self.entry(mouth, turn_deg, b.turn_deg);
            entry.enters >= EPSILON && entry.fits >= EPSILON
        })?;
        let alone = mouths
            .iter()
            .enumerate()
            .all(|(other, next)| other == index || wall_between(b, mouth, next) >= EPSILON);
        alone.then_some(mouth)
    }

    /// What surely stops the pin for good at this turn.
    pub fn sure_stop(&self, turn_deg: f64) -> Option<SureStop> {
        if self.angle_to_mouth(turn_deg) >= EPSILON {
            return Some(SureStop::Rim);
        }
        let slot = self.floor_mouth(turn_deg)?.mouth.slot;
        self.from_centre(SureStop::Floor(slot))?;
        Some(SureStop::Floor(slot))
    }

    /// Distance from the middle of the disc to the middle of a pin that is stopped latest.
    pub fn from_centre(&self, stop: SureStop) -> Option<f64> {
        let b = self.bounds();
        match stop {
            SureStop::Rim => Some(b.rim.lo + b.pin.lo),
            SureStop::Floor(slot) => {
                let mut mouths = self.plain.mouths.iter();
                let mouth = mouths.find(|mouth| mouth.mouth.slot == slot)?;
                let solid = b.rim.lo - mouth.depth.hi + b.pin.lo;
                (solid > b.pin.lo).then_some(solid)
            }
        }
    }

    /// The same from the middle of the bore: the shaft gives way straight before the pin.
    pub fn within(&self, stop: SureStop) -> Option<f64> {
        let within = self.from_centre(stop)? - self.dial.bore.shaft_play;
        let aside = &self.pin.aside;
        (within > aside.hi.max(-aside.lo) + 1e-3).then_some(within)
    }

    /// Tab beyond what is required when the pin has been stopped, mm, in the worst box.
    pub fn hold_margin(&self, stopped: &Stopped) -> f64 {
        let design = self.design();
        let limit = design.tab.required_hold + design.workmanship.keeper_place;
        stopped.held.bound - limit - EPSILON
    }

    /// The promise for a dial whose true slot is turned by `turn_deg` from its pin, and the figures.
    pub fn judge(&self, turn_deg: f64) -> Judgement {
        let plain = self.plain.judge(turn_deg);
        let exact = self.judge_exactly(turn_deg, &plain);
        match (plain.verdict, exact.verdict) {
            (Verdict::Unsure, _) => exact,
            (sure, found) if sure == found => Judgement {
                margin: exact.margin.max(plain.margin),
                ..exact
            },
            _ => plain,
        }
    }

    fn judge_exactly(&self, turn_deg: f64, plain: &Judgement) -> Judgement {
        let passes = |margin: f64| Judgement {
            verdict: Verdict::Passes,
            creep: None,
            hold_margin: None,
            margin,
        };
        if self.out_of_reach {
            return passes(self.rest_gap() - self.design().slider.travel);
        }
        let entry = self
            .plain
            .mouths
            .iter()
            .map(|mouth| self.entry(mouth, turn_deg, self.bounds().turn_deg).margin())
            .fold(f64::NEG_INFINITY, f64::max);
        if entry >= EPSILON {
            return passes(entry);
        }
        let stopped = self.sure_stop(turn_deg).and_then(|stop| self.stopped(stop));
        let creep = stopped.map(|stopped| -stopped.creep.bound);
        let hold_margin = stopped.map(|stopped| {
            let exact = self.hold_margin(&stopped);
            exact.max(plain.hold_margin.unwrap_or(f64::NEG_INFINITY))
        });
        let (verdict, margin) = match hold_margin {
            Some(margin) if margin >= EPSILON => (Verdict::Holds, margin),
            _ => {
                let angle = self.angle_to_mouth(turn_deg).min(0.0);
                let to_rim = trig::radians(angle) * self.dial.disc.radius;
                let short = hold_margin.unwrap_or(to_rim).min(0.0);
                (Verdict::Unsure, short.max(entry.min(0.0)))
            }
        };
        Judgement {
            verdict,
            creep,
            hold_margin,
            margin,
        }
    }

    /// Half-angles (degrees) of the pointer about the digit: within the first it surely passes,
    /// outside the second it surely meets plain rim. The reading is not part of either.
    pub fn windows(&self) -> (f64, f64) {
        let plain = self.plain.windows();
        let Some(mouth) = self.own_mouth() else {
            return plain;
        };
        let backlash = self.bounds().backlash_deg;
        let (right, left) = self.touch_deg(mouth);
        let possible = (right.max(left) + backlash).clamp(0.0, 180.0).min(plain.1);
        if self.entry(mouth, 0.0, backlash).margin() < EPSILON {
            return (plain.0, possible);
        }
        // what lets in falls steadily with the angle: halve to where it meets zero, from below
        let (mut sure, mut not) = (0.0, 60.0);
        for _ in 0..24 {
            let middle = f64::midpoint(sure, not);
            let off = middle + backlash;
            if self.enters(mouth, Interval::new(-off, off)) >= EPSILON {
                sure = middle;
            } else {
                not = middle;
            }
        }
        (sure.max(plain.0), possible)
    }

    /// Verdicts of the dial at all its marks.
    pub fn prove(&self, plain: DialProof) -> DialProof {
        let mut proof = plain;
        for (mark, found) in (0_u32..).zip(&mut proof.marks) {
            let turn = latchwright_model::slot::slot_turn_deg(self.dial, proof.digit, mark);
            let judged = self.judge(turn);
            *found = MarkProof {
                verdict: judged.verdict,
                reach: found.reach,
                stop: self.sure_stop(turn),
                creep: judged.creep.filter(|creep| creep.is_finite()),
                hold_margin: judged.hold_margin.filter(|margin| margin.is_finite()),
                margin: finite(judged.margin),
            };
        }
        let (sure, possible) = self.windows();
        proof.sure_window_deg = finite(sure);
        proof.possible_window_deg = finite(possible);
        proof
    }
}

/// The range from `lo` to `hi` in pieces.
fn pieces(lo: f64, hi: f64) -> impl Iterator<Item = (f64, f64)> {
    let parts = if hi > lo { RIMS } else { 1 };
    let at = move |part: u32| lo + (hi - lo) * f64::from(part) / f64::from(parts);
    (0..parts).map(move |part| (at(part), if part + 1 == parts { hi } else { at(part + 1) }))
}

/// Outer corner of the mouth at its narrowest on a disc of this radius: across from the slot's middle
/// line and out from the disc's middle, mm. Both grow with the radius.
fn corner(mouth: &MouthBounds, radius: f64) -> (f64, f64) {
    let angle = mouth_half_angle(radius, mouth.half.lo, mouth.lead_in.lo);
    (radius * trig::sin(angle), radius * trig::cos(angle))
}
