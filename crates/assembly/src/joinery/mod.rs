//! The box in wood: outside and inside, every side with its ends and grooves, floor and top with room
//! to move, where the lid is cut, and where hinges and keeper go.
//!
//! Every place is measured from finished edges. A size has two values: `finished`, as it is with its
//! coats on, and `bare`, as it leaves saw and plane: an outside size is two coats smaller, an opening
//! two coats larger. Joints, grooves, bores and mortises are never coated.
//!
//! Heights: the sides stand `foot` below the floor, then floor, room, and (with a band) the plate in its
//! groove with as much wood over it as there is under the floor, and one kerf for the cut.

mod faults;
mod fittings;
mod panel;
mod sides;

use latchwright_model::{Corner, Design, LidKind};

use latchwright_model::shown;

pub use faults::{BoxSize, JoineryFault};
pub use fittings::{KeeperSeat, Mortise, Notch};
pub use panel::{LEAST_HOLD, Panel, PanelKind};
pub use sides::{End, Groove, Side, SidePlace};

/// A size with its coats on and without them, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fit {
    /// As it is when all is done.
    pub finished: f64,
    /// As it leaves saw, plane or bit.
    pub bare: f64,
}

/// Along x, along y and upwards, mm, finished.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Extent {
    /// Along x.
    pub width: f64,
    /// Along y, from front to back.
    pub depth: f64,
    /// Upwards.
    pub height: f64,
}

/// How far the plate stands out beyond the sides, mm; below 0 where it does not reach.
///
/// The plate is level with the back, where the hinges are, and stands in the middle along x.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Overhang {
    /// In front.
    pub front: f64,
    /// To the left, and as much to the right.
    pub side: f64,
}

/// Where a band is cut off the closed box, mm from the lower edge of the sides, finished.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LidCut {
    /// Lower face of the cut: what the box keeps.
    pub box_height: f64,
    /// What the saw takes away.
    pub lost: f64,
    /// What the sides of the lid keep.
    pub lid_height: f64,
}

/// The whole box.
#[derive(Debug, Clone, PartialEq)]
pub struct Joinery {
    /// Outside of the closed box without plate or, with a band, with the lid, after the cut.
    pub outside: Extent,
    /// The room inside.
    pub inside: Extent,
    /// How two sides meet.
    pub corner: Corner,
    /// Thickness of the sides.
    pub thickness: Fit,
    /// Height of the sides as they are glued up, kerf included.
    pub height: Fit,
    /// Front, right, back, left: round the box, seen from above, against the clock.
    pub sides: [Side; 4],
    /// The floor in its grooves.
    pub floor: Panel,
    /// The plate in its grooves, with a band; `None` where it lies on the sides.
    pub top: Option<Panel>,
    /// How far the plate stands out, where it lies on the sides.
    pub overhang: Option<Overhang>,
    /// Where the band is cut off.
    pub lid: Option<LidCut>,
    /// The hinges' mortises, left and right.
    pub hinges: [Mortise; 2],
    /// Where the keeper sits.
    pub keeper: KeeperSeat,
    /// The cut in the front's upper edge for the tab; `None` where the tab stays clear of the front.
    pub notch: Option<Notch>,
    /// What cannot be built, or needs a second look.
    pub faults: Vec<JoineryFault>,
}

impl Fit {
    /// Something that has a coat on both its faces.
    pub fn outer(finished: f64, film: f64) -> Self {
        Self {
            finished,
            bare: finished - 2.0 * film,
        }
    }

    /// Something between two coated faces.
    pub fn opening(finished: f64, film: f64) -> Self {
        Self {
            finished,
            bare: finished + 2.0 * film,
        }
    }

    /// From one coated face into wood that stays bare: the depth of a groove or a mortise.
    pub fn into(finished: f64, film: f64) -> Self {
        Self {
            finished,
            bare: finished - film,
        }
    }
}

/// The box of `design`, with its faults; never refuses, so that what can be shown is shown.
pub fn joinery(design: &Design) -> Joinery {
    let design = &shown(design);
    let (body, inside) = (&design.body, &design.inside);
    let film = design.workmanship.film.max(0.0);
    let heights = Heights::of(design);
    let inside = Extent {
        width: inside.width,
        depth: inside.depth,
        height: inside.height,
    };
    let outside = Extent {
        width: inside.width + 2.0 * body.thickness,
        depth: inside.depth + 2.0 * body.thickness,
        height: heights.closed(),
    };
    let mut joinery = Joinery {
        outside,
        inside,
        corner: body.corner,
        thickness: Fit::outer(body.thickness, film),
        height: Fit::outer(heights.glued, film),
        sides: sides::all(design, &outside, &heights),
        floor: panel::floor(design),
        top: matches!(body.lid, LidKind::Band { .. }).then(|| panel::top(design)),
        overhang: matches!(body.lid, LidKind::Plate).then(|| overhang(design, &outside)),
        lid: heights.cut,
        hinges: fittings::mortises(design, &outside, &heights),
        keeper: fittings::keeper(design, &outside),
        notch: fittings::notch(design, &outside),
        faults: Vec::new(),
    };
    joinery.faults = faults::all(design, &joinery);
    joinery
}

fn overhang(design: &Design, outside: &Extent) -> Overhang {
    Overhang {
        front: design.plate.depth - outside.depth,
        side: (design.plate.width - outside.width) / 2.0,
    }
}

/// Where the front's outer face is, y in the design's frame, mm: the plate's back edge is level with
/// the back where it lies on the sides, and stands in the middle where it is in a groove.
pub fn front_face(design: &Design) -> f64 {
    let outside = design.inside.depth + 2.0 * design.body.thickness;
    match design.body.lid {
        LidKind::Plate => design.plate.depth - outside,
        LidKind::Band { .. } => (design.plate.depth - outside) / 2.0,
    }
}

/// Heights over the lower edge of the sides, mm, finished.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Heights {
    /// Of the sides as they are glued up.
    pub glued: f64,
    /// Lower wall of the plate's groove, counted as glued up; with a band only.
    pub top_groove: Option<f64>,
    /// Where a band is cut off.
    pub cut: Option<LidCut>,
}

impl Heights {
    fn of(design: &Design) -> Self {
        let body = &design.body;
        let room = body.foot + body.floor.thickness + design.inside.height;
        match body.lid {
            LidKind::Plate => Self {
                glued: room,
                top_groove: None,
                cut: None,
            },
            LidKind::Band { height } => {
                let lost = design.bench.kerf.max(0.0);
                let glued = room + lost + design.plate.thickness + body.foot;
                Self {
                    glued,
                    top_groove: Some(room + lost),
                    cut: Some(LidCut {
                        box_height: glued - lost - height,
                        lost,
                        lid_height: height,
                    }),
                }
            }
        }
    }

    /// Of the sides when the box is closed.
    fn closed(&self) -> f64 {
        self.glued - self.cut.map_or(0.0, |cut| cut.lost)
    }
}

#[cfg(test)]
mod tests;
