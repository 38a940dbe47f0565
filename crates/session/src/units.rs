//! Lengths, angles and counts as people type and read them.
//!
//! A length may be typed as `12.7`, `12,7`, `12.7 mm`, `1.27 cm`, `0.5"`, `1/2"`, `1 3/8 in` or
//! `3-3/8"`, whichever unit the design speaks; without a unit it is in that one. Inside it is
//! always millimetres.

use latchwright_model::Units;
use latchwright_model::unit::MM_PER_INCH;
pub use latchwright_words::figure::{mm_per, unit_name};

/// Longest length that can be typed, mm: a hundred metres.
const LONGEST_MM: f64 = 100_000.0;

/// Why what was typed is not taken. Texts are as typed, without the space around them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum TypedError {
    /// There is no number in it.
    NoNumber,
    /// There is no whole number in it.
    NoCount,
    /// This is no number.
    NotANumber(String),
    /// This is no whole number from 0.
    NotWhole(String),
    /// This has a stroke and is no fraction.
    NotAFraction(String),
    /// A fraction over 0.
    DividedByNought,
    /// This number has a point and a comma.
    PointAndComma(String),
    /// This number has more than one decimal point.
    SeveralPoints(String),
    /// This unit is none of length.
    NoUnitOfLength(String),
    /// This unit is none of angle.
    NoUnitOfAngle(String),
    /// There is a unit where a plain number is wanted.
    PlainNumberWanted {
        /// As typed.
        unit: String,
    },
    /// There is another unit than the one that is wanted.
    OtherUnitWanted {
        /// As typed.
        unit: String,
        /// As it is written.
        wanted: String,
    },
    /// More than a hundred metres.
    LongerThanAnyLatch,
    /// More than 360° to either side.
    MoreThanATurn,
    /// A number beyond reason.
    TooLarge,
}

/// A length in millimetres from what was typed.
pub fn parse_length(text: &str, units: Units) -> Result<f64, TypedError> {
    let (number, unit) = split_unit(text);
    if number.is_empty() {
        return Err(no_number(unit));
    }
    let mm_per_unit = match unit.to_lowercase().as_str() {
        "" => mm_per(units),
        "mm" => 1.0,
        "cm" => 10.0,
        "in" | "in." | "inch" | "inches" | "\"" | "''" | "″" | "”" | "“" => MM_PER_INCH,
        _ => {
            return Err(TypedError::NoUnitOfLength(unit.to_owned()));
        }
    };
    let mm = quantity(number)? * mm_per_unit;
    if mm.abs() <= LONGEST_MM {
        Ok(plain_nought(mm))
    } else {
        Err(TypedError::LongerThanAnyLatch)
    }
}

/// The unit in which a length was typed: its own, or else that of the design.
pub fn unit_typed(text: &str, units: Units) -> Units {
    match split_unit(text).1.to_lowercase().as_str() {
        "" => units,
        "mm" | "cm" => Units::Millimetre,
        _ => Units::Inch,
    }
}

fn no_number(unit: &str) -> TypedError {
    match unit {
        "" | "mm" | "cm" | "in" | "\"" | "°" | "°C" | "%" | "N" => TypedError::NoNumber,
        word => not_a_number(word),
    }
}

/// An angle in degrees from what was typed, with or without `°` or `deg`.
pub fn parse_degrees(text: &str) -> Result<f64, TypedError> {
    let (number, unit) = split_unit(text);
    if number.is_empty() {
        return Err(no_number(unit));
    }
    if !matches!(
        unit.to_lowercase().as_str(),
        "" | "°" | "deg" | "degree" | "degrees"
    ) {
        return Err(TypedError::NoUnitOfAngle(unit.to_owned()));
    }
    let degrees = quantity(number)?;
    if degrees.abs() <= 360.0 {
        Ok(plain_nought(degrees))
    } else {
        Err(TypedError::MoreThanATurn)
    }
}

/// A plain number from what was typed; a unit after it is refused.
pub fn parse_number(text: &str) -> Result<f64, TypedError> {
    parse_number_in(text, &[])
}

/// A number from what was typed, with or without one of these units after it, such as `%`.
pub fn parse_number_in(text: &str, units: &[&str]) -> Result<f64, TypedError> {
    let (number, unit) = split_unit(text);
    if number.is_empty() {
        return Err(no_number(unit));
    }
    if !unit.is_empty() && !units.contains(&unit) {
        let unit = unit.to_owned();
        return Err(match units {
            [] => TypedError::PlainNumberWanted { unit },
            [first, ..] => TypedError::OtherUnitWanted {
                unit,
                wanted: (*first).to_owned(),
            },
        });
    }
    let value = quantity(number)?;
    if value.abs() <= 1e9 {
        Ok(plain_nought(value))
    } else {
        Err(TypedError::TooLarge)
    }
}

/// A whole number, not below nought, from what was typed.
pub fn parse_count(text: &str) -> Result<u32, TypedError> {
    let text = text.trim();
    if text.is_empty() {
        return Err(TypedError::NoCount);
    }
    if !text.chars().all(|c| c.is_ascii_digit()) {
        return Err(TypedError::NotWhole(text.to_owned()));
    }
    text.parse().map_err(|_| TypedError::TooLarge)
}

/// A length as a number in the unit of the design: up to three decimals in millimetres and at least
/// one, four in inches.
pub fn show_length(mm: f64, units: Units) -> String {
    match units {
        _ if !mm.is_finite() => "–".to_owned(),
        Units::Millimetre => trimmed(mm, 3),
        Units::Inch => format!("{:.4}", plain_nought(round_to(mm / MM_PER_INCH, 4))),
    }
}

/// As [`show_length`], with the unit after it.
pub fn show_length_unit(mm: f64, units: Units) -> String {
    format!("{} {}", show_length(mm, units), unit_name(units))
}

/// A number by itself: up to three decimals and at least one.
pub fn show_number(value: f64) -> String {
    if value.is_finite() {
        trimmed(value, 3)
    } else {
        "–".to_owned()
    }
}

/// An angle with its sign of degrees: up to three decimals and at least one.
pub fn show_degrees(degrees: f64) -> String {
    if degrees.is_finite() {
        format!("{}°", show_number(degrees))
    } else {
        "–".to_owned()
    }
}

fn trimmed(value: f64, decimals: usize) -> String {
    let text = format!("{:.decimals$}", plain_nought(round_to(value, decimals)));
    match text.split_once('.') {
        Some((whole, part)) => {
            let part = part.trim_end_matches('0');
            format!("{whole}.{}", if part.is_empty() { "0" } else { part })
        }
        None => text,
    }
}

/// Rounds so that what would show as −0.000 becomes nought.
fn round_to(value: f64, decimals: usize) -> f64 {
    let half = 0.5 / 10_f64.powi(i32::try_from(decimals).unwrap_or(0));
    if value.abs() < half { 0.0 } else { value }
}

fn plain_nought(value: f64) -> f64 {
    if value == 0.0 { 0.0 } else { value }
}

/// The number in front and the unit behind, both without space around them.
fn split_unit(text: &str) -> (&str, &str) {
    let text = text.trim();
    let last = text.rfind(|c: char| c.is_ascii_digit() || "½¼¾⅛⅜⅝⅞".contains(c));
    let end = last.map_or(0, |at| {
        at + text
            .get(at..)
            .and_then(|rest| rest.chars().next())
            .map_or(0, char::len_utf8)
    });
    let (number, unit) = text.split_at_checked(end).unwrap_or((text, ""));
    // a point at the end belongs to the number, as in `12.`
    (
        number.trim(),
        unit.strip_prefix(['.', ',']).unwrap_or(unit).trim(),
    )
}

/// A decimal number, a fraction, or a whole number and a fraction, with or without a sign.
fn quantity(text: &str) -> Result<f64, TypedError> {
    let (sign, size) = match text.strip_prefix(['-', '−', '+']) {
        Some(size) if text.starts_with('+') => (1.0, size.trim_start()),
        Some(size) => (-1.0, size.trim_start()),
        None => (1.0, text),
    };
    let spelt = spell_out(size);
    let Some((front, under)) = spelt.split_once('/') else {
        return Ok(sign * decimal(&spelt, text)?);
    };
    let under = whole(under.trim(), text)?;
    if under == 0.0 {
        return Err(TypedError::DividedByNought);
    }
    let front = front.trim();
    let (units, over) = match front.rsplit_once([' ', '-', '\u{a0}']) {
        Some((units, over)) => (whole(units.trim(), text)?, whole(over.trim(), text)?),
        None => (0.0, whole(front, text)?),
    };
    Ok(sign * (units + over / under))
}

/// Fractions that are one character, as characters.
fn spell_out(text: &str) -> String {
    let mut spelt = text.to_owned();
    for (sign, fraction) in [
        ('½', "1/2"),
        ('¼', "1/4"),
        ('¾', "3/4"),
        ('⅛', "1/8"),
        ('⅜', "3/8"),
        ('⅝', "5/8"),
        ('⅞', "7/8"),
    ] {
        spelt = spelt.replace(sign, &format!(" {fraction}"));
    }
    spelt.trim().to_owned()
}

fn whole(text: &str, all: &str) -> Result<f64, TypedError> {
    if text.is_empty() || text.len() > 9 || !text.chars().all(|c| c.is_ascii_digit()) {
        return Err(TypedError::NotAFraction(all.to_owned()));
    }
    text.parse().map_err(|_| not_a_number(all))
}

fn decimal(text: &str, all: &str) -> Result<f64, TypedError> {
    if text.contains('.') && text.contains(',') {
        return Err(TypedError::PointAndComma(all.to_owned()));
    }
    if text.matches(['.', ',']).count() > 1 {
        return Err(TypedError::SeveralPoints(all.to_owned()));
    }
    let plain = text
        .chars()
        .all(|c| c.is_ascii_digit() || c == '.' || c == ',');
    if !plain || !text.contains(|c: char| c.is_ascii_digit()) {
        return Err(not_a_number(all));
    }
    text.replace(',', ".")
        .parse()
        .map_err(|_| not_a_number(all))
}

fn not_a_number(text: &str) -> TypedError {
    TypedError::NotANumber(text.to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_are_read_as_people_write_them() {
        let mm = Units::Millimetre;
        for (text, units, expected) in [
            ("12.7", mm, 12.7),
            ("12,7", mm, 12.7),
            (" 12.7 mm ", mm, 12.7),
            ("12.7mm", Units::Inch, 12.7),
            ("12.", mm, 12.0),
            (".5", Units::Inch, 12.7),
            ("1.27 cm", mm, 12.7),
            ("0.5 in", mm, 12.7),
            ("0.5\"", mm, 12.7),
            ("0.5″", mm, 12.7),
            ("0.5", Units::Inch, 12.7),
            ("1/2\"", mm, 12.7),
            ("1/2", Units::Inch, 12.7),
            ("1 3/8 in", mm, 34.925),
            ("3-3/8\"", mm, 85.725),
            ("1½ inches", mm, 38.1),
            ("½", Units::Inch, 12.7),
            ("-3/8\"", mm, -9.525),
            ("−1 1/2 in", mm, -38.1),
            ("+4 IN", mm, 101.6),
            ("1,234", mm, 1.234),
            ("-0", mm, 0.0),
        ] {
            let read = parse_length(text, units);
            assert!(
                read.as_ref().is_ok_and(|mm| (mm - expected).abs() < 1e-12),
                "{text}: {read:?}"
            );
        }
        assert!(parse_length("-0", mm).unwrap().is_sign_positive());
    }

    #[test]
    fn lengths_are_shown_with_the_decimals_that_matter() {
        for (mm, in_mm, in_inch) in [
            (12.7, "12.7", "0.5000"),
            (18.0, "18.0", "0.7087"),
            (0.1234, "0.123", "0.0049"),
            (-0.0001, "0.0", "0.0000"),
            (-0.0, "0.0", "0.0000"),
            (-3.175, "-3.175", "-0.1250"),
            (f64::NAN, "–", "–"),
        ] {
            assert_eq!(show_length(mm, Units::Millimetre), in_mm);
            assert_eq!(show_length(mm, Units::Inch), in_inch);
        }
        assert_eq!(show_length_unit(25.4, Units::Inch), "1.0000 in");
        assert_eq!(show_length_unit(25.4, Units::Millimetre), "25.4 mm");
        assert_eq!(show_degrees(18.1953), "18.195°");
    }

    #[test]
    fn what_is_shown_reads_back_within_its_decimals() {
        for units in [Units::Millimetre, Units::Inch] {
            for hundredths in -4000..4000 {
                let mm = f64::from(hundredths) / 37.0;
                let back = parse_length(&show_length_unit(mm, units), units).unwrap();
                assert!((back - mm).abs() <= 0.0005 + 0.0013 * f64::from(units == Units::Inch));
            }
        }
    }

    #[test]
    fn angles_numbers_and_counts_are_read_each_in_its_own_way() {
        assert_eq!(parse_degrees("3,5°"), Ok(3.5));
        assert_eq!(parse_degrees("3.5 deg"), Ok(3.5));
        assert_eq!(parse_degrees("400"), Err(TypedError::MoreThanATurn));
        assert_eq!(
            parse_degrees("3 mm"),
            Err(TypedError::NoUnitOfAngle("mm".to_owned()))
        );
        assert_eq!(parse_number("-4,5"), Ok(-4.5));
        let unit = "%".to_owned();
        assert_eq!(
            parse_number("45 %"),
            Err(TypedError::PlainNumberWanted { unit })
        );
        assert_eq!(parse_number_in("45,5 %", &["%"]), Ok(45.5));
        assert_eq!(parse_number_in("-3", &["°C", "C"]), Ok(-3.0));
        assert_eq!(show_number(45.0), "45.0");
        assert_eq!(show_number(f64::NAN), "–");
        assert_eq!(parse_count(" 12 "), Ok(12));
        for text in ["", "-1", "1.5", "x", "99999999999"] {
            assert!(parse_count(text).is_err(), "{text}");
        }
    }
}
