//! Screws: shank, pilot and clearance holes, heads, and lengths that are sold.

use latchwright_model::Design;
use latchwright_model::unit::MM_PER_INCH;

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

/// The countersunk screw that joins everything in this box, No. 4: strips, bridges, keeper, finger knob, discs, leaves.
pub const JOINING: Screw = SCREWS[0];
/// Hole that lets a No. 4 through with a little air, in wood and in print, mm: common practice, no source.
pub const CLEARANCE: f64 = 3.0;
/// Diameter to which its head is sunk, mm.
///
/// # Source
/// ANSI B18.6.1: a flat head of No. 4 is 0.225 in (5.72 mm) at most, from memory; a little over it.
pub const HEAD: f64 = 6.0;
/// Hole in a print into which it cuts its thread, mm: eight tenths of its shank; common practice, no source.
pub const PILOT_IN_PRINT: f64 = 2.2;
/// Thread that holds, mm, at least: two diameters; common practice, no source.
pub const BITE: f64 = 2.0 * 2.84;
/// Wood or plastic before a tip, mm, at least, so that it does not show: common practice, no source.
pub const BEFORE_TIP: f64 = 2.0;

/// Lengths in which No. 4 flat heads are sold, mm: 1/4 to 2 in.
///
/// # Source
/// Common practice, no source: shops' lists go by sixteenths to half an inch, by eighths to an inch, by quarters beyond.
pub const LENGTHS: [f64; 13] = [
    MM_PER_INCH * 0.25,
    MM_PER_INCH * 0.3125,
    MM_PER_INCH * 0.375,
    MM_PER_INCH * 0.4375,
    MM_PER_INCH * 0.5,
    MM_PER_INCH * 0.625,
    MM_PER_INCH * 0.75,
    MM_PER_INCH * 0.875,
    MM_PER_INCH,
    MM_PER_INCH * 1.25,
    MM_PER_INCH * 1.5,
    MM_PER_INCH * 1.75,
    MM_PER_INCH * 2.0,
];

/// What a screw goes through, and what it holds in, mm along it from the face that its head lies level with.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reach {
    /// What it goes through by its clearance hole.
    pub through: f64,
    /// What there is for its thread, up to where its tip would show.
    pub into: f64,
}

impl Reach {
    /// The longest screw that is sold whose thread holds and whose tip stays inside; `None` where there is none.
    pub fn length(self) -> Option<f64> {
        let most = self.through + self.into - BEFORE_TIP;
        let fits = |length: &&f64| **length <= most + 1e-9 && **length - self.through >= BITE;
        LENGTHS.iter().rev().find(fits).copied()
    }

    /// The shortest screw that is sold whose thread holds at least `bite` mm; `None` where there is none, or where its
    /// tip would show.
    pub fn shortest(self, bite: f64) -> Option<f64> {
        let fits = |length: &&f64| **length - self.through >= bite - 1e-9;
        let most = self.through + self.into - BEFORE_TIP;
        let found = LENGTHS.iter().find(fits).copied();
        found.filter(|length| *length <= most + 1e-9)
    }
}

/// How deep a head of [`HEAD`] goes down in a hole of [`CLEARANCE`] under a 90° countersink, mm.
pub const SINK: f64 = (HEAD - CLEARANCE) / 2.0;

/// Softwoods of the table of woods and their kin, by a word of their name.
const SOFTWOODS: [&str; 11] = [
    "pine",
    "cedar",
    "redcedar",
    "fir",
    "spruce",
    "redwood",
    "hemlock",
    "larch",
    "cypress",
    "yew",
    "baldcypress",
];

/// Whether a wood of this name is a softwood; what is not known is taken as hard, which turns slower.
pub fn is_softwood(name: &str) -> bool {
    let lower = name.to_lowercase();
    lower
        .split(|c: char| !c.is_alphabetic())
        .any(|word| SOFTWOODS.contains(&word))
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

    #[test]
    fn the_longest_screw_that_stays_inside_is_taken_and_none_that_hardly_holds() {
        // a leaf of 1.5 let in flush into 12: a screw of 12.7 would come out at the top, 9.5 stays inside
        let leaf = Reach {
            through: 1.5,
            into: 10.5,
        };
        assert!((leaf.length().unwrap() - 9.525).abs() < 1e-9);
        // the tea box's bridge and strip, into a plate of 12
        let strip = Reach {
            through: 16.5,
            into: 12.0,
        };
        assert!((strip.length().unwrap() - 25.4).abs() < 1e-9);
        let thin = Reach {
            through: 16.5,
            into: 5.0,
        };
        assert_eq!(thin.length(), None);
        assert_eq!(
            Reach {
                through: f64::NAN,
                into: 9.0
            }
            .length(),
            None
        );
    }

    #[test]
    fn softwoods_are_known_by_a_word_of_their_name() {
        for (name, soft) in [
            ("Eastern white pine", true),
            ("Western redcedar", true),
            ("Yellow-poplar (tulipwood)", false),
            ("white oak", false),
            ("pineapple wood", false),
            ("", false),
        ] {
            assert_eq!(is_softwood(name), soft, "{name}");
        }
    }
}
