//! What makes a combination a good one, and drawing one by those rules.

use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};

use crate::Design;

/// Why a combination is easy to guess.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Weakness {
    /// Every dial at the same mark.
    AllEqual,
    /// Each mark one on from the one before, or each one back.
    Run,
    /// The last combination with one dial turned.
    OneTurnFromLast,
}

/// How often a draw is tried before it is given up; one in a few is good on any latch that has any.
const TRIES: u32 = 4096;

impl Weakness {
    /// All rules, in the order in which they are looked at.
    pub const ALL: [Self; 3] = [Self::AllEqual, Self::Run, Self::OneTurnFromLast];
}

/// The first rule that `marks` (from 0, a mark a dial) break; `last` is the combination before.
///
/// A latch of one dial has no rule but to differ from the last: any mark of it is as good as another.
pub fn weakness(design: &Design, marks: &[u32], last: &[u32]) -> Option<Weakness> {
    if marks.len() < 2 {
        return (marks == last).then_some(Weakness::OneTurnFromLast);
    }
    let pairs = || marks.iter().zip(marks.iter().skip(1));
    if pairs().all(|(one, next)| one == next) {
        return Some(Weakness::AllEqual);
    }
    // round the dial too: 7 8 1 is a run on dials of eight
    let positions = |index: usize| {
        let dial = design.dials.get(index);
        dial.map_or(1, |dial| dial.positions.max(1))
    };
    let step = |forward: bool| {
        pairs().enumerate().all(|(index, (one, next))| {
            let round = positions(index).max(positions(index + 1));
            let (from, to) = if forward { (one, next) } else { (next, one) };
            from.wrapping_add(1) % round == *to % round
        })
    };
    if marks.len() > 2 && (step(true) || step(false)) {
        return Some(Weakness::Run);
    }
    let turned = marks
        .iter()
        .zip(last)
        .filter(|(now, then)| now != then)
        .count();
    (marks.len() == last.len() && turned < 2).then_some(Weakness::OneTurnFromLast)
}

/// A combination that breaks no rule, drawn from `seed`; every good one is as likely as any other.
/// `None` where a few thousand draws found none, as on two dials of two marks.
pub fn draw(design: &Design, seed: u64) -> Option<Vec<u32>> {
    let last: Vec<u32> = (0..design.dials.len())
        .map(|dial| design.digit(dial))
        .collect();
    let mut random = ChaCha8Rng::seed_from_u64(seed);
    (0..TRIES)
        .map(|_| {
            let dials = design.dials.iter();
            let marks = dials.map(|dial| below(&mut random, dial.positions.clamp(1, 360)));
            marks.collect::<Vec<u32>>()
        })
        .find(|marks| !marks.is_empty() && weakness(design, marks, &last).is_none())
}

/// A number below `end`, all as likely.
fn below(random: &mut ChaCha8Rng, end: u32) -> u32 {
    let whole = u32::MAX - u32::MAX % end;
    loop {
        let number = random.next_u32();
        if number < whole {
            return number % end;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn each_rule_is_named() {
        let design = Design::default();
        let weak = |marks: [u32; 3]| weakness(&design, &marks, &[3, 6, 1]);
        assert_eq!(weak([4, 4, 4]), Some(Weakness::AllEqual));
        assert_eq!(weak([1, 2, 3]), Some(Weakness::Run));
        assert_eq!(weak([1, 0, 7]), Some(Weakness::Run), "round the dial");
        assert_eq!(weak([3, 6, 1]), Some(Weakness::OneTurnFromLast));
        assert_eq!(weak([3, 2, 1]), Some(Weakness::Run));
        assert_eq!(weak([3, 5, 1]), Some(Weakness::OneTurnFromLast));
        assert_eq!(weak([0, 5, 1]), None);
    }

    #[test]
    fn every_good_combination_is_drawn_and_no_other() {
        let mut design = Design::default();
        for dial in &mut design.dials {
            dial.positions = 4;
        }
        design.combination = vec![0, 2, 1];
        let all = (0..64_u32).map(|n| vec![n / 16, n / 4 % 4, n % 4]);
        let good: BTreeSet<Vec<u32>> = all
            .filter(|marks| weakness(&design, marks, &design.combination).is_none())
            .collect();
        let drawn: BTreeSet<Vec<u32>> = (0..4000).filter_map(|seed| draw(&design, seed)).collect();
        assert_eq!(drawn, good);
        assert!(good.len() > 30, "{}", good.len());
    }

    #[test]
    fn where_no_good_one_is_none_is_drawn() {
        let mut design = Design::default();
        design.dials.truncate(2);
        for dial in &mut design.dials {
            dial.positions = 2;
        }
        design.combination = vec![0, 1];
        // 1 0 alone differs in both
        assert_eq!(draw(&design, 1), Some(vec![1, 0]));
        design.dials.truncate(0);
        design.combination.clear();
        assert_eq!(draw(&design, 1), None);
    }
}
