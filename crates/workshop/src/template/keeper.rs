//! The keeper from above.

use latchwright_drawing::{Outline, Rect};
use latchwright_geometry::Point;
use latchwright_model::{Design, Grain};

use super::sheet::Sheet;
use super::{Bored, Face, Template, TemplateKind};
use crate::frame::{places, sizes};
use crate::holes::WoodPart;
use crate::inch::Rule;

/// The keeper; `None` where it has no size.
pub(super) fn template(design: &Design, bored: Bored<'_>) -> Option<Template> {
    let keeper = &design.keeper;
    if !sizes(&[keeper.width, keeper.depth, keeper.thickness])
        || !places(&[keeper.edge, design.tab.at])
    {
        return None;
    }
    let (left, foot) = (
        design.tab.at - keeper.width / 2.0,
        keeper.edge - keeper.depth,
    );
    let place = |at: Point| at - Point::new(left, foot);
    let edge = Rect::new(Point::default(), Point::new(keeper.width, keeper.depth));
    let mut sheet = Sheet::new(
        WoodPart::Keeper,
        Face::Upper,
        Rule::of(design),
        Outline::rectangle(edge),
    );
    sheet.bore(bored.holes, place);
    let inner = Point::new(keeper.width / 2.0, keeper.depth);
    let true_edge = "true edge: it holds the tab";
    let up = Point::new(0.0, 1.0);
    sheet.beside_part(inner, up, &[true_edge.to_owned()]);
    let below = Point::new(keeper.width / 2.0, 0.0);
    let film = design.workmanship.film.max(0.0);
    let bare = latchwright_assembly::keeper::bare(design, film);
    sheet.name_beside_part(below, -up, keeper.thickness, bare);
    sheet.bore_words(bored.holes, place);
    sheet.corner_mark(Point::default(), "front left");
    sheet.grain(
        Grain::AlongX,
        Point::new(keeper.width / 2.0, keeper.depth / 2.0),
    );
    Some(sheet.finish(TemplateKind::Keeper))
}
