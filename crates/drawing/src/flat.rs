//! One flat part to be cut, as plain shapes by what is done with them; as SVG or DXF.

use crate::dxf::dxf;
use crate::item::{Item, Layer};
use crate::outline::Outline;
use crate::palette::Palette;
use crate::rect::Rect;
use crate::shape::Shape;
use crate::style::Ink;
use crate::svg::svg_groups;

/// One flat part, mm, x to the right, y up.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct FlatPart {
    /// The finished edge, closed; further outlines are openings in it.
    pub outline: Vec<Outline>,
    /// What is bored or routed: circles and closed outlines.
    pub holes: Vec<Shape>,
    /// What is marked on the face: lines, circles and words.
    pub marks: Vec<Shape>,
}

impl FlatPart {
    /// The least rectangle around the finished edge; around all where there is none; `None` where
    /// there is nothing.
    pub fn extent(&self) -> Option<Rect> {
        let edge = self.outline.iter().map(Outline::extent);
        let rest = self.holes.iter().chain(&self.marks).map(Shape::extent);
        edge.reduce(Rect::union)
            .or_else(|| rest.reduce(Rect::union))
            .map(Rect::on_grid)
    }

    /// The same part on the grid on which mirrors are exact.
    #[must_use]
    pub fn on_grid(&self) -> Self {
        let all = |shapes: &[Shape]| shapes.iter().map(Shape::on_grid).collect();
        Self {
            outline: self.outline.iter().map(Outline::on_grid).collect(),
            holes: all(&self.holes),
            marks: all(&self.marks),
        }
    }

    /// The part turned over about its own upright middle: a hole at (30, 20) of a part 120 wide goes
    /// to (90, 20). Words stay readable. Twice gives the same part, and the same bytes, if it is on
    /// the grid ([`FlatPart::on_grid`]).
    #[must_use]
    pub fn mirrored(&self) -> Self {
        let Some(extent) = self.extent() else {
            return self.clone();
        };
        let axis = f64::midpoint(extent.min.x, extent.max.x);
        let all = |shapes: &[Shape]| shapes.iter().map(|shape| shape.mirrored(axis)).collect();
        Self {
            outline: self
                .outline
                .iter()
                .map(|line| line.mirrored(axis))
                .collect(),
            holes: all(&self.holes),
            marks: all(&self.marks),
        }
    }

    /// An SVG document as large as the finished edge, with a group for each of `OUTLINE`, `HOLES`
    /// and `MARKS`; arcs are arcs.
    pub fn svg(&self) -> String {
        let nothing = Rect::about(latchwright_geometry::Point::default(), 0.0, 0.0);
        let lines =
            |shapes: &[Shape], ink: Ink| shapes.iter().map(|shape| drawn(shape, ink)).collect();
        let outline = self.outline.iter().cloned();
        let edge = outline.map(|line| Item::stroke(Layer::Wood, Ink::Edge, line));
        let groups = [
            ("OUTLINE", edge.collect()),
            ("HOLES", lines(&self.holes, Ink::Edge)),
            ("MARKS", lines(&self.marks, Ink::Aim)),
        ];
        let bounds = self.on_grid().extent().unwrap_or(nothing);
        svg_groups(bounds, &groups, &Palette::PRINT)
    }

    /// A DXF document in millimetres; see [`dxf()`].
    pub fn dxf(&self) -> String {
        dxf(self)
    }
}

fn drawn(shape: &Shape, ink: Ink) -> Item {
    let words = matches!(shape, Shape::Text(_));
    Item {
        layer: Layer::Marks,
        fill: words.then_some(Ink::Label),
        line: (!words).then_some(ink),
        opacity: 1.0,
        shape: shape.clone(),
        subject: None,
    }
}
