//! The year of a design: two lines for people, the whole curve for programs.

use latchwright_model::Design;
use latchwright_model::wood::moisture_content;
use latchwright_proof::season::{Year, YearPoint, year};
use serde_json::{Value, json};

use latchwright_words::length;

/// Moments of the curve: twice a month, the first and the last the driest.
const POINTS: usize = 25;

/// What the year does to this latch, in two lines under a heading; empty where it cannot be said.
pub(super) fn season_text(design: &Design) -> String {
    year(design, POINTS).map_or_else(String::new, |year| {
        let [wood, moved] = season_sentences(design, &year);
        format!("\nSeason\n  {wood}\n  {moved}\n")
    })
}

/// The year in two sentences: how moist the wood stands, and what that leaves and moves.
pub fn season_sentences(design: &Design, year: &Year) -> [String; 2] {
    let wet = |point: &YearPoint| point.moisture;
    let driest = year.points.iter().map(wet).fold(f64::INFINITY, f64::min);
    let dampest = year.points.iter().map(wet).fold(0.0, f64::max);
    let built = moisture_content(design.season.built);
    let play = year.least_guide_play();
    let guide = if play < 0.0 {
        "The guide closes".to_owned()
    } else {
        let left = length(play, design.units);
        format!("The guide keeps at least {left} of play a side")
    };
    // a drift is rounded up, as play that is left is rounded down
    let drift = length(-year.most_drift(), design.units);
    [
        format!(
            "Wood stands at {driest:.1} % moisture when driest and {dampest:.1} % when dampest; it was \
             {built:.1} % when built."
        ),
        format!(
            "{guide}; a dial drifts from its pin by up to {}.",
            drift.trim_start_matches('−')
        ),
    ]
}

/// The curve as a JSON object, `null` where there is none. Shares of a year, °C, per cent and mm.
pub(super) fn season_json(design: &Design) -> Value {
    year(design, POINTS).map_or(Value::Null, |year: Year| {
        json!({
            "built_at": year.built_at,
            "points": year.points.iter().map(point).collect::<Vec<_>>(),
        })
    })
}

fn point(point: &YearPoint) -> Value {
    let dials = point
        .dials
        .iter()
        .map(|dial| json!({"aside_mm": dial.aside, "along_mm": dial.along}));
    json!({
        "at": point.at,
        "celsius": point.climate.celsius,
        "humidity": point.climate.humidity,
        "moisture": point.moisture,
        "second_formula": point.second_formula,
        "guide_play_mm": point.guide_play,
        "tab_drift_mm": point.tab_drift,
        "tab_held_mm": point.tab_held,
        "dials": dials.collect::<Vec<_>>(),
    })
}
