//! The whole proof of one design, from its faults to the lock-state table.

use crate::bounds::{DialBounds, SliderBounds, Terms};
use crate::check::{self, Sums, captive_margin, free_margin, rest_hold_margin};
use crate::count::count;
use crate::fault::{Fault, Place, Severity};
use crate::model::Design;
use crate::proof::{CheckVerdict, DialProof, Proof, Verdict};
use crate::season::Drift;
use crate::states::{LockStates, Slides, State, StateRow, Sure};
use crate::validate::{MAX_DIALS, faults};
use crate::verdict::{DialJudge, judge_dial};

/// Proves a design: verdicts, counts, checks and states.
///
/// Never fails: what is wrong with the design is listed in [`Proof::faults`], and nothing is
/// promised where a fault touches it.
pub fn prove(design: &Design) -> Proof {
    let faults = faults(design);
    let drift = Drift::of(design).unwrap_or_else(Drift::none);
    let slider = SliderBounds::of(design, &drift, Terms::All);
    let bounds = dial_bounds(design, &slider, &drift);
    let dials = verdicts_with(design, &bounds, &faults);
    let settings = count(&dials);
    let sums = Sums {
        design,
        slider,
        drift: &drift,
        dials: bounds,
        proofs: &dials,
    };
    let numbers_hold = numbers_hold(&faults);
    let checks = if numbers_hold {
        check::all(&sums)
    } else {
        Vec::new()
    };
    let states = states(&sums, numbers_hold);
    let sound = faults.iter().all(|fault| fault.severity != Severity::Error);
    let proven = sound
        && settings.opens == 1
        && settings.unsure == 0
        && settings.locks == settings.total - 1
        && checks
            .iter()
            .all(|check| check.verdict == CheckVerdict::Passes)
        && states.rows.iter().all(|row| row.as_meant);
    Proof {
        faults,
        dials,
        settings,
        checks,
        states,
        proven,
    }
}

/// The verdicts alone, without checks: what a drag needs.
pub fn verdicts(design: &Design) -> Vec<DialProof> {
    let drift = Drift::of(design).unwrap_or_else(Drift::none);
    let slider = SliderBounds::of(design, &drift, Terms::All);
    verdicts_with(
        design,
        &dial_bounds(design, &slider, &drift),
        &faults(design),
    )
}

fn dial_bounds(design: &Design, slider: &SliderBounds, drift: &Drift) -> Vec<DialBounds> {
    let looked_at = design.dials.iter().take(MAX_DIALS);
    looked_at
        .map(|dial| DialBounds::of(design, dial, slider, drift, Terms::All))
        .collect()
}

fn verdicts_with(design: &Design, bounds: &[DialBounds], faults: &[Fault]) -> Vec<DialProof> {
    let errors = || {
        faults
            .iter()
            .filter(|fault| fault.severity == Severity::Error)
    };
    let all_trusted = !errors().any(|fault| touches_all(fault.place));
    design
        .dials
        .iter()
        .zip(bounds)
        .enumerate()
        .map(|(index, (dial, bounds))| {
            let trusted = all_trusted && !errors().any(|fault| fault.dial() == Some(index));
            judge_dial(
                &DialJudge::new(design, dial, *bounds),
                design.digit(index),
                trusted,
            )
        })
        .collect()
}

/// A fault in one of these parts leaves nothing to promise about any dial.
fn touches_all(place: Place) -> bool {
    !matches!(place, Place::Dial(_) | Place::Slot(..) | Place::Card)
}

/// Whether sums can be made at all: every number means something.
fn numbers_hold(faults: &[Fault]) -> bool {
    let bad = [
        "not-a-number",
        "size-not-positive",
        "out-of-range",
        "unknown-wood",
        "number-of-dials",
    ];
    !faults.iter().any(|fault| bad.contains(&fault.code))
}

fn yes_or_perhaps(margin: f64) -> Sure {
    if margin >= 0.0 {
        Sure::Yes
    } else {
        Sure::Perhaps
    }
}

/// The lock-state table of this design.
fn states(sums: &Sums<'_>, numbers_hold: bool) -> LockStates {
    let counts = count(sums.proofs);
    let sure = |yes: bool, answer: Sure| {
        if yes && numbers_hold {
            answer
        } else {
            Sure::Perhaps
        }
    };
    let opening = counts.opens > 0;
    let clears = free_margin(sums) >= 0.0;
    let turns_at_rest = sums.dials.iter().all(|dial| dial.rest_gap() >= 0.0);
    let captive = (0..sums.dials.len())
        .all(|dial| captive_margin(sums, dial).is_some_and(|margin| margin >= 0.0));
    let covered = yes_or_perhaps(rest_hold_margin(sums)) == Sure::Yes;
    let all_wrong_hold = counts.unsure == 0 && counts.total > counts.opens && covered;
    let goes = |yes: bool, answer: Slides| {
        if yes && numbers_hold {
            answer
        } else {
            Slides::Perhaps
        }
    };
    let row = |state, lid_lifts, slider, dials_turn| {
        let as_meant =
            lid_lifts != Sure::Perhaps && slider != Slides::Perhaps && dials_turn != Sure::Perhaps;
        StateRow {
            state,
            lid_lifts,
            slider,
            dials_turn,
            as_meant,
        }
    };
    let rows = [
        row(
            State::Free,
            sure(clears, Sure::Yes),
            goes(opening, Slides::Forward),
            sure(captive, Sure::No),
        ),
        row(
            State::Shut,
            sure(covered, Sure::No),
            goes(opening, Slides::Whole),
            sure(turns_at_rest, Sure::Yes),
        ),
        row(
            State::Locked,
            sure(all_wrong_hold, Sure::No),
            goes(all_wrong_hold && holding_only(sums), Slides::ToTheStop),
            sure(turns_at_rest, Sure::Yes),
        ),
        row(
            State::OnTheWay,
            // held while shut, out when back: in between the tab decides
            sure(covered && clears, Sure::No),
            goes(opening, Slides::Whole),
            sure(captive, Sure::No),
        ),
    ];
    LockStates { rows }
}

/// Whether every dial has a mark that stops the slider.
fn holding_only(sums: &Sums<'_>) -> bool {
    sums.proofs
        .iter()
        .all(|dial| dial.marks.iter().any(|mark| mark.verdict == Verdict::Holds))
}
