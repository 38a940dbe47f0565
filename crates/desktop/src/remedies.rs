//! Remedies of the checks that fail, looked for beside the window: each takes many proofs.

use std::sync::Arc;

use egui::Context;
use latchwright_proof::{CheckVerdict, Proof};
use latchwright_search::{Remedy, remedy};
use latchwright_session::Session;

use crate::job::Job;

/// What was found for one state of the design.
#[derive(Default)]
pub struct Remedies {
    found: Vec<Option<Remedy>>,
    /// The state that `found` belongs to.
    revision: Option<u64>,
    /// The state that was looked at last.
    asked: Option<u64>,
    job: Job<(u64, Vec<Option<Remedy>>)>,
}

impl Remedies {
    /// Takes what was found since, and looks anew when the design has changed; never while a hand
    /// is moving.
    pub fn follow(&mut self, ctx: &Context, session: &Session, proof: &Arc<Proof>) {
        if let Some((revision, found)) = self.job.poll() {
            self.found = found;
            self.revision = Some(revision);
        }
        let revision = session.revision();
        let moving = ctx.input(|input| input.pointer.any_down());
        if self.revision == Some(revision) || self.job.busy() || moving {
            return;
        }
        let fails = |check: &latchwright_proof::Check| check.verdict != CheckVerdict::Passes;
        if !proof.checks.iter().any(fails) {
            (self.found, self.revision) = (Vec::new(), Some(revision));
            return;
        }
        if self.asked == Some(revision) {
            // it fell over on this design, and would again
            return;
        }
        self.asked = Some(revision);
        let (design, proof) = (session.design().clone(), Arc::clone(proof));
        self.job
            .start(ctx, move || (revision, remedy::all(&design, &proof)));
    }

    /// The remedies of this state of the design, in the order of its checks; none while they are
    /// looked for.
    pub fn of(&self, revision: u64) -> &[Option<Remedy>] {
        if self.revision == Some(revision) {
            &self.found
        } else {
            &[]
        }
    }
}
