//! The design on its way to its file.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use egui::Context;
use latchwright_model::Design;
use latchwright_session::Session;
use latchwright_session::document::InFile;
use latchwright_session::file_set::Replace;
use latchwright_session::files::{self, FileError, OnDisk, Stamp, changed_on_disk};

use super::LatchwrightApp;
use super::making::{NotSaved, Written};
use crate::action::{Action, Product};
use crate::panel::Purpose;

/// The design that is being saved.
pub(super) struct Keeping {
    to: PathBuf,
    /// As it stood when that began.
    design: Arc<Design>,
    /// Which of the designs shown one after the other it is.
    shown: u64,
    /// Where what is shown was asked to be saved meanwhile: that follows.
    pub(super) again: Option<(PathBuf, Replace)>,
}

impl Keeping {
    /// Whether `session` is being saved as it stands.
    fn covers(&self, session: &Session) -> bool {
        self.again.is_none() && self.design == *session.design()
    }
}

impl LatchwrightApp {
    /// Whether there are changes that neither are in a file nor on their way to one.
    pub(super) fn would_lose(&self) -> bool {
        self.session.unsaved() && !self.is_being_saved()
    }

    /// Whether the design is being saved as it stands.
    pub(super) fn is_being_saved(&self) -> bool {
        let of_this = |keeping: &&Keeping| keeping.shown == self.shown;
        let keeping = self.keeping.as_ref().filter(of_this);
        keeping.is_some_and(|keeping| keeping.covers(&self.session))
    }

    /// Saves, and goes on with what was asked for once it is saved.
    pub(super) fn save_then(&mut self, then: Box<Action>) {
        self.dialog = None;
        self.safe.then = Some(then);
        self.save();
    }

    /// Saves where it came from or is being saved to, or asks where.
    pub(super) fn save(&mut self) {
        let of_this = |keeping: &&Keeping| keeping.shown == self.shown;
        let keeping = self.keeping.as_ref().filter(of_this);
        let to = keeping.map(|keeping| keeping.to.as_path());
        match to.or(self.session.path()).map(Path::to_owned) {
            None => self.ask_where(Product::Design),
            Some(path) => self.save_design(path, Replace::Never),
        }
    }

    /// Saves beside the window, unless something must be asked first: another file stands there, somebody
    /// changed it, or fields that this version does not know would be dropped. What is being saved already
    /// is waited for.
    pub(super) fn save_design(&mut self, path: PathBuf, replace: Replace) {
        if let Some(keeping) = &mut self.keeping {
            let same = keeping.shown == self.shown
                && keeping.to == path
                && keeping.design == *self.session.design();
            keeping.again = (!same).then_some((path, replace));
            self.dialog = None;
            return;
        }
        let unknown = self.session.unknown().len();
        if replace == Replace::Never && unknown > 0 {
            let why = format!(
                "{unknown} fields of the opened file are not known to this version and would be lost"
            );
            return self.ask_over(why, Product::Design, path);
        }
        let file = self.session.file().cloned();
        let to_save = self.session.to_save();
        let keeping = Keeping {
            to: path.clone(),
            design: Arc::clone(to_save.design()),
            shown: self.shown,
            again: None,
        };
        let begun = self.write(Product::Design, path, move |to| {
            let in_the_way = match replace {
                Replace::Never => in_the_way(to, file.as_ref()),
                Replace::Allowed => None,
            };
            match in_the_way {
                Some(why) => Err(NotSaved::There(why)),
                None => match to_save.write(to) {
                    Ok(written) => Ok(Written::Design(written)),
                    Err(err) => Err(NotSaved::Refused(err.to_string())),
                },
            }
        });
        if begun {
            self.keeping = Some(keeping);
        } else {
            self.safe.then = None;
        }
    }

    /// The design is in its file: what was asked for after that follows.
    pub(super) fn kept(&mut self, ctx: &Context, written: InFile) {
        let Some(keeping) = self.keeping.take() else {
            return;
        };
        self.used(&keeping.to);
        if keeping.shown == self.shown {
            self.session.saved(written);
            // its copy belongs to another file now
            self.safe.told = None;
        }
        if let Some((to, replace)) = keeping.again {
            return self.save_design(to, replace);
        }
        let Some(then) = self.safe.then.take() else {
            return;
        };
        if self.session.unsaved() {
            // changed while it was saved: nobody has said that this may be lost
            self.ask_first(*then);
        } else {
            self.apply(ctx, *then);
        }
    }

    /// The design was not saved. Another path can be tried where this one was typed; else nothing comes
    /// after it.
    pub(super) fn not_kept(&mut self) {
        let Some(keeping) = self.keeping.take() else {
            return;
        };
        let typed = self.session.path() != Some(keeping.to.as_path());
        if typed && keeping.shown == self.shown && self.dialog.is_none() {
            self.ask(Purpose::Save(Product::Design), &keeping.to);
        } else {
            self.safe.then = None;
        }
    }
}

/// What stands in the way of saving the design of this file to `path`, if anything does.
fn in_the_way(path: &Path, file: Option<&(PathBuf, Stamp)>) -> Option<String> {
    match file {
        Some((own, stamp)) if own == path => {
            let changed = changed_on_disk(path, stamp) == OnDisk::Changed;
            let path = path.to_owned();
            changed.then(|| FileError::ChangedOnDisk { path }.to_string())
        }
        _ => files::exists(path).then(|| format!("{} exists already", path.display())),
    }
}
