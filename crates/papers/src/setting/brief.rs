//! The design in numbers, what its proof says, and how to get in without the combination.

use latchwright_model::Unit;
use latchwright_model::{Climate, Design};
use latchwright_proof::{CheckVerdict, Proof, prove};
use latchwright_words::check_title;
use latchwright_workshop::inch::{Rule, decimal};

use crate::bench::sentence;

/// More checks than this are told as a number.
const MOST: usize = 3;

/// What a design comes to.
pub(super) struct Brief {
    /// See [`super::SettingText::forgotten`].
    pub forgotten: Vec<String>,
    /// See [`super::SettingText::proof`].
    pub proof: Vec<String>,
    /// See [`super::SettingText::numbers`].
    pub numbers: Vec<(String, String)>,
}

impl Brief {
    pub(super) fn of(design: &Design) -> Self {
        let (proof, rule) = (prove(design), Rule::of(design));
        Self {
            forgotten: forgotten(&proof),
            proof: in_brief(design, &proof, rule),
            numbers: numbers(design, rule),
        }
    }
}

fn forgotten(proof: &Proof) -> Vec<String> {
    let tries: usize = proof.dials.iter().map(|dial| dial.marks.len()).sum();
    let all = proof.settings.total;
    vec![
        "This sheet tells it, and so does the design's file: keep both where you will find them.".to_owned(),
        format!(
            "By feel: pull the finger knob back gently and mark how far it goes, ease it, turn one dial on by one mark, \
             and pull again. Where it goes further, leave that dial and go on with the next: at most {tries} tries, not \
             {all}."
        ),
        "As a last resort clamp the box, wear eye protection, and drive out the pins of the hinges or saw their knuckles \
         through with a fine blade. Lift the lid at the back and draw it backwards off the keeper: the hinges are lost, \
         the box is not."
            .to_owned(),
    ]
}

fn in_brief(design: &Design, proof: &Proof, rule: Rule) -> Vec<String> {
    let settings = &proof.settings;
    let be = |count: u128| if count == 1 { "is" } else { "are" };
    let neither = match settings.unsure {
        0 => String::new(),
        unsure => format!("; of {unsure} neither can be promised"),
    };
    let mut all = vec![format!(
        "Of {} settings {} {} sure to open and {} {} sure to lock{neither}.",
        settings.total,
        settings.opens,
        be(settings.opens),
        settings.locks,
        be(settings.locks),
    )];
    if proof.blocks_building() {
        all.push(
            "The design has faults: nothing of it can be promised before they are mended."
                .to_owned(),
        );
        return all;
    }
    let failing: Vec<String> = proof
        .checks
        .iter()
        .filter(|check| check.verdict != CheckVerdict::Passes)
        .map(|check| check_title(check, design))
        .collect();
    if proof.proven {
        all.push(
            "Proven: so it is in every box that is built within the workmanship given here, in the air given here."
                .to_owned(),
        );
    } else {
        all.push("Not proven: try the finished box with more care than a proven one.".to_owned());
    }
    for title in failing.iter().take(MOST) {
        all.push(sentence(&format!("not promised: {title}")));
    }
    if failing.len() > MOST {
        all.push(format!(
            "{} more checks are not passed.",
            failing.len() - MOST
        ));
    }
    let least = proof.checks.iter().find(|check| {
        check.verdict == CheckVerdict::Passes
            && check.unit == Unit::Millimetre
            && check.margin > 0.0
    });
    if let Some(check) = least {
        all.push(format!(
            "Least to spare: {} ({}).",
            rule.say_fine(check.margin),
            check_title(check, design).trim_end_matches('.')
        ));
    }
    all
}

fn numbers(design: &Design, rule: Rule) -> Vec<(String, String)> {
    let work = &design.workmanship;
    let mut rows: Vec<(String, String)> = Vec::new();
    let mut add = |name: &str, value: String| rows.push((name.to_owned(), value));
    let mut marks: Vec<String> = design
        .dials
        .iter()
        .map(|dial| dial.positions.to_string())
        .collect();
    let dials = marks.len();
    marks.dedup();
    add("dials", dials.to_string());
    add("marks on each", marks.join(", "));
    add(
        "travel of the slider",
        rule.say_exactly(design.slider.travel),
    );
    add(
        "tab under the keeper; least that holds",
        format!(
            "{}; {}",
            rule.say_exactly(design.tab.engagement),
            rule.say_exactly(design.tab.required_hold)
        ),
    );
    let fine = |mm: f64| format!("±{}", rule.say_fine(mm));
    add(
        "places of pins, bores, keeper",
        format!(
            "{}, {}, {}",
            fine(work.pin_place),
            fine(work.bore_place),
            fine(work.keeper_place)
        ),
    );
    add("prints; thicknesses", {
        format!("{}; {}", fine(work.print), fine(work.thickness))
    });
    add(
        "coat on a face",
        format!("{} {}", rule.say_fine(work.film), fine(work.film_spread)),
    );
    add(
        "pointer off its mark",
        format!("±{}°", decimal(work.reading)),
    );
    let air = |climate: Climate| {
        format!(
            "{} °C, {} %",
            decimal(climate.celsius),
            decimal(climate.humidity)
        )
    };
    let season = &design.season;
    add("air when built", air(season.built));
    add("air at its driest", air(season.driest));
    add("air at its dampest", air(season.dampest));
    rows
}
