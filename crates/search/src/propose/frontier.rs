//! What a lid could bear: settings that can be told apart against its area, the most marks of one
//! dial, and what one step of better workmanship would buy.

use core::ops::ControlFlow;

use super::grid::{Grid, down, up};
use super::proposal::{Kind, Proposal};
use super::search::{Outcome, better, roomiest};
use super::sweep::Sweep;
use super::wishes::{DialWish, Lid, Wishes};
use crate::tick::Progress;
use latchwright_model::change::{Change, LatchSize, Size, Step};
use latchwright_model::{Design, Material, Sawn};

/// Most dials that are looked at, or as many as are wished for: nobody sets more.
const MOST_DIALS: usize = 8;
/// The lids that are looked at, as shares of the one that is given, which is one of them.
const LIDS: [f64; 7] = [0.4, 0.55, 0.7, 0.85, 1.0, 1.15, 1.3];
/// A jig leaves half of what marking out and drilling by eye leave; so do reading marks as fine again.
///
/// # Source
/// Common practice, no source.
const FINER: f64 = 0.5;

/// Shares of the work; a guess.
const OWN: f64 = 0.1;
const SINGLE: f64 = 0.05;
const ALL_LIDS: f64 = 0.45;
const BETTER: f64 = 0.4;

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

/// A step of better workmanship.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Finer {
    /// A jig for the bores.
    Jig,
    /// Finer reading marks.
    Marks,
    /// A printed slider.
    PrintedSlider,
    /// Quarter-sawn stock.
    QuarterSawn,
}

/// What one step of better workmanship would buy.
#[derive(Debug, Clone, PartialEq)]
pub struct Better {
    /// Which.
    pub finer: Finer,
    /// What is done otherwise.
    pub change: Change,
    /// Most settings with the dials wished for, before and after; 0 where nothing is proven.
    pub settings: (u128, u128),
    /// Largest room to spare, before and after; `None` where nothing is proven.
    pub room: (Option<f64>, Option<f64>),
}

/// The frontier of these wishes; `tick` hears which share is done and may stop it.
///
/// Marks and labels of the wishes count for what better workmanship buys; the lids are looked at with
/// 1 to 8 dials, or as many as are wished for, of three marks and more.
pub fn frontier(wishes: &Wishes, tick: &mut dyn FnMut(f64) -> ControlFlow<()>) -> Frontier {
    let lid = Lid::of(&wishes.base);
    let mut found = Frontier {
        given: (lid.width, lid.depth),
        lids: Vec::new(),
        most_marks: None,
        better: Vec::new(),
        stopped: false,
    };
    let mut work = Work {
        wishes,
        tick,
        done: 0.0,
    };
    found.stopped = work.whole(&mut found).is_break();
    found
}

/// The roomiest of some wishes, and the one with the most settings.
struct Reach {
    roomiest: Proposal,
    most: Proposal,
}

struct Work<'a> {
    wishes: &'a Wishes,
    tick: &'a mut dyn FnMut(f64) -> ControlFlow<()>,
    /// Share that is done.
    done: f64,
}

impl Work<'_> {
    fn whole(&mut self, found: &mut Frontier) -> ControlFlow<()> {
        let before = self.reach(self.wishes, OWN)?;
        let single = self.reach(&of_dials(self.wishes, 1), SINGLE)?;
        let most = |reach: &Option<Reach>| reach.as_ref().map(|reach| reach.most.clone());
        let own = [most(&before), most(&single)];
        let single = single.map(|single| marks(&single.most.design));
        found.most_marks = single.and_then(|marks| marks.first().copied());
        self.lids(&own, &mut found.lids)?;
        self.better(before.as_ref(), &mut found.better)
    }

    /// The most settings of these wishes that are proven, if more than `known`.
    fn most(
        &mut self,
        wishes: &Wishes,
        known: u128,
        share: f64,
    ) -> ControlFlow<(), Option<Proposal>> {
        let from = self.done;
        let mut most = None;
        if let Some(sweep) = Sweep::of(wishes, Kind::MostSettings, 0.0) {
            let mut sweep = sweep.better_than(known as f64);
            sweep.whole(&mut |done, _| (self.tick)(from + share * done))?;
            let mut kept = sweep.kept.iter();
            most =
                kept.find_map(|latch| Proposal::allowed(wishes, Kind::MostSettings, &latch.design));
        }
        self.done += share;
        ControlFlow::Continue(most.filter(|proposal| proposal.settings > known))
    }

    /// What each lid bears; `own` is known of the lid that is given.
    fn lids(&mut self, own: &[Option<Proposal>], lids: &mut Vec<OnLid>) -> ControlFlow<()> {
        let (given, grid) = (Lid::of(&self.wishes.base), Grid::of(self.wishes.base.units));
        let most_dials = MOST_DIALS.max(self.wishes.dials.len());
        let share = ALL_LIDS / (LIDS.len() as f64 * most_dials as f64);
        for part in LIDS {
            // the lid that is given need not be on the grid
            let of = |length: f64| {
                if part < 1.0 {
                    up(length * part, grid.lid).min(length)
                } else {
                    length.max(down(length * part, grid.lid))
                }
            };
            let lid = Lid {
                width: of(given.width),
                depth: of(given.depth),
            };
            let mut known = lids.last().map_or(0, |lid| lid.settings);
            let own = own.iter().flatten().filter(|_| part == 1.0);
            let mut best = own.max_by_key(|own| own.settings).cloned();
            best = best.filter(|best| best.settings > known);
            for dials in (1..=most_dials).rev() {
                known = best.as_ref().map_or(known, |best| best.settings);
                let wishes = of_dials(&self.wishes.on(lid), dials);
                best = self.most(&wishes, known, share)?.or(best);
            }
            lids.extend(best.map(|proposal| OnLid {
                width: lid.width,
                depth: lid.depth,
                settings: proposal.settings,
                marks: marks(&proposal.design),
                proposal,
            }));
        }
        ControlFlow::Continue(())
    }

    /// What each step of better workmanship buys.
    fn better(&mut self, before: Option<&Reach>, better: &mut Vec<Better>) -> ControlFlow<()> {
        let steps = finer(&self.wishes.base);
        let share = BETTER / steps.len().max(1) as f64;
        for (finer, change) in steps {
            let mut wishes = self.wishes.clone();
            wishes.base = change.apply(&wishes.base);
            let after = self.reach(&wishes, share)?;
            let after = after.as_ref();
            let settings = |of: Option<&Reach>| of.map_or(0, |reach| reach.most.settings);
            let room = |of: Option<&Reach>| of.map(|reach| reach.roomiest.room_to_spare);
            better.push(Better {
                finer,
                change,
                settings: (settings(before), settings(after)),
                room: (room(before), room(after)),
            });
        }
        ControlFlow::Continue(())
    }

    /// What is proposed of these wishes; `None` where nothing is.
    fn reach(&mut self, wishes: &Wishes, share: f64) -> ControlFlow<(), Option<Reach>> {
        let from = self.done;
        let mut stopped = false;
        let mut tick = |done: f64, nothing: bool| {
            stopped = (self.tick)(from + share * done).is_break();
            // why there is nothing is not asked for
            if stopped || nothing {
                ControlFlow::Break(())
            } else {
                ControlFlow::Continue(())
            }
        };
        let mut last = 0.0;
        let outcome = roomiest(wishes, &mut |progress: Progress<'_, Proposal>| {
            let nothing = progress.found.is_empty() && progress.done >= super::search::ROOMIEST;
            last = progress.done;
            tick(progress.done, nothing)
        });
        let mut reach = None;
        if let Outcome::Found(mut found) = outcome
            && let Some(roomiest) = found.pop()
        {
            let most = if wishes.marks_are_free() {
                better(wishes, Kind::MostSettings, &roomiest, &mut |progress| {
                    tick(last + (1.0 - last) * progress.done, false)
                })
            } else {
                // marks that are fixed have no more settings
                roomiest.clone()
            };
            reach = Some(Reach { roomiest, most });
        }
        if stopped {
            return ControlFlow::Break(());
        }
        self.done = from + share;
        (self.tick)(self.done)?;
        ControlFlow::Continue(reach)
    }
}

/// The same wishes with so many dials of three marks and more.
fn of_dials(wishes: &Wishes, dials: usize) -> Wishes {
    let mut wishes = wishes.clone();
    wishes.dials = vec![DialWish::numbered(3); dials];
    wishes.pinned.retain(|(size, _)| size.dial().is_none());
    wishes
}

fn marks(design: &Design) -> Vec<u32> {
    design.dials.iter().map(|dial| dial.positions).collect()
}

/// The steps that are left to this maker.
fn finer(base: &Design) -> Vec<(Finer, Change)> {
    let work = &base.workmanship;
    let resize = |size: LatchSize, from: f64, to: f64| Step::Resize {
        size: Size::Latch(size),
        from,
        to,
    };
    let mut all = Vec::new();
    if work.bore_place > 0.0 {
        let finer = resize(
            LatchSize::BorePlace,
            work.bore_place,
            FINER * work.bore_place,
        );
        all.push((Finer::Jig, vec![finer]));
    }
    if work.reading > 0.0 {
        let finer = resize(LatchSize::Reading, work.reading, FINER * work.reading);
        all.push((Finer::Marks, vec![finer]));
    }
    if base.slider.material != Material::Printed {
        let mut printed = vec![Step::SliderMaterial(Material::Printed)];
        // its pins stand where they were drawn, to the printer's error
        if work.print < work.pin_place {
            printed.push(resize(LatchSize::PinPlace, work.pin_place, work.print));
        }
        all.push((Finer::PrintedSlider, printed));
    }
    let quarter = quarter_sawn(base);
    if !quarter.is_empty() {
        all.push((Finer::QuarterSawn, quarter));
    }
    let changes = all.into_iter();
    changes
        .map(|(finer, steps)| (finer, Change { steps }))
        .collect()
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
