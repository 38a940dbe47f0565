//! Children: a room that latches, and small parts for the age stated.
//!
//! Thresholds of published safety rules, for a maker's own judgement. They are no legal advice: what
//! the rules of the place ask goes first.

use latchwright_geometry::trig;

use super::advice::{LoosePart, Nothing, RoomInside, Warning};
use super::{About, Advice, CheckKind, Draft, Sums};
use crate::results::Check;
use latchwright_model::{Design, Inside, PinMake};

/// Diameter of the small-parts cylinder, mm.
///
/// # Source
/// 16 CFR 1501.4, figure 1: 1.25 in; Canada SOR/2011-17, schedule 1: 31.7 mm.
pub const CYLINDER_DIAMETER: f64 = 31.75;

/// Greatest depth of the small-parts cylinder, mm; its bottom slants, and is shallower elsewhere.
///
/// # Source
/// As its diameter: 1.00 in to 2.25 in.
pub const CYLINDER_DEPTH: f64 = 57.15;

/// Below this age, years, no part that comes off may be a small one.
///
/// # Source
/// 16 CFR 1501.2; EN 71-1 draws the line at 36 months too.
pub const SMALL_PARTS_AGE: u32 = 3;

/// From this age, years, a person is no child in the sense of the rules for toys.
///
/// # Source
/// Directive 2009/48/EC, article 2: toys are for children under 14.
pub const GROWN_AGE: u32 = 14;

/// Volume from which a child can be inside, litres.
///
/// # Source
/// EN 71-1, enclosures: 0.03 m³. ASTM F834 and F2598: 1.1 ft³, 31 litres.
pub const ROOM_LITRES: f64 = 30.0;

/// Least inside size from which a child can be inside, mm.
///
/// # Source
/// EN 71-1, enclosures: 150 mm. Minnesota Rules 2630.3200: 6 in.
pub const ROOM_SIZE: f64 = 150.0;

pub(super) fn checks(sums: &Sums<'_>) -> Vec<Check> {
    vec![enclosed(sums.design), small_parts(sums.design)]
}

/// Whether a round part of this diameter and height (mm) can lie wholly within the small-parts
/// cylinder, whichever way.
///
/// The bottom is taken at its greatest depth everywhere and a tilted part by its long section, so
/// that a part may be called small that is just not, never the other way round.
///
/// # Source
/// 16 CFR 1501.4 for the cylinder; which rectangle goes into which is Carver's inequality of 1957,
/// from memory.
pub fn fits_small_parts_cylinder(diameter: f64, height: f64) -> bool {
    // however it lies, one diameter of its end lies level, and has to go in
    if diameter > CYLINDER_DIAMETER {
        return false;
    }
    if height <= CYLINDER_DEPTH {
        return true;
    }
    let (p, q) = (height, diameter.max(0.0));
    let square = p * p + q * q;
    let left = trig::sqrt((square - CYLINDER_DEPTH * CYLINDER_DEPTH).max(0.0));
    let needed = (2.0 * p * q * CYLINDER_DEPTH + (p * p - q * q) * left) / square;
    needed <= CYLINDER_DIAMETER
}

/// Whether a child could be shut in: large enough, every way, with a lid that latches.
pub fn could_hold_a_child(inside: &Inside) -> bool {
    litres(inside) > ROOM_LITRES && least_size(inside) >= ROOM_SIZE
}

fn litres(inside: &Inside) -> f64 {
    inside.width * inside.depth * inside.height / 1e6
}

fn least_size(inside: &Inside) -> f64 {
    inside.width.min(inside.depth).min(inside.height)
}

fn enclosed(design: &Design) -> Check {
    let inside = &design.inside;
    let room = RoomInside {
        litres: litres(inside),
        least: least_size(inside),
    };
    let child = design.card.youngest < GROWN_AGE;
    let large = could_hold_a_child(inside);
    counted(
        CheckKind::EnclosedSpace,
        usize::from(large && child),
        match (large, child) {
            (true, true) => Advice::Warning(Warning::ChildCouldBeShutIn(room)),
            (true, false) => Advice::Nothing(Nothing::ForGrownPeople(room)),
            (false, _) => Advice::Nothing(Nothing::TooSmallForAChild(room)),
        },
    )
}

/// A check without a figure of its own: so many things are wrong.
fn counted(kind: CheckKind, wrong: usize, advice: Advice) -> Check {
    let draft = Draft {
        kind,
        about: About::Latch,
        value: 0.0 - wrong as f64,
        limit: 0.0,
        decided_by: Vec::new(),
    };
    draft.advised(advice)
}

/// The parts that come off by hand or may work loose, with their diameter and height in mm.
///
/// Knob and disc come apart at their key, and a pin that was set in may come out. Slider, keeper and
/// a pin that is printed in one piece with its finger stay; the finger knob is taken to be glued and
/// screwed to the slider.
fn loose_parts(design: &Design) -> Vec<(LoosePart, f64, f64)> {
    let mut parts = Vec::new();
    for (index, dial) in design.dials.iter().enumerate() {
        let (disc, knob, pin) = (&dial.disc, &dial.knob, &dial.pin);
        parts.push((LoosePart::Knob(index), knob.diameter, knob.height));
        parts.push((LoosePart::Disc(index), 2.0 * disc.radius, disc.thickness));
        if matches!(pin.make, PinMake::Steel | PinMake::Dowel) {
            parts.push((LoosePart::Pin(index), pin.diameter, pin.height));
        }
    }
    parts
}

fn small_parts(design: &Design) -> Check {
    let small: Vec<LoosePart> = loose_parts(design)
        .into_iter()
        .filter(|(_, diameter, height)| fits_small_parts_cylinder(*diameter, *height))
        .map(|(part, ..)| part)
        .collect();
    let forbidden = design.card.youngest < SMALL_PARTS_AGE;
    let wrong = if forbidden { small.len() } else { 0 };
    let advice = if small.is_empty() {
        Advice::Nothing(Nothing::NoSmallParts)
    } else if forbidden {
        Advice::Warning(Warning::CanBeSwallowed(small))
    } else {
        Advice::Nothing(Nothing::SmallPartsAtThisAge(small))
    };
    counted(CheckKind::SmallParts, wrong, advice)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_long_pin_is_a_small_part_when_it_goes_in_aslant() {
        // the longest thin rod is 65.4 mm: from corner to opposite rim
        for (diameter, height, fits) in [
            (4.0, 6.0, true),
            (4.0, 57.0, true),
            (4.0, 60.0, true),
            (0.1, 65.2, true),
            (0.1, 65.5, false),
            (4.0, 65.0, false),
            (31.7, 57.0, true),
            (31.7, 58.0, false),
            (36.0, 14.0, false),
            (32.0, 1.0, false),
            (30.0, 14.0, true),
        ] {
            assert_eq!(
                fits_small_parts_cylinder(diameter, height),
                fits,
                "{diameter} by {height}"
            );
        }
    }

    #[test]
    fn a_room_holds_a_child_only_if_it_is_large_in_volume_and_every_way() {
        let room = |width, depth, height| {
            could_hold_a_child(&Inside {
                width,
                depth,
                height,
            })
        };
        assert!(!room(300.0, 200.0, 150.0), "9 litres");
        assert!(room(500.0, 400.0, 160.0));
        assert!(!room(900.0, 500.0, 149.0), "too low to be in");
        assert!(!room(400.0, 300.0, 250.0), "30 litres and no more");
        assert!(room(400.0, 300.0, 251.0));
    }
}
