//! The slider with its tab, from above: the face that lies under the plate.

use latchwright_drawing::slider_outline;
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
    sheet.bore(bored.holes, place);
    sheet.bore_words(bored.holes, place);
    let (width, height) = sheet.size();
    sheet.corner_mark(Point::new(0.0, 0.0), "left");
    let tip = place(Point::new(tab.at, design.keeper.edge - tab.engagement));
    sheet.on_part(
        tip + Point::new(0.0, 4.0),
        &["tab, to the front".to_owned()],
    );
    let middle = Point::new(width / 2.0, height * 0.45);
    sheet.name_on_part(middle, slider.thickness);
    sheet.grain(grain(design), Point::new(width * 0.5, height * 0.3));
    Some(sheet.finish(TemplateKind::Slider))
}

/// Along the crossbar where the material has no fibres of its own.
fn grain(design: &Design) -> Grain {
    match design.slider.material {
        Material::Wood { grain, .. } => grain,
        _ => Grain::AlongX,
    }
}
