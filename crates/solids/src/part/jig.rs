//! The drilling jig: a fence over the plate's front edge, and a guide over each bore.
//!
//! It is used turned over, fence down, on the outside of the plate; so it is drawn with left and
//! right changed.

use latchwright_geometry::Point;
use latchwright_model::Dial;

use super::{Draft, Kind, Part, Shop};
use crate::extrude::{Prism, THROUGH};
use crate::fault::{MeshFault, PartFault};
use crate::outline::Outline;
use crate::region::Region;

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
    let whole = jig(shop, "Drilling jig".to_owned(), &dials, 0.0);
    if dials.len() < 2 || !matches!(whole, Err(PartFault::LargerThanBed { .. })) {
        return vec![whole];
    }
    dials
        .iter()
        .enumerate()
        .map(|(index, dial)| {
            let name = format!("Drilling jig {}", index + 1);
            jig(shop, name, &[*dial], dial.centre.0)
        })
        .collect()
}

/// A jig whose notch lies on the line x = `line` of the plate.
fn jig(shop: &Shop<'_>, name: String, dials: &[&Dial], line: f64) -> Result<Part, PartFault> {
    let mut draft = Draft::new(name, Kind::Jig, None);
    "mark the bores with the paper template instead".clone_into(&mut draft.smaller);
    let hole = shop.fit.hole("guide", shop.options.jig_drill);
    let radius = hole.drawn / 2.0;
    let remedy = |short: f64| format!("guide a bit at least {short:.2} mm thinner");
    shop.wall(&draft.name, "around the guide", ARM - radius, remedy)?;
    let broken = |fault| PartFault::Mesh {
        part: draft.name.clone(),
        fault,
    };
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
    draft.warn(
        "use-of-jig",
        format!(
            "lay it on the outside of the plate with the fence over the front edge and its notch on \
             {}, that edge towards you; clamp it, wear eye protection, keep to the drill's manual",
            from_the_middle(line)
        ),
    );
    draft.finish(shop.fit.printer)
}

/// Where the line x = `line` is, for somebody who looks at the plate from outside.
fn from_the_middle(line: f64) -> String {
    let off = format!("{:.2}", line.abs());
    if off == "0.00" {
        return "the edge's middle".to_owned();
    }
    let side = if line < 0.0 { "left" } else { "right" };
    format!("the line {off} mm {side} of the edge's middle")
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
