//! The key: seats on the marks, and a post that cannot spin in its star.

use super::CheckKind;
use super::{Sums, worst_case};
use crate::results::Check;
use crate::verdict::CheckVerdict;
use latchwright_model::Unit;
use latchwright_model::key;

pub(super) fn checks(sums: &Sums<'_>) -> Vec<Check> {
    let mut checks = Vec::new();
    for (index, dial, _) in sums.each() {
        let (sides, positions) = (dial.key.sides.max(1), dial.positions);
        let left_over = f64::from(positions % sides);
        checks.push(Check {
            kind: CheckKind::KeySeats,
            dial: Some(index),
            title: format!("Disc of dial {} seats on its marks", index + 1),
            value: -left_over,
            limit: 0.0,
            margin: -left_over,
            unit: Unit::Count,
            verdict: if left_over == 0.0 {
                CheckVerdict::Passes
            } else {
                CheckVerdict::Fails
            },
            decided_by: vec![
                ("positions", f64::from(positions)),
                ("sides", f64::from(sides)),
            ],
            remedy: if left_over == 0.0 {
                format!("nothing to do: {positions} is a multiple of {sides}")
            } else {
                let below = positions - positions % sides;
                let nearest = if below < 2 {
                    format!("{}", below.saturating_add(sides))
                } else {
                    format!("{below} or {}", below.saturating_add(sides))
                };
                format!(
                    "seats fall between marks: take {nearest} positions, or a post whose sides \
                     divide {positions}"
                )
            },
            worst: None,
        });
        let bite = key::bite(dial);
        let parts = vec![("clearance", dial.key.clearance)];
        let title = format!("Post of dial {} cannot spin in its star", index + 1);
        checks.push(worst_case(
            CheckKind::KeyBite,
            Some(index),
            title,
            (bite, 0.0),
            parts,
            |_| "make the clearance smaller or the apothem larger".to_owned(),
        ));
    }
    checks
}
