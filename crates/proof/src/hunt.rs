//! A hunt for openings that should not be there, by trying and not by proving: the latch exactly as
//! drawn, every dial at every mark, the pointer on it and as far off it as it may be read.

use core::ops::ControlFlow;

use crate::motion::reach_of;
use crate::tick::Tick;
use crate::verdict::StopsAt;
use latchwright_model::Design;

/// Pointers tried on either side of each mark.
const ASIDE: u32 = 10;
/// Settings that are listed; more are only counted.
pub const LISTED: usize = 12;

/// What the hunt found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Hunt {
    /// How many settings there are.
    pub settings: u128,
    /// How many of them let the slider through at some pointer within the reading.
    pub open: u128,
    /// The first of these, a mark a dial from 0, at most [`LISTED`].
    pub found: Vec<Vec<u32>>,
}

/// Tries every dial of `design` at every mark and at pointers up to `workmanship.reading` off it.
///
/// Dials do not hinder each other, so that a setting lets the slider through exactly where each of its
/// dials does. Nothing but the pointer is off here: it is no proof, and finds what a proof would not
/// promise either way only by luck. `tick` is called after every mark; where it says stop there is no result.
pub fn hunt<Stop>(design: &Design, tick: &mut Tick<'_, Stop>) -> ControlFlow<Stop, Hunt> {
    let positions = design
        .dials
        .iter()
        .map(|dial| dial.positions.clamp(1, 360) as usize);
    let marks: usize = positions.clone().sum();
    let mut tried = 0;
    let mut lets_through = Vec::new();
    for dial in 0..design.dials.len() {
        lets_through.push(marks_through(design, dial, &mut || {
            tried += 1;
            tick(f64::from(tried) / marks as f64)
        })?);
    }
    ControlFlow::Continue(Hunt {
        settings: product(positions),
        open: product(lets_through.iter().map(Vec::len)),
        found: first(&lets_through),
    })
}

/// All of them multiplied; the largest number where that is too much.
fn product(counts: impl Iterator<Item = usize>) -> u128 {
    let mut counts = counts.map(|count| count as u128);
    counts.try_fold(1, u128::checked_mul).unwrap_or(u128::MAX)
}

/// Marks at which some pointer within the reading lets dial `index`'s pin in for the whole travel.
fn marks_through<Stop>(
    design: &Design,
    index: usize,
    after_each: &mut dyn FnMut() -> ControlFlow<Stop>,
) -> ControlFlow<Stop, Vec<u32>> {
    let mut through = Vec::new();
    let Some(dial) = design.dials.get(index) else {
        return ControlFlow::Continue(through);
    };
    let reading = design.workmanship.reading;
    let reading = if reading.is_finite() {
        reading.clamp(0.0, 45.0)
    } else {
        0.0
    };
    let aside = f64::from(ASIDE);
    for mark in 0..dial.positions.min(360) {
        let free = (0..=2 * ASIDE).any(|try_at| {
            let off = reading * (f64::from(try_at) - aside) / aside;
            let pointer = f64::from(mark) * dial.step_deg() + off;
            reach_of(design, index, dial, pointer).stops_at == StopsAt::Free
        });
        if free {
            through.push(mark);
        }
        after_each()?;
    }
    ControlFlow::Continue(through)
}

/// The first settings made of these marks, the last dial fastest.
fn first(marks: &[Vec<u32>]) -> Vec<Vec<u32>> {
    let mut found = vec![Vec::new()];
    for dial in marks {
        let longer = found.iter().flat_map(|start: &Vec<u32>| {
            dial.iter().map(move |mark| {
                let mut whole = start.clone();
                whole.push(*mark);
                whole
            })
        });
        found = longer.take(LISTED).collect();
    }
    if marks.is_empty() { Vec::new() } else { found }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tick;

    fn hunt(design: &Design) -> Hunt {
        let ControlFlow::Continue(found) = super::hunt(design, &mut tick::on);
        found
    }

    #[test]
    fn a_hunt_tells_how_far_it_is_and_stops_at_the_mark_where_it_is_told_to() {
        let mut told = Vec::new();
        let found = super::hunt(&Design::default(), &mut |done| {
            told.push(done);
            if told.len() < 5 {
                ControlFlow::Continue(())
            } else {
                ControlFlow::Break(())
            }
        });
        assert_eq!(found, ControlFlow::Break(()));
        assert_eq!(told, [1.0, 2.0, 3.0, 4.0, 5.0].map(|mark| mark / 24.0));
    }

    #[test]
    fn only_the_combination_of_the_usual_latch_opens() {
        let found = hunt(&Design::default());
        assert_eq!((found.settings, found.open), (512, 1));
        assert_eq!(found.found, [vec![3, 6, 1]]);
    }

    #[test]
    fn a_planted_second_slot_is_found_with_both_settings() {
        let mut design = Design::default();
        let slots = &mut design.dials[1].disc.slots;
        let mut second = slots[0].clone();
        second.mark = 3;
        slots.push(second);
        let found = hunt(&design);
        assert_eq!(found.open, 2);
        assert_eq!(found.found.len(), 2);
        assert!(found.found.contains(&design.combination));
    }

    #[test]
    fn coarse_reading_lets_neighbours_in() {
        let mut design = Design::default();
        design.workmanship.reading = 45.0;
        assert_eq!(hunt(&design).open, 27, "a mark to each side of three dials");
    }

    #[test]
    fn a_latch_without_dials_has_nothing_to_find() {
        let design = Design {
            dials: Vec::new(),
            ..Design::default()
        };
        assert_eq!(hunt(&design).found, Vec::<Vec<u32>>::new());
    }
}
