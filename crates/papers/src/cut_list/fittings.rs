//! Where hinges and keeper sit, where the lid is cut and the notch, each from finished edges.

use latchwright_workshop::inch::Rule;
use latchwright_workshop::joinery::Joinery;
use serde_json::Value;

use super::sizes::both;
use crate::bench::table;

/// One line each.
pub(super) fn table_of(joinery: &Joinery, rule: Rule) -> Value {
    let say = |mm: f64| rule.say_exactly(mm);
    let mut rows = Vec::new();
    let mut add = |what: &str, words: String| rows.push(vec![what.to_owned(), words]);
    if let Some(over) = joinery.overhang {
        add(
            "plate over the sides",
            format!(
                "{}, {}, level with the back",
                beyond("in front", over.front, rule),
                beyond("on each side", over.side, rule)
            ),
        );
    }
    if let Some(cut) = joinery.lid {
        add(
            "cut that frees the lid",
            format!(
                "the box keeps {}, the saw takes {}, the lid keeps {}",
                say(cut.box_height),
                say(cut.lost),
                say(cut.lid_height)
            ),
        );
    }
    for (name, hinge) in ["left hinge", "right hinge"]
        .into_iter()
        .zip(&joinery.hinges)
    {
        add(
            name,
            format!(
                "from {} to {} from the left outside; {} in from the back; let in {}; into the face at a height of {}, the \
                 same again in the lid",
                say(hinge.from),
                say(hinge.to),
                say(hinge.width),
                both(hinge.depth, rule),
                say(hinge.at_height)
            ),
        );
    }
    let keeper = joinery.keeper;
    add(
        "keeper",
        format!(
            "from {} to {} from the left outside; {}; the edge that the tab clears is {} in from the front's outer face; \
             underside at a height of {}",
            say(keeper.left),
            say(keeper.right),
            if keeper.front < 0.0 {
                format!(
                    "its front edge stands out {} beyond the front",
                    say(-keeper.front)
                )
            } else {
                format!(
                    "its front edge {} in from the front's outer face",
                    say(keeper.front)
                )
            },
            say(keeper.edge),
            say(keeper.underside)
        ),
    );
    if let Some(notch) = joinery.notch {
        add(
            "notch in the front for the tab",
            format!(
                "from {} to {} from the left outside; {} down from the upper edge; {} out from the inside face; {} of the \
                 front stays before it",
                say(notch.left),
                say(notch.right),
                say(notch.depth),
                say(notch.into),
                say(notch.left_in_front)
            ),
        );
    }
    table(&["What", "Where"], rows)
}

/// How far something stands out, or falls short.
fn beyond(where_to: &str, mm: f64, rule: Rule) -> String {
    if mm.abs() < 0.005 {
        format!("level {where_to}")
    } else if mm < 0.0 {
        format!("{} short {where_to}", rule.say_exactly(-mm))
    } else {
        format!("{} beyond {where_to}", rule.say_exactly(mm))
    }
}
