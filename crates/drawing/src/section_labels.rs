//! Names of the parts beside the section, none over another.

use latchwright_assembly::dial::disc_screw;
use latchwright_geometry::Point;

use crate::dimension::length;
use crate::item::{Item, Layer};
use crate::outline::Outline;
use crate::section::Cut;
use crate::shape::{Anchor, Text};
use crate::style::Ink;
use latchwright_geometry::Rect;

/// Size of type where none is asked for, and the smallest and largest that has room, mm.
const TYPE: f64 = 4.0;
const SMALLEST_TYPE: f64 = 2.0;
const LARGEST_TYPE: f64 = 7.0;
/// From the parts to their names, mm.
const LEADER: f64 = 5.0;
/// Least gap between two names in a row, mm.
const BETWEEN: f64 = 3.0;
/// From a leader's end to its name, mm.
const AIR: f64 = 0.5;
/// From one name to the one below it, in heights of the letters.
const APART: f64 = 1.5;
/// How much of the front's foot its name points to the middle of, mm.
const FRONT_NAMED: f64 = 3.0;

/// The size of type that is asked for, within what has room, mm.
pub(crate) fn type_of(asked: Option<f64>) -> f64 {
    match asked {
        Some(asked) if asked.is_finite() => asked.clamp(SMALLEST_TYPE, LARGEST_TYPE),
        _ => TYPE,
    }
}

/// All names with their leaders.
pub(crate) fn labels(cut: &Cut<'_>) -> Vec<Item> {
    let mut items = Vec::new();
    below(cut, &mut items);
    beside(cut, &mut items);
    items
}

/// The row under the parts of the layer below the plate, in their order from the front, and the hinge's side at its end.
fn below(cut: &Cut<'_>, items: &mut Vec<Item>) {
    let row = row(cut);
    let mut free_from = f64::NEG_INFINITY;
    for (name, part) in named_below(cut) {
        let mut text = Text::new(Point::new(part.centre().x, row), name, cut.letters);
        let shift = (free_from - text.extent().min.x).max(0.0);
        text.at.x += shift;
        free_from = text.extent().max.x + BETWEEN;
        let from = Point::new(part.centre().x, part.min.y + part.height().min(1.6) * 0.5);
        leader(items, from, Point::new(text.at.x, row + cut.letters * 0.6));
        items.push(Item::text(Layer::Notes, Ink::Note, text));
    }
    let at = Point::new((right_column(cut) + AIR).max(free_from), row);
    let hinge = Text::new(at, "hinge", cut.letters).anchored(Anchor::Start);
    items.push(Item::text(Layer::Notes, Ink::Note, hinge));
}

/// The height of the row of names.
fn row(cut: &Cut<'_>) -> f64 {
    cut.foot() - LEADER - cut.letters / 2.0
}

/// What has its name in the row, from the front.
fn named_below(cut: &Cut<'_>) -> Vec<(&'static str, Rect)> {
    let (tab, slider, [_, bridge]) = (cut.tab_rect(), cut.slider_rect(), cut.bridge_rects());
    let behind = tab.max.x.max(bridge.max.x).min(slider.max.x);
    let bar = Rect::new(Point::new(behind, slider.min.y), slider.max);
    let mut named = vec![("tab", tab), ("bridge", bridge), ("slider", bar)];
    let pin = cut.pin_rect();
    named.extend(cut.finger_rect().map(|finger| {
        let end = pin.map_or(finger.max.x, |pin| pin.min.x.max(finger.min.x));
        (
            "finger",
            Rect::new(finger.min, Point::new(end, finger.max.y)),
        )
    }));
    named.extend(pin.map(|pin| ("pin", pin)));
    if let Some((dial, disc)) = cut.dial.zip(cut.disc_rect()) {
        let screwed = disc_screw(cut.design, dial, 0.0).length.is_some();
        named.extend(screwed.then(|| ("screw", middle(disc))));
        named.push(("disc", right_part(disc)));
    }
    named.sort_by(|a, b| a.1.centre().x.total_cmp(&b.1.centre().x));
    named
}

/// Where the screw's head is in the disc.
fn middle(disc: Rect) -> Rect {
    let at = disc.centre().x;
    Rect::new(Point::new(at, disc.min.y), Point::new(at, disc.max.y))
}

/// The part of the disc behind its shaft, where its name has room.
fn right_part(disc: Rect) -> Rect {
    Rect {
        min: Point::new(disc.centre().x + disc.width() * 0.2, disc.min.y),
        max: disc.max,
    }
}

/// Where the names on the right begin.
fn right_column(cut: &Cut<'_>) -> f64 {
    let disc = cut.disc_rect().map_or(0.0, |disc| disc.max.x);
    cut.design.plate.depth.max(disc) + LEADER
}

/// Names at the sides.
fn beside(cut: &Cut<'_>, items: &mut Vec<Item>) {
    on_the_right(cut, items);
    on_the_left(cut, items);
}

/// Plate, washer and knob.
fn on_the_right(cut: &Cut<'_>, items: &mut Vec<Item>) {
    let column = Point::new(right_column(cut), cut.thickness / 2.0);
    let plate = format!("plate {}", length(cut.thickness, cut.design.units));
    let at = Point::new(cut.design.plate.depth - 1.5, column.y);
    name(cut, items, at, column, plate, Anchor::Start);
    if let Some((_, ring)) = cut.washer() {
        let at = Point::new(ring.max.x - 1.0, ring.centre().y);
        let to = Point::new(column.x, at.y.min(column.y - cut.letters * APART));
        name(cut, items, at, to, "washer".to_owned(), Anchor::Start);
    }
    if let Some(knob) = cut.knob_rect() {
        let at = Point::new(knob.max.x, knob.centre().y);
        let to = at + Point::new(LEADER, 0.0);
        let from = at - Point::new(1.5, 0.0);
        name(cut, items, from, to, "knob".to_owned(), Anchor::Start);
    }
}

/// Finger knob, keeper and the front of the box.
fn on_the_left(cut: &Cut<'_>, items: &mut Vec<Item>) {
    let pull = cut.pull_rect();
    let keeper = cut.keeper_rect();
    let at = |part: Rect| Point::new(part.min.x, part.centre().y);
    let mut left = |part: Rect, to: Point, words: &str| {
        let from = at(part) + Point::new(1.5, 0.0);
        name(cut, items, from, to, words.to_owned(), Anchor::End);
    };
    left(pull, at(pull) - Point::new(LEADER, 0.0), "finger knob");
    let column = at(keeper) - Point::new(LEADER, 0.0);
    left(keeper, column, "keeper");
    if let Some(front) = cut.front_rect() {
        let foot = Rect::new(
            front.min,
            Point::new(front.max.x, front.min.y + FRONT_NAMED),
        );
        let to = Point::new(column.x.min(foot.min.x - LEADER), foot.centre().y);
        left(foot, to, "front");
    } else {
        let end = Point::new(column.x - AIR, row(cut));
        let text = Text::new(end, "front", cut.letters).anchored(Anchor::End);
        items.push(Item::text(Layer::Notes, Ink::Note, text));
    }
}

fn name(
    cut: &Cut<'_>,
    items: &mut Vec<Item>,
    from: Point,
    to: Point,
    words: String,
    anchor: Anchor,
) {
    let towards = if anchor == Anchor::Start { 1.0 } else { -1.0 };
    leader(items, from, to - Point::new(towards * 0.4, 0.0));
    let at = to + Point::new(towards * 0.5, 0.0);
    items.push(Item::text(
        Layer::Notes,
        Ink::Note,
        Text::new(at, words, cut.letters).anchored(anchor),
    ));
}

/// A thin line with a dot on the part it names.
fn leader(items: &mut Vec<Item>, from: Point, to: Point) {
    items.push(Item::stroke(
        Layer::Notes,
        Ink::Faint,
        Outline::line(from, to),
    ));
    items.push(Item::circle(
        Layer::Notes,
        Some(Ink::Faint),
        None,
        from,
        0.5,
    ));
}

#[cfg(test)]
mod tests {
    use latchwright_model::Design;
    use latchwright_model::Pose;

    use crate::shape::Shape;

    #[test]
    fn no_name_stands_over_another() {
        let mut close = Design::default();
        close.dials[0].centre.1 = 40.0;
        close.plate.depth = 60.0;
        for design in [Design::default(), close] {
            for travel in [0.0, 4.0, 8.0] {
                let pose = Pose {
                    travel,
                    ..Pose::at_combination(&design)
                };
                let is_text = |item: &&crate::Item| matches!(item.shape, Shape::Text(_));
                for letters in [None, Some(2.0), Some(7.0), Some(f64::NAN), Some(1e9)] {
                    let drawing = crate::section(&design, &pose, 1, letters);
                    let texts = drawing.items.iter().filter(is_text);
                    let spaces: Vec<_> = texts.map(|item| item.shape.extent()).collect();
                    assert_eq!(spaces.len(), 14);
                    for (index, a) in spaces.iter().enumerate() {
                        for b in spaces.iter().skip(index + 1) {
                            assert!(!a.overlaps(*b), "{letters:?}: {a:?} over {b:?}");
                        }
                    }
                }
            }
        }
    }
}
