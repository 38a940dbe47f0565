//! Outlines of knobs: four shapes for fingers, pointing to +y, with a notch at the back.

use core::f64::consts::{FRAC_PI_2, PI, TAU};

use latchwright_geometry::{Point, trig};

use crate::fault::MeshFault;
use crate::options::Grip;
use crate::outline::Outline;
use crate::region::Region;

/// Outline of a grip and the radius of the largest circle about the middle that lies in it, mm.
pub(super) struct GripShape {
    pub region: Region,
    pub within: f64,
}

/// A grip that just fits into a circle of this radius.
pub(super) fn grip(kind: Grip, radius: f64) -> Result<GripShape, MeshFault> {
    let (region, depth) = match kind {
        Grip::Fluted => (fluted(radius)?, 0.045 * radius),
        Grip::Lobed => (lobed(radius).into(), 0.11 * radius),
        Grip::Faceted => {
            let sides = 12;
            let apothem = radius * trig::cos(PI / f64::from(sides));
            let polygon = Outline::regular(sides, apothem, FRAC_PI_2 + PI / f64::from(sides));
            (polygon.rounded(radius / 20.0).into(), radius - apothem)
        }
        Grip::Plain => (nosed(radius).into(), 0.2 * radius),
    };
    // small enough to be no flute, large enough for a nail
    let notch = (radius / 9.0).clamp(0.8, 2.4);
    let behind = if kind == Grip::Plain { 0.8 } else { 1.0 };
    let notch_at = Point::new(0.0, -radius * behind);
    let notched = region.minus(&Outline::circle(notch_at, notch).into())?;
    Ok(GripShape {
        region: notched,
        within: (radius - depth).min(radius * behind - notch),
    })
}

/// A circle with round flutes about six millimetres apart.
fn fluted(radius: f64) -> Result<Region, MeshFault> {
    let wanted = TAU * radius / 6.0;
    let mut count = 8;
    while f64::from(count) < wanted && count < 48 {
        count += 4;
    }
    let pitch = TAU * radius / f64::from(count);
    let flute = pitch * 0.42;
    let depth = 0.045 * radius;
    let flutes = (0..count).map(|index| {
        // a ridge points to +y, so the nail finds a flute on either side of the pointer
        let angle = FRAC_PI_2 + TAU * (f64::from(index) + 0.5) / f64::from(count);
        let centre = Point::at_angle(angle) * (radius + flute - depth);
        Outline::circle(centre, flute)
    });
    Region::from(Outline::circle(Point::default(), radius)).minus(&Region::union(flutes))
}

/// Six waves.
fn lobed(radius: f64) -> Outline {
    let depth = 0.11 * radius;
    Outline::polar(360, FRAC_PI_2, |turn| {
        radius - depth * (1.0 - trig::cos(6.0 * turn)) / 2.0
    })
}

/// A circle of four fifths of the radius with a nose that reaches the whole of it.
fn nosed(radius: f64) -> Outline {
    let (round, nose) = (0.8 * radius, 0.1 * radius);
    let tip = radius - nose;
    let tangent = trig::acos((round - nose) / tip);
    let steps = 24;
    let arc = |centre: f64, radius: f64, from: f64, to: f64, steps: u32| {
        (0..=steps).map(move |step| {
            let angle = from + (to - from) * f64::from(step) / f64::from(steps);
            Point::new(0.0, centre) + Point::at_angle(angle) * radius
        })
    };
    let points = arc(tip, nose, FRAC_PI_2 - tangent, FRAC_PI_2 + tangent, steps)
        .chain(arc(
            0.0,
            round,
            FRAC_PI_2 + tangent,
            FRAC_PI_2 + TAU - tangent,
            steps * 8,
        ))
        .collect();
    Outline::new(points)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_grip_lies_between_its_circles() {
        for kind in [Grip::Fluted, Grip::Lobed, Grip::Faceted, Grip::Plain] {
            for radius in [6.0, 18.0, 40.0] {
                let shape = grip(kind, radius).unwrap();
                let mut furthest = 0.0_f64;
                for point in shape.region.outlines().iter().flat_map(Outline::points) {
                    furthest = furthest.max(point.length());
                }
                assert!(furthest <= radius + 1e-3, "{kind:?} {radius}: {furthest}");
                assert!(furthest > radius * 0.985, "{kind:?} {radius}: {furthest}");
                let near = shape.region.distance(Point::default());
                assert!(near > shape.within - 0.02, "{kind:?} {radius}: {near}");
                assert_eq!(shape.region.outlines().len(), 1);
            }
        }
    }
}
