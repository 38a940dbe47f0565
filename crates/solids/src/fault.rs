//! What can go wrong on the way from a design to a solid, as values: each with its figures.

use latchwright_model::Fault;

use crate::part::PartId;

/// Why a body could not be meshed: a fault of this program or of outlines handed in, never of a
/// sound design.
#[derive(Debug, Clone, PartialEq)]
pub enum MeshFault {
    /// A coordinate is no number or too far out.
    TooLarge {
        /// The furthest that is taken, mm.
        most_mm: f64,
    },
    /// Outlines did not settle on the grid.
    Tangled {
        /// Crossings left.
        crossings: usize,
    },
    /// The triangulation refused its points.
    NoTriangles {
        /// In the library's words.
        reason: String,
    },
    /// A sloped face crosses another face.
    SlopesCross {
        /// Where, mm.
        x_mm: f64,
        /// Where, mm.
        y_mm: f64,
    },
    /// The mesh is not closed.
    Open {
        /// Edges that are not shared by two triangles in opposite directions.
        edges: usize,
    },
    /// A vertex joins two shells.
    Pinched {
        /// How many.
        points: usize,
    },
    /// A triangle too thin to survive rounding.
    Sliver {
        /// Its least height, mm.
        height_mm: f64,
        /// What is asked, mm.
        least_mm: f64,
    },
    /// Nothing left, or inside out.
    NoVolume {
        /// Signed volume, mm³.
        volume_mm3: f64,
    },
}

/// Why parts cannot be made: named before anything is written.
#[derive(Debug, Clone, PartialEq)]
pub enum PartFault {
    /// The design itself has a fault.
    Design(Fault),
    /// A size of the options makes no sense.
    Option {
        /// Which.
        which: SizeOption,
        /// As given, mm.
        value_mm: f64,
        /// Least that is taken, mm.
        least_mm: f64,
        /// Most that is taken, mm.
        most_mm: f64,
    },
    /// The star goes through the knob's face, or nearly.
    RecessThrough {
        /// The part.
        part: PartId,
        /// Depth of the recess, mm.
        recess_mm: f64,
        /// Height of the knob, mm.
        height_mm: f64,
        /// What is left, mm.
        left_mm: f64,
        /// What is needed, mm.
        needed_mm: f64,
        /// Height that would do, mm.
        remedy_mm: f64,
    },
    /// A wall thinner than it should be.
    NoWall {
        /// The part.
        part: PartId,
        /// Which wall, and what would do.
        wall: Wall,
        /// What is left, mm.
        wall_mm: f64,
        /// What is needed, mm.
        needed_mm: f64,
    },
    /// Larger than the printer.
    LargerThanBed {
        /// The part.
        part: PartId,
        /// Its size along x and y, and its height, mm.
        size_mm: [f64; 3],
        /// The bed along x and y, and the printer's height, mm.
        bed_mm: [f64; 3],
    },
    /// A width or diameter that coats and compensation leave nothing of.
    NothingToDraw {
        /// The part.
        part: PartId,
        /// Which width or diameter.
        what: Slim,
        /// As the design says, mm.
        finished_mm: f64,
        /// As it would be drawn, mm.
        drawn_mm: f64,
        /// The least that can be printed, mm.
        least_mm: f64,
    },
    /// A pin that no finger of the slider reaches.
    NoFinger {
        /// The part.
        part: PartId,
        /// Which dial, from 0.
        dial: usize,
    },
    /// The outlines could not be meshed.
    Mesh {
        /// The part.
        part: PartId,
        /// Why.
        fault: MeshFault,
    },
    /// A file could not be put together.
    File {
        /// Its name.
        name: String,
        /// In the library's words.
        reason: String,
    },
}

/// A size among the options.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SizeOption {
    /// How far pointers and labels stand out.
    ReliefHeight,
    /// The chamfer at the bed.
    Chamfer,
    /// Height of the labels.
    LabelHeight,
    /// The bit that the drilling jig guides.
    JigDrill,
}

/// A wall that must not be thinner than two lines of the nozzle, or than what sits on it; with the
/// size that would do.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Wall {
    /// Between a slot's floor and the screw.
    SlotFloor {
        /// The step that the slot is at.
        step: i64,
        /// The deepest that would do, mm.
        most_mm: f64,
    },
    /// Between the post's flats and the screw.
    PostFlats {
        /// The key's apothem that would do, mm.
        apothem_mm: f64,
    },
    /// Between the post's corners and the shaft's rim, where the knob sits.
    Shoulder {
        /// The bore that would do, mm.
        bore_mm: f64,
    },
    /// Around the star.
    Star {
        /// The knob's diameter that would do, mm.
        knob_mm: f64,
    },
    /// Around the finger knob's shank.
    Shank {
        /// How much further it would have to be over the wood, mm.
        further_mm: f64,
    },
    /// That of the washer.
    Washer {
        /// The disc's radius that would do, mm.
        radius_mm: f64,
    },
    /// Beside the heads of the keeper's screws.
    BesideHeads {
        /// The keeper's depth that would do, mm.
        depth_mm: f64,
    },
    /// Under the heads of the keeper's screws.
    UnderHeads {
        /// The keeper's thickness that would do, mm.
        thickness_mm: f64,
    },
    /// Beyond the keeper's screws.
    BeyondScrews {
        /// The keeper's width that would do, mm.
        width_mm: f64,
    },
    /// Around the pilot hole in the finger knob's shank.
    Pilot {
        /// The shank's diameter that would do, mm.
        shank_mm: f64,
    },
    /// Around the jig's guide.
    Guide {
        /// How much thinner the bit would have to be, mm.
        thinner_mm: f64,
    },
}

/// A width or diameter that may come out too slim to be drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Slim {
    /// The disc's shaft.
    Shaft,
    /// The knob.
    Knob,
    /// A pin that is a part of its own.
    SinglePin,
    /// A pin on a finger.
    FingerPin,
    /// The keeper.
    Keeper,
    /// The finger knob's shank.
    Shank,
}
