//! The slider with its tab, from above: the face that lies under the plate.

use latchwright_assembly::slider_body::SliderBody;
use latchwright_drawing::{Ink, Outline, Shape, slider_outline};
use latchwright_geometry::Point;
use latchwright_model::{Design, Grain, Material};

use super::sheet::Sheet;
use super::{Bored, Face, Template, TemplateKind};
use crate::frame::{places, sizes};
use crate::holes::WoodPart;
use crate::inch::Rule;

/// The slider; `None` where it has no size.
pub(super) fn template(design: &Design, bored: Bored<'_>) -> Option<Template> {
    let (slider, tab) = (&design.slider, &design.tab);
    let dials = design.dials.iter();
    let known = dials.flat_map(|dial| {
        let (x, y) = dial.pin_at();
        [x, y, dial.centre.1, dial.disc.radius, dial.pin.diameter]
    });
    let known: Vec<f64> = known.collect();
    if !sizes(&[slider.thickness, slider.travel, tab.width])
        || !places(&[tab.at, tab.engagement, design.keeper.edge])
        || !places(&[slider.guide_at.1])
        || !places(&known)
    {
        return None;
    }
    let outline = slider_outline(design, 0.0);
    let corner = outline.extent().min;
    let extent = outline.extent();
    if !sizes(&[extent.width(), extent.height()]) {
        return None;
    }
    let place = |at: Point| at - corner;
    let mut sheet = Sheet::new(
        WoodPart::Slider,
        Face::Upper,
        Rule::of(design),
        outline.placed(place),
    );
    let lowered = fingers(&mut sheet, design, place);
    sheet.bore(bored.holes, place);
    sheet.bore_words(bored.holes, place);
    for (at, words) in lowered {
        sheet.about(at, 0.0, &[words]);
    }
    let (width, height) = sheet.size();
    sheet.corner_mark(Point::new(0.0, 0.0), "left");
    let tip = place(Point::new(tab.at, design.keeper.edge - tab.engagement));
    sheet.on_part(
        tip + Point::new(0.0, 4.0),
        &["tab, to the front".to_owned()],
    );
    let middle = Point::new(width / 2.0, height * 0.45);
    // it is waxed, not coated: what is cut is what is finished
    sheet.name_on_part(middle, slider.thickness, (width, height, slider.thickness));
    sheet.grain(grain(design), Point::new(width * 0.5, height * 0.3));
    Some(sheet.finish(TemplateKind::Slider))
}

/// Where the fingers are lowered: the line at which each begins, with its lowered area for a machine, and the words with
/// their place, once for fingers that are alike.
fn fingers(
    sheet: &mut Sheet,
    design: &Design,
    place: impl Fn(Point) -> Point,
) -> Vec<(Point, String)> {
    let body = SliderBody::of(design);
    let mut told: Vec<(f64, Point)> = Vec::new();
    for finger in body.fingers(design) {
        let deep = finger.top - design.slider.below;
        if deep <= 0.0 || !sizes(&[deep, finger.thickness(), finger.area.height()]) {
            continue;
        }
        let (low, high) = (place(finger.area.min), place(finger.area.max));
        let radius = (high.x - low.x) / 2.0;
        // its tip is round; below it the area ends where the bar begins
        let corners = [
            (low, 0.0),
            (Point::new(high.x, low.y), 0.0),
            (high, radius.min(high.y - low.y)),
            (Point::new(low.x, high.y), radius.min(high.y - low.y)),
        ];
        sheet.pocket(deep, Outline::rounded(&corners));
        let line = Outline::line(low, Point::new(high.x, low.y));
        sheet.draw(Ink::Edge, Shape::path(line));
        if told.iter().all(|(known, _)| (known - deep).abs() > 1e-9) {
            told.push((deep, Point::new(low.x, f64::midpoint(low.y, high.y))));
        }
    }
    told.into_iter()
        .map(|(deep, at)| {
            let deep = sheet.rule.say_exactly(deep);
            (at, format!("fingers: {deep} deep from this face"))
        })
        .collect()
}

/// Along the crossbar where the material has no fibres of its own.
fn grain(design: &Design) -> Grain {
    match design.slider.material {
        Material::Wood { grain, .. } => grain,
        _ => Grain::AlongX,
    }
}
