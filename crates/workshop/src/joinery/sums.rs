//! Sizes that follow from others, so that inch makers see where rounded parts do not make the whole.

use latchwright_model::{Design, LidKind};

use crate::inch::{RoundedSum, rounded_sum};
use latchwright_model::shown;

/// A size and what it is made of.
#[derive(Debug, Clone, PartialEq)]
pub struct Sum {
    /// What the whole is.
    pub name: &'static str,
    /// What each part is, in the order in which they lie.
    pub parts: Vec<&'static str>,
    /// Their rounded lengths against the rounded whole.
    pub rounded: RoundedSum,
}

/// Width and depth outside and the sides' height as glued up, each from its parts, finished, rounded to
/// the bench's fraction of an inch.
pub fn sums(design: &Design) -> Vec<Sum> {
    let design = &shown(design);
    let (body, inside) = (&design.body, &design.inside);
    let across = |name, room| Sum {
        name,
        parts: vec!["side", "room", "side"],
        rounded: rounded_sum(
            &[body.thickness, room, body.thickness],
            design.bench.fraction,
        ),
    };
    let mut parts = vec!["foot", "floor", "room"];
    let mut lengths = vec![body.foot, body.floor.thickness, inside.height];
    if matches!(body.lid, LidKind::Band { .. }) {
        parts.extend(["cut", "plate", "wood over the plate"]);
        lengths.extend([
            design.bench.kerf.max(0.0),
            design.plate.thickness,
            body.foot,
        ]);
    }
    let height = Sum {
        name: "height of the sides",
        parts,
        rounded: rounded_sum(&lengths, design.bench.fraction),
    };
    vec![
        across("width outside", inside.width),
        across("depth outside", inside.depth),
        height,
    ]
}
