//! The tables of numbers: name, how to read and write it, and why it matters.

use latchwright_solver::model::{Design, Dial};

use crate::field::Kind;

/// A number of the design.
#[derive(Clone, Copy)]
pub struct DesignRow {
    pub name: &'static str,
    pub kind: Kind,
    pub get: fn(&Design) -> f64,
    pub set: fn(&mut Design, f64),
    pub why: &'static str,
}

/// A number of one dial.
#[derive(Clone, Copy)]
pub struct DialRow {
    pub name: &'static str,
    pub kind: Kind,
    pub get: fn(&Dial) -> f64,
    pub set: fn(&mut Dial, f64),
    pub why: &'static str,
}

/// Numbers that belong together.
pub struct Group {
    pub name: &'static str,
    pub rows: &'static [DesignRow],
}

macro_rules! rows {
    ($what:ident, $of:ident: $($name:literal, $kind:ident, $($field:tt).+, $why:literal;)+) => {
        &[$($what {
            name: $name,
            kind: Kind::$kind,
            get: |$of| $of.$($field).+,
            set: |$of, value| $of.$($field).+ = value,
            why: $why,
        }),+]
    };
}

/// Everything but the dials, in the order in which a maker meets it.
pub const GROUPS: [Group; 6] = [
    Group {
        name: "Plate",
        rows: rows!(DesignRow, d:
            "Plate width", Length, plate.width, "Along the front edge";
            "Plate depth", Length, plate.depth, "From the front edge to the hinge";
            "Plate thickness", Length, plate.thickness, "As measured, not as sold";
            "Rabbet depth", Length, plate.rabbet, "Cut into its underside over the keeper; deeper than the keeper is thick";
            "Room below", Length, plate.room, "Free height under the plate, down to a tray or what the box holds";
        ),
    },
    Group {
        name: "Slider",
        rows: rows!(DesignRow, d:
            "Travel", Length, slider.travel, "From shut to free; must pull the tab clear of the keeper";
            "Guide length", Length, slider.guide_length, "Between the two guide points; longer means less yaw";
            "Guide play", Length, slider.guide_play, "How far each guide point can shift to either side";
            "Guide middle x", Length, slider.guide_at.0, "Right of the middle of the front edge";
            "Guide middle y", Length, slider.guide_at.1, "Behind the front edge";
            "Finger knob x", Length, slider.pull_at, "Right of the middle; a pull in line with the guide does not jam";
            "Finger knob shank", Length, slider.shank, "Runs in a slot through the plate";
            "Slider thickness", Length, slider.thickness, "As measured; across the grain a thin tab breaks";
            "Slider below plate", Length, slider.below, "Clear distance from the plate's underside to its upper face";
            "Hardest pull", Newton, slider.pull, "What slider and lid must bear; 70 N is the pull of toy tests";
            "Friction in the guide", Ratio, slider.friction, "0.5 for wood or plastic on wood, less when waxed";
        ),
    },
    Group {
        name: "Tab and keeper",
        rows: rows!(DesignRow, d:
            "Tab middle x", Length, tab.at, "Right of the middle of the front edge";
            "Tab width", Length, tab.width, "Also the width of the slider's neck in its guide";
            "Engagement", Length, tab.engagement, "How far the tab reaches under the keeper when shut";
            "Required hold", Length, tab.required_hold, "The least overlap that still counts as held";
            "Keeper edge y", Length, keeper.edge, "The edge that the tab has to clear, behind the front edge";
            "Keeper width", Length, keeper.width, "Along the front edge";
            "Keeper depth", Length, keeper.depth, "Towards the hinge";
            "Keeper thickness", Length, keeper.thickness, "As measured";
        ),
    },
    Group {
        name: "Inside",
        rows: rows!(DesignRow, d:
            "Inside width", Length, inside.width, "Room in the box, left to right";
            "Inside depth", Length, inside.depth, "Room in the box, front to hinge";
            "Inside height", Length, inside.height, "From the floor to the underside of the closed lid";
        ),
    },
    Group {
        name: "Workmanship",
        rows: rows!(DesignRow, d:
            "Pins placed within", Length, workmanship.pin_place, "± on each axis, marked out and drilled";
            "Bores placed within", Length, workmanship.bore_place, "± on each axis, marked out and drilled";
            "Keeper placed within", Length, workmanship.keeper_place, "± along the travel";
            "Thicknesses within", Length, workmanship.thickness, "± on a thickness or height: planed, cut, shimmed or printed";
            "Prints true within", Length, workmanship.print, "± on a printed width or diameter";
            "Coats on a face", Length, workmanship.film, "Thickness of paint or finish on one face";
            "Coats even within", Length, workmanship.film_spread, "± on the coats of one face";
            "Pointer read within", Degrees, workmanship.reading, "± how far off its mark a pointer may stand";
        ),
    },
    Group {
        name: "Season",
        rows: rows!(DesignRow, d:
            "Built at", Celsius, season.built.celsius, "The day the sizes were true";
            "Built at humidity", Percent, season.built.humidity, "Relative humidity on that day";
            "Driest at", Celsius, season.driest.celsius, "Where the box lives, heating on";
            "Driest humidity", Percent, season.driest.humidity, "Relative humidity at the driest";
            "Dampest at", Celsius, season.dampest.celsius, "Where the box lives, in a wet summer";
            "Dampest humidity", Percent, season.dampest.humidity, "Relative humidity at the dampest";
        ),
    },
];

/// Where a dial stands: its own, even when all dials are changed alike.
pub const PLACE: &[DialRow] = rows!(DialRow, d:
    "Centre x", Length, centre.0, "Right of the middle of the front edge";
    "Centre y", Length, centre.1, "Behind the front edge";
);

/// The sizes of a dial, its slots apart.
pub const DIAL: &[DialRow] = rows!(DialRow, d:
    "Disc radius", Length, disc.radius, "Rim of the slotted disc";
    "Disc thickness", Length, disc.thickness, "The pin should meet two thirds of it";
    "Disc below plate", Length, disc.below, "Clear distance from the plate's underside, such as a washer";
    "Pin diameter", Length, pin.diameter, "A dowel or print; the slot must be wider";
    "Pin offset", Length, pin.offset, "Right of the dial's centre line";
    "Gap to rim", Length, pin.gap, "Between pin and rim when the slider is forward";
    "Pin length", Length, pin.height, "Along the dial's axis; its upper end is level with the slider's upper face";
    "Pin stands free", Length, pin.free, "As much of it as its finger does not hold; less is stronger";
    "Key apothem", Length, key.apothem, "From the post's middle to a flat";
    "Key clearance", Length, key.clearance, "The most there is at a flat once the post is fitted";
    "Bore diameter", Length, bore.diameter, "The hole for the shaft";
    "Shaft play", Length, bore.shaft_play, "How far the shaft can shift to any side";
    "Knob diameter", Length, knob.diameter, "Leave room for fingers between knobs";
    "Knob height", Length, knob.height, "Above the plate";
);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_writes_what_it_reads_and_nothing_else_has_its_name() {
        let mut names = Vec::new();
        for row in GROUPS.iter().flat_map(|group| group.rows) {
            let mut design = Design::default();
            (row.set)(&mut design, 12.25);
            assert_eq!((row.get)(&design), 12.25, "{}", row.name);
            assert_ne!(design, Design::default(), "{}", row.name);
            names.push(row.name);
        }
        for row in PLACE.iter().chain(DIAL) {
            let mut dial = Dial::default();
            (row.set)(&mut dial, 12.25);
            assert_eq!((row.get)(&dial), 12.25, "{}", row.name);
            names.push(row.name);
        }
        let all = names.len();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), all);
    }
}
