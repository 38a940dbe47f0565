//! What is to be known of holes, on the page that shows them.

use core::fmt::Write as _;

use super::layout::Page;
use super::words::sentence;

/// Longest note that a page has room for, letters.
const LONGEST: usize = 180;

/// A note for each page, of its own holes; what is about no hole that is drawn stands with
/// the part that it names.
///
/// What is said alike of several holes is said once. What has no room is told as a number: the cut list
/// has all of it.
pub(super) fn of_pages(notes: &[String], pages: &[Page<'_>]) -> Vec<Option<String>> {
    let mut all: Vec<Vec<(Vec<&str>, &str)>> = pages.iter().map(|_| Vec::new()).collect();
    for note in notes {
        let (hole, what) = note.split_once(": ").unwrap_or(("", note));
        let shown = pages.iter().position(|page| shows(page, hole));
        let shown = shown.or_else(|| about(note, pages)).unwrap_or(0);
        let Some(own) = all.get_mut(shown) else {
            continue;
        };
        match own.iter_mut().find(|(_, known)| *known == what) {
            Some((holes, _)) => holes.push(hole),
            None => own.push((vec![hole], what)),
        }
    }
    all.into_iter().map(|own| together(&own)).collect()
}

/// Whether a hole of this name is seen on `page`.
fn shows(page: &Page<'_>, hole: &str) -> bool {
    let own = |name: &str| {
        name.strip_prefix(hole)
            .is_some_and(|rest| rest.is_empty() || rest.starts_with(' '))
    };
    let mut centres = page.shown.iter().flat_map(|template| &template.centres);
    !hole.is_empty()
        && centres.any(|(name, at)| {
            let here = |window: latchwright_drawing::Rect| {
                let inside = |low: f64, at: f64, high: f64| (low..=high).contains(&at);
                inside(window.min.x, at.x, window.max.x) && inside(window.min.y, at.y, window.max.y)
            };
            own(name)
                && page
                    .tile
                    .as_ref()
                    .is_none_or(|place| here(place.tile.window))
        })
}

/// The first page with the part that `note` names first.
fn about(note: &str, pages: &[Page<'_>]) -> Option<usize> {
    let named = pages.iter().enumerate().flat_map(|(number, page)| {
        let parts = page.shown.iter().map(|template| template.part.name());
        parts.filter_map(move |part| Some((note.find(part)?, number)))
    });
    named.min().map(|(_, number)| number)
}

fn together(notes: &[(Vec<&str>, &str)]) -> Option<String> {
    let mut words = String::new();
    for (number, (holes, what)) in notes.iter().enumerate() {
        let names = holes.join(", ");
        let colon = if names.is_empty() { "" } else { ": " };
        let next = sentence(&format!("{names}{colon}{what}"));
        if !words.is_empty() && words.chars().count() + next.chars().count() > LONGEST {
            let more = notes.len() - number;
            let _ = write!(words, " {more} more of these are in the cut list.");
            break;
        }
        if !words.is_empty() {
            words.push(' ');
        }
        words.push_str(&next);
    }
    (!words.is_empty()).then_some(words)
}
