//! Through the thickness of the lid: the clearances and heights that give enough room to spare.
//!
//! Heights count downwards from the plate's underside, as in the checks of the proof.

use super::choices::Choices;
use super::grid::up;
use super::grow::{Grow, mends};
use super::weigh::{perfect, weigh_stack};
use latchwright_model::Design;
use latchwright_proof::check::stack::MEETS;

/// Rounds of raising what is short before it is given up.
const ROUNDS: usize = 40;
/// Halvings on the way to the most room: a five-hundredth of it is left.
const HALVINGS: usize = 9;
/// The thinnest finger that is looked at, mm: common practice, no source.
const LEAST_FINGER: f64 = 4.0;
/// Less than this is not short, mm.
const DUST: f64 = 1e-9;

/// What hangs how low, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Stack {
    slider_below: f64,
    disc_below: f64,
    pin_height: f64,
    /// How far below the slider's upper face the fingers begin.
    pin_free: f64,
    /// Thickness of the fingers and of the slider: as the base has them, at least.
    finger: f64,
    thickness: f64,
    rabbet: f64,
}

impl Stack {
    /// The least clearances and heights of `design` with this room to spare; `None` where there are none.
    fn least(choices: &Choices, design: &Design, room: f64) -> Option<Self> {
        let grid = choices.grid;
        let thickness = design.dials.first().map_or(0.0, |dial| dial.disc.thickness);
        let mut stack = Self {
            slider_below: 0.0,
            disc_below: 0.0,
            pin_height: up(MEETS * thickness, grid.size),
            pin_free: up(thickness, grid.size),
            finger: finger(&choices.base),
            thickness: choices.base.slider.thickness,
            rabbet: up(design.keeper.thickness, grid.size),
        };
        let (mut real, mut ideal) = (design.clone(), perfect(design));
        for _ in 0..ROUNDS {
            for design in [&mut real, &mut ideal] {
                stack.put(design);
                choices.pin_down(design);
            }
            let mut margins = Vec::new();
            weigh_stack(&real, Some(&ideal), &mut margins);
            let before = stack;
            let mut enough = true;
            for margin in &margins {
                let short = -margin.left_at(room) - DUST;
                if short <= 0.0 {
                    continue;
                }
                enough = false;
                match mends(margin)?.grow {
                    Grow::SliderBelow => {
                        let below = up(before.slider_below + short, grid.clearance);
                        stack.slider_below = stack.slider_below.max(below);
                    }
                    Grow::DiscBelow => {
                        let below = up(before.disc_below + short, grid.clearance);
                        stack.disc_below = stack.disc_below.max(below);
                    }
                    // apart in height, or too short a pin
                    Grow::PinHeight => {
                        let apart = before.slider_below - before.disc_below;
                        if apart > grid.clearance / 2.0 {
                            stack.disc_below = stack.disc_below.max(before.slider_below);
                        } else {
                            stack.pin_height = before.pin_height + grid.size;
                        }
                    }
                    Grow::PinFree => {
                        let free = up(before.pin_free + short, grid.size);
                        stack.pin_free = stack.pin_free.max(free);
                    }
                    Grow::Rabbet => {
                        stack.rabbet = stack.rabbet.max(up(before.rabbet + short, grid.size));
                    }
                    // seen from above: not weighed here
                    Grow::Gap
                    | Grow::Width(_)
                    | Grow::Depth
                    | Grow::Engagement
                    | Grow::Travel
                    | Grow::Spacing
                    | Grow::Play
                    | Grow::Tab
                    | Grow::ShorterGuide(_) => return None,
                }
            }
            if enough {
                return Some(stack);
            }
            if stack == before {
                return None;
            }
        }
        None
    }

    /// The least with this room, or with as much as there is.
    pub(super) fn up_to(choices: &Choices, design: &Design, room: f64) -> Option<Self> {
        let whole = Self::least(choices, design, room);
        if whole.is_some() || room <= 0.0 {
            return whole;
        }
        let mut best = Self::least(choices, design, 0.0)?;
        let (mut has, mut too_much) = (0.0, room);
        for _ in 0..HALVINGS {
            let middle = f64::midpoint(has, too_much);
            match Self::least(choices, design, middle) {
                Some(stack) => (best, has) = (stack, middle),
                None => too_much = middle,
            }
        }
        Some(best)
    }

    /// Puts them into `design`.
    pub(super) fn put(&self, design: &mut Design) {
        design.slider.below = self.slider_below;
        // no thinner than it was weighed with: the tab bears the less
        design.slider.thickness = self.thickness.max(self.pin_free + self.finger);
        design.plate.rabbet = self.rabbet;
        for dial in &mut design.dials {
            dial.disc.below = self.disc_below;
            dial.pin.free = self.pin_free;
            // right through its finger
            dial.pin.height = self.pin_height.max(design.slider.thickness);
        }
    }
}

/// Thickness of the fingers of a slider that is made like `base`'s, mm.
pub(super) fn finger(base: &Design) -> f64 {
    let free = base.dials.first().map_or(0.0, |dial| dial.pin.free);
    (base.slider.thickness - free).max(LEAST_FINGER)
}
