//! The tables of numbers: name, address, and why it matters.

use egui::Ui;
use latchwright_model::Design;
use latchwright_model::Size;
use latchwright_model::change::{AirSize, BenchSize, BodySize, DialSize, LatchSize};

use crate::action::Action;
use crate::edit::Edit;
use crate::field::{self, Kind};

/// A number of the design, `S` its address or, for a number of each dial, the part of it that is
/// the same for all dials.
#[derive(Debug, Clone, Copy)]
pub struct Row<S> {
    pub name: &'static str,
    pub kind: Kind,
    pub size: S,
    pub why: &'static str,
}

macro_rules! rows {
    ($of:path: $($name:literal, $kind:ident, $size:expr, $why:literal;)+) => {
        &[$(Row { name: $name, kind: Kind::$kind, size: $of($size), why: $why }),+]
    };
    ($($name:literal, $kind:ident, $size:expr, $why:literal;)+) => {
        &[$(Row { name: $name, kind: Kind::$kind, size: $size, why: $why }),+]
    };
}

/// Rows, where the design has such numbers.
pub fn rows_ui(ui: &mut Ui, design: &Design, rows: &[Row<Size>], wishes: &mut Vec<Action>) {
    for row in rows {
        size_ui(ui, design, row.name, row, wishes);
    }
}

/// One row under a name of its own.
pub fn size_ui(
    ui: &mut Ui,
    design: &Design,
    name: &str,
    row: &Row<Size>,
    wishes: &mut Vec<Action>,
) {
    let Row {
        kind, size, why, ..
    } = *row;
    let Some(now) = size.get(design) else {
        return;
    };
    if let Some(value) = field::number_ui(ui, name, now, kind, design.units, why) {
        wishes.push(Action::Edit(Edit::Number {
            name: name.to_owned(),
            size,
            value,
        }));
    }
}

/// Room in the box.
pub const INSIDE: &[Row<Size>] = rows!(Size::Latch:
    "Inside width", Length, LatchSize::InsideWidth, "Room in the box, left to right";
    "Inside depth", Length, LatchSize::InsideDepth, "Room in the box, front to hinge";
    "Inside height", Length, LatchSize::InsideHeight, "From the floor to the underside of the closed lid";
);

/// The sides of the box.
pub const SIDES: &[Row<Size>] = rows!(Size::Body:
    "Side thickness", Length, BodySize::Sides, "As measured, not as sold: the outside of the box follows from it";
    "Groove depth", Length, BodySize::Groove, "For floor and top; at most half the side, or the corners get weak";
    "Floor above edge", Length, BodySize::Foot, "From the lower edge of the sides up to the floor: what the box stands on";
);

/// The floor of the box.
pub const FLOOR: &[Row<Size>] = rows!(Size::Body:
    "Floor thickness", Length, BodySize::Floor, "As measured: the groove is cut as wide";
);

/// The lid where it is a band cut off the box.
pub const BAND: &[Row<Size>] = rows!(
    "Band height", Length, Size::Band, "What the sides of the lid keep once it is cut off by one kerf";
);

/// The hinges.
pub const HINGE: &[Row<Size>] = rows!(Size::Body:
    "Hinge length", Length, BodySize::HingeLength, "Along the back edge";
    "Hinge leaf", Length, BodySize::HingeLeaf, "From its edge to the middle of the pin";
    "Leaf thickness", Length, BodySize::HingeThickness, "How deep it is let in";
    "Hinge inset", Length, BodySize::HingeInset, "From the outside of the box to the hinge's nearer end";
);

/// The plate.
pub const PLATE: &[Row<Size>] = rows!(Size::Latch:
    "Plate width", Length, LatchSize::PlateWidth, "Along the front edge";
    "Plate depth", Length, LatchSize::PlateDepth, "From the front edge to the hinge";
    "Plate thickness", Length, LatchSize::PlateThickness, "As measured, not as sold";
    "Rabbet depth", Length, LatchSize::Rabbet, "Cut into its underside over the keeper; deeper than the keeper is thick";
    "Room below", Length, LatchSize::Room, "Free height under the plate, down to a tray or what the box holds";
);

/// The slider.
pub const SLIDER: &[Row<Size>] = rows!(Size::Latch:
    "Travel", Length, LatchSize::Travel, "From shut to free; must pull the tab clear of the keeper";
    "Guide length", Length, LatchSize::GuideLength, "Between the two guide points; longer means less yaw";
    "Guide play", Length, LatchSize::GuidePlay, "How far each guide point can shift to either side";
    "Guide middle x", Length, LatchSize::GuideX, "Right of the middle of the front edge";
    "Guide middle y", Length, LatchSize::GuideY, "Behind the front edge";
    "Finger knob x", Length, LatchSize::PullAt, "Right of the middle; a pull in line with the guide does not jam";
    "Finger knob shank", Length, LatchSize::Shank, "Runs in a slot through the plate";
    "Slider thickness", Length, LatchSize::SliderThickness, "As measured; across the grain a thin tab breaks";
    "Slider below plate", Length, LatchSize::SliderBelow, "Clear distance from the plate's underside to its upper face";
    "Hardest pull", Newton, LatchSize::Pull, "What slider and lid must bear; 70 N is the pull of toy tests";
    "Friction in the guide", Ratio, LatchSize::Friction, "0.5 for wood or plastic on wood, less when waxed";
);

/// Tab and keeper.
pub const HELD: &[Row<Size>] = rows!(Size::Latch:
    "Tab middle x", Length, LatchSize::TabAt, "Right of the middle of the front edge";
    "Tab width", Length, LatchSize::TabWidth, "Also the width of the slider's neck in its guide";
    "Engagement", Length, LatchSize::Engagement, "How far the tab reaches under the keeper when shut";
    "Required hold", Length, LatchSize::RequiredHold, "The least overlap that still counts as held";
    "Keeper edge y", Length, LatchSize::KeeperEdge, "The edge that the tab has to clear, behind the front edge";
    "Keeper width", Length, LatchSize::KeeperWidth, "Along the front edge";
    "Keeper depth", Length, LatchSize::KeeperDepth, "Towards the hinge";
    "Keeper thickness", Length, LatchSize::KeeperThickness, "As measured";
);

/// Saw and finish.
pub const SAW: &[Row<Size>] = rows!(
    "Kerf", Length, Size::Bench(BenchSize::Kerf), "What one cut takes away: measure a cut in scrap";
    "Ends trimmed by", Length, Size::Bench(BenchSize::EndTrim), "Cut off each end of a board before it is used, for checks and dirt";
    "Rough allowance", Length, Size::Bench(BenchSize::Rough), "How much larger a part is sawn before it is brought to size";
    "Coats of finish", Count, Size::Coats, "On one face; how thick they are together stands under Workmanship";
);

/// The printer.
pub const PRINTER: &[Row<Size>] = rows!(Size::Bench:
    "Nozzle", Length, BenchSize::Nozzle, "A printed line is as wide";
    "Layer height", Length, BenchSize::Layer, "Heights of printed parts come in whole layers";
    "Bed width", Length, BenchSize::BedX, "What can be printed in one piece, left to right";
    "Bed depth", Length, BenchSize::BedY, "What can be printed in one piece, front to back";
    "Print height", Length, BenchSize::PrintHeight, "Of the highest part that it can print";
    "Outside too large by", Length, BenchSize::Outside, "Over both sides, by calipers on a printed block; below 0 for too small";
    "First layers spread", Length, BenchSize::FirstLayers, "How far they stick out beyond the rest, a side";
    "Inside corner radius", Length, BenchSize::InsideCorner, "A printed inside corner is never sharp";
    "Plastic density", Density, BenchSize::Density, "For the weight of what is printed; PLA has 1.24";
    "Filament", Length, BenchSize::Filament, "Diameter, for the length that is used";
);

/// How exactly the maker works.
pub const WORKMANSHIP: &[Row<Size>] = rows!(Size::Latch:
    "Pins placed within", Length, LatchSize::PinPlace, "± on each axis, marked out and drilled";
    "Bores placed within", Length, LatchSize::BorePlace, "± on each axis, marked out and drilled";
    "Keeper placed within", Length, LatchSize::KeeperPlace, "± along the travel";
    "Thicknesses within", Length, LatchSize::Thickness, "± on a thickness or height: planed, cut, shimmed or printed";
    "Prints true within", Length, LatchSize::Print, "± on a printed width or diameter";
    "Coats on a face", Length, LatchSize::Film, "Thickness of paint or finish on one face";
    "Coats even within", Length, LatchSize::FilmSpread, "± on the coats of one face";
    "Pointer read within", Degrees, LatchSize::Reading, "± how far off its mark a pointer may stand";
);

/// The air of the year.
pub const SEASON: &[Row<Size>] = rows!(Size::Air:
    "Built at", Celsius, AirSize::BuiltCelsius, "The day the sizes were true";
    "Built at humidity", Percent, AirSize::BuiltHumidity, "Relative humidity on that day";
    "Driest at", Celsius, AirSize::DriestCelsius, "Where the box lives, heating on";
    "Driest humidity", Percent, AirSize::DriestHumidity, "Relative humidity at the driest";
    "Dampest at", Celsius, AirSize::DampestCelsius, "Where the box lives, in a wet summer";
    "Dampest humidity", Percent, AirSize::DampestHumidity, "Relative humidity at the dampest";
);

/// Where a dial stands: its own, even when all dials are changed alike.
pub const PLACE: &[Row<DialSize>] = rows!(
    "Centre x", Length, DialSize::CentreX, "Right of the middle of the front edge";
    "Centre y", Length, DialSize::CentreY, "Behind the front edge";
);

/// The disc, its slots apart.
pub const DISC: &[Row<DialSize>] = rows!(
    "Disc radius", Length, DialSize::DiscRadius, "Rim of the slotted disc";
    "Disc thickness", Length, DialSize::DiscThickness, "The pin should meet two thirds of it";
    "Disc below plate", Length, DialSize::DiscBelow, "Clear distance from the plate's underside, such as a washer";
);

/// The pin.
pub const PIN: &[Row<DialSize>] = rows!(
    "Pin diameter", Length, DialSize::PinDiameter, "A dowel or print; the slot must be wider";
    "Pin offset", Length, DialSize::PinOffset, "Right of the dial's centre line";
    "Gap to rim", Length, DialSize::Gap, "Between pin and rim when the slider is forward";
    "Pin length", Length, DialSize::PinHeight, "Along the dial's axis; its upper end is level with the slider's upper face";
    "Pin stands free", Length, DialSize::PinFree, "As much of it as its finger does not hold; less is stronger";
);

/// Key, shaft and bore.
pub const SHAFT: &[Row<DialSize>] = rows!(
    "Key apothem", Length, DialSize::Apothem, "From the post's middle to a flat";
    "Key clearance", Length, DialSize::Clearance, "The most there is at a flat once the post is fitted";
    "Bore diameter", Length, DialSize::BoreDiameter, "The hole for the shaft";
    "Shaft play", Length, DialSize::ShaftPlay, "How far the shaft can shift to any side";
);

/// The knob.
pub const KNOB: &[Row<DialSize>] = rows!(
    "Knob diameter", Length, DialSize::KnobDiameter, "Leave room for fingers between knobs";
    "Knob height", Length, DialSize::KnobHeight, "Above the plate";
);

#[cfg(test)]
mod tests {
    use latchwright_model::LidKind;

    use super::*;

    /// Rows of their own make elsewhere in the panel, in lists, or on the card.
    fn elsewhere(size: Size) -> bool {
        matches!(
            size,
            Size::Slot(..)
                | Size::SlotMark(..)
                | Size::Positions(_)
                | Size::KeySides(_)
                | Size::Digit(_)
                | Size::Fraction
                | Size::Bit(_)
                | Size::Board(..)
                | Size::BoardCount(_)
                | Size::Hole(..)
                | Size::Wood(..)
                | Size::Youngest
        )
    }

    #[test]
    fn every_number_has_one_row_and_no_two_rows_share_a_name() {
        let mut design = Design::default();
        design.dials.truncate(1);
        design.body.lid = LidKind::Band { height: 20.0 };
        let mut wanted = Size::all(&design);
        wanted.extend(Size::beside(&design));
        wanted.retain(|size| !elsewhere(*size));
        let mut rows = Vec::new();
        for part in [
            INSIDE,
            SIDES,
            FLOOR,
            BAND,
            HINGE,
            PLATE,
            SLIDER,
            HELD,
            SAW,
            PRINTER,
            WORKMANSHIP,
            SEASON,
        ] {
            rows.extend(part.iter().map(|row| (row.name, row.size)));
        }
        for part in [PLACE, DISC, PIN, SHAFT, KNOB] {
            let of_dial = |row: &Row<DialSize>| (row.name, Size::Dial(0, row.size));
            rows.extend(part.iter().map(of_dial));
        }
        let mut names: Vec<&str> = rows.iter().map(|(name, _)| *name).collect();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), rows.len());
        let mut found: Vec<Size> = rows.into_iter().map(|(_, size)| size).collect();
        found.sort_unstable();
        wanted.sort_unstable();
        assert_eq!(found, wanted);
    }
}
