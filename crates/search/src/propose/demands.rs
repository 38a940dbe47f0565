//! Whether a design keeps to what was wished: judged by itself, not by how it was found.

use core::f64::consts::PI;

use latchwright_geometry::trig;

use super::grid::{Grid, stands_on};
use super::lattice::{BORES, Lattice, ROUND_BORE, SIDE, least_knob};
use super::posts::{LEAST_POST, ROUND_POST};
use super::solve::{BEFORE_NOTCH, BESIDE_TAB, LEAST_TAB};
use super::wishes::{Marks, Wishes};
use latchwright_model::Design;
use latchwright_proof::slider_body::{SHOULDER, front_inside};

/// Less than this does not count, mm.
const DUST: f64 = 1e-6;

/// What `design` does not keep to, one sentence each; empty for a design that may be proposed, proven
/// or not.
pub fn unmet(wishes: &Wishes, design: &Design) -> Vec<String> {
    let lattice = Lattice::of(wishes, false, true);
    let mut list = List {
        lattice: &lattice,
        design,
        said: Vec::new(),
    };
    if design.dials.len() != lattice.base.dials.len() || design.dials.is_empty() {
        list.say(
            false,
            &format!(
                "it has {} dials, not {}",
                design.dials.len(),
                lattice.base.dials.len()
            ),
        );
        return list.said;
    }
    list.marks();
    list.given();
    list.alike();
    list.round();
    list.at_hand();
    list.in_the_box();
    for (size, value) in &wishes.pinned {
        list.say(
            size.get(design)
                .is_none_or(|has| (has - value).abs() < DUST),
            &format!("{size:?} is pinned"),
        );
    }
    list.said
}

struct List<'a> {
    lattice: &'a Lattice,
    design: &'a Design,
    said: Vec<String>,
}

impl List<'_> {
    fn say(&mut self, met: bool, sentence: &str) {
        if !met {
            self.said.push(sentence.to_owned());
        }
    }

    fn marks(&mut self) {
        for (number, (dial, marks)) in (1..).zip(self.design.dials.iter().zip(&self.lattice.asked))
        {
            let met = match marks {
                Marks::Exactly(wanted) => dial.positions == *wanted,
                Marks::AtLeast(least) => dial.positions >= *least,
            };
            if !met {
                self.said
                    .push(format!("dial {number} has {} marks", dial.positions));
            }
        }
    }

    /// What is not searched stays as it was given.
    fn given(&mut self) {
        let (base, design) = (&self.lattice.base, self.design);
        self.say(
            design.plate.width <= base.plate.width + DUST
                && design.plate.depth <= base.plate.depth + DUST,
            "the lid is larger",
        );
        let sides = |design: &Design| {
            (
                design.plate.width - design.inside.width,
                design.plate.depth - design.inside.depth,
            )
        };
        let (has, had) = (sides(design), sides(base));
        self.say(
            (has.0 - had.0).abs() < DUST && (has.1 - had.1).abs() < DUST,
            "the room has other sides",
        );
        let kept = design.workmanship == base.workmanship
            && design.season == base.season
            && design.own_woods == base.own_woods
            && design.bench == base.bench
            && design.body == base.body
            && design.slider.material == base.slider.material
            && design.slider.thickness == base.slider.thickness
            && design.slider.shank == base.slider.shank
            && design.slider.pull == base.slider.pull
            && design.slider.friction == base.slider.friction
            && design.slider.guide_play >= base.slider.guide_play
            && design.tab.required_hold == base.tab.required_hold
            && design.keeper.thickness == base.keeper.thickness
            && design.keeper.edge == base.keeper.edge
            && design.plate.thickness == base.plate.thickness
            && design.plate.room == base.plate.room
            && (&design.plate.wood, design.plate.sawn, design.plate.grain)
                == (&base.plate.wood, base.plate.sawn, base.plate.grain);
        self.say(kept, "something that was given is otherwise");
        for (dial, base) in design.dials.iter().zip(&base.dials) {
            let kept = dial.disc.thickness == base.disc.thickness
                && dial.disc.slots.len() == 1
                && dial.pin.make == base.pin.make
                && dial.pin.free == base.pin.free
                && dial.key.clearance == base.key.clearance
                && dial.bore.shaft_play == base.bore.shaft_play;
            if !kept {
                self.said
                    .push("something that was given of a dial is otherwise".to_owned());
            }
        }
    }

    /// One disc, one pin, one bore serve all dials; only marks and keys differ.
    fn alike(&mut self) {
        let mut dials = self.design.dials.iter();
        let Some(first) = dials.next() else { return };
        let alike = dials.all(|dial| {
            dial.disc == first.disc
                && dial.pin == first.pin
                && dial.bore == first.bore
                && dial.knob == first.knob
        });
        let pinned = self.lattice.pinned.iter();
        let by_hand = pinned.clone().any(|(size, _)| size.dial().is_some());
        self.say(alike || by_hand, "its dials are not alike");
    }

    /// Every size stands on the grid of the unit.
    fn round(&mut self) {
        let (design, grid) = (self.design, self.lattice.grid);
        let by_hand = |value: f64| {
            let mut pinned = self.lattice.pinned.iter();
            pinned.any(|(_, pinned)| (pinned - value).abs() < DUST)
        };
        let on = |value: f64, step: f64| stands_on(value, step) || by_hand(value);
        let dials = design.dials.iter().all(|dial| {
            let slots = &dial.disc.slots;
            [dial.disc.radius, dial.pin.gap, dial.key.apothem, dial.knob.diameter]
                .iter()
                .chain(slots.iter().flat_map(|slot| [&slot.width, &slot.depth, &slot.lead_in]))
                .all(|size| on(*size, grid.size))
                // the middle of an even number of dials lies between two places
                && on(dial.centre.0, grid.place / 2.0)
                && on(dial.centre.1, grid.place)
        });
        let whole = [design.slider.travel, design.tab.engagement]
            .iter()
            .all(|size| on(*size, grid.size))
            && on(design.slider.guide_length, grid.place)
            && on(design.tab.width, grid.lid);
        self.say(dials && whole, "a size is not on the grid");
    }

    /// Bits, pins and posts.
    fn at_hand(&mut self) {
        let base = &self.lattice.base;
        let bits = &base.bench.bits;
        let knob = least_knob(base, self.lattice.grid, 0.0);
        for dial in &self.design.dials {
            let bit = bits.is_empty() || bits.contains(&dial.bore.diameter);
            let within = (BORES.0..=BORES.1).contains(&dial.bore.diameter);
            let pin = self.lattice.pins.contains(&dial.pin.diameter);
            let round = dial.bore.diameter / 2.0 - dial.bore.shaft_play - ROUND_POST;
            let reach = dial.key.apothem / trig::cos(PI / f64::from(dial.key.sides.max(3)));
            let post = dial.key.apothem >= LEAST_POST && reach <= round + DUST;
            let knob = dial.knob.diameter >= knob - DUST
                && dial.knob.diameter >= dial.bore.diameter + 2.0 * ROUND_BORE - DUST;
            let mut said = Vec::new();
            for (met, sentence) in [
                (bit && within, "there is no bit for a bore"),
                (pin, "there is no such pin"),
                (post, "a post does not go with its shaft"),
                (knob, "a knob is too small"),
            ] {
                if !met {
                    said.push(sentence.to_owned());
                }
            }
            self.said.extend(said);
        }
    }

    /// Nothing runs into the box.
    fn in_the_box(&mut self) {
        let design = self.design;
        let front = front_inside(design);
        let back = front + design.inside.depth;
        let half = design.inside.width / 2.0;
        for dial in &design.dials {
            let ((x, y), radius) = (dial.centre, dial.disc.radius);
            let beside = radius.max(SHOULDER) + SIDE;
            self.say(
                x.abs() + beside <= half + DUST && y + radius + SIDE <= back + DUST,
                "a disc runs into the box",
            );
        }
        let tip = design.keeper.edge - design.tab.engagement;
        for (met, sentence) in [
            (
                tip >= front - design.body.thickness + BEFORE_NOTCH - DUST,
                "the tab goes through the front",
            ),
            (
                design.tab.width >= LEAST_TAB - DUST,
                "the tab is too narrow",
            ),
            (
                design.keeper.width >= design.tab.width + 2.0 * BESIDE_TAB - DUST,
                "the keeper is too narrow",
            ),
        ] {
            self.say(met, sentence);
        }
        let (hinge, over) = (
            &design.body.hinge,
            design.plate.width - design.inside.width - 2.0 * design.body.thickness,
        );
        self.say(
            design.plate.width - over >= 2.0 * (hinge.length + hinge.inset) - DUST,
            "the hinges do not fit",
        );
    }
}

/// The grid on which a design of these wishes stands.
pub fn grid_of(wishes: &Wishes) -> Grid {
    Grid::of(wishes.base.units)
}
