//! The whole proof of one design, from its faults to the lock-state table.

use core::cell::{Cell, RefCell};
use core::ops::ControlFlow;

use crate::bounds::{DialBounds, SliderBounds, Terms};
use crate::check;
use crate::check::{Sums, captive_margin, free_margin, rest_hold_margin};
use crate::count::{Counts, count};
use crate::dial_judge::{DialJudge, judge_dial};
use crate::results::{Check, Proof};
use crate::season::Drift;
use crate::states::{LockStates, Slides, State, StateRow, Sure};
use crate::tick::Tick;
use crate::together::HeldTogether;
use crate::verdict::{CheckVerdict, DialProof, Verdict};
use crate::worst::figure::SliderWorst;
use crate::worst::judge::ExactJudge;
use crate::worst::known::Known;
use crate::worst::over_year::LatchOverYear;
use crate::worst::witness::Builder;
use latchwright_model::fault::{Fault, Place};
use latchwright_model::validate::{MAX_DIALS, faults};
use latchwright_model::{Design, Sound};

/// Proves a design: verdicts, counts, checks and states.
///
/// Never fails: what is wrong with the design is listed in [`Proof::faults`], and nothing is
/// promised where a fault touches it.
pub fn prove(design: &Design) -> Proof {
    Judged::of(design).proof(Groups::Sought)
}

/// The same proof, to the last bit, of which `tick` is told how far it is before each figure over all boxes;
/// where it says stop there is none.
///
/// Stopped, it bounds no figure any more; what is left are the plain sums, a tenth of a second for the largest
/// latch.
pub fn prove_with_tick(design: &Design, tick: &mut Tick<'_>) -> ControlFlow<(), Proof> {
    let expected = FIGURES_OF_A_DIAL * design.dials.len().max(1) as f64 + FIGURES_OF_THE_SLIDER;
    let tick = RefCell::new(tick);
    let (figures, stopped) = (Cell::new(0.0), Cell::new(false));
    let goes_on = || {
        if !stopped.get() {
            // more where dials hold together or stand close: it waits at the end
            let done = (figures.get() / expected).min(1.0);
            stopped.set((*tick.borrow_mut())(done).is_break());
            figures.set(figures.get() + 1.0);
        }
        !stopped.get()
    };
    let judged = Judged::of(design);
    let over_year = judged
        .over_year()
        .map(|over_year| over_year.while_it(&goes_on));
    let summed = judged.summed(over_year.as_ref(), Groups::Sought, |sums| {
        judged.checked(&sums)
    });
    if goes_on() {
        let proof = conclude(judged.faults, summed);
        ControlFlow::Continue(proof)
    } else {
        ControlFlow::Break(())
    }
}

/// Figures over all boxes that a dial takes, about: its pin's, and those of its stop.
const FIGURES_OF_A_DIAL: f64 = 8.0;
/// Figures that the slider takes.
const FIGURES_OF_THE_SLIDER: f64 = 5.0;

/// The same proof, but for settings that only lock because several dials hold together: those stay
/// unsure. Nothing else differs, and it is a hundred times as fast where many dials nearly hold.
pub fn prove_each_alone(design: &Design) -> Proof {
    Judged::of(design).proof(Groups::LeftOut)
}

/// The verdicts, figures and margins of [`prove_each_alone`], to the last bit, without the worst boxes
/// that show them; what is in `known` is not bounded again.
///
/// For a search that proves many designs, each a step away from another: three times as fast.
pub fn prove_known(design: &Design, known: &Known) -> Proof {
    let judged = Judged::of(design);
    let over_year = judged.over_year().map(|over_year| over_year.knowing(known));
    let summed = judged.summed(over_year.as_ref(), Groups::LeftOut, |sums| {
        let sums = Sums {
            builder: None,
            ..sums
        };
        judged.checked(&sums)
    });
    conclude(judged.faults, summed)
}

/// What dial `dial` (from 0) promises at one mark, with the worst real box found: how much tab it
/// leaves where it holds, how far its slot lets the pin in at its digit. `None` where nothing is
/// promised, or of another slot that lets its pin in.
pub fn prove_mark(design: &Design, dial: usize, mark: u32) -> Option<Check> {
    let judged = Judged::of(design);
    let of_mark = |sums: Sums<'_>| check::of_mark(&sums, dial, mark);
    let summed = judged.summed(judged.over_year().as_ref(), Groups::LeftOut, of_mark);
    summed.found
}

/// Whether dials are looked for that hold together where none of them does alone.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Groups {
    Sought,
    LeftOut,
}

/// What was found from the sums of a design, with what these rest on.
struct Summed<T> {
    dials: Vec<DialProof>,
    together: HeldTogether,
    settings: Counts,
    found: T,
}

/// Checks and states of a design.
struct Checked {
    checks: Vec<Check>,
    states: LockStates,
}

/// A design at the border of the proof: its faults, and whether sums can be made of it.
struct Judged<'a> {
    design: &'a Design,
    faults: Vec<Fault>,
    sound: Option<Sound<'a>>,
}

impl<'a> Judged<'a> {
    fn of(design: &'a Design) -> Self {
        let faults = faults(design);
        let sound = Sound::of(design, &faults);
        Self {
            design,
            faults,
            sound,
        }
    }

    /// The latch over all boxes, of a design that is sound.
    fn over_year(&self) -> Option<LatchOverYear<'a>> {
        self.sound.as_ref().map(LatchOverYear::of)
    }

    /// The same, only where the plain sums leave something unsure that no fault touches.
    fn over_year_where_open(&self, proofs: &[(DialProof, bool)]) -> Option<LatchOverYear<'a>> {
        let open = |(proof, trusted): &(DialProof, bool)| *trusted && proof.is_unsure();
        if proofs.iter().any(open) {
            self.over_year()
        } else {
            None
        }
    }

    fn proof(self, groups: Groups) -> Proof {
        let over_year = self.over_year();
        let summed = self.summed(over_year.as_ref(), groups, |sums| self.checked(&sums));
        conclude(self.faults, summed)
    }

    /// What `find` finds from everything the checks rest on.
    fn summed<T>(
        &self,
        over_year: Option<&LatchOverYear<'_>>,
        groups: Groups,
        find: impl FnOnce(Sums<'_>) -> T,
    ) -> Summed<T> {
        let design = self.design;
        let plain = Plain::of(design);
        let exact = plain.exact(over_year);
        let dials: Vec<DialProof> = plain
            .proofs(&self.faults)
            .zip(&exact)
            .map(|((proof, trusted), exact)| match exact {
                Some(exact) if trusted => exact.prove(proof),
                _ => proof,
            })
            .collect();
        let least_hold = design.tab.required_hold + design.workmanship.keeper_place;
        let together = match (groups, over_year) {
            (Groups::Sought, Some(over_year)) => {
                HeldTogether::of(over_year, &dials, &exact, least_hold)
            }
            (Groups::Sought, None) | (Groups::LeftOut, _) => HeldTogether::default(),
        };
        let settings = count(&dials).with(&together);
        let sums = Sums {
            design,
            slider: plain.slider,
            drift: &plain.drift,
            dials: plain.bounds.clone(),
            proofs: &dials,
            counts: settings,
            exact: &exact,
            over_year,
            slider_worst: over_year.map_or_else(SliderWorst::default, SliderWorst::of),
            builder: over_year.map(Builder::of),
        };
        let found = find(sums);
        Summed {
            dials,
            together,
            settings,
            found,
        }
    }

    fn checked(&self, sums: &Sums<'_>) -> Checked {
        let numbers_hold = self.sound.is_some();
        Checked {
            checks: if numbers_hold {
                check::all(sums)
            } else {
                Vec::new()
            },
            states: states(sums, numbers_hold),
        }
    }
}

fn conclude(faults: Vec<Fault>, summed: Summed<Checked>) -> Proof {
    let Summed {
        dials,
        together,
        settings,
        found: Checked { checks, states },
    } = summed;
    let passes = |check: &Check| check.verdict == CheckVerdict::Passes;
    let proven = !faults.iter().any(Fault::is_error)
        && settings.opens == 1
        && settings.unsure == 0
        && settings.locks == settings.total - 1
        && checks.iter().all(passes)
        && states.rows.iter().all(|row| row.as_meant);
    Proof {
        faults,
        dials,
        together,
        settings,
        checks,
        states,
        proven,
    }
}

/// The verdicts alone, without checks: what a drag needs.
///
/// The same verdicts as in [`prove`]. The plain sums decide what they can; only a dial with a mark
/// that they leave unsure is looked at exactly, so that margins may be a little less than the proof's.
pub fn verdicts(design: &Design) -> Vec<DialProof> {
    let judged = Judged::of(design);
    let plain = Plain::of(design);
    let proofs: Vec<(DialProof, bool)> = plain.proofs(&judged.faults).collect();
    let over_year = judged.over_year_where_open(&proofs);
    proofs
        .into_iter()
        .enumerate()
        .map(|(index, (proof, trusted))| {
            let look = trusted && proof.is_unsure();
            let over_year = over_year.as_ref().filter(|_| look);
            plain.looked_at(over_year, index, proof)
        })
        .collect()
}

/// Dials with a mark of which nothing is promised, up to `most` of them: a dial's promises do not
/// rest on how many marks the others have.
///
/// Those that the plain sums leave furthest from a promise are looked at first, so that a latch that
/// is not proven is known after one or two.
pub fn unsure_dials(design: &Design, most: usize) -> Vec<usize> {
    let judged = Judged::of(design);
    let plain = Plain::of(design);
    let proofs: Vec<(DialProof, bool)> = plain.proofs(&judged.faults).collect();
    let over_year = judged.over_year_where_open(&proofs);
    let mut open: Vec<(usize, DialProof, bool)> = proofs
        .into_iter()
        .enumerate()
        .map(|(index, (proof, trusted))| (index, proof, trusted))
        .filter(|(_, proof, _)| proof.is_unsure())
        .collect();
    let short = |proof: &DialProof| {
        let unsure = proof
            .marks
            .iter()
            .filter(|mark| mark.verdict == Verdict::Unsure);
        unsure.map(|mark| mark.margin).fold(0.0, f64::min)
    };
    open.sort_by(|(_, one, _), (_, other, _)| short(one).total_cmp(&short(other)));
    open.into_iter()
        .filter_map(|(index, proof, trusted)| {
            let over_year = over_year.as_ref().filter(|_| trusted);
            let proof = plain.looked_at(over_year, index, proof);
            proof.is_unsure().then_some(index)
        })
        .take(most)
        .collect()
}

/// The plain sums of a design.
struct Plain<'a> {
    design: &'a Design,
    drift: Drift,
    slider: SliderBounds,
    bounds: Vec<DialBounds>,
}

impl<'a> Plain<'a> {
    fn of(design: &'a Design) -> Self {
        let drift = Drift::of(design).unwrap_or_else(Drift::none);
        let slider = SliderBounds::of(design, &drift, Terms::All);
        let looked_at = design.dials.iter().take(MAX_DIALS);
        let bounds = looked_at
            .map(|dial| DialBounds::of(design, dial, &slider, &drift, Terms::All))
            .collect();
        Self {
            design,
            drift,
            slider,
            bounds,
        }
    }

    /// What is promised of one dial by the exact worst case, where there is one; else as it was.
    fn looked_at(
        &self,
        over_year: Option<&LatchOverYear<'_>>,
        index: usize,
        proof: DialProof,
    ) -> DialProof {
        match over_year.and_then(|over_year| self.exact_dial(over_year, index)) {
            Some(exact) => exact.prove(proof),
            None => proof,
        }
    }

    /// The exact worst case of each dial, where there is one.
    fn exact<'b>(
        &'b self,
        over_year: Option<&'b LatchOverYear<'b>>,
    ) -> Vec<Option<ExactJudge<'b>>> {
        (0..self.bounds.len())
            .map(|index| self.exact_dial(over_year?, index))
            .collect()
    }

    fn exact_dial<'b>(
        &'b self,
        over_year: &'b LatchOverYear<'b>,
        index: usize,
    ) -> Option<ExactJudge<'b>> {
        let dial = self.design.dials.get(index)?;
        let bounds = *self.bounds.get(index)?;
        ExactJudge::new(over_year, dial, DialJudge::new(self.design, dial, bounds))
    }

    /// Verdicts of each dial by the plain sums, and whether no fault of the design touches them.
    fn proofs(&self, faults: &[Fault]) -> impl Iterator<Item = (DialProof, bool)> {
        let errors = move || faults.iter().filter(|fault| fault.is_error());
        let all_trusted = !errors().any(|fault| touches_all(fault.place));
        let dials = self.design.dials.iter().zip(&self.bounds);
        dials.enumerate().map(move |(index, (dial, bounds))| {
            let trusted = all_trusted && !errors().any(|fault| fault.dial() == Some(index));
            let judge = DialJudge::new(self.design, dial, *bounds);
            let proof = judge_dial(&judge, self.design.digit(index), trusted);
            (proof, trusted)
        })
    }
}

/// A fault in one of these parts leaves nothing to promise about any dial.
fn touches_all(place: Place) -> bool {
    match place {
        Place::Design
        | Place::Plate
        | Place::Slider
        | Place::Tab
        | Place::Keeper
        | Place::Inside
        | Place::Combination
        | Place::Workmanship
        | Place::Season => true,
        Place::Dial(_) | Place::Slot(..) | Place::Card | Place::Body | Place::Bench => false,
    }
}

fn yes_or_perhaps(margin: f64) -> Sure {
    if margin >= 0.0 {
        Sure::Yes
    } else {
        Sure::Perhaps
    }
}

/// The lock-state table of this design.
fn states(sums: &Sums<'_>, numbers_hold: bool) -> LockStates {
    let counts = sums.counts;
    let sure = |yes: bool, answer: Sure| {
        if yes && numbers_hold {
            answer
        } else {
            Sure::Perhaps
        }
    };
    let opening = counts.opens > 0;
    let clears = free_margin(sums) >= 0.0;
    let turns_at_rest =
        (0..sums.dials.len()).all(|dial| check::rest_gap(sums, dial).is_some_and(|gap| gap >= 0.0));
    let captive = (0..sums.dials.len())
        .all(|dial| captive_margin(sums, dial).is_some_and(|margin| margin >= 0.0));
    let covered = yes_or_perhaps(rest_hold_margin(sums)) == Sure::Yes;
    let all_wrong_hold = counts.unsure == 0 && counts.total > counts.opens && covered;
    let goes = |yes: bool, answer: Slides| {
        if yes && numbers_hold {
            answer
        } else {
            Slides::Perhaps
        }
    };
    let row = |state, lid_lifts, slider, dials_turn| {
        let as_meant =
            lid_lifts != Sure::Perhaps && slider != Slides::Perhaps && dials_turn != Sure::Perhaps;
        StateRow {
            state,
            lid_lifts,
            slider,
            dials_turn,
            as_meant,
        }
    };
    let rows = [
        row(
            State::Free,
            sure(clears, Sure::Yes),
            goes(opening, Slides::Forward),
            sure(captive, Sure::No),
        ),
        row(
            State::Shut,
            sure(covered, Sure::No),
            goes(opening, Slides::Whole),
            sure(turns_at_rest, Sure::Yes),
        ),
        row(
            State::Locked,
            sure(all_wrong_hold, Sure::No),
            goes(all_wrong_hold && holding_only(sums), Slides::ToTheStop),
            sure(turns_at_rest, Sure::Yes),
        ),
        row(
            State::OnTheWay,
            // held while shut, out when back: in between the tab decides
            sure(covered && clears, Sure::No),
            goes(opening, Slides::Whole),
            sure(captive, Sure::No),
        ),
    ];
    LockStates { rows }
}

/// Whether every dial has a mark that stops the slider.
fn holding_only(sums: &Sums<'_>) -> bool {
    sums.proofs
        .iter()
        .all(|dial| dial.marks.iter().any(|mark| mark.verdict == Verdict::Holds))
}
