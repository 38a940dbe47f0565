//! Holes and slots on a template: crosshairs fit for an awl, circles, and what to bore with.

use latchwright_drawing::{Cut, Ink, Outline, Rect, Shape};
use latchwright_geometry::Point;

use super::Face;
use super::sheet::Sheet;
use crate::feature::{Centre, Feature};
use crate::holes::{Depth, Hole, HoleStep, Slot, Tool};
use crate::inch::Rule;

/// How far a crosshair stands out of its hole, mm.
const BEYOND: f64 = 3.0;
/// How far the crosshairs of a row stand out of it to both sides, mm.
const ROW_BEYOND: f64 = 1.5;

impl Sheet {
    /// Whether a hole is bored in this part and comes out at the face that lies up, or begins there.
    fn has(&self, hole: &Hole) -> bool {
        let from_below = hole.kind.feature() == Feature::GuideScrews;
        hole.kind.part() == self.part() && !(from_below && self.face() == Face::Outside)
    }

    /// The circles and crosshairs of all holes of this part.
    pub(super) fn bore(&mut self, holes: &[Hole], place: impl Fn(Point) -> Point) {
        for hole in holes {
            if self.has(hole) {
                self.circles(hole, place(hole.centre));
            }
        }
    }

    /// What to bore them with, in words beside each; of the guide's four, which are alike, once.
    pub(super) fn bore_words(&mut self, holes: &[Hole], place: impl Fn(Point) -> Point) {
        let mut guide = false;
        for hole in holes
            .iter()
            .filter(|hole| self.has(hole))
            .collect::<Vec<_>>()
        {
            let of_guide = hole.kind.feature() == Feature::GuideScrews;
            if !(of_guide && guide) {
                self.hole_words(hole, place(hole.centre));
            }
            guide |= of_guide;
        }
    }

    fn hole_words(&mut self, hole: &Hole, at: Point) {
        let name = match hole.kind.feature() {
            Feature::GuideScrews => "guide screws, all four".to_owned(),
            _ => hole.kind.name(),
        };
        let mut lines = vec![name];
        for step in &hole.steps {
            lines.extend(step_lines(step, self.rule));
        }
        self.about(at, hole.widest() / 2.0 + 0.5, &lines);
    }

    /// The circles and crosshairs of one hole.
    pub(super) fn circles(&mut self, hole: &Hole, at: Point) {
        for step in &hole.steps {
            let circle = Shape::Circle {
                centre: at,
                radius: step.diameter / 2.0,
            };
            match (step.tool, step.depth) {
                (Tool::Countersink, _) => self.work(Cut::Countersink(step.diameter), circle),
                (Tool::CountersinkBelow, _) => {
                    self.work(Cut::CountersinkBelow(step.diameter), circle);
                }
                (Tool::Bit(_), Depth::Through(_)) => self.hole(circle),
                (Tool::Bit(_), Depth::Blind(deep)) => self.work(Cut::Blind(deep), circle),
            }
        }
        let radius = hole.widest() / 2.0;
        let half = radius + BEYOND;
        self.cross(at, (half, half));
        self.keep_free(Rect::about(at, 2.0 * radius, 2.0 * radius));
        self.keep_free(Rect::about(at, 2.0 * half, 0.0));
        self.keep_free(Rect::about(at, 0.0, 2.0 * half));
        self.centre(Centre::Hole(hole.kind), at);
    }

    /// Two fine lines that cross at `at`: the awl's point goes where they meet.
    fn cross(&mut self, at: Point, half: (f64, f64)) {
        for way in [Point::new(half.0, 0.0), Point::new(0.0, half.1)] {
            self.sketch(Ink::Aim, Shape::path(Outline::line(at - way, at + way)));
        }
    }

    /// A bored slot, each of whose places goes through `place` onto this sheet.
    pub(super) fn slot(&mut self, slot: &Slot, place: impl Fn(Point) -> Point) {
        let (from, to) = (place(slot.from), place(slot.to));
        let half = slot.width / 2.0;
        self.hole(Shape::path(Outline::stadium(from, to, half)));
        let bit = slot.bit.bored() / 2.0;
        for (index, centre) in slot.centres().into_iter().enumerate() {
            let at = place(centre);
            self.sketch(
                Ink::Aim,
                Shape::Circle {
                    centre: at,
                    radius: bit,
                },
            );
            let along = bit.min(0.4 * slot.row.pitch.max(bit / 4.0));
            self.cross(at, (half.max(bit) + ROW_BEYOND, along));
            self.centre(Centre::InSlot(slot.kind, index), at);
        }
        let area = Rect::new(from, to).grown(half.max(bit));
        self.keep_free(area.grown(ROW_BEYOND));
        let clear = half.max(bit).max(area.height().min(area.width()) / 2.0) + 0.5;
        let lines = self.slot_words(slot);
        self.about(area.centre(), clear, &lines);
    }

    fn slot_words(&self, slot: &Slot) -> Vec<String> {
        let say = |mm: f64| self.rule.say_exactly(mm);
        let deep = match slot.depth {
            Depth::Through(_) => "through".to_owned(),
            Depth::Blind(deep) => format!("{} deep", say(deep)),
        };
        let long = slot.from.distance(slot.to) + slot.width;
        let mut lines = vec![
            slot.kind.name(),
            format!("{} wide, {} long, {deep}", say(slot.width), say(long)),
        ];
        lines.extend(slot.bit.lines(self.rule.units));
        let row = slot.row;
        lines.push(format!("{} holes, {} apart", row.count, say(row.pitch)));
        if row.count > 2 {
            lines.push("ends first".to_owned());
        }
        if !row.wood_at_centres {
            lines.push("between them a bit its rim guides".to_owned());
        }
        lines.push(format!("then pare {}", say(row.cusp)));
        lines
    }
}

/// Diameter, depth and bit in few words, a line each: `14.3 mm through`, `bit 15 mm, 0.7 mm over`.
pub fn step_lines(step: &HoleStep, rule: Rule) -> Vec<String> {
    let wide = rule.say_exactly(step.diameter);
    let bit = match step.tool {
        Tool::Bit(bit) => bit,
        Tool::Countersink => return vec![format!("countersink to {wide}")],
        Tool::CountersinkBelow => {
            return vec![format!("countersink to {wide} from the other face")];
        }
    };
    let first = match step.depth {
        Depth::Through(_) => format!("{wide} through"),
        Depth::Blind(deep) => format!("{wide}, {} deep", rule.say_exactly(deep)),
    };
    core::iter::once(first)
        .chain(bit.lines(rule.units))
        .collect()
}
