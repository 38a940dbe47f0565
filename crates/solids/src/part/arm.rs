//! One finger of a slider with its pin, or with the socket that one is set into.

use latchwright_geometry::Point;
use latchwright_model::Dial;

use super::slider::in_one_piece;
use super::{Draft, Shop};
use crate::extrude::{Prism, THROUGH};
use crate::fault::{MeshFault, PartFault, Slim};
use crate::feature::Feature;
use crate::outline::Outline;
use crate::region::Region;
use crate::slope::Edge;
use crate::warning::Warning;

/// A standing pin longer than this many diameters is likely to shear between two layers.
pub(super) const SLENDER: f64 = 2.0;
/// How far a finger reaches into the bar, mm.
const ROOT: f64 = 3.0;
/// Ground around a socket, below the discs, mm.
const GROUND: f64 = 1.6;
/// The least height of that ground, mm.
const FOOT: f64 = 1.0;
/// Clear distance between that ground and the disc over it, mm.
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
    /// Of finger and pin, as drawn, mm.
    radius: f64,
    /// Height of the finger as drawn, mm; the pin stands free above it.
    pub held: f64,
    /// Height and radius of the ground around a socket as drawn; none where there is no room.
    foot: Option<(f64, f64)>,
}

impl<'a> Arm<'a> {
    /// The finger of one dial, with what is to be known about its pin.
    pub(super) fn new(
        shop: &Shop<'_>,
        draft: &mut Draft,
        index: usize,
        dial: &'a Dial,
        root: f64,
        thick: f64,
    ) -> Result<Self, PartFault> {
        let (pin, fit) = (&dial.pin, &shop.fit);
        let across = fit.outside(Feature::PinOf(index), pin.diameter);
        shop.enough(draft.id, Slim::FingerPin, &across)?;
        let layer = fit.printer.layer;
        let free = pin.free.clamp(0.0, pin.height);
        let held = fit
            .height(
                Feature::FingerThickness,
                shop.design.slider.thickness - free,
                2.0,
            )
            .drawn
            .clamp(layer, (thick - layer).max(layer));
        let mut arm = Self {
            dial,
            at: Point::new(dial.pin_at().0, dial.pin_at().1),
            root,
            radius: draft.draw(across) / 2.0,
            held,
            foot: None,
        };
        if in_one_piece(dial) {
            slender(draft, dial, Some(index));
        } else {
            arm.socket(shop, draft, index);
        }
        Ok(arm)
    }

    /// Room for the ground around its socket, and what to do with the rod.
    fn socket(&mut self, shop: &Shop<'_>, draft: &mut Draft, index: usize) {
        let slider = &shop.design.slider;
        let disc = &self.dial.disc;
        let space = slider.below + slider.thickness - disc.below - disc.thickness - CLEAR;
        let layer = shop.printer().layer;
        let high = (space / layer + 1e-9).floor() * layer;
        let make = self.dial.pin.make;
        if high >= FOOT {
            self.foot = Some((high, self.radius + GROUND));
            draft.warn(Warning::PinSetIn {
                make,
                dial: index,
                long: slider.thickness,
            });
        } else {
            draft.warn(Warning::PinWithoutGround {
                make,
                dial: index,
                thickness: slider.thickness + FOOT - space,
            });
        }
    }

    /// Where a screw goes that is meant to be at x but would run into the finger: beside it, the way
    /// that `inwards` (1 or −1) says.
    pub(super) fn beside(&self, x: f64, inwards: f64) -> Option<f64> {
        let apart = self.radius + SCREW_CLEAR;
        ((x - self.at.x).abs() < apart).then_some(self.at.x + inwards * apart)
    }

    fn capsule(&self, radius: f64) -> Outline {
        Outline::capsule(Point::new(self.at.x, self.root - ROOT), self.at, radius)
    }

    /// The pin on its finger, or the hole for it.
    fn pin(
        &self,
        shop: &Shop<'_>,
        draft: &mut Draft,
        all: &Region,
        thick: f64,
    ) -> Result<(), MeshFault> {
        let circle = |radius: f64| Outline::circle(self.at, radius);
        if !in_one_piece(self.dial) {
            let hole = shop
                .fit
                .hole(Feature::PinSocket, self.dial.pin.diameter + GLUE);
            let radius = hole.drawn / 2.0;
            if draft.sizes.iter().all(|size| size.what != hole.what) {
                draft.sizes.push(hole);
            }
            draft
                .body
                .cut(Prism::new(circle(radius), -THROUGH, THROUGH));
            return Ok(());
        }
        let (held, radius) = (self.held, self.radius);
        let root = 1.0_f64.min(radius / 2.0).min((thick - held) / 3.0);
        if root > 0.1 {
            let fillet = Prism::new(circle(radius + root), held, held + root);
            draft.body.add(fillet.with_high(Edge::hollow(root)));
            // the fillet may not stand out beside the finger, which follows the pin into the slot
            let side = 2.0 * (radius + root + 0.2);
            let beside = Region::from(Outline::block(self.at, side, side)).minus(all)?;
            draft.body.cut(Prism::new(beside, held, THROUGH));
        }
        let tip = Edge::chamfer(0.3_f64.min(radius / 4.0).min((thick - held) / 4.0));
        draft
            .body
            .add(Prism::new(circle(radius), held / 2.0, thick).with_high(tip));
        Ok(())
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
    /// What carries the fingers.
    pub base: Region,
    /// How high it is, mm.
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
        let capsules = Region::union(arms.iter().map(|arm| arm.capsule(arm.radius)));
        let all = self.base.plus(&capsules)?;
        let feet = Region::union(arms.iter().filter_map(|arm| Some(arm.capsule(arm.foot?.1))));
        let foot = arms.iter().filter_map(|arm| arm.foot.map(|(high, _)| high));
        let low = arms
            .iter()
            .map(|arm| arm.held)
            .fold(self.base_top, f64::min);
        let low = foot.fold(low, f64::min);
        let body = &mut draft.body;
        let bed = all.plus(&feet)?;
        body.add(Prism::new(bed, 0.0, low).with_low(shop.bed_edge(low)));
        if self.base_top > low {
            body.add(Prism::new(self.base.clone(), low / 2.0, self.base_top));
        }
        for arm in arms.iter().filter(|arm| arm.held > low) {
            body.add(Prism::new(arm.capsule(arm.radius), low / 2.0, arm.held));
        }
        for arm in arms {
            arm.pin(shop, draft, &all, self.thick)?;
        }
        Ok(())
    }
}
