//! Room through the thickness, strength, racking, and rooms that latch.

use super::DialSize::{DiscBelow, DiscThickness, PinDiameter, PinFree, PinHeight};
use super::LatchSize::{
    Friction, GuideLength, InsideDepth, InsideHeight, InsideWidth, KeeperThickness, PlateThickness,
    PullAt, Rabbet, Room, Shank, SliderBelow, SliderThickness, TabWidth,
};
use super::{Ways, latch, moves, on, on_all, resize};
use crate::remedy::way::Way;
use latchwright_model::change::Size;

/// The least inside size of a box that is made too low or too narrow for a child, mm: below the 150 mm
/// of the rules by what a saw takes.
///
/// # Source
/// Common practice, no source.
const TOO_NARROW: f64 = 145.0;

impl Ways<'_> {
    pub(super) fn pin_meets_disc(dial: usize) -> Vec<Way> {
        moves([
            vec![on(dial, PinHeight, 1)],
            vec![on(dial, DiscBelow, 1)],
            vec![on(dial, DiscBelow, -1)],
            vec![on(dial, PinHeight, 1), on(dial, DiscBelow, 1)],
            vec![on(dial, PinHeight, 1), on(dial, DiscBelow, -1)],
            vec![latch(SliderBelow, -1)],
            vec![on(dial, DiscThickness, -1)],
        ])
    }

    pub(super) fn room_below(&self) -> Vec<Way> {
        let all = self.every_dial();
        moves([
            vec![latch(Room, 1)],
            on_all(&all, PinHeight, -1),
            on_all(&all, DiscThickness, -1),
            vec![latch(SliderThickness, -1)],
        ])
    }

    pub(super) fn lid_closes() -> Vec<Way> {
        moves([
            vec![latch(Rabbet, 1)],
            vec![latch(KeeperThickness, -1)],
            vec![latch(Rabbet, 1), latch(PlateThickness, 1)],
        ])
    }

    pub(super) fn rabbet_roof() -> Vec<Way> {
        moves([
            vec![latch(Rabbet, -1)],
            vec![latch(Rabbet, -1), latch(KeeperThickness, -1)],
            vec![latch(PlateThickness, 1)],
        ])
    }

    pub(super) fn pin_strength(dial: usize) -> Vec<Way> {
        moves([vec![on(dial, PinFree, -1)], vec![on(dial, PinDiameter, 1)]])
    }

    pub(super) fn tab_strength() -> Vec<Way> {
        moves([
            vec![latch(SliderThickness, 1)],
            vec![latch(SliderThickness, 1), latch(Room, 1)],
            vec![latch(GuideLength, 20)],
            vec![latch(TabWidth, 1)],
        ])
    }

    pub(super) fn racking(&self) -> Vec<Way> {
        let aside = self.design.slider.pull_at - self.design.slider.guide_at.0;
        let inwards = if aside > 0.0 { -1 } else { 1 };
        moves([
            vec![latch(PullAt, inwards)],
            vec![latch(GuideLength, 20)],
            vec![latch(Shank, -1)],
            vec![latch(Friction, -1)],
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
