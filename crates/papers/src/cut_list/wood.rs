//! Tables of the parts: wood with finished and rough sizes, then what is printed and bought.

use latchwright_model::Units;
use latchwright_workshop::inch::Rule;
use latchwright_workshop::{Make, Part, Size};
use serde_json::Value;

use crate::bench::{sentence, table};

/// Parts of wood and sheet.
pub(super) fn cut(parts: &[Part], rule: Rule) -> Value {
    let wood = parts.iter().filter(|part| part.make == Make::Wood);
    let rows = wood.map(|part| {
        let material = match part.grain {
            Some("along its length") => format!("{},\ngrain lengthwise", part.material),
            Some(grain) => format!("{},\ngrain {grain}", part.material),
            None => format!("{},\ngrain either way", part.material),
        };
        vec![
            part.name.clone(),
            part.count.to_string(),
            say(part.finished, rule),
            part.rough
                .map_or_else(|| "–".to_owned(), |size| say(size, rule)),
            material,
            notes(part),
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
            part.name.clone(),
            part.count.to_string(),
            say(part.finished, rule),
            from,
            notes(part),
        ]
    });
    table(&["Part", "No.", "Size", "From", "Notes"], rows)
}

fn notes(part: &Part) -> String {
    let sentences: Vec<String> = part.notes.iter().map(|note| sentence(note)).collect();
    sentences.join(" ")
}

/// `120 × 80 × 12 mm`: along the grain, across, through.
fn say(size: Size, rule: Rule) -> String {
    let unit = match rule.units {
        Units::Millimetre => " mm",
        Units::Inch => " in",
    };
    let plain = |mm: f64| {
        let said = rule.say(mm);
        said.strip_suffix(unit).unwrap_or(&said).to_owned()
    };
    format!(
        "{} × {} × {}{unit}",
        plain(size.length),
        plain(size.width),
        plain(size.thickness)
    )
}
