//! The nearest that can be had where some demands give way: each of them only as far as it must.

use core::ops::ControlFlow;

use super::choices::drilled;
use super::demand::{Demand, Give, Given, ladder, lids, relaxed, step_of};
use super::grid::{Grid, steps, up};
use super::proposal::Proposal;
use super::search::first_proven;
use super::wishes::{Lid, Wishes};
use latchwright_model::Size;

/// What can be had instead.
#[derive(Debug, Clone, PartialEq)]
pub struct Nearest {
    /// The demands that give way; all others are kept.
    pub demands: Vec<Demand>,
    /// A latch that is proven then.
    pub proposal: Proposal,
    /// What is wished then: the proposal keeps to it.
    pub wishes: Wishes,
}

/// The nearest on this way out, which is known to lead somewhere: first all its demands are let go
/// wholly, then each is drawn back towards what was wished for as long as something is proven.
pub(super) fn nearest(
    wishes: &Wishes,
    way: &[Demand],
    tick: &mut dyn FnMut() -> ControlFlow<()>,
) -> ControlFlow<(), Option<Nearest>> {
    let given: Given = way.iter().map(|demand| (*demand, Give::Whole)).collect();
    let mut start = None;
    for lid in lids(wishes, way) {
        if let Some(proposal) = first_proven(&relaxed(wishes, &given, lid), tick)? {
            start = Some((lid, proposal));
            break;
        }
    }
    let Some((lid, proposal)) = start else {
        return ControlFlow::Continue(None);
    };
    let mut approach = Approach {
        wishes,
        lid,
        given,
        proposal,
    };
    let place = |demand| way.iter().position(|one| *one == demand);
    if let (Some(width), Some(depth)) = (place(Demand::Width), place(Demand::Depth)) {
        // a lid that is a little larger both ways, and only then as narrow and shallow as it goes
        approach.draw_back(&[width, depth], tick)?;
    }
    for number in 0..way.len() {
        approach.draw_back(&[number], tick)?;
    }
    approach.with_few_bits(tick).map_continue(Some)
}

/// What is given so far, and what is proven with it.
struct Approach<'a> {
    wishes: &'a Wishes,
    lid: Lid,
    given: Given,
    proposal: Proposal,
}

/// A size that was held fixed.
struct Held {
    /// At what.
    at: f64,
    /// What it is in the latch that was found.
    found: f64,
    /// The step between them.
    step: f64,
}

impl Approach<'_> {
    /// Draws these demands back together, by ever longer strides and then by halves.
    fn draw_back(
        &mut self,
        group: &[usize],
        tick: &mut dyn FnMut() -> ControlFlow<()>,
    ) -> ControlFlow<()> {
        // steps that are too few, and that do
        let (mut short, mut does) = (
            0,
            group
                .iter()
                .map(|place| self.steps(*place))
                .max()
                .unwrap_or(0),
        );
        let mut stride = 1;
        while does > short + 1 {
            let next = if stride > 0 && stride < does - short {
                short + stride
            } else {
                short + (does - short) / 2
            };
            let given = self.moved(group, next);
            if let Some(proposal) = first_proven(&relaxed(self.wishes, &given, self.lid), tick)? {
                (self.proposal, self.given) = (proposal, given);
                (does, stride) = (next, 0);
            } else {
                (short, stride) = (next, stride.saturating_mul(2));
            }
        }
        ControlFlow::Continue(())
    }

    /// How many steps this demand of the way has given.
    fn steps(&self, place: usize) -> u32 {
        match self.given.get(place) {
            Some((_, Give::Steps(steps))) => *steps,
            Some((demand, _)) => match self.held(*demand) {
                Some(held) => steps((held.found - held.at).abs(), held.step),
                None => ladder(self.wishes, *demand, self.lid),
            },
            None => 0,
        }
    }

    fn held(&self, demand: Demand) -> Option<Held> {
        let Demand::Pinned(number) = demand else {
            return None;
        };
        let (size, at): (Size, f64) = *self.wishes.pinned.get(number)?;
        Some(Held {
            at,
            found: size.get(&self.proposal.design)?,
            step: step_of(size, Grid::of(self.wishes.base.units)),
        })
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
                Some(Held { at, found, step }) => {
                    let by = f64::from(steps) * step;
                    let to = if found > at {
                        up(at - 0.999 * step + by, step).min(found)
                    } else {
                        up(at + 0.001 * step - by, step).max(found)
                    };
                    Give::At(to)
                }
                None => Give::Steps(steps.min(most)),
            };
        }
        given
    }

    /// What was found, with bits and pins of which only those are new that it needs.
    fn with_few_bits(self, tick: &mut dyn FnMut() -> ControlFlow<()>) -> ControlFlow<(), Nearest> {
        let demands: Vec<Demand> = self.given.iter().map(|(demand, _)| *demand).collect();
        let mut found = Nearest {
            wishes: relaxed(self.wishes, &self.given, self.lid),
            proposal: self.proposal,
            demands,
        };
        if found.demands.contains(&Demand::Bits) || found.demands.contains(&Demand::Pins) {
            let mut few = found.wishes.clone();
            let bits = &mut few.base.bench.bits;
            bits.clone_from(&self.wishes.base.bench.bits);
            few.pins.clone_from(&self.wishes.pins);
            for dial in &found.proposal.design.dials {
                add(bits, dial.bore.diameter);
                add(&mut few.pins, dial.pin.diameter);
                let any = found.wishes.base.bench.bits.iter().copied();
                let off = |bit: &f64| (bit - dial.pin.diameter).abs();
                let bit = any.min_by(|one, other| off(one).total_cmp(&off(other)));
                if let Some(bit) = bit.filter(|_| drilled(&found.wishes.base)) {
                    add(bits, bit);
                }
            }
            if let Some(same) = first_proven(&few, tick)? {
                (found.proposal, found.wishes) = (same, few);
            }
        }
        ControlFlow::Continue(found)
    }
}

fn add(list: &mut Vec<f64>, value: f64) {
    if !list.contains(&value) {
        list.push(value);
        list.sort_by(f64::total_cmp);
    }
}
