//! What the pages say in words.

use core::fmt::Write as _;

use latchwright_geometry::Point;
use latchwright_workshop::Template;
use latchwright_workshop::ruler::Correction;

use super::layout::{Page, TilePlace};

/// Longest title that is repeated on a page, letters.
const LONGEST_TITLE: usize = 40;

/// Every page says this of printing.
pub(super) const PRINT: &str =
    "Print at 100 %, no fitting to the page; measure both lines before you cut.";
/// And this of the corner marks.
pub(super) const DIAGONALS: &str = "From corner mark to corner mark, both diagonals are 141.4 mm.";

/// And every tile this.
pub(super) const JOIN: &str = "Lay the marks of one name over each other.";

/// The page's heading: what is on it, rings together.
pub(super) fn heading(page: &Page) -> String {
    let (mut names, mut rings): (Vec<&str>, Vec<&str>) = (Vec::new(), Vec::new());
    for template in &page.shown {
        match template.name.strip_prefix("ring of dial ") {
            Some(number) => rings.push(number),
            None => names.push(&template.name),
        }
    }
    let rings = match rings.as_slice() {
        [] => None,
        [one] => Some(format!("ring of dial {one}")),
        [first @ .., last] => Some(format!("rings of dials {} and {last}", first.join(", "))),
    };
    let all: Vec<&str> = names.into_iter().chain(rings.as_deref()).collect();
    let mut heading = capital(&all.join(", "));
    if page.shown.iter().any(|template| template.mirrored) {
        heading.push_str(", mirrored");
    }
    heading
}

/// What stands below the heading: which face lies up where it is one part, and where a tile lies.
pub(super) fn below_heading(page: &Page) -> String {
    let face = match page.shown.as_slice() {
        [template] if template.mirrored => sentence(template.face.mirrored_words()),
        [template] => sentence(template.face.words()),
        _ => String::new(),
    };
    match &page.tile {
        Some(place) => format!("{face} {}", neighbours(place)),
        None => face,
    }
}

/// `words` as a sentence of its own.
pub(super) fn sentence(words: &str) -> String {
    format!("{}.", capital(words))
}

pub(super) fn capital(words: &str) -> String {
    let mut letters = words.chars();
    let first: Vec<char> = letters
        .next()
        .into_iter()
        .flat_map(char::to_uppercase)
        .collect();
    let first = first.into_iter();
    first.chain(letters).collect()
}

/// Row, column and neighbours of a tile.
fn neighbours(place: &TilePlace) -> String {
    let tile = &place.tile;
    let sides = [
        (&tile.left, "on the left"),
        (&tile.right, "on the right"),
        (&tile.above, "above"),
        (&tile.below, "below"),
    ];
    let beside: Vec<String> = sides
        .iter()
        .filter_map(|(name, side)| name.as_ref().map(|name| format!("{name} {side}")))
        .collect();
    format!(
        "Tile {}: row {} of {}, column {} of {}; {}.",
        tile.name,
        tile.row + 1,
        place.rows,
        tile.column + 1,
        place.columns,
        beside.join(", ")
    )
}

/// What the print was corrected by, and what it would have been off.
pub(super) fn corrected(page: &Page, correction: Correction) -> String {
    let mut words = format!("Corrected for this printer: {}", factors(correction));
    let worst = page
        .shown
        .iter()
        .filter_map(|template| furthest(template, correction).map(|off| (template, off)))
        .reduce(|worst, next| if next.1.1 > worst.1.1 { next } else { worst });
    if let Some((template, (hole, off))) = worst {
        let whose = if page.shown.len() > 1 {
            format!(" of the {}", template.name)
        } else {
            String::new()
        };
        let _ = write!(
            words,
            " Uncorrected, {hole}{whose} would be {} off, seen from the lower left corner.",
            millimetres(off)
        );
    }
    words
}

/// The factors and the skew of a correction.
pub(super) fn factors(correction: Correction) -> String {
    format!(
        "x × {:.4}, y × {:.4}, skew {:.2}°.",
        correction.x, correction.y, correction.skew_deg
    )
}

/// How far off a place is.
pub(super) fn millimetres(off: f64) -> String {
    format!("{off:.2} mm")
}

/// Name of the place that would come out furthest off, and by how much, mm.
pub(super) fn furthest(template: &Template, correction: Correction) -> Option<(&str, f64)> {
    let points: Vec<Point> = template.centres.iter().map(|(_, at)| *at).collect();
    let (index, off) = correction.furthest(&points, Point::default())?;
    let (name, _) = template.centres.get(index)?;
    Some((name.as_str(), off))
}

/// The design's title as short as a page needs it.
pub(super) fn title(title: &str) -> String {
    let mut letters = title.trim().chars();
    let mut short: String = letters.by_ref().take(LONGEST_TITLE).collect();
    if letters.next().is_some() {
        short.push('…');
    }
    short
}
