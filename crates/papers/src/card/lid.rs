//! The lid on the card: the same drawing that the window shows, in the card's colours.

use latchwright_drawing::{
    Drawing, Ink, Item, Layer, Palette, Rect, Text, hinge, lid_card, lid_dials, svg as write_svg,
};
use latchwright_geometry::Point;
use latchwright_model::{Design, Dial};

use super::round_arrow::round_arrow;
use super::text::DialTurn;
use crate::letters::written;

/// Half the widest line, mm: what a line reaches beyond its own extent.
const HALF_LINE: f64 = 0.35;

/// The picture of the lid.
pub(super) struct Lid {
    /// As SVG.
    pub svg: String,
    /// Width by height.
    pub aspect: f64,
    /// All that is written on it.
    pub words: String,
}

impl Lid {
    /// The lid with the dials at the combination, or with nothing of it, and numbered where there
    /// are several.
    pub(super) fn of(design: &Design) -> Self {
        let mut drawing = drawn(design, design.card.show_combination);
        if design.dials.len() > 1 {
            let dials = design.dials.iter().zip(1..);
            let numbers = dials.flat_map(|(dial, number)| numbered(dial, number));
            drawing.items.extend(numbers);
        }
        Self::from(&drawing)
    }

    /// The lid for those who go by pictures: its hinge drawn, nothing of the combination.
    pub(super) fn portrait(design: &Design) -> Self {
        let half = design.plate.width / 2.0;
        let board = Rect::new(Point::new(-half, 0.0), Point::new(half, design.plate.depth));
        Self::from(&with_hinges(drawn(design, false), board))
    }

    /// Its dials, as large as can be: each where it is turned to, with an arrow that goes there, or with
    /// a question mark on it where the card does not tell.
    pub(super) fn to_set<'a>(
        design: &Design,
        turns: impl IntoIterator<Item = &'a DialTurn>,
    ) -> Self {
        let show = design.card.show_combination;
        let drawing = lid_dials(design, &at_combination(design, show), show);
        let board = drawing.bounds;
        let mut drawing = with_hinges(drawing, board);
        if show {
            let arrows = turns.into_iter().filter_map(|turn| arrow(design, turn));
            drawing.items.extend(arrows);
        } else {
            drawing
                .items
                .extend(design.dials.iter().flat_map(question_mark));
        }
        Self::from(&drawing)
    }

    fn from(drawing: &Drawing) -> Self {
        let aspect = drawing.bounds.width() / drawing.bounds.height();
        Self {
            words: written(&drawing.items),
            svg: write_svg(drawing, &Palette::LIGHT),
            aspect: aspect.clamp(0.05, 20.0),
        }
    }
}

/// The lid without the empty margin round it: the page brings its own.
fn drawn(design: &Design, show: bool) -> Drawing {
    close_cut(lid_card(design, &at_combination(design, show), show))
}

/// The mark of each dial; its first where the card does not tell.
fn at_combination(design: &Design, show: bool) -> Vec<u32> {
    let digit = |dial| if show { design.digit(dial) } else { 0 };
    (0..design.dials.len()).map(digit).collect()
}

/// The dial's number in the middle of its knob, by which the steps call it.
fn numbered(dial: &Dial, number: usize) -> [Item; 2] {
    let (middle, radius) = knob(dial);
    // The height of a capital is three quarters of the type's: this keeps inside the hub.
    let size = radius * if number < 10 { 0.4 } else { 0.33 };
    let ground = Item::circle(Layer::Above, Some(Ink::Part), None, middle, radius * 0.22);
    let number = Text::new(middle, number.to_string(), size).bold();
    [ground, Item::text(Layer::Above, Ink::Label, number)]
}

fn question_mark(dial: &Dial) -> [Item; 2] {
    let (middle, radius) = knob(dial);
    let ground = Item::circle(Layer::Above, Some(Ink::Part), None, middle, radius * 0.7);
    let mark = Text::new(middle, "?", radius * 1.2).bold();
    [ground, Item::text(Layer::Above, Ink::Movable, mark)]
}

/// From the hinge to where the dial's pointer ends, on the knob outside its hub.
fn arrow(design: &Design, turn: &DialTurn) -> Option<Item> {
    let (middle, radius) = knob(design.dials.get(turn.dial)?);
    let outline = round_arrow(middle, radius * 0.78, turn.angle())?;
    Some(Item::area(Layer::Notes, Ink::Label, None, outline))
}

fn knob(dial: &Dial) -> (Point, f64) {
    let middle = Point::new(dial.centre.0, dial.centre.1);
    let radius = dial.knob.diameter / 2.0;
    // What is no number falls through the limits.
    let radius = if radius.is_nan() { 1.0 } else { radius };
    (middle, radius.clamp(1.0, 200.0))
}

/// Two hinges at the back edge of `board`, which the drawing shows.
fn with_hinges(mut drawing: Drawing, board: Rect) -> Drawing {
    let width = board.width();
    let (leaf, pin) = (width * 0.2, (width * 0.022).min(board.height() * 0.05));
    for side in [-1.0, 1.0] {
        let middle = Point::new(
            board.centre().x + side * width * 0.27,
            board.max.y + pin / 2.0,
        );
        drawing.items.extend(hinge(middle, leaf, pin));
    }
    close_cut(drawing)
}

fn close_cut(mut drawing: Drawing) -> Drawing {
    let seen = drawing.items.iter().filter(|item| item.opacity > 0.0);
    if let Some(extent) = seen.map(|item| item.shape.extent()).reduce(Rect::union) {
        drawing.bounds = extent.grown(HALF_LINE);
    }
    drawing
}
