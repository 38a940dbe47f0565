//! Printing, finish, assembly, and what is tried before the box is given away.

use latchwright_model::Material;

use super::{Job, Source, Value, WorkStep};
use crate::inch::decimal;
use crate::parts::{alike, which};

/// Where the bed spreads a print, break the edge by this, mm: common practice, no source.
const CHAMFER: f64 = 0.5;

impl Job<'_> {
    pub(super) fn print(&self) -> WorkStep {
        let printer = &self.design.bench.printer;
        let key = self.design.dials.first().map(|dial| &dial.key);
        let mut step = WorkStep::new("Print the parts")
            .todo(&[
                "Print the fit gauge first and type its readings in.",
                "Lay discs and knobs flat; pins lie down, so that layers run along them.",
                "Give every edge that leaves the bed a small chamfer, or cut it with a knife: the first layers \
                 spread.",
                "Let parts cool before you measure them.",
            ])
            .mm("layer", printer.layer.clamp(0.0, 10.0))
            .mm("nozzle", printer.nozzle.clamp(0.0, 10.0))
            .mm("chamfer where it leaves the bed", CHAMFER);
        if let Some(key) = key {
            step = step.mm("clearance on each flat of the key", key.clearance);
        }
        step.fits(&["Each disc's post goes into its knob's star by hand in every position, without rocking."])
            .caution(&[
                "The nozzle is as hot as an oven and the bed burns too; let fresh air in, and do not leave it alone.",
                "Small parts are not for children under three.",
            ])
            .from(&[Source::FirstLayers, Source::Practice])
    }

    pub(super) fn finish(&self) -> WorkStep {
        let coats = self.design.bench.coats;
        let work = &self.design.workmanship;
        WorkStep::new("Finish the wood")
            .todo(&[
                "Sand with the grain, the last grit everywhere; take the dust off.",
                "First a thin sealing coat, also under marks and labels: inks run along bare fibres.",
                "Then marks, labels and pictures; let inks dry until they no longer smear under a wet finger.",
                "Then the other coats, the last one over the inks; try the ink under the finish on scrap first.",
                "Give both faces of the plate the same coats on the same day, or it warps.",
                "Round the edges a little before: coats run thin on sharp ones.",
            ])
            .say(format!(
                "Coats on each face: {coats}, together {}, ± {}: measure it on scrap, and change the design's film if yours is \
                 thicker.",
                self.rule.say_fine(self.film),
                self.rule.say_fine(work.film_spread.clamp(0.0, 100.0))
            ))
            .set("coats on each face", Value::Count(coats))
            .fits(&["When dry: every fit of the steps before, once more."])
            .bare(&[
                "joints and grooves",
                "bores and slot",
                "mortises and the seat of the keeper",
                "sliding faces of slider, strips and bridges",
            ])
            .caution(&[
                "Rags with oil can catch fire by themselves: spread them out to dry outdoors, or keep them under water \
                 in a closed tin.",
                "Fresh air, no flame, gloves; read the label, also whether it is fit for food or toys once cured.",
                "Wear a mask when you sand.",
            ])
            .from(&[Source::Practice])
    }

    pub(super) fn assembly(&self) -> WorkStep {
        let printed = matches!(self.design.slider.material, Material::Printed);
        let mut step = WorkStep::new("Assemble the lid").todo(&[
            "Lay the plate face down on a cloth.",
            "Put a washer on each disc's shaft and the shaft through its bore from below.",
            "Put the knob on the post from outside, pointer towards the hinges; do not fix it yet.",
            "Lay the slider in its guide, put the finger knob's shank through the slot, and screw it fast.",
            "Screw strips and bridges home.",
        ]);
        if !printed {
            step = step.todo(&["Wax, not oil, on wood that slides."]);
        }
        let dials = &self.design.dials;
        for group in alike(dials, |one, other| one.disc.below == other.disc.below) {
            if let Some(dial) = group.first().and_then(|index| dials.get(*index)) {
                let name = format!("washer between plate and disc, {}", which(&group));
                step = step.mm(name, dial.disc.below);
            }
        }
        step.fits(&["The slider runs from stop to stop while every true slot faces its pin."])
            .caution(&["Screws and pins are small parts: count them, and keep them from children."])
            .from(&[Source::Practice])
    }

    pub(super) fn combination(&self) -> WorkStep {
        let mut step = WorkStep::new("Set the combination at the back").todo(&[
            "Take the combination from the maker's sheet; this sheet does not tell it.",
            "Turn each pointer to its mark of the combination and hold the knob there, a little off the plate.",
            "From the back, draw the disc down until its post is out of the star, turn it until its true slot faces its \
             pin, and push it home; from the back everything is mirrored.",
            "Set the screw that joins disc and knob: a press fit is never the only thing that keeps them.",
            "Check: turn every dial away and back to its mark; the slider must go back. Then turn one dial by one \
             mark; it must not, unless the \
             design opens there too. Do so with each dial.",
            "Close the lid only when that has passed, with the combination written down.",
        ]);
        let dials = &self.design.dials;
        for group in alike(dials, |one, other| one.positions == other.positions) {
            if let Some(dial) = group.first().and_then(|index| dials.get(*index)) {
                let name = format!("from mark to mark, {}", which(&group));
                step = step.set(name, Value::Degrees(dial.step_deg()));
            }
        }
        step.from(&[Source::Practice])
    }

    pub(super) fn tests(&self) -> WorkStep {
        let tab = &self.design.tab;
        let pull = self.design.slider.pull.clamp(0.0, 1000.0);
        WorkStep::new("Try everything before you give it away")
            .todo(&[
                "Open it ten times at the combination; it opens each time without force.",
                "On each dial try both marks beside the right one: the slider stops, and the lid holds.",
                "Shake it shut, any way up: it stays shut.",
                "Pull hard at the slider with one hand at a wrong setting: nothing bends, nothing opens.",
                "Lift the lid and let it fall shut from a hand's breadth: hinges and keeper stay where they are.",
                "Let it stand for some days in a dry and in a damp room, and try again.",
                "Write down how to get in when the combination is forgotten, and keep it apart from the box.",
            ])
            .say(format!(
                "Pulled by hand means about {} N, as the proof reckons.",
                decimal(pull)
            ))
            .mm("least overlap of tab and keeper that counts as held", tab.required_hold.clamp(0.0, 1000.0))
            .caution(&[
                "It keeps secrets, not valuables: who feels for it patiently can open it.",
                "For a child: no small part may come loose, no finger may be caught by the lid, and nobody may ever be \
                 able to climb in.",
            ])
            .from(&[Source::Practice])
    }
}
