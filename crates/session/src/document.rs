//! One open design: where its file is, what was changed since, and what is to be said about it.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use latchwright_model::Design;
use latchwright_proof::Proof;

use crate::demos;
use crate::files::{self, FileError, OnDisk, Stamp, changed_on_disk};
use crate::format::{Comments, ReadNotice, UnknownField};
use crate::history::History;

/// The design a person is working on.
#[derive(Debug, Clone)]
pub struct Session {
    history: History,
    file: Option<(PathBuf, Stamp)>,
    notices: Vec<ReadNotice>,
    unknown: Vec<UnknownField>,
    comments: Comments,
}

/// A design as it stood when it was to be saved, with what goes along: it can be written on any thread.
#[derive(Debug, Clone)]
pub struct ToSave {
    design: Arc<Design>,
    comments: Comments,
}

/// A design that is in a file now.
#[derive(Debug, Clone)]
pub struct InFile {
    design: Arc<Design>,
    file: (PathBuf, Stamp),
}

impl ToSave {
    /// The design.
    pub fn design(&self) -> &Arc<Design> {
        &self.design
    }

    /// Writes it to `path`.
    pub fn write(self, path: &Path) -> Result<InFile, FileError> {
        let stamp = files::save_with(path, &self.design, &self.comments)?;
        Ok(InFile {
            design: self.design,
            file: (path.to_owned(), stamp),
        })
    }
}

impl Session {
    /// The usual box, untitled.
    pub fn new() -> Self {
        Self::of(Design::default())
    }

    /// A design that comes from no file.
    pub fn of(design: Design) -> Self {
        let history = History::new(design);
        Self {
            history,
            file: None,
            notices: Vec::new(),
            unknown: Vec::new(),
            comments: Comments::default(),
        }
    }

    /// The same with the comments of a file that it was made from.
    #[must_use]
    pub fn with_comments(mut self, comments: Comments) -> Self {
        self.comments = comments;
        self
    }

    /// The demo of this name, as a design without a file; `None` if there is none of that name.
    pub fn demo(name: &str) -> Option<Self> {
        demos::demo(name)
            .and_then(|demo| demo.design().ok())
            .map(Self::of)
    }

    /// Opens the design file at `path`.
    pub fn open(path: &Path) -> Result<Self, FileError> {
        let opened = files::load(path)?;
        Ok(Self {
            history: History::new(opened.loaded.design),
            file: Some((path.to_owned(), opened.stamp)),
            notices: opened.loaded.notices,
            unknown: opened.loaded.unknown,
            comments: opened.loaded.comments,
        })
    }

    /// Work that was left behind, not saved, with the file it belongs to and what that was like.
    ///
    /// Undo leads back to what the file has, where it can be read; what the file has that this
    /// program does not know is remembered as after opening it.
    pub fn taken_up(design: Design, file: Option<(PathBuf, Stamp)>) -> Self {
        let before = file
            .as_ref()
            .and_then(|(path, _)| files::load(path).ok())
            .map(|opened| opened.loaded);
        let mut session = if let Some(loaded) = before {
            Self {
                notices: loaded.notices,
                unknown: loaded.unknown,
                ..Self::of(loaded.design)
            }
        } else {
            let mut session = Self::of(design.clone());
            session.history.mark_never_saved();
            session
        };
        session.history.edit("work taken up again", design);
        session.file = file;
        session
    }

    /// The file and what it was like when it was last read or written.
    pub fn file(&self) -> Option<&(PathBuf, Stamp)> {
        self.file.as_ref()
    }

    /// The design that is shown.
    pub fn design(&self) -> &Arc<Design> {
        self.history.current()
    }

    /// A number that grows with every change of [`Self::design`].
    pub fn revision(&self) -> u64 {
        self.history.revision()
    }

    /// Undo and redo, for their names.
    pub fn history(&self) -> &History {
        &self.history
    }

    /// The file, if there is one yet.
    pub fn path(&self) -> Option<&Path> {
        self.file.as_ref().map(|(path, _)| path.as_path())
    }

    /// What the file left out.
    pub fn notices(&self) -> &[ReadNotice] {
        &self.notices
    }

    /// What the file has that this program does not know, and would lose in a save.
    pub fn unknown(&self) -> &[UnknownField] {
        &self.unknown
    }

    /// What stands beside the design in its file for people, and goes along in every save.
    pub fn comments(&self) -> &Comments {
        &self.comments
    }

    /// Whether nothing may be called proven because something in the file was not understood.
    pub fn blocks_proof(&self) -> bool {
        !self.unknown.is_empty()
    }

    /// Whether the open design may be called proven by `proof`, which is its own.
    pub fn proven_by(&self, proof: &Proof) -> bool {
        proof.proven && !self.blocks_proof()
    }

    /// Changes the design, as one step of undo called `label`.
    pub fn edit(&mut self, label: &str, change: impl FnOnce(&mut Design)) {
        let mut design = Design::clone(self.design());
        change(&mut design);
        self.history.edit(label, design);
    }

    /// As [`Self::edit`] while a hand is moving: one step until [`Self::end_drag`].
    pub fn edit_in_drag(&mut self, label: &str, change: impl FnOnce(&mut Design)) {
        let mut design = Design::clone(self.design());
        change(&mut design);
        self.history.edit_in_drag(label, design);
    }

    /// The hand let go.
    pub fn end_drag(&mut self) {
        self.history.end_drag();
    }

    /// The hand gave up: everything is as before the drag; false if no drag is going on.
    pub fn put_back(&mut self) -> bool {
        self.history.put_back()
    }

    /// Takes the last edit back; false if there is none.
    pub fn undo(&mut self) -> bool {
        self.history.undo()
    }

    /// Makes the edit again that was last taken back; false if there is none.
    pub fn redo(&mut self) -> bool {
        self.history.redo()
    }

    /// Whether there is something that a save would keep.
    pub fn unsaved(&self) -> bool {
        !self.history.is_saved()
    }

    /// Whether another program changed the file since it was opened or saved; `None` without a file.
    pub fn on_disk(&self) -> Option<OnDisk> {
        self.file
            .as_ref()
            .map(|(path, stamp)| changed_on_disk(path, stamp))
    }

    /// Saves to the file the design came from, unless another program changed that file meanwhile.
    ///
    /// Unknown fields of the file are lost: warn about [`Self::unknown`] before.
    pub fn save(&mut self) -> Result<(), FileError> {
        match (&self.file, self.on_disk()) {
            (Some((path, _)), Some(OnDisk::Changed)) => {
                Err(FileError::ChangedOnDisk { path: path.clone() })
            }
            _ => self.save_anyway(),
        }
    }

    /// As [`Self::save`], whatever another program did to the file.
    pub fn save_anyway(&mut self) -> Result<(), FileError> {
        match self.path().map(Path::to_owned) {
            Some(path) => self.save_as(&path),
            None => Err(FileError::NoPath),
        }
    }

    /// Saves under a new name and stays with it.
    ///
    /// The caller gives the path its ending with [`files::with_ending`], and asks first if
    /// [`files::exists`] says that the file is there.
    pub fn save_as(&mut self, path: &Path) -> Result<(), FileError> {
        let written = self.to_save().write(path)?;
        self.saved(written);
        Ok(())
    }

    /// What a save would write now. What a moving hand has changed so far is a step of its own.
    pub fn to_save(&mut self) -> ToSave {
        self.history.end_drag();
        ToSave {
            design: Arc::clone(self.design()),
            comments: self.comments.clone(),
        }
    }

    /// What [`Self::to_save`] gave is written: the design stays with that file. What was changed since is
    /// unsaved.
    pub fn saved(&mut self, written: InFile) {
        self.history.mark_saved(written.design);
        self.file = Some(written.file);
        self.notices.clear();
        self.unknown.clear();
    }

    /// What stands over the window: title, file and whether it is saved.
    pub fn title(&self) -> String {
        let title = self.design().title.trim();
        let mut text = if title.is_empty() {
            "Untitled box"
        } else {
            title
        }
        .to_owned();
        if let Some(name) = self.path().and_then(Path::file_name) {
            text.push_str(" – ");
            text.push_str(&name.to_string_lossy());
        }
        if self.unsaved() {
            text.push_str(" (not saved)");
        }
        text
    }
}

impl Default for Session {
    fn default() -> Self {
        Self::new()
    }
}
