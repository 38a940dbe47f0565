//! A disc as the maker sees it from the back of the plate, its post in the knob's star above it, with the label
//! each seat is for.

use core::f64::consts::{PI, TAU};

use latchwright_geometry::{Point, trig};
use latchwright_model::key::inner_corner_ratio;
use latchwright_model::slot::mouths;
use latchwright_model::{Dial, Labels};

use crate::dial::extent;
use crate::disc::disc_outlines;
use crate::drawing::Drawing;
use crate::item::{Item, Layer};
use crate::outline::Outline;
use crate::picture::picture;
use crate::shape::Text;
use crate::style::Ink;
use latchwright_geometry::Rect;

/// The disc's radius on the drawing, mm, whatever its true size: labels need the same room.
const RADIUS: f64 = 13.0;
/// From the rim to the labels, mm.
const GAP: f64 = 1.8;
/// Type, mm, from the largest.
const TYPES: [f64; 3] = [3.2, 2.6, 2.0];
/// Letters of a label that are written.
const LETTERS: usize = 8;
/// Marks that are looked at.
const MOST: u32 = 360;

/// The disc of `dial` seen from the back, hinge at the top, pointer at mark 0, put on for
/// `mark`; drawn to no scale, about its own centre, millimetres of paper.
///
/// Round the disc stand the labels, clockwise from the front, each where the true slot has to point for
/// it. A mark that the dial lacks is taken round. The true slot is filled. Post and star lie behind the disc.
pub fn disc_from_back(dial: &Dial, mark: u32) -> Drawing {
    let dial = &drawable(dial);
    let mark = mark % dial.positions;
    // Seen from outside the slot stands anticlockwise of the front: from the back that is clockwise.
    let turn_deg = -f64::from(mark) * dial.step_deg();
    let mut drawing = Drawing::new(Rect::about(Point::default(), 2.0 * RADIUS, 2.0 * RADIUS));
    for outline in disc_outlines(dial, turn_deg) {
        drawing.items.push(Item::area(
            Layer::Below,
            Ink::Part,
            Some(Ink::Outline),
            outline,
        ));
    }
    drawing.items.extend(true_slot(dial, turn_deg));
    drawing
        .items
        .push(Item::stroke(Layer::Marks, Ink::Unseen, star(dial)));
    drawing.items.push(Item::stroke(
        Layer::Marks,
        Ink::Unseen,
        post(dial, turn_deg),
    ));
    let mut image = drawing.mirrored(0.0);
    image.items.extend(labels(dial, mark));
    let around = extent(&image.items).unwrap_or(image.bounds);
    let space = |y: f64, words: &str| {
        Item::text(
            Layer::Notes,
            Ink::Note,
            Text::new(Point::new(0.0, y), words, 2.4),
        )
    };
    image.items.extend([
        space(around.max.y + 2.6, "hinge, pointer"),
        space(around.min.y - 2.6, "front, pin"),
    ]);
    image.bounds = extent(&image.items).unwrap_or(around).grown(0.6);
    image
}

/// The dial brought to the drawing's size, with numbers that can be drawn.
fn drawable(dial: &Dial) -> Dial {
    let mut same = dial.clone();
    same.positions = dial.positions.clamp(1, MOST);
    let sound = dial.disc.radius.is_finite() && dial.disc.radius > 1e-3;
    let scale = if sound {
        RADIUS / dial.disc.radius
    } else {
        1.0
    };
    let scaled = |mm: f64| {
        let mm = mm * scale;
        if mm.is_finite() {
            mm.clamp(0.0, 4.0 * RADIUS)
        } else {
            0.0
        }
    };
    same.disc.radius = RADIUS;
    for slot in &mut same.disc.slots {
        slot.width = scaled(slot.width);
        slot.depth = scaled(slot.depth);
        slot.lead_in = scaled(slot.lead_in);
    }
    same.key.sides = dial.key.sides.clamp(3, 36);
    same.key.apothem = scaled(dial.key.apothem).clamp(0.1 * RADIUS, 0.35 * RADIUS);
    same
}

/// A dot in the mouth of the true slot, in plan axes.
fn true_slot(dial: &Dial, turn_deg: f64) -> Option<Item> {
    let mouth = mouths(dial, 0.0).find(|mouth| mouth.slot == 0)?;
    let at = trig::radians(turn_deg + mouth.turn_deg);
    let way = Point::new(-trig::sin(at), -trig::cos(at));
    let radius = (mouth.width / 2.0 - 0.4).clamp(0.6, 2.2);
    Some(Item::circle(
        Layer::Marks,
        Some(Ink::Movable),
        None,
        way * (RADIUS - radius - 0.6),
        radius,
    ))
}

/// The post on the disc, turned with it: a corner towards the hinge where the true slot points to the front.
fn post(dial: &Dial, turn_deg: f64) -> Outline {
    let sides = f64::from(dial.key.sides);
    let reach = dial.key.apothem / trig::cos(PI / sides);
    let first = TAU / 4.0 - trig::radians(turn_deg);
    let corner = |index: u32| Point::at_angle(first + f64::from(index) * TAU / sides) * reach;
    let corners: Vec<Point> = (0..dial.key.sides).map(corner).collect();
    Outline::polygon(&corners)
}

/// The star in the knob: a point for each seat, one towards the hinge.
fn star(dial: &Dial) -> Outline {
    let outer = dial.key.apothem / trig::cos(PI / f64::from(dial.key.sides)) + 0.4;
    let inner = outer * inner_corner_ratio(dial.positions, dial.key.sides);
    let step = TAU / f64::from(dial.positions);
    let first = TAU / 4.0;
    let corner = |index: u32| {
        let radius = if index.is_multiple_of(2) {
            outer
        } else {
            inner
        };
        Point::at_angle(first + f64::from(index) * step / 2.0) * radius
    };
    let corners: Vec<Point> = (0..2 * dial.positions).map(corner).collect();
    Outline::polygon(&corners)
}

/// The labels, clockwise from the front as they are seen, as many as find room; the chosen one always.
fn labels(dial: &Dial, chosen: u32) -> Vec<Item> {
    let size = match dial.positions {
        0..=10 => TYPES[0],
        11..=16 => TYPES[1],
        _ => TYPES[2],
    };
    let mut placed: Vec<(Rect, Vec<Item>)> = Vec::new();
    // The chosen one first, so that another gives way and not it.
    let others = (0..dial.positions).filter(|mark| *mark != chosen);
    for mark in core::iter::once(chosen).chain(others) {
        let (space, items) = label(dial, mark, size, mark == chosen);
        let free = placed
            .iter()
            .all(|(other, _)| !other.overlaps(space.grown(0.3)));
        if free {
            placed.push((space, items));
        }
    }
    let ticks = (0..dial.positions).map(|mark| {
        let way = direction(dial, mark);
        Outline::line(way * (RADIUS + 0.5), way * (RADIUS + GAP - 0.4))
    });
    let ticks = Item::strokes(Layer::Marks, Ink::Faint, ticks.collect());
    let words = placed.into_iter().flat_map(|(_, items)| items);
    core::iter::once(ticks).chain(words).collect()
}

/// Where the true slot points for `mark`, as seen from the back: clockwise from the front.
fn direction(dial: &Dial, mark: u32) -> Point {
    let turn = trig::radians(f64::from(mark) * dial.step_deg());
    Point::new(-trig::sin(turn), -trig::cos(turn))
}

fn label(dial: &Dial, mark: u32, size: f64, heavy: bool) -> (Rect, Vec<Item>) {
    let words = dial.label(mark);
    let way = direction(dial, mark);
    let out = |width: f64, height: f64| {
        let reach = f64::midpoint(width * way.x.abs(), height * way.y.abs());
        way * (RADIUS + GAP + reach)
    };
    let drawn = 1.5 * size;
    if matches!(dial.labels, Labels::Pictures(_))
        && let Some(lines) = picture(&words, out(drawn, drawn), drawn)
    {
        let at = out(drawn, drawn);
        let mut items = vec![Item::strokes(Layer::Marks, Ink::Thin, lines)];
        if heavy {
            items.push(Item::circle(
                Layer::Marks,
                None,
                Some(Ink::Movable),
                at,
                drawn * 0.68,
            ));
        }
        return (Rect::about(at, drawn, drawn), items);
    }
    let words = if words.chars().count() > LETTERS {
        let kept: String = words.chars().take(LETTERS - 1).collect();
        format!("{kept}…")
    } else {
        words
    };
    let flat = Text::new(Point::default(), words.as_str(), size).extent();
    let at = out(flat.width(), flat.height());
    let mut text = Text::new(at, words, size);
    let mut ink = Ink::Note;
    if heavy {
        text = text.bold();
        ink = Ink::Movable;
    }
    let space = text.extent();
    (space, vec![Item::text(Layer::Marks, ink, text)])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::shape::Shape;

    /// Centre of the filled dot in the true slot.
    fn dot(drawing: &Drawing) -> Point {
        let dots = drawing
            .items
            .iter()
            .filter(|item| item.fill == Some(Ink::Movable));
        let mut found = dots.filter_map(|item| match item.shape {
            Shape::Circle { centre, .. } => Some(centre),
            _ => None,
        });
        found.next().expect("a true slot")
    }

    #[test]
    fn from_the_back_the_true_slot_goes_clockwise_from_the_front() {
        let dial = Dial::default();
        // Two of eight marks are a quarter: on paper from the front (down) clockwise to the left.
        let quarter = dot(&disc_from_back(&dial, 2));
        assert!(quarter.x < -5.0 && quarter.y.abs() < 1e-6, "{quarter:?}");
        let none = dot(&disc_from_back(&dial, 0));
        assert!(none.y < -5.0 && none.x.abs() < 1e-6, "{none:?}");
    }

    #[test]
    fn the_chosen_label_stands_where_the_true_slot_points() {
        for positions in [2, 3, 8, 10, 24, 36] {
            for mark in 0..positions {
                let dial = Dial {
                    positions,
                    ..Dial::default()
                };
                let drawing = disc_from_back(&dial, mark);
                let heavy = drawing.items.iter().find_map(|item| match &item.shape {
                    Shape::Text(text) if text.weight == crate::Weight::Bold => Some(text.clone()),
                    _ => None,
                });
                let heavy = heavy.expect("the chosen label");
                assert_eq!(heavy.text, dial.label(mark));
                let (slot, label) = (dot(&drawing), heavy.at);
                let off = slot.cross(label).abs() / (slot.length() * label.length());
                assert!(off < 1e-6 && slot.dot(label) > 0.0, "{positions}, {mark}");
            }
        }
    }

    #[test]
    fn nonsense_gives_a_bounded_drawing() {
        for value in [f64::NAN, f64::INFINITY, -1.0, 0.0, 1e300, 1e-300] {
            let mut dial = Dial::default();
            dial.disc.radius = value;
            dial.key.apothem = value;
            dial.disc.slots[0].width = value;
            dial.positions = 4_000_000;
            dial.key.sides = 0;
            let bounds = disc_from_back(&dial, u32::MAX).bounds;
            assert!(
                (10.0..200.0).contains(&bounds.width()),
                "{value}: {bounds:?}"
            );
        }
    }
}
