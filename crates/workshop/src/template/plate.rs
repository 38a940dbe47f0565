//! The plate from outside, and the same plate from the back.

use latchwright_drawing::Ink;
use latchwright_drawing::{Item, Outline, Rect, Shape, plate_marks};
use latchwright_geometry::Point;
use latchwright_model::{Design, LidKind};
use latchwright_proof::slider_body::RABBET_AIR;

use super::sheet::Sheet;
use super::{Bored, Face, Template, TemplateKind};
use crate::frame::{places, sizes};
use crate::holes::WoodPart;
use crate::inch::Rule;

/// The plate with `face` up; `None` where it has no size.
pub(super) fn template(design: &Design, bored: Bored<'_>, face: Face) -> Option<Template> {
    let plate = &design.plate;
    if !sizes(&[plate.width, plate.depth]) {
        return None;
    }
    let outside = face == Face::Outside;
    let place = |at: Point| {
        let x = if outside { at.x } else { -at.x };
        Point::new(x + plate.width / 2.0, at.y)
    };
    let edge = Rect::new(Point::default(), Point::new(plate.width, plate.depth));
    let mut sheet = Sheet::new(
        WoodPart::Plate,
        face,
        Rule::of(design),
        Outline::rectangle(edge),
    );
    if outside {
        marks(&mut sheet, design, place);
    }
    let rabbet = rabbet(&mut sheet, design, place, !outside);
    hinges(&mut sheet, design, place, !outside);
    sheet.bore(bored.holes, place);
    for slot in bored.slots {
        sheet.slot(slot, place);
    }
    sheet.bore_words(bored.holes, place);
    let middle = plate.width / 2.0;
    let left = if outside { 0.0 } else { plate.width };
    sheet.corner_mark(Point::new(left, 0.0), "front left");
    if let Some((at, words)) = rabbet {
        sheet.about(at, 0.0, &[words]);
    }
    let hinge_edge = Point::new(middle, plate.depth - 4.0);
    sheet.on_part(hinge_edge, &["hinge edge".to_owned()]);
    sheet.on_part(Point::new(middle, 4.0), &["front edge".to_owned()]);
    let quiet = Point::new(plate.width * 0.2, plate.depth * 0.25);
    sheet.name_on_part(quiet, plate.thickness);
    let other = Point::new(plate.width * 0.8, plate.depth * 0.25);
    sheet.grain(plate.grain, other);
    let kind = if outside {
        TemplateKind::PlateOutside
    } else {
        TemplateKind::PlateBack
    };
    Some(sheet.finish(kind))
}

/// Marks, numerals or pictures round the dials, to trace.
fn marks(sheet: &mut Sheet, design: &Design, place: impl Fn(Point) -> Point) {
    for item in plate_marks(design).into_iter().flatten() {
        sheet.mark(Ink::Edge, moved(&item, &place));
    }
}

/// The shape of `item` on a sheet to which `place` only shifts.
pub(super) fn moved(item: &Item, place: &impl Fn(Point) -> Point) -> Shape {
    item.shape.shifted(place(Point::default()))
}

/// The rabbet over the keeper, stopped on both sides; where its words go, and what they are.
fn rabbet(
    sheet: &mut Sheet,
    design: &Design,
    place: impl Fn(Point) -> Point,
    seen: bool,
) -> Option<(Point, String)> {
    let (keeper, plate) = (&design.keeper, &design.plate);
    if !sizes(&[keeper.width, keeper.depth, plate.rabbet]) || !places(&[keeper.edge, design.tab.at])
    {
        return None;
    }
    let half = (keeper.width / 2.0 + RABBET_AIR).min(plate.width / 2.0);
    let inner = (keeper.edge + RABBET_AIR).min(plate.depth);
    let outer = (keeper.edge - keeper.depth - RABBET_AIR).max(0.0);
    if inner <= outer {
        return None;
    }
    let corner = |side: f64, y: f64| {
        let x = (design.tab.at + side * half).clamp(-plate.width / 2.0, plate.width / 2.0);
        place(Point::new(x, y))
    };
    let area = Rect::new(corner(-1.0, outer), corner(1.0, inner));
    if area.width() <= 0.0 {
        return None;
    }
    sheet.waste(Outline::rectangle(area), seen);
    let deep = sheet.rule.say_exactly(plate.rabbet);
    let below = if seen { "" } else { " in the underside" };
    let words = format!("rabbet{below}, {deep} deep");
    Some((Point::new(area.centre().x, area.max.y), words))
}

/// The leaves of the hinges, let into the underside of a plate that is itself the lid.
fn hinges(sheet: &mut Sheet, design: &Design, place: impl Fn(Point) -> Point, seen: bool) {
    let hinge = &design.body.hinge;
    let outside = design.inside.width + 2.0 * design.body.thickness;
    let known = sizes(&[hinge.length, hinge.leaf, hinge.thickness, outside]);
    if !seen || design.body.lid != LidKind::Plate || !known || !places(&[hinge.inset]) {
        return;
    }
    let (plate, leaf) = (&design.plate, hinge.leaf.min(design.plate.depth));
    for side in [-1.0, 1.0] {
        let outer = side * (outside / 2.0 - hinge.inset);
        let inner = outer - side * hinge.length;
        let within = |x: f64| x.clamp(-plate.width / 2.0, plate.width / 2.0);
        let area = Rect::new(
            place(Point::new(within(outer), plate.depth - leaf)),
            place(Point::new(within(inner), plate.depth)),
        );
        if area.width() <= 0.0 {
            continue;
        }
        sheet.waste(Outline::rectangle(area), true);
        let deep = sheet.rule.say_exactly(hinge.thickness);
        let at = Point::new(area.centre().x, area.min.y);
        sheet.about(at, 0.0, &[format!("hinge, {deep} deep")]);
    }
}
