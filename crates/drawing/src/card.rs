//! The lid as the recipient's card shows it.

use latchwright_solver::Pose;
use latchwright_solver::model::Design;

use crate::dial::extent;
use crate::drawing::Drawing;
use crate::plan::{PlanOptions, plan};

/// The lid from outside, shut, with its dials at `marks` if `show`.
///
/// Without `show` the dials have no pointers and no mark is favoured: the drawing is the same
/// whatever `marks` are, so that a card without the combination does not give it away.
pub fn lid_card(design: &Design, marks: &[u32], show: bool) -> Drawing {
    let marks = if show { marks } else { &[] };
    let options = PlanOptions {
        veil: 1.0,
        large_labels: true,
        hide_setting: !show,
        ..PlanOptions::default()
    };
    let mut drawing = plan(design, &Pose::at_marks(design, marks), &options);
    // Nothing below the plate shows, so no sheet is kept free for it.
    if let Some(shown) = extent(&drawing.items) {
        drawing.bounds = shown.grown(1.0);
    }
    drawing
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_card_without_the_combination_does_not_depend_on_it() {
        let design = Design::default();
        let other = Design {
            combination: vec![0, 0, 0],
            ..Design::default()
        };
        let hidden = lid_card(&design, &[3, 6, 1], false);
        assert_eq!(hidden, lid_card(&design, &[1, 1, 1], false));
        assert_eq!(hidden, lid_card(&other, &[], false));
        assert_ne!(hidden, lid_card(&design, &[3, 6, 1], true));
    }
}
