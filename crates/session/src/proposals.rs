//! Proposals on several threads: the same answer on any number of them.

use std::ops::ControlFlow;
use std::panic::resume_unwind;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::channel;
use std::sync::{Mutex, PoisonError};
use std::thread;

use latchwright_search::propose::{
    Kind, Outcome, Proposal, ROOMIEST, Wishes, better, others, propose, roomiest,
};
use latchwright_search::{Progress, Tick};

/// Searches from beginning to end on this thread, or on more where `threads` allows it; `tick` hears of
/// every step on this thread and may stop it.
pub fn run(wishes: &Wishes, threads: usize, tick: &mut Tick<'_, Proposal>) -> Outcome {
    let kinds = others(wishes);
    if threads < 2 || kinds.len() < 2 {
        return propose(wishes, tick);
    }
    let mut stopped = false;
    let outcome = roomiest(wishes, &mut |progress| {
        let flow = tick(progress);
        stopped = flow.is_break();
        flow
    });
    match outcome {
        Outcome::Found(found) if !stopped => {
            let [start] = found.as_slice() else {
                return Outcome::Found(found);
            };
            Outcome::Found(abreast(wishes, &kinds, start, threads, tick))
        }
        outcome => outcome,
    }
}

/// What a search beside tells: of which kind, how far it is, and the best so far.
struct News {
    kind: usize,
    done: f64,
    best: Proposal,
}

/// The roomiest with the best of the other kinds, which go on at the same time on so many threads.
fn abreast(
    wishes: &Wishes,
    kinds: &[Kind],
    start: &Proposal,
    threads: usize,
    tick: &mut Tick<'_, Proposal>,
) -> Vec<Proposal> {
    let stopped = AtomicBool::new(false);
    let (news, heard) = channel();
    let waiting = Mutex::new((0..kinds.len()).rev().collect::<Vec<_>>());
    let next = || waiting.lock().unwrap_or_else(PoisonError::into_inner).pop();
    let go = || {
        if stopped.load(Ordering::Relaxed) {
            ControlFlow::Break(())
        } else {
            ControlFlow::Continue(())
        }
    };
    let mut found = vec![start.clone()];
    thread::scope(|scope| {
        let mut running = Vec::new();
        for _ in 0..threads.min(kinds.len()) {
            let (news, next, go) = (news.clone(), &next, &go);
            running.push(scope.spawn(move || {
                while let Some(kind) = next()
                    && let Some(of) = kinds.get(kind)
                {
                    let tell = |done: f64, best: &Proposal| {
                        let best = best.clone();
                        // nobody listens any more once it was stopped
                        let _ = news.send(News { kind, done, best });
                    };
                    let best = better(wishes, *of, start, &mut |progress| {
                        if let [best] = progress.found {
                            tell(progress.done, best);
                        }
                        go()
                    });
                    tell(1.0, &best);
                }
            }));
        }
        drop(news);
        let mut done = vec![0.0; kinds.len()];
        found.extend(kinds.iter().map(|kind| Proposal {
            kind: *kind,
            ..start.clone()
        }));
        for one in heard {
            if let Some(share) = done.get_mut(one.kind) {
                *share = one.done;
            }
            if let Some(best) = found.get_mut(one.kind + 1) {
                *best = one.best;
            }
            let mean = done.iter().sum::<f64>() / kinds.len() as f64;
            let progress = Progress {
                done: ROOMIEST + (1.0 - ROOMIEST) * mean,
                found: &found,
            };
            if tick(progress).is_break() {
                stopped.store(true, Ordering::Relaxed);
            }
        }
        for thread in running {
            // one that fell over says why, as it would on this thread
            if let Err(why) = thread.join() {
                resume_unwind(why);
            }
        }
    });
    found
}

#[cfg(test)]
mod tests {
    use latchwright_model::Design;
    use latchwright_search::propose::DialWish;

    use super::*;

    fn wishes() -> Wishes {
        Wishes {
            dials: vec![DialWish::numbered(6), DialWish::numbered(8)],
            ..Wishes::of(Design::default()).with_lid(160.0, 120.0)
        }
    }

    #[test]
    fn one_two_and_eight_threads_give_the_same_answer() {
        let wishes = wishes();
        let alone = propose(&wishes, &mut |_| ControlFlow::Continue(()));
        assert!(matches!(&alone, Outcome::Found(found) if found.len() == 3));
        for threads in [1, 2, 8] {
            assert_eq!(
                run(&wishes, threads, &mut |_| ControlFlow::Continue(())),
                alone,
                "{threads}"
            );
        }
    }

    #[test]
    fn wishes_that_cannot_be_had_have_the_same_reason_on_two_threads() {
        let mut wishes = wishes();
        wishes.dials = vec![DialWish::numbered(40); 4];
        let alone = propose(&wishes, &mut |_| ControlFlow::Continue(()));
        assert!(matches!(&alone, Outcome::Nothing(_)));
        assert_eq!(run(&wishes, 2, &mut |_| ControlFlow::Continue(())), alone);
    }

    #[test]
    fn the_share_that_is_done_grows_to_the_whole_and_the_best_never_grows_worse() {
        let (mut last, mut settings, mut area) = (0.0, 0, f64::INFINITY);
        run(&wishes(), 2, &mut |progress| {
            assert!(progress.done >= last && progress.done <= 1.0);
            last = progress.done;
            for best in progress.found {
                match best.kind {
                    Kind::Roomiest => {}
                    Kind::MostSettings => {
                        assert!(best.settings >= settings);
                        settings = best.settings;
                    }
                    Kind::Smallest => {
                        assert!(best.area <= area);
                        area = best.area;
                    }
                }
            }
            ControlFlow::Continue(())
        });
        assert!((last - 1.0).abs() < 1e-9, "{last}");
        assert!(settings > 0 && area.is_finite());
    }

    #[test]
    fn stopped_on_two_threads_it_keeps_what_it_has() {
        let soon = |progress: Progress<'_, Proposal>| {
            if progress.done > 0.4 {
                ControlFlow::Break(())
            } else {
                ControlFlow::Continue(())
            }
        };
        let found = run(&wishes(), 2, &mut { soon });
        let Outcome::Found(found) = found else {
            panic!("{found:?}");
        };
        assert_eq!(found.len(), 3);
        assert!(found.iter().all(|found| found.proof.proven));
        assert_eq!(
            run(&wishes(), 2, &mut |_| ControlFlow::Break(())),
            Outcome::Stopped
        );
    }
}
