//! What lies where on which page: small templates together, large ones in tiles.

use latchwright_drawing::{Drawing, Palette, Rect, svg};
use latchwright_geometry::Point;
use latchwright_solver::model::Paper;
use latchwright_workshop::Template;
use latchwright_workshop::ruler::Correction;
use latchwright_workshop::tiles::{MARGIN, OVERLAP, Sheet, Tile, Tiling, tiles};

use super::join;
use super::pack::{Packed, pack};
use crate::error::PaperError;

/// Height of the strip for headings, mm.
const HEAD: f64 = 12.0;
/// More where the page says how it was corrected, mm.
const HEAD_CORRECTED: f64 = 16.0;
/// Height of the strip for the line along x, mm.
const FOOT: f64 = 16.0;
/// Width of the strip for the line along y, mm.
const SIDE: f64 = 9.0;

/// The sheet that these pages are laid out on.
pub(super) fn sheet(paper: Paper, correction: Correction) -> Sheet {
    Sheet {
        paper,
        head: if correction == Correction::NONE {
            HEAD
        } else {
            HEAD_CORRECTED
        },
        foot: FOOT,
        side: SIDE,
        correction,
        overlap: OVERLAP,
    }
}

/// One page.
pub(super) struct Page<'a> {
    /// Width and height of the paper as it is held, mm.
    pub paper: (f64, f64),
    /// Width and height of what is laid out, mm at true size.
    pub content: (f64, f64),
    /// Where the content's upper left corner stands on the paper, mm from its upper left.
    pub corner: (f64, f64),
    /// What is drawn on it.
    pub pieces: Vec<Piece>,
    /// The templates on it.
    pub shown: Vec<&'a Template>,
    /// Where it is among the tiles of a large part.
    pub tile: Option<TilePlace>,
}

/// A drawing on a page.
pub(super) struct Piece {
    /// Its file's name.
    pub file: String,
    /// Where its upper left corner stands in the content, mm from its upper left.
    pub at: (f64, f64),
    /// What is drawn, cut to what is seen.
    pub drawing: Drawing,
    /// In words, for those who do not see it.
    pub described: String,
}

/// One tile among its neighbours.
pub(super) struct TilePlace {
    /// The tile.
    pub tile: Tile,
    /// How many rows and columns there are.
    pub rows: usize,
    /// See `rows`.
    pub columns: usize,
}

impl Piece {
    /// The drawing as a file.
    pub(super) fn svg(&self) -> Vec<u8> {
        svg(&self.drawing, &Palette::PRINT).into_bytes()
    }
}

/// The pages for `all`, in their order as far as sharing sheets allows.
pub(super) fn pages<'a>(all: &'a [Template], sheet: &Sheet) -> Result<Vec<Page<'a>>, PaperError> {
    let mut large = Vec::new();
    let mut small = Vec::new();
    for template in all {
        let tiling = tiles(template.drawing.bounds, sheet).map_err(|reason| {
            let reason = format!("{}: {reason}", template.name);
            PaperError::Template { reason }
        })?;
        if tiling.tiles.len() > 1 {
            large.push((template, tiling));
        } else {
            small.push(template);
        }
    }
    let sizes: Vec<(f64, f64)> = small
        .iter()
        .map(|template| {
            let bounds = template.drawing.bounds;
            (bounds.width(), bounds.height())
        })
        .collect();
    let rooms = [false, true].map(|landscape| sheet.room(landscape));
    let mut pages: Vec<Page<'a>> = Vec::new();
    for (template, tiling) in &large {
        for tile in &tiling.tiles {
            pages.push(tile_page(sheet, template, tiling, tile));
        }
    }
    let shared = pack(&sizes, rooms).into_iter();
    pages.extend(shared.map(|packed| shared_page(sheet, &small, &packed)));
    for (number, page) in pages.iter_mut().enumerate() {
        for (index, piece) in page.pieces.iter_mut().enumerate() {
            piece.file = format!("piece-{}-{}.svg", number + 1, index + 1);
        }
    }
    Ok(pages)
}

fn empty(sheet: &Sheet, landscape: bool) -> Page<'_> {
    let (width, height) = sheet.content(landscape);
    let [_, lean, _, _] = sheet.correction.matrix();
    // On paper y runs down: a page that is pushed to the right at its foot starts at the margin, one
    // that is pushed to the left needs the room on that side.
    let aside = (lean * height).max(0.0);
    Page {
        paper: sheet.held(landscape),
        content: (width, height),
        corner: (MARGIN + aside, MARGIN),
        pieces: Vec::new(),
        shown: Vec::new(),
        tile: None,
    }
}

fn tile_page<'a>(sheet: &Sheet, template: &'a Template, tiling: &Tiling, tile: &Tile) -> Page<'a> {
    let blank = empty(sheet, tiling.landscape);
    let mut drawing = cut(&template.drawing, tile.window);
    join::mark(&mut drawing, tile);
    let piece = Piece {
        file: String::new(),
        at: (sheet.side, sheet.head),
        drawing,
        described: format!("{}, tile {}, at true size", described(template), tile.name),
    };
    Page {
        paper: blank.paper,
        content: blank.content,
        corner: blank.corner,
        pieces: vec![piece],
        shown: vec![template],
        tile: Some(TilePlace {
            tile: tile.clone(),
            rows: tiling.rows,
            columns: tiling.columns,
        }),
    }
}

fn shared_page<'a>(sheet: &Sheet, small: &[&'a Template], packed: &Packed) -> Page<'a> {
    let blank = empty(sheet, packed.landscape);
    let mut pieces = Vec::new();
    let mut shown = Vec::new();
    for place in &packed.places {
        let Some(template) = small.get(place.index) else {
            continue;
        };
        shown.push(*template);
        pieces.push(Piece {
            file: String::new(),
            at: (sheet.side + place.x, sheet.head + place.y),
            drawing: template.drawing.clone(),
            described: format!("{}, at true size", described(template)),
        });
    }
    Page {
        paper: blank.paper,
        content: blank.content,
        corner: blank.corner,
        pieces,
        shown,
        tile: None,
    }
}

fn described(template: &Template) -> String {
    let mirrored = if template.mirrored { ", mirrored" } else { "" };
    format!(
        "Drawing of the {}{mirrored}, {} places to be pricked",
        template.name,
        template.centres.len()
    )
}

/// What of `drawing` can be seen in `window`; what is cut by its edge is left whole.
fn cut(drawing: &Drawing, window: Rect) -> Drawing {
    let seen = |extent: Rect| {
        let low = Point::new(extent.min.x - 1.0, extent.min.y - 1.0);
        let high = Point::new(extent.max.x + 1.0, extent.max.y + 1.0);
        Rect::new(low, high).overlaps(window)
    };
    Drawing {
        bounds: window,
        items: drawing
            .items
            .iter()
            .filter(|item| seen(item.shape.extent()))
            .cloned()
            .collect(),
    }
}
