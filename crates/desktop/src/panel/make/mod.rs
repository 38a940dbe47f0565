//! Making it: papers for the bench and parts to print.

mod papers;

pub use papers::{PapersView, papers_ui};
