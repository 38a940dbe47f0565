//! Notes on parts.

use latchwright_model::PinMake;
use latchwright_workshop::PartNote;
use latchwright_workshop::inch::Rule;

/// One note on a part.
pub fn part_note(note: &PartNote, rule: Rule) -> String {
    let (say, fine) = (|mm: f64| rule.say(mm), |mm: f64| rule.say_fine(mm));
    match note {
        PartNote::EndsMitred {
            long_point,
            short_point,
        } => format!(
            "both ends at 45°: long point {} outside, short point {} inside, bare",
            say(*long_point),
            say(*short_point)
        ),
        PartNote::EndsSquare => "both ends square".to_owned(),
        PartNote::EndsRabbeted { width, depth } => format!(
            "a rabbet inside at both ends, {} wide and {} deep",
            say(*width),
            say(*depth)
        ),
        PartNote::LidCutOffLater => {
            "box and lid in one: the lid is cut off after the glue-up".to_owned()
        }
        PartNote::ClearInGroove { x, y } => format!(
            "{} clear on each side along x, {} along y",
            fine(*x),
            fine(*y)
        ),
        PartNote::GluedAtTwoMiddles => {
            "glue only at the middle of two opposite sides, free everywhere else".to_owned()
        }
        PartNote::LooseInGroove => {
            "loose in its groove: no glue but at the middle of two sides".to_owned()
        }
        PartNote::IsTheLid => "lies on the sides and is the lid".to_owned(),
        PartNote::OutlineOnTemplate => {
            "its outline is on the template; faces that slide are waxed, not coated".to_owned()
        }
        PartNote::BesideNeck { play } => format!(
            "one on each side of the slider's neck, {} clear on each side; bare and waxed",
            fine(*play)
        ),
        PartNote::AsLongAsGuideAndTravel { behind_keeper } => format!(
            "as long as guide and travel together; the front ends {} behind the keeper's edge, so that \
             the bar does not meet the back ends",
            fine(*behind_keeper)
        ),
        PartNote::CarriesSlider => "screwed across the strips, carries the slider".to_owned(),
        PartNote::HigherThanRoom { room, needed } => format!(
            "there is {} under the plate, strips and bridge take {}: let the bridge into the strips",
            say(*room),
            say(*needed)
        ),
        PartNote::Slots(1) => "one slot".to_owned(),
        PartNote::Slots(slots) => format!("{slots} slots; the mark shows the true one"),
        PartNote::TurnsInBore { bore } => format!("shaft to turn in a bore of {}", fine(*bore)),
        PartNote::RunsInSlot { shank } => {
            format!("its shank of {} runs in the plate's slot", fine(*shank))
        }
        PartNote::Pin(make) => pin(*make).to_owned(),
        PartNote::WidthOfOneLeaf => {
            "width is that of one leaf up to the middle of the pin".to_owned()
        }
        PartNote::LittleWoodInFront => {
            "the front gives them little wood: see the keeper's notes".to_owned()
        }
        PartNote::NeverAPressFitAlone => {
            "a press fit is never the only thing that keeps a disc in its place".to_owned()
        }
    }
}

const fn pin(make: PinMake) -> &'static str {
    match make {
        PinMake::Steel => "file the ends round, glue it in with epoxy",
        PinMake::Dowel => "glue it into its finger",
        PinMake::PrintedLying => "print it lying down, so that layers run along it",
        PinMake::PrintedStanding => "printed standing: its root is a layer, the weakest place",
    }
}
