//! The worst real box found: all its numbers, the figure it has, and how much each thing that is off
//! in it costs.

use latchwright_geometry::Point;

use super::over_year::{BACK, BORE, FRONT, LatchOverYear, PIN, VARIABLES};
use crate::built::{BuiltDial, BuiltLatch, Moment, Movement};
use crate::check::Contributor;
use latchwright_model::{Design, Workmanship};

/// A real box with a figure of a check, built as badly as it may be.
#[derive(Debug, Clone, PartialEq)]
pub struct Witness {
    /// The box.
    pub latch: BuiltLatch,
    /// The dials whose numbers matter, from 0.
    pub dials: Vec<usize>,
    /// Its figure, in the unit of the check.
    pub value: f64,
}

/// How a figure is read off one built latch.
pub type Measure<'a> = dyn Fn(&Moment<'_>) -> Option<f64> + 'a;

/// Where sizes stand that are off, as shares of what they may be off by: −1, 0 or 1.
#[derive(Debug, Clone, Copy, Default)]
pub struct Off {
    /// Rim.
    pub rim: f64,
    /// Pin.
    pub pin: f64,
    /// Width of every slot.
    pub width: f64,
    /// Depth of every slot.
    pub depth: f64,
    /// Every lead-in.
    pub lead_in: f64,
}

/// Builds witnesses of one design.
pub struct Builder<'a> {
    design: &'a Design,
    over_year: &'a LatchOverYear<'a>,
    movement: Movement,
}

impl<'a> Builder<'a> {
    /// For the boxes of this design.
    pub fn of(over_year: &'a LatchOverYear<'a>) -> Self {
        Self {
            design: over_year.design,
            over_year,
            movement: over_year.movement,
        }
    }

    /// The box at these values of the variables, those of pin and bore belonging to the dials
    /// named; everything else as it was drawn.
    pub fn latch(
        &self,
        at: &[f64; VARIABLES],
        pin: Option<usize>,
        bore: Option<usize>,
    ) -> BuiltLatch {
        let mut latch = BuiltLatch::nominal(self.design);
        latch.air = self.over_year.climate(at);
        (latch.front, latch.back) = (at[FRONT], at[BACK]);
        if let Some(dial) = pin.and_then(|dial| latch.dials.get_mut(dial)) {
            dial.pin = (at[PIN[0]], at[PIN[1]]);
        }
        if let Some(dial) = bore.and_then(|dial| latch.dials.get_mut(dial)) {
            dial.bore = (at[BORE[0]], at[BORE[1]]);
        }
        latch
    }

    /// Puts the sizes of dial `index` off by these shares.
    pub fn put_off(&self, latch: &mut BuiltLatch, index: usize, off: Off) {
        let work = &self.design.workmanship;
        if let (Some(built), Some(drawn)) =
            (latch.dials.get_mut(index), self.design.dials.get(index))
        {
            let radius = work.print / 2.0 + work.film_spread;
            built.rim = drawn.disc.radius + off.rim * radius;
            built.pin_radius = drawn.pin.diameter / 2.0 + off.pin * radius;
            for (slot, drawn) in built.slots.iter_mut().zip(&drawn.disc.slots) {
                slot.width = drawn.width + off.width * (work.print + 2.0 * work.film_spread);
                slot.depth = drawn.depth + off.depth * (work.print + work.film_spread);
                if drawn.lead_in > 0.0 {
                    slot.lead_in = (drawn.lead_in + off.lead_in * work.print).max(0.0);
                }
            }
        }
    }

    /// How this latch lies.
    pub fn moment<'b>(&'b self, latch: &'b BuiltLatch) -> Moment<'b> {
        Moment::grown(self.design, latch, self.movement.until(latch.air))
    }

    /// Lays the shaft of dial `index` fully towards (`way` 1) or away from (−1) where the pin is
    /// after `travel`.
    pub fn lay_shaft(&self, latch: &mut BuiltLatch, index: usize, travel: f64, way: f64) {
        let Some(pin) = self.moment(latch).pin(index) else {
            return;
        };
        let at = pin + Point::new(0.0, travel);
        let length = at.length();
        if let (Some(dial), Some(built)) =
            (self.design.dials.get(index), latch.dials.get_mut(index))
            && length > 0.0
        {
            let play = dial.bore.shaft_play;
            built.shaft = (way * play * at.x / length, way * play * at.y / length);
        }
    }

    /// The witness that this latch is, by this measure.
    pub fn witness(
        &self,
        latch: BuiltLatch,
        dials: Vec<usize>,
        measure: &Measure<'_>,
    ) -> Option<Witness> {
        let value = measure(&self.moment(&latch))?;
        Some(Witness {
            latch,
            dials,
            value,
        })
    }

    /// What each thing that is off costs the figure of this witness: how much better it would be with
    /// that one thing perfect, largest first.
    pub fn contributions(
        &self,
        witness: &Witness,
        measure: &Measure<'_>,
    ) -> Vec<(Contributor, f64)> {
        CONTRIBUTORS
            .iter()
            .filter_map(|(name, mend)| {
                let mut latch = witness.latch.clone();
                mend(self.design, &mut latch);
                let better = measure(&self.moment(&latch))?;
                Some((*name, better - witness.value))
            })
            .collect()
    }
}

type Mend = fn(&Design, &mut BuiltLatch);

/// Everything that can be off, and how to make it perfect.
const CONTRIBUTORS: [(Contributor, Mend); 10] = [
    (Contributor::PinPlace, |_, latch| {
        each(latch, |dial| dial.pin = (0.0, 0.0));
    }),
    (Contributor::BorePlace, |_, latch| {
        each(latch, |dial| dial.bore = (0.0, 0.0));
    }),
    (Contributor::KeeperPlace, |_, latch| latch.keeper = 0.0),
    (Contributor::Print, |design, latch| {
        let work = &design.workmanship;
        shrink(
            design,
            latch,
            [
                share(work.film_spread, work.print / 2.0),
                share(2.0 * work.film_spread, work.print),
                share(work.film_spread, work.print),
                0.0,
            ],
        );
    }),
    (Contributor::FilmSpread, |design, latch| {
        let work: &Workmanship = &design.workmanship;
        shrink(
            design,
            latch,
            [
                share(work.print / 2.0, work.film_spread),
                share(work.print, 2.0 * work.film_spread),
                share(work.print, work.film_spread),
                1.0,
            ],
        );
    }),
    (Contributor::ShaftPlay, |_, latch| {
        each(latch, |dial| dial.shaft = (0.0, 0.0));
    }),
    (Contributor::GuidePlay, |_, latch| {
        (latch.front, latch.back) = (0.0, 0.0);
    }),
    (Contributor::Season, |design, latch| {
        latch.air = design.season.built;
    }),
    (Contributor::Reading, |_, latch| {
        each(latch, |dial| dial.reading = 0.0);
    }),
    (Contributor::Backlash, |_, latch| {
        each(latch, |dial| dial.backlash = 0.0);
    }),
];

fn each(latch: &mut BuiltLatch, mend: impl Fn(&mut BuiltDial)) {
    latch.dials.iter_mut().for_each(mend);
}

/// `left` as a share of `left` and `taken`.
fn share(left: f64, taken: f64) -> f64 {
    if left + taken > 0.0 {
        left / (left + taken)
    } else {
        1.0
    }
}

/// Leaves these shares of what rim and pin, widths, depths and lead-ins are off by.
fn shrink(design: &Design, latch: &mut BuiltLatch, [radius, width, depth, lead_in]: [f64; 4]) {
    let towards =
        |built: &mut f64, drawn: f64, share: f64| *built = drawn + (*built - drawn) * share;
    for (built, dial) in latch.dials.iter_mut().zip(&design.dials) {
        towards(&mut built.rim, dial.disc.radius, radius);
        towards(&mut built.pin_radius, dial.pin.diameter / 2.0, radius);
        for (slot, drawn) in built.slots.iter_mut().zip(&dial.disc.slots) {
            towards(&mut slot.width, drawn.width, width);
            towards(&mut slot.depth, drawn.depth, depth);
            towards(&mut slot.lead_in, drawn.lead_in, lead_in);
        }
    }
}
