//! One thing on a drawing, and what it is for.

use latchwright_geometry::Point;

use crate::outline::Outline;
use crate::shape::{Shape, Text};
use crate::style::Ink;

/// Where an item belongs, in the order in which layers are painted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Layer {
    /// The plate itself, and what a section cuts.
    Wood,
    /// Below the plate: discs, pins, slider, tab, keeper.
    Below,
    /// Marks and labels on the plate.
    Marks,
    /// Above the plate: knobs and finger knob.
    Above,
    /// Where something touches, and what is said about it.
    Contact,
    /// Dimensions, leaders and words.
    Notes,
}

/// What an item is, for picking with a pointer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Subject {
    /// The knob of a dial, from 0.
    Dial(usize),
    /// The slider's body.
    Slider,
    /// The finger knob that moves the slider.
    Pull,
    /// The keeper.
    Keeper,
    /// Where the pin of a dial (from 0) is stopped.
    Contact(usize),
}

/// One thing on a drawing. Items are painted in the order of the list.
#[derive(Debug, Clone, PartialEq)]
pub struct Item {
    /// Where it belongs.
    pub layer: Layer,
    /// The role of its area, or of its words; `None` where it has no area.
    pub fill: Option<Ink>,
    /// The role of its line; `None` where it has no line.
    pub line: Option<Ink>,
    /// From 0 (not to be seen, but still to be picked) to 1 (solid).
    pub opacity: f32,
    /// What it looks like.
    pub shape: Shape,
    /// What it is, if it can be picked.
    pub subject: Option<Subject>,
}

impl Item {
    /// A drawn line.
    pub fn stroke(layer: Layer, line: Ink, outline: Outline) -> Self {
        Self::new(layer, None, Some(line), Shape::path(outline))
    }

    /// Several lines of one role, as one item.
    pub fn strokes(layer: Layer, line: Ink, outlines: Vec<Outline>) -> Self {
        Self::new(layer, None, Some(line), Shape::Path { outlines })
    }

    /// A filled area, with or without a line round it.
    pub fn area(layer: Layer, fill: Ink, line: Option<Ink>, outline: Outline) -> Self {
        Self::new(layer, Some(fill), line, Shape::path(outline))
    }

    /// A circle.
    pub fn circle(
        layer: Layer,
        fill: Option<Ink>,
        line: Option<Ink>,
        centre: Point,
        radius: f64,
    ) -> Self {
        Self::new(layer, fill, line, Shape::Circle { centre, radius })
    }

    /// Words.
    pub fn text(layer: Layer, ink: Ink, text: Text) -> Self {
        Self::new(layer, Some(ink), None, Shape::Text(text))
    }

    fn new(layer: Layer, fill: Option<Ink>, line: Option<Ink>, shape: Shape) -> Self {
        Self {
            layer,
            fill,
            line,
            opacity: 1.0,
            shape,
            subject: None,
        }
    }

    /// The same item, seen through to `opacity` (0 to 1).
    #[must_use]
    pub fn faded(mut self, opacity: f64) -> Self {
        #[expect(
            clippy::cast_possible_truncation,
            reason = "an opacity needs no more than a screen shows"
        )]
        let opacity = opacity.clamp(0.0, 1.0) as f32;
        self.opacity = opacity;
        self
    }

    /// The same item, to be picked as `subject`.
    #[must_use]
    pub fn picked_as(mut self, subject: Subject) -> Self {
        self.subject = Some(subject);
        self
    }
}
