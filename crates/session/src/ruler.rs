//! What the maker's ruler says of the measured lines on a printed sheet, as it is typed.
//!
//! Each line has a tick at 100 mm and one at 4 in. The unit that a reading is typed in says which of
//! them was measured.

use latchwright_model::Units;
use latchwright_words::workshop::ruler_fault;
use latchwright_workshop::ruler::{Correction, Measured};

use crate::units::{parse_length, unit_typed};
use latchwright_model::unit::MM_PER_INCH;

/// The lines' length and the sides of the square of corner marks, mm.
pub const LINE_MM: f64 = 100.0;
/// The tick for inch rulers, in.
const LINE_IN: f64 = 4.0;

/// What puts a printer right of which these are the readings, as [`read`] takes them.
///
/// # Errors
/// A sentence that names the reading that is no length or is not believed, and what to do.
pub fn correction(
    lines: (&str, &str),
    diagonals: Option<(&str, &str)>,
    units: Units,
) -> Result<Correction, String> {
    let measured = read(lines, diagonals, units)?;
    measured
        .correction()
        .map_err(|fault| ruler_fault(&fault, units))
}

/// The readings along x and y and, where given, of both diagonals (the one that rises to the right
/// first) between the corner marks of the square of 100 mm.
///
/// # Errors
/// A sentence that names the reading that is no length.
pub fn read(
    lines: (&str, &str),
    diagonals: Option<(&str, &str)>,
    units: Units,
) -> Result<Measured, String> {
    let x = line("along x", lines.0, units)?;
    let y = line("along y", lines.1, units)?;
    let diagonals = match diagonals {
        None => None,
        Some((rising, falling)) => Some((
            length("the rising diagonal", rising, units)?,
            length("the falling diagonal", falling, units)?,
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
fn line(way: &str, text: &str, units: Units) -> Result<f64, String> {
    let read = length(&format!("the line {way}"), text, units)?;
    Ok(match unit_typed(text, units) {
        Units::Millimetre => read,
        Units::Inch => read * (LINE_MM / (LINE_IN * MM_PER_INCH)),
    })
}

fn length(name: &str, text: &str, units: Units) -> Result<f64, String> {
    parse_length(text, units).map_err(|why| format!("{name}: {why}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn factors(x: &str, y: &str, units: Units) -> (f64, f64) {
        let found = correction((x, y), None, units).expect("believed");
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
    fn a_reading_that_is_not_believed_is_told_in_the_makers_unit() {
        let why = |units| correction(("3 in", "4 in"), None, units).expect_err("refused");
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

    #[test]
    fn a_reading_that_is_none_is_named() {
        let why = read(("100", "lots"), None, Units::Millimetre).expect_err("refused");
        assert!(why.starts_with("the line along y: "), "{why}");
        let why =
            read(("100", "100"), Some(("141.4", "")), Units::Millimetre).expect_err("refused");
        assert!(why.starts_with("the falling diagonal: "), "{why}");
    }
}
