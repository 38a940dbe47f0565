//! Design files: text to [`Design`] and back.
//!
//! A file is RON with `format: 1` first. Saving what was loaded and loading it again gives the same
//! bytes. What a file leaves out is taken from the model's defaults and listed; what it has too
//! much is listed with line and column, and nothing is dropped in silence. Comments are kept beside
//! the design and put back when it is written.

mod align;
mod comments;
mod error;
mod gather;
mod outline;
mod place;
mod read;
mod scan;
mod stored;
mod unknown;
mod v1;
mod write;

use latchwright_model::Design;

pub use comments::Comments;
pub use error::ReadError;
pub use outline::Spot;
pub use read::{Loaded, read};
pub use stored::ReadNotice;
pub use unknown::UnknownField;
pub use write::WriteError;

/// The format this program reads and writes.
pub const FORMAT: u32 = 1;

/// The most bytes a design file may have.
pub const LARGEST: u64 = 4 * 1024 * 1024;

/// The text of a design, the same for the same design on every machine.
pub fn write(design: &Design) -> Result<String, WriteError> {
    write_with(design, &Comments::default())
}

/// The text of a design that was read with comments, and may have been changed since.
pub fn write_with(design: &Design, comments: &Comments) -> Result<String, WriteError> {
    let tree = v1::tree(design);
    write::file(&tree, &comments.placed(&tree))
}
