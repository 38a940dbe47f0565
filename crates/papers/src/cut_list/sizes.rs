//! The box's sizes: outside and inside, each side with its ends, the grooves.

use latchwright_workshop::inch::Rule;
use latchwright_workshop::joinery::{End, Fit, Joinery};
use serde_json::{Value, json};

use crate::bench::table;

/// A size with its coats on, and bare where that is something else.
pub(super) fn both(fit: Fit, rule: Rule) -> String {
    joined(fit, "; ", rule)
}

/// The same on two lines of a cell.
fn stacked(fit: Fit, rule: Rule) -> String {
    joined(fit, "\n", rule)
}

fn joined(fit: Fit, between: &str, rule: Rule) -> String {
    let finished = rule.say_exactly(fit.finished);
    let bare = rule.say_exactly(fit.bare);
    if finished == bare {
        finished
    } else {
        format!("{finished}{between}bare {bare}")
    }
}

/// Outside, inside and the loose panels.
pub(super) fn outside(joinery: &Joinery, rule: Rule) -> Value {
    let say = |mm: f64| rule.say_exactly(mm);
    let mut rows = vec![
        vec![
            "outside, closed".to_owned(),
            say(joinery.outside.width),
            say(joinery.outside.depth),
            say(joinery.outside.height),
        ],
        vec![
            "inside".to_owned(),
            say(joinery.inside.width),
            say(joinery.inside.depth),
            say(joinery.inside.height),
        ],
    ];
    for panel in core::iter::once(&joinery.floor).chain(&joinery.top) {
        rows.push(vec![
            format!("{} in its grooves", panel.kind.name()),
            stacked(panel.width, rule),
            stacked(panel.depth, rule),
            stacked(panel.thickness, rule),
        ]);
    }
    table(
        &[
            "Finished",
            "Left to right",
            "Front to back",
            "Height or thickness",
        ],
        rows,
    )
}

/// Each side; the long point is named where ends are mitred.
pub(super) fn sides(joinery: &Joinery, rule: Rule) -> Value {
    let rows = joinery.sides.iter().map(|side| {
        let ends = match side.ends {
            End::Mitred => "both mitred at 45°, long point outside".to_owned(),
            End::Square => "both square".to_owned(),
            End::Rabbeted { width, depth } => format!(
                "rabbet inside, {} wide, {} deep",
                rule.say(width),
                rule.say(depth)
            ),
        };
        vec![
            side.place.name().to_owned(),
            stacked(side.outside, rule),
            stacked(side.inside, rule),
            stacked(side.height, rule),
            stacked(side.thickness, rule),
            ends,
        ]
    });
    let mitred = joinery.sides.iter().any(|side| side.ends == End::Mitred);
    let (outer, inner) = if mitred {
        (
            "Outside, long point to long point",
            "Inside, short point to short point",
        )
    } else {
        ("Outside face", "Inside face")
    };
    let rows: Vec<Vec<String>> = rows.collect();
    json!({
        "title": "Sides as they are glued up",
        "head": ["Side", outer, inner, "Height", "Thickness", "Ends"],
        "rows": rows,
    })
}

/// The grooves of every side; sides that have the same share a line.
pub(super) fn grooves(joinery: &Joinery, rule: Rule) -> Value {
    let mut rows: Vec<(Vec<&str>, Vec<String>)> = Vec::new();
    for side in &joinery.sides {
        for groove in &side.grooves {
            let stop = if groove.stop > 0.0 {
                format!("stops {} from each end", rule.say(groove.stop))
            } else {
                "runs through".to_owned()
            };
            let cells = vec![
                format!("for the {}", groove.panel.name()),
                stacked(groove.above, rule),
                rule.say_exactly(groove.width),
                format!("{}; {stop}", stacked(groove.depth, rule)),
            ];
            match rows.iter_mut().find(|(_, known)| *known == cells) {
                Some((sides, _)) => sides.push(side.place.name()),
                None => rows.push((vec![side.place.name()], cells)),
            }
        }
    }
    let rows = rows.into_iter().map(|(sides, mut cells)| {
        cells.insert(0, sides.join(", "));
        cells
    });
    table(
        &[
            "In",
            "Groove",
            "Lower wall above the lower edge",
            "Width",
            "Depth and ends",
        ],
        rows,
    )
}
