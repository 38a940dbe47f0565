//! What cannot be built, or needs a second look, as values: each with its figures.

use latchwright_model::Design;
use latchwright_model::{Place, Severity};

use super::{Joinery, LEAST_HOLD, Panel, PanelKind, front_face};
use crate::frame::Axis;
use crate::slider_body::SliderBody;

/// A groove may take this share of a side's thickness: common practice, no source.
const DEEPEST: f64 = 2.0 / 3.0;
/// Wood that should stand beside a groove, notch, cut or screw, mm: common practice, no source.
const WALL: f64 = 3.0;
/// Wood that should stay of the edge before a hinge's leaf, mm: common practice, no source. Less breaks out under the
/// chisel; a leaf of 10 on an edge of 12, as small boxes have it, is well.
const BEFORE_LEAF: f64 = 1.5;
/// How far the plate may be off the outside before it is said, mm.
const MATCHES: f64 = 0.1;
/// A plate that stands out further than this is worth a look, mm.
const FAR_OUT: f64 = 15.0;

/// A size of the box without which there is none.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum BoxSize {
    /// Thickness of the sides.
    SideThickness,
    /// Width of the room inside.
    RoomWidth,
    /// Depth of the room inside.
    RoomDepth,
    /// Height of the room inside.
    RoomHeight,
    /// Thickness of the floor.
    FloorThickness,
    /// Height of the sides.
    SideHeight,
}

/// What cannot be built, or needs a second look. Lengths are in mm, finished unless said otherwise.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum JoineryFault {
    /// A size of which the coats leave nothing.
    NothingLeft {
        /// Which.
        which: BoxSize,
        /// Without its coats.
        bare: f64,
        /// One coat.
        film: f64,
    },
    /// The grooves take more than two thirds of the sides.
    GrooveTooDeep {
        /// Depth of the grooves.
        groove: f64,
        /// Thickness of the sides.
        thickness: f64,
        /// The deepest groove that would do.
        most: f64,
    },
    /// Little wood stays under the floor's groove.
    ThinUnderFloor {
        /// What stays.
        foot: f64,
        /// What should.
        least: f64,
    },
    /// A panel comes out with no size.
    PanelNegative {
        /// Which.
        panel: PanelKind,
        /// Along x.
        width: f64,
        /// Along y.
        depth: f64,
    },
    /// A panel hardly stands in its groove at its driest.
    PanelFallsOut {
        /// Which.
        panel: PanelKind,
        /// What stands in the groove.
        holds: f64,
        /// What should.
        wanted: f64,
        /// The depth of grooves that would do.
        groove: f64,
    },
    /// A panel's wood is in no table.
    PanelWoodUnknown {
        /// Which.
        panel: PanelKind,
    },
    /// The plate in its groove has no room to grow.
    PlateJams {
        /// Along which axis.
        axis: Axis,
        /// Room on each side.
        gap: f64,
        /// How much it grows in all.
        grows: f64,
        /// How much smaller it would have to be.
        less: f64,
    },
    /// The plate on the sides does not cover the box.
    PlateTooSmall {
        /// Along which axis: x is its width, y its depth.
        axis: Axis,
        /// What it has.
        has: f64,
        /// What the box has outside.
        wants: f64,
        /// What is missing.
        short: f64,
    },
    /// The plate on the sides stands far out.
    PlateFarOut {
        /// Along which axis: x is its width, y its depth.
        axis: Axis,
        /// What it has.
        has: f64,
        /// How much more than the box outside.
        over: f64,
    },
    /// The band's cut would run through the plate's groove.
    BandCutsGroove {
        /// Height of the band.
        height: f64,
        /// The least that would do.
        least: f64,
    },
    /// The band leaves too little of the box.
    BandTooHigh {
        /// Height that is left of the box.
        left: f64,
        /// The highest band that would do.
        most: f64,
    },
    /// The saw's cut is nought, though a band is cut off.
    NoKerf,
    /// Two hinges do not fit on the back.
    HingesDoNotFit {
        /// Length of one.
        length: f64,
        /// How far each is set in.
        inset: f64,
        /// Width of the box outside.
        outside: f64,
        /// The longest that would do.
        most: f64,
    },
    /// A leaf leaves too little wood before it.
    HingeTooWide {
        /// Width of the leaf.
        leaf: f64,
        /// Thickness of the sides.
        thickness: f64,
        /// The widest leaf that would do.
        most: f64,
    },
    /// A leaf would be let in more than half through the lid.
    HingeTooThick {
        /// Thickness of the leaf.
        leaf: f64,
        /// Thickness of the lid, or height of the band.
        lid: f64,
    },
    /// The keeper stands out in front of the lid.
    KeeperStandsOut {
        /// How far.
        out: f64,
        /// The depth with which it would not.
        depth: f64,
    },
    /// The keeper reaches beyond the box at one end.
    KeeperBesideBox,
    /// Little of the front stays before the notch for the tab.
    ThinBeforeNotch {
        /// What stays.
        left: f64,
        /// What should.
        needed: f64,
    },
    /// The keeper lies on little wood beside the notch.
    KeeperHasNoSeat {
        /// How much at each end.
        beside: f64,
        /// What a screw needs.
        needed: f64,
    },
    /// A disc would run into a side.
    DiscMeetsSide {
        /// Which dial, from 0.
        dial: usize,
        /// How far.
        short: f64,
    },
    /// The slider would run into a side.
    SliderMeetsSide {
        /// How far.
        short: f64,
    },
}

impl BoxSize {
    /// The part of the design that it belongs to.
    const fn place(self) -> Place {
        match self {
            Self::SideThickness | Self::FloorThickness | Self::SideHeight => Place::Body,
            Self::RoomWidth | Self::RoomDepth | Self::RoomHeight => Place::Inside,
        }
    }
}

impl JoineryFault {
    /// Whether it can be built at all.
    pub fn severity(&self) -> Severity {
        let error = match self {
            Self::NothingLeft { .. }
            | Self::GrooveTooDeep { .. }
            | Self::PanelNegative { .. }
            | Self::PanelFallsOut { .. }
            | Self::PlateJams { .. }
            | Self::PlateTooSmall { .. }
            | Self::BandCutsGroove { .. }
            | Self::BandTooHigh { .. }
            | Self::HingesDoNotFit { .. }
            | Self::HingeTooThick { .. }
            | Self::KeeperBesideBox
            | Self::DiscMeetsSide { .. }
            | Self::SliderMeetsSide { .. } => true,
            Self::ThinUnderFloor { foot, .. } => *foot <= 0.0,
            Self::HingeTooWide {
                leaf, thickness, ..
            } => leaf > thickness,
            Self::PanelWoodUnknown { .. }
            | Self::PlateFarOut { .. }
            | Self::NoKerf
            | Self::KeeperStandsOut { .. }
            | Self::ThinBeforeNotch { .. }
            | Self::KeeperHasNoSeat { .. } => false,
        };
        if error {
            Severity::Error
        } else {
            Severity::Notice
        }
    }

    /// The part of the design that it is about.
    pub fn place(&self) -> Place {
        match self {
            Self::NothingLeft { which, .. } => which.place(),
            Self::PanelNegative { panel, .. }
            | Self::PanelFallsOut { panel, .. }
            | Self::PanelWoodUnknown { panel } => panel.place(),
            Self::GrooveTooDeep { .. }
            | Self::ThinUnderFloor { .. }
            | Self::BandCutsGroove { .. }
            | Self::BandTooHigh { .. }
            | Self::HingesDoNotFit { .. }
            | Self::HingeTooWide { .. }
            | Self::HingeTooThick { .. }
            | Self::ThinBeforeNotch { .. } => Place::Body,
            Self::PlateJams { .. } | Self::PlateTooSmall { .. } | Self::PlateFarOut { .. } => {
                Place::Plate
            }
            Self::NoKerf => Place::Bench,
            Self::KeeperStandsOut { .. } | Self::KeeperBesideBox | Self::KeeperHasNoSeat { .. } => {
                Place::Keeper
            }
            Self::DiscMeetsSide { dial, .. } => Place::Dial(*dial),
            Self::SliderMeetsSide { .. } => Place::Slider,
        }
    }
}

/// Collects faults.
struct List<'a> {
    design: &'a Design,
    found: Vec<JoineryFault>,
}

pub(super) fn all(design: &Design, joinery: &Joinery) -> Vec<JoineryFault> {
    let mut list = List {
        design,
        found: Vec::new(),
    };
    if list.has_size(joinery) {
        list.grooves();
        list.panel(&joinery.floor);
        match (&joinery.top, joinery.overhang) {
            (Some(top), _) => {
                list.panel(top);
                list.top_fits(top);
            }
            (None, Some(_)) => list.plate_covers(joinery),
            _ => {}
        }
        list.cut(joinery);
        list.hinges(joinery);
        list.keeper(joinery);
        list.room_under_the_lid(joinery);
    }
    list.found
}

impl List<'_> {
    fn add(&mut self, fault: JoineryFault) {
        self.found.push(fault);
    }

    /// Whether there is a box at all; the first size that is none is named.
    fn has_size(&mut self, joinery: &Joinery) -> bool {
        let film = self.design.workmanship.film.max(0.0);
        let sizes = [
            (BoxSize::SideThickness, joinery.thickness.bare),
            (BoxSize::RoomWidth, joinery.inside.width),
            (BoxSize::RoomDepth, joinery.inside.depth),
            (BoxSize::RoomHeight, joinery.inside.height),
            (BoxSize::FloorThickness, joinery.floor.thickness.bare),
            (BoxSize::SideHeight, joinery.height.bare),
        ];
        let missing = sizes.into_iter().find(|(_, bare)| *bare <= 0.0);
        if let Some((which, bare)) = missing {
            self.add(JoineryFault::NothingLeft { which, bare, film });
        }
        missing.is_none()
    }

    fn grooves(&mut self) {
        let body = &self.design.body;
        let most = body.thickness * DEEPEST;
        if body.groove > most + 1e-9 {
            self.add(JoineryFault::GrooveTooDeep {
                groove: body.groove,
                thickness: body.thickness,
                most,
            });
        }
        if body.foot < WALL {
            self.add(JoineryFault::ThinUnderFloor {
                foot: body.foot,
                least: WALL,
            });
        }
    }

    fn panel(&mut self, panel: &Panel) {
        if panel.width.bare <= 0.0 || panel.depth.bare <= 0.0 {
            self.add(JoineryFault::PanelNegative {
                panel: panel.kind,
                width: panel.width.finished,
                depth: panel.depth.finished,
            });
            return;
        }
        let holds = panel.holds.0.min(panel.holds.1);
        if holds < LEAST_HOLD {
            self.add(JoineryFault::PanelFallsOut {
                panel: panel.kind,
                holds,
                wanted: LEAST_HOLD,
                groove: self.design.body.groove + LEAST_HOLD - holds,
            });
        }
        if panel.guessed {
            self.add(JoineryFault::PanelWoodUnknown { panel: panel.kind });
        }
    }

    fn top_fits(&mut self, top: &Panel) {
        for (axis, gap, grows) in [
            (Axis::X, top.gap_x, top.grows.0),
            (Axis::Y, top.gap_y, top.grows.1),
        ] {
            let short = grows / 2.0 - gap;
            if short > 1e-9 {
                self.add(JoineryFault::PlateJams {
                    axis,
                    gap,
                    grows,
                    less: 2.0 * short,
                });
            }
        }
    }

    /// The plate on the sides: nowhere short, not far out.
    fn plate_covers(&mut self, joinery: &Joinery) {
        let (plate, outside) = (&self.design.plate, &joinery.outside);
        for (axis, has, wants) in [
            (Axis::X, plate.width, outside.width),
            (Axis::Y, plate.depth, outside.depth),
        ] {
            let over = has - wants;
            if over < -MATCHES {
                self.add(JoineryFault::PlateTooSmall {
                    axis,
                    has,
                    wants,
                    short: -over,
                });
            } else if over > 2.0 * FAR_OUT {
                self.add(JoineryFault::PlateFarOut { axis, has, over });
            }
        }
    }

    fn cut(&mut self, joinery: &Joinery) {
        let Some(cut) = joinery.lid else { return };
        let body = &self.design.body;
        let least = body.foot + self.design.plate.thickness + WALL;
        if cut.lid_height < least {
            self.add(JoineryFault::BandCutsGroove {
                height: cut.lid_height,
                least,
            });
        }
        let floor = body.foot + body.floor.thickness + WALL;
        if cut.box_height < floor {
            self.add(JoineryFault::BandTooHigh {
                left: cut.box_height,
                most: cut.lid_height - (floor - cut.box_height),
            });
        }
        if self.design.bench.kerf <= 0.0 {
            self.add(JoineryFault::NoKerf);
        }
    }

    fn hinges(&mut self, joinery: &Joinery) {
        let (body, outside) = (&self.design.body, joinery.outside.width);
        let [left, right] = joinery.hinges;
        if left.to > right.from || left.from < 0.0 {
            self.add(JoineryFault::HingesDoNotFit {
                length: body.hinge.length,
                inset: body.hinge.inset,
                outside,
                most: (outside / 2.0 - body.hinge.inset).max(0.0),
            });
        }
        let most = joinery.thickness.finished - BEFORE_LEAF;
        if body.hinge.leaf > most + 1e-9 {
            self.add(JoineryFault::HingeTooWide {
                leaf: body.hinge.leaf,
                thickness: body.thickness,
                most,
            });
        }
        let lid = joinery
            .lid
            .map_or(self.design.plate.thickness, |cut| cut.lid_height);
        if body.hinge.thickness > lid / 2.0 {
            self.add(JoineryFault::HingeTooThick {
                leaf: body.hinge.thickness,
                lid,
            });
        }
    }

    fn keeper(&mut self, joinery: &Joinery) {
        let seat = joinery.keeper;
        if seat.front < -MATCHES && joinery.overhang.is_some() {
            let out = -seat.front - joinery.overhang.map_or(0.0, |over| over.front.max(0.0));
            if out > MATCHES {
                self.add(JoineryFault::KeeperStandsOut {
                    out,
                    depth: seat.edge.max(0.0),
                });
            }
        }
        if seat.left < 0.0 || seat.right > joinery.outside.width {
            self.add(JoineryFault::KeeperBesideBox);
        }
        let Some(notch) = joinery.notch else { return };
        if notch.left_in_front < WALL {
            self.add(JoineryFault::ThinBeforeNotch {
                left: notch.left_in_front,
                needed: WALL,
            });
        }
        let beside = (joinery.keeper.right - notch.right).min(notch.left - joinery.keeper.left);
        if beside < 2.0 * WALL {
            self.add(JoineryFault::KeeperHasNoSeat {
                beside,
                needed: 2.0 * WALL,
            });
        }
    }

    /// Nothing below the plate runs into a side.
    fn room_under_the_lid(&mut self, joinery: &Joinery) {
        let front = front_face(self.design) + joinery.thickness.finished;
        let back = front + joinery.inside.depth;
        let half = joinery.inside.width / 2.0;
        for (dial, parts) in self.design.dials.iter().enumerate() {
            let ((x, y), radius) = (parts.centre, parts.disc.radius);
            let short = (x.abs() + radius - half)
                .max(y + radius - back)
                .max(front - (y - radius));
            if short > 1e-9 {
                self.add(JoineryFault::DiscMeetsSide { dial, short });
            }
        }
        self.slider_clears(half, back);
    }

    /// The slider's crossbar, forward and back.
    fn slider_clears(&mut self, half: f64, back: f64) {
        let reach = SliderBody::of(self.design).extent(self.design);
        let travel = self.design.slider.travel.max(0.0);
        let short = reach.max.x.max(-reach.min.x) - half;
        let short = short.max(reach.max.y + travel - back);
        if short > 1e-9 {
            self.add(JoineryFault::SliderMeetsSide { short });
        }
    }
}
