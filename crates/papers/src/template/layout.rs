//! What lies where on which page: small templates together, large ones in tiles.

use latchwright_drawing::{Drawing, Item, Palette, Rect, Shape, svg};
use latchwright_geometry::Point;
use latchwright_model::{Paper, Units};
use latchwright_words::workshop::tiles_fault;
use latchwright_workshop::Template;
use latchwright_workshop::ruler::Correction;
use latchwright_workshop::tiles::{Avoid, MARGIN, OVERLAP, Sheet, Tile, Tiling, tiles_around};

use super::corner::keep_clear;
use super::join;
use super::pack::{Packed, pack};
use crate::error::PaperError;

/// Height of the strip for headings, mm.
const HEAD: f64 = 9.0;
/// More where the page says how it was corrected, mm.
const HEAD_CORRECTED: f64 = 12.5;
/// Height of the strip for the line along x, mm.
pub(super) const FOOT: f64 = 11.0;
/// Width of the strip for the line along y, mm: a plate of 250 fits beside it on the common sheet.
const SIDE: f64 = 6.4;
/// Where both lines begin, mm from the content's left and from its foot.
pub(super) const ZERO: (f64, f64) = (3.0, 4.0);

/// From words that were moved onto a tile to its edge, mm.
const AIR: f64 = 0.6;

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
    /// Which way the strokes of the square's fourth corner run: −1 or 1 to the right and up.
    pub strokes: (f64, f64),
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
pub(super) fn pages<'a>(
    all: &'a [Template],
    sheet: &Sheet,
    units: Units,
) -> Result<Vec<Page<'a>>, PaperError> {
    let mut large = Vec::new();
    let mut small = Vec::new();
    for template in all {
        let drawing = &template.drawing;
        let tiling = tiles_around(drawing.bounds, sheet, &avoid(drawing)).map_err(|fault| {
            let name = template.kind.name();
            let reason = format!("{name}: {}", tiles_fault(&fault, units));
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
    let spaces = [false, true].map(|landscape| sheet.space(landscape));
    let mut pages: Vec<Page<'a>> = Vec::new();
    for (template, tiling) in &large {
        for tile in &tiling.tiles {
            pages.push(tile_page(sheet, template, tiling, tile));
        }
    }
    let shared = pack(&sizes, spaces).into_iter();
    pages.extend(shared.map(|packed| shared_page(sheet, &small, &packed)));
    for (number, page) in pages.iter_mut().enumerate() {
        let (width, height) = page.content;
        keep_clear(page, [sheet.side, sheet.head, width, height - sheet.foot]);
        for (index, piece) in page.pieces.iter_mut().enumerate() {
            piece.file = format!("piece-{}-{}.svg", number + 1, index + 1);
        }
    }
    Ok(pages)
}

fn empty<'a>(sheet: &Sheet, landscape: bool) -> Page<'a> {
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
        strokes: (-1.0, -1.0),
    }
}

fn tile_page<'a>(sheet: &Sheet, template: &'a Template, tiling: &Tiling, tile: &Tile) -> Page<'a> {
    let blank = empty(sheet, tiling.landscape);
    let mut drawing = cut(&template.drawing, tile, tiling);
    join::mark(&mut drawing, tile);
    let middle = |space: f64, size: f64| ((space - size) / 2.0).max(0.0);
    let at = (
        sheet.side + middle(tiling.space.0, tile.window.width()),
        sheet.head + middle(tiling.space.1, tile.window.height()),
    );
    let piece = Piece {
        file: String::new(),
        at,
        drawing,
        described: format!("{}, tile {}, at true size", described(template), tile.name),
    };
    Page {
        pieces: vec![piece],
        shown: vec![template],
        tile: Some(TilePlace {
            tile: tile.clone(),
            rows: tiling.rows,
            columns: tiling.columns,
        }),
        ..blank
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
        pieces,
        shown,
        ..blank
    }
}

fn described(template: &Template) -> String {
    let mirrored = if template.mirrored { ", mirrored" } else { "" };
    format!(
        "Drawing of the {}{mirrored}, {} places to be pricked",
        template.kind.name(),
        template.centres.len()
    )
}

/// What a seam had better not run through: holes before words before small shapes. Long lines are cut
/// wherever it runs.
fn avoid(drawing: &Drawing) -> Vec<Avoid> {
    let long = |extent: Rect| {
        extent.width() > 0.4 * drawing.bounds.width()
            || extent.height() > 0.4 * drawing.bounds.height()
    };
    let weigh = |item: &Item| {
        let area = item.shape.extent();
        let weight = match item.shape {
            Shape::Circle { .. } => 30.0,
            Shape::Text(_) => 3.0,
            Shape::Path { .. } if long(area) => return None,
            Shape::Path { .. } => 1.0,
        };
        Some(Avoid { area, weight })
    };
    drawing.items.iter().filter_map(weigh).collect()
}

/// What of `drawing` can be seen on `tile`; what is cut by its edge is left whole. Words that are cut
/// stand on one tile only: on one that holds them whole, else where their middle is, moved in.
fn cut(drawing: &Drawing, tile: &Tile, tiling: &Tiling) -> Drawing {
    let shown = |item: &Item| {
        let extent = item.shape.extent();
        if matches!(item.shape, Shape::Text(_)) && !tile.window.holds(extent) {
            return moved_in(item, tile, tiling);
        }
        let low = Point::new(extent.min.x - 1.0, extent.min.y - 1.0);
        let high = Point::new(extent.max.x + 1.0, extent.max.y + 1.0);
        let seen = Rect::new(low, high).overlaps(tile.window);
        seen.then(|| item.clone())
    };
    Drawing {
        bounds: tile.window,
        items: drawing.items.iter().filter_map(shown).collect(),
    }
}

/// Words that `tile` holds only in part, moved into it if they are whole nowhere and belong here.
fn moved_in(words: &Item, tile: &Tile, tiling: &Tiling) -> Option<Item> {
    let extent = words.shape.extent();
    let dot = Rect::about(extent.centre(), 0.0, 0.0);
    let whole = tiling.tiles.iter().any(|tile| tile.window.holds(extent));
    let mut here = tiling.tiles.iter().filter(|tile| tile.window.holds(dot));
    if whole || here.next() != Some(tile) {
        return None;
    }
    let window = tile.window.grown(-AIR);
    let by = Point::new(
        (window.min.x - extent.min.x).max(0.0) - (extent.max.x - window.max.x).max(0.0),
        (window.min.y - extent.min.y).max(0.0) - (extent.max.y - window.max.y).max(0.0),
    );
    Some(Item {
        shape: words.shape.shifted(by),
        ..words.clone()
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use latchwright_drawing::{Ink, Layer, Text};

    #[test]
    fn words_on_a_seam_stand_whole_on_one_tile() {
        let paper = Sheet::plain(Paper::A4);
        let mut drawing = Drawing::new(Rect::about(Point::default(), 400.0, 100.0));
        let tiling = tiles_around(drawing.bounds, &paper, &[]).unwrap();
        let [one, other] = [0, 1].map(|tile| tiling.tiles[tile].window);
        for (index, x) in [other.min.x, one.max.x, other.min.x + 7.5]
            .into_iter()
            .enumerate()
        {
            let at = Point::new(x, 10.0 * index as f64);
            let text = Text::new(at, "rabbet in the underside", 2.6);
            drawing
                .items
                .push(Item::text(Layer::Notes, Ink::Note, text));
        }
        let mut seen = 0;
        for tile in &tiling.tiles {
            for item in cut(&drawing, tile, &tiling).items {
                assert!(tile.window.holds(item.shape.extent()), "{item:?}");
                seen += 1;
            }
        }
        assert_eq!(seen, 3);
    }
}
