//! The slider's finger knob: printed face down, its shank up.

use latchwright_assembly::finger_knob::{FLOAT, GRIP, finger_knob};
use latchwright_assembly::screw::PILOT_IN_PRINT;
use latchwright_geometry::Point;

use super::grip::grip;
use super::{Draft, Kind, Part, PartId, Shop};
use crate::extrude::Prism;
use crate::fault::{PartFault, Slim, Wall};
use crate::feature::Feature;
use crate::mesh::Pose;
use crate::options::Grip;
use crate::outline::Outline;
use crate::slope::Edge;
use crate::warning::Warning;

/// Air before the tip of the screw in the shank, mm: common practice, no source.
const BEFORE_TIP: f64 = 1.0;
/// A standing shank longer than this many diameters needs a screw through it.
const SLENDER: f64 = 2.0;

/// The finger knob, its shank through the plate and halfway into the slider.
pub(crate) fn slider_knob(shop: &Shop<'_>) -> Result<Part, PartFault> {
    let part = PartId::whole(Kind::SliderKnob);
    let mut draft = Draft::new(part);
    let (fit, options) = (&shop.fit, shop.options);
    let slider = &shop.design.slider;
    let knob = finger_knob(shop.design);
    let shank_size = fit.outside(Feature::Shank, knob.shank);
    shop.enough(part, Slim::Shank, &shank_size)?;
    let shank = draft.draw(shank_size) / 2.0;
    let across = shop.seen.outside(Feature::FingerKnob, knob.diameter);
    let radius = draft.draw(across) / 2.0;
    let high = shop.seen.height(Feature::FingerKnobHeight, GRIP, 1.0).drawn;
    let long = knob.shank_length;
    let top = high + draft.draw(fit.height(Feature::ShankLength, long, 0.0));
    let grip_kind = match options.grip {
        Grip::Plain => Grip::Fluted,
        other => other,
    };
    let shape = grip(grip_kind, radius).map_err(|fault| PartFault::Mesh { part, fault })?;
    let circle = |radius: f64| Outline::circle(Point::default(), radius);
    let body = &mut draft.body;
    body.add(
        Prism::new(shape.region, 0.0, high)
            .with_low(Edge::chamfer(options.chamfer.max(0.8)))
            .with_high(Edge::chamfer(0.4)),
    );
    let root = (FLOAT * 0.8).min((shape.within - shank) / 2.0);
    if root > 0.1 {
        let fillet = Prism::new(circle(shank + root), high, high + root);
        body.add(fillet.with_high(Edge::hollow(root)));
    }
    body.add(Prism::new(circle(shank), high / 2.0, top).with_high(Edge::chamfer(0.4)));
    if let Some(screw) = knob.screw.filter(|_| options.screwed) {
        let hole = fit.hole(Feature::ScrewPilot, PILOT_IN_PRINT);
        shop.wall(part, shank - hole.drawn / 2.0, |short| Wall::Pilot {
            shank_mm: slider.shank + 2.0 * short,
        })?;
        let floor = top - (screw - knob.reach.through + BEFORE_TIP);
        body.cut(Prism::new(circle(hole.drawn / 2.0), floor, top + 1.0));
        draft.sizes.push(hole);
    }
    if long > SLENDER * slider.shank {
        draft.warn(Warning::StandingShank {
            long,
            diameter: slider.shank,
            most_diameters: SLENDER,
        });
    }
    // its shank stands on the bottom of its socket
    let socket = -slider.below - knob.socket_depth;
    draft.assembled = Some(Pose {
        over: true,
        to: [knob.at.x, knob.at.y, socket + top],
        ..Pose::default()
    });
    draft.apart = 2;
    draft.finish(fit.printer)
}
