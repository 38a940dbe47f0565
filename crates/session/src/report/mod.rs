//! What a proof says, for people and for programs.

mod builds;
mod json;
mod mark;
mod propose;
mod remedy;
mod season;
mod text;
mod verdict;

pub use crate::words::demands::nearest_in_words;
pub use crate::words::mend::{mend_sentence, not_mended_sentences};
pub use crate::words::nothing::nothing_sentence;
pub use crate::words::remedy::{Sought, remedy_sentence};
pub use builds::{builds_fault, builds_json, builds_sentences, builds_text, margin_name};
pub use json::proof_json;
pub use latchwright_words::{contributor, grouped, length, slides_word, state_name, sure_word};
pub use mark::{MarkError, MarkPlace, mark_json, mark_text};
pub use propose::{
    frontier_json, frontier_text, kind_about, kind_file, kind_name, nothing_json, nothing_text,
    proposal_lines, proposals_json, proposals_text,
};
pub use season::season_sentences;
pub use text::proof_text;
pub use verdict::{spare_mm, verdict_sentence};

use crate::format::{ReadNotice, UnknownField};

/// What is to be said about the file beside the proof of its design.
#[derive(Debug, Clone, Copy, Default)]
pub struct FileNotes<'a> {
    /// What the file left out.
    pub notices: &'a [ReadNotice],
    /// What was not understood; while there is any, nothing is called proven.
    pub unknown: &'a [UnknownField],
}

impl FileNotes<'_> {
    /// Whether something in the file was not understood.
    pub fn blocks_proof(&self) -> bool {
        !self.unknown.is_empty()
    }
}
