//! What the window shows and how, apart from the design: pose, veil, what is chosen.

use latchwright_model::Design;
use latchwright_model::Pose;
use latchwright_proof::Stop;
use latchwright_proof::motion::{slide, turn};
use latchwright_proof::settings::Filter;

use crate::canvas::Moving;

/// What a hand does to dials and slider.
#[derive(Debug, Clone, PartialEq)]
pub enum PoseChange {
    /// Turns a dial towards a pointer angle, degrees clockwise from mark 0, as far as its pin lets it.
    TurnTo {
        /// Dial, from 0.
        dial: usize,
        /// Where its pointer is to stand.
        degrees: f64,
    },
    /// Turns a dial by whole marks, clockwise for positive ones.
    Step {
        /// Dial, from 0.
        dial: usize,
        /// By how many.
        marks: i32,
    },
    /// Turns a dial to a mark.
    Mark {
        /// Dial, from 0.
        dial: usize,
        /// Its mark, from 0.
        mark: u32,
    },
    /// Turns dials to marks, each from 0, the slider forward so that nothing stands in the way.
    Marks(Vec<(usize, u32)>),
    /// Types a letter or figure of a label for the dial that has the focus.
    Type {
        /// Dial, from 0.
        dial: usize,
        /// What was typed.
        text: String,
    },
    /// Moves the slider to a travel, mm, or as near as the dials let it.
    SlideTo(f64),
    /// Slider back to its stop if it is forward, forward if it is not.
    SlideOver,
    /// Two dials have exchanged their numbers; each shows what it showed.
    Exchanged(usize, usize),
    /// A dial was taken away; those behind it show what they showed.
    TakenAway(usize),
}

impl PoseChange {
    /// Dials to these marks, in their order, the slider forward.
    pub fn all(marks: &[u16]) -> Self {
        let marks = marks.iter().copied().map(u32::from);
        Self::Marks(marks.enumerate().collect())
    }
}

/// Everything that undo leaves alone.
#[derive(Debug, Clone)]
pub struct ViewState {
    /// How the dials stand and where the slider is.
    pub pose: Pose,
    /// 1: solid wood, 0: clear.
    pub veil: f64,
    /// The dial (from 0) whose sizes and section are shown.
    pub dial: usize,
    /// A size changed on one dial changes on all.
    pub all_dials: bool,
    /// Dimension lines on the plan.
    pub dimensions: bool,
    /// Label typed so far while a dial has the focus.
    pub typed: String,
    /// What a hand moves on the plan.
    pub moving: Option<Moving>,
    /// Where in the list of settings one is.
    pub listed: Listed,
}

/// Which settings are listed, and which of them are in sight. Numbers count from 0 among those wanted.
#[derive(Debug, Clone, Default)]
pub struct Listed {
    /// Those wanted; all of them for `None`.
    pub filter: Filter,
    /// The one in the uppermost row.
    pub first: u128,
    /// The one that the keys are at.
    pub at: u128,
    /// The setting that is looked for, as typed.
    pub find: String,
    /// Points by which the wheel was turned short of a whole row.
    pub spill: f32,
    /// Where the scroll bar's thumb is held, points from its top.
    pub grab: f32,
}

impl ViewState {
    /// A fresh view on a design: slider forward, the second dial one mark off, so that there is
    /// something to put right.
    pub fn of(design: &Design) -> Self {
        let mut marks = design.combination.clone();
        let off = marks.len() / 2;
        if let (Some(mark), Some(dial)) = (marks.get_mut(off), design.dials.get(off)) {
            *mark = (*mark + dial.positions.max(1) - 1) % dial.positions.max(1);
        }
        let mut view = Self {
            pose: Pose::at_marks(design, &marks),
            veil: 0.35,
            dial: off.min(design.dials.len().saturating_sub(1)),
            all_dials: true,
            dimensions: false,
            typed: String::new(),
            moving: None,
            listed: Listed::default(),
        };
        view.pose.travel = slide(design, &view.pose.turns_deg).travel;
        view
    }

    /// Brings the view back into what the changed design allows.
    pub fn follow(&mut self, design: &Design) {
        self.pose.turns_deg.resize(design.dials.len(), 0.0);
        self.dial = self.dial.min(design.dials.len().saturating_sub(1));
        let reach = slide(design, &self.pose.turns_deg).travel;
        self.pose.travel = self.pose.travel.clamp(0.0, reach);
    }

    /// The mark nearest to dial `dial`'s pointer.
    pub fn mark(&self, design: &Design, dial: usize) -> u32 {
        let Some(of) = design.dials.get(dial) else {
            return 0;
        };
        let turn = self.pose.turns_deg.get(dial).copied().unwrap_or(0.0);
        let steps = (turn / of.step_deg())
            .round()
            .rem_euclid(f64::from(of.positions.max(1)));
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "between 0 and the number of positions"
        )]
        let mark = steps as u32;
        mark
    }

    /// The marks nearest to all pointers.
    pub fn marks(&self, design: &Design) -> Vec<u32> {
        (0..design.dials.len())
            .map(|dial| self.mark(design, dial))
            .collect()
    }

    /// What a hand did to dials and slider.
    pub fn change_pose(&mut self, design: &Design, change: &PoseChange) {
        match change {
            PoseChange::TurnTo { dial, degrees } => self.turn_to(design, *dial, *degrees),
            PoseChange::Step { dial, marks } => self.step(design, *dial, *marks),
            PoseChange::Mark { dial, mark } => self.set_mark(design, *dial, *mark),
            PoseChange::Marks(marks) => {
                self.pose.travel = 0.0;
                for (dial, mark) in marks {
                    self.set_mark(design, *dial, *mark);
                }
            }
            PoseChange::Type { dial, text } => self.type_label(design, *dial, text),
            PoseChange::SlideTo(travel) => {
                self.pose.travel = travel.clamp(0.0, self.stop(design).travel.max(0.0));
            }
            PoseChange::SlideOver => self.slide_over(design),
            PoseChange::Exchanged(one, other) => {
                let turns = &mut self.pose.turns_deg;
                if *one.max(other) < turns.len() {
                    turns.swap(*one, *other);
                }
            }
            PoseChange::TakenAway(dial) => {
                if let Some(behind) = self.pose.turns_deg.get_mut(*dial..) {
                    behind.rotate_left(1.min(behind.len()));
                }
            }
        }
    }

    fn stop(&self, design: &Design) -> Stop {
        slide(design, &self.pose.turns_deg)
    }

    fn turn_to(&mut self, design: &Design, dial: usize, degrees: f64) {
        self.pose = turn(design, &self.pose, dial, degrees);
        self.dial = dial.min(design.dials.len().saturating_sub(1));
    }

    fn step(&mut self, design: &Design, dial: usize, marks: i32) {
        let Some(of) = design.dials.get(dial) else {
            return;
        };
        let to = f64::from(self.mark(design, dial)) + f64::from(marks);
        self.turn_to(design, dial, to * of.step_deg());
    }

    fn set_mark(&mut self, design: &Design, dial: usize, mark: u32) {
        let Some(of) = design.dials.get(dial) else {
            return;
        };
        // one mark at a time when the way is more than half a turn would wrap the wrong way
        self.turn_to(design, dial, f64::from(mark) * of.step_deg());
    }

    fn slide_over(&mut self, design: &Design) {
        let stop = self.stop(design).travel;
        self.pose.travel = if self.pose.travel < stop / 2.0 {
            stop
        } else {
            0.0
        };
    }

    /// The dial goes to the first mark whose label begins with what has been typed.
    fn type_label(&mut self, design: &Design, dial: usize, text: &str) {
        let Some(of) = design.dials.get(dial) else {
            return;
        };
        let fits = |typed: &str| {
            (0..of.positions.min(360)).find(|mark| {
                of.label(*mark)
                    .to_lowercase()
                    .starts_with(&typed.to_lowercase())
            })
        };
        let longer = format!("{}{text}", self.typed);
        if let Some(mark) = fits(&longer) {
            self.typed = longer;
            self.set_mark(design, dial, mark);
        } else if let Some(mark) = fits(text) {
            text.clone_into(&mut self.typed);
            self.set_mark(design, dial, mark);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_sight_has_one_dial_that_stops_the_slider() {
        let design = Design::default();
        let view = ViewState::of(&design);
        assert_eq!(view.marks(&design), [3, 5, 1]);
        assert_eq!(view.stop(&design).by.map(|(dial, _)| dial), Some(1));
    }

    #[test]
    fn typing_a_label_turns_the_dial_to_it() {
        let mut design = Design::default();
        design.dials[0].positions = 12;
        let mut view = ViewState::of(&design);
        view.pose.travel = 0.0;
        let mut typed = |text: &str| {
            let text = text.to_owned();
            view.change_pose(&design, &PoseChange::Type { dial: 0, text });
            view.mark(&design, 0)
        };
        assert_eq!(typed("1"), 0);
        assert_eq!(typed("2"), 11, "1 and then 2 is 12");
        assert_eq!(typed("7"), 6, "127 is no label, 7 is");
    }

    #[test]
    fn a_smaller_design_takes_the_view_along() {
        let mut design = Design::default();
        let mut view = ViewState::of(&design);
        view.dial = 2;
        design.dials.truncate(1);
        view.follow(&design);
        assert_eq!((view.dial, view.pose.turns_deg.len()), (0, 1));
    }
}
