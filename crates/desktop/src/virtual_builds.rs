//! Virtual builds beside the window: many boxes drawn from the stated workmanship, with progress, and
//! stopped when asked.

use std::sync::Arc;

use egui::Context;
use latchwright_proof::builds::{Builds, Plan, Spread};
use latchwright_session::{Session, builds, threads};

use crate::follow::{Follow, NotMade};
use crate::tasks::{TaskKind, Tasks};

/// How many boxes one press of the button builds: its limits are then a few in 100 000 wide.
pub const COUNT: u64 = 100_000;
/// Seed of the window's builds, so that the same design always gives the same answer.
const SEED: u64 = 1;

/// What was built, of which state of the design, and what is being built.
pub struct VirtualBuilds(Follow<u64, Option<Builds>>);

impl Default for VirtualBuilds {
    fn default() -> Self {
        Self(Follow::new(TaskKind::Builds, None))
    }
}

impl VirtualBuilds {
    /// Starts building the open design; what was being built is given up.
    pub fn start(&mut self, tasks: &mut Tasks, session: &Session) {
        let design = Arc::clone(session.design());
        self.0.begin(tasks, session.revision(), move |reins| {
            let plan = Plan {
                count: COUNT,
                seed: SEED,
                spread: Spread::Uniform,
            };
            let told = |built| {
                // that it is to stop, the builders see for themselves
                let _ = reins.tick(built as f64 / COUNT as f64);
            };
            let built = builds::run(&design, plan, threads::available(), reins.stopped(), told);
            built.map(Some).ok_or(NotMade::Stopped)
        });
    }

    /// Gives up what is being built.
    pub fn stop(&mut self) {
        self.0.give_up();
    }

    /// Takes what was finished since, and gives up builds of a design that has changed.
    pub fn follow(&mut self, ctx: &Context, revision: u64) {
        self.0.follow(ctx, &revision);
    }

    /// How many boxes stand, while they are being built.
    pub fn progress(&self) -> Option<u64> {
        let share = self.0.progress()?;
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "between 0 and COUNT"
        )]
        let built = (share * COUNT as f64).round() as u64;
        Some(built)
    }

    /// What was found for this state of the design.
    pub fn of(&self, revision: u64) -> Option<&Builds> {
        self.0.of(&revision)?.as_ref()
    }
}
