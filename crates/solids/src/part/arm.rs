//! One finger of a slider with its pin, or with the socket that one is set into.
//!
//! Fingers run below the discs, with material on both sides of their pins; only the pins stand up between the discs.

use latchwright_assembly::slider_body::{Finger, finger_width};
use latchwright_geometry::Point;
use latchwright_model::Dial;

use super::slider::in_one_piece;
use super::{Draft, Shop};
use crate::extrude::{Prism, THROUGH};
use crate::fault::{MeshFault, PartFault, Slim};
use crate::feature::Feature;
use crate::fit::{Kind, Size};
use crate::outline::Outline;
use crate::region::Region;
use crate::slope::Edge;
use crate::warning::Warning;

/// A standing pin longer than this many diameters is likely to shear between two layers.
pub(super) const SLENDER: f64 = 2.0;
/// How far a finger reaches into the bar, mm.
const ROOT: f64 = 3.0;
/// Clear distance between the fillet at a pin's root and the disc over it, mm: common practice, no source.
const CLEAR: f64 = 0.5;
/// From a finger's side to the middle of a screw, mm.
const SCREW_CLEAR: f64 = 5.0;
/// Play of a set pin in its socket, for glue, mm in diameter.
const GLUE: f64 = 0.2;

/// One finger; its tip is round about the pin's middle.
pub(super) struct Arm<'a> {
    dial: &'a Dial,
    at: Point,
    /// Where it leaves the bar, y in mm.
    root: f64,
    /// Half its width as drawn, mm.
    half: f64,
    /// Radius of the pin as drawn, mm.
    radius: f64,
    /// Height of the finger as drawn, mm; the pin stands free above it.
    pub held: f64,
    /// Height of the fillet round the pin's root that stays clear of the disc, mm.
    fillet: f64,
}

impl<'a> Arm<'a> {
    /// The finger of one dial, with what is to be known about its pin.
    pub(super) fn new(
        shop: &Shop<'_>,
        draft: &mut Draft,
        dial: &'a Dial,
        finger: &Finger,
        thick: f64,
    ) -> Result<Self, PartFault> {
        let (pin, fit, index) = (&dial.pin, &shop.fit, finger.dial);
        let across = fit.outside(Feature::PinOf(index), pin.diameter);
        shop.enough(draft.id, Slim::FingerPin, &across)?;
        let layer = fit.printer.layer;
        // never higher than it is designed: the disc turns over it
        let whole = (finger.thickness() / layer + 1e-9).floor() * layer;
        let held = whole.clamp(layer, (thick - layer).max(layer));
        draft.sizes.push(Size {
            what: Feature::FingerThickness,
            kind: Kind::Height,
            nominal: finger.thickness(),
            drawn: held,
            expected: held,
        });
        let under_disc = finger.top - dial.disc.below - dial.disc.thickness;
        let arm = Self {
            dial,
            at: Point::new(dial.pin_at().0, dial.pin_at().1),
            root: finger.area.min.y,
            half: finger_width(pin) / 2.0 - fit.growth(),
            radius: draft.draw(across) / 2.0,
            held,
            fillet: under_disc - CLEAR,
        };
        if in_one_piece(dial) {
            slender(draft, dial, Some(index));
        } else {
            draft.warn(Warning::PinSetIn {
                make: pin.make,
                dial: index,
                long: pin.height,
            });
        }
        Ok(arm)
    }

    /// Where a screw goes that is meant to be at x but would run into the finger: beside it, the way
    /// that `inwards` (1 or −1) says.
    pub(super) fn beside(&self, x: f64, inwards: f64) -> Option<f64> {
        let apart = self.half + SCREW_CLEAR;
        ((x - self.at.x).abs() < apart).then_some(self.at.x + inwards * apart)
    }

    fn outline(&self) -> Outline {
        let root = Point::new(self.at.x, self.root - ROOT);
        Outline::capsule(root, self.at, self.half)
    }

    /// The pin on its finger, or the hole for it.
    fn pin(&self, shop: &Shop<'_>, draft: &mut Draft, thick: f64) {
        let circle = |radius: f64| Outline::circle(self.at, radius);
        let pin = &self.dial.pin;
        if !in_one_piece(self.dial) {
            let hole = shop.fit.hole(Feature::PinSocket, pin.diameter + GLUE);
            let radius = hole.drawn / 2.0;
            if draft.sizes.iter().all(|size| size.what != hole.what) {
                draft.sizes.push(hole);
            }
            // the pin's top is level with the slider's upper face
            let floor = thick - pin.height;
            let from = if floor < shop.printer().layer {
                -THROUGH
            } else {
                floor
            };
            draft.body.cut(Prism::new(circle(radius), from, THROUGH));
            return;
        }
        let (held, radius) = (self.held, self.radius);
        let room = self.fillet.min((thick - held) / 3.0);
        let root = 1.0_f64.min(radius / 2.0).min(room);
        if root > 0.1 {
            let fillet = Prism::new(circle(radius + root), held, held + root);
            draft.body.add(fillet.with_high(Edge::hollow(root)));
        }
        let tip = Edge::chamfer(0.3_f64.min(radius / 4.0).min((thick - held) / 4.0));
        draft
            .body
            .add(Prism::new(circle(radius), held / 2.0, thick).with_high(tip));
    }
}

/// Warns of a standing pin whose layers would shear; its dial is named where the part has several.
pub(super) fn slender(draft: &mut Draft, dial: &Dial, index: Option<usize>) {
    let pin = &dial.pin;
    let free = pin.free.clamp(0.0, pin.height);
    if free > SLENDER * pin.diameter {
        draft.warn(Warning::StandingPin {
            dial: index,
            free,
            diameter: pin.diameter,
            most_diameters: SLENDER,
        });
    }
}

/// A bar or body with fingers.
pub(super) struct Layers {
    /// What lies on the bed beside the fingers, with the fillets at their roots.
    pub foot: Region,
    /// What rises above the fingers.
    pub base: Region,
    /// How high that is, mm.
    pub base_top: f64,
    /// Where the pins end, mm.
    pub thick: f64,
}

impl Layers {
    /// Adds base, fingers and pins to the draft's body.
    pub(super) fn build(
        &self,
        shop: &Shop<'_>,
        draft: &mut Draft,
        arms: &[Arm<'_>],
    ) -> Result<(), PartFault> {
        let part = draft.id;
        self.add(shop, draft, arms)
            .map_err(|fault| PartFault::Mesh { part, fault })
    }

    /// One outline on the bed, so that its chamfer runs round all of it; then what rises higher.
    fn add(&self, shop: &Shop<'_>, draft: &mut Draft, arms: &[Arm<'_>]) -> Result<(), MeshFault> {
        let fingers = Region::union(arms.iter().map(Arm::outline));
        let bed = self.foot.plus(&fingers)?;
        let low = arms
            .iter()
            .map(|arm| arm.held)
            .fold(self.base_top, f64::min);
        let body = &mut draft.body;
        body.add(Prism::new(bed, 0.0, low).with_low(shop.bed_edge(low)));
        if self.base_top > low {
            body.add(Prism::new(self.base.clone(), low / 2.0, self.base_top));
        }
        for arm in arms.iter().filter(|arm| arm.held > low) {
            body.add(Prism::new(arm.outline(), low / 2.0, arm.held));
        }
        for arm in arms {
            arm.pin(shop, draft, self.thick);
        }
        Ok(())
    }
}
