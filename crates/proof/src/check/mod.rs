//! The checks on the whole design: each with figure, limit, margin, what decides it and a remedy.
//!
//! One file a kind of check; each takes the [`Sums`] of the design and gives its checks. To add
//! one, write its file and call it in [`all`].

pub mod about;
pub mod advice;
mod child;
pub mod contributor;
mod feel;
pub mod finger_knob;
mod guide;
pub mod guide_strips;
mod key;
pub mod kind;
pub mod near;
mod racking;
mod settings;
mod shaken;
pub mod slider_body;
pub mod spacing;
pub mod stack;
pub mod strength;
mod travel;
mod window;
mod workmanship;
mod worst_box;
mod worst_place;

use core::cmp::Ordering;

use crate::bounds::{DialBounds, SliderBounds, Terms, backlash_deg};
use crate::count::Counts;
use crate::results::{Check, Proof};
use crate::season::Drift;
use crate::slider_body::SliderBody;
use crate::verdict::{CheckVerdict, DialProof, Verdict};
use crate::worst::judge::ExactJudge;
use crate::worst::over_year::LatchOverYear;
use crate::worst::witness::Builder;
use crate::worst::{figure::SliderFigureKind, figure::SliderWorst};
use latchwright_model::Unit;
use latchwright_model::{Design, Dial, Key};

pub use about::About;
pub use advice::Advice;
pub use child::{
    CYLINDER_DIAMETER, GROWN_AGE, ROOM_LITRES, ROOM_SIZE, SMALL_PARTS_AGE, could_hold_a_child,
    fits_small_parts_cylinder,
};
pub use contributor::Contributor;
pub use feel::first_step;
pub use guide::{closes_at, when_guide_closes};
pub use kind::CheckKind;
pub use racking::{arm_limit, racking_margin};
pub use shaken::shaken_margin;
pub use travel::{captive_margin, free_margin, rest_gap, rest_hold_margin};
pub use window::told_apart;
pub use workmanship::most_positions;

/// What every check may look at.
pub struct Sums<'a> {
    /// The design.
    pub design: &'a Design,
    /// What the slider can do out of line.
    pub slider: SliderBounds,
    /// The year.
    pub drift: &'a Drift,
    /// The sums of each dial looked at.
    pub dials: Vec<DialBounds>,
    /// The verdicts of each dial looked at.
    pub proofs: &'a [DialProof],
    /// How many settings open, lock or are unsure.
    pub counts: Counts,
    /// The exact worst case of each dial looked at, where there is one.
    pub exact: &'a [Option<ExactJudge<'a>>],
    /// The latch over all boxes, where its numbers hold.
    pub over_year: Option<&'a LatchOverYear<'a>>,
    /// The figures of the slider over all boxes.
    pub slider_worst: SliderWorst,
    /// Builds the worst boxes found.
    pub builder: Option<Builder<'a>>,
}

impl<'a> Sums<'a> {
    /// The plain sums alone, of at most so many dials: no verdicts, no exact worst case.
    pub fn plain(design: &'a Design, drift: &'a Drift, most: usize) -> Self {
        let slider = SliderBounds::of(design, drift, Terms::All);
        // most latches have one key for all dials
        let mut last: Option<(&Key, f64)> = None;
        let of = |dial: &'a Dial| {
            let backlash = match last {
                Some((key, backlash)) if *key == dial.key => backlash,
                _ => backlash_deg(dial),
            };
            last = Some((&dial.key, backlash));
            DialBounds::turning(design, dial, &slider, drift, Terms::All, backlash)
        };
        Self {
            design,
            dials: design.dials.iter().take(most).map(of).collect(),
            slider,
            drift,
            proofs: &[],
            counts: Counts::default(),
            exact: &[],
            over_year: None,
            slider_worst: SliderWorst::default(),
            builder: None,
        }
    }
}

impl Sums<'_> {
    /// The exact worst case of dial `index`.
    pub fn exact(&self, index: usize) -> Option<&ExactJudge<'_>> {
        self.exact.get(index)?.as_ref()
    }

    /// Dials with their number and sums.
    pub fn each(&self) -> impl Iterator<Item = (usize, &Dial, &DialBounds)> + Clone {
        self.design
            .dials
            .iter()
            .zip(&self.dials)
            .enumerate()
            .map(|(index, (dial, bounds))| (index, dial, bounds))
    }
}

/// All checks: what fails first, then what is unsure, then what passes, each by margin.
pub fn all(sums: &Sums<'_>) -> Vec<Check> {
    let mut checks = travel::checks(sums);
    let guide = guide::check(sums);
    checks.push(worst_box::of_slider(sums, SliderFigureKind::Play, guide));
    checks.extend(spacing::checks(sums));
    let body = SliderBody::led(sums.design, sums.drift, &sums.slider);
    checks.extend(slider_body::checks(sums, &body));
    checks.extend(guide_strips::checks(sums, &body));
    checks.extend(key::checks(sums));
    checks.extend(settings::checks(sums));
    checks.extend(window::checks(sums));
    checks.extend(workmanship::check(sums));
    checks.extend(stack::checks(sums));
    checks.extend(strength::checks(sums));
    checks.push(racking::check(sums));
    checks.push(shaken::check(sums));
    checks.push(feel::check(sums));
    checks.extend(child::checks(sums));
    // stable: equal margins keep the order in which they were made
    checks.sort_by(|one, other| {
        let by_unit = (one.unit != Unit::Millimetre).cmp(&(other.unit != Unit::Millimetre));
        one.verdict.cmp(&other.verdict).then(by_unit).then(
            one.margin
                .partial_cmp(&other.margin)
                .unwrap_or(Ordering::Equal),
        )
    });
    checks
}

/// The check of what one mark promises, with its worst box; see [`crate::prove_mark`].
pub fn of_mark(sums: &Sums<'_>, dial: usize, mark: u32) -> Option<Check> {
    let proof = sums.proofs.get(dial)?;
    let found = proof.marks.get(usize::try_from(mark).ok()?)?;
    match found.verdict {
        Verdict::Holds => travel::held_at(sums, dial, mark, found.hold_margin?),
        Verdict::Passes if mark == proof.digit => travel::lets_in(sums, dial),
        _ => None,
    }
}

/// The check of this kind about this dial; of a kind that is told only where it is tightest, the
/// one there is.
pub fn of_kind(proof: &Proof, kind: CheckKind, dial: Option<usize>) -> Option<&Check> {
    let mut of_kind = proof.checks.iter().filter(|check| check.kind == kind);
    of_kind.find(|check| check.about.dial() == dial || kind.told_once())
}

/// What a check is made from.
pub(crate) struct Draft {
    /// What is checked.
    kind: CheckKind,
    /// What it is about.
    about: About,
    /// The worst-case figure, in the kind's unit.
    value: f64,
    /// What it must at least be.
    limit: f64,
    /// What eats it, in any order.
    decided_by: Vec<(Contributor, f64)>,
}

impl Draft {
    /// The check: it passes, or it cannot be promised and fails; `short` gives the estimate of what would
    /// mend it from what is short, in steps of 0.05 that a maker measures.
    fn judged(self, short: impl FnOnce(f64) -> Advice) -> Check {
        let margin = self.value - self.limit;
        let passes = margin >= 0.0;
        Check {
            kind: self.kind,
            about: self.about,
            value: self.value,
            limit: self.limit,
            margin,
            unit: self.kind.unit(),
            verdict: if passes {
                CheckVerdict::Passes
            } else {
                CheckVerdict::Fails
            },
            decided_by: largest_first(self.decided_by),
            advice: if passes {
                Advice::Slack
            } else {
                short((-margin * STEPS_IN_A_MM).ceil() / STEPS_IN_A_MM)
            },
            worst: None,
        }
    }

    /// The check with this advice, whether it passes or fails; what decides it stays in the order given.
    fn advised(mut self, advice: Advice) -> Check {
        let decided_by = core::mem::take(&mut self.decided_by);
        Check {
            decided_by,
            advice,
            ..self.judged(|_| Advice::Slack)
        }
    }
}

/// Steps of an estimate in a millimetre: 0.05 mm is what a maker measures with a calliper at hand.
const STEPS_IN_A_MM: f64 = 20.0;

/// Contributors that count for something, largest first.
fn largest_first(mut parts: Vec<(Contributor, f64)>) -> Vec<(Contributor, f64)> {
    parts.retain(|(_, amount)| amount.abs() > 5e-4);
    parts.sort_by(|one, other| other.1.abs().total_cmp(&one.1.abs()));
    parts
}
