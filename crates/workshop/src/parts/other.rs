//! Printed parts, and parts that are bought.

use latchwright_model::{Dial, PinMake};

use super::{Form, Lister, Make, Part, PartNote, Role, ScrewUse, Size};
use crate::joinery::Joinery;
use latchwright_assembly::dial::{Washer, disc_screw, post_length, shaft_length, washer};
use latchwright_assembly::finger_knob::{GRIP, finger_knob};
use latchwright_assembly::guide::guide;
use latchwright_assembly::hinge::{HINGES, hinge_screws};
use latchwright_assembly::keeper::keeper_screws;
use latchwright_assembly::screw::JOINING;

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
            // as it stands on the bed: disc, shaft and post
            let tall = dial.disc.thickness + shaft_length(self.design, dial) + post_length(dial);
            let size = Size::of(across, across, tall);
            let mut part = printed(count(&group), Role::Disc(group), size);
            part.notes.push(PartNote::Slots(dial.disc.slots.len()));
            part.notes.push(PartNote::TurnsInBore {
                bore: dial.bore.diameter,
            });
            if disc_screw(self.design, dial, 0.0).length.is_none() {
                part.notes.push(PartNote::GluedToKnob);
            }
            all.push(part);
        }
        all
    }

    pub(super) fn finger_knob(&self) -> Part {
        let knob = finger_knob(self.design);
        let size = Size::of(knob.diameter, GRIP, knob.shank_length);
        let mut part = printed(1, Role::FingerKnob, size);
        part.form = Form::Grip;
        part.notes.push(PartNote::RunsInSlot { shank: knob.shank });
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
            part.form = Form::Rod;
            part.notes.push(PartNote::Pin(pin.make));
            all.push(part);
        }
        all
    }

    /// Washers between plate and disc, those alike on one line.
    pub(super) fn washers(&self) -> Vec<Part> {
        let mut groups: Vec<(Washer, Vec<usize>)> = Vec::new();
        for (index, dial) in self.design.dials.iter().enumerate() {
            let Some(found) = washer(self.design, dial) else {
                continue;
            };
            match groups.iter_mut().find(|(known, _)| *known == found) {
                Some((_, group)) => group.push(index),
                None => groups.push((found, vec![index])),
            }
        }
        let part = |(found, group): (Washer, Vec<usize>)| {
            let size = Size::of(found.outer, found.inner, found.thickness);
            let mut part = printed(count(&group), Role::Washer(group), size);
            part.form = Form::Washer;
            part
        };
        groups.into_iter().map(part).collect()
    }

    /// Hinges, and every screw with its true length; none is listed where none that is sold will do.
    pub(super) fn bought(&self, joinery: &Joinery) -> Vec<Part> {
        let hinge = &self.design.body.hinge;
        let mut hinges = Self::other(
            Role::Hinge,
            Make::Bought,
            HINGES,
            Size::of(hinge.length, hinge.leaf, hinge.thickness),
            "without screws",
        );
        hinges.notes.push(PartNote::WidthOfOneLeaf);
        let leaf = hinge_screws(self.design);
        let leaves = leaf.holes * HINGES;
        let mut all = vec![hinges];
        all.extend(screw(ScrewUse::HingeInLid, leaves, leaf.lid.length));
        all.extend(screw(ScrewUse::HingeInBack, leaves, leaf.back.length));
        let held = keeper_screws(self.design);
        let into_keeper = screw(ScrewUse::Keeper, 2, held.length).map(|mut part| {
            part.notes.push(PartNote::HeadInUpperFace);
            if joinery.keeper.on_front < JOINING.shank + 4.0 {
                part.notes.push(PartNote::LittleWoodInFront);
            }
            part
        });
        all.extend(into_keeper);
        all.extend(screw(ScrewUse::Guide, 4, guide(self.design).screw));
        all.extend(screw(
            ScrewUse::FingerKnob,
            1,
            finger_knob(self.design).screw,
        ));
        all.extend(self.disc_screws());
        all
    }

    /// One a dial, those alike on one line.
    fn disc_screws(&self) -> Vec<Part> {
        let mut groups: Vec<((f64, f64), Vec<usize>)> = Vec::new();
        for (index, dial) in self.design.dials.iter().enumerate() {
            let found = disc_screw(self.design, dial, 0.0);
            let Some(length) = found.length else { continue };
            let same = (length, found.deeper);
            match groups.iter_mut().find(|(known, _)| *known == same) {
                Some((_, group)) => group.push(index),
                None => groups.push((same, vec![index])),
            }
        }
        let part = |((length, deeper), group): ((f64, f64), Vec<usize>)| {
            let many = count(&group);
            let mut part = screw(ScrewUse::Disc(group), many, Some(length))?;
            part.notes.push(PartNote::HeadInDisc);
            if deeper > 0.0 {
                part.notes.push(PartNote::HeadDeeper { deeper });
            }
            part.notes.push(PartNote::NeverAPressFitAlone);
            Some(part)
        };
        groups.into_iter().filter_map(part).collect()
    }
}

/// So many No. 4 screws of this length; `None` where none that is sold will do.
fn screw(held: ScrewUse, count: u32, length: Option<f64>) -> Option<Part> {
    let size = Size::of(length?, JOINING.shank, JOINING.shank);
    let what = "countersunk wood screw";
    let mut part = Lister::other(Role::Screw(held), Make::Bought, count, size, what);
    part.form = Form::Screw;
    Some(part)
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
