//! What mending aims at, and how near a changed design comes to it.

use crate::remedy::{fails, faulty, role};
use latchwright_model::Unit;
use latchwright_proof::check::of_kind;
use latchwright_proof::results::{Check, Proof};

/// A gain below this is the dust of sums.
const DUST: f64 = 1e-9;

/// What fails, and has to pass.
#[derive(Debug, Clone)]
pub(super) struct Aim {
    faulty: bool,
    failing: Vec<Check>,
}

/// How near a changed design comes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Near {
    /// From below zero up to it, where everything that is aimed at passes: the figure, about in mm, of what
    /// is furthest from that.
    pub figure: f64,
    /// Something that is aimed at is nearer to passing than before.
    pub gains: bool,
    /// How many faults and failing checks are left; a fault counts for more than all checks.
    pub left: usize,
    /// By how much they fail together, about in mm.
    pub short: f64,
}

impl Near {
    /// Before anything was looked at.
    pub(super) const NOWHERE: Self = Self {
        figure: f64::NEG_INFINITY,
        gains: false,
        left: usize::MAX,
        short: f64::INFINITY,
    };
}

impl Aim {
    /// Everything that fails in this proof. What fails because other checks do counts only where nothing
    /// else fails.
    pub(super) fn of(proof: &Proof) -> Self {
        let failing = || proof.checks.iter().filter(|check| fails(check)).cloned();
        Self {
            faulty: faulty(proof),
            failing: failing().collect(),
        }
    }

    /// How near a changed design comes, of which this is the proof.
    pub(super) fn near(&self, after: &Proof) -> Near {
        let faults = after.faults.iter();
        let faults = faults.filter(|fault| fault.is_error()).count();
        let failing: Vec<&Check> = after.checks.iter().filter(|check| fails(check)).collect();
        let short = failing.iter().map(|check| -in_mm(after, check)).sum();
        let figure = if faults > 0 {
            // margins say nothing yet: fewer faults are nearer
            -1e3 * faults as f64
        } else if self.faulty {
            least(failing.iter().map(|check| in_mm(after, check)))
        } else {
            self.least(after)
        };
        Near {
            figure,
            gains: self.faulty || self.gains(after),
            left: 1000 * faults + failing.len(),
            short,
        }
    }

    fn least(&self, after: &Proof) -> f64 {
        let itself = |check: &&Check| !role::of(check.kind).is_effect();
        let alone = self.failing.iter().any(|check| itself(&check));
        let aimed = self.failing.iter().filter(|check| !alone || itself(check));
        least(aimed.map(|check| in_mm(after, check).min(0.0)))
    }

    fn gains(&self, after: &Proof) -> bool {
        self.failing.iter().any(|check| {
            let now = of_kind(after, check.kind, check.dial());
            now.is_none_or(|now| now.margin > check.margin + DUST)
        })
    }
}

fn least(figures: impl Iterator<Item = f64>) -> f64 {
    figures.fold(0.0, f64::min)
}

/// How far `check` is from passing in `proof`, about in mm; 0 or above where it passes.
fn in_mm(proof: &Proof, check: &Check) -> f64 {
    match of_kind(proof, check.kind, check.dial()) {
        Some(now) if fails(now) => {
            let figure = role::figure(proof, now);
            // a check that counts marks may fail without one that is short
            let figure = if figure < 0.0 { figure } else { -1.0 };
            match check.unit {
                Unit::Millimetre | Unit::Count | Unit::Ratio | Unit::Newton => figure,
                // a disc of the usual size, and a part that bears ten newtons to the millimetre
                Unit::Degree => figure * 0.3,
                Unit::Megapascal => figure * 0.1,
            }
        }
        Some(_) | None => 0.0,
    }
}
