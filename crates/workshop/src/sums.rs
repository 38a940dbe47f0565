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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::joinery::joinery;

    fn plain() -> Design {
        let mut design = Design::default();
        design.workmanship.film = 0.0;
        design
    }

    #[test]
    fn sums_are_the_sizes_of_the_box_and_tell_where_rounded_parts_do_not_make_them() {
        for lid in [LidKind::Plate, LidKind::Band { height: 30.0 }] {
            let mut design = plain();
            design.body.lid = lid;
            let found = joinery(&design);
            let all = sums(&design);
            let wholes = all.iter().map(|sum| sum.rounded.whole.true_mm);
            let sizes = [
                found.outside.width,
                found.outside.depth,
                found.height.finished,
            ];
            assert!(
                wholes
                    .zip(sizes)
                    .all(|(whole, size)| (whole - size).abs() < 1e-9)
            );
            assert!(
                all.iter()
                    .all(|sum| sum.parts.len() == sum.rounded.parts.len())
            );
        }
        // 12 mm is 15/32 and a little, 196 is 7 23/32: laid 8 21/32, the whole of 220 mm is the same
        let all = sums(&plain());
        assert_eq!(all[0].rounded.off(), None);
        // 5, 6 and 80 mm: 3/16, 1/4 and 3 5/32 make 3 19/32; 91 mm is 3 19/32
        assert_eq!(all[2].rounded.laid.to_string(), "3 19/32");
        let mut design = plain();
        design.inside.width = 37.0;
        design.body.thickness = 37.0;
        assert_eq!(sums(&design)[0].rounded.off().as_deref(), Some("+ 1/32"));
    }
}
