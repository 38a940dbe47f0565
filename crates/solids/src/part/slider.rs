//! The printed slider, or a strip of fingers with their pins for a wooden one; underside on the bed.

use latchwright_assembly::finger_knob::{FingerKnob, finger_knob};
use latchwright_assembly::screw::{CLEARANCE, HEAD};
use latchwright_assembly::slider_body::SliderBody;
use latchwright_drawing::{Rect, slider_crossbar, slider_fingers, slider_outline};
use latchwright_geometry::Point;
use latchwright_model::{Dial, PinMake};

use super::arm::{Arm, Layers};
use super::{Draft, Kind, Part, PartId, Shop};
use crate::extrude::{Prism, THROUGH};
use crate::fault::{PartFault, Wall};
use crate::feature::Feature;
use crate::outline::{CHORD, Outline};
use crate::region::Region;
use crate::slope::Edge;
use crate::warning::Warning;

/// Depth of the lap by which a strip lies under its bar, mm.
const LAP: f64 = 12.0;
/// How far the fillets at a finger's root reach beside it, mm.
const FILLETS: f64 = 1.5;

/// The whole slider of a design whose slider is printed.
pub(crate) fn slider(shop: &Shop<'_>) -> Result<Part, PartFault> {
    let part = PartId::whole(Kind::Slider);
    let mut draft = Draft::new(part);
    let broken = |fault| PartFault::Mesh { part, fault };
    let whole = slider_outline(shop.design, 0.0).flatten(CHORD / 2.0);
    let whole = Region::from(Outline::new(whole));
    let clear = slider_fingers(shop.design, 0.0).into_iter().map(off_bar);
    let growth = shop.fit.growth();
    let foot = whole.inset(growth).map_err(broken)?;
    let base = whole
        .minus(&Region::union(clear))
        .and_then(|bare| bare.inset(growth))
        .map_err(broken)?;
    let thick = draft.draw(shop.fit.height(
        Feature::SliderThickness,
        shop.design.slider.thickness,
        0.0,
    ));
    let arms = arms(shop, &mut draft, thick)?;
    let layers = Layers {
        foot,
        base: base.clone(),
        base_top: thick,
        thick,
    };
    layers.build(shop, &mut draft, &arms)?;
    shank_hole(shop, &mut draft, &base, thick)?;
    finish(shop, draft, thick)
}

/// Fingers with standing pins on a bar that lies in a lap under the wooden slider's.
pub(crate) fn pin_strip(shop: &Shop<'_>) -> Result<Part, PartFault> {
    let mut draft = Draft::new(PartId::whole(Kind::Pin));
    let bar = slider_crossbar(shop.design, 0.0);
    let growth = shop.fit.growth();
    let lap = LAP.min(bar.height());
    let (low, high) = (
        Point::new(bar.min.x + growth, bar.max.y - lap + growth),
        Point::new(bar.max.x - growth, bar.max.y - growth),
    );
    let thick = draft.draw(shop.fit.height(
        Feature::StripHeight,
        shop.design.slider.thickness,
        0.0,
    ));
    let arms = arms(shop, &mut draft, thick)?;
    let lowest = arms.iter().map(|arm| arm.held).fold(thick, f64::min);
    let layer = shop.printer().layer;
    let base_top = ((thick / 2.0).min(lowest) / layer).floor().max(1.0) * layer;
    let base = Region::from(Outline::rectangle(low, high).rounded(2.0));
    let layers = Layers {
        foot: base.clone(),
        base,
        base_top,
        thick,
    };
    layers.build(shop, &mut draft, &arms)?;
    screws(shop, &mut draft, &arms, (low, high), base_top);
    draft.warn(Warning::UseOfStrip {
        deep: base_top,
        wide: lap,
    });
    finish(shop, draft, thick)
}

fn finish(shop: &Shop<'_>, mut draft: Draft, thick: f64) -> Result<Part, PartFault> {
    let z = -shop.design.slider.below - thick;
    draft.assembled = Some(crate::mesh::Pose::to(0.0, 0.0, z));
    draft.apart = -3;
    draft.finish(shop.printer())
}

/// All that a finger and the fillets at its root take up beyond the bar: the discs turn there.
fn off_bar(finger: Rect) -> Outline {
    let low = Point::new(finger.min.x - FILLETS, finger.min.y);
    let high = Point::new(finger.max.x + FILLETS, finger.max.y + 1.0);
    Outline::rectangle(low, high)
}

/// One arm a dial.
fn arms<'a>(shop: &Shop<'a>, draft: &mut Draft, thick: f64) -> Result<Vec<Arm<'a>>, PartFault> {
    let fingers = SliderBody::of(shop.design).fingers(shop.design);
    shop.design
        .dials
        .iter()
        .enumerate()
        .map(|(index, dial)| {
            let own = fingers.iter().find(|finger| finger.dial == index);
            let finger = own.ok_or(PartFault::NoFinger {
                part: draft.id,
                dial: index,
            })?;
            Arm::new(shop, draft, dial, finger, thick)
        })
        .collect()
}

/// The hole for the finger knob's shank, with its screw from below.
fn shank_hole(
    shop: &Shop<'_>,
    draft: &mut Draft,
    base: &Region,
    thick: f64,
) -> Result<(), PartFault> {
    let FingerKnob {
        at,
        socket,
        socket_depth,
        ..
    } = finger_knob(shop.design);
    let hole = shop.fit.hole(Feature::ShankHole, socket);
    let wall = if base.contains(at) {
        base.distance(at) - hole.drawn / 2.0
    } else {
        -hole.drawn / 2.0 - base.distance(at)
    };
    let which = |short: f64| Wall::Shank { further_mm: short };
    shop.wall(draft.id, wall, which)?;
    let circle = |radius: f64| Outline::circle(at, radius);
    let floor = thick - socket_depth;
    draft
        .body
        .cut(Prism::new(circle(hole.drawn / 2.0), floor, thick + 1.0));
    draft.sizes.push(hole);
    screw_hole(shop, draft, at, floor);
    Ok(())
}

/// A hole for a screw from below, sunk, through `floor` mm.
fn screw_hole(shop: &Shop<'_>, draft: &mut Draft, at: Point, floor: f64) {
    if !shop.options.screwed {
        return;
    }
    let hole = shop.fit.hole(Feature::ScrewHole, CLEARANCE);
    let head = shop.fit.hole(Feature::ScrewHead, HEAD);
    let sink = (head.drawn - hole.drawn) / 2.0;
    let circle = |radius: f64| Outline::circle(at, radius);
    draft
        .body
        .cut(Prism::new(circle(hole.drawn / 2.0), -THROUGH, floor + 0.5));
    if sink > 0.0 && sink < floor - shop.printer().layer {
        let cone = Prism::new(circle(head.drawn / 2.0), -1.0, sink);
        draft.body.cut(cone.with_high(Edge::chamfer(sink)));
    }
    if draft.sizes.iter().all(|size| size.what != hole.what) {
        draft.sizes.extend([hole, head]);
    }
}

/// Screws along a strip, one near each end and others between, no further apart than 60 mm before
/// they are moved clear of the fingers.
fn screws(
    shop: &Shop<'_>,
    draft: &mut Draft,
    arms: &[Arm<'_>],
    (low, high): (Point, Point),
    top: f64,
) {
    let (first, last) = (low.x + 8.0, high.x - 8.0);
    let middle = (low + high) * 0.5;
    let spans = ((last - first) / 60.0).ceil().clamp(1.0, 20.0);
    let mut span = 0.0;
    while last > first && span <= spans {
        let mut x = first + (last - first) * span / spans;
        let inwards = if x < middle.x { 1.0 } else { -1.0 };
        if let Some(beside) = arms.iter().find_map(|arm| arm.beside(x, inwards)) {
            x = beside;
        }
        screw_hole(shop, draft, Point::new(x, middle.y), top);
        span += 1.0;
    }
}

/// Whether this dial's pin is in one piece with its finger.
pub(super) fn in_one_piece(dial: &Dial) -> bool {
    dial.pin.make == PinMake::PrintedStanding
}
