//! What the views of the latch have in common as it stands: made once for a state of the design and a pose,
//! and handed round.

use latchwright_drawing::{Drawing, PlanOptions, Rect, plan_sheet, section};
use latchwright_model::{Design, Pose};
use latchwright_proof::motion::{reaches, slide};
use latchwright_proof::{Reach, Stop};

use crate::view_state::ViewState;

/// What decides all of a scene.
#[derive(Debug, Clone, PartialEq)]
struct Key {
    revision: u64,
    pose: Pose,
    dial: usize,
    dimensions: bool,
}

/// The latch as it stands.
pub struct Scene {
    key: Key,
    /// Where the slider stops with the dials as they stand.
    pub stop: Stop,
    /// Reach of each dial's pin.
    pub reaches: Vec<Reach>,
    /// What the plan takes of the sheet without dimensions, mm.
    pub sheet: Rect,
    /// What it takes as it is shown, mm.
    pub shown_sheet: Rect,
    /// What the section through the chosen dial takes, mm, its names of the usual height.
    pub section_sheet: Rect,
    section: Option<(SectionKey, Drawing)>,
}

/// What decides the drawing of a section.
#[derive(Debug, Clone, PartialEq)]
struct SectionKey {
    pose: Pose,
    letters: Option<f64>,
}

impl Scene {
    /// The latch of this state, in the pose that `view` shows.
    pub fn of(design: &Design, revision: u64, view: &ViewState) -> Self {
        Self::made(design, key_of(revision, view))
    }

    /// Makes what is not of this state and pose any more.
    pub fn follow(&mut self, design: &Design, revision: u64, view: &ViewState) {
        let key = key_of(revision, view);
        if self.key != key {
            *self = Self::made(design, key);
        }
    }

    fn made(design: &Design, key: Key) -> Self {
        let plain = PlanOptions::default();
        let shown = PlanOptions {
            show_dimensions: key.dimensions,
            ..PlanOptions::default()
        };
        Self {
            stop: slide(design, &key.pose.turns_deg),
            reaches: reaches(design, &key.pose.turns_deg),
            sheet: plan_sheet(design, &plain),
            shown_sheet: plan_sheet(design, &shown),
            section_sheet: section(design, &key.pose, key.dial, None).bounds,
            section: None,
            key,
        }
    }

    /// The section through the chosen dial with the slider on its way to where it is, names `letters` mm high.
    pub fn section(&mut self, design: &Design, pose: &Pose, letters: Option<f64>) -> &Drawing {
        let key = SectionKey {
            pose: pose.clone(),
            letters,
        };
        let kept = self.section.take().filter(|(of, _)| *of == key);
        let dial = self.key.dial;
        let drawn = kept.unwrap_or_else(|| (key, section(design, pose, dial, letters)));
        &self.section.insert(drawn).1
    }
}

fn key_of(revision: u64, view: &ViewState) -> Key {
    Key {
        revision,
        pose: view.pose.clone(),
        dial: view.dial,
        dimensions: view.dimensions,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::view_state::PoseChange;

    #[test]
    fn a_scene_follows_revision_and_pose_and_is_kept_while_neither_changes() {
        let mut design = Design::default();
        let mut view = ViewState::of(&design);
        let mut scene = Scene::of(&design, 0, &view);
        assert_eq!(scene.stop.by.as_ref().map(|(dial, _)| *dial), Some(1));
        // what is not told of is not made anew
        design.slider.travel = 9.0;
        scene.follow(&design, 0, &view);
        assert_eq!(scene.stop, slide(&Design::default(), &view.pose.turns_deg));
        scene.follow(&design, 1, &view);
        assert_eq!(scene.stop, slide(&design, &view.pose.turns_deg));
        let mark = design.digit(1);
        view.change_pose(&design, &PoseChange::Marks(vec![(1, mark)]));
        scene.follow(&design, 1, &view);
        assert_eq!(scene.stop.by, None);
    }
}
