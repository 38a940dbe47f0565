//! A board with what is cut from it, drawn to scale on paper.

use latchwright_drawing::{Anchor, Drawing, Ink, Item, Layer, Outline, Rect, Text, text_width};
use latchwright_geometry::Point;

use super::{BoardLayout, Piece};
use crate::inch::Rule;
use crate::parts::Role;

/// Size of type on paper, mm.
const TYPE: f64 = 2.8;
/// Smallest type that is still read, mm.
const SMALL: f64 = 1.8;

/// `layout` as a drawing that is `width` mm wide on paper: the board, its trimmed ends, and every piece
/// with its name and rough size where that finds room, names over the piece or beside the strip where not.
///
/// The type is as large as on paper; the drawing itself is scaled. A board without a size is an empty
/// sheet.
pub fn board_drawing(layout: &BoardLayout, width: f64, rule: Rule) -> Drawing {
    let board = &layout.board;
    let sound = |mm: f64| mm.is_finite() && mm > 0.0;
    if !(sound(board.length) && sound(board.width) && sound(width)) {
        return Drawing::new(Rect::about(Point::default(), 0.0, 0.0));
    }
    let scale = width / board.length;
    let at = |x: f64, y: f64| Point::new(x * scale, y * scale);
    let all = Rect::new(at(0.0, 0.0), at(board.length, board.width));
    let mut drawing = Drawing::new(all);
    let outline = Outline::rectangle(all);
    drawing.items.push(Item::area(
        Layer::Wood,
        Ink::Wood,
        Some(Ink::Outline),
        outline,
    ));
    let trim = layout.end_trim.clamp(0.0, board.length / 2.0);
    for (from, to) in [(0.0, trim), (board.length - trim, board.length)] {
        if to > from {
            drawing
                .items
                .extend(waste(Rect::new(at(from, 0.0), at(to, board.width))));
        }
    }
    let place = |piece: &Piece| {
        let far = at(piece.x + piece.width, piece.y + piece.height);
        Rect::new(at(piece.x, piece.y), far)
    };
    let mut taken: Vec<Rect> = layout.pieces().map(place).collect();
    let mut words = Vec::new();
    for strip in &layout.strips {
        let mut unnamed: Vec<&Role> = Vec::new();
        for piece in &strip.pieces {
            let area = place(piece);
            let outline = Outline::rectangle(area);
            let face = Item::area(Layer::Below, Ink::DeepWood, Some(Ink::Thin), outline);
            drawing.items.push(face);
            let mut label = label(area, piece, rule);
            if label.is_empty() {
                let name = piece.part.name();
                label.extend(above(all, &taken, area, &name));
            }
            if label.is_empty() && !unnamed.contains(&&piece.part) {
                unnamed.push(&piece.part);
            }
            // What stands outside its piece is in the way of the next.
            taken.extend(label.iter().map(|item| item.shape.extent()));
            words.extend(label);
        }
        if let Some(last) = strip.pieces.last() {
            let names: Vec<String> = unnamed.iter().map(|part| part.name()).collect();
            let beside = beside(all, &taken, place(last), &names.join(", "));
            taken.extend(beside.iter().map(|item| item.shape.extent()));
            words.extend(beside);
        }
    }
    drawing.items.extend(words);
    drawing
}

/// A name over its piece, where its strip is wider than the piece and that is free.
fn above(all: Rect, taken: &[Rect], area: Rect, name: &str) -> Option<Item> {
    let y = area.max.y + SMALL * 0.7;
    let ways = [
        (area.centre().x, Anchor::Middle),
        (area.min.x, Anchor::Start),
        (area.max.x, Anchor::End),
    ];
    let text = |(x, anchor)| Text::new(Point::new(x, y), name, SMALL).anchored(anchor);
    let free = |text: &Text| {
        let extent = text.extent();
        all.holds(extent) && taken.iter().all(|piece| !piece.overlaps(extent))
    };
    let text = ways.into_iter().map(text).find(free)?;
    Some(Item::text(Layer::Notes, Ink::Label, text))
}

/// Names that found no room on their pieces, to the right of the strip where that is free.
fn beside(all: Rect, taken: &[Rect], last: Rect, names: &str) -> Option<Item> {
    if names.is_empty() {
        return None;
    }
    // Lower than its middle where the strip is too near the board's edge.
    let half = TYPE * 0.65;
    let y = last.centre().y.min(all.max.y - half).max(all.min.y + half);
    let at = Point::new(last.max.x + 1.5, y);
    let text = Text::new(at, names, TYPE).anchored(Anchor::Start);
    let free = all.holds(text.extent()) && taken.iter().all(|piece| !piece.overlaps(text.extent()));
    free.then(|| Item::text(Layer::Notes, Ink::Label, text))
}

/// What falls away: strokes from corner to corner, no colour needed.
fn waste(area: Rect) -> [Item; 2] {
    let [a, b, c, d] = area.corners();
    let lines = vec![Outline::line(a, c), Outline::line(b, d)];
    [
        Item::stroke(Layer::Below, Ink::Thin, Outline::rectangle(area)),
        Item::strokes(Layer::Below, Ink::Hatch, lines),
    ]
}

/// The words of a piece, as many as its area takes.
fn label(area: Rect, piece: &Piece, rule: Rule) -> Vec<Item> {
    let space = Rect::about(area.centre(), area.width() - 1.0, area.height() - 0.6);
    let upright = area.height() > area.width();
    let (long, short) = if upright {
        (space.height(), space.width())
    } else {
        (space.width(), space.height())
    };
    let size = format!("{} × {}", rule.say(piece.width), rule.say(piece.height));
    let name = piece.part.name();
    let ways = [
        (vec![name.as_str(), size.as_str()], TYPE),
        (vec![name.as_str(), size.as_str()], SMALL),
        (vec![name.as_str()], TYPE),
        (vec![name.as_str()], SMALL),
    ];
    let fits = |(lines, height): &(Vec<&str>, f64)| {
        let wide = lines
            .iter()
            .map(|line| text_width(line, *height))
            .fold(0.0, f64::max);
        wide <= long && lines.len() as f64 * height * 1.25 <= short
    };
    let Some((lines, height)) = ways.into_iter().find(fits) else {
        return Vec::new();
    };
    let middle = (lines.len() as f64 - 1.0) / 2.0;
    let mut items = Vec::new();
    for (index, line) in lines.into_iter().enumerate() {
        let down = (middle - index as f64) * height * 1.25;
        let shift = if upright {
            Point::new(-down, 0.0)
        } else {
            Point::new(0.0, down)
        };
        let mut text = Text::new(area.centre() + shift, line, height);
        text.turned_deg = if upright { 90.0 } else { 0.0 };
        items.push(Item::text(Layer::Notes, Ink::Label, text));
    }
    items
}
