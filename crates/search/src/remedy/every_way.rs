//! Every way of moving sizes that is worth trying where nothing is known of what fails.

use itertools::iproduct;

use super::way::Way;
use latchwright_model::Design;
use latchwright_model::Unit;
use latchwright_model::change::{DialSize, LatchSize, Size};

/// Every way worth trying: each size of each dial by itself, alike sizes of all dials together, sizes
/// of the latch, each larger and smaller; discs with their pins left where they are; fewer positions.
pub(super) fn every_way(design: &Design) -> Vec<Way> {
    let dials = design.dials.len();
    let mut ways = Vec::new();
    let both = |sizes: Vec<(Size, i64)>, ways: &mut Vec<Way>| {
        let other = sizes.iter().map(|(size, by)| (*size, -by)).collect();
        ways.extend([Way::Move(sizes), Way::Move(other)]);
    };
    for size in LatchSize::ALL.iter().map(|size| Size::Latch(*size)) {
        if is_open(size) {
            both(vec![(size, 1)], &mut ways);
        }
    }
    // the keeper goes with the engagement where the tab stays as it is
    let kept = [LatchSize::Engagement, LatchSize::KeeperEdge];
    both(kept.map(|size| (Size::Latch(size), 1)).to_vec(), &mut ways);
    // a play may be widened, but not be taken away from a maker who needs it
    ways.push(Way::Move(vec![(Size::Latch(LatchSize::GuidePlay), 1)]));
    let one_dial: Vec<Size> = Size::all(design)
        .into_iter()
        .filter(|size| size.dial() == Some(0) && is_open(*size))
        .collect();
    let groups = (0..dials).map(|dial| vec![dial]);
    let groups: Vec<Vec<usize>> = if dials > 1 {
        core::iter::once((0..dials).collect())
            .chain(groups)
            .collect()
    } else {
        groups.collect()
    };
    for (size, group) in iproduct!(&one_dial, &groups) {
        let sizes = group.iter().map(|dial| (of_dial(*size, *dial), 1));
        both(sizes.collect(), &mut ways);
    }
    for group in groups {
        // the pin stays where it is, so that a slider that is drilled fits as before
        let kept = group.iter().flat_map(|dial| {
            [
                (Size::Dial(*dial, DialSize::DiscRadius), 1),
                (Size::Dial(*dial, DialSize::Gap), -1),
            ]
        });
        both(kept.collect(), &mut ways);
        ways.push(Way::Fewer(group));
    }
    ways
}

/// Whether this size may be changed for the sake of a proof: a part's own, and neither the lid nor what
/// is asked of the latch nor how closely its parts fit.
fn is_open(size: Size) -> bool {
    let fixed = matches!(
        size,
        Size::Latch(
            LatchSize::PlateWidth
                | LatchSize::PlateDepth
                | LatchSize::InsideWidth
                | LatchSize::InsideDepth
                | LatchSize::InsideHeight
                | LatchSize::RequiredHold
                | LatchSize::GuidePlay
        ) | Size::Dial(_, DialSize::ShaftPlay | DialSize::Clearance)
    );
    size.is_built() && size.unit() == Unit::Millimetre && !fixed
}

fn of_dial(size: Size, dial: usize) -> Size {
    match size {
        Size::Dial(_, size) => Size::Dial(dial, size),
        Size::Slot(_, slot, size) => Size::Slot(dial, slot, size),
        other => other,
    }
}
