//! A design ready to be built many times, and the builds themselves.

use crate::check::{CheckKind, Contributor};
use latchwright_geometry::trig;

use super::dice::Dice;
use super::figures::{self, FIGURES};
use super::row::{DIAL_CONTRIBUTORS, LATCH_CONTRIBUTORS, Ranges, Row, SLOT_CONTRIBUTORS};
use super::tally::{Axis, Tally};
use super::{BLOCK, Plan};
use crate::built::{BuiltLatch, Meeting, Meets, Moment, Movement, Opening};
use crate::results::Proof;
use crate::tolerance::{Link, Sum, sum};
use crate::verdict::{CheckVerdict, Verdict};
use latchwright_model::slot::slot_turn_deg;
use latchwright_model::{Design, Sound};

/// Figures nearer to 0 than this are rounding, mm.
const ROUNDING: f64 = 1e-6;

/// A histogram is wider than the sum of what each number does alone by this factor, because numbers
/// do a little more together.
const ROOM: f64 = 1.25;

/// What was proven and a build does not keep.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Promise {
    /// The dial passes at this mark.
    Passes,
    /// The dial holds at this mark.
    Holds,
    /// The check `at-rest` of the dial.
    AtRest,
    /// The check `captive` of the dial.
    Captive,
    /// The check `free`.
    Free,
    /// The check `held-at-rest`.
    HeldAtRest,
    /// The check `guide`.
    Guide,
}

/// A build that does not keep what was proven: a fault of the program.
#[derive(Debug, Clone, PartialEq)]
pub struct Contradiction {
    /// Number of the build, from 0.
    pub build: u64,
    /// The seed it was drawn with.
    pub seed: u64,
    /// What was promised.
    pub promise: Promise,
    /// The dial it is about, from 0; `None` for the whole latch.
    pub dial: Option<usize>,
    /// The mark it is about, from 0.
    pub mark: Option<u32>,
    /// The figure that should not be negative, mm.
    pub figure: f64,
    /// The latch, all its numbers; its readings and backlashes are those of the mark.
    pub latch: BuiltLatch,
}

/// One mark of one dial.
#[derive(Debug, Clone, Copy)]
struct Mark {
    number: u32,
    /// Turn of the true slot, the pointer exactly on the mark, degrees.
    turn_deg: f64,
    verdict: Verdict,
}

/// One dial.
#[derive(Debug, Clone)]
struct DialTrial {
    /// The mark of the combination.
    digit: Option<Mark>,
    /// All others.
    wrong: Vec<Mark>,
    at_rest: bool,
    captive: bool,
    /// The slot of mark 0, from 0.
    true_slot: Option<usize>,
}

/// Checks of the whole latch that were proven.
#[derive(Debug, Clone, Copy)]
struct Proven {
    free: bool,
    held_at_rest: bool,
    guide: bool,
}

/// What one number does to one figure when it alone is off.
pub(super) type Alone = Vec<[f64; FIGURES]>;

/// A design, a plan and a proof, made ready for building.
#[derive(Debug, Clone)]
pub struct Trial<'a> {
    pub(super) plan: Plan,
    design: &'a Design,
    movement: Movement,
    ranges: Ranges<'a>,
    dials: Vec<DialTrial>,
    proven: Proven,
    pub(super) axes: Vec<[Axis; FIGURES]>,
    pub(super) chains: Vec<[Sum; FIGURES]>,
}

impl<'a> Trial<'a> {
    /// Makes the builds of this design ready, to be held against `proof`, the proof of the same design.
    ///
    /// `None` where the design has a fault that leaves no sense in building it.
    pub fn of(design: &'a Design, proof: &Proof, plan: Plan) -> Option<Self> {
        if proof.blocks_building() {
            return None;
        }
        let passes = |kind: CheckKind, dial: Option<usize>| {
            let mut checks = proof.checks.iter();
            checks.any(|check| {
                check.kind == kind && check.dial() == dial && check.verdict == CheckVerdict::Passes
            })
        };
        let dials = (0..design.dials.len())
            .map(|index| {
                let marks = marks(design, proof, index);
                let digit = design.digit(index);
                DialTrial {
                    digit: marks.iter().find(|mark| mark.number == digit).copied(),
                    wrong: marks
                        .into_iter()
                        .filter(|mark| mark.number != digit)
                        .collect(),
                    at_rest: passes(CheckKind::AtRest, Some(index)),
                    captive: passes(CheckKind::Captive, Some(index)),
                    true_slot: true_slot(design, index),
                }
            })
            .collect();
        let mut trial = Self {
            plan,
            design,
            movement: Movement::of(&Sound::of(design, &proof.faults)?),
            ranges: Ranges::of(design),
            dials,
            proven: Proven {
                free: passes(CheckKind::Free, None),
                held_at_rest: passes(CheckKind::HeldAtRest, None),
                guide: passes(CheckKind::Guide, None),
            },
            axes: Vec::new(),
            chains: Vec::new(),
        };
        trial.lay_out();
        Some(trial)
    }

    /// How many latches it draws, and how.
    pub fn plan(&self) -> Plan {
        self.plan
    }

    /// How many blocks there are; the last may be a short one.
    pub fn blocks(&self) -> u64 {
        self.plan.count.div_ceil(BLOCK)
    }

    /// No builds yet.
    pub fn tally(&self) -> Tally {
        let dial = |dial: &DialTrial| {
            let slot = dial.true_slot.map_or(0, |_| SLOT_CONTRIBUTORS.len());
            LATCH_CONTRIBUTORS.len() + DIAL_CONTRIBUTORS.len() + slot
        };
        let dials = self.dials.iter().map(dial);
        Tally::new(dials.chain([LATCH_CONTRIBUTORS.len()]))
    }

    /// The builds of block `number`, from 0; always the same.
    pub fn block(&self, number: u64) -> Tally {
        let first = number.saturating_mul(BLOCK);
        let last = self.plan.count.min(first.saturating_add(BLOCK));
        let mut tally = self.tally();
        let mut dice = Dice::new(self.plan.seed, number, self.plan.spread);
        let mut row = Row::nominal(self.design);
        let mut built = BuiltLatch::nominal(self.design);
        let mut buffer = Vec::new();
        for build in first..last {
            row.draw(&mut dice);
            self.ranges.build(&row, &mut built);
            let growth = self.movement.until(built.air);
            let mut one = OneBuild {
                trial: self,
                tally: &mut tally,
                number: build,
                row: &row,
                built: &built,
                moment: Moment::grown(self.design, &built, growth),
                opens: true,
                holds: true,
            };
            one.try_out(&mut dice, &mut buffer);
        }
        tally
    }

    /// Lays the histograms out: each figure with nothing off, and what each number does to it alone.
    fn lay_out(&mut self) {
        let mut row = Row::nominal(self.design);
        let nominal = self.figures(&row);
        let mut alone: Vec<Alone> = vec![Vec::new(); nominal.len()];
        for number in 0..row.shares_mut().count() {
            let mut most = vec![[0.0_f64; FIGURES]; nominal.len()];
            for end in [-1.0, 1.0] {
                set(&mut row, number, end);
                let off = self.figures(&row);
                let flat = most.iter_mut().flatten();
                let pairs = off.iter().flatten().zip(nominal.iter().flatten());
                for (most, (off, nominal)) in flat.zip(pairs) {
                    *most = most.max((off - nominal).abs());
                }
            }
            set(&mut row, number, 0.0);
            for (alone, most) in alone.iter_mut().zip(most) {
                alone.push(most);
            }
        }
        let chain = |(alone, nominal): (&Alone, &[f64; FIGURES])| {
            core::array::from_fn(|figure| {
                let at = |row: &[f64; FIGURES]| row.get(figure).copied().unwrap_or(0.0);
                let error = |row: &[f64; FIGURES]| Link {
                    size: 0.0,
                    error: at(row),
                };
                Sum {
                    nominal: at(nominal),
                    ..sum(alone.iter().map(error))
                }
            })
        };
        self.chains = alone.iter().zip(&nominal).map(chain).collect();
        let axis = |chain: &Sum| Axis {
            nominal: chain.nominal,
            half: (chain.worst * ROOM).max(ROUNDING),
        };
        let axes = |chains: &[Sum; FIGURES]| chains.each_ref().map(axis);
        self.axes = self.chains.iter().map(axes).collect();
    }

    /// All figures of the latch of these shares, in groups.
    fn figures(&self, row: &Row) -> Vec<[f64; FIGURES]> {
        let mut built = BuiltLatch::nominal(self.design);
        self.ranges.build(row, &mut built);
        let growth = self.movement.until(built.air);
        let moment = Moment::grown(self.design, &built, growth);
        let held = moment.held_at_rest();
        let of_dial = |index: usize| match moment.meeting(index) {
            Some(meeting) => {
                let digit = self.design.digit(index);
                let turn = meeting.turn_at(digit);
                figures::of_dial(&meeting, turn, held)
            }
            None => [f64::NAN; FIGURES],
        };
        let dials = (0..self.design.dials.len()).map(of_dial);
        dials.chain([figures::of_latch(&moment)]).collect()
    }

    /// Whose each drawn number of group `index` is, in the order they are counted in.
    pub(super) fn contributors(&self, index: usize) -> Vec<Contributor> {
        let mut whose = LATCH_CONTRIBUTORS.to_vec();
        if let Some(dial) = self.dials.get(index) {
            whose.extend(DIAL_CONTRIBUTORS);
            whose.extend(dial.true_slot.iter().flat_map(|_| SLOT_CONTRIBUTORS));
        }
        whose
    }
}

/// One build under trial.
struct OneBuild<'t, 'd> {
    trial: &'t Trial<'d>,
    tally: &'t mut Tally,
    number: u64,
    row: &'t Row,
    built: &'t BuiltLatch,
    moment: Moment<'t>,
    opens: bool,
    holds: bool,
}

impl OneBuild<'_, '_> {
    fn try_out(&mut self, dice: &mut Dice, buffer: &mut Vec<Opening>) {
        let held = self.moment.held_at_rest();
        for index in 0..self.trial.dials.len() {
            let Some(meeting) = self.moment.meeting_in(index, core::mem::take(buffer)) else {
                continue;
            };
            self.try_dial(index, &meeting, held, dice);
            *buffer = meeting.into_buffer();
        }
        self.try_latch();
        self.tally.count += 1;
        self.tally.opens += u64::from(self.opens);
        self.tally.holds += u64::from(self.holds);
    }

    fn try_latch(&mut self) {
        let trial = self.trial;
        let found = figures::of_latch(&self.moment);
        let [free, at_rest, play, _] = found;
        self.opens &= free >= -ROUNDING && play >= -ROUNDING;
        if let (Some(group), Some(axes)) = (self.tally.groups.last_mut(), trial.axes.last()) {
            group.count(found, axes, self.row.latch.iter());
        }
        let proven = trial.proven;
        for (promise, promised, figure) in [
            (Promise::Free, proven.free, free),
            (Promise::HeldAtRest, proven.held_at_rest, at_rest),
            (Promise::Guide, proven.guide, play),
        ] {
            self.keeps(promise, promised, figure, None);
        }
    }

    fn try_dial(&mut self, index: usize, meeting: &Meeting<'_>, held: f64, dice: &mut Dice) {
        let trial = self.trial;
        let Some(dial) = trial.dials.get(index) else {
            return;
        };
        let own = self.built.dials.get(index);
        let (reading, backlash) = own.map_or((0.0, 0.0), |dial| (dial.reading, dial.backlash));
        let turn_deg = dial.digit.map_or(0.0, |digit| digit.turn_deg) + reading + backlash;
        let turn = trig::radians(turn_deg);
        let found = figures::of_dial(meeting, turn, held);
        self.count_dial(index, dial, found);
        let [rest_gap, ..] = found;
        self.opens &= rest_gap >= -ROUNDING;
        self.keeps(Promise::AtRest, dial.at_rest, rest_gap, Some((index, None)));
        let caught = meeting.caught_at_full_travel();
        self.keeps(Promise::Captive, dial.captive, caught, Some((index, None)));
        if let Some(digit) = &dial.digit {
            let meets = meeting.at_turn(turn);
            self.opens &= passes(&meets) >= -ROUNDING;
            self.mark_keeps(index, digit, &meets, held, (reading, backlash));
        } else {
            self.opens = false;
        }
        let (most_reading, most_backlash) = trial.ranges.turning(index);
        for mark in &dial.wrong {
            let off = (dice.error() * most_reading, dice.even() * most_backlash);
            let meets = meeting.at_turn(trig::radians(mark.turn_deg + off.0 + off.1));
            self.holds &= holds(&meets, held) >= -ROUNDING;
            self.mark_keeps(index, mark, &meets, held, off);
        }
    }

    fn count_dial(&mut self, index: usize, dial: &DialTrial, found: [f64; FIGURES]) {
        let group = self.tally.groups.get_mut(index);
        let (axes, row) = (self.trial.axes.get(index), self.row.dials.get(index));
        if let (Some(group), Some(axes), Some(row)) = (group, axes, row) {
            let slot = dial.true_slot.and_then(|slot| row.slots.get(slot));
            let shares = self.row.latch.iter().chain(&row.own);
            group.count(found, axes, shares.chain(slot.into_iter().flatten()));
        }
    }

    fn mark_keeps(&mut self, dial: usize, mark: &Mark, meets: &Meets, held: f64, off: (f64, f64)) {
        let (promise, figure) = match mark.verdict {
            Verdict::Unsure => return,
            Verdict::Passes => (Promise::Passes, passes(meets)),
            Verdict::Holds => (Promise::Holds, holds(meets, held)),
        };
        self.keeps(
            promise,
            true,
            figure,
            Some((dial, Some((mark.number, off)))),
        );
    }

    /// Holds a figure against what was promised of it.
    fn keeps(&mut self, promise: Promise, promised: bool, figure: f64, about: Option<About>) {
        if !promised || figure >= -ROUNDING {
            return;
        }
        let (number, seed) = (self.number, self.trial.plan.seed);
        let latch = self.built;
        self.tally.contradict(|| {
            let mut latch = latch.clone();
            let dial = about.map(|(dial, _)| dial);
            let mark = about.and_then(|(_, mark)| mark);
            let own = dial.and_then(|dial| latch.dials.get_mut(dial));
            if let (Some(own), Some((_, off))) = (own, mark) {
                (own.reading, own.backlash) = off;
            }
            Contradiction {
                build: number,
                seed,
                promise,
                dial,
                mark: mark.map(|(mark, _)| mark),
                figure,
                latch,
            }
        });
    }
}

/// A dial and, where it is about one, its mark with reading and backlash, degrees.
type About = (usize, Option<(u32, (f64, f64))>);

/// How far the pin goes through, mm; negative where something stops it.
fn passes(meets: &Meets) -> f64 {
    match meets {
        Meets::Nothing => f64::INFINITY,
        Meets::Rim { beside, .. } => -beside,
        Meets::Mouth { entry, .. } => entry.margin(),
    }
}

/// Tab held beyond what is required where the pin is stopped for good, mm; negative as well where it
/// is stopped by what can turn the disc, or not at all. `held` is that with the slider forward.
fn holds(meets: &Meets, held: f64) -> f64 {
    match meets {
        Meets::Nothing => f64::NEG_INFINITY,
        Meets::Rim { travel, .. } => held - travel,
        Meets::Mouth { inside, entry } if entry.enters < 0.0 => -inside.min(-entry.enters),
        Meets::Mouth { entry, .. } => held - entry.caught,
    }
}

fn marks(design: &Design, proof: &Proof, index: usize) -> Vec<Mark> {
    let (Some(dial), Some(proof)) = (design.dials.get(index), proof.dials.get(index)) else {
        return Vec::new();
    };
    let digit = design.digit(index);
    let mark = |(number, found): (u32, &crate::verdict::MarkProof)| Mark {
        number,
        turn_deg: slot_turn_deg(dial, digit, number),
        verdict: found.verdict,
    };
    (0_u32..).zip(&proof.marks).map(mark).collect()
}

fn true_slot(design: &Design, index: usize) -> Option<usize> {
    let dial = design.dials.get(index)?;
    let positions = i64::from(dial.positions.max(1));
    let mut slots = dial.disc.slots.iter();
    slots.position(|slot| slot.mark.rem_euclid(positions) == 0)
}

fn set(row: &mut Row, number: usize, share: f64) {
    if let Some(own) = row.shares_mut().nth(number) {
        *own = share;
    }
}
