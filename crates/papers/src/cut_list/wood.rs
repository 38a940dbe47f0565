//! Tables of the parts: wood with finished and rough sizes, then what is printed and bought.

use latchwright_words::workshop::part_note;
use latchwright_workshop::inch::Rule;
use latchwright_workshop::{Make, Part, Size};
use serde_json::Value;

use crate::bench::{sentence, table};

/// Parts of wood and sheet.
pub(super) fn cut(parts: &[Part], rule: Rule) -> Value {
    let wood = parts.iter().filter(|part| part.make == Make::Wood);
    let rows = wood.map(|part| {
        let grain = if part.solid {
            "lengthwise"
        } else {
            "either way"
        };
        let material = format!("{},\ngrain {grain}", part.material);
        vec![
            part.role.name(rule.units),
            part.count.to_string(),
            say(part.finished, rule),
            part.rough
                .map_or_else(|| "–".to_owned(), |size| say(size, rule)),
            material,
            notes(part, rule),
        ]
    });
    table(
        &["Part", "No.", "Finished", "Sawn rough", "Wood", "Notes"],
        rows,
    )
}

/// Parts that are printed or bought.
pub(super) fn other(parts: &[Part], rule: Rule) -> Value {
    let other = parts.iter().filter(|part| part.make != Make::Wood);
    let rows = other.map(|part| {
        let from = match part.make {
            Make::Bought => format!("bought: {}", part.material),
            Make::Printed | Make::Wood => "printed".to_owned(),
        };
        vec![
            part.role.name(rule.units),
            part.count.to_string(),
            say(part.finished, rule),
            from,
            notes(part, rule),
        ]
    });
    table(&["Part", "No.", "Size", "From", "Notes"], rows)
}

fn notes(part: &Part, rule: Rule) -> String {
    let notes = part.notes.iter();
    let sentences: Vec<String> = notes.map(|note| sentence(&part_note(note, rule))).collect();
    sentences.join(" ")
}

/// `120 × 80 × 12 mm`: along the grain, across, through.
fn say(size: Size, rule: Rule) -> String {
    format!(
        "{} × {} × {}",
        rule.say_bare(size.length),
        rule.say_bare(size.width),
        rule.say(size.thickness)
    )
}
