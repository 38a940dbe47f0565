//! What is on its way to its file or folder: the design, card, papers and parts.

use std::path::{Path, PathBuf};

use egui::{Context, ViewportCommand};
use latchwright_model::Units;
use latchwright_session::document::InFile;
use latchwright_session::file_set::{Replace, write_file_set};
use latchwright_session::files::{self, FileError};
use latchwright_session::products::{self, ForFolder, ProductError};
use latchwright_session::words::products::product_error;

use super::LatchwrightApp;
use crate::action::{Action, Product, Unsaved};
use crate::panel::{Dialog, Purpose};
use crate::tasks::{Polled, Task, TaskKind};

/// What is being written, in the order in which it was asked for.
#[derive(Default)]
pub(super) struct Saving {
    tasks: Vec<(Product, Task<Saved>)>,
    products: Vec<Product>,
}

/// What became of a product.
struct Saved {
    to: PathBuf,
    made: Result<Written, NotSaved>,
}

/// What was written.
pub(super) enum Written {
    /// The design.
    Design(InFile),
    /// Card, papers or parts; what is to be said of them.
    Made(Vec<String>),
}

/// Why there is none.
pub(super) enum NotSaved {
    /// Some of it is there already.
    There(String),
    /// It cannot be made or written.
    Refused(String),
}

impl Saving {
    /// What is on its way.
    pub(super) fn products(&self) -> &[Product] {
        &self.products
    }

    /// What has come to its end since; without an outcome where it fell over.
    fn ended(&mut self) -> Vec<(Product, Option<Saved>)> {
        let mut ended = Vec::new();
        self.tasks.retain(|(product, task)| match task.poll() {
            Polled::Running => true,
            Polled::Done(saved) => {
                ended.push((*product, Some(saved)));
                false
            }
            Polled::Fell => {
                ended.push((*product, None));
                false
            }
        });
        self.products = self.tasks.iter().map(|(product, _)| *product).collect();
        ended
    }
}

impl LatchwrightApp {
    /// Asks where it goes.
    pub(super) fn ask_where(&mut self, what: Product) {
        let start = match what {
            Product::Design => self.suggested("latch.ron"),
            Product::Card => self.suggested("card.pdf"),
            Product::Papers => self.suggested("papers").with_extension("papers"),
            Product::Parts => self.suggested("parts").with_extension("parts"),
        };
        self.ask(Purpose::Save(what), &start);
    }

    /// Typesets and writes the card beside the window, where it may.
    pub(super) fn save_card(&mut self, to: PathBuf, replace: Replace) {
        let design = self.session.design().clone();
        self.write(Product::Card, to, move |to| {
            if replace == Replace::Never && files::exists(to) {
                let why = format!("{} exists already", to.display());
                return Err(NotSaved::There(why));
            }
            let pdf = products::card_pdf(&design).map_err(not_made(design.units))?;
            match files::write_atomically(to, &pdf) {
                Ok(()) => Ok(Written::Made(Vec::new())),
                Err(err) => Err(NotSaved::Refused(err.to_string())),
            }
        });
    }

    /// Makes and writes the papers beside the window.
    pub(super) fn save_papers(&mut self, to: PathBuf, replace: Replace) {
        let design = self.session.design().clone();
        let options = self.make.papers.options(design.units);
        self.write(Product::Papers, to, move |folder| {
            let made = products::all_papers(&design, &options);
            into_folder(folder, made.map_err(not_made(design.units))?, replace)
        });
    }

    /// Writes the printed parts beside the window, and makes them where they are not made yet.
    pub(super) fn save_parts(&mut self, to: PathBuf, replace: Replace) {
        let design = self.session.design().clone();
        let chosen = self.make.parts.chosen();
        let made = self.printed.parts(self.session.revision(), chosen).cloned();
        self.write(Product::Parts, to, move |folder| {
            let made = match &made {
                Some(made) => products::files_of(&design, &made.parts),
                None => products::parts(&design, &chosen.options())
                    .and_then(|parts| products::files_of(&design, &parts)),
            };
            // what is to be known of each stands beside it in the panel
            let made = made.map_err(not_made(design.units))?;
            into_folder(
                folder,
                ForFolder {
                    remarks: Vec::new(),
                    ..made
                },
                replace,
            )
        });
    }

    /// Makes and writes this beside the window; whether that could be begun.
    pub(super) fn write(
        &mut self,
        what: Product,
        to: PathBuf,
        make: impl FnOnce(&Path) -> Result<Written, NotSaved> + Send + 'static,
    ) -> bool {
        self.dialog = None;
        let revision = self.session.revision();
        let kind = TaskKind::Write(what);
        let task = self.tasks.start(kind, revision, move |_| {
            let made = make(&to);
            Saved { to, made }
        });
        if let Some(task) = task {
            self.saving.tasks.push((what, task));
            self.saving.products.push(what);
            return true;
        }
        // that there is no thread for it is told by the table
        if self.tasks.goes_on(kind) {
            self.warn("This is still being saved; save it again when that is done".to_owned());
        }
        false
    }

    /// Tells of what was saved since, and closes the window where it waited for that.
    pub(super) fn follow_saving(&mut self, ctx: &Context) {
        let mut all_well = true;
        for (what, ended) in self.saving.ended() {
            if let Some(saved) = ended {
                all_well &= self.saved(ctx, what, saved);
            } else {
                all_well = false;
                self.not_saved(what);
            }
        }
        let Some(Dialog::Closing(unsaved)) = self.dialog else {
            return;
        };
        if !all_well {
            // what went wrong is to be seen
            self.dialog = None;
        } else if unsaved == Unsaved::Ask && self.would_lose() {
            self.ask_first(Action::Leave);
        } else if self.saving.products.is_empty() {
            self.dialog = None;
            self.leaving = true;
            ctx.send_viewport_cmd(ViewportCommand::Close);
        }
    }

    /// Whether it went well; where it did not, it is said or asked.
    fn saved(&mut self, ctx: &Context, what: Product, saved: Saved) -> bool {
        let Saved { to, made } = saved;
        match made {
            Ok(Written::Design(written)) => {
                self.made(what, &to, Vec::new());
                self.kept(ctx, written);
                true
            }
            Ok(Written::Made(remarks)) => {
                self.made(what, &to, remarks);
                true
            }
            Err(NotSaved::There(why)) => {
                if what == Product::Design {
                    // what comes after it waits for the answer
                    self.keeping = None;
                }
                self.ask_over(why, what, to);
                false
            }
            Err(NotSaved::Refused(why)) => {
                self.warn(why.replace('\n', "; "));
                self.not_saved(what);
                false
            }
        }
    }

    fn not_saved(&mut self, what: Product) {
        if what == Product::Design {
            self.not_kept();
        }
    }

    fn made(&mut self, what: Product, to: &Path, remarks: Vec<String>) {
        let shown = to.display();
        let mut words = match what {
            Product::Design => format!("Saved as {shown}"),
            Product::Card => format!("Card saved as {shown}; print it at 100 %"),
            Product::Papers => {
                format!("All papers saved in {shown}; print them at 100 %")
            }
            Product::Parts => {
                format!("All parts saved in {shown}; print the fit gauge first")
            }
        };
        for remark in remarks {
            words = format!("{words}; {remark}");
        }
        self.say(words);
        // papers and parts have a folder of their own, in the one that is asked for next
        if let (Product::Papers | Product::Parts, Some(parent)) = (what, to.parent()) {
            parent.clone_into(&mut self.folder);
        }
    }

    /// Asks whether what stands in the way may be written over.
    pub(super) fn ask_over(&mut self, why: String, what: Product, to: PathBuf) {
        let then = Box::new(Action::Save {
            what,
            to,
            replace: Replace::Allowed,
        });
        self.dialog = Some(Dialog::Over { why, then });
    }
}

fn not_made(units: Units) -> impl Fn(ProductError) -> NotSaved {
    move |err| NotSaved::Refused(product_error(&err, units))
}

fn into_folder(folder: &Path, made: ForFolder, replace: Replace) -> Result<Written, NotSaved> {
    match write_file_set(folder, &made.files, replace) {
        Ok(()) => Ok(Written::Made(made.remarks)),
        Err(err @ FileError::Exist { .. }) => Err(NotSaved::There(err.to_string())),
        Err(err) => Err(NotSaved::Refused(err.to_string())),
    }
}
