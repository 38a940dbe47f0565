//! Remedies: for a check that fails, the least change of the design that makes it pass, found by
//! proving the changed design, never by a formula.
//!
//! The figures of a remedy are those that the changed design then has, to the last bit. Finding one
//! takes some dozens of proofs, so it is no part of [`latchwright_proof::prove`].

mod chain;
mod every_way;
mod mend;
mod part;
mod search;
mod through;
mod way;
mod ways;

use latchwright_model::Design;
use latchwright_model::Unit;
use latchwright_model::change::{Change, Step};
use latchwright_model::fault::Fault;
use latchwright_proof::check::of_kind;
use latchwright_proof::prove_each_alone;
use latchwright_proof::results::{Check, Proof};
use latchwright_proof::verdict::CheckVerdict;

pub use mend::{Mend, all_but_meant, mend, settled};
pub use part::Part;
use search::{Search, Tried};

/// A change that makes one check pass, and what else comes of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Remedy {
    /// What to change.
    pub change: Change,
    /// The margin that the check has after the change, in its unit; never negative.
    pub margin: f64,
    /// Checks that pass now and would fail after the change, as they would then stand.
    pub also: Vec<Check>,
    /// Whether the whole latch is proven after the change.
    pub proven: bool,
}

/// Proofs of one dial after which [`all`] looks at no further check: a second or two.
const MOST_EFFORT: usize = 2_000;

/// Proofs of one dial after which one check is given up.
const MOST_FOR_ONE: usize = 1_200;

/// The remedies of the checks of `proof`, in the order of [`Proof::checks`].
///
/// A design that fails nearly everything is not searched to its end: the list then stops before
/// the last failing checks, and their turn comes when the first are mended.
pub fn all(design: &Design, proof: &Proof) -> Vec<Option<Remedy>> {
    let mut spent = 0;
    let mut remedies = Vec::new();
    for check in &proof.checks {
        if spent > MOST_EFFORT && check.verdict != CheckVerdict::Passes {
            break;
        }
        let mut effort = Effort::default();
        remedies.push(look(design, proof, check, &mut effort));
        spent += effort.dials;
    }
    remedies
}

/// What was proven so far.
#[derive(Default)]
struct Effort {
    /// Proofs, each as many times as its design has dials.
    dials: usize,
}

impl Effort {
    /// So much has been proven that one more way is not worth waiting for.
    fn spent(&self) -> bool {
        self.dials > MOST_FOR_ONE
    }

    /// A proof in which dials that only hold together do not count yet: enough to see how far a
    /// change gets.
    fn prove(&mut self, design: &Design) -> Proof {
        self.dials += design.dials.len().max(1);
        prove_each_alone(design)
    }
}

/// The remedy of a check of `proof`, which is the proof of `design`.
///
/// The ways of mending it are tried in the order of what they cost a maker who has not cut any
/// wood yet, what is printed first; the first that makes nothing else fail, nor anything that fails
/// already worse, is taken. Where each one does, it is the one that spoils the fewest checks. A
/// check about what the marks do that no single way mends cleanly is mended through its causes.
///
/// `None` for a check that passes, for a design with faults (those come first), and where nothing
/// that is tried leads to a design without faults that passes this check.
pub fn find(design: &Design, proof: &Proof, check: &Check) -> Option<Remedy> {
    look(design, proof, check, &mut Effort::default())
}

fn look(design: &Design, proof: &Proof, check: &Check, effort: &mut Effort) -> Option<Remedy> {
    if check.verdict == CheckVerdict::Passes || faulty(proof) {
        return None;
    }
    let alone = effort.prove(design);
    let mut best = single(design, &alone, check, effort);
    if !best.as_ref().is_some_and(is_clean) {
        let chained = chain::of(design, &alone, check, effort);
        best = less_spoiled(best, chained.map(|tried| spoiling(tried, &alone, check)));
    }
    let tried = best?.1.whole(design, check)?;
    Some(Remedy {
        also: Spoiled::by(&tried, proof, check).fails,
        change: tried.change,
        margin: tried.margin,
        proven: tried.proof.proven,
    })
}

fn faulty(proof: &Proof) -> bool {
    proof.faults.iter().any(Fault::is_error)
}

type Spoiling = (Spoiled, Tried);

/// The best of the ways of mending this check, with what it spoils.
fn single(design: &Design, proof: &Proof, check: &Check, effort: &mut Effort) -> Option<Spoiling> {
    let mut best = None;
    let search = Search::new(design, proof, check);
    for way in ways::of(design, proof, check) {
        let tried = search.least(&way, effort);
        best = less_spoiled(best, tried.map(|tried| spoiling(tried, proof, check)));
        if best.as_ref().is_some_and(is_clean) {
            break;
        }
    }
    best
}

fn spoiling(tried: Tried, before: &Proof, check: &Check) -> Spoiling {
    (Spoiled::by(&tried, before, check), tried)
}

fn is_clean((spoiled, _): &Spoiling) -> bool {
    spoiled.rank() == (0, 0)
}

/// The one that spoils less; the first of equals.
fn less_spoiled(first: Option<Spoiling>, second: Option<Spoiling>) -> Option<Spoiling> {
    match (first, second) {
        (Some(first), Some(second)) if second.0.rank() < first.0.rank() => Some(second),
        (None, second) => second,
        (first, _) => first,
    }
}

/// What a change does to all other checks.
struct Spoiled {
    /// Those that passed and fail now.
    fails: Vec<Check>,
    /// How many that failed before are further from passing now.
    worse: usize,
    /// The change itself is out of proportion.
    drastic: bool,
}

impl Spoiled {
    fn by(tried: &Tried, before: &Proof, mended: &Check) -> Self {
        let mut spoiled = Self {
            fails: Vec::new(),
            worse: 0,
            drastic: tried.change.steps.iter().any(is_drastic),
        };
        let failing = |check: &&Check| check.verdict != CheckVerdict::Passes;
        let told_once = mended.kind.told_once();
        let other = |check: &&Check| {
            check.kind != mended.kind || check.dial() != mended.dial() && !told_once
        };
        for check in tried.proof.checks.iter().filter(failing).filter(other) {
            match of_kind(before, check.kind, check.dial()).filter(failing) {
                None => spoiled.fails.push(check.clone()),
                Some(was) if check.margin < was.margin => spoiled.worse += 1,
                Some(_) => {}
            }
        }
        spoiled
    }

    fn rank(&self) -> (usize, usize) {
        (self.fails.len() + usize::from(self.drastic), self.worse)
    }
}

/// Whether a size changes so much that a maker would rather do anything else: by more than half of
/// what it was and 3 mm, a place by 20 mm.
///
/// # Source
/// Common practice, no source.
fn is_drastic(step: &Step) -> bool {
    let Step::Resize { size, from, to } = step else {
        return false;
    };
    let by = (to - from).abs();
    size.unit() == Unit::Millimetre
        && if size.is_place() {
            by > 20.0
        } else {
            by > 3.0 && by > from.abs() / 2.0
        }
}
