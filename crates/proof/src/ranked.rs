//! Any setting by its number and the number of any setting, in the order in which
//! [`Settings`](crate::Settings) walks, without walking: over 360^12 settings as quick as over 8.
//!
//! How many settings a beginning can still become follows from the dials after it. So the nth is
//! found dial by dial, each mark leaving out as many settings as begin with it.

use itertools::Itertools;

use crate::count::Counts;
use crate::settings::{Filter, Setting, setting};
use crate::together::HeldTogether;
use crate::verdict::{DialProof, MarkProof, SureStop, Verdict};

/// What matters of one mark: marks of one kind are alike in every count.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Kind {
    Passes,
    Holds,
    Unsure(Option<SureStop>),
}

impl Kind {
    fn of(mark: &MarkProof) -> Self {
        match mark.verdict {
            Verdict::Passes => Self::Passes,
            Verdict::Holds => Self::Holds,
            Verdict::Unsure => Self::Unsure(mark.stop),
        }
    }

    /// Whether a dial at such a mark is as a group wants it, which asks for this stop or for none.
    fn suits(self, wanted: Option<SureStop>) -> bool {
        match self {
            Self::Holds => false,
            Self::Passes => wanted.is_none(),
            Self::Unsure(stop) => stop == wanted,
        }
    }
}

/// One dial: its kinds of marks, and which each mark is.
#[derive(Debug, Clone)]
struct Ring {
    kinds: Vec<Kind>,
    of_mark: Vec<usize>,
}

impl Ring {
    fn of(dial: &DialProof) -> Self {
        let mut kinds: Vec<Kind> = Vec::new();
        let of_mark = dial
            .marks
            .iter()
            .map(|mark| {
                let kind = Kind::of(mark);
                kinds
                    .iter()
                    .position(|known| *known == kind)
                    .unwrap_or_else(|| {
                        kinds.push(kind);
                        kinds.len() - 1
                    })
            })
            .collect();
        Self { kinds, of_mark }
    }

    /// How many marks are of a kind that is asked for.
    fn number(&self, asked: impl Fn(Kind) -> bool) -> u128 {
        let kind = |of: &usize| self.kinds.get(*of).copied();
        let marks = self.of_mark.iter().filter_map(kind);
        marks.filter(|kind| asked(*kind)).count() as u128
    }
}

/// How many settings the dials from one on have; each list is one longer than there are dials.
#[derive(Debug, Clone)]
struct Ahead {
    total: Vec<u128>,
    passes: Vec<u128>,
    not_held: Vec<u128>,
}

/// Dials that hold together: what each dial must meet, and how many ways the dials from one on have.
#[derive(Debug, Clone)]
struct Joint {
    wanted: Vec<Option<SureStop>>,
    ahead: Vec<u128>,
}

/// The beginning of a setting, as far as counts depend on it.
#[derive(Debug, Clone)]
struct Beginning {
    depth: usize,
    held: bool,
    unsure: bool,
    /// Groups that it can still become, by number.
    joints: Vec<usize>,
}

/// Every setting of a latch by number.
#[derive(Debug, Clone)]
pub struct Ranked<'a> {
    dials: &'a [DialProof],
    together: &'a HeldTogether,
    rings: Vec<Ring>,
    ahead: Ahead,
    joints: Vec<Joint>,
}

impl<'a> Ranked<'a> {
    /// All settings of these dials, of which some hold together; as the proof has them.
    pub fn new(dials: &'a [DialProof], together: &'a HeldTogether) -> Self {
        let rings: Vec<Ring> = dials.iter().map(Ring::of).collect();
        let ahead = |asked: fn(Kind) -> bool| products(rings.iter().map(|ring| ring.number(asked)));
        let ahead = Ahead {
            total: ahead(|_| true),
            passes: ahead(|kind| kind == Kind::Passes),
            not_held: ahead(|kind| kind != Kind::Holds),
        };
        let groups = together.groups.iter().map(|group| &group.stops);
        let joints = groups
            .filter(|stops| !stops.is_empty())
            .unique()
            .map(|stops| {
                let wanted: Vec<Option<SureStop>> = (0..dials.len())
                    .map(|dial| stops.iter().find(|stop| stop.0 == dial).map(|stop| stop.1))
                    .collect();
                let ways = rings.iter().zip(&wanted);
                let ways = ways.map(|(ring, wanted)| ring.number(|kind| kind.suits(*wanted)));
                let ahead = products(ways);
                Joint { wanted, ahead }
            })
            .collect();
        Self {
            dials,
            together,
            rings,
            ahead,
            joints,
        }
    }

    /// How many settings the filter wants; exact up to 360^12, above `u128` it saturates.
    pub fn count(&self, filter: Filter) -> u128 {
        if self.dials.is_empty() {
            return 0;
        }
        self.rest(filter, &self.start())
    }

    /// How many settings open, lock or are unsure.
    pub fn counts(&self) -> Counts {
        Counts {
            total: self.count(None),
            opens: self.count(Some(Verdict::Passes)),
            locks: self.count(Some(Verdict::Holds)),
            unsure: self.count(Some(Verdict::Unsure)),
        }
    }

    /// The setting number `index`, from 0, of those that the filter wants; its marks are put into
    /// `marks`. `None` where there are no more than `index`.
    pub fn nth<'b>(
        &self,
        filter: Filter,
        index: u128,
        marks: &'b mut Vec<u16>,
    ) -> Option<Setting<'b>> {
        if index >= self.count(filter) {
            return None;
        }
        marks.clear();
        let (mut left, mut at) = (index, self.start());
        for ring in &self.rings {
            let nexts = self.nexts(filter, &at, ring);
            let mut chosen = None;
            for (mark, kind) in ring.of_mark.iter().enumerate() {
                let (next, rest) = nexts.get(*kind)?;
                if left < *rest {
                    chosen = Some((mark, next));
                    break;
                }
                left -= rest;
            }
            let (mark, next) = chosen?;
            marks.push(u16::try_from(mark).ok()?);
            at = next.clone();
        }
        setting(self.dials, self.together, marks)
    }

    /// How many settings that the filter wants come before the one with these marks: its number
    /// from 0, if the filter wants it too. `None` unless it has one mark of each dial.
    pub fn before(&self, filter: Filter, marks: &[u16]) -> Option<u128> {
        if self.dials.is_empty() || marks.len() != self.dials.len() {
            return None;
        }
        let (mut before, mut at) = (0_u128, self.start());
        for (ring, mark) in self.rings.iter().zip(marks) {
            let mark = usize::from(*mark);
            let own = *ring.of_mark.get(mark)?;
            let nexts = self.nexts(filter, &at, ring);
            for kind in ring.of_mark.iter().take(mark) {
                before = before.saturating_add(nexts.get(*kind)?.1);
            }
            at = nexts.into_iter().nth(own)?.0;
        }
        Some(before)
    }

    /// What can be promised of the setting with these marks; `None` unless it has one mark of each
    /// dial.
    pub fn setting<'b>(&self, marks: &'b [u16]) -> Option<Setting<'b>> {
        setting(self.dials, self.together, marks)
    }

    fn start(&self) -> Beginning {
        Beginning {
            depth: 0,
            held: false,
            unsure: false,
            joints: (0..self.joints.len()).collect(),
        }
    }

    /// What a beginning becomes with each kind of mark of the next dial, and of how many settings.
    fn nexts(&self, filter: Filter, at: &Beginning, ring: &Ring) -> Vec<(Beginning, u128)> {
        let nexts = ring.kinds.iter().map(|kind| self.next(at, *kind));
        nexts
            .map(|next| {
                let rest = self.rest(filter, &next);
                (next, rest)
            })
            .collect()
    }

    fn next(&self, at: &Beginning, kind: Kind) -> Beginning {
        let wanted = |joint: usize| {
            let joint = self.joints.get(joint)?;
            joint.wanted.get(at.depth).copied()
        };
        let suits = |joint: &usize| wanted(*joint).is_some_and(|wanted| kind.suits(wanted));
        Beginning {
            depth: at.depth + 1,
            held: at.held || kind == Kind::Holds,
            unsure: at.unsure || matches!(kind, Kind::Unsure(_)),
            joints: at.joints.iter().copied().filter(suits).collect(),
        }
    }

    /// How many settings that the filter wants begin so.
    fn rest(&self, filter: Filter, at: &Beginning) -> u128 {
        let ahead = |list: &[u128]| list.get(at.depth).copied().unwrap_or(0);
        let total = ahead(&self.ahead.total);
        let free = if at.held {
            0
        } else {
            ahead(&self.ahead.not_held)
        };
        let opens = if at.held || at.unsure {
            0
        } else {
            ahead(&self.ahead.passes)
        };
        let joint = |joint: &usize| self.joints.get(*joint).map(|joint| ahead(&joint.ahead));
        let joint = at.joints.iter().filter_map(joint);
        let jointly = joint.fold(0, u128::saturating_add).min(free - opens);
        match filter {
            None => total,
            Some(Verdict::Passes) => opens,
            Some(Verdict::Holds) => total - free + jointly,
            Some(Verdict::Unsure) => free - opens - jointly,
        }
    }
}

/// The product of all numbers from each on, the last of them 1.
fn products(numbers: impl DoubleEndedIterator<Item = u128>) -> Vec<u128> {
    let mut products = vec![1_u128];
    for number in numbers.rev() {
        let last = products.last().copied().unwrap_or(1);
        products.push(last.saturating_mul(number));
    }
    products.reverse();
    products
}
