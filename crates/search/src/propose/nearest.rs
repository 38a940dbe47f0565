//! The nearest that can be had where some demands give way: each of them only as far as it must.

use super::demand::{Demand, Give, Given, ladder, lids, relaxed, step_of};
use super::grid::{Grid, steps, up};
use super::lattice::drilled;
use super::proposal::Proposal;
use super::say::given_in_words;
use super::search::first_proven;
use super::wishes::Wishes;

/// What can be had instead.
#[derive(Debug, Clone, PartialEq)]
pub struct Nearest {
    /// The demands that give way; all others are kept.
    pub demands: Vec<Demand>,
    /// How they would have to be: "a lid 236 mm wide".
    pub sentence: String,
    /// A latch that is proven then.
    pub proposal: Proposal,
    /// What is wished then: the proposal keeps to it.
    pub wishes: Wishes,
}

/// The search for how far demands must give way: first all of them wholly, then each drawn back
/// towards what was wished for as long as something is proven.
pub(super) struct Approach {
    wishes: Wishes,
    way: Vec<Demand>,
    lid: (f64, f64),
    given: Given,
    has: Option<Proposal>,
    /// Demands of the way that are drawn back together, one group after the other.
    groups: Vec<Vec<usize>>,
    group: usize,
    /// Steps of the group that are too few, and that do.
    short: u32,
    reached: u32,
    /// The next stride out from what was wished; 0 where it is halved.
    stride: u32,
}

impl Approach {
    /// The way `way` out of `wishes`, which is known to lead somewhere.
    pub(super) fn new(wishes: &Wishes, way: &[Demand]) -> Self {
        let place = |demand| way.iter().position(|one| *one == demand);
        let mut groups: Vec<Vec<usize>> = Vec::new();
        if let (Some(width), Some(depth)) = (place(Demand::Width), place(Demand::Depth)) {
            // a lid that is a little larger both ways, and only then as narrow and shallow as it goes
            groups.push(vec![width, depth]);
        }
        groups.extend((0..way.len()).map(|number| vec![number]));
        Self {
            wishes: wishes.clone(),
            way: way.to_vec(),
            lid: (0.0, 0.0),
            given: way.iter().map(|demand| (*demand, Give::Whole)).collect(),
            has: None,
            groups,
            group: 0,
            short: 0,
            reached: 0,
            stride: 1,
        }
    }

    /// Tries once more; false when it is as near as it gets.
    pub(super) fn step(&mut self) -> bool {
        if self.has.is_none() {
            return self.whole();
        }
        let Some(group) = self.groups.get(self.group).cloned() else {
            return false;
        };
        if self.reached - self.short <= 1 {
            self.group += 1;
            self.begin();
            return self.group < self.groups.len();
        }
        if self.stride >= self.reached - self.short {
            self.stride = 0;
        }
        let middle = if self.stride == 0 {
            self.short + (self.reached - self.short) / 2
        } else {
            self.short + self.stride
        };
        let given = self.moved(&group, middle);
        if let Some(proposal) = first_proven(&relaxed(&self.wishes, &given, self.lid)) {
            (self.has, self.given) = (Some(proposal), given);
            (self.reached, self.stride) = (middle, 0);
        } else {
            self.short = middle;
            self.stride *= 2;
        }
        true
    }

    /// All demands of the way let go.
    fn whole(&mut self) -> bool {
        let found = lids(&self.wishes, &self.way).into_iter().find_map(|lid| {
            let proposal = first_proven(&relaxed(&self.wishes, &self.given, lid))?;
            Some((lid, proposal))
        });
        let Some((lid, proposal)) = found else {
            return false;
        };
        (self.lid, self.has) = (lid, Some(proposal));
        self.begin();
        true
    }

    /// Begins with the next group, from what it is now down to what was wished.
    fn begin(&mut self) {
        let group = self.groups.get(self.group).into_iter().flatten();
        let steps = group.map(|place| self.steps(*place)).max();
        (self.short, self.stride) = (0, 1);
        self.reached = steps.unwrap_or(0);
    }

    /// How many steps this demand of the way has given.
    fn steps(&self, place: usize) -> u32 {
        match self.given.get(place) {
            Some((_, Give::Steps(steps))) => *steps,
            Some((demand, _)) => match self.held(*demand) {
                Some((held, found, step)) => steps((found - held).abs(), step),
                None => ladder(&self.wishes, *demand, self.lid),
            },
            None => 0,
        }
    }

    /// A size that was held fixed, what it is in the latch that was found, and the step between them.
    fn held(&self, demand: Demand) -> Option<(f64, f64, f64)> {
        let Demand::Pinned(number) = demand else {
            return None;
        };
        let (size, held) = *self.wishes.pinned.get(number)?;
        let found = size.get(&self.has.as_ref()?.design)?;
        Some((held, found, step_of(size, Grid::of(self.wishes.base.units))))
    }

    /// What is given with so many steps on all of `group`.
    fn moved(&self, group: &[usize], steps: u32) -> Given {
        let mut given = self.given.clone();
        for place in group {
            let most = self.steps(*place);
            let Some((demand, give)) = given.get_mut(*place) else {
                continue;
            };
            *give = match self.held(*demand) {
                Some((held, found, step)) => {
                    let by = f64::from(steps) * step;
                    let to = if found > held {
                        up(held - 0.999 * step + by, step).min(found)
                    } else {
                        up(held + 0.001 * step - by, step).max(found)
                    };
                    Give::At(to)
                }
                None => Give::Steps(steps.min(most)),
            };
        }
        given
    }

    /// What was found, with bits and pins of which only those are new that it needs.
    pub(super) fn outcome(&self) -> Option<Nearest> {
        let mut proposal = self.has.clone()?;
        let mut wishes = relaxed(&self.wishes, &self.given, self.lid);
        if self.way.contains(&Demand::Bits) || self.way.contains(&Demand::Pins) {
            let mut bare = wishes.clone();
            bare.base
                .bench
                .bits
                .clone_from(&self.wishes.base.bench.bits);
            bare.pins.clone_from(&self.wishes.pins);
            for dial in &proposal.design.dials {
                add(&mut bare.base.bench.bits, dial.bore.diameter);
                add(&mut bare.pins, dial.pin.diameter);
                let bits = wishes.base.bench.bits.iter().copied();
                let off = |bit: &f64| (bit - dial.pin.diameter).abs();
                let bit = bits.min_by(|one, other| off(one).total_cmp(&off(other)));
                if let Some(bit) = bit.filter(|_| drilled(&wishes.base)) {
                    add(&mut bare.base.bench.bits, bit);
                }
            }
            if let Some(same) = first_proven(&bare) {
                (proposal, wishes) = (same, bare);
            }
        }
        Some(Nearest {
            demands: self.way.clone(),
            sentence: given_in_words(&self.wishes, &wishes, &self.way, &proposal.design),
            proposal,
            wishes,
        })
    }
}

fn add(list: &mut Vec<f64>, value: f64) {
    if !list.contains(&value) {
        list.push(value);
        list.sort_by(f64::total_cmp);
    }
}
