//! Designs used lately, looked up and written beside the window: a folder may be on a slow disk.

use std::path::{Path, PathBuf};

use latchwright_session::recent;

use crate::follow::Follow;
use crate::tasks::{TaskKind, Tasks};

/// A design used lately.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Known {
    /// Where it was.
    pub path: PathBuf,
    /// Whether it still is there.
    pub there: bool,
}

/// The designs used lately; none where nothing is remembered.
pub struct Recents {
    folder: Option<PathBuf>,
    /// As they were when they were looked at for the so many-th time.
    known: Follow<u64, Vec<Known>>,
    /// What is still to be remembered, the last one last.
    to_add: Vec<PathBuf>,
    /// How often they were to be looked at.
    looks: u64,
}

impl Default for Recents {
    fn default() -> Self {
        Self {
            folder: None,
            known: Follow::new(TaskKind::Recents, Vec::new()),
            to_add: Vec::new(),
            looks: 0,
        }
    }
}

impl Recents {
    /// Remembers in `folder`.
    pub fn kept_in(folder: &Path) -> Self {
        Self {
            folder: Some(folder.to_owned()),
            looks: 1,
            ..Self::default()
        }
    }

    /// The last one first.
    pub fn known(&self) -> &[Known] {
        self.known.value()
    }

    /// This design was opened or saved.
    pub fn used(&mut self, path: &Path) {
        self.to_add.push(path.to_owned());
        self.looks += 1;
    }

    /// Looks again which are there.
    pub fn look(&mut self) {
        self.looks += 1;
    }

    /// Takes what was looked up since, and goes on with what is to be done.
    pub fn follow(&mut self, tasks: &mut Tasks) {
        self.known.poll();
        let Some(folder) = self.folder.clone() else {
            return;
        };
        if self.looks == 0 || self.known.on_its_way() || tasks.goes_on(TaskKind::Recents) {
            return;
        }
        let used = self.to_add.clone();
        self.known.want(tasks, &self.looks, move |_| {
            for path in used {
                // a list that cannot be written is no reason to stop anybody's work
                let _ = recent::add(&folder, &path);
            }
            let paths = recent::list(&folder).into_iter();
            let known = paths.map(|path| Known {
                there: path.is_file(),
                path,
            });
            Ok(known.collect())
        });
        if self.known.on_its_way() {
            self.to_add.clear();
        }
    }
}
