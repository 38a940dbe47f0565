//! The washer that keeps a disc clear of the plate.

use latchwright_assembly::dial;
use latchwright_geometry::Point;
use latchwright_model::Dial;

use super::{Draft, Kind, Part, PartId, Shop};
use crate::extrude::Prism;
use crate::fault::{PartFault, Wall};
use crate::feature::Feature;
use crate::mesh::Pose;
use crate::outline::Outline;
use crate::region::Region;

/// The washer of dial `index`; nothing where less than a layer lies between plate and disc.
pub(crate) fn washer(
    shop: &Shop<'_>,
    index: usize,
    dial: &Dial,
) -> Result<Option<Part>, PartFault> {
    let fit = &shop.fit;
    let Some(washer) = dial::washer(shop.design, dial) else {
        return Ok(None);
    };
    let part = PartId::of(Kind::Washer, index);
    let mut draft = Draft::new(part);
    let thick = washer.thickness;
    let hole = fit.hole(Feature::WasherInside, washer.inner);
    let across = fit.outside(Feature::WasherOutside, washer.outer);
    let wall = (across.drawn - hole.drawn) / 2.0;
    shop.wall(part, wall, |short| Wall::Washer {
        radius_mm: dial.disc.radius + short,
    })?;
    // too thin for a chamfer: what spreads at the bed is left out of the outline instead
    let foot = if thick < 3.0 * shop.options.chamfer {
        fit.printer.foot
    } else {
        0.0
    };
    let circle = |radius: f64| Outline::circle(Point::default(), radius);
    let ring = Region::from(circle(across.drawn / 2.0 - foot))
        .minus(&circle(hole.drawn / 2.0 + foot).into())
        .map_err(|fault| PartFault::Mesh { part, fault })?;
    let mut prism = Prism::new(ring, 0.0, thick);
    if foot == 0.0 {
        prism = prism.with_low(shop.bed_edge(thick));
    }
    draft.body.add(prism);
    draft.sizes.extend([hole, across]);
    draft.assembled = Some(Pose::to(dial.centre.0, dial.centre.1, -thick));
    draft.apart = -1;
    draft.finish(fit.printer).map(Some)
}
