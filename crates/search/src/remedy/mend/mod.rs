//! Mending a whole design: the smallest change found after which it is proven, with parts that are cut
//! already left alone.
//!
//! One size is tried before two, and of sizes that do it the one that moves least. What `remedy` finds for
//! a check that fails is tried too, so that neither refuses what the other offers. Every step is judged by
//! the whole proof.

mod every_way;
mod look;

use core::slice;

use super::aim::{Aim, Left};
use super::line::{Search, Start};
use super::part::{Part, same};
use super::price::Trial;
use super::trials::Trials;
use super::way::Moves;
use super::{best, fails, settled};
use crate::tick::{Progress, Tick};
use every_way::may_be_made;
use latchwright_model::Design;
use latchwright_model::change::Change;
use latchwright_proof::prove;
use latchwright_proof::results::Proof;
use look::look;

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

/// Work for the remedies of the checks that fail, a share of it, and as much for making the best change
/// shorter. Less, and a remedy of several sizes is not found; more, and it is missing where every way is gone.
const FOR_REMEDIES: usize = 20_000;

/// Checks that fail at most where their remedies are asked for: of more, one remedy mends few. Fewer, and
/// a remedy that mends all is refused; more, and the work goes where every way is gone again.
const FEW_CHECKS: usize = 3;

/// Beginnings from which a second size is looked for. Fewer, and of two sizes that are off neither may be
/// among them; more, and the work is spent before a third is looked for.
const BEGINNINGS: usize = 16;

/// Beginnings from which a third size and further ones are looked for. Fewer, and one that leads nowhere
/// ends the search; more, and the work is spent before it ends.
const FURTHER_BEGINNINGS: usize = 2;

/// Sizes that are moved at most. Fewer, and a box that is off all over is given up; more, and a maker is told
/// to move what a new proposal would serve better.
const MOST_SIZES: usize = 5;

/// Looks for the smallest change: fewest sizes, then least movement. `cut` is left as it is, and so are
/// slots that are cut right through to open at a second mark ([`super::all_but_meant`]).
///
/// `None` for a design that is [`settled`], and where nothing was found. The work is bounded by a count, so
/// that the answer is the same on every machine; `tick` is told the best so far, and where it says stop,
/// that is the answer.
pub fn mend(design: &Design, cut: &[Part], tick: &mut Tick<'_, Change>) -> Option<Mend> {
    if settled(design, &prove(design)) {
        return None;
    }
    let mut hears = |done, best: Option<&Change>| {
        let found = best.map_or(&[][..], slice::from_ref);
        tick(Progress { done, found }).is_continue()
    };
    let mut trials = Trials::new(MOST_WORK, &mut hears);
    let keeps = |change: &Change| {
        let after = change.apply(design);
        cut.iter().all(|part| same(design, &after, *part))
    };
    let found = smallest(design, &keeps, &mut trials)?;
    // the rest of the search may have spent the work; this little is always done
    trials.grant(FOR_REMEDIES);
    let price = shortened(design, &keeps, &mut trials, found).price;
    let after = price.change.apply(design);
    let proof = prove(&after);
    settled(&after, &proof).then_some(Mend {
        change: price.change,
        sizes: price.sizes,
        movement: price.movement,
        proof,
    })
}

/// Looks for one size, then for two, then for more, from what was begun best.
fn smallest(
    design: &Design,
    keeps: &dyn Fn(&Change) -> bool,
    trials: &mut Trials<'_>,
) -> Option<Trial> {
    let usual = Design::default();
    let allows = |change: &Change| {
        let mut steps = change.steps.iter();
        steps.all(|step| may_be_made(step, &usual)) && keeps(change)
    };
    let mut search = Search::new(design, trials, &allows);
    let first = search.trial(Moves::default())?;
    search.best = of_remedies(design, &first, keeps, search.trials);
    let mut begun = look(&mut search, &first);
    let mut beginnings = BEGINNINGS;
    for _ in 1..MOST_SIZES {
        if search.best.is_some() || search.trials.over() {
            break;
        }
        begun.sort_by(|one, other| {
            let left = Left::of(&one.proof).order(&Left::of(&other.proof));
            left.then(one.price.order(&other.price))
        });
        begun.dedup_by(|one, other| one.price == other.price);
        begun.truncate(beginnings);
        let further = begun.iter().flat_map(|from| look(&mut search, from));
        begun = further.collect();
        beginnings = FURTHER_BEGINNINGS;
    }
    search.best
}

/// What mends a check that fails may mend everything: the cheapest remedy that does.
fn of_remedies(
    design: &Design,
    first: &Trial,
    keeps: &dyn Fn(&Change) -> bool,
    trials: &mut Trials<'_>,
) -> Option<Trial> {
    let failing = first.proof.checks.iter().filter(|check| fails(check));
    if failing.clone().count() > FEW_CHECKS {
        return None;
    }
    trials.limit(FOR_REMEDIES);
    let remedies = failing.filter_map(|check| best(design, &first.proof, check, trials));
    let mends = |trial: &Trial| {
        let change = &trial.price.change;
        keeps(change) && settled(&change.apply(design), &trial.proof)
    };
    let cheapest = remedies
        .filter(mends)
        .min_by(|one, other| one.price.order(&other.price));
    trials.limit(MOST_WORK);
    cheapest
}

/// The same change with moves left out that are not needed, and each of the others as short as goes.
fn shortened(
    design: &Design,
    keeps: &dyn Fn(&Change) -> bool,
    trials: &mut Trials<'_>,
    mut shortest: Trial,
) -> Trial {
    let mut search = Search::new(design, trials, keeps);
    let (mut at, moves) = (0, shortest.price.moves.0.len());
    for _ in 0..moves {
        // each of them in its turn comes last
        let mut others = shortest.price.moves.clone();
        let last = others.0.remove(at);
        search.best = None;
        let Some(from) = search.trial(others) else {
            break;
        };
        if settled(&from.price.change.apply(design), &from.proof) {
            shortest = from;
            continue;
        }
        let start = Start::new(design, &from, Aim::whole(&from.proof));
        let none = start.here();
        if let Some(all) = search.look(&start, &last.way, last.steps)
            && all.near.reached
        {
            search.least(&start, &last.way, none, all);
            shortest = search.best.take().unwrap_or(shortest);
        } else {
            at += 1;
        }
    }
    shortest
}
