//! The search as a value that goes on step by step: callers may run it on a thread of their own,
//! show how far it is, and stop it with the best so far.

use super::conflict::{Conflict, Nothing};
use super::demands::unmet;
use super::lattice::Lattice;
use super::pass::{Aim, Found, Pass};
use super::plain::Ground;
use super::proposal::{Kind, Proposal, proposal};
use super::solve::Solver;
use super::wishes::{Marks, Wishes, prepared};
use crate::fault::Severity;
use crate::model::Design;
use crate::validate::{MAX_DIALS, faults};

/// Points of the lattice in one step: a few thousandths of a second.
const POINTS: usize = 512;

/// The same, where anything that goes will do.
const FEW: usize = 16;

/// The plain sums promise less than the proof: a latch may be proven with room short of nought by so
/// much.
const SHORT: f64 = -0.06;

/// With how much room the most settings and the smallest lid are looked for, one after the other: the
/// first is surely proven, the rest may be.
const GRADES: [f64; 4] = [0.0, -0.015, -0.03, -0.045];

/// The same round what was found already.
const ROUND: [f64; 6] = [0.0, -0.015, -0.03, -0.0375, -0.045, -0.05];

/// So many are looked round, of the last ways and of the roomiest.
const LEADS: (usize, usize) = (2, 4);

/// Designs of that which are proven, until one is: most are refused by a look at their verdicts.
const ROUND_PROOFS: usize = 96;

/// Designs of one way through the lattice that are proven, until one is.
const MOST_PROOFS: usize = 8;

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
    found: Vec<Proposal>,
    /// The best of the ways so far, to be looked round.
    leads: Vec<Found>,
    done: f64,
    why: Option<Nothing>,
}

/// What is looked for at the moment.
enum Stage {
    Roomiest(Box<Pass>),
    Settings(Box<Pass>, usize),
    RoomOfSettings(Box<Pass>),
    Area(Box<Pass>, usize),
    RoomOfArea(Box<Pass>),
    Nothing(Box<Conflict>),
    Done,
}

impl Search {
    /// A search that has not begun.
    pub fn new(wishes: &Wishes) -> Self {
        let faults = unreadable(wishes);
        let pass = if faults.is_none() {
            pass(wishes, false, Aim::Room(SHORT))
        } else {
            None
        };
        Self {
            why: faults,
            stage: pass.map_or(Stage::Done, Stage::Roomiest),
            wishes: wishes.clone(),
            found: Vec::new(),
            leads: Vec::new(),
            done: 0.0,
        }
    }

    /// Goes on for a few thousandths of a second, or a few tenths while it looks round what was found or
    /// why there is nothing; false when there is nothing left to do.
    pub fn step(&mut self) -> bool {
        let stage = core::mem::replace(&mut self.stage, Stage::Done);
        self.stage = match stage {
            Stage::Roomiest(mut pass) => {
                let more = pass.step(if pass.first_done() { POINTS } else { 8 });
                if self.found.is_empty() || !more {
                    self.take(Kind::Roomiest, &pass.kept);
                }
                if more {
                    Stage::Roomiest(pass)
                } else {
                    self.after_roomiest()
                }
            }
            Stage::Settings(mut pass, grade) => {
                if pass.step(POINTS) {
                    Stage::Settings(pass, grade)
                } else {
                    self.after_settings(&pass, grade + 1)
                }
            }
            Stage::Area(mut pass, grade) => {
                if pass.step(POINTS) {
                    Stage::Area(pass, grade)
                } else {
                    self.after_area(&pass, grade + 1)
                }
            }
            Stage::RoomOfSettings(mut pass) => {
                if pass.step(POINTS) {
                    Stage::RoomOfSettings(pass)
                } else {
                    self.take(Kind::MostSettings, &pass.kept);
                    if self.leads_on(Kind::MostSettings, &pass) {
                        self.room_of_settings()
                    } else {
                        self.area(0)
                    }
                }
            }
            Stage::RoomOfArea(mut pass) => {
                if pass.step(POINTS) {
                    Stage::RoomOfArea(pass)
                } else {
                    self.take(Kind::Smallest, &pass.kept);
                    if self.leads_on(Kind::Smallest, &pass) {
                        self.room_of_area()
                    } else {
                        Stage::Done
                    }
                }
            }
            Stage::Nothing(mut conflict) => {
                if conflict.step() {
                    Stage::Nothing(conflict)
                } else {
                    self.why = Some(conflict.outcome());
                    Stage::Done
                }
            }
            Stage::Done => Stage::Done,
        };
        // what leads on is gone over again
        self.done = self.done.max(self.share());
        !matches!(self.stage, Stage::Done)
    }

    /// How far it is.
    pub fn progress(&self) -> Progress<'_> {
        Progress {
            done: self.done,
            best: &self.found,
        }
    }

    /// Share of the work that is done, if it were not gone over again.
    fn share(&self) -> f64 {
        let graded = |grade: usize, pass: &Pass| (grade as f64 + pass.done()) / GRADES.len() as f64;
        let (before, share) = match &self.stage {
            Stage::Nothing(conflict) => return 0.2 + 0.8 * conflict.done(),
            Stage::Roomiest(pass) => (0.0, pass.done()),
            Stage::Settings(pass, grade) => (0.2, graded(*grade, pass)),
            Stage::RoomOfSettings(pass) => (0.4, pass.done()),
            Stage::Area(pass, grade) => (0.6, graded(*grade, pass)),
            Stage::RoomOfArea(pass) => (0.8, pass.done()),
            Stage::Done => (1.0, 0.0),
        };
        before + 0.2 * share
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

    fn after_roomiest(&mut self) -> Stage {
        if self.found.is_empty() {
            return Stage::Nothing(Box::new(Conflict::new(&self.wishes)));
        }
        let free = |marks: &Marks| matches!(marks, Marks::AtLeast(_));
        if self.wishes.dials.iter().any(|dial| free(&dial.marks)) {
            return self.settings(0);
        }
        self.area(0)
    }

    fn settings(&self, grade: usize) -> Stage {
        let room = GRADES.get(grade).copied().unwrap_or(0.0);
        let known = self.of(Kind::MostSettings);
        let known = known.map_or(0.0, |known| known.settings as f64);
        let pass = pass(&self.wishes, true, Aim::Settings(room));
        pass.map_or(Stage::Done, |pass| {
            Stage::Settings(Box::new(pass.better_than(known)), grade)
        })
    }

    fn area(&self, grade: usize) -> Stage {
        let room = GRADES.get(grade).copied().unwrap_or(0.0);
        let known = self.of(Kind::Smallest).map_or(0.0, |known| known.area);
        let pass = pass(&self.wishes, false, Aim::Area(room));
        pass.map_or(Stage::Done, |pass| {
            Stage::Area(Box::new(pass.better_than(known)), grade)
        })
    }

    fn of(&self, kind: Kind) -> Option<&Proposal> {
        self.found.iter().find(|found| found.kind == kind)
    }

    /// The first of these that is proven takes its place among the proposals, unless what stands
    /// there is no worse.
    fn take(&mut self, kind: Kind, kept: &[Found]) {
        self.take_of(kind, kept, MOST_PROOFS);
    }

    /// The same, with so many proofs at most.
    fn take_of(&mut self, kind: Kind, kept: &[Found], proofs: usize) {
        let better = |found: &&Found| {
            self.of(kind).is_none_or(|before| match kind {
                Kind::Roomiest => found.room > before.room,
                Kind::MostSettings => {
                    let settings = before.settings as f64;
                    (found.settings(), found.room) > (settings, before.room)
                }
                Kind::Smallest => (-found.area(), found.room) > (-before.area, before.room),
            })
        };
        let mut kept = kept.iter().filter(better).take(proofs);
        let Some(proposal) = kept.find_map(|found| self.allowed(kind, found)) else {
            return;
        };
        self.found.retain(|other| other.kind != kind);
        self.found.push(proposal);
        self.found.sort_by_key(|proposal| proposal.kind);
    }

    /// This find as a proposal, if it is proven and keeps to the wishes.
    fn allowed(&self, kind: Kind, found: &Found) -> Option<Proposal> {
        let proposal = proposal(kind, &found.design)?;
        unmet(&self.wishes, &proposal.design)
            .is_empty()
            .then_some(proposal)
    }

    fn after_settings(&mut self, pass: &Pass, next: usize) -> Stage {
        self.take(Kind::MostSettings, &pass.kept);
        self.lead_from(pass);
        if next < GRADES.len() {
            return self.settings(next);
        }
        self.room_of_settings()
    }

    fn room_of_settings(&self) -> Stage {
        let Some(most) = self.of(Kind::MostSettings) else {
            return self.area(0);
        };
        let mut wishes = self.wishes.clone();
        for (wish, dial) in wishes.dials.iter_mut().zip(&most.design.dials) {
            wish.marks = Marks::Exactly(dial.positions);
        }
        self::pass(&wishes, false, Aim::Room(SHORT)).map_or(Stage::Done, Stage::RoomOfSettings)
    }

    /// Takes the first of these that is proven and better, but for those that were tried.
    fn take_new(&mut self, kind: Kind, mut found: Vec<Found>, tried: &mut Vec<Design>) {
        found.retain(|found| {
            let new = !tried.contains(&found.design);
            if new {
                tried.push(found.design.clone());
            }
            new
        });
        self.take_of(kind, &found, ROUND_PROOFS);
    }

    /// Keeps the best of this way, to look round it.
    fn lead_from(&mut self, pass: &Pass) {
        self.leads.extend(pass.kept.first().cloned());
        let more = self.leads.len().saturating_sub(LEADS.0);
        self.leads.drain(..more);
    }

    /// Looks for better ones round what was found; whether there are any.
    fn leads_on(&mut self, kind: Kind, roomy: &Pass) -> bool {
        let rank = |search: &Self| search.of(kind).map(|of| (of.settings, -of.area));
        let before = rank(self);
        let mut seeds = core::mem::take(&mut self.leads);
        seeds.extend(roomy.kept.iter().take(LEADS.1).cloned());
        let aim: fn(f64) -> Aim = match kind {
            Kind::Smallest => Aim::Area,
            _ => Aim::Settings,
        };
        let Some(mut round) = pass(&self.wishes, kind != Kind::Smallest, aim(0.0)) else {
            return false;
        };
        let mut tried: Vec<Design> = Vec::new();
        for room in ROUND {
            round.look_round(&seeds, aim(room));
            let kept = core::mem::take(&mut round.kept);
            let mut poorer = Vec::new();
            if kind == Kind::MostSettings {
                // of two dials that stand alike the proof may bear more marks on one
                poorer.extend(kept.iter().flat_map(Found::poorer));
            }
            self.take_new(kind, kept, &mut tried);
            self.take_new(kind, poorer, &mut tried);
        }
        rank(self) > before
    }

    fn after_area(&mut self, pass: &Pass, next: usize) -> Stage {
        self.take(Kind::Smallest, &pass.kept);
        self.lead_from(pass);
        if next < GRADES.len() {
            return self.area(next);
        }
        self.room_of_area()
    }

    fn room_of_area(&self) -> Stage {
        let Some(smallest) = self.of(Kind::Smallest) else {
            return Stage::Done;
        };
        let plate = &smallest.design.plate;
        let wishes = self.wishes.clone().with_lid(plate.width, plate.depth);
        self::pass(&wishes, false, Aim::Room(SHORT)).map_or(Stage::Done, Stage::RoomOfArea)
    }
}

/// Why nothing can be made of these wishes at all: what is given has faults of its own.
fn unreadable(wishes: &Wishes) -> Option<Nothing> {
    let mut design = prepared(wishes);
    let mut said = Vec::new();
    let dials = wishes.dials.len();
    if !(1..=MAX_DIALS).contains(&dials) {
        said.push(format!(
            "{dials} dials are asked for; a latch has 1 to {MAX_DIALS}"
        ));
    }
    // what is found anyway is not looked at as it was typed
    let usual = Design::default();
    let first = usual.dials.first().cloned().unwrap_or_default();
    for dial in &mut design.dials {
        (dial.centre, dial.disc.radius) = (first.centre, first.disc.radius);
        dial.disc.slots.clone_from(&first.disc.slots);
        (dial.pin.diameter, dial.pin.gap) = (first.pin.diameter, first.pin.gap);
        dial.disc.below = first.disc.below;
        dial.key.apothem = first.key.apothem;
        dial.key.sides = first.key.sides;
        dial.bore.diameter = first.bore.diameter;
        (dial.pin.height, dial.pin.offset) = (first.pin.height, 0.0);
    }
    design.combination = vec![0; design.dials.len()];
    design.slider.travel = usual.slider.travel;
    design.slider.guide_length = usual.slider.guide_length;
    (design.slider.guide_at, design.slider.below) = (usual.slider.guide_at, usual.slider.below);
    design.tab.engagement = design.tab.required_hold.max(usual.tab.engagement);
    (design.tab.width, design.keeper.edge) = (usual.tab.width, usual.keeper.edge);
    design.plate.rabbet = usual.plate.rabbet;
    let faults = faults(&design);
    let errors = faults
        .iter()
        .filter(|fault| fault.severity == Severity::Error);
    said.extend(errors.map(ToString::to_string));
    for (size, value) in &wishes.pinned {
        if !value.is_finite() || size.get(&prepared(wishes)).is_none() {
            said.push(format!("{} cannot be pinned to {value}", size.name()));
        }
    }
    (!said.is_empty()).then(|| Nothing::unreadable(said.join("; ")))
}

/// A way through the lattice of these wishes; `None` where a wood is not known.
pub(super) fn pass(wishes: &Wishes, free_marks: bool, aim: Aim) -> Option<Box<Pass>> {
    let ground = Ground::of(&prepared(wishes))?;
    let lattice = Lattice::of(wishes, free_marks, ground.alike_along_y);
    Some(Box::new(Pass::new(Solver::new(lattice, ground), aim)))
}

/// Any latch that is proven and keeps to the wishes.
pub(super) fn first_proven(wishes: &Wishes) -> Option<Proposal> {
    let mut pass = *pass(wishes, false, Aim::Room(SHORT))?;
    let allowed = |found: &Found| {
        let proposal = proposal(Kind::Roomiest, &found.design)?;
        unmet(wishes, &proposal.design)
            .is_empty()
            .then_some(proposal)
    };
    let mut tried = f64::NEG_INFINITY;
    loop {
        let more = pass.step(FEW);
        // with room to spare it is surely proven
        if let Some(best) = pass.kept.first().filter(|best| best.room > tried.max(0.0)) {
            tried = best.room;
            if let Some(proposal) = allowed(best) {
                return Some(proposal);
            }
        }
        if !more {
            return pass.kept.iter().take(MOST_PROOFS).find_map(allowed);
        }
    }
}
