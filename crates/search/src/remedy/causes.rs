//! Several remedies, one after the other, for a check about what the marks do: it fails where other
//! checks do, often for more than one reason.

use super::role;
use super::trials::{Trial, Trials};
use super::way::Moves;
use super::{fails, faulty, single};
use latchwright_model::Design;
use latchwright_model::change::Change;
use latchwright_proof::check::of_kind;
use latchwright_proof::results::{Check, Proof};

/// Remedies that are put together at most: eight dials may each have a slot of their own to mend. More
/// would be no remedy of a few sizes any more.
const MOST_REMEDIES: usize = 8;

/// Mends what makes `check` fail until it passes; `None` where that does not lead there.
pub(super) fn mended(
    design: &Design,
    proof: &Proof,
    check: &Check,
    trials: &mut Trials<'_>,
) -> Option<Trial> {
    if !role::of(check.kind).is_effect() {
        return None;
    }
    let (mut moves, mut change) = (Moves::default(), Change { steps: Vec::new() });
    let (mut design, mut proof) = (design.clone(), proof.clone());
    for _ in 0..MOST_REMEDIES {
        let next = first_cause_mended(&design, &proof, trials)?;
        design = next.change.apply(&design);
        change = change.then(next.change);
        moves.0.extend(next.moves.0);
        proof = trials.prove(&design)?;
        if faulty(&proof) {
            return None;
        }
        let mended = of_kind(&proof, check.kind, check.dial())?;
        if !fails(mended) {
            return Some(Trial {
                moves,
                change,
                proof,
            });
        }
    }
    None
}

/// The remedy of the first cause that has one.
fn first_cause_mended(design: &Design, proof: &Proof, trials: &mut Trials<'_>) -> Option<Trial> {
    let failing = proof.checks.iter().filter(|check| fails(check));
    let mut causes: Vec<(u8, &Check)> = failing
        .filter_map(|check| Some((role::of(check.kind).turn_as_cause()?, check)))
        .collect();
    // stable: those of one turn stay worst first
    causes.sort_by_key(|(turn, _)| *turn);
    let mut mended = causes
        .into_iter()
        .filter_map(|(_, cause)| single(design, proof, cause, trials));
    mended.next().map(|candidate| candidate.trial)
}
