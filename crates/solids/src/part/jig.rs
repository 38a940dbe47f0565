//! The drilling jig: a fence over the plate's front edge, and a guide over each bore.
//!
//! It is used turned over, fence down, on the outside of the plate; so it is drawn with left and
//! right changed.

use latchwright_geometry::Point;
use latchwright_model::Dial;

use super::{Draft, Kind, Part, PartId, Shop};
use crate::extrude::{Prism, THROUGH};
use crate::fault::{MeshFault, PartFault, Wall};
use crate::feature::Feature;
use crate::outline::Outline;
use crate::region::Region;
use crate::warning::Warning;

/// Thickness of the web, of the fence over it, and width of the fence, mm.
const WEB: f64 = 4.0;
const FENCE_HIGH: f64 = 6.0;
const FENCE_WIDE: f64 = 6.0;
/// Half the width of an arm, and ground beyond the furthest bore, mm.
const ARM: f64 = 8.0;
/// Half the width of the notch that shows a line, mm.
const NOTCH: f64 = 1.2;

/// One jig for all dials, or one a dial if that is larger than the bed.
pub(crate) fn jigs(shop: &Shop<'_>) -> Vec<Result<Part, PartFault>> {
    let dials: Vec<&Dial> = shop.design.dials.iter().collect();
    let whole = jig(shop, PartId::whole(Kind::Jig), &dials, 0.0);
    if dials.len() < 2 || !matches!(whole, Err(PartFault::LargerThanBed { .. })) {
        return vec![whole];
    }
    dials
        .iter()
        .enumerate()
        .map(|(index, dial)| {
            let part = PartId::of(Kind::Jig, index);
            jig(shop, part, &[*dial], dial.centre.0)
        })
        .collect()
}

/// A jig whose notch lies on the line x = `line` of the plate.
fn jig(shop: &Shop<'_>, part: PartId, dials: &[&Dial], line: f64) -> Result<Part, PartFault> {
    let mut draft = Draft::new(part);
    let hole = shop.fit.hole(Feature::Guide, shop.options.jig_drill);
    let radius = hole.drawn / 2.0;
    let which = |short: f64| Wall::Guide { thinner_mm: short };
    shop.wall(part, ARM - radius, which)?;
    let broken = |fault| PartFault::Mesh { part, fault };
    let (web, fence) = outlines(dials, line).map_err(broken)?;
    let at = |dial: &Dial| Point::new(line - dial.centre.0, dial.centre.1);
    draft
        .body
        .add(Prism::new(web, 0.0, WEB).with_low(shop.bed_edge(WEB)));
    draft
        .body
        .add(Prism::new(fence, WEB / 2.0, WEB + FENCE_HIGH));
    let notch = Outline::new(vec![
        Point::new(-NOTCH, -FENCE_WIDE - 1e-3),
        Point::new(NOTCH, -FENCE_WIDE - 1e-3),
        Point::new(0.0, -FENCE_WIDE + 1.5 * NOTCH),
    ]);
    draft.body.cut(Prism::new(notch, -THROUGH, THROUGH));
    for dial in dials {
        let guide = Outline::circle(at(dial), radius);
        draft.body.cut(Prism::new(guide, -THROUGH, THROUGH));
    }
    draft.sizes.push(hole);
    draft.warn(Warning::UseOfJig { notch: line });
    draft.finish(shop.fit.printer)
}

/// Web and fence, left and right changed, x counted from `line`.
fn outlines(dials: &[&Dial], line: f64) -> Result<(Region, Region), MeshFault> {
    let at = |dial: &Dial| Point::new(line - dial.centre.0, dial.centre.1);
    let (mut left, mut right) = (-ARM, ARM);
    for dial in dials {
        left = left.min(at(dial).x - ARM);
        right = right.max(at(dial).x + ARM);
    }
    let fence = Outline::rectangle(Point::new(left, -FENCE_WIDE), Point::new(right, 0.0));
    let rail = Outline::rectangle(Point::new(left, -FENCE_WIDE), Point::new(right, ARM));
    let arms = dials.iter().map(|dial| {
        let head = at(dial);
        let foot = Point::new(head.x, 0.0);
        Outline::capsule(foot, head, ARM)
    });
    let strip = Outline::rectangle(
        Point::new(left, -FENCE_WIDE - 2.0 * ARM),
        Point::new(right, -FENCE_WIDE),
    );
    let web = Region::union(arms.chain([rail])).minus(&strip.into())?;
    Ok((web, fence.into()))
}
