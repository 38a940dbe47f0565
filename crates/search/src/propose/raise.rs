//! What is short is raised: the least sizes that each figure asks for, and what those ask for in turn.

use super::figure::{DUST, Question};
use super::grid::up;
use super::lattice::{Lattice, Point};
use super::sizes::Sizes;
use super::solve::Solver;

/// What follows from a size that is raised asks for at least this share of it: season and yaw take a
/// little of it back.
const FOLLOWS: f64 = 0.8;

/// What a gap that grows by this much asks of the engagement at least, mm.
pub(super) fn follows(gap: f64) -> f64 {
    FOLLOWS * gap
}

/// What came of looking for what is short.
pub(super) enum Raised {
    /// These sizes are larger.
    To(Sizes),
    /// Nothing is short.
    Enough,
}

/// How much of a size the worst dial lacks, mm; below 0, so much is to spare.
struct Lacks {
    engagement: f64,
    travel: f64,
    depth: f64,
}

impl Solver {
    /// Raises what the figures that were weighed last are short of with this room; `None` where nothing
    /// that is raised would help.
    pub(super) fn raised(&self, point: &Point, before: Sizes, room: f64) -> Option<Raised> {
        let (lattice, grid) = (&self.lattice, self.lattice.grid);
        let mut sizes = before;
        let mut figures = self.work.figures.iter();
        let wall_short =
            figures.any(|figure| figure.question == Question::Wall && figure.left_at(room) < DUST);
        let mut held = false;
        let mut lacks = Lacks {
            engagement: f64::NEG_INFINITY,
            travel: f64::NEG_INFINITY,
            depth: f64::NEG_INFINITY,
        };
        for figure in &self.work.figures {
            let short = DUST - figure.left_at(room);
            match figure.question {
                Question::Hold => lacks.engagement = lacks.engagement.max(short),
                Question::Free => lacks.travel = lacks.travel.max(short),
                Question::Deep => lacks.depth = lacks.depth.max(short),
                _ => {}
            }
            // a slot without walls is narrower than it seems: deeper first
            if short <= 0.0 || (wall_short && figure.question == Question::Enters) {
                continue;
            }
            if short > 1e3 {
                return None;
            }
            if lattice.holds(figure.question, figure.dial) {
                // another size may still make up for it
                held = true;
                continue;
            }
            let (size, by, step) = match figure.question {
                Question::AtRest => (&mut sizes.gap, before.gap + short, grid.size),
                Question::Enters => (&mut sizes.width, before.width + 2.0 * short, grid.size),
                Question::Fits => (&mut sizes.width, before.width + short, grid.size),
                Question::Deep | Question::Wall => {
                    (&mut sizes.depth, before.depth + short, grid.size)
                }
                Question::Hold | Question::HeldAtRest => {
                    (&mut sizes.engagement, before.engagement + short, grid.size)
                }
                Question::Free | Question::Swings | Question::Captive => {
                    (&mut sizes.travel, before.travel + short, grid.size)
                }
                Question::Discs | Question::Fingers | Question::Knobs | Question::Bores => {
                    // in two rows, dials of one row are two spacings apart
                    let share = if point.stagger > 0.0 { 0.5 } else { 1.0 };
                    let by = before.spacing + share * short;
                    (&mut sizes.spacing, by, grid.place)
                }
                Question::Guide => (&mut sizes.play, before.play + short, grid.clearance),
                Question::TabBears => (&mut sizes.tab, before.tab + grid.lid, grid.lid),
                _ => return None,
            };
            *size = size.max(up(by, step));
        }
        if sizes == before {
            return (!held).then_some(Raised::Enough);
        }
        if self.at_once {
            follow(lattice, &before, &mut sizes, &lacks);
        }
        Some(Raised::To(sizes))
    }
}

/// Raises at once what a larger gap asks of the engagement, that of the travel, and that of the depth:
/// never by more than the next round would.
fn follow(lattice: &Lattice, before: &Sizes, sizes: &mut Sizes, lacks: &Lacks) {
    let step = lattice.grid.size;
    let dials = || 0..lattice.base.dials.len();
    let held = |question| dials().any(|dial| lattice.holds(question, Some(dial)));
    let gap = sizes.gap - before.gap;
    if gap > 0.0 && !held(Question::Hold) {
        let by = before.engagement + lacks.engagement + follows(gap);
        sizes.engagement = sizes.engagement.max(up(by, step));
    }
    let engagement = sizes.engagement - before.engagement;
    if engagement > 0.0 && !held(Question::Free) {
        let by = before.travel + lacks.travel + FOLLOWS * engagement;
        sizes.travel = sizes.travel.max(up(by, step));
    }
    let travel = sizes.travel - before.travel;
    if travel > 0.0 && !held(Question::Deep) {
        // a pin further from its disc goes less deep
        let by = before.depth + lacks.depth + FOLLOWS * travel - gap / FOLLOWS;
        sizes.depth = sizes.depth.max(up(by, step));
    }
}
