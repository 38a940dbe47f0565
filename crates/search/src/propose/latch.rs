//! A latch that the search found, and what it is ranked by.

use core::cmp::Ordering;

use super::choices::Choice;
use super::grid::{Grid, stands_on};
use super::proposal::{Kind, Merit, bits};
use super::solve::Sizes;
use super::weigh::room_to_spare;
use super::wishes::Lid;
use latchwright_model::Design;
use latchwright_proof::unsure_dials;

/// Two rooms to spare that differ by less are as good as each other, and the simpler latch is taken.
pub(super) const ALIKE: f64 = 0.01;

/// A latch that was found.
#[derive(Debug, Clone)]
pub(super) struct Latch {
    /// The whole design.
    pub design: Design,
    /// Its room to spare, as a share of what may be off.
    pub room: f64,
    /// How it was made.
    pub choice: Choice,
    pub sizes: Sizes,
    rank: Rank,
}

/// What latches are ranked by, the larger the better: what is looked for, then fewer bits, then fewer
/// marks than must be, then simpler numbers.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
struct Rank {
    merit: f64,
    bits: f64,
    marks: f64,
    fiddly: f64,
}

impl Latch {
    /// A latch of this design; `None` where a wood is not known.
    pub(super) fn of(kind: Kind, design: Design, choice: Choice, sizes: Sizes) -> Option<Self> {
        let (room, _) = room_to_spare(&design)?;
        let settings = settings(&design);
        let merit = Merit::of(kind, room, settings, Lid::of(&design).area());
        let fiddly = fiddly(&design);
        let rank = Rank {
            merit: match kind {
                Kind::Roomiest => (room / ALIKE).clamp(-1e6, 1e6).floor(),
                Kind::MostSettings | Kind::Smallest => merit.first,
            },
            bits: -(bits(&design).len() as f64),
            marks: -settings,
            fiddly: -(fiddly as f64),
        };
        Some(Self {
            design,
            room,
            choice,
            sizes,
            rank,
        })
    }

    /// The same, ranked as one of another kind.
    pub(super) fn into_kind(self, kind: Kind) -> Option<Self> {
        Self::of(kind, self.design, self.choice, self.sizes)
    }

    /// Which of two is to be preferred.
    pub(super) fn better(&self, other: &Self) -> bool {
        self.rank.partial_cmp(&other.rank) == Some(Ordering::Greater)
    }

    /// How many settings there are; as a number that has no end.
    pub(super) fn settings(&self) -> f64 {
        settings(&self.design)
    }

    /// How good it is in a kind.
    pub(super) fn merit(&self, kind: Kind) -> Merit {
        Merit::of(
            kind,
            self.room,
            self.settings(),
            Lid::of(&self.design).area(),
        )
    }

    /// Whether another has the same bore, pin, marking and kind of row: of each the best is looked round.
    pub(super) fn is_like(&self, other: &Self) -> bool {
        let class = |latch: &Self| {
            let choice = &latch.choice;
            (
                choice.bore.to_bits(),
                choice.pin.to_bits(),
                choice.marking,
                choice.stagger > 0.0,
            )
        };
        class(self) == class(other)
    }

    /// The same with one dial a seat poorer, each in turn that may be proven so.
    ///
    /// Of two dials that stand alike the proof may bear more marks on one.
    pub(super) fn each_poorer(&self) -> Vec<Design> {
        let poorer = |index: usize| {
            let mut poorer = self.design.clone();
            let dial = poorer.dials.get_mut(index)?;
            dial.positions = dial.positions.checked_sub(dial.key.sides)?;
            let last = dial.positions.checked_sub(1)?;
            let digit = poorer.combination.get_mut(index)?;
            *digit = (*digit).min(last);
            Some(poorer)
        };
        match unsure_dials(&self.design, 2)[..] {
            [] => (0..self.design.dials.len()).filter_map(poorer).collect(),
            [index] => poorer(index).into_iter().collect(),
            // whichever is poorer, another stays in doubt
            _ => Vec::new(),
        }
    }
}

/// How many settings a design has; as a number that has no end.
pub(super) fn settings(design: &Design) -> f64 {
    let dials = design.dials.iter();
    dials.map(|dial| f64::from(dial.positions)).product()
}

/// How many of the numbers that a maker has to set out are not whole ones of the unit: the fewer, the
/// simpler.
fn fiddly(design: &Design) -> usize {
    let step = 2.0 * Grid::of(design.units).size;
    let mut numbers = vec![
        design.slider.travel,
        design.tab.engagement,
        design.tab.width,
        design.slider.guide_length,
    ];
    if let Some(dial) = design.dials.first() {
        numbers.extend([dial.disc.radius, dial.pin.gap]);
        numbers.extend([dial.knob.diameter, dial.pin.diameter, dial.bore.diameter]);
        let slots = dial.disc.slots.iter();
        numbers.extend(slots.flat_map(|slot| [slot.width, slot.depth, slot.lead_in]));
    }
    let centres = design.dials.iter().map(|dial| dial.centre);
    numbers.extend(centres.flat_map(|(x, y)| [x, y]));
    // posts go by the marks, and those alike are set out once
    let mut posts: Vec<f64> = design.dials.iter().map(|dial| dial.key.apothem).collect();
    posts.sort_by(f64::total_cmp);
    posts.dedup();
    numbers.extend(posts);
    let fiddly = |number: &&f64| !stands_on(**number, step);
    numbers.iter().filter(fiddly).count()
}
