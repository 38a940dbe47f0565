//! A drawing as SVG: true size in millimetres, arcs as arcs, the same bytes for the same drawing.

use core::fmt::Write as _;

use latchwright_geometry::Point;

use crate::drawing::Drawing;
use crate::item::Item;
use crate::number::number;
use crate::outline::{Outline, Segment, Sweep};
use crate::palette::Palette;
use crate::shape::{Anchor, Shape, Text, Weight};
use crate::style::Ink;
use latchwright_geometry::Rect;

/// The drawing as an SVG document whose unit is the millimetre.
///
/// Width, height and view box are the same numbers. The sheet itself stays clear; items that are
/// not to be seen are left out. Text names no font: it takes the family of what it is placed in.
pub fn svg(drawing: &Drawing, palette: &Palette) -> String {
    document(drawing.bounds, palette, |sheet, out| {
        for item in drawing.items.iter().filter(|item| item.opacity > 0.0) {
            sheet.write(out, item);
        }
    })
}

/// The groups of items, each under its name, as an SVG document of `bounds`.
pub(crate) fn svg_groups(bounds: Rect, groups: &[(&str, Vec<Item>)], palette: &Palette) -> String {
    document(bounds, palette, |sheet, out| {
        for (name, items) in groups {
            let _ = writeln!(out, "<g id=\"{}\">", escape(name));
            for item in items {
                sheet.write(out, item);
            }
            out.push_str("</g>\n");
        }
    })
}

fn document(bounds: Rect, palette: &Palette, fill: impl Fn(&Sheet, &mut String)) -> String {
    let (width, height) = (number(bounds.width()), number(bounds.height()));
    let mut out = String::new();
    let _ = writeln!(
        out,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}mm\" height=\"{height}mm\" \
         viewBox=\"0 0 {width} {height}\" font-family=\"Noto Sans, sans-serif\">"
    );
    let sheet = Sheet {
        left: bounds.min.x,
        top: bounds.max.y,
        palette,
    };
    fill(&sheet, &mut out);
    out.push_str("</svg>\n");
    out
}

/// Escapes what XML would take for markup; drops what XML cannot hold.
fn escape(text: &str) -> String {
    let mut safe = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            '"' => safe.push_str("&quot;"),
            '\'' => safe.push_str("&apos;"),
            '\t' | '\n' | '\r' => safe.push(' '),
            '\u{0}'..='\u{1f}' | '\u{fffe}' | '\u{ffff}' => {}
            other => safe.push(other),
        }
    }
    safe
}

/// Where the sheet's upper left corner is, and what the roles look like.
struct Sheet<'a> {
    left: f64,
    top: f64,
    palette: &'a Palette,
}

impl Sheet<'_> {
    fn x(&self, x: f64) -> String {
        number(x - self.left)
    }

    fn y(&self, y: f64) -> String {
        number(self.top - y)
    }

    fn xy(&self, at: Point) -> String {
        format!("{} {}", self.x(at.x), self.y(at.y))
    }

    fn write(&self, out: &mut String, item: &Item) {
        let look = self.look(item);
        let _ = match &item.shape {
            Shape::Path { outlines } if outlines.is_empty() => Ok(()),
            Shape::Path { outlines } => {
                let data: Vec<String> = outlines.iter().map(|line| self.data(line)).collect();
                writeln!(out, "<path d=\"{}\"{look}/>", data.join(" "))
            }
            Shape::Circle { centre, radius } => writeln!(
                out,
                "<circle cx=\"{}\" cy=\"{}\" r=\"{}\"{look}/>",
                self.x(centre.x),
                self.y(centre.y),
                number(radius.max(0.0))
            ),
            Shape::Text(text) => writeln!(out, "{}", self.words(text, &look)),
        };
    }

    /// Fill, line and opacity as attributes.
    fn look(&self, item: &Item) -> String {
        let colour = |ink: Ink| self.palette.colour(ink).hex();
        let mut look = String::new();
        let _ = match item.fill {
            Some(ink) => write!(look, " fill=\"{}\"", colour(ink)),
            None => write!(look, " fill=\"none\""),
        };
        if item.fill.is_some() && matches!(item.shape, Shape::Path { .. }) {
            look.push_str(" fill-rule=\"evenodd\"");
        }
        if let Some(ink) = item.line {
            let stroke = ink.stroke();
            let _ = write!(
                look,
                " stroke=\"{}\" stroke-width=\"{}\"",
                colour(ink),
                number(stroke.width)
            );
            look.push_str(" stroke-linecap=\"round\" stroke-linejoin=\"round\"");
            if !stroke.dash.is_empty() {
                let dash: Vec<String> = stroke.dash.iter().copied().map(number).collect();
                let _ = write!(look, " stroke-dasharray=\"{}\"", dash.join(" "));
            }
        }
        if item.opacity < 1.0 {
            let _ = write!(look, " opacity=\"{}\"", number(f64::from(item.opacity)));
        }
        look
    }

    /// The `d` of one line.
    fn data(&self, line: &Outline) -> String {
        let mut data = format!("M {}", self.xy(line.start));
        let mut at = line.start;
        for segment in &line.segments {
            let _ = match *segment {
                Segment::Line { to } => write!(data, " L {}", self.xy(to)),
                Segment::Arc {
                    to,
                    centre,
                    clockwise,
                } => {
                    let sweep = Sweep::new(at, to, centre, clockwise);
                    let large = u8::from(sweep.turn.abs() > core::f64::consts::PI);
                    let radius = number(sweep.radius);
                    // Clockwise as seen is a positive turn where y points down.
                    let way = u8::from(clockwise);
                    write!(data, " A {radius} {radius} 0 {large} {way} {}", self.xy(to))
                }
            };
            at = segment.to();
        }
        if line.closed {
            data.push_str(" Z");
        }
        data
    }

    fn words(&self, text: &Text, look: &str) -> String {
        let down = text.height_mm * Text::CAPITAL / 2.0;
        let anchor = match text.anchor {
            Anchor::Start => "start",
            Anchor::Middle => "middle",
            Anchor::End => "end",
        };
        let weight = if text.weight == Weight::Bold {
            " font-weight=\"700\""
        } else {
            ""
        };
        let (x, y) = (self.x(text.at.x), self.y(text.at.y));
        let turn = if text.turned_deg == 0.0 {
            String::new()
        } else {
            format!(
                " transform=\"rotate({} {x} {y})\"",
                number(-text.turned_deg)
            )
        };
        format!(
            "<text x=\"{x}\" y=\"{}\" font-size=\"{}\" text-anchor=\"{anchor}\"{weight}{turn}{look}>{}</text>",
            self.y(text.at.y - down),
            number(text.height_mm),
            escape(&text.text)
        )
    }
}
