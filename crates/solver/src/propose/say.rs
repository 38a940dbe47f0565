//! Demands in words, with their figures in the maker's unit.

use itertools::Itertools;

use super::conflict::Demand;
use super::wishes::Wishes;
use crate::change::words::listed;
use crate::model::{Design, Units};
use crate::proof::Unit;

/// A demand as it stands, in words.
pub(super) fn phrase(wishes: &Wishes, demand: Demand) -> String {
    let base = &wishes.base;
    let say = |mm: f64| length(mm, base.units);
    match demand {
        Demand::Width => format!("a lid {} wide", say(base.plate.width)),
        Demand::Depth => format!("a lid {} deep", say(base.plate.depth)),
        Demand::Dials => match wishes.dials.len() {
            1 => "one dial".to_owned(),
            many => format!("{many} dials"),
        },
        Demand::Marks => marks_in_words(wishes),
        Demand::Workmanship => format!(
            "work to ± {} with pointers read to ± {:.1}°",
            say(base.workmanship.pin_place.max(base.workmanship.bore_place)),
            base.workmanship.reading
        ),
        Demand::Season => format!(
            "air from {:.0} to {:.0} % humidity",
            base.season.driest.humidity, base.season.dampest.humidity
        ),
        Demand::Bits => "the bits at hand".to_owned(),
        Demand::Pins => "the pins at hand".to_owned(),
        Demand::Thickness => format!(
            "a plate of {} with {} of room below",
            say(base.plate.thickness),
            say(base.plate.room)
        ),
        Demand::Pull => format!("a pull of {:.0} N", base.slider.pull),
        Demand::Age => format!("a youngest of {} years", base.card.youngest),
        Demand::Pinned(number) => match wishes.pinned.get(number) {
            Some((size, value)) if size.unit() == Unit::Millimetre => {
                format!("{} at {}", size.name(), say(*value))
            }
            Some((size, value)) => format!("{} at {value}", size.name()),
            None => String::new(),
        },
    }
}

/// How a demand that is let go comes out, in words.
pub(super) fn freed(wishes: &Wishes, demand: Demand, design: &Design) -> String {
    let say = |mm: f64| length(mm, wishes.base.units);
    let first = design.dials.first();
    match demand {
        Demand::Season => "air that hardly changes, or woods that move alike".to_owned(),
        Demand::Bits => format!(
            "a bit of {}",
            say(first.map_or(0.0, |dial| dial.bore.diameter))
        ),
        Demand::Pins => format!(
            "pins of {}",
            say(first.map_or(0.0, |dial| dial.pin.diameter))
        ),
        Demand::Thickness => "a thicker plate with more room below".to_owned(),
        Demand::Pull => "a gentler pull".to_owned(),
        Demand::Age => "nobody so young".to_owned(),
        Demand::Pinned(number) => match wishes.pinned.get(number) {
            Some((size, _)) => match size.get(design) {
                Some(value) if size.unit() == Unit::Millimetre => {
                    format!("{} at {}", size.name(), say(value))
                }
                Some(value) => format!("{} at {value}", size.name()),
                None => String::new(),
            },
            None => String::new(),
        },
        _ => String::new(),
    }
}

/// The marks that are asked for, in words.
fn marks_in_words(wishes: &Wishes) -> String {
    let marks: Vec<u32> = wishes
        .dials
        .iter()
        .map(|dial| dial.marks.number())
        .collect();
    if marks.iter().all_equal() {
        format!("{} marks a dial", marks.first().unwrap_or(&0))
    } else {
        let marks: Vec<String> = marks.iter().map(u32::to_string).collect();
        format!("{} marks on the dials", listed(&marks))
    }
}

/// A length in the maker's unit, in few words.
pub(super) fn length(mm: f64, units: Units) -> String {
    let trimmed = |text: String| {
        let text = text.trim_end_matches('0');
        text.trim_end_matches('.').to_owned()
    };
    match units {
        Units::Millimetre => format!("{} mm", trimmed(format!("{mm:.2}"))),
        Units::Inch => format!("{} in", trimmed(format!("{:.4}", mm / 25.4))),
    }
}
