//! Remedies: for a check that fails, the least change of the design that makes it pass, and for a design
//! that is not proven the least one after which it is ([`mend`]); both found by proving the changed design,
//! never by a formula.
//!
//! What helps a check, by its kind, stands in `ways`; how far to go one way is looked for in `least_step`;
//! a check that fails because others do is mended through them (`causes`). Mending goes every way there is,
//! one size before two (`mend`). A search proves its designs through `trials`, which bounds the work. The
//! figures of a remedy are those that the changed design then has, to the last bit.

mod causes;
mod least_step;
mod mend;
mod part;
mod role;
mod trials;
mod way;
mod ways;

use core::cell::RefCell;

use latchwright_model::Design;
use latchwright_model::Unit;
use latchwright_model::change::{Change, Step};
use latchwright_model::fault::Fault;
use latchwright_proof::check::of_kind;
use latchwright_proof::prove;
use latchwright_proof::results::{Check, Proof};
use latchwright_proof::verdict::CheckVerdict;

use crate::tick::{Progress, Tick};
use least_step::least_step;
use trials::{Trial, Trials};

pub use mend::{Mend, all_but_meant, mend, settled};
pub use part::{Part, same};

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

/// Work of [`all`], in cells of boxes: half a second. Less, and the last checks of a design that fails
/// nearly everywhere have no remedy yet; more, and the maker waits.
const MOST_WORK: usize = 100_000;

/// Work for one check. Less, and what fails for several reasons is not mended; more, and the first check
/// leaves the others nothing.
const MOST_FOR_ONE: usize = 40_000;

/// The remedies of the checks of `proof`, in the order of [`Proof::checks`].
///
/// A design that fails nearly everything is not searched to its end: the list then stops before the last
/// failing checks, and their turn comes when the first are mended. So it does where `tick`, which is told
/// the remedies so far, says stop.
pub fn all(
    design: &Design,
    proof: &Proof,
    tick: &mut Tick<'_, Option<Remedy>>,
) -> Vec<Option<Remedy>> {
    let remedies = RefCell::new(Vec::new());
    let mut hears = |done| {
        let found = &remedies.borrow();
        tick(Progress { done, found }).is_continue()
    };
    let mut trials = Trials::new(MOST_WORK, &mut hears);
    for check in &proof.checks {
        trials.limit(MOST_FOR_ONE);
        if fails(check) && trials.over() {
            break;
        }
        let found = look(design, proof, check, &mut trials);
        if trials.stopped() {
            break;
        }
        remedies.borrow_mut().push(found);
    }
    remedies.into_inner()
}

/// The remedy of a check of `proof`, which is the proof of `design`.
///
/// The ways of mending it are tried in the order of what they cost a maker who has not cut any wood yet,
/// what is printed first; the first that makes nothing else fail, nor anything that fails already worse,
/// is taken. Where each one does, it is the one that spoils the fewest checks. A check about what the marks
/// do that no single way mends cleanly is mended through its causes.
///
/// `None` for a check that passes, for a design with faults (those come first), where nothing that is tried
/// leads to a design without faults that passes this check, and where `tick` says stop.
pub fn find(
    design: &Design,
    proof: &Proof,
    check: &Check,
    tick: &mut Tick<'_, Remedy>,
) -> Option<Remedy> {
    let mut hears = |done| tick(Progress { done, found: &[] }).is_continue();
    let mut trials = Trials::new(MOST_FOR_ONE, &mut hears);
    look(design, proof, check, &mut trials).filter(|_| !trials.stopped())
}

fn look(design: &Design, proof: &Proof, check: &Check, trials: &mut Trials<'_>) -> Option<Remedy> {
    let trial = best(design, proof, check, trials)?;
    // what is told is of the whole proof, dials that only hold together counted
    let whole = prove(&trial.change.apply(design));
    let margin = of_kind(&whole, check.kind, check.dial())?.margin;
    Some(Remedy {
        also: Spoiled::by(&trial.change, &whole, proof, check).fails,
        change: trial.change,
        margin,
        proven: whole.proven,
    })
}

/// The change that mends `check` and spoils least.
fn best(design: &Design, proof: &Proof, check: &Check, trials: &mut Trials<'_>) -> Option<Trial> {
    if !fails(check) || faulty(proof) {
        return None;
    }
    let alone = trials.prove(design)?;
    let mut best = single(design, &alone, check, trials);
    if !best.as_ref().is_some_and(Candidate::is_clean) {
        let through_causes = causes::mended(design, &alone, check, trials);
        let candidate = through_causes.map(|trial| Candidate::new(trial, &alone, check));
        best = less_spoiled(best, candidate);
    }
    best.map(|candidate| candidate.trial)
}

fn fails(check: &Check) -> bool {
    check.verdict != CheckVerdict::Passes
}

fn faulty(proof: &Proof) -> bool {
    proof.faults.iter().any(Fault::is_error)
}

/// A change that mends a check, with what it spoils.
struct Candidate {
    trial: Trial,
    spoiled: Spoiled,
}

impl Candidate {
    fn new(trial: Trial, before: &Proof, check: &Check) -> Self {
        let spoiled = Spoiled::by(&trial.change, &trial.proof, before, check);
        Self { trial, spoiled }
    }

    fn is_clean(&self) -> bool {
        self.spoiled.rank() == (0, 0)
    }
}

/// The best of the ways of mending this check by one of them.
fn single(
    design: &Design,
    proof: &Proof,
    check: &Check,
    trials: &mut Trials<'_>,
) -> Option<Candidate> {
    let mut best: Option<Candidate> = None;
    for way in ways::of(design, proof, check) {
        let trial = least_step(design, proof, check, &way, trials);
        best = less_spoiled(best, trial.map(|trial| Candidate::new(trial, proof, check)));
        if best.as_ref().is_some_and(Candidate::is_clean) {
            break;
        }
    }
    best
}

/// The one that spoils less; the first of equals.
fn less_spoiled(first: Option<Candidate>, second: Option<Candidate>) -> Option<Candidate> {
    match (first, second) {
        (Some(first), Some(second)) if second.spoiled.rank() < first.spoiled.rank() => Some(second),
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
    fn by(change: &Change, after: &Proof, before: &Proof, mended: &Check) -> Self {
        let mut spoiled = Self {
            fails: Vec::new(),
            worse: 0,
            drastic: change.steps.iter().any(is_drastic),
        };
        let told_once = mended.kind.told_once();
        let other = |check: &&Check| {
            check.kind != mended.kind || check.dial() != mended.dial() && !told_once
        };
        let failing = after.checks.iter().filter(|check| fails(check));
        for check in failing.filter(other) {
            match of_kind(before, check.kind, check.dial()).filter(|check| fails(check)) {
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
