//! Labels of dials as outlines for the printer, from the letters of fonts: shaped, so that scripts
//! whose letters join come out as they are written.

use latchwright_geometry::Point;
use latchwright_model::{Design, Dial, Labels};
use latchwright_solids::{Fill, Outline, Region};
use rustybuzz::ttf_parser::{GlyphId, OutlineBuilder};
use rustybuzz::{Face, UnicodeBuffer};

/// Size of the type before the parts scale it, mm: chords below are fine enough at this size.
const EM: f64 = 8.0;
/// Chords for one curve of a letter: a curve of a few millimetres is then within 0.01 mm.
const CHORDS: u32 = 12;
/// Marks whose labels are made; no dial has more.
const MOST_MARKS: u32 = 360;

/// The labels of every dial of `design`, by dial and mark, from the first of `fonts` (whole font
/// files) that has all letters of a label. Only the maker's own words are written with fonts. Figures
/// and letters in order, pictures, and words with letters that no font has are left empty: the parts
/// then draw their own, whose strokes are as wide as a nozzle likes them.
pub fn lettering(design: &Design, fonts: &[&[u8]]) -> Vec<Vec<Region>> {
    let faces: Vec<Face<'_>> = fonts
        .iter()
        .filter_map(|bytes| Face::from_slice(bytes, 0))
        .collect();
    let dials = design.dials.iter();
    dials.map(|dial| of_dial(dial, &faces)).collect()
}

fn of_dial(dial: &Dial, faces: &[Face<'_>]) -> Vec<Region> {
    if !matches!(dial.labels, Labels::Words(_)) {
        return Vec::new();
    }
    (0..dial.positions.min(MOST_MARKS))
        .map(|mark| written(&dial.label(mark), faces).unwrap_or_default())
        .collect()
}

/// `word` as an area, its first letter's foot at the origin; `None` where no font has all its letters.
fn written(word: &str, faces: &[Face<'_>]) -> Option<Region> {
    let word = word.trim();
    let face = faces.iter().find(|face| {
        let has = |letter| face.glyph_index(letter).is_some();
        !word.is_empty() && word.chars().all(has)
    })?;
    let mut buffer = UnicodeBuffer::new();
    buffer.push_str(word);
    buffer.guess_segment_properties();
    let shaped = rustybuzz::shape(face, &[], buffer);
    let scale = EM / f64::from(face.units_per_em()).max(1.0);
    let mut pen = Pen::default();
    let mut on = Point::default();
    for (glyph, place) in shaped.glyph_infos().iter().zip(shaped.glyph_positions()) {
        let aside = Point::new(f64::from(place.x_offset), f64::from(place.y_offset));
        pen.origin = on + aside;
        let id = GlyphId(u16::try_from(glyph.glyph_id).ok()?);
        // a blank has no outline
        let _ = face.outline_glyph(id, &mut pen);
        on = on + Point::new(f64::from(place.x_advance), f64::from(place.y_advance));
    }
    let contours: Vec<Outline> = pen
        .done
        .into_iter()
        .map(|points| Outline::new(points.into_iter().map(|at| at * scale).collect()))
        .collect();
    Region::filled(&contours, Fill::NonZero).ok()
}

/// Collects contours as chords, in the font's units.
#[derive(Default)]
struct Pen {
    origin: Point,
    open: Vec<Point>,
    done: Vec<Vec<Point>>,
}

impl Pen {
    fn at(&self, x: f32, y: f32) -> Point {
        self.origin + Point::new(f64::from(x), f64::from(y))
    }

    fn last(&self) -> Point {
        self.open.last().copied().unwrap_or(self.origin)
    }

    /// Chords to the end of a curve that is at `place(t)` for t from 0 to 1.
    fn curve(&mut self, place: impl Fn(f64) -> Point) {
        for step in 1..=CHORDS {
            self.open.push(place(f64::from(step) / f64::from(CHORDS)));
        }
    }
}

impl OutlineBuilder for Pen {
    fn move_to(&mut self, x: f32, y: f32) {
        self.close();
        let at = self.at(x, y);
        self.open.push(at);
    }

    fn line_to(&mut self, x: f32, y: f32) {
        let at = self.at(x, y);
        self.open.push(at);
    }

    fn quad_to(&mut self, x1: f32, y1: f32, x: f32, y: f32) {
        let (a, b, c) = (self.last(), self.at(x1, y1), self.at(x, y));
        self.curve(|t| {
            let (one, two) = (a + (b - a) * t, b + (c - b) * t);
            one + (two - one) * t
        });
    }

    fn curve_to(&mut self, x1: f32, y1: f32, x2: f32, y2: f32, x: f32, y: f32) {
        let (a, b) = (self.last(), self.at(x1, y1));
        let (c, d) = (self.at(x2, y2), self.at(x, y));
        self.curve(|t| {
            let mix = |from: Point, to: Point| from + (to - from) * t;
            let (ab, bc, cd) = (mix(a, b), mix(b, c), mix(c, d));
            mix(mix(ab, bc), mix(bc, cd))
        });
    }

    fn close(&mut self) {
        let whole = std::mem::take(&mut self.open);
        if whole.len() > 2 {
            self.done.push(whole);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const LATIN: &[u8] = include_bytes!("../../../assets/fonts/NotoSans-Bold.ttf");
    const ARABIC: &[u8] = include_bytes!("../../../assets/fonts/NotoSansArabic-Regular.ttf");

    fn faces<'a>(fonts: &[&'a [u8]]) -> Vec<Face<'a>> {
        let parsed = fonts.iter().map(|bytes| Face::from_slice(bytes, 0));
        parsed.map(|face| face.expect("a font")).collect()
    }

    fn area(region: &Region) -> f64 {
        region.area()
    }

    #[test]
    fn a_hole_in_a_letter_stays_open() {
        let faces = faces(&[LATIN]);
        let [ring, bar] = ["O", "I"].map(|word| written(word, &faces).expect("letters"));
        assert_eq!(ring.outlines().len(), 2, "an O has a hole");
        assert_eq!(bar.outlines().len(), 1);
        assert!(area(&ring) > area(&bar));
    }

    #[test]
    fn letters_that_join_are_joined() {
        let faces = faces(&[LATIN, ARABIC]);
        let apart: f64 = ["ب", "ب"]
            .iter()
            .map(|letter| area(&written(letter, &faces).expect("a letter")))
            .sum();
        let joined = area(&written("بب", &faces).expect("a word"));
        assert!(
            (joined - apart).abs() > 0.05 * apart,
            "{joined} against {apart}"
        );
    }

    #[test]
    fn what_no_font_has_is_left_to_the_parts() {
        assert_eq!(written("\u{16000}", &faces(&[LATIN])), None);
        assert_eq!(written("  ", &faces(&[LATIN])), None);
        let mut design = Design::default();
        design.dials[1].labels = Labels::Words(["oak", "ash"].map(str::to_owned).to_vec());
        let all = lettering(&design, &[LATIN]);
        assert_eq!(all.iter().map(Vec::len).collect::<Vec<_>>(), [0, 8, 0]);
        assert!(!all[1][0].is_empty());
        assert!(lettering(&design, &[b"no font"])[1][0].is_empty());
    }
}
