//! The card's text as data for the template. Nothing the maker types is ever read as markup.

use latchwright_drawing::Step as Picture;
use latchwright_solver::model::CardPaper;
use serde_json::{Value, json};

use super::text::{Action, CardText, DialTurn, Step};
use crate::error::PaperError;

/// The template's `data.json`.
pub(super) fn json(
    sheet: CardPaper,
    text: &CardText,
    lid_aspect: f64,
) -> Result<Vec<u8>, PaperError> {
    let mut files = mark_files();
    let value = json!({
        "paper": paper(sheet),
        "language": text.language,
        "title": text.title,
        "salutation": text.salutation,
        "heading": text.heading,
        "greeting": text.greeting,
        "signature": text.signature,
        "lid": { "hinge": text.hinge, "described": text.lid_described, "aspect": lid_aspect },
        "open": {
            "heading": text.open_heading,
            "steps": text.open.iter().map(|step| step_data(step, &mut files)).collect::<Vec<_>>(),
        },
        "close": {
            "heading": text.close_heading,
            "steps": text.close.iter().map(|step| step_data(step, &mut files)).collect::<Vec<_>>(),
        },
        "stuck": { "heading": text.stuck_heading, "items": text.stuck },
        "cautions": { "heading": text.cautions_heading, "items": text.cautions },
    });
    serde_json::to_vec(&value).map_err(|err| PaperError::Typeset {
        message: err.to_string(),
    })
}

/// Names of the drawings of the dials' turns, in order.
pub(super) fn mark_files() -> impl Iterator<Item = String> {
    (1..).map(|number: u32| format!("turn-{number}.svg"))
}

/// The small picture of a step and its file's name, if the step has one: that of its last action,
/// since what comes before it only makes ready.
pub(super) fn step_picture(step: &Step) -> Option<(&'static str, Picture)> {
    match step.actions.last()? {
        Action::SlideForward | Action::PointAtHinge => {
            Some(("slide-forward.svg", Picture::SlideForward))
        }
        Action::SlideBack => Some(("slide-back.svg", Picture::SlideBack)),
        Action::Lift => Some(("lift.svg", Picture::LiftLid)),
        Action::Lower => Some(("lower.svg", Picture::LowerLid)),
        Action::TurnAway => Some(("turn-away.svg", Picture::TurnAway)),
        Action::Turn(_) => None,
    }
}

fn step_data(step: &Step, files: &mut impl Iterator<Item = String>) -> Value {
    let turns: Vec<Value> = step
        .actions
        .iter()
        .filter_map(|action| match action {
            Action::Turn(turn) => Some(turn_data(turn, &files.next().unwrap_or_default())),
            _ => None,
        })
        .collect();
    json!({ "text": step.text, "turns": turns, "picture": step_picture(step).map(|(file, _)| file) })
}

fn turn_data(turn: &DialTurn, drawing: &str) -> Value {
    json!({ "name": turn.name, "words": turn.words, "label": turn.to_label, "drawing": drawing })
}

fn paper(paper: CardPaper) -> &'static str {
    match paper {
        CardPaper::A6 => "a6",
        CardPaper::A5 => "a5",
        CardPaper::FoldedA4 => "folded-a4",
    }
}
