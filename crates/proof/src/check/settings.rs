//! What the table of verdicts itself must be: one setting that opens, no dial that is idle.

use super::CheckKind;
use itertools::Itertools;

use super::Sums;
use super::window::neighbour_opens;
use crate::results::Check;
use crate::verdict::{CheckVerdict, Verdict};
use latchwright_model::Unit;

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
    Some(counted(
        (CheckKind::IdleDial, Some(index)),
        format!("Dial {} holds at some mark", index + 1),
        (holds as f64, 1.0),
        ("marks that hold", holds as f64),
        if holds > 0 {
            format!(
                "nothing to do: it holds at {holds} of {} marks",
                proof.marks.len()
            )
        } else if never_met {
            format!(
                "its disc never reaches its pin: bring the gap from {:.2} well below the travel of {:.2} mm",
                dial.pin.gap, sums.design.slider.travel
            )
        } else {
            "narrow its slots, or give it fewer positions, until plain rim meets the pin between marks"
                .to_owned()
        },
    ))
}

/// Exactly one setting opens.
fn openings(sums: &Sums<'_>) -> Check {
    let opens = sums.counts.opens;
    let value = if opens <= 1 {
        opens as f64 - 1.0
    } else {
        1.0 - opens as f64
    };
    counted(
        (CheckKind::TwinOpenings, None),
        "Exactly one setting opens".to_owned(),
        (value, 0.0),
        ("settings that open", opens as f64),
        match opens {
            1 => "nothing to do: one setting opens".to_owned(),
            0 => "no setting can be promised to open: see which slot does not let its pin in"
                .to_owned(),
            _ if sums.proofs.iter().any(neighbour_opens) => format!(
                "{}: narrow the slot or take fewer positions",
                others_that_open(sums)
            ),
            _ => format!(
                "{}: leave out the second slot or make it blind",
                others_that_open(sums)
            ),
        },
    )
}

/// The marks beside the digits that open as well, dial by dial, in labels.
fn others_that_open(sums: &Sums<'_>) -> String {
    let pairs = sums.proofs.iter().zip(&sums.design.dials).enumerate();
    pairs
        .filter_map(|(index, (proof, dial))| {
            let others: Vec<String> = (0_u32..)
                .zip(&proof.marks)
                .filter(|(mark, found)| found.verdict == Verdict::Passes && *mark != proof.digit)
                .map(|(mark, _)| dial.label(mark))
                .take(6)
                .collect();
            let own = dial.label(proof.digit);
            Some(match others.as_slice() {
                [] => return None,
                [one] => format!("on dial {}, mark {one} opens as well as {own}", index + 1),
                more => format!(
                    "on dial {}, marks {} open as well as {own}",
                    index + 1,
                    more.join(", ")
                ),
            })
        })
        .join("; ")
}

/// No setting is left unsure.
fn undecided(sums: &Sums<'_>) -> Check {
    let unsure = sums.counts.unsure;
    let at = sums
        .proofs
        .iter()
        .zip(&sums.design.dials)
        .enumerate()
        .find_map(|(index, (proof, dial))| {
            let mark = proof
                .marks
                .iter()
                .position(|mark| mark.verdict == Verdict::Unsure)?;
            Some((index, dial.label(u32::try_from(mark).unwrap_or(0))))
        });
    counted(
        (CheckKind::Undecided, None),
        "Every setting can be promised one way or the other".to_owned(),
        (-(unsure as f64), 0.0),
        ("settings unsure", unsure as f64),
        match at {
            _ if unsure == 0 => "nothing to do: none is unsure".to_owned(),
            Some((dial, label)) => format!(
                "dial {} at {label} can be promised neither way, because its pin may meet a mouth's \
                 corner or too little tab stays held: fewer positions, a narrower slot or finer \
                 workmanship decide it",
                dial + 1
            ),
            None => "see the faults of the design".to_owned(),
        },
    )
}

fn counted(
    (kind, dial): (CheckKind, Option<usize>),
    title: String,
    (value, limit): (f64, f64),
    decided_by: (&'static str, f64),
    remedy: String,
) -> Check {
    let margin = value - limit;
    let verdict = if margin >= 0.0 {
        CheckVerdict::Passes
    } else {
        CheckVerdict::Fails
    };
    Check {
        kind,
        dial,
        title,
        value,
        limit,
        margin,
        unit: Unit::Count,
        verdict,
        decided_by: vec![decided_by],
        remedy,
        worst: None,
    }
}
