//! Printed pins: lying, with a flat to lie on, or standing on the tip of their finger.

use core::f64::consts::{FRAC_PI_4, PI};

use latchwright_geometry::{Point, trig};
use latchwright_model::{Dial, PinMake};

use super::arm::slender;
use super::{Draft, Kind, Part, PartId, Shop};
use crate::extrude::{Prism, THROUGH};
use crate::fault::{PartFault, Slim};
use crate::feature::Feature;
use crate::mesh::Pose;
use crate::outline::Outline;
use crate::region::Region;
use crate::slope::Edge;
use crate::warning::Warning;

/// Length of a finger's tip behind its pin, mm.
const TIP: f64 = 16.0;

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
    // in a printed slider its socket goes right through
    let whole = shop
        .printed_slider()
        .then_some(shop.design.slider.thickness);
    let whole = whole.unwrap_or(dial.pin.height);
    let long = draft.draw(shop.fit.height(Feature::PinLength, whole, 2.0));
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

/// The tip of a finger, as wide as the pin, with the pin standing on its end.
fn standing(shop: &Shop<'_>, index: usize, dial: &Dial) -> Result<Part, PartFault> {
    let mut draft = Draft::new(PartId::of(Kind::Pin, index));
    let (pin, fit) = (&dial.pin, &shop.fit);
    let across = fit.outside(Feature::Pin, pin.diameter);
    shop.enough(draft.id, Slim::SinglePin, &across)?;
    let radius = draft.draw(across) / 2.0;
    let free = pin.free.clamp(0.0, pin.height);
    let held = fit
        .height(Feature::FingerThickness, pin.height - free, 1.0)
        .drawn;
    let top = draft.draw(fit.height(Feature::PinHeight, pin.height, 2.0));
    let top = top.max(held + fit.printer.layer);
    slender(&mut draft, dial, None);
    let back = Point::new(0.0, -TIP);
    let finger = Outline::capsule(back, Point::default(), radius);
    let circle = |radius: f64| Outline::circle(Point::default(), radius);
    draft
        .body
        .add(Prism::new(finger.clone(), 0.0, held).with_low(shop.bed_edge(held)));
    let root = 1.0_f64.min(radius / 2.0).min((top - held) / 3.0);
    if root > 0.1 {
        draft.body.add(
            Prism::new(circle(radius + root), held, held + root).with_high(Edge::hollow(root)),
        );
        // the fillet may not stand out beside the finger, which follows the pin into the slot
        let wide = Outline::block(Point::default(), 8.0 * radius, 8.0 * radius);
        let beside = Region::from(wide)
            .minus(&Outline::capsule(back, Point::default(), radius).into())
            .map_err(|fault| PartFault::Mesh {
                part: draft.id,
                fault,
            })?;
        draft.body.cut(Prism::new(beside, held, THROUGH));
    }
    let tip = Edge::chamfer(0.3_f64.min(radius / 4.0).min((top - held) / 4.0));
    draft
        .body
        .add(Prism::new(circle(radius), held / 2.0, top).with_high(tip));
    let (x, y) = dial.pin_at();
    let z = -shop.design.slider.below - top;
    draft.assembled = Some(Pose::to(x, y, z));
    draft.apart = -3;
    draft.finish(fit.printer)
}
