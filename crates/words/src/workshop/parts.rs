//! Notes on parts.

use latchwright_model::PinMake;
use latchwright_workshop::inch::Rule;
use latchwright_workshop::{Form, Make, Part, PartNote, Size};

/// A size of `part`, said as its trade says it: `120 × 80 × 12 mm`, `13 mm long, Ø 4 mm`, `No. 4 × 19 mm (3/4 in)`.
pub fn part_size(part: &Part, size: Size, rule: Rule) -> String {
    let say = |mm: f64| match part.make {
        // what is printed is measured, not marked out
        Make::Printed => rule.say_fine(mm),
        Make::Wood | Make::Bought => rule.say_exactly(mm),
    };
    match part.form {
        Form::Block if part.make == Make::Printed => format!(
            "{} × {} × {}",
            say(size.length),
            say(size.width),
            say(size.thickness)
        ),
        Form::Block => format!(
            "{} × {} × {}",
            rule.say_exactly_bare(size.length),
            rule.say_exactly_bare(size.width),
            say(size.thickness)
        ),
        Form::Rod => format!("Ø {}, {} long", say(size.width), say(size.length)),
        Form::Washer => format!(
            "Ø {} outside, Ø {} inside, {} thick",
            say(size.length),
            say(size.width),
            rule.say_fine(size.thickness)
        ),
        Form::Grip => format!(
            "Ø {}, {} high; shank below it {} long",
            say(size.length),
            say(size.width),
            say(size.thickness)
        ),
        Form::Screw => rule.say_screw(size.length),
    }
}

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
            "{} clear on the left and on the right, {} in front and at the back",
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
            "its outline is on the template; it is waxed, not coated".to_owned()
        }
        PartNote::FingersLowered { free } => format!(
            "its fingers are lowered by {} below the upper face, so that the pins stand free",
            say(*free)
        ),
        PartNote::BareBelow => "its lower face gets no coat".to_owned(),
        PartNote::HeadDeeper { deeper } => {
            format!("its head lies {} below the disc's face", fine(*deeper))
        }
        PartNote::GluedToKnob => {
            "no screw that is sold joins it to its knob: glue them once the combination is to stay"
                .to_owned()
        }
        PartNote::HeadInDisc => "from below, its head in the disc".to_owned(),
        PartNote::HeadInUpperFace => "heads in the keeper's upper face".to_owned(),
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
