//! The sizes that stand in each part of a design: where each stands and what a maker calls it.

use crate::{Bench, Board, Body, Design, Dial, HoleReading, OwnWood, Season, Slot};

/// The words for making a size larger and smaller.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Verb {
    Increase,
    Widen,
    Lengthen,
    /// A place across the lid, x.
    Across,
    /// A place from the front edge to the hinge, y.
    Back,
}

/// An enum of sizes that stand in one struct, with where each stands and how it is called.
macro_rules! sizes {
    (
        $(#[$about:meta])* $name:ident in $of:ident:
        $($(#[$doc:meta])* $size:ident, $noun:literal, $verb:ident, $($field:tt).+;)+
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

            pub(super) fn words(self) -> (&'static str, Verb) {
                match self {
                    $(Self::$size => ($noun, Verb::$verb)),+
                }
            }
        }
    };
}

sizes!(
    /// A size of the latch as a whole, or of the maker's workmanship; mm unless it says otherwise.
    LatchSize in Design:
    /// Plate along x.
    PlateWidth, "plate width", Increase, plate.width;
    /// Plate along y.
    PlateDepth, "plate depth", Increase, plate.depth;
    /// Plate.
    PlateThickness, "plate thickness", Increase, plate.thickness;
    /// Cut into the plate's underside over the keeper.
    Rabbet, "rabbet", Increase, plate.rabbet;
    /// Free height below the plate.
    Room, "room below the plate", Increase, plate.room;
    /// From shut to free.
    Travel, "travel", Lengthen, slider.travel;
    /// Between the two guide points.
    GuideLength, "guide length", Lengthen, slider.guide_length;
    /// Of each guide point to either side.
    GuidePlay, "guide play", Widen, slider.guide_play;
    /// x of the guide's middle.
    GuideX, "guide", Across, slider.guide_at.0;
    /// y of the guide's middle when shut.
    GuideY, "guide", Back, slider.guide_at.1;
    /// x of the finger knob.
    PullAt, "finger knob", Across, slider.pull_at;
    /// Diameter of the finger knob's shank.
    Shank, "finger knob shank", Increase, slider.shank;
    /// Slider.
    SliderThickness, "slider thickness", Increase, slider.thickness;
    /// From the plate's underside down to the slider.
    SliderBelow, "clearance of the slider below the plate", Increase, slider.below;
    /// Hardest pull that must be borne, N.
    Pull, "hardest pull", Increase, slider.pull;
    /// Coefficient of friction in the guide.
    Friction, "friction in the guide", Increase, slider.friction;
    /// x of the tab's middle.
    TabAt, "tab", Across, tab.at;
    /// Tab along x; also the slider's neck in its guide.
    TabWidth, "tab width", Increase, tab.width;
    /// Overlap of tab and keeper when shut.
    Engagement, "engagement", Lengthen, tab.engagement;
    /// The least overlap that still counts as held.
    RequiredHold, "required hold", Increase, tab.required_hold;
    /// y of the edge that the tab has to clear.
    KeeperEdge, "keeper edge", Back, keeper.edge;
    /// Keeper along x.
    KeeperWidth, "keeper width", Increase, keeper.width;
    /// Keeper along y.
    KeeperDepth, "keeper depth", Increase, keeper.depth;
    /// Keeper.
    KeeperThickness, "keeper thickness", Increase, keeper.thickness;
    /// Room in the box along x.
    InsideWidth, "inside width", Increase, inside.width;
    /// Room in the box along y.
    InsideDepth, "inside depth", Increase, inside.depth;
    /// Room in the box from its floor to the lid.
    InsideHeight, "inside height", Increase, inside.height;
    /// ± on each axis of a pin.
    PinPlace, "error of a pin's place", Increase, workmanship.pin_place;
    /// ± on each axis of a bore.
    BorePlace, "error of a bore's place", Increase, workmanship.bore_place;
    /// ± along y of the keeper's edge.
    KeeperPlace, "error of the keeper's place", Increase, workmanship.keeper_place;
    /// ± on a thickness or height.
    Thickness, "error of a thickness", Increase, workmanship.thickness;
    /// ± on a printed width or diameter.
    Print, "error of the print", Increase, workmanship.print;
    /// Coats on one face.
    Film, "coat thickness", Increase, workmanship.film;
    /// ± on the coats of one face.
    FilmSpread, "spread of the coats", Increase, workmanship.film_spread;
    /// How far off its mark a pointer may stand, ± degrees.
    Reading, "reading error", Increase, workmanship.reading;
);

sizes!(
    /// A size of one dial with disc, pin, key, bore and knob, mm.
    DialSize in Dial:
    /// x of the shaft.
    CentreX, "centre", Across, centre.0;
    /// y of the shaft.
    CentreY, "centre", Back, centre.1;
    /// Rim of the disc.
    DiscRadius, "disc radius", Increase, disc.radius;
    /// Disc.
    DiscThickness, "disc thickness", Increase, disc.thickness;
    /// From the plate's underside down to the disc.
    DiscBelow, "clearance below the plate of the disc", Increase, disc.below;
    /// Pin.
    PinDiameter, "pin diameter", Increase, pin.diameter;
    /// x of the pin from the dial's centre line.
    PinOffset, "pin", Across, pin.offset;
    /// Clear distance from pin to rim when shut.
    Gap, "gap", Widen, pin.gap;
    /// Pin along the dial's axis.
    PinHeight, "pin length", Lengthen, pin.height;
    /// Of the pin, out of its finger.
    PinFree, "free length of the pin", Lengthen, pin.free;
    /// From the middle of the post to a flat.
    Apothem, "key apothem", Increase, key.apothem;
    /// Most clearance at a flat.
    Clearance, "key clearance", Widen, key.clearance;
    /// Hole in the plate.
    BoreDiameter, "bore diameter", Increase, bore.diameter;
    /// How far the shaft can shift to any side.
    ShaftPlay, "shaft play", Widen, bore.shaft_play;
    /// Knob.
    KnobDiameter, "knob diameter", Increase, knob.diameter;
    /// Knob above the plate.
    KnobHeight, "knob height", Increase, knob.height;
);

sizes!(
    /// A size of one slot of a disc, mm.
    SlotSize in Slot:
    /// Between the walls.
    Width, "width", Increase, width;
    /// From the rim circle to the deepest point of the floor.
    Depth, "depth", Increase, depth;
    /// Chamfer on both mouth corners.
    LeadIn, "lead-in", Lengthen, lead_in;
);

sizes!(
    /// A size of the box under the lid, mm.
    BodySize in Body:
    /// Sides, as measured.
    Sides, "thickness of the sides", Increase, thickness;
    /// Grooves for floor and top.
    Groove, "depth of the grooves", Increase, groove;
    /// From the lower edge of the sides up to the floor.
    Foot, "height of the floor above the lower edge", Increase, foot;
    /// Floor, as measured.
    Floor, "thickness of the floor", Increase, floor.thickness;
    /// Hinge along x.
    HingeLength, "hinge length", Lengthen, hinge.length;
    /// One leaf, from its edge to the middle of the pin.
    HingeLeaf, "hinge leaf", Widen, hinge.leaf;
    /// One leaf: how deep it is let in.
    HingeThickness, "hinge thickness", Increase, hinge.thickness;
    /// From the outside of the box to the hinge's nearer end.
    HingeInset, "hinge inset", Lengthen, hinge.inset;
);

sizes!(
    /// A number of what the maker has, mm; the density is in g/cm³.
    BenchSize in Bench:
    /// What one cut takes away.
    Kerf, "kerf", Increase, kerf;
    /// Cut off each end of a board.
    EndTrim, "end trim", Lengthen, end_trim;
    /// How much larger a part is sawn at first.
    Rough, "rough allowance", Increase, rough;
    /// Of the printer's nozzle: a line is as wide.
    Nozzle, "width of the nozzle", Increase, printer.nozzle;
    /// Height of a layer.
    Layer, "layer height", Increase, printer.layer;
    /// The printer's bed along x.
    BedX, "bed width", Increase, printer.bed.0;
    /// The printer's bed along y.
    BedY, "bed depth", Increase, printer.bed.1;
    /// Of the highest print.
    PrintHeight, "greatest height of a print", Increase, printer.height;
    /// How much too large an outside width comes out.
    Outside, "oversize of a print's outside", Increase, printer.outside;
    /// How far the first layers spread, a side.
    FirstLayers, "spread of the first layers", Increase, printer.foot;
    /// Radius that an inside corner gets.
    InsideCorner, "radius of a print's inside corners", Increase, printer.corner;
    /// Of the plastic, g/cm³.
    Density, "density of the plastic", Increase, printer.density;
    /// Diameter of the filament.
    Filament, "filament diameter", Increase, printer.filament;
);

sizes!(
    /// A size of boards of one kind, mm.
    BoardSize in Board:
    /// Along the grain.
    Length, "length", Lengthen, length;
    /// Across the grain.
    Width, "width", Increase, width;
    /// As measured.
    Thickness, "thickness", Increase, thickness;
);

sizes!(
    /// One side of a reading of the fit gauge, mm.
    HoleSize in HoleReading:
    /// As drawn.
    Diameter, "diameter", Increase, diameter;
    /// How much smaller it came out.
    Under, "shortfall", Increase, under;
);

sizes!(
    /// A coefficient of a wood that the maker has measured: a fraction of its size for each per cent of moisture.
    WoodSize in OwnWood:
    /// Width of a quarter-sawn board.
    Radial, "radial movement", Increase, radial;
    /// Width of a flat-sawn board.
    Tangential, "tangential movement", Increase, tangential;
);

sizes!(
    /// Temperature (°C) or relative humidity (per cent) of an air of the year.
    AirSize in Season:
    /// On the day the sizes were true.
    BuiltCelsius, "temperature when built", Increase, built.celsius;
    /// On the day the sizes were true.
    BuiltHumidity, "humidity when built", Increase, built.humidity;
    /// Where the air is driest.
    DriestCelsius, "temperature at the driest", Increase, driest.celsius;
    /// Where the air is driest.
    DriestHumidity, "humidity at the driest", Increase, driest.humidity;
    /// Where the air is dampest.
    DampestCelsius, "temperature at the dampest", Increase, dampest.celsius;
    /// Where the air is dampest.
    DampestHumidity, "humidity at the dampest", Increase, dampest.humidity;
);
