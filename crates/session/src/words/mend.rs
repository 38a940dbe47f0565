//! What mends a design, or why nothing does, as sentences.

use latchwright_model::{Design, Fault};
use latchwright_proof::{Proof, Verdict};
use latchwright_search::remedy::{Mend, all_but_meant};
use latchwright_words::{capital, change_sentence, grouped};

use crate::report::verdict_sentence;

/// What mends a design, in a sentence.
pub fn mend_sentence(design: &Design, mend: &Mend) -> String {
    let told = capital(&change_sentence(&mend.change, design.units));
    let after = mend.change.apply(design);
    let spare = verdict_sentence(&after, &mend.proof);
    if mend.proof.proven {
        format!("{told}: then it is proven. {spare}")
    } else {
        let twice = openings(&after, &mend.proof);
        format!("{told}: then all is proven but that {twice}. {spare}")
    }
}

/// Why nothing was found that mends a design, or needs to be, as sentences; `cut` where some parts were
/// to stay as they are. `proof` is the design's own.
pub fn not_mended_sentences(design: &Design, proof: &Proof, cut: bool) -> String {
    if proof.proven {
        return "Proven as it is: there is nothing to mend.".to_owned();
    }
    if all_but_meant(design, proof) {
        let openings = openings(design, proof);
        return format!(
            "There is nothing to mend if the box is meant to open so: all is proven but that {openings}. \
             For a single opening, leave those slots out or make them blind."
        );
    }
    let verdict = verdict_sentence(design, proof);
    let faulty = proof.faults.iter().any(Fault::is_error);
    let more = match (faulty, cut) {
        (true, _) => "Mend the faults that are named under the proof first",
        (false, true) => {
            "Let more parts be made anew, or hold what must stay and have the rest proposed"
        }
        (false, false) => "Hold the sizes that must stay and have the rest proposed",
    };
    format!("No change of a few sizes was found that makes it proven. {verdict}. {more}.")
}

/// "2 settings open: on dial 2, marks 5 and 10 do, each by a slot of its own".
fn openings(design: &Design, proof: &Proof) -> String {
    let mut dials = Vec::new();
    for (number, (dial, found)) in (1..).zip(design.dials.iter().zip(&proof.dials)) {
        let marks = (0_u32..).zip(&found.marks);
        let open: Vec<String> = marks
            .filter(|(_, mark)| mark.verdict == Verdict::Passes)
            .map(|(mark, _)| dial.label(mark))
            .collect();
        if open.len() > 1 {
            dials.push(format!("dial {number} at {}", open.join(" and at ")));
        }
    }
    let settings = grouped(proof.settings.opens);
    format!(
        "{settings} settings open, by slots of their own: {}",
        dials.join(", ")
    )
}
