//! The order of work: numbered steps with what to set, what to try, and the cautions where they belong.

use latchwright_model::Design;
use latchwright_words::workshop::todo;
use latchwright_workshop::inch::Rule;
use latchwright_workshop::steps::{Source, WorkStep, steps};
use serde_json::{Value, json};

use crate::bench::{BenchPaper, PaperOptions, sentence, table, unproven};
use crate::error::PaperError;
use crate::fonts::Fonts;
use crate::sheets::Sheets;

const TEMPLATE: &str = include_str!("../../../../assets/order/order.typ");

/// A step with more lines than this may go on over the page.
const WHOLE: usize = 16;

/// What comes before everything else.
const FIRST: [&str; 4] = [
    "This latch keeps secrets, not valuables: whoever feels for it patiently can open it.",
    "The manual of each tool, the rules where you work and the word of a qualified person go before this paper. If you \
     have not done a step before, learn it from somebody who has.",
    "Unplug a machine, or take its battery out, before you touch its cutter. Eyes, ears and lungs are to be protected at \
     every step with a machine; no gloves and no loose sleeves near what turns.",
    "A size marked bare is as it leaves saw, plane or bit, before its coats; every other is the same before and after. Try \
     every setting on scrap of the same thickness first.",
];

/// The order of work as PDF.
///
/// # Errors
/// A letter that no font can draw, a name too long for a list, more than twelve dials, no such date.
pub fn work_pdf(
    design: &Design,
    fonts: &Fonts,
    options: &PaperOptions,
) -> Result<Vec<u8>, PaperError> {
    work_sheets(design, fonts, options)?.pdf()
}

/// The order of work laid out, to be saved, looked at, or both.
///
/// # Errors
/// Those of [`work_pdf`].
pub fn work_sheets(
    design: &Design,
    fonts: &Fonts,
    options: &PaperOptions,
) -> Result<Sheets, PaperError> {
    let rule = Rule::of(design);
    let all = steps(design);
    let steps: Vec<Value> = all.iter().map(|step| data(step, rule)).collect();
    let first: Vec<String> = unproven(design)
        .into_iter()
        .chain(FIRST.map(str::to_owned))
        .collect();
    let paper = BenchPaper {
        heading: "Order of work",
        template: TEMPLATE,
        data: json!({ "first": first, "steps": steps, "sources": sources(&all) }),
        drawings: Vec::new(),
    };
    paper.lay_out(design, fonts, options)
}

fn data(step: &WorkStep, rule: Rule) -> Value {
    let settings = step
        .settings
        .iter()
        .map(|setting| vec![setting.name.clone(), setting.value.say(rule)])
        .collect::<Vec<_>>();
    let lines = settings.len().max(step.todo.len() * 2)
        + step.cautions.len() * 2
        + step.fits.len()
        + step.bare.len();
    json!({
        "number": step.number,
        "title": step.title,
        "todo": step.todo.iter().map(|line| todo(line, rule)).collect::<Vec<_>>(),
        "settings": table(&["Set", "To"], settings),
        "fits": step.fits,
        "bare": step.bare,
        "cautions": step.cautions,
        "whole": lines <= WHOLE,
    })
}

/// Each source once, with the steps that it is for.
fn sources(all: &[WorkStep]) -> Vec<String> {
    let mut found: Vec<(Source, Vec<String>)> = Vec::new();
    for step in all {
        for source in step
            .sources
            .iter()
            .filter(|source| **source != Source::Practice)
        {
            let number = step.number.to_string();
            match found.iter_mut().find(|(known, _)| known == source) {
                Some((_, steps)) => steps.push(number),
                None => found.push((*source, vec![number])),
            }
        }
    }
    let told = found.into_iter().map(|(source, steps)| {
        let source = source.words();
        match steps.as_slice() {
            [one] => sentence(&format!("step {one}: {source}")),
            _ => sentence(&format!("steps {}: {source}", steps.join(", "))),
        }
    });
    let rest = format!("All else: {}.", Source::Practice.words());
    told.chain(core::iter::once(rest)).collect()
}
