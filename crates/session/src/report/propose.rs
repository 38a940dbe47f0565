//! Proposals and why there are none, in words and for programs.

use core::fmt::Write as _;

use latchwright_model::Units;
use latchwright_search::propose::{Finer, Frontier, Kind, Nothing, Proposal};
use serde_json::{Value, json};

use super::verdict_sentence;
use crate::units::show_length_unit;
use crate::words::demands::nearest_in_words;
use crate::words::nothing::{nothing_reason, nothing_sentence};
use latchwright_words::{capital, grouped};

/// What a kind of proposal is called.
pub fn kind_name(kind: Kind) -> &'static str {
    match kind {
        Kind::Roomiest => "Roomiest",
        Kind::MostSettings => "Most settings",
        Kind::Smallest => "Smallest lid",
    }
}

/// What it is best in, without capital and full stop.
pub fn kind_about(kind: Kind) -> &'static str {
    match kind {
        Kind::Roomiest => "most forgiving of errors",
        Kind::MostSettings => "as many settings as can be told apart",
        Kind::Smallest => "the least wood",
    }
}

/// A file name for it, without ending.
pub fn kind_file(kind: Kind) -> &'static str {
    match kind {
        Kind::Roomiest => "roomiest",
        Kind::MostSettings => "most-settings",
        Kind::Smallest => "smallest",
    }
}

/// What a step of better workmanship is called.
pub fn finer_name(finer: Finer) -> &'static str {
    match finer {
        Finer::Jig => "a jig for the bores",
        Finer::Marks => "finer reading marks",
        Finer::PrintedSlider => "a printed slider",
        Finer::QuarterSawn => "quarter-sawn stock",
    }
}

/// The figures of a proposal, a sentence each without full stop.
pub fn proposal_lines(proposal: &Proposal) -> Vec<String> {
    let design = &proposal.design;
    let say = |mm: f64| show_length_unit(mm, design.units);
    let marks: Vec<u32> = design.dials.iter().map(|dial| dial.positions).collect();
    let mut lines = vec![
        verdict_sentence(design, &proposal.proof),
        format!(
            "lid {} × {}, {}",
            say(design.plate.width),
            say(design.plate.depth),
            dials_of(&marks)
        ),
        format!(
            "every error could be {:.0} % larger before it fails",
            100.0 * proposal.room_to_spare.max(0.0)
        ),
    ];
    let bits: Vec<String> = proposal.bits.iter().map(|bit| say(*bit)).collect();
    lines.push(format!("bits and pins: {}", bits.join(", ")));
    lines
}

/// "4 dials of 10 marks", "2 dials of 6, 8 marks".
fn dials_of(marks: &[u32]) -> String {
    let plural = if marks.len() == 1 { "" } else { "s" };
    // "8, 8, 8" says no more than "8"
    let alike = marks.iter().all(|one| Some(one) == marks.first());
    let said = marks.iter().take(if alike { 1 } else { marks.len() });
    let said: Vec<String> = said.map(u32::to_string).collect();
    format!("{} dial{plural} of {} marks", marks.len(), said.join(", "))
}

/// All proposals as text.
pub fn proposals_text(proposals: &[Proposal]) -> String {
    let mut text = String::new();
    for proposal in proposals {
        let (name, about) = (kind_name(proposal.kind), kind_about(proposal.kind));
        // writing to a string cannot fail
        let _ = writeln!(text, "{name}: {about}");
        for line in proposal_lines(proposal) {
            let _ = writeln!(text, "  {line}");
        }
    }
    text
}

/// Why there are none, and what can be had, as text.
pub fn nothing_text(nothing: &Nothing) -> String {
    let mut text = format!("{}.\n", capital(&nothing_reason(nothing)));
    if !nothing.nearest.is_empty() {
        text.push_str("The nearest that can be had, each proven, with all else as you wish:\n");
    }
    for near in &nothing.nearest {
        let _ = writeln!(text, "  {}", nearest_in_words(&nothing.wishes, near));
    }
    text
}

/// All proposals for programs: lengths in mm.
pub fn proposals_json(proposals: &[Proposal]) -> Value {
    let each = proposals.iter().map(|proposal| {
        let design = &proposal.design;
        json!({
            "kind": kind_file(proposal.kind),
            "proven": proposal.proof.proven,
            "settings": proposal.settings.to_string(),
            "room": proposal.room_to_spare,
            "lid_mm": [design.plate.width, design.plate.depth],
            "marks": design.dials.iter().map(|dial| dial.positions).collect::<Vec<_>>(),
            "bits_mm": proposal.bits,
        })
    });
    json!({ "format": 1, "proposals": each.collect::<Vec<_>>() })
}

/// What more would buy, for programs: lengths in mm, rooms as shares, settings as text for they may be
/// many.
pub fn frontier_json(frontier: &Frontier) -> Value {
    let lids = frontier.lids.iter().map(|lid| {
        json!({
            "lid_mm": [lid.width, lid.depth],
            "settings": lid.settings.to_string(),
            "marks": lid.marks,
        })
    });
    let better = frontier.better.iter().map(|better| {
        json!({
            "name": finer_name(better.finer),
            "settings": [better.settings.0.to_string(), better.settings.1.to_string()],
            "room": [better.room.0, better.room.1],
        })
    });
    json!({
        "given_mm": [frontier.given.0, frontier.given.1],
        "lids": lids.collect::<Vec<_>>(),
        "most_marks": frontier.most_marks,
        "better": better.collect::<Vec<_>>(),
    })
}

/// Why there are none, for programs.
pub fn nothing_json(nothing: &Nothing) -> Value {
    let nearest = nothing.nearest.iter();
    let nearest: Vec<String> = nearest
        .map(|near| nearest_in_words(&nothing.wishes, near))
        .collect();
    json!({ "format": 1, "proposals": [], "why": nothing_sentence(nothing), "nearest": nearest })
}

/// What lids of other sizes and better workmanship would buy, as text.
pub fn frontier_text(frontier: &Frontier, units: Units) -> String {
    let say = |mm: f64| show_length_unit(mm, units);
    let mut text = "Settings that can be told apart, with as many dials as it takes\n".to_owned();
    for lid in &frontier.lids {
        let yours = if (lid.width, lid.depth) == frontier.given {
            "your lid, "
        } else {
            ""
        };
        let (width, depth) = (say(lid.width), say(lid.depth));
        let (settings, dials) = (grouped(lid.settings), dials_of(&lid.marks));
        let _ = writeln!(text, "  {yours}{width} × {depth}: {settings}, {dials}");
    }
    if let Some(most) = frontier.most_marks {
        let _ = writeln!(text, "  a single dial on your lid: {most} marks at most");
    }
    if !frontier.better.is_empty() {
        text.push_str("What one step of better work buys, with the dials you ask for\n");
    }
    for better in &frontier.better {
        let (before, after) = better.settings;
        let settings = match (after, before) {
            (0, 0) => "nothing that is proven, as now".to_owned(),
            (0, _) => "nothing that is proven".to_owned(),
            (_, 0) => format!("{} settings instead of nothing", grouped(after)),
            _ => instead(&grouped(after), &grouped(before), "settings"),
        };
        let room = match better.room {
            (Some(before), Some(after)) => {
                let share = |room: f64| format!("{:.0} %", 100.0 * room.max(0.0));
                let errors = instead(&share(after), &share(before), "larger");
                format!("; errors could be {errors}")
            }
            _ => String::new(),
        };
        let _ = writeln!(text, "  {}: {settings}{room}", finer_name(better.finer));
    }
    text
}

/// "12 settings instead of 8", or "8 settings, as now".
fn instead(after: &str, before: &str, what: &str) -> String {
    if after == before {
        format!("{after} {what}, as now")
    } else {
        format!("{after} {what} instead of {before}")
    }
}
