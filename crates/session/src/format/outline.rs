//! Where every field of a design file stands.
//!
//! An outline is made of any text, right or wrong; see the scanner beside it for how.

use super::gather::Remark;
use super::place::PathStep;
use super::scan::Scanner;

/// Brackets inside brackets beyond this are refused; a design needs seven.
pub(super) const DEEPEST: usize = 64;

/// Fields and entries beyond this are refused; a design with twelve dials needs a few thousand.
pub(super) const MOST_NODES: usize = 100_000;

/// Entries a list may have; a design needs no more than 360.
pub(super) const MOST_ENTRIES: usize = 1000;

/// Comments beyond this are refused; one for each line of the largest design would be fewer.
pub(super) const MOST_COMMENTS: usize = 10_000;

/// Line and column in a text, both from 1; columns count characters.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Spot {
    /// Line, from 1.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
}

/// What a node is called inside its parent.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Key<'a> {
    Field(&'a str),
    Entry(usize),
}

/// One field or list entry.
#[derive(Debug, Clone, Copy)]
pub(super) struct Node<'a> {
    pub(super) parent: Option<usize>,
    pub(super) key: Key<'a>,
    /// Where its name starts, or its value where it has no name; byte offset.
    pub(super) at: usize,
    /// Where its value starts; byte offset.
    pub(super) value_at: usize,
    pub(super) first_child: Option<usize>,
    pub(super) next_sibling: Option<usize>,
}

/// All fields of a text, in the order in which they stand.
#[derive(Debug)]
pub(super) struct Outline<'a> {
    pub(super) text: &'a str,
    pub(super) nodes: Vec<Node<'a>>,
    line_starts: Vec<usize>,
    pub(super) first: Option<usize>,
    /// In the order in which they stand; whole only where nothing stopped the scan.
    pub(super) comments: Vec<Remark>,
    pub(super) stopped: Option<(Stop, usize)>,
}

/// Why a scan ended before the text did.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Stop {
    /// Brackets inside brackets, beyond [`DEEPEST`].
    TooDeep,
    /// Fields and entries, beyond [`MOST_NODES`].
    TooMany,
    /// Entries of one list, beyond [`MOST_ENTRIES`].
    LongList,
    /// Comments, beyond [`MOST_COMMENTS`].
    TooManyComments,
}

impl<'a> Outline<'a> {
    /// Scans the whole text.
    pub(super) fn of(text: &'a str) -> Self {
        let line_starts = std::iter::once(0)
            .chain(text.match_indices('\n').map(|(at, _)| at + 1))
            .collect();
        let outline = Self {
            text,
            nodes: Vec::new(),
            line_starts,
            first: None,
            comments: Vec::new(),
            stopped: None,
        };
        Scanner::new(outline).run()
    }

    /// Why and where the scan ended before the text did; no design goes that far.
    pub(super) fn stopped(&self) -> Option<(Stop, Spot)> {
        self.stopped.map(|(why, at)| (why, self.spot(at)))
    }

    /// Line and column of a byte offset.
    pub(super) fn spot(&self, at: usize) -> Spot {
        let line = self
            .line_starts
            .partition_point(|start| *start <= at)
            .max(1);
        let start = self.line_starts.get(line - 1).copied().unwrap_or(0);
        let column = self
            .text
            .get(start..at)
            .map_or(0, |before| before.chars().count());
        Spot {
            line,
            column: column + 1,
        }
    }

    /// Byte offset of a line and column; the end of the text for one beyond it.
    pub(super) fn offset(&self, spot: Spot) -> usize {
        let Some(start) = self.line_starts.get(spot.line.saturating_sub(1)).copied() else {
            return self.text.len();
        };
        let line = self.text.get(start..).unwrap_or_default();
        line.char_indices()
            .nth(spot.column.saturating_sub(1))
            .map_or(self.text.len(), |(within, _)| start + within)
    }

    /// Where the name of the field at `path` stands.
    pub(super) fn find(&self, path: &[PathStep]) -> Option<Spot> {
        self.node(path).map(|node| self.spot(node.at))
    }

    /// The first word of the value at `path`, up to the next space, comma or bracket.
    pub(super) fn value(&self, path: &[PathStep]) -> Option<&'a str> {
        let rest = self.text.get(self.node(path)?.value_at..)?;
        let end = rest.find(|c: char| c.is_whitespace() || ",()[]{}/".contains(c));
        rest.get(..end.unwrap_or(rest.len()))
    }

    /// Path of the last field that starts before or at a byte offset.
    pub(super) fn path_at(&self, at: usize) -> Vec<PathStep> {
        let after = self.nodes.partition_point(|node| node.at <= at);
        after
            .checked_sub(1)
            .map_or_else(Vec::new, |last| self.path_of(last))
    }

    /// Path of a node.
    pub(super) fn path_of(&self, node: usize) -> Vec<PathStep> {
        let mut path = Vec::new();
        let mut next = Some(node);
        while let Some(node) = next.and_then(|index| self.nodes.get(index)) {
            path.push(match node.key {
                Key::Field(name) => PathStep::field(name),
                Key::Entry(index) => PathStep::Entry(index),
            });
            next = node.parent;
        }
        path.reverse();
        path
    }

    /// Where the value of the last field starts that itself starts before or at a byte offset.
    pub(super) fn value_spot_at(&self, at: usize) -> Option<Spot> {
        let after = self.nodes.partition_point(|node| node.at <= at);
        let node = after.checked_sub(1).and_then(|index| self.nodes.get(index));
        node.map(|node| self.spot(node.value_at))
    }

    /// Names of the fields inside the part at `path`, in their order.
    pub(super) fn fields(&self, path: &[PathStep]) -> Vec<&'a str> {
        let mut next = if path.is_empty() {
            self.first
        } else {
            self.node(path).and_then(|node| node.first_child)
        };
        let mut names = Vec::new();
        while let Some(node) = next.and_then(|index| self.nodes.get(index)) {
            if let Key::Field(name) = node.key {
                names.push(name);
            }
            next = node.next_sibling;
        }
        names
    }

    /// Paths of all parts that have a field of this name.
    pub(super) fn owners(&self, field: &str) -> Vec<Vec<PathStep>> {
        let is_it = |node: &&Node| node.key == Key::Field(field);
        let owner = |node: &Node<'a>| {
            let mut path = self.path_at(node.at);
            path.pop();
            path
        };
        self.nodes.iter().filter(is_it).map(owner).collect()
    }

    fn node(&self, path: &[PathStep]) -> Option<&Node<'a>> {
        let mut next = self.first;
        let mut found = None;
        for step in path {
            let node = loop {
                let node = self.nodes.get(next?)?;
                let same = match (step, node.key) {
                    (PathStep::Field(name), Key::Field(key)) => name == key,
                    (PathStep::Entry(index), Key::Entry(key)) => *index == key,
                    _ => false,
                };
                if same {
                    break node;
                }
                next = node.next_sibling;
            };
            found = Some(node);
            next = node.first_child;
        }
        found
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn path(text: &str) -> Vec<PathStep> {
        let step = |part: &str| {
            part.parse()
                .map_or_else(|_| PathStep::Field(part.to_owned()), PathStep::Entry)
        };
        text.split('.').map(step).collect()
    }

    fn spot(text: &str, at: &str) -> Option<(usize, usize)> {
        Outline::of(text)
            .find(&path(at))
            .map(|spot| (spot.line, spot.column))
    }

    #[test]
    fn a_field_in_a_list_of_parts_is_found() {
        let text = "(\n  a: 1,\n  dials: [(x: 1), (\n    disc: (foo: 2))],\n)";
        assert_eq!(spot(text, "a"), Some((2, 3)));
        assert_eq!(spot(text, "dials.1.disc.foo"), Some((4, 12)));
        assert_eq!(spot(text, "dials.2"), None);
    }

    #[test]
    fn brackets_and_commas_in_strings_do_not_count() {
        let text = r###"(a: "),(\"", b: r#"" ), "#, c: '\'', d: b"(", e: br##"#")"##, f: 1)"###;
        for field in ["a", "b", "c", "d", "e", "f"] {
            let column = text.find(&format!("{field}: ")).unwrap() + 1;
            assert_eq!(spot(text, field), Some((1, column)), "{field}");
        }
    }

    #[test]
    fn comments_hide_what_they_hold_however_nested() {
        let text = "(/* a: (/* b: */ [ */ c /* , */ : // ,\n 1, // d: 2\n e: 3)";
        assert_eq!(spot(text, "a"), None);
        assert_eq!(spot(text, "c"), Some((1, 23)));
        assert_eq!(spot(text, "d"), None);
        assert_eq!(spot(text, "e"), Some((3, 2)));
    }

    #[test]
    fn columns_count_characters() {
        assert_eq!(spot("(a: \"花子\", b: 1)", "b"), Some((1, 11)));
    }

    #[test]
    fn fields_of_a_variant_belong_to_the_field_that_holds_it() {
        assert_eq!(
            spot("(material: Wood(species: \"x\"))", "material.species"),
            Some((1, 17))
        );
    }

    #[test]
    fn a_spot_and_its_offset_are_each_others_inverse() {
        let text = "(a: 1,\n  é: 2,\n)\n";
        let outline = Outline::of(text);
        for (at, _) in text.char_indices() {
            assert_eq!(outline.offset(outline.spot(at)), at);
        }
    }

    #[test]
    fn the_field_before_an_offset_is_named() {
        let text = "(a: 1, b: (c: [1, 22]))";
        let at = text.find("22").unwrap();
        assert_eq!(Outline::of(text).path_at(at + 1), path("b.c.1"));
    }

    #[test]
    fn text_that_is_no_design_still_has_an_outline() {
        for text in [
            "", ")", "]]]", "(", "(a", "(a:", "'", "r#\"", "/*", "b", "r#", "(\"", "//",
        ] {
            let _ = Outline::of(text).path_at(text.len());
        }
        let why = |text: &str| Outline::of(text).stopped().map(|(why, _)| why);
        assert_eq!(why(&"(".repeat(100_000)), Some(Stop::TooDeep));
        assert_eq!(
            why(&format!("[{}", "1,".repeat(1001))),
            Some(Stop::LongList)
        );
        assert_eq!(
            why(&format!("({}", "a:1,".repeat(100_001))),
            Some(Stop::TooMany)
        );
    }
}
