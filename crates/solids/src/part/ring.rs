//! The ring round a knob with its marks and labels, glued to the plate.

use latchwright_geometry::{Point, trig};
use latchwright_model::Dial;

use super::{Draft, Kind, Part, PartId, Shop};
use crate::extrude::Prism;
use crate::fault::{MeshFault, PartFault};
use crate::feature::Feature;
use crate::label::{Type, labels};
use crate::mesh::Pose;
use crate::options::Relief;
use crate::outline::Outline;
use crate::region::Region;
use crate::warning::Warning;

/// Clear distance from the knob, mm.
const CLEAR: f64 = 1.0;
/// Length of a mark, mm.
const MARK: f64 = 1.4;
/// Ground around marks and labels, mm.
const MARGIN: f64 = 0.7;
/// Lower labels are none, mm: common practice, no source.
pub(crate) const LEAST_LABEL: f64 = 2.5;

/// The ring of dial `index`, or nothing where rings would overlap or there is no room for labels.
pub(crate) fn ring(shop: &Shop<'_>, index: usize, dial: &Dial) -> Result<Option<Part>, PartFault> {
    let part = PartId::of(Kind::Ring, index);
    let mut draft = Draft::new(part);
    let (fit, options) = (&shop.seen, shop.options);
    let inner_size = fit.hole(Feature::RingInside, dial.knob.diameter + 2.0 * CLEAR);
    let label = label_height(shop, index, dial, &mut draft);
    let Some(label) = label else {
        return Ok(None);
    };
    let wide = 3.0 * MARGIN + MARK + label;
    let across = fit.outside(
        Feature::RingOutside,
        dial.knob.diameter + 2.0 * (CLEAR + wide),
    );
    let thick = fit.height(Feature::RingThickness, 1.6, 1.0);
    let (inner, outer) = (inner_size.drawn / 2.0, across.drawn / 2.0);
    draft.sizes.extend([inner_size, across, thick.clone()]);
    let thick = thick.drawn;
    let broken = |fault| PartFault::Mesh { part, fault };
    let circle = |radius: f64| Outline::circle(Point::default(), radius);
    let ground = Region::from(circle(outer))
        .minus(&circle(inner).into())
        .map_err(broken)?;
    let ground = Prism::new(ground, 0.0, thick).with_low(shop.bed_edge(thick));
    draft.body.add(ground);
    let signs = signs(shop, index, dial, inner, label, &mut draft).map_err(broken)?;
    let relief = options.relief_height;
    match options.relief {
        Relief::Raised => {
            draft.colour_change = Some(thick);
            draft
                .body
                .add(Prism::new(signs, thick / 2.0, thick + relief));
        }
        Relief::Sunk => {
            let floor = (thick - relief).max(thick / 2.0);
            draft.colour_change = Some(floor);
            draft.body.cut(Prism::new(signs, floor, thick + 1.0));
        }
    }
    let z = shop.design.plate.thickness;
    draft.assembled = Some(Pose::to(dial.centre.0, dial.centre.1, z));
    draft.apart = 1;
    draft.finish(fit.printer).map(Some)
}

/// The height of the labels that neighbours leave room for, mm; `None` below
/// [`LEAST_LABEL`].
fn label_height(shop: &Shop<'_>, index: usize, dial: &Dial, draft: &mut Draft) -> Option<f64> {
    let mine = Point::new(dial.centre.0, dial.centre.1);
    let others = shop
        .design
        .dials
        .iter()
        .enumerate()
        .filter(|(other, _)| *other != index);
    let space = others
        .map(|(_, other)| {
            let apart = mine.distance(Point::new(other.centre.0, other.centre.1));
            (apart - f64::midpoint(dial.knob.diameter, other.knob.diameter)) / 2.0 - 0.25
        })
        .fold(f64::INFINITY, f64::min);
    let most = space - CLEAR - MARK - 3.0 * MARGIN;
    let wanted = shop.options.label_height;
    if most < wanted && most >= LEAST_LABEL {
        draft.warn(Warning::SmallLabels { high: most, wanted });
    }
    let height = wanted.min(most);
    (height >= LEAST_LABEL).then_some(height)
}

/// Marks and labels as one region; mark 0 at +y, counted clockwise.
fn signs(
    shop: &Shop<'_>,
    index: usize,
    dial: &Dial,
    inner: f64,
    label: f64,
    draft: &mut Draft,
) -> Result<Region, MeshFault> {
    let line = shop.fit.least_wall();
    let (from, to) = (inner + MARGIN, inner + MARGIN + MARK);
    let middle = to + MARGIN + label / 2.0;
    let step = trig::radians(dial.step_deg());
    let space = 2.0 * middle * trig::sin(step / 2.0).min(1.0) - line;
    let handed = shop
        .options
        .labels
        .get(index)
        .map_or(&[][..], Vec::as_slice);
    let size = Type {
        height: label,
        space,
        line,
        thinnest: shop.printer().nozzle,
    };
    let all = labels(dial, handed, size)?;
    let mut outlines = Vec::new();
    let mut bare = 0_u32;
    for (mark, sign) in (0..dial.positions).zip(&all.signs) {
        let turn = -step * f64::from(mark);
        if from * step > 2.0 * line {
            let half = line / 2.0;
            let stroke = Outline::rectangle(Point::new(-half, from), Point::new(half, to));
            outlines.push(stroke.turned(turn));
        }
        match sign {
            Some(sign) => {
                let set = |outline: &Outline| outline.moved(Point::new(0.0, middle)).turned(turn);
                outlines.extend(sign.outlines().iter().map(set));
            }
            None => bare += 1,
        }
    }
    if all.thin > 0 {
        draft.warn(Warning::ThinLabels {
            labels: all.thin,
            nozzle: shop.printer().nozzle,
        });
    }
    if bare > 0 {
        draft.warn(Warning::BareMarks {
            bare,
            marks: dial.positions,
        });
    }
    Ok(Region::wound(outlines))
}
