//! The proof of the open design. A change is proven at once, as soon as it is made; but a hand that is
//! still moving is never kept waiting, nor is one that types sizes of a latch that takes long: that is
//! proven beside the window.

use std::sync::Arc;
use std::time::{Duration, Instant};

use egui::Context;
use latchwright_model::Design;
use latchwright_proof::{Proof, prove};
use latchwright_session::Session;

use crate::job::Job;

/// How long a moving hand may wait for a proof, so that the verdict does not flicker where it is quick.
const BLINK: Duration = Duration::from_millis(12);

/// A proof that took longer is made beside the window the next time, if the stage can wait for it.
const LONG: Duration = Duration::from_millis(40);

/// The last proof made, and the one on its way.
pub struct Proving {
    proof: Arc<Proof>,
    /// The revision that `proof` belongs to.
    revision: u64,
    /// The revision that was last given to the job.
    asked: Option<u64>,
    /// The revision that was last made by a hand that is still moving.
    hand: Option<u64>,
    /// How long the last proof took.
    took: Duration,
    job: Job<(u64, Proof, Duration)>,
}

fn timed(design: &Design) -> (Proof, Duration) {
    let begun = Instant::now();
    let proof = prove(design);
    (proof, begun.elapsed())
}

impl Proving {
    /// The proof of what `session` shows.
    pub fn of(session: &Session) -> Self {
        let (proof, took) = timed(session.design());
        Self {
            proof: Arc::new(proof),
            revision: session.revision(),
            asked: None,
            hand: None,
            took,
            job: Job::default(),
        }
    }

    /// The last proof made.
    pub fn proof(&self) -> &Arc<Proof> {
        &self.proof
    }

    /// The proof of what `session` shows; none while it is on its way.
    pub fn fresh(&self, session: &Session) -> Option<&Arc<Proof>> {
        (self.revision == session.revision()).then_some(&self.proof)
    }

    /// This revision was made by a hand that is still moving.
    pub fn by_hand(&mut self, revision: u64) {
        self.hand = Some(revision);
    }

    /// Proves at once what is not proven yet.
    pub fn now(&mut self, session: &Session) {
        if self.revision != session.revision() {
            let (proof, took) = timed(session.design());
            (self.proof, self.took) = (Arc::new(proof), took);
            self.revision = session.revision();
        }
    }

    /// Proves what has changed: a moving hand's change beside the window, and one that takes long where
    /// the stage `can_wait`; any other at once.
    pub fn follow(&mut self, ctx: &Context, session: &Session, can_wait: bool) {
        self.take_within(Duration::ZERO);
        let revision = session.revision();
        let waits = can_wait && self.took > LONG;
        if self.hand != Some(revision) && !waits {
            return self.now(session);
        }
        // what fell over on this design would again
        if self.revision == revision || self.job.busy() || self.asked == Some(revision) {
            return;
        }
        self.asked = Some(revision);
        let design = session.design().clone();
        self.job.start(ctx, move || {
            let (proof, took) = timed(&design);
            (revision, proof, took)
        });
        self.take_within(BLINK);
    }

    /// Takes the proof that was made beside the window, if it comes in time and was not overtaken.
    fn take_within(&mut self, time: Duration) {
        if let Some((revision, proof, took)) = self.job.poll_within(time)
            && revision > self.revision
        {
            (self.proof, self.revision, self.took) = (Arc::new(proof), revision, took);
        }
    }
}
