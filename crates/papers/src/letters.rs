//! Refuses a paper whose letters no font at hand can draw, and names them.

use crate::error::PaperError;

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
