//! A change of a design as a value: which sizes move from what to what, what is left out, what is
//! made otherwise. It can be shown before it is made, and made on any design that has the same
//! parts.

mod size;

use crate::model::{Design, Grain, Material, Sawn};

pub use size::{DialSize, LatchSize, Size, SlotSize};

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

    /// What is done, without figures, beginning with a capital: "Widen the gap of dial 1".
    ///
    /// Of many steps only the first two are named.
    pub fn title(&self) -> String {
        let mut deeds: Vec<String> = self.steps.iter().take(2).map(Step::deed).collect();
        if let Some(more) = self.steps.len().checked_sub(3) {
            deeds.push(format!("{} more", more + 1));
        }
        capital(&listed(&deeds))
    }
}

impl Step {
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

    /// What is done, without figures: "widen the gap of dial 1".
    pub fn deed(&self) -> String {
        match self {
            Self::Resize { size, from, to } => size.deed(to > from),
            Self::LeaveOutSlot { dial, slot } => {
                format!("leave out slot {} of dial {}", slot + 1, dial + 1)
            }
            Self::PlateSawn(Sawn::Flat) => "saw the plate flat".to_owned(),
            Self::PlateSawn(Sawn::Quarter) => "take a quarter-sawn plate".to_owned(),
            Self::PlateGrain(Grain::AlongX) => "run the plate's grain along its width".to_owned(),
            Self::PlateGrain(Grain::AlongY) => "run the plate's grain along its depth".to_owned(),
            Self::SliderMaterial(material) => of_stuff(material),
        }
    }
}

fn of_stuff(material: &Material) -> String {
    let stuff = match material {
        Material::Wood {
            species,
            sawn,
            grain,
        } => {
            let sawn = match sawn {
                Sawn::Flat => "flat-sawn",
                Sawn::Quarter => "quarter-sawn",
            };
            let grain = match grain {
                Grain::AlongX => "across the travel",
                Grain::AlongY => "along the travel",
            };
            return format!("make the slider of {sawn} {species}, its grain {grain}");
        }
        Material::Plywood => "plywood",
        Material::Hardboard => "hardboard",
        Material::Mdf => "MDF",
        Material::Printed => "printed plastic",
    };
    format!("make the slider of {stuff}")
}

/// "a", "a and b", "a, b and c".
fn listed(parts: &[String]) -> String {
    match parts {
        [] => "change nothing".to_owned(),
        [one] => one.clone(),
        [before @ .., last] => format!("{} and {last}", before.join(", ")),
    }
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().collect::<String>() + letters.as_str()
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_size_is_read_where_it_was_written_and_no_two_are_the_same_number() {
        let design = Design::default();
        let sizes = Size::all(&design);
        let mut names: Vec<String> = sizes.iter().map(|size| size.name()).collect();
        names.sort();
        names.dedup();
        assert_eq!(names.len(), sizes.len());
        for size in &sizes {
            let mut changed = design.clone();
            assert!(size.set(&mut changed, 23.0), "{}", size.name());
            assert_eq!(size.get(&changed), Some(23.0), "{}", size.name());
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
        ] {
            let mut changed = design.clone();
            assert!(!size.set(&mut changed, value), "{}", size.name());
            assert_eq!(changed, design);
        }
    }

    #[test]
    fn a_change_is_told_in_the_words_of_the_trade() {
        let resize = |size, from, to| Step::Resize { size, from, to };
        let mut steps = vec![
            resize(Size::Dial(0, DialSize::Gap), 2.0, 2.15),
            resize(Size::Dial(1, DialSize::CentreX), 0.0, -1.0),
        ];
        let title = |steps: &[Step]| {
            let steps = steps.to_vec();
            Change { steps }.title()
        };
        assert_eq!(title(&steps[..1]), "Widen the gap of dial 1");
        assert_eq!(
            title(&steps),
            "Widen the gap of dial 1 and move the centre of dial 2 to the left"
        );
        steps.push(Step::LeaveOutSlot { dial: 0, slot: 1 });
        assert_eq!(
            title(&steps),
            "Widen the gap of dial 1, move the centre of dial 2 to the left and 1 more"
        );
        assert_eq!(title(&steps[2..]), "Leave out slot 2 of dial 1");
    }

    #[test]
    fn a_slot_that_is_left_out_takes_no_other_with_it() {
        let mut design = Design::default();
        let blind = crate::model::Slot {
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
