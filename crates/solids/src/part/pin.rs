//! Printed pins: rods, printed lying on a flat or upright.

use core::f64::consts::{FRAC_PI_4, PI};

use latchwright_geometry::{Point, trig};
use latchwright_model::{Dial, PinMake};

use super::arm::slender;
use super::{Draft, Kind, Part, PartId, Shop};
use crate::extrude::Prism;
use crate::fault::{PartFault, Slim};
use crate::feature::Feature;
use crate::mesh::Pose;
use crate::outline::Outline;
use crate::slope::Edge;
use crate::warning::Warning;

/// The pin of dial `index`; nothing for one of steel or wood, or of one piece with slider or strip.
pub(crate) fn pin(shop: &Shop<'_>, index: usize, dial: &Dial) -> Result<Option<Part>, PartFault> {
    match dial.pin.make {
        PinMake::Steel | PinMake::Dowel => Ok(None),
        PinMake::PrintedLying => lying(shop, index, dial).map(Some),
        PinMake::PrintedStanding if shop.pins_on_a_bar() => Ok(None),
        PinMake::PrintedStanding => standing(shop, index, dial).map(Some),
    }
}

/// A rod printed on a flat that faces away from the disc.
fn lying(shop: &Shop<'_>, index: usize, dial: &Dial) -> Result<Part, PartFault> {
    let mut draft = Draft::new(PartId::of(Kind::Pin, index));
    let across = shop.fit.outside(Feature::Pin, dial.pin.diameter);
    shop.enough(draft.id, Slim::SinglePin, &across)?;
    let radius = draft.draw(across) / 2.0;
    let long = draft.draw(shop.fit.height(Feature::PinLength, dial.pin.height, 0.0));
    // cut where the overhang reaches 45 degrees: nothing to support, a flat to lie on
    let flat = radius * trig::sin(FRAC_PI_4);
    let chord = PI / trig::acos(1.0 - 0.01 / radius.max(0.02));
    let count = 4.0 * (chord / 4.0).ceil().max(6.0);
    let mut points = Vec::new();
    let mut step = 0.0;
    while step <= count {
        let angle = -FRAC_PI_4 + 1.5 * PI * step / count;
        points.push(Point::at_angle(angle) * radius);
        step += 1.0;
    }
    let end = Edge::chamfer(0.3_f64.min(radius / 4.0).min(long / 6.0));
    let rod = Prism::new(Outline::new(points), 0.0, long);
    draft.body.add(rod.with_low(end.clone()).with_high(end));
    draft.laid = true;
    draft.warn(Warning::FlatBehind { wide: 2.0 * flat });
    let (x, y) = dial.pin_at();
    let top = -shop.design.slider.below;
    // its lowest line on the bed is the flat, which comes to stand behind its middle
    draft.assembled = Some(Pose {
        stood: true,
        to: [x, y - flat, top - long],
        ..Pose::default()
    });
    draft.apart = -3;
    draft.finish(shop.fit.printer)
}

/// A rod printed upright; as all pins it is set through its finger, level with the slider's upper face.
fn standing(shop: &Shop<'_>, index: usize, dial: &Dial) -> Result<Part, PartFault> {
    let mut draft = Draft::new(PartId::of(Kind::Pin, index));
    let (pin, fit) = (&dial.pin, &shop.fit);
    let across = fit.outside(Feature::Pin, pin.diameter);
    shop.enough(draft.id, Slim::SinglePin, &across)?;
    let radius = draft.draw(across) / 2.0;
    let high = draft.draw(fit.height(Feature::PinHeight, pin.height, 0.0));
    slender(&mut draft, dial, None);
    let rod = Prism::new(Outline::circle(Point::default(), radius), 0.0, high);
    let tip = Edge::chamfer(0.3_f64.min(radius / 4.0).min(high / 6.0));
    let foot = shop.bed_edge(high.min(radius));
    draft.body.add(rod.with_low(foot).with_high(tip));
    let (x, y) = dial.pin_at();
    let z = -shop.design.slider.below - high;
    draft.assembled = Some(Pose::to(x, y, z));
    draft.apart = -3;
    draft.finish(fit.printer)
}
