//! The hinges' screws: how many a leaf, and how long in lid and back.

use latchwright_model::{Design, LidKind};

use crate::screw::{BEFORE_TIP, Reach};

/// Leaves up to this length have three holes, longer ones four, mm: common practice, no source.
const THREE_HOLES: f64 = 50.0;
/// Hinges on the back.
pub const HINGES: u32 = 2;
/// How far a screw goes into the back's edge at most, mm: common practice, no source.
const INTO_BACK: f64 = 19.05;

/// The screws of one leaf, No. 4, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LeafScrews {
    /// What one goes through, and the wood it holds in.
    pub reach: Reach,
    /// Length; `None` where none that is sold holds and stays inside.
    pub length: Option<f64>,
}

impl LeafScrews {
    /// How deep the mortise's floor is bored for it: as far as it reaches.
    pub fn pilot_depth(&self) -> Option<f64> {
        Some(self.length? - self.reach.through)
    }
}

/// The screws of both hinges.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HingeScrews {
    /// Holes in one leaf.
    pub holes: u32,
    /// Those in the lid.
    pub lid: LeafScrews,
    /// Those in the back's edge.
    pub back: LeafScrews,
}

/// The screws of `design`'s hinges, whose leaves are let in flush: the longest that stay inside, in the back no longer
/// than is needed.
pub fn hinge_screws(design: &Design) -> HingeScrews {
    let hinge = &design.body.hinge;
    let lid = match design.body.lid {
        LidKind::Plate => design.plate.thickness,
        LidKind::Band { height } => height.min(INTO_BACK + hinge.thickness + BEFORE_TIP),
    };
    let leaf = |wood: f64| {
        let reach = Reach {
            through: hinge.thickness,
            into: wood - hinge.thickness,
        };
        LeafScrews {
            reach,
            length: reach.length(),
        }
    };
    HingeScrews {
        holes: if hinge.length <= THREE_HOLES { 3 } else { 4 },
        lid: leaf(lid),
        back: leaf(hinge.thickness + INTO_BACK + BEFORE_TIP),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_screw_of_the_lid_stays_two_millimetres_inside_and_the_backs_is_longer() {
        let mut design = Design::default();
        let found = hinge_screws(&design);
        assert_eq!(found.holes, 3);
        // into a plate of 12 at most 10
        assert!((found.lid.length.unwrap() - 9.525).abs() < 1e-9);
        assert!((found.back.length.unwrap() - 19.05).abs() < 1e-9);
        assert!((found.lid.pilot_depth().unwrap() - 8.025).abs() < 1e-9);
        design.body.hinge.length = 60.0;
        design.plate.thickness = 6.0;
        let found = hinge_screws(&design);
        assert_eq!((found.holes, found.lid.length), (4, None));
        design.body.lid = LidKind::Band { height: 30.0 };
        assert!((hinge_screws(&design).lid.length.unwrap() - 19.05).abs() < 1e-9);
    }
}
