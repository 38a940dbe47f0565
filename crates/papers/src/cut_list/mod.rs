//! The cut list: what is cut, printed and bought, boards with their pieces, the box's sizes, the holes.

mod boards;
mod drilling;
mod fittings;
mod sizes;
mod wood;

use latchwright_model::{Design, Severity, Units};
use latchwright_words::workshop::{joinery_fault, plan_fault, rounded_sum};
use latchwright_workshop::boards::{CutPlan, cut_plan};
use latchwright_workshop::inch::Rule;
use latchwright_workshop::joinery::{Joinery, joinery};
use latchwright_workshop::parts;
use latchwright_workshop::sums::sums;
use serde_json::json;

use crate::bench::{BenchPaper, PaperOptions, sentence, unproven};
use crate::error::PaperError;
use crate::fonts::Fonts;
use crate::sheets::Sheets;

const TEMPLATE: &str = include_str!("../../../../assets/cut-list/cut-list.typ");

/// The cut list as PDF.
///
/// # Errors
/// A letter that no font can draw, a name too long for a list, more than twelve dials, no such date.
pub fn cut_list_pdf(
    design: &Design,
    fonts: &Fonts,
    options: &PaperOptions,
) -> Result<Vec<u8>, PaperError> {
    cut_list_sheets(design, fonts, options)?.pdf()
}

/// The cut list laid out, to be saved, looked at, or both.
///
/// # Errors
/// Those of [`cut_list_pdf`].
pub fn cut_list_sheets(
    design: &Design,
    fonts: &Fonts,
    options: &PaperOptions,
) -> Result<Sheets, PaperError> {
    let rule = Rule::of(design);
    let (joinery, plan, parts) = (joinery(design), cut_plan(design), parts(design));
    let (boards, drawings) = boards::data(design, &plan, rule);
    let paper = BenchPaper {
        heading: "Cut list",
        template: TEMPLATE,
        data: json!({
            "intro": intro(design, rule),
            "faults": unproven(design).into_iter().chain(faults(&joinery, &plan, rule)).collect::<Vec<_>>(),
            "wood": wood::cut(&parts, rule),
            "other": wood::other(&parts, rule),
            "box": sizes::outside(&joinery, rule),
            "sides": sizes::sides(&joinery, rule),
            "grooves": sizes::grooves(&joinery, rule),
            "fittings": fittings::table_of(&joinery, rule),
            "sums": off_sums(design),
            "boards": boards,
            "holes": drilling::data(design, rule),
        }),
        drawings,
    };
    paper.lay_out(design, fonts, options)
}

fn intro(design: &Design, rule: Rule) -> Vec<String> {
    let film = design.workmanship.film.max(0.0);
    let mut all = vec![
        format!(
            "Finished is with all coats on, bare is as it leaves saw and plane; a coat is taken as {} on each face.",
            rule.say_fine(film)
        ),
        "Rough is sawn first and then brought to size. The first size runs along the grain.".to_owned(),
        "Measure your stock before you cut: every size follows from its true thickness.".to_owned(),
        "Cut no piece that is too short to hold safely: leave small parts on a longer strip until last. The manual of \
         each tool and the rules where you work go before this paper."
            .to_owned(),
    ];
    if design.units == Units::Inch {
        all.push("Full is a little more than the fraction, scant a little less; by how much stands beside it, where it is a thousandth \
             or more.".to_owned());
    }
    all
}

/// What cannot be built or needs a second look, the worst first.
fn faults(joinery: &Joinery, plan: &CutPlan, rule: Rule) -> Vec<String> {
    let cannot = |words: String| sentence(&format!("Cannot be built: {words}"));
    let with = |severity: Severity| {
        let faults = joinery.faults.iter();
        let these = faults.filter(move |fault| fault.severity() == severity);
        these.map(|fault| joinery_fault(fault, rule))
    };
    let uncut = plan.faults.iter().map(plan_fault);
    let errors = with(Severity::Error).chain(uncut).map(cannot);
    let notices = with(Severity::Notice).map(|words| sentence(&words));
    errors.chain(notices).collect()
}

/// Sums of rounded parts that are not the rounded whole; for inch makers only.
fn off_sums(design: &Design) -> Vec<String> {
    if design.units != Units::Inch {
        return Vec::new();
    }
    let sums = sums(design);
    sums.iter()
        .filter_map(|sum| {
            let words = rounded_sum(&sum.rounded)?;
            Some(sentence(&format!(
                "{} ({}): {words}",
                sum.name,
                sum.parts.join(" + ")
            )))
        })
        .collect()
}
