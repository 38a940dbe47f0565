//! Every way of moving sizes that is worth trying where nothing is known of what fails.

use itertools::Itertools;

use crate::remedy::way::Way;
use latchwright_model::change::{DialSize, LatchSize, Size, Step};
use latchwright_model::{Design, Unit};

/// Ways that move the same size, all one direction.
pub(super) struct Family {
    /// On all dials together.
    pub together: Option<Way>,
    /// On each dial by itself, or of the latch.
    pub each: Vec<Way>,
    /// Whether all dials together say nothing of one by itself: a place on the lid is one beside others.
    pub apart: bool,
}

/// Every way worth trying: each size of each dial by itself, alike sizes of all dials together, sizes of
/// the latch, each larger and smaller; discs with their pins left where they are; fewer positions.
pub(super) fn every_way(design: &Design) -> Vec<Family> {
    let mut families = Vec::new();
    let mut both =
        |sizes: &dyn Fn(usize, i64) -> Vec<(Size, i64)>, dials: &[usize], apart: bool| {
            for by in [1, -1] {
                let each = dials.iter().map(|dial| Way::Move(sizes(*dial, by)));
                let together = dials.iter().flat_map(|dial| sizes(*dial, by));
                families.push(Family {
                    each: each.collect(),
                    together: (dials.len() > 1).then(|| Way::Move(together.collect())),
                    apart,
                });
            }
        };
    for size in LatchSize::ALL.iter().map(|size| Size::Latch(*size)) {
        if is_open(size) {
            both(&|_, by| vec![(size, by)], &[0], false);
        }
    }
    // the keeper goes with the engagement where the tab stays as it is
    let kept = [LatchSize::Engagement, LatchSize::KeeperEdge];
    both(
        &|_, by| kept.map(|size| (Size::Latch(size), by)).to_vec(),
        &[0],
        false,
    );
    let every_dial: Vec<usize> = (0..design.dials.len()).collect();
    let of_a_dial = Size::all(design).into_iter().filter(|size| is_open(*size));
    for size in of_a_dial.filter_map(on_any_dial).unique() {
        let has = |dial: &usize| of_dial(size, *dial).get(design).is_some();
        let dials: Vec<usize> = every_dial.iter().copied().filter(has).collect();
        both(
            &|dial, by| vec![(of_dial(size, dial), by)],
            &dials,
            size.is_place(),
        );
    }
    // the pin stays where it is, so that a slider that is drilled fits as before
    let kept = |dial: usize, by: i64| {
        let sizes = [(DialSize::DiscRadius, by), (DialSize::Gap, -by)];
        sizes
            .map(|(size, by)| (Size::Dial(dial, size), by))
            .to_vec()
    };
    both(&kept, &every_dial, false);
    families.push(Family {
        together: (every_dial.len() > 1).then(|| Way::Fewer(every_dial.clone())),
        each: every_dial
            .into_iter()
            .map(|dial| Way::Fewer(vec![dial]))
            .collect(),
        apart: false,
    });
    families
}

/// Whether this size may be changed for the sake of a proof: a part's own, and neither the lid nor what is
/// asked of the latch.
fn is_open(size: Size) -> bool {
    let given = matches!(
        size,
        Size::Latch(
            LatchSize::PlateWidth
                | LatchSize::PlateDepth
                | LatchSize::InsideWidth
                | LatchSize::InsideDepth
                | LatchSize::InsideHeight
                | LatchSize::RequiredHold
        )
    );
    size.is_built() && size.unit() == Unit::Millimetre && !given
}

/// Whether a step takes a play from a maker who needs it: how closely parts fit is theirs to say, and only
/// one that is wider than in the `usual` design may be put back towards it.
pub(super) fn takes_a_play(step: &Step, usual: &Design) -> bool {
    let Step::Resize { size, from, to } = step else {
        return false;
    };
    let is_play = matches!(
        size,
        Size::Latch(LatchSize::GuidePlay)
            | Size::Dial(_, DialSize::ShaftPlay | DialSize::Clearance)
    );
    let usual = of_dial(*size, 0).get(usual);
    is_play && to < from && usual.is_some_and(|usual| *to < usual)
}

/// The same size of the first dial, of a size of any.
fn on_any_dial(size: Size) -> Option<Size> {
    size.dial().map(|_| of_dial(size, 0))
}

fn of_dial(size: Size, dial: usize) -> Size {
    match size {
        Size::Dial(_, size) => Size::Dial(dial, size),
        Size::Slot(_, slot, size) => Size::Slot(dial, slot, size),
        other => other,
    }
}
