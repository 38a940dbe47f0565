//! One open design without a window: its file, its history, its report.
//!
//! The command line and the window both stand on this crate. It is the only one that touches files,
//! and within it [`files`] does, beside it only [`recovery`] for copies of unsaved work and [`recent`]
//! for the list of designs used lately.

pub mod builds;
pub mod cut_already;
pub mod demos;
pub mod document;
pub mod file_set;
pub mod files;
pub mod format;
pub mod history;
pub mod lettering;
pub mod products;
pub mod proposals;
pub mod questions;
pub mod recent;
pub mod recovery;
pub mod report;
pub mod ruler;
pub mod system_fonts;
pub mod threads;
pub mod units;
pub mod words;

pub use document::Session;
