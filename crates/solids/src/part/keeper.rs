//! The keeper plate, printed on the face that holds the tab; its screws' heads are sunk in the other.

use latchwright_assembly::keeper::keeper_screws;
use latchwright_geometry::Point;

use super::{Draft, Kind, Part, PartId, Shop};
use crate::extrude::{Prism, THROUGH};
use crate::fault::{PartFault, Slim, Wall};
use crate::feature::Feature;
use crate::mesh::Pose;
use crate::outline::Outline;
use crate::slope::Edge;

/// The keeper plate.
pub(crate) fn keeper(shop: &Shop<'_>) -> Result<Part, PartFault> {
    let part = PartId::whole(Kind::Keeper);
    let mut draft = Draft::new(part);
    let (fit, keeper) = (&shop.fit, &shop.design.keeper);
    let (width, depth) = (
        fit.outside(Feature::KeeperWidth, keeper.width),
        fit.outside(Feature::KeeperDepth, keeper.depth),
    );
    shop.enough(part, Slim::Keeper, &width)?;
    shop.enough(part, Slim::Keeper, &depth)?;
    let (width, depth) = (draft.draw(width), draft.draw(depth));
    let thick = draft.draw(fit.height(Feature::KeeperThickness, keeper.thickness, 2.0));
    let corner = 2.0_f64.min(width / 4.0).min(depth / 4.0);
    let plate = Outline::block(Point::default(), width, depth).rounded(corner);
    // on this face the tab slips under: its chamfer leads it in
    let lead = shop.options.chamfer.max(0.8).min(thick / 3.0).min(corner);
    draft
        .body
        .add(Prism::new(plate, 0.0, thick).with_low(Edge::chamfer(lead)));
    holes(shop, &mut draft, thick)?;
    let y = keeper.edge - keeper.depth / 2.0;
    draft.assembled = Some(Pose::to(shop.design.tab.at, y, 0.0));
    draft.finish(fit.printer)
}

/// The two screws' holes, their heads sunk in the upper face, which the open lid leaves free for a driver.
fn holes(shop: &Shop<'_>, draft: &mut Draft, thick: f64) -> Result<(), PartFault> {
    let (keeper, tab) = (&shop.design.keeper, &shop.design.tab);
    let screws = keeper_screws(shop.design);
    let hole = shop.fit.hole(Feature::ScrewHole, screws.hole);
    let head = shop.fit.hole(Feature::ScrewHead, screws.head);
    let sink = ((head.drawn - hole.drawn) / 2.0).max(0.1);
    let middle = Point::new(tab.at, keeper.edge - keeper.depth / 2.0);
    shop.wall(draft.id, thick - sink, |short| Wall::UnderHeads {
        thickness_mm: keeper.thickness + short,
    })?;
    for (_, at) in screws.at {
        let at = at - middle;
        let beside = keeper.depth / 2.0 - at.y.abs() - head.drawn / 2.0;
        shop.wall(draft.id, beside, |short| Wall::BesideHeads {
            depth_mm: keeper.depth + 2.0 * short,
        })?;
        let beyond = keeper.width / 2.0 - at.x.abs() - head.drawn / 2.0;
        // half of what the keeper is wider than the tab lies beside it, and half of that beyond a screw
        shop.wall(draft.id, beyond, |short| Wall::BeyondScrews {
            width_mm: keeper.width.max(tab.width) + 4.0 * short,
        })?;
        let circle = |radius: f64| Outline::circle(at, radius);
        draft
            .body
            .cut(Prism::new(circle(hole.drawn / 2.0), -THROUGH, THROUGH));
        let cone = Prism::new(circle(head.drawn / 2.0), thick - sink, thick + 1.0);
        draft.body.cut(cone.with_low(Edge::chamfer(sink)));
    }
    draft.sizes.extend([hole, head]);
    Ok(())
}
