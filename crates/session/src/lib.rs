//! One open design without a window: its file, its history, its report.
//!
//! The command line and the window both stand on this crate. It is the only one that touches files,
//! and within it only [`files`] does.

pub mod builds;
pub mod demos;
pub mod document;
pub mod files;
pub mod format;
pub mod history;
pub mod lettering;
pub mod questions;
pub mod report;
pub mod ruler;
pub mod system_fonts;
pub mod together;
pub mod units;

pub use document::Session;
