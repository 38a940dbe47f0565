//! Slider, tab, pins and slots: what lets a pin in, keeps it out, holds the tab and frees it.

use super::DialSize::{Clearance, DiscRadius, Gap, PinDiameter, ShaftPlay};
use super::LatchSize::{
    Engagement, GuideLength, GuidePlay, Print, Reading, RequiredHold, TabWidth, Travel,
};
use super::SlotSize::{Depth, LeadIn, Width};
use super::{Ways, latch, moves, on, on_all};
use crate::remedy::way::Way;
use latchwright_model::Material;
use latchwright_model::change::Step;

impl Ways<'_> {
    pub(super) fn at_rest(&self, dial: usize) -> Vec<Way> {
        let gap = vec![on(dial, Gap, 1)];
        let mut gap_and_reach = gap.clone();
        gap_and_reach.extend([latch(Engagement, 1), latch(Travel, 1)]);
        let mut all = on_all(&self.every_dial(), Gap, 1);
        all.extend([latch(Engagement, 1), latch(Travel, 1)]);
        moves([
            gap,
            gap_and_reach,
            all,
            vec![on(dial, ShaftPlay, -1)],
            vec![latch(GuideLength, 20)],
            vec![latch(GuidePlay, -1)],
        ])
    }

    /// What lets the pins of these dials into their true slots.
    pub(super) fn lets_in(&self, dials: &[usize]) -> Vec<Way> {
        let wider = self.true_slots(dials, Width, 1);
        let deeper = self.true_slots(dials, Depth, 1);
        let led_in = self.true_slots(dials, LeadIn, 1);
        let larger = on_all(dials, DiscRadius, 1);
        let mut ways: Vec<Way> = self.seated(dials).into_iter().collect();
        ways.extend(moves([
            led_in.clone(),
            wider.clone(),
            deeper.clone(),
            [&led_in[..], &deeper].concat(),
            [&wider[..], &deeper].concat(),
            [&deeper[..], &larger].concat(),
            [&wider[..], &larger].concat(),
            [&wider[..], &deeper, &larger].concat(),
            on_all(dials, Clearance, -1),
            on_all(dials, PinDiameter, -1),
            vec![latch(GuidePlay, -1)],
            vec![latch(Reading, -1)],
            vec![latch(Print, -1)],
        ]));
        ways
    }

    pub(super) fn captive(&self, dial: usize) -> Vec<Way> {
        moves([
            vec![on(dial, Gap, -1)],
            self.true_slots(&[dial], LeadIn, -1),
            vec![latch(Travel, 1)],
            self.longer(),
            [
                &self.longer()[..],
                &on_all(&self.every_dial(), DiscRadius, 1),
            ]
            .concat(),
            self.true_slots(&[dial], Width, -1),
            vec![latch(GuidePlay, -1)],
        ])
    }

    pub(super) fn stays_held(&self, dial: usize) -> Vec<Way> {
        moves([
            vec![on(dial, Gap, -1)],
            self.other_slots(&[dial], Depth, -1),
            vec![latch(Engagement, 1)],
            self.further(),
            vec![latch(GuideLength, 20)],
            vec![latch(GuidePlay, -1)],
            vec![latch(RequiredHold, -1)],
        ])
    }

    pub(super) fn free(&self) -> Vec<Way> {
        moves([
            vec![latch(Engagement, -1)],
            vec![latch(Travel, 1)],
            self.longer(),
            [
                &self.longer()[..],
                &on_all(&self.every_dial(), DiscRadius, 1),
            ]
            .concat(),
            vec![latch(GuideLength, 20)],
            vec![latch(GuidePlay, -1)],
        ])
    }

    pub(super) fn held_at_rest(&self) -> Vec<Way> {
        moves([
            vec![latch(Engagement, 1)],
            self.further(),
            vec![latch(GuideLength, 20)],
            vec![latch(GuidePlay, -1)],
            vec![latch(RequiredHold, -1)],
        ])
    }

    pub(super) fn guide(&self) -> Vec<Way> {
        let mut ways = moves([vec![latch(GuidePlay, 1)]]);
        let plate = &self.design.plate;
        let as_plate = Material::Wood {
            species: plate.wood.clone(),
            sawn: plate.sawn,
            grain: plate.grain,
        };
        if self.design.slider.material != as_plate {
            ways.push(Way::Once(vec![Step::SliderMaterial(as_plate)]));
        }
        ways.extend(moves([vec![latch(TabWidth, -1)]]));
        ways
    }
}
