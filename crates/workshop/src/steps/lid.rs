//! Plate, slider and guide.

use super::bench::SMALL;
use super::{Job, Source, Todo, Value, WorkStep, drill_speed, is_softwood};
use crate::feature::{Feature, HoleKind};
use crate::holes::{Depth, Hole, Tool, WoodPart};
use crate::note::alike_once;
use crate::parts::{alike, which};
use latchwright_assembly::bit::{Bit, Fit};
use latchwright_assembly::finger_knob::finger_knob;
use latchwright_assembly::guide::guide;
use latchwright_assembly::screw::{CLEARANCE, HEAD, JOINING};
use latchwright_assembly::slider_body::{SliderBody, rabbet};
use latchwright_model::{Material, PinMake};

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

impl Job<'_> {
    /// The settings of holes that are bored alike: each diameter in its order, with depth and speed.
    fn hole(mut step: WorkStep, name: &str, hole: &Hole, soft: bool) -> WorkStep {
        for diameter in &hole.steps {
            let bit = match diameter.tool {
                Tool::Bit(bit) => bit,
                Tool::Countersink => {
                    step = step.mm(format!("{name}: countersink to"), diameter.diameter);
                    continue;
                }
                Tool::CountersinkBelow => {
                    let what = format!("{name}: countersink from the other face to");
                    step = step.mm(what, diameter.diameter);
                    continue;
                }
            };
            step = step.set(format!("{name}: bit"), Value::Bit(bit.bored()));
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
            let name = together(&group);
            step = Self::hole(step, &name, first, soft);
            let below = first
                .steps
                .iter()
                .any(|one| one.tool == Tool::CountersinkBelow);
            if first.steps.len() > 1 {
                let last = if below {
                    "; then turn it over and countersink"
                } else {
                    ""
                };
                step = step.say(format!(
                    "{}: bore all diameters on one centre without moving the work, in the order given{last}.",
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
            "The guide's screws have pilot holes in the underside: prick them by the template of the back, and bore with a \
             depth stop.",
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
                .set(format!("{name}: bit"), Value::Bit(slot.bit.bored()))
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
            "Before the finish: every printed shaft turns in its bore, and the finger knob's shank slides freely.",
            "After the finish: again; a coat that ran in is pared out, not forced.",
        ])
        .bare(&["bores and slot"])
        .caution(&DRILL)
        .from(&[Source::DrillSpeeds, Source::Practice])
    }

    /// `None` where nothing of it lies on the plate.
    pub(super) fn rabbet(&self) -> Option<WorkStep> {
        let plate = &self.design.plate;
        let area = rabbet(self.design)?;
        let from_left = plate.width / 2.0 - self.film;
        let step = WorkStep::new("Cut the rabbet over the keeper")
            .todo(&[
                "It is in the underside, at the front edge, over the keeper; score its end lines with a knife first.",
                "Take it out in thin passes, and the last one at full depth.",
            ])
            .cut("fence, from the plate's front edge", area.max.y - self.film)
            .mm("depth", plate.rabbet)
            .mm("length along the front", area.width())
            .cut("left end, from the plate's left edge seen from outside", from_left + area.min.x)
            .cut("right end, from the plate's left edge seen from outside", from_left + area.max.x)
            .fits(&[
                "Before the finish: the keeper drops into it with air on both sides and behind.",
                "After the finish: again; coats take room here.",
            ])
            .caution(&[
                "Rout against the turn of the bit, never with it; clamp the work, keep both hands on the handles.",
                "Wear eye and ear protection and a mask; the router's manual goes before this sheet.",
            ])
            .from(&[Source::Practice]);
        Some(step)
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
                "While the blank is still a rectangle, lower its back end for the fingers: saw or rout from the upper face, \
                 from the line at which the fingers begin.",
                "Then bore the pins' holes and the finger knob's socket, square to the face, with scrap behind.",
                "Then cut the outline by the template, leave the lines, and file to them.",
            ]);
            step = self.fingers(step);
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
        let knob = finger_knob(self.design);
        if let Some(length) = knob.screw {
            step = step.set("finger knob, from below: screw", Value::Screw(length));
        }
        step.mm("thickness", slider.thickness)
            .fits(&["Before the finish: laid on the template, every pin stands within its ±."])
            .bare(&["all sliding faces: wax them"])
            .caution(&DRILL_AGAIN)
            .caution(&[SMALL, "Epoxy: gloves, fresh air, and read its label."])
            .from(&[Source::DrillSpeeds, Source::Practice])
    }

    /// How deep the fingers are lowered, and from where.
    fn fingers(&self, mut step: WorkStep) -> WorkStep {
        let body = SliderBody::of(self.design);
        let fingers = body.fingers(self.design);
        let below = self.design.slider.below;
        let mut told: Vec<f64> = Vec::new();
        for finger in &fingers {
            let deep = finger.top - below;
            if deep <= 0.0 || told.iter().any(|known| (known - deep).abs() < 1e-9) {
                continue;
            }
            told.push(deep);
            let same = fingers
                .iter()
                .filter(|one| (one.top - finger.top).abs() < 1e-9);
            let mut dials: Vec<usize> = same.map(|one| one.dial).collect();
            dials.sort_unstable();
            let name = format!("fingers, {}: lowered from the upper face", which(&dials));
            step = step.mm(name, deep);
        }
        if told.is_empty() {
            return step;
        }
        step.mm(
            "fingers begin, from the tab's tip",
            body.bar_max.y - body.tip,
        )
    }

    pub(super) fn guide(&self) -> WorkStep {
        let slider = &self.design.slider;
        let guide = guide(self.design);
        let [left, right] = guide.strips.map(|strip| strip.area);
        let [front, back] = guide.bridges.map(|bridge| bridge.area);
        let half = self.design.plate.width / 2.0;
        let soft = is_softwood(&self.design.plate.wood);
        let bit = Bit::nearest(&self.design.bench, JOINING.pilot(soft), Fit::Fast).bored();
        let deep = guide.pilot_depth();
        WorkStep::new("Set the guide")
            .todo(&[
                "Strips and bridges are screwed together to the plate's underside: one screw at each place where a bridge \
                 lies on a strip goes through both into its pilot hole.",
                "Bore strips and bridges in the middle of their width, clamped together, and sink the heads in the bridges.",
                "Lay the slider on the underside, a strip of card between them for the clear distance, and screw one strip \
                 with its bridges on; set the other with card beside the neck, then screw it. No glue until it has been tried.",
                "Put the finger knob on, its shank through the slot into its socket, and screw it from below: it is pulled by \
                 it from here on.",
                "Push the slider forward: its bar must not come to the strips. If it does, measure where both are; \
                 shorter strips let the slider turn further than is proven.",
            ])
            .mm("between the strips", right.min.x - left.max.x)
            .mm("clear between plate and slider", slider.below)
            .mm("travel, from stop to stop", slider.travel)
            .mm("length of the strips, guide and travel together", left.height())
            .cut("strips: front ends from the plate's front edge", left.min.y - self.film)
            .cut("left strip, seen from outside: its outer side from the plate's left edge", half + left.min.x - self.film)
            .cut("right strip, seen from outside: its outer side from the plate's right edge", half - right.max.x - self.film)
            .cut("front bridge: its front edge from the plate's front edge", front.min.y - self.film)
            .cut("back bridge: its back edge from the plate's front edge", back.max.y - self.film)
            .set("holes in strips and bridges: bit", Value::Bit(Bit::nearest(&self.design.bench, CLEARANCE, Fit::Running).bored()))
            .mm("holes in the strips: from each end", front.height() / 2.0)
            .mm("holes in the bridges: from each end", left.width() / 2.0)
            .mm("holes in the bridges: countersink to", HEAD)
            .screw("guide", guide.screw, bit, deep)
            .fits(&[
                "Before the finish: the slider runs from stop to stop by its own weight when the lid is tilted.",
                "After the finish, and once more after a week: the same.",
            ])
            .bare(&["strips and bridges: wax them", "the plate where the strips lie"])
            .caution(&[
                "Screws must end inside the plate: set the depth of every pilot hole with a stop.",
                SMALL,
            ])
            .from(&[Source::Screws, Source::Practice])
    }
}

/// What holes that are bored alike are called together.
fn together(group: &[&Hole]) -> String {
    let dials = |of: fn(HoleKind) -> Option<usize>| -> Option<Vec<usize>> {
        group.iter().map(|hole| of(hole.kind)).collect()
    };
    let bores = dials(|kind| match kind {
        HoleKind::Bore(dial) => Some(dial),
        _ => None,
    });
    let pins = dials(|kind| match kind {
        HoleKind::Pin(dial) => Some(dial),
        _ => None,
    });
    let all = |feature: Feature| group.iter().all(|hole| hole.kind.feature() == feature);
    if let Some(bores) = bores {
        format!("bore, {}", which(&bores))
    } else if let Some(pins) = pins {
        format!("hole for the pin, {}", which(&pins))
    } else if all(Feature::GuideScrews) {
        "guide screws, from the underside".to_owned()
    } else if all(Feature::KeeperScrews) {
        "keeper screws".to_owned()
    } else {
        let names: Vec<String> = group.iter().map(|hole| hole.kind.name()).collect();
        names.join(", ")
    }
}

/// With a capital letter.
pub(super) fn sentence(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}
