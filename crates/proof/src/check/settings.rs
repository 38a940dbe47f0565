//! What the table of verdicts itself must be: one setting that opens, no dial that is idle.

use super::advice::{Estimate, Nothing, OtherMarks, Warning};
use super::window::neighbour_opens;
use super::{About, Advice, CheckKind, Contributor, Draft, Sums};
use crate::results::Check;
use crate::verdict::{DialProof, Verdict};

pub(super) fn checks(sums: &Sums<'_>) -> Vec<Check> {
    let mut checks: Vec<Check> = (0..sums.proofs.len())
        .filter_map(|dial| idle(sums, dial))
        .collect();
    checks.push(openings(sums));
    checks.push(undecided(sums));
    checks
}

/// A dial none of whose marks holds adds nothing to the latch.
fn idle(sums: &Sums<'_>, index: usize) -> Option<Check> {
    let proof = sums.proofs.get(index)?;
    let dial = sums.design.dials.get(index)?;
    let holds = proof
        .marks
        .iter()
        .filter(|mark| mark.verdict == Verdict::Holds)
        .count();
    let never_met = dial.pin.gap >= sums.design.slider.travel;
    let draft = Draft {
        kind: CheckKind::IdleDial,
        about: About::Dial(index),
        value: holds as f64,
        limit: 1.0,
        decided_by: vec![(Contributor::MarksThatHold, holds as f64)],
    };
    Some(draft.advised(if holds > 0 {
        Advice::Nothing(Nothing::HoldsAt {
            marks: holds,
            of: proof.marks.len(),
        })
    } else if never_met {
        Advice::Change(Estimate::GapBelowTravel {
            gap: dial.pin.gap,
            travel: sums.design.slider.travel,
        })
    } else {
        Advice::Change(Estimate::NarrowSlotsOrFewerPositions)
    }))
}

/// Exactly one setting opens.
fn openings(sums: &Sums<'_>) -> Check {
    let opens = sums.counts.opens;
    let draft = Draft {
        kind: CheckKind::TwinOpenings,
        about: About::Latch,
        value: if opens <= 1 {
            opens as f64 - 1.0
        } else {
            1.0 - opens as f64
        },
        limit: 0.0,
        decided_by: vec![(Contributor::SettingsThatOpen, opens as f64)],
    };
    draft.advised(match opens {
        1 => Advice::Nothing(Nothing::OneOpens),
        0 => Advice::Warning(Warning::NoneOpens),
        _ if sums.proofs.iter().any(neighbour_opens) => {
            Advice::Change(Estimate::NarrowSlotForTwins(others_that_open(sums)))
        }
        _ => Advice::Change(Estimate::LeaveOutSecondSlot(others_that_open(sums))),
    })
}

/// Marks of one dial that are told as opening beside its digit, at most.
const MOST_TOLD: usize = 6;

/// The marks beside the digits that open as well, dial by dial.
fn others_that_open(sums: &Sums<'_>) -> Vec<OtherMarks> {
    let others = |(dial, proof): (usize, &DialProof)| {
        let marks: Vec<u32> = (0_u32..)
            .zip(&proof.marks)
            .filter(|(mark, found)| found.verdict == Verdict::Passes && *mark != proof.digit)
            .map(|(mark, _)| mark)
            .take(MOST_TOLD)
            .collect();
        (!marks.is_empty()).then_some(OtherMarks {
            dial,
            own: proof.digit,
            marks,
            every: false,
        })
    };
    sums.proofs.iter().enumerate().filter_map(others).collect()
}

/// No setting is left unsure.
fn undecided(sums: &Sums<'_>) -> Check {
    let unsure = sums.counts.unsure;
    let at = sums.proofs.iter().enumerate().find_map(|(dial, proof)| {
        let mut marks = (0_u32..).zip(&proof.marks);
        let (mark, _) = marks.find(|(_, mark)| mark.verdict == Verdict::Unsure)?;
        Some((dial, mark))
    });
    let draft = Draft {
        kind: CheckKind::Undecided,
        about: About::Latch,
        value: -(unsure as f64),
        limit: 0.0,
        decided_by: vec![(Contributor::SettingsUnsure, unsure as f64)],
    };
    draft.advised(match at {
        _ if unsure == 0 => Advice::Nothing(Nothing::NoneUnsure),
        Some((dial, mark)) => Advice::Change(Estimate::DecideMark { dial, mark }),
        None => Advice::Warning(Warning::SeeFaults),
    })
}
