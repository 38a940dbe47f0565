//! How far a pointer may stand off its mark, and how many settings that leaves to be told apart.

use super::CheckKind;
use itertools::Itertools;
use latchwright_geometry::trig;

use super::{Sums, largest_first};
use crate::count::count;
use crate::results::Check;
use crate::verdict::{CheckVerdict, DialProof, Verdict};
use latchwright_model::Dial;
use latchwright_model::Unit;

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
        ("backlash", bounds.backlash_deg),
        ("print", seen_from_the_middle(1.5 * work.print)),
        ("film_spread", seen_from_the_middle(2.0 * work.film_spread)),
    ];
    let aside = bounds.aside_parts.iter();
    parts.extend(aside.map(|(name, mm)| (*name, seen_from_the_middle(*mm))));
    let (value, limit) = (proof.sure_window_deg, work.reading);
    let margin = value - limit;
    let remedy = if margin >= 0.0 {
        format!("nothing to do: {margin:.1}° to spare")
    } else if value <= 0.0 {
        format!(
            "first see that the slot of dial {} lets its pin in at all",
            index + 1
        )
    } else {
        let width = dial.disc.slots.iter().find(|slot| slot.mark == 0)?.width;
        // the mouth comes towards the pin at its outer corner, the pin's radius further out
        let lever = rim + bounds.pin.hi;
        let wider = 2.0 * lever * trig::sin(trig::radians((-margin).min(90.0)));
        format!(
            "widen the slot of dial {} from {width:.2} to at least {:.2} mm, or read its pointer to \
             {value:.1}°",
            index + 1,
            width + wider
        )
    };
    Some(Check {
        kind: CheckKind::Window,
        dial: Some(index),
        title: format!(
            "Dial {} lets its pin in while its pointer is off the mark",
            index + 1
        ),
        value,
        limit,
        margin,
        unit: Unit::Degree,
        verdict: if margin >= 0.0 {
            CheckVerdict::Passes
        } else {
            CheckVerdict::Fails
        },
        decided_by: largest_first(parts),
        remedy,
        worst: None,
    })
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
    let neighbours = neighbours(sums.proofs, &sums.design.dials);
    let value = apart as f64;
    Some(Check {
        kind: CheckKind::ToldApart,
        dial: None,
        title: if apart == total {
            format!("All {total} settings can be told apart")
        } else {
            format!("Of {total} settings {apart} can really be told apart")
        },
        value,
        limit: 0.0,
        margin: value,
        unit: Unit::Count,
        verdict: CheckVerdict::Passes,
        decided_by: vec![("settings on paper", total as f64), ("told apart", value)],
        remedy: if neighbours.is_empty() {
            "nothing to do: no neighbour of a digit lets a pin in".to_owned()
        } else {
            format!("{neighbours}: narrow the slot or take fewer positions")
        },
        worst: None,
    })
}

/// The neighbours that may let a pin in, dial by dial, in labels.
fn neighbours(proofs: &[DialProof], dials: &[Dial]) -> String {
    let sentence = |(index, (proof, dial)): (usize, (&DialProof, &Dial))| {
        let marks = proof.marks.len();
        let (before, after) = beside(proof);
        let first = proof.digit as usize % marks.max(1) + marks - before;
        let label = |mark: usize| dial.label(u32::try_from(mark % marks.max(1)).unwrap_or(0));
        let labels: Vec<String> = (first..=first + before + after)
            .filter(|mark| *mark != first + before)
            .map(label)
            .collect();
        let own = label(first + before);
        Some(match labels.as_slice() {
            [] => return None,
            [one] => format!(
                "on dial {}, mark {one} may open as well as {own}",
                index + 1
            ),
            all if all.len() + 1 == marks => {
                format!(
                    "on dial {}, every mark may open as well as {own}",
                    index + 1
                )
            }
            more => format!(
                "on dial {}, marks {} may open as well as {own}",
                index + 1,
                more.join(", ")
            ),
        })
    };
    let pairs = proofs.iter().zip(dials).enumerate();
    pairs.filter_map(sentence).join("; ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::verdict::{MarkProof, Reach, StopsAt};
    use crate::{prove, verdicts};
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
    fn neighbours_are_named_by_what_stands_on_the_dial() {
        let design = Design::default();
        let dials = [
            dial(3, "hhhphhhh"),
            dial(0, "phhhhhhp"),
            dial(4, "hhhupuhh"),
        ];
        assert_eq!(
            neighbours(&dials, &design.dials),
            "on dial 2, mark 8 may open as well as 1; on dial 3, marks 4, 6 may open as well as 5"
        );
        let all = neighbours(&[dial(1, "upuu")], &design.dials);
        assert_eq!(all, "on dial 1, every mark may open as well as 2");
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
                .find(|check| check.kind == CheckKind::Window && check.dial == Some(1))
                .unwrap()
        };
        let fine = find(&design);
        assert_eq!((fine.verdict, fine.limit), (CheckVerdict::Passes, 3.0));
        design.workmanship.reading = fine.value + 1.0;
        let coarse = find(&design);
        assert_eq!(coarse.verdict, CheckVerdict::Fails);
        assert!((coarse.margin + 1.0).abs() < 1e-6, "{}", coarse.margin);
        let to = coarse.remedy.split("to at least ").nth(1).unwrap();
        let width: f64 = to.split(' ').next().unwrap().parse().unwrap();
        design.dials[1].disc.slots[0].width = width + 0.005;
        assert_eq!(
            find(&design).verdict,
            CheckVerdict::Passes,
            "{}",
            coarse.remedy
        );
    }
}
