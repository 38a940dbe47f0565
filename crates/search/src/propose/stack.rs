//! Through the thickness of the lid: margins, and the clearances and heights that give enough of them.
//!
//! Heights count downwards from the plate's underside, as in the checks of the proof.

use super::figure::Question;
use super::grid::{Grid, up};
use super::plain::{Sink, Work, perfect};
use latchwright_model::Design;
use latchwright_proof::check::{
    stack::MEETS, stack::ROOF, stack::lowest, stack::meets_margin, stack::off,
};

/// Rounds of raising what is short before it is given up.
const ROUNDS: usize = 40;

/// Every margin through the thickness.
pub(super) fn margins(design: &Design, out: &mut Sink<'_>) {
    let work = &design.workmanship;
    let off = off(design);
    let (plate, slider) = (&design.plate, &design.slider);
    for (index, dial) in design.dials.iter().enumerate() {
        let at = Some(index);
        out(Question::MeetsDisc, at, meets_margin(design, dial));
        out(Question::DiscToPlate, at, dial.disc.below - off);
    }
    out(Question::SliderToPlate, None, slider.below - off);
    out(
        Question::TabToKeeper,
        None,
        slider.below - off - work.thickness,
    );
    let room = plate.room - 2.0 * off - lowest(design);
    out(Question::RoomBelow, None, room);
    let closes = plate.rabbet - 2.0 * off - design.keeper.thickness;
    out(Question::Closes, None, closes);
    let roof = plate.thickness - plate.rabbet - 2.0 * off - ROOF;
    out(Question::Roof, None, roof);
}

/// Halvings on the way to the most room.
const HALVINGS: usize = 9;

/// What hangs how low.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Stack {
    slider_below: f64,
    disc_below: f64,
    pin_height: f64,
    rabbet: f64,
}

impl Stack {
    /// The least clearances and heights with this room; `None` where there is none.
    pub(super) fn least(base: &Design, pinned: &dyn Fn(&mut Design), room: f64) -> Option<Self> {
        let grid = Grid::of(base.units);
        let tallest = base.dials.first().map_or(0.0, |dial| dial.disc.thickness);
        let mut stack = Self {
            slider_below: 0.0,
            disc_below: 0.0,
            pin_height: up(MEETS * tallest, grid.size),
            rabbet: up(base.keeper.thickness, grid.size),
        };
        let (mut real, mut ideal) = (base.clone(), perfect(base));
        let mut work = Work::default();
        for _ in 0..ROUNDS {
            for design in [&mut real, &mut ideal] {
                stack.put(design);
                pinned(design);
            }
            work.figures.clear();
            work.weigh_stack(&real, &ideal);
            let before = stack;
            for figure in &work.figures {
                let short = -figure.left_at(room) - 1e-9;
                if short <= 0.0 {
                    continue;
                }
                match figure.question {
                    Question::SliderToPlate | Question::TabToKeeper => {
                        stack.slider_below = stack
                            .slider_below
                            .max(up(before.slider_below + short, grid.clearance));
                    }
                    Question::DiscToPlate => {
                        stack.disc_below = stack
                            .disc_below
                            .max(up(before.disc_below + short, grid.clearance));
                    }
                    // apart in height, or too short a pin
                    Question::MeetsDisc => {
                        let apart = before.slider_below - before.disc_below;
                        if apart > grid.clearance / 2.0 {
                            stack.disc_below = stack.disc_below.max(before.slider_below);
                        } else {
                            stack.pin_height = before.pin_height + grid.size;
                        }
                    }
                    Question::Closes => {
                        stack.rabbet = stack.rabbet.max(up(before.rabbet + short, grid.size));
                    }
                    _ => return None,
                }
            }
            if stack == before {
                return (work
                    .figures
                    .iter()
                    .all(|figure| figure.left_at(room) >= -1e-9))
                .then_some(stack);
            }
        }
        None
    }

    /// The least with this room, or with as much as there is.
    pub(super) fn up_to(base: &Design, pinned: &dyn Fn(&mut Design), room: f64) -> Option<Self> {
        let whole = Self::least(base, pinned, room);
        if whole.is_some() || room <= 0.0 {
            return whole;
        }
        let mut best = Self::least(base, pinned, 0.0)?;
        let (mut has, mut too_much) = (0.0, room);
        for _ in 0..HALVINGS {
            let middle = f64::midpoint(has, too_much);
            match Self::least(base, pinned, middle) {
                Some(stack) => (best, has) = (stack, middle),
                None => too_much = middle,
            }
        }
        Some(best)
    }

    /// Puts them into `design`.
    pub(super) fn put(&self, design: &mut Design) {
        design.slider.below = self.slider_below;
        design.plate.rabbet = self.rabbet;
        for dial in &mut design.dials {
            dial.disc.below = self.disc_below;
            dial.pin.height = self.pin_height;
        }
    }
}
