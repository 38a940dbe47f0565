//! The choices that are looked through: every combination of the sizes that are chosen first. Sizes that
//! follow from them are found by [`super::solve`].
//!
//! The lists do not depend on the lid nor on the workmanship: a larger lid, another bit or another pin
//! only ever adds choices, so that nothing that could be had is lost.

use core::cmp::Ordering;
use core::f64::consts::PI;

use itertools::{Itertools, iproduct};
use latchwright_geometry::trig;

use super::grid::{Grid, down, up};
use super::marking::{Marking, Posts, ROUND_POST};
use super::wishes::{Marks, Wishes, prepared};
use latchwright_model::Unit;
use latchwright_model::change::{DialSize, LatchSize, Size, SlotSize};
use latchwright_model::validate::MAX_POSITIONS;
use latchwright_model::{Design, Material, PinMake};
use latchwright_proof::check::spacing::{DISCS_APART, FINGERS};
use latchwright_proof::slider_body::front_inside;

/// What the knob has round the bore, mm.
///
/// # Source
/// Common practice, no source.
pub(super) const ROUND_BORE: f64 = 4.0;

/// A hand must still turn the knob, mm; below three years no knob goes into the small-parts cylinder.
const LEAST_KNOB: f64 = 20.0;
const LEAST_KNOB_SMALL: f64 = 32.0;

/// Bores that are looked at, mm: thinner ones take no post, thicker ones no usual knob covers.
pub(super) const BORES: (f64, f64) = (8.0, 26.0);
/// Radii that are looked at, mm: in smaller discs slot and star do not fit, larger ones hold no better.
const RADII: (f64, f64) = (8.0, 60.0);
/// Lead-ins that are looked at, mm: longer ones eat the slot's wall.
const LEAD_INS: (f64, f64) = (0.0, 2.0);
/// Printed pins, mm: thinner ones break, thicker ones ask for slots that leave no rim.
const PRINTED_PINS: (f64, f64) = (3.0, 8.0);
/// The thinnest pin that is looked at, mm.
const LEAST_PIN: f64 = 1.0;
/// How far from its hole's bit a pin may be, mm.
const PIN_TO_BIT: f64 = 0.11;
/// One row, or two of which one stands in front by these shares of how near two dials can stand; the last
/// is that of three dials, each as near to the others as they can stand. With fewer, lids that are just
/// deep enough for two rows get one.
const STAGGERS: [f64; 6] = [0.0, 0.47, 0.65, 0.75, 0.81, 0.87];

/// From one place of the back row to the next it is this part of the way from the front, or two steps of
/// a lid: with a larger part, latches on deep lids that drift are lost.
const BACKS: f64 = 5.0;

/// One choice.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Choice {
    /// Of every disc, mm.
    pub radius: f64,
    /// The bore and with it the thickest post, mm.
    pub bore: f64,
    /// The number of the marking.
    pub marking: usize,
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

impl Choice {
    /// Whether disc, post and pin are those of another choice.
    pub(super) fn has_disc_of(&self, other: &Self) -> bool {
        let disc = |choice: &Self| (choice.radius, choice.bore, choice.lead_in, choice.pin);
        disc(self) == disc(other) && self.marking == other.marking
    }
}

/// Two rows: by which share, and whether the first dial stands in front.
#[derive(Debug, Clone, Copy)]
struct Stagger {
    share: f64,
    first_in_front: bool,
}

/// What all proposals of one lid have in common, and the lists that choices are made of.
pub(super) struct Choices {
    /// Dials, marks, lid and all that is not searched.
    pub base: Design,
    pub grid: Grid,
    /// What the maker holds fixed and is a size of a part.
    pub pinned: Vec<(Size, f64)>,
    pub asked: Vec<Marks>,
    /// Marks are to be as many as can be, where they are not fixed.
    pub as_many: bool,
    pub markings: Vec<Marking>,
    /// The posts of each bore, and in it of each marking.
    posts: Vec<Vec<Option<Posts>>>,
    radii: Vec<f64>,
    bores: Vec<f64>,
    lead_ins: Vec<f64>,
    pub pins: Vec<f64>,
    staggers: Vec<Stagger>,
    /// Where the back row may stand at every choice, the furthest first.
    pub backs: Vec<Option<f64>>,
}

impl Choices {
    /// The choices of these wishes; with `as_many` for as many marks as can be.
    pub(super) fn of(wishes: &Wishes, as_many: bool, alike_along_y: bool) -> Self {
        let mut base = prepared(wishes);
        let grid = Grid::of(base.units);
        let asked = asked(wishes, base.dials.len());
        let markings = if as_many {
            Marking::as_many(&asked)
        } else {
            Marking::as_asked(&asked)
        };
        let face = front_inside(&base) - base.body.thickness;
        base.keeper.edge = up(front_inside(&base) + 2.0, grid.size);
        base.keeper.depth = base.keeper.edge - face;
        let pinned =
            wishes.pinned.iter().copied().filter(|(size, _)| {
                size.is_built() && size.unit() != Unit::Count && !is_play(*size)
            });
        // a size that is held fixed on some dials is that of all choices
        let held_dial = |list: Vec<f64>, of: DialSize| {
            held(
                wishes,
                list,
                &|size| matches!(size, Size::Dial(_, size) if size == of),
            )
        };
        let lead_in = |size| matches!(size, Size::Slot(_, _, SlotSize::LeadIn));
        let bores = held_dial(bores(&base, grid), DialSize::BoreDiameter);
        let of_bore = |bore: &f64| {
            let of = |marking| Posts::of(&base, &asked, marking, grid, *bore);
            markings.iter().map(of).collect()
        };
        let mut radii = multiples(RADII, 2.0 * grid.size);
        radii.reverse();
        Self {
            posts: bores.iter().map(of_bore).collect(),
            radii: held_dial(radii, DialSize::DiscRadius),
            bores,
            lead_ins: held(wishes, multiples(LEAD_INS, 2.0 * grid.size), &lead_in),
            pins: held_dial(pins(wishes, &base, grid), DialSize::PinDiameter),
            staggers: staggers(&asked),
            backs: backs(&base, grid, alike_along_y),
            pinned: pinned.collect(),
            markings,
            asked,
            as_many,
            grid,
            base,
        }
    }

    /// How many choices there are, the back row apart.
    pub(super) fn len(&self) -> usize {
        self.radii.len()
            * self.bores.len()
            * self.markings.len()
            * self.lead_ins.len()
            * self.pins.len()
            * self.staggers.len()
    }

    /// Whether it matters how far back the dials stand.
    pub(super) fn drifts(&self) -> bool {
        self.backs.len() > 1
    }

    /// The choice of this number, the largest discs first, with the back row as far back as goes.
    pub(super) fn get(&self, number: usize) -> Option<Choice> {
        let mut rest = number;
        let mut pick = |length: usize| {
            let at = rest % length.max(1);
            rest /= length.max(1);
            at
        };
        let stagger = *self.staggers.get(pick(self.staggers.len()))?;
        let lead_in = *self.lead_ins.get(pick(self.lead_ins.len()))?;
        let pin = *self.pins.get(pick(self.pins.len()))?;
        let marking = pick(self.markings.len());
        let bore = *self.bores.get(pick(self.bores.len()))?;
        let radius = *self.radii.get(pick(self.radii.len()))?;
        Some(Choice {
            radius,
            bore,
            marking,
            lead_in,
            pin,
            stagger: up(stagger.share * self.closest(radius, bore), self.grid.place),
            first_in_front: stagger.first_in_front,
            back: None,
        })
    }

    /// A few choices of which one mostly leads near the best: the middle of every list but the radii.
    pub(super) fn first(&self) -> Vec<Choice> {
        let (Some(bore), Some(pin)) = (self.bores.get(self.bores.len() / 2), self.pins.first())
        else {
            return Vec::new();
        };
        let lead_in = self
            .lead_ins
            .iter()
            .copied()
            .find(|lead_in| *lead_in >= 0.9);
        let staggers = self.staggers.iter().take(2);
        iproduct!(
            self.radii.iter().step_by(2),
            staggers,
            0..self.markings.len()
        )
        .map(|(radius, stagger, marking)| Choice {
            radius: *radius,
            bore: *bore,
            marking,
            lead_in: lead_in.unwrap_or(0.0),
            pin: *pin,
            stagger: up(
                stagger.share * self.closest(*radius, *bore),
                self.grid.place,
            ),
            first_in_front: stagger.first_in_front,
            back: None,
        })
        .collect()
    }

    /// The posts of this choice; `None` where one would be too thin.
    pub(super) fn posts(&self, choice: &Choice) -> Option<&Posts> {
        let bore = self.bores.iter().position(|bore| *bore == choice.bore)?;
        self.posts.get(bore)?.get(choice.marking)?.as_ref()
    }

    /// Choices near this one: the next of each list, discs some steps off, rows nearer or further.
    pub(super) fn beside(&self, choice: &Choice, back: f64) -> Vec<Choice> {
        let (grid, choice) = (self.grid, *choice);
        let mut beside = Vec::new();
        beside.extend(next_to(&self.pins, choice.pin).map(|pin| Choice { pin, ..choice }));
        let lead_ins = next_to(&self.lead_ins, choice.lead_in);
        beside.extend(lead_ins.map(|lead_in| Choice { lead_in, ..choice }));
        let others = (0..self.markings.len()).filter(|other| *other != choice.marking);
        beside.extend(others.map(|marking| Choice { marking, ..choice }));
        let steps: &[f64] = if self.radius_is_held() {
            &[0.0]
        } else {
            &[1.0, -1.0, 2.0, -2.0, 3.0, -3.0, 4.0, -4.0, 6.0, -6.0]
        };
        let wider = |choice: Choice, steps: f64| Choice {
            radius: up(choice.radius + steps * grid.size, grid.size),
            ..choice
        };
        beside.extend(steps.iter().map(|steps| wider(choice, *steps)));
        for bore in next_to(&self.bores, choice.bore) {
            // the disc that suits another bore goes with it
            let suits = (bore - choice.bore) / 2.0 / grid.size;
            let bored = Choice { bore, ..choice };
            beside.push(bored);
            if !self.radius_is_held() {
                beside.extend([suits, suits - 1.0].map(|steps| wider(bored, steps)));
            }
        }
        if choice.stagger > 0.0 {
            beside.extend([1.0, -1.0, 2.0, -2.0, 4.0, -4.0, 8.0, -8.0].map(|steps| {
                let stagger = up(choice.stagger + steps * grid.place, grid.place).max(0.0);
                Choice { stagger, ..choice }
            }));
        }
        beside.extend([-1.0, 1.0, -4.0, 4.0].map(|steps| Choice {
            back: Some(back + steps * grid.place),
            ..choice
        }));
        beside.retain(|beside| *beside != choice);
        beside
    }

    /// Whether the maker holds the size that would have to grow for what is short of a dial.
    pub(super) fn holds(&self, size: Size) -> bool {
        self.pinned.iter().any(|(pinned, _)| *pinned == size)
    }

    /// Whether the maker holds the discs' radius.
    fn radius_is_held(&self) -> bool {
        let mut pinned = self.pinned.iter();
        pinned.any(|(size, _)| matches!(size, Size::Dial(_, DialSize::DiscRadius)))
    }

    /// The nearest that two dials with such discs and bores can stand, mm: never above what is needed.
    pub(super) fn closest(&self, radius: f64, bore: f64) -> f64 {
        let knobs = least_knob(&self.base, self.grid, bore) + FINGERS;
        knobs.max(2.0 * radius + DISCS_APART)
    }
}

/// The marks that are asked for, those held fixed among them; one entry a dial.
pub(super) fn asked(wishes: &Wishes, dials: usize) -> Vec<Marks> {
    let mut asked: Vec<Marks> = wishes.dials.iter().map(|dial| dial.marks).collect();
    asked.truncate(dials);
    for (size, value) in &wishes.pinned {
        if let (Size::Positions(dial), Some(number)) = (size, counted(*value))
            && let Some(marks) = asked.get_mut(*dial)
        {
            *marks = Marks::Exactly(number);
        }
    }
    asked
}

/// A whole number of marks.
fn counted(value: f64) -> Option<u32> {
    (1..=MAX_POSITIONS).find(|number| f64::from(*number) == value)
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

/// Plays are the maker's fits: one of them that is held is part of the base.
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

/// Only with an even number of dials, alike from either side, the one order of two rows is the other's
/// image, and an image is searched the same way as what it is the image of.
fn staggers(asked: &[Marks]) -> Vec<Stagger> {
    let facing = asked.iter().cmp(asked.iter().rev());
    let orders: &[bool] = match (asked.len().is_multiple_of(2), facing) {
        (true, Ordering::Equal) => &[false],
        (true, Ordering::Greater) => &[true, false],
        _ => &[false, true],
    };
    let rows = if asked.len() < 2 {
        &STAGGERS[..1]
    } else {
        &STAGGERS[..]
    };
    iproduct!(rows, orders)
        .map(|(share, first_in_front)| Stagger {
            share: *share,
            first_in_front: *first_in_front,
        })
        // one row has no order
        .unique_by(|stagger| {
            let order = stagger.share > 0.0 && stagger.first_in_front;
            (stagger.share.to_bits(), order)
        })
        .collect()
}

/// Places of the back row, the furthest first: where plate and slider drift apart a longer guide turns
/// less, but drifts more. The further back, the less a step matters.
fn backs(base: &Design, grid: Grid, alike_along_y: bool) -> Vec<Option<f64>> {
    if alike_along_y {
        return vec![None];
    }
    let step = 2.0 * grid.lid;
    let mut at = step;
    let mut backs = Vec::new();
    while at <= base.plate.depth {
        backs.push(Some(at));
        at = up(at + step.max(at / BACKS), step);
    }
    backs.push(None);
    backs.reverse();
    backs
}

/// Whole steps between two ends.
fn multiples((from, to): (f64, f64), step: f64) -> Vec<f64> {
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
        return multiples(PRINTED_PINS, grid.size);
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

/// Of more pins than this the thinnest that bear the pull are looked at: a thicker one asks for a wider
/// slot. With fewer, one that just misses the rim has no other.
pub(super) const MOST_PINS: usize = 6;

/// Whether pins go into holes that are drilled, with bits that are at hand: a printed slider has its
/// holes printed.
pub(super) fn drilled(base: &Design) -> bool {
    base.slider.material != Material::Printed && !base.bench.bits.is_empty()
}
