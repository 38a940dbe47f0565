//! Room through the thickness, strength, racking, and rooms that latch.

use super::DialSize::{DiscBelow, DiscThickness, PinDiameter, PinFree, PinHeight};
use super::LatchSize::{
    Friction, GuideLength, InsideDepth, InsideHeight, InsideWidth, KeeperThickness, PlateThickness,
    PullAt, Rabbet, Room, Shank, SliderBelow, SliderThickness, TabWidth,
};
use super::room::towards;
use super::{Ways, latch, moves, resize};
use crate::remedy::way::Way;
use latchwright_model::change::Size;

/// The least inside size of a box that is made too low or too narrow for a child, mm: below the 150 mm
/// of the rules by what a saw takes.
///
/// # Source
/// Common practice, no source.
const TOO_NARROW: f64 = 145.0;

impl Ways<'_> {
    pub(super) fn pin_meets_disc(&self) -> Vec<Way> {
        moves([
            self.on(PinHeight, 1),
            self.on(DiscBelow, 1),
            self.on(DiscBelow, -1),
            self.on(PinHeight, 1) + self.on(DiscBelow, 1),
            self.on(PinHeight, 1) + self.on(DiscBelow, -1),
            latch(SliderBelow, -1),
            self.on(DiscThickness, -1),
        ])
    }

    /// The finger lower, its pin and the slider longer by as much; or disc and slider nearer to the plate.
    pub(super) fn finger_below_discs(&self) -> Vec<Way> {
        let lower =
            self.on_every(PinFree, 1) + self.on_every(PinHeight, 1) + latch(SliderThickness, 1);
        moves([
            self.on(PinFree, 1),
            self.on_every(PinFree, 1),
            lower.clone(),
            lower + latch(Room, 1),
            self.on_every(DiscThickness, -1),
            self.on_every(DiscBelow, -1),
        ])
    }

    pub(super) fn room_below(&self) -> Vec<Way> {
        moves([
            latch(Room, 1),
            self.on_every(PinHeight, -1),
            self.on_every(DiscThickness, -1),
            latch(SliderThickness, -1),
        ])
    }

    pub(super) fn lid_closes() -> Vec<Way> {
        moves([
            latch(Rabbet, 1),
            latch(KeeperThickness, -1),
            latch(Rabbet, 1) + latch(PlateThickness, 1),
        ])
    }

    pub(super) fn rabbet_roof() -> Vec<Way> {
        moves([
            latch(Rabbet, -1),
            latch(Rabbet, -1) + latch(KeeperThickness, -1),
            latch(PlateThickness, 1),
        ])
    }

    pub(super) fn pin_strength(&self) -> Vec<Way> {
        moves([self.on(PinFree, -1), self.on(PinDiameter, 1)])
    }

    pub(super) fn tab_strength() -> Vec<Way> {
        moves([
            latch(SliderThickness, 1),
            latch(SliderThickness, 1) + latch(Room, 1),
            latch(GuideLength, 20),
            latch(TabWidth, 1),
        ])
    }

    pub(super) fn racking(&self) -> Vec<Way> {
        let slider = &self.design.slider;
        moves([
            latch(PullAt, towards(slider.pull_at, slider.guide_at.0)),
            latch(GuideLength, 20),
            latch(Shank, -1),
            latch(Friction, -1),
        ])
    }

    /// One inside size too small for a child to be in, the smallest of them first.
    pub(super) fn enclosed_space(&self) -> Vec<Way> {
        let inside = &self.design.inside;
        let mut sizes = [
            (InsideHeight, inside.height),
            (InsideDepth, inside.depth),
            (InsideWidth, inside.width),
        ];
        sizes.sort_by(|one, other| one.1.total_cmp(&other.1));
        let way = |(size, from)| Way::Once(vec![resize(Size::Latch(size), from, TOO_NARROW)]);
        sizes.into_iter().map(way).collect()
    }
}
