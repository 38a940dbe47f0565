//! A design on its way into the window: read and proven beside it, and shown once it is there.

use std::path::PathBuf;
use std::time::{Duration, Instant};

use egui::Context;
use latchwright_session::Session;
use latchwright_session::recovery::Left;

use super::LatchwrightApp;
use super::proving::Proving;
use crate::action::{Action, Source};
use crate::follow::NotMade;
use crate::panel::{Dialog, Purpose};
use crate::tasks::{Polled, Task, TaskKind};

/// A design that is opened sooner is shown without a word about it, which would only flicker.
const SOON: Duration = Duration::from_millis(150);

/// A design that is being opened.
pub(super) struct Opening {
    from: Origin,
    task: Task<Result<Opened, NotMade>>,
    begun: Instant,
    /// The state of the design that it takes the place of.
    revision: u64,
}

/// Where a design comes from that is being opened.
enum Origin {
    /// A file.
    File {
        path: PathBuf,
        /// Whether the path was typed, so that another can be tried.
        typed: bool,
    },
    /// Work that was left behind.
    Left,
}

/// A design with its proof.
struct Opened {
    session: Session,
    proving: Proving,
    /// The work that it was taken up from.
    left: Option<Left>,
}

impl Opening {
    /// What is opened, once that takes so long that it is worth a word.
    pub(super) fn told(&self) -> Option<String> {
        let what = || match &self.from {
            Origin::File { path, .. } => path.display().to_string(),
            Origin::Left => "the work that was not saved".to_owned(),
        };
        (self.begun.elapsed() >= SOON).then(what)
    }
}

impl LatchwrightApp {
    /// Reads the design of this file and shows it once it is read; what was being opened is given up.
    pub(super) fn open(&mut self, path: PathBuf) {
        let typed = match &self.dialog {
            Some(Dialog::Path(dialog)) => dialog.purpose() == Purpose::Open,
            _ => false,
        };
        let file = path.clone();
        self.begin_to_open(Origin::File { path, typed }, move || {
            let session = Session::open(&file);
            Ok((session.map_err(|err| err.to_string())?, None))
        });
    }

    /// Takes up work that was left behind; the file that it belongs to is read for that.
    pub(super) fn open_left(&mut self, left: Left) {
        self.begin_to_open(Origin::Left, move || Ok((left.session(), Some(left))));
    }

    fn begin_to_open(
        &mut self,
        from: Origin,
        read: impl FnOnce() -> Result<(Session, Option<Left>), String> + Send + 'static,
    ) {
        self.dialog = None;
        let revision = self.session.revision();
        let task = self.tasks.start(TaskKind::Open, revision, move |reins| {
            let (session, left) = read().map_err(NotMade::Refused)?;
            let proving = Proving::of_task(&session, reins)?;
            Ok(Opened {
                session,
                proving,
                left,
            })
        });
        self.opening = task.map(|task| Opening {
            from,
            task,
            begun: Instant::now(),
            revision,
        });
    }

    /// Shows what was opened since, or says why it cannot be.
    pub(super) fn follow_opening(&mut self, ctx: &Context) {
        let Some(opening) = self.opening.take() else {
            return;
        };
        match opening.task.poll() {
            Polled::Running => {
                if let Some(soon) = SOON.checked_sub(opening.begun.elapsed()) {
                    ctx.request_repaint_after(soon);
                }
                self.opening = Some(opening);
            }
            Polled::Done(Ok(opened)) => {
                // changed while it was opened: nobody has said that this may be lost
                if self.session.revision() != opening.revision && self.session.unsaved() {
                    self.ask_again(opening.from, opened);
                } else {
                    self.opened(opening.from, opened);
                }
            }
            Polled::Done(Err(NotMade::Refused(why))) => {
                self.warn(why);
                if let (Origin::File { path, typed: true }, None) = (opening.from, &self.dialog) {
                    self.ask(Purpose::Open, &path);
                }
            }
            // that it fell over the table tells
            Polled::Done(Err(NotMade::Stopped)) | Polled::Fell => {}
        }
    }

    fn ask_again(&mut self, from: Origin, opened: Opened) {
        match from {
            Origin::File { path, .. } => self.ask_first(Action::open(Source::File(path))),
            Origin::Left => self.dialog = opened.left.map(|left| Dialog::Left(vec![left])),
        }
    }

    fn opened(&mut self, from: Origin, opened: Opened) {
        if !matches!(self.dialog, Some(Dialog::Closing(_))) {
            self.dialog = None;
        }
        self.notice = None;
        if let Origin::File { path, .. } = from {
            self.used(&path);
        }
        self.show_proven(opened.session, opened.proving);
        if let Some(left) = opened.left {
            self.say("Taken up again; save it when it is as you want it".to_owned());
            self.adopt(left);
        }
    }
}
