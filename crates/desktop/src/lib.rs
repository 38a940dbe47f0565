//! The window. Widgets and file dialogs live only here; what they say comes from the crates below.
//!
//! [`window`] opens it on an [`app`]: one open design, its proof, and every wish applied in one place. A wish
//! is an [`action`], a value that can be compared and printed; what a button or a key stands for is a
//! [`command`] with its key, its words and why it cannot be done now; what a hand changes of the design is an
//! [`edit`]. All work beside the window stands in one table ([`tasks`]), and what follows the design in one
//! holder ([`follow`]): the proof, [`remedies`], [`mending`], [`virtual_builds`], [`hunting`], [`proposing`], [`pages`], the
//! [`printed`] parts, the [`recents`]. What undo leaves alone is the [`view_state`]; where the slider stops and
//! what the views take is the [`scene`], made once for a state and a pose. The lid is on the [`canvas`], a file
//! for each thing that a hand can take; round it stand the [`panel`]s, a file each, one a [`stage`] and one for
//! what lies over the window. [`field`] takes numbers, [`words`] says how the latch stands, [`theme`] is the look.
//!
//! What is absent: no panel changes the design, a pose or a file, it only pushes wishes; nothing waits on the
//! window's thread for a design's file, the typesetter, the mesher or a search; no thread is begun outside the table.

pub mod action;
pub mod app;
pub mod canvas;
pub mod command;
pub mod edit;
pub mod field;
pub mod follow;
pub mod hunting;
pub mod mending;
pub mod pages;
pub mod panel;
pub mod printed;
pub mod proposing;
pub mod recents;
pub mod remedies;
pub mod scene;
pub mod stage;
pub mod tasks;
pub mod theme;
pub mod view_state;
pub mod virtual_builds;
pub mod window;
pub mod words;

pub use app::LatchwrightApp;
