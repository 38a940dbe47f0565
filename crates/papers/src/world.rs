//! What the typesetter may see: one template, the files handed in with it, and fonts. Nothing else.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use typst::diag::{FileError, FileResult};
use typst::foundations::{Bytes, Datetime, Duration};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt, World};

use crate::error::PaperError;
use crate::fonts::Fonts;

static LIBRARY: LazyLock<LazyHash<Library>> = LazyLock::new(|| LazyHash::new(Library::default()));

/// A closed world over given sources, files and fonts. It has no clock and no disk.
pub(crate) struct PaperWorld {
    main: Source,
    sources: BTreeMap<String, Source>,
    files: BTreeMap<String, Bytes>,
    fonts: Fonts,
}

impl PaperWorld {
    /// A world whose main source is `template`.
    pub(crate) fn new(template: &str, fonts: Fonts) -> Result<Self, PaperError> {
        let main = source("main.typ", template)?;
        Ok(Self {
            main,
            sources: BTreeMap::new(),
            files: BTreeMap::new(),
            fonts,
        })
    }

    /// Adds a template that the main one imports as `name`.
    pub(crate) fn with_source(mut self, name: &str, text: &str) -> Result<Self, PaperError> {
        self.sources.insert(name.to_owned(), source(name, text)?);
        Ok(self)
    }

    /// Adds a file that a template reads as `name`.
    pub(crate) fn with_file(mut self, name: &str, bytes: Vec<u8>) -> Self {
        self.files.insert(name.to_owned(), Bytes::new(bytes));
        self
    }
}

impl World for PaperWorld {
    fn library(&self) -> &LazyHash<Library> {
        &LIBRARY
    }

    fn book(&self) -> &LazyHash<FontBook> {
        self.fonts.book()
    }

    fn main(&self) -> FileId {
        self.main.id()
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        if id == self.main.id() {
            return Ok(self.main.clone());
        }
        let name = id.vpath().get_without_slash();
        self.sources.get(name).cloned().ok_or_else(|| not_found(id))
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        self.files
            .get(id.vpath().get_without_slash())
            .cloned()
            .ok_or_else(|| not_found(id))
    }

    fn font(&self, index: usize) -> Option<Font> {
        self.fonts.face(index)
    }

    fn today(&self, _offset: Option<Duration>) -> Option<Datetime> {
        None
    }
}

fn source(name: &str, text: &str) -> Result<Source, PaperError> {
    let path = VirtualPath::new(name).map_err(|err| PaperError::Typeset {
        message: format!("{name}: {err:?}"),
    })?;
    Ok(Source::new(
        RootedPath::new(VirtualRoot::Project, path).intern(),
        text.to_owned(),
    ))
}

fn not_found(id: FileId) -> FileError {
    FileError::NotFound(id.vpath().get_without_slash().into())
}
