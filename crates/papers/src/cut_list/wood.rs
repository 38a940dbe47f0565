//! Tables of the parts: wood with finished, bare and rough sizes, then what is printed and bought.

use latchwright_words::workshop::{part_note, part_size};
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
            part.role.name(),
            part.count.to_string(),
            finished(part, rule),
            other_size(part, part.bare, rule),
            part.rough
                .map_or_else(|| "–".to_owned(), |size| rough(size, rule)),
            material,
            notes(part, rule),
        ]
    });
    table(
        &[
            "Part",
            "No.",
            "Finished",
            "Bare",
            "Sawn rough",
            "Wood",
            "Notes",
        ],
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
            part.role.name(),
            part.count.to_string(),
            part_size(part, part.finished, rule),
            from,
            notes(part, rule),
        ]
    });
    table(&["Part", "No.", "Size", "From", "Notes"], rows)
}

/// A finished size: to the maker's rule where it is the bare one that is cut.
fn finished(part: &Part, rule: Rule) -> String {
    match part.bare {
        Some(bare) if bare != part.finished => rough(part.finished, rule),
        _ => part_size(part, part.finished, rule),
    }
}

/// `120 × 80 × 12 mm`, to the maker's rule.
fn rough(size: Size, rule: Rule) -> String {
    format!(
        "{} × {} × {}",
        rule.say_bare(size.length),
        rule.say_bare(size.width),
        rule.say(size.thickness)
    )
}

/// A bare size, or that it is the finished one because no coat goes on.
fn other_size(part: &Part, size: Option<Size>, rule: Rule) -> String {
    match size {
        Some(size) if size != part.finished => part_size(part, size, rule),
        _ => "the same: no coat".to_owned(),
    }
}

fn notes(part: &Part, rule: Rule) -> String {
    let notes = part.notes.iter();
    let sentences: Vec<String> = notes.map(|note| sentence(&part_note(note, rule))).collect();
    sentences.join(" ")
}
