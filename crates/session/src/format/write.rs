//! A design as text: RON, one part a line where it fits.
//!
//! Laid out here instead of by the RON library so that the bytes of a design never depend on its
//! version, and so that a short part stays on one line while a long one opens up.

use super::LARGEST;
use super::comments::{Placed, on_one_line};
use super::place::{PathStep, dotted};

/// Columns a line may have before its part is opened up.
const WIDTH: usize = 120;

/// Why a design cannot be written.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum WriteError {
    /// A size is not a number a file can hold.
    #[error("{field} is {value}, which cannot be saved; give it a plain number")]
    NotFinite {
        /// Path of the field, such as `dials[1].disc.radius`.
        field: String,
        /// What it is instead of a number.
        value: String,
    },
    /// The file could not be opened again.
    #[error(
        "the file would have {bytes} bytes and can have at most {limit}; shorten its comments or words"
    )]
    TooLarge {
        /// How many.
        bytes: u64,
        /// The most that is read.
        limit: u64,
    },
}

/// Text of a file, before it is laid out.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Tree {
    /// A length, angle or other measured number.
    Number(f64),
    /// A whole number, a yes or no, or a name.
    Word(String),
    /// Words in quotes.
    Text(String),
    /// Named fields, after the name of a variant where it is one.
    Fields(&'static str, Vec<(&'static str, Tree)>),
    /// A variant that holds one thing.
    Variant(&'static str, Box<Tree>),
    /// Any number of the same, in square brackets.
    List(Vec<Tree>),
    /// A fixed number, in round brackets.
    Tuple(Vec<Tree>),
}

impl Tree {
    /// A value without parts of its own.
    fn is_plain(&self) -> bool {
        matches!(
            self,
            Self::Number(_) | Self::Word(_) | Self::Text(_) | Self::Tuple(_)
        )
    }

    /// The field or entry of this name; that of its value for a variant.
    pub(super) fn child(&self, step: &PathStep) -> Option<&Self> {
        match (self, step) {
            (Self::Fields(_, fields), PathStep::Field(name)) => fields
                .iter()
                .find_map(|(field, value)| (field == name).then_some(value)),
            (Self::List(entries) | Self::Tuple(entries), PathStep::Entry(index)) => {
                entries.get(*index)
            }
            (Self::Variant(_, value), _) => value.child(step),
            _ => None,
        }
    }
}

/// The whole file, with comments where they are placed.
pub(super) fn file(tree: &Tree, comments: &Placed<'_>) -> Result<String, WriteError> {
    refuse_non_finite(tree, &mut Vec::new())?;
    let mut out = String::new();
    for comment in &comments.head {
        out.push_str(comment);
        out.push('\n');
    }
    let mut layout = Layout {
        comments,
        path: Vec::new(),
    };
    if let Tree::Fields(name, fields) = tree {
        out.push_str(name);
        layout.open_fields(fields, 0, &mut out);
    } else {
        layout.lay_out(tree, 0, 0, &mut out);
    }
    out.push('\n');
    for comment in &comments.foot {
        out.push_str(comment);
        out.push('\n');
    }
    let bytes = out.len() as u64;
    if bytes > LARGEST {
        return Err(WriteError::TooLarge {
            bytes,
            limit: LARGEST,
        });
    }
    Ok(out)
}

/// One line, however long.
pub(super) fn flat(tree: &Tree) -> String {
    match tree {
        Tree::Number(value) => number(*value),
        Tree::Word(word) => word.clone(),
        Tree::Text(text) => quote(text),
        Tree::Fields(name, fields) => {
            let field = |(name, value): &(&str, Tree)| format!("{name}: {}", flat(value));
            format!("{name}({})", join(fields.iter().map(field)))
        }
        Tree::Variant(name, value) => format!("{name}({})", flat(value)),
        Tree::List(entries) => format!("[{}]", join(entries.iter().map(flat))),
        Tree::Tuple(entries) => format!("({})", join(entries.iter().map(flat))),
    }
}

fn join(parts: impl Iterator<Item = String>) -> String {
    parts.collect::<Vec<_>>().join(", ")
}

/// A file in the making, and which part of it is being written.
struct Layout<'a> {
    comments: &'a Placed<'a>,
    path: Vec<PathStep>,
}

impl Layout<'_> {
    /// Writes `tree` where `used` columns of the line are taken and lines are indented by `indent`.
    fn lay_out(&mut self, tree: &Tree, indent: usize, used: usize, out: &mut String) {
        if !self.comments.inside(&self.path) {
            let line = flat(tree);
            let is_part = matches!(tree, Tree::Fields(..) | Tree::List(_) | Tree::Variant(..));
            if !is_part || used + line.chars().count() < WIDTH {
                out.push_str(&line);
                return;
            }
        }
        match tree {
            Tree::Fields(name, fields) => {
                out.push_str(name);
                self.open_fields(fields, indent, out);
            }
            Tree::List(entries) => {
                out.push('[');
                self.open(indexed(entries), indent, out);
                out.push(']');
            }
            Tree::Tuple(entries) => {
                out.push('(');
                self.open(indexed(entries), indent, out);
                out.push(')');
            }
            Tree::Variant(name, value) => {
                out.push_str(name);
                out.push('(');
                self.lay_out(value, indent, used + name.len() + 2, out);
                out.push(')');
            }
            Tree::Number(_) | Tree::Word(_) | Tree::Text(_) => out.push_str(&flat(tree)),
        }
    }

    fn open_fields(&mut self, fields: &[(&'static str, Tree)], indent: usize, out: &mut String) {
        out.push('(');
        let fields = fields.iter().map(|(name, value)| Element {
            name: format!("{name}: "),
            step: PathStep::field(name),
            value,
        });
        self.open(fields, indent, out);
        out.push(')');
    }

    /// Writes each element on a line of its own, but plain values side by side where they fit.
    ///
    /// The fields of the design itself never stand side by side, nor does what has comments.
    fn open<'t>(
        &mut self,
        elements: impl Iterator<Item = Element<'t>>,
        indent: usize,
        out: &mut String,
    ) {
        let comments = self.comments;
        let here = comments.around(&self.path);
        out.push_str(&on_one_line(here.map_or(&[], |around| &around.opening)));
        out.push('\n');
        let mut line = String::new();
        for Element { name, step, value } in elements {
            self.path.push(step);
            let around = comments.around(&self.path);
            let commented = around.is_some() || comments.inside(&self.path);
            let mut element = name;
            let taken = indent + 4 + element.chars().count();
            self.lay_out(value, indent + 4, taken, &mut element);
            self.path.pop();
            element.push(',');
            let joins = indent > 0 && value.is_plain() && !commented;
            let room = indent + 4 + line.chars().count() + 1 + element.chars().count() <= WIDTH;
            if joins && room && !line.is_empty() {
                line.push(' ');
                line.push_str(&element);
                continue;
            }
            end_line(&mut line, indent, out);
            if let Some(around) = around {
                own_lines(&around.before, indent, out);
                element.push_str(&on_one_line(&around.after));
            }
            line = element;
            if !joins {
                end_line(&mut line, indent, out);
            }
        }
        end_line(&mut line, indent, out);
        own_lines(here.map_or(&[], |around| &around.closing), indent, out);
        pad(indent, out);
    }
}

/// Something inside brackets: its name with a colon, if it has one, and its value.
struct Element<'a> {
    name: String,
    step: PathStep,
    value: &'a Tree,
}

fn indexed(entries: &[Tree]) -> impl Iterator<Item = Element<'_>> {
    entries.iter().enumerate().map(|(index, value)| Element {
        name: String::new(),
        step: PathStep::Entry(index),
        value,
    })
}

fn own_lines(comments: &[&str], indent: usize, out: &mut String) {
    for comment in comments {
        pad(indent + 4, out);
        out.push_str(comment);
        out.push('\n');
    }
}

fn end_line(line: &mut String, indent: usize, out: &mut String) {
    if !line.is_empty() {
        pad(indent + 4, out);
        out.push_str(line);
        out.push('\n');
        line.clear();
    }
}

fn pad(columns: usize, out: &mut String) {
    out.extend(std::iter::repeat_n(' ', columns));
}

/// The shortest digits that read back as the same number, with a point in any case.
fn number(value: f64) -> String {
    let value = if value == 0.0 { 0.0 } else { value };
    let text = format!("{value:?}");
    match text.split_once('e') {
        Some((digits, power)) if !digits.contains('.') => format!("{digits}.0e{power}"),
        _ => text,
    }
}

/// Quotes text; only what could not be seen or would end the string is escaped.
fn quote(text: &str) -> String {
    let mut out = String::with_capacity(text.len() + 2);
    out.push('"');
    for c in text.chars() {
        match c {
            '"' | '\\' => {
                out.push('\\');
                out.push(c);
            }
            '\n' => out.push_str("\\n"),
            c if must_show(c) => out.extend(c.escape_unicode()),
            c => out.push(c),
        }
    }
    out.push('"');
    out
}

/// Control characters, line separators and marks that turn the direction of a line around.
fn must_show(c: char) -> bool {
    c.is_control()
        || matches!(c, '\u{2028}' | '\u{2029}' | '\u{202A}'..='\u{202E}' | '\u{2066}'..='\u{2069}')
        || matches!(c, '\u{FEFF}' | '\u{200E}' | '\u{200F}' | '\u{061C}')
}

fn refuse_non_finite(tree: &Tree, path: &mut Vec<PathStep>) -> Result<(), WriteError> {
    let mut inside = |step: PathStep, tree: &Tree| {
        path.push(step);
        refuse_non_finite(tree, path)?;
        path.pop();
        Ok(())
    };
    match tree {
        Tree::Number(value) if !value.is_finite() => Err(WriteError::NotFinite {
            field: dotted(path),
            value: value.to_string(),
        }),
        Tree::Number(_) | Tree::Word(_) | Tree::Text(_) => Ok(()),
        Tree::Fields(_, fields) => fields
            .iter()
            .try_for_each(|(name, value)| inside(PathStep::field(name), value)),
        Tree::Variant(_, value) => refuse_non_finite(value, path),
        Tree::List(entries) | Tree::Tuple(entries) => entries
            .iter()
            .enumerate()
            .try_for_each(|(index, value)| inside(PathStep::Entry(index), value)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_have_a_point_and_the_fewest_digits() {
        let cases = [
            (18.0, "18.0"),
            (0.1, "0.1"),
            (-0.0, "0.0"),
            (-55.25, "-55.25"),
            (1e300, "1.0e300"),
            (5e-324, "5.0e-324"),
            (1.0 / 3.0, "0.3333333333333333"),
        ];
        for (value, text) in cases {
            assert_eq!(number(value), text);
        }
    }

    #[test]
    fn names_in_any_script_stay_legible() {
        assert_eq!(
            quote("Zoë Łukasz Анна 花子 مريم देवी"),
            "\"Zoë Łukasz Анна 花子 مريم देवी\""
        );
    }

    #[test]
    fn what_cannot_be_seen_is_escaped() {
        assert_eq!(
            quote("a\"b\\c\nd\u{202E}\0"),
            r#""a\"b\\c\nd\u{202e}\u{0}""#
        );
    }

    #[test]
    fn a_part_opens_up_only_when_its_line_is_full() {
        let short = Tree::Fields("", vec![("a", Tree::Number(1.0))]);
        let long = Tree::List(vec![Tree::Text("x".repeat(50)); 3]);
        let tree = Tree::Fields("", vec![("short", short), ("long", long)]);
        let text = file(&tree, &Placed::default()).unwrap();
        assert_eq!(text.lines().nth(1), Some("    short: (a: 1.0),"));
        assert_eq!(text.lines().nth(2), Some("    long: ["));
        assert_eq!(text.lines().count(), 7, "{text}");
        assert_eq!(
            text.lines().nth(3).map(str::len),
            Some(115),
            "two of the long words fit on a line"
        );
    }

    #[test]
    fn a_size_that_is_no_number_is_named_and_never_written() {
        let size = Tree::Fields("", vec![("radius", Tree::Number(f64::NAN))]);
        let tree = Tree::Fields(
            "",
            vec![("dials", Tree::List(vec![Tree::Number(1.0), size]))],
        );
        assert_eq!(
            file(&tree, &Placed::default()).unwrap_err().to_string(),
            "dials[1].radius is NaN, which cannot be saved; give it a plain number"
        );
    }
}
