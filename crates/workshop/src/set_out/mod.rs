//! Setting out: where a dial's centre or the tab comes to stand when a hand puts it down on the plan.
//!
//! A place is drawn to the lines that a maker would strike with square and marking gauge: through other
//! centres, down the middle of the lid, half-way between neighbours, as near to a neighbour or an edge
//! as the checks allow with the bit at hand. Where no line is near it falls on a mark of the ruler.
//! Values in, values out: what is near on a screen is told by [`Look`].
//!
//! Frame: that of the design, mm; x to the right from the middle of the front edge, y towards the hinge.

mod lines;
mod place;
mod ruler;

pub use lines::{Because, Line};
pub use place::{Placed, TabPlace, TabPlaced, dial_at, tab_at};
pub use ruler::Marks;

use latchwright_model::Design;

/// How closely the plan is looked at while a hand moves on it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Look {
    /// The ruler's marks that can be told apart.
    pub marks: Marks,
    /// How near a line has to be to draw a place to it, mm.
    pub reach: f64,
    /// Nothing draws: the place stays where it was put, to a hundredth of a millimetre.
    pub free: bool,
}

impl Look {
    /// At `scale` points a millimetre; a line draws over `pull` points.
    pub fn at_scale(design: &Design, scale: f64, pull: f64) -> Self {
        let scale = if scale.is_finite() {
            scale.max(1e-3)
        } else {
            1.0
        };
        Self {
            marks: Marks::at_scale(design.units, design.bench.fraction, scale),
            reach: pull / scale,
            free: false,
        }
    }

    /// `wanted` on the nearest of `lines` within reach, the first of equally near ones; on a mark of
    /// the ruler where there is none.
    ///
    /// A value that is no number stays one; no line draws it.
    pub fn snap(&self, wanted: f64, lines: &[Line]) -> (f64, Option<Because>) {
        if self.free {
            return (Marks::HUNDREDTH.nearest(wanted), None);
        }
        let off = |line: &Line| (line.at - wanted).abs();
        let near = lines.iter().filter(|line| off(line) <= self.reach);
        // of equal ones `min_by` keeps the first
        match near.min_by(|one, other| off(one).total_cmp(&off(other))) {
            Some(line) => (line.at, Some(line.because)),
            None => (self.marks.nearest(wanted), None),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(at: f64, dial: usize) -> Line {
        Line {
            at,
            because: Because::InLine(dial),
        }
    }

    fn look() -> Look {
        Look::at_scale(&Design::default(), 4.0, 8.0)
    }

    #[test]
    fn the_nearest_line_draws_whatever_the_order_in_which_they_are_told() {
        let (near, far) = (line(10.0, 0), line(11.5, 1));
        for lines in [[near, far], [far, near]] {
            assert_eq!(look().snap(10.7, &lines), (10.0, Some(near.because)));
            assert_eq!(look().snap(10.8, &lines), (11.5, Some(far.because)));
        }
    }

    #[test]
    fn of_two_lines_equally_near_the_first_draws() {
        let lines = [line(9.0, 4), line(11.0, 2), line(11.0, 3)];
        assert_eq!(look().snap(10.0, &lines), (9.0, Some(Because::InLine(4))));
        assert_eq!(look().snap(10.4, &lines), (11.0, Some(Because::InLine(2))));
    }

    #[test]
    fn where_no_line_is_near_the_rulers_marks_draw() {
        // 8 points at 4 points a millimetre: a line draws over 2 mm
        let lines = [line(10.3, 0)];
        assert_eq!(look().snap(12.2, &lines).0, 10.3);
        assert_eq!(look().snap(12.4, &lines), (12.0, None));
        assert_eq!(look().snap(-7.6, &[]), (-8.0, None));
    }

    #[test]
    fn left_and_right_of_the_middle_are_alike() {
        for wanted in [0.4, 0.5, 3.3, 7.5, 9.9, 10.7, 13.1] {
            let (right, _) = look().snap(wanted, &[line(10.3, 0)]);
            let (left, _) = look().snap(-wanted, &[line(-10.3, 0)]);
            assert_eq!(left, -right, "{wanted}");
        }
    }

    #[test]
    fn a_free_hand_is_drawn_by_nothing() {
        let free = Look {
            free: true,
            ..look()
        };
        assert_eq!(free.snap(10.2345, &[line(10.3, 0)]), (10.23, None));
    }

    #[test]
    fn nonsense_is_drawn_nowhere() {
        assert!(look().snap(f64::NAN, &[line(0.0, 0)]).0.is_nan());
        assert_eq!(look().snap(1.2, &[line(f64::NAN, 0)]), (1.0, None));
        let look = Look::at_scale(&Design::default(), f64::NAN, 8.0);
        assert!(look.reach.is_finite());
    }
}
