//! Work beside the window, on a thread of its own, made so that nothing it does can harm the window.

use std::any::Any;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::sync::mpsc::{Receiver, RecvTimeoutError};
use std::time::Duration;

use egui::{Context, Id};

/// Work on a thread of its own, one piece at a time.
pub struct Job<T> {
    running: Option<Receiver<T>>,
}

impl<T> Default for Job<T> {
    fn default() -> Self {
        Self { running: None }
    }
}

impl<T: Send + 'static> Job<T> {
    /// Whether something is being made.
    pub fn busy(&self) -> bool {
        self.running.is_some()
    }

    /// Starts; the window is woken when it is done.
    pub fn start(&mut self, ctx: &Context, work: impl FnOnce() -> T + Send + 'static) {
        let (sender, receiver) = std::sync::mpsc::channel();
        let ctx = ctx.clone();
        std::thread::spawn(move || {
            match catch_unwind(AssertUnwindSafe(work)) {
                Ok(done) => {
                    // the window may have been closed meanwhile
                    let _ = sender.send(done);
                }
                Err(fell) => {
                    ctx.data_mut(|data| data.insert_temp(fallen_id(), why(&*fell)));
                }
            }
            // before the window looks, so that it finds the job ended
            drop(sender);
            ctx.request_repaint();
        });
        self.running = Some(receiver);
    }

    /// What was made, once it is done; nothing where the work fell over, which [`fallen`] tells.
    pub fn poll(&mut self) -> Option<T> {
        self.poll_within(Duration::ZERO)
    }

    /// As [`Self::poll`], waiting for it so long at most.
    pub fn poll_within(&mut self, time: Duration) -> Option<T> {
        let received = self.running.as_ref()?.recv_timeout(time);
        if !matches!(received, Err(RecvTimeoutError::Timeout)) {
            self.running = None;
        }
        received.ok()
    }
}

/// How far a piece of work is, told from its thread, and the wish that it stop.
#[derive(Debug, Clone, Default)]
pub struct Reins {
    done: Arc<AtomicU64>,
    stop: Arc<AtomicBool>,
}

impl Reins {
    /// Tells how far it is, in whatever the work counts.
    pub fn tell(&self, done: u64) {
        self.done.store(done, Ordering::Relaxed);
    }

    /// What was told last.
    pub fn done(&self) -> u64 {
        self.done.load(Ordering::Relaxed)
    }

    /// Asks the work to stop.
    pub fn stop(&self) {
        self.stop.store(true, Ordering::Relaxed);
    }

    /// Whether it was asked to stop, to be looked at from the work's thread.
    pub fn stopped(&self) -> &AtomicBool {
        &self.stop
    }
}

/// Where the window finds what became of work that fell over.
fn fallen_id() -> Id {
    Id::unique("work beside the window that fell over")
}

/// A sentence about work that fell over since this was last asked.
pub fn fallen(ctx: &Context) -> Option<String> {
    ctx.data_mut(|data| data.remove_temp::<String>(fallen_id()))
}

fn why(fell: &(dyn Any + Send)) -> String {
    let what = fell
        .downcast_ref::<&str>()
        .map(ToString::to_string)
        .or_else(|| fell.downcast_ref::<String>().cloned());
    let what = what.map(|what| format!(" ({what})")).unwrap_or_default();
    format!(
        "Work beside the window broke off, a fault of this program{what}; your design is safe: save it, and try again"
    )
}

/// A picture, or none where drawing it panics: a fault of this program, not worth the window.
pub fn drawn<T>(draw: impl FnOnce() -> T) -> Option<T> {
    catch_unwind(AssertUnwindSafe(draw)).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn work_that_falls_over_is_told_once_and_leaves_the_job_free() {
        let ctx = Context::default();
        let mut job = Job::<()>::default();
        job.start(&ctx, || panic!("planted"));
        while job.busy() {
            assert!(job.poll().is_none());
            std::thread::yield_now();
        }
        let told = fallen(&ctx).expect("a sentence");
        assert!(told.contains("(planted); your design is safe"), "{told}");
        assert_eq!(fallen(&ctx), None);
    }
}
