//! One kind of proposal, bettered step by step from the roomiest latch on. Two of them know nothing of
//! each other and may go on at the same time.

use core::cmp::Ordering;

use itertools::iproduct;

use super::found::Found;
use super::grid::Grid;
use super::lattice::facing;
use super::more_marks::{likeliest, more_marks, other_marks, with_marks};
use super::pass::{ALIKE, Aim, POINTS, Pass, SHORT};
use super::proposal::{Kind, MOST_PROOFS, Proposal, first_allowed, merit};
use super::round::{Rank, Round, aim};
use super::wishes::{Marks, Wishes};

/// With how much room the most settings and the smallest lid are looked for, one after the other: the
/// first is surely proven, the rest may be.
const GRADES: [f64; 4] = [0.0, -0.015, -0.03, -0.045];

/// So many are looked round, of the last ways and of the roomiest.
const LEADS: (usize, usize) = (2, 4);

/// Designs of that which are proven, until one is: most are refused by a look at their verdicts.
const ROUND_PROOFS: usize = 96;

/// What came of one step.
#[derive(Debug, Clone, PartialEq)]
pub struct News {
    /// Of which kind.
    pub kind: Kind,
    /// Share of the work on this kind that is done, 0 to 1; a guess that never falls.
    pub done: f64,
    /// A better proposal of this kind, if there is one since the last step.
    pub better: Option<Proposal>,
}

/// The search for the best of one kind.
pub struct Pursuit {
    wishes: Wishes,
    kind: Kind,
    best: Proposal,
    is_better: bool,
    /// The best of the ways so far, to be looked round.
    leads: Vec<Found>,
    stage: Stage,
    /// More marks that are looked for all over the lattice at the end, if none were found.
    likeliest: Option<Wishes>,
    done: f64,
}

/// What is done at the moment.
enum Stage {
    /// A way through the lattice with so much room, by its place among [`GRADES`].
    Graded(Box<Pass>, usize),
    /// The most room that what was found can have.
    Roomy(Box<Pass>),
    Round(Box<Round>),
    /// The most room on a lid a step smaller, and the wishes that are still to be tried.
    Smaller(Box<Pass>, Vec<Wishes>),
    /// More room with more marks, and the wishes that are still to be tried.
    MoreMarks(Box<Pass>, Vec<Wishes>),
    /// The same with other marks on some dials, round the roomiest.
    OtherMarks(Box<Pass>, Vec<Wishes>),
    Done,
}

impl Pursuit {
    /// Begins with the roomiest latch, which stands until there is a better one; a roomier one is looked
    /// for with these wishes for more marks.
    pub(super) fn new(
        wishes: &Wishes,
        kind: Kind,
        (pass, roomiest): (&Pass, &Proposal),
        more: &[Wishes],
    ) -> Self {
        let mut pursuit = Self {
            wishes: wishes.clone(),
            kind,
            best: roomiest.as_kind(kind),
            is_better: false,
            leads: Vec::new(),
            stage: Stage::Done,
            likeliest: None,
            done: 0.0,
        };
        pursuit.stage = match kind {
            Kind::Roomiest => {
                pursuit.leads = pass.leads();
                pursuit.likeliest = more.last().cloned();
                // where every place takes long they are tried round the roomiest first
                let everywhere = if pass.drifts() { &[] } else { more };
                pursuit.more_marks(everywhere.to_vec())
            }
            Kind::MostSettings | Kind::Smallest => pursuit.graded(0),
        };
        pursuit
    }

    /// The best so far.
    pub fn best(&self) -> &Proposal {
        &self.best
    }

    /// Goes on for a few thousandths of a second, or up to a tenth or two while it looks round what was
    /// found; `None` when there is nothing left to do.
    pub fn step(&mut self) -> Option<News> {
        self.stage = match core::mem::replace(&mut self.stage, Stage::Done) {
            Stage::Graded(mut pass, grade) => {
                if pass.step(POINTS) {
                    Stage::Graded(pass, grade)
                } else {
                    self.after_graded(&pass, grade + 1)
                }
            }
            Stage::Roomy(mut pass) => {
                if pass.step(POINTS) {
                    Stage::Roomy(pass)
                } else {
                    self.take(&pass.kept, MOST_PROOFS);
                    self.look_round(&pass)
                }
            }
            Stage::Round(mut round) => match round.next() {
                Some(kept) => {
                    self.take_round(&mut round, kept);
                    Stage::Round(round)
                }
                None => self.after_round(&round),
            },
            Stage::Smaller(mut pass, left) => {
                if pass.step(POINTS) {
                    Stage::Smaller(pass, left)
                } else if self.take(&pass.kept, MOST_PROOFS).is_some() {
                    self.roomy()
                } else {
                    self.smaller(left)
                }
            }
            Stage::MoreMarks(mut pass, left) => {
                if pass.step(POINTS) {
                    Stage::MoreMarks(pass, left)
                } else if self.take_roomier(&pass) || !left.is_empty() || self.likeliest.is_some() {
                    self.more_marks(left)
                } else {
                    Stage::Done
                }
            }
            Stage::OtherMarks(mut pass, left) => {
                pass.step(POINTS);
                if self.take_roomier(&pass) {
                    self.other_marks()
                } else {
                    self.next_marks(left)
                }
            }
            Stage::Done => return None,
        };
        // what leads on is gone over again
        self.done = self.done.max(self.share());
        let better = core::mem::take(&mut self.is_better);
        Some(News {
            kind: self.kind,
            done: self.done,
            better: better.then(|| self.best.clone()),
        })
    }

    /// Share of the work that is done, if it were not gone over again.
    fn share(&self) -> f64 {
        match &self.stage {
            Stage::Graded(pass, grade) => {
                (*grade as f64 + pass.done()) / (2.0 * GRADES.len() as f64)
            }
            Stage::Roomy(pass) => 0.5 + pass.done() / 4.0,
            Stage::Round(round) => 0.75 + round.done() / 8.0,
            Stage::Smaller(..) => 0.9,
            Stage::MoreMarks(pass, left) => pass.done() / (1.0 + left.len() as f64),
            Stage::OtherMarks(..) => 0.95,
            Stage::Done => 1.0,
        }
    }

    /// A way through the lattice of these wishes for what `aim` says.
    fn pass(&self, wishes: &Wishes, aim: Aim) -> Option<Box<Pass>> {
        let free_marks = self.kind == Kind::MostSettings && !matches!(aim, Aim::Room(_));
        Pass::of(wishes, free_marks, aim)
    }

    fn graded(&self, grade: usize) -> Stage {
        let room = GRADES.get(grade).copied().unwrap_or(0.0);
        let known = match self.kind {
            Kind::MostSettings => self.best.settings as f64,
            Kind::Roomiest | Kind::Smallest => self.best.area,
        };
        let pass = self.pass(&self.wishes, aim(self.kind, room));
        pass.map_or(Stage::Done, |pass| {
            Stage::Graded(Box::new(pass.better_than(known)), grade)
        })
    }

    fn after_graded(&mut self, pass: &Pass, next: usize) -> Stage {
        self.take(&pass.kept, MOST_PROOFS);
        self.leads.extend(pass.kept.first().cloned());
        let more = self.leads.len().saturating_sub(LEADS.0);
        self.leads.drain(..more);
        if next < GRADES.len() {
            return self.graded(next);
        }
        self.roomy()
    }

    /// The same marks, or the same lid, with the most room.
    fn roomy(&self) -> Stage {
        let mut wishes = self.wishes.clone();
        let found = &self.best.design;
        if self.kind == Kind::MostSettings {
            for (wish, dial) in wishes.dials.iter_mut().zip(&found.dials) {
                wish.marks = Marks::Exactly(dial.positions);
            }
        } else {
            wishes = wishes.with_lid(found.plate.width, found.plate.depth);
        }
        let pass = self.pass(&wishes, Aim::Room(SHORT));
        pass.map_or(Stage::Done, Stage::Roomy)
    }

    /// Looks for better ones round what was found.
    fn look_round(&mut self, roomy: &Pass) -> Stage {
        let mut seeds = core::mem::take(&mut self.leads);
        seeds.extend(roomy.kept.iter().take(LEADS.1).cloned());
        let pass = self.pass(&self.wishes, aim(self.kind, 0.0));
        pass.map_or(Stage::Done, |pass| {
            Stage::Round(Box::new(Round::new(self.kind, *pass, seeds, self.rank())))
        })
    }

    /// Takes the best of what lies round what was found.
    fn take_round(&mut self, round: &mut Round, mut kept: Vec<Found>) {
        kept.retain(|found| self.would_better(found) && round.is_new(found));
        let taken = self.take(&kept, ROUND_PROOFS);
        // what is taken is looked round in its turn
        self.leads.extend(taken);
        if self.kind == Kind::MostSettings {
            kept.retain(|found| self.would_better(found));
            let asked = self.wishes.dials.iter().map(|dial| dial.marks);
            let backwards = facing(asked) == Ordering::Greater;
            let poorer = kept.iter().flat_map(|found| found.each_poorer(backwards));
            let mut poorer: Vec<Found> = poorer.collect();
            poorer.retain(|found| round.is_new(found));
            let taken = self.take(&poorer, ROUND_PROOFS);
            self.leads.extend(taken);
        }
    }

    /// What was better may lead on to what is better still.
    fn after_round(&mut self, round: &Round) -> Stage {
        if self.rank() > round.known {
            return self.roomy();
        }
        if self.kind != Kind::Smallest {
            return Stage::Done;
        }
        let grid = Grid::of(self.wishes.base.units);
        let plate = &self.best.design.plate;
        let lids = grid.smaller_lids((plate.width, plate.depth));
        let mut more = likeliest(more_marks(&self.wishes), round.drifts());
        more.push(self.wishes.clone());
        let left =
            iproduct!(lids, more).map(|((width, depth), wishes)| wishes.with_lid(width, depth));
        self.smaller(left.collect())
    }

    /// Looks for the roomiest, between the places of the lattice too, on lids a step smaller.
    fn smaller(&self, mut left: Vec<Wishes>) -> Stage {
        let next = left
            .pop()
            .and_then(|wishes| self.pass(&wishes, Aim::Room(SHORT)));
        next.map_or(Stage::Done, |pass| Stage::Smaller(pass, left))
    }

    /// Looks for the roomiest with more marks.
    fn more_marks(&mut self, mut left: Vec<Wishes>) -> Stage {
        let next = left
            .pop()
            .and_then(|wishes| Pass::roomier_than(&wishes, self.best.room + ALIKE));
        match next {
            Some(pass) => Stage::MoreMarks(pass, left),
            None => self.other_marks(),
        }
    }

    /// Looks for more room with other marks on some dials, round the roomiest.
    fn other_marks(&mut self) -> Stage {
        self.next_marks(other_marks(&self.wishes, &self.best.design))
    }

    fn next_marks(&mut self, mut left: Vec<Wishes>) -> Stage {
        let next = left
            .pop()
            .and_then(|wishes| Pass::round(&wishes, self.best.room + ALIKE, &self.leads));
        if let Some(pass) = next {
            return Stage::OtherMarks(pass, left);
        }
        let Some(likeliest) = self.likeliest.take() else {
            return Stage::Done;
        };
        let found = with_marks(&self.wishes, &self.best.design);
        self.more_marks(vec![found.unwrap_or(likeliest)])
    }

    /// Takes what is roomier, if anything is: as good as each other, the fewer marks stay.
    fn take_roomier(&mut self, pass: &Pass) -> bool {
        let least = self.best.room + ALIKE;
        let roomier = pass.kept.iter().filter(|found| found.room >= least);
        let roomier: Vec<Found> = roomier.cloned().collect();
        let better = self.take(&roomier, MOST_PROOFS).is_some();
        if better {
            self.leads = pass.leads();
        }
        better
    }

    /// How good the best is.
    fn rank(&self) -> Rank {
        (self.best.settings, -self.best.area)
    }

    /// Whether this would be a better proposal than the one that stands.
    fn would_better(&self, found: &Found) -> bool {
        let merit = merit(self.kind, (found.room, found.settings(), found.area()));
        merit > self.best.merit()
    }

    /// The first of these that is better, proven and allowed takes the place of the best, within so many
    /// proofs; hands back which it was.
    fn take(&mut self, kept: &[Found], proofs: usize) -> Option<Found> {
        let better = kept.iter().filter(|found| self.would_better(found));
        let (found, proposal) = first_allowed(&self.wishes, self.kind, better.take(proofs))?;
        (self.best, self.is_better) = (proposal, true);
        Some(found.clone())
    }
}
