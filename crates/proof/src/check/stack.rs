//! Through the thickness of the lid: the pin meets its disc, nothing rubs, the lid closes.
//!
//! Heights count downwards from the plate's underside. Each thickness and each clearance is off by
//! the maker's ± on a thickness and by the coats of its two faces.

use itertools::iproduct;

use super::advice::{Estimate, FromTo};
use super::{About, Advice, CheckKind, Contributor, Draft, Sums};
use crate::results::Check;
use crate::slider_body::{BRIDGE, finger_top};
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
    checks.extend(fingers_below_discs(design));
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

fn parts(design: &Design, times: f64) -> Vec<(Contributor, f64)> {
    let work = &design.workmanship;
    vec![
        (Contributor::Thickness, times * work.thickness),
        (Contributor::FilmSpread, times * 2.0 * work.film_spread),
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
    let decided = [
        parts(design, 3.0),
        vec![
            (Contributor::Height, dial.pin.height),
            (Contributor::Disc, -dial.disc.thickness),
        ],
    ];
    let draft = Draft {
        kind: CheckKind::PinMeetsDisc,
        about: About::Dial(index),
        value,
        limit,
        decided_by: decided.concat(),
    };
    draft.judged(|short| {
        let apart = (design.slider.below - dial.disc.below).abs();
        Advice::Change(if dial.pin.height - limit < short + apart {
            Estimate::LengthenPin(FromTo {
                from: dial.pin.height,
                to: dial.pin.height + short,
            })
        } else {
            Estimate::OneHeight {
                disc: dial.disc.below,
                slider: design.slider.below,
            }
        })
    })
}

/// Clear distance between disc and plate, worst case, mm.
pub fn disc_to_plate_gap(design: &Design, dial: &Dial) -> f64 {
    dial.disc.below - off(design)
}

fn disc_to_plate(design: &Design, index: usize, dial: &Dial) -> Check {
    let draft = Draft {
        kind: CheckKind::DiscToPlate,
        about: About::Dial(index),
        value: disc_to_plate_gap(design, dial),
        limit: 0.0,
        decided_by: parts(design, 1.0),
    };
    draft.judged(|short| {
        Advice::Change(Estimate::LowerDisc(FromTo {
            from: dial.disc.below,
            to: dial.disc.below + short,
        }))
    })
}

/// What lies between the finger of `dial` and the lowest of all discs, worst case, mm: a finger is wider than its pin and
/// does not go into a slot, so it runs below them.
pub fn finger_to_discs(design: &Design, dial: &Dial) -> f64 {
    let undersides = design
        .dials
        .iter()
        .map(|dial| dial.disc.below + dial.disc.thickness);
    let lowest = undersides.fold(f64::NEG_INFINITY, f64::max);
    // slider and disc hang off, and disc and finger are off in thickness
    finger_top(design, dial) - lowest - 3.0 * off(design) - design.workmanship.thickness
}

/// The finger that comes nearest to a disc.
fn fingers_below_discs(design: &Design) -> Option<Check> {
    let all = design.dials.iter().enumerate();
    let all = all.map(|(index, dial)| (index, dial, finger_to_discs(design, dial)));
    let (index, dial, value) = all.min_by(|one, other| one.2.total_cmp(&other.2))?;
    let work = &design.workmanship;
    let draft = Draft {
        kind: CheckKind::DiscToFinger,
        about: About::Dial(index),
        value,
        limit: 0.0,
        decided_by: vec![
            (Contributor::Thickness, 4.0 * work.thickness),
            (Contributor::FilmSpread, 6.0 * work.film_spread),
        ],
    };
    Some(draft.judged(|short| {
        Advice::Change(Estimate::LowerFinger(FromTo {
            from: dial.pin.free,
            to: dial.pin.free + short,
        }))
    }))
}

/// Clear distance between slider and plate, worst case, mm.
pub fn slider_to_plate_gap(design: &Design) -> f64 {
    design.slider.below - off(design)
}

fn slider_to_plate(design: &Design) -> Check {
    let draft = Draft {
        kind: CheckKind::SliderToPlate,
        about: About::Latch,
        value: slider_to_plate_gap(design),
        limit: 0.0,
        decided_by: parts(design, 1.0),
    };
    draft.judged(|short| {
        Advice::Change(Estimate::LowerSlider(FromTo {
            from: design.slider.below,
            to: design.slider.below + short,
        }))
    })
}

/// Clear distance between tab and keeper, worst case, mm.
pub fn tab_to_keeper_gap(design: &Design) -> f64 {
    design.slider.below - off(design) - design.workmanship.thickness
}

/// The keeper's underside lies level with the plate's, as well as the maker can make it.
fn tab_to_keeper(design: &Design) -> Check {
    let work = &design.workmanship;
    let parts = vec![
        (Contributor::Thickness, 2.0 * work.thickness),
        (Contributor::FilmSpread, 2.0 * work.film_spread),
    ];
    let draft = Draft {
        kind: CheckKind::TabToKeeper,
        about: About::Latch,
        value: tab_to_keeper_gap(design),
        limit: 0.0,
        decided_by: parts,
    };
    draft.judged(|short| {
        Advice::Change(Estimate::LowerSlider(FromTo {
            from: design.slider.below,
            to: design.slider.below + short,
        }))
    })
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

/// Room left below the lowest of the latch, worst case, mm.
pub fn room_left_below(design: &Design) -> f64 {
    least_room(design) - lowest(design)
}

/// Room below the plate, worst case, mm.
fn least_room(design: &Design) -> f64 {
    design.plate.room - 2.0 * off(design)
}

fn room_below(design: &Design) -> Check {
    let draft = Draft {
        kind: CheckKind::RoomBelow,
        about: About::Latch,
        value: least_room(design),
        limit: lowest(design),
        decided_by: parts(design, 2.0),
    };
    draft.judged(|short| {
        Advice::Change(Estimate::MoreRoomBelow(FromTo {
            from: design.plate.room,
            to: design.plate.room + short,
        }))
    })
}

/// Room over the keeper in its rabbet, worst case, mm.
pub fn room_over_keeper(design: &Design) -> f64 {
    least_rabbet(design) - design.keeper.thickness
}

/// Depth of the rabbet, worst case, mm.
fn least_rabbet(design: &Design) -> f64 {
    design.plate.rabbet - 2.0 * off(design)
}

fn lid_closes(design: &Design) -> Check {
    let draft = Draft {
        kind: CheckKind::LidCloses,
        about: About::Latch,
        value: least_rabbet(design),
        limit: design.keeper.thickness,
        decided_by: parts(design, 2.0),
    };
    draft.judged(|short| {
        Advice::Change(Estimate::DeepenRabbet(FromTo {
            from: design.plate.rabbet,
            to: design.plate.rabbet + short,
        }))
    })
}

/// Wood over the rabbet, worst case, mm.
pub fn roof_left(design: &Design) -> f64 {
    design.plate.thickness - design.plate.rabbet - 2.0 * off(design)
}

fn roof(design: &Design) -> Check {
    let plate = &design.plate;
    let draft = Draft {
        kind: CheckKind::RabbetRoof,
        about: About::Latch,
        value: roof_left(design),
        limit: ROOF,
        decided_by: parts(design, 2.0),
    };
    draft.judged(|short| {
        Advice::Change(Estimate::ThickerPlate(FromTo {
            from: plate.thickness,
            to: plate.thickness + short,
        }))
    })
}
