//! All work beside the window in one table: each task on a thread of its own, with what it is of, how far it
//! is, and the wish that it stop.
//!
//! A second save of the same kind is refused while the first is on its way (the window has that of the design
//! follow); other work of a kind is asked to stop when newer work of that kind begins. When the table goes, what writes files is waited for and all else
//! is asked to stop: it holds nothing that could be left half done. Work that falls over becomes a sentence.

use std::any::Any;
use std::ops::ControlFlow;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{Receiver, RecvTimeoutError, channel};
use std::sync::{Arc, Condvar, Mutex, MutexGuard, PoisonError};
use std::thread::JoinHandle;
use std::time::Duration;

use egui::Context;

use crate::action::Product;

/// How often progress is drawn.
pub const LOOK: Duration = Duration::from_millis(100);

/// What is done beside the window.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TaskKind {
    /// Reading a design from its file, and proving it.
    Open,
    /// Proving the open design.
    Proof,
    /// Looking for what mends each check that fails.
    Remedies,
    /// Looking for the smallest change that proves all of it.
    Mending,
    /// Looking for new boxes.
    Proposals,
    /// Looking what would buy more.
    Frontier,
    /// Building boxes at random.
    Builds,
    /// Trying every mark for openings that should not be there.
    Hunt,
    /// Laying out a paper and drawing its page.
    Page,
    /// Making the printed parts.
    Parts,
    /// Drawing the printed parts.
    PartsPicture,
    /// Looking up and writing the list of designs used lately.
    Recents,
    /// Asking the desktop for a path; it may never answer.
    Browse,
    /// Making a product and writing it.
    Write(Product),
}

impl TaskKind {
    /// Whether it writes files, so that its end is waited for.
    pub const fn writes(self) -> bool {
        match self {
            Self::Write(_) | Self::Recents => true,
            Self::Open
            | Self::Proof
            | Self::Remedies
            | Self::Mending
            | Self::Proposals
            | Self::Frontier
            | Self::Builds
            | Self::Hunt
            | Self::Page
            | Self::Parts
            | Self::PartsPicture
            | Self::Browse => false,
        }
    }
}

/// What a task and the window tell each other.
#[derive(Debug, Clone)]
pub struct Reins(Arc<Told>);

#[derive(Debug)]
struct Told {
    /// Share of the work that is done.
    share: Mutex<f64>,
    stop: AtomicBool,
    ended: AtomicBool,
    bell: Arc<Bell>,
    ctx: Woken,
}

/// What is woken by news of a task.
#[derive(Clone)]
struct Woken(Context);

impl std::fmt::Debug for Woken {
    fn fmt(&self, to: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        to.write_str("the window")
    }
}

impl Reins {
    /// Tells how far the work is, as a share of it, and hears whether it is to go on.
    pub fn tick(&self, share: f64) -> ControlFlow<()> {
        *locked(&self.0.share) = share;
        if self.stopped().load(Ordering::Relaxed) {
            ControlFlow::Break(())
        } else {
            ControlFlow::Continue(())
        }
    }

    /// Whether the work was asked to stop.
    pub fn stopped(&self) -> &AtomicBool {
        &self.0.stop
    }

    /// Wakes the window before the work is done: there is something to be seen of it.
    pub fn news(&self) {
        self.0.bell.ring();
        self.0.ctx.0.request_repaint();
    }
}

/// Rung when a task ends or has something to show.
#[derive(Debug, Default)]
struct Bell {
    rung: Mutex<u64>,
    heard: Condvar,
}

impl Bell {
    fn ring(&self) {
        *locked(&self.rung) += 1;
        self.heard.notify_all();
    }
}

/// A mutex whose holder fell over holds what it held.
fn locked<T>(mutex: &Mutex<T>) -> MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(PoisonError::into_inner)
}

/// One task of the table.
struct Running {
    kind: TaskKind,
    /// The state of the design that it is about.
    revision: u64,
    reins: Reins,
    thread: JoinHandle<()>,
}

/// What is to come of a task. Let go, the task is asked to stop.
#[derive(Debug)]
pub struct Task<T> {
    result: Receiver<T>,
    reins: Reins,
}

/// What a task has come to.
#[derive(Debug)]
pub enum Polled<T> {
    /// It goes on.
    Running,
    /// It is done.
    Done(T),
    /// It fell over, which [`Tasks::fallen`] tells.
    Fell,
}

impl<T> Task<T> {
    /// What it has come to; the result is given once.
    pub fn poll(&self) -> Polled<T> {
        self.poll_within(Duration::ZERO)
    }

    /// As [`Self::poll`], waiting for it so long at most.
    pub fn poll_within(&self, time: Duration) -> Polled<T> {
        match self.result.recv_timeout(time) {
            Ok(done) => Polled::Done(done),
            Err(RecvTimeoutError::Timeout) => Polled::Running,
            Err(RecvTimeoutError::Disconnected) => Polled::Fell,
        }
    }

    /// Asks it to stop.
    pub fn stop(&self) {
        self.reins.0.stop.store(true, Ordering::Relaxed);
    }

    /// Share of the work that is done; none once it was asked to stop.
    pub fn progress(&self) -> Option<f64> {
        let stopped = self.reins.stopped().load(Ordering::Relaxed);
        (!stopped).then(|| *locked(&self.reins.0.share))
    }
}

impl<T> Drop for Task<T> {
    fn drop(&mut self) {
        self.stop();
    }
}

/// The table.
pub struct Tasks {
    ctx: Context,
    running: Vec<Running>,
    fallen: Arc<Mutex<Vec<String>>>,
    bell: Arc<Bell>,
    gate: Arc<Mutex<()>>,
    /// How often the bell had been rung when it was last listened to.
    heard: u64,
}

impl Tasks {
    /// A table without tasks; the window of `ctx` is woken by each that ends.
    pub fn new(ctx: &Context) -> Self {
        Self {
            ctx: ctx.clone(),
            running: Vec::new(),
            fallen: Arc::default(),
            bell: Arc::default(),
            gate: Arc::default(),
            heard: 0,
        }
    }

    /// Starts work about this state of the design. Other work of its kind is asked to stop; a second save of
    /// a kind is refused while the first is on its way. `None` also where the system has no thread for it,
    /// which [`Self::fallen`] tells.
    pub fn start<T: Send + 'static>(
        &mut self,
        kind: TaskKind,
        revision: u64,
        work: impl FnOnce(&Reins) -> T + Send + 'static,
    ) -> Option<Task<T>> {
        self.running
            .retain(|task| !task.reins.0.ended.load(Ordering::Acquire));
        for other in self.running.iter().filter(|other| other.kind == kind) {
            if kind.writes() {
                return None;
            }
            other.reins.0.stop.store(true, Ordering::Relaxed);
        }
        let reins = Reins(Arc::new(Told {
            share: Mutex::new(0.0),
            stop: AtomicBool::new(false),
            ended: AtomicBool::new(false),
            bell: Arc::clone(&self.bell),
            ctx: Woken(self.ctx.clone()),
        }));
        let (sender, result) = channel();
        let (held, fallen) = (reins.clone(), Arc::clone(&self.fallen));
        let gate = Arc::clone(&self.gate);
        let run = move || {
            drop(locked(&gate));
            let done = catch_unwind(AssertUnwindSafe(|| work(&held)));
            // before the window has the result, which may begin the next of its kind
            held.0.ended.store(true, Ordering::Release);
            match done {
                Ok(done) => {
                    // the window may not wait for it any more
                    let _ = sender.send(done);
                }
                Err(fell) => locked(&fallen).push(why(&*fell)),
            }
            // before the window looks, so that it finds what fell over
            drop(sender);
            held.news();
        };
        let name = format!("{kind:?}");
        match std::thread::Builder::new().name(name).spawn(run) {
            Ok(thread) => {
                self.running.push(Running {
                    kind,
                    revision,
                    reins: reins.clone(),
                    thread,
                });
                Some(Task { result, reins })
            }
            Err(err) => {
                locked(&self.fallen).push(format!(
                    "Work beside the window cannot be begun ({err}); your design is safe: save it, and try again"
                ));
                None
            }
        }
    }

    /// Whether a task of this kind goes on.
    pub fn goes_on(&self, kind: TaskKind) -> bool {
        self.of_kind(kind).next().is_some()
    }

    /// The state of the design that the task of this kind is about that began last, where one goes on.
    pub fn revision(&self, kind: TaskKind) -> Option<u64> {
        self.of_kind(kind).last().map(|task| task.revision)
    }

    fn of_kind(&self, kind: TaskKind) -> impl Iterator<Item = &Running> {
        let ended = |task: &Running| task.reins.0.ended.load(Ordering::Acquire);
        self.running
            .iter()
            .filter(move |task| task.kind == kind && !ended(task))
    }

    /// A sentence about work that fell over, once.
    pub fn fallen(&self) -> Option<String> {
        locked(&self.fallen).pop()
    }

    /// What every task goes through before it begins: while a test holds it, all work beside the window takes
    /// long.
    pub fn gate(&self) -> Arc<Mutex<()>> {
        Arc::clone(&self.gate)
    }

    /// From now on only what ends later is news.
    pub fn listen(&mut self) {
        self.heard = *locked(&self.bell.rung);
    }

    /// Waits until a task has ended or has something to show since [`Self::listen`], for so long at most; not
    /// at all where none goes on.
    pub fn wait_for_news(&self, most: Duration) {
        let rung = locked(&self.bell.rung);
        let ended = |task: &Running| task.reins.0.ended.load(Ordering::Acquire);
        if self.running.iter().all(ended) {
            return;
        }
        let silent = |rung: &mut u64| *rung == self.heard;
        drop(self.bell.heard.wait_timeout_while(rung, most, silent));
    }
}

impl Drop for Tasks {
    fn drop(&mut self) {
        for task in self.running.drain(..) {
            task.reins.0.stop.store(true, Ordering::Relaxed);
            if task.kind.writes() {
                // one that fell over has written nothing
                let _ = task.thread.join();
            }
        }
    }
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

/// A share of work as a bar shows it.
#[expect(
    clippy::cast_possible_truncation,
    reason = "a share that is drawn as a bar"
)]
pub const fn narrow(share: f64) -> f32 {
    share as f32
}

/// A picture, or none where drawing it panics: a fault of this program, not worth the window.
pub fn drawn<T>(draw: impl FnOnce() -> T) -> Option<T> {
    catch_unwind(AssertUnwindSafe(draw)).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    const LONG: Duration = Duration::from_mins(1);

    fn tasks() -> Tasks {
        Tasks::new(&Context::default())
    }

    /// Work that goes on until it is asked to stop.
    fn until_stopped(reins: &Reins) -> f64 {
        let mut share = 0.0;
        while reins.tick(share).is_continue() {
            share = 0.5;
            std::thread::yield_now();
        }
        share
    }

    #[test]
    fn work_that_falls_over_is_told_once_and_leaves_its_kind_free() {
        let mut tasks = tasks();
        let task = tasks.start::<()>(TaskKind::Page, 0, |_| panic!("planted"));
        let task = task.expect("begun");
        assert!(matches!(task.poll_within(LONG), Polled::Fell));
        tasks.wait_for_news(LONG);
        let told = tasks.fallen().expect("a sentence");
        assert!(told.contains("(planted); your design is safe"), "{told}");
        assert_eq!(tasks.fallen(), None);
        assert!(!tasks.goes_on(TaskKind::Page));
    }

    #[test]
    fn a_second_save_of_a_kind_is_refused_until_the_first_is_done() {
        let mut tasks = tasks();
        let papers = TaskKind::Write(Product::Papers);
        let (go, wait) = channel::<()>();
        let first = tasks.start(papers, 0, move |_| wait.recv().is_ok());
        assert!(tasks.start(papers, 0, |_| ()).is_none());
        let parts = tasks.start(TaskKind::Write(Product::Parts), 0, |_| ());
        assert!(parts.is_some(), "another kind is no second save");
        assert!(tasks.goes_on(papers));
        go.send(()).expect("it waits");
        let first = first.expect("begun");
        assert!(matches!(first.poll_within(LONG), Polled::Done(true)));
        assert!(
            tasks.start(papers, 0, |_| ()).is_some(),
            "free as soon as its result is there"
        );
    }

    #[test]
    fn newer_work_stops_older_work_of_its_kind_and_of_no_other() {
        let mut tasks = tasks();
        let old = tasks.start(TaskKind::Mending, 1, until_stopped);
        let other = tasks.start(TaskKind::Remedies, 1, until_stopped);
        let new = tasks.start(TaskKind::Mending, 2, until_stopped);
        let (old, other, new) = (
            old.expect("begun"),
            other.expect("begun"),
            new.expect("begun"),
        );
        assert!(matches!(old.poll_within(LONG), Polled::Done(_)));
        assert_eq!(tasks.revision(TaskKind::Mending), Some(2));
        assert!(other.progress().is_some() && new.progress().is_some());
        new.stop();
        assert_eq!(new.progress(), None);
        assert!(matches!(new.poll_within(LONG), Polled::Done(_)));
    }

    #[test]
    fn a_table_that_goes_waits_for_what_is_written_and_stops_the_rest() {
        let mut tasks = tasks();
        let written = Arc::new(AtomicBool::new(false));
        let writes = Arc::clone(&written);
        let save = tasks.start(TaskKind::Write(Product::Card), 0, move |reins| {
            // only the end of the table asks it to stop
            while !reins.stopped().load(Ordering::Relaxed) {
                std::thread::yield_now();
            }
            writes.store(true, Ordering::Release);
        });
        let rest = tasks.start(TaskKind::Builds, 0, until_stopped);
        drop(tasks);
        assert!(written.load(Ordering::Acquire), "its end was awaited");
        assert!(save.is_some());
        let rest = rest.expect("begun");
        assert!(matches!(rest.poll_within(LONG), Polled::Done(_)));
    }
}
