//! The walk over RON text that makes an outline of it.
//!
//! Knows strings, raw strings, characters and nested comments, and never recurses, so that depth
//! costs no stack. It goes on after every mistake and stops only where no design could go on.

use super::gather::{Beside, Gatherer, Next};
use super::outline::{DEEPEST, Key, MOST_COMMENTS, MOST_ENTRIES, MOST_NODES, Node, Outline, Stop};

/// An open bracket.
struct Frame {
    /// The node whose value this bracket is; `None` for the design itself.
    owner: Option<usize>,
    /// The element that is being read.
    current: Option<usize>,
    /// The element read before it.
    last: Option<usize>,
    entries: usize,
    fresh: bool,
}

impl Frame {
    fn of(owner: Option<usize>) -> Self {
        Self {
            owner,
            current: None,
            last: None,
            entries: 0,
            fresh: true,
        }
    }
}

/// The walk over the text.
pub(super) struct Scanner<'a> {
    outline: Outline<'a>,
    at: usize,
    frames: Vec<Frame>,
    /// A field whose value has not started yet.
    value_due: Option<usize>,
    comments: Gatherer,
    /// Whether the bracket that opens the design has been passed.
    opened: bool,
}

impl<'a> Scanner<'a> {
    /// A walk that starts at the first character of the empty `outline`'s text.
    pub(super) fn new(outline: Outline<'a>) -> Self {
        Self {
            outline,
            at: 0,
            frames: vec![Frame::of(None)],
            value_due: None,
            comments: Gatherer::default(),
            opened: false,
        }
    }

    fn rest(&self) -> &'a str {
        self.outline.text.get(self.at..).unwrap_or_default()
    }

    /// Walks to the end, or to where no design could go on.
    pub(super) fn run(mut self) -> Outline<'a> {
        while self.outline.stopped.is_none()
            && let Some(c) = self.rest().chars().next()
        {
            match c {
                '(' | '[' | '{' => {
                    self.begin_value();
                    self.open();
                }
                ')' | ']' | '}' => self.close(),
                ',' => self.next_element(),
                '/' if self.rest().starts_with("//") => self.line_comment(),
                '/' if self.rest().starts_with("/*") => self.block_comment(),
                '"' => {
                    self.begin_value();
                    self.pass(quoted(self.rest(), '"'));
                }
                '\'' => {
                    self.begin_value();
                    self.pass(quoted(self.rest(), '\''));
                }
                c if c.is_whitespace() || c == ':' => self.at += c.len_utf8(),
                c if is_word(c) => self.word(),
                c => {
                    self.begin_value();
                    self.pass(c.len_utf8());
                }
            }
        }
        self.outline.comments = self.comments.end();
        self.outline
    }

    /// Goes on by so many bytes, which are no space and no comment.
    fn pass(&mut self, length: usize) {
        self.at += length;
        self.comments.passed(self.at);
    }

    /// A comment stands at the cursor, so many bytes long.
    fn pass_comment(&mut self, length: usize) {
        if self.comments.count() == MOST_COMMENTS {
            self.outline.stopped = Some((Stop::TooManyComments, self.at));
        }
        let end = self.at + length;
        self.comments.comment(self.outline.text, self.at..end);
        self.at = end;
    }

    /// Comments that stand before the byte `at`, where `next` begins, have found their place.
    fn settle(&mut self, at: usize, next: Next) {
        let next = match (self.frames.len(), self.opened) {
            (1, true) => Next::Outside(Beside::Foot),
            (1, false) => Next::Outside(Beside::Head),
            _ => next,
        };
        self.comments.settle(self.outline.text, at, next);
    }

    /// A bracket opens at the cursor.
    fn open(&mut self) {
        if self.frames.len() > DEEPEST {
            self.outline.stopped = Some((Stop::TooDeep, self.at));
            return;
        }
        let owner = self.frames.last().and_then(|frame| frame.current);
        self.frames.push(Frame::of(owner));
        self.opened = true;
        self.pass(1);
    }

    fn close(&mut self) {
        if let Some(frame) = self.frames.last() {
            let (last, part) = (frame.current, frame.owner);
            self.settle(self.at, Next::Close { last, part });
        }
        if self.frames.len() > 1 {
            self.frames.pop();
        }
        self.value_due = None;
        self.pass(1);
    }

    fn next_element(&mut self) {
        let mut ended = None;
        if let Some(frame) = self.frames.last_mut() {
            ended = frame.current.filter(|_| !frame.fresh);
            frame.fresh = true;
        }
        self.value_due = None;
        self.at += 1;
        self.comments.comma(ended, self.at);
    }

    /// Something that is a value, or part of one, starts at the cursor.
    fn begin_value(&mut self) {
        if let Some(index) = self.value_due.take() {
            self.settle(self.at, Next::Within(index));
            if let Some(node) = self.outline.nodes.get_mut(index) {
                node.value_at = self.at;
            }
            return;
        }
        let top = self.frames.len() == 1;
        let Some(frame) = self.frames.last_mut() else {
            return;
        };
        if frame.fresh && !top {
            let entry = frame.entries;
            frame.entries += 1;
            self.add(Key::Entry(entry), self.at);
        } else {
            let node = frame.current.unwrap_or_default();
            self.settle(self.at, Next::Within(node));
        }
    }

    fn add(&mut self, key: Key<'a>, at: usize) {
        let index = self.outline.nodes.len();
        if index == MOST_NODES {
            self.outline.stopped = Some((Stop::TooMany, at));
            return;
        }
        let Some(frame) = self.frames.last_mut() else {
            return;
        };
        frame.fresh = false;
        frame.current = Some(index);
        if key == Key::Entry(MOST_ENTRIES) {
            self.outline.stopped = Some((Stop::LongList, at));
        }
        let (owner, before) = (frame.owner, frame.last.replace(index));
        let next = Next::Element {
            node: index,
            before,
            part: owner,
        };
        self.settle(at, next);
        let link = match (before, owner) {
            (Some(before), _) => self
                .outline
                .nodes
                .get_mut(before)
                .map(|node| &mut node.next_sibling),
            (None, Some(owner)) => self
                .outline
                .nodes
                .get_mut(owner)
                .map(|node| &mut node.first_child),
            (None, None) => Some(&mut self.outline.first),
        };
        if let Some(link) = link {
            link.get_or_insert(index);
        }
        let node = Node {
            parent: owner,
            key,
            at,
            value_at: at,
            first_child: None,
            next_sibling: None,
        };
        self.outline.nodes.push(node);
    }

    /// A word: the name of a field, a variant, a number, or the prefix of a string.
    fn word(&mut self) {
        let rest = self.rest();
        if let Some(length) = prefixed_string(rest) {
            self.begin_value();
            self.pass(length);
            return;
        }
        let raw = if rest.starts_with("r#") { 2 } else { 0 };
        let name = rest.get(raw..).unwrap_or_default();
        let name = name
            .get(..name.find(|c| !is_word(c)).unwrap_or(name.len()))
            .unwrap_or_default();
        let start = self.at;
        let fresh = self.frames.len() > 1 && self.frames.last().is_some_and(|frame| frame.fresh);
        self.at += raw + name.len();
        self.comments.passed(self.at);
        if fresh && self.colon_follows() {
            self.add(Key::Field(name), start);
            self.value_due = self.frames.last().and_then(|frame| frame.current);
        } else {
            let after = std::mem::replace(&mut self.at, start);
            self.begin_value();
            self.at = after;
        }
    }

    /// Skips space and comments; whether a colon stands there.
    fn colon_follows(&mut self) -> bool {
        loop {
            let rest = self.rest();
            if rest.starts_with("//") {
                self.line_comment();
            } else if rest.starts_with("/*") {
                self.block_comment();
            } else {
                match rest.chars().next() {
                    Some(c) if c.is_whitespace() => self.at += c.len_utf8(),
                    next => return next == Some(':'),
                }
            }
        }
    }

    fn line_comment(&mut self) {
        self.pass_comment(self.rest().find('\n').unwrap_or(self.rest().len()));
    }

    fn block_comment(&mut self) {
        let rest = self.rest().as_bytes();
        let mut depth = 0_usize;
        let mut within = 0;
        while let Some(pair) = rest.get(within..within + 2) {
            match pair {
                b"/*" => depth += 1,
                b"*/" => depth -= 1,
                _ => {
                    within += 1;
                    continue;
                }
            }
            within += 2;
            if depth == 0 {
                self.pass_comment(within);
                return;
            }
        }
        self.pass_comment(rest.len());
    }
}

/// Letters, digits and what else can be inside a name or number.
fn is_word(c: char) -> bool {
    c.is_alphanumeric() || "_+-.".contains(c)
}

/// Length of a string or character that starts here, quotes included.
fn quoted(text: &str, quote: char) -> usize {
    let mut escaped = false;
    for (at, c) in text.char_indices().skip(1) {
        match c {
            _ if escaped => escaped = false,
            '\\' => escaped = true,
            c if c == quote => return at + 1,
            _ => {}
        }
    }
    text.len()
}

/// Length of a raw or byte string that starts here.
fn prefixed_string(text: &str) -> Option<usize> {
    let raw = ["r", "br", "rb"].into_iter().find_map(|prefix| {
        let rest = text.strip_prefix(prefix)?;
        let hashes = rest.len() - rest.trim_start_matches('#').len();
        rest.get(hashes..)?
            .starts_with('"')
            .then_some((prefix.len(), hashes))
    });
    if let Some((prefix, hashes)) = raw {
        let body = prefix + hashes + 1;
        let end = format!("\"{}", "#".repeat(hashes));
        let within = text.get(body..)?.find(&end);
        return Some(within.map_or(text.len(), |within| body + within + end.len()));
    }
    let rest = text.strip_prefix('b')?;
    let quote = rest.chars().next().filter(|c| matches!(c, '"' | '\''))?;
    Some(1 + quoted(rest, quote))
}
