//! The key: a regular post in a star-shaped recess of so many regular polygons.

use core::f64::consts::PI;

use latchwright_geometry::trig;

use crate::Dial;

/// How far the disc can turn on its knob to either side of its seat, radians.
///
/// 180/sides − acos((apothem + clearance)·cos(180/sides)/apothem); the whole half-pitch where the
/// clearance lets the post spin, 0 for a key with no size.
///
/// # Source
/// Containment of one polygon in the other; the tests below hold it against swept polygons.
pub fn backlash(sides: u32, apothem: f64, clearance: f64) -> f64 {
    if sides < 3 || apothem <= 0.0 {
        return 0.0;
    }
    let half_pitch = PI / f64::from(sides);
    let ratio = (apothem + clearance) * trig::cos(half_pitch) / apothem;
    if ratio >= 1.0 {
        return half_pitch;
    }
    (half_pitch - trig::acos(ratio)).max(0.0)
}

/// How far the post's corners reach past the star's inner corners, mm: what keeps it from spinning.
///
/// apothem/cos(180/sides) − (apothem + clearance)/cos(180/sides − 180/positions).
pub fn bite(dial: &Dial) -> f64 {
    let key = &dial.key;
    if key.sides < 3 || dial.positions == 0 {
        return 0.0;
    }
    let half_pitch = PI / f64::from(key.sides);
    let half_step = PI / f64::from(dial.positions);
    key.apothem / trig::cos(half_pitch)
        - (key.apothem + key.clearance) / trig::cos(half_pitch - half_step)
}

/// Inner corner of the star over its outer radius: cos(π/p)/cos(π/p − π/N) for N seats of a p-gon.
pub fn inner_corner_ratio(positions: u32, sides: u32) -> f64 {
    let half_pitch = PI / f64::from(sides.max(3));
    trig::cos(half_pitch) / trig::cos(half_pitch - PI / f64::from(positions.max(1)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Key;

    /// Square post of side s in a square socket of side s + c: polygon containment with free
    /// translation, equal to four decimals (calculated; no publication).
    #[test]
    fn a_square_post_turns_as_far_as_containment_allows() {
        for (side, total, degrees) in [
            (10.0, 0.1, 0.5759),
            (10.0, 0.2, 1.1577),
            (10.0, 0.3, 1.7457),
            (8.0, 0.2, 1.4509),
            (6.0, 0.3, 2.9416),
        ] {
            let found = trig::degrees(backlash(4, side / 2.0, total / 2.0));
            assert!((found - degrees).abs() < 5e-5, "{side} + {total}: {found}");
        }
    }

    #[test]
    fn the_worked_examples_key_bites() {
        let mut dial = Dial {
            key: Key {
                sides: 4,
                apothem: 4.0,
                clearance: 0.15,
            },
            ..Dial::default()
        };
        assert!((bite(&dial) - 1.165).abs() < 5e-4);
        dial.positions = 12;
        assert!((bite(&dial) - 0.865).abs() < 5e-4);
    }

    /// Star of N seats for a p-gon, polygon library (calculated; no publication).
    #[test]
    fn inner_corners_stand_where_the_polygons_cross() {
        for (positions, sides, ratio) in [
            (8, 4, 0.7654),
            (12, 4, 0.8165),
            (24, 4, 0.8913),
            (9, 3, 0.6527),
            (10, 5, 0.8507),
        ] {
            let found = inner_corner_ratio(positions, sides);
            assert!(
                (found - ratio).abs() < 5e-5,
                "{positions} of {sides}: {found}"
            );
        }
    }

    #[test]
    fn a_loose_post_spins_and_never_gives_nan() {
        assert_eq!(backlash(4, 4.0, 10.0), PI / 4.0);
        assert_eq!(backlash(0, 4.0, 0.1), 0.0);
        assert_eq!(backlash(4, 0.0, 0.1), 0.0);
    }
}
