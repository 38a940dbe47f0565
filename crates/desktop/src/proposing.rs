//! Proposals and mending beside the window, with progress, and stopped when asked.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicU32, Ordering};
use std::time::Duration;

use egui::Context;
use latchwright_session::Session;
use latchwright_session::report;
use latchwright_solver::model::Units;
use latchwright_solver::propose::{
    Go, Mend, Outcome, Part, Proposal, Wishes, frontier, mend, propose,
};

use crate::job::Job;

/// How often progress is drawn.
const LOOK: Duration = Duration::from_millis(100);

/// What is being looked for, and what was found.
#[derive(Default)]
pub struct Proposing {
    job: Job<Outcome>,
    further: Job<String>,
    running: Option<Running>,
    /// What came of the last search.
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

struct Running {
    done: Arc<AtomicU32>,
    cancel: Arc<AtomicBool>,
}

impl Proposing {
    /// Starts a search; one that is going on is given up.
    pub fn start(&mut self, ctx: &Context, wishes: Wishes) {
        self.stop();
        (self.found, self.beyond) = (None, None);
        let (running, go) = begin();
        self.running = Some(running);
        self.job.start(ctx, move || {
            propose(&wishes, &mut |progress| go(progress.done))
        });
    }

    /// Looks what larger lids and better workmanship would buy.
    pub fn look_further(&mut self, ctx: &Context, wishes: Wishes, units: Units) {
        self.stop();
        let (running, go) = begin();
        self.running = Some(running);
        self.further.start(ctx, move || {
            let found = frontier(&wishes, &mut |done| go(done));
            report::frontier_text(&found, units)
        });
    }

    /// Gives up what is being looked for.
    pub fn stop(&mut self) {
        if let Some(running) = self.running.take() {
            running.cancel.store(true, Ordering::Relaxed);
        }
    }

    /// Takes what was found since.
    pub fn follow(&mut self, ctx: &Context) {
        if let Some(outcome) = self.job.poll() {
            self.found = match outcome {
                Outcome::Found(proposals) => Some(Found::Proposals(proposals)),
                Outcome::Nothing(nothing) => Some(Found::Nothing {
                    why: nothing.sentence,
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
            self.beyond = Some(text);
        }
        if self.job.busy() || self.further.busy() {
            ctx.request_repaint_after(LOOK);
        } else {
            self.running = None;
        }
    }

    /// Share of the work that is done, while there is any.
    pub fn progress(&self) -> Option<f32> {
        let running = self.running.as_ref()?;
        Some(f32::from_bits(running.done.load(Ordering::Relaxed)))
    }
}

/// What a search is told by and tells to.
fn begin() -> (Running, impl Fn(f64) -> Go + Send + 'static) {
    let running = Running {
        done: Arc::new(AtomicU32::new(0)),
        cancel: Arc::new(AtomicBool::new(false)),
    };
    let (done, cancel) = (Arc::clone(&running.done), Arc::clone(&running.cancel));
    #[expect(
        clippy::cast_possible_truncation,
        reason = "a share that is drawn as a bar"
    )]
    let go = move |share: f64| {
        done.store((share as f32).to_bits(), Ordering::Relaxed);
        if cancel.load(Ordering::Relaxed) {
            Go::Stop
        } else {
            Go::On
        }
    };
    (running, go)
}

/// Mending the open design, with what is cut already left alone.
#[derive(Default)]
pub struct Mending {
    job: Job<(u64, Option<Mend>)>,
    /// Plate, slider, keeper, discs, knobs: whether it is cut already.
    pub cut: [bool; 5],
}

impl Mending {
    /// What may be cut already, in words.
    pub const PARTS: [&'static str; 5] = [
        "The plate stays as it is",
        "The slider stays as it is",
        "The keeper stays as it is",
        "The discs stay as they are",
        "The knobs stay as they are",
    ];

    /// Whether it is being looked for.
    pub fn busy(&self) -> bool {
        self.job.busy()
    }

    /// Starts looking for the smallest change.
    pub fn start(&mut self, ctx: &Context, session: &Session) {
        let (design, revision) = (Arc::clone(session.design()), session.revision());
        let mut cut = Vec::new();
        for (index, is_cut) in self.cut.iter().enumerate() {
            let dials = 0..design.dials.len();
            match (is_cut, index) {
                (false, _) => {}
                (true, 0) => cut.push(Part::Plate),
                (true, 1) => cut.push(Part::Slider),
                (true, 2) => cut.push(Part::Keeper),
                (true, 3) => cut.extend(dials.map(Part::Disc)),
                (true, _) => cut.extend(dials.map(Part::Knob)),
            }
        }
        self.job.start(ctx, move || (revision, mend(&design, &cut)));
    }

    /// What was found, once, for this state of the design.
    pub fn poll(&mut self, revision: u64) -> Option<Option<Mend>> {
        let (of, found) = self.job.poll()?;
        (of == revision).then_some(found)
    }
}
