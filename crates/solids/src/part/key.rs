//! The key: the post on the disc's shaft and the star in the knob, as they are drawn.

use core::f64::consts::{FRAC_PI_2, PI};

use latchwright_geometry::trig;
use latchwright_model::Dial;
use latchwright_model::key::backlash;

use crate::feature::Feature;
use crate::fit::{Fit, Size, clearance};
use crate::outline::Outline;

/// Post and star of one dial; a corner of the post and a tip of the star point to +y.
#[derive(Debug, Clone, PartialEq)]
pub struct KeyShape {
    /// The post as drawn.
    pub post: Outline,
    /// The star as drawn.
    pub star: Outline,
    /// Radius that is taken off the post's edges, mm; 0 where the printed corners of the star do
    /// not reach it.
    pub relief: f64,
    /// How far the disc can turn to either side of its seat, degrees.
    pub backlash_deg: f64,
    /// From the middle to the post's corners as drawn, mm.
    pub post_reach: f64,
    /// From the middle to the star's tips as drawn, mm.
    pub star_reach: f64,
    /// Across the flats, and the clearance between them.
    pub sizes: Vec<Size>,
}

/// The radius of a printed inside corner at which a post of `sides` with this clearance per side
/// (mm) touches it: clearance / (1 − cos(180°/sides)).
///
/// # Source
/// A square of 8 in one of 8.4 touches at 0.683 (calculated; no publication).
pub fn touching_corner(sides: u32, clearance: f64) -> f64 {
    clearance / (1.0 - trig::cos(PI / f64::from(sides.max(3))))
}

/// How far the rounding of the star's corners may run along a flat before the turned post meets it,
/// mm.
fn free_flat(sides: u32, apothem: f64, clearance: f64) -> f64 {
    let half = PI / f64::from(sides.max(3));
    let turn = backlash(sides, apothem, clearance);
    let reach = apothem / trig::cos(half);
    (apothem + clearance) * trig::sin(half) / trig::cos(half) - reach * trig::sin(half - turn)
}

/// Post and star of `dial` for this printer.
pub fn key_shape(dial: &Dial, fit: &Fit<'_>) -> KeyShape {
    let key = &dial.key;
    let sides = key.sides.max(3);
    let half = PI / f64::from(sides);
    let across = fit.outside(Feature::Post, 2.0 * key.apothem);
    let recess = fit.hole(Feature::Star, 2.0 * (key.apothem + key.clearance));
    let corner = fit.printer.corner;
    let run = corner * trig::sin(half) / trig::cos(half);
    let free = free_flat(sides, key.apothem, key.clearance);
    let relief = if run <= free {
        0.0
    } else {
        corner.min(key.apothem / 2.0)
    };
    let turn = if relief > 0.0 {
        backlash(sides, key.apothem - relief, key.clearance)
    } else {
        backlash(sides, key.apothem, key.clearance)
    };
    let (post, star) = (across.drawn / 2.0, recess.drawn / 2.0);
    let reach = post / trig::cos(half);
    let mut sizes = clearance(
        [Feature::PostInStarPerSide, Feature::PostInStarTotal],
        &across,
        &recess,
    )
    .to_vec();
    sizes.splice(0..0, [across, recess]);
    KeyShape {
        post: Outline::regular(sides, post, FRAC_PI_2).rounded(relief),
        star: Outline::star(dial.positions, sides, star, FRAC_PI_2),
        relief,
        backlash_deg: trig::degrees(turn),
        post_reach: reach - relief * (1.0 / trig::cos(half) - 1.0),
        star_reach: star / trig::cos(half),
        sizes,
    }
}

#[cfg(test)]
mod tests {
    use latchwright_model::Printer;

    use super::*;

    #[test]
    fn a_square_of_eight_in_eight_point_four_touches_at_a_corner_of_0_683() {
        assert!((touching_corner(4, 0.2) - 0.683).abs() < 5e-4);
    }

    #[test]
    fn edges_are_relieved_only_where_the_printed_corner_reaches_the_turned_post() {
        let shape = |corner: f64| {
            let printer = Printer {
                corner,
                ..Printer::default()
            };
            let fit = Fit {
                printer: &printer,
                film: 0.0,
            };
            key_shape(&Dial::default(), &fit)
        };
        let (sharp, round) = (shape(0.2), shape(0.45));
        assert_eq!(sharp.relief, 0.0);
        assert!((sharp.backlash_deg - 2.191).abs() < 5e-4);
        assert_eq!(round.relief, 0.45);
        assert!(round.backlash_deg > sharp.backlash_deg);
        assert!(round.post_reach < sharp.post_reach);
    }
}
