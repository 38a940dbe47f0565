//! Proposals on several threads: the same answer on any number of them.

use std::panic::resume_unwind;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::channel;
use std::sync::{Mutex, PoisonError};
use std::thread;

use latchwright_search::propose::{Go, Outcome, Progress, Search, Wishes};

/// Searches from beginning to end on this thread, or on more where `threads` allows it; `tell` hears of
/// every step on this thread and may stop it.
pub fn run(wishes: &Wishes, threads: usize, tell: &mut dyn FnMut(Progress<'_>) -> Go) -> Outcome {
    let mut search = Search::new(wishes);
    while search.step() {
        if tell(search.progress()) == Go::Stop {
            break;
        }
        if threads > 1 && abreast(&mut search, threads, tell) == Go::Stop {
            break;
        }
    }
    search.outcome()
}

/// What can go on at the same time does, on so many threads, to its end.
fn abreast(search: &mut Search, threads: usize, tell: &mut dyn FnMut(Progress<'_>) -> Go) -> Go {
    let pursuits = search.apart();
    if pursuits.is_empty() {
        return Go::On;
    }
    let stopped = AtomicBool::new(false);
    let (news, heard) = channel();
    let threads = threads.min(pursuits.len());
    let waiting = Mutex::new(pursuits);
    let next = || waiting.lock().unwrap_or_else(PoisonError::into_inner).pop();
    thread::scope(|scope| {
        let mut running = Vec::new();
        for _ in 0..threads {
            let (news, next, stopped) = (news.clone(), &next, &stopped);
            running.push(scope.spawn(move || {
                while let Some(mut pursuit) = next() {
                    // nobody listens any more once it was stopped
                    while !stopped.load(Ordering::Relaxed)
                        && let Some(step) = pursuit.step()
                        && news.send(step).is_ok()
                    {}
                }
            }));
        }
        drop(news);
        for step in heard {
            search.hear(step);
            if tell(search.progress()) == Go::Stop {
                stopped.store(true, Ordering::Relaxed);
                return Go::Stop;
            }
        }
        for thread in running {
            // one that fell over says why, as it would on this thread
            if let Err(why) = thread.join() {
                resume_unwind(why);
            }
        }
        Go::On
    })
}

#[cfg(test)]
mod tests {
    use latchwright_model::Design;
    use latchwright_search::propose::{DialWish, Kind, propose};

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
        let alone = propose(&wishes, &mut |_| Go::On);
        assert!(matches!(&alone, Outcome::Found(found) if found.len() == 3));
        for threads in [1, 2, 8] {
            assert_eq!(run(&wishes, threads, &mut |_| Go::On), alone, "{threads}");
        }
    }

    #[test]
    fn wishes_that_cannot_be_had_have_the_same_reason_on_two_threads() {
        let mut wishes = wishes();
        wishes.dials = vec![DialWish::numbered(40); 4];
        let alone = propose(&wishes, &mut |_| Go::On);
        assert!(matches!(&alone, Outcome::Nothing(_)));
        assert_eq!(run(&wishes, 2, &mut |_| Go::On), alone);
    }

    #[test]
    fn the_share_that_is_done_grows_to_the_whole_and_the_best_never_grows_worse() {
        let (mut last, mut settings, mut area) = (0.0, 0, f64::INFINITY);
        run(&wishes(), 2, &mut |progress| {
            assert!(progress.done >= last && progress.done <= 1.0);
            last = progress.done;
            for best in progress.best {
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
            Go::On
        });
        assert!((last - 1.0).abs() < 1e-9, "{last}");
        assert!(settings > 0 && area.is_finite());
    }

    #[test]
    fn stopped_on_two_threads_it_keeps_what_it_has() {
        let soon = |progress: Progress<'_>| {
            if progress.done > 0.4 {
                Go::Stop
            } else {
                Go::On
            }
        };
        let found = run(&wishes(), 2, &mut { soon });
        let Outcome::Found(found) = found else {
            panic!("{found:?}");
        };
        assert_eq!(found.len(), 3);
        assert!(found.iter().all(|found| found.proof.proven));
        assert_eq!(run(&wishes(), 2, &mut |_| Go::Stop), Outcome::Stopped);
    }
}
