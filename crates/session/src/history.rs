//! Undo and redo: the last designs, each with the name of the edit that made it.

use std::collections::VecDeque;
use std::sync::Arc;

use latchwright_model::Design;

/// Edits that can be taken back.
pub const DEPTH: usize = 200;

/// A design and the edit between it and the one that is shown.
#[derive(Debug, Clone)]
struct LabelledDesign {
    label: String,
    design: Arc<Design>,
}

/// A hand that is still moving.
#[derive(Debug, Clone)]
struct Drag {
    label: String,
    /// What could be made again before it began.
    future: Vec<LabelledDesign>,
}

/// The design that is shown, with those before and after it.
#[derive(Debug, Clone)]
pub struct History {
    current: Arc<Design>,
    past: VecDeque<LabelledDesign>,
    future: Vec<LabelledDesign>,
    /// The drag that is going on.
    drag: Option<Drag>,
    saved: Option<Arc<Design>>,
    revision: u64,
}

impl History {
    /// A history that starts with `design`, which counts as saved.
    pub fn new(design: Design) -> Self {
        let current = Arc::new(design);
        let saved = Some(Arc::clone(&current));
        Self {
            current,
            past: VecDeque::new(),
            future: Vec::new(),
            drag: None,
            saved,
            revision: 0,
        }
    }

    /// The design that is shown.
    pub fn current(&self) -> &Arc<Design> {
        &self.current
    }

    /// A number that grows with every change of the shown design, undo and redo included.
    pub fn revision(&self) -> u64 {
        self.revision
    }

    /// Makes `design` the shown one. An edit that changes nothing is none.
    pub fn edit(&mut self, label: &str, design: Design) {
        self.drag = None;
        self.push(label, design);
    }

    /// As [`Self::edit`], while a hand is still moving: consecutive edits with the same label are one
    /// step until [`Self::end_drag`].
    pub fn edit_in_drag(&mut self, label: &str, design: Design) {
        if self.drag.as_ref().is_some_and(|drag| drag.label == label) {
            self.replace(design);
        } else {
            let future = self.future.clone();
            self.drag = self.push(label, design).then(|| Drag {
                label: label.to_owned(),
                future,
            });
        }
    }

    /// The hand gave up: everything is as before the drag, what could be made again included. False
    /// if no drag is going on.
    pub fn put_back(&mut self) -> bool {
        let Some(drag) = self.drag.take() else {
            return false;
        };
        if let Some(before) = self.past.pop_back() {
            self.show(before.design);
        }
        self.future = drag.future;
        true
    }

    /// The hand let go: the next edit is a step of its own.
    pub fn end_drag(&mut self) {
        self.drag = None;
    }

    /// Takes the last edit back; false if there is none.
    pub fn undo(&mut self) -> bool {
        self.drag = None;
        let Some(step) = self.past.pop_back() else {
            return false;
        };
        let design = self.show(step.design);
        self.future.push(LabelledDesign {
            label: step.label,
            design,
        });
        true
    }

    /// Makes the edit again that was last taken back; false if there is none.
    pub fn redo(&mut self) -> bool {
        self.drag = None;
        let Some(step) = self.future.pop() else {
            return false;
        };
        let design = self.show(step.design);
        self.past.push_back(LabelledDesign {
            label: step.label,
            design,
        });
        true
    }

    /// Name of the edit that undo would take back.
    pub fn undo_label(&self) -> Option<&str> {
        self.past.back().map(|step| step.label.as_str())
    }

    /// Name of the edit that redo would make again.
    pub fn redo_label(&self) -> Option<&str> {
        self.future.last().map(|step| step.label.as_str())
    }

    /// This design, shown now or when it began to be saved, is what the file has.
    pub fn mark_saved(&mut self, design: Arc<Design>) {
        self.saved = Some(design);
    }

    /// No file has any of these designs.
    pub fn mark_never_saved(&mut self) {
        self.saved = None;
    }

    /// Whether the shown design is what the file has, by whatever way it got there.
    pub fn is_saved(&self) -> bool {
        self.saved
            .as_ref()
            .is_some_and(|saved| Arc::ptr_eq(saved, &self.current) || **saved == *self.current)
    }

    /// Shows `design` and gives the one that was shown.
    fn show(&mut self, design: Arc<Design>) -> Arc<Design> {
        self.revision += 1;
        std::mem::replace(&mut self.current, design)
    }

    fn push(&mut self, label: &str, design: Design) -> bool {
        if design == *self.current {
            return false;
        }
        let design = self.show(Arc::new(design));
        if self.past.len() == DEPTH {
            self.past.pop_front();
        }
        self.past.push_back(LabelledDesign {
            label: label.to_owned(),
            design,
        });
        self.future.clear();
        true
    }

    /// Changes the shown design within its step; a drag that ends where it began leaves no step.
    fn replace(&mut self, design: Design) {
        if design == *self.current {
            return;
        }
        if self.past.back().is_some_and(|step| *step.design == design) {
            self.put_back();
        } else {
            self.show(Arc::new(design));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn titled(title: &str) -> Design {
        Design {
            title: title.to_owned(),
            ..Design::default()
        }
    }

    fn shown(history: &History) -> &str {
        &history.current().title
    }

    #[test]
    fn undo_and_redo_walk_the_same_way_back_and_forth() {
        let mut history = History::new(titled("a"));
        history.edit("to b", titled("b"));
        history.edit("to c", titled("c"));
        assert_eq!(history.undo_label(), Some("to c"));
        assert!(history.undo() && history.undo() && !history.undo());
        assert_eq!((shown(&history), history.redo_label()), ("a", Some("to b")));
        assert!(history.redo() && history.redo() && !history.redo());
        assert_eq!((shown(&history), history.undo_label()), ("c", Some("to c")));
    }

    #[test]
    fn an_edit_after_undo_forgets_what_could_be_redone() {
        let mut history = History::new(titled("a"));
        history.edit("to b", titled("b"));
        history.undo();
        history.edit("to c", titled("c"));
        assert_eq!(history.redo_label(), None);
        assert!(history.undo());
        assert_eq!(shown(&history), "a");
    }

    #[test]
    fn a_drag_is_one_step_until_the_hand_lets_go() {
        let mut history = History::new(titled("a"));
        for title in ["b", "c", "d"] {
            history.edit_in_drag("move", titled(title));
        }
        history.end_drag();
        history.edit_in_drag("move", titled("e"));
        history.undo();
        assert_eq!(shown(&history), "d");
        history.undo();
        assert_eq!(shown(&history), "a");
    }

    #[test]
    fn a_drag_back_to_where_it_began_leaves_no_step() {
        let mut history = History::new(titled("a"));
        history.edit_in_drag("move", titled("b"));
        history.edit_in_drag("move", titled("a"));
        assert_eq!((shown(&history), history.undo_label()), ("a", None));
        history.edit_in_drag("move", titled("c"));
        assert_eq!(history.undo_label(), Some("move"));
    }

    #[test]
    fn a_drag_that_is_given_up_leaves_everything_as_it_was() {
        let mut history = History::new(titled("a"));
        history.edit("to b", titled("b"));
        history.edit("to c", titled("c"));
        history.undo();
        assert!(!history.put_back(), "no hand is moving");
        for title in ["d", "e"] {
            history.edit_in_drag("move", titled(title));
        }
        assert!(history.put_back() && !history.put_back());
        assert_eq!((shown(&history), history.undo_label()), ("b", Some("to b")));
        assert_eq!(history.redo_label(), Some("to c"));
        history.edit_in_drag("move", titled("d"));
        history.end_drag();
        assert!(!history.put_back(), "the hand has let go");
        assert_eq!(shown(&history), "d");
    }

    #[test]
    fn an_edit_that_changes_nothing_is_none() {
        let mut history = History::new(titled("a"));
        history.edit("nothing", titled("a"));
        assert_eq!((history.undo_label(), history.revision()), (None, 0));
    }

    #[test]
    fn saved_is_known_by_what_the_design_is() {
        let mut history = History::new(titled("a"));
        assert!(history.is_saved());
        history.edit("to b", titled("b"));
        assert!(!history.is_saved());
        history.mark_saved(Arc::clone(history.current()));
        history.undo();
        assert!(!history.is_saved());
        history.redo();
        assert!(history.is_saved());
        history.edit("to c", titled("c"));
        history.edit("back to b", titled("b"));
        assert!(history.is_saved());
        let written = Arc::clone(history.current());
        history.edit("to d", titled("d"));
        history.mark_saved(written);
        assert!(!history.is_saved(), "changed while it was written");
        history.undo();
        assert!(history.is_saved());
    }

    #[test]
    fn only_the_last_edits_are_kept() {
        let mut history = History::new(titled("start"));
        for edit in 0..DEPTH + 50 {
            history.edit("count", titled(&edit.to_string()));
        }
        let mut steps = 0;
        while history.undo() {
            steps += 1;
        }
        assert_eq!(steps, DEPTH);
        assert_eq!(shown(&history), "49");
    }

    #[test]
    fn every_change_has_its_own_revision() {
        let mut history = History::new(titled("a"));
        let mut seen = vec![history.revision()];
        history.edit("to b", titled("b"));
        seen.push(history.revision());
        history.undo();
        seen.push(history.revision());
        history.redo();
        seen.push(history.revision());
        history.edit_in_drag("move", titled("c"));
        seen.push(history.revision());
        history.edit_in_drag("move", titled("d"));
        seen.push(history.revision());
        assert!(seen.is_sorted_by(|a, b| a < b), "{seen:?}");
    }
}
