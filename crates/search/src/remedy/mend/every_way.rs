//! Every way of moving sizes that is worth trying where nothing is known of what fails.

use crate::remedy::way::{Moving, Sizes, Way};
use latchwright_model::change::{DialSize, LatchSize, Size, Step};
use latchwright_model::{Design, Unit};

/// A way, and those of which it is made up.
pub(super) struct Family {
    /// A size of the latch, or of all dials together.
    pub all: Way,
    /// The same size of each dial by itself, where there are several.
    pub each: Vec<Way>,
}

/// Every way worth trying: each size of each dial by itself, alike sizes of all dials together, sizes of
/// the latch, each larger and smaller; some sizes together that leave a part as it is; fewer positions.
pub(super) fn every_way(design: &Design) -> Vec<Family> {
    let one = |size| Moving { size, times: 1 };
    // those of all dials that are alike
    let mut alike: Vec<(Size, Vec<Sizes>)> = Vec::new();
    for size in Size::all(design).into_iter().filter(|size| is_open(*size)) {
        match alike.iter_mut().find(|(other, _)| other.alike(size)) {
            Some((_, sizes)) => sizes.push(one(size).into()),
            None => alike.push((size, vec![one(size).into()])),
        }
    }
    let mut groups: Vec<Vec<Sizes>> = alike.into_iter().map(|(_, sizes)| sizes).collect();
    // the keeper goes with the engagement where the tab stays as it is
    let with_keeper = [LatchSize::Engagement, LatchSize::KeeperEdge].map(Size::Latch);
    groups.push(vec![Sizes(with_keeper.map(one).to_vec())]);
    // the pin stays where it is, so that a slider that is drilled fits as before
    let dials: Vec<usize> = (0..design.dials.len()).collect();
    let round_its_pin = |dial: &usize| {
        let radius = one(Size::Dial(*dial, DialSize::DiscRadius));
        let gap = Size::Dial(*dial, DialSize::Gap);
        Sizes(vec![
            radius,
            Moving {
                size: gap,
                times: -1,
            },
        ])
    };
    groups.push(dials.iter().map(round_its_pin).collect());

    let mut families = Vec::new();
    for group in groups {
        // a place on the lid is one beside others: all of them moved together say nothing of one
        let mut moving = group.iter().flat_map(|sizes| &sizes.0);
        let apart = moving.all(|moving| moving.size.is_place());
        for by in [1, -1] {
            let each = group.iter().map(|sizes| sizes.times(by));
            let all = each.clone().reduce(|one, other| one + other);
            let each: Vec<Way> = each.map(Way::Move).filter(|_| group.len() > 1).collect();
            let all = all.map(Way::Move);
            if apart {
                let alone = |all| Family {
                    all,
                    each: Vec::new(),
                };
                families.extend(all.into_iter().chain(each).map(alone));
            } else {
                families.extend(all.map(|all| Family { all, each }));
            }
        }
    }
    families.push(Family {
        each: dials.iter().map(|dial| Way::Fewer(vec![*dial])).collect(),
        all: Way::Fewer(dials),
    });
    families
}

impl Sizes {
    /// Each by so many times as many steps.
    fn times(&self, by: i64) -> Self {
        let moving = self.0.iter().map(|moving| Moving {
            times: by * moving.times,
            ..*moving
        });
        Self(moving.collect())
    }
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

/// A length is moved at most by so much (mm): beyond it the part is another one. A place on the lid is
/// moved as far as a dial that hangs off it is from its room.
const FURTHEST: f64 = 12.0;
const FURTHEST_PLACE: f64 = 150.0;

/// Whether a size may become this for the sake of a proof: it stays about the same part, and takes no play
/// from a maker who needs it. How closely parts fit is theirs to say, and only a play that is wider than in
/// the `usual` design may be put back towards it.
pub(super) fn may_be_made(step: &Step, usual: &Design) -> bool {
    let Step::Resize { size, from, to } = step else {
        return true;
    };
    let (furthest, of_first_dial) = match size {
        size if size.is_place() => (FURTHEST_PLACE, *size),
        Size::Dial(_, size) => (FURTHEST, Size::Dial(0, *size)),
        size => (FURTHEST, *size),
    };
    let is_play = matches!(
        size,
        Size::Latch(LatchSize::GuidePlay)
            | Size::Dial(_, DialSize::ShaftPlay | DialSize::Clearance)
    );
    let least = of_first_dial.get(usual).filter(|_| is_play && to < from);
    let goes_too_far = size.unit() == Unit::Millimetre && (to - from).abs() > furthest;
    !goes_too_far && least.is_none_or(|least| *to >= least)
}
