//! The hunt for openings beside the window, with progress, and stopped when asked.

use std::sync::Arc;

use egui::Context;
use latchwright_proof::hunt::{Hunt, hunt};
use latchwright_session::Session;

use crate::follow::{Follow, NotMade};
use crate::tasks::{TaskKind, Tasks, narrow};

/// What the last hunt found, of which state of the design, and the one that goes on.
pub struct Hunting(Follow<u64, Option<Hunt>>);

impl Default for Hunting {
    fn default() -> Self {
        Self(Follow::new(TaskKind::Hunt, None))
    }
}

impl Hunting {
    /// Starts a hunt in the open design; one that goes on is given up.
    pub fn start(&mut self, tasks: &mut Tasks, session: &Session) {
        let design = Arc::clone(session.design());
        self.0.begin(tasks, session.revision(), move |reins| {
            let found = hunt(&design, &mut |done| reins.tick(done));
            found.continue_value().map(Some).ok_or(NotMade::Stopped)
        });
    }

    /// Gives up the hunt that goes on.
    pub fn stop(&mut self) {
        self.0.give_up();
    }

    /// Takes what was found since, and gives up the hunt in a design that has changed.
    pub fn follow(&mut self, ctx: &Context, revision: u64) {
        self.0.follow(ctx, &revision);
    }

    /// Share of the work that is done, while a hunt goes on.
    pub fn progress(&self) -> Option<f32> {
        self.0.progress().map(narrow)
    }

    /// What was found in this state of the design.
    pub fn of(&self, revision: u64) -> Option<&Hunt> {
        self.0.of(&revision)?.as_ref()
    }
}
