//! What to do about a check, in a sentence.

use latchwright_model::{Design, Unit};
use latchwright_proof::{Check, CheckVerdict};
use latchwright_search::Remedy;
use latchwright_words::{advice, change_sentence, check_title, figure};

/// How far the search for a check's remedy is.
#[derive(Debug, Clone, Copy)]
pub enum Sought<'a> {
    /// Nobody has looked yet.
    NotYet,
    /// Nothing was found.
    InVain,
    /// This was found.
    Found(&'a Remedy),
}

impl<'a> Sought<'a> {
    /// Of the check of number `index`, where `remedies` are those of
    /// [`latchwright_search::remedy::all`], or none where nobody has looked yet.
    pub fn of(remedies: &'a [Option<Remedy>], index: usize) -> Self {
        match remedies.get(index) {
            None => Self::NotYet,
            Some(None) => Self::InVain,
            Some(Some(remedy)) => Self::Found(remedy),
        }
    }

    pub(crate) fn found(self) -> Option<&'a Remedy> {
        match self {
            Self::Found(remedy) => Some(remedy),
            Self::NotYet | Self::InVain => None,
        }
    }
}

/// What to do about `check`, without capital and full stop: what its remedy changes, what is then
/// to spare and what else comes of it.
pub fn remedy_sentence(design: &Design, check: &Check, sought: Sought<'_>) -> String {
    match sought {
        Sought::Found(remedy) => found(design, check.unit, remedy),
        Sought::InVain if check.verdict != CheckVerdict::Passes => format!(
            "no change of a few sizes was found that mends it; {}",
            advice(check, design)
        ),
        Sought::NotYet | Sought::InVain => advice(check, design),
    }
}

fn found(design: &Design, unit: Unit, remedy: &Remedy) -> String {
    let units = design.units;
    let told = change_sentence(&remedy.change, units);
    let spare = figure(remedy.margin, unit, units);
    let spare = match unit {
        Unit::Count => "it passes".to_owned(),
        _ if spare == figure(0.0, unit, units) => "it just passes".to_owned(),
        _ => format!("{spare} are to spare"),
    };
    format!(
        "{told}: then {spare}{}",
        consequence(&remedy.change.apply(design), remedy)
    )
}

fn consequence(changed: &Design, remedy: &Remedy) -> String {
    if remedy.proven {
        return " and the latch is proven".to_owned();
    }
    let worst = remedy.also.iter().map(|check| cost(changed, check));
    let costs: Vec<String> = worst.collect();
    if costs.is_empty() {
        String::new()
    } else {
        format!(
            ", but other checks fail that pass now: {}",
            costs.join("; ")
        )
    }
}

/// A check that would fail, and by how much where that is measured.
fn cost(changed: &Design, check: &Check) -> String {
    if check.unit == Unit::Count {
        return check_title(check, changed);
    }
    let short = figure(check.margin, check.unit, changed.units);
    format!(
        "{}, short by {}",
        check_title(check, changed),
        short.trim_start_matches('−')
    )
}
