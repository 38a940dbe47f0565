//! Proposals beside the window, with progress, and stopped when asked.

use std::sync::mpsc::{Receiver, channel};

use egui::Context;
use latchwright_model::Units;
use latchwright_search::propose::{Outcome, Proposal, Wishes, frontier};
use latchwright_session::{proposals, report, threads};

use crate::follow::{Ended, Follow, NotMade};
use crate::tasks::{LOOK, TaskKind, Tasks, narrow};

/// What is being looked for, and what was found. Searches are counted, and each is of its number.
pub struct Proposing {
    /// What came of the last search, or the best so far of the one that is going on.
    found: Follow<u64, Option<SearchOutcome>>,
    /// What more would take, once it was asked for.
    further: Follow<u64, Option<String>>,
    /// The best so far, told each time that there is something better.
    so_far: Option<Receiver<Vec<Proposal>>>,
    searches: u64,
}

impl Default for Proposing {
    fn default() -> Self {
        Self {
            found: Follow::new(TaskKind::Proposals, None),
            further: Follow::new(TaskKind::Frontier, None),
            so_far: None,
            searches: 0,
        }
    }
}

/// What came of a search.
pub enum SearchOutcome {
    /// Proven designs.
    Proposals(Vec<Proposal>),
    /// None, and why.
    Nothing {
        /// The demands that cannot all be had.
        why: String,
        /// What can be had instead, and a proven design of it.
        nearest: Vec<(String, Proposal)>,
    },
}

impl SearchOutcome {
    fn of(outcome: Outcome) -> Result<Option<Self>, NotMade> {
        match outcome {
            Outcome::Found(proposals) => Ok(Some(Self::Proposals(proposals))),
            Outcome::Nothing(nothing) => Ok(Some(Self::Nothing {
                why: report::nothing_sentence(&nothing),
                nearest: nothing
                    .nearest
                    .iter()
                    .map(|near| {
                        let words = report::nearest_in_words(&nothing.wishes, near);
                        (words, near.proposal.clone())
                    })
                    .collect(),
            })),
            Outcome::Stopped => Err(NotMade::Stopped),
        }
    }
}

impl Proposing {
    /// Starts a search; one that is going on is given up.
    pub fn start(&mut self, tasks: &mut Tasks, wishes: Wishes) {
        (*self.found.value_mut(), *self.further.value_mut()) = (None, None);
        // what is still on its way is of another question
        self.further.give_up();
        self.searches += 1;
        let (tell, so_far) = channel();
        self.so_far = Some(so_far);
        self.found.begin(tasks, self.searches, move |reins| {
            let mut told = Vec::new();
            let outcome = proposals::run(&wishes, threads::available(), &mut |progress| {
                let best = progress.found.iter();
                let now: Vec<_> = best
                    .map(|best| (best.kind, best.settings, best.area, best.room_to_spare))
                    .collect();
                if now != told {
                    told = now;
                    // nobody listens any more once another search was started
                    let _ = tell.send(progress.found.to_vec());
                    reins.news();
                }
                reins.tick(progress.done)
            });
            SearchOutcome::of(outcome)
        });
    }

    /// Looks what larger lids and better workmanship would buy.
    pub fn look_further(&mut self, tasks: &mut Tasks, wishes: Wishes, units: Units) {
        self.stop();
        self.further.begin(tasks, self.searches, move |reins| {
            let found = frontier(&wishes, &mut |done| reins.tick(done));
            if found.stopped {
                // the half of it would mislead
                return Err(NotMade::Stopped);
            }
            Ok(Some(report::frontier_text(&found, units)))
        });
    }

    /// Gives up what is being looked for.
    pub fn stop(&self) {
        self.found.stop();
        self.further.stop();
    }

    /// Takes what was found since.
    pub fn follow(&mut self, ctx: &Context) {
        let so_far = self.so_far.as_ref();
        if let Some(best) = so_far.and_then(|so_far| so_far.try_iter().last()) {
            *self.found.value_mut() = Some(SearchOutcome::Proposals(best));
        }
        if let Some(ended) = self.found.poll() {
            self.so_far = None;
            if ended == Ended::Stopped {
                *self.found.value_mut() = None;
            }
        }
        if self.further.poll() == Some(Ended::Stopped) {
            *self.further.value_mut() = None;
        }
        if self.found.on_its_way() || self.further.on_its_way() {
            ctx.request_repaint_after(LOOK);
        }
    }

    /// What came of the last search, or the best so far of the one that is going on.
    pub fn found(&self) -> Option<&SearchOutcome> {
        self.found.value().as_ref()
    }

    /// What more would take, once it was asked for.
    pub fn beyond(&self) -> Option<&str> {
        self.further.value().as_deref()
    }

    /// Whether what was found may still be bettered.
    pub fn searching(&self) -> bool {
        self.found.on_its_way()
    }

    /// Share of the work that is done, while there is any.
    pub fn progress(&self) -> Option<f32> {
        let further = || self.further.progress();
        self.found.progress().or_else(further).map(narrow)
    }
}
