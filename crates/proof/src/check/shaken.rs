//! Shaken: whatever way up, a knock brings the slider of a locked box no further than its creep.

use super::advice::{Estimate, FromTo, Warning};
use super::{About, Advice, CheckKind, Contributor, Draft, Sums};
use crate::count::count;
use crate::results::Check;
use crate::verdict::{CheckVerdict, DialProof, Verdict};

/// Tab that stays held beyond what is required at the locked setting that a knock can move
/// furthest, mm; `None` where no setting locks.
///
/// In a setting it is the dial with the most to spare that decides. The worst setting has one dial
/// at its worst mark that holds, and every other where it spares less than that: at a mark that
/// does not hold at all, where it has one.
pub fn shaken_margin(proofs: &[DialProof]) -> Option<f64> {
    let least_holding = |dial: &DialProof| {
        let holding = dial.marks.iter().filter_map(|mark| match mark.verdict {
            Verdict::Holds => mark.hold_margin,
            Verdict::Passes | Verdict::Unsure => None,
        });
        holding.reduce(f64::min)
    };
    let always_holds = |dial: &DialProof| {
        let mut marks = dial.marks.iter();
        marks.all(|mark| mark.verdict == Verdict::Holds)
    };
    // a dial that always holds keeps at least this much in every setting
    let floor = proofs
        .iter()
        .filter(|dial| always_holds(dial))
        .filter_map(least_holding)
        .fold(f64::NEG_INFINITY, f64::max);
    let least = proofs.iter().filter_map(least_holding).reduce(f64::min)?;
    Some(least.max(floor))
}

/// The tab stays under the keeper at every locked setting, however the box is held or knocked.
pub(super) fn check(sums: &Sums<'_>) -> Check {
    let limit = sums.design.tab.required_hold;
    let unsure = count(sums.proofs).unsure;
    // one setting of which nothing can be promised is one that a knock may open
    let margin = shaken_margin(sums.proofs).filter(|_| unsure == 0);
    let value = margin.map_or(0.0, |margin| margin + limit);
    let creeps = sums
        .proofs
        .iter()
        .flat_map(|dial| &dial.marks)
        .filter_map(|mark| mark.creep);
    let creep = creeps.fold(0.0, f64::max);
    let draft = Draft {
        kind: CheckKind::Shaken,
        about: About::Latch,
        value,
        limit,
        decided_by: vec![(Contributor::Creep, creep)],
    };
    let engagement = sums.design.tab.engagement;
    let mut check = draft.judged(|short| {
        if unsure > 0 || margin.is_none() {
            Advice::Warning(Warning::FirstDecideSettings)
        } else {
            Advice::Change(Estimate::LengthenEngagementToAtLeast(FromTo {
                from: engagement,
                to: engagement + short,
            }))
        }
    });
    if check.verdict == CheckVerdict::Fails {
        check.verdict = CheckVerdict::Unsure;
    }
    check
}
