//! Why nothing can be had: the smallest set of demands that cannot all be met, and the nearest that
//! can.
//!
//! A set of demands is tried with all others let go. Sets of one are tried before sets of two, so that
//! the first that cannot be had is a smallest one. Where more than three demands have to meet, the set
//! is one of which none can be left out.
//!
//! The ways out are looked for the other way round: one demand is let go with all others kept, then
//! two. Where no single one helps, there is more than one set that cannot be had, and a way out has to
//! give in each of them.

use core::fmt::Write as _;

use itertools::Itertools;
use latchwright_geometry::trig;

use super::demand::{self, Demand, Give, Given, lids, relaxed};
use super::nearest::{Approach, Nearest};
use super::say::{demands_in_words, is_many, length};
use super::search::first_proven;
use super::unreadable::Unreadable;
use super::wishes::Wishes;
use latchwright_model::Units;

/// Why nothing was found.
#[derive(Debug, Clone, PartialEq)]
pub struct Nothing {
    /// The smallest set of demands that cannot all be had (of more than three: a set of which none can
    /// be left out); empty where the wishes cannot be read as a latch at all.
    pub conflict: Vec<Demand>,
    /// Further sets that cannot be had either, where giving in one of the first is not enough.
    pub besides: Vec<Vec<Demand>>,
    /// Why the wishes cannot be read as a latch at all; empty where they can.
    pub unreadable: Vec<Unreadable>,
    /// The maker's unit.
    pub units: Units,
    /// Why the demands cannot be had, with its figures, without capital and full stop; empty where the
    /// wishes cannot be read.
    pub reason: String,
    /// The same, and what the nearest would be.
    pub sentence: String,
    /// The ways out with the fewest demands that give way, all others kept; each with a proven design.
    pub nearest: Vec<Nearest>,
}

impl Nothing {
    /// Wishes that are no latch at all, for these reasons.
    pub(super) fn unreadable(unreadable: Vec<Unreadable>, units: Units) -> Self {
        Self {
            conflict: Vec::new(),
            besides: Vec::new(),
            unreadable,
            units,
            reason: String::new(),
            sentence: String::new(),
            nearest: Vec::new(),
        }
    }
}

/// Sets of more demands than this are not looked for one by one.
const MOST: usize = 3;
/// The most demands that give way at once.
const MOST_GIVE: usize = 4;
/// Ways out that are told.
const WAYS: usize = 5;

/// The search for the conflict, a step at a time.
pub(super) struct Conflict {
    wishes: Wishes,
    demands: Vec<Demand>,
    /// Demands that were let go and what is left could be had, or could not.
    could: Vec<Vec<Demand>>,
    could_not: Vec<Vec<Demand>>,
    /// Sets that cannot be had.
    cores: Vec<Vec<Demand>>,
    ways: Vec<Vec<Demand>>,
    nearest: Vec<Nearest>,
    stage: Stage,
}

enum Stage {
    /// Everything is let go.
    All,
    /// One demand after the other is let go.
    Single(usize),
    /// Sets of a few demands, the smallest first.
    Sets(Vec<Vec<Demand>>, usize),
    /// Lets go of one demand after the other, for good where that does not help; then on to ways out
    /// of so many demands.
    Shrink(Vec<Demand>, usize, usize),
    /// Sets of so many demands that may be a way out.
    Ways(usize, Vec<Vec<Demand>>, usize),
    Near(usize, Option<Box<Approach>>),
    Done,
}

impl Conflict {
    pub(super) fn new(wishes: &Wishes) -> Self {
        Self {
            wishes: wishes.clone(),
            demands: demand::all(wishes),
            could: Vec::new(),
            could_not: Vec::new(),
            cores: Vec::new(),
            ways: Vec::new(),
            nearest: Vec::new(),
            stage: Stage::All,
        }
    }

    /// Tries one more set, or one more way out; false at the end.
    pub(super) fn step(&mut self) -> bool {
        self.stage = match core::mem::replace(&mut self.stage, Stage::Done) {
            Stage::All => {
                // if nothing goes even without any demand, none is to blame
                if self.goes(&self.demands.clone()) {
                    Stage::Single(0)
                } else {
                    Stage::Done
                }
            }
            Stage::Single(next) => {
                if let Some(demand) = self.demands.get(next).copied() {
                    self.goes(&[demand]);
                    Stage::Single(next + 1)
                } else {
                    let demands = self.demands.iter().copied();
                    let sets = (1..=MOST).flat_map(|size| demands.clone().combinations(size));
                    Stage::Sets(sets.collect(), 0)
                }
            }
            Stage::Sets(sets, next) => self.sets(sets, next),
            Stage::Shrink(kept, tried, size) => self.shrink(kept, tried, size),
            Stage::Ways(size, sets, next) => self.ways(size, sets, next),
            Stage::Near(next, approach) => self.near(next, approach),
            Stage::Done => Stage::Done,
        };
        !matches!(self.stage, Stage::Done)
    }

    /// Whether something can be had without these demands; what is known already is not tried again:
    /// less that is let go never makes more possible.
    fn goes(&mut self, gone: &[Demand]) -> bool {
        if let Some(known) = self.known(gone) {
            return known;
        }
        let given: Given = gone.iter().map(|demand| (*demand, Give::Whole)).collect();
        let mut lids = lids(&self.wishes, gone).into_iter();
        let goes = lids.any(|lid| first_proven(&relaxed(&self.wishes, &given, lid)).is_some());
        let list = if goes {
            &mut self.could
        } else {
            &mut self.could_not
        };
        list.push(gone.to_vec());
        goes
    }

    fn known(&self, gone: &[Demand]) -> Option<bool> {
        let within = |less: &[Demand], more: &[Demand]| less.iter().all(|one| more.contains(one));
        if self.could.iter().any(|could| within(could, gone)) {
            Some(true)
        } else if self.could_not.iter().any(|could| within(gone, could)) {
            Some(false)
        } else {
            None
        }
    }

    /// Every demand but these.
    fn others(&self, kept: &[Demand]) -> Vec<Demand> {
        let demands = self.demands.iter().copied();
        demands.filter(|demand| !kept.contains(demand)).collect()
    }

    fn sets(&mut self, sets: Vec<Vec<Demand>>, next: usize) -> Stage {
        let rest = sets.iter().enumerate().skip(next);
        let mut open = rest.filter(|(_, kept)| self.known(&self.others(kept)) != Some(true));
        let Some((at, kept)) = open.next() else {
            return Stage::Shrink(self.demands.clone(), 0, 1);
        };
        let kept = kept.clone();
        if self.goes(&self.others(&kept)) {
            Stage::Sets(sets, at + 1)
        } else {
            self.cores.push(kept);
            self.ways_of(1)
        }
    }

    /// No small set is to blame, or another one is looked for: what is left at the end is a set of
    /// which none can be left out.
    fn shrink(&mut self, kept: Vec<Demand>, tried: usize, size: usize) -> Stage {
        let blamed: Vec<Demand> = kept.iter().copied().take(tried).collect();
        let next = kept.get(tried).copied();
        // once all that is to blame is found, the rest is let go in one try instead of one for each
        let Some(demand) = next.filter(|_| self.goes(&self.others(&blamed))) else {
            self.cores.push(blamed);
            return self.ways_of(size);
        };
        let without: Vec<Demand> = kept.iter().copied().filter(|one| *one != demand).collect();
        if self.goes(&self.others(&without)) {
            Stage::Shrink(kept, tried + 1, size)
        } else {
            Stage::Shrink(without, tried, size)
        }
    }

    /// Sets of so many demands that give in everything that cannot be had.
    fn ways_of(&self, size: usize) -> Stage {
        let gives_in = |way: &Vec<Demand>| {
            let mut cores = self.cores.iter();
            cores.all(|core| core.iter().any(|demand| way.contains(demand)))
        };
        let sets = self.demands.iter().copied().combinations(size);
        Stage::Ways(size, sets.filter(gives_in).collect(), 0)
    }

    fn ways(&mut self, size: usize, sets: Vec<Vec<Demand>>, next: usize) -> Stage {
        let Some(way) = sets.get(next).cloned() else {
            return if !self.ways.is_empty() || size == MOST_GIVE {
                Stage::Near(0, None)
            } else {
                self.ways_of(size + 1)
            };
        };
        if self.goes(&way) {
            self.ways.push(way);
            Stage::Ways(size, sets, next + 1)
        } else if size > 1 && self.ways.is_empty() {
            // what is kept then cannot be had either: some of it is to blame
            Stage::Shrink(self.others(&way), 0, size)
        } else {
            Stage::Ways(size, sets, next + 1)
        }
    }

    fn near(&mut self, next: usize, approach: Option<Box<Approach>>) -> Stage {
        let Some(way) = self.ways.get(next).filter(|_| next < WAYS) else {
            return Stage::Done;
        };
        let mut approach = match approach {
            Some(approach) => approach,
            None => Box::new(Approach::new(&self.wishes, way)),
        };
        if approach.step() {
            return Stage::Near(next, Some(approach));
        }
        self.nearest.extend(approach.outcome());
        Stage::Near(next + 1, None)
    }

    /// Share that is done; a guess.
    pub(super) fn done(&self) -> f64 {
        let share = |next: usize, of: usize| next as f64 / of.max(1) as f64;
        match &self.stage {
            Stage::All => 0.0,
            Stage::Single(next) => 0.3 * share(*next, self.demands.len()),
            Stage::Sets(sets, next) => 0.3 + 0.1 * share(*next, sets.len()),
            // they take turns, and how often is not known
            Stage::Shrink(..) | Stage::Ways(..) => {
                let known = self.could.len() + self.could_not.len();
                0.4 + 0.2 * (1.0 - trig::exp(-0.02 * known as f64))
            }
            Stage::Near(next, _) => 0.6 + 0.4 * share(*next, self.ways.len().min(WAYS)),
            Stage::Done => 1.0,
        }
    }

    /// What was found.
    pub(super) fn outcome(&self) -> Nothing {
        let (first, besides) = match self.cores.split_first() {
            Some((first, besides)) => (first.clone(), besides.to_vec()),
            None => (Vec::new(), Vec::new()),
        };
        let needs = self.needs(&first);
        let told = needs.as_ref().map(|(near, _)| *near);
        let reason = self.reason(&first, &besides, needs.map(|(_, words)| words));
        let ways = self.nearest.iter().enumerate();
        let ways: Vec<&str> = ways
            .filter(|(number, _)| Some(*number) != told)
            .map(|(_, near)| near.sentence.as_str())
            .collect();
        let sentence = match (ways.is_empty(), told) {
            (true, _) => reason.clone(),
            (_, Some(_)) => format!("{reason}; or else {}", ways.join(", or ")),
            (_, None) => format!(
                "{reason}; the nearest that can be had: {}",
                ways.join(", or ")
            ),
        };
        Nothing {
            conflict: first,
            besides,
            unreadable: Vec::new(),
            units: self.wishes.base.units,
            reason,
            sentence,
            nearest: self.nearest.clone(),
        }
    }

    fn reason(&self, first: &[Demand], besides: &[Vec<Demand>], needs: Option<String>) -> String {
        let mut reason = match first {
            [] => "no latch was found that is proven, not even on any other lid, with one dial of \
                   three marks, other bits and pins, a gentler pull, and work without errors: look at \
                   the thickness of discs, slider and keeper"
                .to_owned(),
            [one] => format!(
                "no latch can be had with {}, whatever else gives way",
                demands_in_words(&self.wishes, &[*one])
            ),
            many => needs.unwrap_or_else(|| {
                let what = demands_in_words(&self.wishes, many);
                match many {
                    [_, _] => format!("{what} cannot both be had"),
                    _ => format!("{what} cannot all be had"),
                }
            }),
        };
        for core in besides.iter().take(2) {
            let what = demands_in_words(&self.wishes, core);
            // writing to a string cannot fail
            let _ = write!(reason, "; nor can {what}");
        }
        reason
    }

    /// "five dials of 36 marks need a lid 236 mm wide; yours is 220 mm", where the lid alone can give,
    /// with the number of that way out.
    fn needs(&self, core: &[Demand]) -> Option<(usize, String)> {
        let base = &self.wishes.base;
        let alone = |demand| {
            let mut nearest = self.nearest.iter();
            nearest.position(|near| near.demands == [demand])
        };
        let (near, has) = match (core.contains(&Demand::Width), core.contains(&Demand::Depth)) {
            (true, false) => (alone(Demand::Width)?, base.plate.width),
            (false, true) => (alone(Demand::Depth)?, base.plate.depth),
            _ => return None,
        };
        let lid = |demand: &Demand| matches!(demand, Demand::Width | Demand::Depth);
        let others: Vec<Demand> = core.iter().copied().filter(|one| !lid(one)).collect();
        if others.is_empty() {
            return None;
        }
        let verb = if is_many(&self.wishes, &others) {
            "need"
        } else {
            "needs"
        };
        let words = format!(
            "{} {verb} {}, all else kept; yours is {}",
            demands_in_words(&self.wishes, &others),
            self.nearest.get(near)?.sentence,
            length(has, base.units)
        );
        Some((near, words))
    }
}
