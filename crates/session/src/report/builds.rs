//! What many virtual builds come to, in words and for other programs. Lengths are millimetres, dials
//! count from 1.

use std::fmt::Write as _;

use latchwright_proof::builds::{
    BuildFigure, Builds, Contradiction, Margin, Promise, Share, Spread,
};
use serde_json::{Value, json};

use super::contributor;
use super::json::numbers_json;

/// Contributors named beside each margin.
const NAMED: usize = 3;

/// How the shares of variance were found, for those who read the answer elsewhere.
const METHOD: &str = "first-order index by correlation ratio over 16 cells, bias taken off";

/// The builds as text.
pub fn builds_text(builds: &Builds) -> String {
    let mut out = String::new();
    let plan = builds.plan;
    let spread = match plan.spread {
        Spread::Uniform => "every error as likely as any other within its ±",
        Spread::Normal => "errors mostly near the middle, ± taken as two standard deviations",
    };
    let _ = writeln!(
        out,
        "{} virtual builds, seed {}, {spread}",
        builds.opens.count, plan.seed
    );
    let _ = writeln!(out, "  opens the first time       {}", share(builds.opens));
    let _ = writeln!(out, "  every wrong setting holds  {}", share(builds.holds));
    let _ = writeln!(out, "\nSpread of each margin, mm");
    let _ = writeln!(
        out,
        "  {:<33}{:>8}{:>8}{:>8}{:>8}  explained by",
        "", "least", "5 %", "mean", "95 %"
    );
    for margin in &builds.margins {
        let _ = writeln!(out, "{}", row(margin));
    }
    let _ = writeln!(out, "  shares of the variance: {METHOD}");
    if builds.contradictions > 0 {
        let _ = writeln!(out, "\n{} Please report this:", builds_fault(builds));
        for contradiction in &builds.first_contradictions {
            let _ = writeln!(out, "  {}", words(contradiction));
        }
    }
    out
}

/// The two shares, a sentence each.
pub fn builds_sentences(builds: &Builds) -> [String; 2] {
    [
        (builds.opens, "open the first time at the combination"),
        (builds.holds, "hold at every wrong setting"),
    ]
    .map(|(share, what)| {
        format!(
            "{} of {} builds {what}: {:.2} to {:.2} % of all boxes (95 % limits, Clopper–Pearson).",
            share.hits,
            share.count,
            share.low * 100.0,
            share.high * 100.0
        )
    })
}

/// What a build that breaks a promise means.
pub fn builds_fault(builds: &Builds) -> String {
    format!(
        "Fault of this program: {} builds do not keep what was proven.",
        builds.contradictions
    )
}

/// What a margin is about.
pub fn margin_name(margin: &Margin) -> String {
    let words = match margin.figure {
        BuildFigure::ClearAtRest => "pin clear of the rim",
        BuildFigure::Enters => "mouth lets the pin in",
        BuildFigure::Depth => "slot left beyond the pin",
        BuildFigure::HeldAtRim => "tab held at the rim",
        BuildFigure::Free => "tab clear of the keeper",
        BuildFigure::HeldAtRest => "tab held when shut",
        BuildFigure::GuidePlay => "play left in the guide",
    };
    match margin.dial {
        Some(dial) => format!("dial {}, {words}", dial + 1),
        None => words.to_owned(),
    }
}

fn row(margin: &Margin) -> String {
    let name = margin_name(margin);
    let explained: Vec<String> = margin
        .explained
        .iter()
        .take(NAMED)
        .map(|(who, part)| format!("{} {:.0} %", contributor(*who), part * 100.0))
        .collect();
    format!(
        "  {name:<33}{:>8.2}{:>8.2}{:>8.2}{:>8.2}  {}",
        margin.least,
        margin.low,
        margin.mean,
        margin.high,
        explained.join(", ")
    )
}

fn share(share: Share) -> String {
    format!(
        "{:.3} %  (95 % limits {:.3} to {:.3} %, Clopper–Pearson)",
        share.value() * 100.0,
        share.low * 100.0,
        share.high * 100.0
    )
}

/// What was promised and not kept.
fn promise(promise: Promise) -> &'static str {
    match promise {
        Promise::Passes => "a mark that was promised to pass does not",
        Promise::Holds => "a mark that was promised to hold does not",
        Promise::AtRest => "the dial is not free of its pin at rest",
        Promise::Captive => "the dial is not held by its pin while open",
        Promise::Free => "the tab does not come out of the keeper",
        Promise::HeldAtRest => "the tab is not held when the slider is forward",
        Promise::Guide => "the slider binds in its guide",
    }
}

fn words(found: &Contradiction) -> String {
    let mut text = format!(
        "build {} of seed {}: {}",
        found.build,
        found.seed,
        promise(found.promise)
    );
    if let Some(dial) = found.dial {
        let _ = write!(text, ", dial {}", dial + 1);
    }
    if let Some(mark) = found.mark {
        let _ = write!(text, ", mark {mark} counted from 0");
    }
    let _ = write!(text, ", short by {:.4} mm", -found.figure);
    text
}

/// The builds as a JSON object.
pub fn builds_json(builds: &Builds) -> Value {
    let plan = builds.plan;
    json!({
        "count": builds.opens.count,
        "seed": plan.seed,
        "spread": match plan.spread {
            Spread::Uniform => "uniform",
            Spread::Normal => "normal",
        },
        "opens_first_time": share_json(builds.opens),
        "wrong_settings_hold": share_json(builds.holds),
        "variance_shares": METHOD,
        "margins": builds.margins.iter().map(margin_json).collect::<Vec<_>>(),
        "contradictions": builds.contradictions,
        "first_contradictions":
            builds.first_contradictions.iter().map(contradiction_json).collect::<Vec<_>>(),
    })
}

fn share_json(share: Share) -> Value {
    json!({
        "hits": share.hits,
        "share": share.value(),
        "low_95": share.low,
        "high_95": share.high,
    })
}

fn margin_json(margin: &Margin) -> Value {
    let explained = margin.explained.iter();
    json!({
        "figure": margin.figure.name(),
        "dial": margin.dial.map(|dial| dial + 1),
        "nominal": margin.nominal,
        "mean": margin.mean,
        "sd": margin.sd,
        "least": margin.least,
        "low_5": margin.low,
        "high_95": margin.high,
        "largest": margin.largest,
        "resolution": margin.resolution,
        "worst_case": margin.worst,
        "root_sum_square": margin.rss,
        "explained": explained.map(|(who, part)| json!([who.code(), part])).collect::<Vec<_>>(),
    })
}

fn contradiction_json(found: &Contradiction) -> Value {
    json!({
        "build": found.build,
        "seed": found.seed,
        "promise": promise(found.promise),
        "dial": found.dial.map(|dial| dial + 1),
        "mark": found.mark,
        "figure": found.figure,
        "numbers": numbers_json(&found.latch, 0..found.latch.dials.len()),
    })
}
