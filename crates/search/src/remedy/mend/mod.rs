//! Mending a whole design: the smallest change found after which it is proven, with parts that are cut
//! already left alone.
//!
//! One size is tried before two, and of sizes that do it the one that moves least. What `remedy` finds for
//! a check that fails is tried too, so that neither refuses what the other offers. Every step is judged by
//! the whole proof.

mod aim;
mod every_way;
mod look;
mod settled;

use core::cell::RefCell;
use core::cmp::Ordering;

use super::part::Part;
use super::trials::Trials;
use super::way::Moves;
use super::{best, fails, faulty};
use crate::tick::{Progress, Tick};
use latchwright_model::Design;
use latchwright_model::change::{Change, Size, Step};
use latchwright_proof::prove;
use latchwright_proof::results::Proof;
use look::{Job, Start};

pub use settled::{all_but_meant, settled};

/// The smallest change found that makes a design proven.
#[derive(Debug, Clone, PartialEq)]
pub struct Mend {
    /// What to change.
    pub change: Change,
    /// How many sizes that is, alike ones of several dials taken together.
    pub sizes: usize,
    /// How far they move together, mm; a mark that is left out counts as one.
    pub movement: f64,
    /// The proof of the changed design: proven, or all but its second openings that are meant.
    pub proof: Proof,
}

/// Work at most, in cells of boxes: some seconds. Less, and two sizes that are off are not found on a box
/// of many dials; more, and a maker whose box cannot be mended waits for nothing.
const MOST_WORK: usize = 1_000_000;

/// Work for the remedies of the checks that fail, a share of it.
const FOR_REMEDIES: usize = 20_000;

/// Checks that fail at most where their remedies are asked for: of more, one remedy mends few. More, and
/// the work goes where every way is gone again.
const FEW_CHECKS: usize = 3;

/// Beginnings from which a second size is looked for. Fewer, and of two sizes that are off neither may be
/// among them; more, and the work is spent before a third is looked for.
const BEGINNINGS: usize = 16;

/// Beginnings from which a third size and further ones are looked for.
const FURTHER_BEGINNINGS: usize = 2;

/// Sizes that are moved at most: a maker who has to move more is better served by a new proposal.
const MOST_SIZES: usize = 5;

/// Looks for the smallest change: fewest sizes, then least movement. `cut` is left as it is, and so are
/// slots that are cut right through to open at a second mark ([`all_but_meant`]).
///
/// `None` for a design that is [`settled`], and where nothing was found. The work is bounded by a count, so
/// that the answer is the same on every machine; `tick` is told the best so far, and where it says stop,
/// that is the answer.
pub fn mend(design: &Design, cut: &[Part], tick: &mut Tick<'_, Change>) -> Option<Mend> {
    if settled(design, &prove(design)) {
        return None;
    }
    let found = RefCell::new(Vec::new());
    let mut hears = |done| {
        let found = &found.borrow();
        tick(Progress { done, found }).is_continue()
    };
    let trials = Trials::new(MOST_WORK, &mut hears);
    let mut job = Job::new(design, cut, trials, &found);
    job.search();
    let shortest = job.shortest()?;
    let proof = prove(&shortest.change.apply(design));
    settled(&shortest.change.apply(design), &proof).then_some(Mend {
        sizes: shortest.sizes,
        movement: shortest.movement,
        change: shortest.change,
        proof,
    })
}

/// A change, with what it costs a maker.
#[derive(Debug, Clone, PartialEq)]
struct Price {
    moves: Moves,
    change: Change,
    sizes: usize,
    movement: f64,
}

impl Price {
    fn of(moves: Moves, design: &Design) -> Option<Self> {
        let change = moves.change(design)?;
        Some(Self {
            sizes: sizes(&change),
            movement: movement(&change),
            moves,
            change,
        })
    }

    /// Fewest sizes, then least movement.
    fn order(&self, other: &Self) -> Ordering {
        let few = self.sizes.cmp(&other.sizes);
        few.then(self.movement.total_cmp(&other.movement))
    }
}

/// Sizes that a change moves; alike ones of several dials, moved alike, count once.
fn sizes(change: &Change) -> usize {
    let mut seen: Vec<(&Size, f64)> = Vec::new();
    let mut others = 0;
    for step in &change.steps {
        let Step::Resize { size, from, to } = step else {
            others += 1;
            continue;
        };
        let by = to - from;
        let again = |(other, moved): &(&Size, f64)| other.alike(*size) && (moved - by).abs() < 1e-6;
        // a digit follows the positions
        if !matches!(size, Size::Digit(_)) && !seen.iter().any(again) {
            seen.push((size, by));
        }
    }
    seen.len() + others
}

/// How far all sizes move together.
fn movement(change: &Change) -> f64 {
    let steps = change.steps.iter().map(|step| match step {
        Step::Resize {
            size: Size::Digit(_),
            ..
        } => 0.0,
        Step::Resize { from, to, .. } => (to - from).abs(),
        Step::LeaveOutSlot { .. }
        | Step::PlateSawn(_)
        | Step::PlateGrain(_)
        | Step::SliderMaterial(_) => 1.0,
    });
    steps.sum()
}

impl Job<'_> {
    /// Looks for one size, then for two, then for more, from what was begun best.
    fn search(&mut self) {
        let Some(first) = self.start(Moves::default()) else {
            return;
        };
        self.try_remedies(&first);
        let mut begun = self.look(&first);
        let mut beginnings = BEGINNINGS;
        for _ in 1..MOST_SIZES {
            if self.best.is_some() || self.trials.over() {
                return;
            }
            begun.sort_by(Start::order);
            begun.dedup_by(|one, other| one.price == other.price);
            begun.truncate(beginnings);
            let mut next = Vec::new();
            for start in begun {
                next.extend(self.look(&start));
            }
            begun = next;
            beginnings = FURTHER_BEGINNINGS;
        }
    }

    /// What mends a check that fails may mend everything.
    fn try_remedies(&mut self, first: &Start) {
        let failing: Vec<_> = first
            .proof
            .checks
            .iter()
            .filter(|check| fails(check))
            .collect();
        if failing.len() > FEW_CHECKS || faulty(&first.proof) {
            return;
        }
        self.trials.limit(FOR_REMEDIES);
        for check in failing {
            if let Some(trial) = best(self.original, &first.proof, check, &mut self.trials) {
                let after = trial.change.apply(self.original);
                if self.keeps(&after) && settled(&after, &trial.proof) {
                    self.record(trial.moves);
                }
            }
        }
        self.trials.limit(MOST_WORK);
    }

    /// The best change, with moves left out that are not needed and each of the others as short as goes.
    fn shortest(mut self) -> Option<Price> {
        // the rest of the search may have spent the work; this little is always done
        self.trials.more(FOR_REMEDIES);
        let mut best = self.best.take()?;
        let mut at = 0;
        while let Some((way, far)) = best.moves.0.get(at).cloned() {
            let with = |steps: i64| {
                let mut moves = best.moves.0.clone();
                if steps == 0 {
                    moves.remove(at);
                } else if let Some(place) = moves.get_mut(at) {
                    *place = (way.clone(), steps);
                }
                Price::of(Moves(moves), self.original)
            };
            let (mut short, mut enough, mut found) = (-1, far, None);
            while enough - short > 1 {
                // none at all first, then by halves
                let middle = if short < 0 {
                    0
                } else {
                    i64::midpoint(short, enough)
                };
                let price = with(middle).filter(|price| price.order(&best).is_lt());
                match price.filter(|price| self.is_settled(&price.change)) {
                    Some(price) => (enough, found) = (middle, Some(price)),
                    None => short = middle,
                }
            }
            let gone = enough == 0;
            best = found.unwrap_or(best);
            at += usize::from(!gone);
        }
        Some(best)
    }
}
