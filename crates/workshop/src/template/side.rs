//! The four sides of the box from outside: hinge mortises, grooves, mitres, the notch for the tab.

use latchwright_drawing::{Ink, Outline, Rect, Shape};
use latchwright_geometry::Point;
use latchwright_solver::model::{Corner, Design, Grain, LidKind};

use super::sheet::Sheet;
use super::{Bored, Face, Template};
use crate::frame::{front_side, places, sizes};
use crate::holes::WoodPart;
use crate::say::length;

/// Clear distance round the tab in the front, mm: common practice, no source.
const TAB_AIR: f64 = 1.0;

/// Sizes of one side as seen from outside, mm.
struct Side {
    length: f64,
    height: f64,
    /// Where the groove for the floor begins, from either end.
    groove_from: f64,
}

/// One side of the box; `None` where it has no size.
pub(super) fn template(design: &Design, bored: Bored<'_>, part: WoodPart) -> Option<Template> {
    let side = measure(design, part)?;
    let edge = Rect::new(Point::default(), Point::new(side.length, side.height));
    let mut sheet = Sheet::new(part, Face::Outside, design.units, Outline::rectangle(edge));
    corners(&mut sheet, design, &side);
    lid_cut(&mut sheet, design, &side);
    match part {
        WoodPart::Back => hinges(&mut sheet, design, &side),
        WoodPart::Front => front(&mut sheet, design, bored, &side),
        _ => {}
    }
    groove(&mut sheet, design, &side);
    let corner = format!("{}, lower edge", end_names(part).0);
    sheet.corner_mark(Point::default(), &corner);
    let middle = side.length / 2.0;
    let name = sheet.name_lines(design.body.thickness);
    sheet.on_part(Point::new(middle, side.height / 2.0), &name);
    let upper = Point::new(middle, side.height);
    let up = Point::new(0.0, 1.0);
    sheet.beside_part(upper, up, &["upper edge".to_owned()]);
    ends(&mut sheet, design, &side);
    sheet.grain(Grain::AlongX, Point::new(middle, side.height / 2.0 - 12.0));
    Some(sheet.finish(part.name()))
}

/// Lengths from the room inside and the stock; the long sides go right through.
fn measure(design: &Design, part: WoodPart) -> Option<Side> {
    let (body, inside) = (&design.body, &design.inside);
    let thick = body.thickness;
    let long = matches!(part, WoodPart::Front | WoodPart::Back);
    let room = if long { inside.width } else { inside.depth };
    let ends = match (long, body.corner) {
        (true, _) | (false, Corner::Mitred) => 2.0 * thick,
        (false, Corner::Butted) => 0.0,
        (false, Corner::Rabbeted) => thick,
    };
    let kerf = match body.lid {
        LidKind::Plate => 0.0,
        LidKind::Band { .. } => design.bench.kerf,
    };
    let side = Side {
        length: room + ends,
        height: body.foot + body.floor.thickness + inside.height + kerf,
        groove_from: match (long, body.corner) {
            (true, Corner::Butted | Corner::Rabbeted) => (thick - body.groove).max(0.0),
            _ => 0.0,
        },
    };
    let known = sizes(&[side.length, side.height, thick, body.floor.thickness]);
    (known && places(&[body.foot, body.groove, kerf])).then_some(side)
}

/// A level or upright line on the other face.
fn unseen(sheet: &mut Sheet, from: (f64, f64), to: (f64, f64)) {
    let line = Outline::line(Point::new(from.0, from.1), Point::new(to.0, to.1));
    sheet.mark(Ink::Unseen, Shape::path(line));
}

/// Where the neighbours stand behind the ends.
fn corners(sheet: &mut Sheet, design: &Design, side: &Side) {
    let thick = design.body.thickness;
    let long = matches!(sheet.part(), WoodPart::Front | WoodPart::Back);
    if side.length <= 2.0 * thick || (!long && design.body.corner != Corner::Mitred) {
        return;
    }
    for x in [thick, side.length - thick] {
        unseen(sheet, (x, 0.0), (x, side.height));
    }
}

/// What the ends are called that are seen on the left and on the right.
fn end_names(part: WoodPart) -> (&'static str, &'static str) {
    match part {
        WoodPart::Left => ("back end", "front end"),
        WoodPart::Right => ("front end", "back end"),
        WoodPart::Back => ("right end", "left end"),
        _ => ("left end", "right end"),
    }
}

/// What is done at the ends, in words.
fn ends(sheet: &mut Sheet, design: &Design, side: &Side) {
    let say = |mm: f64| length(mm, design.units);
    let thick = design.body.thickness;
    let long = matches!(sheet.part(), WoodPart::Front | WoodPart::Back);
    let words = match (design.body.corner, long) {
        (Corner::Mitred, _) => {
            let short = side.length - 2.0 * thick;
            vec![
                "both ends mitred at 45°".to_owned(),
                format!("long point {} outside", say(side.length)),
                format!("short point {} inside", say(short)),
            ]
        }
        (Corner::Butted, true) => vec!["the short sides stand behind the ends".to_owned()],
        (Corner::Rabbeted, true) => vec![
            "rabbet inside at both ends".to_owned(),
            format!("{} wide, {} deep", say(thick), say(thick / 2.0)),
        ],
        (_, false) => vec!["both ends square".to_owned()],
    };
    let at = Point::new(side.length * 0.2, side.height / 2.0);
    sheet.on_part(at, &words);
    let (left, right) = end_names(sheet.part());
    let inner = thick.max(2.0) + 10.0;
    let high = side.height * 0.75;
    sheet.on_part(Point::new(inner, high), &[left.to_owned()]);
    let right_at = Point::new(side.length - inner, high);
    sheet.on_part(right_at, &[right.to_owned()]);
}

/// The groove for the floor.
fn groove(sheet: &mut Sheet, design: &Design, side: &Side) {
    let (body, say) = (&design.body, |mm: f64| length(mm, design.units));
    if body.groove <= 0.0 || body.foot < 0.0 || side.length <= 2.0 * side.groove_from {
        return;
    }
    let (from, to) = (side.groove_from, side.length - side.groove_from);
    let (low, high) = (body.foot, body.foot + body.floor.thickness);
    for y in [low, high] {
        unseen(sheet, (from, y), (to, y));
    }
    if from > 0.0 {
        for x in [from, to] {
            unseen(sheet, (x, low), (x, high));
        }
    }
    let stop = if from > 0.0 { ", stopped" } else { "" };
    let words = format!(
        "groove inside for the floor, {} wide, {} deep{stop}",
        say(body.floor.thickness),
        say(body.groove)
    );
    let at = Point::new(side.length / 2.0, f64::midpoint(low, high));
    sheet.on_part(at, &[words]);
}

/// The kerf that parts the lid from the box, where the lid is a band.
fn lid_cut(sheet: &mut Sheet, design: &Design, side: &Side) {
    let Some((low, high)) = cut(design, side) else {
        return;
    };
    let area = Rect::new(Point::new(0.0, low), Point::new(side.length, high));
    sheet.waste(Outline::rectangle(area), true);
    let words = format!(
        "cut the lid off here: {} is lost",
        length(high - low, design.units)
    );
    let at = Point::new(side.length / 2.0, low);
    sheet.about(at, 0.5, &[words]);
}

/// From where to where the kerf takes the wood of a band, over the lower edge.
fn cut(design: &Design, side: &Side) -> Option<(f64, f64)> {
    let LidKind::Band { height } = design.body.lid else {
        return None;
    };
    let high = side.height - height;
    let low = high - design.bench.kerf;
    (sizes(&[height, low]) && high > low).then_some((low, high))
}

/// The leaves of the hinges, let into the edges that meet.
fn hinges(sheet: &mut Sheet, design: &Design, side: &Side) {
    let hinge = &design.body.hinge;
    if !sizes(&[hinge.length, hinge.thickness, hinge.leaf]) || !places(&[hinge.inset]) {
        return;
    }
    let edges = match (design.body.lid, cut(design, side)) {
        (LidKind::Plate, _) => vec![(side.height - hinge.thickness, side.height)],
        (LidKind::Band { .. }, Some((low, high))) => {
            vec![(low - hinge.thickness, low), (high, high + hinge.thickness)]
        }
        (LidKind::Band { .. }, None) => return,
    };
    let say = |mm: f64| length(mm, design.units);
    let within = |x: f64| x.clamp(0.0, side.length);
    for left in [hinge.inset, side.length - hinge.inset - hinge.length] {
        let (from, to) = (within(left), within(left + hinge.length));
        if to <= from {
            continue;
        }
        for &(low, high) in &edges {
            let (low, high) = (low.max(0.0), high.min(side.height));
            let area = Rect::new(Point::new(from, low), Point::new(to, high));
            sheet.waste(Outline::rectangle(area), true);
        }
        let low = edges.iter().map(|edge| edge.0).fold(side.height, f64::min);
        let words = [
            format!("hinge, {} from the end", say(hinge.inset)),
            format!(
                "{} long, {} wide, {} deep",
                say(hinge.length),
                say(hinge.leaf),
                say(hinge.thickness)
            ),
        ];
        let at = Point::new(f64::midpoint(from, to), low.max(0.0));
        sheet.about(at, 0.0, &words);
    }
}

/// The notch in which the tab lies, and where the keeper's screws go in.
fn front(sheet: &mut Sheet, design: &Design, bored: Bored<'_>, side: &Side) {
    let (slider, tab) = (&design.slider, &design.tab);
    let known = sizes(&[tab.width, slider.thickness])
        && places(&[tab.at, tab.engagement, design.keeper.edge, slider.below]);
    if design.body.lid != LidKind::Plate || !known {
        return;
    }
    let middle = side.length / 2.0;
    let Some(wood) = front_side(design) else {
        return;
    };
    let reach = wood.to - (design.keeper.edge - tab.engagement) + TAB_AIR;
    let deep = slider.below.max(0.0) + slider.thickness + TAB_AIR;
    if reach > 0.0 && deep < side.height {
        let half = tab.width / 2.0 + TAB_AIR;
        let within = |x: f64| (middle + tab.at + x).clamp(0.0, side.length);
        let area = Rect::new(
            Point::new(within(-half), side.height - deep),
            Point::new(within(half), side.height),
        );
        let through = reach >= wood.size();
        sheet.waste(Outline::rectangle(area), through);
        let say = |mm: f64| length(mm, design.units);
        let how = if through {
            "right through".to_owned()
        } else {
            format!("{} deep from the inside", say(reach))
        };
        let words = [
            "notch for the tab".to_owned(),
            format!("{} down, {how}", say(deep)),
        ];
        let at = Point::new(area.centre().x, area.min.y);
        sheet.about(at, 0.0, &words);
    }
    for hole in bored.holes {
        if hole.part == WoodPart::Keeper {
            let x = middle + hole.centre.x;
            let line = Outline::line(
                Point::new(x, side.height - 6.0_f64.min(side.height)),
                Point::new(x, side.height + 3.0),
            );
            sheet.draw(Ink::Aim, Shape::path(line));
            let at = Point::new(x, side.height + 3.0);
            sheet.about(at, 0.0, &["screw".to_owned()]);
        }
    }
}
