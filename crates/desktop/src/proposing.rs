//! Proposals and mending beside the window, with progress, and stopped when asked.

use std::sync::Arc;
use std::sync::atomic::Ordering;
use std::sync::mpsc::Receiver;
use std::time::Duration;

use egui::Context;
use latchwright_model::Units;
use latchwright_search::propose::{Go, Mend, Outcome, Part, Proposal, Wishes, frontier, mend};
use latchwright_session::cut_already::CutAlready;
use latchwright_session::{Session, proposals, report, threads};

use crate::job::{Job, Reins};

/// How often progress is drawn.
const LOOK: Duration = Duration::from_millis(100);

/// What is being looked for, and what was found.
#[derive(Default)]
pub struct Proposing {
    job: Job<Outcome>,
    further: Job<Option<String>>,
    running: Option<Reins>,
    /// The best so far, told each time that there is something better.
    so_far: Option<Receiver<Vec<Proposal>>>,
    /// What came of the last search, or the best so far of the one that is going on.
    pub found: Option<Found>,
    /// What more would take, once it was asked for.
    pub beyond: Option<String>,
}

/// What came of a search.
pub enum Found {
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

impl Proposing {
    /// Starts a search; one that is going on is given up.
    pub fn start(&mut self, ctx: &Context, wishes: Wishes) {
        self.stop();
        (self.found, self.beyond) = (None, None);
        // what is still on its way is of another question
        self.further = Job::default();
        let (reins, go) = begin();
        self.running = Some(reins);
        let (tell, so_far) = std::sync::mpsc::channel();
        self.so_far = Some(so_far);
        self.job.start(ctx, move || {
            let mut told = Vec::new();
            proposals::run(&wishes, threads::available(), &mut |progress| {
                let best = progress.best.iter();
                let now: Vec<_> = best
                    .map(|best| (best.kind, best.settings, best.area, best.room))
                    .collect();
                if now != told {
                    told = now;
                    // nobody listens any more once another search was started
                    let _ = tell.send(progress.best.to_vec());
                }
                go(progress.done)
            })
        });
    }

    /// Looks what larger lids and better workmanship would buy.
    pub fn look_further(&mut self, ctx: &Context, wishes: Wishes, units: Units) {
        self.stop();
        let (reins, go) = begin();
        self.running = Some(reins);
        self.further.start(ctx, move || {
            let found = frontier(&wishes, &mut |done| go(done));
            // the half of it would mislead
            (!found.stopped).then(|| report::frontier_text(&found, units))
        });
    }

    /// Gives up what is being looked for.
    pub fn stop(&mut self) {
        if let Some(reins) = self.running.take() {
            reins.stop();
        }
    }

    /// Takes what was found since.
    pub fn follow(&mut self, ctx: &Context) {
        let so_far = self.so_far.as_ref();
        if let Some(best) = so_far.and_then(|so_far| so_far.try_iter().last()) {
            self.found = Some(Found::Proposals(best));
        }
        if let Some(outcome) = self.job.poll() {
            self.so_far = None;
            self.found = match outcome {
                Outcome::Found(proposals) => Some(Found::Proposals(proposals)),
                Outcome::Nothing(nothing) => Some(Found::Nothing {
                    why: report::nothing_sentence(&nothing),
                    nearest: nothing
                        .nearest
                        .into_iter()
                        .map(|near| (near.sentence, near.proposal))
                        .collect(),
                }),
                Outcome::Stopped => None,
            };
        }
        if let Some(text) = self.further.poll() {
            self.beyond = text;
        }
        if self.job.busy() || self.further.busy() {
            ctx.request_repaint_after(LOOK);
        } else {
            self.running = None;
        }
    }

    /// Whether what was found may still be bettered.
    pub fn searching(&self) -> bool {
        self.job.busy()
    }

    /// Share of the work that is done, while there is any.
    pub fn progress(&self) -> Option<f32> {
        let reins = self.running.as_ref()?;
        #[expect(
            clippy::cast_possible_truncation,
            reason = "a share that is drawn as a bar"
        )]
        let share = f64::from_bits(reins.done()) as f32;
        Some(share)
    }
}

/// What a search is told by and tells to: the share that is done, as the bits of its number.
fn begin() -> (Reins, impl Fn(f64) -> Go + Send + 'static) {
    let reins = Reins::default();
    let held = reins.clone();
    let go = move |share: f64| {
        held.tell(share.to_bits());
        if held.stopped().load(Ordering::Relaxed) {
            Go::Stop
        } else {
            Go::On
        }
    };
    (reins, go)
}

/// Mending the open design, with what is cut already left alone.
#[derive(Default)]
pub struct Mending {
    job: Job<(u64, Option<Mend>)>,
    /// Of each of [`CutAlready::ALL`] whether it is.
    pub cut: [bool; 5],
}

impl Mending {
    /// Whether it is being looked for.
    pub fn busy(&self) -> bool {
        self.job.busy()
    }

    /// Starts looking for the smallest change.
    pub fn start(&mut self, ctx: &Context, session: &Session) {
        let (design, revision) = (Arc::clone(session.design()), session.revision());
        let dials = design.dials.len();
        let all = CutAlready::ALL.into_iter().zip(self.cut);
        let cut: Vec<Part> = all
            .filter(|(_, is_cut)| *is_cut)
            .flat_map(|(cut, _)| cut.parts(dials))
            .collect();
        self.job.start(ctx, move || (revision, mend(&design, &cut)));
    }

    /// What was found, once, for this state of the design.
    pub fn poll(&mut self, revision: u64) -> Option<Option<Mend>> {
        let (of, found) = self.job.poll()?;
        (of == revision).then_some(found)
    }
}
