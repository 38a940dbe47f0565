//! What a lid could bear: settings that can be told apart against its area, the most marks of one
//! dial, and what one step of better workmanship would buy.

use super::grid::{Grid, down, up};
use super::pass::{Aim, POINTS, Pass};
use super::proposal::{Kind, Proposal, proposal};
use super::search::{Go, Search};
use super::wishes::{DialWish, Wishes};
use latchwright_model::change::{Change, LatchSize, Size, Step};
use latchwright_model::{Design, Material, Sawn};

/// Most dials that are looked at, or as many as are wished for.
const MOST_DIALS: usize = 8;
/// The lids that are looked at, as shares of the one that is given, which is one of them.
const LIDS: [f64; 7] = [0.4, 0.55, 0.7, 0.85, 1.0, 1.15, 1.3];
/// A jig leaves half of what marking out and drilling by eye leave; so do reading marks as fine again.
///
/// # Source
/// Common practice, no source.
const FINER: f64 = 0.5;

/// What can be had on which lid.
#[derive(Debug, Clone, PartialEq)]
pub struct Frontier {
    /// Width and depth of the lid that is given, mm.
    pub given: (f64, f64),
    /// From small to large: each has more settings than any on a smaller lid.
    pub lids: Vec<OnLid>,
    /// The most marks that a single dial can bear on the lid that is given; `None` where none is
    /// proven.
    pub most_marks: Option<u32>,
    /// What each single step of better workmanship would buy on that lid.
    pub better: Vec<Better>,
    /// Whether it was stopped before all was looked at.
    pub stopped: bool,
}

/// The most settings on one lid.
#[derive(Debug, Clone, PartialEq)]
pub struct OnLid {
    /// Lid along x, mm.
    pub width: f64,
    /// Lid along y, mm.
    pub depth: f64,
    /// Settings, all of which can be told apart.
    pub settings: u128,
    /// Marks of each dial.
    pub marks: Vec<u32>,
    /// The latch, proven.
    pub proposal: Proposal,
}

/// One step of better workmanship.
#[derive(Debug, Clone, PartialEq)]
pub struct Better {
    /// What is done otherwise.
    pub change: Change,
    /// In the maker's words: "a jig for the bores".
    pub name: &'static str,
    /// Most settings with the dials wished for, before and after; 0 where nothing is proven.
    pub settings: (u128, u128),
    /// Largest least room, before and after; `None` where nothing is proven.
    pub room: (Option<f64>, Option<f64>),
}

/// The frontier of these wishes; `tell` hears which share is done and may stop it.
///
/// Marks and labels of the wishes count for what better workmanship buys; the lids are looked at with
/// 1 to 8 dials, or as many as are wished for, of three marks and more.
pub fn frontier(wishes: &Wishes, tell: &mut dyn FnMut(f64) -> Go) -> Frontier {
    let mut work = Job {
        wishes,
        tell,
        done: 0.0,
        stopped: false,
    };
    let before = work.reach(wishes, SHARES.0);
    let single = work.single();
    let own = [&before, &single].map(|reach| reach.as_ref().map(|(_, most)| most.clone()));
    let lids = work.lids(&own);
    let most_marks = own[1]
        .as_ref()
        .and_then(|most| marks(&most.design).first().copied());
    let better = work.better(before.as_ref());
    let plate = &wishes.base.plate;
    Frontier {
        given: (plate.width, plate.depth),
        lids,
        most_marks,
        better,
        stopped: work.stopped,
    }
}

/// The roomiest of some wishes, and the one with the most settings.
type Reach = (Proposal, Proposal);

/// Shares of the work: what is proposed as it is, a single dial, the lids, better work; a guess.
const SHARES: (f64, f64, f64, f64) = (0.1, 0.05, 0.45, 0.4);

struct Job<'a> {
    wishes: &'a Wishes,
    tell: &'a mut dyn FnMut(f64) -> Go,
    /// Share that is done.
    done: f64,
    stopped: bool,
}

impl Job<'_> {
    /// Runs `pass` to its end, or as far as the caller wants.
    fn run(&mut self, mut pass: Pass, share: f64) -> Pass {
        while !self.stopped && pass.step(POINTS) {
            self.tell(self.done + share * pass.done());
        }
        self.done += share;
        pass
    }

    /// The most settings of these wishes that are proven, if more than `known`.
    fn most(&mut self, wishes: &Wishes, known: u128, share: f64) -> Option<Proposal> {
        let pass = Pass::of(wishes, true, Aim::Settings(0.0))?;
        let pass = self.run(pass.better_than(known as f64), share);
        let mut kept = pass.kept.iter();
        kept.find_map(|found| proposal(Kind::MostSettings, &found.design))
            .filter(|proposal| proposal.settings > known)
    }

    /// `own` are known on the lid that is given.
    fn lids(&mut self, own: &[Option<Proposal>]) -> Vec<OnLid> {
        let plate = &self.wishes.base.plate;
        let grid = Grid::of(self.wishes.base.units);
        let (width, depth) = (plate.width, plate.depth);
        let most_dials = MOST_DIALS.max(self.wishes.dials.len());
        let share = SHARES.2 / (LIDS.len() as f64 * most_dials as f64);
        let mut lids: Vec<OnLid> = Vec::new();
        for part in LIDS {
            // the lid that is given need not be on the grid
            let of = |length: f64| {
                if part < 1.0 {
                    up(length * part, grid.lid).min(length)
                } else {
                    length.max(down(length * part, grid.lid))
                }
            };
            let lid = (of(width), of(depth));
            let mut known = lids.last().map_or(0, |lid| lid.settings);
            let mut best = None;
            if part == 1.0 {
                let own = own.iter().flatten();
                let most = own.max_by_key(|proposal| proposal.settings);
                if let Some(most) = most.filter(|most| most.settings > known) {
                    known = most.settings;
                    best = Some(most.clone());
                }
            }
            for dials in (1..=most_dials).rev() {
                let mut wishes = self.wishes.clone().with_lid(lid.0, lid.1);
                wishes.dials = vec![DialWish::numbered(3); dials];
                wishes.pinned.retain(|(size, _)| size.dial().is_none());
                if let Some(proposal) = self.most(&wishes, known, share) {
                    known = proposal.settings;
                    best = Some(proposal);
                }
            }
            lids.extend(best.map(|proposal| OnLid {
                width: lid.0,
                depth: lid.1,
                settings: proposal.settings,
                marks: marks(&proposal.design),
                proposal,
            }));
        }
        lids
    }

    fn single(&mut self) -> Option<Reach> {
        let mut wishes = self.wishes.clone();
        wishes.dials = vec![DialWish::numbered(3)];
        wishes.pinned.retain(|(size, _)| size.dial().is_none());
        self.reach(&wishes, SHARES.1)
    }

    fn better(&mut self, before: Option<&Reach>) -> Vec<Better> {
        let steps = steps(&self.wishes.base);
        let share = SHARES.3 / steps.len().max(1) as f64;
        let of = |(name, change): (&'static str, Change)| {
            let mut wishes = self.wishes.clone();
            wishes.base = change.apply(&wishes.base);
            let after = self.reach(&wishes, share);
            let settings = |of: Option<&Reach>| of.map_or(0, |(_, most)| most.settings);
            let room = |of: Option<&Reach>| of.map(|(roomiest, _)| roomiest.room);
            let after = after.as_ref();
            (!self.stopped).then(|| Better {
                change,
                name,
                settings: (settings(before), settings(after)),
                room: (room(before), room(after)),
            })
        };
        // what was stopped says nothing
        steps.into_iter().map_while(of).collect()
    }

    /// What is proposed of these wishes: the roomiest, and the one with the most settings; `None` where
    /// nothing is, or it was stopped before that was known.
    fn reach(&mut self, wishes: &Wishes, share: f64) -> Option<Reach> {
        let from = self.done;
        self.done += share;
        let mut search = Search::new(wishes);
        while !self.stopped && search.seeks_roomiest() {
            search.step();
            self.tell(from + share * search.progress().done);
        }
        let mut pursuits = search.apart();
        pursuits.retain(|it| it.best().kind != Kind::Smallest);
        for mut pursuit in pursuits {
            while !self.stopped
                && let Some(news) = pursuit.step()
            {
                search.hear(news);
                self.tell(from + share * search.progress().done);
            }
        }
        let best = search.progress().best;
        let roomiest = best.first().cloned();
        // marks that are fixed have no more settings than the roomiest has
        let most = best.iter().find(|it| it.kind == Kind::MostSettings);
        let most = most.cloned().or_else(|| roomiest.clone());
        if !self.stopped {
            self.tell(self.done);
        }
        roomiest.zip(most).filter(|_| !self.stopped)
    }

    /// Tells the caller how far it is, who may stop it.
    fn tell(&mut self, done: f64) {
        self.stopped = (self.tell)(done) == Go::Stop;
    }
}

fn marks(design: &Design) -> Vec<u32> {
    design.dials.iter().map(|dial| dial.positions).collect()
}

/// The steps that are left to this maker.
fn steps(base: &Design) -> Vec<(&'static str, Change)> {
    let mut steps = Vec::new();
    let work = &base.workmanship;
    let finer = |size: LatchSize, from: f64| Step::Resize {
        size: Size::Latch(size),
        from,
        to: from * FINER,
    };
    let mut push = |name, steps_of: Vec<Step>| {
        if !steps_of.is_empty() {
            steps.push((name, Change { steps: steps_of }));
        }
    };
    if work.bore_place > 0.0 {
        push(
            "a jig for the bores",
            vec![finer(LatchSize::BorePlace, work.bore_place)],
        );
    }
    if work.reading > 0.0 {
        push(
            "finer reading marks",
            vec![finer(LatchSize::Reading, work.reading)],
        );
    }
    if base.slider.material != Material::Printed {
        let mut printed = vec![Step::SliderMaterial(Material::Printed)];
        // its pins stand where they were drawn, to the printer's error
        if work.print < work.pin_place {
            printed.push(Step::Resize {
                size: Size::Latch(LatchSize::PinPlace),
                from: work.pin_place,
                to: work.print,
            });
        }
        push("a printed slider", printed);
    }
    push("quarter-sawn stock", quarter_sawn(base));
    steps
}

fn quarter_sawn(base: &Design) -> Vec<Step> {
    let mut steps = Vec::new();
    if base.plate.sawn == Sawn::Flat {
        steps.push(Step::PlateSawn(Sawn::Quarter));
    }
    if let Material::Wood {
        species,
        sawn: Sawn::Flat,
        grain,
    } = &base.slider.material
    {
        steps.push(Step::SliderMaterial(Material::Wood {
            species: species.clone(),
            sawn: Sawn::Quarter,
            grain: *grain,
        }));
    }
    steps
}
