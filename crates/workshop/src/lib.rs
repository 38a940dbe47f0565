//! From a design to what the bench needs: parts of wood with their sizes, templates at true size,
//! boards, lists and the order of work. Values in, values out; nothing here knows paper or a file.

pub mod inch;
pub mod ruler;
mod tame;
pub mod tiles;
