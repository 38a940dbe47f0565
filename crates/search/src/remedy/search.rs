//! How far to go along one way of mending: the least step of the maker's grid at which the check
//! passes.

use super::way::Way;
use super::{Effort, faulty};
use latchwright_model::Design;
use latchwright_model::Unit;
use latchwright_model::change::Change;
use latchwright_proof::CheckKind;
use latchwright_proof::check::of_kind;
use latchwright_proof::prove;
use latchwright_proof::results::{Check, Proof};
use latchwright_proof::verdict::{CheckVerdict, Verdict};

/// Proofs that one way may take.
const MOST_PROOFS: u32 = 12;

/// Proofs in which a count may stay where it is before a way is given up: it may well jump later,
/// where a length that does not move at once never will.
const MOST_STILL: u32 = 6;

/// Proofs after which a bracket is halved instead of guessed at.
const MOST_GUESSES: u32 = 6;

/// A changed design's proof.
pub(super) struct Tried {
    pub change: Change,
    pub proof: Proof,
    /// Of the check in question.
    pub margin: f64,
}

impl Tried {
    /// The same change of `design` with its whole proof, dials that only hold together counted.
    pub fn whole(self, design: &Design, check: &Check) -> Option<Self> {
        if self.proof.settings.unsure == 0 {
            return Some(self);
        }
        let proof = prove(&self.change.apply(design));
        let margin = of_kind(&proof, check.kind, check.dial())?.margin;
        Some(Self {
            proof,
            margin,
            ..self
        })
    }
}

/// What one proof said about the check.
enum Outcome {
    /// Passes, with this much of the guiding figure to spare.
    Passes(Box<Tried>, f64),
    /// Fails by this much of the guiding figure.
    Fails(f64),
    /// The changed design has faults, or no such check: this is too far.
    TooFar,
}

/// Looks for what makes one check of one design pass.
pub(super) struct Search<'a> {
    design: &'a Design,
    check: &'a Check,
    /// The guiding figure as it is now.
    now: f64,
}

impl<'a> Search<'a> {
    pub(super) fn new(design: &'a Design, proof: &Proof, check: &'a Check) -> Self {
        Self {
            design,
            check,
            now: guide(proof, check),
        }
    }

    /// The least step along `way` that passes; `None` where none is found.
    pub(super) fn least(&self, way: &Way, effort: &mut Effort) -> Option<Tried> {
        let most_still = match self.check.unit {
            Unit::Count => MOST_STILL,
            _ => 0,
        };
        let mut bracket = Bracket::new(self.now);
        let mut next = steps(-self.now / way.worth(self.design)).max(1);
        let mut still = 0;
        for proofs in 1..=MOST_PROOFS {
            if effort.spent() {
                break;
            }
            let outcome = self.look(way, next, effort);
            still += u32::from(bracket.stands_still(&outcome));
            if still > most_still {
                break;
            }
            bracket.narrow(next, outcome);
            match bracket.next(proofs < MOST_GUESSES) {
                Some(step) => next = step,
                None => break,
            }
        }
        bracket.passes.map(|(.., tried)| *tried)
    }

    fn look(&self, way: &Way, step: i64, effort: &mut Effort) -> Outcome {
        let Some(change) = way.change(self.design, step) else {
            return Outcome::TooFar;
        };
        let proof = effort.prove(&change.apply(self.design));
        let found = of_kind(&proof, self.check.kind, self.check.dial());
        let Some((margin, verdict)) = found.map(|check| (check.margin, check.verdict)) else {
            return Outcome::TooFar;
        };
        if faulty(&proof) {
            return Outcome::TooFar;
        }
        let figure = guide(&proof, self.check);
        if verdict == CheckVerdict::Passes && margin >= 0.0 {
            let tried = Tried {
                change,
                proof,
                margin,
            };
            Outcome::Passes(Box::new(tried), figure.max(0.0))
        } else {
            Outcome::Fails(figure)
        }
    }
}

/// What is known along one way: a step that fails, and one beyond it that passes or is too far.
struct Bracket {
    /// The furthest step that fails, with its figure.
    fails: (i64, f64),
    /// What the last step that failed gained, for each step.
    gained: f64,
    /// The nearest step that passes, with its figure.
    passes: Option<(i64, f64, Box<Tried>)>,
    /// The nearest step that is too far.
    too_far: Option<i64>,
}

impl Bracket {
    fn new(now: f64) -> Self {
        Self {
            fails: (0, now),
            gained: 0.0,
            passes: None,
            too_far: None,
        }
    }

    /// Whether this outcome says that going on leads nowhere.
    fn stands_still(&self, outcome: &Outcome) -> bool {
        let gains_nothing = matches!(outcome, Outcome::Fails(figure) if *figure <= self.fails.1);
        self.passes.is_none() && gains_nothing
    }

    fn narrow(&mut self, step: i64, outcome: Outcome) {
        match outcome {
            Outcome::Passes(tried, figure) => self.passes = Some((step, figure, tried)),
            Outcome::TooFar => self.too_far = Some(step),
            Outcome::Fails(figure) => {
                self.gained = (figure - self.fails.1) / (step - self.fails.0) as f64;
                self.fails = (step, figure);
            }
        }
    }

    /// The step to look at next, by a guess along straight lines or by halving; `None` where
    /// nothing is left between.
    fn next(&self, guess: bool) -> Option<i64> {
        let (low, short) = self.fails;
        let passes = self
            .passes
            .as_ref()
            .map(|(step, figure, _)| (*step, *figure));
        let Some(end) = passes.map(|(step, _)| step).or(self.too_far) else {
            return Some(onwards(low, short, self.gained));
        };
        if end - low <= 1 {
            return None;
        }
        Some(match passes {
            Some(passes) if guess => between(self.fails, passes),
            _ => i64::midpoint(low, end),
        })
    }
}

/// Where the figure should reach 0 beyond `step`, if it goes on as it came; never more than four
/// times as far.
fn onwards(step: i64, figure: f64, gained: f64) -> i64 {
    let missing = if gained > 0.0 {
        steps(-figure / gained)
    } else {
        step
    };
    step.saturating_add(missing.clamp(1, step.saturating_mul(3)))
}

/// Where the figure should reach 0 on the line through a step that fails and one that passes; never
/// one of the two.
fn between((low, short): (i64, f64), (high, spare): (i64, f64)) -> i64 {
    let share = -short / (spare - short);
    let guess = low.saturating_add(steps(share * (high - low) as f64));
    guess.clamp(low + 1, high - 1)
}

/// The next whole number of steps.
fn steps(wanted: f64) -> i64 {
    #[expect(
        clippy::cast_possible_truncation,
        reason = "kept within a million, and nothing for no number"
    )]
    let whole = wanted.clamp(-1e6, 1e6).ceil() as i64;
    whole
}

/// A figure that grows towards 0 as the check comes nearer to passing: its margin, or, for a check
/// that counts marks, by how much in mm the mark that decides is short.
fn guide(proof: &Proof, check: &Check) -> f64 {
    let marks = |wanted: Option<usize>| {
        let dials = proof.dials.iter().enumerate();
        dials
            .filter(move |(dial, _)| wanted.is_none_or(|wanted| wanted == *dial))
            .flat_map(|(_, dial)| &dial.marks)
            .filter(|mark| mark.verdict == Verdict::Unsure)
            .map(|mark| mark.margin)
    };
    let short = match check.kind {
        // the worst mark must be decided, the best one must hold
        CheckKind::Undecided | CheckKind::Shaken => marks(None).min_by(f64::total_cmp),
        CheckKind::IdleDial => marks(check.dial()).max_by(f64::total_cmp),
        _ => of_kind(proof, check.kind, check.dial()).map(|check| check.margin),
    };
    short.filter(|short| short.is_finite()).unwrap_or(-1.0)
}
