//! The key: seats on the marks, and a post that cannot spin in its star.

use super::advice::{Estimate, Nothing};
use super::{About, Advice, CheckKind, Contributor, Draft, Sums};
use crate::results::Check;
use latchwright_model::key;

pub(super) fn checks(sums: &Sums<'_>) -> Vec<Check> {
    let mut checks = Vec::new();
    for (index, dial, _) in sums.each() {
        let (sides, positions) = (dial.key.sides.max(1), dial.positions);
        let left_over = f64::from(positions % sides);
        let seats = Draft {
            kind: CheckKind::KeySeats,
            about: About::Dial(index),
            value: -left_over,
            limit: 0.0,
            decided_by: vec![
                (Contributor::Positions, f64::from(positions)),
                (Contributor::Sides, f64::from(sides)),
            ],
        };
        checks.push(seats.advised(if left_over == 0.0 {
            Advice::Nothing(Nothing::Seated { positions, sides })
        } else {
            let below = positions - positions % sides;
            Advice::Change(Estimate::OtherPositions {
                positions,
                fewer: (below >= 2).then_some(below),
                more: below.saturating_add(sides),
            })
        }));
        let bite = Draft {
            kind: CheckKind::KeyBite,
            about: About::Dial(index),
            value: key::bite(dial),
            limit: 0.0,
            decided_by: vec![(Contributor::Clearance, dial.key.clearance)],
        };
        checks.push(bite.judged(|_| Advice::Change(Estimate::TighterKey)));
    }
    checks
}
