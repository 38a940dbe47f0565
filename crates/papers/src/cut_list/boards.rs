//! Boards with their pieces, drawn, and what is short or to be bought.

use latchwright_drawing::Drawing;
use latchwright_model::{Board, Design};
use latchwright_words::capital;
use latchwright_words::workshop::{grain_round, plan_note, shortfall};
use latchwright_workshop::boards::{BoardLayout, CutPlan, PlanNote, board_drawing};
use latchwright_workshop::inch::Rule;
use serde_json::{Value, json};

use crate::bench::{sentence, width_between_margins};

/// More boards than this are told as a number only.
const MOST: usize = 24;
/// Tallest drawing of a board, mm on paper.
const TALLEST: f64 = 40.0;
/// Between two boards that are drawn in one row, mm on paper.
const BETWEEN: f64 = 6.0;
/// A board that would be narrower than this on paper is not drawn, mm.
const LEAST: f64 = 8.0;

/// What the template says of the boards, and their drawings.
pub(super) fn data(design: &Design, plan: &CutPlan, rule: Rule) -> (Value, Vec<(String, Drawing)>) {
    let space = width_between_margins(design.bench.paper);
    let half = (space - BETWEEN) / 2.0;
    let lengths = plan.boards.iter().map(|layout| layout.board.length);
    let longest = lengths.fold(1e-9, f64::max);
    let (mut rows, mut drawings): (Vec<Vec<Value>>, Vec<_>) = (Vec::new(), Vec::new());
    // Whether the last row has room for another board of half the width.
    let mut open = false;
    let mut notes = vec![sentence(&grain_round(&plan.grain))];
    notes.extend(plan_notes(plan).map(|note| sentence(&plan_note(note, rule))));
    let short = plan.shortfalls.iter();
    let short: Vec<String> = short
        .map(|short| sentence(&shortfall(short, rule)))
        .collect();
    notes.push(format!(
        "Each cut takes {}; {} is cut off each end first. Crossed areas fall away.",
        rule.say(design.bench.kerf),
        rule.say(design.bench.end_trim)
    ));
    for (layout, number) in plan.boards.iter().zip(1..=MOST) {
        // Long boards over the whole width, those that are much shorter over half of it.
        let wide = if layout.board.length > 0.6 * longest {
            space
        } else {
            half
        };
        let width = wide.min(TALLEST * layout.board.length / layout.board.width.max(1e-9));
        if !(width >= LEAST && width * layout.board.width >= 0.5 * layout.board.length) {
            notes.push(sentence(&format!(
                "{}: too thin a shape to be drawn",
                title(layout, rule)
            )));
            continue;
        }
        let file = format!("board-{number}.svg");
        let drawing = board_drawing(layout, width, rule);
        let board = json!({
            "file": file,
            "title": title(layout, rule),
            "alt": described(layout, rule),
            "width": drawing.bounds.width(),
        });
        let small = width <= half;
        let half_free = rows.last_mut().filter(|_| small && open);
        open = small && half_free.is_none();
        if let Some(row) = half_free {
            row.push(board);
        } else {
            rows.push(vec![board]);
        }
        drawings.push((file, drawing));
    }
    if plan.boards.len() > MOST {
        notes.push(format!(
            "Of {} boards the first {MOST} are drawn.",
            plan.boards.len()
        ));
    }
    (
        json!({ "notes": notes, "rows": rows, "short": short }),
        drawings,
    )
}

/// What else is to be known of `plan`, what is alike of several boards once.
fn plan_notes(plan: &CutPlan) -> impl Iterator<Item = &PlanNote> {
    let notes = plan.notes.iter().enumerate();
    notes
        .filter(|(index, note)| !plan.notes.iter().take(*index).any(|other| other == *note))
        .map(|(_, note)| note)
}

/// `white oak, 1200 mm long, 150 mm wide, 12 mm thick`.
fn board(board: &Board, rule: Rule) -> String {
    format!(
        "{}, {} long, {} wide, {} thick",
        board.wood,
        rule.say(board.length),
        rule.say(board.width),
        rule.say(board.thickness)
    )
}

/// What stands over the drawing; what is still to be bought is never said too small.
fn title(layout: &BoardLayout, rule: Rule) -> String {
    let size = if layout.to_buy {
        let Board {
            wood,
            length,
            width,
            thickness,
            ..
        } = &layout.board;
        format!(
            "{wood}, {} long, {} wide, {} thick",
            rule.say_at_least(*length),
            rule.say_at_least(*width),
            rule.say(*thickness)
        )
    } else {
        board(&layout.board, rule)
    };
    let word = if layout.to_buy { "To buy: " } else { "" };
    let number = if layout.number > 1 {
        format!(", number {}", layout.number)
    } else {
        String::new()
    };
    capital(&format!("{word}{size}{number}"))
}

/// The drawing in words, for those who hear the page.
fn described(layout: &BoardLayout, rule: Rule) -> String {
    let strips: Vec<String> = layout
        .strips
        .iter()
        .map(|strip| {
            let pieces = strip.pieces.iter();
            let names: Vec<String> = pieces.map(|piece| piece.part.name()).collect();
            format!(
                "a strip {} wide with {}",
                rule.say(strip.width),
                names.join(", ")
            )
        })
        .collect();
    format!("{}: {}", title(layout, rule), strips.join("; "))
}
