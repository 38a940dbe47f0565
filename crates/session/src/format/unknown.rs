//! Fields that a file has and the format does not: each with its place and the likely meant name.

use std::fmt;

use super::error::shortened;
use super::outline::{Outline, Spot};
use super::place::{PathStep, dotted, words};

/// Longer names are not compared: they are no slip of the finger.
const LONGEST_COMPARED: usize = 40;

/// A field that is not part of the format. It is kept out of the design and would be lost in a save.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct UnknownField {
    /// Path of the field, counting from 0, such as `dials[1].bore.shaft_ply`.
    pub path: String,
    /// Where its name stands.
    pub spot: Spot,
    /// One sentence with place and remedy, without a trailing stop.
    pub message: String,
    /// The field that was probably meant.
    pub suggestion: Option<String>,
}

impl fmt::Display for UnknownField {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.message)
    }
}

/// Names the fields at `paths`, given the text they are in and one with every field there is.
pub(super) fn name_all(
    paths: &[Vec<PathStep>],
    text: &Outline<'_>,
    known: &Outline<'_>,
) -> Vec<UnknownField> {
    paths.iter().map(|path| name(path, text, known)).collect()
}

fn name(path: &[PathStep], text: &Outline<'_>, known: &Outline<'_>) -> UnknownField {
    let spot = text.find(path).unwrap_or(Spot { line: 1, column: 1 });
    let (field, part) = match path.split_last() {
        Some((PathStep::Field(field), part)) => (field.as_str(), part),
        _ => ("", path),
    };
    let first_of_each: Vec<PathStep> = part
        .iter()
        .map(|step| {
            if let PathStep::Entry(_) = step {
                PathStep::Entry(0)
            } else {
                step.clone()
            }
        })
        .collect();
    let suggestion = nearest(field, &known.fields(&first_of_each)).map(ToOwned::to_owned);
    let whose = if part.is_empty() {
        "a design".to_owned()
    } else {
        words(part)
    };
    let remedy = match (&suggestion, known.owners(field).first()) {
        (Some(meant), _) => format!("did you mean `{meant}`?"),
        (None, Some(owner)) if !field.is_empty() => format!("it belongs {}", home(owner)),
        _ => "remove it, or it is lost in the next save".to_owned(),
    };
    UnknownField {
        path: dotted(path),
        spot,
        message: format!(
            "{spot}: `{}` is not a field of {whose}; {remedy}",
            shortened(field)
        ),
        suggestion,
    }
}

fn home(owner: &[PathStep]) -> String {
    match owner.iter().rev().find_map(|step| match step {
        PathStep::Field(name) => Some(name.as_str()),
        PathStep::Entry(_) => None,
    }) {
        None => "to the design itself".to_owned(),
        Some("dials") => "to a dial".to_owned(),
        Some("slots") => "to a slot".to_owned(),
        Some(part) => format!("in `{part}`"),
    }
}

/// The one of `names` that is a slip of the finger away from `field`.
fn nearest<'a>(field: &str, names: &[&'a str]) -> Option<&'a str> {
    if field.chars().count() > LONGEST_COMPARED {
        return None;
    }
    let within = (field.chars().count() / 3).clamp(1, 3);
    names
        .iter()
        .map(|name| (distance(field, name), *name))
        .filter(|(distance, _)| *distance <= within)
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, name)| name)
}

/// Letters to add, drop, change or swap with their neighbour to come from one word to the other.
fn distance(from: &str, to: &str) -> usize {
    strsim::osa_distance(&from.to_lowercase(), &to.to_lowercase())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_slip_of_the_finger_is_one_step() {
        for (from, to, steps) in [
            ("radius", "radius", 0),
            ("raduis", "radius", 1),
            ("radus", "radius", 1),
            ("radiuss", "radius", 1),
            ("rodius", "radius", 1),
            ("Radius", "radius", 0),
            ("", "gap", 3),
        ] {
            assert_eq!(distance(from, to), steps, "{from} to {to}");
            assert_eq!(distance(to, from), steps, "{to} to {from}");
        }
    }

    #[test]
    fn only_what_is_near_is_suggested() {
        let names = ["diameter", "height", "gap"];
        assert_eq!(nearest("diametre", &names), Some("diameter"));
        assert_eq!(nearest("colour", &names), None);
        assert_eq!(nearest("gp", &names), Some("gap"));
    }
}
