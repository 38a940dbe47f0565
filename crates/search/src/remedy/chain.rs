//! Several remedies, one after the other, for a check about what the marks do: it fails where other
//! checks do, often for more than one reason.

use super::search::Tried;
use super::{Effort, faulty, single};
use latchwright_model::Design;
use latchwright_model::change::Change;
use latchwright_proof::CheckKind;
use latchwright_proof::check::of_kind;
use latchwright_proof::results::{Check, Proof};
use latchwright_proof::verdict::CheckVerdict;

/// Remedies that are put together at most.
const MOST_LINKS: usize = 8;

/// Checks that fail because of others: where a true slot stops its own pin, say, no tab stays held.
const EFFECTS: [CheckKind; 5] = [
    CheckKind::Undecided,
    CheckKind::TwinOpenings,
    CheckKind::IdleDial,
    CheckKind::Shaken,
    CheckKind::StaysHeld,
];

/// Checks whose failing leaves marks unsure or dials idle.
const CAUSES: [CheckKind; 3] = [CheckKind::KeySeats, CheckKind::LetsIn, CheckKind::StaysHeld];

/// Mends what makes `check` fail until it passes; `None` where that does not lead there.
pub(super) fn of(
    design: &Design,
    proof: &Proof,
    check: &Check,
    effort: &mut Effort,
) -> Option<Tried> {
    if !EFFECTS.contains(&check.kind) {
        return None;
    }
    let mut change = Change { steps: Vec::new() };
    let (mut design, mut proof) = (design.clone(), proof.clone());
    for _ in 0..MOST_LINKS {
        let link = next(&design, &proof, effort)?;
        design = link.apply(&design);
        change = change.then(link);
        proof = effort.prove(&design);
        if faulty(&proof) {
            return None;
        }
        let mended = of_kind(&proof, check.kind, check.dial())?;
        if mended.verdict == CheckVerdict::Passes {
            let margin = mended.margin;
            return Some(Tried {
                change,
                proof,
                margin,
            });
        }
    }
    None
}

/// The remedy of the first cause that has one.
fn next(design: &Design, proof: &Proof, effort: &mut Effort) -> Option<Change> {
    let causes = CAUSES.iter().flat_map(|kind| {
        let checks = proof.checks.iter();
        checks.filter(|check| check.kind == *kind && check.verdict != CheckVerdict::Passes)
    });
    let mut changes = causes.filter_map(|cause| single(design, proof, cause, effort));
    changes.next().map(|(_, tried)| tried.change)
}
