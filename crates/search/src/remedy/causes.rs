//! Several remedies, one after the other, for a check about what the marks do: it fails where other
//! checks do, often for more than one reason.

use super::line::Search;
use super::price::Trial;
use super::{fails, role, single};
use latchwright_proof::check::of_kind;
use latchwright_proof::results::Check;

/// Remedies that are put together at most. Fewer, and of eight dials that have a slot of their own to mend
/// some are left; more would be no remedy of a few sizes any more.
const MOST_REMEDIES: usize = 8;

/// Mends what makes `check` fail until it passes; `None` where that does not lead there.
pub(super) fn mended(search: &mut Search<'_, '_>, from: &Trial, check: &Check) -> Option<Trial> {
    if !role::of(check.kind).is_effect() {
        return None;
    }
    let mut mended = first_cause_mended(search, from)?;
    let mut remedies = 1;
    while fails(of_kind(&mended.proof, check.kind, check.dial())?) {
        if remedies == MOST_REMEDIES {
            return None;
        }
        mended = first_cause_mended(search, &mended)?;
        remedies += 1;
    }
    Some(mended)
}

/// The remedy of the first cause that has one.
fn first_cause_mended(search: &mut Search<'_, '_>, from: &Trial) -> Option<Trial> {
    let failing = from.proof.checks.iter().filter(|check| fails(check));
    let mut causes: Vec<(u8, &Check)> = failing
        .filter_map(|check| Some((role::of(check.kind).turn_as_cause()?, check)))
        .collect();
    // stable: those of one turn stay worst first
    causes.sort_by_key(|(turn, _)| *turn);
    let mut mended = causes
        .into_iter()
        .filter_map(|(_, cause)| single(search, from, cause));
    mended.next().map(|remedied| remedied.trial)
}
