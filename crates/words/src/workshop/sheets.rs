//! Why a part has no template, a drawing no tiles, or a reading is not believed.

use latchwright_model::Units;
use latchwright_workshop::WoodPart;
use latchwright_workshop::ruler::{Diagonal, LEAST, MOST, MOST_SKEW_DEG, RulerFault};
use latchwright_workshop::tiles::{MARGIN, MOST_SHEETS, TilesFault, paper_name};

use super::{bare, sizes_on_a_bench};
use crate::figure::unit_name;

/// The inch ruler's tick on a line whose other tick is at 100 mm, in.
const INCH_TICK: f64 = 4.0;

/// Why `part` has no template.
pub fn no_template(part: WoodPart, units: Units) -> String {
    format!(
        "the {} has no template: a size is no number from {}",
        part.name(),
        sizes_on_a_bench(units)
    )
}

/// Why a drawing is not cut into tiles.
pub fn tiles_fault(fault: &TilesFault, units: Units) -> String {
    let unit = unit_name(units);
    match fault {
        TilesFault::NoSize => {
            "the drawing has no size to lay on paper: mend the sizes of this part first".to_owned()
        }
        TilesFault::NoRoom { paper, overlap } => format!(
            "{} leaves no room for a drawing beside its margins of {} {unit} and an overlap of {} \
             {unit}: choose larger paper",
            paper_name(*paper),
            bare(MARGIN, units),
            bare(*overlap, units)
        ),
        TilesFault::TooManySheets {
            paper,
            size,
            sheets,
        } => format!(
            "{} × {} {unit} would take {sheets:.0} sheets of {}, more than {MOST_SHEETS}: choose \
             larger paper, or mark this part out from its numbers",
            bare(size.0, units),
            bare(size.1, units),
            paper_name(*paper)
        ),
    }
}

/// Why readings of the measured lines are not believed.
pub fn ruler_fault(fault: &RulerFault, units: Units) -> String {
    let (unit, in_units) = match units {
        Units::Millimetre => ("mm", "millimetres"),
        Units::Inch => ("in", "inches"),
    };
    let bare = |mm: f64| bare(mm, units);
    match fault {
        RulerFault::NoNominal { axis } => format!(
            "the line along {} has no length to compare with: choose a sheet with measured lines",
            axis.letter()
        ),
        RulerFault::NotMeasured { axis } => format!(
            "the line along {} was not measured: type what the ruler says, in {in_units}",
            axis.letter()
        ),
        RulerFault::Factor {
            axis,
            measured,
            nominal,
            factor,
        } => {
            // an inch ruler is read at a tick of its own
            let read = |mm: f64| match units {
                Units::Millimetre => bare(mm),
                Units::Inch => format!("{:.3}", mm / nominal * INCH_TICK),
            };
            format!(
                "{} {unit} measured along {} of {} {unit} would ask for a factor of {factor:.2}, \
                 outside {LEAST:.2} to {MOST:.2}: that is a slip of the ruler; measure again from the \
                 first tick, in {in_units}",
                read(*measured),
                axis.letter(),
                read(*nominal)
            )
        }
        RulerFault::NoDiagonal { which } => {
            let which = match which {
                Diagonal::Rising => "rising",
                Diagonal::Falling => "falling",
            };
            format!(
                "the {which} diagonal is no length: measure it again, or leave both diagonals out"
            )
        }
        RulerFault::DiagonalsOff {
            diagonals,
            sides,
            off,
        } => format!(
            "diagonals of {} and {} {unit} do not belong to sides of {} and {} {unit}: together they \
             are off by {} per cent; measure all four again",
            bare(diagonals.0),
            bare(diagonals.1),
            bare(sides.0),
            bare(sides.1),
            latchwright_workshop::inch::decimal(off * 100.0)
        ),
        RulerFault::Leans {
            diagonals,
            lean_deg,
        } => format!(
            "diagonals of {} and {} {unit} mean that the print leans by {}°, more than \
             {MOST_SKEW_DEG}°: that is a slip of the ruler or a sheet that was pulled in askew; print \
             and measure again",
            bare(diagonals.0),
            bare(diagonals.1),
            latchwright_workshop::inch::decimal(*lean_deg)
        ),
    }
}
