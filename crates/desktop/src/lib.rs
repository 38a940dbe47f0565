//! The window of Latchwright. Widgets and file dialogs live only here; what they say comes from the crates
//! below, and the command line is one of them.

pub mod action;
pub mod app;
pub mod canvas;
pub mod field;
pub mod job;
pub mod pages;
pub mod panel;
pub mod printed;
pub mod proposing;
pub mod recents;
pub mod remedies;
pub mod stage;
pub mod theme;
pub mod view_state;
pub mod virtual_builds;
pub mod window;
pub mod words;

pub use app::LatchwrightApp;
