//! What can be promised of one dial at each of its marks.

use latchwright_geometry::{EPSILON, Point, point::segment_distance, trig};
use latchwright_model::slot::slot_turn_deg;
use latchwright_model::validate::MAX_POSITIONS;

use crate::bounds::{DialBounds, Spread};
use crate::contact::{PinPath, reach};
use crate::verdict::{DialProof, MarkProof, Reach, Verdict};
use latchwright_model::slot::{Mouth, SlotShape, mouth_half_angle, mouth_half_width, mouths};
use latchwright_model::{Design, Dial, Slot};

/// A mouth with its sizes between their least and largest.
pub(crate) struct MouthBounds {
    pub mouth: Mouth,
    pub half: Spread,
    pub depth: Spread,
    pub lead_in: Spread,
    /// Largest half-angle at the rim, radians.
    pub widest: f64,
    /// Least half-width at the rim, lead-in included, mm.
    narrowest: f64,
}

/// What a mouth promises to a pin that comes at it, mm; all three must be at least zero.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Entry {
    /// Clear of everything that could stop it at the mouth.
    pub enters: f64,
    /// Slot wider than the pin.
    pub fits: f64,
    /// Floor deeper than the pin goes.
    pub depth: f64,
}

impl Entry {
    /// The least of the three.
    pub fn margin(&self) -> f64 {
        self.enters.min(self.fits).min(self.depth)
    }
}

/// The dial's promises, its sums already made.
pub struct DialJudge<'a> {
    design: &'a Design,
    dial: &'a Dial,
    bounds: DialBounds,
    pub(crate) mouths: Vec<MouthBounds>,
    /// The pin cannot even touch the disc within the whole travel.
    out_of_reach: bool,
}

impl<'a> DialJudge<'a> {
    /// Makes the sums that do not depend on the mark.
    pub fn new(design: &'a Design, dial: &'a Dial, bounds: DialBounds) -> Self {
        let work = &design.workmanship;
        let width = work.print + 2.0 * work.film_spread;
        let depth = work.print + work.film_spread;
        let spread = |middle: f64, error: f64| Spread {
            lo: (middle - error).max(0.0),
            hi: middle + error,
        };
        let slack = depth + 2.0 * (bounds.rim.hi - dial.disc.radius);
        let mouths = mouths(dial, slack)
            .map(|mouth| {
                let mut half = spread(mouth.width / 2.0, width / 2.0);
                let depth = spread(mouth.depth, depth);
                let mut lead_in = if mouth.lead_in > 0.0 {
                    spread(mouth.lead_in, work.print)
                } else {
                    Spread { lo: 0.0, hi: 0.0 }
                };
                let least = Slot {
                    mark: 0,
                    width: 2.0 * half.lo,
                    depth: depth.lo,
                    lead_in: 0.0,
                };
                let least = SlotShape::new(bounds.rim.lo, &least);
                if least.shallow {
                    // without walls the mouth is narrower than the slot and has no lead-in
                    half.lo = least.rim_half;
                }
                // a lead-in is no longer than the wall it is cut from, on the slot with least wall
                lead_in.lo = lead_in.lo.min(least_wall(bounds.rim.lo, half.hi, depth.lo));
                MouthBounds {
                    half,
                    depth,
                    lead_in,
                    widest: mouth_half_angle(bounds.rim.lo, half.hi, lead_in.hi),
                    narrowest: mouth_half_width(bounds.rim.lo, half.lo, lead_in.lo),
                    mouth,
                }
            })
            .collect();
        let out_of_reach = bounds.rest_gap() - design.slider.travel >= EPSILON;
        Self {
            design,
            dial,
            bounds,
            mouths,
            out_of_reach,
        }
    }

    /// The sums.
    pub fn bounds(&self) -> &DialBounds {
        &self.bounds
    }

    /// Angle (degrees, from the middle of a mouth) beyond which the pin surely meets plain rim.
    fn surely_rim_deg(&self, mouth: &MouthBounds) -> f64 {
        let touch = trig::asin(self.bounds.aside / (self.bounds.rim.lo + self.bounds.pin.lo));
        trig::degrees(mouth.widest + touch) + self.bounds.turn_deg
    }

    /// Degrees to spare to the nearest mouth when the true slot is turned by `turn_deg`.
    pub fn angle_to_mouth(&self, turn_deg: f64) -> f64 {
        self.mouths
            .iter()
            .map(|mouth| turned(mouth, turn_deg) - self.surely_rim_deg(mouth))
            .fold(180.0, f64::min)
    }

    /// What `mouth` promises when its middle may stand `off_deg` away from the pin's direction.
    ///
    /// `enters` is the least of the plain sum and of what keeps the pin off plain rim and off the
    /// mouth's outer corner on its whole way in.
    pub(crate) fn entry(&self, mouth: &MouthBounds, off_deg: f64) -> Entry {
        let b = &self.bounds;
        let sin = trig::sin(trig::radians(off_deg.min(90.0)));
        let cos = trig::cos(trig::radians(off_deg.min(90.0)));
        let plain = mouth.half.lo + mouth.lead_in.lo - b.pin.hi - b.aside - b.rim.hi * sin;
        let clear = if mouth.lead_in.lo > 0.0 {
            // On the lead-in's flat the pin's middle is r/√2 further in than where it touches.
            mouth.narrowest
                - b.pin.hi * core::f64::consts::FRAC_1_SQRT_2
                - b.aside
                - (b.rim.hi + b.pin.hi) * sin
        } else {
            // No lead-in: the straight way must miss the mouth's corner by the pin's radius.
            mouth.half.lo * cos - b.aside - b.rim.hi * sin - b.pin.hi
        };
        // a far end that is only cut through in some boxes lets nothing in for sure
        let open = if mouth.mouth.far {
            mouth.depth.lo - 2.0 * b.rim.hi
        } else {
            f64::INFINITY
        };
        Entry {
            enters: plain.min(clear).min(open),
            fits: 2.0 * (mouth.half.lo - b.pin.hi),
            depth: mouth.depth.lo + b.rest_gap()
                - self.design.slider.travel
                - self.floor_rise(mouth),
        }
    }

    /// How much sooner than on the slot's middle line the pin may come to the round floor, mm.
    ///
    /// Before the middle of the disc the slot turns to face the pin, which then is on that line.
    /// Past it, turning takes the floor towards the pin, and the pin stays to the side.
    fn floor_rise(&self, mouth: &MouthBounds) -> f64 {
        let b = &self.bounds;
        let furthest = b.below - b.radial + b.apart_y.0 - b.lift - self.design.slider.travel;
        let clearance = mouth.half.lo - b.pin.hi;
        if furthest >= 0.0 {
            0.0
        } else if b.aside < clearance {
            clearance - trig::sqrt(clearance * clearance - b.aside * b.aside)
        } else {
            // it may not even fit beside the middle: no depth is enough
            mouth.depth.hi + b.rim.hi
        }
    }

    /// Best entry over all mouths at this turn of the true slot.
    fn best_entry(&self, turn_deg: f64) -> Option<Entry> {
        self.mouths
            .iter()
            .map(|mouth| self.entry(mouth, turned(mouth, turn_deg) + self.bounds.turn_deg))
            .max_by(|one, other| one.margin().total_cmp(&other.margin()))
    }

    /// Creep onto a blind slot's floor that faces the pin, if the pin surely goes into it and into
    /// nothing else.
    fn floor_creep(&self, turn_deg: f64) -> Option<f64> {
        let facing = |mouth: &MouthBounds| {
            let off = turned(mouth, turn_deg) + self.bounds.turn_deg;
            let entry = self.entry(mouth, off);
            entry.enters >= EPSILON && entry.fits >= EPSILON
        };
        let (index, mouth) = self
            .mouths
            .iter()
            .enumerate()
            .find(|(_, mouth)| facing(mouth))?;
        let alone = self.mouths.iter().enumerate().all(|(other, next)| {
            other == index || wall_between(&self.bounds, mouth, next) >= EPSILON
        });
        // nothing of the disc that lies nearer to its centre than the floor's deepest point is cut
        let solid = self.bounds.rim.lo - mouth.depth.hi + self.bounds.pin.lo;
        (alone && solid > self.bounds.pin.lo)
            .then(|| self.bounds.creep(solid))
            .flatten()
    }

    /// The promise for a dial whose true slot is turned by `turn_deg` from its pin, and the figures.
    pub fn judge(&self, turn_deg: f64) -> Judgement {
        if self.out_of_reach {
            let margin = self.bounds.rest_gap() - self.design.slider.travel;
            return Judgement {
                verdict: Verdict::Passes,
                creep: None,
                hold_margin: None,
                margin,
            };
        }
        let entry = self
            .best_entry(turn_deg)
            .map_or(f64::NEG_INFINITY, |entry| entry.margin());
        if entry >= EPSILON {
            return Judgement {
                verdict: Verdict::Passes,
                creep: None,
                hold_margin: None,
                margin: entry,
            };
        }
        let angle = self.angle_to_mouth(turn_deg);
        let creep = if angle >= EPSILON {
            self.bounds.creep(self.bounds.rim.lo + self.bounds.pin.lo)
        } else {
            self.floor_creep(turn_deg)
        };
        let hold_margin = creep.map(|creep| self.bounds.hold_margin(self.design, creep));
        match hold_margin {
            Some(margin) if margin >= EPSILON => Judgement {
                verdict: Verdict::Holds,
                creep,
                hold_margin,
                margin,
            },
            _ => {
                let to_rim = trig::radians(angle.min(0.0)) * self.dial.disc.radius;
                let shortfall = hold_margin.unwrap_or(to_rim).min(0.0).max(entry.min(0.0));
                Judgement {
                    verdict: Verdict::Unsure,
                    creep,
                    hold_margin,
                    margin: shortfall,
                }
            }
        }
    }

    /// Half-angles (degrees) of the pointer about the digit: within the first it surely passes,
    /// outside the second it surely meets plain rim. The reading is not part of either.
    pub fn windows(&self) -> (f64, f64) {
        let Some(mouth) = self.mouths.iter().find(|mouth| mouth.mouth.turn_deg == 0.0) else {
            return (0.0, 0.0);
        };
        let reading = self.design.workmanship.reading;
        let possible = (self.surely_rim_deg(mouth) - reading).clamp(0.0, 180.0);
        if self.entry(mouth, 0.0).margin() < EPSILON {
            return (0.0, possible);
        }
        // `enters` falls steadily with the angle: halve to where it meets zero, from below
        let (mut sure, mut not) = (0.0, 90.0);
        for _ in 0..50 {
            let middle = f64::midpoint(sure, not);
            if self.entry(mouth, middle).enters >= EPSILON {
                sure = middle;
            } else {
                not = middle;
            }
        }
        ((sure - self.bounds.backlash_deg).max(0.0), possible)
    }

    /// What the slot that faces the pin at the digit promises at the digit itself.
    pub fn entry_at_digit(&self) -> Option<Entry> {
        let own = self
            .mouths
            .iter()
            .find(|mouth| mouth.mouth.turn_deg == 0.0)?;
        Some(self.entry(own, self.bounds.turn_deg))
    }
}

/// Verdict and figures of one dial at one turn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Judgement {
    /// The promise.
    pub verdict: Verdict,
    /// See [`MarkProof::creep`].
    pub creep: Option<f64>,
    /// See [`MarkProof::hold_margin`].
    pub hold_margin: Option<f64>,
    /// See [`MarkProof::margin`].
    pub margin: f64,
}

/// How far the middle of `mouth` is from the pin's direction, degrees, 0 to 180.
pub(crate) fn turned(mouth: &MouthBounds, turn_deg: f64) -> f64 {
    trig::wrap_deg(turn_deg + mouth.mouth.turn_deg).abs()
}

/// Wall (mm) between the rim and the floor's arc of a slot of half-width `half` and this depth.
fn least_wall(rim: f64, half: f64, depth: f64) -> f64 {
    let least = Slot {
        mark: 0,
        width: 2.0 * half,
        depth,
        lead_in: 0.0,
    };
    let shape = SlotShape::new(rim, &least);
    if shape.shallow {
        0.0
    } else {
        shape.rim_top - shape.floor_centre.max(-shape.rim_top)
    }
}

/// Least material left between two slots, mm, at their widest and deepest on the smallest disc.
pub(crate) fn wall_between(bounds: &DialBounds, one: &MouthBounds, other: &MouthBounds) -> f64 {
    let spine = |mouth: &MouthBounds| {
        let along = Point::at_angle(trig::radians(mouth.mouth.turn_deg));
        let floor = bounds.rim.lo - mouth.depth.hi + mouth.half.hi;
        (along * floor.min(bounds.rim.hi), along * bounds.rim.hi)
    };
    let ((a, b), (c, d)) = (spine(one), spine(other));
    let wide = |mouth: &MouthBounds| mouth.half.hi + mouth.lead_in.hi;
    segment_distance(a, b, c, d) - wide(one) - wide(other)
}

/// Verdicts of one dial at all its marks; all unsure where `trusted` is false, because a fault of
/// the design touches them.
pub fn judge_dial(judge: &DialJudge<'_>, digit: u32, trusted: bool) -> DialProof {
    let (dial, travel) = (judge.dial, judge.design.slider.travel);
    let marks = (0..dial.positions.min(MAX_POSITIONS))
        .map(|mark| {
            let turn = slot_turn_deg(dial, digit, mark);
            let mut nominal: Reach = reach(dial, PinPath::nominal(dial, travel), turn);
            nominal.travel = finite(nominal.travel);
            let judged = judge.judge(turn);
            MarkProof {
                verdict: if trusted {
                    judged.verdict
                } else {
                    Verdict::Unsure
                },
                reach: nominal,
                stop: None,
                creep: judged.creep.filter(|creep| creep.is_finite()),
                hold_margin: judged.hold_margin.filter(|margin| margin.is_finite()),
                margin: finite(judged.margin),
            }
        })
        .collect();
    let (sure, possible) = judge.windows();
    DialProof {
        digit,
        marks,
        sure_window_deg: finite(sure),
        possible_window_deg: finite(possible),
    }
}

/// What a design with a size that is no number leaves of a figure: the fault is reported, and the
/// figure stands at 0.
pub fn finite(figure: f64) -> f64 {
    if figure.is_finite() { figure } else { 0.0 }
}
