//! What else matters about a part, as values.

use latchwright_model::PinMake;

/// One note on a part. Lengths are in mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum PartNote {
    /// A side whose ends are mitred.
    EndsMitred {
        /// Length of the outside face, bare.
        long_point: f64,
        /// Length of the inside face, bare.
        short_point: f64,
    },
    /// A side whose ends are square.
    EndsSquare,
    /// A side with a rabbet inside at both ends.
    EndsRabbeted {
        /// Along the side.
        width: f64,
        /// Into the thickness.
        depth: f64,
    },
    /// Box and lid in one.
    LidCutOffLater,
    /// The floor's room in its grooves.
    ClearInGroove {
        /// On each side along x.
        x: f64,
        /// On each side along y.
        y: f64,
    },
    /// Where the floor is glued.
    GluedAtTwoMiddles,
    /// The plate lies loose in its groove.
    LooseInGroove,
    /// The plate lies on the sides.
    IsTheLid,
    /// The slider is cut by its template and waxed.
    OutlineOnTemplate,
    /// The fingers are lowered so far below the upper face, mm; where they differ, the lowest.
    FingersLowered {
        /// From the upper face.
        free: f64,
    },
    /// The keeper's lower face gets no coat.
    BareBelow,
    /// The head of a screw lies deeper than level.
    HeadDeeper {
        /// So much deeper.
        deeper: f64,
    },
    /// No screw that is sold holds disc and knob together.
    GluedToKnob,
    /// How a dial's screw is set.
    HeadInDisc,
    /// Where the guide's strips go.
    BesideNeck {
        /// The guide's play on each side.
        play: f64,
    },
    /// How long the guide's strips are.
    AsLongAsGuideAndTravel {
        /// From the edge of the keeper back to their front ends.
        behind_keeper: f64,
    },
    /// What the guide's bridges do.
    CarriesSlider,
    /// Strips and bridges are higher than the room under the plate.
    HigherThanRoom {
        /// The room under the plate.
        room: f64,
        /// What strips and bridge take.
        needed: f64,
    },
    /// How many slots a disc has.
    Slots(usize),
    /// What a disc's shaft turns in.
    TurnsInBore {
        /// Diameter of the bore.
        bore: f64,
    },
    /// What the finger knob's shank runs in.
    RunsInSlot {
        /// Diameter of the shank.
        shank: f64,
    },
    /// How a pin is made or set.
    Pin(PinMake),
    /// How a hinge's width is told.
    WidthOfOneLeaf,
    /// The keeper's screws find little wood.
    LittleWoodInFront,
    /// The heads of the keeper's screws are sunk in its upper face.
    HeadInUpperFace,
    /// What keeps a disc on its knob.
    NeverAPressFitAlone,
}
