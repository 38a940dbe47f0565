//! The fourth corner of the square of 100 mm lies among the drawings: what is moved out of its way.

use latchwright_drawing::Rect;
use latchwright_geometry::Point;

use super::clear::covered_by;
use super::layout::{Page, ZERO};

/// Length of the corner's two strokes, mm.
pub(super) const STROKE: f64 = 3.5;
/// Clear distance about them, mm.
const AIR: f64 = 0.4;
/// How far drawings are moved at a time, mm.
const STEP: f64 = 1.0;
/// How often at most.
const STEPS: u32 = 40;
/// The ways to move, and the ways the strokes can run: −1 or 1 to the right and up.
const WAYS: [(f64, f64); 8] = [
    (0.0, -1.0),
    (0.0, 1.0),
    (-1.0, 0.0),
    (1.0, 0.0),
    (-1.0, -1.0),
    (1.0, 1.0),
    (-1.0, 1.0),
    (1.0, -1.0),
];
const STROKES: [(f64, f64); 4] = [(-1.0, -1.0), (1.0, 1.0), (1.0, -1.0), (-1.0, 1.0)];

/// Moves the drawings of `page` together, as little as can be and within `room` (left, top, right,
/// bottom, mm from the content's upper left), until the corner of the square meets none of their words
/// and lines; turns the corner's strokes where that helps more. Where neither does, least is covered.
pub(super) fn keep_clear(page: &mut Page<'_>, space: [f64; 4]) {
    let slack = slack(page, space);
    let moves = (1..=STEPS).flat_map(|step| {
        WAYS.map(|(x, y)| (x * STEP * f64::from(step), y * STEP * f64::from(step)))
    });
    let allowed =
        |(x, y): &(f64, f64)| *x >= slack[0] && *y >= slack[1] && *x <= slack[2] && *y <= slack[3];
    let mut best = (usize::MAX, (0.0, 0.0), STROKES[0]);
    for by in core::iter::once((0.0, 0.0)).chain(moves.filter(allowed)) {
        for strokes in STROKES {
            let covered = covered(page, by, strokes);
            if covered < best.0 {
                best = (covered, by, strokes);
            }
        }
        if best.0 == 0 {
            break;
        }
    }
    let (_, by, strokes) = best;
    for piece in &mut page.pieces {
        piece.at.0 += by.0;
        piece.at.1 += by.1;
    }
    page.strokes = strokes;
}

/// How far all drawings together can go to the left (below 0), up, right and down.
fn slack(page: &Page<'_>, [left, top, right, bottom]: [f64; 4]) -> [f64; 4] {
    let mut slack = [
        f64::NEG_INFINITY,
        f64::NEG_INFINITY,
        f64::INFINITY,
        f64::INFINITY,
    ];
    for piece in &page.pieces {
        let (x, y) = piece.at;
        let (width, height) = (piece.drawing.bounds.width(), piece.drawing.bounds.height());
        slack = [
            slack[0].max(left - x),
            slack[1].max(top - y),
            slack[2].min(right - x - width),
            slack[3].min(bottom - y - height),
        ];
    }
    slack
}

/// What the strokes would cover if all drawings were moved `by`.
fn covered(page: &Page<'_>, by: (f64, f64), (right, up): (f64, f64)) -> usize {
    let corner = (ZERO.0 + 100.0, page.content.1 - ZERO.1 - 100.0);
    let pieces = page.pieces.iter().map(|piece| {
        let bounds = piece.drawing.bounds;
        // On the page y runs down, in the drawing up.
        let at = Point::new(
            bounds.min.x + corner.0 - piece.at.0 - by.0,
            bounds.max.y - (corner.1 - piece.at.1 - by.1),
        );
        let middle = at + Point::new(right, up) * (STROKE / 2.0);
        let space = Rect::about(middle, STROKE, STROKE).grown(AIR);
        if bounds.overlaps(space) {
            covered_by(&piece.drawing.items, space)
        } else {
            0
        }
    });
    pieces.sum()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::template::layout::Piece;
    use latchwright_drawing::{Drawing, Ink, Item, Layer, Text};

    /// A page whose only words stand where the corner is.
    fn page(words_at: (f64, f64)) -> Page<'static> {
        let mut drawing = Drawing::new(Rect::about(Point::default(), 60.0, 60.0));
        let text = Text::new(Point::default(), "words that are read", 3.0);
        drawing
            .items
            .push(Item::text(Layer::Notes, Ink::Note, text));
        Page {
            paper: (210.0, 297.0),
            content: (190.0, 277.0),
            corner: (10.0, 10.0),
            pieces: vec![Piece {
                file: String::new(),
                at: (words_at.0 - 30.0, words_at.1 - 30.0),
                drawing,
                described: String::new(),
            }],
            shown: Vec::new(),
            tile: None,
            strokes: STROKES[0],
        }
    }

    #[test]
    fn the_corner_never_stands_on_words_that_can_be_moved() {
        let corner = (ZERO.0 + 100.0, 277.0 - ZERO.1 - 100.0);
        for off in [0.0, 0.5, 1.0] {
            let mut page = page((corner.0 + off, corner.1 + off));
            assert!(covered(&page, (0.0, 0.0), STROKES[0]) > 0);
            keep_clear(&mut page, [0.0, 0.0, 190.0, 277.0]);
            assert_eq!(covered(&page, (0.0, 0.0), page.strokes), 0);
        }
    }

    #[test]
    fn drawings_never_leave_their_room() {
        let corner = (ZERO.0 + 100.0, 277.0 - ZERO.1 - 100.0);
        let mut page = page(corner);
        let (x, y) = page.pieces[0].at;
        keep_clear(&mut page, [x, y, x + 60.0, y + 60.0]);
        assert_eq!(page.pieces[0].at, (x, y));
    }
}
