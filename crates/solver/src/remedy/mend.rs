//! Mending a whole design: the smallest change after which it is proven, with parts that are cut
//! already left alone.
//!
//! One size is tried before two, and of sizes that do it the one that moves least. Every step is
//! judged by the whole proof.

use itertools::iproduct;

use super::faulty;
use super::way::Way;
use crate::change::{Change, DialSize, LatchSize, Size, Step};
use crate::check::named;
use crate::model::{Design, Dial};
use crate::proof::{Check, CheckVerdict, Proof, Unit};
use crate::prove::{prove, prove_each_alone};

/// A part that may be cut, drilled or printed already.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Part {
    /// The plate with its bores, its rabbet and the finger knob's slot.
    Plate,
    /// The slider with tab and pins.
    Slider,
    /// The keeper; where it is fixed is still open.
    Keeper,
    /// The disc of this dial, from 0, with its half of the key.
    Disc(usize),
    /// The knob of this dial, from 0, with its half of the key and its marks.
    Knob(usize),
}

/// The smallest change found that makes a design proven.
#[derive(Debug, Clone, PartialEq)]
pub struct Mend {
    /// What to change.
    pub change: Change,
    /// How many sizes that is, alike ones of several dials taken together.
    pub sizes: usize,
    /// How far they move together, mm; a mark that is left out counts as one.
    pub movement: f64,
    /// The proof of the changed design; always proven.
    pub proof: Proof,
}

/// Steps of the maker's grid that are tried along one way, each twice the one before.
const DOUBLINGS: u32 = 9;
/// A length is moved at most by so much, and a place (mm).
const FURTHEST: f64 = 12.0;
const FURTHEST_PLACE: f64 = 25.0;
/// Beginnings from which a second size is looked for.
const BEGINNINGS: usize = 4;
/// Sizes that are moved at most.
const MOST_SIZES: usize = 6;

/// Looks for the smallest change: fewest sizes, then least movement. `cut` is left as it is.
///
/// `None` for a design that is proven, one with faults, and where nothing was found. Takes some
/// hundreds to thousands of proofs: seconds.
pub fn mend(design: &Design, cut: &[Part]) -> Option<Mend> {
    let proof = prove(design);
    if proof.proven || faulty(&proof) {
        return None;
    }
    let job = Job {
        original: design,
        cut,
    };
    let none = Change { steps: Vec::new() };
    let first = job.look(&none);
    let mut best = first.mended;
    if best.is_none() {
        let second = first.begun.iter().take(BEGINNINGS);
        let looked: Vec<Looked> = second.map(|begun| job.look(&begun.change)).collect();
        best = looked
            .iter()
            .filter_map(|looked| looked.mended.clone())
            .min_by(order);
        if best.is_none() {
            best = looked.into_iter().find_map(|looked| job.go_on(looked));
        }
    }
    let change = job.trimmed(best?);
    let proof = prove(&change.apply(design));
    proof.proven.then(|| Mend {
        sizes: sizes(&change),
        movement: movement(&change),
        change,
        proof,
    })
}

struct Job<'a> {
    original: &'a Design,
    cut: &'a [Part],
}

/// What came of trying every way once.
struct Looked {
    /// The best change after which all is proven.
    mended: Option<Change>,
    /// Changes that mend a part of what fails, the best first.
    begun: Vec<Begun>,
}

struct Begun {
    change: Change,
    /// Failing checks that are left, with those that came new.
    failing: usize,
    movement: f64,
}

impl Job<'_> {
    /// Whether parts that are cut are still what they were.
    fn keeps(&self, design: &Design) -> bool {
        let mut cut = self.cut.iter();
        cut.all(|part| same(self.original, design, *part))
    }

    /// Tries every way on the original with `before` done to it.
    fn look(&self, before: &Change) -> Looked {
        let design = before.apply(self.original);
        let proof = prove_each_alone(&design);
        let mut looked = Looked {
            mended: None,
            begun: Vec::new(),
        };
        for way in ways(&design) {
            self.try_way(before, &design, &proof, &way, &mut looked);
        }
        looked.begun.sort_by(|one, other| {
            let few = one.failing.cmp(&other.failing);
            few.then(one.movement.total_cmp(&other.movement))
        });
        looked
    }

    fn try_way(
        &self,
        before: &Change,
        design: &Design,
        proof: &Proof,
        way: &Way,
        looked: &mut Looked,
    ) {
        let mut low = 0;
        let (mut fewest, mut stands) = (failing(proof).count(), 0);
        for doubling in 0..=DOUBLINGS {
            let step = 1_i64 << doubling;
            let Some((change, after)) = self.after(design, way, step) else {
                break;
            };
            if after.proven {
                let least = self.least(design, way, (low, step)).unwrap_or(change);
                let whole = before.clone().then(least);
                let better = looked
                    .mended
                    .as_ref()
                    .is_none_or(|best| order(&whole, best).is_lt());
                if better {
                    looked.mended = Some(whole);
                }
                return;
            }
            if !helps(proof, &after) {
                stands += 1;
                // a margin that does not move at once never will
                if stands > 1 {
                    break;
                }
            }
            let left = failing(&after).count();
            if left < fewest {
                fewest = left;
                let whole = before.clone().then(change);
                looked.begun.push(Begun {
                    movement: movement(&whole),
                    change: whole,
                    failing: left,
                });
            }
            low = step;
        }
    }

    /// The design so many steps along `way`, if cut parts allow it and it has no faults.
    fn after(&self, design: &Design, way: &Way, step: i64) -> Option<(Change, Proof)> {
        let change = way.change(design, step)?;
        if change.steps.iter().any(goes_too_far) {
            return None;
        }
        let after = change.apply(design);
        if !self.keeps(&after) {
            return None;
        }
        let proof = prove_each_alone(&after);
        (!faulty(&proof)).then_some((change, proof))
    }

    /// The least step between one that fails and one that is proven.
    fn least(&self, design: &Design, way: &Way, (low, high): (i64, i64)) -> Option<Change> {
        let (mut low, mut high, mut found) = (low, high, None);
        while high - low > 1 {
            let middle = i64::midpoint(low, high);
            match self.after(design, way, middle) {
                Some((change, proof)) if proof.proven => (high, found) = (middle, Some(change)),
                _ => low = middle,
            }
        }
        found
    }

    /// Goes on from the best beginning as long as fewer checks fail each time.
    fn go_on(&self, looked: Looked) -> Option<Change> {
        let mut looked = looked;
        let mut failing = usize::MAX;
        for _ in 2..MOST_SIZES {
            let begun = looked.begun.into_iter().next()?;
            if begun.failing >= failing {
                return None;
            }
            failing = begun.failing;
            looked = self.look(&begun.change);
            if looked.mended.is_some() {
                return looked.mended;
            }
        }
        None
    }

    /// The change without steps that are not needed, each of the others as short as goes.
    fn trimmed(&self, change: Change) -> Change {
        let proven = |change: &Change| {
            let design = change.apply(self.original);
            self.keeps(&design) && prove_each_alone(&design).proven
        };
        let mut change = change;
        let mut at = 0;
        while at < change.steps.len() && change.steps.len() > 1 {
            let mut without = change.clone();
            without.steps.remove(at);
            if proven(&without) {
                change = without;
            } else {
                at += 1;
            }
        }
        change
    }
}

/// Fewest sizes, then least movement.
fn order(one: &Change, other: &Change) -> core::cmp::Ordering {
    let few = sizes(one).cmp(&sizes(other));
    few.then(movement(one).total_cmp(&movement(other)))
}

/// Whether some check that fails is nearer to passing.
fn helps(before: &Proof, after: &Proof) -> bool {
    failing(before).any(|check| {
        let now = named(after, check.name, check.dial);
        now.is_none_or(|now| now.margin > check.margin + 1e-9)
    })
}

fn failing(proof: &Proof) -> impl Iterator<Item = &Check> {
    let checks = proof.checks.iter();
    checks.filter(|check| check.verdict != CheckVerdict::Passes)
}

/// Every way worth trying: each size of each dial by itself, alike sizes of all dials together, sizes
/// of the latch, each larger and smaller; discs with their pins left where they are; fewer positions.
fn ways(design: &Design) -> Vec<Way> {
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

fn goes_too_far(step: &Step) -> bool {
    let Step::Resize { size, from, to } = step else {
        return false;
    };
    let most = if size.is_place() {
        FURTHEST_PLACE
    } else {
        FURTHEST
    };
    size.unit() == Unit::Millimetre && (to - from).abs() > most
}

/// Sizes that a change moves; alike ones of several dials, moved alike, count once.
fn sizes(change: &Change) -> usize {
    let mut seen: Vec<(&Size, f64)> = Vec::new();
    for step in &change.steps {
        if let Step::Resize { size, from, to } = step {
            let by = to - from;
            let again =
                |(other, moved): &(&Size, f64)| other.alike(*size) && (moved - by).abs() < 1e-6;
            // a digit follows the positions
            if !matches!(size, Size::Digit(_)) && !seen.iter().any(again) {
                seen.push((size, by));
            }
        }
    }
    seen.len()
}

/// How far all sizes move together.
fn movement(change: &Change) -> f64 {
    let steps = change.steps.iter().map(|step| match step {
        Step::Resize {
            size: Size::Digit(_),
            ..
        } => 0.0,
        Step::Resize { from, to, .. } => (to - from).abs(),
        _ => 1.0,
    });
    steps.sum()
}

/// Whether a part is the same in both designs, as it is cut or printed.
fn same(one: &Design, other: &Design, part: Part) -> bool {
    let near = |a: f64, b: f64| (a - b).abs() < 1e-6;
    let all = |of: &dyn Fn(&Design) -> Vec<f64>| {
        let (has, had) = (of(one), of(other));
        has.len() == had.len() && has.iter().zip(&had).all(|(a, b)| near(*a, *b))
    };
    match part {
        Part::Plate => {
            all(&plate)
                && (one.plate.sawn, one.plate.grain) == (other.plate.sawn, other.plate.grain)
        }
        Part::Slider => all(&slider) && one.slider.material == other.slider.material,
        Part::Keeper => {
            let keeper = |design: &Design| {
                let keeper = &design.keeper;
                vec![keeper.width, keeper.depth, keeper.thickness]
            };
            all(&keeper)
        }
        Part::Disc(dial) => all(&|design| design.dials.get(dial).map_or(Vec::new(), disc)),
        Part::Knob(dial) => all(&|design| design.dials.get(dial).map_or(Vec::new(), knob)),
    }
}

fn plate(design: &Design) -> Vec<f64> {
    let (plate, slider) = (&design.plate, &design.slider);
    let mut sizes = vec![plate.width, plate.depth, plate.thickness, plate.rabbet];
    // the finger knob's slot
    sizes.extend([slider.pull_at, slider.guide_at.1, slider.travel]);
    sizes.push(slider.shank + 2.0 * slider.guide_play);
    for dial in &design.dials {
        sizes.extend([dial.centre.0, dial.centre.1, dial.bore.diameter]);
    }
    sizes
}

/// Seen from its finger knob, which stands where the guide's middle is.
fn slider(design: &Design) -> Vec<f64> {
    let (slider, tab) = (&design.slider, &design.tab);
    let (x, y) = (slider.pull_at, slider.guide_at.1);
    let tip = design.keeper.edge - tab.engagement;
    let mut sizes = vec![
        slider.thickness,
        slider.shank,
        tab.at - x,
        tab.width,
        tip - y,
    ];
    for dial in &design.dials {
        let pin = dial.pin_at();
        sizes.extend([pin.0 - x, pin.1 - y, dial.pin.diameter]);
        sizes.extend([dial.pin.height, dial.pin.free]);
    }
    sizes
}

fn disc(dial: &Dial) -> Vec<f64> {
    let mut sizes = vec![dial.disc.radius, dial.disc.thickness, dial.key.apothem];
    sizes.extend([f64::from(dial.key.sides), f64::from(dial.positions)]);
    for slot in &dial.disc.slots {
        sizes.extend([slot.mark as f64, slot.width, slot.depth, slot.lead_in]);
    }
    sizes
}

fn knob(dial: &Dial) -> Vec<f64> {
    vec![
        dial.knob.diameter,
        dial.knob.height,
        f64::from(dial.positions),
        f64::from(dial.key.sides),
        dial.key.apothem,
    ]
}
