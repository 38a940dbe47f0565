//! Comments of a design file, kept beside the design so that a save puts them back.
//!
//! Each is remembered with the field or entry it belongs to and the design it was written for. When
//! the file is written it goes to the same field again; an entry of a list is found again by what it
//! is, so that a comment on dial 3 follows the dial when dial 1 is taken away. A comment whose field
//! has gone stands over the part that the field was in, or at the head of the file. None is lost.

use std::collections::BTreeMap;
use std::ops::Bound;
use std::sync::Arc;

use latchwright_model::Design;

use super::align::aligned;
use super::gather::{Beside, Remark, starts_line_comment};
use super::outline::Outline;
use super::place::PathStep;
use super::write::Tree;

/// The comments of one design file.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Comments(Option<Arc<Kept>>);

#[derive(Debug, PartialEq)]
struct Kept {
    /// The design as it was when they were read.
    design: Tree,
    /// In the order in which they stood.
    list: Vec<Comment>,
}

#[derive(Debug, Clone, PartialEq)]
struct Comment {
    place: CommentPlace,
    /// As it was written, its `//` or `/*` and `*/` included.
    text: String,
}

/// Where a comment stands, with the path of the field or entry it belongs to.
#[derive(Debug, Clone, PartialEq)]
enum CommentPlace {
    Head,
    At(Side, Vec<PathStep>),
    Foot,
}

/// On which side of a field or entry, or inside which of its brackets.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Side {
    Before,
    After,
    Opening,
    Closing,
}

impl Side {
    /// Whether it is inside the brackets of the field, which it needs to have then.
    fn is_inside(self) -> bool {
        matches!(self, Self::Opening | Self::Closing)
    }
}

impl Comments {
    /// The comments of the text that `outline` is of, which was read as `design`.
    pub(super) fn of(outline: &Outline<'_>, design: &Design) -> Self {
        if outline.comments.is_empty() {
            return Self::default();
        }
        let design = super::v1::tree(design);
        let comment = |remark: &Remark| {
            let text = outline.text.get(remark.bytes.clone()).unwrap_or_default();
            Comment {
                place: place(remark.beside, outline, &design),
                text: text.trim_end().to_owned(),
            }
        };
        let list = outline.comments.iter().map(comment).collect();
        Self::new(design, list)
    }

    fn new(design: Tree, list: Vec<Comment>) -> Self {
        Self((!list.is_empty()).then(|| Arc::new(Kept { design, list })))
    }

    /// Whether there are none.
    pub fn is_empty(&self) -> bool {
        self.0.is_none()
    }

    /// Only those on or in the fields of the design that have one of these names.
    #[must_use]
    pub fn within(&self, fields: &[&str]) -> Self {
        let Some(kept) = &self.0 else {
            return Self::default();
        };
        let is_within = |comment: &&Comment| match &comment.place {
            CommentPlace::At(_, path) => {
                let first = path.first();
                first.is_some_and(|step| fields.iter().any(|name| *step == PathStep::field(name)))
            }
            CommentPlace::Head | CommentPlace::Foot => false,
        };
        let list = kept.list.iter().filter(is_within).cloned().collect();
        Self::new(kept.design.clone(), list)
    }

    /// Where each goes in the file of `design`.
    pub(super) fn placed(&self, design: &Tree) -> Placed<'_> {
        let mut placed = Placed::default();
        let Some(kept) = &self.0 else {
            return placed;
        };
        let mut then = Then::new(&kept.design, design);
        for Comment { place, text } in &kept.list {
            let place = match place {
                CommentPlace::Head => CommentPlace::Head,
                CommentPlace::Foot => CommentPlace::Foot,
                CommentPlace::At(side, path) => {
                    let (path, found) = then.path(path);
                    at(*side, path, found)
                }
            };
            placed.put(place, text);
        }
        placed
    }
}

/// Where a comment belongs to in `design`, given the nodes it stands beside in the text.
fn place(beside: Beside, outline: &Outline<'_>, design: &Tree) -> CommentPlace {
    let (side, node) = match beside {
        Beside::Head => return CommentPlace::Head,
        Beside::Foot => return CommentPlace::Foot,
        Beside::Before(node) => (Side::Before, Some(node)),
        Beside::After(node) => (Side::After, Some(node)),
        Beside::Opening(part) => (Side::Opening, part),
        Beside::Closing(part) => (Side::Closing, part),
    };
    let path = node.map_or_else(Vec::new, |node| outline.path_of(node));
    let mut known = Vec::new();
    let mut tree = design;
    for step in path {
        // the value of a variant stands in brackets of its own, which are no step of the design
        if let (Tree::Variant(_, value), PathStep::Entry(0)) = (tree, &step) {
            tree = value;
            continue;
        }
        let Some(next) = tree.child(&step) else {
            return at(side, known, StandsThere::Gone);
        };
        known.push(step);
        tree = next;
    }
    at(side, known, StandsThere::of(tree))
}

/// What there is at a path.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum StandsThere {
    /// Not the field itself, only the part that it would be in.
    Gone,
    /// A value without brackets.
    Plain,
    /// Something in brackets, which can have comments inside.
    Part,
}

impl StandsThere {
    fn of(tree: &Tree) -> Self {
        match tree {
            Tree::Number(_) | Tree::Word(_) | Tree::Text(_) => Self::Plain,
            Tree::Fields(..) | Tree::List(_) | Tree::Tuple(_) => Self::Part,
            Tree::Variant(_, value) => Self::of(value),
        }
    }
}

/// The place on that side of what is at `path`, or over it where it has no such side.
fn at(side: Side, path: Vec<PathStep>, found: StandsThere) -> CommentPlace {
    let side = match found {
        StandsThere::Part => side,
        StandsThere::Plain if !side.is_inside() => side,
        StandsThere::Plain | StandsThere::Gone => Side::Before,
    };
    if path.is_empty() && !side.is_inside() {
        CommentPlace::Head
    } else {
        CommentPlace::At(side, path)
    }
}

/// Finds fields of one design again in another.
struct Then<'a> {
    old: &'a Tree,
    new: &'a Tree,
    /// What became of the entries of lists, by the lists' paths.
    lists: BTreeMap<Vec<PathStep>, Vec<Option<usize>>>,
}

impl<'a> Then<'a> {
    fn new(old: &'a Tree, new: &'a Tree) -> Self {
        Self {
            old,
            new,
            lists: BTreeMap::new(),
        }
    }

    /// The path of what was at `path`, and what is there now; the path of the part that it was in
    /// where it has gone.
    fn path(&mut self, path: &[PathStep]) -> (Vec<PathStep>, StandsThere) {
        let mut now = Vec::new();
        let (mut old, mut new) = (self.old, self.new);
        for (depth, step) in path.iter().enumerate() {
            while let (Tree::Variant(one, before), Tree::Variant(other, after)) = (old, new)
                && one == other
            {
                (old, new) = (before, after);
            }
            let so_far = path.get(..depth).unwrap_or_default();
            let next = match (old, new, step) {
                (Tree::List(before), Tree::List(after), PathStep::Entry(index)) => {
                    let pairs = self
                        .lists
                        .entry(so_far.to_vec())
                        .or_insert_with(|| aligned(before, after));
                    pairs.get(*index).copied().flatten().map(PathStep::Entry)
                }
                (Tree::Fields(..), Tree::Fields(..), PathStep::Field(_))
                | (Tree::Tuple(_), Tree::Tuple(_), PathStep::Entry(_)) => Some(step.clone()),
                _ => None,
            };
            let children = next
                .as_ref()
                .and_then(|next| Some((old.child(step)?, new.child(next)?)));
            let (Some(next), Some(children)) = (next, children) else {
                return (now, StandsThere::Gone);
            };
            now.push(next);
            (old, new) = children;
        }
        (now, StandsThere::of(new))
    }
}

/// The comments round one field or entry.
#[derive(Debug, Default)]
pub(super) struct Around<'a> {
    /// Over it.
    pub(super) before: Vec<&'a str>,
    /// Behind the bracket that opens it.
    pub(super) opening: Vec<&'a str>,
    /// Over the bracket that closes it.
    pub(super) closing: Vec<&'a str>,
    /// Behind it.
    pub(super) after: Vec<&'a str>,
}

/// The comments of a file to be written, by the path they stand at.
#[derive(Debug, Default)]
pub(super) struct Placed<'a> {
    /// Over the design.
    pub(super) head: Vec<&'a str>,
    around: BTreeMap<Vec<PathStep>, Around<'a>>,
    /// Under the design.
    pub(super) foot: Vec<&'a str>,
}

impl<'a> Placed<'a> {
    fn put(&mut self, place: CommentPlace, text: &'a str) {
        let list = match place {
            CommentPlace::Head => &mut self.head,
            CommentPlace::Foot => &mut self.foot,
            CommentPlace::At(side, path) => {
                let around = self.around.entry(path).or_default();
                match side {
                    Side::Before => &mut around.before,
                    Side::Opening => &mut around.opening,
                    Side::Closing => &mut around.closing,
                    Side::After => &mut around.after,
                }
            }
        };
        list.push(text);
    }

    /// The comments round what stands at `path`.
    pub(super) fn around(&self, path: &[PathStep]) -> Option<&Around<'a>> {
        self.around.get(path)
    }

    /// Whether there are comments inside the brackets of what stands at `path`.
    pub(super) fn inside(&self, path: &[PathStep]) -> bool {
        let in_brackets =
            |around: &Around<'_>| !around.opening.is_empty() || !around.closing.is_empty();
        let after = (Bound::Excluded(path), Bound::Unbounded);
        let mut deeper = self.around.range::<[PathStep], _>(after);
        self.around(path).is_some_and(in_brackets)
            || deeper
                .next()
                .is_some_and(|(next, _)| next.starts_with(path))
    }
}

/// Comments for the end of a line: one that ends with its line comes last.
pub(super) fn on_one_line(comments: &[&str]) -> String {
    let (lines, blocks): (Vec<&str>, Vec<&str>) = comments
        .iter()
        .partition(|comment| starts_line_comment(comment));
    let mut text = String::new();
    for comment in blocks.into_iter().chain(lines) {
        text.push(' ');
        text.push_str(comment);
    }
    text
}
