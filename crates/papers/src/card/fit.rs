//! Reads from the laid out card whether everything found room, and refuses what did not.

use latchwright_model::Units;
use typst::foundations::{Dict, Value};

use crate::error::PaperError;
use crate::sheets::{Overhang, Sheets};

/// Less than this over is rounding, mm.
const NOTHING_MM: f64 = 0.01;

/// Refuses a card that is too long or too wide, with the figures the template measured.
pub(super) fn check(sheets: &Sheets, paper: &'static str, units: Units) -> Result<(), PaperError> {
    let Some(Value::Dict(note)) = sheets.note("fit") else {
        return Err(PaperError::Typeset {
            message: "the template measured nothing".to_owned(),
        });
    };
    if let Some(Overhang { text, over_mm }) = sheets.overhang() {
        return Err(PaperError::TooWide {
            word: short(&text),
            over_mm: whole(over_mm),
            paper,
            units,
        });
    }
    let over = number(&note, "over");
    if over > NOTHING_MM || sheets.count() != 1 {
        let lines = over / number(&note, "line").max(1.0);
        return Err(PaperError::TooLong {
            over_mm: whole(over),
            lines: whole(lines),
            paper,
            units,
        });
    }
    Ok(())
}

fn number(note: &Dict, key: &str) -> f64 {
    match note.get(key) {
        Ok(Value::Float(number)) => *number,
        _ => 0.0,
    }
}

/// At most twenty letters of `text`, with dots where some are left out.
fn short(text: &str) -> String {
    const MOST: usize = 20;
    let mut letters = text.trim().chars();
    let mut short: String = letters.by_ref().take(MOST).collect();
    if letters.next().is_some() {
        short.push('…');
    }
    short
}

/// At least one, rounded up.
fn whole(value: f64) -> u32 {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "clamped to the range first"
    )]
    let whole = value.ceil().clamp(1.0, 1e6) as u32;
    whole
}
