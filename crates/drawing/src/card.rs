//! The lid as the recipient's card shows it.

use core::f64::consts::TAU;

use latchwright_geometry::{Point, trig};
use latchwright_model::Design;
use latchwright_model::Pose;

use crate::dial::extent;
use crate::drawing::Drawing;
use crate::grain::grain_lines;
use crate::item::{Item, Layer};
use crate::outline::Outline;
use crate::plan::{PlanOptions, dials_alone, plan};
use crate::style::Ink;
use latchwright_geometry::Rect;
use latchwright_model::sound::within;

/// Wood left round the dials where the lid is cut off, mm.
const AROUND: f64 = 5.0;
/// Waves of the edge that is cut off, and chords of each.
const WAVES: u32 = 7;
const CHORDS: u32 = 12;

/// The lid from outside, shut, with its dials at `marks` if `show`.
///
/// Without `show` the dials have no pointers and no mark is favoured: the drawing is the same
/// whatever `marks` are, so that a card without the combination does not give it away.
pub fn lid_card(design: &Design, marks: &[u32], show: bool) -> Drawing {
    let marks = if show { marks } else { &[] };
    let options = options(show);
    let mut drawing = plan(design, &Pose::at_marks(design, marks), &options);
    // Nothing below the plate shows, so no sheet is kept free for it.
    if let Some(shown) = extent(&drawing.items) {
        drawing.bounds = shown.grown(1.0);
    }
    drawing
}

/// The part of the same lid where its dials are, up to the hinged edge and cut off before them by a
/// wavy line, for a drawing that is small and has to be seen well. Its sheet is that part of the
/// plate. A lid without dials is drawn whole.
pub fn lid_dials(design: &Design, marks: &[u32], show: bool) -> Drawing {
    let marks = if show { marks } else { &[] };
    let dials = dials_alone(design, &Pose::at_marks(design, marks), &options(show));
    let Some(shown) = extent(&dials) else {
        return lid_card(design, marks, show);
    };
    let shown = shown.grown(AROUND);
    let back = within(design.plate.depth).max(shown.max.y);
    let board = Rect::new(shown.min, Point::new(shown.max.x, back));
    let outline = cut_off_in_front(board);
    let whole = Rect::new(board.min + Point::new(0.0, AROUND), board.max);
    let mut items = vec![
        Item::area(Layer::Wood, Ink::Wood, None, outline.clone()),
        grain_lines(whole, design.plate.grain),
        Item::stroke(Layer::Wood, Ink::Outline, outline),
    ];
    items.extend(dials);
    Drawing {
        bounds: board,
        items,
    }
}

fn options(show: bool) -> PlanOptions {
    PlanOptions {
        veil: 1.0,
        large_labels: true,
        hide_setting: !show,
        ..PlanOptions::default()
    }
}

/// `board` with waves instead of its front edge.
fn cut_off_in_front(board: Rect) -> Outline {
    let swing = (board.width() * 0.008).min(AROUND * 0.5);
    let wave = |step: u32| {
        let share = f64::from(step) / f64::from(WAVES * CHORDS);
        let turn = share * f64::from(WAVES) * TAU;
        let x = board.min.x + board.width() * share;
        Point::new(x, board.min.y + swing * (1.0 - trig::cos(turn)))
    };
    let mut corners: Vec<Point> = (0..=WAVES * CHORDS).map(wave).collect();
    corners.extend([board.max, Point::new(board.min.x, board.max.y)]);
    Outline::polygon(&corners)
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
        let hidden = lid_dials(&design, &[3, 6, 1], false);
        assert_eq!(hidden, lid_dials(&other, &[], false));
        assert_ne!(hidden, lid_dials(&design, &[3, 6, 1], true));
    }

    #[test]
    fn the_part_with_the_dials_holds_all_of_them_and_ends_at_the_hinge() {
        let design = Design::default();
        let part = lid_dials(&design, &[3, 6, 1], true);
        assert!(
            part.items
                .iter()
                .all(|item| part.bounds.holds(item.shape.extent()))
        );
        assert!((part.bounds.max.y - design.plate.depth).abs() < 1e-9);
        assert!(part.bounds.height() < design.plate.depth * 0.8);
        assert!(part.bounds.width() < design.plate.width);
    }

    #[test]
    fn a_lid_without_dials_is_drawn_whole() {
        let design = Design {
            dials: Vec::new(),
            ..Design::default()
        };
        assert_eq!(lid_dials(&design, &[], true), lid_card(&design, &[], true));
    }
}
