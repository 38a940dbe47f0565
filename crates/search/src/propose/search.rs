//! From wishes to proposals: the roomiest first, and from there the most settings and the smallest lid,
//! which know nothing of each other and may be looked for at the same time.

use core::cmp::Ordering;
use core::ops::ControlFlow;

use itertools::Itertools;

use super::latch::{ALIKE, Latch, settings};
use super::marking::Marking;
use super::proposal::{Kind, Proposal};
use super::sweep::{SHORT, Sweep};
use super::unreadable::unreadable;
use super::why::{Nothing, why};
use super::wishes::{Lid, Marks, Wishes};
use crate::tick::{Progress, Tick};
use latchwright_model::Design;

/// Share of the work that the roomiest takes, of what [`propose`] does; a guess.
pub const ROOMIEST: f64 = 0.3;
/// With how much room to spare the most settings and the smallest lid are looked for, one after the
/// other: the first is surely proven, the second may be, or may have more once it was looked round. Of
/// what has less, hardly any is.
const GRADES: [f64; 2] = [0.0, -0.05];
/// So many of those that are not proven, no two as good as each other, are looked round for more room.
const RAISED: usize = 6;
/// Latches of one sweep that are proven, until one is: more are seldom proven than the first.
const MOST_PROOFS: usize = 24;
/// How often what was bettered is looked round once more.
const ROUNDS: usize = 4;

/// How it ended.
#[derive(Debug, Clone, PartialEq)]
pub enum Outcome {
    /// At least one proven design, in the order of [`Kind`]; where marks are fixed there is no
    /// proposal with more settings.
    Found(Vec<Proposal>),
    /// Nothing that is proven was found, and why.
    Nothing(Box<Nothing>),
    /// Stopped before anything was found.
    Stopped,
}

/// Searches from beginning to end; `tick` hears how far it is and may stop it.
pub fn propose(wishes: &Wishes, tick: &mut Tick<'_, Proposal>) -> Outcome {
    let mut flow = ControlFlow::Continue(());
    let outcome = roomiest(wishes, &mut |progress| {
        flow = tick(progress);
        flow
    });
    let mut found = match outcome {
        Outcome::Found(found) if flow.is_continue() => found,
        outcome => return outcome,
    };
    let kinds = others(wishes);
    let share = (1.0 - ROOMIEST) / kinds.len() as f64;
    for (number, kind) in kinds.iter().enumerate() {
        let Some(start) = found.first().cloned() else {
            break;
        };
        let best = better(wishes, *kind, &start, &mut |progress| {
            let mut now = found.clone();
            now.extend(progress.found.iter().cloned());
            let done = ROOMIEST + share * (number as f64 + progress.done);
            flow = tick(Progress { done, found: &now });
            flow
        });
        found.push(best);
        if flow.is_break() {
            return Outcome::Found(found);
        }
    }
    // whoever stops now has it all
    let _ = tick(Progress {
        done: 1.0,
        found: &found,
    });
    Outcome::Found(found)
}

/// The kinds of proposals there are beside the roomiest.
pub fn others(wishes: &Wishes) -> Vec<Kind> {
    let most = wishes.marks_are_free().then_some(Kind::MostSettings);
    most.into_iter().chain([Kind::Smallest]).collect()
}

/// The roomiest latch alone, or why there is none.
pub fn roomiest(wishes: &Wishes, tick: &mut Tick<'_, Proposal>) -> Outcome {
    if let Some(nothing) = unreadable(wishes) {
        return Outcome::Nothing(Box::new(nothing));
    }
    let mut first: Option<Proposal> = None;
    let sought = first_or_best(wishes, false, &mut |done, proven| {
        if first.is_none() {
            first = proven.cloned();
        }
        tick(Progress {
            done: ROOMIEST * done,
            found: first.as_slice(),
        })
    });
    match sought {
        ControlFlow::Continue(Some(proposal)) => Outcome::Found(vec![proposal]),
        ControlFlow::Continue(None) => {
            match why(wishes, &mut |done| {
                let done = ROOMIEST + (1.0 - ROOMIEST) * done;
                tick(Progress { done, found: &[] })
            }) {
                ControlFlow::Continue(nothing) => Outcome::Nothing(Box::new(nothing)),
                ControlFlow::Break(()) => Outcome::Stopped,
            }
        }
        ControlFlow::Break(()) => {
            first.map_or(Outcome::Stopped, |first| Outcome::Found(vec![first]))
        }
    }
}

/// Any latch that is proven and keeps to the wishes.
pub(super) fn first_proven(
    wishes: &Wishes,
    tick: &mut dyn FnMut() -> ControlFlow<()>,
) -> ControlFlow<(), Option<Proposal>> {
    first_or_best(wishes, true, &mut |_, _| tick())
}

/// The roomiest latch, or with `first` the first that is proven; `tick` hears how far it is, and what was
/// proven first.
fn first_or_best(
    wishes: &Wishes,
    first: bool,
    tick: &mut dyn FnMut(f64, Option<&Proposal>) -> ControlFlow<()>,
) -> ControlFlow<(), Option<Proposal>> {
    let Some(mut sweep) = Sweep::of(wishes, Kind::Roomiest, SHORT) else {
        return ControlFlow::Continue(None);
    };
    let (mut proven, mut stopped) = (None, false);
    // with room to spare it is surely proven; where any will do, what has a little less is tried too
    let (mut tried, mut proofs) = (if first { SHORT } else { 0.0 }, 0);
    let flow = sweep.whole(&mut |done, kept| {
        if proven.is_none()
            && let Some(best) = kept.first().filter(|best| best.room > tried)
            && (best.room > 0.0 || proofs < MOST_PROOFS)
        {
            (tried, proofs) = (best.room, proofs + 1);
            proven = Proposal::allowed(wishes, Kind::Roomiest, &best.design);
        }
        let flow = tick(done, proven.as_ref());
        stopped = flow.is_break();
        if first && proven.is_some() {
            return ControlFlow::Break(());
        }
        flow
    });
    if flow.is_break() {
        return if stopped {
            ControlFlow::Break(())
        } else {
            ControlFlow::Continue(proven)
        };
    }
    let mut kept = sweep.kept.iter().take(MOST_PROOFS);
    let best = kept.find_map(|latch| Proposal::allowed(wishes, Kind::Roomiest, &latch.design));
    ControlFlow::Continue(best.or(proven))
}

/// The best of a kind that is found from the roomiest on, which stands where there is no better.
pub fn better(
    wishes: &Wishes,
    kind: Kind,
    roomiest: &Proposal,
    tick: &mut Tick<'_, Proposal>,
) -> Proposal {
    let mut best = Best {
        wishes,
        proposal: roomiest.as_kind(kind),
        latch: None,
        tick,
        from: 0.0,
        told: 0.0,
    };
    // stopped, it has what was found so far
    let _ = best.pursue();
    best.proposal
}

/// The best of its kind so far.
struct Best<'a, 'b> {
    wishes: &'a Wishes,
    proposal: Proposal,
    /// How it was found, if it was by a sweep of its own kind.
    latch: Option<Latch>,
    tick: &'a mut Tick<'b, Proposal>,
    /// Share of the work that is done, and the most that was told.
    from: f64,
    told: f64,
}

impl Best<'_, '_> {
    fn pursue(&mut self) -> ControlFlow<()> {
        for room in GRADES {
            self.sweep(room)?;
        }
        self.with_most_room()?;
        for _ in 0..ROUNDS {
            if !self.look_round()? {
                break;
            }
        }
        self.tell(1.0, 1.0)
    }

    /// Tells how far the work is when this part of `share` of all is done; what is gone over again takes
    /// nothing back.
    fn tell(&mut self, share: f64, part: f64) -> ControlFlow<()> {
        let done = (self.from + share * part).min(1.0);
        self.told = self.told.max(done);
        (self.tick)(Progress {
            done: self.told,
            found: core::slice::from_ref(&self.proposal),
        })
    }

    /// Looks at every choice, with this room to spare.
    fn sweep(&mut self, room: f64) -> ControlFlow<()> {
        const SHARE: f64 = 0.3;
        let kind = self.proposal.kind;
        if let Some(sweep) = Sweep::of(self.wishes, kind, room) {
            let mut sweep = sweep.better_than(self.proposal.merit().first);
            sweep.whole(&mut |done, _| self.tell(SHARE, done))?;
            self.take(&sweep.kept);
            if room < 0.0 {
                self.raise(&sweep.kept)?;
            }
        }
        self.from += SHARE;
        ControlFlow::Continue(())
    }

    /// Looks round the best of these that are better and were not proven for more room, with their marks
    /// or lid held.
    fn raise(&mut self, kept: &[Latch]) -> ControlFlow<()> {
        let kind = self.proposal.kind;
        let merits = kept
            .iter()
            .unique_by(|latch| latch.merit(kind).first.to_bits());
        for latch in merits.take(RAISED) {
            if latch.merit(kind) <= self.proposal.merit() {
                break;
            }
            let mut latch = latch.clone();
            if kind == Kind::MostSettings {
                // where marks are held there is one marking
                latch.choice.marking = 0;
            }
            let wishes = self.holding(&latch.design);
            if let Some(mut sweep) = Sweep::of(&wishes, Kind::Roomiest, SHORT)
                && let Some(latch) = latch.into_kind(Kind::Roomiest)
            {
                sweep.climb_from(latch, &mut |_, _| self.tell(0.0, 0.0))?;
                self.take_as_kind(sweep);
            }
        }
        ControlFlow::Continue(())
    }

    /// The wishes with the marks of this design, or on its lid.
    fn holding(&self, design: &Design) -> Wishes {
        let mut wishes = self.wishes.clone();
        match self.proposal.kind {
            Kind::Roomiest => {}
            Kind::MostSettings => {
                for (wish, dial) in wishes.dials.iter_mut().zip(&design.dials) {
                    wish.marks = Marks::Exactly(dial.positions);
                }
            }
            Kind::Smallest => wishes = wishes.on(Lid::of(design)),
        }
        wishes
    }

    /// The same marks, or the same lid, with the most room to spare.
    fn with_most_room(&mut self) -> ControlFlow<()> {
        const SHARE: f64 = 0.3;
        let wishes = self.holding(&self.proposal.design);
        let room = self.proposal.room_to_spare + ALIKE;
        if let Some(mut sweep) = Sweep::of(&wishes, Kind::Roomiest, room) {
            sweep.whole(&mut |done, _| self.tell(SHARE, done))?;
            self.take_as_kind(sweep);
        }
        self.from += SHARE;
        ControlFlow::Continue(())
    }

    /// Takes the best that a sweep for room has found.
    fn take_as_kind(&mut self, sweep: Sweep) {
        let kind = self.proposal.kind;
        let kept = sweep.kept.into_iter();
        let kept: Vec<Latch> = kept.filter_map(|latch| latch.into_kind(kind)).collect();
        self.take(&kept);
    }

    /// Looks round the best for what is better still; whether anything was.
    fn look_round(&mut self) -> ControlFlow<(), bool> {
        const SHARE: f64 = 0.02;
        let (kind, before) = (self.proposal.kind, self.proposal.merit());
        let Some(mut latch) = self.latch.clone() else {
            return ControlFlow::Continue(false);
        };
        if kind == Kind::MostSettings {
            latch.choice.marking = Marking::with_flats_of(self.wishes, &latch.design);
        }
        for room in [0.0, -0.015, -0.03, -0.045] {
            if let Some(mut sweep) = Sweep::of(self.wishes, kind, room) {
                sweep.climb_from(latch.clone(), &mut |done, _| self.tell(SHARE, done))?;
                self.take(&sweep.kept);
            }
        }
        self.from += SHARE;
        ControlFlow::Continue(self.proposal.merit() > before)
    }

    /// The first of these that is better, proven and allowed takes the place of the best.
    fn take(&mut self, kept: &[Latch]) {
        let kind = self.proposal.kind;
        let better = |latch: &&Latch| latch.merit(kind) > self.proposal.merit();
        let better: Vec<&Latch> = kept.iter().filter(better).take(MOST_PROOFS).collect();
        for latch in better {
            let mut designs = vec![latch.design.clone()];
            if kind == Kind::MostSettings {
                designs.extend(self.poorer(latch));
            }
            for design in designs {
                let least = self.proposal.settings as f64;
                if kind == Kind::MostSettings && settings(&design) < least {
                    continue;
                }
                if let Some(proposal) = Proposal::allowed(self.wishes, kind, &design)
                    && proposal.merit() > self.proposal.merit()
                {
                    (self.proposal, self.latch) = (proposal, Some(latch.clone()));
                }
            }
        }
    }

    /// The same latch with one dial a seat poorer: of two that are as good as each other the one that
    /// comes first is kept, the same for the mirror image.
    fn poorer(&self, latch: &Latch) -> Vec<Design> {
        let mut poorer = latch.each_poorer();
        let asked: Vec<Marks> = self.wishes.dials.iter().map(|dial| dial.marks).collect();
        if asked.iter().cmp(asked.iter().rev()) == Ordering::Greater {
            poorer.reverse();
        }
        poorer
    }
}
