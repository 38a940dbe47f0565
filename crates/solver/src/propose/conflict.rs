//! Why nothing can be had: the smallest set of demands that cannot all be met, and the nearest that
//! can.
//!
//! A set of demands is tried with all others let go. Sets of one are tried before sets of two, so that
//! the first that cannot be had is a smallest one. Where more than three demands have to meet, the set
//! is one of which none can be left out.

use itertools::Itertools;

use super::grid::{Grid, up};
use super::pass::Aim;
use super::say::{freed, length, phrase};
use super::search::{Kind, Proposal, pass, proposal};
use super::wishes::{Marks, Wishes};
use crate::change::words::listed;
use crate::model::{Design, Season};

/// Something that is asked or given.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Demand {
    /// The lid's width.
    Width,
    /// The lid's depth.
    Depth,
    /// How many dials.
    Dials,
    /// How many marks.
    Marks,
    /// How exactly the maker works.
    Workmanship,
    /// The airs of the year, with these woods.
    Season,
    /// The bits at hand.
    Bits,
    /// The pins at hand.
    Pins,
    /// The plate's thickness and the room under it.
    Thickness,
    /// The hardest pull.
    Pull,
    /// The age of the youngest.
    Age,
    /// A size that the maker holds fixed, by its number in the list.
    Pinned(usize),
}

/// Why nothing was found.
#[derive(Debug, Clone, PartialEq)]
pub struct Nothing {
    /// The smallest set of demands that cannot all be had (of more than three: a set of which none can
    /// be left out); empty where the wishes cannot be read as a latch at all.
    pub conflict: Vec<Demand>,
    /// The same with its figures, and what the nearest would be: "…".
    pub sentence: String,
    /// For each demand of the conflict what it would have to be with all others kept, where that
    /// helps; each with a proven design.
    pub nearest: Vec<Nearest>,
}

/// What can be had instead.
#[derive(Debug, Clone, PartialEq)]
pub struct Nearest {
    /// The demand that gives way.
    pub demand: Demand,
    /// How it would have to be: "a lid 236 mm wide".
    pub sentence: String,
    /// A latch that is proven then.
    pub proposal: Proposal,
}

/// Sets of more demands than this are not looked for.
const MOST: usize = 3;
/// A lid that is let go, mm.
const WIDE: f64 = 1_200.0;
/// Halvings on the way to the nearest.
const HALVINGS: usize = 7;

/// The search for the conflict, a set at a time.
pub(super) struct Conflict {
    wishes: Wishes,
    demands: Vec<Demand>,
    sets: Vec<Vec<Demand>>,
    next: usize,
    /// Where no small set is to blame: demands that are still held to, and how many were tried.
    shrinking: Option<(Vec<Demand>, usize)>,
    found: Option<Vec<Demand>>,
    nearest: Vec<Nearest>,
}

impl Conflict {
    pub(super) fn new(wishes: &Wishes) -> Self {
        let mut demands = vec![
            Demand::Width,
            Demand::Depth,
            Demand::Dials,
            Demand::Marks,
            Demand::Workmanship,
            Demand::Season,
            Demand::Bits,
            Demand::Pins,
            Demand::Thickness,
            Demand::Pull,
            Demand::Age,
        ];
        demands.extend((0..wishes.pinned.len()).map(Demand::Pinned));
        // the whole of it first: if nothing goes even without any demand, none is to blame
        let sets = (0..=MOST).flat_map(|size| demands.iter().copied().combinations(size));
        Self {
            sets: sets.collect(),
            wishes: wishes.clone(),
            demands,
            next: 0,
            shrinking: None,
            found: None,
            nearest: Vec::new(),
        }
    }

    /// Tries one more set, or one more way out; false at the end.
    pub(super) fn step(&mut self) -> bool {
        if let Some(found) = self.found.clone() {
            let Some(demand) = found.get(self.nearest_at()) else {
                return false;
            };
            self.next += 1;
            let nearest = self.nearest(*demand);
            self.nearest.extend(nearest);
            return self.nearest_at() < found.len();
        }
        let Some(kept) = self.sets.get(self.next).cloned() else {
            return self.shrink();
        };
        self.next += 1;
        if self.goes_not(&kept) {
            self.found = Some(kept);
            self.next = 0;
        }
        true
    }

    /// Whether nothing can be had that meets these demands, all others let go.
    fn goes_not(&self, kept: &[Demand]) -> bool {
        let mut wishes = self.wishes.clone();
        let others = self.demands.iter().rev();
        for demand in others.filter(|demand| !kept.contains(demand)) {
            let_go(&mut wishes, *demand);
        }
        first_proven(&wishes).is_none()
    }

    /// No small set is to blame: lets go of one demand after the other, for good where that does not
    /// help, until each one that is left is needed.
    fn shrink(&mut self) -> bool {
        let (kept, tried) = match self.shrinking.take() {
            Some(shrinking) => shrinking,
            None => (self.demands.clone(), 0),
        };
        let Some(demand) = kept.get(tried).copied() else {
            // what is left cannot be had, unless the proof knows better than the plain sums
            self.found = Some(kept);
            self.next = 0;
            return true;
        };
        let without: Vec<Demand> = kept.iter().copied().filter(|one| *one != demand).collect();
        self.shrinking = Some(if self.goes_not(&without) {
            (without, tried)
        } else {
            (kept, tried + 1)
        });
        true
    }

    /// Share that is done.
    pub(super) fn done(&self) -> f64 {
        match &self.found {
            Some(found) => 0.5 + 0.5 * self.nearest_at() as f64 / found.len().max(1) as f64,
            None => 0.5 * self.next as f64 / self.sets.len().max(1) as f64,
        }
    }

    /// After the conflict is found, `next` counts its demands.
    fn nearest_at(&self) -> usize {
        self.next
    }

    /// What was found.
    pub(super) fn outcome(&self) -> Nothing {
        let conflict = self.found.clone().unwrap_or_default();
        let mut sentence = match conflict.as_slice() {
            [] => "with these wishes no latch was found that is proven".to_owned(),
            [one] => format!("{} cannot be had", phrase(&self.wishes, *one)),
            many => {
                let phrases: Vec<String> =
                    many.iter().map(|one| phrase(&self.wishes, *one)).collect();
                format!("{} cannot all be had", listed(&phrases))
            }
        };
        let ways: Vec<&str> = self
            .nearest
            .iter()
            .map(|near| near.sentence.as_str())
            .collect();
        if !ways.is_empty() {
            sentence.push_str("; the nearest that can: ");
            sentence.push_str(&ways.join(", or "));
        }
        Nothing {
            conflict,
            sentence,
            nearest: self.nearest.clone(),
        }
    }

    /// What this demand would have to be, all others kept.
    fn nearest(&self, demand: Demand) -> Option<Nearest> {
        let base = &self.wishes.base;
        let grid = Grid::of(base.units);
        let lid = (base.plate.width, base.plate.depth);
        let say = |mm: f64| length(mm, base.units);
        let (sentence, proposal) = match demand {
            Demand::Width => {
                let wide = |width: f64| self.wishes.clone().with_lid(width, lid.1);
                let (width, proposal) = least(lid.0, grid.lid, wide)?;
                (format!("a lid {} wide", say(width)), proposal)
            }
            Demand::Depth => {
                let deep = |depth: f64| self.wishes.clone().with_lid(lid.0, depth);
                let (depth, proposal) = least(lid.1, grid.lid, deep)?;
                (format!("a lid {} deep", say(depth)), proposal)
            }
            Demand::Dials => {
                let fewer = (1..self.wishes.dials.len()).rev().find_map(|dials| {
                    let mut wishes = self.wishes.clone();
                    wishes.dials.truncate(dials);
                    Some((dials, first_proven(&wishes)?))
                });
                let (dials, proposal) = fewer?;
                let noun = if dials == 1 { "dial" } else { "dials" };
                (format!("{dials} {noun}"), proposal)
            }
            Demand::Marks => {
                let (marks, proposal) = self.fewer_marks()?;
                (format!("at most {marks} marks a dial"), proposal)
            }
            Demand::Workmanship => self.finer()?,
            _ => {
                let mut wishes = self.wishes.clone();
                let_go(&mut wishes, demand);
                let proposal = first_proven(&wishes)?;
                (freed(&self.wishes, demand, &proposal.design), proposal)
            }
        };
        Some(Nearest {
            demand,
            sentence,
            proposal,
        })
    }

    /// The most marks that no dial may exceed.
    fn fewer_marks(&self) -> Option<(u32, Proposal)> {
        let at_most = |most: u32| {
            let mut wishes = self.wishes.clone();
            for dial in &mut wishes.dials {
                if dial.marks.number() > most {
                    dial.marks = Marks::AtLeast(most);
                    dial.labels = crate::model::Labels::Digits;
                }
            }
            first_proven(&wishes)
        };
        let now = self
            .wishes
            .dials
            .iter()
            .map(|dial| dial.marks.number())
            .max()?;
        let (mut has, mut too_many) = ((3, at_most(3)?), now);
        while too_many - has.0 > 1 {
            let middle = u32::midpoint(has.0, too_many);
            match at_most(middle) {
                Some(proposal) => has = (middle, proposal),
                None => too_many = middle,
            }
        }
        Some(has)
    }

    /// How much finer the maker would have to work.
    fn finer(&self) -> Option<(String, Proposal)> {
        let with = |share: f64| {
            let mut wishes = self.wishes.clone();
            work_to(&mut wishes.base, share);
            first_proven(&wishes)
        };
        let mut has = (0.0, with(0.0)?);
        let mut too_coarse = 1.0;
        for _ in 0..HALVINGS {
            let middle = f64::midpoint(has.0, too_coarse);
            match with(middle) {
                Some(proposal) => has = (middle, proposal),
                None => too_coarse = middle,
            }
        }
        let share = has.0 * 100.0;
        Some((format!("errors and plays of {share:.0} % of yours"), has.1))
    }
}

/// The first place on a grid beyond `now` at which something is proven.
fn least(now: f64, step: f64, with: impl Fn(f64) -> Wishes) -> Option<(f64, Proposal)> {
    let look = |steps: f64| first_proven(&with(up(now + steps * step, step)));
    let (mut short, mut stride) = (0.0, 4.0);
    let mut has = loop {
        if now + stride * step > WIDE {
            return None;
        }
        if let Some(proposal) = look(stride) {
            break (stride, proposal);
        }
        (short, stride) = (stride, stride * 2.0);
    };
    while has.0 - short > 1.0 {
        let middle = f64::midpoint(short, has.0).floor();
        match look(middle) {
            Some(proposal) => has = (middle, proposal),
            None => short = middle,
        }
    }
    Some((up(now + has.0 * step, step), has.1))
}

/// Any latch that is proven.
pub(super) fn first_proven(wishes: &Wishes) -> Option<Proposal> {
    let mut kept = (*pass(wishes, false, Aim::Room(0.0))?).any().run().kept;
    kept.truncate(1);
    let found = kept.pop()?;
    proposal(Kind::Roomiest, &found.design).or_else(|| {
        // not the first: then all of them
        let kept = (*pass(wishes, false, Aim::Room(0.0))?).run().kept;
        let mut proposals = kept.iter().take(4);
        proposals.find_map(|found| proposal(Kind::Roomiest, &found.design))
    })
}

/// Every error and play becomes this share of what it was.
fn work_to(base: &mut Design, share: f64) {
    let work = &mut base.workmanship;
    for error in [
        &mut work.pin_place,
        &mut work.bore_place,
        &mut work.keeper_place,
        &mut work.thickness,
        &mut work.print,
        &mut work.film_spread,
        &mut work.reading,
        &mut base.slider.guide_play,
    ] {
        *error *= share;
    }
    for dial in &mut base.dials {
        dial.bore.shaft_play *= share;
        dial.key.clearance *= share;
    }
}

/// The same wishes without this demand.
fn let_go(wishes: &mut Wishes, demand: Demand) {
    let lid = (wishes.base.plate.width, wishes.base.plate.depth);
    match demand {
        Demand::Width => *wishes = wishes.clone().with_lid(WIDE.max(lid.0), lid.1),
        Demand::Depth => *wishes = wishes.clone().with_lid(lid.0, WIDE.max(lid.1)),
        Demand::Dials => wishes.dials.truncate(1),
        Demand::Marks => {
            for dial in &mut wishes.dials {
                dial.marks = Marks::AtLeast(3);
                dial.labels = crate::model::Labels::Digits;
            }
        }
        Demand::Workmanship => work_to(&mut wishes.base, 0.0),
        Demand::Season => wishes.base.season = Season::still(wishes.base.season.built),
        Demand::Bits => {
            let any = (16..=52_u32).map(|halves| f64::from(halves) / 2.0);
            wishes.base.bench.bits.extend(any);
        }
        Demand::Pins => {
            let any: Vec<f64> = (3..=10_u32).map(f64::from).collect();
            wishes.base.bench.bits.extend(&any);
            wishes.pins.extend(any);
        }
        Demand::Thickness => {
            let plate = &mut wishes.base.plate;
            plate.thickness = plate.thickness.max(40.0);
            plate.room = plate.room.max(60.0);
        }
        Demand::Pull => wishes.base.slider.pull = 1.0,
        Demand::Age => wishes.base.card.youngest = wishes.base.card.youngest.max(99),
        Demand::Pinned(number) => {
            // numbers of other pins stay what they are: they are let go from the last
            if number < wishes.pinned.len() {
                wishes.pinned.remove(number);
            }
        }
    }
}
