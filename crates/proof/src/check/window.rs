//! How far a pointer may stand off its mark, and how many settings that leaves to be told apart.

use latchwright_geometry::trig;

use super::advice::{Estimate, FromTo, Nothing, OtherMarks, Warning};
use super::{About, Advice, CheckKind, Contributor, Draft, Sums};
use crate::count::count;
use crate::results::Check;
use crate::verdict::{DialProof, Verdict};

pub(super) fn checks(sums: &Sums<'_>) -> Vec<Check> {
    let mut checks: Vec<Check> = (0..sums.proofs.len())
        .filter_map(|dial| window(sums, dial))
        .collect();
    checks.extend(apart(sums));
    checks
}

/// The pin gets in while the pointer is off its mark by all that the maker states; nothing is asked of
/// a dial that never holds.
fn window(sums: &Sums<'_>, index: usize) -> Option<Check> {
    let (_, dial, bounds) = sums.each().nth(index)?;
    let proof = sums.proofs.get(index)?;
    proof
        .marks
        .iter()
        .find(|mark| mark.verdict == Verdict::Holds)?;
    let work = &sums.design.workmanship;
    let rim = bounds.rim.hi;
    let seen_from_the_middle = |mm: f64| trig::degrees(trig::asin((mm / rim).min(1.0)));
    let mut parts = vec![
        (Contributor::Backlash, bounds.backlash_deg),
        (Contributor::Print, seen_from_the_middle(1.5 * work.print)),
        (
            Contributor::FilmSpread,
            seen_from_the_middle(2.0 * work.film_spread),
        ),
    ];
    let aside = super::contributor::aside(&bounds.aside_parts).into_iter();
    parts.extend(aside.map(|(name, mm)| (name, seen_from_the_middle(mm))));
    let value = proof.sure_window_deg;
    let width = dial.disc.slots.iter().find(|slot| slot.mark == 0)?.width;
    let draft = Draft {
        kind: CheckKind::Window,
        about: About::Dial(index),
        value,
        limit: work.reading,
        decided_by: parts,
    };
    // what is short is an angle, and is told as it is
    let margin = value - work.reading;
    Some(draft.judged(|_| {
        if value <= 0.0 {
            return Advice::Warning(Warning::FirstLetIn);
        }
        // the mouth comes towards the pin at its outer corner, the pin's radius further out
        let lever = rim + bounds.pin.hi;
        let wider = 2.0 * lever * trig::sin(trig::radians((-margin).min(90.0)));
        Advice::Change(Estimate::WidenSlotOrRead {
            slot: FromTo {
                from: width,
                to: width + wider,
            },
            reading: value,
        })
    }))
}

/// Marks beside the digit, one after the other, that may let the pin in as well: how many before it
/// and how many after it, clockwise.
fn beside(proof: &DialProof) -> (usize, usize) {
    let marks = proof.marks.len();
    let digit = proof.digit as usize % marks.max(1);
    let may_let_in = |mark: usize| {
        let found = proof.marks.get(mark % marks.max(1));
        found.is_some_and(|mark| mark.verdict != Verdict::Holds)
    };
    let others = marks.saturating_sub(1);
    let after = (1..=others)
        .take_while(|step| may_let_in(digit + step))
        .count();
    let before = (1..=others - after)
        .take_while(|step| may_let_in(digit + marks - step))
        .count();
    (before, after)
}

/// Whether the mark just before or just after the digit surely opens as well: its mouth is too wide.
pub(super) fn neighbour_opens(proof: &DialProof) -> bool {
    let marks = proof.marks.len().max(1);
    let digit = proof.digit as usize % marks;
    [digit + 1, digit + marks - 1].iter().any(|mark| {
        let found = proof.marks.get(mark % marks);
        mark % marks != digit && found.is_some_and(|mark| mark.verdict == Verdict::Passes)
    })
}

/// How many settings can really be told apart: of two marks so near that one may open for the other,
/// one is enough.
///
/// Π ⌈positions / (1 + marks beside the digit that may let the pin in)⌉; a person who tries every such
/// setting has tried them all. 0 without dials.
///
/// # Source
/// The idea is common among those who collect locks; calculated: three dials of 40 marks of which one
/// on each side opens too are 14³ = 2744.
pub fn told_apart(dials: &[DialProof]) -> u128 {
    if dials.is_empty() {
        return 0;
    }
    dials.iter().fold(1_u128, |product, dial| {
        let (before, after) = beside(dial);
        let apart = dial.marks.len().div_ceil(1 + before + after);
        product.saturating_mul(apart as u128)
    })
}

/// Settings that can be told apart, beside the number on the paper; informs, never fails.
fn apart(sums: &Sums<'_>) -> Option<Check> {
    if sums.proofs.is_empty() {
        return None;
    }
    let (total, apart) = (count(sums.proofs).total, told_apart(sums.proofs));
    let neighbours = neighbours(sums.proofs);
    let draft = Draft {
        kind: CheckKind::ToldApart,
        about: About::Latch,
        value: apart as f64,
        limit: 0.0,
        decided_by: vec![
            (Contributor::SettingsOnPaper, total as f64),
            (Contributor::ToldApart, apart as f64),
        ],
    };
    Some(draft.advised(if neighbours.is_empty() {
        Advice::Nothing(Nothing::NoNeighbourOpens)
    } else {
        Advice::Change(Estimate::NarrowSlotForNeighbours(neighbours))
    }))
}

/// The neighbours that may let a pin in, dial by dial.
fn neighbours(proofs: &[DialProof]) -> Vec<OtherMarks> {
    let others = |(dial, proof): (usize, &DialProof)| {
        let marks = proof.marks.len();
        let (before, after) = beside(proof);
        let own = proof.digit as usize % marks.max(1) + marks;
        let mark = |place: usize| u32::try_from(place % marks.max(1)).ok();
        let found: Vec<u32> = (own - before..=own + after)
            .filter(|place| *place != own)
            .filter_map(mark)
            .collect();
        (!found.is_empty()).then_some(OtherMarks {
            dial,
            own: mark(own)?,
            every: found.len() > 1 && found.len() + 1 == marks,
            marks: found,
        })
    };
    proofs.iter().enumerate().filter_map(others).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::CheckVerdict;
    use crate::verdict::{MarkProof, Reach, StopsAt};
    use crate::{prove, verdicts};
    use itertools::Itertools;
    use latchwright_model::{Design, Season};

    /// A dial whose marks do what the letters say: passes, unsure, holds.
    fn dial(digit: u32, marks: &str) -> DialProof {
        let mark = |letter| MarkProof {
            verdict: match letter {
                'p' => Verdict::Passes,
                'u' => Verdict::Unsure,
                _ => Verdict::Holds,
            },
            reach: Reach {
                travel: 0.0,
                stops_at: StopsAt::Rim,
                contact: None,
            },
            stop: None,
            creep: None,
            hold_margin: None,
            margin: 0.0,
        };
        DialProof {
            digit,
            marks: marks.chars().map(mark).collect(),
            sure_window_deg: 0.0,
            possible_window_deg: 0.0,
        }
    }

    #[test]
    fn one_neighbour_on_each_side_of_three_dials_of_forty_leaves_2744_settings() {
        let mut marks = "h".repeat(40);
        marks.replace_range(6..9, "ppp");
        let dials = vec![dial(7, &marks); 3];
        assert_eq!(count(&dials).opens, 27);
        assert_eq!(told_apart(&dials), 2744);
    }

    #[test]
    fn neighbours_are_counted_round_the_dial_and_only_while_they_touch() {
        for (digit, marks, found) in [
            (0, "phhhh", (0, 0)),
            (0, "puhhp", (1, 1)),
            (4, "pphhp", (0, 2)),
            (2, "hupph", (1, 1)),
            (2, "uhpuh", (0, 1)),
            (0, "pppp", (0, 3)),
            (0, "p", (0, 0)),
            (9, "", (0, 0)),
            (u32::MAX, "uhhhh", (0, 0)),
        ] {
            assert_eq!(beside(&dial(digit, marks)), found, "{digit} {marks}");
        }
        assert_eq!(told_apart(&[]), 0);
        assert_eq!(
            told_apart(&[dial(0, "pppp")]),
            1,
            "a dial that does nothing"
        );
        // a second slot is no neighbour
        assert_eq!(told_apart(&[dial(0, "phhhhphh")]), 8);
    }

    #[test]
    fn neighbours_are_told_dial_by_dial_and_clockwise() {
        let dials = [
            dial(3, "hhhphhhh"),
            dial(0, "phhhhhhp"),
            dial(4, "hhhupuhh"),
        ];
        let others = |dial, own, marks: &[u32], every| OtherMarks {
            dial,
            own,
            marks: marks.to_vec(),
            every,
        };
        assert_eq!(
            neighbours(&dials),
            [others(1, 0, &[7], false), others(2, 4, &[3, 5], false)]
        );
        let all = neighbours(&[dial(1, "upuu")]);
        assert_eq!(all, [others(0, 1, &[2, 3, 0], true)]);
    }

    #[test]
    fn a_neighbour_opens_only_where_it_surely_passes() {
        assert!(neighbour_opens(&dial(0, "phhp")));
        assert!(neighbour_opens(&dial(1, "hpph")));
        for (digit, marks) in [(4, "hhhupuhh"), (0, "phph"), (0, "p"), (u32::MAX, "")] {
            assert!(!neighbour_opens(&dial(digit, marks)), "{digit} {marks}");
        }
    }

    /// Slot 8, pin 6, rim 15, nothing off: the pin has 1 mm to either side, asin(1/15) = 3.82° of turn.
    #[test]
    fn a_slot_with_a_millimetre_to_spare_opens_one_neighbour_at_3_6_degrees_and_none_at_9() {
        let mut design = Design::default();
        design.dials.truncate(1);
        design.combination = vec![0];
        design.season = Season::still(design.season.built);
        let work = &mut design.workmanship;
        for error in [
            &mut work.pin_place,
            &mut work.bore_place,
            &mut work.keeper_place,
            &mut work.print,
            &mut work.film_spread,
            &mut work.reading,
        ] {
            *error = 0.0;
        }
        design.slider.guide_play = 0.0;
        let only = &mut design.dials[0];
        (only.disc.radius, only.pin.diameter) = (15.0, 6.0);
        (only.disc.slots[0].width, only.disc.slots[0].lead_in) = (8.0, 0.0);
        (only.key.clearance, only.bore.shaft_play) = (0.0, 0.0);
        let mut passing = |positions: u32| -> Vec<usize> {
            design.dials[0].positions = positions;
            let found = verdicts(&design);
            let marks = found[0].marks.iter();
            marks
                .positions(|mark| mark.verdict == Verdict::Passes)
                .collect()
        };
        assert_eq!(passing(10), [0]);
        assert_eq!(passing(40), [0]);
        assert_eq!(passing(100), [0, 1, 99]);
    }

    #[test]
    fn a_pointer_read_more_coarsely_than_the_slot_allows_fails_with_a_width_that_is_enough() {
        let mut design = Design::default();
        let find = |design: &Design| {
            let checks = prove(design).checks;
            checks
                .into_iter()
                .find(|check| check.kind == CheckKind::Window && check.dial() == Some(1))
                .unwrap()
        };
        let fine = find(&design);
        assert_eq!((fine.verdict, fine.limit), (CheckVerdict::Passes, 3.0));
        design.workmanship.reading = fine.value + 1.0;
        let coarse = find(&design);
        assert_eq!(coarse.verdict, CheckVerdict::Fails);
        assert!((coarse.margin + 1.0).abs() < 1e-6, "{}", coarse.margin);
        let Advice::Change(Estimate::WidenSlotOrRead { slot, reading }) = coarse.advice else {
            panic!("{coarse:?}");
        };
        assert_eq!(reading, coarse.value);
        design.dials[1].disc.slots[0].width = slot.to + 0.005;
        assert_eq!(find(&design).verdict, CheckVerdict::Passes, "{slot:?}");
    }
}
