//! Keeper, hinges and screws.

use super::bench::SMALL;
use super::lid::DRILL_AGAIN;
use super::{Job, SCREWS, Source, WorkStep, is_softwood, keeper_pilot};
use crate::holes::WoodPart;

/// Wood that a pilot hole leaves below it, mm: common practice, no source.
const BELOW_PILOT: f64 = 2.0;

impl Job<'_> {
    pub(super) fn keeper(&self) -> WorkStep {
        let seat = self.joinery.keeper;
        let soft = is_softwood(&self.design.body.wood);
        let mut step = WorkStep::new("Fit the keeper");
        step = self.bore_all(step, WoodPart::Keeper, soft);
        step = step
            .mm(
                "keeper's left end, from the left outside",
                seat.left - self.film,
            )
            .mm(
                "keeper's right end, from the left outside",
                seat.right - self.film,
            )
            .mm(
                "edge that the tab clears, from the front's outer face",
                seat.edge - self.film,
            )
            .mm("No. 4 screw: pilot hole", keeper_pilot(self.design));
        if let Some(notch) = self.joinery.notch {
            step = step
                .todo(&["Saw the notch for the tab into the front's upper edge, from the inside, and chisel out the waste."])
                .mm("notch, left end from the left outside", notch.left - self.film)
                .mm("notch, right end from the left outside", notch.right - self.film)
                .mm("notch, down from the upper edge", notch.depth)
                .mm("notch, from the inside face outwards", notch.into);
        } else {
            step = step.todo(&["The keeper stands clear of the front's edge: set it on a block that is screwed to the front inside."]);
        }
        step = self.notes(step, WoodPart::Keeper);
        step.todo(&[
            "Set the keeper with one screw in the middle of its play, close the lid, and try the latch.",
            "Shift it until the tab goes under freely and holds, then bore and set the second screw.",
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
        let hinge = &self.design.body.hinge;
        let soft = is_softwood(&self.design.body.wood);
        let [left, right] = self.joinery.hinges;
        let mut step = WorkStep::new("Let in the hinges").todo(&[
            "Lay the hinge in its place and score round it with a knife before you rout: the line stops the splinters.",
            "Rout just short of the lines, pare to them with a chisel, box first, then lid from the box.",
            "Drive a steel screw of the same size first, then the brass one: brass breaks. Wax the threads.",
        ]);
        for (name, mortise) in [("left hinge", left), ("right hinge", right)] {
            step = step
                .mm(
                    format!("{name}: from the left outside to its left end"),
                    mortise.from - self.film,
                )
                .mm(
                    format!("{name}: from the left outside to its right end"),
                    mortise.to - self.film,
                );
        }
        step = step
            .mm("from the back's outer face inwards", left.width - self.film)
            .mm("depth, one leaf", left.depth.bare);
        for screw in SCREWS.iter().take(2) {
            step = step.mm(
                format!("No. {} screw: pilot hole", screw.gauge),
                screw.pilot(soft),
            );
        }
        let lid = self
            .joinery
            .lid
            .map_or(self.design.plate.thickness, |cut| cut.lid_height);
        let deepest = lid - hinge.thickness - BELOW_PILOT;
        if deepest > 0.0 {
            step = step.mm("pilot holes in the lid, at most", deepest);
        }
        step.fits(&[
            "Before the finish, with two screws a hinge: the lid closes by its weight and lies flat in front.",
            "Take the hinges off for the finish.",
        ])
        .bare(&["the mortises"])
        .caution(&DRILL_AGAIN)
        .caution(&["Chisels are sharp: clamp the work, both hands behind the edge."])
        .from(&[Source::Screws, Source::Practice])
    }
}
