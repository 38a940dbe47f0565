//! Why what was typed is not taken, in sentences for beside the field: without capital and full stop.

use latchwright_model::Units;
use latchwright_words::workshop::ruler_fault;

use crate::questions::{HeldError, held_name};
use crate::report::MarkError;
use crate::ruler::{ReadingError, RulerLine};
use crate::units::TypedError;

/// Why this is no length, angle, number or count, and how to write one.
pub fn typed_error(err: &TypedError) -> String {
    match err {
        TypedError::NoNumber => "a number is wanted, such as 12.7".to_owned(),
        TypedError::NoCount => "a whole number is wanted, such as 8".to_owned(),
        TypedError::NotANumber(text) => format!(
            "`{}` is no number: write it like 12.7, 1/2 or 1 3/8",
            short(text)
        ),
        TypedError::NotWhole(text) => format!(
            "`{}` is no whole number: use digits only, such as 8",
            short(text)
        ),
        TypedError::NotAFraction(text) => format!(
            "`{}` is no fraction: write it like 3/8 or 1 3/8",
            short(text)
        ),
        TypedError::DividedByNought => {
            "nothing can be divided by nought: check the fraction".to_owned()
        }
        TypedError::PointAndComma(text) => format!(
            "`{}` has a point and a comma: write the number with one of them, for the decimals",
            short(text)
        ),
        TypedError::SeveralPoints(text) => {
            format!("`{}` has more than one decimal point", short(text))
        }
        TypedError::NoUnitOfLength(unit) => {
            format!("`{unit}` is no unit of length here: use mm, cm or in")
        }
        TypedError::NoUnitOfAngle(unit) => {
            format!("`{}` is no unit of angle here: use degrees", short(unit))
        }
        TypedError::PlainNumberWanted { unit } => {
            format!(
                "`{}` does not belong here: a plain number is wanted",
                short(unit)
            )
        }
        TypedError::OtherUnitWanted { unit, wanted } => format!(
            "`{}` does not belong here: a number in {wanted} is wanted",
            short(unit)
        ),
        TypedError::LongerThanAnyLatch => {
            "that is more than 100 metres: no latch is that large".to_owned()
        }
        TypedError::MoreThanATurn => "that is more than a whole turn of 360°".to_owned(),
        TypedError::TooLarge => "that is too large".to_owned(),
    }
}

/// Why this names no mark, and what there is instead.
pub fn mark_error(err: &MarkError) -> String {
    match err {
        MarkError::NoColon { text } => format!(
            "\"{text}\" names no mark: give the dial's number, a colon and its label, as in 2:5"
        ),
        MarkError::NoDial { number, dials } => {
            format!("there is no dial \"{number}\": the design has dials 1 to {dials}")
        }
        MarkError::NoLabel {
            dial,
            label,
            labels,
        } => format!(
            "dial {} has no mark \"{label}\"; it has {}",
            dial + 1,
            labels.join(", ")
        ),
    }
}

/// Why no size is held by this, and what can be.
pub fn held_error(err: &HeldError) -> String {
    match err {
        HeldError::NoSign { text } => {
            format!("`{text}` holds nothing: write a size, =, and its length")
        }
        HeldError::NoSize { name, holdable } => {
            let names: Vec<String> = holdable.iter().map(|size| held_name(*size)).collect();
            format!(
                "there is no size called `{name}`; these can be held: {}",
                names.join(", ")
            )
        }
        HeldError::NoLength { name, why } => format!("{name}: {}", typed_error(why)),
    }
}

/// Why readings of a printed sheet put no printer right.
pub fn reading_error(err: &ReadingError, units: Units) -> String {
    match err {
        ReadingError::NoLength { line, why } => {
            let line = match line {
                RulerLine::AlongX => "the line along x",
                RulerLine::AlongY => "the line along y",
                RulerLine::Rising => "the rising diagonal",
                RulerLine::Falling => "the falling diagonal",
            };
            format!("{line}: {}", typed_error(why))
        }
        ReadingError::NotBelieved(fault) => ruler_fault(fault, units),
    }
}

/// What was typed, cut to what fits beside a field.
fn short(text: &str) -> String {
    let mut start: String = text.chars().take(24).collect();
    if start.len() < text.len() {
        start.push('…');
    }
    start
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ruler::{LinesTyped, correction};
    use crate::units::{parse_degrees, parse_length, parse_number, parse_number_in};

    #[test]
    fn what_is_no_length_is_refused_with_a_sentence() {
        for (text, sentence) in [
            ("", "a number is wanted, such as 12.7"),
            ("mm", "a number is wanted, such as 12.7"),
            ("nan", "`nan` is no number"),
            ("inf", "`inf` is no number"),
            ("1.234,5", "`1.234,5` has a point and a comma"),
            ("1.2.3", "`1.2.3` has more than one decimal point"),
            ("1e3", "`1e3` is no number"),
            (
                "12 parsecs",
                "`parsecs` is no unit of length here: use mm, cm or in",
            ),
            ("1/0", "nothing can be divided by nought"),
            ("1/", "`/` is no unit of length here"),
            ("1 2", "`1 2` is no number"),
            ("1.5/2", "`1.5/2` is no fraction"),
            ("1 1/2/3", "`1 1/2/3` is no fraction"),
            ("--1", "`--1` is no number"),
            ("2 ft", "`ft` is no unit of length here"),
            ("1000000", "that is more than 100 metres"),
            (&"9".repeat(400), "that is more than 100 metres"),
        ] {
            let refusal = parse_length(text, Units::Millimetre).unwrap_err();
            let refusal = typed_error(&refusal);
            assert!(refusal.starts_with(sentence), "{text}: {refusal}");
        }
    }

    #[test]
    fn angles_and_numbers_have_their_own_sentences() {
        let said = |read: Result<f64, TypedError>| typed_error(&read.unwrap_err());
        assert!(said(parse_degrees("400")).contains("whole turn"));
        assert!(said(parse_degrees("3 mm")).contains("no unit of angle"));
        assert!(said(parse_number("45 %")).contains("plain number"));
        assert_eq!(
            said(parse_number_in("45 K", &["°C", "C"])),
            "`K` does not belong here: a number in °C is wanted"
        );
        assert!(said(parse_number_in("damp", &["%"])).starts_with("`damp` is no number"));
    }

    #[test]
    fn a_reading_that_is_not_believed_is_told_in_the_makers_unit() {
        let lines = LinesTyped {
            x: "3 in",
            y: "4 in",
            diagonals: None,
        };
        let why = |units| reading_error(&correction(lines, units).expect_err("refused"), units);
        let inch = why(Units::Inch);
        assert!(
            inch.starts_with("3.000 in measured along x of 4.000 in "),
            "{inch}"
        );
        let metric = why(Units::Millimetre);
        assert!(
            metric.starts_with("75 mm measured along x of 100 mm "),
            "{metric}"
        );
    }
}
