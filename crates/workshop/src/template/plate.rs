//! The plate from outside, and the same plate from the back.

use latchwright_assembly::slider_body;
use latchwright_drawing::Ink;
use latchwright_drawing::{Item, Outline, Rect, Shape, plate_marks};
use latchwright_geometry::Point;
use latchwright_model::{Design, LidKind};

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
    if !outside {
        sheet.guide(design, place);
    }
    sheet.bore(bored.holes, place);
    for slot in bored.slots {
        sheet.slot(slot, place);
    }
    sheet.bore_words(bored.holes, place);
    if !outside {
        sheet.guide_words(design, place);
    }
    let middle = plate.width / 2.0;
    let left = if outside { 0.0 } else { plate.width };
    sheet.corner_mark(Point::new(left, 0.0), "front left");
    if let Some((at, words)) = rabbet {
        sheet.about(at, 0.0, &[words]);
    }
    let hinge_edge = Point::new(middle, plate.depth - 4.0);
    sheet.on_part(hinge_edge, &["hinge edge".to_owned()]);
    // on the underside the rabbet and the guide have the middle
    let front_at = if outside { middle } else { plate.width * 0.25 };
    sheet.on_part(Point::new(front_at, 4.0), &["front edge".to_owned()]);
    let quiet = Point::new(plate.width * 0.2, plate.depth * 0.25);
    let coats = 2.0 * design.workmanship.film.max(0.0);
    let bare = (
        plate.width - coats,
        plate.depth - coats,
        plate.thickness - coats,
    );
    sheet.name_on_part(quiet, plate.thickness, bare);
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
    let own = slider_body::rabbet(design)?;
    let area = Rect::new(place(own.min), place(own.max));
    sheet.waste(Outline::rectangle(area), seen);
    let deep = sheet.rule.say_exactly(plate.rabbet);
    let long = sheet.rule.say_exactly(own.width());
    let below = if seen { "" } else { " in the underside" };
    let words = format!("rabbet{below}, {long} long, {deep} deep");
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
        let [mortise, _] = crate::joinery::joinery(design).hinges;
        let deep = sheet.rule.say_exactly(mortise.depth.bare);
        let at = Point::new(area.centre().x, area.min.y);
        sheet.about(at, 0.0, &[format!("hinge, {deep} deep, bare")]);
    }
}
