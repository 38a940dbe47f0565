//! Designs that a search tries: each is proven, the work is counted and bounded, and whoever waits is
//! told how far it is.

use latchwright_model::Design;
use latchwright_model::change::Change;
use latchwright_proof::{Known, Proof, prove_known};

/// What the proof of one dial costs beside the cells of boxes that are looked at for it, counted in such
/// cells. Smaller, and a search in which all is known already seems to cost nothing; larger, and one that
/// bounds everything anew is given up too late.
const DIAL: usize = 16;

/// Hears what share of the work is done, and the best change so far; false ends it.
pub(super) type Hears<'a> = dyn FnMut(f64, Option<&Change>) -> bool + 'a;

/// Proves designs until the work is spent or nobody waits any more.
pub(super) struct Trials<'a> {
    known: Known,
    /// Cells that count for dials.
    dials: usize,
    most: usize,
    /// Work after which this part of the search is over.
    limit: usize,
    hears: &'a mut Hears<'a>,
    stopped: bool,
}

impl<'a> Trials<'a> {
    /// Trials of at most so much work, in cells of boxes.
    pub fn new(most: usize, hears: &'a mut Hears<'a>) -> Self {
        Self {
            known: Known::default(),
            dials: 0,
            most,
            limit: most,
            hears,
            stopped: false,
        }
    }

    /// Leaves the next part of the search at most so much of what is left.
    pub fn limit(&mut self, work: usize) {
        self.limit = self.spent().saturating_add(work).min(self.most);
    }

    /// Allows so much for the next part of the search, whatever was spent.
    pub fn grant(&mut self, work: usize) {
        self.limit = self.spent().saturating_add(work);
    }

    /// Work that is done, in cells of boxes.
    fn spent(&self) -> usize {
        self.known.cells() + self.dials
    }

    /// Whether nobody waits any more.
    pub fn stopped(&self) -> bool {
        self.stopped
    }

    /// Whether nothing is proven any more in this part of the search.
    pub fn over(&self) -> bool {
        self.stopped || self.spent() >= self.limit
    }

    /// A proof in which dials that only hold together do not count yet: enough to see how far a change
    /// gets. `None` once the search is over.
    pub fn prove(&mut self, design: &Design, best: Option<&Change>) -> Option<Proof> {
        if self.over() {
            return None;
        }
        let done = self.spent() as f64 / self.most.max(1) as f64;
        self.stopped = !(self.hears)(done.min(1.0), best);
        if self.stopped {
            return None;
        }
        self.dials += DIAL * design.dials.len().max(1);
        Some(prove_known(design, &self.known))
    }
}
