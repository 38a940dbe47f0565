//! All of the box: every part that is made or bought, and the joints that hold it.

use latchwright_model::{Design, LidKind};

use crate::dial::{disc_screw, washer};
use crate::feature::Hand;
use crate::finger_knob::finger_knob;
use crate::guide::{BridgeEnd, guide};
use crate::hinge::hinge_screws;
use crate::joinery::SidePlace;
use crate::keeper::keeper_screws;

/// A part of the box. Dials count from 0.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PartId {
    /// One of the four sides.
    Side(SidePlace),
    /// The floor.
    Floor,
    /// The top of the lid.
    Plate,
    /// The band of sides round the plate, where the lid is one.
    Band,
    /// Crossbar, fingers, neck and tab.
    Slider,
    /// What holds the tab down.
    Keeper,
    /// A strip beside the slider's neck.
    Strip(Hand),
    /// A bridge across both strips.
    Bridge(BridgeEnd),
    /// The disc with shaft and post.
    Disc(usize),
    /// What the hand turns.
    Knob(usize),
    /// Between plate and disc.
    Washer(usize),
    /// The pin in its finger.
    Pin(usize),
    /// What the hand pulls.
    FingerKnob,
    /// A hinge.
    Hinge(Hand),
}

/// What holds two parts together, or what they may do against one another.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Hold {
    /// Glue, in a joint that is cut for it.
    Glue,
    /// Screws of this length, mm, so many; `None` where none that is sold would hold.
    Screws {
        /// Length of each.
        length: Option<f64>,
        /// How many.
        count: u32,
    },
    /// Held in a groove, free to swell.
    Float,
    /// One slides in the other.
    Slide,
    /// One turns in the other.
    Turn,
}

impl Hold {
    /// Whether it holds: screws that are not sold do not.
    pub const fn holds(self) -> bool {
        !matches!(self, Self::Screws { length: None, .. })
    }
}

/// Two parts and what holds them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Joint {
    /// The part that is put on.
    pub part: PartId,
    /// What it is put on.
    pub on: PartId,
    /// What holds it there.
    pub hold: Hold,
}

/// The box as parts that are joined.
#[derive(Debug, Clone, PartialEq)]
pub struct Assembly {
    /// Every part, once.
    pub parts: Vec<PartId>,
    /// Every joint.
    pub joints: Vec<Joint>,
}

impl Assembly {
    /// All of `design`'s box.
    pub fn of(design: &Design) -> Self {
        let mut all = Self {
            parts: Vec::new(),
            joints: Vec::new(),
        };
        all.body(design);
        all.latch(design);
        for index in 0..design.dials.len() {
            all.dial(design, index);
        }
        all
    }

    /// Parts that nothing holds to the box, directly or by others.
    pub fn loose(&self) -> Vec<PartId> {
        let mut held = vec![PartId::Side(SidePlace::Front)];
        // every round holds at least one part more, or ends
        while let Some(next) = self.next_held(&held) {
            held.push(next);
        }
        let loose = self.parts.iter().filter(|part| !held.contains(part));
        loose.copied().collect()
    }

    fn next_held(&self, held: &[PartId]) -> Option<PartId> {
        self.joints
            .iter()
            .filter(|joint| joint.hold.holds())
            .find_map(
                |joint| match (held.contains(&joint.part), held.contains(&joint.on)) {
                    (false, true) => Some(joint.part),
                    (true, false) => Some(joint.on),
                    _ => None,
                },
            )
    }

    /// How many screws there are in all.
    pub fn screws(&self) -> u32 {
        let of = |joint: &Joint| match joint.hold {
            Hold::Screws { count, .. } => count,
            Hold::Glue | Hold::Float | Hold::Slide | Hold::Turn => 0,
        };
        self.joints.iter().map(of).sum()
    }

    fn put(&mut self, part: PartId, on: PartId, hold: Hold) {
        if !self.parts.contains(&part) {
            self.parts.push(part);
        }
        self.joints.push(Joint { part, on, hold });
    }

    fn body(&mut self, design: &Design) {
        let front = PartId::Side(SidePlace::Front);
        self.parts.push(front);
        for (place, on) in [
            (SidePlace::Right, SidePlace::Front),
            (SidePlace::Back, SidePlace::Right),
            (SidePlace::Left, SidePlace::Back),
            (SidePlace::Left, SidePlace::Front),
        ] {
            self.put(PartId::Side(place), PartId::Side(on), Hold::Glue);
        }
        self.put(PartId::Floor, front, Hold::Float);
        let screws = hinge_screws(design);
        let count = screws.holes;
        let lid = match design.body.lid {
            LidKind::Plate => PartId::Plate,
            LidKind::Band { .. } => PartId::Band,
        };
        for hand in [Hand::Left, Hand::Right] {
            let hinge = PartId::Hinge(hand);
            let length = screws.back.length;
            self.put(
                hinge,
                PartId::Side(SidePlace::Back),
                Hold::Screws { length, count },
            );
            let length = screws.lid.length;
            self.put(lid, hinge, Hold::Screws { length, count });
        }
        if lid == PartId::Band {
            self.put(PartId::Plate, PartId::Band, Hold::Float);
        }
        let length = keeper_screws(design).length;
        self.put(PartId::Keeper, front, Hold::Screws { length, count: 2 });
    }

    fn latch(&mut self, design: &Design) {
        let (guide, knob) = (guide(design), finger_knob(design));
        // one screw goes through a bridge and a strip: it is counted with the bridge
        for strip in guide.strips {
            let through = Hold::Screws {
                length: guide.screw,
                count: 0,
            };
            self.put(PartId::Strip(strip.hand), PartId::Plate, through);
        }
        for bridge in guide.bridges {
            let screws = guide.screws.iter().filter(|screw| screw.end == bridge.end);
            let both = Hold::Screws {
                length: guide.screw,
                count: u32::try_from(screws.count()).unwrap_or(0),
            };
            self.put(PartId::Bridge(bridge.end), PartId::Plate, both);
            self.put(PartId::Slider, PartId::Bridge(bridge.end), Hold::Slide);
        }
        let from_below = Hold::Screws {
            length: knob.screw,
            count: 1,
        };
        self.put(PartId::FingerKnob, PartId::Slider, from_below);
    }

    fn dial(&mut self, design: &Design, index: usize) {
        let Some(dial) = design.dials.get(index) else {
            return;
        };
        let (disc, knob) = (PartId::Disc(index), PartId::Knob(index));
        self.put(disc, PartId::Plate, Hold::Turn);
        let length = disc_screw(design, dial, 0.0).length;
        self.put(knob, disc, Hold::Screws { length, count: 1 });
        if washer(design, dial).is_some() {
            self.put(PartId::Washer(index), disc, Hold::Turn);
        }
        self.put(PartId::Pin(index), PartId::Slider, Hold::Glue);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_part_of_the_usual_box_is_held() {
        let mut design = Design::default();
        for lid in [LidKind::Plate, LidKind::Band { height: 40.0 }] {
            design.body.lid = lid;
            let all = Assembly::of(&design);
            assert_eq!(all.loose(), Vec::new(), "{lid:?}");
            // 2 hinges of 2 leaves with 3 holes, 2 in the keeper, 4 in the guide, 1 in the finger knob, 3 dials
            assert_eq!(all.screws(), 12 + 2 + 4 + 1 + 3);
        }
    }

    #[test]
    fn a_part_whose_screw_is_not_sold_is_loose_and_all_that_hangs_on_it() {
        let mut design = Design::default();
        design.plate.thickness = 4.0;
        let loose = Assembly::of(&design).loose();
        // bridge and strip would need a screw that comes out of the plate, and the slider lies on them
        for part in [
            PartId::Strip(Hand::Left),
            PartId::Bridge(BridgeEnd::Back),
            PartId::Slider,
            PartId::FingerKnob,
            PartId::Pin(0),
        ] {
            assert!(loose.contains(&part), "{part:?}: {loose:?}");
        }
        assert!(!loose.contains(&PartId::Keeper));
    }

    #[test]
    fn a_knob_too_low_for_a_thread_is_loose() {
        let mut design = Design::default();
        design.dials[1].knob.height = 9.0;
        assert_eq!(Assembly::of(&design).loose(), [PartId::Knob(1)]);
    }

    #[test]
    fn no_part_is_named_twice() {
        let all = Assembly::of(&Design::default());
        for (number, part) in all.parts.iter().enumerate() {
            assert!(!all.parts[..number].contains(part), "{part:?}");
        }
    }
}
