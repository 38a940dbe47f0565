//! Which field a comment belongs to, told by the signs round it while a text is scanned.
//!
//! A comment that ends its line belongs to what stands before it on that line; any other belongs to
//! the field or entry that follows, or to the end of the part where none follows.

use core::ops::Range;

/// What a comment stands beside. Nodes are those of the outline; `None` is the design itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Beside {
    /// Before the design.
    Head,
    /// Over a field or entry, or within its value.
    Before(usize),
    /// Behind a field or entry, on its last line.
    After(usize),
    /// Behind the bracket that opens a part.
    Opening(Option<usize>),
    /// Over the bracket that closes a part.
    Closing(Option<usize>),
    /// After the design.
    Foot,
}

/// A comment and what it belongs to.
#[derive(Debug, Clone)]
pub(super) struct Remark {
    pub(super) beside: Beside,
    /// Where it stands in the text, its `//` or `/*` and `*/` included; bytes.
    pub(super) bytes: Range<usize>,
}

/// What comes after comments.
#[derive(Debug, Clone, Copy)]
pub(super) enum Next {
    /// Nothing of the design: they stand before or after it.
    Outside(Beside),
    /// More of a field or entry that has begun already.
    Within(usize),
    /// A new field or entry, with the one before it in its part.
    Element {
        node: usize,
        before: Option<usize>,
        part: Option<usize>,
    },
    /// The bracket that closes a part, with the last field or entry in it.
    Close {
        last: Option<usize>,
        part: Option<usize>,
    },
}

/// A comment of which it is not known yet what follows.
#[derive(Debug)]
struct Waiting {
    bytes: Range<usize>,
    /// It stands on the line of the last sign that is no comment, with nothing but comments between.
    behind: bool,
    is_line: bool,
}

/// The comments of a text, gathered in one walk over it.
#[derive(Debug, Default)]
pub(super) struct Gatherer {
    done: Vec<Remark>,
    waiting: Vec<Waiting>,
    /// So many of the waiting ones stood before a comma and are behind nothing any more.
    settled: usize,
    /// End of the last comment or other sign.
    end: usize,
    /// A comment that begins on this line is behind the last sign.
    behind: bool,
}

impl Gatherer {
    /// How many comments there were so far.
    pub(super) fn count(&self) -> usize {
        self.done.len() + self.waiting.len()
    }

    /// A comment was passed.
    pub(super) fn comment(&mut self, text: &str, bytes: Range<usize>) {
        self.behind &= !has_line_end(text, self.end..bytes.start);
        self.end = bytes.end;
        self.waiting.push(Waiting {
            is_line: starts_line_comment(text.get(bytes.clone()).unwrap_or_default()),
            behind: self.behind,
            bytes,
        });
    }

    /// A sign that is no comment was passed; it ends here.
    pub(super) fn passed(&mut self, end: usize) {
        self.end = end;
        self.behind = true;
    }

    /// `next` begins at `at`: comments before it have found their place.
    pub(super) fn settle(&mut self, text: &str, at: usize, next: Next) {
        let count = self.waiting.partition_point(|one| one.bytes.start < at);
        let Some(last) = count.checked_sub(1).and_then(|last| self.waiting.get(last)) else {
            return;
        };
        // all on one line with what follows, which they introduce
        let leads = last.behind && !has_line_end(text, last.bytes.end..at);
        self.settled = self.settled.saturating_sub(count);
        self.done
            .extend(self.waiting.drain(..count).map(|one| Remark {
                beside: beside(next, one.behind, leads),
                bytes: one.bytes,
            }));
    }

    /// A comma that ends at `end`, after the field or entry `node`.
    pub(super) fn comma(&mut self, node: Option<usize>, end: usize) {
        let mut line_ended = false;
        for mut one in self.waiting.split_off(self.settled) {
            if let Some(node) = node.filter(|_| one.behind) {
                line_ended |= one.is_line;
                self.done.push(Remark {
                    beside: Beside::After(node),
                    bytes: one.bytes,
                });
            } else {
                one.behind = false;
                self.waiting.push(one);
            }
        }
        self.settled = self.waiting.len();
        self.passed(end);
        // a second comment cannot end the same line
        self.behind = !line_ended;
    }

    /// The comments in the order in which they stand; those that are still waiting stand after the
    /// design.
    pub(super) fn end(mut self) -> Vec<Remark> {
        self.done.extend(self.waiting.drain(..).map(|one| Remark {
            beside: Beside::Foot,
            bytes: one.bytes,
        }));
        self.done.sort_by_key(|remark| remark.bytes.start);
        self.done
    }
}

fn beside(next: Next, behind: bool, leads: bool) -> Beside {
    match next {
        Next::Outside(beside) => beside,
        Next::Within(node) => Beside::Before(node),
        Next::Element { node, .. } if !behind || leads => Beside::Before(node),
        Next::Element { before, part, .. } => before.map_or(Beside::Opening(part), Beside::After),
        Next::Close { part, .. } if !behind => Beside::Closing(part),
        Next::Close { last, part } => last.map_or(Beside::Opening(part), Beside::After),
    }
}

fn has_line_end(text: &str, bytes: Range<usize>) -> bool {
    text.get(bytes)
        .is_some_and(|between| between.contains('\n'))
}

/// Whether a comment is one that ends with its line.
pub(super) fn starts_line_comment(comment: &str) -> bool {
    comment.starts_with("//")
}
