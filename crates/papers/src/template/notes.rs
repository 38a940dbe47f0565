//! What is to be known of holes, on the page that shows them.

use core::fmt::Write as _;

use latchwright_words::workshop::notes_alike;
use latchwright_workshop::inch::Rule;
use latchwright_workshop::{Feature, HoleNote, NotesAlike, alike_once};

use super::layout::Page;
use super::words::sentence;

/// Longest note that a page has room for, letters.
const LONGEST: usize = 180;

/// A note for each page, of its own holes; what is about no hole that is drawn stands with the part that
/// it belongs to.
///
/// What is said alike of several holes is said once. What has no room is told as a number: the cut list
/// has all of it.
pub(super) fn of_pages(notes: &[HoleNote], pages: &[Page<'_>], rule: Rule) -> Vec<Option<String>> {
    let mut all: Vec<Vec<&HoleNote>> = pages.iter().map(|_| Vec::new()).collect();
    for note in notes {
        let shown = pages.iter().position(|page| shows(page, note.about));
        let shown = shown.or_else(|| with_its_part(note.about, pages));
        if let Some(own) = all.get_mut(shown.unwrap_or(0)) {
            own.push(note);
        }
    }
    all.into_iter()
        .map(|own| together(&alike_once(own), rule))
        .collect()
}

/// Whether a centre of `feature` is seen on `page`.
fn shows(page: &Page<'_>, feature: Feature) -> bool {
    let mut centres = page.shown.iter().flat_map(|template| &template.centres);
    centres.any(|(centre, at)| {
        let here = |window: latchwright_drawing::Rect| {
            let inside = |low: f64, at: f64, high: f64| (low..=high).contains(&at);
            inside(window.min.x, at.x, window.max.x) && inside(window.min.y, at.y, window.max.y)
        };
        centre.feature() == feature
            && page
                .tile
                .as_ref()
                .is_none_or(|place| here(place.tile.window))
    })
}

/// The first page with the part that `feature` is in.
fn with_its_part(feature: Feature, pages: &[Page<'_>]) -> Option<usize> {
    let part = feature.part();
    let has = |page: &Page<'_>| page.shown.iter().any(|template| template.part == part);
    pages.iter().position(has)
}

fn together(notes: &[NotesAlike], rule: Rule) -> Option<String> {
    let mut words = String::new();
    for (number, note) in notes.iter().enumerate() {
        let next = sentence(&notes_alike(note, rule));
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
