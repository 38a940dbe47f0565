//! The four sides of the box from outside: hinge mortises, grooves, mitres, the notch for the tab.
//!
//! Lines stand at finished edges; words name the sizes to be cut, as the order of work does.

use latchwright_drawing::{Ink, Outline, Rect, Shape};
use latchwright_geometry::Point;
use latchwright_model::{Design, Grain};

use super::sheet::Sheet;
use super::{Face, Template, TemplateKind};
use crate::frame::{places, sizes};
use crate::holes::WoodPart;
use crate::inch::Rule;
use crate::joinery::{End, Groove, Joinery, LidCut, Side, SidePlace};
use crate::steps::keeper_bit;
use latchwright_assembly::bit;
use latchwright_assembly::keeper::{keeper_screws, pilot_depth};

/// One side of the box; `None` where it has no size.
pub(super) fn template(design: &Design, joinery: &Joinery, part: WoodPart) -> Option<Template> {
    let place = place_of(part)?;
    let side = joinery.sides.iter().find(|side| side.place == place)?;
    let (long, high) = (side.outside.finished, side.height.finished);
    if !sizes(&[long, high, side.thickness.finished]) {
        return None;
    }
    let edge = Rect::new(Point::default(), Point::new(long, high));
    let rule = Rule::of(design);
    let mut sheet = Sheet::new(part, Face::Outside, rule, Outline::rectangle(edge));
    corners(&mut sheet, side);
    if let Some(cut) = joinery.lid {
        lid_cut(&mut sheet, cut);
    }
    match place {
        SidePlace::Back => hinges(&mut sheet, design, joinery),
        SidePlace::Front => front(&mut sheet, design, joinery),
        _ => {}
    }
    for one in &side.grooves {
        groove(&mut sheet, one);
    }
    let corner = format!("{}, lower edge", end_names(place).0);
    sheet.corner_mark(Point::default(), &corner);
    let middle = long / 2.0;
    let centre = Point::new(middle, high / 2.0);
    let bare = (side.outside.bare, side.height.bare, side.thickness.bare);
    sheet.name_on_part(centre, side.thickness.finished, bare);
    let upper = Point::new(middle, high);
    let up = Point::new(0.0, 1.0);
    sheet.beside_part(upper, up, &["upper edge".to_owned()]);
    ends(&mut sheet, side);
    sheet.grain(Grain::AlongX, Point::new(middle, high / 2.0 - 12.0));
    Some(sheet.finish(TemplateKind::Side(place)))
}

fn place_of(part: WoodPart) -> Option<SidePlace> {
    match part {
        WoodPart::Front => Some(SidePlace::Front),
        WoodPart::Right => Some(SidePlace::Right),
        WoodPart::Back => Some(SidePlace::Back),
        WoodPart::Left => Some(SidePlace::Left),
        WoodPart::Plate | WoodPart::Slider | WoodPart::Keeper => None,
    }
}

/// A level or upright line on the other face.
fn unseen(sheet: &mut Sheet, from: (f64, f64), to: (f64, f64)) {
    let line = Outline::line(Point::new(from.0, from.1), Point::new(to.0, to.1));
    sheet.mark(Ink::Unseen, Shape::path(line));
}

/// Where the neighbours stand behind the ends.
fn corners(sheet: &mut Sheet, side: &Side) {
    let (long, high) = sheet.size();
    let thick = side.thickness.finished;
    let covers = side.place.along_x() || side.ends == End::Mitred;
    if !covers || long <= 2.0 * thick {
        return;
    }
    for x in [thick, long - thick] {
        unseen(sheet, (x, 0.0), (x, high));
    }
}

/// What the ends are called that are seen on the left and on the right.
fn end_names(place: SidePlace) -> (&'static str, &'static str) {
    match place {
        SidePlace::Left => ("back end", "front end"),
        SidePlace::Right => ("front end", "back end"),
        SidePlace::Back => ("right end", "left end"),
        SidePlace::Front => ("left end", "right end"),
    }
}

/// What is done at the ends, in words.
fn ends(sheet: &mut Sheet, side: &Side) {
    let rule = sheet.rule;
    let say = |mm: f64| rule.say_exactly(mm);
    let (long, high) = sheet.size();
    let words = match side.ends {
        End::Mitred => vec![
            "both ends mitred at 45°".to_owned(),
            format!("long point {} outside, bare", say(side.outside.bare)),
            format!("short point {} inside, bare", say(side.inside.bare)),
        ],
        End::Square if side.place.along_x() => {
            vec!["the short sides stand behind the ends".to_owned()]
        }
        End::Square => vec!["both ends square".to_owned()],
        End::Rabbeted { width, depth } => vec![
            "rabbet inside at both ends".to_owned(),
            format!("{} wide, {} deep", say(width), say(depth)),
        ],
    };
    sheet.on_part(Point::new(long * 0.2, high / 2.0), &words);
    let (left, right) = end_names(side.place);
    let inner = side.thickness.finished.max(2.0) + 10.0;
    let at = high * 0.75;
    sheet.on_part(Point::new(inner, at), &[left.to_owned()]);
    sheet.on_part(Point::new(long - inner, at), &[right.to_owned()]);
}

/// A groove in the inside face, for the floor or for a plate in a band.
fn groove(sheet: &mut Sheet, groove: &Groove) {
    let (long, high) = sheet.size();
    let (from, to) = (groove.stop, long - groove.stop);
    let low = groove.above.finished;
    let upper = low + groove.width;
    let inside = low >= 0.0 && upper <= high;
    if !inside || !sizes(&[groove.width, groove.depth.finished]) || to <= from {
        return;
    }
    for y in [low, upper] {
        unseen(sheet, (from, y), (to, y));
    }
    if groove.stop > 0.0 {
        for x in [from, to] {
            unseen(sheet, (x, low), (x, upper));
        }
    }
    let rule = sheet.rule;
    let stop = if groove.stop > 0.0 { ", stopped" } else { "" };
    let words = format!(
        "groove inside for the {}, {} wide, {} deep, bare{stop}",
        groove.panel.name(),
        rule.say_exactly(groove.width),
        rule.say_exactly(groove.depth.bare)
    );
    let at = Point::new(long / 2.0, f64::midpoint(low, upper));
    sheet.on_part(at, &[words]);
}

/// The kerf that parts the lid from the box, where the lid is a band.
fn lid_cut(sheet: &mut Sheet, cut: LidCut) {
    let (long, high) = sheet.size();
    let (low, upper) = (cut.box_height, cut.box_height + cut.lost);
    if !sizes(&[low, cut.lost]) || upper >= high {
        return;
    }
    let area = Rect::new(Point::new(0.0, low), Point::new(long, upper));
    sheet.waste(Outline::rectangle(area), true);
    let words = format!(
        "cut the lid off here: {} is lost",
        sheet.rule.say_exactly(cut.lost)
    );
    sheet.about(Point::new(long / 2.0, low), 0.5, &[words]);
}

/// The leaves of the hinges, let into the edges that meet. Seen from outside, the back's left end is
/// the box's right.
fn hinges(sheet: &mut Sheet, design: &Design, joinery: &Joinery) {
    let hinge = &design.body.hinge;
    if !sizes(&[hinge.length, hinge.thickness, hinge.leaf]) || !places(&[hinge.inset]) {
        return;
    }
    let rule = sheet.rule;
    let say = |mm: f64| rule.say_exactly(mm);
    let (long, high) = sheet.size();
    let within = |x: f64| x.clamp(0.0, long);
    for mortise in joinery.hinges.iter().rev() {
        let deep = mortise.depth.finished;
        let mut edges = vec![(mortise.at_height - deep, mortise.at_height)];
        if let Some(cut) = joinery.lid {
            let lid = cut.box_height + cut.lost;
            edges.push((lid, lid + deep));
        }
        let (from, to) = (within(long - mortise.to), within(long - mortise.from));
        if to <= from {
            continue;
        }
        for (low, upper) in &edges {
            let (low, upper) = (low.clamp(0.0, high), upper.clamp(0.0, high));
            if upper > low {
                let area = Rect::new(Point::new(from, low), Point::new(to, upper));
                sheet.waste(Outline::rectangle(area), true);
            }
        }
        let words = [
            format!("hinge, {} from the end", say(hinge.inset)),
            format!(
                "{} long, {} wide, {} deep, bare",
                say(mortise.to - mortise.from),
                say(mortise.width),
                say(mortise.depth.bare)
            ),
        ];
        let low = (mortise.at_height - deep).clamp(0.0, high);
        sheet.about(Point::new(f64::midpoint(from, to), low), 0.0, &words);
    }
}

/// The notch in which the tab lies, and where the keeper's screws go in.
fn front(sheet: &mut Sheet, design: &Design, joinery: &Joinery) {
    if joinery.lid.is_some() {
        return;
    }
    let rule = sheet.rule;
    let say = |mm: f64| rule.say_exactly(mm);
    let (long, high) = sheet.size();
    if let Some(notch) = joinery.notch
        && sizes(&[notch.depth, notch.into])
        && notch.depth < high
    {
        let within = |x: f64| x.clamp(0.0, long);
        let area = Rect::new(
            Point::new(within(notch.left), high - notch.depth),
            Point::new(within(notch.right), high),
        );
        let through = notch.left_in_front <= 0.0;
        if area.width() > 0.0 {
            sheet.waste(Outline::rectangle(area), through);
        }
        let how = if through {
            "right through".to_owned()
        } else {
            format!("{} deep from the inside", say(notch.into))
        };
        let words = [
            "notch for the tab".to_owned(),
            format!("{} down, {how}", say(notch.depth)),
        ];
        sheet.about(Point::new(area.centre().x, area.min.y), 0.0, &words);
    }
    let deep = pilot_depth(design).map_or_else(String::new, |deep| format!(", {} deep", say(deep)));
    let bit = bit::length(keeper_bit(design).bored(), rule.units);
    let pilot = format!("keeper screw, pilot {bit}{deep}");
    for (_, at) in keeper_screws(design).at {
        let x = long / 2.0 + at.x;
        if !(0.0..=long).contains(&x) {
            continue;
        }
        let line = Outline::line(
            Point::new(x, high - 6.0_f64.min(high)),
            Point::new(x, high + 3.0),
        );
        sheet.draw(Ink::Aim, Shape::path(line));
        let at = Point::new(x, high + 3.0);
        sheet.about(at, 0.0, std::slice::from_ref(&pilot));
    }
}
