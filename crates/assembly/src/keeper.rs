//! What holds the tab: one keeper, of wood or printed, screwed down into the front from its upper face, which the open lid
//! leaves free for a driver.

use latchwright_geometry::Point;
use latchwright_model::Design;

use crate::feature::Hand;
use crate::frame::{Across, front_side};
use crate::screw::{CLEARANCE, HEAD, JOINING, LENGTHS, SINK};

/// Least wood that should stand beside a screw, mm: common practice, no source.
const WALL: f64 = 2.0;
/// How far a screw should go into the front, mm, at least: common practice, no source.
const INTO_FRONT: f64 = 12.0;
/// What a screw needs across the front, and beside the tab, mm.
pub const NEEDED: f64 = JOINING.shank + 2.0 * WALL;

/// The keeper's screws, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct KeeperScrews {
    /// Middles, left and right, in the design's frame.
    pub at: [(Hand, Point); 2],
    /// Diameter of the hole in the keeper.
    pub hole: f64,
    /// Diameter to which the head is sunk in the keeper's upper face.
    pub head: f64,
    /// Depth of that countersink.
    pub sink: f64,
    /// Length; `None` where none that is sold is long enough.
    pub length: Option<f64>,
    /// How much of the keeper's depth lies on the front.
    pub on_front: f64,
    /// How far the keeper stands out beside the tab on each side.
    pub beside_tab: f64,
}

/// The two screws that hold the keeper: beside the tab, where it lies on the front of the box.
pub fn keeper_screws(design: &Design) -> KeeperScrews {
    let (keeper, tab) = (&design.keeper, &design.tab);
    let own = Across {
        from: keeper.edge - keeper.depth,
        to: keeper.edge,
    };
    let under = front_side(design).and_then(|front| own.common(front));
    let on = under.filter(|wood| wood.size() >= NEEDED).unwrap_or(own);
    let aside = f64::midpoint(keeper.width, tab.width.min(keeper.width)) / 2.0;
    let place = |hand, x: f64| (hand, Point::new(x, on.middle()));
    let sink = SINK.min(keeper.thickness / 2.0);
    let long = |length: &&f64| **length - keeper.thickness >= INTO_FRONT - 1e-9;
    KeeperScrews {
        at: [
            place(Hand::Left, tab.at - aside),
            place(Hand::Right, tab.at + aside),
        ],
        hole: CLEARANCE,
        head: (CLEARANCE + 2.0 * sink).min(HEAD),
        sink,
        length: LENGTHS.iter().find(long).copied(),
        on_front: under.map_or(0.0, Across::size),
        beside_tab: (keeper.width - tab.width) / 2.0,
    }
}

/// Width, depth and thickness to which a keeper of wood is cut where a coat is `film` mm thick, mm: its edges are
/// coated and its upper face; the face that lies on the front and holds the tab stays bare.
pub fn bare(design: &Design, film: f64) -> (f64, f64, f64) {
    let keeper = &design.keeper;
    let edges = 2.0 * film;
    (
        keeper.width - edges,
        keeper.depth - edges,
        keeper.thickness - film,
    )
}

/// How deep the front is bored for the keeper's screws, mm: as far as they reach into it. `None` where none is long
/// enough.
pub fn pilot_depth(design: &Design) -> Option<f64> {
    let length = keeper_screws(design).length?;
    Some(length - design.keeper.thickness)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_usual_keeper_is_screwed_into_the_front_beside_the_tab() {
        let design = Design::default();
        let found = keeper_screws(&design);
        // keeper 56 and tab 40 wide: screws at ± 24; it lies on all of a front of 12
        assert_eq!(found.at[1].1, Point::new(24.0, 6.0));
        assert!(found.length.unwrap() >= 18.0);
        assert_eq!(found.on_front, 12.0);
    }
}
