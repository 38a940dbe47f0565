//! The proof of the open design. A change is proven at once, as soon as it is made; but a hand that is
//! still moving is never kept waiting, nor is one that types sizes of a latch that takes long: that is
//! proven beside the window.

use std::sync::Arc;
use std::time::{Duration, Instant};

use latchwright_model::Design;
use latchwright_proof::{Proof, prove, prove_with_tick};
use latchwright_session::Session;

use crate::follow::{Follow, NotMade};
use crate::tasks::{Reins, TaskKind, Tasks};

/// How long a moving hand may wait for a proof, so that the verdict does not flicker where it is quick.
const BLINK: Duration = Duration::from_millis(12);

/// A proof that took longer is made beside the window the next time, if the stage can wait for it.
const LONG: Duration = Duration::from_millis(40);

/// The last proof made, and the one on its way.
pub struct Proving {
    made: Follow<u64, Timed>,
    /// The revision that was last made by a hand that is still moving.
    hand: Option<u64>,
}

/// A proof, and how long it took.
struct Timed {
    proof: Arc<Proof>,
    took: Duration,
}

impl Timed {
    fn of(design: &Design) -> Self {
        let begun = Instant::now();
        Self::begun(begun, prove(design))
    }

    /// As [`Self::of`], stopped where the work is asked to.
    fn of_task(design: &Design, reins: &Reins) -> Result<Self, NotMade> {
        let begun = Instant::now();
        let proof = prove_with_tick(design, &mut |done| reins.tick(done)).continue_value();
        let proof = proof.ok_or(NotMade::Stopped)?;
        Ok(Self::begun(begun, proof))
    }

    fn begun(begun: Instant, proof: Proof) -> Self {
        Self {
            proof: Arc::new(proof),
            took: begun.elapsed(),
        }
    }
}

impl Proving {
    /// The proof of what `session` shows.
    pub fn of(session: &Session) -> Self {
        Self::made(session, Timed::of(session.design()))
    }

    /// As [`Self::of`], made beside the window and stopped where that is asked to.
    pub fn of_task(session: &Session, reins: &Reins) -> Result<Self, NotMade> {
        let proof = Timed::of_task(session.design(), reins)?;
        Ok(Self::made(session, proof))
    }

    fn made(session: &Session, proof: Timed) -> Self {
        Self {
            made: Follow::with(TaskKind::Proof, session.revision(), proof),
            hand: None,
        }
    }

    /// The last proof made.
    pub fn proof(&self) -> &Arc<Proof> {
        &self.made.value().proof
    }

    /// The proof of what `session` shows; none while it is on its way.
    pub fn fresh(&self, session: &Session) -> Option<&Arc<Proof>> {
        let made = self.made.of(&session.revision())?;
        Some(&made.proof)
    }

    /// This revision was made by a hand that is still moving.
    pub fn by_hand(&mut self, revision: u64) {
        self.hand = Some(revision);
    }

    /// Proves at once what is not proven yet.
    pub fn now(&mut self, session: &Session) {
        let revision = session.revision();
        if self.made.of(&revision).is_none() {
            self.made.set(revision, Timed::of(session.design()));
        }
    }

    /// Proves what has changed: a moving hand's change beside the window, and one that takes long where
    /// the stage `can_wait`; any other at once.
    pub fn follow(&mut self, tasks: &mut Tasks, session: &Session, can_wait: bool) {
        self.made.poll();
        let revision = session.revision();
        let waits = can_wait && self.made.value().took > LONG;
        if self.hand != Some(revision) && !waits {
            return self.now(session);
        }
        let design = Arc::clone(session.design());
        let waited_for = self.made.on_its_way();
        self.made.want(tasks, &revision, move |reins| {
            Timed::of_task(&design, reins)
        });
        if !waited_for {
            self.made.poll_within(BLINK);
        }
    }
}
