//! Room between parts: moving them apart or making them smaller.

use super::DialSize::{Apothem, BoreDiameter, CentreX, CentreY, DiscRadius, Gap, KnobDiameter};
use super::LatchSize::{GuideLength, GuideY, PlateDepth, PlateWidth, PullAt, Shank, Travel};
use super::SlotSize::Depth;
use super::{DialSize, Moving, Sizes, Ways, latch, moves, on};
use crate::remedy::way::Way;
use latchwright_model::change::Size;

/// The direction from `x` to `to`.
pub(super) fn towards(x: f64, to: f64) -> i64 {
    if x > to { -1 } else { 1 }
}

/// The direction from `from` on to `x` and beyond.
fn away(x: f64, from: f64) -> i64 {
    if x < from { -1 } else { 1 }
}

impl Ways<'_> {
    fn x(&self, dial: usize) -> f64 {
        self.dial(dial).map_or(0.0, |dial| dial.centre.0)
    }

    /// The other dials, the nearest first.
    fn neighbours(&self) -> Vec<usize> {
        let Some(own) = self.dial(self.dial) else {
            return Vec::new();
        };
        let square = |dial: &usize| {
            self.dial(*dial).map_or(f64::INFINITY, |other| {
                let (x, y) = (other.centre.0 - own.centre.0, other.centre.1 - own.centre.1);
                x * x + y * y
            })
        };
        let mut others = self.every_dial();
        others.retain(|other| *other != self.dial);
        others.sort_by(|one, other| square(one).total_cmp(&square(other)));
        others
    }

    /// All dials further apart, each as far from the next as any other.
    fn spread(&self) -> Sizes {
        let mut dials = self.every_dial();
        dials.sort_by(|one, other| self.x(*one).total_cmp(&self.x(*other)));
        let last = i64::try_from(dials.len()).unwrap_or(1) - 1;
        let halves = if last % 2 == 0 { 2 } else { 1 };
        let moved = (0_i64..).zip(dials).map(|(place, dial)| Moving {
            size: Size::Dial(dial, CentreX),
            times: (2 * place - last) / halves,
        });
        Sizes(moved.filter(|moved| moved.times != 0).collect())
    }

    /// What brings this dial and its nearest neighbour apart: moving either, or spreading all.
    pub(super) fn apart(&self) -> Vec<Sizes> {
        let mut ways = Vec::new();
        if let Some(other) = self.neighbours().first() {
            let away = away(self.x(self.dial), self.x(*other));
            ways.extend([self.on(CentreX, away), on(*other, CentreX, -away)]);
        }
        ways.push(self.spread());
        ways
    }

    /// Smaller on this dial and a neighbour, or on all alike. A smaller disc has wider mouths, and a smaller
    /// bore wants another shaft: of these, [`Self::apart`] comes first.
    pub(super) fn smaller(&self, size: DialSize) -> Vec<Sizes> {
        let neighbours = self.neighbours();
        let nearest = neighbours.iter().take(2);
        let mut ways: Vec<Sizes> = nearest
            .map(|other| self.on(size, -1) + on(*other, size, -1))
            .collect();
        if neighbours.len() > 1 {
            ways.push(self.on_every(size, -1));
        }
        ways
    }

    pub(super) fn knobs_apart(&self) -> Vec<Way> {
        moves([self.smaller(KnobDiameter), self.apart()].concat())
    }

    pub(super) fn disc_to_pin(&self) -> Vec<Way> {
        let mut ways = self.apart();
        ways.push(self.on(CentreY, 1));
        ways.extend(self.neighbours().first().map(|other| on(*other, Gap, 1)));
        ways.extend([self.on(DiscRadius, -1), self.on_every(DiscRadius, -1)]);
        moves(ways)
    }

    pub(super) fn bore_to_edge(&self) -> Vec<Way> {
        moves([
            self.on(CentreX, towards(self.x(self.dial), 0.0)),
            self.on(CentreY, -1),
            self.on(CentreY, 1),
            self.on_every(CentreY, -1),
            latch(PlateDepth, 1),
            latch(PlateWidth, 2),
            self.on(BoreDiameter, -1),
        ])
    }

    pub(super) fn bore_to_guide_slot(&self) -> Vec<Way> {
        let away = away(self.x(self.dial), self.design.slider.pull_at);
        moves([
            latch(Shank, -1),
            latch(PullAt, -away),
            self.on(CentreX, away),
            self.on(CentreY, 1),
            self.on_every(CentreY, 1),
            self.on(BoreDiameter, -1),
        ])
    }

    pub(super) fn finger_knob(&self) -> Vec<Way> {
        let away = away(self.x(self.dial), self.design.slider.pull_at);
        let mut ways = self.smaller(KnobDiameter);
        ways.extend([
            latch(GuideY, -1),
            self.on(CentreY, 1),
            self.on_every(CentreY, 1),
            latch(PullAt, -away),
            self.on(CentreX, away),
        ]);
        moves(ways)
    }

    /// Dials further from the front, all of them or the one that is nearest to it.
    pub(super) fn bar_room(&self) -> Vec<Way> {
        let front = |dial: &usize| {
            let dial = self.dial(*dial);
            dial.map_or(f64::INFINITY, |dial| dial.centre.1 - dial.disc.radius)
        };
        let dials = self.every_dial();
        let nearest = dials
            .into_iter()
            .min_by(|one, other| front(one).total_cmp(&front(other)));
        moves([
            on(nearest.unwrap_or(0), CentreY, 1),
            self.on_every(CentreY, 1),
            latch(Travel, -1),
        ])
    }

    /// A guide that ends further forward, or a bar that lies further back.
    pub(super) fn strips_to_bar(&self) -> Vec<Way> {
        let mut ways = moves([
            latch(GuideY, -1),
            latch(GuideLength, -20) + latch(GuideY, -10),
            latch(GuideLength, -20),
        ]);
        ways.extend(self.bar_room());
        ways
    }

    /// A guide that ends further back, or is shorter at its front end.
    pub(super) fn strips_to_keeper() -> Vec<Way> {
        moves([
            latch(GuideY, 1),
            latch(GuideLength, -20) + latch(GuideY, 10),
            latch(GuideLength, -20),
        ])
    }

    pub(super) fn finger_knob_seat(&self) -> Vec<Way> {
        let (pull, tab) = (self.design.slider.pull_at, self.design.tab.at);
        moves([
            latch(PullAt, towards(pull, tab)),
            latch(GuideY, -1),
            latch(GuideY, 1),
            latch(Shank, -1),
            self.on_every(CentreY, 1),
        ])
    }

    pub(super) fn slot_to_star(&self) -> Vec<Way> {
        moves([
            self.all_slots(&[self.dial], Depth, -1),
            self.on(DiscRadius, 1),
            self.on_every(DiscRadius, 1),
            self.on(Apothem, -1),
        ])
    }
}
