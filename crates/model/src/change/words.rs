//! A change in words: what a maker does, with figures or without.

use super::{Change, Size, Step};
use crate::Unit;
use crate::{Grain, Material, Sawn};

/// Deeds that a title names; more are only counted.
const NAMED: usize = 2;

impl Change {
    /// What is done, without figures, beginning with a capital: "Widen the gap of dial 1".
    pub fn title(&self) -> String {
        let mut deeds: Vec<String> = self.deeds(false).iter().map(Deed::say).collect();
        let more = deeds.len().saturating_sub(NAMED);
        if more > 0 {
            deeds.truncate(NAMED);
            deeds.push(format!("{more} more"));
        }
        capital(&listed(&deeds))
    }

    /// What is done, with figures as `figure` shows a value in its unit: "widen the gap of dial 1
    /// from 2.00 mm to 2.15 mm".
    pub fn told(&self, figure: impl Fn(f64, Unit) -> String) -> String {
        let told = |deed: &Deed<'_>| match deed.step {
            // people know marks by their labels, not by numbers
            Step::Resize {
                size: Size::Digit(_),
                ..
            } => deed.say(),
            Step::Resize { size, from, to } => {
                let show = |value| figure(value, size.unit());
                format!("{} from {} to {}", deed.say(), show(*from), show(*to))
            }
            _ => deed.say(),
        };
        listed(&self.deeds(true).iter().map(told).collect::<Vec<_>>())
    }

    /// The steps, with what is done alike to several dials taken together; `to_the_same` where the
    /// figures must be alike too.
    fn deeds(&self, to_the_same: bool) -> Vec<Deed<'_>> {
        let mut deeds: Vec<Deed<'_>> = Vec::new();
        for step in &self.steps {
            let dial = step.dial();
            let alike = |deed: &&mut Deed<'_>| {
                dial.is_some_and(|dial| !deed.dials.contains(&dial))
                    && step.alike(deed.step, to_the_same)
            };
            match deeds.iter_mut().find(alike) {
                Some(deed) => deed.dials.extend(dial),
                None => deeds.push(Deed {
                    step,
                    dials: dial.into_iter().collect(),
                }),
            }
        }
        deeds
    }
}

/// A step, and the dials on which it is made.
struct Deed<'a> {
    step: &'a Step,
    dials: Vec<usize>,
}

impl Deed<'_> {
    /// "widen the gap of dials 1 and 2".
    fn say(&self) -> String {
        match self.step {
            Step::Resize { size, from, to } => size.deed(&self.dials, to > from),
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
}

impl Step {
    /// What is done, without figures: "widen the gap of dial 1".
    pub fn deed(&self) -> String {
        Deed {
            step: self,
            dials: self.dial().into_iter().collect(),
        }
        .say()
    }

    fn dial(&self) -> Option<usize> {
        match self {
            Self::Resize { size, .. } => size.dial(),
            _ => None,
        }
    }

    /// Whether the same is done to two dials.
    fn alike(&self, other: &Self, to_the_same: bool) -> bool {
        let (
            Self::Resize { size, from, to },
            Self::Resize {
                size: its_size,
                from: its_from,
                to: its_to,
            },
        ) = (self, other)
        else {
            return false;
        };
        let same = |one: f64, other: f64| one.to_bits() == other.to_bits();
        Size::alike(*size, *its_size)
            && (to > from) == (its_to > its_from)
            && (!to_the_same || same(*from, *its_from) && same(*to, *its_to))
    }
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

/// "a", "a and b", "a, b and c".
pub fn listed(parts: &[String]) -> String {
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
    use crate::change::{DialSize, LatchSize, SlotSize};

    fn resize(size: Size, from: f64, to: f64) -> Step {
        Step::Resize { size, from, to }
    }

    fn change(steps: &[Step]) -> Change {
        let steps = steps.to_vec();
        Change { steps }
    }

    #[test]
    fn a_title_names_two_deeds_and_counts_the_rest() {
        let steps = [
            resize(Size::Dial(0, DialSize::Gap), 2.0, 2.15),
            resize(Size::Dial(1, DialSize::CentreX), 0.0, -1.0),
            Step::LeaveOutSlot { dial: 0, slot: 1 },
        ];
        assert_eq!(change(&steps[..1]).title(), "Widen the gap of dial 1");
        assert_eq!(
            change(&steps[..2]).title(),
            "Widen the gap of dial 1 and move the centre of dial 2 to the left"
        );
        assert_eq!(
            change(&steps).title(),
            "Widen the gap of dial 1, move the centre of dial 2 to the left and 1 more"
        );
        assert_eq!(change(&steps[2..]).title(), "Leave out slot 2 of dial 1");
        let digit = change(&[resize(Size::Digit(1), 9.0, 7.0)]);
        assert_eq!(
            digit.told(|value, _| value.to_string()),
            "choose another mark for the combination of dial 2"
        );
    }

    #[test]
    fn what_is_done_alike_to_several_dials_is_told_once() {
        let deeper = |dial, to| resize(Size::Slot(dial, 0, SlotSize::Depth), 9.0, to);
        let travel = resize(Size::Latch(LatchSize::Travel), 8.0, 8.5);
        let figure = |value: f64, _| format!("{value:.1}");
        assert_eq!(
            change(&[travel, deeper(0, 9.5), deeper(1, 9.5), deeper(2, 9.6)]).told(figure),
            "lengthen the travel from 8.0 to 8.5, increase the depth of slot 1 of dials 1 and 2 \
             from 9.0 to 9.5 and increase the depth of slot 1 of dial 3 from 9.0 to 9.6"
        );
        assert_eq!(
            change(&[deeper(0, 9.5), deeper(1, 9.5), deeper(2, 9.6)]).title(),
            "Increase the depth of slot 1 of dials 1, 2 and 3"
        );
    }
}
