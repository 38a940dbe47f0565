//! The sizes that stand in each part of a design, and where each stands.

use crate::{Bench, Board, Body, Design, Dial, HoleReading, OwnWood, Season, Slot};

/// An enum of sizes that stand in one struct, with where each stands.
macro_rules! sizes {
    (
        $(#[$about:meta])* $name:ident in $of:ident:
        $($(#[$doc:meta])* $size:ident, $($field:tt).+;)+
    ) => {
        $(#[$about])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $name {
            $($(#[$doc])* $size),+
        }

        impl $name {
            /// All of them, in the order in which a maker meets them.
            pub const ALL: &'static [Self] = &[$(Self::$size),+];

            pub(super) fn get(self, of: &$of) -> f64 {
                match self {
                    $(Self::$size => of.$($field).+),+
                }
            }

            pub(super) fn place(self, of: &mut $of) -> &mut f64 {
                match self {
                    $(Self::$size => &mut of.$($field).+),+
                }
            }
        }
    };
}

sizes!(
    /// A size of the latch as a whole, or of the maker's workmanship; mm unless it says otherwise.
    LatchSize in Design:
    /// Plate along x.
    PlateWidth, plate.width;
    /// Plate along y.
    PlateDepth, plate.depth;
    /// Plate.
    PlateThickness, plate.thickness;
    /// Cut into the plate's underside over the keeper.
    Rabbet, plate.rabbet;
    /// Free height below the plate.
    Room, plate.room;
    /// From shut to free.
    Travel, slider.travel;
    /// Between the two guide points.
    GuideLength, slider.guide_length;
    /// Of each guide point to either side.
    GuidePlay, slider.guide_play;
    /// x of the guide's middle.
    GuideX, slider.guide_at.0;
    /// y of the guide's middle when shut.
    GuideY, slider.guide_at.1;
    /// x of the finger knob.
    PullAt, slider.pull_at;
    /// Diameter of the finger knob's shank.
    Shank, slider.shank;
    /// Slider.
    SliderThickness, slider.thickness;
    /// From the plate's underside down to the slider.
    SliderBelow, slider.below;
    /// Hardest pull that must be borne, N.
    Pull, slider.pull;
    /// Coefficient of friction in the guide.
    Friction, slider.friction;
    /// x of the tab's middle.
    TabAt, tab.at;
    /// Tab along x; also the slider's neck in its guide.
    TabWidth, tab.width;
    /// Overlap of tab and keeper when shut.
    Engagement, tab.engagement;
    /// The least overlap that still counts as held.
    RequiredHold, tab.required_hold;
    /// y of the edge that the tab has to clear.
    KeeperEdge, keeper.edge;
    /// Keeper along x.
    KeeperWidth, keeper.width;
    /// Keeper along y.
    KeeperDepth, keeper.depth;
    /// Keeper.
    KeeperThickness, keeper.thickness;
    /// Room in the box along x.
    InsideWidth, inside.width;
    /// Room in the box along y.
    InsideDepth, inside.depth;
    /// Room in the box from its floor to the lid.
    InsideHeight, inside.height;
    /// ± on each axis of a pin.
    PinPlace, workmanship.pin_place;
    /// ± on each axis of a bore.
    BorePlace, workmanship.bore_place;
    /// ± along y of the keeper's edge.
    KeeperPlace, workmanship.keeper_place;
    /// ± on a thickness or height.
    Thickness, workmanship.thickness;
    /// ± on a printed width or diameter.
    Print, workmanship.print;
    /// Coats on one face.
    Film, workmanship.film;
    /// ± on the coats of one face.
    FilmSpread, workmanship.film_spread;
    /// How far off its mark a pointer may stand, ± degrees.
    Reading, workmanship.reading;
);

sizes!(
    /// A size of one dial with disc, pin, key, bore and knob, mm.
    DialSize in Dial:
    /// x of the shaft.
    CentreX, centre.0;
    /// y of the shaft.
    CentreY, centre.1;
    /// Rim of the disc.
    DiscRadius, disc.radius;
    /// Disc.
    DiscThickness, disc.thickness;
    /// From the plate's underside down to the disc.
    DiscBelow, disc.below;
    /// Pin.
    PinDiameter, pin.diameter;
    /// x of the pin from the dial's centre line.
    PinOffset, pin.offset;
    /// Clear distance from pin to rim when shut.
    Gap, pin.gap;
    /// Pin along the dial's axis.
    PinHeight, pin.height;
    /// Of the pin, out of its finger.
    PinFree, pin.free;
    /// From the middle of the post to a flat.
    Apothem, key.apothem;
    /// Most clearance at a flat.
    Clearance, key.clearance;
    /// Hole in the plate.
    BoreDiameter, bore.diameter;
    /// How far the shaft can shift to any side.
    ShaftPlay, bore.shaft_play;
    /// Knob.
    KnobDiameter, knob.diameter;
    /// Knob above the plate.
    KnobHeight, knob.height;
);

sizes!(
    /// A size of one slot of a disc, mm.
    SlotSize in Slot:
    /// Between the walls.
    Width, width;
    /// From the rim circle to the deepest point of the floor.
    Depth, depth;
    /// Chamfer on both mouth corners.
    LeadIn, lead_in;
);

sizes!(
    /// A size of the box under the lid, mm.
    BodySize in Body:
    /// Sides, as measured.
    Sides, thickness;
    /// Grooves for floor and top.
    Groove, groove;
    /// From the lower edge of the sides up to the floor.
    Foot, foot;
    /// Floor, as measured.
    Floor, floor.thickness;
    /// Hinge along x.
    HingeLength, hinge.length;
    /// One leaf, from its edge to the middle of the pin.
    HingeLeaf, hinge.leaf;
    /// One leaf: how deep it is let in.
    HingeThickness, hinge.thickness;
    /// From the outside of the box to the hinge's nearer end.
    HingeInset, hinge.inset;
);

sizes!(
    /// A number of what the maker has, mm; the density is in g/cm³.
    BenchSize in Bench:
    /// What one cut takes away.
    Kerf, kerf;
    /// Cut off each end of a board.
    EndTrim, end_trim;
    /// How much larger a part is sawn at first.
    Rough, rough;
    /// Of the printer's nozzle: a line is as wide.
    Nozzle, printer.nozzle;
    /// Height of a layer.
    Layer, printer.layer;
    /// The printer's bed along x.
    BedX, printer.bed.0;
    /// The printer's bed along y.
    BedY, printer.bed.1;
    /// Of the highest print.
    PrintHeight, printer.height;
    /// How much too large an outside width comes out.
    Outside, printer.outside;
    /// How far the first layers spread, a side.
    FirstLayers, printer.foot;
    /// Radius that an inside corner gets.
    InsideCorner, printer.corner;
    /// Of the plastic, g/cm³.
    Density, printer.density;
    /// Diameter of the filament.
    Filament, printer.filament;
);

sizes!(
    /// A size of boards of one kind, mm.
    BoardSize in Board:
    /// Along the grain.
    Length, length;
    /// Across the grain.
    Width, width;
    /// As measured.
    Thickness, thickness;
);

sizes!(
    /// One side of a reading of the fit gauge, mm.
    HoleSize in HoleReading:
    /// As drawn.
    Diameter, diameter;
    /// How much smaller it came out.
    Under, under;
);

sizes!(
    /// A coefficient of a wood that the maker has measured: a fraction of its size for each per cent of moisture.
    WoodSize in OwnWood:
    /// Width of a quarter-sawn board.
    Radial, radial;
    /// Width of a flat-sawn board.
    Tangential, tangential;
);

sizes!(
    /// Temperature (°C) or relative humidity (per cent) of an air of the year.
    AirSize in Season:
    /// On the day the sizes were true.
    BuiltCelsius, built.celsius;
    /// On the day the sizes were true.
    BuiltHumidity, built.humidity;
    /// Where the air is driest.
    DriestCelsius, driest.celsius;
    /// Where the air is driest.
    DriestHumidity, driest.humidity;
    /// Where the air is dampest.
    DampestCelsius, dampest.celsius;
    /// Where the air is dampest.
    DampestHumidity, dampest.humidity;
);
