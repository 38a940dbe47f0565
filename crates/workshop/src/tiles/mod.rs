//! A drawing that is larger than a sheet, cut into tiles that are joined over marks.
//!
//! Nothing of meaning is within 10 mm of an edge of the paper; the sizes are those of ISO 216 (A4,
//! A3) and of ANSI/ASME Y14.1 (Letter, Legal, Tabloid).

use latchwright_drawing::Rect;
use latchwright_geometry::Point;
use latchwright_solver::model::Paper;

use crate::inch::decimal;
use crate::ruler::Correction;

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
    /// Width and height of what each tile can show, mm.
    pub room: (f64, f64),
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
    pub fn room(&self, landscape: bool) -> (f64, f64) {
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

/// Cuts a drawing of `bounds` (mm) into tiles on `sheet`; held upright or across, whichever takes
/// fewer sheets, upright where it makes no difference.
///
/// Where one sheet is not enough, neighbours show at least the overlap twice, and the rows and columns
/// are spread evenly, so that no tile is a mere strip.
///
/// # Errors
/// A sentence where the drawing has no size, the sheet leaves no room, or more than twenty sheets
/// would be needed.
pub fn tiles(bounds: Rect, sheet: &Sheet) -> Result<Tiling, String> {
    let size = (bounds.width(), bounds.height());
    let sound = |mm: f64| mm.is_finite() && mm > 0.0;
    if !(sound(size.0) && sound(size.1) && bounds.min.x.is_finite() && bounds.min.y.is_finite()) {
        return Err(
            "the drawing has no size to lay on paper: mend the sizes of this part first".to_owned(),
        );
    }
    let overlap = sane(sheet.overlap);
    let ways = [false, true].map(|landscape| {
        let (paper, room) = (sheet.held(landscape), sheet.room(landscape));
        let columns = steps(size.0, room.0, overlap)?;
        let rows = steps(size.1, room.1, overlap)?;
        Some((landscape, paper, room, columns, rows))
    });
    let best = ways
        .into_iter()
        .flatten()
        .min_by(|a, b| (a.3 * a.4).total_cmp(&(b.3 * b.4)));
    let Some((landscape, paper, room, columns, rows)) = best else {
        return Err(format!(
            "{} leaves no room for a drawing beside its margins of {MARGIN} mm and an overlap of {} mm: \
             choose larger paper",
            paper_name(sheet.paper),
            decimal(overlap)
        ));
    };
    let Some((columns, rows)) = few(columns, rows) else {
        return Err(format!(
            "{} × {} mm would take {:.0} sheets of {}, more than {MOST_SHEETS}: choose larger paper, or \
             mark this part out from its numbers",
            decimal(size.0),
            decimal(size.1),
            columns * rows,
            paper_name(sheet.paper)
        ));
    };
    let mut tiling = Tiling {
        sheet: paper,
        landscape,
        room,
        columns,
        rows,
        tiles: Vec::new(),
    };
    tiling.lay(bounds);
    Ok(tiling)
}

/// How many sheets of `room` mm it takes over `size` mm; `None` where a sheet brings nothing new.
fn steps(size: f64, room: f64, overlap: f64) -> Option<f64> {
    if room <= 0.0 {
        return None;
    }
    if size <= room + 1e-9 {
        return Some(1.0);
    }
    let fresh = room - overlap;
    (fresh > 1.0).then(|| ((size - overlap) / fresh - 1e-9).ceil().max(2.0))
}

/// Both as counts if they make no more sheets than allowed.
fn few(columns: f64, rows: f64) -> Option<(usize, usize)> {
    let count = |wanted: f64| (1..=MOST_SHEETS).find(|count| *count as f64 >= wanted);
    let (columns, rows) = (count(columns)?, count(rows)?);
    (columns * rows <= MOST_SHEETS).then_some((columns, rows))
}

impl Tiling {
    fn lay(&mut self, bounds: Rect) {
        let (columns, rows) = (self.columns, self.rows);
        for row in 0..rows {
            for column in 0..columns {
                let name = |row: usize, column: usize| {
                    (row < rows && column < columns).then(|| tile_name(row, column))
                };
                let tile = Tile {
                    name: tile_name(row, column),
                    row,
                    column,
                    window: self.window(bounds, row, column),
                    left: column.checked_sub(1).and_then(|column| name(row, column)),
                    right: name(row, column + 1),
                    above: row.checked_sub(1).and_then(|row| name(row, column)),
                    below: name(row + 1, column),
                    marks: self.marks(bounds, row, column),
                };
                self.tiles.push(tile);
            }
        }
    }

    /// What the tile of this row and column shows; a single row or column shows the drawing in its
    /// middle.
    fn window(&self, bounds: Rect, row: usize, column: usize) -> Rect {
        let place = |low: f64, size: f64, room: f64, index: usize, count: usize| {
            if count < 2 {
                return low - (room - size) / 2.0;
            }
            low + (size - room) * (index as f64 / (count - 1) as f64)
        };
        let from_bottom = self.rows.saturating_sub(row + 1);
        let low = Point::new(
            place(
                bounds.min.x,
                bounds.width(),
                self.room.0,
                column,
                self.columns,
            ),
            place(
                bounds.min.y,
                bounds.height(),
                self.room.1,
                from_bottom,
                self.rows,
            ),
        );
        Rect::new(low, low + Point::new(self.room.0, self.room.1))
    }

    fn marks(&self, bounds: Rect, row: usize, column: usize) -> Vec<JoinMark> {
        let mut marks = Vec::new();
        let mut pair = |first: (usize, usize), second: (usize, usize)| {
            let one = self.window(bounds, first.0, first.1);
            let other = self.window(bounds, second.0, second.1);
            let low = Point::new(one.min.x.max(other.min.x), one.min.y.max(other.min.y));
            let high = Point::new(one.max.x.min(other.max.x), one.max.y.min(other.max.y));
            let middle = (low + high) * 0.5;
            let names = format!(
                "{}–{}",
                tile_name(first.0, first.1),
                tile_name(second.0, second.1)
            );
            // Uneven shares, so that a sheet turned round does not fit.
            for (letter, share) in [("a", 0.2), ("b", 0.7)] {
                let at = if first.0 == second.0 {
                    Point::new(middle.x, low.y + (high.y - low.y) * share)
                } else {
                    Point::new(low.x + (high.x - low.x) * share, middle.y)
                };
                let label = format!("{names} {letter}");
                marks.push(JoinMark { at, label });
            }
        };
        if column > 0 {
            pair((row, column - 1), (row, column));
        }
        if column + 1 < self.columns {
            pair((row, column), (row, column + 1));
        }
        if row > 0 {
            pair((row - 1, column), (row, column));
        }
        if row + 1 < self.rows {
            pair((row, column), (row + 1, column));
        }
        marks
    }

    /// Where a point of the drawing lies on the sheet of `tile`, mm from the sheet's lower left corner,
    /// before any correction; `sheet` is the one it was made for.
    pub fn on_sheet(&self, tile: &Tile, sheet: &Sheet, point: Point) -> Point {
        let corner = Point::new(MARGIN + sane(sheet.side), MARGIN + sane(sheet.foot));
        point - tile.window.min + corner
    }
}

/// A letter for the row, a number for the column.
fn tile_name(row: usize, column: usize) -> String {
    let letter = u8::try_from(row).map_or('Z', |row| char::from(b'A' + row.min(25)));
    format!("{letter}{}", column + 1)
}

#[cfg(test)]
mod tests;
