//! A sweep through all choices for one kind of latch: first every choice is looked at, then the best
//! climb to their neighbours. What was found so far decides what is still looked at.

use core::cmp::Ordering;
use core::ops::ControlFlow;

use itertools::iproduct;

use super::choices::{Choice, Choices};
use super::grid::up;
use super::latch::{ALIKE, Latch};
use super::proposal::Kind;
use super::solve::{Sizes, Solver, shuts_in};
use super::weigh::Ground;
use super::wishes::{Lid, Wishes, prepared};
use latchwright_model::Design;

/// The plain sums promise less than the proof: a latch may be proven with room short of nought by so
/// much. Less, and latches that are proven are passed over; more, and time goes on those that are not.
pub(super) const SHORT: f64 = -0.06;
/// Of two latches short of room the proof may still prefer the shorter, by so much.
const MAY_BE_PROVEN: f64 = 0.02;
/// What a climb may add to the room: with less, the best choice is passed over for another that happened
/// to be found first; with more, looking at all takes long.
const MAY_GAIN: f64 = 0.03;
/// More room than this is not asked for.
const ENOUGH: f64 = 3.0;
/// The stride with which more room is tried at first.
const STRIDE: f64 = 0.2;
/// The best that are kept, where the first may not be proven.
const KEPT: usize = 64;
/// So many of the best, no two alike, are climbed from.
const LEADS: usize = 5;
/// Steps of a climb at most.
const STEPS: usize = 64;
/// Lids that are tried for one choice at most.
const LIDS: usize = 60;
/// Choices, and sums of whole latches, from one tick to the next: some thousandths of a second.
const CHOICES: usize = 4096;
const SUMS: usize = 256;

/// Is told after every bit of work which share of it is done, and the best so far; may end it.
pub(super) type Told<'a> = dyn FnMut(f64, &[Latch]) -> ControlFlow<()> + 'a;

/// A sweep for one kind of latch.
pub(super) struct Sweep {
    solver: Solver,
    kind: Kind,
    /// The least room to spare.
    room: f64,
    /// The most that there can be, through the thickness.
    enough: f64,
    /// The largest lid.
    lid: Lid,
    /// Only what has a larger merit than this is wanted.
    beat: f64,
    /// The best first.
    pub kept: Vec<Latch>,
    /// A choice that was looked at last, and whether its disc may do.
    disc: Option<(Choice, bool)>,
    /// The best of each class, to be climbed from.
    leads: Vec<Latch>,
}

impl Sweep {
    /// A sweep for latches with this room to spare; `None` where nothing can come of it, or a wood is not
    /// known.
    pub(super) fn of(wishes: &Wishes, kind: Kind, room: f64) -> Option<Self> {
        let base = prepared(wishes);
        let as_many = kind == Kind::MostSettings;
        let ground = Ground::of(&base)?;
        let choices = Choices::of(wishes, as_many, ground.alike_along_y);
        let solver = Solver::new(choices, ground);
        // a smaller lid may hold no child
        if kind != Kind::Smallest && shuts_in(&base) {
            return None;
        }
        Some(Self {
            enough: solver.most_through_thickness(ENOUGH)?,
            lid: solver.lid(),
            solver,
            kind,
            room,
            beat: f64::NEG_INFINITY,
            kept: Vec::new(),
            disc: None,
            leads: Vec::new(),
        })
    }

    /// The same, for what has a larger merit than this.
    pub(super) fn better_than(mut self, merit: f64) -> Self {
        self.beat = merit;
        self
    }

    /// Looks at every choice, then climbs from the best.
    pub(super) fn whole(&mut self, tick: &mut Told<'_>) -> ControlFlow<()> {
        self.look_at_all(&mut |share, kept| tick(0.7 * share, kept))?;
        self.climb(&mut |share, kept| tick(0.7 + 0.3 * share, kept))
    }

    /// Looks at every choice.
    fn look_at_all(&mut self, tick: &mut Told<'_>) -> ControlFlow<()> {
        let mut first = self.solver.choices.first();
        let all = self.solver.choices.len();
        // the largest discs first, or the smallest for the smallest lid, so that what is found early
        // leaves the least to look at
        let backwards = self.kind == Kind::Smallest;
        if backwards {
            first.reverse();
        }
        for choice in first {
            self.look(&choice);
            tick(0.0, &self.kept)?;
        }
        let mut sums = self.solver.sums;
        for number in 0..all {
            let at = if backwards { all - 1 - number } else { number };
            if let Some(choice) = self.solver.choices.get(at) {
                self.look(&choice);
            }
            if number % CHOICES == 0 || self.solver.sums > sums + SUMS {
                sums = self.solver.sums;
                tick(number as f64 / all as f64, &self.kept)?;
            }
            if self.has_enough() {
                break;
            }
        }
        ControlFlow::Continue(())
    }

    /// Whether no more room can be had.
    fn has_enough(&self) -> bool {
        let best = self.kept.first().map(|best| best.room);
        self.kind == Kind::Roomiest && best.is_some_and(|room| room >= self.enough - ALIKE)
    }

    fn look(&mut self, choice: &Choice) {
        let room = match self.kind {
            Kind::Roomiest => self.wanted(),
            Kind::MostSettings | Kind::Smallest => self.room,
        };
        // its disc comes in many rows
        let tried = self.disc.filter(|(tried, _)| choice.has_disc_of(tried));
        let (_, may_do) = tried.unwrap_or_else(|| {
            let hopeless = self.solver.hopeless_disc(choice, room);
            (*choice, !hopeless && self.solver.disc_may_do(choice, room))
        });
        self.disc = Some((*choice, may_do));
        if !may_do {
            return;
        }
        match self.kind {
            Kind::Roomiest => self.look_for_room(choice),
            Kind::MostSettings => self.look_for_settings(choice),
            Kind::Smallest => self.look_for_lid(choice),
        }
    }

    /// The room that a choice must have to be looked at further.
    fn wanted(&self) -> f64 {
        let kept = match self.kept.first() {
            // only what may be the best counts, once it is surely proven
            Some(best) if best.room > 0.0 => best.room - MAY_GAIN,
            Some(best) => best.room - MAY_BE_PROVEN,
            None => self.room,
        };
        kept.clamp(self.room, self.enough.max(self.room))
    }

    fn look_for_room(&mut self, choice: &Choice) {
        if self.solver.hopeless(choice, self.wanted())
            || !self.solver.may_stand(choice, self.wanted())
        {
            return;
        }
        for back in self.solver.choices.backs.clone() {
            let (choice, room) = (Choice { back, ..*choice }, self.wanted());
            if let Some(sizes) = self.solver.least(&choice, room, None)
                && let Some(latch) = self.furthest(choice, room, sizes)
            {
                self.keep(latch);
            }
        }
    }

    /// The latch with the most room at `choice`, from `room` on: on to where it fails, then halved.
    fn furthest(&mut self, choice: Choice, room: f64, sizes: Sizes) -> Option<Latch> {
        let (mut room, mut sizes, mut stride) = (room, sizes, STRIDE);
        while stride > ALIKE / 2.0 && room < self.enough {
            match self.solver.least(&choice, room + stride, Some(sizes)) {
                Some(more) => (room, sizes) = (room + stride, more),
                None => stride /= 2.0,
            }
        }
        self.latch(choice, sizes, room)
    }

    fn look_for_settings(&mut self, choice: &Choice) {
        // what is short of room may not be proven: fewer settings are wanted too
        let surely = self.kept.first().filter(|_| self.room >= 0.0);
        let best = surely.map_or(0.0, Latch::settings);
        if self.solver.most_settings(choice, self.room) <= best.max(self.beat) {
            return;
        }
        if !self.solver.may_stand(choice, self.room) {
            return;
        }
        // how far back makes hardly any difference to the marks: the first that goes will do
        for back in self.solver.choices.backs.clone() {
            let choice = Choice { back, ..*choice };
            if let Some(sizes) = self.solver.least(&choice, self.room, None) {
                if let Some(latch) = self.latch(choice, sizes, self.room) {
                    self.keep(latch);
                }
                break;
            }
        }
    }

    fn look_for_lid(&mut self, choice: &Choice) {
        let best = self
            .kept
            .first()
            .map_or(f64::NEG_INFINITY, |best| best.merit(self.kind).first);
        let most = -best.max(self.beat);
        let grid = self.solver.choices.grid;
        let least = self.solver.least_lid(choice, self.room);
        let on = |least: f64, most: f64| up(least, grid.lid).min(most.max(least));
        let mut lid = Lid {
            width: on(least.width, self.lid.width),
            depth: on(least.depth, self.lid.depth),
        };
        if lid.area() >= most || !lid.goes_on(self.lid) {
            return;
        }
        // the largest tells whether it is worth going on
        if !self.solver.choices.drifts() && self.solver.least(choice, self.room, None).is_none() {
            return;
        }
        for _ in 0..LIDS {
            if lid.area() >= most || lid.depth > self.lid.depth {
                break;
            }
            let wide = Lid {
                width: self.lid.width,
                ..lid
            };
            self.solver.set_lid(wide);
            if let Some(sizes) = self.solver.least(choice, self.room, None) {
                let back = self.solver.back(choice);
                let needs = self.solver.needs(choice, sizes.spacing, back).width;
                let width = up(needs, grid.lid).min(self.lid.width);
                self.solver.set_lid(Lid { width, ..lid });
                if let Some(latch) = self.latch(*choice, sizes, self.room) {
                    self.keep(latch);
                }
                break;
            }
            lid.depth += grid.lid;
        }
        self.solver.set_lid(self.lid);
    }

    fn latch(&mut self, choice: Choice, sizes: Sizes, room: f64) -> Option<Latch> {
        let design = self.solver.finish(&choice, &sizes, room)?;
        Latch::of(self.kind, design, choice, sizes)
    }

    /// Keeps a latch among the best, and as the best of its class.
    fn keep(&mut self, latch: Latch) {
        match self.leads.iter_mut().find(|lead| lead.is_like(&latch)) {
            Some(lead) if latch.better(lead) => *lead = latch.clone(),
            Some(_) => {}
            None => self.leads.push(latch.clone()),
        }
        // of those with as many settings the roomiest will do
        let alike = |kept: &Latch| kept.settings() == latch.settings();
        if self.kind == Kind::MostSettings
            && let Some(at) = self.kept.iter().position(alike)
        {
            if self
                .kept
                .get(at)
                .is_some_and(|kept| kept.room >= latch.room)
            {
                return;
            }
            self.kept.remove(at);
        }
        let at = self.kept.iter().position(|kept| latch.better(kept));
        self.kept.insert(at.unwrap_or(self.kept.len()), latch);
        self.kept.truncate(KEPT);
    }

    /// Climbs from the best that were found, each of another class, to neighbours that are better.
    fn climb(&mut self, tick: &mut Told<'_>) -> ControlFlow<()> {
        self.leads
            .sort_by(|one, other| match (one.better(other), other.better(one)) {
                (true, _) => Ordering::Less,
                (_, true) => Ordering::Greater,
                _ => Ordering::Equal,
            });
        self.leads.truncate(LEADS);
        for (number, lead) in self.leads.clone().into_iter().enumerate() {
            if self.has_enough() {
                break;
            }
            let share = number as f64 / LEADS as f64;
            self.climb_from(lead, &mut |_, kept| tick(share, kept))?;
        }
        ControlFlow::Continue(())
    }

    /// Climbs from here as long as a neighbour is better.
    pub(super) fn climb_from(&mut self, from: Latch, tick: &mut Told<'_>) -> ControlFlow<()> {
        let mut at = from;
        for _ in 0..STEPS {
            let better = self.better_beside(&at);
            tick(0.0, &self.kept)?;
            let Some(better) = better else { break };
            at = better;
            self.keep(at.clone());
        }
        ControlFlow::Continue(())
    }

    /// The first neighbour that is better.
    fn better_beside(&mut self, latch: &Latch) -> Option<Latch> {
        if self.kind != Kind::Smallest {
            self.solver.set_lid(Lid::of(&latch.design));
            let beside = self.solver.beside(latch);
            let better = beside
                .into_iter()
                .find_map(|(choice, from)| self.better(latch, choice, from));
            self.solver.set_lid(self.lid);
            return better;
        }
        let lids = Lid::of(&latch.design).smaller(self.solver.choices.grid);
        let beside = self.solver.beside(latch);
        let here = Choice {
            back: None,
            ..latch.choice
        };
        let beside: Vec<_> = [(here, None), (here, Some(latch.sizes))]
            .into_iter()
            .chain(beside)
            .collect();
        let better = iproduct!(lids, beside).find_map(|(lid, (choice, from))| {
            self.solver.set_lid(lid);
            self.better(latch, choice, from)
        });
        self.solver.set_lid(self.lid);
        better
    }

    /// The latch at `choice`, if it is better than this one.
    fn better(&mut self, than: &Latch, choice: Choice, from: Option<Sizes>) -> Option<Latch> {
        let room = match self.kind {
            Kind::Roomiest => than.room + ALIKE / 4.0,
            Kind::MostSettings | Kind::Smallest => self.room,
        };
        let sizes = self.solver.least(&choice, room, from)?;
        let latch = match self.kind {
            Kind::Roomiest => self.furthest(choice, room, sizes),
            Kind::MostSettings | Kind::Smallest => self.latch(choice, sizes, room),
        };
        latch.filter(|latch| latch.merit(self.kind).first > than.merit(self.kind).first + 1e-6)
    }
}

impl Solver {
    /// Choices near a latch, and its own with one size larger than it must be; with the sizes to begin
    /// with, where not the smallest.
    fn beside(&self, latch: &Latch) -> Vec<(Choice, Option<Sizes>)> {
        let (choice, grid) = (latch.choice, self.choices.grid);
        let beside = self.choices.beside(&choice, self.back(&choice));
        let narrowest = self.smallest(&choice, latch.room.min(0.0)).width;
        let mut sizes = latch.sizes.beside(grid);
        // what is deeper or further may let the slot be narrower
        let narrower = sizes.clone().into_iter().map(|sizes| Sizes {
            width: narrowest,
            ..sizes
        });
        sizes.extend(narrower.collect::<Vec<_>>());
        let mut all: Vec<(Choice, Option<Sizes>)> =
            sizes.iter().map(|sizes| (choice, Some(*sizes))).collect();
        all.extend(beside.iter().map(|choice| (*choice, None)));
        let near = beside.iter().filter(|beside| {
            let steps = (beside.radius - choice.radius).abs() / grid.size;
            steps > 0.5 && steps < 2.5 && beside.bore == choice.bore
        });
        all.extend(iproduct!(near, &sizes).map(|(choice, sizes)| (*choice, Some(*sizes))));
        all
    }
}

/// A latch of these wishes at one of all choices, with this room to spare: for those who look after the
/// search.
pub(super) fn at(
    wishes: &Wishes,
    as_many: bool,
    share: f64,
    back: f64,
    room: f64,
) -> Option<Design> {
    let kind = if as_many {
        Kind::MostSettings
    } else {
        Kind::Roomiest
    };
    let mut sweep = Sweep::of(wishes, kind, room)?;
    let solver = &mut sweep.solver;
    let of = |share: f64, all: usize| (0..all).find(|at| share * (all as f64) < (at + 1) as f64);
    let backs = solver.choices.backs.clone();
    let choice = Choice {
        back: *backs.get(of(back, backs.len())?)?,
        ..solver.choices.get(of(share, solver.choices.len())?)?
    };
    let sizes = solver.least(&choice, room, None)?;
    solver.finish(&choice, &sizes, room)
}
