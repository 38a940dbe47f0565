//! Notes on holes, and the lines of the order of work that hold them.

use latchwright_workshop::inch::Rule;
use latchwright_workshop::steps::Todo;
use latchwright_workshop::{Feature, HoleNote, HoleNoteKind, NotesAlike};

use super::sizes_on_a_bench;
use crate::phrase::capital;

/// One note.
pub fn hole_note(note: &HoleNote, rule: Rule) -> String {
    words(&[note.about], &note.kind, rule)
}

/// A note that is alike for several features.
pub fn notes_alike(notes: &NotesAlike, rule: Rule) -> String {
    words(&notes.about, &notes.kind, rule)
}

/// One thing to do or to know, as a whole sentence.
pub fn todo(todo: &Todo, rule: Rule) -> String {
    match todo {
        Todo::Say(said) => said.clone(),
        Todo::Note(notes) => sentence(&notes_alike(notes, rule)),
    }
}

/// With a capital first and a stop at the end.
fn sentence(text: &str) -> String {
    format!("{}.", capital(text))
}

fn words(about: &[Feature], kind: &HoleNoteKind, rule: Rule) -> String {
    let say = |mm: f64| rule.say_exactly(mm);
    let each = |what: fn(Feature) -> String| {
        let all: Vec<String> = about.iter().copied().map(what).collect();
        all.join(", ")
    };
    match kind {
        HoleNoteKind::LeftOut => format!(
            "{}: its place or size is no number from {}",
            each(left_out),
            sizes_on_a_bench(rule.units)
        ),
        HoleNoteKind::NoNearBit(bit) => format!(
            "{}: {} asked for; {}",
            each(Feature::name),
            say(bit.wanted),
            bit.words(rule.units)
        ),
        HoleNoteKind::LittleUnderKeeper { on_front, needed } => format!(
            "the keeper lies on {} of the front, a screw needs {}: fix it from in front, or make the \
             front thicker",
            say(*on_front),
            say(*needed)
        ),
        HoleNoteKind::NoScrew { through, into } => format!(
            "{}: a screw goes through {} and has {} to hold in; none that is sold holds there and stays inside: \
             glue strips and bridges, and screw them from a thicker plate or a thinner slider",
            each(Feature::name),
            say(*through),
            say(*into)
        ),
        HoleNoteKind::LittleBesideTab {
            shoulder,
            needed,
            width,
        } => format!(
            "the keeper stands {} beyond the tab on each side, a screw needs {}: make the keeper {} \
             wide",
            say(*shoulder),
            say(*needed),
            say(*width)
        ),
    }
}

fn left_out(about: Feature) -> String {
    let name = match about {
        Feature::KeeperScrews => "the keeper's screws".to_owned(),
        Feature::GuideScrews => "the guide's screws".to_owned(),
        Feature::Bore(_) | Feature::Pin(_) | Feature::FingerKnobSlot | Feature::ShankSocket => {
            about.name()
        }
    };
    format!("{name} is left out")
}
