//! Virtual builds on several threads: the same answer on any number of them.

use std::collections::BTreeMap;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::sync::{Condvar, Mutex, PoisonError};
use std::thread;

use latchwright_model::Design;
use latchwright_proof::builds::{Builds, Plan, Tally, Trial};
use latchwright_proof::prove;

/// A thread waits when it is so many blocks ahead of the slowest, so that memory stays flat.
const AHEAD: u64 = 32;

/// Tallies, added in the order of their blocks.
struct Merge<P> {
    next: u64,
    waiting: BTreeMap<u64, Tally>,
    total: Tally,
    progress: P,
}

impl<P: FnMut(u64)> Merge<P> {
    fn take(&mut self, number: u64, tally: Tally) {
        self.waiting.insert(number, tally);
        while let Some(tally) = self.waiting.remove(&self.next) {
            self.total.add(&tally);
            self.next += 1;
            (self.progress)(self.total.count());
        }
    }
}

/// Builds `design` as planned on `threads` threads and holds every build against its proof.
///
/// `progress` is told how many builds are done, now and then. `None` where the design has an error that
/// leaves no sense in building it, or where `cancel` was set.
pub fn run(
    design: &Design,
    plan: Plan,
    threads: usize,
    cancel: &AtomicBool,
    progress: impl FnMut(u64) + Send,
) -> Option<Builds> {
    let proof = prove(design);
    let trial = Trial::of(design, &proof, plan)?;
    let merge = Mutex::new(Merge {
        next: 0,
        waiting: BTreeMap::new(),
        total: trial.tally(),
        progress,
    });
    let (taken, moved_on) = (AtomicU64::new(0), Condvar::new());
    let work = || {
        loop {
            let number = taken.fetch_add(1, Ordering::Relaxed);
            if number >= trial.blocks() || cancel.load(Ordering::Relaxed) {
                break;
            }
            let tally = trial.block(number);
            let locked = merge.lock().unwrap_or_else(PoisonError::into_inner);
            let too_far = |merge: &mut Merge<_>| {
                number >= merge.next + AHEAD && !cancel.load(Ordering::Relaxed)
            };
            let mut locked = moved_on
                .wait_while(locked, too_far)
                .unwrap_or_else(PoisonError::into_inner);
            locked.take(number, tally);
            moved_on.notify_all();
        }
        moved_on.notify_all();
    };
    thread::scope(|scope| {
        for _ in 0..threads.max(1) {
            scope.spawn(work);
        }
    });
    let merged = merge.into_inner().unwrap_or_else(PoisonError::into_inner);
    (merged.next == trial.blocks()).then(|| trial.summary(&merged.total))
}

#[cfg(test)]
mod tests {
    use super::*;
    use latchwright_proof::builds::{BLOCK, Spread};

    fn plan() -> Plan {
        Plan {
            count: 9 * BLOCK + 100,
            seed: 4,
            spread: Spread::Uniform,
        }
    }

    #[test]
    fn one_two_and_eight_threads_give_the_same_answer() {
        let design = Design::default();
        let on = |threads| {
            let go_on = AtomicBool::new(false);
            run(&design, plan(), threads, &go_on, |_| ()).expect("built")
        };
        let one = on(1);
        assert_eq!(one.opens.count, plan().count);
        assert_eq!(one, on(2));
        assert_eq!(one, on(8));
    }

    #[test]
    fn progress_grows_to_the_whole_and_a_cancelled_run_gives_nothing() {
        let design = Design::default();
        let mut last = 0;
        let cancel = AtomicBool::new(false);
        run(&design, plan(), 2, &cancel, |done| {
            assert!(done > last);
            last = done;
        });
        assert_eq!(last, plan().count);
        let stop = |_| cancel.store(true, Ordering::Relaxed);
        assert_eq!(run(&design, plan(), 2, &cancel, stop), None);
    }
}
