//! Papers on their way to their folder.

use std::path::PathBuf;

use egui::Context;
use latchwright_session::files::FileError;
use latchwright_session::together::{NewFile, Replace, write_together};

use super::LatchwrightApp;
use crate::action::Action;
use crate::job;
use crate::panel::{Dialog, Purpose};

/// What became of the papers.
pub struct Saved {
    folder: PathBuf,
    made: Result<Vec<String>, NotSaved>,
}

/// Why there are none.
enum NotSaved {
    /// Some are there already.
    There(String),
    /// They cannot be made or written.
    Refused(String),
}

impl LatchwrightApp {
    pub(super) fn ask_papers_path(&mut self) {
        let start = self.suggested("papers").with_extension("");
        self.ask(Purpose::Papers, &start);
    }

    /// Makes and writes the papers on a thread of its own.
    pub(super) fn save_papers(&mut self, ctx: &Context, folder: PathBuf, replace: Replace) {
        self.dialog = None;
        let design = self.session.design().clone();
        let options = self.papers.options(design.units);
        self.saving.start(ctx, move || {
            let made = job::all_papers(&design, &options)
                .map_err(NotSaved::Refused)
                .and_then(|papers| {
                    let named = papers.files.into_iter();
                    let files: Vec<NewFile> =
                        named.map(|(name, bytes)| NewFile { name, bytes }).collect();
                    match write_together(&folder, &files, replace) {
                        Ok(()) => Ok(papers.left_out),
                        Err(err @ FileError::Exist { .. }) => Err(NotSaved::There(err.to_string())),
                        Err(err) => Err(NotSaved::Refused(err.to_string())),
                    }
                });
            Saved { folder, made }
        });
    }

    pub(super) fn papers_saved(&mut self, saved: Saved) {
        let folder = saved.folder;
        match saved.made {
            Ok(left_out) => {
                if let Some(parent) = folder.parent() {
                    parent.clone_into(&mut self.folder);
                }
                let mut words = format!(
                    "All papers saved in {}; print them at 100 %",
                    folder.display()
                );
                for why in left_out {
                    words = format!("{words}; {why}");
                }
                self.say(words);
            }
            Err(NotSaved::There(why)) => {
                self.dialog = Some(Dialog::Over {
                    why,
                    then: Box::new(Action::PapersOver(folder)),
                });
            }
            Err(NotSaved::Refused(why)) => self.warn(why),
        }
    }
}
