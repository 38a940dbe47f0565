//! A proof for a person at a terminal. Nothing is said by colour.

use std::fmt::Write as _;

use latchwright_model::{Design, Unit, Units};
use latchwright_proof::states::StateRow;
use latchwright_proof::{Check, CheckVerdict, DialProof, Proof, Verdict};
use latchwright_search::Remedy;

use super::FileNotes;
use super::season::season_text;
use super::verdict::verdict_sentence;
use super::{Sought, remedy_sentence};
use latchwright_proof::check::Contributor;
use latchwright_words::{advice, check_title, contributor, slides_word, state_name, sure_word};
use latchwright_words::{fault_sentence, figure, grouped, length};

/// Columns the table of marks may have.
const WIDTH: usize = 78;

/// Of what decides a check, only the largest are shown.
const MOST_PARTS: usize = 5;

/// The whole report, ending in a line break.
///
/// `remedies` are those of [`latchwright_search::remedy::all`], or none where they were not looked
/// for.
pub fn proof_text(
    design: &Design,
    proof: &Proof,
    remedies: &[Option<Remedy>],
    notes: &FileNotes<'_>,
) -> String {
    let mut out = format!("{}\n\n", one_line(&design.title));
    let proven = proof.proven && !notes.blocks_proof();
    let head = if proven { "PROVEN" } else { "NOT PROVEN" };
    push(
        &mut out,
        &format!("{head}. {}.", one_line(&verdict_sentence(design, proof))),
    );
    if notes.blocks_proof() {
        push(
            &mut out,
            "Something in the file is not understood (see Notices), so nothing is promised.",
        );
    }
    let settings = &proof.settings;
    let _ = writeln!(
        out,
        "Settings: {} in all; opens {}, locks {}, unsure {}.",
        grouped(settings.total),
        grouped(settings.opens),
        grouped(settings.locks),
        grouped(settings.unsure)
    );
    marks(design, proof, &mut out);
    states(proof, &mut out);
    out.push_str(&season_text(design));
    checks(design, proof, remedies, &mut out);
    notices(proof, design.units, notes, &mut out);
    out
}

fn push(out: &mut String, line: &str) {
    out.push_str(line);
    out.push('\n');
}

/// A name that may hold line breaks, on one line.
fn one_line(text: &str) -> String {
    text.split(char::is_control)
        .filter(|part| !part.is_empty())
        .collect::<Vec<_>>()
        .join(" ")
}

fn marks(design: &Design, proof: &Proof, out: &mut String) {
    if proof.dials.is_empty() {
        return;
    }
    push(
        out,
        "\nMarks: + passes, # holds, ? unsure; [ ] the combination",
    );
    for (index, dial) in proof.dials.iter().enumerate() {
        let _ = writeln!(out, "  Dial {}", index + 1);
        let label = |mark: usize| {
            let mark = u32::try_from(mark).unwrap_or(u32::MAX);
            design
                .dials
                .get(index)
                .map_or_else(|| mark.to_string(), |dial| dial.label(mark))
        };
        let cell = |(mark, proof): (usize, &latchwright_proof::MarkProof)| {
            let cell = format!("{}{}", one_line(&label(mark)), symbol(proof.verdict));
            let chosen = u32::try_from(mark).is_ok_and(|mark| mark == dial.digit);
            if chosen {
                format!("[{cell}]")
            } else {
                format!(" {cell} ")
            }
        };
        wrapped(dial.marks.iter().enumerate().map(cell), out);
        let _ = writeln!(out, "    {}", dial_summary(design, dial));
    }
}

fn wrapped(cells: impl Iterator<Item = String>, out: &mut String) {
    let mut line = String::from("   ");
    for cell in cells {
        if line.chars().count() + cell.chars().count() > WIDTH && !line.trim().is_empty() {
            push(out, line.trim_end());
            line = String::from("   ");
        }
        line.push_str(&cell);
    }
    push(out, line.trim_end());
}

fn dial_summary(design: &Design, dial: &DialProof) -> String {
    let spare = dial
        .marks
        .iter()
        .filter(|mark| mark.verdict == Verdict::Holds)
        .filter_map(|mark| mark.hold_margin)
        .min_by(f64::total_cmp);
    let holds = spare.map_or_else(
        || "no mark holds".to_owned(),
        |mm| {
            format!(
                "holds with at least {} of tab to spare",
                length(mm, design.units)
            )
        },
    );
    format!(
        "{holds}; passes within ±{:.1}° of its mark, holds beyond ±{:.1}°",
        dial.sure_window_deg, dial.possible_window_deg
    )
}

fn symbol(verdict: Verdict) -> char {
    match verdict {
        Verdict::Passes => '+',
        Verdict::Holds => '#',
        Verdict::Unsure => '?',
    }
}

fn states(proof: &Proof, out: &mut String) {
    push(out, "\nStates       lid lifts   slider moves   dials turn");
    for StateRow {
        state,
        lid_lifts,
        slider,
        dials_turn,
        as_meant,
    } in proof.states.rows
    {
        let (name, moves) = (state_name(state), slides_word(slider));
        let meant = if as_meant {
            ""
        } else {
            "not as a latch should"
        };
        let line = format!(
            "  {name:<11}{:<12}{moves:<15}{:<12}{meant}",
            sure_word(lid_lifts),
            sure_word(dials_turn)
        );
        push(out, line.trim_end());
    }
}

fn checks(design: &Design, proof: &Proof, remedies: &[Option<Remedy>], out: &mut String) {
    let units = design.units;
    if proof.checks.is_empty() {
        return;
    }
    push(out, "\nChecks, worst first");
    for (index, check) in proof.checks.iter().enumerate() {
        let verdict = match check.verdict {
            CheckVerdict::Fails => "FAILS ",
            CheckVerdict::Unsure => "unsure",
            CheckVerdict::Passes => "passes",
        };
        let _ = writeln!(
            out,
            "  {verdict}  {}{}",
            one_line(&check_title(check, design)),
            figures(check, units)
        );
        if !check.decided_by.is_empty() {
            let parts: Vec<_> = check
                .decided_by
                .iter()
                .take(MOST_PARTS)
                .map(|(what, amount)| part(*what, *amount, check.unit, units))
                .collect();
            let _ = writeln!(out, "          decided by {}", parts.join(", "));
        }
        if check.verdict != CheckVerdict::Passes {
            let sentence = remedy_sentence(design, check, Sought::of(remedies, index));
            let _ = writeln!(out, "          {}", one_line(&sentence));
        } else if check.advises() {
            let _ = writeln!(out, "          {}", one_line(&advice(check, design)));
        }
    }
}

/// One of the things that decide a check.
fn part(what: Contributor, amount: f64, unit: Unit, units: Units) -> String {
    format!("{} {}", contributor(what), figure(amount, unit, units))
}

/// The figure of a check beside its limit; nothing for one that is a plain yes or no.
fn figures(check: &Check, units: Units) -> String {
    if check.unit == Unit::Count && check.limit == 0.0 {
        return String::new();
    }
    let show = |value| figure(value, check.unit, units);
    let beyond = if check.margin < 0.0 {
        format!("short by {}", show(check.margin).trim_start_matches('−'))
    } else {
        format!("{} to spare", show(check.margin))
    };
    format!(
        ": {} where {} is needed, {beyond}",
        show(check.value),
        show(check.limit)
    )
}

fn notices(proof: &Proof, units: Units, notes: &FileNotes<'_>, out: &mut String) {
    if proof.faults.is_empty() && notes.unknown.is_empty() && notes.notices.is_empty() {
        return;
    }
    push(out, "\nNotices");
    for fault in &proof.faults {
        let word = if fault.is_error() { "FAULT " } else { "" };
        let sentence = fault_sentence(fault, units);
        let _ = writeln!(out, "  {word}{}", one_line(&sentence));
    }
    for field in notes.unknown {
        let _ = writeln!(out, "  UNKNOWN {field}");
    }
    for notice in notes.notices {
        let _ = writeln!(out, "  {}", one_line(&notice.message));
    }
}
