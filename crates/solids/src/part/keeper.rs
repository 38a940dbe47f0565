//! The keeper plate with two countersunk holes, printed on the face that holds the tab.

use latchwright_geometry::Point;

use super::{Draft, Kind, Part, PartId, Shop};
use crate::extrude::{Prism, THROUGH};
use crate::fault::{PartFault, Slim, Wall};
use crate::feature::Feature;
use crate::mesh::Pose;
use crate::options::Screw;
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
    let screw = shop.options.screw.unwrap_or_default();
    let block = Block {
        width,
        depth,
        thick,
    };
    holes(shop, &mut draft, &screw, block)?;
    let y = keeper.edge - keeper.depth / 2.0;
    draft.assembled = Some(Pose::to(shop.design.tab.at, y, 0.0));
    draft.finish(fit.printer)
}

/// The keeper as it is printed, mm.
#[derive(Clone, Copy)]
struct Block {
    /// Along x.
    width: f64,
    /// Along y.
    depth: f64,
    thick: f64,
}

fn holes(shop: &Shop<'_>, draft: &mut Draft, screw: &Screw, block: Block) -> Result<(), PartFault> {
    let Block {
        width,
        depth,
        thick,
    } = block;
    let hole = shop.fit.hole(Feature::ScrewHole, screw.clearance);
    let head = shop.fit.hole(Feature::ScrewHead, screw.head);
    let sink = ((head.drawn - hole.drawn) / 2.0).max(0.1);
    let wall = (depth - head.drawn) / 2.0;
    let keeper = &shop.design.keeper;
    shop.wall(draft.id, wall, |short| Wall::BesideHeads {
        depth_mm: keeper.depth + 2.0 * short,
    })?;
    shop.wall(draft.id, thick - sink, |short| Wall::OverHeads {
        thickness_mm: keeper.thickness + short,
    })?;
    let out = (width / 2.0 - head.drawn / 2.0 - 2.0).max(head.drawn / 2.0 + 1.0);
    let beyond = width / 2.0 - out - head.drawn / 2.0;
    shop.wall(draft.id, beyond, |short| Wall::BeyondScrews {
        width_mm: width + 2.0 * short,
    })?;
    for x in [-out, out] {
        let circle = |radius: f64| Outline::circle(Point::new(x, 0.0), radius);
        draft
            .body
            .cut(Prism::new(circle(hole.drawn / 2.0), -THROUGH, THROUGH));
        let cone = Prism::new(circle(head.drawn / 2.0), -1.0, sink);
        draft.body.cut(cone.with_high(Edge::chamfer(sink)));
    }
    draft.sizes.extend([hole, head]);
    Ok(())
}
