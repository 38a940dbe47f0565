//! What follows the design: made beside the window, and shown until a newer one is there.

use std::time::Duration;

use egui::Context;

use crate::tasks::{LOOK, Polled, Reins, Task, TaskKind, Tasks};

/// What a value is of: the state of the design, and whatever else decides what is made.
pub trait Key: Clone + PartialEq {
    /// The state of the design.
    fn revision(&self) -> u64;
}

impl Key for u64 {
    fn revision(&self) -> u64 {
        *self
    }
}

/// Why nothing was made.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum NotMade {
    /// It was asked to stop.
    Stopped,
    /// It cannot be made; a sentence that says why.
    Refused(String),
}

/// How work ended, told once.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ended {
    /// There is a new value.
    Made,
    /// It cannot be made; the value before stays.
    Refused,
    /// It was stopped; the value before stays.
    Stopped,
    /// It fell over; the value before stays.
    Fell,
}

/// A value with what it is of, and the next one on its way.
pub struct Follow<K, T> {
    kind: TaskKind,
    value: T,
    /// What the value is of; none before the first was made.
    of: Option<K>,
    /// What could not be made, and why.
    refused: Option<(K, String)>,
    /// What was begun last: where that fell over it would again.
    asked: Option<K>,
    task: Option<(K, Task<Result<T, NotMade>>)>,
}

impl<K: Key, T: Send + 'static> Follow<K, T> {
    /// Begins with a value that is of nothing yet.
    pub fn new(kind: TaskKind, value: T) -> Self {
        Self {
            kind,
            value,
            of: None,
            refused: None,
            asked: None,
            task: None,
        }
    }

    /// Begins with a value that is of this.
    pub fn with(kind: TaskKind, key: K, value: T) -> Self {
        let mut follow = Self::new(kind, value);
        follow.of = Some(key);
        follow
    }

    /// The value, whatever it is of.
    pub fn value(&self) -> &T {
        &self.value
    }

    /// The value, to be added to on this thread.
    pub fn value_mut(&mut self) -> &mut T {
        &mut self.value
    }

    /// What the value is of.
    pub fn key(&self) -> Option<&K> {
        self.of.as_ref()
    }

    /// The value, where it is of this.
    pub fn of(&self, key: &K) -> Option<&T> {
        (self.of.as_ref() == Some(key)).then_some(&self.value)
    }

    /// What could not be made last, and why.
    pub fn refused(&self) -> Option<(&K, &str)> {
        let (key, why) = self.refused.as_ref()?;
        Some((key, why.as_str()))
    }

    /// Whether a newer one is on its way.
    pub fn on_its_way(&self) -> bool {
        self.task.is_some()
    }

    /// Share of the work that is done; none where none goes on or it was asked to stop.
    pub fn progress(&self) -> Option<f64> {
        self.task.as_ref()?.1.progress()
    }

    /// Takes a value that was made at once; what is on its way is given up.
    pub fn set(&mut self, key: K, value: T) {
        (self.value, self.of, self.refused) = (value, Some(key), None);
        self.task = None;
    }

    /// Begins to make the value of this; what is on its way is given up.
    pub fn begin(
        &mut self,
        tasks: &mut Tasks,
        key: K,
        work: impl FnOnce(&Reins) -> Result<T, NotMade> + Send + 'static,
    ) {
        self.asked = Some(key.clone());
        // what goes is asked to stop
        self.task = None;
        let task = tasks.start(self.kind, key.revision(), work);
        self.task = task.map(|task| (key, task));
    }

    /// Makes the value of this unless it is there, on its way, refused, or fell over. What is on its way and
    /// of something else is asked to stop, and its end awaited: no two are at work on the same.
    pub fn want(
        &mut self,
        tasks: &mut Tasks,
        key: &K,
        work: impl FnOnce(&Reins) -> Result<T, NotMade> + Send + 'static,
    ) {
        if let Some((of, task)) = &self.task {
            if of != key {
                task.stop();
            }
            return;
        }
        let refused = self.refused.as_ref().map(|(key, _)| key);
        let made = self.of.as_ref();
        if [made, refused, self.asked.as_ref()].contains(&Some(key)) {
            return;
        }
        self.begin(tasks, key.clone(), work);
    }

    /// Gives up what is on its way, unless it is of this.
    pub fn give_up_unless(&mut self, key: &K) {
        self.task.take_if(|task| task.0 != *key);
    }

    /// Gives up what is on its way.
    pub fn give_up(&mut self) {
        self.task = None;
    }

    /// Asks what is on its way to stop, and goes on waiting for its end.
    pub fn stop(&self) {
        if let Some((_, task)) = &self.task {
            task.stop();
        }
    }

    /// Takes what was made since, gives up what is on its way and not of this, and asks for the next frame
    /// while something is.
    pub fn follow(&mut self, ctx: &Context, key: &K) -> Option<Ended> {
        self.give_up_unless(key);
        let ended = self.poll();
        if self.on_its_way() {
            ctx.request_repaint_after(LOOK);
        }
        ended
    }

    /// Takes what was made since.
    pub fn poll(&mut self) -> Option<Ended> {
        self.poll_within(Duration::ZERO)
    }

    /// As [`Self::poll`], waiting for it so long at most.
    pub fn poll_within(&mut self, time: Duration) -> Option<Ended> {
        let (_, task) = self.task.as_ref()?;
        let polled = task.poll_within(time);
        if matches!(polled, Polled::Running) {
            return None;
        }
        let (key, _) = self.task.take()?;
        Some(match polled {
            Polled::Running | Polled::Fell => Ended::Fell,
            Polled::Done(Ok(value)) => {
                (self.value, self.of, self.refused) = (value, Some(key), None);
                Ended::Made
            }
            Polled::Done(Err(NotMade::Refused(why))) => {
                self.refused = Some((key, why));
                Ended::Refused
            }
            Polled::Done(Err(NotMade::Stopped)) => {
                // it may be wanted again
                self.asked = None;
                Ended::Stopped
            }
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const LONG: Duration = Duration::from_mins(1);

    fn until_stopped(reins: &Reins) -> Result<u32, NotMade> {
        while reins.tick(0.5).is_continue() {
            std::thread::yield_now();
        }
        Err(NotMade::Stopped)
    }

    #[test]
    fn a_value_is_shown_until_the_next_one_is_there() {
        let mut tasks = Tasks::new(&Context::default());
        let mut follow = Follow::<u64, u32>::new(TaskKind::Page, 0);
        assert_eq!((follow.value(), follow.of(&1)), (&0, None));
        follow.want(&mut tasks, &1, |_| Ok(11));
        assert!(follow.on_its_way());
        assert_eq!(follow.poll_within(LONG), Some(Ended::Made));
        follow.want(&mut tasks, &2, |_| Err(NotMade::Refused("no".to_owned())));
        assert_eq!(follow.value(), &11);
        assert_eq!(follow.poll_within(LONG), Some(Ended::Refused));
        assert_eq!(follow.refused(), Some((&2, "no")));
        assert_eq!((follow.of(&1), follow.of(&2)), (Some(&11), None));
        follow.want(&mut tasks, &2, |_| Ok(22));
        assert!(!follow.on_its_way(), "what was refused would be again");
    }

    #[test]
    fn stale_work_is_stopped_and_does_not_block_the_newer() {
        let mut tasks = Tasks::new(&Context::default());
        let mut follow = Follow::<u64, u32>::new(TaskKind::Remedies, 0);
        follow.want(&mut tasks, &1, until_stopped);
        assert_eq!(follow.progress().map(f64::is_finite), Some(true));
        follow.want(&mut tasks, &2, |_| Ok(2));
        assert_eq!(follow.poll_within(LONG), Some(Ended::Stopped));
        follow.want(&mut tasks, &2, |_| Ok(2));
        assert_eq!(follow.poll_within(LONG), Some(Ended::Made));
        assert_eq!(follow.of(&2), Some(&2));
    }

    #[test]
    fn work_that_fell_over_is_not_begun_again_for_the_same() {
        let mut tasks = Tasks::new(&Context::default());
        let mut follow = Follow::<u64, u32>::new(TaskKind::Proof, 0);
        follow.want(&mut tasks, &1, |_| panic!("planted"));
        assert_eq!(follow.poll_within(LONG), Some(Ended::Fell));
        follow.want(&mut tasks, &1, |_| Ok(1));
        assert!(!follow.on_its_way());
        follow.want(&mut tasks, &2, |_| Ok(2));
        assert_eq!(follow.poll_within(LONG), Some(Ended::Made));
    }
}
