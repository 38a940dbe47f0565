//! Every hole and bored slot of the wooden parts: where, how wide, how deep, with which bit.
//!
//! Places are in the design's frame (mm): seen from outside the closed lid, origin in the middle of
//! the plate's front edge, x to the right, y towards the hinge, the slider forward (u = 0).

use latchwright_geometry::Point;
use latchwright_model::{Design, Dial, Material};

use crate::bit::{Bit, Fit};
use crate::feature::{Feature, Hand, HoleKind, SlotKind};
use crate::frame::{Across, front_side, places, sizes};
use crate::inch::Rule;
use crate::note::{HoleNote, HoleNoteKind};
use crate::row::Row;

/// A part of wood.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum WoodPart {
    /// The top of the lid.
    Plate,
    /// Crossbar, fingers, neck and tab in one piece.
    Slider,
    /// What holds the tab down.
    Keeper,
    /// The side of the box under the keeper.
    Front,
    /// The side with the hinges.
    Back,
    /// The side on the left, seen from the front.
    Left,
    /// The side on the right, seen from the front.
    Right,
}

/// How far a hole goes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Depth {
    /// Right through wood of this thickness, mm.
    Through(f64),
    /// Down from the face it is bored from, mm.
    Blind(f64),
}

/// What bores one diameter of a hole.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Tool {
    /// A bit with a point of its own.
    Bit(Bit),
    /// A countersink, which follows the hole that is there.
    Countersink,
}

/// One diameter of a hole.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HoleStep {
    /// Finished diameter, mm.
    pub diameter: f64,
    /// How far it goes.
    pub depth: Depth,
    /// What bores it.
    pub tool: Tool,
}

/// A hole: one centre, one or more diameters.
#[derive(Debug, Clone, PartialEq)]
pub struct Hole {
    /// Which hole; it says in which part.
    pub kind: HoleKind,
    /// Its centre, mm.
    pub centre: Point,
    /// The diameters in the order in which they are bored.
    pub steps: Vec<HoleStep>,
}

/// A slot that is bored as a row of holes and pared.
#[derive(Debug, Clone, PartialEq)]
pub struct Slot {
    /// Which slot; it says in which part.
    pub kind: SlotKind,
    /// Centre of the first hole, mm.
    pub from: Point,
    /// Centre of the last hole, mm.
    pub to: Point,
    /// Finished width, mm.
    pub width: f64,
    /// Right through, or how deep.
    pub depth: Depth,
    /// The bit it is bored with.
    pub bit: Bit,
    /// The holes along it.
    pub row: Row,
}

/// All holes of a design.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Holes {
    /// Round holes: bores by dial, pins by dial, then the keeper's screws.
    pub holes: Vec<Hole>,
    /// Bored slots.
    pub slots: Vec<Slot>,
    /// What was left out or cannot be as it should.
    pub notes: Vec<HoleNote>,
}

/// Least wood that should stand beside a hole, mm: common practice, no source.
const WALL: f64 = 2.0;
/// Shank of a No. 4 wood screw, mm: 0.060 + 0.013 · 4 in, ANSI B18.6.1.
pub(crate) const SCREW: f64 = 2.84;
/// Hole in the keeper that lets it through, mm: a tight one; from memory.
const SCREW_HOLE: f64 = 3.0;
/// Width of the countersink for its head, mm: from memory.
const SCREW_HEAD: f64 = 6.0;

impl WoodPart {
    /// Every part, in the order in which templates are made.
    pub const ALL: [Self; 7] = [
        Self::Plate,
        Self::Slider,
        Self::Keeper,
        Self::Front,
        Self::Back,
        Self::Left,
        Self::Right,
    ];

    /// What people call it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Plate => "plate",
            Self::Slider => "slider",
            Self::Keeper => "keeper",
            Self::Front => "front",
            Self::Back => "back",
            Self::Left => "left side",
            Self::Right => "right side",
        }
    }
}

impl HoleStep {
    /// Diameter, depth and bit in few words, a line each: `14.3 mm through`, `bit 15 mm, 0.7 mm over`.
    pub fn lines(&self, rule: Rule) -> Vec<String> {
        let wide = rule.say_exactly(self.diameter);
        let Tool::Bit(bit) = self.tool else {
            return vec![format!("countersink to {wide}")];
        };
        let first = match self.depth {
            Depth::Through(_) => format!("{wide} through"),
            Depth::Blind(deep) => format!("{wide}, {} deep", rule.say_exactly(deep)),
        };
        core::iter::once(first)
            .chain(bit.lines(rule.units))
            .collect()
    }
}

impl Hole {
    /// The largest finished diameter, mm.
    pub fn widest(&self) -> f64 {
        let widths = self.steps.iter().map(|step| step.diameter);
        widths.fold(0.0, f64::max)
    }
}

impl Slot {
    /// The centres of the holes, in order along the slot.
    pub fn centres(&self) -> Vec<Point> {
        let along = self.to - self.from;
        let share = |index: u32| f64::from(index) / f64::from((self.row.count - 1).max(1));
        let at = |index| self.from + along * share(index);
        (0..self.row.count).map(at).collect()
    }
}

/// Every hole and bored slot of `design`'s wooden parts.
///
/// A hole without a place or a size is left out and named in the notes.
pub fn holes(design: &Design) -> Holes {
    let mut found = Holes::default();
    for (index, dial) in design.dials.iter().enumerate() {
        found.bore(design, index, dial);
    }
    if !matches!(design.slider.material, Material::Printed) {
        for (index, dial) in design.dials.iter().enumerate() {
            found.pin(design, index, dial);
        }
    }
    found.keeper(design);
    found.finger_knob(design);
    found
}

/// Whether all are places or sizes that a bench can hold.
fn sound(at: &[f64], across: &[f64]) -> bool {
    places(at) && sizes(across)
}

impl Holes {
    fn note(&mut self, about: Feature, kind: HoleNoteKind) {
        self.notes.push(HoleNote { about, kind });
    }

    fn left_out(&mut self, about: Feature) {
        self.note(about, HoleNoteKind::LeftOut);
    }

    fn bore(&mut self, design: &Design, index: usize, dial: &Dial) {
        let kind = HoleKind::Bore(index);
        let thickness = design.plate.thickness;
        let (x, y) = dial.centre;
        let diameter = dial.bore.diameter;
        if !sound(&[x, y], &[diameter, thickness]) {
            return self.left_out(kind.feature());
        }
        let bit = Bit::nearest(&design.bench, diameter, Fit::Running);
        self.judge(kind.feature(), bit);
        self.holes.push(Hole {
            kind,
            centre: Point::new(x, y),
            steps: vec![HoleStep {
                diameter,
                depth: Depth::Through(thickness),
                tool: Tool::Bit(bit),
            }],
        });
    }

    /// The pin stands level with the slider's upper face, so its hole is as deep as it is long.
    fn pin(&mut self, design: &Design, index: usize, dial: &Dial) {
        let kind = HoleKind::Pin(index);
        let ((x, y), thickness) = (dial.pin_at(), design.slider.thickness);
        let (diameter, deep) = (dial.pin.diameter, dial.pin.height);
        if !sound(&[x, y], &[diameter, deep, thickness]) {
            return self.left_out(kind.feature());
        }
        let bit = Bit::nearest(&design.bench, diameter, Fit::Fast);
        self.judge(kind.feature(), bit);
        let depth = if deep < thickness {
            Depth::Blind(deep)
        } else {
            Depth::Through(thickness)
        };
        self.holes.push(Hole {
            kind,
            centre: Point::new(x, y),
            steps: vec![HoleStep {
                diameter,
                depth,
                tool: Tool::Bit(bit),
            }],
        });
    }

    /// Two screws, beside the tab, where the keeper lies on the front of the box.
    fn keeper(&mut self, design: &Design) {
        let (keeper, tab) = (&design.keeper, &design.tab);
        let places = [keeper.edge, tab.at, design.plate.depth];
        let sizes = [keeper.width, keeper.depth, keeper.thickness, tab.width];
        if !sound(&places, &sizes) {
            return self.left_out(Feature::KeeperScrews);
        }
        let own = Across {
            from: keeper.edge - keeper.depth,
            to: keeper.edge,
        };
        let under = front_side(design).and_then(|front| own.common(front));
        self.judge_keeper(design, under);
        let need = SCREW + 2.0 * WALL;
        let on = under.filter(|wood| wood.size() >= need).unwrap_or(own);
        let aside = f64::midpoint(keeper.width, tab.width.min(keeper.width)) / 2.0;
        let bit = Bit::nearest(&design.bench, SCREW_HOLE, Fit::Running);
        self.judge(Feature::KeeperScrews, bit);
        let head = ((SCREW_HEAD - SCREW_HOLE) / 2.0).min(keeper.thickness / 2.0);
        for (hand, x) in [(Hand::Left, tab.at - aside), (Hand::Right, tab.at + aside)] {
            self.holes.push(Hole {
                kind: HoleKind::KeeperScrew(hand),
                centre: Point::new(x, on.middle()),
                steps: vec![
                    HoleStep {
                        diameter: SCREW_HOLE,
                        depth: Depth::Through(keeper.thickness),
                        tool: Tool::Bit(bit),
                    },
                    HoleStep {
                        diameter: SCREW_HOLE + 2.0 * head,
                        depth: Depth::Blind(head),
                        tool: Tool::Countersink,
                    },
                ],
            });
        }
    }

    /// Whether the screws find wood below and beside them; `under` is what the keeper lies on.
    fn judge_keeper(&mut self, design: &Design, under: Option<Across>) {
        let needed = SCREW + 2.0 * WALL;
        let on_front = under.map_or(0.0, Across::size);
        if on_front < needed {
            let kind = HoleNoteKind::LittleUnderKeeper { on_front, needed };
            self.note(Feature::KeeperScrews, kind);
        }
        let (keeper, tab) = (design.keeper.width, design.tab.width);
        let shoulder = (keeper - tab) / 2.0;
        if shoulder < needed {
            let kind = HoleNoteKind::LittleBesideTab {
                shoulder: shoulder.max(0.0),
                needed,
                width: tab + 2.0 * needed,
            };
            self.note(Feature::KeeperScrews, kind);
        }
    }

    /// The slot for the finger knob's shank: as wide as the shank and the guide's play to both sides.
    fn finger_knob(&mut self, design: &Design) {
        let kind = SlotKind::FingerKnob;
        let slider = &design.slider;
        let width = slider.shank + 2.0 * slider.guide_play;
        let places = [slider.pull_at, slider.guide_at.1, slider.guide_play];
        let sizes = [slider.shank, width, slider.travel, design.plate.thickness];
        if !sound(&places, &sizes) {
            return self.left_out(kind.feature());
        }
        let from = Point::new(slider.pull_at, slider.guide_at.1);
        let bit = Bit::nearest(&design.bench, width, Fit::Running);
        self.judge(kind.feature(), bit);
        let row = Row::new(slider.travel, bit.bored());
        self.slots.push(Slot {
            kind,
            from,
            to: from + Point::new(0.0, slider.travel),
            width,
            depth: Depth::Through(design.plate.thickness),
            bit,
            row,
        });
    }

    fn judge(&mut self, about: Feature, bit: Bit) {
        if !bit.is_near() {
            self.note(about, HoleNoteKind::NoNearBit(bit));
        }
    }
}
