//! Fonts of this machine, for letters that the bundled ones lack.

use fontdb::{Database, Source};

/// Whole font files that between them draw as many of `letters` as this machine can, in the order
/// of the system's list; empty where nothing helps.
///
/// A letter is covered by the first face that has it, so few files are read.
pub fn covering(letters: &[char]) -> Vec<Vec<u8>> {
    let mut database = Database::new();
    database.load_system_fonts();
    let mut left: Vec<char> = letters.to_vec();
    left.sort_unstable();
    left.dedup();
    let mut files = Vec::new();
    for face in database.faces() {
        if left.is_empty() {
            break;
        }
        let found = database.with_face_data(face.id, |data, index| {
            let parsed = ttf_parser::Face::parse(data, index).ok()?;
            let drawn: Vec<char> = left
                .iter()
                .copied()
                .filter(|letter| parsed.glyph_index(*letter).is_some())
                .collect();
            (!drawn.is_empty()).then(|| (drawn, data.to_vec()))
        });
        if let Some(Some((drawn, bytes))) = found
            && matches!(face.source, Source::File(_) | Source::SharedFile(..))
        {
            left.retain(|letter| !drawn.contains(letter));
            files.push(bytes);
        }
    }
    files
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_letters_need_no_font() {
        assert!(covering(&[]).is_empty());
    }

    #[test]
    fn a_letter_that_no_font_has_ends_in_nothing() {
        assert!(covering(&['\u{10fffd}']).len() <= 1);
    }
}
