//! A slot as a row of bored holes: how many, how far apart, and what is left to pare.

use latchwright_geometry::trig;

/// Largest cusp that a row leaves, mm: common practice, no source.
const PARED: f64 = 0.5;
/// Most holes in one row.
const MOST: u32 = 500;

/// Equally spaced holes from one end of a slot to the other.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Row {
    /// Number of holes, both ends counted.
    pub count: u32,
    /// From one centre to the next, mm; 0 for a single hole.
    pub pitch: f64,
    /// Height of the cusp between two holes over the slot's wall, mm.
    pub cusp: f64,
    /// Whether each centre between the ends has wood under the bit's point when the ends are bored.
    /// Where it has not, only a bit that its rim guides will stay in place.
    pub wood_at_centres: bool,
}

impl Row {
    /// The row for a slot whose end centres are `length` mm apart, bored with a bit of `bit` mm.
    ///
    /// As few holes as leave a cusp of at most half a millimetre.
    pub fn new(length: f64, bit: f64) -> Self {
        let radius = bit / 2.0;
        let single = Self {
            count: 1,
            pitch: 0.0,
            cusp: 0.0,
            wood_at_centres: true,
        };
        let sound = |size: f64| size.is_finite() && size > 1e-6;
        if !sound(length) || !sound(radius) {
            return single;
        }
        let cusp = PARED.min(radius / 2.0);
        let widest = 2.0 * trig::sqrt(2.0 * radius * cusp - cusp * cusp);
        let mut gaps = 1_u32;
        while length / f64::from(gaps) > widest && gaps < MOST - 1 {
            gaps += 1;
        }
        let pitch = length / f64::from(gaps);
        Self {
            count: gaps + 1,
            pitch,
            cusp: cusp_of(radius, pitch),
            wood_at_centres: gaps < 2 || pitch > radius,
        }
    }
}

/// What stands between two holes of `radius` mm, `pitch` mm apart, over the slot's wall, mm; all of the
/// radius where they do not meet.
pub fn cusp_of(radius: f64, pitch: f64) -> f64 {
    let half = pitch / 2.0;
    radius - trig::sqrt((radius * radius - half * half).max(0.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_cusp_follows_from_pitch_and_radius() {
        // 5 − √(5² − 3²) = 1; 4.5 − √(4.5² − 2²) = 0.468871…
        assert!((cusp_of(5.0, 6.0) - 1.0).abs() < 1e-12);
        assert!((cusp_of(4.5, 4.0) - 0.468_871).abs() < 1e-6);
        assert_eq!(cusp_of(2.0, 9.0), 2.0);
    }

    #[test]
    fn a_row_reaches_both_ends_with_no_hole_too_many() {
        let row = Row::new(8.0, 9.0);
        assert_eq!((row.count, row.pitch), (3, 4.0));
        assert!(row.cusp <= 0.5 && cusp_of(4.5, 8.0) > 0.5);
        assert!(!row.wood_at_centres);
    }

    #[test]
    fn nonsense_gives_one_hole_or_a_bounded_row() {
        for (length, bit) in [
            (f64::NAN, 5.0),
            (8.0, 0.0),
            (0.0, 5.0),
            (8.0, f64::INFINITY),
        ] {
            assert_eq!(Row::new(length, bit).count, 1);
        }
        let long = Row::new(1e9, 0.1);
        assert_eq!(long.count, 500);
        assert!(long.cusp.is_finite());
    }
}
