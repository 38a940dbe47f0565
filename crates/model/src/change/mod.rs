//! A change of a design as a value: which sizes move from what to what, what is left out, what is
//! made otherwise. It can be shown before it is made, and made on any design that has the same
//! parts.

mod size;

use crate::{Design, Grain, Material, Sawn};

pub use size::{
    AirSize, BenchSize, BoardSize, BodySize, DialSize, HoleSize, LatchSize, Size, SlotSize,
    WoodSize,
};

/// What a maker does at once.
#[derive(Debug, Clone, PartialEq)]
pub struct Change {
    /// One after the other.
    pub steps: Vec<Step>,
}

/// One thing that is made otherwise.
#[derive(Debug, Clone, PartialEq)]
pub enum Step {
    /// A size gets another value, both in the size's own unit.
    Resize {
        /// Which.
        size: Size,
        /// What it was.
        from: f64,
        /// What it becomes.
        to: f64,
    },
    /// A slot is not cut. Later slots of the same disc move up by one number.
    LeaveOutSlot {
        /// Dial, from 0.
        dial: usize,
        /// Number of the slot in its disc, from 0.
        slot: usize,
    },
    /// The plate is sawn otherwise.
    PlateSawn(Sawn),
    /// The plate's fibres run otherwise.
    PlateGrain(Grain),
    /// The slider is of another stuff, or of the same with its fibres running otherwise.
    SliderMaterial(Material),
}

impl Change {
    /// One size, from what it is in `design` to `to`; `None` where `design` has no such size.
    pub fn of(design: &Design, size: Size, to: f64) -> Option<Self> {
        let from = size.get(design)?;
        let steps = vec![Step::Resize { size, from, to }];
        Some(Self { steps })
    }

    /// The changed design. A step about a dial or slot that is not there changes nothing.
    #[must_use]
    pub fn apply(&self, design: &Design) -> Design {
        let mut changed = design.clone();
        for step in &self.steps {
            step.apply(&mut changed);
        }
        changed
    }

    /// This change and `next` after it, as one; a size that both move is told once.
    #[must_use]
    pub fn then(mut self, next: Self) -> Self {
        // once a slot is gone, the numbers of later slots mean other slots
        let renumbered = |step: &Step| matches!(step, Step::LeaveOutSlot { .. });
        for step in next.steps {
            let again = if self.steps.iter().any(renumbered) {
                None
            } else {
                self.steps
                    .iter_mut()
                    .find_map(|before| before.resized_by(&step))
            };
            match (again, &step) {
                (Some(again), Step::Resize { to, .. }) => *again = *to,
                _ => self.steps.push(step),
            }
        }
        self
    }
}

impl Step {
    /// What this step makes of the size that `other` moves too.
    fn resized_by(&mut self, other: &Self) -> Option<&mut f64> {
        match (self, other) {
            (Self::Resize { size, to, .. }, Self::Resize { size: same, .. }) if size == same => {
                Some(to)
            }
            _ => None,
        }
    }

    fn apply(&self, design: &mut Design) {
        match self {
            Self::Resize { size, to, .. } => {
                size.set(design, *to);
            }
            Self::LeaveOutSlot { dial, slot } => {
                let disc = design.dials.get_mut(*dial).map(|dial| &mut dial.disc);
                if let Some(disc) = disc.filter(|disc| *slot < disc.slots.len()) {
                    disc.slots.remove(*slot);
                }
            }
            Self::PlateSawn(sawn) => design.plate.sawn = *sawn,
            Self::PlateGrain(grain) => design.plate.grain = *grain,
            Self::SliderMaterial(material) => design.slider.material = material.clone(),
        }
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;
    use crate::{Board, LidKind, OwnWood};

    #[test]
    fn every_size_is_read_where_it_was_written_and_no_two_are_the_same_number() {
        // what Size::beside speaks of has to be there
        let mut design = Design {
            own_woods: vec![OwnWood::default(); 2],
            ..Design::default()
        };
        design.body.lid = LidKind::Band { height: 20.0 };
        design.bench.boards = vec![Board::default(); 2];
        let mut sizes = Size::all(&design);
        sizes.extend(Size::beside(&design));
        let addresses: BTreeSet<&Size> = sizes.iter().collect();
        assert_eq!(addresses.len(), sizes.len());
        for size in &sizes {
            let mut changed = design.clone();
            assert!(size.set(&mut changed, 23.0), "{size:?}");
            assert_eq!(size.get(&changed), Some(23.0), "{size:?}");
            let moved = |other: &&Size| other.get(&changed) != other.get(&design);
            let moved: Vec<&Size> = sizes.iter().filter(moved).collect();
            assert_eq!(moved, [size]);
        }
    }

    #[test]
    fn what_is_not_there_or_no_number_changes_nothing() {
        let design = Design::default();
        for (size, value) in [
            (Size::Dial(3, DialSize::Gap), 1.0),
            (Size::Slot(0, 1, SlotSize::Width), 1.0),
            (Size::Digit(3), 1.0),
            (Size::Latch(LatchSize::Travel), f64::NAN),
            (Size::Positions(0), 7.5),
            (Size::Positions(0), -1.0),
            (Size::KeySides(0), 1e12),
            (Size::Band, 20.0),
            (Size::Board(0, BoardSize::Width), 1.0),
            (Size::Wood(0, WoodSize::Radial), 0.002),
            (Size::Bit(99), 4.0),
            (Size::Coats, 2.5),
        ] {
            let mut changed = design.clone();
            assert!(!size.set(&mut changed, value), "{size:?}");
            assert_eq!(changed, design);
        }
    }

    #[test]
    fn two_changes_as_one_do_the_same_and_tell_each_size_once() {
        let design = Design::default();
        let gap = Size::Dial(0, DialSize::Gap);
        let travel = Size::Latch(LatchSize::Travel);
        let first = Change::of(&design, gap, 2.1).unwrap();
        let middle = first.apply(&design);
        let second = Change::of(&middle, gap, 2.2).unwrap();
        let second = second.then(Change::of(&middle, travel, 9.0).unwrap());
        let both = first.then(second.clone());
        assert_eq!(both.apply(&design), second.apply(&middle));
        let told = |size, from, to| Step::Resize { size, from, to };
        assert_eq!(both.steps, [told(gap, 3.0, 2.2), told(travel, 11.0, 9.0)]);
    }

    #[test]
    fn a_slot_that_is_left_out_takes_no_other_with_it() {
        let mut design = Design::default();
        let blind = crate::Slot {
            mark: 4,
            depth: 3.0,
            ..Default::default()
        };
        design.dials[0].disc.slots.push(blind.clone());
        let leave_out = |slot| Change {
            steps: vec![Step::LeaveOutSlot { dial: 0, slot }],
        };
        assert_eq!(leave_out(0).apply(&design).dials[0].disc.slots, vec![blind]);
        assert_eq!(leave_out(2).apply(&design), design);
    }
}
