//! The nominal latch in motion: how far the slider goes with the dials as they stand, what stops it,
//! and how far a dial can turn with the slider where it is.

use latchwright_geometry::{EPSILON, trig};

use crate::contact::{PinPath, reach};
use crate::verdict::{Reach, StopsAt};
use latchwright_model::pose::Pose;
use latchwright_model::{Design, Dial};

/// Where the slider stops.
#[derive(Debug, Clone, PartialEq)]
pub struct Stop {
    /// Travel u, mm.
    pub travel: f64,
    /// The dial that stops it (the lowest numbered where several do), from 0, and how; `None` when
    /// it goes the whole way.
    pub by: Option<(usize, Reach)>,
    /// Tab still under the keeper there, mm; 0 once it is out.
    pub held: f64,
}

/// Turn of the true slot from the pin's direction, degrees clockwise, at this pointer angle.
fn slot_turn(design: &Design, index: usize, dial: &Dial, pointer_deg: f64) -> f64 {
    trig::wrap_deg(pointer_deg - f64::from(design.digit(index)) * dial.step_deg())
}

/// Reach of each dial's pin with the discs held still at these pointer angles.
pub fn reaches(design: &Design, turns_deg: &[f64]) -> Vec<Reach> {
    let dials = design.dials.iter().enumerate();
    dials
        .map(|(index, dial)| {
            let pointer = turns_deg.get(index).copied().unwrap_or(0.0);
            reach_of(design, index, dial, pointer)
        })
        .collect()
}

/// Reach of one dial's pin with its disc held still at this pointer angle.
pub fn reach_of(design: &Design, index: usize, dial: &Dial, pointer_deg: f64) -> Reach {
    reach(
        dial,
        PinPath::nominal(dial, design.slider.travel),
        slot_turn(design, index, dial, pointer_deg),
    )
}

/// How far the nominal slider goes from shut with the dials held still at these pointer angles.
pub fn slide(design: &Design, turns_deg: &[f64]) -> Stop {
    let mut stop = Stop {
        travel: design.slider.travel.max(0.0),
        by: None,
        held: 0.0,
    };
    for (index, reach) in reaches(design, turns_deg).into_iter().enumerate() {
        if reach.stops_at != StopsAt::Free && reach.travel < stop.travel - EPSILON {
            stop.travel = reach.travel;
            stop.by = Some((index, reach));
        }
    }
    stop.held = held(design, stop.travel);
    stop
}

/// Tab under the keeper after this travel, nothing off, mm.
pub fn held(design: &Design, travel: f64) -> f64 {
    (design.tab.engagement - travel).max(0.0)
}

/// Whether the dial can stand at `pointer_deg` with the slider at the pose's travel: its pin then
/// overlaps nothing of the disc.
pub fn can_stand(design: &Design, index: usize, pointer_deg: f64, travel: f64) -> bool {
    design.dials.get(index).is_none_or(|dial| {
        let turn = slot_turn(design, index, dial, pointer_deg);
        reach(dial, PinPath::nominal(dial, travel), turn).travel >= travel - 1e-6
    })
}

/// Turns dial `index` of `pose` towards `wanted_deg` (pointer, clockwise from mark 0) as far as its
/// pin lets it, the short way round, and returns the pose reached.
///
/// With the slider forward nothing hinders; with the pin in a slot the dial moves only as far as the
/// slot's walls. The way is tried in steps of a quarter of a degree, then halved, so that the answer
/// is within a thousandth of a degree.
pub fn turn(design: &Design, pose: &Pose, index: usize, wanted_deg: f64) -> Pose {
    let Some(from) = pose.turns_deg.get(index).copied() else {
        return pose.clone();
    };
    let way = trig::wrap_deg(wanted_deg - from);
    let steps = (way.abs() / 0.25).ceil().max(1.0);
    let at = |share: f64| from + way * share;
    let free = |share: f64| can_stand(design, index, at(share), pose.travel);
    let mut reached = 0.0;
    let mut step = 1.0;
    while step <= steps {
        if !free(step / steps) {
            break;
        }
        reached = step / steps;
        step += 1.0;
    }
    if reached < 1.0 {
        let (mut yes, mut no) = (reached, (step / steps).min(1.0));
        for _ in 0..12 {
            let middle = f64::midpoint(yes, no);
            if free(middle) {
                yes = middle;
            } else {
                no = middle;
            }
        }
        reached = yes;
    }
    let mut turned = pose.clone();
    if let Some(angle) = turned.turns_deg.get_mut(index) {
        let full = at(reached) % 360.0;
        *angle = if full < 0.0 { full + 360.0 } else { full };
    }
    turned
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::thin_latch::thin;

    #[test]
    fn at_the_combination_the_slider_goes_the_whole_way() {
        let design = thin();
        let stop = slide(&design, &Pose::at_combination(&design).turns_deg);
        assert_eq!((stop.travel, stop.by, stop.held), (8.0, None, 0.0));
    }

    #[test]
    fn one_dial_off_its_mark_stops_the_slider_on_plain_rim() {
        let design = thin();
        let stop = slide(&design, &Pose::at_marks(&design, &[3, 5, 1]).turns_deg);
        let (dial, reach) = stop.by.unwrap();
        assert_eq!((dial, reach.stops_at), (1, StopsAt::Rim));
        assert!((stop.travel - 2.0).abs() < 1e-9 && (stop.held - 4.0).abs() < 1e-9);
    }

    #[test]
    fn a_pin_in_its_slot_holds_the_dial() {
        let design = thin();
        let mut pose = Pose::at_combination(&design);
        pose.travel = 8.0;
        let turned = turn(&design, &pose, 0, 0.0);
        let moved = trig::wrap_deg(turned.turns_deg[0] - pose.turns_deg[0]).abs();
        assert!(moved > 1.0 && moved < 20.0, "only its play: {moved}");
        pose.travel = 0.0;
        assert!(
            turn(&design, &pose, 0, 0.0).turns_deg[0].abs() < 1e-9,
            "free when forward"
        );
    }
}
