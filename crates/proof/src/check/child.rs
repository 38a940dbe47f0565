//! Children: a room that latches, and small parts for the age stated.
//!
//! Thresholds of published safety rules, for a maker's own judgement. They are no legal advice: what
//! the rules of the place ask goes first.

use super::CheckKind;
use latchwright_geometry::trig;

use super::{Sums, told, yes_or_no};
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
const ROOM_LITRES: f64 = 30.0;

/// Least inside size from which a child can be inside, mm.
///
/// # Source
/// EN 71-1, enclosures: 150 mm. Minnesota Rules 2630.3200: 6 in.
const ROOM_SIZE: f64 = 150.0;

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
    let (litres, least) = (litres(inside), least_size(inside));
    let child = design.card.youngest < GROWN_AGE;
    let large = could_hold_a_child(inside);
    let room = format!("{litres:.1} litres, {least:.0} mm at the least");
    let remedy = match (large, child) {
        (true, true) => format!(
            "a child could be shut in ({room}): make one inside size less than {ROOM_SIZE:.0} mm or \
             the room at most {ROOM_LITRES:.0} litres, or leave out the latch; the rules where you \
             live go first"
        ),
        (true, false) => format!(
            "nothing to do for an age of {GROWN_AGE} or more ({room}), but a child could be shut in: never \
             leave it where children play; the rules where you live go first"
        ),
        (false, _) => format!("nothing to do: {room}, too small for a child to be shut in"),
    };
    yes_or_no(
        CheckKind::EnclosedSpace,
        "No child can be shut in".to_owned(),
        i32::from(large && child),
        remedy,
    )
}

/// The parts that come off by hand or may work loose, with their diameter and height in mm.
///
/// Knob and disc come apart at their key, and a pin that was set in may come out. Slider, keeper and
/// a pin that is printed in one piece with its finger stay; the finger knob is taken to be glued and
/// screwed to the slider.
fn loose_parts(design: &Design) -> Vec<(String, f64, f64)> {
    let mut parts = Vec::new();
    for (number, dial) in (1..).zip(&design.dials) {
        let (disc, knob, pin) = (&dial.disc, &dial.knob, &dial.pin);
        parts.push((format!("knob {number}"), knob.diameter, knob.height));
        parts.push((format!("disc {number}"), 2.0 * disc.radius, disc.thickness));
        if matches!(pin.make, PinMake::Steel | PinMake::Dowel) {
            parts.push((format!("pin {number}"), pin.diameter, pin.height));
        }
    }
    parts
}

fn small_parts(design: &Design) -> Check {
    let small: Vec<String> = loose_parts(design)
        .into_iter()
        .filter(|(_, diameter, height)| fits_small_parts_cylinder(*diameter, *height))
        .map(|(name, ..)| name)
        .collect();
    let youngest = design.card.youngest;
    let title = "Small parts suit the age of the youngest".to_owned();
    if youngest < SMALL_PARTS_AGE {
        let count = i32::try_from(small.len()).unwrap_or(i32::MAX);
        let remedy = if small.is_empty() {
            "nothing to do: no part that comes off goes into the small-parts cylinder".to_owned()
        } else {
            format!(
                "{} can come off and be swallowed below {SMALL_PARTS_AGE} years: print pins in one \
                 piece with the slider, make knobs and discs wider than {CYLINDER_DIAMETER:.2} mm; \
                 the rules where you live go first",
                small.join(", ")
            )
        };
        return yes_or_no(CheckKind::SmallParts, title, count, remedy);
    }
    let said = if small.is_empty() {
        "nothing to do: no part that comes off goes into the small-parts cylinder".to_owned()
    } else {
        format!(
            "nothing to do at {youngest} years; {} are small parts: keep them from children under \
             {SMALL_PARTS_AGE}",
            small.join(", ")
        )
    };
    told(CheckKind::SmallParts, title, 0.0, Vec::new(), said)
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
