//! Through the thickness of the lid: the pin meets its disc, nothing rubs, the lid closes.
//!
//! Heights count downwards from the plate's underside. Each thickness and each clearance is off by
//! the maker's ± on a thickness and by the coats of its two faces.

use super::CheckKind;
use itertools::iproduct;

use super::{Sums, worst_case};
use crate::results::Check;
use crate::slider_body::BRIDGE;
use latchwright_model::{Design, Dial};

/// How much of its disc's thickness a pin must meet at least.
///
/// # Source
/// Common practice, no source: less, and a disc that sits askew lets it slip over.
pub const MEETS: f64 = 2.0 / 3.0;

/// Wood that should stay over the rabbet, mm.
///
/// # Source
/// Common practice, no source.
pub const ROOF: f64 = 3.0;

pub(super) fn checks(sums: &Sums<'_>) -> Vec<Check> {
    let design = sums.design;
    let mut checks = Vec::new();
    for (index, dial, _) in sums.each() {
        checks.push(pin_meets_disc(design, index, dial));
        checks.push(disc_to_plate(design, index, dial));
    }
    checks.push(slider_to_plate(design));
    checks.push(tab_to_keeper(design));
    checks.push(room_below(design));
    checks.push(lid_closes(design));
    checks.push(roof(design));
    checks
}

/// How far off a thickness or a clearance can be, its two coats included, mm.
pub fn off(design: &Design) -> f64 {
    design.workmanship.thickness + 2.0 * design.workmanship.film_spread
}

fn parts(design: &Design, times: f64) -> Vec<(&'static str, f64)> {
    let work = &design.workmanship;
    vec![
        ("thickness", times * work.thickness),
        ("film_spread", times * 2.0 * work.film_spread),
    ]
}

/// How much of the disc the pin meets beyond two thirds of its thickness, in the worst stack, mm.
///
/// It is the least of sums and of what is negated of the greatest: a concave figure, so that its
/// least over the whole box of errors stands at one of the corners.
pub fn meets_margin(design: &Design, dial: &Dial) -> f64 {
    let off = off(design);
    let signs = || [-off, off].into_iter();
    iproduct!(signs(), signs(), signs(), signs())
        .map(|(slider, pin, disc, thickness)| {
            let (pin_top, disc_top) = (design.slider.below + slider, dial.disc.below + disc);
            let thick = dial.disc.thickness + thickness;
            let ends = (pin_top + dial.pin.height + pin).min(disc_top + thick);
            ends - pin_top.max(disc_top) - MEETS * thick
        })
        .fold(f64::INFINITY, f64::min)
}

fn pin_meets_disc(design: &Design, index: usize, dial: &Dial) -> Check {
    let limit = MEETS * dial.disc.thickness;
    let value = limit + meets_margin(design, dial);
    let title = format!("Pin of dial {} meets two thirds of its disc", index + 1);
    let decided = [
        parts(design, 3.0),
        vec![("height", dial.pin.height), ("disc", -dial.disc.thickness)],
    ];
    worst_case(
        CheckKind::PinMeetsDisc,
        Some(index),
        title,
        (value, limit),
        decided.concat(),
        |short| {
            let apart = (design.slider.below - dial.disc.below).abs();
            if dial.pin.height - limit < short + apart {
                format!(
                    "lengthen the pin of dial {} from {:.2} to at least {:.2} mm",
                    index + 1,
                    dial.pin.height,
                    dial.pin.height + short
                )
            } else {
                format!(
                    "bring slider and disc of dial {} to one height: {:.2} mm below the plate, not \
                     {:.2} and {:.2} mm",
                    index + 1,
                    dial.disc.below,
                    design.slider.below,
                    dial.disc.below
                )
            }
        },
    )
}

fn disc_to_plate(design: &Design, index: usize, dial: &Dial) -> Check {
    let title = format!("Disc of dial {} turns clear of the plate", index + 1);
    let below = dial.disc.below;
    worst_case(
        CheckKind::DiscToPlate,
        Some(index),
        title,
        (below - off(design), 0.0),
        parts(design, 1.0),
        |short| {
            format!(
                "hang the disc of dial {} at least {:.2} mm below the plate, not {below:.2} mm: a \
                 thicker washer",
                index + 1,
                below + short
            )
        },
    )
}

fn slider_to_plate(design: &Design) -> Check {
    let below = design.slider.below;
    worst_case(
        CheckKind::SliderToPlate,
        None,
        "Slider runs clear of the plate".to_owned(),
        (below - off(design), 0.0),
        parts(design, 1.0),
        |short| {
            format!(
                "hang the slider at least {:.2} mm below the plate, not {below:.2} mm",
                below + short
            )
        },
    )
}

/// The keeper's underside lies level with the plate's, as well as the maker can make it.
fn tab_to_keeper(design: &Design) -> Check {
    let below = design.slider.below;
    let work = &design.workmanship;
    let parts = vec![
        ("thickness", 2.0 * work.thickness),
        ("film_spread", 2.0 * work.film_spread),
    ];
    worst_case(
        CheckKind::TabToKeeper,
        None,
        "Tab slips under the keeper without rubbing".to_owned(),
        (below - off(design) - work.thickness, 0.0),
        parts,
        |short| {
            format!(
                "hang the slider at least {:.2} mm below the plate, not {below:.2} mm",
                below + short
            )
        },
    )
}

/// The lowest of the bridges under the slider, pins and discs, mm below the plate.
pub fn lowest(design: &Design) -> f64 {
    let slider = &design.slider;
    let dials = design
        .dials
        .iter()
        .map(|dial| (slider.below + dial.pin.height).max(dial.disc.below + dial.disc.thickness));
    dials.fold(slider.below + slider.thickness + BRIDGE, f64::max)
}

fn room_below(design: &Design) -> Check {
    let room = design.plate.room;
    worst_case(
        CheckKind::RoomBelow,
        None,
        "Latch is clear of what lies under the lid".to_owned(),
        (room - 2.0 * off(design), lowest(design)),
        parts(design, 2.0),
        |short| {
            format!(
                "leave at least {:.2} mm of room below the plate, not {room:.2} mm",
                room + short
            )
        },
    )
}

fn lid_closes(design: &Design) -> Check {
    let rabbet = design.plate.rabbet;
    worst_case(
        CheckKind::LidCloses,
        None,
        "Keeper has room in its rabbet, so that the lid closes".to_owned(),
        (rabbet - 2.0 * off(design), design.keeper.thickness),
        parts(design, 2.0),
        |short| {
            format!(
                "deepen the rabbet from {rabbet:.2} to at least {:.2} mm, or take a thinner keeper",
                rabbet + short
            )
        },
    )
}

fn roof(design: &Design) -> Check {
    let plate = &design.plate;
    worst_case(
        CheckKind::RabbetRoof,
        None,
        "Wood is left over the rabbet".to_owned(),
        (plate.thickness - plate.rabbet - 2.0 * off(design), ROOF),
        parts(design, 2.0),
        |short| {
            format!(
                "take a plate of at least {:.2} mm, not {:.2} mm, or a thinner keeper in a shallower \
                 rabbet",
                plate.thickness + short,
                plate.thickness
            )
        },
    )
}
