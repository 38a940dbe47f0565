//! Boards and what is cut from them; sums of rounded lengths.

use latchwright_model::Place;
use latchwright_workshop::Role;
use latchwright_workshop::boards::{GrainRound, PlanFault, PlanNote, Shortfall};
use latchwright_workshop::inch::{RoundedSum, Rule};
use latchwright_workshop::joinery::SidePlace;

/// What is missing of one wood, and what for.
pub fn shortfall(short: &Shortfall, rule: Rule) -> String {
    format!(
        "{} of {} {} thick and {} wide are missing, for: {}",
        rule.say_at_least(short.board.length),
        short.board.wood,
        rule.say(short.board.thickness),
        rule.say_at_least(short.board.width),
        each_once(&short.parts)
    )
}

/// What else is to be known of a plan.
pub fn plan_note(note: &PlanNote, rule: Rule) -> String {
    match note {
        PlanNote::Buy { boards, board } => format!(
            "buy {boards} of {}: at least {} thick, {} wide and {} long",
            board.wood,
            rule.say(board.thickness),
            rule.say_at_least(board.width),
            rule.say_at_least(board.length)
        ),
        PlanNote::Plane { part, from, to } => format!(
            "plane the {} from {} to {}",
            part.name(),
            rule.say(*from),
            rule.say(*to)
        ),
    }
}

/// What cannot be cut at all: place, message and remedy.
pub fn plan_fault(fault: &PlanFault) -> String {
    let place = crate::place(Place::Design);
    match fault {
        PlanFault::PartWithoutSize(part) => format!(
            "{place}: the {} has no size that could be cut; mend its sizes first",
            part.name()
        ),
        PlanFault::TooMuchWood { wood, most } => format!(
            "{place}: more than {most} boards of {wood} would be needed; mend the sizes of the parts \
             first"
        ),
    }
}

/// Over which corners of the box the grain runs on.
pub fn grain_round(grain: &GrainRound) -> String {
    let list = |corners: &[(SidePlace, SidePlace)]| {
        let corner =
            |(one, other): &(SidePlace, SidePlace)| format!("{} to {}", one.name(), other.name());
        corners.iter().map(corner).collect::<Vec<_>>().join(", ")
    };
    if grain.runs_on.is_empty() {
        return "the grain runs on round no corner: the sides do not come from one strip"
            .to_owned();
    }
    let cannot = if grain.breaks.len() == 1 {
        "the fourth corner cannot match"
    } else {
        "these cannot match"
    };
    format!(
        "the grain runs on from {}; {cannot}: {}",
        list(&grain.runs_on),
        list(&grain.breaks)
    )
}

/// Where rounded parts do not make the rounded whole; `None` where they do. Told in inches, since only
/// they are rounded to ticks.
pub fn rounded_sum(sum: &RoundedSum) -> Option<String> {
    let off = sum.off()?;
    Some(format!(
        "the rounded parts make {} in, the whole is {} in ({off} in): mark the last one from the whole",
        sum.laid, sum.whole
    ))
}

/// The names of parts, each once and with its number where there are more: `2 × guide strip`.
fn each_once(parts: &[Role]) -> String {
    let mut counted: Vec<(&Role, usize)> = Vec::new();
    for part in parts {
        match counted.iter_mut().find(|(known, _)| *known == part) {
            Some((_, count)) => *count += 1,
            None => counted.push((part, 1)),
        }
    }
    let said = counted.into_iter().map(|(part, count)| {
        let name = part.name();
        if count == 1 {
            name
        } else {
            format!("{count} × {name}")
        }
    });
    said.collect::<Vec<_>>().join(", ")
}
