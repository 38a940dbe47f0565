//! Where in a design file something stands, as a path and as words.

use std::fmt::Write as _;

/// One step of a path.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Step {
    /// A named field.
    Field(String),
    /// An entry of a list, from 0.
    Entry(usize),
}

impl Step {
    /// A named field.
    pub(super) fn field(name: &str) -> Self {
        Self::Field(name.to_owned())
    }
}

/// The path as a file sees it, counting from 0: `dials[1].disc.slots[0]`.
pub(super) fn dotted(path: &[Step]) -> String {
    let mut text = String::new();
    for step in path {
        match step {
            Step::Field(name) if text.is_empty() => text.push_str(name),
            Step::Field(name) => {
                text.push('.');
                text.push_str(name);
            }
            Step::Entry(index) => {
                let _ = write!(text, "[{index}]");
            }
        }
    }
    text
}

/// The path as people say it, counting from 1: `dial 2, disc, slot 1`.
pub(super) fn words(path: &[Step]) -> String {
    let mut parts: Vec<String> = Vec::new();
    for (at, step) in path.iter().enumerate() {
        match step {
            Step::Field(name) => parts.push(name.clone()),
            Step::Entry(index) => {
                let one = match at.checked_sub(1).and_then(|before| path.get(before)) {
                    Some(Step::Field(name)) if name == "dials" => "dial",
                    Some(Step::Field(name)) if name == "slots" => "slot",
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
pub(super) fn quoted(path: &[Step]) -> String {
    match path.split_last() {
        Some((Step::Field(name), [])) => format!("`{name}`"),
        Some((Step::Field(name), part)) => format!("{}: `{name}`", words(part)),
        Some((Step::Entry(_), _)) => words(path),
        None => "the design".to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn path() -> Vec<Step> {
        vec![
            Step::field("dials"),
            Step::Entry(1),
            Step::field("disc"),
            Step::field("slots"),
            Step::Entry(0),
            Step::field("width"),
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
        assert_eq!(quoted(&[Step::field("season")]), "`season`");
        assert_eq!(
            words(&[Step::field("combination"), Step::Entry(2)]),
            "combination, entry 3"
        );
    }
}
