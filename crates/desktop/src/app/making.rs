//! Papers and parts on their way to their folder.

use std::path::PathBuf;

use egui::Context;
use latchwright_session::files::FileError;
use latchwright_session::products::{self, ForFolder};
use latchwright_session::together::{Replace, write_together};

use super::LatchwrightApp;
use crate::action::Action;
use crate::panel::{Dialog, Purpose};

/// What is saved.
#[derive(Clone, Copy)]
enum What {
    Papers,
    Parts,
}

/// What became of the files.
pub struct Saved {
    what: What,
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
        let start = self.suggested("papers").with_extension("papers");
        self.ask(Purpose::Papers, &start);
    }

    pub(super) fn ask_parts_path(&mut self) {
        let start = self.suggested("parts").with_extension("parts");
        self.ask(Purpose::Parts, &start);
    }

    /// Makes and writes the papers on a thread of its own.
    pub(super) fn save_papers(&mut self, ctx: &Context, folder: PathBuf, replace: Replace) {
        let design = self.session.design().clone();
        let options = self.make.papers.options(design.units);
        self.save_files(ctx, What::Papers, folder, replace, move || {
            products::all_papers(&design, &options)
        });
    }

    /// Writes the printed parts on a thread of its own, and makes them where they are not made yet.
    pub(super) fn save_parts(&mut self, ctx: &Context, folder: PathBuf, replace: Replace) {
        let design = self.session.design().clone();
        let chosen = self.make.parts.chosen();
        let made = self.printed.parts(self.session.revision(), chosen).cloned();
        self.save_files(ctx, What::Parts, folder, replace, move || {
            let made = match &made {
                Some(made) => products::files_of(&design, &made.parts),
                None => products::parts(&design, &chosen.options())
                    .and_then(|parts| products::files_of(&design, &parts)),
            };
            // what is to be known of each stands beside it in the panel
            made.map(|made| ForFolder {
                remarks: Vec::new(),
                ..made
            })
        });
    }

    fn save_files(
        &mut self,
        ctx: &Context,
        what: What,
        folder: PathBuf,
        replace: Replace,
        make: impl FnOnce() -> Result<ForFolder, String> + Send + 'static,
    ) {
        self.dialog = None;
        self.saving.start(ctx, move || {
            let made = make().map_err(NotSaved::Refused).and_then(|made| {
                match write_together(&folder, &made.files, replace) {
                    Ok(()) => Ok(made.remarks),
                    Err(err @ FileError::Exist { .. }) => Err(NotSaved::There(err.to_string())),
                    Err(err) => Err(NotSaved::Refused(err.to_string())),
                }
            });
            Saved { what, folder, made }
        });
    }

    pub(super) fn files_saved(&mut self, saved: Saved) {
        let Saved { what, folder, made } = saved;
        match made {
            Ok(left_out) => {
                if let Some(parent) = folder.parent() {
                    parent.clone_into(&mut self.folder);
                }
                let (all, next) = match what {
                    What::Papers => ("All papers", "print them at 100 %"),
                    What::Parts => ("All parts", "print the fit gauge first"),
                };
                let mut words = format!("{all} saved in {}; {next}", folder.display());
                for why in left_out {
                    words = format!("{words}; {why}");
                }
                self.say(words);
            }
            Err(NotSaved::There(why)) => {
                let then = Box::new(match what {
                    What::Papers => Action::PapersOver(folder),
                    What::Parts => Action::PartsOver(folder),
                });
                self.dialog = Some(Dialog::Over { why, then });
            }
            Err(NotSaved::Refused(why)) => self.warn(why.replace('\n', "; ")),
        }
    }
}
