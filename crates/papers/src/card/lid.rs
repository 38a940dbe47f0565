//! The lid on the card: the same drawing that the window shows, in the card's colours.

use latchwright_drawing::{
    Drawing, Ink, Item, Layer, Palette, Rect, Text, lid_card, svg as write_svg,
};
use latchwright_geometry::Point;
use latchwright_solver::model::{Design, Dial};

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
    /// The lid with the dials at the combination, or with nothing of it.
    pub(super) fn of(design: &Design) -> Self {
        let show = design.card.show_combination;
        let digit = |dial| if show { design.digit(dial) } else { 0 };
        let marks: Vec<u32> = (0..design.dials.len()).map(digit).collect();
        let mut drawing = close_cut(lid_card(design, &marks, show));
        if design.dials.len() > 1 {
            let numbers = design
                .dials
                .iter()
                .zip(1..)
                .flat_map(|(dial, number)| numbered(dial, number));
            drawing.items.extend(numbers);
        }
        let aspect = drawing.bounds.width() / drawing.bounds.height();
        Self {
            words: written(&drawing.items),
            svg: write_svg(&drawing, &Palette::LIGHT),
            aspect: aspect.clamp(0.05, 20.0),
        }
    }
}

/// The dial's number in the middle of its knob, by which the steps call it.
fn numbered(dial: &Dial, number: usize) -> [Item; 2] {
    let middle = Point::new(dial.centre.0, dial.centre.1);
    let radius = (dial.knob.diameter / 2.0).clamp(1.0, 200.0);
    // The height of a capital is three quarters of the type's: this keeps inside the hub.
    let size = radius * if number < 10 { 0.4 } else { 0.33 };
    let ground = Item::circle(Layer::Above, Some(Ink::Part), None, middle, radius * 0.22);
    let number = Text::new(middle, number.to_string(), size).bold();
    [ground, Item::text(Layer::Above, Ink::Label, number)]
}

/// The drawing without the empty margin round it: the page brings its own.
fn close_cut(mut drawing: Drawing) -> Drawing {
    let seen = drawing.items.iter().filter(|item| item.opacity > 0.0);
    if let Some(extent) = seen.map(|item| item.shape.extent()).reduce(Rect::union) {
        drawing.bounds = extent.grown(HALF_LINE);
    }
    drawing
}
