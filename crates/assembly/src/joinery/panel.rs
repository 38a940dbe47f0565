//! Floor and top in their grooves, with room to swell and wood enough to hold when they shrink.

use latchwright_model::wood::{Air, Mover, Swelling};
use latchwright_model::{Climate, Design, Grain, Material, OwnWood, Place, Sawn};

use super::Fit;

/// Least that a panel has to stand in its groove on each side at its driest, mm: common practice, no
/// source.
pub const LEAST_HOLD: f64 = 2.0;
/// Clearance on each side besides what the season asks for, mm: common practice, no source.
const EASE: f64 = 0.5;

/// Which panel lies in a groove.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PanelKind {
    /// The floor of the box.
    Floor,
    /// The top of the lid, where the lid is a band.
    Plate,
}

impl PanelKind {
    /// What people call it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Floor => "floor",
            Self::Plate => "plate",
        }
    }

    /// The part of the design that it belongs to.
    pub(super) const fn place(self) -> Place {
        match self {
            Self::Floor => Place::Body,
            Self::Plate => Place::Plate,
        }
    }
}

/// A panel that lies loose in the sides' grooves.
#[derive(Debug, Clone, PartialEq)]
pub struct Panel {
    /// Which one.
    pub kind: PanelKind,
    /// Along x, mm.
    pub width: Fit,
    /// Along y, mm.
    pub depth: Fit,
    /// Thickness, mm.
    pub thickness: Fit,
    /// Species, or kind of sheet.
    pub material: Material,
    /// Clear on each side along x on the day it is built, mm.
    pub gap_x: f64,
    /// Clear on each side along y on the day it is built, mm.
    pub gap_y: f64,
    /// How much it grows along x and y at its dampest, mm in all, against its sides.
    pub grows: (f64, f64),
    /// How much it shrinks along x and y at its driest, mm in all, against its sides.
    pub shrinks: (f64, f64),
    /// What stands in the groove on each side along x and y at its driest, pushed to neither side, mm.
    pub holds: (f64, f64),
    /// Whether its wood is in no table, so that one that moves more than any was taken.
    pub guessed: bool,
}

/// What a direction of a panel does over the year against the sides, as a fraction of its size.
#[derive(Clone, Copy)]
struct Moves {
    grows: f64,
    shrinks: f64,
}

/// What a panel does along x and y.
#[derive(Clone, Copy)]
struct PanelMoves {
    x: Moves,
    y: Moves,
    /// Whether its wood had to be guessed.
    guessed: bool,
}

/// Size of a panel, mm.
#[derive(Clone, Copy)]
struct PanelSize {
    /// Along x.
    width: f64,
    /// Along y.
    depth: f64,
    thickness: f64,
}

/// The floor: as large as its groove allows.
pub(super) fn floor(design: &Design) -> Panel {
    let floor = &design.body.floor;
    let groove = design.body.groove;
    let moves = moves(design, &floor.material);
    let fit = |room: f64, moves: Moves| {
        let over = room + 2.0 * groove;
        let grown = over.max(0.0) * moves.grows;
        over - grown - 2.0 * EASE
    };
    let size = PanelSize {
        width: fit(design.inside.width, moves.x),
        depth: fit(design.inside.depth, moves.y),
        thickness: floor.thickness,
    };
    let material = floor.material.clone();
    panel(design, PanelKind::Floor, material, size, moves)
}

/// The plate in its groove: as large as the design says.
pub(super) fn top(design: &Design) -> Panel {
    let plate = &design.plate;
    let material = Material::Wood {
        species: plate.wood.clone(),
        sawn: plate.sawn,
        grain: plate.grain,
    };
    let moves = moves(design, &material);
    let size = PanelSize {
        width: plate.width,
        depth: plate.depth,
        thickness: plate.thickness,
    };
    panel(design, PanelKind::Plate, material, size, moves)
}

fn panel(
    design: &Design,
    kind: PanelKind,
    material: Material,
    size: PanelSize,
    moves: PanelMoves,
) -> Panel {
    let PanelSize {
        width,
        depth,
        thickness,
    } = size;
    let PanelMoves { x, y, guessed } = moves;
    let film = design.workmanship.film.max(0.0);
    let groove = design.body.groove;
    let side = |room: f64, size: f64| (room + 2.0 * groove - size) / 2.0;
    let (gap_x, gap_y) = (
        side(design.inside.width, width),
        side(design.inside.depth, depth),
    );
    let shrinks = (width.max(0.0) * x.shrinks, depth.max(0.0) * y.shrinks);
    Panel {
        kind,
        width: Fit::outer(width, film),
        depth: Fit::outer(depth, film),
        thickness: Fit::outer(thickness, film),
        material,
        gap_x,
        gap_y,
        grows: (width.max(0.0) * x.grows, depth.max(0.0) * y.grows),
        shrinks,
        holds: (
            groove - gap_x - shrinks.0 / 2.0,
            groove - gap_y - shrinks.1 / 2.0,
        ),
        guessed,
    }
}

/// What a panel of `material` does.
fn moves(design: &Design, material: &Material) -> PanelMoves {
    let sides = Material::Wood {
        species: design.body.wood.clone(),
        sawn: design.body.sawn,
        grain: Grain::AlongX,
    };
    let (along, _) = mover(design, &sides, true);
    let (x, guessed) = mover(design, material, true);
    let (y, _) = mover(design, material, false);
    PanelMoves {
        x: against(design, x, along),
        y: against(design, y, along),
        guessed,
    }
}

/// What moves a part of `material` along x or y; the safe side for a wood in no table.
fn mover(design: &Design, material: &Material, along_x: bool) -> (Mover, bool) {
    let mut probe = Design {
        own_woods: design.own_woods.clone(),
        dials: Vec::new(),
        ..Design::default()
    };
    probe.slider.material = material.clone();
    if let Some(mover) = Mover::of_slider(&probe, along_x) {
        return (mover, false);
    }
    let unknown = OwnWood::default();
    let coefficient = match material {
        Material::Wood { sawn, grain, .. } if (*grain == Grain::AlongX) != along_x => match sawn {
            Sawn::Flat => unknown.tangential,
            Sawn::Quarter => unknown.radial,
        },
        _ => 0.0,
    };
    (Mover::Wood(Swelling::of_coefficient(coefficient)), true)
}

/// Extremes of what `panel` moves less what `side` moves, over every mixture of the warmth and the damp
/// of the three airs that the design names.
fn against(design: &Design, panel: Mover, side: Mover) -> Moves {
    let season = &design.season;
    let named = [season.built, season.driest, season.dampest];
    let built = Air::of(season.built);
    let mut moves = Moves {
        grows: 0.0,
        shrinks: 0.0,
    };
    for warm in named {
        for damp in named {
            let now = Air::of(Climate {
                celsius: warm.celsius,
                humidity: damp.humidity,
            });
            let moved = panel.moved(built, now) - side.moved(built, now);
            moves.grows = moves.grows.max(moved);
            moves.shrinks = moves.shrinks.max(-moved);
        }
    }
    moves
}
