//! What a run makes of a design: its papers, its printed parts and the card, as bytes with their names.
//!
//! The command line and the window both ask here, so that the same design gives the same files from either.
//! Nothing is written: [`crate::together`] and [`crate::files`] do that.

mod papers;
mod parts;

use std::panic::{AssertUnwindSafe, catch_unwind};

use crate::together::NewFile;

pub use papers::{Paper, Wanted, all_papers, card_pdf, sheets};
pub use parts::{files_of, parts};

/// What is said instead of what could not be made.
pub const FAULT: &str = "it could not be made: a fault of this program; your design is safe";

/// A panic in the typesetter or the mesher becomes a sentence; the design is safe.
pub fn guarded<T>(make: impl FnOnce() -> Result<T, String>) -> Result<T, String> {
    catch_unwind(AssertUnwindSafe(make)).unwrap_or_else(|_| Err(FAULT.to_owned()))
}

/// What goes into a folder.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ForFolder {
    /// Every file with its name.
    pub files: Vec<NewFile>,
    /// What is to be said of them, a sentence each.
    pub remarks: Vec<String>,
}

impl ForFolder {
    fn of(files: Vec<(String, Vec<u8>)>, remarks: Vec<String>) -> Self {
        let named = files.into_iter();
        Self {
            files: named.map(|(name, bytes)| NewFile { name, bytes }).collect(),
            remarks,
        }
    }
}
