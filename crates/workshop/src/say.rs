//! Lengths in few words, as drawings carry them.

use latchwright_solver::model::Units;

/// Nearest to a sixty-fourth that still counts as one, in.
const SAME: f64 = 0.0005;

/// `mm` in the maker's unit: `14.3 mm`; `9/16 in`, or `0.118 in` where no sixty-fourth is near.
pub(crate) fn length(mm: f64, units: Units) -> String {
    match units {
        Units::Millimetre => format!("{} mm", decimals(mm, 2)),
        Units::Inch => inches(mm / 25.4),
    }
}

/// `value` rounded to `places` decimals, without zeros at the end and without minus zero.
fn decimals(value: f64, places: usize) -> String {
    if !value.is_finite() {
        return "?".to_owned();
    }
    let text = format!("{value:.places$}");
    let short = if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.')
    } else {
        text.as_str()
    };
    if short == "-0" { "0" } else { short }.to_owned()
}

fn inches(value: f64) -> String {
    let parts = (value * 64.0).round();
    let near = (value - parts / 64.0).abs() <= SAME;
    if !near || !(1.0..=64_000.0).contains(&parts) {
        return format!("{} in", decimals(value, 3));
    }
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "1 to 64 000"
    )]
    let parts = parts as u32;
    let (whole, mut rest, mut of) = (parts / 64, parts % 64, 64);
    while rest != 0 && rest.is_multiple_of(2) {
        (rest, of) = (rest / 2, of / 2);
    }
    match (whole, rest) {
        (0, _) => format!("{rest}/{of} in"),
        (_, 0) => format!("{whole} in"),
        _ => format!("{whole} {rest}/{of} in"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_speak_the_makers_unit() {
        assert_eq!(length(14.3, Units::Millimetre), "14.3 mm");
        assert_eq!(length(-0.001, Units::Millimetre), "0 mm");
        assert_eq!(length(14.2875, Units::Inch), "9/16 in");
        assert_eq!(length(50.8, Units::Inch), "2 in");
        assert_eq!(length(228.6 + 1.5875, Units::Inch), "9 1/16 in");
        assert_eq!(length(3.0, Units::Inch), "0.118 in");
        assert_eq!(length(f64::NAN, Units::Inch), "? in");
    }
}
