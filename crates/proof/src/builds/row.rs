//! What is drawn for one build: a share from −1 to 1 of every error and play, and the latch that
//! makes.

use super::dice::Dice;
use crate::built::{BuiltDial, BuiltLatch};
use crate::check::Contributor;
use latchwright_model::key;
use latchwright_model::{Climate, Design, Dial};

use latchwright_geometry::trig;

/// Whose the shares of the whole latch are: temperature, humidity, keeper, guide front and back.
pub(super) const LATCH_CONTRIBUTORS: [Contributor; 5] = [
    Contributor::Season,
    Contributor::Season,
    Contributor::KeeperPlace,
    Contributor::GuidePlay,
    Contributor::GuidePlay,
];

/// Whose the shares of a dial are: pin x, y; bore x, y; rim, its coat; pin, its coat; shaft x, y;
/// reading; backlash.
pub(super) const DIAL_CONTRIBUTORS: [Contributor; 12] = [
    Contributor::PinPlace,
    Contributor::PinPlace,
    Contributor::BorePlace,
    Contributor::BorePlace,
    Contributor::Print,
    Contributor::FilmSpread,
    Contributor::Print,
    Contributor::FilmSpread,
    Contributor::ShaftPlay,
    Contributor::ShaftPlay,
    Contributor::Reading,
    Contributor::Backlash,
];

/// Whose the shares of a slot are: width, its coats; depth, its coat; lead-in.
pub(super) const SLOT_CONTRIBUTORS: [Contributor; 5] = [
    Contributor::Print,
    Contributor::FilmSpread,
    Contributor::Print,
    Contributor::FilmSpread,
    Contributor::Print,
];

/// The shares of one build.
#[derive(Debug, Clone)]
pub(super) struct Row {
    pub(super) latch: [f64; LATCH_CONTRIBUTORS.len()],
    pub(super) dials: Vec<DialRow>,
}

/// The shares of one dial.
#[derive(Debug, Clone)]
pub(super) struct DialRow {
    pub(super) own: [f64; DIAL_CONTRIBUTORS.len()],
    pub(super) slots: Vec<[f64; SLOT_CONTRIBUTORS.len()]>,
}

impl Row {
    /// Nothing off.
    pub(super) fn nominal(design: &Design) -> Self {
        let dial = |dial: &Dial| DialRow {
            own: [0.0; DIAL_CONTRIBUTORS.len()],
            slots: vec![[0.0; SLOT_CONTRIBUTORS.len()]; dial.disc.slots.len()],
        };
        Self {
            latch: [0.0; LATCH_CONTRIBUTORS.len()],
            dials: design.dials.iter().map(dial).collect(),
        }
    }

    /// Every share, those of the latch first.
    pub(super) fn shares_mut(&mut self) -> impl Iterator<Item = &mut f64> {
        self.latch
            .iter_mut()
            .chain(self.dials.iter_mut().flat_map(|dial| {
                let slots = dial.slots.iter_mut().flatten();
                dial.own.iter_mut().chain(slots)
            }))
    }

    /// Draws all shares anew.
    pub(super) fn draw(&mut self, dice: &mut Dice) {
        let (warmth, damp) = (dice.even(), dice.even());
        let keeper = dice.error();
        self.latch = [warmth, damp, keeper, dice.even(), dice.even()];
        for dial in &mut self.dials {
            for share in &mut dial.own {
                *share = dice.error();
            }
            let [.., shaft_x, shaft_y, _, backlash] = &mut dial.own;
            (*shaft_x, *shaft_y) = dice.in_disc();
            *backlash = dice.even();
            for share in dial.slots.iter_mut().flatten() {
                *share = dice.error();
            }
        }
    }
}

/// What every share of a design is a share of.
#[derive(Debug, Clone)]
pub(super) struct Ranges<'a> {
    design: &'a Design,
    /// Middle and half the range of temperature and humidity over the year.
    celsius: (f64, f64),
    humidity: (f64, f64),
    /// Backlash of each dial, degrees to either side.
    backlash: Vec<f64>,
}

impl<'a> Ranges<'a> {
    pub(super) fn of(design: &'a Design) -> Self {
        let season = &design.season;
        let named = [season.built, season.driest, season.dampest];
        let range = |of: fn(&Climate) -> f64| {
            let least = named.iter().map(of).fold(f64::INFINITY, f64::min);
            let most = named.iter().map(of).fold(f64::NEG_INFINITY, f64::max);
            (f64::midpoint(least, most), (most - least) / 2.0)
        };
        let backlash = |dial: &Dial| {
            let key = &dial.key;
            trig::degrees(key::backlash(key.sides, key.apothem, key.clearance))
        };
        Self {
            design,
            celsius: range(|air| air.celsius),
            humidity: range(|air| air.humidity),
            backlash: design.dials.iter().map(backlash).collect(),
        }
    }

    /// ± of the pointer's reading and of dial `index`'s backlash, degrees.
    pub(super) fn turning(&self, index: usize) -> (f64, f64) {
        let backlash = self.backlash.get(index).copied().unwrap_or(0.0);
        (self.design.workmanship.reading, backlash)
    }

    /// Makes `built` the latch of these shares.
    pub(super) fn build(&self, row: &Row, built: &mut BuiltLatch) {
        let [warmth, damp, keeper, front, back] = row.latch;
        let work = &self.design.workmanship;
        built.air = Climate {
            celsius: self.celsius.0 + warmth * self.celsius.1,
            humidity: self.humidity.0 + damp * self.humidity.1,
        };
        built.keeper = keeper * work.keeper_place;
        (built.front, built.back) = (front, back);
        let dials = self.design.dials.iter().zip(&self.backlash);
        for ((dial, backlash), (row, built)) in dials.zip(row.dials.iter().zip(&mut built.dials)) {
            self.build_dial(dial, *backlash, row, built);
        }
    }

    fn build_dial(&self, dial: &Dial, backlash: f64, row: &DialRow, built: &mut BuiltDial) {
        let work = &self.design.workmanship;
        let [
            pin_x,
            pin_y,
            bore_x,
            bore_y,
            rim,
            rim_coat,
            pin,
            pin_coat,
            shaft_x,
            shaft_y,
            reading,
            turned,
        ] = row.own;
        built.pin = (pin_x * work.pin_place, pin_y * work.pin_place);
        built.bore = (bore_x * work.bore_place, bore_y * work.bore_place);
        let radius = |print: f64, coat: f64| print * work.print / 2.0 + coat * work.film_spread;
        built.rim = dial.disc.radius + radius(rim, rim_coat);
        built.pin_radius = dial.pin.diameter / 2.0 + radius(pin, pin_coat);
        let play = dial.bore.shaft_play;
        built.shaft = (shaft_x * play, shaft_y * play);
        built.reading = reading * work.reading;
        built.backlash = turned * backlash;
        let slots = dial.disc.slots.iter().zip(&row.slots);
        for ((slot, row), built) in slots.zip(&mut built.slots) {
            let [width, width_coats, depth, depth_coat, lead_in] = *row;
            built.width = slot.width + width * work.print + 2.0 * width_coats * work.film_spread;
            built.depth = slot.depth + depth * work.print + depth_coat * work.film_spread;
            built.lead_in = if slot.lead_in == 0.0 {
                0.0
            } else {
                slot.lead_in + lead_in * work.print
            };
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::thin_latch::thin;

    #[test]
    fn shares_of_nought_build_the_design_as_it_is_drawn() {
        let mut design = thin();
        design.season = latchwright_model::Season::still(design.season.built);
        let nominal = BuiltLatch::nominal(&design);
        let mut built = nominal.clone();
        let mut row = Row::nominal(&design);
        row.shares_mut().for_each(|share| *share = 1.0);
        Ranges::of(&design).build(&row, &mut built);
        assert_ne!(built, nominal);
        Ranges::of(&design).build(&Row::nominal(&design), &mut built);
        assert_eq!(built, nominal);
    }

    #[test]
    fn whole_shares_reach_the_ends_of_every_range() {
        let design = thin();
        let mut row = Row::nominal(&design);
        row.shares_mut().for_each(|share| *share = 1.0);
        let mut built = BuiltLatch::nominal(&design);
        Ranges::of(&design).build(&row, &mut built);
        assert_eq!((built.air.celsius, built.air.humidity), (24.0, 70.0));
        let (dial, slot) = (&built.dials[1], built.dials[1].slots[0]);
        let near = |found: f64, wanted: f64| assert!((found - wanted).abs() < 1e-12, "{found}");
        near(built.keeper, 0.4);
        near(dial.pin.1, 0.25);
        near(dial.rim, 18.15);
        near(dial.pin_radius, 2.15);
        near(slot.width, 9.3);
        near(slot.depth, 9.25);
        near(slot.lead_in, 1.2);
        near(dial.reading, 3.0);
        assert!((dial.backlash - 2.191).abs() < 5e-4, "{}", dial.backlash);
    }
}
