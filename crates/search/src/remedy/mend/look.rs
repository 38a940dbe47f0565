//! Going every way from one design: how far each helps, and how far is far enough.

use core::cell::RefCell;
use core::cmp::Ordering;

use super::aim::{Aim, Near};
use super::every_way::{every_way, takes_a_play};
use super::{Price, settled};
use crate::remedy::part::{Part, same};
use crate::remedy::trials::Trials;
use crate::remedy::way::{Moves, Way};
use latchwright_model::change::{Change, Step};
use latchwright_model::{Design, Unit};
use latchwright_proof::results::Proof;

/// Where each way is tried, in steps of the maker's grid: the first shows whether it helps at once, the
/// others how far it does. The first larger, and what is off by less is bracketed by more halving; fewer,
/// and what helps only a while between two is passed over.
const PLACES: [i64; 9] = [8, 24, 64, 140, 240, 500, 1_000, 2_000, 3_000];

/// Where a way that does not help at once is looked at again: a dial that is idle only turns after a while.
/// Nearer, and it is missed; further, and most ways end before it.
const FURTHER_ON: i64 = 64;

/// The same where marks or slots are counted.
const COUNTS: [i64; 6] = [1, 2, 3, 4, 6, 9];

/// The same on a dial with a fault, in equal steps: no margin says how far it is to where there is none,
/// nor how narrow the room is there. Wider, and a lead-in below zero is put past its wall; narrower, and
/// the proofs add up.
const OUT_OF_A_FAULT: [i64; 13] = [8, 16, 24, 32, 40, 48, 56, 64, 72, 80, 140, 240, 500];

/// A length is moved at most by so much (mm): beyond it the part is another one. A place on the lid is
/// moved as far as a dial that hangs off it is from its room.
const FURTHEST: f64 = 12.0;
const FURTHEST_PLACE: f64 = 150.0;

/// Places that are looked at most for the best between three.
const MOST_HALVINGS: usize = 10;

/// What is mended, and the best change so far.
pub(super) struct Job<'a> {
    pub original: &'a Design,
    cut: &'a [Part],
    pub trials: Trials<'a>,
    pub best: Option<Price>,
    found: &'a RefCell<Vec<Change>>,
    usual: Design,
}

/// A design from which every way is gone: the original, or what some moves made of it.
pub(super) struct Start {
    pub price: Price,
    design: Design,
    pub proof: Proof,
    aim: Aim,
    near: Near,
}

impl Start {
    /// Where a way is tried from here.
    fn places(&self, way: &Way) -> &'static [i64] {
        match way {
            Way::Move(sizes) => {
                let mut faults = self.proof.faults.iter().filter(|fault| fault.is_error());
                let dial = sizes.first().and_then(|(size, _)| size.dial());
                if dial.is_some() && faults.any(|fault| fault.dial() == dial) {
                    &OUT_OF_A_FAULT
                } else {
                    &PLACES
                }
            }
            Way::Fewer(_) => &COUNTS,
            Way::Once(_) => &COUNTS[..1],
        }
    }

    /// Least that is left to mend, then least that it is short of, then least cost.
    pub fn order(&self, other: &Self) -> Ordering {
        let left = self.near.left.cmp(&other.near.left);
        let short = self.near.short.total_cmp(&other.near.short);
        left.then(short).then(self.price.order(&other.price))
    }
}

/// One way, as far as it was gone.
struct Line<'w> {
    way: &'w Way,
    /// Where it was looked at, from the start on.
    places: Vec<(i64, Near)>,
    over: bool,
}

impl Line<'_> {
    fn last(&self) -> (i64, Near) {
        *self.places.last().unwrap_or(&(0, Near::NOWHERE))
    }

    fn gains(&self) -> bool {
        self.places.iter().skip(1).any(|(_, near)| near.gains)
    }

    /// The place that leaves least to mend, and the one before it.
    fn best(&self) -> Option<(i64, i64, Near)> {
        let pairs = self.places.windows(2).filter_map(|pair| match pair {
            [before, at] => Some((before.0, at.0, at.1)),
            _ => None,
        });
        pairs.min_by(|(.., one), (.., other)| {
            let left = one.left.cmp(&other.left);
            left.then(one.short.total_cmp(&other.short))
        })
    }
}

impl<'a> Job<'a> {
    pub fn new(
        original: &'a Design,
        cut: &'a [Part],
        trials: Trials<'a>,
        found: &'a RefCell<Vec<Change>>,
    ) -> Self {
        Self {
            original,
            cut,
            trials,
            best: None,
            found,
            usual: Design::default(),
        }
    }

    /// Whether parts that are cut are still what they were.
    pub fn keeps(&self, design: &Design) -> bool {
        let mut cut = self.cut.iter();
        cut.all(|part| same(self.original, design, *part))
    }

    /// Whether a change leaves nothing to mend, and parts that are cut as they were.
    pub fn is_settled(&mut self, change: &Change) -> bool {
        let after = change.apply(self.original);
        self.keeps(&after)
            && self
                .trials
                .prove(&after)
                .is_some_and(|proof| settled(&after, &proof))
    }

    /// Keeps these moves if they cost less than the best so far.
    pub fn record(&mut self, moves: Moves) {
        let Some(price) = Price::of(moves, self.original) else {
            return;
        };
        let better = |best: &Price| price.order(best).is_lt();
        if self.best.as_ref().is_none_or(better) {
            *self.found.borrow_mut() = vec![price.change.clone()];
            self.best = Some(price);
        }
    }

    /// What these moves make of the original; `None` where they cannot be made, or the search is over.
    pub fn start(&mut self, moves: Moves) -> Option<Start> {
        let price = Price::of(moves, self.original)?;
        let design = price.change.apply(self.original);
        let proof = self.trials.prove(&design)?;
        let aim = Aim::of(&proof);
        let near = aim.near(&proof);
        Some(Start {
            price,
            design,
            proof,
            aim,
            near,
        })
    }

    /// Goes every way from here; what leaves nothing to mend is kept if it is the best, and of each way
    /// that leaves less, the place that leaves least is handed back to begin from.
    pub fn look(&mut self, start: &Start) -> Vec<Start> {
        let families = every_way(&start.design);
        let mut lines: Vec<Line<'_>> = Vec::new();
        let mut later: Vec<(Option<Line<'_>>, &[Way])> = Vec::new();
        for family in &families {
            let together = family.together.as_ref().map(|way| self.begin(start, way));
            let tells = |line: &Line<'_>| line.places.len() > 1 && !line.gains();
            if !family.apart && together.as_ref().is_some_and(tells) {
                later.push((together, &family.each));
                continue;
            }
            lines.extend(together);
            for way in &family.each {
                let line = self.begin(start, way);
                if tells(&line) {
                    later.push((Some(line), &[]));
                } else {
                    lines.push(line);
                }
            }
        }
        self.follow_all(start, &mut lines);
        for (line, each) in later {
            let Some(mut line) = line else { continue };
            self.try_at(start, &mut line, FURTHER_ON);
            if !line.gains() {
                continue;
            }
            let mut further = vec![line];
            further.extend(each.iter().map(|way| self.begin(start, way)));
            self.follow_all(start, &mut further);
            lines.extend(further);
        }
        self.beginnings(start, &lines)
    }

    /// Follows the most promising first: what they find keeps the others short.
    fn follow_all(&mut self, start: &Start, lines: &mut [Line<'_>]) {
        let cost = |line: &Line<'_>| {
            let (steps, near) = line.last();
            let gained = near.figure - start.near.figure;
            if gained > 0.0 {
                let needed = -start.near.figure / gained * steps as f64;
                line.way.movement(&start.design, needed)
            } else {
                f64::INFINITY
            }
        };
        lines.sort_by(|one, other| cost(one).total_cmp(&cost(other)));
        for line in lines {
            self.follow(start, line);
        }
    }

    fn begin<'w>(&mut self, start: &Start, way: &'w Way) -> Line<'w> {
        let mut line = Line {
            way,
            places: vec![(0, start.near)],
            over: false,
        };
        let first = start.places(way).first().copied().unwrap_or(1);
        self.try_at(start, &mut line, first);
        line
    }

    /// Goes on along this way as long as it may lead somewhere.
    fn follow(&mut self, start: &Start, line: &mut Line<'_>) {
        let places = start.places(line.way);
        let (begun, _) = line.last();
        for steps in places.iter().filter(|steps| **steps > begun) {
            if line.over {
                return;
            }
            self.try_at(start, line, *steps);
        }
    }

    /// Looks at one place further on, or the last before it that can be had and is worth having.
    fn try_at(&mut self, start: &Start, line: &mut Line<'_>, steps: i64) {
        let (before, was) = line.last();
        let wanted = steps;
        let Some(steps) = self.reach(start, line.way, (before, steps)) else {
            line.over = true;
            return;
        };
        let Some((near, is_settled)) = self.near(start, line.way, steps) else {
            line.over = true;
            return;
        };
        line.places.push((steps, near));
        line.over = steps < wanted;
        if is_settled || near.figure >= 0.0 {
            self.least(start, line.way, ((before, was), (steps, near)), is_settled);
            line.over = true;
        } else if let [.., low, peak, high] = line.places.as_slice()
            && peak.1.figure > high.1.figure
            && peak.1.figure >= low.1.figure
        {
            self.at_peak(start, line.way, [*low, *peak, *high]);
            line.over = true;
        } else if !line.gains() && line.places.len() > 2 {
            line.over = true;
        }
    }

    /// How near the design so many steps along a way comes, and whether nothing is left to mend; `None`
    /// where it cannot be had, or the search is over.
    fn near(&mut self, start: &Start, way: &Way, steps: i64) -> Option<(Near, bool)> {
        let after = way.change(&start.design, steps)?.apply(&start.design);
        if !self.keeps(&after) {
            return None;
        }
        let proof = self.trials.prove(&after)?;
        let near = start.aim.near(&proof);
        let is_settled = settled(&after, &proof);
        if is_settled {
            self.record(start.price.moves.and(way, steps));
        }
        Some((near, is_settled))
    }

    /// The furthest of these steps beyond the first that can be made, goes not too far, and costs less than
    /// the best so far.
    fn reach(&self, start: &Start, way: &Way, (from, to): (i64, i64)) -> Option<i64> {
        let can = |steps: i64| {
            let Some(change) = way.change(&start.design, steps) else {
                return false;
            };
            let whole = start.price.change.clone().then(change);
            let wrong = |step: &Step| goes_too_far(step) || takes_a_play(step, &self.usual);
            if whole.steps.iter().any(wrong) {
                return false;
            }
            self.best.as_ref().is_none_or(|best| {
                let moves = start.price.moves.and(way, steps);
                let price = Price {
                    sizes: super::sizes(&whole),
                    movement: super::movement(&whole),
                    change: whole,
                    moves,
                };
                price.order(best).is_lt()
            })
        };
        if can(to) {
            return Some(to);
        }
        let (mut reached, mut beyond) = (from, to);
        while beyond - reached > 1 {
            let middle = i64::midpoint(reached, beyond);
            if can(middle) {
                reached = middle;
            } else {
                beyond = middle;
            }
        }
        (reached > from).then_some(reached)
    }

    /// Between a place that is too short and one that is far enough, the nearest that is: first where all
    /// that is aimed at passes, and once one was met that leaves nothing to mend, where nothing is left.
    fn least(
        &mut self,
        start: &Start,
        way: &Way,
        (low, high): ((i64, Near), (i64, Near)),
        is_settled: bool,
    ) {
        let ((mut low, mut short), (mut high, mut enough)) = (low, high);
        let mut wants_all = is_settled;
        let mut guess = true;
        while high - low > 1 {
            let middle = i64::midpoint(low, high);
            // by a straight line every second time: a figure that bends makes guesses creep
            let at = if guess && short.figure < 0.0 && !wants_all {
                let share = short.figure / (short.figure - enough.figure.max(1e-3));
                let ahead = share * (high - low) as f64;
                low.saturating_add(whole(ahead)).clamp(low + 1, high - 1)
            } else {
                middle
            };
            guess = !guess;
            let Some((near, is_settled)) = self.near(start, way, at) else {
                return;
            };
            wants_all |= is_settled;
            let is_enough = if wants_all {
                is_settled
            } else {
                near.figure >= 0.0
            };
            if is_enough {
                (high, enough) = (at, near);
            } else {
                (low, short) = (at, near);
            }
        }
    }

    /// Round the middle one of three places, which is nearest of them, one where all passes: what fails on
    /// one side of it may fail on the other side as well, as a pin beside its slot does.
    fn at_peak(&mut self, start: &Start, way: &Way, [low, peak, high]: [(i64, Near); 3]) {
        let (mut low, mut peak, mut high) = (low, peak, high);
        for _ in 0..MOST_HALVINGS {
            // as it rises on one side and falls on the other, it cannot be above both lines
            let rises = (peak.1.figure - low.1.figure) / (peak.0 - low.0).max(1) as f64;
            let falls = (peak.1.figure - high.1.figure) / (high.0 - peak.0).max(1) as f64;
            let above = |slope: f64, steps: i64| peak.1.figure + slope * steps as f64 >= 0.0;
            if !above(rises, high.0 - peak.0) && !above(falls, peak.0 - low.0) {
                return;
            }
            let ahead = high.0 - peak.0 >= peak.0 - low.0;
            let side = if ahead { high.0 } else { low.0 };
            if (side - peak.0).abs() <= 1 {
                return;
            }
            let at = i64::midpoint(peak.0, side);
            let Some((near, is_settled)) = self.near(start, way, at) else {
                return;
            };
            if is_settled || near.figure >= 0.0 {
                let before = if ahead { peak } else { low };
                self.least(start, way, (before, (at, near)), is_settled);
                return;
            }
            let here = (at, near);
            match (near.figure > peak.1.figure, ahead) {
                (true, true) => (low, peak) = (peak, here),
                (true, false) => (peak, high) = (here, peak),
                (false, true) => high = here,
                (false, false) => low = here,
            }
        }
    }

    /// Of each way that leaves less to mend, the nearest place that leaves as little as its best.
    fn beginnings(&mut self, start: &Start, lines: &[Line<'_>]) -> Vec<Start> {
        if self.best.is_some() {
            return Vec::new();
        }
        let mut begun: Vec<(i64, i64, Near, &Way)> = lines
            .iter()
            .filter_map(|line| {
                let (before, at, near) = line.best()?;
                let less = (near.left, near.short) < (start.near.left, start.near.short);
                less.then_some((before, at, near, line.way))
            })
            .collect();
        begun.sort_by(|one, other| {
            let left = one.2.left.cmp(&other.2.left);
            left.then(one.2.short.total_cmp(&other.2.short))
        });
        begun.truncate(super::BEGINNINGS);
        let mut starts = Vec::new();
        for (before, at, near, way) in begun {
            let (mut low, mut high) = (before, at);
            while high - low > 1 {
                let middle = i64::midpoint(low, high);
                match self.near(start, way, middle) {
                    Some((there, _)) if there.left <= near.left => high = middle,
                    Some(_) => low = middle,
                    None => break,
                }
            }
            starts.extend(self.start(start.price.moves.and(way, high)));
        }
        starts
    }
}

fn goes_too_far(step: &Step) -> bool {
    let Step::Resize { size, from, to } = step else {
        return false;
    };
    let most = if size.is_place() {
        FURTHEST_PLACE
    } else {
        FURTHEST
    };
    size.unit() == Unit::Millimetre && (to - from).abs() > most
}

impl Way {
    /// How far all its sizes move in so many steps together, mm.
    fn movement(&self, design: &Design, steps: f64) -> f64 {
        self.change(design, 1)
            .map_or(f64::INFINITY, |change| super::movement(&change) * steps)
    }
}

/// The next whole number of steps.
fn whole(steps: f64) -> i64 {
    #[expect(
        clippy::cast_possible_truncation,
        reason = "kept within a million, and nothing for no number"
    )]
    let whole = steps.clamp(0.0, 1e6).ceil() as i64;
    whole
}
