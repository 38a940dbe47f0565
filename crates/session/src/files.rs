//! Design files on disk: loading, safe saving, and noticing that somebody else changed one.
//!
//! A save never spoils what was there: the new text is written whole to a neighbour of the file and then
//! takes its name in one step.

use std::fs::{self, File};
use std::hash::Hasher;
use std::io::{self, ErrorKind, Read, Write};
use std::path::{Path, PathBuf};
use std::time::SystemTime;

use latchwright_model::Design;

use crate::format::{self, Comments, LARGEST, Loaded, ReadError, WriteError};

/// Why a file could not be loaded or saved. The file on disk is as it was before.
#[derive(Debug, thiserror::Error)]
pub enum FileError {
    /// The file is there, and no design.
    #[error("{} cannot be read: {source}", .path.display())]
    Read {
        /// Which file.
        path: PathBuf,
        /// What is wrong with it.
        source: ReadError,
    },
    /// The design holds something that a file cannot.
    #[error("{} was not saved: {source}", .path.display())]
    Write {
        /// Which file.
        path: PathBuf,
        /// What cannot be written.
        source: WriteError,
    },
    /// The operating system said no.
    #[error("{} cannot be {deed}: {}", .path.display(), why(.source))]
    System {
        /// Which file.
        path: PathBuf,
        /// What was tried.
        deed: Deed,
        /// What the system said.
        source: io::Error,
    },
    /// The path names no file.
    #[error("{} is a folder; choose a file in it", .path.display())]
    IsFolder {
        /// Which folder.
        path: PathBuf,
    },
    /// Something that is neither a file nor a folder: opening it could wait for ever, and a save would
    /// put a file in its place.
    #[error("{} is a pipe or a device and no file; choose a file", .path.display())]
    NotAFile {
        /// What is there.
        path: PathBuf,
    },
    /// The owner of the file wants it kept as it is.
    #[error("{} is write-protected; save under another name, or allow writing to it", .path.display())]
    Protected {
        /// Which file.
        path: PathBuf,
    },
    /// Somebody else saved it in the meantime.
    #[error("{} was changed by another program since it was opened; save under another name, or save over it", .path.display())]
    ChangedOnDisk {
        /// Which file.
        path: PathBuf,
    },
    /// Files that must not be replaced are there.
    #[error("{}; choose another folder, or allow replacing what is there", there(.paths))]
    Exist {
        /// Which files.
        paths: Vec<PathBuf>,
    },
    /// The design was never saved.
    #[error("the design has no file yet; choose a name for it")]
    NoPath,
}

/// What was tried with a file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Deed {
    /// Opened and read.
    Read,
    /// Written.
    Saved,
}

impl std::fmt::Display for Deed {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Self::Read => "read",
            Self::Saved => "saved",
        })
    }
}

/// Names the first files that are there and counts the others.
fn there(paths: &[PathBuf]) -> String {
    const NAMED: usize = 3;
    let names: Vec<String> = paths
        .iter()
        .take(NAMED)
        .map(|path| path.display().to_string())
        .collect();
    let verb = if paths.len() == 1 { "exists" } else { "exist" };
    match paths.len().saturating_sub(NAMED) {
        0 => format!("{} {verb} already", names.join(", ")),
        more => format!("{} and {more} more {verb} already", names.join(", ")),
    }
}

/// The system's reason, with what to do about it.
fn why(error: &io::Error) -> String {
    match error.kind() {
        ErrorKind::NotFound => "there is no such file or folder; check the path".to_owned(),
        ErrorKind::PermissionDenied => {
            "it is not allowed here; choose another folder or ask for the right to use it"
                .to_owned()
        }
        ErrorKind::StorageFull | ErrorKind::QuotaExceeded => {
            "the disk is full; make room or choose another disk".to_owned()
        }
        ErrorKind::ReadOnlyFilesystem => "the disk can only be read; choose another one".to_owned(),
        ErrorKind::NotADirectory => "a part of the path is a file and no folder".to_owned(),
        ErrorKind::InvalidFilename => "the name is too long or has signs it cannot have".to_owned(),
        _ => error.to_string(),
    }
}

/// What a file was like when it was last read or written, to notice a change.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Stamp {
    len: u64,
    modified: Option<SystemTime>,
    content: u64,
}

impl Stamp {
    /// Length and digest, to be kept beside a copy.
    pub(crate) fn mark(&self) -> (u64, u64) {
        (self.len, self.content)
    }

    /// A stamp from its mark; the file's time is taken as unknown, so that its bytes decide.
    pub(crate) fn of_mark(len: u64, content: u64) -> Self {
        Self {
            len,
            modified: None,
            content,
        }
    }
}

/// Whether a file is still what it was.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OnDisk {
    /// The same bytes.
    Same,
    /// Other bytes, or it cannot be told.
    Changed,
    /// Not there any more.
    Gone,
}

/// A design file, read.
#[derive(Debug, Clone)]
pub struct Opened {
    /// The design and what is to be said about its file.
    pub loaded: Loaded,
    /// What the file was like.
    pub stamp: Stamp,
}

/// Reads the design file at `path`.
pub fn load(path: &Path) -> Result<Opened, FileError> {
    let bytes = read_bounded(path)?;
    let loaded = format::read(&bytes).map_err(|source| FileError::Read {
        path: path.to_owned(),
        source,
    })?;
    Ok(Opened {
        loaded,
        stamp: stamp(path, &bytes),
    })
}

/// Refuses folders, pipes, sockets and devices, before any of them is opened: a pipe that nobody writes
/// into would be waited for without end.
pub(crate) fn must_be_a_file(path: &Path, about: &fs::Metadata) -> Result<(), FileError> {
    let path = path.to_owned();
    if about.is_dir() {
        Err(FileError::IsFolder { path })
    } else if about.is_file() {
        Ok(())
    } else {
        Err(FileError::NotAFile { path })
    }
}

/// Opens a new or emptied file for a table that is written as it is made.
///
/// A device will do, so that a table can go to standard output by its name; a pipe that has a name
/// would be waited for until somebody reads from it, and is refused.
pub fn create(path: &Path) -> Result<File, FileError> {
    #[cfg(unix)]
    {
        use std::os::unix::fs::FileTypeExt as _;
        // what a shell puts between two programs has a reader already, and no name outside /dev
        let waits = |path: PathBuf| {
            let pipe = fs::metadata(&path).is_ok_and(|about| about.file_type().is_fifo());
            pipe && !path.starts_with("/dev")
        };
        if fs::canonicalize(path).is_ok_and(waits) {
            return Err(FileError::NotAFile {
                path: path.to_owned(),
            });
        }
    }
    File::create(path).map_err(|source| FileError::System {
        path: path.to_owned(),
        deed: Deed::Saved,
        source,
    })
}

/// Reads a file no larger than a design can be; a larger one is refused before it is read.
pub(crate) fn read_bounded(path: &Path) -> Result<Vec<u8>, FileError> {
    let system = |source| FileError::System {
        path: path.to_owned(),
        deed: Deed::Read,
        source,
    };
    let about = fs::metadata(path).map_err(system)?;
    must_be_a_file(path, &about)?;
    let too_large = |bytes| {
        let source = ReadError::TooLarge {
            bytes,
            limit: LARGEST,
        };
        Err(FileError::Read {
            path: path.to_owned(),
            source,
        })
    };
    if about.len() > LARGEST {
        return too_large(about.len());
    }
    // a growing file has no honest length: stop just beyond the limit
    let mut bytes = Vec::new();
    let file = File::open(path).map_err(system)?;
    file.take(LARGEST + 1)
        .read_to_end(&mut bytes)
        .map_err(system)?;
    let read = bytes.len() as u64;
    if read > LARGEST {
        too_large(read)
    } else {
        Ok(bytes)
    }
}

/// Writes `design` to `path` and says what the file is like now.
pub fn save(path: &Path, design: &Design) -> Result<Stamp, FileError> {
    save_with(path, design, &Comments::default())
}

/// As [`save`], with the comments of the file that the design came from.
pub fn save_with(path: &Path, design: &Design, comments: &Comments) -> Result<Stamp, FileError> {
    let text = format::write_with(design, comments).map_err(|source| FileError::Write {
        path: path.to_owned(),
        source,
    })?;
    write_atomically(path, text.as_bytes())?;
    Ok(stamp(path, text.as_bytes()))
}

/// Writes `bytes` to `path` so that whatever happens, the file has either its old or its new content.
///
/// The permissions of a file that is there are kept; a link is followed.
pub fn write_atomically(path: &Path, bytes: &[u8]) -> Result<(), FileError> {
    let system = |source| FileError::System {
        path: path.to_owned(),
        deed: Deed::Saved,
        source,
    };
    let target = fs::canonicalize(path).unwrap_or_else(|_| path.to_owned());
    let before = fs::metadata(&target).ok();
    if let Some(about) = &before {
        must_be_a_file(path, about)?;
    }
    if before
        .as_ref()
        .is_some_and(|about| about.permissions().readonly())
    {
        return Err(FileError::Protected {
            path: path.to_owned(),
        });
    }
    let folder = match target.parent() {
        Some(folder) if folder != Path::new("") => folder,
        _ => Path::new("."),
    };
    let mut file = hidden().tempfile_in(folder).map_err(system)?;
    file.write_all(bytes).map_err(system)?;
    if let Some(about) = before {
        file.as_file()
            .set_permissions(about.permissions())
            .map_err(system)?;
    }
    file.as_file().sync_all().map_err(system)?;
    file.persist(&target).map_err(|error| system(error.error))?;
    sync_folder(folder);
    Ok(())
}

/// Makes hidden files that have the rights of usual ones.
pub(crate) fn hidden() -> tempfile::Builder<'static, 'static> {
    let mut builder = tempfile::Builder::new();
    builder.prefix(".latchwright-").suffix(".tmp");
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt as _;
        // less what the user's mask takes away
        builder.permissions(fs::Permissions::from_mode(0o666));
    }
    builder
}

/// Asks for the new name to reach the disk too. Some systems cannot; the file is whole all the same.
pub(crate) fn sync_folder(folder: &Path) {
    if let Ok(folder) = File::open(folder) {
        let _ = folder.sync_all();
    }
}

/// Whether the file at `path` still is what `stamp` says.
pub fn changed_on_disk(path: &Path, stamp: &Stamp) -> OnDisk {
    let about = match fs::metadata(path) {
        Ok(about) => about,
        Err(error) if error.kind() == ErrorKind::NotFound => return OnDisk::Gone,
        Err(_) => return OnDisk::Changed,
    };
    if about.len() == stamp.len
        && stamp.modified.is_some()
        && about.modified().ok() == stamp.modified
    {
        return OnDisk::Same;
    }
    match read_bounded(path) {
        Ok(bytes) if content(&bytes) == stamp.content => OnDisk::Same,
        _ => OnDisk::Changed,
    }
}

/// Whether something with this path exists, so that a save would replace it.
pub fn exists(path: &Path) -> bool {
    path.exists()
}

/// `path` with the ending of design files, `.latch.ron`, unless it ends in `.ron` already.
pub fn with_ending(path: &Path) -> PathBuf {
    let has = |ending| {
        path.extension()
            .is_some_and(|own| own.eq_ignore_ascii_case(ending))
    };
    if has("ron") {
        return path.to_owned();
    }
    let ending = if has("latch") { ".ron" } else { ".latch.ron" };
    let mut whole = path.as_os_str().to_owned();
    whole.push(ending);
    PathBuf::from(whole)
}

fn stamp(path: &Path, bytes: &[u8]) -> Stamp {
    let modified = fs::metadata(path).and_then(|about| about.modified()).ok();
    Stamp {
        len: bytes.len() as u64,
        modified,
        content: content(bytes),
    }
}

/// A number that differs when the bytes differ, as good as always.
fn content(bytes: &[u8]) -> u64 {
    let mut hasher = std::hash::DefaultHasher::new();
    hasher.write(bytes);
    hasher.finish()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_system_s_reasons_are_sentences_with_a_remedy() {
        let path = PathBuf::from("box.latch.ron");
        let sentence = |kind: ErrorKind| {
            let source = io::Error::from(kind);
            FileError::System {
                path: path.clone(),
                deed: Deed::Saved,
                source,
            }
            .to_string()
        };
        assert_eq!(
            sentence(ErrorKind::StorageFull),
            "box.latch.ron cannot be saved: the disk is full; make room or choose another disk"
        );
        assert_eq!(
            sentence(ErrorKind::ReadOnlyFilesystem),
            "box.latch.ron cannot be saved: the disk can only be read; choose another one"
        );
        assert!(sentence(ErrorKind::PermissionDenied).contains("choose another folder"));
    }

    #[test]
    fn a_path_gets_the_ending_of_designs_once() {
        for (given, whole) in [
            ("tea", "tea.latch.ron"),
            ("boxes/tea.box", "boxes/tea.box.latch.ron"),
            ("tea.latch", "tea.latch.ron"),
            ("tea.ron", "tea.ron"),
            ("tea.latch.ron", "tea.latch.ron"),
            ("TEA.LATCH.RON", "TEA.LATCH.RON"),
        ] {
            assert_eq!(with_ending(Path::new(given)), Path::new(whole), "{given}");
        }
    }
}
