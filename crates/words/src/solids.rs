//! Words for printed parts: what is to be known before printing, and why a part cannot be made. Each is
//! one sentence without capital and trailing stop.

use latchwright_model::{PinMake, Units};
use latchwright_solids::fit::{Reading, ReadingFault};
use latchwright_solids::part::{Kind, PartId};
use latchwright_solids::{MeshFault, PartFault, SizeOption, Slim, Wall, Warning};

use crate::figure::{mm_per, unit_name};
use latchwright_model::unit::MM_PER_INCH;

/// A length to the nearest hundredth of a millimetre or thousandth of an inch, with its unit.
fn length(mm: f64, units: Units) -> String {
    format!("{} {}", bare(mm, units), unit_name(units))
}

/// The same without its unit.
fn bare(mm: f64, units: Units) -> String {
    let value = mm / mm_per(units);
    match units {
        Units::Millimetre => format!("{value:.2}"),
        Units::Inch => format!("{value:.3}"),
    }
}

/// The size of something that lies on a bed: a tenth of a millimetre or a hundredth of an inch.
fn rough(mm: f64, units: Units) -> String {
    let value = mm / mm_per(units);
    match units {
        Units::Millimetre => format!("{value:.1}"),
        Units::Inch => format!("{value:.2}"),
    }
}

/// What is to be known before a part is printed.
#[expect(clippy::too_many_lines, reason = "one arm a sentence, and no more")]
pub fn warning(warning: &Warning, units: Units) -> String {
    let say = |mm: f64| length(mm, units);
    match *warning {
        Warning::StandingPin {
            dial,
            free,
            diameter,
            most_diameters,
        } => {
            let pin = dial.map_or_else(|| "pin".to_owned(), |dial| format!("pin {}", dial + 1));
            format!(
                "the {pin} stands {} free on {}, more than {most_diameters} diameters: its layers \
                 would shear at the root; print it lying, or set a dowel of {}",
                say(free),
                say(diameter),
                say(diameter)
            )
        }
        Warning::PinSetIn { make, dial, long } => format!(
            "glue the {} of dial {}, {} long, through its finger, its end level with the slider's upper \
             face",
            rod(make),
            dial + 1,
            say(long)
        ),
        Warning::UseOfStrip { deep, wide } => format!(
            "cut a lap {} deep and {} wide into the underside of the slider's bar, along its edge \
             towards the discs, leave the fingers off the wood, and glue and screw the strip into it",
            say(deep),
            say(wide)
        ),
        Warning::UseOfJig { notch } => format!(
            "lay it on the outside of the plate with the fence over the front edge and its notch on \
             {}, that edge towards you; clamp it, wear eye protection, keep to the drill's manual",
            from_the_middle(notch, units)
        ),
        Warning::UseOfGauge { width } => format!(
            "print it as all other parts are printed; measure each hole, the bar's width of {} at the \
             bed and above it, and the square's diagonal, and enter the readings",
            say(width)
        ),
        Warning::NoPilot { face, needed } => {
            let least = match units {
                Units::Millimetre => format!("{needed} mm"),
                Units::Inch => say(needed),
            };
            format!(
                "only {} of face would hold the screw, {least} are needed: glue the key, or make the \
                 knob {} higher",
                say(face),
                say(needed - face)
            )
        }
        Warning::NoScrew { through, into } => format!(
            "no screw that is sold goes through {} and holds within {}: glue disc and knob to each other, \
             or make the knob higher",
            say(through),
            say(into)
        ),
        Warning::LeftOut { part, size, bed } => {
            format!("{}; it is left out", too_large(part, size, bed, units))
        }
        Warning::FlatBehind { wide } => format!(
            "the pin has a flat {} wide to lie on: set it with the flat away from the disc",
            say(wide)
        ),
        Warning::SmallLabels { high, wanted } => format!(
            "labels are {} high instead of {}, so that the ring stays clear of its neighbour; set the \
             dials further apart",
            say(high),
            say(wanted)
        ),
        Warning::ThinLabels { labels, nozzle } => format!(
            "strokes of {labels} labels are thinner than the nozzle's {} and may not be laid down: \
             take a bolder face or larger labels",
            say(nozzle)
        ),
        Warning::BareMarks { bare, marks } => format!(
            "{bare} of {marks} marks stay without a label: no outlines for them, or no room; write \
             them by hand"
        ),
        Warning::NoRing { least } => {
            let least = match units {
                Units::Millimetre => format!("{least} mm"),
                Units::Inch => say(least),
            };
            format!(
                "between the knobs there is no room for a ring of labels at least {least} high: set \
                 the dials further apart, make the knobs smaller, or mark the plate itself"
            )
        }
        Warning::PostRelieved {
            corner,
            relief,
            backlash_deg,
        } => format!(
            "the star's corners print with a radius of {}, so the post's edges are rounded by {} and \
             the disc turns ± {backlash_deg:.2}° on its seat; print finer, or make the key larger",
            say(corner),
            say(relief)
        ),
        Warning::StandingShank {
            long,
            diameter,
            most_diameters,
        } => format!(
            "the shank stands {} on {}, more than {most_diameters} diameters, and its layers would \
             shear: let a screw of at least {} through it from below take the pull, or set a dowel \
             instead",
            say(long),
            say(diameter),
            at_least(long, units)
        ),
    }
}

/// What a pin is called that is set into a slider.
const fn rod(make: PinMake) -> &'static str {
    match make {
        PinMake::Steel => "steel rod",
        PinMake::Dowel => "dowel",
        PinMake::PrintedLying | PinMake::PrintedStanding => "printed pin",
    }
}

/// Where the line `notch` mm to the right of the front edge's middle is, for somebody who looks at the
/// plate from outside.
fn from_the_middle(notch: f64, units: Units) -> String {
    let off = bare(notch.abs(), units);
    // what would be told as nought is the middle
    if notch.abs() < 0.005 {
        return "the edge's middle".to_owned();
    }
    let side = if notch < 0.0 { "left" } else { "right" };
    format!(
        "the line {off} {} {side} of the edge's middle",
        unit_name(units)
    )
}

/// A length of a screw that is no shorter: whole millimetres, or eighths of an inch.
fn at_least(mm: f64, units: Units) -> String {
    match units {
        Units::Millimetre => format!("{:.0} mm", mm.ceil()),
        Units::Inch => {
            let eighths = (mm / MM_PER_INCH * 8.0 - 1e-9).ceil();
            format!("{} in", eighths / 8.0)
        }
    }
}

/// Why a part cannot be made.
pub fn part_fault(fault: &PartFault, units: Units) -> String {
    let say = |mm: f64| length(mm, units);
    match fault {
        PartFault::Design(fault) => crate::fault_sentence(fault, units),
        PartFault::Option {
            which,
            value_mm,
            least_mm,
            most_mm,
        } => format!(
            "option {} is {}; give a value from {} to {}",
            option(*which),
            as_given(*value_mm, units),
            as_given(*least_mm, units),
            as_given(*most_mm, units)
        ),
        PartFault::RecessThrough {
            part,
            recess_mm,
            height_mm,
            left_mm,
            needed_mm,
            remedy_mm,
        } => format!(
            "{}: the star is {} deep in a knob {} high, which leaves {} of face where {} are needed; \
             make the knob at least {} high",
            part.name(),
            say(*recess_mm),
            say(*height_mm),
            say(*left_mm),
            say(*needed_mm),
            say(*remedy_mm)
        ),
        PartFault::NoWall {
            part,
            wall,
            wall_mm,
            needed_mm,
        } => format!(
            "{}: only {} of wall {}, less than {} (two lines of the nozzle); {}",
            part.name(),
            say(*wall_mm),
            which_wall(*wall),
            say(*needed_mm),
            thicker(*wall, units)
        ),
        PartFault::LargerThanBed {
            part,
            size_mm,
            bed_mm,
        } => too_large(*part, *size_mm, *bed_mm, units),
        PartFault::NothingToDraw {
            part,
            what,
            finished_mm,
            drawn_mm,
            least_mm,
        } => format!(
            "{}: a width or diameter of {} leaves {} to draw, less than {}; {}",
            part.name(),
            say(*finished_mm),
            say(*drawn_mm),
            say(*least_mm),
            larger(*what)
        ),
        PartFault::NoFinger { part, dial } => format!(
            "{}: no finger reaches the pin of dial {}, which is too near its neighbour's or does not \
             stand clear of the slider's bar; set the dials further apart, or level with one another",
            part.name(),
            dial + 1
        ),
        PartFault::Mesh { part, fault } => format!("{}: {}", part.name(), mesh_fault(fault, units)),
        PartFault::File { name, reason } => {
            format!("{name} cannot be put together ({reason}); leave some parts out and try again")
        }
    }
}

/// How large a part is, how large the printer's room, and what to do.
fn too_large(part: PartId, size: [f64; 3], bed: [f64; 3], units: Units) -> String {
    let unit = unit_name(units);
    let [x, y, z] = size.map(|mm| rough(mm, units));
    let [bed_x, bed_y, bed_z] = bed.map(|mm| rough(mm, units));
    format!(
        "{} is {x} × {y} × {z} {unit}, the printer takes {bed_x} × {bed_y} × {bed_z} {unit}; {}",
        part.name(),
        smaller(part)
    )
}

/// All faults, a line each.
pub fn part_faults(faults: &[PartFault], units: Units) -> String {
    let all: Vec<String> = faults
        .iter()
        .map(|fault| part_fault(fault, units))
        .collect();
    all.join("\n")
}

/// Why a reading of the gauge is not believed; in millimetres as it is typed, without the unit.
pub fn reading_fault(fault: &ReadingFault) -> String {
    let which = match fault.which {
        Reading::Hole => "hole",
        Reading::OutsideWidth => "outside width",
        Reading::WidthAtBed => "width at the bed",
        Reading::Diagonal => "diagonal",
    };
    format!(
        "option {which} is {}; give a value from {} to {}",
        fault.value, fault.least, fault.most
    )
}

/// Why a body could not be meshed.
pub fn mesh_fault(fault: &MeshFault, units: Units) -> String {
    let unit = unit_name(units);
    let per = mm_per(units);
    match fault {
        MeshFault::TooLarge { most_mm } => format!(
            "an outline reaches beyond {} {unit} or is not a number; scale it down",
            most_mm / per
        ),
        MeshFault::Tangled { crossings } => {
            format!("outlines cross in {crossings} places that cannot be told apart; simplify them")
        }
        MeshFault::NoTriangles { reason } => {
            format!("the outlines cannot be cut into triangles ({reason}); simplify them")
        }
        MeshFault::SlopesCross { x_mm, y_mm } => format!(
            "a chamfer meets another edge at x {:.3}, y {:.3} {unit}; make one of them smaller",
            x_mm / per,
            y_mm / per
        ),
        MeshFault::Open { edges } => format!(
            "{edges} edges of the surface do not join exactly two faces; move the outlines that touch"
        ),
        MeshFault::Pinched { points } => format!(
            "{points} points join parts of the surface that should be apart; move the outlines that \
             touch"
        ),
        MeshFault::Sliver {
            height_mm,
            least_mm,
        } => {
            let (height, least) = match units {
                Units::Millimetre => (format!("{height_mm:.7}"), least_mm.to_string()),
                Units::Inch => (
                    format!("{:.9}", height_mm / per),
                    format!("{:.9}", least_mm / per),
                ),
            };
            format!(
                "a triangle only {height} {unit} high, less than {least} {unit}; simplify the outlines"
            )
        }
        MeshFault::NoVolume { volume_mm3 } => {
            let volume = match units {
                Units::Millimetre => format!("{volume_mm3:.3}"),
                Units::Inch => format!("{:.6}", volume_mm3 / per / per / per),
            };
            format!("the volume is {volume} {unit}³; a solid has more than 0")
        }
    }
}

/// A number of the options; bare where it is as it was given.
fn as_given(mm: f64, units: Units) -> String {
    match units {
        Units::Millimetre => mm.to_string(),
        Units::Inch => length(mm, units),
    }
}

const fn option(which: SizeOption) -> &'static str {
    match which {
        SizeOption::ReliefHeight => "relief_height",
        SizeOption::Chamfer => "chamfer",
        SizeOption::LabelHeight => "label_height",
        SizeOption::JigDrill => "jig_drill",
    }
}

const fn which_wall(wall: Wall) -> &'static str {
    match wall {
        Wall::SlotFloor { .. } => "between a slot's floor and the screw",
        Wall::PostFlats { .. } => "between the post's flats and the screw",
        Wall::Shoulder { .. } => {
            "between the post's corners and the shaft's rim, where the knob sits"
        }
        Wall::Star { .. } => "around the star",
        Wall::Shank { .. } => "around the finger knob's shank",
        Wall::Washer { .. } => "of the washer",
        Wall::BesideHeads { .. } => "beside the heads of its screws",
        Wall::UnderHeads { .. } => "under the heads of its screws",
        Wall::BeyondScrews { .. } => "beyond its screws",
        Wall::Pilot { .. } => "around the pilot hole",
        Wall::Guide { .. } => "around the guide",
    }
}

/// What makes a wall thicker.
fn thicker(wall: Wall, units: Units) -> String {
    let say = |mm: f64| length(mm, units);
    match wall {
        Wall::SlotFloor { step, most_mm } => format!(
            "make the slot at step {step} at most {} deep, or glue the key and leave out the screw",
            say(most_mm)
        ),
        Wall::PostFlats { apothem_mm } => format!(
            "make the key's apothem at least {}, or glue the key and leave out the screw",
            say(apothem_mm)
        ),
        Wall::Shoulder { bore_mm } => format!(
            "make the bore at least {}, or the key smaller",
            say(bore_mm)
        ),
        Wall::Star { knob_mm } => format!(
            "make the knob at least {} across, or the key smaller",
            say(knob_mm)
        ),
        Wall::Shank { further_mm } => format!(
            "bring the finger knob {} further over the slider's neck or bar, or make its shank thinner",
            say(further_mm)
        ),
        Wall::Washer { radius_mm } => format!(
            "make the disc's radius at least {}, or the bore smaller",
            say(radius_mm)
        ),
        Wall::BesideHeads { depth_mm } => format!(
            "make the keeper at least {} deep, or of wood",
            say(depth_mm)
        ),
        Wall::UnderHeads { thickness_mm } => {
            format!("make the keeper at least {} thick", say(thickness_mm))
        }
        Wall::BeyondScrews { width_mm } => {
            format!("make the keeper at least {} wide", say(width_mm))
        }
        Wall::Pilot { shank_mm } => format!("make the shank at least {} thick", say(shank_mm)),
        Wall::Guide { thinner_mm } => {
            format!("guide a bit at least {} thinner", say(thinner_mm))
        }
    }
}

/// What brings a part onto the bed.
fn smaller(part: PartId) -> String {
    let whose = part
        .dial
        .map_or_else(String::new, |dial| format!(" of dial {}", dial + 1));
    match part.kind {
        Kind::Disc => {
            format!("make the disc{whose} smaller, or name the larger bed of another printer")
        }
        Kind::Knob => format!("make the knob{whose} smaller"),
        Kind::Pin if part.dial.is_none() => "print single pins instead of a strip".to_owned(),
        Kind::Slider => "make the slider of wood, with single pins or a pin strip".to_owned(),
        Kind::Keeper => "make the keeper smaller, or of wood".to_owned(),
        Kind::Jig => "mark the bores with the paper template instead".to_owned(),
        Kind::Ring | Kind::Washer | Kind::Pin | Kind::SliderKnob | Kind::Gauge => {
            "make it smaller in the design, or name the larger bed of another printer".to_owned()
        }
    }
}

/// What makes a width or diameter large enough to be drawn.
const fn larger(what: Slim) -> &'static str {
    match what {
        Slim::Shaft => "take a larger bore or less play",
        Slim::Knob => "take a larger knob",
        Slim::SinglePin => "take a thicker pin, or one of steel",
        Slim::FingerPin => "take a thicker pin",
        Slim::Keeper => "take a larger keeper",
        Slim::Shank => "take a thicker shank",
    }
}

#[cfg(test)]
mod tests;
