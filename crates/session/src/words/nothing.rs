//! Why nothing can be had, in words.

use core::fmt::Write as _;

use latchwright_model::validate::MAX_DIALS;
use latchwright_search::propose::{Demand, Nearest, Nothing, Unreadable, Wishes};
use latchwright_words::{fault_sentence, size_name, typed_length};

use super::demands::{demands_in_words, is_many, length, nearest_in_words};

/// Said where nothing goes even without any demand.
const NOTHING_AT_ALL: &str = "no latch was found that is proven, not even on any other lid, with one dial of \
    three marks, other bits and pins, a gentler pull, and work without errors: look at the thickness of \
    discs, slider and keeper";

/// Why there are none and what the nearest would be, without capital and full stop.
pub fn nothing_sentence(nothing: &Nothing) -> String {
    if !nothing.unreadable.is_empty() {
        return unreadable_sentence(nothing);
    }
    let needs = needs(nothing);
    let told = needs.as_ref().map(|needs| needs.nearest);
    let reason = nothing_reason(nothing);
    let ways = nothing.nearest.iter().enumerate();
    let ways: Vec<String> = ways
        .filter(|(number, _)| Some(*number) != told)
        .map(|(_, near)| nearest_in_words(&nothing.wishes, near))
        .collect();
    match (ways.is_empty(), told) {
        (true, _) => reason,
        (_, Some(_)) => format!("{reason}; or else {}", ways.join(", or ")),
        (_, None) => format!(
            "{reason}; the nearest that can be had: {}",
            ways.join(", or ")
        ),
    }
}

/// Why the demands cannot be had, with its figures, without capital and full stop.
pub fn nothing_reason(nothing: &Nothing) -> String {
    if !nothing.unreadable.is_empty() {
        return unreadable_sentence(nothing);
    }
    let wishes = &nothing.wishes;
    let mut reason = match nothing.conflict.as_slice() {
        [] => NOTHING_AT_ALL.to_owned(),
        [one] => format!(
            "no latch can be had with {}, whatever else gives way",
            demands_in_words(wishes, &[*one])
        ),
        many => needs(nothing).map_or_else(|| cannot_be_had(wishes, many), |needs| needs.words),
    };
    for conflict in nothing.besides.iter().take(2) {
        let what = demands_in_words(wishes, conflict);
        // writing to a string cannot fail
        let _ = write!(reason, "; nor can {what}");
    }
    reason
}

fn cannot_be_had(wishes: &Wishes, demands: &[Demand]) -> String {
    let what = demands_in_words(wishes, demands);
    let number = if demands.len() == 2 { "both" } else { "all" };
    format!("{what} cannot {number} be had")
}

/// What the demands need of the lid, and the way out that says so.
struct Needs {
    nearest: usize,
    words: String,
}

/// "five dials of 36 marks need a lid 236 mm wide; yours is 220 mm", where the lid alone can give.
fn needs(nothing: &Nothing) -> Option<Needs> {
    let (wishes, conflict) = (&nothing.wishes, &nothing.conflict);
    let base = &wishes.base;
    let alone = |demand| {
        let mut nearest = nothing.nearest.iter();
        nearest.position(|near| near.demands == [demand])
    };
    let wide = conflict.contains(&Demand::Width);
    let (nearest, has) = match (wide, conflict.contains(&Demand::Depth)) {
        (true, false) => (alone(Demand::Width)?, base.plate.width),
        (false, true) => (alone(Demand::Depth)?, base.plate.depth),
        (true, true) | (false, false) => return None,
    };
    let lid = |demand: &Demand| matches!(demand, Demand::Width | Demand::Depth);
    let others = conflict.iter().copied().filter(|one| !lid(one));
    let others: Vec<Demand> = others.collect();
    if others.is_empty() || conflict.len() < 2 {
        return None;
    }
    let verb = if is_many(wishes, &others) {
        "need"
    } else {
        "needs"
    };
    let near: &Nearest = nothing.nearest.get(nearest)?;
    Some(Needs {
        nearest,
        words: format!(
            "{} {verb} {}, all else kept; yours is {}",
            demands_in_words(wishes, &others),
            nearest_in_words(wishes, near),
            length(has, base.units)
        ),
    })
}

/// Why wishes are no latch at all.
fn unreadable_sentence(nothing: &Nothing) -> String {
    let units = nothing.wishes.base.units;
    let say = |mm: f64| typed_length(mm, units);
    let said = nothing.unreadable.iter().map(|reason| match reason {
        Unreadable::NumberOfDials(dials) => {
            format!("{dials} dials are asked for; a latch has 1 to {MAX_DIALS}")
        }
        Unreadable::NothingInside { wide, lid, sides } => format!(
            "a lid {} {} leaves nothing inside: the sides alone take {}; give a larger one",
            say(*lid),
            if *wide { "wide" } else { "deep" },
            say(*sides)
        ),
        Unreadable::Fault(fault) => fault_sentence(fault, units),
        Unreadable::CannotPin { size, value } => {
            format!("{} cannot be pinned to {value}", size_name(*size))
        }
    });
    said.collect::<Vec<_>>().join("; ")
}
