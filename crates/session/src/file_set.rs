//! Several files as one: all of them are written, or none is and what was there stays as it was.

use std::fs::{self, File};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use tempfile::{NamedTempFile, TempPath};

use crate::files::{Deed, FileError, hidden, must_be_a_file, sync_folder};

/// A file to be written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NewFile {
    /// Its name in the folder; `/` stands between a folder in it and the name there.
    pub name: String,
    /// What is in it.
    pub bytes: Vec<u8>,
}

/// Whether files that are there may be replaced.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Replace {
    /// They may not: nothing is written where one is.
    Never,
    /// They may.
    Allowed,
}

impl Replace {
    /// Allowed where it was asked for.
    pub const fn if_asked(asked: bool) -> Self {
        if asked { Self::Allowed } else { Self::Never }
    }
}

/// Which of `files` are in `folder` already.
pub fn existing(folder: &Path, files: &[NewFile]) -> Vec<PathBuf> {
    let paths = files.iter().map(|file| folder.join(&file.name));
    paths
        .filter(|path| path.symlink_metadata().is_ok())
        .collect()
}

/// Writes all `files` into `folder`, which is made where it is lacking.
///
/// Each is first written whole to a hidden neighbour, then all take their names. Where one cannot,
/// those before it are taken back and what they replaced gets its name again.
///
/// # Errors
/// [`FileError::Exist`] where files may not be replaced and some are there; what the system says of
/// the first that cannot be written. The folder is then as it was.
pub fn write_file_set(folder: &Path, files: &[NewFile], replace: Replace) -> Result<(), FileError> {
    if replace == Replace::Never {
        let paths = existing(folder, files);
        if !paths.is_empty() {
            return Err(FileError::Exist { paths });
        }
    }
    let mut made = MadeFolders::default();
    let staged = stage(folder, files, &mut made)?;
    let mut taken = Taken::default();
    for (path, file) in staged {
        taken.take(path, file, replace)?;
    }
    taken.keep();
    made.keep();
    Ok(())
}

/// Every file whole under a hidden name beside its own; they vanish when dropped.
fn stage(
    folder: &Path,
    files: &[NewFile],
    made: &mut MadeFolders,
) -> Result<Vec<(PathBuf, NamedTempFile)>, FileError> {
    let mut staged = Vec::with_capacity(files.len());
    for new in files {
        let path = folder.join(&new.name);
        if let Ok(about) = path.metadata() {
            must_be_a_file(&path, &about)?;
        }
        let beside = path.parent().unwrap_or(folder);
        made.make(beside)?;
        let write = || -> io::Result<NamedTempFile> {
            let mut file = hidden().tempfile_in(beside)?;
            file.write_all(&new.bytes)?;
            file.as_file().sync_all()?;
            Ok(file)
        };
        let file = write().map_err(|source| system(&path, source))?;
        staged.push((path, file));
    }
    Ok(staged)
}

fn system(path: &Path, source: io::Error) -> FileError {
    FileError::System {
        path: path.to_owned(),
        deed: Deed::Saved,
        source,
    }
}

/// Names taken so far; given back when dropped before they are kept.
#[derive(Default)]
struct Taken {
    done: Vec<(PathBuf, Option<TempPath>)>,
}

impl Taken {
    fn take(
        &mut self,
        path: PathBuf,
        file: NamedTempFile,
        replace: Replace,
    ) -> Result<(), FileError> {
        let before = path.symlink_metadata().ok();
        let old = match (replace, before) {
            (Replace::Allowed, Some(about)) if about.permissions().readonly() => {
                return Err(FileError::Protected { path });
            }
            (Replace::Allowed, Some(_)) => {
                Some(set_aside(&path).map_err(|source| system(&path, source))?)
            }
            _ => None,
        };
        let put = file
            .persist_noclobber(&path)
            .map_err(|error| system(&path, error.error));
        match put {
            Ok(_) => {
                self.done.push((path, old));
                Ok(())
            }
            Err(error) => {
                if let Some(old) = old {
                    // the system has just refused one name; that this one is free again is the best hope
                    let _ = old.persist(&path);
                }
                Err(error)
            }
        }
    }

    fn keep(mut self) {
        for (path, _) in self.done.drain(..) {
            sync_folder(path.parent().unwrap_or(Path::new(".")));
        }
    }
}

impl Drop for Taken {
    fn drop(&mut self) {
        for (path, old) in self.done.drain(..).rev() {
            // what cannot be taken back now could not be taken back later either
            let _ = match old {
                Some(old) => old.persist(&path).map_err(|error| error.error),
                None => fs::remove_file(&path),
            };
        }
    }
}

/// Gives the file at `path` a hidden name beside its own.
fn set_aside(path: &Path) -> io::Result<TempPath> {
    let beside = path.parent().unwrap_or(Path::new("."));
    let old = hidden().tempfile_in(beside)?.into_temp_path();
    fs::rename(path, &old)?;
    Ok(old)
}

/// Folders that were lacking; taken away when dropped before they are kept.
#[derive(Default)]
struct MadeFolders(Vec<PathBuf>);

impl MadeFolders {
    fn make(&mut self, folder: &Path) -> Result<(), FileError> {
        let lacking: Vec<&Path> = folder
            .ancestors()
            .take_while(|path| *path != Path::new("") && !path.exists())
            .collect();
        for path in lacking.into_iter().rev() {
            fs::create_dir(path).map_err(|source| system(path, source))?;
            self.0.push(path.to_owned());
        }
        // a file where the folder should be is named by the system when it is written into
        Ok(())
    }

    fn keep(mut self) {
        for path in self.0.drain(..) {
            if let Ok(folder) = File::open(path.parent().unwrap_or(Path::new("."))) {
                // some systems cannot; the folder is there all the same
                let _ = folder.sync_all();
            }
        }
    }
}

impl Drop for MadeFolders {
    fn drop(&mut self) {
        for path in self.0.drain(..).rev() {
            // not empty any more: somebody else has put something into it, which stays
            let _ = fs::remove_dir(path);
        }
    }
}
