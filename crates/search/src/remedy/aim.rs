//! What a search aims at, and how near a changed design comes to it.

use core::cmp::Ordering;

use super::role::{self, Mark, Role};
use super::{fails, settled};
use latchwright_model::{Design, Unit};
use latchwright_proof::check::of_kind;
use latchwright_proof::results::{Check, Proof};
use latchwright_proof::verdict::Verdict;

/// A gain below this is the dust of sums. Smaller, and a change that does nothing seems to help; larger,
/// and a step of the finest grid is taken for nothing.
const DUST: f64 = 1e-9;

/// What one fault counts for, in mm that a check is short: more than any check ever is. Smaller, and a
/// design whose figures mean nothing is taken for a near one.
const FAULT: f64 = 1e3;

/// What has to pass: one check, or the whole design.
#[derive(Debug, Clone)]
pub(super) struct Aim {
    whole: bool,
    /// There are faults, as long as which no margin says anything.
    faulty: bool,
    failing: Vec<Failing>,
}

/// A check that fails, with how far it is from passing, about in mm.
#[derive(Debug, Clone)]
struct Failing {
    check: Check,
    figure: f64,
}

/// How near a changed design comes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Near {
    /// About in mm, of what is furthest from passing of all that is aimed at; from zero on, all of that passes.
    pub figure: f64,
    /// Something that is aimed at is nearer to passing than before.
    pub gains: bool,
    /// The aim is reached, and nothing new is in its way.
    pub reached: bool,
    /// What is left of the whole design.
    pub left: Left,
}

/// What is left to mend of a whole design.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Left {
    /// Faults, before checks that fail.
    count: (usize, usize),
    /// By how much checks fail together, about in mm.
    short: f64,
}

impl Aim {
    /// That this check of `proof` passes, without a fault.
    pub fn check(proof: &Proof, check: &Check) -> Self {
        Self {
            whole: false,
            faulty: false,
            failing: vec![Failing::of(proof, check)],
        }
    }

    /// That all passes of which this is the proof.
    pub fn whole(proof: &Proof) -> Self {
        let failing = proof.checks.iter().filter(|check| fails(check));
        Self {
            whole: true,
            faulty: proof.blocks_building(),
            failing: failing.map(|check| Failing::of(proof, check)).collect(),
        }
    }

    pub fn is_whole(&self) -> bool {
        self.whole
    }

    /// How near `design` comes, of which this is the proof.
    pub fn near(&self, design: &Design, proof: &Proof) -> Near {
        let left = Left::of(proof);
        let passes = |failing: &Failing| {
            let now = failing.now(proof);
            now.is_some_and(|now| !fails(now) && now.margin >= 0.0)
        };
        let reached = if self.whole {
            settled(design, proof)
        } else {
            self.failing.iter().all(passes) && left.faults() == 0
        };
        Near {
            figure: self.figure(proof, left.faults()),
            gains: self.faulty || self.failing.iter().any(|failing| failing.gains(proof)),
            reached,
            left,
        }
    }

    /// What fails because other checks do counts only once nothing else fails.
    fn figure(&self, proof: &Proof, faults: usize) -> f64 {
        if faults > 0 {
            // fewer are nearer
            return -FAULT * faults as f64;
        }
        if self.faulty {
            let failing = proof.checks.iter().filter(|check| fails(check));
            return least(failing.map(|check| figure(proof, check)));
        }
        let of = |is_effect: bool| {
            let aimed = self.failing.iter();
            let aimed = aimed.filter(|aimed| role::of(aimed.check.kind).is_effect() == is_effect);
            least(aimed.filter_map(|aimed| match aimed.now(proof) {
                Some(now) => Some(figure(proof, now)),
                // a pair that is so far apart that nothing is to be told of it passes
                None if self.whole => None,
                None => Some(-FAULT),
            }))
        };
        let (itself, effects) = (of(false), of(true));
        if itself < 0.0 || effects >= 0.0 {
            itself
        } else {
            effects
        }
    }
}

impl Failing {
    fn of(proof: &Proof, check: &Check) -> Self {
        let check = check.clone();
        let figure = figure(proof, &check);
        Self { check, figure }
    }

    /// As it stands in another proof; `None` where that has no such check.
    fn now<'p>(&self, proof: &'p Proof) -> Option<&'p Check> {
        of_kind(proof, self.check.kind, self.check.dial())
    }

    fn gains(&self, proof: &Proof) -> bool {
        self.now(proof).is_none_or(|now| {
            now.margin > self.check.margin + DUST || figure(proof, now) > self.figure + DUST
        })
    }
}

impl Near {
    /// Whether it is so far off that its figure says nothing: there are faults, or nothing to be checked.
    pub fn is_lost(&self) -> bool {
        self.figure <= -FAULT
    }
}

impl Left {
    pub fn of(proof: &Proof) -> Self {
        let faults = proof.faults.iter().filter(|fault| fault.is_error()).count();
        let failing = || proof.checks.iter().filter(|check| fails(check));
        Self {
            count: (faults, failing().count()),
            short: -failing().map(|check| figure(proof, check)).sum::<f64>(),
        }
    }

    fn faults(&self) -> usize {
        self.count.0
    }

    /// As many faults and failing checks, or fewer.
    pub fn is_no_more(&self, than: &Self) -> bool {
        self.count <= than.count
    }

    /// Fewest faults first, then fewest checks, then the least that they are short of.
    pub fn order(&self, other: &Self) -> Ordering {
        let count = self.count.cmp(&other.count);
        count.then(self.short.total_cmp(&other.short))
    }
}

/// The least of these; of none that can be compared, that all is well.
fn least(figures: impl Iterator<Item = f64>) -> f64 {
    let least = figures.fold(f64::INFINITY, f64::min);
    if least.is_finite() { least } else { 0.0 }
}

/// How far `check` of `proof` is from passing, about in mm: below zero where it fails. Of a check that counts
/// marks, by how much the mark that decides is short; of such a one that passes, nothing that could be
/// compared.
fn figure(proof: &Proof, check: &Check) -> f64 {
    let unsure = |of: Option<usize>| {
        let dials = proof.dials.iter().enumerate();
        let dials = dials.filter(move |(dial, _)| of.is_none_or(|of| of == *dial));
        let marks = dials.flat_map(|(_, dial)| &dial.marks);
        let unsure = marks.filter(|mark| mark.verdict == Verdict::Unsure);
        unsure.map(|mark| mark.margin)
    };
    let figure = match role::of(check.kind) {
        Role::Effect(_) if !fails(check) => return f64::INFINITY,
        Role::Effect(Mark::Worst) => unsure(None).min_by(f64::total_cmp),
        Role::Effect(Mark::Best) => unsure(check.dial()).max_by(f64::total_cmp),
        Role::Effect(Mark::None) | Role::CauseAndEffect(_) | Role::Cause(_) | Role::Alone => {
            Some(check.margin)
        }
    };
    let figure = match figure {
        Some(figure) if !fails(check) => figure.max(0.0),
        Some(figure) if figure < 0.0 && figure.is_finite() => figure,
        // it may fail for another reason than a figure that is short
        Some(_) | None => -1.0,
    };
    match check.unit {
        Unit::Millimetre | Unit::Count | Unit::Ratio | Unit::Newton => figure,
        // a disc of the usual size, and a part that bears ten newtons to the millimetre
        Unit::Degree => figure * 0.3,
        Unit::Megapascal => figure * 0.1,
    }
}
