//! Fonts of this machine, for letters that the bundled ones lack.

use fontdb::{Database, Source};

/// Whole font files that between them draw as many of `letters` as this machine can, in the order
/// of the system's list; empty where nothing helps.
///
/// A letter is covered by the first face that has it, so few files are read.
pub fn covering(letters: &[char]) -> Vec<Vec<u8>> {
    let mut database = Database::new();
    database.load_system_fonts();
    covering_of(&database, letters)
}

/// As [`covering`], from the fonts that `database` lists.
fn covering_of(database: &Database, letters: &[char]) -> Vec<Vec<u8>> {
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

    /// The bytes of the bundled fonts of these names, and a list of them in the same order.
    fn bundled<const N: usize>(names: [&str; N]) -> ([Vec<u8>; N], Database) {
        let mut database = Database::new();
        let files = names.map(|name| {
            let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../assets/fonts");
            let path = std::path::Path::new(folder).join(name);
            database.load_font_file(&path).expect("a bundled font");
            std::fs::read(&path).expect("a bundled font")
        });
        (files, database)
    }

    #[test]
    fn each_letter_brings_the_first_font_that_has_it_and_no_other() {
        let ([latin, arabic], database) =
            bundled(["NotoSans-Bold.ttf", "NotoSansArabic-Regular.ttf"]);
        let of = |letters: &[char]| covering_of(&database, letters);
        let (only_latin, only_arabic) = (vec![latin.clone()], vec![arabic.clone()]);
        assert_eq!(of(&['a', 'Ł', 'a']), only_latin);
        assert_eq!(of(&['ب']), only_arabic);
        assert_eq!(of(&['ب', 'a']), [latin, arabic], "in the order of the list");
    }

    #[test]
    fn a_letter_that_no_font_has_brings_none() {
        let ([latin], database) = bundled(["NotoSans-Bold.ttf"]);
        let of = |letters: &[char]| covering_of(&database, letters);
        assert_eq!(of(&['\u{10fffd}']), Vec::<Vec<u8>>::new());
        assert_eq!(
            of(&['\u{10fffd}', 'a']),
            [latin],
            "and keeps none from the others"
        );
    }

    #[test]
    fn no_letter_brings_none() {
        let (_, database) = bundled(["NotoSans-Bold.ttf"]);
        assert!(covering_of(&database, &[]).is_empty());
    }
}
