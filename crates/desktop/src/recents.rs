//! Designs used lately, looked up and written beside the window: a folder may be on a slow disk.

use std::path::{Path, PathBuf};

use egui::Context;
use latchwright_session::recent;

use crate::job::Job;

/// A design used lately.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Known {
    /// Where it was.
    pub path: PathBuf,
    /// Whether it still is there.
    pub there: bool,
}

/// The designs used lately; none where nothing is remembered.
#[derive(Default)]
pub struct Recents {
    folder: Option<PathBuf>,
    known: Vec<Known>,
    /// What is still to be remembered, the last one last.
    to_add: Vec<PathBuf>,
    look: bool,
    job: Job<Vec<Known>>,
}

impl Recents {
    /// Remembers in `folder`.
    pub fn kept_in(folder: &Path) -> Self {
        Self {
            folder: Some(folder.to_owned()),
            look: true,
            ..Self::default()
        }
    }

    /// The last one first.
    pub fn known(&self) -> &[Known] {
        &self.known
    }

    /// This design was opened or saved.
    pub fn used(&mut self, path: &Path) {
        self.to_add.push(path.to_owned());
    }

    /// Looks again which are there.
    pub fn look(&mut self) {
        self.look = true;
    }

    /// Takes what was looked up since, and goes on with what is to be done.
    pub fn follow(&mut self, ctx: &Context) {
        if let Some(known) = self.job.poll() {
            self.known = known;
        }
        let Some(folder) = self.folder.clone() else {
            return;
        };
        let idle = !self.look && self.to_add.is_empty();
        if self.job.busy() || idle {
            return;
        }
        self.look = false;
        let used = std::mem::take(&mut self.to_add);
        self.job.start(ctx, move || {
            for path in used {
                // a list that cannot be written is no reason to stop anybody's work
                let _ = recent::add(&folder, &path);
            }
            let paths = recent::list(&folder).into_iter();
            paths
                .map(|path| Known {
                    there: path.is_file(),
                    path,
                })
                .collect()
        });
    }
}
