//! The search as a value that goes on step by step: callers may run it on a thread of their own,
//! show how far it is, and stop it with the best so far.

use super::conflict::{Conflict, Nothing};
use super::found::Found;
use super::lattice::Point;
use super::more_marks::more_marks;
use super::pass::{Aim, POINTS, Pass, SHORT};
use super::proposal::{Kind, MOST_PROOFS, Proposal, allowed, first_allowed};
use super::pursuit::{News, Pursuit};
use super::sizes::Sizes;
use super::unreadable::unreadable;
use super::wishes::{Marks, Wishes};

/// Points of the lattice in one step, where anything that goes will do.
const FEW: usize = 16;

/// The same of the points that are looked at first, so that the first proven design is there at once.
const FEWER: usize = 8;

/// Share of the work that the roomiest takes; a guess.
const ROOMIEST: f64 = 0.2;

/// How it ended.
#[derive(Debug, Clone, PartialEq)]
pub enum Outcome {
    /// At least one proven design, in the order of [`Kind`]; where marks are fixed there is no
    /// proposal with more settings.
    Found(Vec<Proposal>),
    /// Nothing that is proven was found, and why.
    Nothing(Nothing),
    /// Stopped before anything was found.
    Stopped,
}

/// How far the search is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Progress<'a> {
    /// Share of the work that is done, 0 to 1; a guess.
    pub done: f64,
    /// What was found so far, all of it proven.
    pub best: &'a [Proposal],
}

/// Whether to go on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Go {
    /// On.
    On,
    /// No: with what was found so far.
    Stop,
}

/// Searches from beginning to end; `tell` hears of every step and may stop it.
pub fn propose(wishes: &Wishes, tell: &mut dyn FnMut(Progress<'_>) -> Go) -> Outcome {
    let mut search = Search::new(wishes);
    while search.step() {
        if tell(search.progress()) == Go::Stop {
            break;
        }
    }
    search.outcome()
}

/// A search that goes on step by step.
pub struct Search {
    wishes: Wishes,
    stage: Stage,
    /// The same with more marks, still to be tried.
    more_marks: Vec<Wishes>,
    found: Vec<Proposal>,
    /// Where the best stood that were no proposals: they are not proven again.
    refused: Vec<(Point, Sizes)>,
    /// What is looked for once something roomy was found.
    better: Vec<Pursuit>,
    /// The best of each pursuit, and what share of it is done.
    pursued: Vec<(Proposal, f64)>,
    done: f64,
    why: Option<Nothing>,
}

/// What is looked for at the moment.
enum Stage {
    Roomiest(Box<Pass>),
    Better,
    Nothing(Box<Conflict>),
    Done,
}

impl Search {
    /// A search that has not begun.
    pub fn new(wishes: &Wishes) -> Self {
        let faults = unreadable(wishes);
        let pass = if faults.is_none() {
            Pass::wide(wishes, SHORT)
        } else {
            None
        };
        Self {
            why: faults,
            stage: pass.map_or(Stage::Done, Stage::Roomiest),
            more_marks: more_marks(wishes),
            wishes: wishes.clone(),
            found: Vec::new(),
            refused: Vec::new(),
            better: Vec::new(),
            pursued: Vec::new(),
            done: 0.0,
        }
    }

    /// Goes on for a few thousandths of a second, up to a tenth or two while it looks round what was found,
    /// and now and then for seconds while it asks why there is nothing; false when there is nothing left to do.
    pub fn step(&mut self) -> bool {
        self.stage = match core::mem::replace(&mut self.stage, Stage::Done) {
            Stage::Roomiest(mut pass) => {
                let more = pass.step(if pass.first_done() { POINTS } else { FEWER });
                if self.found.is_empty() || !more {
                    self.take_roomiest(&pass.kept);
                }
                if more {
                    self.done = self.done.max(ROOMIEST * pass.done());
                    Stage::Roomiest(pass)
                } else {
                    self.after_roomiest(&pass)
                }
            }
            Stage::Better => match self.better.iter_mut().find_map(Pursuit::step) {
                Some(news) => {
                    self.hear(news);
                    Stage::Better
                }
                None => Stage::Done,
            },
            Stage::Nothing(mut conflict) => {
                if conflict.step() {
                    self.done = ROOMIEST + (1.0 - ROOMIEST) * conflict.done();
                    Stage::Nothing(conflict)
                } else {
                    self.why = Some(conflict.outcome());
                    Stage::Done
                }
            }
            Stage::Done => Stage::Done,
        };
        if matches!(self.stage, Stage::Done) {
            self.done = 1.0;
            return false;
        }
        true
    }

    /// Hands out what may go on at the same time from now on, each on a thread of its own; what comes
    /// of every step is to be told by [`Self::hear`]. Empty until the roomiest was found, and once it was
    /// handed out; this search itself has nothing left to do then.
    pub fn apart(&mut self) -> Vec<Pursuit> {
        core::mem::take(&mut self.better)
    }

    /// Hears what came of a step.
    pub fn hear(&mut self, news: News) {
        let mut pursued = self.pursued.iter_mut();
        if let Some((best, done)) = pursued.find(|(best, _)| best.kind == news.kind) {
            *done = news.done;
            if let Some(better) = news.better {
                *best = better;
                self.found = self.best_of_each();
            }
        }
        let done = self.pursued.iter().map(|(_, done)| done).sum::<f64>();
        let mean = done / self.pursued.len().max(1) as f64;
        self.done = ROOMIEST + (1.0 - ROOMIEST) * mean;
    }

    /// The best of each kind, whichever pursuit it came of: a roomier latch with more marks has more
    /// settings too.
    fn best_of_each(&self) -> Vec<Proposal> {
        let pursued = self.pursued.iter().map(|(best, _)| best);
        let roomier = pursued.clone().find(|best| best.kind == Kind::Roomiest);
        let Some(roomiest) = roomier.or(self.found.first()) else {
            return Vec::new();
        };
        let others = pursued.filter(|best| best.kind != Kind::Roomiest);
        let best = others.map(|best| {
            let roomiest = roomiest.as_kind(best.kind);
            if roomiest.merit() > best.merit() {
                roomiest
            } else {
                best.clone()
            }
        });
        core::iter::once(roomiest.clone()).chain(best).collect()
    }

    /// Whether the roomiest is still looked for.
    pub(super) fn seeks_roomiest(&self) -> bool {
        matches!(self.stage, Stage::Roomiest(_))
    }

    /// How far it is.
    pub fn progress(&self) -> Progress<'_> {
        Progress {
            done: self.done,
            best: &self.found,
        }
    }

    /// What was found so far.
    pub fn outcome(&self) -> Outcome {
        if !self.found.is_empty() {
            Outcome::Found(self.found.clone())
        } else if let Some(why) = &self.why {
            Outcome::Nothing(why.clone())
        } else {
            Outcome::Stopped
        }
    }

    fn take_roomiest(&mut self, kept: &[Found]) {
        let room = self.found.first().map_or(f64::NEG_INFINITY, |it| it.room);
        let better = kept.iter().filter(|found| found.room > room);
        let better = better.take(MOST_PROOFS);
        let new: Vec<&Found> = better
            .filter(|found| !self.refused.contains(&found.at))
            .collect();
        match first_allowed(&self.wishes, Kind::Roomiest, new.iter().copied()) {
            Some((_, proposal)) => self.found = vec![proposal],
            None => self.refused.extend(new.iter().map(|found| found.at)),
        }
    }

    fn after_roomiest(&mut self, pass: &Pass) -> Stage {
        let Some(roomiest) = self.found.first() else {
            // more marks are taken where there is nothing else
            self.refused.clear();
            let more = self.more_marks.pop();
            let next = more.and_then(|more| Pass::wide(&more, SHORT));
            return next.map_or_else(
                || Stage::Nothing(Box::new(Conflict::new(&self.wishes))),
                Stage::Roomiest,
            );
        };
        let free = |marks: &Marks| matches!(marks, Marks::AtLeast(_));
        let any_free = self.wishes.dials.iter().any(|dial| free(&dial.marks));
        let roomier = (!self.more_marks.is_empty()).then_some(Kind::Roomiest);
        let kinds = roomier
            .into_iter()
            .chain(any_free.then_some(Kind::MostSettings))
            .chain([Kind::Smallest]);
        let more = core::mem::take(&mut self.more_marks);
        let pursuit = |kind| Pursuit::new(&self.wishes, kind, (pass, roomiest), &more);
        self.better = kinds.map(pursuit).collect();
        // it stands for the others until there is a better one
        let begun = self
            .better
            .iter()
            .map(|pursuit| (pursuit.best().clone(), 0.0));
        self.pursued = begun.collect();
        self.found = self.best_of_each();
        self.done = ROOMIEST;
        Stage::Better
    }
}

/// Any latch that is proven and keeps to the wishes.
pub(super) fn first_proven(wishes: &Wishes) -> Option<Proposal> {
    // asked many times over: only what is likeliest to help is tried beside
    let more = || more_marks(wishes).pop();
    first_of(wishes).or_else(|| first_of(&more()?))
}

/// The same with no more marks than are asked for.
fn first_of(wishes: &Wishes) -> Option<Proposal> {
    let mut pass = *Pass::of(wishes, false, Aim::Room(SHORT))?;
    let mut tried = f64::NEG_INFINITY;
    loop {
        let more = pass.step(FEW);
        // with room to spare it is surely proven
        if let Some(best) = pass.kept.first().filter(|best| best.room > tried.max(0.0)) {
            tried = best.room;
            if let Some(proposal) = allowed(wishes, Kind::Roomiest, best) {
                return Some(proposal);
            }
        }
        if !more {
            let kept = pass.kept.iter().take(MOST_PROOFS);
            return first_allowed(wishes, Kind::Roomiest, kept).map(|(_, proposal)| proposal);
        }
    }
}
