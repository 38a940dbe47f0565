//! What is written on drawings; refuses a paper whose letters no font at hand can draw, and names them.

use latchwright_drawing::{Item, Shape};

use crate::error::PaperError;

/// All that is written on these items, a line each.
pub(crate) fn written<'a>(items: impl IntoIterator<Item = &'a Item>) -> String {
    let mut all = String::new();
    for item in items {
        if let Shape::Text(text) = &item.shape {
            all.push_str(&text.text);
            all.push('\n');
        }
    }
    all
}

/// An error that names every letter in `missing`; nothing where there is none.
pub(crate) fn refuse_missing(missing: &[char]) -> Result<(), PaperError> {
    if missing.is_empty() {
        return Ok(());
    }
    let named = |letter: &char| {
        let code = u32::from(*letter);
        if letter.is_control() {
            format!("U+{code:04X}")
        } else {
            format!("“{letter}” (U+{code:04X})")
        }
    };
    let letters: Vec<String> = missing.iter().map(named).collect();
    Err(PaperError::Letters {
        letters: letters.join(", "),
        count: missing.len(),
    })
}
