//! What is to be known of holes: left out, no bit near, too little wood.

use crate::bit::Bit;
use crate::feature::Feature;

/// One note, with what it is about.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HoleNote {
    /// The hole, pair of holes or slot; it says which part the note belongs to.
    pub about: Feature,
    /// What is to be known.
    pub kind: HoleNoteKind,
}

/// What is to be known of a hole. Lengths are in mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum HoleNoteKind {
    /// It is left out: its place or size is no number between [`crate::frame::LEAST_SIZE`] and
    /// [`crate::frame::MOST_SIZE`].
    LeftOut,
    /// No bit at hand is within [`crate::bit::NEAR`] of what is asked for.
    NoNearBit(Bit),
    /// The keeper lies on too little of the front.
    LittleUnderKeeper {
        /// How much of its depth lies on the front.
        on_front: f64,
        /// What a screw needs.
        needed: f64,
    },
    /// No screw that is sold holds in what there is and stays inside.
    NoScrew {
        /// What it goes through.
        through: f64,
        /// What there is for its thread.
        into: f64,
    },
    /// The keeper stands too little beyond the tab.
    LittleBesideTab {
        /// How far it stands out on each side.
        shoulder: f64,
        /// What a screw needs.
        needed: f64,
        /// The keeper's width that would do.
        width: f64,
    },
}

/// A note that is alike for several features.
#[derive(Debug, Clone, PartialEq)]
pub struct NotesAlike {
    /// What it is about, in the order of the notes; never empty.
    pub about: Vec<Feature>,
    /// What is to be known.
    pub kind: HoleNoteKind,
}

/// `notes` with what is alike of several features said once, in order of the first of each.
pub fn alike_once<'a>(notes: impl IntoIterator<Item = &'a HoleNote>) -> Vec<NotesAlike> {
    let mut all: Vec<NotesAlike> = Vec::new();
    for note in notes {
        match all.iter_mut().find(|known| known.kind == note.kind) {
            Some(known) => known.about.push(note.about),
            None => all.push(NotesAlike {
                about: vec![note.about],
                kind: note.kind,
            }),
        }
    }
    all
}
