//! Virtual builds beside the window: many boxes drawn from the stated workmanship, with progress, and
//! stopped when asked.

use std::time::Duration;

use egui::Context;
use latchwright_proof::builds::{Builds, Plan, Spread};
use latchwright_session::{Session, builds, threads};

use crate::job::{Job, Reins};

/// How many boxes one press of the button builds: its limits are then a few in 100 000 wide.
pub const COUNT: u64 = 100_000;
/// Seed of the window's builds, so that the same design always gives the same answer.
const SEED: u64 = 1;
/// How often progress is drawn while boxes are built.
const LOOK: Duration = Duration::from_millis(100);

/// What was built, of which state of the design, and what is being built.
#[derive(Default)]
pub struct VirtualBuilds {
    found: Option<(u64, Builds)>,
    job: Job<(u64, Option<Builds>)>,
    running: Option<Reins>,
}

impl VirtualBuilds {
    /// Starts building the open design; what was being built is given up.
    pub fn start(&mut self, ctx: &Context, session: &Session) {
        self.stop();
        let reins = Reins::default();
        let held = reins.clone();
        let (design, revision) = (session.design().clone(), session.revision());
        self.job.start(ctx, move || {
            let plan = Plan {
                count: COUNT,
                seed: SEED,
                spread: Spread::Uniform,
            };
            let told = |built| held.tell(built);
            let built = builds::run(&design, plan, threads::available(), held.stopped(), told);
            (revision, built)
        });
        self.running = Some(reins);
    }

    /// Gives up what is being built.
    pub fn stop(&mut self) {
        if let Some(reins) = self.running.take() {
            reins.stop();
        }
    }

    /// Takes what was finished since, and gives up builds of a design that has changed.
    pub fn follow(&mut self, ctx: &Context, revision: u64) {
        if let Some((of, found)) = self.job.poll() {
            self.found = found.map(|found| (of, found)).or(self.found.take());
        }
        if !self.job.busy() {
            self.running = None;
        }
        if self.found.as_ref().is_some_and(|(of, _)| *of != revision) {
            self.found = None;
        }
        if self.running.is_some() {
            ctx.request_repaint_after(LOOK);
        }
    }

    /// How many boxes stand, while they are being built.
    pub fn progress(&self) -> Option<u64> {
        self.running.as_ref().map(Reins::done)
    }

    /// What was found for this state of the design.
    pub fn of(&self, revision: u64) -> Option<&Builds> {
        let (of, found) = self.found.as_ref()?;
        (*of == revision).then_some(found)
    }
}
