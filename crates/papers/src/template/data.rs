//! The pages as data for the template.

use latchwright_geometry::trig;
use latchwright_model::Design;
use latchwright_workshop::HoleNote;
use latchwright_workshop::inch::Rule;
use latchwright_workshop::ruler::Correction;
use serde_json::{Value, json};

use super::corner::STROKE;
use super::layout::{FOOT, Page, Piece, ZERO};
use super::{notes, words};
use crate::error::PaperError;

/// What the template is told.
pub(super) struct Data<'a> {
    pub design: &'a Design,
    pub pages: &'a [Page<'a>],
    pub correction: Option<Correction>,
    /// Height of the strip for headings, mm.
    pub head: f64,
    /// What is to be known of the holes.
    pub notes: &'a [HoleNote],
}

impl Data<'_> {
    /// The template's `data.json`, and all that is written in it.
    pub(super) fn json(&self) -> Result<(Vec<u8>, String), PaperError> {
        let correction = self.correction.unwrap_or(Correction::NONE);
        let lean = trig::radians(correction.skew_deg);
        let [along, _, _, up] = correction.matrix();
        let title = words::title(&self.design.title);
        let whole = if title.is_empty() {
            "Templates".to_owned()
        } else {
            format!("Templates: {title}")
        };
        let rule = Rule::of(self.design);
        let mut letters = format!("{whole}\n");
        let notes = notes::of_pages(self.notes, self.pages, rule);
        let pages: Vec<Value> = (1..)
            .zip(self.pages.iter().zip(notes))
            .map(|(number, (page, note))| self.page(number, page, note.as_deref(), &mut letters))
            .collect();
        let value = json!({
            "title": whole,
            "design": title,
            "print": words::PRINT,
            "diagonals": words::diagonals(rule),
            "join": words::JOIN,
            "head": self.head,
            "foot": FOOT,
            "zero": ZERO,
            "scale": [along, up],
            "lean": lean,
            "pages": pages,
        });
        let json = serde_json::to_vec(&value).map_err(|err| PaperError::Typeset {
            message: err.to_string(),
        })?;
        Ok((json, letters))
    }

    fn page(&self, number: usize, page: &Page, note: Option<&str>, letters: &mut String) -> Value {
        let heading = words::heading(page);
        let tile = page.tile.as_ref();
        let line = words::below_heading(page);
        let rule = Rule::of(self.design);
        let corrected = self.correction.map(|by| words::corrected(page, by, rule));
        letters.push_str(&heading);
        letters.push_str(note.unwrap_or_default());
        letters.push_str(&line);
        let map = tile.map(|place| {
            json!({
                "rows": place.rows,
                "columns": place.columns,
                "row": place.tile.row,
                "column": place.tile.column,
            })
        });
        json!({
            "paper": page.paper,
            "content": page.content,
            "corner": page.corner,
            "heading": heading,
            "line": line,
            "sheet": format!("Sheet {number} of {}", self.pages.len()),
            "corrected": corrected,
            "note": note,
            "map": map,
            // On paper y runs down.
            "strokes": [page.strokes.0 * STROKE, -page.strokes.1 * STROKE],
            "pieces": page.pieces.iter().map(piece).collect::<Vec<_>>(),
        })
    }
}

fn piece(piece: &Piece) -> Value {
    let bounds = piece.drawing.bounds;
    json!({
        "file": piece.file,
        "at": piece.at,
        "size": [bounds.width(), bounds.height()],
        "described": piece.described,
    })
}
