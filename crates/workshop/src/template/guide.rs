//! Strips and bridges on the plate's underside: where they are screwed on.

use latchwright_assembly::guide::guide;
use latchwright_drawing::{Ink, Outline, Rect, Shape};
use latchwright_geometry::Point;
use latchwright_model::Design;

use super::sheet::Sheet;
use crate::frame::{places, sizes};

impl Sheet {
    /// The strips as they lie on the face, and over them, dashed because nothing of them touches it, the bridges.
    pub(super) fn guide(&mut self, design: &Design, place: impl Fn(Point) -> Point) {
        let guide = guide(design);
        let (width, depth) = self.size();
        let plate = Rect::new(Point::default(), Point::new(width, depth));
        let strips = guide.strips.iter().map(|strip| (strip.area, Ink::Edge));
        let bridges = guide
            .bridges
            .iter()
            .map(|bridge| (bridge.area, Ink::Unseen));
        for (area, ink) in strips.chain(bridges) {
            let (low, high) = (area.min, area.max);
            if !places(&[low.x, low.y, high.x, high.y]) || !sizes(&[area.width(), area.height()]) {
                continue;
            }
            let here = Rect::new(place(low), place(high));
            if plate.holds(here) {
                self.mark(ink, Shape::path(Outline::rectangle(here)));
            }
        }
    }

    /// What they are, and from which edges their places count.
    pub(super) fn guide_words(&mut self, design: &Design, place: impl Fn(Point) -> Point) {
        let guide = guide(design);
        let (width, _) = self.size();
        let [left, right] = guide.strips.map(|strip| strip.area);
        let known = [left.min.x, right.max.x, left.min.y, left.max.y];
        if !places(&known) || !sizes(&[left.width(), left.height()]) {
            return;
        }
        let rule = self.rule;
        let say = |mm: f64| rule.say_exactly(mm);
        for (name, area) in [("strip", left), ("strip", right)] {
            let here = Rect::new(place(area.min), place(area.max));
            if here.min.x < 0.0 || here.max.x > width {
                continue;
            }
            let near_left = here.centre().x < width / 2.0;
            let (edge, from) = if near_left {
                ("left", here.min.x)
            } else {
                ("right", width - here.max.x)
            };
            let lines = [
                format!("guide {name}, bridges dashed"),
                format!("{} from the {edge} edge", say(from)),
                format!("{} from the front edge", say(here.min.y)),
            ];
            let at = Point::new(
                if near_left { here.min.x } else { here.max.x },
                here.centre().y,
            );
            self.about(at, 0.0, &lines);
        }
    }
}
