//! A flat part as DXF: release 12, ASCII, the form that most programs read.
//!
//! # Source
//! The published reference of the format for release 12: header, tables, entities, polylines with
//! bulges. The unit code `$INSUNITS` is of a later release: readers of release 12 pass over variables
//! that they do not know, others look for the unit there. From memory.

use core::f64::consts::{PI, TAU};
use core::fmt::{Display, Write as _};

use latchwright_geometry::{Point, trig};

use crate::flat::FlatPart;
use crate::number::{number, ratio};
use crate::outline::{Outline, Segment, Sweep};
use crate::shape::{Anchor, Shape, Text};
use latchwright_geometry::Rect;

/// Finished edges.
const OUTLINE: &str = "OUTLINE";
/// What goes right through.
const THROUGH: &str = "THROUGH";
/// What is marked on the face.
const MARKS: &str = "MARKS";
/// Name of the part and the face that lies up.
const NOTES: &str = "NOTES";
/// The line to check the scale by.
const SCALE: &str = "SCALE_100_MM";
/// The layers of every part with their colour numbers: black or white, red, green, black or white, blue.
const LAYERS: [(&str, u8); 5] = [
    (OUTLINE, 7),
    (THROUGH, 1),
    (MARKS, 3),
    (NOTES, 7),
    (SCALE, 5),
];
/// Colour of the layers of what is worked from one face: magenta.
const WORKED: u8 = 6;

/// `part` as a DXF document of release 12 in millimetres.
///
/// Finished edges and slots are closed polylines whose arcs are true (bulges), round holes are
/// circles. Layers: `OUTLINE`, `THROUGH`, `MARKS`, `NOTES` with the part's name and face, `SCALE_100_MM`
/// with a labelled line of 100 mm below the part, and one for each depth of what is worked from one face
/// ([`crate::Cut::layer`]). Letters beyond ASCII are written as `\U+` and their number. The same part gives
/// the same bytes.
pub fn dxf(part: &FlatPart) -> String {
    let part = part.on_grid();
    let extent = part
        .extent()
        .unwrap_or(Rect::about(Point::default(), 0.0, 0.0));
    let mut out = Writer::default();
    let worked = part.worked_layers();
    header(&mut out, &part, extent);
    tables(&mut out, &worked);
    out.pair(0, "SECTION");
    out.pair(2, "ENTITIES");
    for line in &part.outline {
        polyline(&mut out, OUTLINE, line);
    }
    for shape in &part.holes {
        entity(&mut out, THROUGH, shape);
    }
    for (layer, shapes) in &worked {
        for shape in shapes {
            entity(&mut out, layer, shape);
        }
    }
    for shape in &part.marks {
        entity(&mut out, MARKS, shape);
    }
    for shape in &part.notes(extent) {
        entity(&mut out, NOTES, shape);
    }
    for shape in &FlatPart::scale(extent) {
        entity(&mut out, SCALE, shape);
    }
    out.pair(0, "ENDSEC");
    out.pair(0, "EOF");
    out.text
}

/// Pairs of group code and value, one a line.
#[derive(Default)]
struct Writer {
    text: String,
}

impl Writer {
    fn pair(&mut self, code: u16, value: impl Display) {
        let _ = write!(self.text, "{code:>3}\r\n{value}\r\n");
    }

    /// A point whose x has the group code `code`.
    fn point(&mut self, code: u16, at: Point) {
        self.pair(code, number(at.x));
        self.pair(code + 10, number(at.y));
        self.pair(code + 20, "0");
    }

    fn begin(&mut self, kind: &str, layer: &str) {
        self.pair(0, kind);
        self.pair(8, layer);
    }
}

fn header(out: &mut Writer, part: &FlatPart, extent: Rect) {
    let shapes = part.holes.iter().chain(&part.marks).map(Shape::extent);
    let all = shapes.fold(part.sheet(extent), Rect::union);
    out.pair(0, "SECTION");
    out.pair(2, "HEADER");
    out.pair(9, "$ACADVER");
    out.pair(1, "AC1009");
    out.pair(9, "$INSUNITS");
    out.pair(70, 4);
    out.pair(9, "$MEASUREMENT");
    out.pair(70, 1);
    out.pair(9, "$EXTMIN");
    out.point(10, all.min);
    out.pair(9, "$EXTMAX");
    out.point(10, all.max);
    out.pair(0, "ENDSEC");
}

fn tables(out: &mut Writer, worked: &[(String, Vec<&Shape>)]) {
    out.pair(0, "SECTION");
    out.pair(2, "TABLES");
    out.pair(0, "TABLE");
    out.pair(2, "LTYPE");
    out.pair(70, 1);
    out.pair(0, "LTYPE");
    out.pair(2, "CONTINUOUS");
    out.pair(70, 0);
    out.pair(3, "Solid line");
    out.pair(72, 65);
    out.pair(73, 0);
    out.pair(40, "0");
    out.pair(0, "ENDTAB");
    out.pair(0, "TABLE");
    out.pair(2, "LAYER");
    let worked = worked.iter().map(|(name, _)| (name.as_str(), WORKED));
    let layers: Vec<(&str, u8)> = LAYERS.into_iter().chain(worked).collect();
    out.pair(70, layers.len());
    for (name, colour) in layers {
        out.pair(0, "LAYER");
        out.pair(2, name);
        out.pair(70, 0);
        out.pair(62, colour);
        out.pair(6, "CONTINUOUS");
    }
    out.pair(0, "ENDTAB");
    out.pair(0, "ENDSEC");
}

fn entity(out: &mut Writer, layer: &str, shape: &Shape) {
    match shape {
        Shape::Path { outlines } => {
            for line in outlines {
                match line.segments.as_slice() {
                    [Segment::Line { to }] if !line.closed => straight(out, layer, line.start, *to),
                    _ => polyline(out, layer, line),
                }
            }
        }
        Shape::Circle { centre, radius } if *radius > 0.0 => {
            out.begin("CIRCLE", layer);
            out.point(10, *centre);
            out.pair(40, number(*radius));
        }
        Shape::Circle { .. } => {}
        Shape::Text(text) => words(out, layer, text),
    }
}

fn straight(out: &mut Writer, layer: &str, from: Point, to: Point) {
    out.begin("LINE", layer);
    out.point(10, from);
    out.point(11, to);
}

fn polyline(out: &mut Writer, layer: &str, line: &Outline) {
    let vertices = vertices(line);
    if vertices.len() < 2 {
        return;
    }
    out.begin("POLYLINE", layer);
    out.pair(66, 1);
    out.point(10, Point::default());
    out.pair(70, u8::from(line.closed));
    for (at, bulge) in vertices {
        out.begin("VERTEX", layer);
        out.point(10, at);
        if bulge != 0.0 {
            out.pair(42, ratio(bulge));
        }
    }
    out.begin("SEQEND", layer);
}

/// Each vertex with the bulge of the step that leaves it: the tangent of a quarter of its turn,
/// counter-clockwise positive. The first vertex of a closed line is not repeated at its end.
fn vertices(line: &Outline) -> Vec<(Point, f64)> {
    let mut vertices = Vec::new();
    let mut at = line.start;
    for segment in &line.segments {
        match *segment {
            Segment::Line { to } => {
                if to != at {
                    vertices.push((at, 0.0));
                }
            }
            Segment::Arc {
                to,
                centre,
                clockwise,
            } => arc(&mut vertices, at, to, centre, clockwise),
        }
        at = segment.to();
    }
    let joined = line.closed && at.distance(line.start) < 1e-6;
    if !joined {
        vertices.push((at, 0.0));
    }
    vertices
}

/// An arc of more than half a turn goes in as two, since its bulge grows without bound.
fn arc(vertices: &mut Vec<(Point, f64)>, from: Point, to: Point, centre: Point, clockwise: bool) {
    let sweep = Sweep::new(from, to, centre, clockwise);
    let parts = if sweep.turn.abs() > PI + 1e-9 { 2 } else { 1 };
    let turn = sweep.turn / f64::from(parts);
    if turn == 0.0 || sweep.radius == 0.0 || turn.abs() >= TAU {
        if to != from {
            vertices.push((from, 0.0));
        }
        return;
    }
    let quarter = turn / 4.0;
    let bulge = trig::sin(quarter) / trig::cos(quarter);
    vertices.push((from, bulge));
    if parts == 2 {
        let middle = centre + Point::at_angle(sweep.from + turn) * sweep.radius;
        vertices.push((middle, bulge));
    }
}

fn words(out: &mut Writer, layer: &str, text: &Text) {
    let safe = plain(&text.text);
    if safe.is_empty() {
        return;
    }
    let across = match text.anchor {
        Anchor::Start => 0,
        Anchor::Middle => 1,
        Anchor::End => 2,
    };
    out.begin("TEXT", layer);
    out.point(10, text.at);
    out.pair(40, number(text.height_mm * Text::CAPITAL));
    out.pair(1, safe);
    if text.turned_deg != 0.0 {
        out.pair(50, number(text.turned_deg));
    }
    // Both alignments count only with a second point.
    out.pair(72, across);
    out.pair(73, 2);
    out.point(11, text.at);
}

/// Words in ASCII on one line, with nothing in them that a reader takes for a command.
fn plain(text: &str) -> String {
    let mut safe = String::new();
    for c in text.chars() {
        match c {
            '\\' => safe.push_str("\\U+005C"),
            '%' => safe.push_str(if safe.ends_with('%') { " %" } else { "%" }),
            ' '..='~' => safe.push(c),
            '\t' | '\n' | '\r' => safe.push(' '),
            c if c.is_control() => {}
            c if u32::from(c) <= 0xffff => {
                let _ = write!(safe, "\\U+{:04X}", u32::from(c));
            }
            _ => safe.push('?'),
        }
    }
    safe
}
