//! Designs that were opened or saved lately, the last one first.
//!
//! A list lost or damaged is an empty one: it never stands in the way of work.

use std::path::{Path, PathBuf};

use crate::files::{FileError, write_atomically};

/// How many are remembered.
pub const MOST: usize = 8;

const NAME: &str = "recent.json";

/// The designs remembered in `folder`, whether they still are there or not.
pub fn list(folder: &Path) -> Vec<PathBuf> {
    let text = std::fs::read_to_string(folder.join(NAME)).unwrap_or_default();
    let mut paths: Vec<PathBuf> = serde_json::from_str(&text).unwrap_or_default();
    paths.truncate(MOST);
    paths
}

/// Remembers `path` as the last one. A path that is not in Unicode is not remembered.
pub fn add(folder: &Path, path: &Path) -> Result<Vec<PathBuf>, FileError> {
    let path = std::path::absolute(path).unwrap_or_else(|_| path.to_owned());
    let mut paths = list(folder);
    if path.to_str().is_none() {
        return Ok(paths);
    }
    paths.retain(|known| *known != path);
    paths.insert(0, path);
    paths.truncate(MOST);
    let text = serde_json::to_string_pretty(&paths).unwrap_or_default();
    std::fs::create_dir_all(folder).map_err(|source| FileError::System {
        path: folder.to_owned(),
        deed: crate::files::Deed::Saved,
        source,
    })?;
    write_atomically(&folder.join(NAME), text.as_bytes())?;
    Ok(paths)
}
