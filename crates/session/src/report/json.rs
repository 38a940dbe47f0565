//! A proof for other programs. Lengths are millimetres whatever the design's unit; marks and the
//! digit count from 0 as in files, dials from 1 as in words.

use latchwright_model::{Design, Fault, Unit, Units};
use latchwright_proof::built::BuiltLatch;
use latchwright_proof::built::MeasureUnit;
use latchwright_proof::states::{LockStates, Slides, State, StateRow, Sure};
use latchwright_proof::together::Group;
use latchwright_proof::worst::witness::Witness;
use latchwright_proof::{
    Check, CheckVerdict, DialProof, MarkProof, Proof, StopsAt, SureStop, Verdict,
};
use latchwright_search::Remedy;
use latchwright_words::fault_sentence;
use serde_json::{Value, json};

use super::FileNotes;
use super::remedy::remedy_json;
use super::season::season_json;
use super::{Sought, remedy_sentence};

/// Whole numbers beyond this are no longer exact in most readers of JSON: 2^53.
const MOST_EXACT: u128 = 1 << 53;

/// Form of the answer; grows by one when a field changes its meaning.
const FORM: u32 = 1;

/// The proof as a JSON object.
///
/// `remedies` are those of [`latchwright_search::remedy::all`], or none where they were not looked
/// for.
pub fn proof_json(
    design: &Design,
    proof: &Proof,
    remedies: &[Option<Remedy>],
    notes: &FileNotes<'_>,
) -> Value {
    let settings = &proof.settings;
    let checks = proof.checks.iter().enumerate();
    // programs read millimetres, whatever the maker reads
    let in_mm = Design {
        units: Units::Millimetre,
        ..design.clone()
    };
    let checks = checks.map(|(index, found)| check(&in_mm, found, Sought::of(remedies, index)));
    json!({
        "format": FORM,
        "title": design.title,
        "proven": proof.proven && !notes.blocks_proof(),
        "settings": {
            "total": exact(settings.total),
            "opens": exact(settings.opens),
            "locks": exact(settings.locks),
            "unsure": exact(settings.unsure),
        },
        "together": proof.together.groups.iter().map(together).collect::<Vec<_>>(),
        "dials": proof.dials.iter().enumerate().map(dial).collect::<Vec<_>>(),
        "checks": checks.collect::<Vec<_>>(),
        "states": states(&proof.states),
        "season": season_json(design),
        "notices": notices(proof, notes),
    })
}

fn exact(count: u128) -> Value {
    match u64::try_from(count) {
        Ok(small) if count <= MOST_EXACT => json!(small),
        _ => json!(count.to_string()),
    }
}

fn dial((index, dial): (usize, &DialProof)) -> Value {
    json!({
        "dial": index + 1,
        "digit": dial.digit,
        "marks": dial.marks.iter().enumerate().map(mark).collect::<Vec<_>>(),
        "sure_window_deg": dial.sure_window_deg,
        "possible_window_deg": dial.possible_window_deg,
    })
}

fn mark((index, mark): (usize, &MarkProof)) -> Value {
    json!({
        "mark": index,
        "verdict": verdict_word(mark.verdict),
        "stops_at": stops_at(mark.reach.stops_at),
        "reach_mm": mark.reach.travel,
        "creep_mm": mark.creep,
        "hold_margin_mm": mark.hold_margin,
    })
}

fn check(design: &Design, check: &Check, sought: Sought<'_>) -> Value {
    json!({
        "check": check.kind.code(),
        "dial": check.dial().map(|dial| dial + 1),
        "value": check.value,
        "limit": check.limit,
        "margin": check.margin,
        "unit": match check.unit {
            Unit::Millimetre => "mm",
            Unit::Degree => "deg",
            Unit::Newton => "N",
            Unit::Ratio => "ratio",
            Unit::Megapascal => "MPa",
            Unit::Count => "count",
        },
        "verdict": match check.verdict {
            CheckVerdict::Passes => "passes",
            CheckVerdict::Fails => "fails",
            CheckVerdict::Unsure => "unsure",
        },
        "decided_by": check.decided_by.iter().map(|(what, amount)| json!([what.code(), amount])).collect::<Vec<_>>(),
        "remedy": remedy_sentence(design, check, sought),
        "change": remedy_json(sought.found()),
        "worst_box": check.worst.as_ref().map(worst_box),
    })
}

/// The figures of a check alone, with that of its worst box.
pub(super) fn check_json(check: &Check) -> Value {
    json!({
        "check": check.kind.code(),
        "value": check.value,
        "limit": check.limit,
        "margin": check.margin,
        "worst_value": check.worst.as_ref().map(|worst| worst.value),
    })
}

/// The worst real box found, with every number that is needed to build it again.
fn worst_box(witness: &Witness) -> Value {
    json!({
        "value": witness.value,
        "numbers": numbers_json(&witness.latch, witness.dials.iter().copied()),
    })
}

/// The numbers of a built latch and of the dials named (from 0).
pub(super) fn numbers_json(
    latch: &BuiltLatch,
    dials: impl IntoIterator<Item = usize>,
) -> Vec<Value> {
    let numbers = latch.numbers(dials).into_iter();
    numbers
        .map(|number| {
            json!({
                "dial": number.dial.map(|dial| dial + 1),
                "slot": number.slot.map(|slot| slot + 1),
                "name": number.measure.code(),
                "value": number.value,
                "unit": unit_code(number.measure.unit()),
            })
        })
        .collect()
}

/// The unit of a number of a built latch, for programs; empty for a share.
const fn unit_code(unit: MeasureUnit) -> &'static str {
    match unit {
        MeasureUnit::Celsius => "°C",
        MeasureUnit::Percent => "%",
        MeasureUnit::Millimetre => "mm",
        MeasureUnit::Degree => "°",
        MeasureUnit::Share => "",
    }
}

/// Dials that hold together where none of them does alone.
fn together(group: &Group) -> Value {
    let stop = |(dial, stop): &(usize, SureStop)| {
        let at = match stop {
            SureStop::Rim => "rim",
            SureStop::Floor(_) => "floor",
        };
        json!({ "dial": dial + 1, "stops_at": at })
    };
    json!({
        "stops": group.stops.iter().map(stop).collect::<Vec<_>>(),
        "hold_margin_mm": group.margin,
        "settings": exact(group.settings),
    })
}

fn states(states: &LockStates) -> Vec<Value> {
    let row = |row: &StateRow| {
        json!({
            "state": match row.state {
                State::Free => "free",
                State::Shut => "shut",
                State::Locked => "locked",
                State::OnTheWay => "on-the-way",
            },
            "lid_lifts": sure(row.lid_lifts),
            "slider": match row.slider {
                Slides::Forward => "forward",
                Slides::Whole => "whole",
                Slides::ToTheStop => "to-the-stop",
                Slides::Perhaps => "perhaps",
            },
            "dials_turn": sure(row.dials_turn),
            "as_meant": row.as_meant,
        })
    };
    states.rows.iter().map(row).collect()
}

/// Faults first, then what the file had too much, then what it left out; each a sentence.
fn notices(proof: &Proof, notes: &FileNotes<'_>) -> Vec<String> {
    let fault = |fault: &Fault| {
        // as all of this answer: in millimetres
        let sentence = fault_sentence(fault, Units::Millimetre);
        if fault.is_error() {
            format!("error: {sentence}")
        } else {
            sentence
        }
    };
    let faults = proof.faults.iter().map(fault);
    let unknown = notes.unknown.iter().map(|field| format!("error: {field}"));
    faults
        .chain(unknown)
        .chain(notes.notices.iter().map(ToString::to_string))
        .collect()
}

pub(super) fn verdict_word(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Passes => "passes",
        Verdict::Holds => "holds",
        Verdict::Unsure => "unsure",
    }
}

fn stops_at(stops_at: StopsAt) -> &'static str {
    match stops_at {
        StopsAt::Free => "free",
        StopsAt::Rim => "rim",
        StopsAt::Mouth => "mouth",
        StopsAt::Wall => "wall",
        StopsAt::Floor => "floor",
    }
}

fn sure(sure: Sure) -> &'static str {
    match sure {
        Sure::Yes => "yes",
        Sure::No => "no",
        Sure::Perhaps => "perhaps",
    }
}
