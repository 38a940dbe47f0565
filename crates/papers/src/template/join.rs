//! What is drawn on a tile so that it can be joined to its neighbours.

use latchwright_drawing::{Drawing, Ink, Item, Layer, Outline, Rect, Text};
use latchwright_geometry::Point;
use latchwright_workshop::tiles::{JoinMark, Tile};

use super::clear::covered_by;

/// How far a mark's cross reaches to each side, mm.
const REACH: f64 = 4.0;
/// Half the diagonal of the square about it, which no hole has, mm.
const SQUARE: f64 = 2.2;
/// Size of type of the labels, mm.
const TYPE: f64 = 2.4;

/// Adds the joining marks with their labels, and the line to cut along at each edge with a
/// neighbour to the right or below, whose sheet lies on top.
pub(super) fn mark(drawing: &mut Drawing, tile: &Tile) {
    let window = tile.window;
    let mut added = Vec::new();
    for mark in &tile.marks {
        added.extend(cross(mark.at));
        let label = label(&drawing.items, &added, mark, window);
        added.push(Item::text(Layer::Notes, Ink::Label, label));
    }
    let [low_left, low_right, high_right, high_left] = window.grown(-0.1).corners();
    let edges = [
        (&tile.left, low_left, high_left),
        (&tile.right, low_right, high_right),
        (&tile.above, high_left, high_right),
        (&tile.below, low_left, low_right),
    ];
    for (neighbour, from, to) in edges {
        if neighbour.is_some() {
            added.push(Item::stroke(
                Layer::Notes,
                Ink::Aim,
                Outline::line(from, to),
            ));
        }
    }
    drawing.items.extend(added);
}

fn cross(at: Point) -> [Item; 3] {
    let line = |way: Point| {
        let outline = Outline::line(at - way, at + way);
        Item::stroke(Layer::Notes, Ink::Edge, outline)
    };
    let corner = |x: f64, y: f64| at + Point::new(x, y) * SQUARE;
    let square = Outline::polygon(&[
        corner(1.0, 0.0),
        corner(0.0, 1.0),
        corner(-1.0, 0.0),
        corner(0.0, -1.0),
    ]);
    [
        line(Point::new(REACH, 0.0)),
        line(Point::new(0.0, REACH)),
        Item::stroke(Layer::Notes, Ink::Edge, square),
    ]
}

/// The label beside its mark where it covers least.
fn label(drawn: &[Item], added: &[Item], mark: &JoinMark, window: Rect) -> Text {
    let half = REACH + 1.8;
    let ways = [
        (0.0, -half),
        (0.0, half),
        (REACH + 7.5, 0.0),
        (-REACH - 7.5, 0.0),
        (8.0, -3.0),
        (-8.0, -3.0),
        (8.0, 3.0),
        (-8.0, 3.0),
        (0.0, -half - 4.0),
        (0.0, half + 4.0),
    ];
    let texts = ways.map(|(x, y)| {
        let at = mark.at + Point::new(x, y);
        Text::new(at, mark.label.as_str(), TYPE).bold()
    });
    let cost = |text: &Text| {
        let space = text.extent().grown(0.6);
        let outside = if window.grown(-0.5).holds(space) {
            0
        } else {
            100_000
        };
        outside + covered_by(drawn.iter().chain(added), space)
    };
    let mut best = (usize::MAX, &texts[0]);
    for text in &texts {
        let cost = cost(text);
        if cost < best.0 {
            best = (cost, text);
        }
    }
    best.1.clone()
}

#[cfg(test)]
mod tests {
    use super::*;
    use latchwright_drawing::Shape;

    #[test]
    fn a_label_keeps_clear_of_words_that_stand_there() {
        let window = Rect::about(Point::default(), 100.0, 100.0);
        let mark = JoinMark {
            at: Point::new(1.0, 2.0),
            label: "A1–A2 a".to_owned(),
        };
        let free = label(&[], &[], &mark, window);
        let words = Item::text(Layer::Notes, Ink::Note, Text::new(free.at, "keeper", 3.0));
        let moved = label(core::slice::from_ref(&words), &[], &mark, window);
        let Shape::Text(words) = &words.shape else {
            panic!("words")
        };
        assert!(!moved.overlaps(words));
        assert!(window.holds(moved.extent()));
    }
}
