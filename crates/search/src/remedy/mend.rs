//! Mending a whole design: the smallest change after which it is proven, with parts that are cut
//! already left alone.
//!
//! One size is tried before two, and of sizes that do it the one that moves least. Every step is
//! judged by the whole proof.

use super::every_way::every_way;
use super::faulty;
use super::part::{Part, same};
use super::way::Way;
use latchwright_model::Unit;
use latchwright_model::change::{Change, Size, Step};
use latchwright_model::{Design, Dial, Slot};
use latchwright_proof::CheckKind;
use latchwright_proof::check::of_kind;
use latchwright_proof::results::{Check, Proof};
use latchwright_proof::verdict::CheckVerdict;
use latchwright_proof::{prove, prove_each_alone};

/// The smallest change found that makes a design proven.
#[derive(Debug, Clone, PartialEq)]
pub struct Mend {
    /// What to change.
    pub change: Change,
    /// How many sizes that is, alike ones of several dials taken together.
    pub sizes: usize,
    /// How far they move together, mm; a mark that is left out counts as one.
    pub movement: f64,
    /// The proof of the changed design: proven, or all but its second openings that are meant.
    pub proof: Proof,
}

/// The check that exactly one setting opens.
const TWIN: CheckKind = CheckKind::TwinOpenings;
/// Steps of the maker's grid that are tried along one way, each twice the one before.
const DOUBLINGS: u32 = 9;
/// Where a way that does not help at once is looked at again: a dial that is idle, or a count of marks,
/// only changes after a while.
const FURTHER_ON: u32 = 5;
/// A length is moved at most by so much, and a place (mm).
const FURTHEST: f64 = 12.0;
const FURTHEST_PLACE: f64 = 25.0;
/// Beginnings from which a second size is looked for.
const BEGINNINGS: usize = 4;
/// Sizes that are moved at most.
const MOST_SIZES: usize = 6;

/// Looks for the smallest change: fewest sizes, then least movement. `cut` is left as it is, and so are
/// slots that are cut right through to open at a second mark ([`all_but_meant`]).
///
/// `None` for a design that is [`settled`], and where nothing was found. Takes some hundreds to
/// thousands of proofs: seconds.
pub fn mend(design: &Design, cut: &[Part]) -> Option<Mend> {
    let proof = prove(design);
    if settled(design, &proof) {
        return None;
    }
    let job = Job {
        original: design,
        cut,
    };
    let none = Change { steps: Vec::new() };
    let first = job.look(&none);
    let mut best = first.mended;
    if best.is_none() {
        let second = first.begun.iter().take(BEGINNINGS);
        let looked: Vec<Looked> = second.map(|begun| job.look(&begun.change)).collect();
        best = looked
            .iter()
            .filter_map(|looked| looked.mended.clone())
            .min_by(order);
        if best.is_none() {
            best = looked.into_iter().find_map(|looked| job.go_on(looked));
        }
    }
    let change = job.trimmed(best?);
    let after = change.apply(design);
    let proof = prove(&after);
    settled(&after, &proof).then(|| Mend {
        sizes: sizes(&change),
        movement: movement(&change),
        change,
        proof,
    })
}

/// Whether nothing is left to mend: the design is proven, or [`all_but_meant`] is.
pub fn settled(design: &Design, proof: &Proof) -> bool {
    proof.proven || all_but_meant(design, proof)
}

/// Whether everything is proven but that one setting alone opens, and every other one that does opens
/// by a slot of its own that is cut as wide and deep as the true one: a box that opens twice is meant
/// to.
pub fn all_but_meant(design: &Design, proof: &Proof) -> bool {
    let ways = |dial: &Dial| {
        let slots = &dial.disc.slots;
        let truly = slots.iter().find(|slot| slot.mark == 0);
        let alike = |slot: &&Slot| {
            truly.is_some_and(|truly| {
                (slot.width, slot.depth, slot.lead_in) == (truly.width, truly.depth, truly.lead_in)
            })
        };
        slots.iter().filter(alike).count() as u128
    };
    let openings = design.dials.iter().map(ways).product::<u128>();
    !faulty(proof)
        && openings > 1
        && proof.settings.opens == openings
        && proof.settings.unsure == 0
        && proof.states.rows.iter().all(|row| row.as_meant)
        && failing(proof).all(|check| check.kind == TWIN)
}

struct Job<'a> {
    original: &'a Design,
    cut: &'a [Part],
}

/// What came of trying every way once.
struct Looked {
    /// The best change after which all is proven.
    mended: Option<Change>,
    /// Changes that mend a part of what fails, the best first.
    begun: Vec<Begun>,
}

struct Begun {
    change: Change,
    /// Failing checks that are left, with those that came new.
    failing: usize,
    movement: f64,
}

impl Job<'_> {
    /// Whether parts that are cut are still what they were.
    fn keeps(&self, design: &Design) -> bool {
        let mut cut = self.cut.iter();
        cut.all(|part| same(self.original, design, *part))
    }

    /// Tries every way on the original with `before` done to it.
    fn look(&self, before: &Change) -> Looked {
        let design = before.apply(self.original);
        let proof = prove_each_alone(&design);
        let mut looked = Looked {
            mended: None,
            begun: Vec::new(),
        };
        for way in every_way(&design) {
            self.try_way(before, &design, &proof, &way, &mut looked);
        }
        looked.begun.sort_by(|one, other| {
            let few = one.failing.cmp(&other.failing);
            few.then(one.movement.total_cmp(&other.movement))
        });
        looked
    }

    fn try_way(
        &self,
        before: &Change,
        design: &Design,
        proof: &Proof,
        way: &Way,
        looked: &mut Looked,
    ) {
        let mut low: (i64, Option<Proof>) = (0, None);
        // the last two places and what was to spare there of what fails
        let mut trail = [(0, least_left(proof, proof)); 2];
        let (mut fewest, mut stands) = (failing(proof).count(), 0);
        let unread = faulty(proof);
        let mut doublings = 0..=DOUBLINGS;
        while let Some(doubling) = doublings.next() {
            let step = 1_i64 << doubling;
            let Some((change, after)) = self.after(design, way, step) else {
                break;
            };
            if faulty(&after) {
                // margins say nothing yet: only how far may help
                if unread {
                    low = (step, None);
                    continue;
                }
                break;
            }
            let goal = if settled(&change.apply(design), &after) {
                Some((low.0, step, change.clone()))
            } else {
                let before = low.1.as_ref().unwrap_or(proof);
                self.between(design, way, (low.0, before), (step, &after))
                    .or_else(|| {
                        let left = least_left(proof, &after);
                        let [(from, first), (_, best)] = trail;
                        let peak = !unread && best > left && best >= first;
                        peak.then(|| self.at_peak(design, way, proof, (from, step)))?
                    })
            };
            trail = [trail[1], (step, least_left(proof, &after))];
            if let Some((short, enough, change)) = goal {
                let least = self.least(design, way, (short, enough)).unwrap_or(change);
                let whole = before.clone().then(least);
                let better = looked
                    .mended
                    .as_ref()
                    .is_none_or(|best| order(&whole, best).is_lt());
                if better {
                    looked.mended = Some(whole);
                }
                return;
            }
            if !unread && !helps(proof, &after) {
                stands += 1;
                // a margin that moves neither at once nor further on never will
                match stands {
                    1 => {}
                    2 => doublings = FURTHER_ON..=DOUBLINGS,
                    _ => break,
                }
            }
            let left = failing(&after).count();
            if left < fewest || unread {
                fewest = left;
                let whole = before.clone().then(change);
                looked.begun.push(Begun {
                    movement: movement(&whole),
                    change: whole,
                    failing: left,
                });
            }
            low = (step, Some(after));
        }
    }

    /// Between two steps of which the first is too short and the second too far, one that does: the last
    /// ones before something new fails are looked at.
    fn between(
        &self,
        design: &Design,
        way: &Way,
        low: (i64, &Proof),
        high: (i64, &Proof),
    ) -> Option<(i64, i64, Change)> {
        let too_far = |proof: &Proof| {
            failing(proof).any(|check| {
                let before = of_kind(low.1, check.kind, check.dial());
                before.is_none_or(|before| before.verdict == CheckVerdict::Passes)
            })
        };
        if faulty(low.1) || !too_far(high.1) || !helps(low.1, high.1) {
            return None;
        }
        let (mut short, mut far) = (low.0, high.0);
        while far - short > 1 {
            let middle = i64::midpoint(short, far);
            let (change, after) = self.after(design, way, middle)?;
            if settled(&change.apply(design), &after) {
                return Some((short, middle, change));
            }
            if faulty(&after) || too_far(&after) {
                far = middle;
            } else {
                short = middle;
            }
        }
        None
    }

    /// Between two steps round the one that leaves the most of what fails, one that does: what fails on
    /// one side may fail on the other side as well, as a pin beside its slot does.
    fn at_peak(
        &self,
        design: &Design,
        way: &Way,
        proof: &Proof,
        (from, to): (i64, i64),
    ) -> Option<(i64, i64, Change)> {
        let (mut low, mut high) = (from, to);
        while high - low > 2 {
            let third = (high - low) / 3;
            let at = [low + third.max(1), high - third.max(1)];
            let mut left = [0.0; 2];
            for (left, step) in left.iter_mut().zip(at) {
                let (change, after) = self.after(design, way, step)?;
                if settled(&change.apply(design), &after) {
                    return Some((from, step, change));
                }
                *left = least_left(proof, &after);
            }
            if left[0] < left[1] {
                low = at[0];
            } else {
                high = at[1];
            }
        }
        None
    }

    /// The design so many steps along `way`, if cut parts allow it.
    fn after(&self, design: &Design, way: &Way, step: i64) -> Option<(Change, Proof)> {
        let change = way.change(design, step)?;
        if change.steps.iter().any(goes_too_far) {
            return None;
        }
        let after = change.apply(design);
        if !self.keeps(&after) {
            return None;
        }
        let proof = prove_each_alone(&after);
        Some((change, proof))
    }

    /// The least step between one that fails and one that is proven.
    fn least(&self, design: &Design, way: &Way, (low, high): (i64, i64)) -> Option<Change> {
        let (mut low, mut high, mut found) = (low, high, None);
        while high - low > 1 {
            let middle = i64::midpoint(low, high);
            match self.after(design, way, middle) {
                Some((change, proof)) if settled(&change.apply(design), &proof) => {
                    (high, found) = (middle, Some(change));
                }
                _ => low = middle,
            }
        }
        found
    }

    /// Goes on from the best beginning as long as fewer checks fail each time.
    fn go_on(&self, looked: Looked) -> Option<Change> {
        let mut looked = looked;
        let mut failing = usize::MAX;
        for _ in 2..MOST_SIZES {
            let begun = looked.begun.into_iter().next()?;
            if begun.failing >= failing {
                return None;
            }
            failing = begun.failing;
            looked = self.look(&begun.change);
            if looked.mended.is_some() {
                return looked.mended;
            }
        }
        None
    }

    /// The change without steps that are not needed, each of the others as short as goes.
    fn trimmed(&self, change: Change) -> Change {
        let proven = |change: &Change| {
            let design = change.apply(self.original);
            self.keeps(&design) && settled(&design, &prove_each_alone(&design))
        };
        let mut change = change;
        let mut at = 0;
        while at < change.steps.len() && change.steps.len() > 1 {
            let mut without = change.clone();
            without.steps.remove(at);
            if proven(&without) {
                change = without;
            } else {
                at += 1;
            }
        }
        change
    }
}

/// The least that is to spare in `after` of what fails in `before`.
fn least_left(before: &Proof, after: &Proof) -> f64 {
    failing(before)
        .filter_map(|check| of_kind(after, check.kind, check.dial()))
        .map(|check| check.margin)
        .fold(f64::INFINITY, f64::min)
}

/// Fewest sizes, then least movement.
fn order(one: &Change, other: &Change) -> core::cmp::Ordering {
    let few = sizes(one).cmp(&sizes(other));
    few.then(movement(one).total_cmp(&movement(other)))
}

/// Whether some check that fails is nearer to passing.
fn helps(before: &Proof, after: &Proof) -> bool {
    failing(before).any(|check| {
        let now = of_kind(after, check.kind, check.dial());
        now.is_none_or(|now| now.margin > check.margin + 1e-9)
    })
}

fn failing(proof: &Proof) -> impl Iterator<Item = &Check> {
    let checks = proof.checks.iter();
    checks.filter(|check| check.verdict != CheckVerdict::Passes)
}

fn goes_too_far(step: &Step) -> bool {
    let Step::Resize { size, from, to } = step else {
        return false;
    };
    let most = if size.is_place() {
        FURTHEST_PLACE
    } else {
        FURTHEST
    };
    size.unit() == Unit::Millimetre && (to - from).abs() > most
}

/// Sizes that a change moves; alike ones of several dials, moved alike, count once.
fn sizes(change: &Change) -> usize {
    let mut seen: Vec<(&Size, f64)> = Vec::new();
    for step in &change.steps {
        if let Step::Resize { size, from, to } = step {
            let by = to - from;
            let again =
                |(other, moved): &(&Size, f64)| other.alike(*size) && (moved - by).abs() < 1e-6;
            // a digit follows the positions
            if !matches!(size, Size::Digit(_)) && !seen.iter().any(again) {
                seen.push((size, by));
            }
        }
    }
    seen.len()
}

/// How far all sizes move together.
fn movement(change: &Change) -> f64 {
    let steps = change.steps.iter().map(|step| match step {
        Step::Resize {
            size: Size::Digit(_),
            ..
        } => 0.0,
        Step::Resize { from, to, .. } => (to - from).abs(),
        _ => 1.0,
    });
    steps.sum()
}
