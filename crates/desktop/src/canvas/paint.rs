//! A [`Drawing`] as egui shapes: millimetres to points, roles to colours.

use egui::accesskit::Role;
use egui::epaint::{Mesh, TextShape};
use egui::{
    Align2, Color32, FontFamily, FontId, Painter, Pos2, Rect, Sense, Shape, Stroke, Ui, Vec2,
    WidgetInfo, pos2, vec2,
};
use latchwright_drawing::{
    Anchor, Drawing, Ink, Item, Outline, Palette, Shape as Drawn, Text, Weight, trapezoids,
};
use latchwright_geometry::Point;

use crate::theme;

/// Free round a picture, points.
const EDGE: f32 = 4.0;

/// Where a drawing lies on the screen.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Frame {
    /// Points a millimetre.
    pub scale: f32,
    /// Where the drawing's origin lies.
    pub origin: Pos2,
}

impl Frame {
    /// As large as it goes, in the middle of `room`.
    pub fn fit(bounds: latchwright_drawing::Rect, space: Rect) -> Self {
        let (width, height) = (
            narrow(bounds.width()).max(1.0),
            narrow(bounds.height()).max(1.0),
        );
        let scale = (space.width() / width)
            .min(space.height() / height)
            .max(0.01);
        let middle = bounds.centre();
        let origin = space.center() + vec2(-narrow(middle.x) * scale, narrow(middle.y) * scale);
        Self { scale, origin }
    }

    /// A place of the drawing on the screen.
    pub fn screen(&self, at: Point) -> Pos2 {
        pos2(
            self.origin.x + narrow(at.x) * self.scale,
            self.origin.y - narrow(at.y) * self.scale,
        )
    }

    /// A place of the screen on the drawing, mm.
    pub fn drawing(&self, at: Pos2) -> Point {
        let scale = f64::from(self.scale);
        Point::new(
            f64::from(at.x - self.origin.x) / scale,
            f64::from(self.origin.y - at.y) / scale,
        )
    }

    /// A length of the drawing in points.
    pub fn length(&self, mm: f64) -> f32 {
        narrow(mm) * self.scale
    }
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "a screen needs no more than f32 shows"
)]
fn narrow(mm: f64) -> f32 {
    mm as f32
}

/// A drawing as a picture of this size in a row of controls; `said` is what it says to those who do not
/// see it.
pub fn picture_ui(ui: &mut Ui, size: Vec2, drawing: &Drawing, said: &str) {
    let (rect, response) = ui.allocate_exact_size(size, Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Image, true, said));
    let frame = Frame::fit(drawing.bounds, rect.shrink(EDGE));
    paint(
        &ui.painter_at(rect),
        drawing,
        theme::palette(ui.ctx()),
        frame,
    );
}

/// Paints every item in order.
pub fn paint(painter: &Painter, drawing: &Drawing, palette: &Palette, frame: Frame) {
    for item in &drawing.items {
        if item.opacity > 0.003 {
            paint_item(painter, item, palette, frame);
        }
    }
}

fn paint_item(painter: &Painter, item: &Item, palette: &Palette, frame: Frame) {
    let faded = |ink: Ink| theme::colour(palette.colour(ink)).gamma_multiply(item.opacity);
    match &item.shape {
        Drawn::Path { outlines } => {
            if let Some(fill) = item.fill {
                painter.add(filled(outlines, faded(fill), frame));
            }
            if let Some(line) = item.line {
                for outline in outlines {
                    stroke(painter, outline, line, faded(line), frame);
                }
            }
        }
        Drawn::Circle { centre, radius } => {
            if let Some(fill) = item.fill {
                painter.circle_filled(frame.screen(*centre), frame.length(*radius), faded(fill));
            }
            if let Some(line) = item.line {
                stroke(
                    painter,
                    &Outline::circle(*centre, *radius),
                    line,
                    faded(line),
                    frame,
                );
            }
        }
        Drawn::Text(text) => {
            let ink = item.fill.or(item.line).unwrap_or(Ink::Label);
            write(painter, text, faded(ink), frame);
        }
    }
}

/// Within a tenth of a point of the true curve, so that circles are round on a fine screen too.
fn tolerance(frame: Frame) -> f64 {
    f64::from(0.1 / frame.scale)
}

fn filled(outlines: &[Outline], colour: Color32, frame: Frame) -> Shape {
    let mut mesh = Mesh::default();
    for corners in trapezoids(outlines, tolerance(frame)) {
        let first = u32::try_from(mesh.vertices.len()).unwrap_or(0);
        for corner in corners {
            mesh.colored_vertex(frame.screen(corner), colour);
        }
        mesh.add_triangle(first, first + 1, first + 2);
        mesh.add_triangle(first, first + 2, first + 3);
    }
    Shape::mesh(mesh)
}

fn stroke(painter: &Painter, outline: &Outline, ink: Ink, colour: Color32, frame: Frame) {
    let drawn = ink.stroke();
    let stroke = Stroke::new(frame.length(drawn.width).max(1.0), colour);
    let mut points: Vec<Pos2> = outline
        .flatten(tolerance(frame))
        .into_iter()
        .map(|point| frame.screen(point))
        .collect();
    if let [dash, gap, ..] = *drawn.dash {
        if outline.closed {
            points.extend(points.first().copied());
        }
        let dash = frame.length(dash).max(1.0);
        painter.extend(Shape::dashed_line(
            &points,
            stroke,
            dash,
            frame.length(gap).max(2.0),
        ));
    } else if outline.closed {
        painter.add(Shape::closed_line(points, stroke));
    } else {
        painter.add(Shape::line(points, stroke));
    }
}

fn write(painter: &Painter, text: &Text, colour: Color32, frame: Frame) {
    let size = frame.length(text.height_mm).clamp(4.0, 200.0);
    let family = if text.weight == Weight::Bold {
        theme::bold()
    } else {
        FontFamily::Proportional
    };
    let galley = painter.layout_no_wrap(text.text.clone(), FontId::new(size, family), colour);
    let across = match text.anchor {
        Anchor::Start => 0.0,
        Anchor::Middle => galley.size().x / 2.0,
        Anchor::End => galley.size().x,
    };
    // the anchor stands at the middle of a capital; the galley's middle is a little lower
    let place = frame.screen(text.at);
    let lift = galley.size().y / 2.0 - size * 0.04;
    let anchor = match text.anchor {
        Anchor::Start => Align2::LEFT_CENTER,
        Anchor::Middle => Align2::CENTER_CENTER,
        Anchor::End => Align2::RIGHT_CENTER,
    };
    let shape = TextShape::new(place - vec2(across, lift), galley, colour)
        .with_angle_and_anchor(-narrow(text.turned_deg).to_radians(), anchor);
    painter.add(shape);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_place_goes_to_the_screen_and_back() {
        let bounds = latchwright_drawing::Rect::about(Point::new(0.0, 70.0), 220.0, 140.0);
        let frame = Frame::fit(
            bounds,
            Rect::from_min_size(pos2(10.0, 20.0), vec2(700.0, 500.0)),
        );
        let back = frame.drawing(frame.screen(Point::new(-55.0, 95.0)));
        assert!(back.distance(Point::new(-55.0, 95.0)) < 1e-3);
        assert!(
            frame.screen(Point::new(0.0, 140.0)).y < frame.screen(Point::default()).y,
            "y is up"
        );
    }
}
