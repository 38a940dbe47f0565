//! Figures in sentences: rounded so that a promise never grows, in the unit of the design.

use latchwright_model::Unit;
use latchwright_model::Units;
use latchwright_model::unit::MM_PER_INCH;

/// `mm` or `in`.
pub fn unit_name(units: Units) -> &'static str {
    match units {
        Units::Millimetre => "mm",
        Units::Inch => "in",
    }
}

/// Millimetres in one of the design's units.
pub fn mm_per(units: Units) -> f64 {
    match units {
        Units::Millimetre => 1.0,
        Units::Inch => MM_PER_INCH,
    }
}

/// A figure with its unit, rounded down.
///
/// Rounding down never promises more than there is, and never hides that something is short.
pub fn figure(value: f64, unit: Unit, units: Units) -> String {
    match unit {
        Unit::Millimetre => length(value, units),
        Unit::Degree => format!("{}°", down(value, 2)),
        Unit::Newton => format!("{} N", down(value, 1)),
        Unit::Ratio => down(value, 2),
        Unit::Megapascal => format!("{} MPa", down(value, 1)),
        Unit::Count => down(value, 0),
    }
}

/// A length with its unit, rounded down to 0.01 mm or 0.001 in.
pub fn length(mm: f64, units: Units) -> String {
    let decimals = match units {
        Units::Millimetre => 2,
        Units::Inch => 3,
    };
    format!(
        "{} {}",
        down(mm / mm_per(units), decimals),
        unit_name(units)
    )
}

/// A length with its unit, rounded to the nearest 0.01 mm or 0.001 in: for sizes and estimates, not for
/// what is promised.
pub fn size(mm: f64, units: Units) -> String {
    format!("{} {}", size_number(mm, units), unit_name(units))
}

/// The same without its unit.
pub fn size_number(mm: f64, units: Units) -> String {
    match units {
        Units::Millimetre => format!("{mm:.2}"),
        Units::Inch => format!("{:.3}", mm / MM_PER_INCH),
    }
}

/// A whole length of a rule or a regulation with its unit: no decimals in millimetres, as many as tell it
/// in inches.
pub fn whole_size(mm: f64, units: Units) -> String {
    match units {
        Units::Millimetre => format!("{mm:.0} mm"),
        Units::Inch => format!("{:.2} in", mm / MM_PER_INCH),
    }
}

/// A length with its unit as it was typed: the nearest 0.01 mm or 0.0001 in, without noughts that say
/// nothing. For figures that were given, not for what is promised.
pub fn typed_length(mm: f64, units: Units) -> String {
    let decimals = match units {
        Units::Millimetre => 2,
        Units::Inch => 4,
    };
    let text = format!("{:.decimals$}", mm / mm_per(units));
    let text = text.trim_end_matches('0').trim_end_matches('.');
    format!("{text} {}", unit_name(units))
}

/// A number rounded down, but not below what it would be without the dust of binary fractions.
fn down(value: f64, decimals: usize) -> String {
    if !value.is_finite() {
        return if value > 0.0 { "any" } else { "none" }.to_owned();
    }
    let scale = (0..decimals).fold(1.0, |scale, _| scale * 10.0);
    let scaled = (value * scale + 1e-6).floor() / scale;
    let shown = if scaled == 0.0 { 0.0 } else { scaled };
    format!("{shown:.decimals$}").replace('-', "−")
}

/// A whole number, in groups of three digits from five digits on.
pub fn grouped(number: u128) -> String {
    let digits = number.to_string();
    if digits.len() < 5 {
        return digits;
    }
    let mut text = String::new();
    for (at, digit) in digits.chars().enumerate() {
        if at > 0 && (digits.len() - at).is_multiple_of(3) {
            text.push('\u{202F}');
        }
        text.push(digit);
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_promise_never_grows_by_rounding() {
        for (value, text) in [
            (0.504, "0.50 mm"),
            (0.509_99, "0.50 mm"),
            (0.29, "0.29 mm"),
            (0.0, "0.00 mm"),
            (-0.001, "−0.01 mm"),
            (-3.505, "−3.51 mm"),
        ] {
            assert_eq!(length(value, Units::Millimetre), text);
        }
        assert_eq!(length(0.504, Units::Inch), "0.019 in");
        assert_eq!(figure(18.995, Unit::Degree, Units::Inch), "18.99°");
        assert_eq!(figure(2.0, Unit::Count, Units::Inch), "2");
        assert_eq!(figure(f64::INFINITY, Unit::Count, Units::Inch), "any");
    }

    #[test]
    fn what_was_typed_is_told_without_noughts_that_say_nothing() {
        for (mm, units, text) in [
            (220.0, Units::Millimetre, "220 mm"),
            (7.25, Units::Millimetre, "7.25 mm"),
            (12.7, Units::Inch, "0.5 in"),
            (2540.0, Units::Inch, "100 in"),
        ] {
            assert_eq!(typed_length(mm, units), text);
        }
    }

    #[test]
    fn large_counts_are_grouped() {
        assert_eq!(grouped(512), "512");
        assert_eq!(grouped(1728), "1728");
        assert_eq!(grouped(20_736), "20\u{202F}736");
        assert_eq!(grouped(1_000_000), "1\u{202F}000\u{202F}000");
    }
}
