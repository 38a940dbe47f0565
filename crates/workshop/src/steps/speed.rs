//! How fast a bit turns: by its kind, its diameter and the wood.

/// One row: bits up to so many mm, rpm in softwood, rpm in hardwood.
type Row = (f64, u32, u32);

/// # Source
/// Two charts on the web, probably of one origin.
const TWIST: [Row; 2] = [(9.525, 3000, 1500), (15.875, 1500, 750)];

/// # Source
/// A woodworking magazine's drill-press chart, from memory. Bits between two rows take the slower one.
const BRAD_POINT: [Row; 6] = [
    (3.175, 1800, 1200),
    (6.35, 1800, 1000),
    (12.7, 1800, 750),
    (15.875, 1800, 500),
    (19.05, 1400, 250),
    (25.4, 1000, 250),
];

/// # Source
/// As [`BRAD_POINT`].
const FORSTNER: [Row; 5] = [
    (9.525, 2400, 700),
    (15.875, 2400, 500),
    (25.4, 1500, 500),
    (31.75, 1000, 250),
    (50.8, 500, 250),
];

/// Forstner bits begin here, mm: a quarter of an inch.
const LEAST_FORSTNER: f64 = 6.35;

/// Slowest and fastest speed that the charts give for a bit of `diameter` mm of any kind that there is
/// in that size, rpm; `None` beyond two inches, where no chart reaches, and for no size.
pub fn drill_speed(diameter: f64, soft: bool) -> Option<(u32, u32)> {
    if !(diameter.is_finite() && diameter > 0.0) {
        return None;
    }
    let forstner: &[Row] = if diameter >= LEAST_FORSTNER {
        &FORSTNER
    } else {
        &[]
    };
    let kinds: [&[Row]; 3] = [&TWIST, &BRAD_POINT, forstner];
    let speeds = kinds.into_iter().filter_map(|rows| {
        let (_, in_soft, in_hard) = rows.iter().find(|(most, ..)| diameter <= most + 1e-9)?;
        Some(if soft { *in_soft } else { *in_hard })
    });
    speeds.fold(None, |range: Option<(u32, u32)>, speed| {
        Some(range.map_or((speed, speed), |(slow, fast)| {
            (slow.min(speed), fast.max(speed))
        }))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn speeds_are_those_of_the_charts() {
        // twist 1500, brad point 1200
        assert_eq!(drill_speed(3.0, false), Some((1200, 1500)));
        // 15 mm: Forstner and brad point 500, twist 750
        assert_eq!(drill_speed(15.0, false), Some((500, 750)));
        assert_eq!(drill_speed(15.0, true), Some((1500, 2400)));
        assert_eq!(drill_speed(35.0, false), Some((250, 250)));
        assert_eq!(drill_speed(35.0, true), Some((500, 500)));
        for none in [51.0, 0.0, -1.0, f64::NAN, f64::INFINITY] {
            assert_eq!(drill_speed(none, true), None);
        }
    }

    #[test]
    fn larger_bits_never_turn_faster_and_hardwood_never_faster_than_soft() {
        let mut before = [u32::MAX; 2];
        for tenths in 10..500 {
            let diameter = f64::from(tenths) / 10.0;
            let speeds = [true, false].map(|soft| drill_speed(diameter, soft).unwrap().1);
            assert!(speeds[1] <= speeds[0]);
            // a Forstner bit begins at a quarter of an inch and may turn faster than a brad point
            if diameter > LEAST_FORSTNER + 10.0 {
                assert!(
                    speeds[0] <= before[0] && speeds[1] <= before[1],
                    "{diameter}"
                );
            }
            before = speeds;
        }
    }
}
