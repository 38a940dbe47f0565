//! Printed parts, and parts that are bought.

use latchwright_model::{Dial, PinMake};

use super::{Lister, Make, Part};
use crate::joinery::Joinery;

/// How far a screw should go into the wood below, mm: common practice, no source.
const BITE: f64 = 12.0;

impl Lister<'_> {
    /// Knobs and discs, those alike on one line.
    pub(super) fn dials(&self) -> Vec<Part> {
        let dials = &self.design.dials;
        let (rule, mut all) = (self.rule, Vec::new());
        let knobs = alike(dials, |one, other| {
            one.knob == other.knob && one.key == other.key
        });
        for group in knobs {
            let Some(dial) = group.first().and_then(|index| dials.get(*index)) else {
                continue;
            };
            let part = printed(
                format!("knob with star, {}", which(&group)),
                &group,
                (dial.knob.diameter, dial.knob.diameter, dial.knob.height),
            );
            all.push(part);
        }
        for group in alike(dials, |one, other| {
            one.disc == other.disc && one.key == other.key && one.bore == other.bore
        }) {
            let Some(dial) = group.first().and_then(|index| dials.get(*index)) else {
                continue;
            };
            let across = 2.0 * dial.disc.radius;
            let mut part = printed(
                format!("disc with shaft and post, {}", which(&group)),
                &group,
                (across, across, dial.disc.thickness),
            );
            part.notes.push(match dial.disc.slots.len() {
                1 => "one slot".to_owned(),
                slots => format!("{slots} slots; the mark shows the true one"),
            });
            part.notes.push(format!(
                "shaft to turn in a bore of {}",
                rule.say_fine(dial.bore.diameter)
            ));
            all.push(part);
        }
        all
    }

    pub(super) fn finger_knob(&self) -> Part {
        let shank = self.design.slider.shank;
        let size = (2.5 * shank, 2.5 * shank, 2.0 * shank);
        let mut part = Self::other("finger knob".to_owned(), Make::Printed, 1, size, "printed");
        part.notes.push(format!(
            "its shank of {} runs in the plate's slot",
            self.rule.say_fine(shank)
        ));
        part
    }

    pub(super) fn pins(&self) -> Vec<Part> {
        let dials = &self.design.dials;
        let same = |one: &Dial, other: &Dial| {
            let (one, other) = (&one.pin, &other.pin);
            (one.diameter, one.height, one.make) == (other.diameter, other.height, other.make)
        };
        let mut all = Vec::new();
        for group in alike(dials, same) {
            let Some(dial) = group.first().and_then(|index| dials.get(*index)) else {
                continue;
            };
            let pin = &dial.pin;
            let (make, material, note) = match pin.make {
                PinMake::Steel => (
                    Make::Bought,
                    "steel rod",
                    "file the ends round, glue it in with epoxy",
                ),
                PinMake::Dowel => (Make::Bought, "hardwood dowel", "glue it into its finger"),
                PinMake::PrintedLying => (
                    Make::Printed,
                    "printed",
                    "print it lying down, so that layers run along it",
                ),
                PinMake::PrintedStanding => (
                    Make::Printed,
                    "printed",
                    "printed standing: its root is a layer, the weakest place",
                ),
            };
            let size = (pin.height, pin.diameter, pin.diameter);
            let mut part = Self::other(
                format!("pin, {}", which(&group)),
                make,
                count(&group),
                size,
                material,
            );
            part.notes.push(note.to_owned());
            all.push(part);
        }
        all
    }

    pub(super) fn bought(&self, joinery: &Joinery) -> Vec<Part> {
        let (hinge, keeper) = (&self.design.body.hinge, &self.design.keeper);
        let mut hinges = Self::other(
            "butt hinge".to_owned(),
            Make::Bought,
            2,
            (hinge.length, hinge.leaf, hinge.thickness),
            "with its own screws",
        );
        hinges
            .notes
            .push("width is that of one leaf up to the middle of the pin".to_owned());
        let mut screws = Self::other(
            "screw for the keeper, No. 4 (2.84 mm)".to_owned(),
            Make::Bought,
            2,
            (keeper.thickness + BITE, 2.84, 2.84),
            "countersunk wood screw",
        );
        if joinery.keeper.on_front < 2.84 + 4.0 {
            screws
                .notes
                .push("the front gives them little wood: see the keeper's notes".to_owned());
        }
        let dials = u32::try_from(self.design.dials.len()).unwrap_or(0);
        let mut all = vec![hinges, screws];
        if dials > 0 {
            let mut disc = Self::other(
                "screw through each disc into its knob, No. 4".to_owned(),
                Make::Bought,
                dials,
                (10.0, 3.0, 3.0),
                "self-tapping, for plastic",
            );
            disc.notes.push(
                "a press fit is never the only thing that keeps a disc in its place".to_owned(),
            );
            all.push(disc);
        }
        all
    }
}

fn printed(name: String, group: &[usize], size: (f64, f64, f64)) -> Part {
    Lister::other(name, Make::Printed, count(group), size, "printed")
}

fn count(group: &[usize]) -> u32 {
    u32::try_from(group.len()).unwrap_or(u32::MAX)
}

/// Numbers of the dials that are alike, in order of the first of each.
pub(crate) fn alike(dials: &[Dial], same: impl Fn(&Dial, &Dial) -> bool) -> Vec<Vec<usize>> {
    let mut groups: Vec<(&Dial, Vec<usize>)> = Vec::new();
    for (index, dial) in dials.iter().enumerate() {
        match groups.iter_mut().find(|(first, _)| same(first, dial)) {
            Some((_, group)) => group.push(index),
            None => groups.push((dial, vec![index])),
        }
    }
    groups.into_iter().map(|(_, group)| group).collect()
}

/// `dial 2`, `dials 1 and 3`, `dials 1, 2 and 3`.
pub(crate) fn which(group: &[usize]) -> String {
    let numbers: Vec<String> = group.iter().map(|index| (index + 1).to_string()).collect();
    match numbers.split_last() {
        Some((last, [])) => format!("dial {last}"),
        Some((last, rest)) => format!("dials {} and {last}", rest.join(", ")),
        None => "no dial".to_owned(),
    }
}
