//! Letters that cannot be printed, named for the maker.

use crate::error::PaperError;

/// Refuses a paper for which no font has these letters.
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
