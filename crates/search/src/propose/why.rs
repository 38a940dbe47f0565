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

use core::ops::ControlFlow;

use itertools::Itertools;
use latchwright_geometry::trig;

use super::demand::{self, Demand, Give, Given, lids, relaxed};
use super::nearest::{Nearest, nearest};
use super::search::first_proven;
use super::unreadable::Unreadable;
use super::wishes::Wishes;

/// Why nothing was found.
#[derive(Debug, Clone, PartialEq)]
pub struct Nothing {
    /// What was wished for.
    pub wishes: Wishes,
    /// The smallest set of demands that cannot all be had (of more than three: a set of which none can
    /// be left out); empty where the wishes cannot be read as a latch at all, or where even without any
    /// demand nothing was found.
    pub conflict: Vec<Demand>,
    /// Further sets that cannot be had either, where giving in one of the first is not enough.
    pub besides: Vec<Vec<Demand>>,
    /// Why the wishes cannot be read as a latch at all; empty where they can.
    pub unreadable: Vec<Unreadable>,
    /// The ways out with the fewest demands that give way, all others kept; each with a proven design.
    pub nearest: Vec<Nearest>,
}

/// Sets of more demands than this are not looked for one by one: there are thousands.
const MOST: usize = 3;
/// The most demands that give way at once: nobody gives up more for a box.
const MOST_GIVE: usize = 4;
/// Ways out that are told: more are not read.
const WAYS: usize = 5;

/// Hears which share is done.
pub(super) type Told<'a> = dyn FnMut(f64) -> ControlFlow<()> + 'a;

/// Why nothing can be had of these wishes.
pub(super) fn why(wishes: &Wishes, tick: &mut Told<'_>) -> ControlFlow<(), Nothing> {
    let mut asking = Asking {
        wishes,
        demands: demand::all(wishes),
        could: Vec::new(),
        could_not: Vec::new(),
        tick,
    };
    let mut found = Nothing {
        wishes: wishes.clone(),
        conflict: Vec::new(),
        besides: Vec::new(),
        unreadable: Vec::new(),
        nearest: Vec::new(),
    };
    // if nothing goes even without any demand, none is to blame
    if !asking.goes(&asking.demands.clone())? {
        return ControlFlow::Continue(found);
    }
    let mut conflicts = vec![asking.smallest_conflict()?];
    let ways = asking.ways(&mut conflicts)?;
    let told = ways.len().min(WAYS);
    for (number, way) in ways.iter().take(WAYS).enumerate() {
        let done = 0.6 + 0.4 * number as f64 / told as f64;
        found
            .nearest
            .extend(nearest(wishes, way, &mut || (asking.tick)(done))?);
    }
    found.conflict = conflicts.remove(0);
    found.besides = conflicts;
    ControlFlow::Continue(found)
}

/// What is known of which demands can be had together.
struct Asking<'a, 'b> {
    wishes: &'a Wishes,
    demands: Vec<Demand>,
    /// Demands that were let go and what is left could be had, or could not.
    could: Vec<Vec<Demand>>,
    could_not: Vec<Vec<Demand>>,
    tick: &'a mut Told<'b>,
}

impl Asking<'_, '_> {
    /// Whether something can be had without these demands; what is known already is not tried again:
    /// less that is let go never makes more possible.
    fn goes(&mut self, gone: &[Demand]) -> ControlFlow<(), bool> {
        if let Some(known) = self.known(gone) {
            return ControlFlow::Continue(known);
        }
        let asked = self.could.len() + self.could_not.len();
        // how many will be asked is not known
        let done = 0.6 * (1.0 - trig::exp(-0.04 * asked as f64));
        let given: Given = gone.iter().map(|demand| (*demand, Give::Whole)).collect();
        let mut goes = false;
        for lid in lids(self.wishes, gone) {
            let eased = relaxed(self.wishes, &given, lid);
            goes = goes || first_proven(&eased, &mut || (self.tick)(done))?.is_some();
        }
        let known = if goes {
            &mut self.could
        } else {
            &mut self.could_not
        };
        known.push(gone.to_vec());
        ControlFlow::Continue(goes)
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

    /// A smallest set of demands that cannot be had together.
    fn smallest_conflict(&mut self) -> ControlFlow<(), Vec<Demand>> {
        // what one demand alone makes possible decides most of the sets
        for demand in self.demands.clone() {
            self.goes(&[demand])?;
        }
        let demands = self.demands.clone();
        for kept in (1..=MOST).flat_map(|size| demands.iter().copied().combinations(size)) {
            if !self.goes(&self.others(&kept))? {
                return ControlFlow::Continue(kept);
            }
        }
        self.shrunk(demands)
    }

    /// Of demands that cannot be had together, some of which none can be left out.
    fn shrunk(&mut self, mut kept: Vec<Demand>) -> ControlFlow<(), Vec<Demand>> {
        let mut tried = 0;
        while let Some(demand) = kept.get(tried).copied() {
            let blamed: Vec<Demand> = kept.iter().copied().take(tried).collect();
            // once all that is to blame is found, the rest is let go in one try instead of one for each
            if !self.goes(&self.others(&blamed))? {
                return ControlFlow::Continue(blamed);
            }
            let without: Vec<Demand> = kept.iter().copied().filter(|one| *one != demand).collect();
            if self.goes(&self.others(&without))? {
                tried += 1;
            } else {
                kept = without;
            }
        }
        ControlFlow::Continue(kept)
    }

    /// The ways out with the fewest demands that give way: each gives in every conflict, and those that
    /// turn up on the way are added.
    fn ways(&mut self, conflicts: &mut Vec<Vec<Demand>>) -> ControlFlow<(), Vec<Vec<Demand>>> {
        let mut ways = Vec::new();
        for size in 1..=MOST_GIVE {
            for way in self.demands.clone().into_iter().combinations(size) {
                let gives = |conflict: &Vec<Demand>| conflict.iter().any(|one| way.contains(one));
                if !conflicts.iter().all(gives) {
                    continue;
                }
                if self.goes(&way)? {
                    ways.push(way);
                } else if size > 1 && ways.is_empty() {
                    // what is kept then cannot be had either: some of it is to blame
                    conflicts.push(self.shrunk(self.others(&way))?);
                }
            }
            if !ways.is_empty() {
                break;
            }
        }
        ControlFlow::Continue(ways)
    }
}
