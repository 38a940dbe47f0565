//! The worst real box found for a check, and what each thing that is off in it costs.

use latchwright_geometry::Point;

use super::{Contributor, Sums};
use crate::built::{BuiltDial, BuiltLatch, Moment};
use crate::results::Check;
use crate::verdict::SureStop;
use crate::worst::figure::SliderFigureKind;
use crate::worst::{
    pin_and_disc::depth_left, pin_and_disc::mouth_clearance, pin_and_disc::travel_to,
};
use crate::worst::{witness::Builder, witness::Measure, witness::Off};
use latchwright_model::slot::SlotShape;
use latchwright_model::{Design, Slot};

impl Check {
    /// Names the worst box among these latches, and takes what decides the figure from it.
    pub(super) fn at_worst(
        mut self,
        builder: &Builder<'_>,
        latches: impl IntoIterator<Item = BuiltLatch>,
        dials: &[usize],
        measure: &Measure<'_>,
    ) -> Self {
        let worst = latches
            .into_iter()
            .filter_map(|latch| builder.witness(latch, dials.to_vec(), measure))
            .min_by(|one, other| one.value.total_cmp(&other.value));
        if let Some(worst) = worst {
            let sizes = self.decided_by.iter().copied();
            let mut parts: Vec<(Contributor, f64)> =
                sizes.filter(|(what, _)| what.is_a_size()).collect();
            parts.extend(builder.contributions(&worst, measure));
            self.decided_by = super::largest_first(parts);
            self.worst = Some(worst);
        }
        self
    }
}

fn built(latch: &BuiltLatch, index: usize) -> Option<&BuiltDial> {
    latch.dials.get(index)
}

/// Clear distance between pin and rim, slider forward.
pub(super) fn at_rest(sums: &Sums<'_>, index: usize, check: Check) -> Check {
    let (Some(exact), Some(builder)) = (sums.exact(index), &sums.builder) else {
        return check;
    };
    let mut latch = builder.latch(&exact.pin.near.at, Some(index), Some(index));
    builder.put_off(
        &mut latch,
        index,
        Off {
            rim: 1.0,
            pin: 1.0,
            ..Off::default()
        },
    );
    builder.lay_shaft(&mut latch, index, 0.0, 1.0);
    let measure = move |moment: &Moment<'_>| {
        let pin = moment.pin(index)?;
        Some(pin.length() - built(moment.built(), index)?.touches_at())
    };
    check.at_worst(builder, [latch], &[index], &measure)
}

/// How far the true slot lets its pin in.
pub(super) fn lets_in(sums: &Sums<'_>, index: usize, check: Check) -> Check {
    let (Some(exact), Some(builder)) = (sums.exact(index), &sums.builder) else {
        return check;
    };
    let design = sums.design;
    let Some(own) = true_slot(design, index) else {
        return check;
    };
    let narrow = Off {
        pin: 1.0,
        width: -1.0,
        depth: -1.0,
        lead_in: -1.0,
        ..Off::default()
    };
    let [left, right] = exact.pin.asides;
    let aside = [(left.at, -1.0), (right.at, 1.0)];
    let mut latches = Vec::new();
    for ((at, way), rim) in aside
        .into_iter()
        .flat_map(|side| [(side, -1.0), (side, 1.0)])
    {
        let mut latch = builder.latch(&at, Some(index), Some(index));
        builder.put_off(&mut latch, index, Off { rim, ..narrow });
        if let (Some(drawn), Some(dial)) = (design.dials.get(index), latch.dials.get_mut(index)) {
            dial.shaft = (-way * drawn.bore.shaft_play, 0.0);
            dial.reading = way * design.workmanship.reading;
            dial.backlash = way * exact.bounds().backlash_deg;
        }
        latches.push(latch);
    }
    let travel = design.slider.travel;
    let mut deepest = builder.latch(&exact.pin.near_at_end.at, Some(index), Some(index));
    builder.put_off(&mut deepest, index, Off { rim: 1.0, ..narrow });
    builder.lay_shaft(&mut deepest, index, travel, 1.0);
    latches.push(deepest);
    let measure = move |moment: &Moment<'_>| {
        let pin = moment.pin(index)?;
        let dial = built(moment.built(), index)?;
        let slot = dial.slots.get(own)?;
        let enters = mouth_clearance(dial, slot, pin, dial.reading + dial.backlash);
        let fits = slot.width - 2.0 * dial.pin_radius;
        let deep = depth_left(dial, slot, pin + Point::new(0.0, travel));
        Some(enters.min(fits).min(deep))
    };
    check.at_worst(builder, latches, &[index], &measure)
}

fn true_slot(design: &Design, index: usize) -> Option<usize> {
    let slots = &design.dials.get(index)?.disc.slots;
    slots.iter().position(|slot| slot.mark == 0)
}

/// How much deeper than the top of its slot's wall the pin stands, slider back.
pub(super) fn captive(sums: &Sums<'_>, index: usize, check: Check) -> Check {
    let (Some(exact), Some(builder)) = (sums.exact(index), &sums.builder) else {
        return check;
    };
    let design = sums.design;
    let Some(own) = true_slot(design, index) else {
        return check;
    };
    let travel = design.slider.travel;
    let mut latch = builder.latch(&exact.pin.far_at_end.at, Some(index), Some(index));
    builder.put_off(
        &mut latch,
        index,
        Off {
            rim: -1.0,
            width: 1.0,
            lead_in: 1.0,
            ..Off::default()
        },
    );
    builder.lay_shaft(&mut latch, index, travel, -1.0);
    let measure = move |moment: &Moment<'_>| {
        let end = moment.pin(index)? + Point::new(0.0, travel);
        let dial = built(moment.built(), index)?;
        let slot = dial.slots.get(own)?;
        let walls = SlotShape::new(
            dial.rim,
            &Slot {
                mark: 0,
                width: slot.width,
                depth: slot.depth,
                lead_in: 0.0,
            },
        );
        Some(walls.rim_top - slot.lead_in - end.length())
    };
    check.at_worst(builder, [latch], &[index], &measure)
}

/// Tab under the keeper when dial `index` stops the slider at `mark`.
pub(super) fn stays_held(sums: &Sums<'_>, index: usize, turn_deg: f64, check: Check) -> Check {
    let (Some(exact), Some(builder)) = (sums.exact(index), &sums.builder) else {
        return check;
    };
    let design = sums.design;
    let Some(stop) = exact.sure_stop(turn_deg) else {
        return check;
    };
    let Some(stopped) = exact.stopped(stop) else {
        return check;
    };
    let mut latch = builder.latch(&stopped.held.at, Some(index), Some(index));
    builder.put_off(
        &mut latch,
        index,
        Off {
            rim: -1.0,
            pin: -1.0,
            depth: 1.0,
            ..Off::default()
        },
    );
    latch.keeper = -design.workmanship.keeper_place;
    let stops = move |latch: &BuiltLatch| {
        let dial = built(latch, index)?;
        // a floor lies deeper than the rim by the depth of the slot it belongs to
        let depth = match stop {
            SureStop::Floor(slot) => dial.slots.get(slot)?.depth,
            SureStop::Rim => 0.0,
        };
        Some(dial.touches_at() - depth)
    };
    if let (Some(pin), Some(within), Some(dial)) = (
        builder.moment(&latch).pin(index),
        stops(&latch),
        design.dials.get(index),
    ) && let Some(travel) = travel_to(pin, within - dial.bore.shaft_play)
    {
        builder.lay_shaft(&mut latch, index, travel, -1.0);
    }
    let measure = move |moment: &Moment<'_>| {
        let within = stops(moment.built())?;
        Some(moment.held(travel_to(moment.pin(index)?, within)?))
    };
    check.at_worst(builder, [latch], &[index], &measure)
}

/// A figure of the slider as a whole.
pub(super) fn of_slider(sums: &Sums<'_>, of: SliderFigureKind, check: Check) -> Check {
    let (Some(least), Some(builder)) = (sums.slider_worst.get(of), &sums.builder) else {
        return check;
    };
    let mut latch = builder.latch(&least.at, None, None);
    let keeper = sums.design.workmanship.keeper_place;
    latch.keeper = match of {
        SliderFigureKind::Overlap => -keeper,
        SliderFigureKind::MostOverlap => keeper,
        _ => 0.0,
    };
    let measure = move |moment: &Moment<'_>| {
        Some(match of {
            SliderFigureKind::MostOverlap => moment.out_at_full_travel(),
            SliderFigureKind::Overlap => moment.held(0.0),
            _ => moment.play_left(),
        })
    };
    check.at_worst(builder, [latch], &[], &measure)
}
