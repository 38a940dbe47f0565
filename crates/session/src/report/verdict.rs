//! The verdict in one sentence.

use latchwright_model::{Design, Units};
use latchwright_proof::{CheckVerdict, Proof, Verdict};

use latchwright_words::{check_title, fault_at_place, grouped, length};

/// The least tab that is still held beyond what is required, over every setting that locks, mm.
///
/// A setting with one dial off has only that dial to hold it, so the least is that of the worst mark
/// that holds. `None` if none does.
pub fn spare_mm(proof: &Proof) -> Option<f64> {
    proof
        .dials
        .iter()
        .flat_map(|dial| &dial.marks)
        .filter(|mark| mark.verdict == Verdict::Holds)
        .filter_map(|mark| mark.hold_margin)
        .min_by(f64::total_cmp)
}

/// What the proof comes to, in one sentence without a trailing stop.
pub fn verdict_sentence(design: &Design, proof: &Proof) -> String {
    if let Some(sentence) = faults(proof, design.units) {
        return sentence;
    }
    let settings = &proof.settings;
    let total = grouped(settings.total);
    if settings.opens == 1 && settings.unsure == 0 {
        let spare = spare_mm(proof).map(|mm| length(mm, design.units));
        let spare = spare.map_or_else(String::new, |spare| {
            format!(", with at least {spare} of tab to spare")
        });
        if proof.proven {
            return format!("One setting of {total} opens; every other one locks{spare}");
        }
        return format!(
            "One setting of {total} opens and every other one locks, {}",
            checks(design, proof)
        );
    }
    let opens = match settings.opens {
        0 => format!("No setting of {total} is sure to open"),
        1 => format!("One setting of {total} opens"),
        more => format!(
            "{} settings of {total} open, where one should",
            grouped(more)
        ),
    };
    match settings.unsure {
        0 => opens,
        1 => format!("{opens}; one more can neither be promised to lock nor to open"),
        more => {
            let more = grouped(more);
            format!("{opens}; {more} more can neither be promised to lock nor to open")
        }
    }
}

fn faults(proof: &Proof, units: Units) -> Option<String> {
    let mut errors = proof.faults.iter().filter(|fault| fault.is_error());
    let first = fault_at_place(errors.next()?, units);
    Some(match errors.count() {
        0 => format!("Nothing can be promised: {first}"),
        more => format!(
            "Nothing can be promised with {} faults; the first: {first}",
            more + 1
        ),
    })
}

fn checks(design: &Design, proof: &Proof) -> String {
    let mut open = proof
        .checks
        .iter()
        .filter(|check| check.verdict != CheckVerdict::Passes);
    let Some(worst) = open.next() else {
        return "but the latch does not keep all its states".to_owned();
    };
    match open.count() {
        0 => format!(
            "but one check does not pass: {}",
            check_title(worst, design)
        ),
        more => format!(
            "but {} checks do not pass; the worst: {}",
            more + 1,
            check_title(worst, design)
        ),
    }
}
