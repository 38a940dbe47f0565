//! The card's text as data for the template. Nothing the maker types is ever read as markup.

use latchwright_drawing::Pictogram;
use latchwright_model::CardPaper;
use serde_json::{Value, json};

use super::text::{Action, CardStep, CardText, TurnWords};
use crate::error::PaperError;

/// The template's `data.json`.
pub(super) fn json(
    sheet: CardPaper,
    text: &CardText,
    [lid_aspect, set_aspect]: [f64; 2],
) -> Result<Vec<u8>, PaperError> {
    let mut files = mark_files();
    let mut steps = |steps: &[CardStep]| -> Vec<Value> {
        let one = |step| step_data(step, &mut files, text.between_sentences);
        steps.iter().map(one).collect()
    };
    let value = json!({
        "paper": paper(sheet),
        "language": text.language,
        "title": text.title,
        "salutation": text.salutation,
        "heading": text.heading,
        "greeting": text.greeting,
        "signature": text.signature,
        "lid": { "hinge": text.hinge, "described": said(&text.lid_described), "aspect": lid_aspect, "set-aspect": set_aspect },
        "open": {
            "heading": text.open_heading,
            "steps": steps(&text.open),
        },
        "close": {
            "heading": text.close_heading,
            "steps": steps(&text.close),
        },
        "stuck": { "heading": text.stuck_heading, "items": text.stuck },
        "cautions": {
            "heading": text.cautions_heading,
            "items": text.cautions,
            "between": text.between_sentences,
        },
    });
    serde_json::to_vec(&value).map_err(|err| PaperError::Typeset {
        message: err.to_string(),
    })
}

/// Names of the drawings of the dials' turns, in order.
pub(super) fn mark_files() -> impl Iterator<Item = String> {
    (1..).map(|number: u32| format!("turn-{number}.svg"))
}

/// The file that shows the lid with its dials set.
pub(super) const SET_LID: &str = "set-lid.svg";

/// The drawing of an action and its file's name. Dials are set on a drawing of the lid.
pub(super) fn action_picture(action: &Action) -> Option<(&'static str, Pictogram)> {
    match action {
        Action::SlideForward => Some(("slide-forward.svg", Pictogram::SlideForward)),
        Action::PointAtHinge => Some(("point-at-hinge.svg", Pictogram::PointAtHinge)),
        Action::SlideBack => Some(("slide-back.svg", Pictogram::SlideBack)),
        Action::Lift => Some(("lift.svg", Pictogram::LiftLid)),
        Action::Lower => Some(("lower.svg", Pictogram::LowerLid)),
        Action::TurnAway => Some(("turn-away.svg", Pictogram::TurnAway)),
        Action::Turn(_) | Action::TurnToSecret => None,
    }
}

/// The small picture beside a sentence: that of the action that moves something, since what comes
/// before or after it only makes ready.
fn beside_sentence(step: &CardStep) -> Option<&'static str> {
    let action = match step.actions.as_slice() {
        [Action::SlideForward, ..] => step.actions.first(),
        _ => step.actions.last(),
    };
    action.and_then(action_picture).map(|(file, _)| file)
}

/// The large pictures that stand for a step, in the order in which it is done.
fn instead_of_sentence(step: &CardStep) -> Vec<&'static str> {
    let actions = match step.actions.as_slice() {
        // The slider is back already, as the last picture has left it.
        [Action::SlideBack, rest @ ..] if !rest.is_empty() => rest,
        all => all,
    };
    let mut files: Vec<_> = actions
        .iter()
        .map(|action| action_picture(action).map_or(SET_LID, |(file, _)| file))
        .collect();
    files.dedup();
    files
}

fn step_data(step: &CardStep, files: &mut impl Iterator<Item = String>, between: &str) -> Value {
    let mut described = vec![step.text.clone()];
    described.extend(
        step.turns
            .iter()
            .map(|turn| format!("{}.", turn.sentence())),
    );
    let turns: Vec<Value> = step
        .turns
        .iter()
        .map(|turn| turn_data(turn, &files.next().unwrap_or_default()))
        .collect();
    json!({
        "text": step.text,
        "turns": turns,
        "picture": beside_sentence(step),
        "pictures": instead_of_sentence(step),
        "described": said(&described.join(between)),
    })
}

/// Words for the ear, without the marks for where a line may end.
fn said(words: &str) -> String {
    words.replace('\u{200b}', "")
}

fn turn_data(turn: &TurnWords, drawing: &str) -> Value {
    json!({
        "before": turn.before,
        "label": turn.label,
        "after": turn.after,
        "words": turn.lines,
        "drawing": drawing,
    })
}

fn paper(paper: CardPaper) -> &'static str {
    match paper {
        CardPaper::A6 => "a6",
        CardPaper::A5 => "a5",
        CardPaper::FoldedA4 => "folded-a4",
    }
}
