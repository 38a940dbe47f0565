//! Printing, finish, assembly, and what is tried before the box is given away.

use latchwright_model::Material;

use super::{Job, Source, Value, WorkStep};
use crate::inch::decimal;
use crate::parts::{PartNote, Role, ScrewUse, alike, parts, which};
use latchwright_assembly::dial::disc_screw;

/// What of the prints is coated.
const BARE_PRINTS: [&str; 1] = ["Prints stay bare: they are drawn without a coat."];
const COATED_PRINTS: [&str; 1] = [
    "Of the prints coat only what is seen: knobs, rings and the grip of the finger knob; never post, star, shaft, shank, \
     disc, pin, washer, keeper or slider.",
];

/// Where the bed spreads a print, break the edge by this, mm: common practice, no source.
const CHAMFER: f64 = 0.5;

impl Job<'_> {
    pub(super) fn print(&self) -> WorkStep {
        let printer = &self.design.bench.printer;
        let key = self.design.dials.first().map(|dial| &dial.key);
        let mut step = WorkStep::new("Print the parts")
            .todo(&[
                "Print the fit gauge first and type its readings in, then the parts: what is bored next is tried with them.",
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
                "Take hinges, keeper, guide, slider and finger knob off, and keep each with its screws.",
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
            .todo(&["Coat sides, floor, plate and the keeper but for its lower face."])
            .todo(if self.design.bench.coated_prints { &COATED_PRINTS } else { &BARE_PRINTS })
            .bare(&[
                "joints and grooves",
                "bores and slot",
                "mortises, the notch, and the keeper's lower face with its seat",
                "slider, strips and bridges: wax them",
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
            "Put the knob on the post from outside, pointer towards the hinges; its screw comes with the combination.",
            "Lay the slider in its place, put the finger knob's shank from outside through the slot into its socket, and screw \
             it fast from below.",
            "Lay the strips beside the neck and the bridges across, and screw them home.",
        ]);
        step = step.todo(&["Set hinges and keeper again in their holes."]);
        if !printed {
            step = step.todo(&["Wax, not oil, on wood that slides."]);
        }
        for part in parts(self.design) {
            let held = match &part.role {
                Role::Washer(dials) => {
                    let name = format!("washer between plate and disc, {}", which(dials));
                    step = step.mm(name, part.finished.thickness);
                    continue;
                }
                Role::Screw(held @ (ScrewUse::Guide | ScrewUse::FingerKnob)) => held.name(),
                _ => continue,
            };
            step = step.set(held, Value::Screw(part.finished.length));
        }
        step.fits(&["The slider runs from stop to stop while every true slot faces its pin."])
            .caution(&["Screws and pins are small parts: count them, and keep them from children."])
            .from(&[Source::Practice])
    }

    pub(super) fn combination(&self) -> WorkStep {
        let mut step = WorkStep::new("Set the combination at the back").todo(&[
            "Take the combination from the setting sheet; this sheet does not tell it.",
            "Turn each pointer to its mark of the combination and hold the knob there, a little off the plate.",
            "From the back, draw the disc down until its post is out of the star, turn it until its true slot faces its \
             pin, and push it home; from the back everything is mirrored.",
            "Set the screw that joins disc and knob, from the disc's underside: a press fit is never the only thing that \
             keeps them.",
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
        step = self.disc_screws(step);
        step.from(&[Source::Practice])
    }

    /// The screws that join discs and knobs, and what is done where none will do.
    fn disc_screws(&self, mut step: WorkStep) -> WorkStep {
        for part in parts(self.design) {
            let Role::Screw(held @ ScrewUse::Disc(dials)) = &part.role else {
                continue;
            };
            step = step.set(held.name(), Value::Screw(part.finished.length));
            for note in &part.notes {
                if let PartNote::HeadDeeper { deeper } = note {
                    let name = format!("its head below the disc's face, {}", which(dials));
                    step = step.mm(name, *deeper);
                }
            }
        }
        let screwless = self.design.dials.iter().enumerate().filter(|(_, dial)| {
            let screw = disc_screw(self.design, dial, 0.0);
            screw.length.is_none()
        });
        let glued: Vec<usize> = screwless.map(|(index, _)| index).collect();
        if glued.is_empty() {
            return step;
        }
        step.say(format!(
            "No screw that is sold joins disc and knob of {}: glue them, once the combination is to stay.",
            which(&glued)
        ))
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
