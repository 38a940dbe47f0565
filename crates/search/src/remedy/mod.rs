//! Remedies: for a check that fails, the least change of the design that makes it pass, and for a design
//! that is not proven the least one after which it is ([`mend`]); both found by proving the changed design,
//! never by a formula.
//!
//! What helps a check, by its kind, stands in `ways`; a check that fails because others do is mended through
//! them (`causes`). Mending goes every way there is, one size before two (`mend`). Both go along one way at a
//! time (`line`), towards what has to pass (`aim`), and prove their designs through `trials`, which bounds
//! the work. The figures of a remedy are those that the changed design then has, to the last bit.

mod aim;
mod causes;
mod line;
mod mend;
mod part;
mod price;
mod role;
mod settled;
mod trials;
mod way;
mod ways;

use core::cell::RefCell;

use latchwright_model::change::{Change, Step};
use latchwright_model::{Design, Unit};
use latchwright_proof::check::of_kind;
use latchwright_proof::prove;
use latchwright_proof::results::{Check, Proof};
use latchwright_proof::verdict::CheckVerdict;

use crate::tick::{Progress, Tick};
use aim::Aim;
use line::{Search, Start};
use price::Trial;
use trials::Trials;
use way::Moves;

pub use mend::{Mend, mend};
pub use part::{Part, same};
pub use settled::{all_but_meant, settled};

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
    let mut hears = |done, _: Option<&Change>| {
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
    let mut hears = |done, _: Option<&Change>| tick(Progress { done, found: &[] }).is_continue();
    let mut trials = Trials::new(MOST_FOR_ONE, &mut hears);
    look(design, proof, check, &mut trials).filter(|_| !trials.stopped())
}

fn look(design: &Design, proof: &Proof, check: &Check, trials: &mut Trials<'_>) -> Option<Remedy> {
    let change = best(design, proof, check, trials)?.price.change;
    // what is told is of the whole proof, dials that only hold together counted
    let whole = prove(&change.apply(design));
    let others = others_failing(&whole, proof, check);
    let also = others.filter(|other| other.before.is_none());
    Some(Remedy {
        also: also.map(|other| other.after.clone()).collect(),
        margin: of_kind(&whole, check.kind, check.dial())?.margin,
        proven: whole.proven,
        change,
    })
}

/// The change that mends `check` and spoils least.
fn best(design: &Design, proof: &Proof, check: &Check, trials: &mut Trials<'_>) -> Option<Trial> {
    if !fails(check) || proof.blocks_building() {
        return None;
    }
    let mut search = Search::new(design, trials, &|_| true);
    let first = search.trial(Moves::default())?;
    let mut best = single(&mut search, &first, check);
    if best
        .as_ref()
        .is_none_or(|best| best.spoils != Spoils::NOTHING)
    {
        let through_causes = causes::mended(&mut search, &first, check);
        best = spoiling_less(best, through_causes, &first.proof, check);
    }
    best.map(|remedied| remedied.trial)
}

fn fails(check: &Check) -> bool {
    check.verdict != CheckVerdict::Passes
}

/// A change that mends a check, with what it spoils.
struct Remedied {
    trial: Trial,
    spoils: Spoils,
}

/// The best of the ways of mending this check by one of them.
fn single(search: &mut Search<'_, '_>, from: &Trial, check: &Check) -> Option<Remedied> {
    let start = Start::new(search.original, from, Aim::check(&from.proof, check));
    let mut best: Option<Remedied> = None;
    for way in ways::of(&start.design, &from.proof, check) {
        search.best = None;
        let mut line = search.begin(&start, &way);
        // marks may well follow later, where a length that does not move at once never will
        let later = check.unit != Unit::Millimetre;
        if !line.is_idle() || later && search.further_on(&start, &mut line) {
            search.follow(&start, &mut line);
        }
        best = spoiling_less(best, search.best.take(), &from.proof, check);
        if best
            .as_ref()
            .is_some_and(|best| best.spoils == Spoils::NOTHING)
        {
            break;
        }
    }
    best
}

/// The one that spoils less of what was before; the first of equals.
fn spoiling_less(
    first: Option<Remedied>,
    second: Option<Trial>,
    before: &Proof,
    check: &Check,
) -> Option<Remedied> {
    let second = second.map(|trial| Remedied {
        spoils: Spoils::of(&trial, before, check),
        trial,
    });
    let both = first.into_iter().chain(second);
    both.min_by_key(|remedied| remedied.spoils)
}

/// What a change does to all other checks, the worst first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct Spoils {
    /// How many passed and fail now, and one more for a change that is out of proportion.
    fail: usize,
    /// How many that failed before are further from passing now.
    worse: usize,
}

impl Spoils {
    const NOTHING: Self = Self { fail: 0, worse: 0 };

    fn of(trial: &Trial, before: &Proof, mended: &Check) -> Self {
        let mut spoils = Self::NOTHING;
        spoils.fail += usize::from(trial.price.change.steps.iter().any(is_drastic));
        for other in others_failing(&trial.proof, before, mended) {
            match other.before {
                None => spoils.fail += 1,
                Some(was) => spoils.worse += usize::from(other.after.margin < was.margin),
            }
        }
        spoils
    }
}

/// A check that fails after a change.
struct Other<'p> {
    after: &'p Check,
    /// As it failed before; `None` where it passed.
    before: Option<&'p Check>,
}

/// What fails after a change that was made for the sake of another check.
fn others_failing<'p>(
    after: &'p Proof,
    before: &'p Proof,
    mended: &Check,
) -> impl Iterator<Item = Other<'p>> {
    let (kind, dial) = (mended.kind, mended.dial());
    let other =
        move |check: &&Check| check.kind != kind || check.dial() != dial && !kind.told_once();
    let failing = after.checks.iter().filter(|check| fails(check));
    failing.filter(other).map(|after| Other {
        after,
        before: of_kind(before, after.kind, after.dial()).filter(|check| fails(check)),
    })
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
