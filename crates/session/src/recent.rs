//! Designs that were opened or saved lately, the last one first.
//!
//! A list lost or damaged is an empty one: it never stands in the way of work.

use std::path::{Path, PathBuf};

use crate::files::{FileError, write_atomically};

/// How many are remembered.
pub const MOST: usize = 8;

const NAME: &str = "recent.json";
/// Held while the list is read and written, so that two windows lose nothing of each other's.
const LOCK: &str = "recent.lock";
/// Holds the path of the design over which the window broke off.
const BROKE_OFF: &str = "broke-off.json";

/// The design to begin with.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Last {
    /// Nothing is remembered.
    Nothing,
    /// The one worked on last.
    Design(PathBuf),
    /// The one worked on last, over which the window broke off: it is better not opened unasked.
    BrokeOff(PathBuf),
}

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
    if path.to_str().is_none() {
        return Ok(list(folder));
    }
    let in_folder = |source| FileError::System {
        path: folder.to_owned(),
        deed: crate::files::Deed::Saved,
        source,
    };
    std::fs::create_dir_all(folder).map_err(in_folder)?;
    let lock = std::fs::File::create(folder.join(LOCK)).map_err(in_folder)?;
    // where the system knows no locks, two windows at the same moment are rare enough
    let _ = lock.lock();
    let mut paths = list(folder);
    paths.retain(|known| *known != path);
    paths.insert(0, path);
    paths.truncate(MOST);
    let text = serde_json::to_string_pretty(&paths).unwrap_or_default();
    write_atomically(&folder.join(NAME), text.as_bytes())?;
    Ok(paths)
}

/// The window broke off: the design worked on last is not opened unasked the next time.
pub fn broke_off(folder: &Path) {
    let Some(last) = list(folder).into_iter().next() else {
        return;
    };
    let text = serde_json::to_string(&last).unwrap_or_default();
    // where nothing can be written, the next start is as any other
    let _ = write_atomically(&folder.join(BROKE_OFF), text.as_bytes());
}

/// The design to begin with. That the window broke off over it is said once.
pub fn last(folder: &Path) -> Last {
    let Some(last) = list(folder).into_iter().next() else {
        return Last::Nothing;
    };
    let mark = folder.join(BROKE_OFF);
    let text = std::fs::read_to_string(&mark).unwrap_or_default();
    let _ = std::fs::remove_file(&mark);
    match serde_json::from_str::<PathBuf>(&text) {
        Ok(fell) if fell == last => Last::BrokeOff(last),
        _ => Last::Design(last),
    }
}
