//! The keeper plate with two countersunk holes, printed on the face that holds the tab.

use latchwright_geometry::Point;

use super::{Draft, Kind, Part, Shop};
use crate::extrude::{Prism, THROUGH};
use crate::fault::PartFault;
use crate::mesh::Pose;
use crate::options::Screw;
use crate::outline::Outline;
use crate::slope::Edge;

/// The keeper plate.
pub(crate) fn keeper(shop: &Shop<'_>) -> Result<Part, PartFault> {
    let mut draft = Draft::new("Keeper".to_owned(), Kind::Keeper, None);
    "make the keeper smaller, or of wood".clone_into(&mut draft.smaller);
    let (fit, keeper) = (&shop.fit, &shop.design.keeper);
    let remedy = "take a larger keeper";
    let (width, depth) = (
        fit.outside("keeper's width", keeper.width),
        fit.outside("keeper's depth", keeper.depth),
    );
    shop.enough(&draft.name, &width, remedy)?;
    shop.enough(&draft.name, &depth, remedy)?;
    let (width, depth) = (draft.draw(width), draft.draw(depth));
    let thick = draft.draw(fit.height("keeper's thickness", keeper.thickness, 2.0));
    let corner = 2.0_f64.min(width / 4.0).min(depth / 4.0);
    let plate = Outline::block(Point::default(), width, depth).rounded(corner);
    // on this face the tab slips under: its chamfer leads it in
    let lead = shop.options.chamfer.max(0.8).min(thick / 3.0).min(corner);
    draft
        .body
        .add(Prism::new(plate, 0.0, thick).with_low(Edge::chamfer(lead)));
    let screw = shop.options.screw.unwrap_or_default();
    holes(shop, &mut draft, &screw, (width, depth, thick))?;
    let y = keeper.edge - keeper.depth / 2.0;
    draft.assembled = Some(Pose::to(shop.design.tab.at, y, 0.0));
    draft.finish(fit.printer)
}

fn holes(
    shop: &Shop<'_>,
    draft: &mut Draft,
    screw: &Screw,
    (width, depth, thick): (f64, f64, f64),
) -> Result<(), PartFault> {
    let hole = shop.fit.hole("hole for a screw", screw.clearance);
    let head = shop.fit.hole("head of a screw", screw.head);
    let sink = ((head.drawn - hole.drawn) / 2.0).max(0.1);
    let wall = (depth - head.drawn) / 2.0;
    let remedy = |short: f64| {
        format!(
            "make the keeper at least {:.2} mm deep, or take a smaller screw",
            shop.design.keeper.depth + 2.0 * short
        )
    };
    shop.wall(&draft.name, "beside the heads of its screws", wall, remedy)?;
    shop.wall(
        &draft.name,
        "over the heads of its screws",
        thick - sink,
        |short| {
            format!(
                "make the keeper at least {:.2} mm thick",
                shop.design.keeper.thickness + short
            )
        },
    )?;
    let out = (width / 2.0 - head.drawn / 2.0 - 2.0).max(head.drawn / 2.0 + 1.0);
    shop.wall(
        &draft.name,
        "beyond its screws",
        width / 2.0 - out - head.drawn / 2.0,
        |short| {
            format!(
                "make the keeper at least {:.2} mm wide",
                width + 2.0 * short
            )
        },
    )?;
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
