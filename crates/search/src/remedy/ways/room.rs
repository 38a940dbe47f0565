//! Room between parts: moving them apart or making them smaller.

use super::DialSize::{Apothem, BoreDiameter, CentreX, CentreY, DiscRadius, Gap, KnobDiameter};
use super::LatchSize::{GuideLength, GuideY, PlateDepth, PlateWidth, PullAt, Shank, Travel};
use super::SlotSize::Depth;
use super::{DialSize, Sizes, Ways, latch, moves, on, on_all};
use crate::remedy::way::Way;

impl Ways<'_> {
    /// The other dials, the nearest first.
    pub(super) fn neighbours(&self, index: usize) -> Vec<usize> {
        let Some(own) = self.dial(index) else {
            return Vec::new();
        };
        let square = |dial: &usize| {
            self.dial(*dial).map_or(f64::INFINITY, |other| {
                let (x, y) = (other.centre.0 - own.centre.0, other.centre.1 - own.centre.1);
                x * x + y * y
            })
        };
        let mut others = self.every_dial();
        others.retain(|other| *other != index);
        others.sort_by(|one, other| square(one).total_cmp(&square(other)));
        others
    }

    /// All dials further apart, each as far from the next as any other.
    pub(super) fn spread(&self) -> Sizes {
        let mut dials = self.every_dial();
        let x = |dial: &usize| self.dial(*dial).map_or(0.0, |dial| dial.centre.0);
        dials.sort_by(|one, other| x(one).total_cmp(&x(other)));
        let last = i64::try_from(dials.len()).unwrap_or(1) - 1;
        let halves = if last % 2 == 0 { 2 } else { 1 };
        let places = (0_i64..).zip(&dials);
        let moved = places.map(|(place, dial)| on(*dial, CentreX, (2 * place - last) / halves));
        moved.filter(|(_, times)| *times != 0).collect()
    }

    /// What brings this dial and its nearest neighbour apart: moving either, or spreading all.
    pub(super) fn apart(&self, index: usize) -> Vec<Sizes> {
        let mut ways = Vec::new();
        if let Some(other) = self.neighbours(index).first() {
            let x = |dial| self.dial(dial).map_or(0.0, |dial| dial.centre.0);
            let away = if x(index) < x(*other) { -1 } else { 1 };
            ways.push(vec![on(index, CentreX, away)]);
            ways.push(vec![on(*other, CentreX, -away)]);
        }
        ways.push(self.spread());
        ways
    }

    /// Smaller on one dial and its neighbour, or on all alike.
    pub(super) fn smaller(&self, dial: usize, size: DialSize) -> Vec<Sizes> {
        let neighbours = self.neighbours(dial);
        let pairs = neighbours.iter().take(2);
        let mut ways: Vec<Sizes> = pairs
            .map(|other| vec![on(dial, size, -1), on(*other, size, -1)])
            .collect();
        if self.design.dials.len() > 2 {
            ways.push(on_all(&self.every_dial(), size, -1));
        }
        ways
    }

    /// A smaller disc has wider mouths, and a smaller bore wants another shaft: room comes first.
    pub(super) fn apart_or_smaller(&self, dial: usize, size: DialSize) -> Vec<Way> {
        moves(self.apart(dial).into_iter().chain(self.smaller(dial, size)))
    }

    pub(super) fn knobs_apart(&self, dial: usize) -> Vec<Way> {
        let smaller = self.smaller(dial, KnobDiameter);
        moves(smaller.into_iter().chain(self.apart(dial)))
    }

    pub(super) fn disc_to_pin(&self, dial: usize) -> Vec<Way> {
        let mut ways = self.apart(dial);
        ways.push(vec![on(dial, CentreY, 1)]);
        let nearest = self.neighbours(dial).first().copied();
        ways.extend(nearest.map(|other| vec![on(other, Gap, 1)]));
        ways.push(vec![on(dial, DiscRadius, -1)]);
        ways.push(on_all(&self.every_dial(), DiscRadius, -1));
        moves(ways)
    }

    pub(super) fn bore_to_edge(&self, dial: usize) -> Vec<Way> {
        let inwards = self
            .dial(dial)
            .map_or(1, |dial| if dial.centre.0 > 0.0 { -1 } else { 1 });
        moves([
            vec![on(dial, CentreX, inwards)],
            vec![on(dial, CentreY, -1)],
            vec![on(dial, CentreY, 1)],
            on_all(&self.every_dial(), CentreY, -1),
            vec![latch(PlateDepth, 1)],
            vec![latch(PlateWidth, 2)],
            vec![on(dial, BoreDiameter, -1)],
        ])
    }

    pub(super) fn bore_to_guide_slot(&self, dial: usize) -> Vec<Way> {
        let pull = self.design.slider.pull_at;
        let away = self
            .dial(dial)
            .map_or(1, |dial| if dial.centre.0 < pull { -1 } else { 1 });
        moves([
            vec![latch(Shank, -1)],
            vec![latch(PullAt, -away)],
            vec![on(dial, CentreX, away)],
            vec![on(dial, CentreY, 1)],
            on_all(&self.every_dial(), CentreY, 1),
            vec![on(dial, BoreDiameter, -1)],
        ])
    }

    pub(super) fn finger_knob(&self, dial: usize) -> Vec<Way> {
        let pull = self.design.slider.pull_at;
        let away = self
            .dial(dial)
            .map_or(1, |dial| if dial.centre.0 < pull { -1 } else { 1 });
        let smaller = self.smaller(dial, KnobDiameter);
        moves(smaller.into_iter().chain([
            vec![latch(GuideY, -1)],
            vec![on(dial, CentreY, 1)],
            on_all(&self.every_dial(), CentreY, 1),
            vec![latch(PullAt, -away)],
            vec![on(dial, CentreX, away)],
        ]))
    }

    /// Dials further from the front, all of them or the one that is nearest to it.
    pub(super) fn bar_room(&self) -> Vec<Way> {
        let rim = |dial: &usize| {
            self.dial(*dial)
                .map_or(f64::INFINITY, |dial| dial.centre.1 - dial.disc.radius)
        };
        let dials = self.every_dial();
        let lowest = dials
            .iter()
            .min_by(|one, other| rim(one).total_cmp(&rim(other)));
        let mut ways: Vec<Sizes> = lowest
            .map(|dial| vec![on(*dial, CentreY, 1)])
            .into_iter()
            .collect();
        ways.push(on_all(&dials, CentreY, 1));
        ways.push(vec![latch(Travel, -1)]);
        moves(ways)
    }

    /// A guide that ends further forward, or a bar that lies further back.
    pub(super) fn strips_to_bar(&self) -> Vec<Way> {
        let mut ways = moves([
            vec![latch(GuideY, -1)],
            vec![latch(GuideLength, -20), latch(GuideY, -10)],
            vec![latch(GuideLength, -20)],
        ]);
        ways.extend(self.bar_room());
        ways
    }

    /// A guide that ends further back, or is shorter at its front end.
    pub(super) fn strips_to_keeper() -> Vec<Way> {
        moves([
            vec![latch(GuideY, 1)],
            vec![latch(GuideLength, -20), latch(GuideY, 10)],
            vec![latch(GuideLength, -20)],
        ])
    }

    pub(super) fn finger_knob_seat(&self) -> Vec<Way> {
        let inwards = if self.design.slider.pull_at > self.design.tab.at {
            -1
        } else {
            1
        };
        moves([
            vec![latch(PullAt, inwards)],
            vec![latch(GuideY, -1)],
            vec![latch(GuideY, 1)],
            vec![latch(Shank, -1)],
            on_all(&self.every_dial(), CentreY, 1),
        ])
    }

    pub(super) fn slot_to_star(&self, dial: usize) -> Vec<Way> {
        moves([
            self.all_slots(&[dial], Depth, -1),
            vec![on(dial, DiscRadius, 1)],
            on_all(&self.every_dial(), DiscRadius, 1),
            vec![on(dial, Apothem, -1)],
        ])
    }
}
