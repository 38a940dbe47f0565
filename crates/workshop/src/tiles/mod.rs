//! A drawing that is larger than a sheet, cut into tiles that are joined over marks.
//!
//! Nothing of meaning is within 10 mm of an edge of the paper; the sizes are those of ISO 216 (A4,
//! A3) and of ANSI/ASME Y14.1 (Letter, Legal, Tabloid).

mod seam;

use latchwright_drawing::Rect;
use latchwright_geometry::Point;
use latchwright_model::Paper;

use crate::ruler::Correction;
use seam::Stretch;

/// Nothing of meaning is nearer to an edge of the paper, mm.
pub const MARGIN: f64 = 10.0;
/// More sheets than this for one drawing are refused.
pub const MOST_SHEETS: usize = 20;
/// How much of its neighbour a tile shows, mm, unless asked otherwise: common practice, no source.
pub const OVERLAP: f64 = 15.0;

/// Width and height of a sheet held upright, mm.
///
/// [`Paper::A4OrLetter`] is the part that A4 and Letter have in common.
pub const fn paper_size(paper: Paper) -> (f64, f64) {
    match paper {
        Paper::A4OrLetter => (210.0, 279.4),
        Paper::A4 => (210.0, 297.0),
        Paper::A3 => (297.0, 420.0),
        Paper::Letter => (215.9, 279.4),
        Paper::Legal => (215.9, 355.6),
        Paper::Tabloid => (279.4, 431.8),
    }
}

/// The paper's name.
pub const fn paper_name(paper: Paper) -> &'static str {
    match paper {
        Paper::A4OrLetter => "A4 or Letter",
        Paper::A4 => "A4",
        Paper::A3 => "A3",
        Paper::Letter => "Letter",
        Paper::Legal => "Legal",
        Paper::Tabloid => "Tabloid",
    }
}

/// A sheet and what of it is taken up by other things than the drawing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sheet {
    /// The paper.
    pub paper: Paper,
    /// Height taken up at the top inside the margin, mm: a title.
    pub head: f64,
    /// Height taken up at the bottom inside the margin, mm: measured lines.
    pub foot: f64,
    /// Width taken up at the left inside the margin, mm: the measured line along y.
    pub side: f64,
    /// What the whole sheet is drawn through; the room shrinks so that all of it still fits.
    pub correction: Correction,
    /// How much of its neighbour a tile shows, mm.
    pub overlap: f64,
}

/// A drawing over one or more sheets, all held the same way.
#[derive(Debug, Clone, PartialEq)]
pub struct Tiling {
    /// Width and height of the sheet as it is held, mm.
    pub sheet: (f64, f64),
    /// Whether it is held with its long edge across.
    pub landscape: bool,
    /// Width and height of what a tile can show at most, mm.
    pub space: (f64, f64),
    /// How many columns, left to right.
    pub columns: usize,
    /// How many rows, from the top.
    pub rows: usize,
    /// The tiles, row by row from the top, each row from the left.
    pub tiles: Vec<Tile>,
}

/// One sheet of a tiling.
#[derive(Debug, Clone, PartialEq)]
pub struct Tile {
    /// A letter for the row and a number for the column, both from the upper left: `B3`.
    pub name: String,
    /// From 0 at the top.
    pub row: usize,
    /// From 0 at the left.
    pub column: usize,
    /// What part of the drawing it shows, in the drawing's frame, mm, y up.
    pub window: Rect,
    /// Who lies to the left.
    pub left: Option<String>,
    /// Who lies to the right.
    pub right: Option<String>,
    /// Who lies above.
    pub above: Option<String>,
    /// Who lies below.
    pub below: Option<String>,
    /// Marks that this tile shares with a neighbour.
    pub marks: Vec<JoinMark>,
}

/// A cross that two neighbours show at the same place: pin through both, then glue.
#[derive(Debug, Clone, PartialEq)]
pub struct JoinMark {
    /// In the drawing's frame, mm.
    pub at: Point,
    /// A letter that no other mark of this tiling has at the same pair of tiles: `A1–A2 a`.
    pub label: String,
}

impl Sheet {
    /// The sheet with nothing but the drawing on it, and the usual overlap.
    pub fn plain(paper: Paper) -> Self {
        Self {
            paper,
            head: 0.0,
            foot: 0.0,
            side: 0.0,
            correction: Correction::NONE,
            overlap: OVERLAP,
        }
    }

    /// Width and height of the paper, upright or with the long edge across, mm.
    pub const fn held(&self, landscape: bool) -> (f64, f64) {
        let (short, long) = paper_size(self.paper);
        if landscape {
            (long, short)
        } else {
            (short, long)
        }
    }

    /// Width and height of all that is laid out, strips included, mm at true size: as drawn and as
    /// printed it lies inside the margins.
    pub fn content(&self, landscape: bool) -> (f64, f64) {
        let (width, height) = self.held(landscape);
        let (width, height) = (width - 2.0 * MARGIN, height - 2.0 * MARGIN);
        let [along, lean, _, up] = self.correction.matrix();
        if ![along, lean, up].iter().all(|number| number.is_finite()) {
            return (0.0, 0.0);
        }
        let high = height / up.max(1.0);
        let wide = width.min((width - lean.abs() * high) / along.max(1e-9));
        (wide.max(0.0), high.max(0.0))
    }

    /// Width and height of what is left for the drawing, mm at true size.
    pub fn space(&self, landscape: bool) -> (f64, f64) {
        let (width, height) = self.content(landscape);
        (
            width - sane(self.side),
            height - sane(self.head) - sane(self.foot),
        )
    }
}

fn sane(length: f64) -> f64 {
    if length.is_finite() {
        length.max(0.0)
    } else {
        0.0
    }
}

/// Why a drawing cannot be cut into tiles. Lengths are in mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum TilesFault {
    /// The drawing has no size.
    NoSize,
    /// The sheet leaves no room beside its margins and the overlap.
    NoRoom {
        /// The paper.
        paper: Paper,
        /// How much of its neighbour a tile would show.
        overlap: f64,
    },
    /// It would take more sheets than [`MOST_SHEETS`].
    TooManySheets {
        /// The paper.
        paper: Paper,
        /// Width and height of the drawing.
        size: (f64, f64),
        /// How many it would take.
        sheets: f64,
    },
}

/// Something in a drawing that a seam had better not run through.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Avoid {
    /// Where it is, in the drawing's frame, mm.
    pub area: Rect,
    /// How much it matters beside others; above 0.
    pub weight: f64,
}

/// [`tiles_around`] where every seam is as good as any other.
///
/// # Errors
/// Those of [`tiles_around`].
pub fn tiles(bounds: Rect, sheet: &Sheet) -> Result<Tiling, TilesFault> {
    tiles_around(bounds, sheet, &[])
}

/// Cuts a drawing of `bounds` (mm) into tiles on `sheet`; held upright or across, whichever takes
/// fewer sheets, upright where it makes no difference.
///
/// Where one sheet is not enough, neighbours show the overlap twice. Seams run where they meet least of
/// what is to be avoided, and as far on as they can where that makes no difference, so that the last
/// tile is small.
///
/// # Errors
/// Where the drawing has no size, the sheet leaves no room, or more than twenty sheets
/// would be needed.
pub fn tiles_around(bounds: Rect, sheet: &Sheet, avoid: &[Avoid]) -> Result<Tiling, TilesFault> {
    let size = (bounds.width(), bounds.height());
    let sound = |mm: f64| mm.is_finite() && mm > 0.0;
    if !(sound(size.0) && sound(size.1) && bounds.min.x.is_finite() && bounds.min.y.is_finite()) {
        return Err(TilesFault::NoSize);
    }
    let overlap = sane(sheet.overlap);
    let ways = [false, true].map(|landscape| {
        let (paper, space) = (sheet.held(landscape), sheet.space(landscape));
        let columns = steps(size.0, space.0, overlap)?;
        let rows = steps(size.1, space.1, overlap)?;
        Some((landscape, paper, space, columns, rows))
    });
    let best = ways
        .into_iter()
        .flatten()
        .min_by(|a, b| (a.3 * a.4).total_cmp(&(b.3 * b.4)));
    let Some((landscape, paper, space, columns, rows)) = best else {
        return Err(TilesFault::NoRoom {
            paper: sheet.paper,
            overlap,
        });
    };
    let Some((columns, rows)) = few(columns, rows) else {
        return Err(TilesFault::TooManySheets {
            paper: sheet.paper,
            size,
            sheets: (columns * rows).min(f64::MAX),
        });
    };
    let (across, down) = seam::stretches(bounds, space, columns, rows, overlap, avoid);
    let mut tiling = Tiling {
        sheet: paper,
        landscape,
        space,
        columns,
        rows,
        tiles: Vec::new(),
    };
    tiling.lay(&across, &down, avoid);
    Ok(tiling)
}

/// How many sheets of `room` mm it takes over `size` mm; `None` where a sheet brings nothing new.
fn steps(size: f64, space: f64, overlap: f64) -> Option<f64> {
    if space <= 0.0 {
        return None;
    }
    if size <= space + 1e-9 {
        return Some(1.0);
    }
    let fresh = space - overlap;
    (fresh > 1.0).then(|| ((size - overlap) / fresh - 1e-9).ceil().max(2.0))
}

/// Both as counts if they make no more sheets than allowed.
fn few(columns: f64, rows: f64) -> Option<(usize, usize)> {
    let count = |wanted: f64| (1..=MOST_SHEETS).find(|count| *count as f64 >= wanted);
    let (columns, rows) = (count(columns)?, count(rows)?);
    (columns * rows <= MOST_SHEETS).then_some((columns, rows))
}

impl Tiling {
    /// Lays the tiles over stretches along x, from the left, and along y, from the top.
    fn lay(&mut self, across: &[Stretch], down: &[Stretch], avoid: &[Avoid]) {
        let (columns, rows) = (self.columns, self.rows);
        let window = |row: usize, column: usize| {
            let (x, y) = (across.get(column)?, down.get(row)?);
            Some(seam::Window {
                row,
                column,
                area: Rect::new(Point::new(x.0, y.0), Point::new(x.1, y.1)),
            })
        };
        for row in 0..rows {
            for column in 0..columns {
                let Some(own) = window(row, column) else {
                    continue;
                };
                let name = |row: usize, column: usize| {
                    (row < rows && column < columns).then(|| tile_name(row, column))
                };
                let before = |place: usize| place.checked_sub(1);
                let left = before(column).map(|column| (row, column));
                let above = before(row).map(|row| (row, column));
                let (right, below) = ((row, column + 1), (row + 1, column));
                let here = (row, column);
                let pairs = [
                    left.map(|other| (other, here)),
                    Some((here, right)),
                    above.map(|other| (other, here)),
                    Some((here, below)),
                ];
                let mut marks = Vec::new();
                for (one, other) in pairs.into_iter().flatten() {
                    let both = (window(one.0, one.1), window(other.0, other.1));
                    if let (Some(one), Some(other)) = both {
                        marks.extend(seam::marks(one, other, avoid));
                    }
                }
                self.tiles.push(Tile {
                    name: tile_name(row, column),
                    row,
                    column,
                    window: own.area,
                    left: left.and_then(|(row, column)| name(row, column)),
                    right: name(right.0, right.1),
                    above: above.and_then(|(row, column)| name(row, column)),
                    below: name(below.0, below.1),
                    marks,
                });
            }
        }
    }
}

/// A letter for the row, a number for the column.
fn tile_name(row: usize, column: usize) -> String {
    let letter = u8::try_from(row).map_or('Z', |row| char::from(b'A' + row.min(25)));
    format!("{letter}{}", column + 1)
}

#[cfg(test)]
mod tests;
