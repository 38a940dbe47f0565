//! What to do about a check, for programs.

use latchwright_model::Step;
use latchwright_search::Remedy;
use latchwright_words::{size_name, step_deed};
use serde_json::{Value, json};

/// A found remedy as a JSON object, `null` without one. Lengths are millimetres, marks count from 0
/// and dials from 1, as everywhere in the report.
pub(super) fn remedy_json(remedy: Option<&Remedy>) -> Value {
    remedy.map_or(Value::Null, |remedy| {
        let also = remedy.also.iter().map(|check| {
            json!({
                "check": check.kind.code(),
                "dial": check.dial().map(|dial| dial + 1),
                "margin": check.margin,
            })
        });
        json!({
            "steps": remedy.change.steps.iter().map(step).collect::<Vec<_>>(),
            "margin": remedy.margin,
            "fails_after": also.collect::<Vec<_>>(),
            "proven_after": remedy.proven,
        })
    })
}

fn step(step: &Step) -> Value {
    match step {
        Step::Resize { size, from, to } => {
            json!({"deed": step_deed(step), "size": size_name(*size), "from": from, "to": to})
        }
        _ => json!({"deed": step_deed(step)}),
    }
}
