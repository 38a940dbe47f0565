//! Names of the parts beside the section, none over another.

use latchwright_geometry::Point;

use crate::dimension::length;
use crate::item::{Item, Layer};
use crate::outline::Outline;
use crate::rect::Rect;
use crate::section::{AIR, Cut};
use crate::shape::{Anchor, Text};
use crate::style::Ink;

/// Size of type where none is asked for, and the smallest and largest that has room, mm.
const TYPE: f64 = 4.0;
const SMALLEST_TYPE: f64 = 2.0;
const LARGEST_TYPE: f64 = 7.0;
/// From the parts to their names, mm.
const LEADER: f64 = 5.0;
/// Least gap between two names in a row, mm.
const BETWEEN: f64 = 3.0;

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

/// The row under the parts of the layer below the plate, in their order from the front.
fn below(cut: &Cut<'_>, items: &mut Vec<Item>) {
    let (tab, slider) = (cut.tab_rect(), cut.slider_rect());
    let between = Rect::new(
        Point::new(tab.max.x.min(slider.max.x), slider.min.y),
        slider.max,
    );
    let mut named = vec![("tab", tab), ("slider", between)];
    named.extend(cut.pin_rect().map(|pin| ("pin", pin)));
    named.extend(cut.disc_rect().map(|disc| ("disc", right_part(disc))));
    named.sort_by(|a, b| a.1.centre().x.total_cmp(&b.1.centre().x));
    let row = cut.floor() - LEADER - cut.letters / 2.0;
    let mut free_from = f64::NEG_INFINITY;
    for (name, part) in named {
        let mut text = Text::new(Point::new(part.centre().x, row), name, cut.letters);
        let shift = (free_from - text.extent().min.x).max(0.0);
        text.at.x += shift;
        free_from = text.extent().max.x + BETWEEN;
        let from = Point::new(part.centre().x, part.min.y + part.height().min(1.6) * 0.5);
        leader(items, from, Point::new(text.at.x, row + cut.letters * 0.6));
        items.push(Item::text(Layer::Notes, Ink::Note, text));
    }
}

/// The part of the disc behind its shaft, where its name has room.
fn right_part(disc: Rect) -> Rect {
    Rect {
        min: Point::new(disc.centre().x + disc.width() * 0.2, disc.min.y),
        max: disc.max,
    }
}

/// Names at the sides: plate, knob, finger knob, keeper, and which end is which.
fn beside(cut: &Cut<'_>, items: &mut Vec<Item>) {
    let right = cut
        .design
        .plate
        .depth
        .max(cut.disc_rect().map_or(0.0, |disc| disc.max.x));
    let column = Point::new(right + LEADER, cut.thickness / 2.0);
    let plate = format!("plate {}", length(cut.thickness, cut.design.units));
    name(
        cut,
        items,
        Point::new(cut.design.plate.depth - 1.5, column.y),
        column,
        plate,
        Anchor::Start,
    );
    if let Some(knob) = cut.knob_rect() {
        let at = Point::new(knob.max.x, knob.centre().y);
        let to = at + Point::new(LEADER, 0.0);
        name(
            cut,
            items,
            at - Point::new(1.5, 0.0),
            to,
            "knob".to_owned(),
            Anchor::Start,
        );
    }
    let pull = cut.pull_rect();
    let at = Point::new(pull.min.x, pull.centre().y);
    let to = at - Point::new(LEADER, 0.0);
    name(
        cut,
        items,
        at + Point::new(1.5, 0.0),
        to,
        "finger knob".to_owned(),
        Anchor::End,
    );
    let keeper = cut.keeper_rect();
    let at = Point::new(keeper.min.x, keeper.centre().y);
    let left = at - Point::new(LEADER, 0.0);
    name(
        cut,
        items,
        at + Point::new(1.5, 0.0),
        left,
        "keeper".to_owned(),
        Anchor::End,
    );
    let row = cut.floor() - LEADER - cut.letters / 2.0;
    let end = |x: f64, words: &str, anchor| {
        Item::text(
            Layer::Notes,
            Ink::Note,
            Text::new(Point::new(x, row), words, cut.letters).anchored(anchor),
        )
    };
    items.push(end(left.x - AIR, "front", Anchor::End));
    items.push(end(column.x + AIR, "hinge", Anchor::Start));
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
                    assert_eq!(spaces.len(), 10);
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
