//! The fonts a paper may use: the bundled ones, then whatever the caller hands in.
//!
//! This crate opens no files; finding a system font is the caller's work.

use std::sync::{Arc, LazyLock};

use typst::foundations::Bytes;
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;

/// Bundled files, in the order in which templates ask for them (see `assets/fonts/SOURCE.md`).
const BUNDLED: [&[u8]; 8] = [
    include_bytes!("../../../assets/fonts/NotoSans-Regular.ttf"),
    include_bytes!("../../../assets/fonts/NotoSans-Bold.ttf"),
    include_bytes!("../../../assets/fonts/NotoSansArabic-Regular.ttf"),
    include_bytes!("../../../assets/fonts/NotoSansHebrew-Regular.ttf"),
    include_bytes!("../../../assets/fonts/NotoSansDevanagari-Regular.ttf"),
    include_bytes!("../../../assets/fonts/NotoSansCJKjp-Regular.otf"),
    include_bytes!("../../../assets/fonts/NotoSansMath-Regular.ttf"),
    include_bytes!("../../../assets/fonts/NotoSansSymbols2-Regular.ttf"),
];

/// Parsed once a process.
static PARSED: LazyLock<Fonts> = LazyLock::new(|| {
    Fonts::from_faces(
        BUNDLED
            .iter()
            .flat_map(|data| Font::iter(Bytes::new(*data)))
            .collect(),
        0,
    )
});

/// Fonts in order of preference. Cheap to clone.
#[derive(Clone)]
pub struct Fonts(Arc<Set>);

struct Set {
    faces: Vec<Font>,
    /// The last so many faces were handed in by the caller.
    extra: usize,
    book: LazyHash<FontBook>,
}

impl Fonts {
    /// The bundled font files themselves, regular face first, bold second, for a window that draws
    /// the same letters.
    pub fn bundled_files() -> [&'static [u8]; 8] {
        BUNDLED
    }

    /// The bundled fonts: Latin, Greek, Cyrillic, Arabic, Hebrew, Devanagari, Japanese.
    pub fn bundled() -> Self {
        PARSED.clone()
    }

    /// The bundled fonts, then those in `files` (whole font files or collections, as bytes).
    ///
    /// A file that is no font adds nothing. Extra fonts are used only where the bundled ones lack
    /// a letter, so that a paper comes out alike on every machine wherever that can be had.
    pub fn with_extra(files: Vec<Vec<u8>>) -> Self {
        let bundled = Self::bundled();
        let mut faces = bundled.0.faces.clone();
        faces.extend(
            files
                .into_iter()
                .flat_map(|data| Font::iter(Bytes::new(data))),
        );
        let extra = faces.len() - bundled.0.faces.len();
        Self::from_faces(faces, extra)
    }

    /// The letters of `text` that no font here can draw, each once, in order of code point.
    ///
    /// White space, joiners, direction marks and variation selectors need no shape. Control
    /// characters and private code points have none that could be relied on: they are missing.
    pub fn missing(&self, text: &str) -> Vec<char> {
        let mut missing: Vec<char> = text
            .chars()
            .filter(|&letter| !self.can_draw(letter))
            .collect();
        missing.sort_unstable();
        missing.dedup();
        missing
    }

    /// The fonts to set `text` with: without the extra ones if it can do without.
    pub(crate) fn for_text(&self, text: &str) -> Self {
        let bundled = Self::bundled();
        if self.0.extra == 0 || bundled.missing(text).is_empty() {
            bundled
        } else {
            self.clone()
        }
    }

    pub(crate) fn book(&self) -> &LazyHash<FontBook> {
        &self.0.book
    }

    pub(crate) fn face(&self, index: usize) -> Option<Font> {
        self.0.faces.get(index).cloned()
    }

    fn from_faces(faces: Vec<Font>, extra: usize) -> Self {
        let book = LazyHash::new(FontBook::from_fonts(&faces));
        Self(Arc::new(Set { faces, extra, book }))
    }

    fn can_draw(&self, letter: char) -> bool {
        if needs_no_shape(letter) {
            return true;
        }
        !is_private(letter)
            && !letter.is_control()
            && self
                .0
                .faces
                .iter()
                .any(|face| face.info().coverage.contains(letter.into()))
    }
}

impl core::fmt::Debug for Fonts {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        let names = self.0.faces.iter().map(|face| face.info().family.as_str());
        f.debug_list().entries(names).finish()
    }
}

/// Code points that shape their neighbours or part words and are themselves invisible.
fn needs_no_shape(letter: char) -> bool {
    matches!(letter,
        '\n' | '\r' | '\t' | ' '
        | '\u{ad}' | '\u{34f}' | '\u{61c}'
        | '\u{2000}'..='\u{200f}' | '\u{2028}'..='\u{202f}' | '\u{205f}'..='\u{2064}' | '\u{2066}'..='\u{2069}'
        | '\u{3000}' | '\u{feff}' | '\u{fe00}'..='\u{fe0f}' | '\u{e0100}'..='\u{e01ef}')
}

fn is_private(letter: char) -> bool {
    matches!(letter, '\u{e000}'..='\u{f8ff}' | '\u{f0000}'..='\u{10ffff}')
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_in_the_promised_scripts_are_covered() {
        let fonts = Fonts::bundled();
        for name in [
            "Zoë",
            "Łukasz",
            "Анна",
            "Ελένη",
            "花子",
            "さくら",
            "髙橋",
            "مريم",
            "נועה",
            "आशा",
            "Thảo",
        ] {
            assert_eq!(fonts.missing(name), Vec::<char>::new(), "{name}");
        }
    }

    #[test]
    fn marks_the_window_uses_are_covered() {
        assert_eq!(
            Fonts::bundled().missing("←↑→↓↺↻✓✗×±°½¼⅛″′–—…•≤≥√○●□■♥★"),
            Vec::<char>::new()
        );
    }

    #[test]
    fn a_combining_accent_is_drawn_and_a_variation_selector_needs_no_shape() {
        assert!(
            Fonts::bundled()
                .missing("Zoe\u{308} ♥\u{fe0f} a\u{200d}b")
                .is_empty()
        );
    }

    #[test]
    fn missing_letters_are_named_once_in_order() {
        assert_eq!(Fonts::bundled().missing("a𓀀ꯍ𓀀"), vec!['ꯍ', '𓀀']);
    }

    #[test]
    fn control_and_private_code_points_count_as_missing() {
        assert_eq!(
            Fonts::bundled().missing("a\u{7}\u{e000}"),
            vec!['\u{7}', '\u{e000}']
        );
    }

    #[test]
    fn a_file_that_is_no_font_adds_nothing() {
        let fonts = Fonts::with_extra(vec![b"no font".to_vec(), Vec::new()]);
        assert_eq!(fonts.0.extra, 0);
        assert_eq!(fonts.0.faces.len(), BUNDLED.len());
    }

    #[test]
    fn extra_fonts_are_left_out_where_the_bundled_ones_do() {
        let fonts = Fonts::with_extra(vec![BUNDLED[0].to_vec()]);
        assert_eq!(fonts.0.extra, 1);
        assert_eq!(fonts.for_text("Anna").0.extra, 0);
        assert_eq!(fonts.for_text("ꯍ").0.extra, 1);
    }
}
