//! How far this maker's workmanship goes: the most positions a dial can have with it, and which single
//! thing, done twice as exactly, would help most.
//!
//! Made with the plain sums, which promise no more than the proof: where the proof is tighter, a few
//! more positions may be had than are named here.

use latchwright_geometry::{EPSILON, trig};

use super::advice::{Estimate, Improvement, Warning};
use super::{
    About, Advice, CheckKind, Contributor, Draft, Sums, captive_margin, free_margin,
    rest_hold_margin,
};
use crate::dial_judge::DialJudge;
use crate::results::Check;
use crate::season::Drift;
use crate::verdict::{DialProof, Verdict};
use latchwright_model::key;
use latchwright_model::validate::MAX_DIALS;
use latchwright_model::validate::MAX_POSITIONS;
use latchwright_model::{Design, Dial, Disc, Slot};

/// A gain of the least margin below this is not worth anybody's care, mm.
const WORTH_IT: f64 = 0.005;

/// The dial with the fewest positions to spare; informs, never fails.
pub(super) fn check(sums: &Sums<'_>) -> Option<Check> {
    let spare = |index: usize| {
        let now = sums.design.dials.get(index)?.positions;
        let most = most_positions(sums, index).unwrap_or(0);
        Some((index, now, most))
    };
    let (index, now, most) = (0..sums.proofs.len())
        .filter_map(spare)
        .min_by_key(|(_, now, most)| i64::from(*most) - i64::from(*now))?;
    let draft = Draft {
        kind: CheckKind::Workmanship,
        about: About::Dial(index),
        value: f64::from(most.saturating_sub(now)),
        limit: 0.0,
        decided_by: vec![
            (Contributor::MostPositions, f64::from(most)),
            (Contributor::PositionsNow, f64::from(now)),
        ],
    };
    Some(draft.advised(advice(sums.design, sums.drift)))
}

/// The most positions this dial can have with every mark decided: it passes at its digit and holds at
/// every other mark.
///
/// A multiple of the key's sides, at most 360, whose key still bites. Its slots keep their marks; a
/// mark is decided when plain rim surely meets the pin one step beside every slot. `None` where no
/// number of positions is.
pub fn most_positions(sums: &Sums<'_>, index: usize) -> Option<u32> {
    let (_, dial, bounds) = sums.each().nth(index)?;
    let proof = sums.proofs.get(index)?;
    if !slots_are_decided(dial, proof) {
        return None;
    }
    let single = one_slot_each(dial);
    let judges: Vec<DialJudge<'_>> = single
        .iter()
        .map(|dial| DialJudge::new(sums.design, dial, *bounds))
        .collect();
    // far from its slot the rim must hold, whatever the number of marks
    let holds = |judge: &DialJudge<'_>| judge.judge(180.0).verdict == Verdict::Holds;
    if judges.is_empty() || !judges.iter().all(holds) {
        return None;
    }
    let sides = dial.key.sides.max(1);
    let decided = |positions: u32| {
        let step = 360.0 / f64::from(positions);
        let bites = key::bite(&Dial {
            positions,
            ..bare(dial)
        }) >= 0.0;
        let clear = |judge: &DialJudge<'_>| judge.angle_to_mouth(step) >= EPSILON;
        bites && judges.iter().all(clear)
    };
    // more positions only ever make the step smaller and the bite less: halve
    let (mut most, mut too_many) = (0, MAX_POSITIONS / sides + 1);
    while too_many - most > 1 {
        let middle = u32::midpoint(most, too_many);
        if decided(middle * sides) {
            most = middle;
        } else {
            too_many = middle;
        }
    }
    let as_proven = if all_decided(proof) {
        dial.positions
    } else {
        0
    };
    Some((most * sides).max(as_proven)).filter(|most| *most > 0)
}

/// The mark that faces the true slot passes, those that face another slot hold, and none else passes.
fn slots_are_decided(dial: &Dial, proof: &DialProof) -> bool {
    let marks = i64::try_from(proof.marks.len()).unwrap_or(0).max(1);
    let facing = |slot: i64| {
        let mark = (i64::from(proof.digit) - slot % marks).rem_euclid(marks);
        usize::try_from(mark)
            .ok()
            .and_then(|mark| proof.marks.get(mark))
    };
    let passing = proof
        .marks
        .iter()
        .filter(|mark| mark.verdict == Verdict::Passes);
    let own = facing(0).is_some_and(|mark| mark.verdict == Verdict::Passes);
    let mut others = dial.disc.slots.iter().filter(|slot| slot.mark % marks != 0);
    own && passing.count() == 1
        && others.all(|slot| facing(slot.mark).is_some_and(|mark| mark.verdict == Verdict::Holds))
}

fn all_decided(proof: &DialProof) -> bool {
    (0_u32..).zip(&proof.marks).all(|(mark, found)| {
        let meant = if mark == proof.digit {
            Verdict::Passes
        } else {
            Verdict::Holds
        };
        found.verdict == meant
    })
}

/// The dial without its slots and labels: what is cheap to copy.
fn bare(dial: &Dial) -> Dial {
    Dial {
        centre: dial.centre,
        positions: dial.positions,
        disc: Disc {
            slots: Vec::new(),
            ..dial.disc
        },
        pin: dial.pin.clone(),
        key: dial.key.clone(),
        bore: dial.bore.clone(),
        knob: dial.knob.clone(),
        ..Dial::default()
    }
}

/// For each slot a dial that has only this one, facing its pin at the digit.
fn one_slot_each(dial: &Dial) -> Vec<Dial> {
    let alone = |slot: &Slot| {
        let mut single = bare(dial);
        single.disc.slots = vec![Slot {
            mark: 0,
            ..slot.clone()
        }];
        single
    };
    dial.disc.slots.iter().map(alone).collect()
}

impl Improvement {
    /// Everything that a maker can do more exactly.
    const ALL: [Self; 9] = [
        Self::PinPlaces,
        Self::BorePlaces,
        Self::KeeperPlace,
        Self::Prints,
        Self::Coats,
        Self::Reading,
        Self::GuidePlay,
        Self::ShaftPlay,
        Self::KeyClearance,
    ];

    /// The largest ± or play of its kind in the design, mm or degrees.
    fn now(self, design: &Design) -> f64 {
        let work = &design.workmanship;
        match self {
            Self::PinPlaces => work.pin_place,
            Self::BorePlaces => work.bore_place,
            Self::KeeperPlace => work.keeper_place,
            Self::Prints => work.print,
            Self::Coats => work.film_spread,
            Self::Reading => work.reading,
            Self::GuidePlay => design.slider.guide_play,
            Self::ShaftPlay => most(design, |dial| dial.bore.shaft_play),
            Self::KeyClearance => most(design, |dial| dial.key.clearance),
        }
    }

    /// Done twice as exactly.
    fn halve(self, design: &mut Design) {
        let work = &mut design.workmanship;
        match self {
            Self::PinPlaces => work.pin_place /= 2.0,
            Self::BorePlaces => work.bore_place /= 2.0,
            Self::KeeperPlace => work.keeper_place /= 2.0,
            Self::Prints => work.print /= 2.0,
            Self::Coats => work.film_spread /= 2.0,
            Self::Reading => work.reading /= 2.0,
            Self::GuidePlay => design.slider.guide_play /= 2.0,
            Self::ShaftPlay => {
                for dial in &mut design.dials {
                    dial.bore.shaft_play /= 2.0;
                }
            }
            Self::KeyClearance => {
                for dial in &mut design.dials {
                    dial.key.clearance /= 2.0;
                }
            }
        }
    }
}

fn most(design: &Design, of: fn(&Dial) -> f64) -> f64 {
    design.dials.iter().map(of).fold(0.0, f64::max)
}

/// Which single improvement would add most to the least margin.
fn advice(design: &Design, drift: &Drift) -> Advice {
    let singles = design
        .dials
        .iter()
        .take(MAX_DIALS)
        .map(one_slot_each)
        .collect::<Vec<_>>();
    let before = least_margin(design, drift, &singles);
    let gain = |what: Improvement| {
        let mut better = design.clone();
        what.halve(&mut better);
        (what, least_margin(&better, drift, &singles) - before)
    };
    let best = Improvement::ALL
        .map(gain)
        .into_iter()
        .max_by(|one, other| one.1.total_cmp(&other.1))
        .filter(|(_, gain)| *gain >= WORTH_IT);
    match best {
        Some((what, gain)) => Advice::Change(Estimate::HalveOneThing {
            what,
            now: what.now(design),
            gain,
        }),
        None => Advice::Warning(Warning::ChangeASize),
    }
}

/// The least of what must be clear while the latch moves, mm, by the plain sums: pins at rest, into
/// their slots, caught while open, stopped by the rim with the tab held, one mark beside a mouth
/// (along the rim); tab over the keeper. The play left in the guide counts only where it is short: a
/// closer guide is meant to leave less.
fn least_margin(design: &Design, drift: &Drift, singles: &[Vec<Dial>]) -> f64 {
    let sums = Sums::plain(design, drift, MAX_DIALS);
    let slider = sums.slider;
    let whole = [free_margin(&sums), rest_hold_margin(&sums)];
    let guide = Some(slider.least_play).filter(|play| *play < 0.0);
    let dials = sums
        .each()
        .zip(singles)
        .flat_map(|((index, dial, bounds), singles)| {
            let judge = DialJudge::new(design, dial, *bounds);
            let stopped = bounds
                .creep(bounds.rim.lo + bounds.pin.lo)
                .map(|creep| bounds.hold_margin(design, creep));
            let beside = singles.iter().map(|single| {
                let judge = DialJudge::new(design, single, *bounds);
                trig::radians(judge.angle_to_mouth(dial.step_deg())) * dial.disc.radius
            });
            [
                Some(bounds.rest_gap()),
                judge.entry_at_digit().map(|entry| entry.margin()),
                captive_margin(&sums, index),
                stopped,
            ]
            .into_iter()
            .flatten()
            .chain(beside)
            .collect::<Vec<f64>>()
        });
    let all = whole.into_iter().chain(guide).chain(dials);
    all.fold(f64::INFINITY, f64::min)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::thin_latch::thin;
    use crate::{CheckVerdict, prove};
    use latchwright_model::Season;

    fn found(design: &Design) -> Check {
        let checks = prove(design).checks;
        checks
            .into_iter()
            .find(|check| check.kind == CheckKind::Workmanship)
            .unwrap()
    }

    fn most_of(check: &Check) -> u32 {
        let most = check
            .decided_by
            .iter()
            .find(|(name, _)| *name == Contributor::MostPositions);
        let most = most.unwrap().1;
        (0..=360).find(|number| f64::from(*number) == most).unwrap()
    }

    /// The same design with as many positions on every dial.
    fn with(design: &Design, positions: u32) -> Design {
        let mut design = design.clone();
        for (dial, digit) in design.dials.iter_mut().zip(&mut design.combination) {
            dial.positions = positions;
            *digit %= positions;
        }
        design
    }

    fn decided(design: &Design) -> bool {
        prove(design).dials.iter().all(all_decided)
    }

    /// The mechanism's worked example: 12 marks keep 3.995° to the mouth, 16 are short by 3.505°.
    #[test]
    fn the_worked_example_can_have_twelve_positions_and_not_sixteen() {
        let mut design = thin();
        design.season = Season::still(design.season.built);
        let check = found(&design);
        assert_eq!(most_of(&check), 12);
        assert_eq!((check.value, check.verdict), (4.0, CheckVerdict::Passes));
        assert!(decided(&with(&design, 12)));
    }

    #[test]
    fn the_most_positions_are_decided_and_plain_sums_would_not_promise_more() {
        let mut design = thin();
        design.dials.truncate(1);
        design.combination = vec![2];
        let mut numbers = Vec::new();
        for halvings in [0, 1, 3, 60] {
            let mut finer = design.clone();
            for improvement in Improvement::ALL.iter().cycle().take(9 * halvings) {
                improvement.halve(&mut finer);
            }
            let most = most_of(&found(&finer));
            assert!(decided(&with(&finer, most)), "{most}");
            assert_eq!(most % 4, 0);
            numbers.push(most);
        }
        assert!(
            numbers.is_sorted() && numbers[0] < numbers[3],
            "{numbers:?}"
        );
    }

    #[test]
    fn a_dial_with_too_many_positions_is_told_how_many_it_can_have() {
        let design = with(&thin(), 24);
        let check = found(&design);
        assert_eq!((check.value, check.verdict), (0.0, CheckVerdict::Passes));
        assert!(decided(&with(&design, most_of(&check))));
    }

    #[test]
    fn a_blind_slot_counts_and_one_that_lets_in_leaves_no_number() {
        let mut design = thin();
        // room for a pin that goes into a blind slot and leaves the tab held
        (design.slider.travel, design.tab.engagement) = (15.0, 13.0);
        for dial in &mut design.dials {
            dial.disc.slots[0].depth = 17.0;
        }
        let plain = most_of(&found(&design));
        let blind = Slot {
            mark: 4,
            width: 10.0,
            depth: 6.0,
            lead_in: 0.0,
        };
        design.dials[0].disc.slots.push(blind);
        let check = found(&design);
        assert_eq!(
            most_of(&check),
            plain,
            "its mouth is no wider than the true one's"
        );
        design.dials[0].disc.slots[1].depth = 17.0;
        let twin = found(&design);
        assert_eq!((most_of(&twin), twin.dial()), (0, Some(0)));
    }

    /// The usual box as a maker would build it who is off by next to nothing, in air that stays as it is.
    fn exact() -> Design {
        let mut design = thin();
        design.season = Season::still(design.season.built);
        for improvement in Improvement::ALL.iter().cycle().take(9 * 10) {
            improvement.halve(&mut design);
        }
        design
    }

    fn named(design: &Design) -> Option<(Improvement, f64)> {
        match found(design).advice {
            Advice::Change(Estimate::HalveOneThing { what, now, .. }) => Some((what, now)),
            _ => None,
        }
    }

    /// Does one thing this roughly, ± mm or degrees.
    fn plant(design: &mut Design, what: Improvement, by: f64) {
        let work = &mut design.workmanship;
        match what {
            Improvement::PinPlaces => work.pin_place = by,
            Improvement::BorePlaces => work.bore_place = by,
            Improvement::KeeperPlace => work.keeper_place = by,
            Improvement::Prints => work.print = by,
            Improvement::Coats => work.film_spread = by,
            Improvement::Reading => work.reading = by,
            Improvement::GuidePlay => design.slider.guide_play = by,
            Improvement::ShaftPlay => {
                for dial in &mut design.dials {
                    dial.bore.shaft_play = by;
                }
            }
            Improvement::KeyClearance => {
                for dial in &mut design.dials {
                    dial.key.clearance = by;
                }
            }
        }
    }

    #[test]
    fn what_alone_is_done_roughly_is_what_is_named() {
        assert_eq!(named(&exact()), None);
        // each so roughly that the room it eats is the least there is
        for (what, by) in [
            (Improvement::PinPlaces, 0.8),
            (Improvement::BorePlaces, 0.8),
            (Improvement::KeeperPlace, 3.0),
            (Improvement::Prints, 0.8),
            (Improvement::Coats, 0.4),
            (Improvement::Reading, 8.0),
            (Improvement::GuidePlay, 0.8),
            (Improvement::ShaftPlay, 0.8),
            (Improvement::KeyClearance, 0.6),
        ] {
            let mut design = exact();
            plant(&mut design, what, by);
            assert_eq!(named(&design), Some((what, by)));
        }
    }

    #[test]
    fn of_two_things_that_eat_the_same_room_the_larger_is_named() {
        for (pin, bore) in [(0.8, 0.2), (0.2, 0.8)] {
            let mut design = exact();
            plant(&mut design, Improvement::PinPlaces, pin);
            plant(&mut design, Improvement::BorePlaces, bore);
            let larger = if pin > bore {
                Improvement::PinPlaces
            } else {
                Improvement::BorePlaces
            };
            assert_eq!(named(&design), Some((larger, 0.8)));
        }
    }

    #[test]
    fn where_no_workmanship_helps_a_size_must_change() {
        let mut design = thin();
        // the tab never leaves the keeper, by centimetres: no halving makes up for that
        design.slider.travel = 8.0;
        design.tab.engagement = 40.0;
        design.workmanship.keeper_place = 0.0;
        design.slider.guide_play = 0.0;
        assert_eq!(found(&design).advice, Advice::Warning(Warning::ChangeASize));
    }
}
