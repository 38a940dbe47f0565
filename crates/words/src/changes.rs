//! Changes of a design: what a maker does, with figures or without, and what its sizes are called.

mod sizes;
#[cfg(test)]
mod tests;

use latchwright_model::{Change, Grain, Material, Sawn, Size, Step, Units};

use crate::figure::figure;
use crate::phrase::{capital, listed};
pub use sizes::{size_name, size_name_on};

/// Deeds that a title names; more are only counted.
const NAMED: usize = 2;

/// What is said of a change without a step.
const NOTHING: &str = "change nothing";

/// What is done, without figures, beginning with a capital: "Widen the gap of dial 1".
pub fn change_title(change: &Change) -> String {
    let deeds = deeds(change, false);
    let mut said: Vec<String> = deeds.iter().take(NAMED).map(Deed::said).collect();
    if let Some(more @ 1..) = deeds.len().checked_sub(NAMED) {
        said.push(format!("{more} more"));
    }
    capital(listed(&said).as_deref().unwrap_or(NOTHING))
}

/// What is done, with its figures in the maker's unit: "widen the gap of dial 1 from 2.00 mm to 2.15 mm".
pub fn change_sentence(change: &Change, units: Units) -> String {
    let deeds = deeds(change, true);
    let said: Vec<String> = deeds.iter().map(|deed| deed.with_figures(units)).collect();
    listed(&said).unwrap_or_else(|| NOTHING.to_owned())
}

/// What one step does, without figures: "widen the gap of dial 1".
pub fn step_deed(step: &Step) -> String {
    Deed::of(step).said()
}

/// A step, and the dials on which it is made.
struct Deed<'a> {
    step: &'a Step,
    dials: Vec<usize>,
}

impl<'a> Deed<'a> {
    fn of(step: &'a Step) -> Self {
        Self {
            step,
            dials: dial(step).into_iter().collect(),
        }
    }

    /// "widen the gap of dials 1 and 2".
    fn said(&self) -> String {
        match self.step {
            Step::Resize { size, from, to } => sizes::resizing(*size, &self.dials, to > from),
            Step::LeaveOutSlot { dial, slot } => {
                format!("leave out slot {} of dial {}", slot + 1, dial + 1)
            }
            Step::PlateSawn(Sawn::Flat) => "take a flat-sawn plate".to_owned(),
            Step::PlateSawn(Sawn::Quarter) => "take a quarter-sawn plate".to_owned(),
            Step::PlateGrain(Grain::AlongX) => "run the plate's grain along its width".to_owned(),
            Step::PlateGrain(Grain::AlongY) => "run the plate's grain along its depth".to_owned(),
            Step::SliderMaterial(material) => format!("make the slider of {}", stuff(material)),
        }
    }

    fn with_figures(&self, units: Units) -> String {
        let said = self.said();
        match self.step {
            // people know marks by their labels, not by numbers
            Step::Resize { size, from, to } if !matches!(size, Size::Digit(_)) => {
                let show = |value| figure(value, size.unit(), units);
                format!("{said} from {} to {}", show(*from), show(*to))
            }
            Step::Resize { .. }
            | Step::LeaveOutSlot { .. }
            | Step::PlateSawn(_)
            | Step::PlateGrain(_)
            | Step::SliderMaterial(_) => said,
        }
    }
}

/// The steps, with what is done alike to several dials taken together; `to_the_same` where the figures
/// must be alike too.
fn deeds(change: &Change, to_the_same: bool) -> Vec<Deed<'_>> {
    let mut deeds: Vec<Deed<'_>> = Vec::new();
    for step in &change.steps {
        let dial = dial(step);
        let alike = |deed: &&mut Deed<'_>| {
            dial.is_some_and(|dial| !deed.dials.contains(&dial))
                && are_alike(step, deed.step, to_the_same)
        };
        match deeds.iter_mut().find(alike) {
            Some(deed) => deed.dials.extend(dial),
            None => deeds.push(Deed::of(step)),
        }
    }
    deeds
}

/// The dial whose size a step changes, from 0.
fn dial(step: &Step) -> Option<usize> {
    match step {
        Step::Resize { size, .. } => size.dial(),
        Step::LeaveOutSlot { .. }
        | Step::PlateSawn(_)
        | Step::PlateGrain(_)
        | Step::SliderMaterial(_) => None,
    }
}

/// Whether the same is done to two dials.
fn are_alike(one: &Step, other: &Step, to_the_same: bool) -> bool {
    let (
        Step::Resize { size, from, to },
        Step::Resize {
            size: its_size,
            from: its_from,
            to: its_to,
        },
    ) = (one, other)
    else {
        return false;
    };
    let same = |one: f64, other: f64| one.to_bits() == other.to_bits();
    Size::alike(*size, *its_size)
        && (to > from) == (its_to > its_from)
        && (!to_the_same || same(*from, *its_from) && same(*to, *its_to))
}

fn stuff(material: &Material) -> String {
    match material {
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
            format!("{sawn} {species}, its grain {grain}")
        }
        Material::Plywood => "plywood".to_owned(),
        Material::Hardboard => "hardboard".to_owned(),
        Material::Mdf => "MDF".to_owned(),
        Material::Printed => "printed plastic".to_owned(),
    }
}
