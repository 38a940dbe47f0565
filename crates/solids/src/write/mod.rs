//! Meshes as bytes of files.

pub mod list;
pub mod stl;
pub mod threemf;
