//! Every hole and bored slot with its part, places from named edges, diameters, bits and depths.

use latchwright_drawing::slider_outline;
use latchwright_geometry::Point;
use latchwright_model::Design;
use latchwright_words::workshop::hole_note;
use latchwright_workshop::inch::Rule;
use latchwright_workshop::{Depth, Feature, Hole, Slot, Tool, WoodPart, holes};
use serde_json::{Value, json};

use crate::bench::{sentence, table};

/// What is said about all holes.
const INTRO: [&str; 3] = [
    "Prick every centre with an awl, bore the ends of a row before its middle, and back the wood with scrap.",
    "Several diameters on one centre are bored in the order in which they stand.",
    "Places are those of the templates at true size: if the two ever disagree, measure your own wood.",
];

/// Edges from which a part's places are measured.
struct From {
    part: WoodPart,
    /// Whether it lies with its underside up, so that right is left; else as it is seen from outside.
    turned: bool,
    /// The face that lies up, and the two edges, in words.
    words: &'static str,
    left: &'static str,
    front: &'static str,
    /// The two edges in the design's frame, mm.
    corner: Point,
}

/// One table of holes and one of slots for each part that has any.
pub(super) fn data(design: &Design, rule: Rule) -> Value {
    let found = holes(design);
    let parts: Vec<Value> = edges(design)
        .iter()
        .filter_map(|from| {
            let here: Vec<&Hole> = found.holes.iter().filter(|hole| from.has(hole)).collect();
            let slots = found.slots.iter();
            let slots: Vec<&Slot> = slots.filter(|slot| slot.kind.part() == from.part && !from.turned).collect();
            if here.is_empty() && slots.is_empty() {
                return None;
            }
            let rows = here.iter().flat_map(|hole| rows(hole, from, rule));
            let bored = slots.iter().map(|slot| slot_row(slot, from, rule));
            Some(json!({
                "title": from.words,
                "holes": table(&["Hole", from.left, from.front, "Diameter", "Depth", "Bit"], rows),
                "slots": table(
                    &["Row of holes", "First centre", "Last centre", "Holes and pitch", "Bit, and what to pare"],
                    bored,
                ),
            }))
        })
        .collect();
    let notes = found.notes.iter();
    let notes: Vec<String> = notes.map(|note| sentence(&hole_note(note, rule))).collect();
    json!({ "intro": INTRO, "parts": parts, "notes": notes })
}

impl From {
    /// Whether it is bored from the face that lies up here.
    fn has(&self, hole: &Hole) -> bool {
        let from_below = hole.kind.feature() == Feature::GuideScrews;
        hole.kind.part() == self.part && from_below == self.turned
    }

    /// From the left and the front edge as they lie.
    fn place(&self, at: Point) -> Point {
        let at = at - self.corner;
        if self.turned {
            Point::new(-at.x, at.y)
        } else {
            at
        }
    }
}

fn edges(design: &Design) -> [From; 4] {
    let slider = slider_outline(design, 0.0).extent();
    let keeper = &design.keeper;
    [
        From {
            part: WoodPart::Plate,
            turned: false,
            words: "Plate, outside up, hinges away from you",
            left: "From its left edge",
            front: "From its front edge",
            corner: Point::new(-design.plate.width / 2.0, 0.0),
        },
        From {
            part: WoodPart::Plate,
            turned: true,
            words: "Plate, underside up, hinges away from you: right is left here",
            left: "From the left edge as it lies",
            front: "From its front edge",
            corner: Point::new(design.plate.width / 2.0, 0.0),
        },
        From {
            part: WoodPart::Slider,
            turned: false,
            words: "Slider, upper face up, tab towards you",
            left: "From its left end",
            front: "From the tab's tip",
            corner: slider.min,
        },
        From {
            part: WoodPart::Keeper,
            turned: false,
            words: "Keeper, upper face up, front towards you",
            left: "From its left end",
            front: "From its front edge",
            corner: Point::new(
                design.tab.at - keeper.width / 2.0,
                keeper.edge - keeper.depth,
            ),
        },
    ]
}

/// One line a diameter; the place stands in the first.
fn rows(hole: &Hole, from: &From, rule: Rule) -> Vec<Vec<String>> {
    let at = from.place(hole.centre);
    let steps = hole.steps.iter().enumerate();
    steps
        .map(|(index, step)| {
            let first = |words: String| {
                if index == 0 {
                    words
                } else {
                    "same centre".to_owned()
                }
            };
            let name = if index == 0 {
                hole.kind.name()
            } else {
                "same hole, then".to_owned()
            };
            let bit = match step.tool {
                Tool::Bit(bit) => bit.words(rule.units),
                Tool::Countersink => "countersink".to_owned(),
                Tool::CountersinkBelow => "countersink, from the other face".to_owned(),
            };
            vec![
                name,
                first(rule.say_exactly(at.x)),
                first(rule.say_exactly(at.y)),
                rule.say_exactly(step.diameter),
                deep(step.depth, rule),
                bit,
            ]
        })
        .collect()
}

fn slot_row(slot: &Slot, from: &From, rule: Rule) -> Vec<String> {
    let place = |at: Point| {
        let at = from.place(at);
        format!("{} and {}", rule.say_exactly(at.x), rule.say_exactly(at.y))
    };
    let row = slot.row;
    let holes = if row.count == 1 {
        "one hole".to_owned()
    } else {
        format!("{} holes, {} apart", row.count, rule.say_exactly(row.pitch))
    };
    let guided = if row.wood_at_centres {
        ""
    } else {
        "; the bit's point finds no wood between the ends: use one that its rim guides, or a fence"
    };
    vec![
        format!(
            "{}, {} wide, {}",
            slot.kind.name(),
            rule.say_exactly(slot.width),
            deep(slot.depth, rule)
        ),
        place(slot.from),
        place(slot.to),
        holes,
        format!(
            "{}; cusps of {} stay{guided}",
            slot.bit.words(rule.units),
            rule.say_fine(row.cusp)
        ),
    ]
}

fn deep(depth: Depth, rule: Rule) -> String {
    match depth {
        Depth::Through(_) => "through".to_owned(),
        Depth::Blind(mm) => format!("{} deep", rule.say_exactly(mm)),
    }
}
