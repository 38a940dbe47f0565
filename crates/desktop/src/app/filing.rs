//! Designs in and out of the window: opened, saved, asked about before changes are lost, and copied
//! meanwhile so that a crash loses nothing.

use std::path::Path;
use std::time::Duration;

use egui::{Context, ViewportCommand};
use latchwright_model::Design;
use latchwright_session::Session;
use latchwright_session::questions::FROM_BENCH;
use latchwright_session::recovery::{Copies, DELAY, Left, Work, left_behind};

use super::LatchwrightApp;
use super::proving::Proving;
use crate::action::{Action, Source, Unsaved};
use crate::hunting::Hunting;
use crate::pages::{Look, Pages};
use crate::panel::Dialog;
use crate::printed::Printed;
use crate::recents::Recents;
use crate::remedies::Remedies;
use crate::scene::Scene;
use crate::view_state::ViewState;
use crate::virtual_builds::VirtualBuilds;

/// Folder of the copies within the folder of the program.
const UNSAVED: &str = "unsaved";

/// What keeps the work safe.
#[derive(Default)]
pub(super) struct Safe {
    copies: Option<Copies>,
    /// The state that the copies were told of last.
    pub(super) told: Option<(u64, bool)>,
    /// What was asked for before saving came first.
    pub(super) then: Option<Box<Action>>,
    /// What the window is called.
    title: String,
}

impl LatchwrightApp {
    /// Keeps copies of unsaved work and the list of designs used lately in `folder`, and offers work
    /// that was left behind there.
    #[must_use]
    pub fn remembering(self, ctx: &Context, folder: &Path) -> Self {
        self.remembering_after(ctx, folder, DELAY)
    }

    /// As [`Self::remembering`], a copy being written so long after a change.
    #[must_use]
    pub fn remembering_after(mut self, ctx: &Context, folder: &Path, delay: Duration) -> Self {
        let unsaved = folder.join(UNSAVED);
        let left = left_behind(&unsaved);
        if !left.is_empty() {
            self.dialog = Some(Dialog::Left(left));
        }
        let woken = ctx.clone();
        let wake = move || woken.request_repaint();
        self.safe.copies = Some(Copies::start(&unsaved, delay, wake));
        self.recents = Recents::kept_in(folder);
        if let Some(path) = self.session.path() {
            self.recents.used(path);
        }
        self
    }

    /// Waits until the copy of what was changed so far stands; not at all where none are kept.
    pub fn wait_for_copy(&self) {
        if let Some(copies) = &self.safe.copies {
            copies.settle();
        }
    }

    /// Copies, title and list follow the design.
    pub(super) fn follow_safe(&mut self, ctx: &Context) {
        self.recents.follow(&mut self.tasks);
        let title = format!("Latchwright – {}", self.session.title());
        if self.safe.title != title {
            ctx.send_viewport_cmd(ViewportCommand::Title(title.clone()));
            self.safe.title = title;
        }
        let Some(copies) = &self.safe.copies else {
            return;
        };
        let state = (self.session.revision(), self.session.unsaved());
        if self.safe.told != Some(state) {
            self.safe.told = Some(state);
            if state.1 {
                copies.keep(Work {
                    design: self.session.design().clone(),
                    comments: self.session.comments().clone(),
                    file: self.session.file().cloned(),
                });
            } else {
                copies.forget();
            }
        }
        if let Some(why) = copies.trouble() {
            self.warn(why);
        }
    }

    /// Files dropped on the window: one is opened.
    pub(super) fn follow_dropped(&mut self, ctx: &Context, wishes: &mut Vec<Action>) {
        let dropped = ctx.input_mut(|input| std::mem::take(&mut input.raw.dropped_files));
        let Some(first) = dropped.first() else { return };
        if dropped.len() > 1 {
            self.say("Several files were dropped; the first is opened".to_owned());
        }
        wishes.push(Action::open(Source::File(first.path().to_owned())));
    }

    /// Asks before the window closes with changes, and waits where something is still being saved.
    pub(super) fn follow_closing(&mut self, ctx: &Context) {
        let asked = ctx.input(|input| input.viewport().close_requested());
        if !asked || self.leaving {
            return;
        }
        if self.would_lose() {
            ctx.send_viewport_cmd(ViewportCommand::CancelClose);
            self.ask_first(Action::Leave);
        } else if !self.saving.products().is_empty() {
            ctx.send_viewport_cmd(ViewportCommand::CancelClose);
            self.dialog = Some(Dialog::Closing(Unsaved::Ask));
        }
    }

    /// Closes the window, changes thrown away; what is still being saved is waited for.
    pub(super) fn leave(&mut self, ctx: &Context) {
        if self.saving.products().is_empty() {
            self.leaving = true;
            ctx.send_viewport_cmd(ViewportCommand::Close);
        } else {
            self.dialog = Some(Dialog::Closing(Unsaved::Discard));
        }
    }

    /// Asks whether changes are to be saved before this is done.
    pub(super) fn ask_first(&mut self, then: Action) {
        self.safe.then = None;
        self.dialog = Some(Dialog::Unsaved {
            then: Box::new(then),
        });
    }

    /// Goes on with another design. It is asked once before changes are lost; a design nobody has touched is
    /// simply left.
    pub(super) fn go_on_with(&mut self, source: Source, unsaved: Unsaved) {
        // a newer wish takes the place of what is being opened
        self.opening = None;
        if unsaved == Unsaved::Ask && self.would_lose() {
            return self.ask_first(Action::Open { source, unsaved });
        }
        if unsaved == Unsaved::Ask && self.session.unsaved() {
            // once it is saved
            self.dialog = None;
            self.safe.then = Some(Box::new(Action::Open { source, unsaved }));
            return;
        }
        match source {
            Source::File(path) => self.open(path),
            Source::Demo(name) => self.demo(name),
            Source::Proposal(design) => self.take(*design),
        }
    }

    /// Goes on with a design that was proposed.
    fn take(&mut self, design: Design) {
        self.dialog = None;
        self.notice = None;
        self.proposing.stop();
        let comments = self.session.comments().within(&FROM_BENCH);
        self.show(Session::of(design).with_comments(comments));
    }

    /// What lies over the window goes, and with it what was to come after it; not what comes after a save that
    /// is on its way.
    pub(super) fn close_dialog(&mut self) {
        self.dialog = None;
        if self.keeping.is_none() {
            self.safe.then = None;
        }
    }

    pub(super) fn take_up(&mut self, index: usize) {
        let Some(Dialog::Left(mut left)) = self.dialog.take() else {
            return;
        };
        if index < left.len() {
            self.open_left(left.swap_remove(index));
        }
    }

    /// What is changed from now on is kept in the place of this.
    pub(super) fn adopt(&self, left: Left) {
        if let Some(copies) = &self.safe.copies {
            copies.adopt(left);
        }
    }

    pub(super) fn throw_away(&mut self, index: usize) {
        let Some(Dialog::Left(mut left)) = self.dialog.take() else {
            return;
        };
        if index < left.len() {
            left.remove(index).throw_away();
        }
        if !left.is_empty() {
            self.dialog = Some(Dialog::Left(left));
        }
    }

    /// The file is remembered, and its folder is where paths are asked for.
    pub(super) fn used(&mut self, path: &Path) {
        if let Some(folder) = path.parent() {
            folder.clone_into(&mut self.folder);
        }
        self.recents.used(path);
    }

    fn demo(&mut self, name: &str) {
        if let Some(session) = Session::demo(name) {
            self.dialog = None;
            self.notice = None;
            self.show(session);
        }
    }

    fn show(&mut self, session: Session) {
        let proving = Proving::of(&session);
        self.show_proven(session, proving);
    }

    /// Goes on with this design, whose proof this is.
    pub(super) fn show_proven(&mut self, session: Session, proving: Proving) {
        self.opening = None;
        self.session = session;
        self.shown += 1;
        if let Some(keeping) = &mut self.keeping {
            // it was of what is shown no more
            keeping.again = None;
        }
        self.safe.then = None;
        self.safe.told = None;
        self.view = ViewState::of(self.session.design());
        self.hunting = Hunting::default();
        (self.pages, self.card) = (Pages::default(), Look::default());
        self.printed = Printed::default();
        self.make.parts.anew();
        self.remedies = Remedies::default();
        self.builds = VirtualBuilds::default();
        self.mending.stop();
        self.proving = proving;
        self.followed = self.session.revision();
        self.scene = Scene::of(self.session.design(), self.followed, &self.view);
    }
}
