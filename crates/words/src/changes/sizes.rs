//! What the sizes of a design are called.

use latchwright_model::Size;
use latchwright_model::change::{
    AirSize, BenchSize, BoardSize, BodySize, DialSize, HoleSize, LatchSize, SlotSize, WoodSize,
};

use crate::phrase::listed;
use Verb::{Across, Back, Increase, Lengthen, Widen};

/// The words for making a size larger and smaller.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Verb {
    Increase,
    Widen,
    Lengthen,
    /// A place across the lid, x.
    Across,
    /// A place from the front edge to the hinge, y.
    Back,
}

/// A size in plain words: "the gap of dial 1", "the x of the tab". Dials, slots, bits, boards, readings
/// and woods count from 1 in words.
pub fn size_name(size: Size) -> String {
    size_name_on(size, size.dial().as_slice())
}

/// The same of several dials, from 0: "the gap of dials 1 and 2"; of none, "the gap".
pub fn size_name_on(size: Size, dials: &[usize]) -> String {
    let thing = thing(size, dials);
    match noun_and_verb(size).1 {
        Across => format!("the x of {thing}"),
        Back => format!("the y of {thing}"),
        Increase | Widen | Lengthen => thing,
    }
}

/// What a maker does who makes it larger, or smaller, on `dials`: "widen the gap of dial 1".
pub(super) fn resizing(size: Size, dials: &[usize], larger: bool) -> String {
    let thing = thing(size, dials);
    if matches!(size, Size::Digit(_)) {
        return format!("choose another mark for {thing}");
    }
    match (noun_and_verb(size).1, larger) {
        (Increase, true) => format!("increase {thing}"),
        (Increase, false) => format!("reduce {thing}"),
        (Widen, true) => format!("widen {thing}"),
        (Widen, false) => format!("narrow {thing}"),
        (Lengthen, true) => format!("lengthen {thing}"),
        (Lengthen, false) => format!("shorten {thing}"),
        (Across, true) => format!("move {thing} to the right"),
        (Across, false) => format!("move {thing} to the left"),
        (Back, true) => format!("move {thing} towards the hinge"),
        (Back, false) => format!("move {thing} towards the front edge"),
    }
}

/// "the gap of dials 1 and 2".
fn thing(size: Size, dials: &[usize]) -> String {
    let (noun, _) = noun_and_verb(size);
    let numbers: Vec<String> = dials.iter().map(|dial| (dial + 1).to_string()).collect();
    let plural = if numbers.len() == 1 { "" } else { "s" };
    let of_dials = listed(&numbers)
        .map(|numbers| format!(" of dial{plural} {numbers}"))
        .unwrap_or_default();
    match size {
        Size::Slot(_, slot, _) | Size::SlotMark(_, slot) => {
            format!("the {noun} of slot {}{of_dials}", slot + 1)
        }
        Size::Bit(number) => format!("the {noun} of bit {}", number + 1),
        Size::Board(number, _) | Size::BoardCount(number) => {
            format!("the {noun} of board {}", number + 1)
        }
        Size::Hole(number, _) => format!("the {noun} of hole reading {}", number + 1),
        Size::Wood(number, _) => format!("the {noun} of own wood {}", number + 1),
        Size::Latch(_)
        | Size::Dial(..)
        | Size::Positions(_)
        | Size::KeySides(_)
        | Size::Digit(_)
        | Size::Body(_)
        | Size::Band
        | Size::Bench(_)
        | Size::Coats
        | Size::Fraction
        | Size::Air(_)
        | Size::Youngest => format!("the {noun}{of_dials}"),
    }
}

const fn noun_and_verb(size: Size) -> (&'static str, Verb) {
    match size {
        Size::Latch(size) => latch_size(size),
        Size::Dial(_, size) => dial_size(size),
        Size::Slot(_, _, size) => slot_size(size),
        Size::Positions(_) => ("number of positions", Increase),
        Size::KeySides(_) => ("number of key sides", Increase),
        Size::Digit(_) => ("combination", Increase),
        Size::SlotMark(..) => ("mark", Increase),
        Size::Body(size) => body_size(size),
        Size::Band => ("height of the lid's band", Increase),
        Size::Bench(size) => bench_size(size),
        Size::Coats => ("number of coats", Increase),
        Size::Fraction => ("parts of an inch", Increase),
        Size::Bit(_) => ("diameter", Increase),
        Size::Board(_, size) => board_size(size),
        Size::BoardCount(_) => ("number", Increase),
        Size::Hole(_, size) => hole_size(size),
        Size::Wood(_, size) => wood_size(size),
        Size::Air(size) => air_size(size),
        Size::Youngest => ("age of the youngest", Increase),
    }
}

const fn latch_size(size: LatchSize) -> (&'static str, Verb) {
    match size {
        LatchSize::PlateWidth => ("plate width", Increase),
        LatchSize::PlateDepth => ("plate depth", Increase),
        LatchSize::PlateThickness => ("plate thickness", Increase),
        LatchSize::Rabbet => ("rabbet", Increase),
        LatchSize::Room => ("room below the plate", Increase),
        LatchSize::Travel => ("travel", Lengthen),
        LatchSize::GuideLength => ("guide length", Lengthen),
        LatchSize::GuidePlay => ("guide play", Widen),
        LatchSize::GuideX => ("guide", Across),
        LatchSize::GuideY => ("guide", Back),
        LatchSize::PullAt => ("finger knob", Across),
        LatchSize::Shank => ("finger knob shank", Increase),
        LatchSize::SliderThickness => ("slider thickness", Increase),
        LatchSize::SliderBelow => ("clearance of the slider below the plate", Increase),
        LatchSize::Pull => ("hardest pull", Increase),
        LatchSize::Friction => ("friction in the guide", Increase),
        LatchSize::TabAt => ("tab", Across),
        LatchSize::TabWidth => ("tab width", Increase),
        LatchSize::Engagement => ("engagement", Lengthen),
        LatchSize::RequiredHold => ("required hold", Increase),
        LatchSize::KeeperEdge => ("keeper edge", Back),
        LatchSize::KeeperWidth => ("keeper width", Increase),
        LatchSize::KeeperDepth => ("keeper depth", Increase),
        LatchSize::KeeperThickness => ("keeper thickness", Increase),
        LatchSize::InsideWidth => ("inside width", Increase),
        LatchSize::InsideDepth => ("inside depth", Increase),
        LatchSize::InsideHeight => ("inside height", Increase),
        LatchSize::PinPlace => ("error of a pin's place", Increase),
        LatchSize::BorePlace => ("error of a bore's place", Increase),
        LatchSize::KeeperPlace => ("error of the keeper's place", Increase),
        LatchSize::Thickness => ("error of a thickness", Increase),
        LatchSize::Print => ("error of the print", Increase),
        LatchSize::Film => ("coat thickness", Increase),
        LatchSize::FilmSpread => ("spread of the coats", Increase),
        LatchSize::Reading => ("reading error", Increase),
    }
}

const fn dial_size(size: DialSize) -> (&'static str, Verb) {
    match size {
        DialSize::CentreX => ("centre", Across),
        DialSize::CentreY => ("centre", Back),
        DialSize::DiscRadius => ("disc radius", Increase),
        DialSize::DiscThickness => ("disc thickness", Increase),
        DialSize::DiscBelow => ("clearance below the plate of the disc", Increase),
        DialSize::PinDiameter => ("pin diameter", Increase),
        DialSize::PinOffset => ("pin", Across),
        DialSize::Gap => ("gap", Widen),
        DialSize::PinHeight => ("pin length", Lengthen),
        DialSize::PinFree => ("free length of the pin", Lengthen),
        DialSize::Apothem => ("key apothem", Increase),
        DialSize::Clearance => ("key clearance", Widen),
        DialSize::BoreDiameter => ("bore diameter", Increase),
        DialSize::ShaftPlay => ("shaft play", Widen),
        DialSize::KnobDiameter => ("knob diameter", Increase),
        DialSize::KnobHeight => ("knob height", Increase),
    }
}

const fn slot_size(size: SlotSize) -> (&'static str, Verb) {
    match size {
        SlotSize::Width => ("width", Increase),
        SlotSize::Depth => ("depth", Increase),
        SlotSize::LeadIn => ("lead-in", Lengthen),
    }
}

const fn body_size(size: BodySize) -> (&'static str, Verb) {
    match size {
        BodySize::Sides => ("thickness of the sides", Increase),
        BodySize::Groove => ("depth of the grooves", Increase),
        BodySize::Foot => ("height of the floor above the lower edge", Increase),
        BodySize::Floor => ("thickness of the floor", Increase),
        BodySize::HingeLength => ("hinge length", Lengthen),
        BodySize::HingeLeaf => ("hinge leaf", Widen),
        BodySize::HingeThickness => ("hinge thickness", Increase),
        BodySize::HingeInset => ("hinge inset", Lengthen),
    }
}

const fn bench_size(size: BenchSize) -> (&'static str, Verb) {
    match size {
        BenchSize::Kerf => ("kerf", Increase),
        BenchSize::EndTrim => ("end trim", Lengthen),
        BenchSize::Rough => ("rough allowance", Increase),
        BenchSize::Nozzle => ("width of the nozzle", Increase),
        BenchSize::Layer => ("layer height", Increase),
        BenchSize::BedX => ("bed width", Increase),
        BenchSize::BedY => ("bed depth", Increase),
        BenchSize::PrintHeight => ("greatest height of a print", Increase),
        BenchSize::Outside => ("oversize of a print's outside", Increase),
        BenchSize::FirstLayers => ("spread of the first layers", Increase),
        BenchSize::InsideCorner => ("radius of a print's inside corners", Increase),
        BenchSize::Density => ("density of the plastic", Increase),
        BenchSize::Filament => ("filament diameter", Increase),
    }
}

const fn board_size(size: BoardSize) -> (&'static str, Verb) {
    match size {
        BoardSize::Length => ("length", Lengthen),
        BoardSize::Width => ("width", Increase),
        BoardSize::Thickness => ("thickness", Increase),
    }
}

const fn hole_size(size: HoleSize) -> (&'static str, Verb) {
    match size {
        HoleSize::Diameter => ("diameter", Increase),
        HoleSize::Under => ("shortfall", Increase),
    }
}

const fn wood_size(size: WoodSize) -> (&'static str, Verb) {
    match size {
        WoodSize::Radial => ("radial movement", Increase),
        WoodSize::Tangential => ("tangential movement", Increase),
    }
}

const fn air_size(size: AirSize) -> (&'static str, Verb) {
    match size {
        AirSize::BuiltCelsius => ("temperature when built", Increase),
        AirSize::BuiltHumidity => ("humidity when built", Increase),
        AirSize::DriestCelsius => ("temperature at the driest", Increase),
        AirSize::DriestHumidity => ("humidity at the driest", Increase),
        AirSize::DampestCelsius => ("temperature at the dampest", Increase),
        AirSize::DampestHumidity => ("humidity at the dampest", Increase),
    }
}
