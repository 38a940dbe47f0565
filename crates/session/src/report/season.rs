//! The year of a design: two lines for people, the whole curve for programs.

use latchwright_solver::model::Design;
use latchwright_solver::season::{Year, YearPoint, year};
use serde_json::{Value, json};

use super::figure::length;

/// Moments of the curve: twice a month, the first and the last the driest.
const POINTS: usize = 25;

/// What the year does to this latch, in two lines; empty where it cannot be said.
pub(super) fn season_text(design: &Design) -> String {
    let Some(year) = year(design, POINTS) else {
        return String::new();
    };
    let wet = |point: &YearPoint| point.moisture;
    let driest = year.points.iter().map(wet).fold(f64::INFINITY, f64::min);
    let dampest = year.points.iter().map(wet).fold(0.0, f64::max);
    // a drift is rounded up, as play that is left is rounded down
    let drift = length(-year.most_drift(), design.units);
    format!(
        "\nSeason: wood stands at {driest:.1} % moisture when driest, {dampest:.1} % when dampest.\n  \
         Least play left in the guide {} a side; most drift between a dial and its pin {}.\n",
        length(year.least_guide_play(), design.units),
        drift.trim_start_matches('−')
    )
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
