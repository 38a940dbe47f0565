//! The knob: a grip with a star recess below, pointer above, notch behind; printed on its back.

use core::f64::consts::PI;

use latchwright_assembly::dial::{
    FACE, KNOB_GAP, LEAST_THREAD, disc_screw, key_depth, pilot_depth,
};
use latchwright_assembly::screw::PILOT_IN_PRINT;
use latchwright_geometry::{Point, trig};
use latchwright_model::Dial;

use super::grip::grip;
use super::key::key_shape;
use super::{Draft, Kind, Part, PartId, Shop};
use crate::extrude::Prism;
use crate::fault::{PartFault, Slim, Wall};
use crate::feature::Feature;
use crate::mesh::Pose;
use crate::options::Relief;
use crate::outline::Outline;
use crate::region::Region;
use crate::slope::Edge;
use crate::warning::Warning;

/// The knob of dial `index`.
pub(crate) fn knob(shop: &Shop<'_>, index: usize, dial: &Dial) -> Result<Part, PartFault> {
    let part = PartId::of(Kind::Knob, index);
    let mut draft = Draft::new(part);
    let (fit, options) = (&shop.fit, shop.options);
    let across = shop.seen.outside(Feature::Knob, dial.knob.diameter);
    shop.enough(part, Slim::Knob, &across)?;
    let radius = draft.draw(across) / 2.0;
    // its underside over the plate is not seen
    let tall = shop.seen.height(Feature::KnobHeight, dial.knob.height, 1.0);
    let height = draft.draw(tall);
    let key = key_shape(dial, fit);
    let recess = key_depth(dial);
    face_left(shop, part, recess, height)?;
    let broken = |fault| PartFault::Mesh { part, fault };
    let shape = grip(options.grip, radius).map_err(broken)?;
    let wall = shape.within - key.star_reach;
    shop.wall(part, wall, |short| Wall::Star {
        knob_mm: dial.knob.diameter + 2.0 * short / 0.8,
    })?;
    let edge = 1.0_f64.min(height / 6.0).min(radius / 10.0);
    let rim = shape.within - edge;
    draft.body.add(
        Prism::new(shape.region, 0.0, height)
            .with_low(shop.bed_edge(height.min(wall)))
            .with_high(Edge::rounded(edge)),
    );
    // its mouth is chamfered like every edge on the bed: that also leads the post in
    // (a sharp tip grows by more than its flats), and beside the notch they share one wall
    let flank = trig::cos(PI / f64::from(dial.key.sides.max(3)));
    let mouth = options.chamfer.min(wall / 3.0 * flank);
    let star = Region::from(key.star.clone());
    draft.body.cut(Prism::new(star.clone(), -1.0, recess));
    if mouth >= 0.1 {
        let flared = star.outset(mouth).map_err(broken)?;
        let flare = Prism::new(flared, -1.0, mouth).with_high(Edge::chamfer(mouth));
        draft.body.cut(flare);
    }
    pilot(shop, &mut draft, dial, recess);
    pointer(shop, &mut draft, rim, recess, height);
    draft.sizes.extend(key.sizes);
    let z = shop.design.plate.thickness + KNOB_GAP;
    draft.assembled = Some(Pose::to(dial.centre.0, dial.centre.1, z));
    draft.apart = 2;
    draft.finish(fit.printer)
}

fn face_left(shop: &Shop<'_>, part: PartId, recess: f64, height: f64) -> Result<(), PartFault> {
    let sunk = shop.options.sunk();
    let left = height - recess - sunk;
    if left >= FACE {
        return Ok(());
    }
    Err(PartFault::RecessThrough {
        part,
        recess_mm: recess,
        height_mm: height,
        left_mm: left,
        needed_mm: FACE,
        remedy_mm: recess + sunk + FACE + shop.seen.film + shop.fit.printer.layer,
    })
}

/// The hole in the star's roof into which the screw cuts its thread.
fn pilot(shop: &Shop<'_>, draft: &mut Draft, dial: &Dial, recess: f64) {
    if !shop.options.screwed {
        return;
    }
    let sunk = shop.options.sunk();
    let deep = pilot_depth(dial, sunk);
    if deep < LEAST_THREAD {
        draft.warn(Warning::NoPilot {
            face: deep,
            needed: LEAST_THREAD,
        });
        return;
    }
    let screw = disc_screw(shop.design, dial, sunk);
    if screw.length.is_none() {
        draft.warn(Warning::NoScrew {
            through: screw.reach.through,
            into: screw.reach.into,
        });
        return;
    }
    let hole = shop.fit.hole(Feature::ScrewPilot, PILOT_IN_PRINT);
    let circle = Outline::circle(Point::default(), hole.drawn / 2.0);
    draft.sizes.push(hole);
    draft
        .body
        .cut(Prism::new(circle, recess / 2.0, recess + deep));
}

/// A tapered bar from the middle to the rim, on the face over the star: `rim` is how far out it goes,
/// `recess` how deep the star is, `height` that of the face, mm.
fn pointer(shop: &Shop<'_>, draft: &mut Draft, rim: f64, recess: f64, height: f64) {
    let (near, far) = (0.25 * rim, rim - 0.6);
    let wide = (0.16 * rim).max(2.0 * shop.fit.least_wall());
    let slim = wide / 2.0;
    if far - near < wide {
        return;
    }
    let bar = Outline::new(vec![
        Point::new(-wide / 2.0, near),
        Point::new(wide / 2.0, near),
        Point::new(slim / 2.0, far),
        Point::new(-slim / 2.0, far),
    ])
    .counter_clockwise()
    .rounded(slim / 3.0);
    let relief = shop.options.relief_height;
    match shop.options.relief {
        Relief::Raised => {
            let top = height + relief;
            draft.colour_change = Some(height);
            // it grows out of the face, which is all there is over the star
            let root = f64::midpoint(recess, height);
            draft.body.add(Prism::new(bar, root, top));
        }
        Relief::Sunk => {
            draft.colour_change = Some(height - relief);
            draft
                .body
                .cut(Prism::new(bar, height - relief, height + 1.0));
        }
    }
}
