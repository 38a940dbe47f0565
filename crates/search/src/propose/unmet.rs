//! Whether a design keeps to what was wished: judged by itself, not by how it was found.

use core::f64::consts::PI;

use latchwright_geometry::trig;

use super::choices::{BORES, Choices, ROUND_BORE, least_knob};
use super::floor::{BEFORE_NOTCH, LEAST_TAB, SIDE};
use super::grid::{Grid, stands_on};
use super::marking::{LEAST_POST, ROUND_POST};
use super::solve::BESIDE_TAB;
use super::stack::finger;
use super::wishes::{Marks, Wishes};
use latchwright_model::{Design, Dial, Size};
use latchwright_proof::slider_body::{SHOULDER, front_inside};

/// Less than this does not count, mm.
const DUST: f64 = 1e-6;

/// Something that a design does not keep to. Dials count from 0.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Unmet {
    /// It has another number of dials.
    Dials,
    /// A dial has too few marks, or others than were fixed.
    Marks(usize),
    /// The lid is larger.
    Lid,
    /// The room inside has other sides.
    Inside,
    /// Something that was given is otherwise.
    Given,
    /// The same of a dial.
    GivenOfDial(usize),
    /// Its dials are not alike.
    Alike,
    /// A size is not on the grid of the unit.
    Round,
    /// There is no bit for a bore.
    Bit(usize),
    /// There is no such pin.
    Pin(usize),
    /// A post does not go with its shaft.
    Post(usize),
    /// A knob is too small.
    Knob(usize),
    /// A disc runs into the box.
    Disc(usize),
    /// The tab goes through the front.
    TabTip,
    /// The tab is too narrow.
    TabWidth,
    /// The keeper is too narrow.
    Keeper,
    /// The hinges do not fit.
    Hinges,
    /// A size that is held fixed is otherwise.
    Pinned(Size),
}

/// What `design` does not keep to; empty for a design that may be proposed, proven or not.
pub fn unmet(wishes: &Wishes, design: &Design) -> Vec<Unmet> {
    let choices = Choices::of(wishes, false, true);
    if design.dials.len() != choices.base.dials.len() || design.dials.is_empty() {
        return vec![Unmet::Dials];
    }
    let mut unmet = of_latch(&choices, design);
    for (index, (dial, base)) in design.dials.iter().zip(&choices.base.dials).enumerate() {
        let marks = choices.asked.get(index);
        let marks = marks.is_some_and(|marks| match marks {
            Marks::Exactly(wanted) => dial.positions == *wanted,
            Marks::AtLeast(least) => dial.positions >= *least,
        });
        unmet.extend((!marks).then_some(Unmet::Marks(index)));
        unmet.extend((!is_given(dial, base)).then_some(Unmet::GivenOfDial(index)));
        at_hand(&choices, design, index, dial, &mut unmet);
    }
    let pinned = wishes.pinned.iter().filter(|(size, value)| {
        let has = size.get(design);
        has.is_some_and(|has| (has - value).abs() >= DUST)
    });
    unmet.extend(pinned.map(|(size, _)| Unmet::Pinned(*size)));
    unmet
}

/// Of the latch as a whole.
fn of_latch(choices: &Choices, design: &Design) -> Vec<Unmet> {
    let base = &choices.base;
    let lid = design.plate.width <= base.plate.width + DUST
        && design.plate.depth <= base.plate.depth + DUST;
    let wide = |design: &Design| design.plate.width - design.inside.width;
    let deep = |design: &Design| design.plate.depth - design.inside.depth;
    let inside =
        (wide(design) - wide(base)).abs() < DUST && (deep(design) - deep(base)).abs() < DUST;
    let tip = design.keeper.edge - design.tab.engagement;
    let notch = front_inside(design) - design.body.thickness + BEFORE_NOTCH;
    let (hinge, over) = (
        &design.body.hinge,
        design.plate.width - design.inside.width - 2.0 * design.body.thickness,
    );
    let hinges = design.plate.width - over >= 2.0 * (hinge.length + hinge.inset) - DUST;
    let keeper = design.keeper.width >= design.tab.width + 2.0 * BESIDE_TAB - DUST;
    let met = [
        (lid, Unmet::Lid),
        (inside, Unmet::Inside),
        (is_kept(design, base), Unmet::Given),
        (is_alike(choices, design), Unmet::Alike),
        (is_round(choices, design), Unmet::Round),
        (tip >= notch - DUST, Unmet::TabTip),
        (design.tab.width >= LEAST_TAB - DUST, Unmet::TabWidth),
        (keeper, Unmet::Keeper),
        (hinges, Unmet::Hinges),
    ];
    let unmet = met.into_iter().filter(|(met, _)| !met);
    unmet.map(|(_, unmet)| unmet).collect()
}

/// What is not searched stays as it was given.
fn is_kept(design: &Design, base: &Design) -> bool {
    design.workmanship == base.workmanship
        && design.season == base.season
        && design.own_woods == base.own_woods
        && design.bench == base.bench
        && design.body == base.body
        && design.slider.material == base.slider.material
        && design.slider.thickness >= base.slider.thickness - DUST
        && finger(design) >= finger(base) - DUST
        && design.slider.shank == base.slider.shank
        && design.slider.pull == base.slider.pull
        && design.slider.friction == base.slider.friction
        && design.slider.guide_play >= base.slider.guide_play
        && design.tab.required_hold == base.tab.required_hold
        && design.keeper.thickness == base.keeper.thickness
        && design.keeper.edge == base.keeper.edge
        && design.plate.thickness == base.plate.thickness
        && design.plate.room == base.plate.room
        && design.plate.wood == base.plate.wood
        && design.plate.sawn == base.plate.sawn
        && design.plate.grain == base.plate.grain
}

/// The same of a dial.
fn is_given(dial: &Dial, base: &Dial) -> bool {
    dial.disc.thickness == base.disc.thickness
        && dial.disc.slots.len() == 1
        && dial.pin.make == base.pin.make
        && dial.key.clearance == base.key.clearance
        && dial.bore.shaft_play == base.bore.shaft_play
}

/// One disc, one pin, one bore serve all dials; only marks and keys differ.
fn is_alike(choices: &Choices, design: &Design) -> bool {
    let mut pinned = choices.pinned.iter();
    let by_hand = pinned.any(|(size, _)| size.dial().is_some());
    let mut dials = design.dials.iter();
    let first = dials.next();
    by_hand
        || dials.all(|dial| {
            first.is_some_and(|first| {
                dial.disc == first.disc
                    && dial.pin == first.pin
                    && dial.bore == first.bore
                    && dial.knob == first.knob
            })
        })
}

/// Every size stands on the grid of the unit, or was held.
fn is_round(choices: &Choices, design: &Design) -> bool {
    let grid = choices.grid;
    let by_hand = |value: f64| {
        let mut pinned = choices.pinned.iter();
        pinned.any(|(_, pinned)| (pinned - value).abs() < DUST)
    };
    let on = |value: f64, step: f64| stands_on(value, step) || by_hand(value);
    let of_dial = |dial: &Dial| {
        let slots = dial.disc.slots.iter();
        let slots = slots.flat_map(|slot| [slot.width, slot.depth, slot.lead_in]);
        let sizes = [
            dial.disc.radius,
            dial.pin.gap,
            dial.key.apothem,
            dial.knob.diameter,
        ];
        sizes.into_iter().chain(slots).all(|size| on(size, grid.size))
            // the middle of an even number of dials lies between two places
            && on(dial.centre.0, grid.place / 2.0)
            && on(dial.centre.1, grid.place)
    };
    design.dials.iter().all(of_dial)
        && on(design.slider.travel, grid.size)
        && on(design.tab.engagement, grid.size)
        && on(design.slider.guide_length, grid.place)
        && on(design.tab.width, grid.lid)
}

/// Bits, pins and posts of a dial, and that it does not run into the box.
fn at_hand(choices: &Choices, design: &Design, index: usize, dial: &Dial, unmet: &mut Vec<Unmet>) {
    let base = &choices.base;
    let bits = &base.bench.bits;
    let bit = bits.is_empty() || bits.contains(&dial.bore.diameter);
    let within = (BORES.0..=BORES.1).contains(&dial.bore.diameter);
    let round = dial.bore.diameter / 2.0 - dial.bore.shaft_play - ROUND_POST;
    let reach = dial.key.apothem / trig::cos(PI / f64::from(dial.key.sides.max(3)));
    let knob = least_knob(base, choices.grid, 0.0).max(dial.bore.diameter + 2.0 * ROUND_BORE);
    let back = front_inside(design) + design.inside.depth;
    let beside = dial.disc.radius.max(SHOULDER) + SIDE;
    let inside = dial.centre.0.abs() + beside <= design.inside.width / 2.0 + DUST
        && dial.centre.1 + dial.disc.radius + SIDE <= back + DUST;
    let met = [
        (bit && within, Unmet::Bit(index)),
        (choices.pins.contains(&dial.pin.diameter), Unmet::Pin(index)),
        (
            dial.key.apothem >= LEAST_POST && reach <= round + DUST,
            Unmet::Post(index),
        ),
        (dial.knob.diameter >= knob - DUST, Unmet::Knob(index)),
        (inside, Unmet::Disc(index)),
    ];
    unmet.extend(
        met.into_iter()
            .filter_map(|(met, what)| (!met).then_some(what)),
    );
}

/// The grid on which a design of these wishes stands.
pub fn grid_of(wishes: &Wishes) -> Grid {
    Grid::of(wishes.base.units)
}
