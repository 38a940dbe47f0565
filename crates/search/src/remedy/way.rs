//! Ways to change a design by more or less, in steps of the maker's grid.

use core::ops::Add;

use latchwright_model::change::{Change, DialSize, LatchSize, Size, SlotSize, Step};
use latchwright_model::unit::MM_PER_INCH;
use latchwright_model::{Design, Units};

/// A way to change a design.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Way {
    /// Sizes that move together.
    Move(Sizes),
    /// Fewer positions on these dials: each step goes to the next smaller multiple of the sides.
    Fewer(Vec<usize>),
    /// Done or not.
    Once(Vec<Step>),
}

/// Sizes that move together.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Sizes(pub Vec<Moving>);

/// A size that moves.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Moving {
    /// Which.
    pub size: Size,
    /// How many steps of the grid for each step of the way; below zero it gets smaller.
    pub times: i64,
}

impl From<Moving> for Sizes {
    fn from(moving: Moving) -> Self {
        Self(vec![moving])
    }
}

impl Add for Sizes {
    type Output = Self;

    fn add(mut self, other: Self) -> Self {
        self.0.extend(other.0);
        self
    }
}

impl Way {
    /// The change that goes so many steps this way, from 1; `None` beyond its end.
    pub fn change(&self, design: &Design, steps: i64) -> Option<Change> {
        let steps: Vec<Step> = match self {
            Self::Move(sizes) => {
                let per_unit = steps_per_unit(design.units, sizes);
                let resized = |moving: &Moving| moving.by(design, steps, per_unit);
                sizes.0.iter().map(resized).collect::<Option<_>>()?
            }
            Self::Fewer(dials) => {
                let fewer = |dial: &usize| fewer(design, *dial, steps);
                let each = dials.iter().map(fewer).collect::<Option<Vec<_>>>()?;
                each.concat()
            }
            Self::Once(once) => (steps == 1).then(|| once.clone())?,
        };
        (!steps.is_empty()).then_some(Change { steps })
    }
}

impl Moving {
    fn by(self, design: &Design, steps: i64, per_unit: f64) -> Option<Step> {
        let Self { size, times } = self;
        let from = size.get(design)?;
        let to = moved(from, steps.checked_mul(times)?, per_unit);
        (to >= from || to >= least(size)).then_some(Step::Resize { size, from, to })
    }
}

/// Ways that are gone one after the other.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Moves(pub Vec<Gone>);

/// A way that is gone so far.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Gone {
    pub way: Way,
    pub steps: i64,
}

impl Moves {
    /// These, and so many steps of one way after them.
    pub fn and(&self, way: &Way, steps: i64) -> Self {
        let mut moves = self.0.clone();
        let way = way.clone();
        moves.push(Gone { way, steps });
        Self(moves)
    }

    /// What they change together; `None` where one of them cannot be gone.
    pub fn change(&self, design: &Design) -> Option<Change> {
        let mut whole = Change { steps: Vec::new() };
        for Gone { way, steps } in &self.0 {
            let change = way.change(&whole.apply(design), *steps)?;
            whole = whole.then(change);
        }
        Some(whole)
    }
}

/// Steps to the millimetre or degree: 0.05 mm or 0.002 in, and 0.01 mm or 0.001 in for clearances
/// and errors, which are small themselves.
///
/// # Source
/// Common practice, no source: a caliper reads 0.05 mm, a feeler gauge 0.01 mm.
fn steps_per_unit(units: Units, sizes: &Sizes) -> f64 {
    let fine = sizes.0.iter().any(|moving| is_small(moving.size));
    match (units, fine) {
        (Units::Millimetre, false) => 20.0,
        (Units::Millimetre, true) => 100.0,
        (Units::Inch, false) => 500.0 / MM_PER_INCH,
        (Units::Inch, true) => 1000.0 / MM_PER_INCH,
    }
}

fn is_small(size: Size) -> bool {
    match size {
        Size::Latch(size) => matches!(
            size,
            LatchSize::GuidePlay
                | LatchSize::Print
                | LatchSize::Reading
                | LatchSize::SliderBelow
                | LatchSize::Friction
        ),
        Size::Dial(_, size) => matches!(
            size,
            DialSize::Clearance | DialSize::ShaftPlay | DialSize::DiscBelow
        ),
        _ => false,
    }
}

/// What a size is not made smaller than for the sake of a check: a post must still go into its
/// star, a hand must still turn the knob, a pin must not snap.
///
/// # Source
/// Common practice, no source.
fn least(size: Size) -> f64 {
    match size {
        Size::Latch(LatchSize::GuidePlay | LatchSize::Print | LatchSize::Friction) => 0.1,
        Size::Latch(LatchSize::SliderThickness | LatchSize::KeeperThickness) => 3.0,
        Size::Latch(LatchSize::Reading | LatchSize::RequiredHold) => 1.0,
        Size::Latch(LatchSize::Shank) => 5.0,
        Size::Latch(LatchSize::TabWidth) => 10.0,
        Size::Dial(_, DialSize::Clearance | DialSize::ShaftPlay) => 0.05,
        Size::Dial(
            _,
            DialSize::Apothem
            | DialSize::PinDiameter
            | DialSize::DiscThickness
            | DialSize::PinHeight,
        ) => 2.0,
        Size::Dial(_, DialSize::KnobDiameter) => 20.0,
        Size::Latch(LatchSize::SliderBelow | LatchSize::Rabbet | LatchSize::Room)
        | Size::Dial(_, DialSize::DiscBelow | DialSize::PinFree | DialSize::Gap)
        | Size::Slot(_, _, SlotSize::LeadIn) => 0.0,
        _ => f64::NEG_INFINITY,
    }
}

/// `steps` whole steps from the last place of the grid before `from`, so that one step always
/// leaves `from` and always lands on the grid.
fn moved(from: f64, steps: i64, per_unit: f64) -> f64 {
    // a size that stands on the grid but for the dust of binary fractions stands on it
    let dust = 1e-6;
    let start = if steps > 0 {
        (from * per_unit + dust).floor()
    } else {
        (from * per_unit - dust).ceil()
    };
    (start + steps as f64) / per_unit
}

/// The `step`th smaller multiple of the post's sides, with the digit brought along.
fn fewer(design: &Design, index: usize, step: i64) -> Option<Vec<Step>> {
    let dial = design.dials.get(index)?;
    let sides = i64::from(dial.key.sides.max(1));
    let positions = i64::from(dial.positions);
    // the first multiple below, then so many below that
    let to = (positions - 1) / sides * sides - (step - 1).checked_mul(sides)?;
    if to < 2 {
        return None;
    }
    let counted = |size: Size, to: i64| {
        let from = size.get(design)?;
        let to = to as f64;
        Some(Step::Resize { size, from, to })
    };
    let mut steps = vec![counted(Size::Positions(index), to)?];
    if i64::from(design.digit(index)) >= to {
        steps.extend(counted(Size::Digit(index), to - 1));
    }
    Some(steps)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_step_always_lands_on_the_grid_beyond_where_it_came_from() {
        for (from, steps, per_unit, to) in [
            (2.0, 1, 20.0, 2.05),
            (2.0, -1, 20.0, 1.95),
            (2.03, 1, 20.0, 2.05),
            (2.03, -1, 20.0, 2.0),
            (-55.0, 3, 20.0, -54.85),
            (-55.01, -1, 20.0, -55.05),
            (0.15, -2, 100.0, 0.13),
            (0.1 + 0.2, 1, 20.0, 0.35),
        ] {
            assert_eq!(moved(from, steps, per_unit), to, "{from} by {steps}");
        }
    }

    #[test]
    fn fewer_positions_stay_multiples_of_the_sides_and_keep_the_digit_on_the_dial() {
        let mut design = Design::default();
        design.dials[1].positions = 13;
        design.combination[1] = 9;
        let to = |step| {
            let change = Way::Fewer(vec![1]).change(&design, step)?;
            let changed = change.apply(&design);
            Some((changed.dials[1].positions, changed.combination[1]))
        };
        assert_eq!(to(1), Some((12, 9)));
        assert_eq!(to(2), Some((8, 7)));
        assert_eq!(to(3), Some((4, 3)));
        assert_eq!(to(4), None);
    }
}
