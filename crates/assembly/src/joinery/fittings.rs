//! Where hinges and keeper go, and the notch for the tab, all from finished edges.

use latchwright_model::{Design, LidKind};

use super::{Extent, Fit, Heights, front_face};

/// Free space round the tab in its notch, mm: common practice, no source.
const ROUND_TAB: f64 = 1.0;

/// A mortise for one leaf of a hinge in the back's upper edge; the same again in the lid.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mortise {
    /// Nearer end, along x from the left outside of the box, mm.
    pub from: f64,
    /// Other end, along x from the left outside of the box, mm.
    pub to: f64,
    /// From the back's outer face inwards, mm.
    pub width: f64,
    /// How deep the leaf is let in below the finished face, mm; the mortise itself stays bare.
    pub depth: Fit,
    /// Height of the face it is cut into above the lower edge of the closed box, mm.
    pub at_height: f64,
}

/// Where the keeper sits, mm, finished.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct KeeperSeat {
    /// Left end, along x from the left outside of the box.
    pub left: f64,
    /// Right end, along x from the left outside of the box.
    pub right: f64,
    /// Front edge, from the front's outer face inwards; below 0 where it stands out.
    pub front: f64,
    /// The edge that the tab clears, from the front's outer face inwards.
    pub edge: f64,
    /// Height of its underside above the lower edge of the closed box: the plate's underside.
    pub underside: f64,
    /// How much of its depth lies on the front's edge.
    pub on_front: f64,
}

/// What is cut out of the front's upper edge so that the tab can go under the keeper, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Notch {
    /// Left end, along x from the left outside of the box.
    pub left: f64,
    /// Right end, along x from the left outside of the box.
    pub right: f64,
    /// Down from the upper edge.
    pub depth: f64,
    /// How much of the front's thickness it takes, from the inside face outwards.
    pub into: f64,
    /// What stays of the front before it.
    pub left_in_front: f64,
}

pub(super) fn mortises(design: &Design, outside: &Extent, heights: &Heights) -> [Mortise; 2] {
    let hinge = &design.body.hinge;
    let film = design.workmanship.film.max(0.0);
    let at_height = heights.cut.map_or(heights.glued, |cut| cut.box_height);
    let mortise = |from: f64| Mortise {
        from,
        to: from + hinge.length,
        width: hinge.leaf,
        depth: Fit::into(hinge.thickness, film),
        at_height,
    };
    [
        mortise(hinge.inset),
        mortise(outside.width - hinge.inset - hinge.length),
    ]
}

pub(super) fn keeper(design: &Design, outside: &Extent) -> KeeperSeat {
    let (keeper, body) = (&design.keeper, &design.body);
    let middle = outside.width / 2.0 + design.tab.at;
    let edge = keeper.edge - front_face(design);
    let front = edge - keeper.depth;
    let on_front = (edge.min(body.thickness) - front.max(0.0)).max(0.0);
    KeeperSeat {
        left: middle - keeper.width / 2.0,
        right: middle + keeper.width / 2.0,
        front,
        edge,
        underside: body.foot + body.floor.thickness + design.inside.height,
        on_front,
    }
}

/// The notch, where the tab in front of its stop would meet the front.
pub(super) fn notch(design: &Design, outside: &Extent) -> Option<Notch> {
    if !matches!(design.body.lid, LidKind::Plate) {
        return None;
    }
    let (tab, slider, work) = (&design.tab, &design.slider, &design.workmanship);
    let tip = design.keeper.edge - tab.engagement - front_face(design);
    let before = tip - ROUND_TAB - work.keeper_place.max(0.0);
    if before >= design.body.thickness || tab.width <= 0.0 {
        return None;
    }
    // The slider turns in its guide by 2·play/length, which shows at the tab's end.
    let lever = 2.0 * (design.keeper.edge - slider.guide_at.1).abs() / slider.guide_length.max(1.0);
    let swing = slider.guide_play.max(0.0) * lever.max(1.0);
    let half = tab.width / 2.0 + swing + ROUND_TAB;
    let middle = outside.width / 2.0 + tab.at;
    Some(Notch {
        left: middle - half,
        right: middle + half,
        depth: slider.below + slider.thickness + ROUND_TAB,
        into: (design.body.thickness - before).min(design.body.thickness),
        left_in_front: before.max(0.0),
    })
}
