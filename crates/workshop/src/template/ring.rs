//! The marks round one dial as a ring of its own, to trace, to stencil or to iron on.

use latchwright_drawing::{Ink, Outline, Rect, plate_marks};
use latchwright_geometry::Point;
use latchwright_model::Design;

use super::plate::moved;
use super::sheet::Sheet;
use super::{Bored, Face, Template, TemplateKind};
use crate::feature::HoleKind;
use crate::frame::sizes;
use crate::holes::WoodPart;
use crate::inch::Rule;

/// From the marks to the edge of the ring, mm.
const RIM: f64 = 3.0;

/// A ring for each dial that has a bore.
pub(super) fn templates(design: &Design, bored: Bored<'_>) -> Vec<Template> {
    let rings = plate_marks(design).into_iter().enumerate();
    let ring = |(index, items): (usize, Vec<latchwright_drawing::Item>)| {
        let bore = HoleKind::Bore(index);
        let hole = bored.holes.iter().find(|hole| hole.kind == bore)?;
        let own = hole.centre;
        let corners = items.iter().flat_map(|item| item.shape.extent().corners());
        let reach = corners
            .map(|corner| corner.distance(own))
            .fold(hole.widest() / 2.0, f64::max);
        let radius = reach + RIM;
        if !sizes(&[radius]) {
            return None;
        }
        let centre = Point::new(radius, radius);
        let place = |at: Point| at - own + centre;
        let edge = Outline::circle(centre, radius);
        let mut sheet = Sheet::new(WoodPart::Plate, Face::Outside, Rule::of(design), edge);
        for item in &items {
            sheet.mark(Ink::Edge, moved(item, &place));
        }
        sheet.circles(hole, centre);
        let top = Rect::about(centre, 0.0, 2.0 * radius).max;
        sheet.about(top, 0.0, &["towards the hinge".to_owned()]);
        let kind = TemplateKind::Ring(index);
        sheet.about(Point::new(centre.x, 0.0), 0.0, &[kind.name()]);
        Some(sheet.finish(kind))
    };
    rings.filter_map(ring).collect()
}
