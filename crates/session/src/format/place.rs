//! Where in a design file something stands, as a path and as words.

use std::fmt::Write as _;

/// One step of a path.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum PathStep {
    /// A named field.
    Field(String),
    /// An entry of a list, from 0.
    Entry(usize),
}

impl PathStep {
    /// A named field.
    pub(super) fn field(name: &str) -> Self {
        Self::Field(name.to_owned())
    }
}

/// The path as a file sees it, counting from 0: `dials[1].disc.slots[0]`.
pub(super) fn dotted(path: &[PathStep]) -> String {
    let mut text = String::new();
    for step in path {
        match step {
            PathStep::Field(name) if text.is_empty() => text.push_str(name),
            PathStep::Field(name) => {
                text.push('.');
                text.push_str(name);
            }
            PathStep::Entry(index) => {
                let _ = write!(text, "[{index}]");
            }
        }
    }
    text
}

/// The path as people say it, counting from 1: `dial 2, disc, slot 1`.
pub(super) fn words(path: &[PathStep]) -> String {
    let mut parts: Vec<String> = Vec::new();
    for (at, step) in path.iter().enumerate() {
        match step {
            PathStep::Field(name) => parts.push(name.clone()),
            PathStep::Entry(index) => {
                let one = match at.checked_sub(1).and_then(|before| path.get(before)) {
                    Some(PathStep::Field(name)) if name == "dials" => "dial",
                    Some(PathStep::Field(name)) if name == "slots" => "slot",
                    _ => {
                        parts.push(format!("entry {}", index + 1));
                        continue;
                    }
                };
                parts.pop();
                parts.push(format!("{one} {}", index + 1));
            }
        }
    }
    parts.join(", ")
}

/// The field in words and back quotes, with the part it belongs to in front:
/// `` dial 2, bore: `diameter` ``.
pub(super) fn quoted(path: &[PathStep]) -> String {
    match path.split_last() {
        Some((PathStep::Field(name), [])) => format!("`{name}`"),
        Some((PathStep::Field(name), part)) => format!("{}: `{name}`", words(part)),
        Some((PathStep::Entry(_), _)) => words(path),
        None => "the design".to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn path() -> Vec<PathStep> {
        vec![
            PathStep::field("dials"),
            PathStep::Entry(1),
            PathStep::field("disc"),
            PathStep::field("slots"),
            PathStep::Entry(0),
            PathStep::field("width"),
        ]
    }

    #[test]
    fn a_file_counts_from_nought_and_people_from_one() {
        assert_eq!(dotted(&path()), "dials[1].disc.slots[0].width");
        assert_eq!(words(&path()), "dial 2, disc, slot 1, width");
        assert_eq!(quoted(&path()), "dial 2, disc, slot 1: `width`");
    }

    #[test]
    fn a_field_of_the_design_itself_stands_alone() {
        assert_eq!(quoted(&[PathStep::field("season")]), "`season`");
        assert_eq!(
            words(&[PathStep::field("combination"), PathStep::Entry(2)]),
            "combination, entry 3"
        );
    }
}
