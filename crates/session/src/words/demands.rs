//! Demands in words, with their figures in the maker's unit.

use latchwright_model::unit::MM_PER_INCH;
use latchwright_model::{Design, Dial, Material, PinMake, Unit, Units};
use latchwright_proof::check::SMALL_PARTS_AGE;
use latchwright_search::propose::{Demand, Nearest, Wishes, alike};
use latchwright_words::size_name_on;

/// Sizes of bits or pins that are named one by one; more are only "at hand".
const NAMED: usize = 6;

/// Demands as they stand, in words: things, joined by commas and "and".
pub fn demands_in_words(wishes: &Wishes, demands: &[Demand]) -> String {
    let has = |demand| demands.contains(&demand);
    let mut parts = Vec::new();
    for demand in demands {
        match demand {
            Demand::Dials if has(Demand::Marks) => parts.push(dials_and_marks(wishes)),
            Demand::Marks if has(Demand::Dials) => {}
            Demand::Width if has(Demand::Depth) => {
                parts.push(lid(wishes));
            }
            Demand::Depth if has(Demand::Width) => {}
            other => parts.push(phrase(wishes, *other)),
        }
    }
    listed(&parts)
}

/// A demand as it stands, in words.
fn phrase(wishes: &Wishes, demand: Demand) -> String {
    let base = &wishes.base;
    let say = |mm: f64| length(mm, base.units);
    let first = base.dials.first();
    match demand {
        Demand::Width => format!("a lid {} wide", say(base.plate.width)),
        Demand::Depth => format!("a lid {} deep", say(base.plate.depth)),
        Demand::Dials => dials(wishes.dials.len()),
        Demand::Marks => marks_in_words(wishes),
        Demand::Workmanship => {
            let work = &base.workmanship;
            let shaft = first.map_or(0.0, |dial| dial.bore.shaft_play.max(dial.key.clearance));
            format!(
                "your errors and plays (places ± {}, prints ± {}, pointers ± {:.1}°, plays {})",
                say(work.pin_place.max(work.bore_place).max(work.keeper_place)),
                say(work.print),
                work.reading,
                say(base.slider.guide_play.max(shaft)),
            )
        }
        Demand::Season => air(wishes),
        Demand::Bits => at_hand("bits", &base.bench.bits, base.units),
        Demand::Pins => {
            let own = first.map(|dial| dial.pin.diameter);
            let own: Vec<f64> = own.into_iter().collect();
            let pins = if wishes.pins.is_empty() {
                &own
            } else {
                &wishes.pins
            };
            at_hand("pins", pins, base.units)
        }
        Demand::Thickness => format!(
            "a plate {} thick over a keeper of {}",
            say(base.plate.thickness),
            say(base.keeper.thickness)
        ),
        Demand::Room => {
            let disc = first.map_or(0.0, |dial| dial.disc.thickness);
            format!(
                "{} of room below the plate for discs of {} and a slider of {}",
                say(base.plate.room),
                say(disc),
                say(base.slider.thickness)
            )
        }
        Demand::Pull => format!("a pull of {:.0} N", base.slider.pull),
        Demand::Hold => format!("{} of tab that is always held", say(base.tab.required_hold)),
        Demand::Hinges => hinges(base),
        Demand::Bed => bed(base),
        Demand::Age => age(base),
        Demand::Pinned(number) => match wishes.pinned.get(number) {
            Some((_, value)) => held(wishes, number, *value),
            None => String::new(),
        },
    }
}

/// What has become of the demands that give way, in words: "a lid 236 mm wide".
pub fn nearest_in_words(wishes: &Wishes, nearest: &Nearest) -> String {
    let (way, eased) = (&nearest.demands, &nearest.wishes);
    let design = &nearest.proposal.design;
    let parts = way.iter().filter_map(|demand| {
        let both = way.contains(&Demand::Width) && way.contains(&Demand::Depth);
        match demand {
            Demand::Width if both => Some(lid(eased)),
            Demand::Depth if both => None,
            other => Some(given(wishes, eased, *other, design)),
        }
    });
    listed(&parts.collect::<Vec<_>>())
}

fn given(wishes: &Wishes, eased: &Wishes, demand: Demand, design: &Design) -> String {
    let base = &eased.base;
    let say = |mm: f64| length(mm, base.units);
    match demand {
        Demand::Marks => {
            let marks = eased.dials.iter().map(|dial| dial.marks.number());
            format!("at most {} marks a dial", marks.max().unwrap_or(0))
        }
        Demand::Workmanship => {
            let share = share(wishes, eased);
            if share < 0.5 {
                "work without any error or play".to_owned()
            } else {
                format!("errors and plays of {share:.0} % of yours")
            }
        }
        Demand::Bits => new_ones("bit", &wishes.base.bench.bits, &base.bench.bits, base.units),
        Demand::Pins => {
            let pin = design.dials.first().map_or(0.0, |dial| dial.pin.diameter);
            format!("pins of {}", say(pin))
        }
        Demand::Thickness => format!("a plate {} thick", say(base.plate.thickness)),
        Demand::Room => format!("{} of room below the plate", say(base.plate.room)),
        Demand::Age => format!("nobody under {} about", base.card.youngest),
        Demand::Pinned(number) => match wishes.pinned.get(number) {
            Some((size, _)) => size
                .get(design)
                .map_or_else(String::new, |value| held(wishes, number, value)),
            None => String::new(),
        },
        other => phrase(eased, other),
    }
}

/// Errors of these works, the eased of the wished, in per cent.
fn share(wishes: &Wishes, eased: &Wishes) -> f64 {
    let (was, is) = (&wishes.base, &eased.base);
    let pairs = [
        (was.workmanship.reading, is.workmanship.reading),
        (was.workmanship.bore_place, is.workmanship.bore_place),
        (was.workmanship.pin_place, is.workmanship.pin_place),
        (was.workmanship.print, is.workmanship.print),
        (was.slider.guide_play, is.slider.guide_play),
    ];
    let share = pairs.iter().find(|(was, _)| *was > 0.0);
    share.map_or(0.0, |(was, is)| 100.0 * is / was)
}

fn dials(number: usize) -> String {
    const WORDS: [&str; 12] = [
        "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
        "twelve",
    ];
    let noun = if number == 1 { "dial" } else { "dials" };
    match number.checked_sub(1).and_then(|index| WORDS.get(index)) {
        Some(word) => format!("{word} {noun}"),
        None => format!("{number} {noun}"),
    }
}

/// "five dials of 36 marks".
fn dials_and_marks(wishes: &Wishes) -> String {
    let dials = dials(wishes.dials.len());
    let marks = wishes.dials.iter().map(|dial| dial.marks.number());
    let marks: Vec<u32> = marks.collect();
    if marks.iter().all(|one| Some(one) == marks.first()) {
        format!("{dials} of {} marks", marks.first().unwrap_or(&0))
    } else {
        let marks: Vec<String> = marks.iter().map(u32::to_string).collect();
        format!("{dials} of {} marks", listed(&marks))
    }
}

/// The marks that are asked for, in words.
fn marks_in_words(wishes: &Wishes) -> String {
    let marks = wishes.dials.iter().map(|dial| dial.marks.number());
    let marks: Vec<u32> = marks.collect();
    if marks.iter().all(|one| Some(one) == marks.first()) {
        format!("{} marks a dial", marks.first().unwrap_or(&0))
    } else {
        // the most of them is what asks for most
        format!("{} marks on a dial", marks.iter().max().unwrap_or(&0))
    }
}

fn lid(wishes: &Wishes) -> String {
    let (plate, units) = (&wishes.base.plate, wishes.base.units);
    format!(
        "a lid {} wide and {} deep",
        length(plate.width, units),
        length(plate.depth, units)
    )
}

fn hinges(base: &Design) -> String {
    let (hinge, say) = (&base.body.hinge, |mm: f64| length(mm, base.units));
    format!(
        "hinges {} long, {} in from the sides",
        say(hinge.length),
        say(hinge.inset)
    )
}

fn bed(base: &Design) -> String {
    let (bed, say) = (base.bench.printer.bed, |mm: f64| length(mm, base.units));
    format!("a printer with a bed {} by {}", say(bed.0), say(bed.1))
}

fn age(base: &Design) -> String {
    let youngest = base.card.youngest;
    let loose = |dial: &Dial| matches!(dial.pin.make, PinMake::Steel | PinMake::Dowel);
    let set_in = base.slider.material != Material::Printed && base.dials.iter().any(loose);
    if youngest < SMALL_PARTS_AGE && set_in {
        format!("small pins set into a wooden slider and a youngest of {youngest} years")
    } else {
        format!("a youngest of {youngest} years")
    }
}

fn air(wishes: &Wishes) -> String {
    let season = &wishes.base.season;
    let (dry, damp) = (season.driest.humidity, season.dampest.humidity);
    format!("air from {dry:.0} to {damp:.0} % humidity with these woods")
}

/// "bits of 30 mm and 35 mm alone", or only "the bits at hand".
fn at_hand(noun: &str, sizes: &[f64], units: Units) -> String {
    if sizes.is_empty() {
        format!("no {noun} at all")
    } else if sizes.len() > NAMED {
        format!("the {noun} at hand")
    } else {
        let sizes: Vec<String> = sizes.iter().map(|size| length(*size, units)).collect();
        format!("{noun} of {} alone", listed(&sizes))
    }
}

/// "a bit of 14 mm", "bits of 4 mm and 14 mm".
fn new_ones(noun: &str, had: &[f64], has: &[f64], units: Units) -> String {
    let new = has.iter().filter(|size| !had.contains(size));
    let new: Vec<String> = new.map(|size| length(*size, units)).collect();
    match new.as_slice() {
        [one] => format!("a {noun} of {one}"),
        [] => format!("other {noun}s"),
        many => format!("{noun}s of {}", listed(many)),
    }
}

/// A size that is held at `value`, with all that are held alike, in words.
fn held(wishes: &Wishes, number: usize, value: f64) -> String {
    let Some((size, _)) = wishes.pinned.get(number) else {
        return String::new();
    };
    let alike = alike(wishes, number).into_iter();
    let dials = alike.filter_map(|other| wishes.pinned.get(other)?.0.dial());
    let dials: Vec<usize> = dials.collect();
    let name = if dials.len() > 1 && dials.len() == wishes.dials.len() {
        format!("{} of every dial", size_name_on(*size, &[]))
    } else {
        size_name_on(*size, &dials)
    };
    match size.unit() {
        Unit::Millimetre => format!("{name} at {}", length(value, wishes.base.units)),
        Unit::Degree => format!("{name} at {value}°"),
        _ => format!("{name} at {value}"),
    }
}

/// Whether these demands in words are more than one thing.
pub(crate) fn is_many(wishes: &Wishes, demands: &[Demand]) -> bool {
    match demands {
        [Demand::Dials] | [Demand::Dials, Demand::Marks] => wishes.dials.len() > 1,
        [Demand::Bits] => !wishes.base.bench.bits.is_empty(),
        [one] => matches!(
            one,
            Demand::Marks | Demand::Workmanship | Demand::Pins | Demand::Hinges
        ),
        _ => true,
    }
}

/// A length in the maker's unit, in few words.
pub(crate) fn length(mm: f64, units: Units) -> String {
    let trimmed = |text: String| {
        let text = text.trim_end_matches('0');
        text.trim_end_matches('.').to_owned()
    };
    match units {
        Units::Millimetre => format!("{} mm", trimmed(format!("{mm:.2}"))),
        Units::Inch => format!("{} in", trimmed(format!("{:.4}", mm / MM_PER_INCH))),
    }
}

/// These one after the other; nothing where there are none.
fn listed(parts: &[String]) -> String {
    latchwright_words::listed(parts).unwrap_or_default()
}
