//! The search as a value that goes on step by step: callers may run it on a thread of their own,
//! show how far it is, and stop it with the best so far.

use core::cmp::Ordering;

use super::conflict::{Conflict, Nothing};
use super::demands::unmet;
use super::found::Found;
use super::lattice::{Lattice, facing};
use super::pass::{Aim, Pass};
use super::plain::Ground;
use super::proposal::{Kind, Proposal, proposal};
use super::round::{Rank, Round, aim};
use super::say::length;
use super::solve::Solver;
use super::wishes::{Marks, Wishes, prepared};
use crate::fault::{Place, Severity};
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
    Round(Box<Round>),
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

    /// Goes on for a few thousandths of a second, or up to a tenth or two while it looks round what was
    /// found or why there is nothing; false when there is nothing left to do.
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
                    self.look_round(Kind::MostSettings, &pass)
                }
            }
            Stage::RoomOfArea(mut pass) => {
                if pass.step(POINTS) {
                    Stage::RoomOfArea(pass)
                } else {
                    self.take(Kind::Smallest, &pass.kept);
                    self.look_round(Kind::Smallest, &pass)
                }
            }
            Stage::Round(mut round) => match round.next() {
                Some(kept) => {
                    self.take_round(&mut round, kept);
                    Stage::Round(round)
                }
                None => self.after_round(&round),
            },
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
            Stage::RoomOfSettings(pass) => (0.4, pass.done() / 2.0),
            Stage::Area(pass, grade) => (0.6, graded(*grade, pass)),
            Stage::RoomOfArea(pass) => (0.8, pass.done() / 2.0),
            Stage::Round(round) if round.kind == Kind::Smallest => (0.9, round.done() / 2.0),
            Stage::Round(round) => (0.5, round.done() / 2.0),
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
            self.begin_with_roomiest(Kind::MostSettings);
            self.begin_with_roomiest(Kind::Smallest);
            return self.settings(0);
        }
        self.begin_with_roomiest(Kind::Smallest);
        self.area(0)
    }

    /// The roomiest stands for the others until there is a better one.
    fn begin_with_roomiest(&mut self, kind: Kind) {
        let roomiest = self.of(Kind::Roomiest).cloned();
        self.found
            .extend(roomiest.map(|roomiest| Proposal { kind, ..roomiest }));
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

    /// Whether this would be a better proposal than the one that stands.
    fn is_better(&self, kind: Kind, found: &Found) -> bool {
        self.of(kind).is_none_or(|before| match kind {
            Kind::Roomiest => found.room > before.room,
            Kind::MostSettings => {
                let settings = before.settings as f64;
                (found.settings(), found.room) > (settings, before.room)
            }
            Kind::Smallest => (-found.area(), found.room) > (-before.area, before.room),
        })
    }

    /// The first of these that is proven takes its place among the proposals, unless what stands
    /// there is no worse.
    fn take(&mut self, kind: Kind, kept: &[Found]) {
        self.take_of(kind, kept, MOST_PROOFS);
    }

    /// The same, with so many proofs at most; hands back which of them it was.
    fn take_of(&mut self, kind: Kind, kept: &[Found], proofs: usize) -> Option<Found> {
        let kept = kept.iter().filter(|found| self.is_better(kind, found));
        let mut kept = kept.take(proofs);
        let (found, proposal) =
            kept.find_map(|found| Some((found.clone(), self.allowed(kind, found)?)))?;
        self.found.retain(|other| other.kind != kind);
        self.found.push(proposal);
        self.found.sort_by_key(|proposal| proposal.kind);
        Some(found)
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

    /// Keeps the best of this way, to look round it.
    fn lead_from(&mut self, pass: &Pass) {
        self.leads.extend(pass.kept.first().cloned());
        let more = self.leads.len().saturating_sub(LEADS.0);
        self.leads.drain(..more);
    }

    /// Looks for better ones round what was found.
    fn look_round(&mut self, kind: Kind, roomy: &Pass) -> Stage {
        let mut seeds = core::mem::take(&mut self.leads);
        seeds.extend(roomy.kept.iter().take(LEADS.1).cloned());
        let known = self.rank(kind);
        let pass = pass(&self.wishes, kind != Kind::Smallest, aim(kind, 0.0));
        pass.map_or(Stage::Done, |pass| {
            Stage::Round(Box::new(Round::new(kind, *pass, seeds, known)))
        })
    }

    /// Takes the best of what lies round what was found.
    fn take_round(&mut self, round: &mut Round, mut kept: Vec<Found>) {
        let kind = round.kind;
        kept.retain(|found| self.is_better(kind, found) && round.is_new(found));
        let taken = self.take_of(kind, &kept, ROUND_PROOFS);
        // what is taken is looked round in its turn
        self.leads.extend(taken);
        if kind == Kind::MostSettings {
            kept.retain(|found| self.is_better(kind, found));
            let asked = self.wishes.dials.iter().map(|dial| dial.marks);
            let backwards = facing(asked) == Ordering::Greater;
            let poorer = kept.iter().flat_map(|found| found.each_poorer(backwards));
            let mut poorer: Vec<Found> = poorer.collect();
            poorer.retain(|found| round.is_new(found));
            let taken = self.take_of(kind, &poorer, ROUND_PROOFS);
            self.leads.extend(taken);
        }
    }

    /// What was better may lead on to what is better still.
    fn after_round(&mut self, round: &Round) -> Stage {
        let leads_on = self.rank(round.kind) > round.known;
        if !leads_on {
            self.leads.clear();
        }
        match (round.kind, leads_on) {
            (Kind::Smallest, true) => self.room_of_area(),
            (Kind::Smallest, false) => Stage::Done,
            (_, true) => self.room_of_settings(),
            (_, false) => self.area(0),
        }
    }

    /// How good the proposal of this kind is.
    fn rank(&self, kind: Kind) -> Option<Rank> {
        self.of(kind).map(|of| (of.settings, -of.area))
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
    let (plate, inside) = (&design.plate, &design.inside);
    let both = [
        ("wide", plate.width, inside.width),
        ("deep", plate.depth, inside.depth),
    ];
    let all_sides = both.iter().any(|(.., room)| *room <= 0.0);
    let say = |mm: f64| length(mm, design.units);
    let solid = both
        .iter()
        .filter(|(_, lid, room)| *lid > 0.0 && *room <= 0.0);
    for (way, lid, room) in solid {
        said.push(format!(
            "a lid {} {way} leaves nothing inside: the sides alone take {}; give a larger one",
            say(*lid),
            say(lid - room)
        ));
    }
    let faults = faults(&design);
    let errors = faults.iter().filter(|fault| {
        // the inside follows from the lid, of which it was said
        fault.severity == Severity::Error && !(all_sides && fault.place == Place::Inside)
    });
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
