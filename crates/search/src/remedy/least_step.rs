//! How far to go along one way of mending a check: the least step of the maker's grid at which it passes.

use super::trials::{Trial, Trials};
use super::way::{Moves, Way};
use super::{faulty, role};
use latchwright_model::Design;
use latchwright_model::Unit;
use latchwright_proof::check::of_kind;
use latchwright_proof::results::{Check, Proof};
use latchwright_proof::verdict::CheckVerdict;

/// Proofs that one way may take. Fewer, and a way whose figure bends is given up before its least step
/// is known; more, and ways that lead nowhere keep the maker waiting.
const MOST_PROOFS: u32 = 12;

/// Proofs in which a count may stay where it is before a way is given up: it may well jump later, where
/// a length that does not move at once never will. Fewer, and marks that are far off are not mended.
const MOST_STILL: u32 = 6;

/// Proofs after which a bracket is halved instead of guessed at: a figure that bends makes guesses creep.
const MOST_GUESSES: u32 = 6;

/// What one proof said about the check.
enum Outcome {
    /// Passes, with this much of the guiding figure to spare.
    Passes(Box<Trial>, f64),
    /// Fails by this much of the guiding figure.
    Fails(f64),
    /// The changed design has faults, or no such check: this is too far.
    TooFar,
}

/// The least step along `way` after which `check` of `proof`, the proof of `design`, passes; `None` where
/// none is found.
pub(super) fn least_step(
    design: &Design,
    proof: &Proof,
    check: &Check,
    way: &Way,
    trials: &mut Trials<'_>,
) -> Option<Trial> {
    let now = role::figure(proof, check);
    let most_still = match check.unit {
        Unit::Count => MOST_STILL,
        _ => 0,
    };
    let mut bracket = Bracket::new(now);
    let mut next = whole_steps(-now / way.worth(design)).max(1);
    let mut still = 0;
    for proofs in 1..=MOST_PROOFS {
        let Some(outcome) = look(design, check, (way, next), trials) else {
            break;
        };
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
    bracket.passes.map(|(.., trial)| *trial)
}

/// What becomes of `check` so many steps along a way; `None` once the search is over.
fn look(
    design: &Design,
    check: &Check,
    (way, steps): (&Way, i64),
    trials: &mut Trials<'_>,
) -> Option<Outcome> {
    let Some(change) = way.change(design, steps) else {
        return Some(Outcome::TooFar);
    };
    let proof = trials.prove(&change.apply(design))?;
    let found = of_kind(&proof, check.kind, check.dial());
    let Some((margin, verdict)) = found.map(|check| (check.margin, check.verdict)) else {
        return Some(Outcome::TooFar);
    };
    if faulty(&proof) {
        return Some(Outcome::TooFar);
    }
    let figure = role::figure(&proof, check);
    Some(if verdict == CheckVerdict::Passes && margin >= 0.0 {
        let moves = Moves::default().and(way, steps);
        let trial = Trial {
            moves,
            change,
            proof,
        };
        Outcome::Passes(Box::new(trial), figure.max(0.0))
    } else {
        Outcome::Fails(figure)
    })
}

/// What is known along one way: a step that fails, and one beyond it that passes or is too far.
struct Bracket {
    /// The furthest step that fails, with its figure.
    fails: (i64, f64),
    /// What the last step that failed gained, for each step.
    gained: f64,
    /// The nearest step that passes, with its figure.
    passes: Option<(i64, f64, Box<Trial>)>,
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
            Outcome::Passes(trial, figure) => self.passes = Some((step, figure, trial)),
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
        whole_steps(-figure / gained)
    } else {
        step
    };
    step.saturating_add(missing.clamp(1, step.saturating_mul(3)))
}

/// Where the figure should reach 0 on the line through a step that fails and one that passes; never
/// one of the two.
fn between((low, short): (i64, f64), (high, spare): (i64, f64)) -> i64 {
    let share = -short / (spare - short);
    let guess = low.saturating_add(whole_steps(share * (high - low) as f64));
    guess.clamp(low + 1, high - 1)
}

/// The next whole number of steps.
fn whole_steps(wanted: f64) -> i64 {
    #[expect(
        clippy::cast_possible_truncation,
        reason = "kept within a million, and nothing for no number"
    )]
    let whole = wanted.clamp(-1e6, 1e6).ceil() as i64;
    whole
}
