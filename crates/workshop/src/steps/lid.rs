//! Plate, slider and guide.

use super::bench::SMALL;
use super::{Job, Source, Todo, Value, WorkStep, drill_speed, is_softwood};
use crate::holes::{Depth, Hole, Tool, WoodPart};
use crate::note::alike_once;
use crate::parts::{alike, which};
use latchwright_model::{Material, PinMake};
use latchwright_proof::slider_body::{RABBET_AIR, strips};

/// On the first step with a drill.
const DRILL: [&str; 5] = [
    "Clamp the work: a bit that catches spins it. Never hold it by hand under a large bit.",
    "Large bits turn slowly; begin at the slower speed.",
    "Wear eye protection; no gloves, loose sleeves or long hair near a turning bit.",
    "Pull the plug or take out the battery before you change a bit.",
    "The drill's manual and local rules go before this sheet.",
];
/// On every later step with a drill.
pub(super) const DRILL_AGAIN: [&str; 3] = [
    "Clamp the work: a bit that catches spins it. Large bits turn slowly.",
    "Eye protection; no gloves, loose sleeves or long hair: as for boring the plate.",
    "The drill's manual and local rules go before this sheet.",
];
/// Free on each side of the keeper in its rabbet, mm: common practice, no source.
const BESIDE_KEEPER: f64 = 1.5;

impl Job<'_> {
    /// The settings of holes that are bored alike: each diameter in its order, with depth and speed.
    fn hole(mut step: WorkStep, name: &str, hole: &Hole, soft: bool) -> WorkStep {
        for diameter in &hole.steps {
            let Tool::Bit(bit) = diameter.tool else {
                step = step.mm(format!("{name}: countersink to"), diameter.diameter);
                continue;
            };
            step = step.mm(format!("{name}: bit"), bit.bored());
            step = match diameter.depth {
                Depth::Through(wood) => step.mm(format!("{name}: through wood of"), wood),
                Depth::Blind(deep) => step.mm(format!("{name}: depth stop"), deep),
            };
            if let Some((slow, fast)) = drill_speed(bit.bored(), soft) {
                step = step.set(format!("{name}: speed"), Value::Rpm(slow, fast));
            }
        }
        step
    }

    /// All holes of one part, those alike together.
    pub(super) fn bore_all(&self, mut step: WorkStep, part: WoodPart, soft: bool) -> WorkStep {
        let mut groups: Vec<Vec<&Hole>> = Vec::new();
        for hole in self
            .holes
            .holes
            .iter()
            .filter(|hole| hole.kind.part() == part)
        {
            let twin =
                |group: &&mut Vec<&Hole>| group.iter().all(|other| other.steps == hole.steps);
            match groups.iter_mut().find(twin) {
                Some(group) => group.push(hole),
                None => groups.push(vec![hole]),
            }
        }
        for group in groups {
            let Some(first) = group.first() else { continue };
            let names: Vec<String> = group.iter().map(|hole| hole.kind.name()).collect();
            let name = names.join(", ");
            step = Self::hole(step, &name, first, soft);
            if first.steps.len() > 1 {
                step = step.say(format!(
                    "{}: bore all diameters on one centre without moving the work, in the order given.",
                    sentence(&name)
                ));
            }
        }
        step
    }

    /// What is to be known of the holes of this part; what is alike of several is said once.
    pub(super) fn notes(&self, mut step: WorkStep, part: WoodPart) -> WorkStep {
        let notes = self.holes.notes.iter();
        let own = notes.filter(|note| note.about.part() == part);
        step.todo
            .extend(alike_once(own).into_iter().map(Todo::Note));
        step
    }

    pub(super) fn plate_holes(&self) -> WorkStep {
        let soft = is_softwood(&self.design.plate.wood);
        let mut step = WorkStep::new("Bore the plate").todo(&[
            "Glue or tape the template on the face that it names, and prick every centre with an awl.",
            "Bore from the outside face with scrap clamped tight behind, so that the back does not splinter.",
            "Where several diameters share a centre, the widest comes first: later its centre is gone.",
        ]);
        step = self.bore_all(step, WoodPart::Plate, soft);
        for slot in self
            .holes
            .slots
            .iter()
            .filter(|slot| slot.kind.part() == WoodPart::Plate)
        {
            let name = slot.kind.name();
            step = step
                .mm(format!("{name}: bit"), slot.bit.bored())
                .set(format!("{name}: holes"), Value::Count(slot.row.count))
                .mm(format!("{name}: from hole to hole"), slot.row.pitch)
                .mm(format!("{name}: left to pare"), slot.row.cusp)
                .say(format!(
                    "{}: bore both ends before the middle, then the holes between them, and pare the walls with \
                     a chisel to the lines.",
                    sentence(&name)
                ));
            if !slot.row.wood_at_centres {
                step = step.say(format!(
                    "{}: the point finds no wood between the ends; use a bit that its rim guides, or bore into a \
                     glued-in plug.",
                    sentence(&name)
                ));
            }
            if let Some((slow, fast)) = drill_speed(slot.bit.bored(), soft) {
                step = step.set(format!("{name}: speed"), Value::Rpm(slow, fast));
            }
        }
        step = self.notes(step, WoodPart::Plate);
        step.fits(&[
            "Before the finish: every shaft turns and every shank slides freely by its play.",
            "After the finish: again; a coat that ran in is pared out, not forced.",
        ])
        .bare(&["bores and slot"])
        .caution(&DRILL)
        .from(&[Source::DrillSpeeds, Source::Practice])
    }

    pub(super) fn rabbet(&self) -> WorkStep {
        let (plate, keeper) = (&self.design.plate, &self.design.keeper);
        let half =
            keeper.width / 2.0 + BESIDE_KEEPER + self.design.workmanship.keeper_place.max(0.0);
        let middle = plate.width / 2.0 + self.design.tab.at;
        WorkStep::new("Cut the rabbet over the keeper")
            .todo(&[
                "It is in the underside, at the front edge, over the keeper; score its end lines with a knife first.",
                "Take it out in thin passes, and the last one at full depth.",
            ])
            .mm("fence, from the plate's front edge", keeper.edge + RABBET_AIR - self.film)
            .mm("depth", plate.rabbet)
            .mm("left end, from the plate's left edge seen from outside", middle - half - self.film)
            .mm("right end, from the plate's left edge seen from outside", middle + half - self.film)
            .fits(&[
                "Before the finish: keeper in the rabbet, the lid lies flat.",
                "After the finish: again; coats take room here.",
            ])
            .caution(&[
                "Rout against the turn of the bit, never with it; clamp the work, keep both hands on the handles.",
                "Wear eye and ear protection and a mask; the router's manual goes before this sheet.",
            ])
            .from(&[Source::Practice])
    }

    pub(super) fn slider(&self) -> WorkStep {
        let slider = &self.design.slider;
        let mut step = WorkStep::new("Make the slider with its pins");
        if matches!(slider.material, Material::Printed) {
            step = step.todo(&[
                "The slider is printed: see the step of printing; file its sliding faces smooth.",
            ]);
        } else {
            let soft = match &slider.material {
                Material::Wood { species, .. } => is_softwood(species),
                _ => false,
            };
            step = step.todo(&[
                "Bore the pins' holes while the blank is still a rectangle, square to its face, with scrap behind.",
                "Then cut the outline by the template, leave the lines, and file to them.",
            ]);
            step = self.bore_all(step, WoodPart::Slider, soft);
            step = self.notes(step, WoodPart::Slider);
        }
        let glued = self
            .design
            .dials
            .iter()
            .any(|dial| matches!(dial.pin.make, PinMake::Steel));
        if glued {
            step = step
                .todo(&["Roughen the steel pins, glue them in with epoxy, upright by a square."]);
        }
        let dials = &self.design.dials;
        for group in alike(dials, |one, other| one.pin.height == other.pin.height) {
            if let Some(dial) = group.first().and_then(|index| dials.get(*index)) {
                step = step.mm(
                    format!("length of the pin, {}", which(&group)),
                    dial.pin.height,
                );
            }
        }
        step.mm("thickness", self.less_coats(slider.thickness))
            .fits(&["Before the finish: laid on the template, every pin stands within its ±."])
            .bare(&["all sliding faces: wax them"])
            .caution(&DRILL_AGAIN)
            .caution(&[SMALL, "Epoxy: gloves, fresh air, and read its label."])
            .from(&[Source::DrillSpeeds, Source::Practice])
    }

    pub(super) fn guide(&self) -> WorkStep {
        let slider = &self.design.slider;
        let (front, back) = strips(self.design);
        WorkStep::new("Set the guide")
            .todo(&[
                "Lay the slider on the plate's underside in its place, a strip of card between them for the clear \
                 distance.",
                "Slider forward, set one strip along its neck, its front end as far from the plate's front edge as \
                 given, and screw it fast; set the other with card between, then screw it.",
                "Push the slider forward: its bar must not come to the strips. If it does, measure where both are; \
                 shorter strips let the slider turn further than is proven.",
                "Screw the bridges across the strips from below; no glue until it has been tried.",
            ])
            .mm("between the strips", self.design.tab.width + 2.0 * slider.guide_play)
            .mm("clear between plate and slider", slider.below)
            .mm("travel, from stop to stop", slider.travel)
            .mm("length of the strips, guide and travel together", back - front)
            .mm("their front ends from the plate's front edge", front)
            .fits(&[
                "Before the finish: the slider runs from stop to stop by its own weight when the lid is tilted.",
                "After the finish, and once more after a week: the same.",
            ])
            .bare(&["strips and bridges where the slider runs: wax them"])
            .caution(&[
                "Screws must end inside the plate: set the depth of every pilot hole with a stop.",
                SMALL,
            ])
            .from(&[Source::Practice])
    }
}

/// With a capital letter.
pub(super) fn sentence(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}
