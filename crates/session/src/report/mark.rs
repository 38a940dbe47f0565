//! What one mark promises and the worst real box found for it, in words and for other programs.

use std::fmt::Write as _;

use latchwright_model::Design;
use latchwright_proof::{prove_mark, verdicts};
use serde_json::{Value, json};

use super::json::{check_json, numbers_json, verdict_word};
use latchwright_words::{check_title, length, number_name, number_value};

/// One mark of one dial, both from 0, found by the dial's number and label as people say them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct MarkPlace {
    /// The dial, from 0.
    pub dial: usize,
    /// The mark, from 0.
    pub mark: u32,
}

/// Why a text names no mark of a design.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum MarkError {
    /// Nothing stands between dial and label.
    NoColon {
        /// As typed.
        text: String,
    },
    /// The design has no such dial.
    NoDial {
        /// As typed.
        number: String,
        /// How many dials there are.
        dials: usize,
    },
    /// The dial has no such mark.
    NoLabel {
        /// The dial, from 0.
        dial: usize,
        /// As typed.
        label: String,
        /// Those it has, in order.
        labels: Vec<String>,
    },
}

impl MarkPlace {
    /// The mark of `DIAL:LABEL`, the dial counted from 1, such as `2:5`.
    ///
    /// # Errors
    /// What was expected instead.
    pub fn parse(design: &Design, text: &str) -> Result<Self, MarkError> {
        let (number, label) = text.split_once(':').ok_or_else(|| MarkError::NoColon {
            text: text.to_owned(),
        })?;
        let dial = number
            .trim()
            .parse::<usize>()
            .ok()
            .and_then(|number| number.checked_sub(1))
            .filter(|dial| *dial < design.dials.len())
            .ok_or_else(|| MarkError::NoDial {
                number: number.trim().to_owned(),
                dials: design.dials.len(),
            })?;
        let labels = design.dials.get(dial).into_iter().flat_map(|dial| {
            (0..dial.positions.min(360)).map(move |mark| (mark, dial.label(mark)))
        });
        let wanted = label.trim();
        match labels.clone().find(|(_, label)| label.trim() == wanted) {
            Some((mark, _)) => Ok(Self { dial, mark }),
            None => Err(MarkError::NoLabel {
                dial,
                label: wanted.to_owned(),
                labels: labels.map(|(_, label)| label).collect(),
            }),
        }
    }

    fn name(self, design: &Design) -> String {
        let label = design
            .dials
            .get(self.dial)
            .map(|dial| dial.label(self.mark));
        format!("Dial {} at {}", self.dial + 1, label.unwrap_or_default())
    }
}

/// What the mark promises, and every number of the worst box found.
pub fn mark_text(design: &Design, place: MarkPlace) -> String {
    let mut out = place.name(design);
    let Some(check) = prove_mark(design, place.dial, place.mark) else {
        out.push_str(
            ": nothing is promised beyond its verdict, so there is no worst box to show\n",
        );
        return out;
    };
    let units = design.units;
    let _ = writeln!(
        out,
        ": {}. At worst {} where {} is needed.",
        check_title(&check, design),
        length(check.value, units),
        length(check.limit, units)
    );
    let Some(worst) = &check.worst else {
        return out;
    };
    let _ = writeln!(
        out,
        "The worst real box found has {}. It is built and lies like this:",
        length(worst.value, units)
    );
    for number in worst.latch.numbers(worst.dials.iter().copied()) {
        let (value, unit) = number_value(&number, units);
        let _ = writeln!(out, "  {:<28}{value:>10.4} {unit}", number_name(&number));
    }
    out
}

/// The same as a JSON object; `check` is null where nothing is promised.
pub fn mark_json(design: &Design, place: MarkPlace) -> Value {
    let verdict = verdicts(design)
        .get(place.dial)
        .and_then(|dial| dial.marks.get(usize::try_from(place.mark).ok()?).cloned())
        .map(|mark| verdict_word(mark.verdict));
    let check = prove_mark(design, place.dial, place.mark);
    let numbers = check.as_ref().and_then(|check| {
        let worst = check.worst.as_ref()?;
        Some(numbers_json(&worst.latch, worst.dials.iter().copied()))
    });
    json!({
        "dial": place.dial + 1,
        "mark": place.mark,
        "verdict": verdict,
        "check": check.as_ref().map(check_json),
        "numbers": numbers,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::typed::mark_error;

    #[test]
    fn a_mark_is_found_by_its_label_and_its_worst_box_has_the_figure() {
        let design = Design::default();
        let place = MarkPlace::parse(&design, "2:5").unwrap();
        assert_eq!(place, MarkPlace { dial: 1, mark: 4 });
        let said = mark_text(&design, place);
        assert!(
            said.starts_with("Dial 2 at 5: Tab stays held when dial 2 stops"),
            "{said}"
        );
        assert!(said.contains("The worst real box found has"), "{said}");
        let json = mark_json(&design, place);
        assert_eq!(json["verdict"], "holds");
        let bound = json["check"]["value"].as_f64().unwrap();
        let found = json["check"]["worst_value"].as_f64().unwrap();
        assert!(bound <= found && found - bound < 0.01, "{bound} {found}");
    }

    #[test]
    fn a_mark_that_is_not_there_is_refused_with_what_there_is() {
        let design = Design::default();
        for (text, expected) in [
            ("5", "give the dial's number"),
            ("9:1", "dials 1 to 3"),
            ("0:1", "dials 1 to 3"),
            ("1:X", "it has 1, 2, 3, 4, 5, 6, 7, 8"),
        ] {
            let said = mark_error(&MarkPlace::parse(&design, text).unwrap_err());
            assert!(said.contains(expected), "{said}");
        }
    }
}
