//! Wood screws: shank, pilot hole by wood, and clearance hole.

use latchwright_model::Design;
use latchwright_model::unit::MM_PER_INCH;

use super::is_softwood;

/// One size of wood screw, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Screw {
    /// Its number.
    pub gauge: u32,
    /// Diameter of the shank.
    pub shank: f64,
    /// Pilot hole in softwood.
    pub pilot_soft: f64,
    /// Pilot hole in hardwood: the larger where the charts differ, because a small one breaks screws.
    pub pilot_hard: f64,
    /// Hole that lets the screw through.
    pub clearance: f64,
}

/// Millimetres in a sixty-fourth of an inch.
const SIXTY_FOURTH: f64 = MM_PER_INCH / 64.0;

const fn screw(gauge: u32, shank_in: f64, soft: f64, hard: f64, clearance: f64) -> Screw {
    Screw {
        gauge,
        shank: shank_in * MM_PER_INCH,
        pilot_soft: soft * SIXTY_FOURTH,
        pilot_hard: hard * SIXTY_FOURTH,
        clearance: clearance * SIXTY_FOURTH,
    }
}

/// Pilots and clearances in sixty-fourths of an inch.
///
/// # Source
/// Shank 0.060 + 0.013·No. in, ANSI B18.6.1. Softwood pilots 1/16, 5/64, 3/32, 7/64: two charts agree.
/// Hardwood 5/64, 7/64, 1/8, 9/64: the larger of the same two. Clearance 7/64, 9/64, 11/64, 3/16: two
/// tables.
pub const SCREWS: [Screw; 4] = [
    screw(4, 0.112, 4.0, 5.0, 7.0),
    screw(6, 0.138, 5.0, 7.0, 9.0),
    screw(8, 0.164, 6.0, 8.0, 11.0),
    screw(10, 0.190, 7.0, 9.0, 12.0),
];

impl Screw {
    /// Pilot hole in a wood, mm.
    pub fn pilot(&self, soft: bool) -> f64 {
        if soft {
            self.pilot_soft
        } else {
            self.pilot_hard
        }
    }
}

/// Pilot hole in the front for the keeper's No. 4 screws, mm.
pub fn keeper_pilot(design: &Design) -> f64 {
    SCREWS[0].pilot(is_softwood(&design.body.wood))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shanks_follow_the_standards_formula() {
        for screw in SCREWS {
            let shank = (0.060 + 0.013 * f64::from(screw.gauge)) * 25.4;
            assert!((screw.shank - shank).abs() < 1e-9, "No. {}", screw.gauge);
        }
    }

    #[test]
    fn a_pilot_is_smaller_than_the_shank_and_in_hardwood_larger_than_in_soft() {
        for screw in SCREWS {
            assert!(screw.pilot_soft < screw.pilot_hard && screw.pilot_hard < screw.shank);
        }
        assert!((SCREWS[0].pilot(false) - 1.984).abs() < 1e-3);
    }
}
