//! Keys, and the table of settings: seats on the marks, no idle dial, one opening, nothing unsure.

use super::DialSize::{Apothem, Clearance, DiscRadius, Gap};
use super::LatchSize::{Engagement, Reading, RequiredHold};
use super::SlotSize::{Depth, LeadIn, Width};
use super::{Ways, latch, moves, on_all, resize};
use crate::remedy::way::Way;
use latchwright_model::change::{Size, Step};
use latchwright_proof::verdict::Verdict;

impl Ways<'_> {
    /// Posts whose seats fall on the marks, on those of these dials where they do not: a disc between
    /// two marks meets its pin nowhere as it should.
    pub(super) fn seated(&self, dials: &[usize]) -> Option<Way> {
        let unseated = dials.iter().filter(|index| {
            self.dial(**index)
                .is_some_and(|dial| !dial.positions.is_multiple_of(dial.key.sides.max(1)))
        });
        let steps: Vec<Step> = unseated
            .filter_map(|dial| self.posts(*dial).next())
            .collect();
        (!steps.is_empty()).then_some(Way::Once(steps))
    }

    /// Posts whose sides divide the number of positions, the usual ones first.
    fn posts(&self, index: usize) -> impl Iterator<Item = Step> {
        let dial = self.dial(index);
        let sides = [4_u32, 3, 6, 5, 8, 7, 9, 10, 12].into_iter();
        dial.into_iter().flat_map(move |dial| {
            let fitting = sides.clone();
            let fitting = fitting.filter(|sides| dial.positions.is_multiple_of(*sides));
            fitting.map(move |to| {
                let size = Size::KeySides(index);
                resize(size, f64::from(dial.key.sides), f64::from(to))
            })
        })
    }

    pub(super) fn key_seats(&self) -> Vec<Way> {
        let Some(dial) = self.dial(self.dial) else {
            return Vec::new();
        };
        let (sides, positions) = (dial.key.sides.max(1), dial.positions);
        let next = positions.saturating_add(sides - positions % sides);
        let size = Size::Positions(self.dial);
        let more = resize(size, f64::from(positions), f64::from(next));
        let posts = self.posts(self.dial).chain([more]);
        let mut ways: Vec<Way> = posts.map(|step| Way::Once(vec![step])).collect();
        ways.push(Way::Fewer(vec![self.dial]));
        ways
    }

    pub(super) fn key_bite(&self) -> Vec<Way> {
        let mut ways = moves([
            self.on(Clearance, -1),
            self.on(Apothem, 1),
            self.on(Apothem, 1) + self.on(DiscRadius, 1),
        ]);
        ways.extend(self.key_seats());
        ways
    }

    pub(super) fn idle(&self) -> Vec<Way> {
        let dials = [self.dial];
        let mut ways = moves([
            self.on(Gap, -1),
            self.all_slots(&dials, LeadIn, -1),
            self.all_slots(&dials, Width, -1),
        ]);
        ways.extend([self.without_other_slots(&dials), Way::Fewer(dials.to_vec())]);
        ways.extend(moves([self.on(DiscRadius, 1)]));
        ways.extend(self.held_by_more());
        ways
    }

    /// A stop that holds the tab where it let it go.
    fn held_by_more(&self) -> Vec<Way> {
        moves([
            latch(Engagement, 1),
            self.further(),
            latch(RequiredHold, -1),
        ])
    }

    /// All slots of these dials but the true ones left out, the last first, so that the numbers of
    /// those that wait stay theirs.
    fn without_other_slots(&self, dials: &[usize]) -> Way {
        let mut steps = Vec::new();
        for dial in dials {
            let slots = self.dial(*dial).map_or(&[][..], |dial| &dial.disc.slots);
            let others = slots
                .iter()
                .enumerate()
                .rev()
                .filter(|(_, slot)| slot.mark != 0);
            steps.extend(others.map(|(slot, _)| Step::LeaveOutSlot { dial: *dial, slot }));
        }
        Way::Once(steps)
    }

    /// Dials with a mark of this verdict that is, or is not, their digit.
    fn dials_with(&self, verdict: Verdict, at_digit: bool) -> Vec<usize> {
        let found = self.proof.dials.iter().enumerate().filter(|(_, dial)| {
            let marks = (0_u32..).zip(&dial.marks);
            let mut wanted = marks.filter(|(mark, _)| (*mark == dial.digit) == at_digit);
            wanted.any(|(_, mark)| mark.verdict == verdict)
        });
        found.map(|(dial, _)| dial).collect()
    }

    pub(super) fn openings(&self) -> Vec<Way> {
        let twins = self.dials_with(Verdict::Passes, false);
        if twins.is_empty() {
            let mut shut = self.dials_with(Verdict::Unsure, true);
            shut.extend(self.dials_with(Verdict::Holds, true));
            shut.sort_unstable();
            return self.lets_in(&shut);
        }
        let mut ways = vec![self.without_other_slots(&twins)];
        ways.extend(moves([
            self.other_slots(&twins, Depth, -1),
            self.true_slots(&twins, Depth, -1),
            self.all_slots(&twins, Width, -1),
        ]));
        ways.push(Way::Fewer(twins));
        ways
    }

    pub(super) fn undecided(&self) -> Vec<Way> {
        let shut = self.dials_with(Verdict::Unsure, true);
        let dials = self.dials_with(Verdict::Unsure, false);
        if dials.is_empty() {
            return self.lets_in(&shut);
        }
        let mut ways: Vec<Way> = self.seated(&dials).into_iter().collect();
        ways.extend(moves([
            self.all_slots(&dials, LeadIn, -1),
            self.all_slots(&dials, Width, -1),
            on_all(&dials, Gap, -1),
            self.other_slots(&dials, Depth, -1),
        ]));
        ways.push(self.without_other_slots(&dials));
        ways.push(Way::Fewer(dials.clone()));
        ways.extend(moves([on_all(&dials, DiscRadius, 1)]));
        ways.extend(self.held_by_more());
        ways.extend(moves([latch(Reading, -1)]));
        ways
    }
}
