//! The four sides: lengths, ends and grooves.

use latchwright_model::{Corner, Design};

use super::{Extent, Fit, Heights, PanelKind};

/// Which side.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SidePlace {
    /// Under the keeper.
    Front,
    /// On the right, seen from the front.
    Right,
    /// With the hinges.
    Back,
    /// On the left, seen from the front.
    Left,
}

/// How both ends of a side are cut.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum End {
    /// At 45°, the long point on the outside face.
    Mitred,
    /// Square.
    Square,
    /// Square, with a rabbet on the inside that takes the end of the next side.
    Rabbeted {
        /// Along the side, mm: the other side's thickness.
        width: f64,
        /// Into the thickness, mm.
        depth: f64,
    },
}

/// A groove along the inside face of a side; it stays bare.
#[derive(Debug, Clone, PartialEq)]
pub struct Groove {
    /// The panel that goes into it.
    pub panel: PanelKind,
    /// From the lower edge of the side to the lower wall, as glued up, mm.
    pub above: Fit,
    /// Between the walls, mm: the panel's finished thickness.
    pub width: f64,
    /// Into the side from its inside face, mm.
    pub depth: Fit,
    /// How far from each end it has to stop so that it does not show, mm; 0 where it runs through.
    pub stop: f64,
}

/// One side of the box.
#[derive(Debug, Clone, PartialEq)]
pub struct Side {
    /// Which one.
    pub place: SidePlace,
    /// Length of the outside face, from long point to long point where it is mitred, mm.
    pub outside: Fit,
    /// Length of the inside face, from short point to short point where it is mitred, mm. Shorter than
    /// the outside by what the neighbours cover.
    pub inside: Fit,
    /// Height as glued up, mm.
    pub height: Fit,
    /// Thickness, mm.
    pub thickness: Fit,
    /// How both ends are cut.
    pub ends: End,
    /// Grooves, from below.
    pub grooves: Vec<Groove>,
}

impl SidePlace {
    /// Round the box from the front, seen from above, against the clock.
    pub const ALL: [Self; 4] = [Self::Front, Self::Right, Self::Back, Self::Left];

    /// What people call it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Front => "front",
            Self::Right => "right side",
            Self::Back => "back",
            Self::Left => "left side",
        }
    }

    /// Front and back run along x.
    pub const fn along_x(self) -> bool {
        matches!(self, Self::Front | Self::Back)
    }
}

pub(super) fn all(design: &Design, outside: &Extent, heights: &Heights) -> [Side; 4] {
    SidePlace::ALL.map(|place| side(design, place, outside, heights))
}

fn side(design: &Design, place: SidePlace, outside: &Extent, heights: &Heights) -> Side {
    let body = &design.body;
    let film = design.workmanship.film.max(0.0);
    let (thickness, long) = (body.thickness, place.along_x());
    let whole = if long { outside.width } else { outside.depth };
    let room = whole - 2.0 * thickness;
    let half = thickness / 2.0;
    // Ends that meet other wood are not coated: there the bare size follows from the neighbours.
    let clear = Fit::opening(room, film);
    let full = Fit::outer(whole, film);
    let (outer, inner, ends) = match (body.corner, long) {
        (Corner::Mitred, _) => (full, clear, End::Mitred),
        (Corner::Butted, true) => (full, clear, End::Square),
        (Corner::Butted, false) => (clear, clear, End::Square),
        (Corner::Rabbeted, true) => {
            let depth = half - film;
            let width = thickness - 2.0 * film;
            (full, clear, End::Rabbeted { width, depth })
        }
        (Corner::Rabbeted, false) => {
            // half the bare thickness at each end stands in the rabbets
            let sunk = Fit {
                finished: room + thickness,
                bare: clear.bare + thickness - 2.0 * film,
            };
            (sunk, sunk, End::Square)
        }
    };
    Side {
        place,
        outside: outer,
        inside: inner,
        height: Fit::outer(heights.glued, film),
        thickness: Fit::outer(thickness, film),
        ends,
        grooves: grooves(design, ends, long, heights),
    }
}

fn grooves(design: &Design, ends: End, long: bool, heights: &Heights) -> Vec<Groove> {
    let body = &design.body;
    let film = design.workmanship.film.max(0.0);
    // Where the end grain of front and back shows, a groove would show in it.
    let stop = match (body.corner, ends) {
        (Corner::Butted, _) if long => (body.thickness - body.groove).max(0.0),
        (_, End::Rabbeted { depth, .. }) if body.groove > depth => {
            (body.thickness - body.groove).max(0.0)
        }
        _ => 0.0,
    };
    let groove = |panel, above, width| Groove {
        panel,
        above: Fit::into(above, film),
        width,
        depth: Fit::into(body.groove, film),
        stop,
    };
    let mut all = vec![groove(PanelKind::Floor, body.foot, body.floor.thickness)];
    if let Some(above) = heights.top_groove {
        all.push(groove(PanelKind::Plate, above, design.plate.thickness));
    }
    all
}
