//! By feel: how much the latch tells an attentive hand. It informs and never fails.

use super::advice::Nothing;
use super::{About, Advice, CheckKind, Contributor, Draft, Sums};
use crate::results::Check;
use crate::verdict::{DialProof, StopsAt, Verdict};

/// Steps below this, mm, are told as none: they would show as 0.00.
const FELT: f64 = 0.005;

/// How far the nominal slider moves on when the dial that binds first comes right, mm: from its
/// stop to the next dial's; 0 where two stop it alike, so that only their errors tell them apart.
pub fn first_step(proofs: &[DialProof], travel: f64) -> f64 {
    let mut stops: Vec<f64> = proofs.iter().filter_map(stop).collect();
    stops.sort_by(f64::total_cmp);
    match stops.as_slice() {
        [first, second, ..] => second - first,
        [only] => travel - only,
        [] => 0.0,
    }
}

/// Where the plain rim of this dial stops the nominal slider, mm.
fn stop(dial: &DialProof) -> Option<f64> {
    let wrong = dial
        .marks
        .iter()
        .filter(|mark| mark.verdict != Verdict::Passes && mark.reach.stops_at != StopsAt::Free);
    wrong.map(|mark| mark.reach.travel).reduce(f64::min)
}

/// How many tries an attentive person needs, one dial after the other: the sum of the positions.
pub(super) fn check(sums: &Sums<'_>) -> Check {
    let tries: usize = sums.proofs.iter().map(|dial| dial.marks.len()).sum();
    let step = first_step(sums.proofs, sums.design.slider.travel);
    let draft = Draft {
        kind: CheckKind::ByFeel,
        about: About::Latch,
        value: tries as f64,
        limit: 0.0,
        decided_by: vec![(Contributor::Tries, tries as f64)],
    };
    draft.advised(Advice::Nothing(if step >= FELT {
        Nothing::MovesOn { by: step }
    } else {
        Nothing::StopsAlike
    }))
}
