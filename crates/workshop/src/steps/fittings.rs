//! Keeper, hinges and screws.

use super::bench::SMALL;
use super::lid::DRILL_AGAIN;
use super::{Job, Source, WorkStep, is_softwood, keeper_bit};
use crate::holes::WoodPart;
use latchwright_assembly::bit::{Bit, Fit};
use latchwright_assembly::hinge::hinge_screws;
use latchwright_assembly::keeper::{keeper_screws, pilot_depth};
use latchwright_assembly::screw::JOINING;

impl Job<'_> {
    pub(super) fn keeper(&self) -> WorkStep {
        let seat = self.joinery.keeper;
        let soft = is_softwood(&self.design.body.wood);
        let mut step = WorkStep::new("Fit the keeper");
        step = self.bore_all(step, WoodPart::Keeper, soft);
        step = step
            .cut(
                "keeper's left end, from the left outside",
                seat.left - self.film,
            )
            .cut(
                "keeper's right end, from the left outside",
                seat.right - self.film,
            )
            .cut(
                "edge that the tab clears, from the front's outer face",
                seat.edge - self.film,
            )
            .mm(
                "overlap of tab and keeper, shut",
                self.design.tab.engagement,
            )
            .screw(
                "keeper in the front",
                keeper_screws(self.design).length,
                keeper_bit(self.design).bored(),
                pilot_depth(self.design),
            );
        if let Some(notch) = self.joinery.notch {
            step = step
                .todo(&["Saw the notch for the tab into the front's upper edge, from the inside, and chisel out the waste."])
                .cut("notch, left end from the left outside", notch.left - self.film)
                .cut("notch, right end from the left outside", notch.right - self.film)
                .mm("notch, down from the upper edge", notch.depth)
                .mm("notch, from the inside face outwards", notch.into);
        } else {
            step = step.todo(&["The keeper stands clear of the front's edge: set it on a block that is screwed to the front inside."]);
        }
        step = self.notes(step, WoodPart::Keeper);
        step.todo(&[
            "Hold the keeper in its place with double-sided tape, its countersunk face up, rub chalk on the tab, close the \
             lid, and push the slider forward and back: the chalk under the keeper shows how far the tab reaches.",
            "Shift the keeper until the tab goes under freely by the overlap given. Then bore the front through the \
             keeper's holes, and screw it.",
        ])
        .fits(&[
            "Before the finish: the lid lies flat on the sides with the keeper in the rabbet.",
            "After the finish: the tab runs under it without rubbing.",
        ])
        .bare(&["the seat of the keeper and the notch"])
        .caution(&DRILL_AGAIN)
        .caution(&[SMALL])
        .from(&[Source::Screws, Source::DrillSpeeds, Source::Practice])
    }

    pub(super) fn hinges(&self) -> WorkStep {
        let soft = is_softwood(&self.design.body.wood);
        let [left, right] = self.joinery.hinges;
        let mut step = WorkStep::new("Let in the hinges").todo(&[
            "Lay the hinge in its place and score round it with a knife before you rout: the line stops the splinters.",
            "Rout just short of the lines, pare to them with a chisel, box first, then lid from the box.",
            "Drive a steel screw of the same size first, then the brass one: brass breaks. Wax the threads.",
        ]);
        for (name, mortise) in [("left hinge", left), ("right hinge", right)] {
            step = step
                .cut(
                    format!("{name}: from the left outside to its left end"),
                    mortise.from - self.film,
                )
                .cut(
                    format!("{name}: from the left outside to its right end"),
                    mortise.to - self.film,
                );
        }
        step = step
            .cut("from the back's outer face inwards", left.width - self.film)
            .cut("depth, one leaf", left.depth.bare);
        let screws = hinge_screws(self.design);
        let lid_wood = match self.joinery.lid {
            Some(_) => &self.design.body.wood,
            None => &self.design.plate.wood,
        };
        for (name, leaf, soft) in [
            ("hinge in the lid", screws.lid, is_softwood(lid_wood)),
            ("hinge in the back", screws.back, soft),
        ] {
            let bit = Bit::nearest(&self.design.bench, JOINING.pilot(soft), Fit::Fast);
            step = step.screw(name, leaf.length, bit.bored(), leaf.pilot_depth());
        }
        step.fits(&[
            "Before the finish, with two screws a hinge: the lid closes by its weight and lies flat in front.",
        ])
        .bare(&["the mortises"])
        .caution(&DRILL_AGAIN)
        .caution(&["Chisels are sharp: clamp the work, both hands behind the edge."])
        .from(&[Source::Screws, Source::Practice])
    }
}
