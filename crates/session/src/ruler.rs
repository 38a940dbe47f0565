//! What the maker's ruler says of the measured lines on a printed sheet, as it is typed.
//!
//! Each line has a tick at 100 mm and one at 4 in. The unit that a reading is typed in says which of
//! them was measured.

use latchwright_model::Units;
use latchwright_workshop::ruler::{Correction, Measured, RulerFault};

use crate::units::{TypedError, parse_length, unit_typed};
use latchwright_model::unit::MM_PER_INCH;

/// The lines' length and the sides of the square of corner marks, mm.
pub const LINE_MM: f64 = 100.0;
/// The tick for inch rulers, in.
const LINE_IN: f64 = 4.0;

/// The readings of a sheet as they are typed.
#[derive(Debug, Clone, Copy)]
pub struct LinesTyped<'a> {
    /// Of the line along x.
    pub x: &'a str,
    /// Of the line along y.
    pub y: &'a str,
    /// Between the corner marks, where they were measured too.
    pub diagonals: Option<DiagonalsTyped<'a>>,
}

/// The readings between the corner marks of the square of 100 mm, as they are typed.
#[derive(Debug, Clone, Copy)]
pub struct DiagonalsTyped<'a> {
    /// The one that rises to the right.
    pub rising: &'a str,
    /// The one that falls to the right.
    pub falling: &'a str,
}

/// What is measured on a sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RulerLine {
    /// The line along x.
    AlongX,
    /// The line along y.
    AlongY,
    /// The diagonal that rises to the right.
    Rising,
    /// The diagonal that falls to the right.
    Falling,
}

/// Why readings put no printer right.
#[derive(Debug, Clone, PartialEq)]
pub enum ReadingError {
    /// One of them is no length.
    NoLength {
        /// Which.
        line: RulerLine,
        /// Why.
        why: TypedError,
    },
    /// No printer is like that.
    NotBelieved(RulerFault),
}

/// What puts a printer right of which these are the readings, as [`read`] takes them.
///
/// # Errors
/// The reading that is no length or is not believed.
pub fn correction(typed: LinesTyped<'_>, units: Units) -> Result<Correction, ReadingError> {
    let measured = read(typed, units)?;
    measured.correction().map_err(ReadingError::NotBelieved)
}

/// The readings along x and y and, where given, of both diagonals, mm.
///
/// # Errors
/// The reading that is no length.
pub fn read(typed: LinesTyped<'_>, units: Units) -> Result<Measured, ReadingError> {
    let x = line(RulerLine::AlongX, typed.x, units)?;
    let y = line(RulerLine::AlongY, typed.y, units)?;
    let diagonals = match typed.diagonals {
        None => None,
        Some(DiagonalsTyped { rising, falling }) => Some((
            length(RulerLine::Rising, rising, units)?,
            length(RulerLine::Falling, falling, units)?,
        )),
    };
    Ok(Measured {
        nominal: (LINE_MM, LINE_MM),
        x,
        y,
        diagonals,
    })
}

/// What 100 mm came out as, mm.
fn line(line: RulerLine, text: &str, units: Units) -> Result<f64, ReadingError> {
    let read = length(line, text, units)?;
    Ok(match unit_typed(text, units) {
        Units::Millimetre => read,
        Units::Inch => read * (LINE_MM / (LINE_IN * MM_PER_INCH)),
    })
}

fn length(line: RulerLine, text: &str, units: Units) -> Result<f64, ReadingError> {
    parse_length(text, units).map_err(|why| ReadingError::NoLength { line, why })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lines<'a>(x: &'a str, y: &'a str) -> LinesTyped<'a> {
        LinesTyped {
            x,
            y,
            diagonals: None,
        }
    }

    fn factors(x: &str, y: &str, units: Units) -> (f64, f64) {
        let found = correction(lines(x, y), units).expect("believed");
        (found.x, found.y)
    }

    #[test]
    fn a_hundred_that_measures_97_98_wants_1_0206() {
        let (x, y) = factors("97,98", "100 mm", Units::Millimetre);
        assert!((x - 1.0206).abs() < 5e-5 && (y - 1.0).abs() < 1e-12);
    }

    #[test]
    fn inches_are_read_off_the_line_of_four() {
        let (x, y) = factors("3.9192", "4", Units::Inch);
        assert!((x - 1.0206).abs() < 5e-5 && (y - 1.0).abs() < 1e-12);
        assert_eq!(factors("4 in", "4\"", Units::Millimetre), (1.0, 1.0));
        assert_eq!(factors("100 mm", "10 cm", Units::Inch), (1.0, 1.0));
    }

    #[test]
    fn a_reading_that_is_none_is_named() {
        let refused = |typed| match read(typed, Units::Millimetre) {
            Err(ReadingError::NoLength { line, .. }) => Some(line),
            _ => None,
        };
        assert_eq!(refused(lines("100", "lots")), Some(RulerLine::AlongY));
        let diagonals = DiagonalsTyped {
            rising: "141.4",
            falling: "",
        };
        let typed = LinesTyped {
            diagonals: Some(diagonals),
            ..lines("100", "100")
        };
        assert_eq!(refused(typed), Some(RulerLine::Falling));
    }
}
