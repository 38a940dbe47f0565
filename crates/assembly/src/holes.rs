//! Every hole and bored slot of the wooden parts: where, how wide, how deep, with which bit.
//!
//! Places are in the design's frame (mm): seen from outside the closed lid, origin in the middle of
//! the plate's front edge, x to the right, y towards the hinge, the slider forward (u = 0).

use latchwright_geometry::Point;
use latchwright_model::{Design, Dial, KeeperMake, Material};

use crate::bit::{Bit, Fit};
use crate::feature::{Feature, HoleKind, SlotKind};
use crate::finger_knob::{finger_knob, screw_sink, shank_slot};
use crate::frame::{places, sizes};
use crate::guide::{GuideScrew, guide};
use crate::keeper::{KeeperScrews, NEEDED, keeper_screws};
use crate::note::{HoleNote, HoleNoteKind};
use crate::row::Row;
use crate::screw::{CLEARANCE, HEAD, JOINING, is_softwood};

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
    /// The same from the other face.
    CountersinkBelow,
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
        found.shank_socket(design);
    }
    found.keeper(design);
    found.guide(design);
    found.shank_slot(design);
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

    /// The pin stands level with the slider's upper face, free over its finger; its hole is bored from the finger's upper
    /// face, as deep as the rest of the pin is long.
    fn pin(&mut self, design: &Design, index: usize, dial: &Dial) {
        let kind = HoleKind::Pin(index);
        let (x, y) = dial.pin_at();
        let (diameter, free) = (dial.pin.diameter, dial.pin.free);
        let (deep, thickness) = (dial.pin.height - free, design.slider.thickness - free);
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
        let screws = keeper_screws(design);
        self.judge_keeper(design, &screws);
        if keeper.make == KeeperMake::Printed {
            return;
        }
        let bit = Bit::nearest(&design.bench, screws.hole, Fit::Running);
        self.judge(Feature::KeeperScrews, bit);
        for (hand, centre) in screws.at {
            self.holes.push(Hole {
                kind: HoleKind::KeeperScrew(hand),
                centre,
                steps: vec![
                    HoleStep {
                        diameter: screws.hole,
                        depth: Depth::Through(keeper.thickness),
                        tool: Tool::Bit(bit),
                    },
                    HoleStep {
                        diameter: screws.head,
                        depth: Depth::Blind(screws.sink),
                        tool: Tool::Countersink,
                    },
                ],
            });
        }
    }

    /// Whether the screws find wood below and beside them.
    fn judge_keeper(&mut self, design: &Design, screws: &KeeperScrews) {
        if screws.on_front < NEEDED {
            let kind = HoleNoteKind::LittleUnderKeeper {
                on_front: screws.on_front,
                needed: NEEDED,
            };
            self.note(Feature::KeeperScrews, kind);
        }
        if screws.beside_tab < NEEDED {
            let kind = HoleNoteKind::LittleBesideTab {
                shoulder: screws.beside_tab.max(0.0),
                needed: NEEDED,
                width: design.tab.width + 2.0 * NEEDED,
            };
            self.note(Feature::KeeperScrews, kind);
        }
    }

    /// The slot for the finger knob's shank in the plate.
    fn shank_slot(&mut self, design: &Design) {
        let kind = SlotKind::FingerKnob;
        let slider = &design.slider;
        let slot = shank_slot(design);
        let places = [slider.pull_at, slider.guide_at.1, slider.guide_play];
        let sizes = [
            slider.shank,
            slot.width,
            slider.travel,
            design.plate.thickness,
        ];
        if !sound(&places, &sizes) {
            return self.left_out(kind.feature());
        }
        let bit = Bit::nearest(&design.bench, slot.width, Fit::Running);
        self.judge(kind.feature(), bit);
        let row = Row::new(slot.to.y - slot.from.y, bit.bored());
        self.slots.push(Slot {
            kind,
            from: slot.from,
            to: slot.to,
            width: slot.width,
            depth: Depth::Through(design.plate.thickness),
            bit,
            row,
        });
    }

    /// The socket for the finger knob's shank in a slider of wood or sheet, and the hole for its screw from below.
    fn shank_socket(&mut self, design: &Design) {
        let kind = HoleKind::ShankSocket;
        let knob = finger_knob(design);
        let sizes = [
            knob.shank,
            knob.socket,
            knob.socket_depth,
            knob.reach.through,
        ];
        if !sound(&[knob.at.x, knob.at.y], &sizes) {
            return self.left_out(kind.feature());
        }
        let socket = Bit::nearest(&design.bench, knob.socket, Fit::Running);
        let screw = Bit::nearest(&design.bench, CLEARANCE, Fit::Running);
        self.judge(kind.feature(), socket);
        self.holes.push(Hole {
            kind,
            centre: knob.at,
            steps: vec![
                HoleStep {
                    diameter: knob.socket,
                    depth: Depth::Blind(knob.socket_depth),
                    tool: Tool::Bit(socket),
                },
                HoleStep {
                    diameter: CLEARANCE,
                    depth: Depth::Through(design.slider.thickness),
                    tool: Tool::Bit(screw),
                },
                HoleStep {
                    diameter: HEAD,
                    depth: Depth::Blind(screw_sink(design)),
                    tool: Tool::CountersinkBelow,
                },
            ],
        });
    }

    /// The holes in the plate's underside that the guide's screws hold in.
    fn guide(&mut self, design: &Design) {
        let guide = guide(design);
        let kind = |screw: &GuideScrew| HoleKind::GuideScrew(screw.hand, screw.end);
        let places: Vec<f64> = guide
            .screws
            .iter()
            .flat_map(|screw| [screw.at.x, screw.at.y])
            .collect();
        let sizes = [
            guide.reach.through,
            guide.reach.into,
            design.plate.thickness,
        ];
        if !sound(&places, &sizes) {
            return self.left_out(Feature::GuideScrews);
        }
        let Some(deep) = guide.pilot_depth() else {
            return self.note(
                Feature::GuideScrews,
                HoleNoteKind::NoScrew {
                    through: guide.reach.through,
                    into: guide.reach.into,
                },
            );
        };
        let pilot = JOINING.pilot(is_softwood(&design.plate.wood));
        let bit = Bit::nearest(&design.bench, pilot, Fit::Fast);
        self.judge(Feature::GuideScrews, bit);
        for screw in &guide.screws {
            self.holes.push(Hole {
                kind: kind(screw),
                centre: screw.at,
                steps: vec![HoleStep {
                    diameter: pilot,
                    depth: Depth::Blind(deep),
                    tool: Tool::Bit(bit),
                }],
            });
        }
    }

    fn judge(&mut self, about: Feature, bit: Bit) {
        if !bit.is_near() {
            self.note(about, HoleNoteKind::NoNearBit(bit));
        }
    }
}
