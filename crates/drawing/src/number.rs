//! The one number formatter: at most four decimals, no exponent, no minus zero, no locale.

/// Largest magnitude that is written; a kilometre is further than any lid reaches.
const LIMIT: f64 = 1e6;

/// `value` as text with at most four decimals.
///
/// Values beyond a kilometre are written as a kilometre, so that a file never holds a length which
/// another program cannot read.
pub(crate) fn number(value: f64) -> String {
    rounded(value, 4)
}

/// A ratio that is multiplied by a length, such as the bulge of an arc: at most nine decimals.
pub(crate) fn ratio(value: f64) -> String {
    rounded(value, 9)
}

fn rounded(value: f64, places: usize) -> String {
    if value.is_nan() {
        return "0".to_owned();
    }
    let text = format!("{:.places$}", value.clamp(-LIMIT, LIMIT));
    let short = text.trim_end_matches('0').trim_end_matches('.');
    if short == "-0" {
        "0".to_owned()
    } else {
        short.to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::{number, ratio};

    #[test]
    fn zeros_at_the_end_are_dropped() {
        assert_eq!(number(120.0), "120");
        assert_eq!(number(0.5), "0.5");
        assert_eq!(number(1.0 / 3.0), "0.3333");
        assert_eq!(number(-12.340_04), "-12.34");
    }

    #[test]
    fn nothing_is_written_as_minus_zero() {
        assert_eq!(number(-0.0), "0");
        assert_eq!(number(-0.000_01), "0");
    }

    #[test]
    fn ratios_are_finer() {
        assert_eq!(ratio(0.414_213_562_373), "0.414213562");
        assert_eq!(ratio(1.0), "1");
        assert_eq!(ratio(-1e-12), "0");
    }

    #[test]
    fn huge_values_have_no_exponent() {
        assert_eq!(number(1e300), "1000000");
        assert_eq!(number(-1e300), "-1000000");
        assert_eq!(number(1e-300), "0");
    }
}
