//! Printed parts, and parts that are bought.

use latchwright_model::{Dial, PinMake};

use super::{Lister, Make, Part, PartNote, Role, Size};
use crate::holes::SCREW;
use crate::joinery::Joinery;

/// How far a screw should go into the wood below, mm: common practice, no source.
const BITE: f64 = 12.0;

impl Lister<'_> {
    /// Knobs and discs, those alike on one line.
    pub(super) fn dials(&self) -> Vec<Part> {
        let dials = &self.design.dials;
        let mut all = Vec::new();
        let knobs = alike(dials, |one, other| {
            one.knob == other.knob && one.key == other.key
        });
        for group in knobs {
            let Some(dial) = group.first().and_then(|index| dials.get(*index)) else {
                continue;
            };
            let size = Size::of(dial.knob.diameter, dial.knob.diameter, dial.knob.height);
            all.push(printed(count(&group), Role::Knob(group), size));
        }
        for group in alike(dials, |one, other| {
            one.disc == other.disc && one.key == other.key && one.bore == other.bore
        }) {
            let Some(dial) = group.first().and_then(|index| dials.get(*index)) else {
                continue;
            };
            let across = 2.0 * dial.disc.radius;
            let size = Size::of(across, across, dial.disc.thickness);
            let mut part = printed(count(&group), Role::Disc(group), size);
            part.notes.push(PartNote::Slots(dial.disc.slots.len()));
            part.notes.push(PartNote::TurnsInBore {
                bore: dial.bore.diameter,
            });
            all.push(part);
        }
        all
    }

    pub(super) fn finger_knob(&self) -> Part {
        let shank = self.design.slider.shank;
        let size = Size::of(2.5 * shank, 2.5 * shank, 2.0 * shank);
        let mut part = printed(1, Role::FingerKnob, size);
        part.notes.push(PartNote::RunsInSlot { shank });
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
            let (make, material) = match pin.make {
                PinMake::Steel => (Make::Bought, "steel rod"),
                PinMake::Dowel => (Make::Bought, "hardwood dowel"),
                PinMake::PrintedLying | PinMake::PrintedStanding => (Make::Printed, "printed"),
            };
            let size = Size::of(pin.height, pin.diameter, pin.diameter);
            let many = count(&group);
            let mut part = Self::other(Role::Pin(group), make, many, size, material);
            part.notes.push(PartNote::Pin(pin.make));
            all.push(part);
        }
        all
    }

    pub(super) fn bought(&self, joinery: &Joinery) -> Vec<Part> {
        let (hinge, keeper) = (&self.design.body.hinge, &self.design.keeper);
        let mut hinges = Self::other(
            Role::Hinge,
            Make::Bought,
            2,
            Size::of(hinge.length, hinge.leaf, hinge.thickness),
            "with its own screws",
        );
        hinges.notes.push(PartNote::WidthOfOneLeaf);
        let mut screws = Self::other(
            Role::KeeperScrew,
            Make::Bought,
            2,
            Size::of(keeper.thickness + BITE, SCREW, SCREW),
            "countersunk wood screw",
        );
        if joinery.keeper.on_front < SCREW + 4.0 {
            screws.notes.push(PartNote::LittleWoodInFront);
        }
        let dials = u32::try_from(self.design.dials.len()).unwrap_or(0);
        let mut all = vec![hinges, screws];
        if dials > 0 {
            let mut disc = Self::other(
                Role::DiscScrew,
                Make::Bought,
                dials,
                Size::of(10.0, 3.0, 3.0),
                "self-tapping, for plastic",
            );
            disc.notes.push(PartNote::NeverAPressFitAlone);
            all.push(disc);
        }
        all
    }
}

fn printed(count: u32, role: Role, size: Size) -> Part {
    Lister::other(role, Make::Printed, count, size, "printed")
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
