//! Remedies of the checks that fail, looked for beside the window: each takes many proofs. Of a design
//! that has changed since, nothing more is proven.

use std::sync::Arc;

use egui::Context;
use latchwright_proof::{CheckVerdict, Proof};
use latchwright_search::{Remedy, remedy};
use latchwright_session::Session;

use crate::follow::{Follow, NotMade};
use crate::tasks::{TaskKind, Tasks};

/// What was found, in the order of the checks.
pub struct Remedies(Follow<u64, Vec<Option<Remedy>>>);

impl Default for Remedies {
    fn default() -> Self {
        Self(Follow::new(TaskKind::Remedies, Vec::new()))
    }
}

impl Remedies {
    /// Takes what was found since, and looks anew when the design has changed; never while a hand
    /// is moving.
    pub fn follow(
        &mut self,
        ctx: &Context,
        tasks: &mut Tasks,
        session: &Session,
        proof: &Arc<Proof>,
    ) {
        self.0.poll();
        let revision = session.revision();
        let moving = ctx.input(|input| input.pointer.any_down());
        if self.0.of(&revision).is_some() || moving {
            return;
        }
        let fails = |check: &latchwright_proof::Check| check.verdict != CheckVerdict::Passes;
        if !proof.checks.iter().any(fails) {
            return self.0.set(revision, Vec::new());
        }
        let (design, proof) = (Arc::clone(session.design()), Arc::clone(proof));
        self.0.want(tasks, &revision, move |reins| {
            let found = remedy::all(&design, &proof, &mut |progress| reins.tick(progress.done));
            if reins.tick(1.0).is_break() {
                return Err(NotMade::Stopped);
            }
            Ok(found)
        });
    }

    /// The remedies of this state of the design, in the order of its checks; none while they are
    /// looked for.
    pub fn of(&self, revision: u64) -> &[Option<Remedy>] {
        self.0.of(&revision).map_or(&[], Vec::as_slice)
    }
}
