//! The key: seats on the marks, and a post that cannot spin in its star.

use super::{Sums, worst_case};
use crate::key;
use crate::proof::{Check, CheckVerdict, Unit};

pub(super) fn checks(sums: &Sums<'_>) -> Vec<Check> {
    let mut checks = Vec::new();
    for (index, dial, _) in sums.each() {
        let (sides, positions) = (dial.key.sides.max(1), dial.positions);
        let left_over = f64::from(positions % sides);
        checks.push(Check {
            name: "key-seats",
            dial: Some(index),
            title: format!("Disc of dial {} seats on its marks", index + 1),
            value: -left_over,
            limit: 0.0,
            margin: -left_over,
            unit: Unit::Count,
            verdict: if left_over == 0.0 { CheckVerdict::Passes } else { CheckVerdict::Fails },
            decided_by: vec![("positions", f64::from(positions)), ("sides", f64::from(sides))],
            remedy: if left_over == 0.0 {
                format!("nothing to do: {positions} is a multiple of {sides}")
            } else {
                format!(
                    "seats fall between marks: take {} or {} positions, or a post whose sides divide \
                     {positions}",
                    positions - positions % sides,
                    (positions - positions % sides).saturating_add(sides)
                )
            },
            worst: None,
        });
        let bite = key::bite(dial);
        let parts = vec![("clearance", dial.key.clearance)];
        let title = format!("Post of dial {} cannot spin in its star", index + 1);
        let apothem = dial.key.apothem;
        checks.push(worst_case(
            "key-bite",
            Some(index),
            title,
            (bite, 0.0),
            parts,
            |_| {
                let factor = dial.key.clearance / (apothem - apothem_lost(dial)).max(1e-6);
                format!(
                    "make the clearance smaller or the apothem larger than {:.2} mm",
                    (apothem * factor.abs()).max(apothem * 1.1)
                )
            },
        ));
    }
    checks
}

/// How much apothem the star's inner corners take from the post, mm.
fn apothem_lost(dial: &crate::model::Dial) -> f64 {
    dial.key.apothem * key::inner_corner_ratio(dial.positions, dial.key.sides)
}
