//! What leads the slider: two strips beside its neck and two bridges across them, on the plate's underside.
//!
//! One screw at each place where a bridge lies on a strip goes through both into the plate: four hold all.

use latchwright_geometry::{Point, Rect};
use latchwright_model::Design;

use crate::feature::Hand;
use crate::screw::Reach;
use crate::slider_body::{BRIDGE, STRIP, strips};

/// Which of the two bridges.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum BridgeEnd {
    /// The one nearer to the keeper.
    Front,
    /// The one nearer to the hinge.
    Back,
}

/// A strip beside the slider's neck, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Strip {
    /// On which side, seen from outside.
    pub hand: Hand,
    /// Where it lies on the plate.
    pub area: Rect,
    /// How far it stands down from the plate's underside.
    pub height: f64,
}

/// A bridge across both strips, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bridge {
    /// Which of the two.
    pub end: BridgeEnd,
    /// Where it lies under the plate.
    pub area: Rect,
    /// Its thickness.
    pub thickness: f64,
}

/// A place at which bridge and strip are screwed to the plate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GuideScrew {
    /// Which strip.
    pub hand: Hand,
    /// Which bridge.
    pub end: BridgeEnd,
    /// Its middle, mm.
    pub at: Point,
}

/// The whole guide.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Guide {
    /// Left and right.
    pub strips: [Strip; 2],
    /// Front and back.
    pub bridges: [Bridge; 2],
    /// Where they are screwed to the plate.
    pub screws: [GuideScrew; 4],
    /// What a screw goes through, and the plate it holds in, mm.
    pub reach: Reach,
    /// A screw's length, mm; `None` where none that is sold holds and stays inside the plate.
    pub screw: Option<f64>,
}

impl Guide {
    /// How deep the plate's underside is bored for each screw, mm: as far as it reaches.
    pub fn pilot_depth(&self) -> Option<f64> {
        Some(self.screw? - self.reach.through)
    }
}

/// The guide of `design`.
pub fn guide(design: &Design) -> Guide {
    let slider = &design.slider;
    let (front, back) = strips(design);
    let half = design.tab.width / 2.0 + slider.guide_play;
    let at = design.tab.at;
    let height = slider.below + slider.thickness;
    let strip = |hand, side: f64| {
        let (inner, outer) = (at + side * half, at + side * (half + STRIP));
        Strip {
            hand,
            area: Rect::new(Point::new(inner, front), Point::new(outer, back)),
            height,
        }
    };
    let strips = [strip(Hand::Left, -1.0), strip(Hand::Right, 1.0)];
    let wide = bridge_width(front, back);
    let bridge = |end, from: f64| Bridge {
        end,
        area: Rect::new(
            Point::new(at - half - STRIP, from),
            Point::new(at + half + STRIP, from + wide),
        ),
        thickness: BRIDGE,
    };
    let bridges = [
        bridge(BridgeEnd::Front, front),
        bridge(BridgeEnd::Back, back - wide),
    ];
    let screw = |strip: &Strip, bridge: &Bridge| GuideScrew {
        hand: strip.hand,
        end: bridge.end,
        at: Point::new(strip.area.centre().x, bridge.area.centre().y),
    };
    let [left, right] = &strips;
    let [first, last] = &bridges;
    let screws = [
        screw(left, first),
        screw(right, first),
        screw(left, last),
        screw(right, last),
    ];
    let reach = Reach {
        through: BRIDGE + height,
        into: design.plate.thickness,
    };
    Guide {
        strips,
        bridges,
        screws,
        reach,
        screw: reach.length(),
    }
}

/// How wide a bridge is along y, mm: as wide as a strip, and never more than half of one's length.
fn bridge_width(front: f64, back: f64) -> f64 {
    STRIP.min((back - front).max(0.0) / 2.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::slider_body::SliderBody;

    #[test]
    fn the_strips_lie_beside_the_neck_and_the_bridges_across_them() {
        let design = Design::default();
        let found = guide(&design);
        let (left, right) = SliderBody::of(&design).neck;
        let play = design.slider.guide_play;
        assert!((found.strips[0].area.max.x - (left - play)).abs() < 1e-9);
        assert!((found.strips[1].area.min.x - (right + play)).abs() < 1e-9);
        for bridge in found.bridges {
            assert_eq!(bridge.area.min.x, found.strips[0].area.min.x);
            assert_eq!(bridge.area.max.x, found.strips[1].area.max.x);
        }
        assert!(found.bridges[0].area.max.y <= found.bridges[1].area.min.y);
        let length = found.screw.unwrap();
        assert!(length > found.reach.through && length < found.reach.through + found.reach.into);
    }
}
