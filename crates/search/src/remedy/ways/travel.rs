//! Slider, tab, pins and slots: what lets a pin in, keeps it out, holds the tab and frees it.

use super::DialSize::{Clearance, DiscRadius, Gap, PinDiameter, ShaftPlay};
use super::LatchSize::{
    Engagement, GuideLength, GuidePlay, Print, Reading, RequiredHold, TabWidth, Travel,
};
use super::SlotSize::{Depth, LeadIn, Width};
use super::{Ways, latch, moves, on_all};
use crate::remedy::way::Way;
use latchwright_model::Material;
use latchwright_model::change::Step;

impl Ways<'_> {
    pub(super) fn at_rest(&self) -> Vec<Way> {
        let reach = || latch(Engagement, 1) + latch(Travel, 1);
        moves([
            self.on(Gap, 1),
            self.on(Gap, 1) + reach(),
            self.on_every(Gap, 1) + reach(),
            self.on(ShaftPlay, -1),
            latch(GuideLength, 20),
            latch(GuidePlay, -1),
        ])
    }

    /// What lets the pins of these dials into their true slots.
    pub(super) fn lets_in(&self, dials: &[usize]) -> Vec<Way> {
        let wider = || self.true_slots(dials, Width, 1);
        let deeper = || self.true_slots(dials, Depth, 1);
        let led_in = || self.true_slots(dials, LeadIn, 1);
        let larger = || on_all(dials, DiscRadius, 1);
        let mut ways: Vec<Way> = self.seated(dials).into_iter().collect();
        ways.extend(moves([
            led_in(),
            wider(),
            deeper(),
            led_in() + deeper(),
            wider() + deeper(),
            deeper() + larger(),
            wider() + larger(),
            wider() + deeper() + larger(),
            on_all(dials, Clearance, -1),
            on_all(dials, PinDiameter, -1),
            latch(GuidePlay, -1),
            latch(Reading, -1),
            latch(Print, -1),
        ]));
        ways
    }

    pub(super) fn captive(&self) -> Vec<Way> {
        moves([
            self.on(Gap, -1),
            self.true_slots(&[self.dial], LeadIn, -1),
            latch(Travel, 1),
            self.longer(),
            self.longer() + self.on_every(DiscRadius, 1),
            self.true_slots(&[self.dial], Width, -1),
            latch(GuidePlay, -1),
        ])
    }

    pub(super) fn stays_held(&self) -> Vec<Way> {
        let mut ways = moves([self.on(Gap, -1), self.other_slots(&[self.dial], Depth, -1)]);
        ways.extend(self.held_at_rest());
        ways
    }

    pub(super) fn free(&self) -> Vec<Way> {
        moves([
            latch(Engagement, -1),
            latch(Travel, 1),
            self.longer(),
            self.longer() + self.on_every(DiscRadius, 1),
            latch(GuideLength, 20),
            latch(GuidePlay, -1),
        ])
    }

    pub(super) fn held_at_rest(&self) -> Vec<Way> {
        moves([
            latch(Engagement, 1),
            self.further(),
            latch(GuideLength, 20),
            latch(GuidePlay, -1),
            latch(RequiredHold, -1),
        ])
    }

    pub(super) fn guide(&self) -> Vec<Way> {
        let mut ways = moves([latch(GuidePlay, 1)]);
        let plate = &self.design.plate;
        let as_plate = Material::Wood {
            species: plate.wood.clone(),
            sawn: plate.sawn,
            grain: plate.grain,
        };
        if self.design.slider.material != as_plate {
            ways.push(Way::Once(vec![Step::SliderMaterial(as_plate)]));
        }
        ways.extend(moves([latch(TabWidth, -1)]));
        ways
    }
}
