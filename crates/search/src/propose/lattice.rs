//! The places that are searched: every combination of the sizes that are chosen first. Sizes that
//! follow from them are found by [`super::solve`].
//!
//! The lattice does not depend on the lid nor on the workmanship: a larger lid, another bit or
//! another pin only ever adds places to it, so that nothing that could be had is lost.

use core::cmp::Ordering;
use core::f64::consts::PI;

use itertools::iproduct;
use latchwright_geometry::trig;

use super::figure::Question;
use super::grid::{Grid, down, stands_on, up};
use super::posts::{Posts, ROUND_POST};
use super::wishes::{Marks, Wishes, prepared};
use latchwright_model::Unit;
use latchwright_model::change::{DialSize, LatchSize, Size, SlotSize};
use latchwright_model::validate::MAX_POSITIONS;
use latchwright_model::{Design, Material, PinMake};
use latchwright_proof::check::{spacing::DISC_TO_PIN, spacing::FINGERS};
use latchwright_proof::slider_body::{BAR, CLEARANCE, front_inside};

/// Clear of the sides of the box, mm.
///
/// # Source
/// Common practice, no source.
pub(super) const SIDE: f64 = 1.0;

/// What the slider's bar takes along y below the discs at least, mm.
pub(super) const CROSSBAR: f64 = BAR + CLEARANCE;

/// What the knob has round the bore, mm.
///
/// # Source
/// Common practice, no source.
pub(super) const ROUND_BORE: f64 = 4.0;

/// A hand must still turn the knob, mm; below three years no knob goes into the small-parts cylinder.
const LEAST_KNOB: f64 = 20.0;
const LEAST_KNOB_SMALL: f64 = 32.0;

/// Bores that are looked at, mm.
pub(super) const BORES: (f64, f64) = (8.0, 26.0);
/// Radii that are looked at, mm.
const RADII: (f64, f64) = (8.0, 60.0);
/// Printed pins, mm.
const PRINTED_PINS: (f64, f64) = (3.0, 8.0);
/// The thinnest pin that is looked at, mm.
const LEAST_PIN: f64 = 1.0;
/// How far from its hole's bit a pin may be, mm.
const PIN_TO_BIT: f64 = 0.11;

/// Flats of a post where the marks are not fixed.
pub(super) const SIDES: [u32; 4] = [3, 4, 5, 6];

/// One choice.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Point {
    /// Of every disc, mm.
    pub radius: f64,
    /// The bore and with it the thickest post, mm.
    pub bore: f64,
    /// Flats of every post whose marks are not fixed.
    pub sides: u32,
    /// Of every slot, mm.
    pub lead_in: f64,
    /// Of every pin, mm.
    pub pin: f64,
    /// How far every second dial stands nearer to the front, mm.
    pub stagger: f64,
    /// Those begin with the first dial and not with the second.
    pub first_in_front: bool,
    /// y of the back row, mm; `None` for as far back as goes.
    pub back: Option<f64>,
}

impl Point {
    /// The same with discs so many steps wider.
    pub(super) fn wider(self, steps: f64, grid: Grid) -> Self {
        let radius = up(self.radius + steps * grid.size, grid.size);
        Self { radius, ..self }
    }
}

/// What all proposals of one lid have in common, and the lists that points are made of.
pub(super) struct Lattice {
    /// Dials, marks, lid and all that is not searched.
    pub base: Design,
    pub grid: Grid,
    /// What the maker holds fixed and is a size of a part.
    pub pinned: Vec<(Size, f64)>,
    /// Marks are to be as many as can be, where they are not fixed.
    pub free_marks: bool,
    pub asked: Vec<Marks>,
    posts: Vec<Posts>,
    radii: Vec<f64>,
    pub bores: Vec<f64>,
    /// Flats of the posts whose marks are not fixed.
    pub sides: Vec<u32>,
    leads: Vec<f64>,
    pub pins: Vec<f64>,
    /// As shares of how near two dials can stand, and whether the first dial stands in front.
    staggers: Vec<(f64, bool)>,
    backs: Vec<Option<f64>>,
}

impl Lattice {
    /// The lattice of these wishes; with `free_marks` for as many marks as can be.
    pub(super) fn of(wishes: &Wishes, free_marks: bool, alike_along_y: bool) -> Self {
        let mut base = prepared(wishes);
        let grid = Grid::of(base.units);
        let mut asked: Vec<Marks> = wishes.dials.iter().map(|dial| dial.marks).collect();
        asked.truncate(base.dials.len());
        for (size, value) in &wishes.pinned {
            if let (Size::Positions(dial), Some(number)) = (size, counted(*value))
                && let Some(marks) = asked.get_mut(*dial)
            {
                *marks = Marks::Exactly(number);
            }
        }
        for (dial, marks) in base.dials.iter_mut().zip(&asked) {
            dial.positions = seated(*marks);
        }
        let face = front_inside(&base) - base.body.thickness;
        base.keeper.edge = up(front_inside(&base) + 2.0, grid.size);
        base.keeper.depth = base.keeper.edge - face;
        let multiples = |(from, to): (f64, f64), step: f64| multiples(from, to, step);
        let mut radii = multiples(RADII, 2.0 * grid.size);
        radii.reverse();
        let pinned =
            wishes.pinned.iter().copied().filter(|(size, _)| {
                size.is_built() && size.unit() != Unit::Count && !is_play(*size)
            });
        // a size that is held fixed on some dials is that of all places of the lattice
        let held = |list: Vec<f64>, of: DialSize| {
            let of = |size: Size| matches!(size, Size::Dial(_, size) if size == of);
            held(wishes, list, &of)
        };
        let lead_ins = |size: Size| matches!(size, Size::Slot(_, _, SlotSize::LeadIn));
        let leads = multiples((0.0, 2.0), 2.0 * grid.size);
        let bores = held(bores(&base, grid), DialSize::BoreDiameter);
        let sides = if free_marks { SIDES.to_vec() } else { vec![0] };
        let posts = iproduct!(&bores, &sides)
            .map(|(bore, sides)| Posts::of(&base, &asked, grid, *bore, *sides));
        Self {
            posts: posts.collect(),
            radii: held(radii, DialSize::DiscRadius),
            bores,
            sides,
            leads: self::held(wishes, leads, &lead_ins),
            pins: held(pins(wishes, &base, grid), DialSize::PinDiameter),
            staggers: staggers(&asked),
            backs: if alike_along_y {
                vec![None]
            } else {
                let step = 4.0 * grid.lid;
                let mut backs = multiples((step, base.plate.depth), step);
                backs.reverse();
                core::iter::once(None)
                    .chain(backs.into_iter().map(Some))
                    .collect()
            },
            pinned: pinned.collect(),
            free_marks,
            asked,
            grid,
            base,
        }
    }

    /// How many points there are, the back row apart.
    pub(super) fn len(&self) -> usize {
        self.radii.len()
            * self.bores.len()
            * self.sides.len()
            * self.leads.len()
            * self.pins.len()
            * self.staggers.len()
    }

    /// Whether it matters how far back the dials stand.
    pub(super) fn drifts(&self) -> bool {
        self.backs.len() > 1
    }

    /// Where the back row may stand at every point, the furthest first.
    pub(super) fn backs(&self) -> Vec<Option<f64>> {
        self.backs.clone()
    }

    /// The point of this number, with the back row as far back as goes.
    pub(super) fn point(&self, number: usize) -> Option<Point> {
        let mut rest = number;
        let mut pick = |length: usize| {
            let at = rest % length.max(1);
            rest /= length.max(1);
            at
        };
        let lead_in = *self.leads.get(pick(self.leads.len()))?;
        let sides = *self.sides.get(pick(self.sides.len()))?;
        let (share, first_in_front) = *self.staggers.get(pick(self.staggers.len()))?;
        let pin = *self.pins.get(pick(self.pins.len()))?;
        let radius = *self.radii.get(pick(self.radii.len()))?;
        let bore = *self.bores.get(pick(self.bores.len()))?;
        Some(Point {
            radius,
            bore,
            sides,
            lead_in,
            pin,
            stagger: up(share * self.closest(radius, bore), self.grid.place),
            first_in_front,
            back: None,
        })
    }

    /// This point with another bore, pin or lead-in: the next of each list.
    pub(super) fn beside(&self, point: &Point) -> Vec<Point> {
        let mut beside = Vec::new();
        beside.extend(self.other_bores(point));
        beside.extend(next_to(&self.pins, point.pin).map(|pin| Point { pin, ..*point }));
        let leads = next_to(&self.leads, point.lead_in);
        beside.extend(leads.map(|lead_in| Point { lead_in, ..*point }));
        beside
    }

    /// This point with the next bore, thicker or thinner.
    pub(super) fn other_bores(&self, point: &Point) -> impl Iterator<Item = Point> + use<> {
        let point = *point;
        let bores: Vec<f64> = next_to(&self.bores, point.bore).collect();
        bores.into_iter().map(move |bore| Point { bore, ..point })
    }

    /// A few points of which one mostly leads near the best: the middle of every list but the radii.
    pub(super) fn first(&self) -> Vec<Point> {
        let middle = |list: &[f64]| list.get(list.len() / 2).copied();
        let (Some(bore), Some(&pin)) = (middle(&self.bores), self.pins.first()) else {
            return Vec::new();
        };
        let leads: Vec<f64> = self
            .leads
            .iter()
            .copied()
            .filter(|lead| *lead >= 0.9)
            .take(1)
            .collect();
        let radii = self.radii.iter().step_by(2);
        iproduct!(radii, leads, self.sides.clone(), [0.0, 0.5])
            .map(|(radius, lead_in, sides, share)| Point {
                radius: *radius,
                bore,
                sides,
                lead_in,
                pin,
                stagger: up(share * self.closest(*radius, bore), self.grid.place),
                first_in_front: self.first_in_front(),
                back: None,
            })
            .filter(|point| point.stagger == 0.0 || self.base.dials.len() > 1)
            .collect()
    }

    /// Which order of two rows comes first.
    fn first_in_front(&self) -> bool {
        let first = self.staggers.first();
        first.is_some_and(|(_, first_in_front)| *first_in_front)
    }

    /// Whether the maker holds the size that would have to grow for this question of a dial.
    pub(super) fn holds(&self, question: Question, dial: Option<usize>) -> bool {
        let dial = dial.unwrap_or(0);
        let size = match question {
            Question::AtRest => Size::Dial(dial, DialSize::Gap),
            Question::Enters | Question::Fits => Size::Slot(dial, 0, SlotSize::Width),
            Question::Deep | Question::Wall => Size::Slot(dial, 0, SlotSize::Depth),
            Question::Hold | Question::HeldAtRest => Size::Latch(LatchSize::Engagement),
            Question::Free | Question::Swings | Question::Captive => Size::Latch(LatchSize::Travel),
            Question::TabBears => Size::Latch(LatchSize::TabWidth),
            _ => return false,
        };
        self.pinned.iter().any(|(pinned, _)| *pinned == size)
    }

    /// Whether the maker holds the discs' radius.
    pub(super) fn radius_is_held(&self) -> bool {
        let mut pinned = self.pinned.iter();
        pinned.any(|(size, _)| matches!(size, Size::Dial(_, DialSize::DiscRadius)))
    }

    /// The posts of this point.
    pub(super) fn posts(&self, point: &Point) -> Option<&Posts> {
        let mut posts = self.posts.iter();
        posts.find(|posts| posts.bore == point.bore && posts.sides == point.sides)
    }

    /// The nearest that two dials with such discs and bores can stand, mm: never above what is needed.
    pub(super) fn closest(&self, radius: f64, bore: f64) -> f64 {
        let knobs = least_knob(&self.base, self.grid, bore) + FINGERS;
        knobs.max(2.0 * radius + DISC_TO_PIN)
    }

    /// The least knob over this bore, mm.
    pub(super) fn least_knob(&self, point: &Point) -> f64 {
        least_knob(&self.base, self.grid, point.bore)
    }
}

/// The least knob over a bore, mm, that suits the youngest.
pub(super) fn least_knob(base: &Design, grid: Grid, bore: f64) -> f64 {
    let least = if base.card.youngest < 3 {
        LEAST_KNOB_SMALL
    } else {
        LEAST_KNOB
    };
    up(least.max(bore + 2.0 * ROUND_BORE), grid.size)
}

/// The values that the maker holds such a size at, the largest first; `list` where there are none.
fn held(wishes: &Wishes, list: Vec<f64>, of: &dyn Fn(Size) -> bool) -> Vec<f64> {
    let pinned = wishes.pinned.iter().filter(|(size, _)| of(*size));
    let mut values: Vec<f64> = pinned.map(|(_, value)| *value).collect();
    values.sort_by(|one, other| other.total_cmp(one));
    values.dedup();
    if values.is_empty() { list } else { values }
}

/// A whole number of marks.
fn counted(value: f64) -> Option<u32> {
    (1..=MAX_POSITIONS).find(|number| f64::from(*number) == value)
}

/// The first number of marks that a post can seat.
pub(super) fn seated(marks: Marks) -> u32 {
    match marks {
        Marks::Exactly(number) => number,
        Marks::AtLeast(number) => {
            let seats = |number: &u32| SIDES.iter().any(|sides| number.is_multiple_of(*sides));
            first_from(number.max(3), seats)
        }
    }
}

/// The first number from this one on that fits, of those that a dial can have; itself where none does.
pub(super) fn first_from(number: u32, fits: impl FnMut(&u32) -> bool) -> u32 {
    (number..=MAX_POSITIONS).find(fits).unwrap_or(number)
}

/// Plays are the maker's fits: a pin on one of them is part of the base.
fn is_play(size: Size) -> bool {
    matches!(
        size,
        Size::Latch(LatchSize::GuidePlay)
            | Size::Dial(_, DialSize::ShaftPlay | DialSize::Clearance)
    )
}

/// What stands before and behind this value in a list.
fn next_to(list: &[f64], value: f64) -> impl Iterator<Item = f64> {
    let at = list.iter().position(|other| *other == value);
    let around = at.map(|at| [at.checked_sub(1), at.checked_add(1)]);
    let around = around.into_iter().flatten().flatten();
    around.filter_map(|at| list.get(at).copied())
}

/// How the marks asked for stand to those of the mirrored latch.
pub(super) fn facing(asked: impl DoubleEndedIterator<Item = Marks> + Clone) -> Ordering {
    asked.clone().cmp(asked.rev())
}

/// One row, or two of which one stands in front by these shares of [`Lattice::closest`]: that of the first
/// dial or the other. Only with an even number of dials, alike from either side, the one is the other's
/// image. The last share is that of three dials, each as near to the others as they can stand.
fn staggers(asked: &[Marks]) -> Vec<(f64, bool)> {
    if asked.len() < 2 {
        return vec![(0.0, false)];
    }
    let rows = [0.0, 0.47, 0.65, 0.75, 0.81, 0.87];
    // an image is searched the same way as what it is the image of
    let orders: &[bool] = match (asked.len().is_multiple_of(2), facing(asked.iter().copied())) {
        (true, Ordering::Equal) => &[false],
        (true, Ordering::Greater) => &[true, false],
        _ => &[false, true],
    };
    iproduct!(rows, orders)
        .map(|(share, first_in_front)| (share, *first_in_front))
        // one row has no order
        .filter(|(share, first_in_front)| *share > 0.0 || orders.first() == Some(first_in_front))
        .collect()
}

/// Whole steps between two ends.
fn multiples(from: f64, to: f64, step: f64) -> Vec<f64> {
    let mut all = Vec::new();
    let mut at = up(from, step);
    while at <= to + 1e-9 {
        all.push(at);
        at = up(at + step * 0.9, step);
    }
    all
}

/// Bits for the bore, thick to thin; of those that take the same posts only the thinnest.
fn bores(base: &Design, grid: Grid) -> Vec<f64> {
    let play = base.dials.first().map_or(0.0, |dial| dial.bore.shaft_play);
    let mut bits = base.bench.bits.clone();
    bits.retain(|bit| (BORES.0..=BORES.1).contains(bit));
    bits.sort_by(f64::total_cmp);
    let posts = |bore: f64| -> Vec<f64> {
        let apothem = |sides: u32| {
            let round = bore / 2.0 - play - ROUND_POST;
            down(round * trig::cos(PI / f64::from(sides)), grid.size)
        };
        (3..=8).map(apothem).collect()
    };
    bits.dedup_by(|thick, thin| posts(*thick) == posts(*thin));
    if bits.is_empty() && base.bench.bits.is_empty() {
        bits.extend(base.dials.first().map(|dial| dial.bore.diameter));
    }
    // thick posts have the least backlash, so that the best is found early
    bits.reverse();
    bits
}

/// Pins at hand for which there is a bit, thin to thick; any round size where they are printed.
fn pins(wishes: &Wishes, base: &Design, grid: Grid) -> Vec<f64> {
    let make = base.dials.first().map(|dial| dial.pin.make);
    if matches!(make, Some(PinMake::PrintedLying | PinMake::PrintedStanding)) {
        return multiples(PRINTED_PINS.0, PRINTED_PINS.1, grid.size);
    }
    let mut pins = wishes.pins.clone();
    if pins.is_empty() {
        pins.extend(wishes.base.dials.first().map(|dial| dial.pin.diameter));
    }
    pins.retain(|pin| pin.is_finite() && *pin >= LEAST_PIN);
    let (bits, drilled) = (&base.bench.bits, drilled(base));
    pins.retain(|pin| !drilled || bits.iter().any(|bit| (bit - pin).abs() <= PIN_TO_BIT));
    pins.sort_by(f64::total_cmp);
    pins.dedup();
    pins
}

/// Whether pins go into holes that are drilled, with bits that are at hand: a printed slider has its
/// holes printed.
pub(super) fn drilled(base: &Design) -> bool {
    base.slider.material != Material::Printed && !base.bench.bits.is_empty()
}

/// How many of these numbers are not whole ones of the maker's unit: the fewer, the simpler.
pub(super) fn fiddly(numbers: &[f64], grid: Grid) -> usize {
    let whole = |number: &&f64| !stands_on(**number, 2.0 * grid.size);
    numbers.iter().filter(whole).count()
}
