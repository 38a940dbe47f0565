//! One flat part to be cut, as plain shapes by what is done with them; as SVG or DXF.

use crate::dxf::dxf;
use crate::item::{Item, Layer};
use crate::mirror::rect_on_grid;
use crate::number::number;
use crate::outline::Outline;
use crate::palette::Palette;
use crate::shape::{Anchor, Shape, Text};
use crate::style::Ink;
use crate::svg::svg_groups;
use crate::text::text_width;
use latchwright_geometry::{Point, Rect};

/// Size of type of the caption, mm.
const CAPTION: f64 = 4.0;
/// From one line of the caption to the next, mm.
const PITCH: f64 = 6.0;
/// From the part down to the line to check the scale by, mm.
const BELOW: f64 = 15.0;
/// Length of that line, mm.
const SCALE: f64 = 100.0;

/// What is done from one face, short of right through. Depths and diameters are mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Cut {
    /// A hole so deep from the face that lies up.
    Blind(f64),
    /// An area that is lowered so deep from the face that lies up.
    Pocket(f64),
    /// A countersink to this diameter in the face that lies up.
    Countersink(f64),
    /// A countersink to this diameter in the other face.
    CountersinkBelow(f64),
}

/// One shape that is worked from one face.
#[derive(Debug, Clone, PartialEq)]
pub struct Worked {
    /// What is done.
    pub cut: Cut,
    /// Where.
    pub shape: Shape,
}

impl Cut {
    /// The layer or group that it stands on, such as `BLIND_6_5_MM`; a layer of release 12 has no point in its name.
    pub fn layer(self) -> String {
        let mm = |depth: f64| {
            number((depth * 100.0).round() / 100.0)
                .replace('.', "_")
                .replace('-', "")
        };
        match self {
            Self::Blind(depth) => format!("BLIND_{}_MM", mm(depth)),
            Self::Pocket(depth) => format!("POCKET_{}_MM", mm(depth)),
            Self::Countersink(to) => format!("COUNTERSINK_TO_{}_MM", mm(to)),
            Self::CountersinkBelow(to) => format!("COUNTERSINK_BELOW_TO_{}_MM", mm(to)),
        }
    }
}

/// One flat part, mm, x to the right, y up.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct FlatPart {
    /// The finished edge, closed; further outlines are openings in it.
    pub outline: Vec<Outline>,
    /// What is bored or sawn right through: circles and closed outlines.
    pub holes: Vec<Shape>,
    /// What is worked from one face.
    pub worked: Vec<Worked>,
    /// What is marked on the face: lines, circles and words.
    pub marks: Vec<Shape>,
    /// Name of the part, which face lies up: a line each, written below the part.
    pub caption: Vec<String>,
}

impl FlatPart {
    /// The least rectangle around the finished edge; around all where there is none; `None` where
    /// there is nothing.
    pub fn extent(&self) -> Option<Rect> {
        let edge = self.outline.iter().map(Outline::extent);
        let worked = self.worked.iter().map(|worked| &worked.shape);
        let rest = self
            .holes
            .iter()
            .chain(worked)
            .chain(&self.marks)
            .map(Shape::extent);
        edge.reduce(Rect::union)
            .or_else(|| rest.reduce(Rect::union))
            .map(rect_on_grid)
    }

    /// The same part on the grid on which mirrors are exact.
    #[must_use]
    pub fn on_grid(&self) -> Self {
        let all = |shapes: &[Shape]| shapes.iter().map(Shape::on_grid).collect();
        Self {
            outline: self.outline.iter().map(Outline::on_grid).collect(),
            holes: all(&self.holes),
            worked: self.each_worked(Shape::on_grid),
            marks: all(&self.marks),
            caption: self.caption.clone(),
        }
    }

    fn each_worked(&self, to: impl Fn(&Shape) -> Shape) -> Vec<Worked> {
        let worked = self.worked.iter();
        worked
            .map(|worked| Worked {
                cut: worked.cut,
                shape: to(&worked.shape),
            })
            .collect()
    }

    /// The layers of what is worked from one face, each once, in order of the first shape on each.
    pub(crate) fn worked_layers(&self) -> Vec<(String, Vec<&Shape>)> {
        let mut layers: Vec<(String, Vec<&Shape>)> = Vec::new();
        for worked in &self.worked {
            let name = worked.cut.layer();
            match layers.iter_mut().find(|(known, _)| *known == name) {
                Some((_, shapes)) => shapes.push(&worked.shape),
                None => layers.push((name, vec![&worked.shape])),
            }
        }
        layers
    }

    /// The line to check the scale by, with its ticks and label, below a part of `extent`.
    pub(crate) fn scale(extent: Rect) -> Vec<Shape> {
        let foot = Point::new(extent.min.x, extent.min.y - BELOW);
        let end = foot + Point::new(SCALE, 0.0);
        let tick = Point::new(0.0, 2.0);
        let line = |from: Point, to: Point| Shape::path(Outline::line(from, to));
        let label = Text::new(foot + Point::new(SCALE / 2.0, 4.0), "100 mm", CAPTION);
        vec![
            line(foot, end),
            line(foot - tick, foot + tick),
            line(end - tick, end + tick),
            Shape::Text(label),
        ]
    }

    /// The caption's lines, below that.
    pub(crate) fn notes(&self, extent: Rect) -> Vec<Shape> {
        let top = Point::new(extent.min.x, extent.min.y - BELOW - PITCH);
        let lines = (0_u32..).zip(&self.caption);
        lines
            .map(|(index, line)| {
                let at = top - Point::new(0.0, PITCH * f64::from(index));
                Shape::Text(Text::new(at, line.as_str(), CAPTION).anchored(Anchor::Start))
            })
            .collect()
    }

    /// What the part takes up on a sheet, line to check the scale by and caption included.
    pub(crate) fn sheet(&self, extent: Rect) -> Rect {
        let lines = u32::try_from(self.caption.len()).unwrap_or(u32::MAX);
        let wide = self.caption.iter().map(|line| text_width(line, CAPTION));
        let right = wide.fold(SCALE + 2.0, f64::max).max(extent.width());
        let foot = extent.min.y - BELOW - PITCH * (f64::from(lines) + 0.5);
        extent.union(Rect::new(
            Point::new(extent.min.x, foot),
            Point::new(extent.min.x + right, extent.max.y),
        ))
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
            worked: self.each_worked(|shape| shape.mirrored(axis)),
            marks: all(&self.marks),
            caption: self.caption.clone(),
        }
    }

    /// An SVG document with a group for each of `OUTLINE`, `THROUGH`, what is worked from one face ([`Cut::layer`]),
    /// `MARKS`, `NOTES` and `SCALE_100_MM`; arcs are arcs. The part is at its upper left, the line to check the scale
    /// by and the caption below it.
    pub fn svg(&self) -> String {
        let nothing = Rect::about(latchwright_geometry::Point::default(), 0.0, 0.0);
        let lines =
            |shapes: &[Shape], ink: Ink| shapes.iter().map(|shape| drawn(shape, ink)).collect();
        let outline = self.outline.iter().cloned();
        let edge = outline.map(|line| Item::stroke(Layer::Wood, Ink::Edge, line));
        let extent = self.on_grid().extent().unwrap_or(nothing);
        let (notes, scale) = (self.notes(extent), Self::scale(extent));
        let worked = self.worked_layers();
        let mut groups: Vec<(&str, Vec<Item>)> = vec![
            ("OUTLINE", edge.collect()),
            ("THROUGH", lines(&self.holes, Ink::Edge)),
        ];
        for (name, shapes) in &worked {
            let items = shapes.iter().map(|shape| drawn(shape, Ink::Edge));
            groups.push((name, items.collect()));
        }
        groups.push(("MARKS", lines(&self.marks, Ink::Aim)));
        groups.push(("NOTES", lines(&notes, Ink::Aim)));
        groups.push(("SCALE_100_MM", lines(&scale, Ink::Aim)));
        svg_groups(self.sheet(extent), &groups, &Palette::PRINT)
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
