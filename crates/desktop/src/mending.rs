//! Mending the open design beside the window, with what is cut already left alone.

use std::sync::Arc;

use egui::Context;
use latchwright_search::remedy::{Mend, Part, mend};
use latchwright_session::Session;
use latchwright_session::cut_already::CutAlready;

use crate::follow::{Ended, Follow, NotMade};
use crate::tasks::{TaskKind, Tasks};

/// The smallest change, once it was found, and what must stay.
pub struct Mending {
    found: Follow<u64, Option<Mend>>,
    /// Of each of [`CutAlready::ALL`] whether it is.
    pub cut: [bool; 5],
}

impl Default for Mending {
    fn default() -> Self {
        Self {
            found: Follow::new(TaskKind::Mending, None),
            cut: [false; 5],
        }
    }
}

impl Mending {
    /// Whether it is being looked for.
    pub fn goes_on(&self) -> bool {
        self.found.on_its_way()
    }

    /// Share of the work that is done, while there is any.
    pub fn progress(&self) -> Option<f32> {
        self.found.progress().map(crate::tasks::narrow)
    }

    /// Starts looking for the smallest change.
    pub fn start(&mut self, tasks: &mut Tasks, session: &Session) {
        let design = Arc::clone(session.design());
        let dials = design.dials.len();
        let all = CutAlready::ALL.into_iter().zip(self.cut);
        let cut: Vec<Part> = all
            .filter(|(_, is_cut)| *is_cut)
            .flat_map(|(cut, _)| cut.parts(dials))
            .collect();
        self.found.begin(tasks, session.revision(), move |reins| {
            let found = mend(&design, &cut, &mut |progress| reins.tick(progress.done));
            if reins.tick(1.0).is_break() {
                return Err(NotMade::Stopped);
            }
            Ok(found)
        });
    }

    /// Gives up what is being looked for.
    pub fn stop(&mut self) {
        self.found.give_up();
    }

    /// What was found, once, for this state of the design; of a design that has changed since nothing is
    /// looked for any more.
    pub fn follow(&mut self, ctx: &Context, revision: u64) -> Option<Option<Mend>> {
        match self.found.follow(ctx, &revision) {
            Some(Ended::Made) => Some(self.found.value_mut().take()),
            _ => None,
        }
    }
}
