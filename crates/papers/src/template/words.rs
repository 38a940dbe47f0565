//! What the pages say in words.

use core::fmt::Write as _;

use latchwright_geometry::Point;
use latchwright_model::Units;
use latchwright_words::capital;
use latchwright_workshop::inch::Rule;
use latchwright_workshop::ruler::Correction;
use latchwright_workshop::{Centre, Template, TemplateKind};

use super::layout::{Page, TilePlace};

/// Longest title that is repeated on a page, letters.
const LONGEST_TITLE: usize = 40;

/// Every page says this of printing.
pub(super) const PRINT: &str = "Print at 100 %, no fitting to the page; measure both lines before you cut. The middle of a line is the finished edge.";
/// And every tile this.
pub(super) const JOIN: &str = "Lay the marks of one name over each other.";

/// And this of the corner marks, which are 100 mm apart.
pub(super) const fn diagonals(rule: Rule) -> &'static str {
    match rule.units {
        Units::Millimetre => "From corner mark to corner mark, both diagonals are 141.4 mm.",
        Units::Inch => "From corner mark to corner mark, both diagonals are 5.568 in.",
    }
}

/// The page's heading: what is on it, rings together.
pub(super) fn heading(page: &Page) -> String {
    let (mut names, mut rings): (Vec<String>, Vec<String>) = (Vec::new(), Vec::new());
    for template in &page.shown {
        match template.kind {
            TemplateKind::Ring(dial) => rings.push((dial + 1).to_string()),
            TemplateKind::PlateOutside
            | TemplateKind::PlateBack
            | TemplateKind::Slider
            | TemplateKind::Keeper
            | TemplateKind::Side(_) => names.push(template.kind.name()),
        }
    }
    match rings.as_slice() {
        [] => {}
        [one] => names.push(format!("ring of dial {one}")),
        [first @ .., last] => {
            names.push(format!("rings of dials {} and {last}", first.join(", ")));
        }
    }
    let mut heading = capital(&names.join(", "));
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
pub(super) fn corrected(page: &Page, correction: Correction, rule: Rule) -> String {
    let mut words = format!("Corrected for this printer: {}", factors(correction));
    let worst = page
        .shown
        .iter()
        .filter_map(|template| furthest(template, correction).map(|off| (template, off)))
        .reduce(|worst, next| if next.1.1 > worst.1.1 { next } else { worst });
    if let Some((template, (hole, off))) = worst {
        let whose = if page.shown.len() > 1 {
            format!(" of the {}", template.kind.name())
        } else {
            String::new()
        };
        let _ = write!(
            words,
            " Uncorrected, {}{whose} would be {} off, seen from the lower left corner.",
            hole.name(),
            how_far(off, rule)
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
pub(super) fn how_far(off: f64, rule: Rule) -> String {
    match rule.units {
        Units::Millimetre => format!("{off:.2} mm"),
        Units::Inch => rule.say_fine(off),
    }
}

/// The place that would come out furthest off, and by how much, mm.
pub(super) fn furthest(template: &Template, correction: Correction) -> Option<(Centre, f64)> {
    let points: Vec<Point> = template.centres.iter().map(|(_, at)| *at).collect();
    let (index, off) = correction.furthest(&points, Point::default())?;
    let (centre, _) = template.centres.get(index)?;
    Some((*centre, off))
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
