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
/// Less than this is not short, mm.
const DUST: f64 = 1e-9;

/// What hangs how low, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Stack {
    slider_below: f64,
    disc_below: f64,
    pin_height: f64,
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
        design.plate.rabbet = self.rabbet;
        for dial in &mut design.dials {
            dial.disc.below = self.disc_below;
            dial.pin.height = self.pin_height;
        }
    }
}
