//! Signs on a template: where the fibres run, and a mark that shows a sheet that is flipped.

use latchwright_drawing::{Anchor, Ink, Outline, Shape, text_width};
use latchwright_geometry::Point;
use latchwright_model::Grain;

use super::sheet::{Sheet, TYPE};

/// Length of the grain arrow, mm.
const ARROW: f64 = 20.0;
/// Legs of the corner mark, mm.
const LEGS: (f64, f64) = (9.0, 5.0);

impl Sheet {
    /// A double arrow along the fibres and the word.
    pub(super) fn grain(&mut self, grain: Grain, near: Point) {
        let word = text_width("grain", TYPE);
        let (long, across) = match grain {
            Grain::AlongX => (self.size().0, ARROW + 1.5 + word),
            Grain::AlongY => (self.size().1, 3.0 + 1.5 + word),
        };
        let length = ARROW.min(long * 0.25).max(6.0);
        let size = match grain {
            Grain::AlongX => (across - ARROW + length, TYPE * 1.2),
            Grain::AlongY => (across, length),
        };
        let space = self.space_on_part(near, size);
        let start = Point::new(space.min.x, space.centre().y);
        let (from, to, word_at) = match grain {
            Grain::AlongX => {
                let end = start + Point::new(length, 0.0);
                (start, end, end + Point::new(1.5, 0.0))
            }
            Grain::AlongY => {
                let (low, high) = (space.min.y, space.max.y);
                let x = space.min.x + 1.5;
                let beside = Point::new(x + 3.0, space.centre().y);
                (Point::new(x, low), Point::new(x, high), beside)
            }
        };
        let way = (to - from) * (1.0 / length);
        let head = |tip: Point, back: Point| {
            let side = back.perpendicular() * 0.8;
            let root = tip + back * 2.4;
            Outline::polyline(&[root + side, tip, root - side])
        };
        let outlines = vec![Outline::line(from, to), head(from, way), head(to, -way)];
        self.mark(Ink::Edge, Shape::Path { outlines });
        self.keep_free(space);
        self.word_at(word_at, "grain", Anchor::Start);
    }

    /// A solid triangle with a long and a short leg, its right angle towards the corner at `corner`.
    ///
    /// Flipped or turned, its long leg lies otherwise: a sheet that is wrong way up is seen. Where
    /// something is in the way it goes to the first free place on the part.
    pub(super) fn corner_mark(&mut self, corner: Point, words: &str) {
        let (width, height) = self.size();
        let legs = (LEGS.0.min(width / 4.0), LEGS.1.min(height / 3.0));
        let middle = Point::new(width / 2.0, height / 2.0);
        let inwards = Point::new(
            (middle.x - corner.x).signum(),
            (middle.y - corner.y).signum(),
        );
        let along = Point::new(legs.0 * inwards.x, 0.0);
        let up = Point::new(0.0, legs.1 * inwards.y);
        let off = inwards * 1.8_f64.min(height / 12.0);
        let near = corner + off + (along + up) * 0.5;
        let wanted = latchwright_drawing::Rect::about(near, legs.0, legs.1);
        let space = self.free_or_first(wanted);
        let shift = space.centre() - near;
        let tip = corner + off + shift;
        self.solid(Outline::polygon(&[tip, tip + along, tip + up]));
        let aside = legs.0 / 2.0 + text_width(words, TYPE) / 2.0 + 1.6;
        let at = space.centre() + Point::new(aside * inwards.x, 0.0);
        self.on_part(at, &[words.to_owned()]);
    }
}
