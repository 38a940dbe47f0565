//! Every margin of a design by the plain sums, each beside what it would be in a latch without any
//! error: what a search can afford to ask ten thousand times.
//!
//! The plain sums take all errors at their worst at once. They promise less than the proof, never
//! more, and they only ever rise where the maker works more exactly.

use core::f64::consts::PI;

use latchwright_geometry::trig;

use super::bears::{pin_bears, tab_bears};
use super::figure::{DUST, Figure, Question};
use super::in_plate::{Plate, in_plate};
use latchwright_model::key;
use latchwright_model::slot::SlotShape;
use latchwright_model::{Design, Dial};
use latchwright_proof::bounds::{DialBounds, SliderBounds, Terms};
use latchwright_proof::check::{Sums, arm_limit, captive_margin, free_margin, rest_hold_margin};
use latchwright_proof::check::{guide_strips, slider_body};
use latchwright_proof::check::{
    spacing::DISC_TO_PIN, spacing::FINGERS, spacing::PRINTED_WALL, spacing::WOOD_LEFT,
};
use latchwright_proof::dial_judge::DialJudge;
use latchwright_proof::season::Drift;
use latchwright_proof::slider_body::SliderBody;

/// Woods and year, worked out once.
pub(super) struct Ground {
    pub(super) drift: Drift,
    /// Least growth of the plate along x and y, as fractions.
    pub(super) growth: (f64, f64),
    pub(super) still: Drift,
    /// Plate and slider are alike along y: no length of guide drifts more than another.
    pub alike_along_y: bool,
}

impl Ground {
    /// `None` where a wood is not known.
    pub(super) fn of(design: &Design) -> Option<Self> {
        let drift = Drift::of(design)?;
        let growth = (drift.x.apart(1.0, 0.0).0, drift.y.apart(1.0, 0.0).0);
        let alike = drift.y.apart(1.0, 1.0) == (0.0, 0.0);
        Some(Self {
            drift,
            growth,
            still: Drift::none(),
            alike_along_y: alike,
        })
    }
}

/// The same latch of a maker who makes no error, with no play anywhere.
pub(super) fn perfect(design: &Design) -> Design {
    let mut perfect = design.clone();
    let work = &mut perfect.workmanship;
    (work.pin_place, work.bore_place, work.keeper_place) = (0.0, 0.0, 0.0);
    (work.thickness, work.print, work.film_spread) = (0.0, 0.0, 0.0);
    work.reading = 0.0;
    perfect.slider.guide_play = 0.0;
    for dial in &mut perfect.dials {
        dial.bore.shaft_play = 0.0;
        dial.key.clearance = 0.0;
    }
    perfect
}

/// Every figure of `design`; `None` where a wood is not known.
pub fn figures(design: &Design) -> Option<Vec<Figure>> {
    let ground = Ground::of(design)?;
    let mut work = Work::default();
    work.weigh(&ground, design, Some(&perfect(design)), true);
    work.weigh_stack(design, &perfect(design));
    Some(work.figures)
}

/// The least room over all figures of `design`, with the figure that decides.
///
/// # Source
/// Calculated: to first order the share by which every error could grow before a promise breaks.
pub fn least_room(design: &Design) -> Option<(f64, Figure)> {
    let rooms = figures(design)?;
    let rooms = rooms.into_iter().map(|figure| (figure.room(), figure));
    rooms.min_by(|one, other| one.0.total_cmp(&other.0))
}

/// Room for the figures, used again and again.
#[derive(Default)]
pub(super) struct Work {
    pub figures: Vec<Figure>,
}

impl Work {
    /// The figures of the latch as seen from above; those of mirrored dials once. With `marks`, the
    /// mark beside the digit too. Without a perfect latch beside it nothing counts as uncertain: enough
    /// to see what is left when errors are as large as they are.
    pub(super) fn weigh(
        &mut self,
        ground: &Ground,
        real: &Design,
        perfect: Option<&Design>,
        marks: bool,
    ) {
        self.figures.clear();
        let play = real.slider.guide_play;
        let seen = Seen { play, marks };
        let figures = &mut self.figures;
        seen.margins(
            real,
            &ground.drift,
            ground.growth,
            &mut |question, dial, worst| {
                figures.push(Figure {
                    question,
                    dial,
                    nominal: 0.0,
                    worst,
                });
            },
        );
        let Some(perfect) = perfect else {
            for figure in figures {
                figure.nominal = figure.worst;
            }
            return;
        };
        let mut at = 0;
        seen.margins(perfect, &ground.still, (0.0, 0.0), &mut |_, _, nominal| {
            if let Some(figure) = figures.get_mut(at) {
                figure.nominal = nominal;
            }
            at += 1;
        });
    }

    /// Adds the figures through the thickness of the lid.
    pub(super) fn weigh_stack(&mut self, real: &Design, perfect: &Design) {
        let before = self.figures.len();
        let figures = &mut self.figures;
        super::stack::margins(real, &mut |question, dial, worst| {
            figures.push(Figure {
                question,
                dial,
                nominal: 0.0,
                worst,
            });
        });
        let mut at = before;
        super::stack::margins(perfect, &mut |_, _, nominal| {
            if let Some(figure) = figures.get_mut(at) {
                figure.nominal = nominal;
            }
            at += 1;
        });
    }
}

/// Takes a question, its dial and what is to spare.
pub(super) type Sink<'a> = dyn FnMut(Question, Option<usize>, f64) + 'a;

/// How a latch is looked at.
struct Seen {
    /// The guide play that the maker gives it, mm.
    play: f64,
    marks: bool,
}

impl Seen {
    fn margins(&self, design: &Design, drift: &Drift, growth: (f64, f64), out: &mut Sink<'_>) {
        let sums = Sums::plain(design, drift, design.dials.len());
        let slider = sums.slider;
        let plate = Plate::of(growth, design);
        out(Question::Free, None, free_margin(&sums));
        out(Question::HeldAtRest, None, rest_hold_margin(&sums));
        out(Question::Swings, None, slider_body::swing_margin(&sums));
        let body = SliderBody::led(design, drift, &sums.slider);
        let seat = slider_body::around_shank(design, &body) - slider_body::AROUND_SHANK;
        out(Question::PullSeat, None, seat);
        let keeper = slider_body::slot_to_rabbet(design) - WOOD_LEFT;
        out(Question::PullKeeper, None, keeper);
        out(Question::Bar, None, slider_body::bar_room(design, &body));
        out(
            Question::StripsToBar,
            None,
            guide_strips::to_bar(&sums, &body),
        );
        out(Question::StripsToKeeper, None, behind_keeper(design));
        let lost = slider.least_play - design.slider.guide_play;
        out(Question::Guide, None, self.play + lost);
        out(Question::Racking, None, racking(design, &slider));
        let mut creep: f64 = 0.0;
        for (index, dial, bounds) in sums.each() {
            in_plate(design, &plate, (index, dial), out);
            if !is_outdone(design, index) {
                creep = creep.max(self.dial(&sums, (index, dial, bounds), out));
            }
        }
        out(Question::TabBears, None, tab_bears(design, creep));
        pairs((&sums, &body), &plate, out);
    }

    /// The figures of one dial; how far the slider may creep until its pin is stopped, mm.
    fn dial(
        &self,
        sums: &Sums<'_>,
        (index, dial, bounds): (usize, &Dial, &DialBounds),
        out: &mut Sink<'_>,
    ) -> f64 {
        let (design, at) = (sums.design, Some(index));
        let judge = DialJudge::new(design, dial, *bounds);
        out(Question::AtRest, at, bounds.rest_gap());
        let entry = judge.entry_at_digit();
        let of = |margin: fn(&latchwright_proof::dial_judge::Entry) -> f64| {
            entry.as_ref().map_or(f64::NEG_INFINITY, margin)
        };
        out(Question::Enters, at, of(|entry| entry.enters));
        out(Question::Fits, at, of(|entry| entry.fits));
        out(Question::Deep, at, of(|entry| entry.depth));
        out(Question::Wall, at, wall(dial));
        let captive = captive_margin(sums, index).unwrap_or(f64::NEG_INFINITY);
        out(Question::Captive, at, captive);
        let (creep, hold) = hold(design, bounds);
        out(Question::Hold, at, hold);
        if self.marks {
            out(Question::Beside, at, judge.angle_to_mouth(dial.step_deg()));
        }
        out(Question::Bite, at, key::bite(dial));
        out(Question::Star, at, star(design, dial, bounds));
        out(Question::PinBears, at, pin_bears(design, dial, bounds));
        // the slider goes on by what its yaw makes of the pin's own creep
        creep.unwrap_or(0.0) + bounds.lift
    }
}

/// How far the slider may creep until this dial's pin is stopped, mm, if it is; what the tab then holds
/// beyond what it must, mm.
fn hold(design: &Design, bounds: &DialBounds) -> (Option<f64>, f64) {
    let creep = bounds.creep(bounds.rim.lo + bounds.pin.lo);
    let hold = creep.map_or(f64::NEG_INFINITY, |creep| bounds.hold_margin(design, creep));
    (creep, hold)
}

/// The gap at rest and what the tab holds beyond what it must, mm, by the first dial: a small part of all the
/// figures, and those that most latches lack.
pub(super) fn held_by_first(design: &Design, drift: &Drift) -> (f64, f64) {
    let sums = Sums::plain(design, drift, 1);
    let first = sums.each().next();
    let infinite = (f64::INFINITY, f64::INFINITY);
    first.map_or(infinite, |(_, _, bounds)| {
        (bounds.rest_gap(), hold(design, bounds).1)
    })
}

/// The least turn, degrees, that keeps every dial's next mark clear of its mouth when all errors are
/// `1 + room` times as large: one entry a dial, those of mirrored dials alike.
pub(super) fn least_steps(ground: &Ground, real: &Design, perfect: &Design, room: f64) -> Vec<f64> {
    let of = |design: &Design, drift: &Drift| -> Vec<f64> {
        let slider = SliderBounds::of(design, drift, Terms::All);
        let dials = design.dials.iter();
        let step = |dial: &Dial| {
            let bounds = DialBounds::of(design, dial, &slider, drift, Terms::All);
            90.0 - DialJudge::new(design, dial, bounds).angle_to_mouth(90.0)
        };
        dials.map(step).collect()
    };
    let worst = of(real, &ground.drift);
    let nominal = of(perfect, &ground.still);
    let scaled = |(worst, nominal): (&f64, &f64)| nominal + (1.0 + room) * (worst - nominal);
    worst.iter().zip(&nominal).map(scaled).collect()
}

/// What the strips have behind the keeper and its rabbet, mm: right behind it will do, where the search
/// asks for a little more than nought of everything.
pub(super) fn behind_keeper(design: &Design) -> f64 {
    guide_strips::to_keeper(design) + 2.0 * DUST
}

/// Whether another dial of the same row, made alike, stands further out: whatever yaw and season do to
/// this dial, they do more of it to that one.
fn is_outdone(design: &Design, index: usize) -> bool {
    let Some(dial) = design.dials.get(index) else {
        return false;
    };
    let straight =
        design.tab.at == 0.0 && design.slider.guide_at.0 == 0.0 && design.slider.pull_at == 0.0;
    let further_out = |(number, other): (usize, &Dial)| {
        let (out, own) = (other.centre.0.abs(), dial.centre.0.abs());
        number != index
            && other.centre.1 == dial.centre.1
            && (out > own || (out == own && number > index))
            && other.positions == dial.positions
            && other.pin.offset == 0.0
            && dial.pin.offset == 0.0
            && other.key == dial.key
            && other.pin == dial.pin
            && other.disc == dial.disc
            && other.bore == dial.bore
    };
    straight && design.dials.iter().enumerate().any(further_out)
}

/// How much longer the guide is than a slider that does not jam needs, mm.
pub(super) fn racking(design: &Design, slider: &SliderBounds) -> f64 {
    let aside = (design.slider.pull_at - design.slider.guide_at.0).abs();
    let arm = aside + design.slider.shank / 2.0 + slider.play.max(0.0);
    slider.guide_length - arm / arm_limit(design.slider.friction)
}

/// How much longer the true slot's wall is than its lead-in, mm.
fn wall(dial: &Dial) -> f64 {
    let Some(slot) = dial.disc.slots.first() else {
        return f64::NEG_INFINITY;
    };
    if slot.width >= 2.0 * dial.disc.radius {
        return f64::NEG_INFINITY;
    }
    let shape = SlotShape::new(dial.disc.radius, slot);
    let length = if shape.shallow {
        0.0
    } else {
        shape.rim_top - shape.floor_centre
    };
    length - slot.lead_in
}

fn star(design: &Design, dial: &Dial, bounds: &DialBounds) -> f64 {
    let depths = dial.disc.slots.iter().map(|slot| slot.depth);
    let deepest = depths.fold(0.0, f64::max);
    let star = star_reach(dial);
    let work = &design.workmanship;
    let off = dial.disc.radius - bounds.rim.lo + work.print + work.film_spread;
    dial.disc.radius - deepest - star - off - PRINTED_WALL
}

/// From the middle of the star to its tips, mm.
pub(super) fn star_reach(dial: &Dial) -> f64 {
    (dial.key.apothem + dial.key.clearance) / trig::cos(PI / f64::from(dial.key.sides.max(3)))
}

/// Discs and knobs with more than this between them (mm) are never the tightest, and are passed over.
const FAR: f64 = 30.0;
/// The same for a disc and another dial's finger.
const FAR_FINGER: f64 = 12.0;

fn pairs((sums, body): (&Sums<'_>, &SliderBody), plate: &Plate, out: &mut Sink<'_>) {
    for (i, one, a) in sums.each() {
        for (j, other, b) in sums.each() {
            let between = (other.centre.0 - one.centre.0, other.centre.1 - one.centre.1);
            let widest = (one.disc.radius + other.disc.radius)
                .max(f64::midpoint(one.knob.diameter, other.knob.diameter))
                .max(one.disc.radius + other.pin_below() - other.disc.radius);
            // far aside there is no need of a root
            if i == j || between.0.abs() > widest + FAR {
                continue;
            }
            // a finger goes down to the bar, past discs that are far from its pin
            disc_and_finger((sums, body), (i, one, a), (other, b), out);
            let apart = trig::hypot(between.0, between.1);
            if apart > widest + FAR {
                continue;
            }
            let play = one.bore.shaft_play + other.bore.shaft_play;
            if i < j {
                let discs = plate.apart(between, 2.0) - a.rim.hi - b.rim.hi - play - DISC_TO_PIN;
                out(Question::Discs, Some(i), discs);
                let knobs = f64::midpoint(one.knob.diameter, other.knob.diameter);
                out(Question::Knobs, Some(i), apart - knobs - FINGERS);
                let bores = f64::midpoint(one.bore.diameter, other.bore.diameter);
                let wood = plate.apart(between, 2.0) - bores - WOOD_LEFT;
                out(Question::Bores, Some(i), wood);
            }
        }
    }
}

/// Disc `i` beside another dial's pin and the finger below it, which reaches down to the slider's bar.
///
/// It asks for no less than what the disc has beside the pin alone.
fn disc_and_finger(
    (sums, body): (&Sums<'_>, &SliderBody),
    (i, dial, a): (usize, &Dial, &DialBounds),
    (other, b): (&Dial, &DialBounds),
    out: &mut Sink<'_>,
) {
    let (x, y) = other.pin_at();
    let near = dial.disc.radius + other.pin.diameter / 2.0 + FAR_FINGER;
    let aside = x - dial.centre.0;
    let below = (dial.centre.1 - y - sums.design.slider.travel).max(0.0);
    // nothing that may be off takes so much
    if aside * aside + below * below > near * near {
        return;
    }
    let finger = slider_body::finger_to_disc(sums, body, (dial, a), (other, b));
    out(Question::Fingers, Some(i), finger - DISC_TO_PIN);
}

#[cfg(test)]
mod tests {
    use super::*;
    use latchwright_proof::prove;
    use latchwright_proof::results::Check;

    fn worst(design: &Design, question: Question, dial: Option<usize>) -> f64 {
        let figures = figures(design).unwrap();
        let of = |figure: &&Figure| figure.question == question && figure.dial == dial;
        figures.iter().find(of).unwrap().worst
    }

    fn check<'a>(checks: &'a [Check], name: &str, dial: Option<usize>) -> &'a Check {
        let of = |check: &&Check| check.kind.code() == name && check.dial() == dial;
        checks.iter().find(of).unwrap()
    }

    #[test]
    fn no_figure_is_above_the_margin_of_its_check_nor_far_below() {
        let design = Design::default();
        let proof = prove(&design);
        for (question, name, dial) in [
            (Question::Free, "free", None),
            (Question::HeldAtRest, "held-at-rest", None),
            (Question::Guide, "guide", None),
            (Question::Racking, "racking", None),
            (Question::AtRest, "at-rest", Some(2)),
            (Question::Captive, "captive", Some(2)),
            (Question::Hold, "stays-held", Some(2)),
            (Question::Enters, "lets-in", Some(2)),
            (Question::Star, "slot-to-star", Some(2)),
            (Question::Bite, "key-bite", Some(2)),
            (Question::MeetsDisc, "pin-meets-disc", Some(1)),
            (Question::RoomBelow, "room-below", None),
            (Question::Closes, "lid-closes", None),
            (Question::Roof, "rabbet-roof", None),
            (Question::TabToKeeper, "tab-to-keeper", None),
            (Question::TabBears, "tab-strength", None),
            (Question::GuideSlot, "bore-to-guide-slot", Some(1)),
            (Question::PullRoom, "finger-knob-room", Some(1)),
            (Question::PullWay, "finger-knob-way", Some(1)),
            (Question::PullSeat, "finger-knob-seat", None),
            (Question::PullKeeper, "guide-slot-to-keeper", None),
            (Question::Bar, "bar-room", None),
            (Question::StripsToBar, "strips-to-bar", None),
            (Question::StripsToKeeper, "strips-to-keeper", None),
            (Question::Swings, "swings-clear", None),
        ] {
            let plain = worst(&design, question, dial);
            let named = if name == "slot-to-star" {
                Some(0)
            } else {
                dial
            };
            let proven = check(&proof.checks, name, named).margin;
            let dust = match name {
                "strips-to-keeper" => 3.0 * DUST,
                _ => DUST,
            };
            assert!(
                plain <= proven + dust && proven - plain < 0.5,
                "{name}: {plain} and {proven}"
            );
        }
    }
}
