//! Why a file cannot be read, in sentences.

use ron::error::{Error as Ron, SpannedError};

use super::outline::{DEEPEST, MOST_COMMENTS, MOST_ENTRIES, MOST_NODES, Outline, Spot, Stop};
use super::place::words;

/// Why the bytes of a file are no design. The file is left alone in every case.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ReadError {
    /// Nothing in it.
    #[error("the file is empty; open another copy of it")]
    Empty,
    /// What is left of a file after a failed disk or a broken copy.
    #[error("the file is {bytes} zero bytes and nothing else; open another copy of it")]
    OnlyZeros {
        /// How many.
        bytes: usize,
    },
    /// Larger than any design.
    #[error(
        "the file has {bytes} bytes and a design has at most {limit}; is it a file of another kind?"
    )]
    TooLarge {
        /// Size of the file.
        bytes: u64,
        /// The most that is read.
        limit: u64,
    },
    /// Not text.
    #[error("byte {at} is not UTF-8 text; is it a file of another kind?")]
    NotUtf8 {
        /// Which byte, from 1.
        at: usize,
    },
    /// It does not say which format it is in.
    #[error("the file does not say its format; write `format: 1,` as its first line after `(`")]
    NoFormat,
    /// A format from the future.
    #[error(
        "made by a newer Latchwright (format {found}); this one reads format {}: use the newer program",
        super::FORMAT
    )]
    NewerFormat {
        /// As the file has it.
        found: u64,
    },
    /// A format that never was.
    #[error(
        "{spot}, `format`: {found} is not a format; this Latchwright reads format {}",
        super::FORMAT
    )]
    BadFormat {
        /// Where it stands.
        spot: Spot,
        /// As the file has it.
        found: String,
    },
    /// Brackets inside brackets without end.
    #[error("{spot}: more than {DEEPEST} brackets stand inside each other, which no design has")]
    TooDeep {
        /// Where the first one too many stands.
        spot: Spot,
    },
    /// A list without end.
    #[error(
        "{spot}, {list}: the list has more than {MOST_ENTRIES} entries, which no latch can have; remove what does not belong"
    )]
    LongList {
        /// Where the first one too many stands.
        spot: Spot,
        /// The list in words, such as `dials`.
        list: String,
    },
    /// Fields or list entries without end.
    #[error(
        "{spot}: more than {MOST_NODES} fields and entries stand before this, which no design has; is it a file of another kind?"
    )]
    TooMany {
        /// Where the first one too many stands.
        spot: Spot,
    },
    /// Comments without end.
    #[error(
        "{spot}: more than {MOST_COMMENTS} comments stand before this, which no design has; is it a file of another kind?"
    )]
    TooManyComments {
        /// Where the first one too many stands.
        spot: Spot,
    },
    /// More unknown fields than could be a mistake.
    #[error(
        "more than {most} fields are unknown here, the first at {spot}; is it a file of another kind?"
    )]
    NotADesign {
        /// How many were looked at.
        most: usize,
        /// Where the first stands.
        spot: Spot,
    },
    /// Something that does not belong where it stands.
    #[error("{spot}{}: {what}", .field.as_ref().map(|field| format!(", {field}")).unwrap_or_default())]
    Refused {
        /// Where.
        spot: Spot,
        /// The field in words, such as `dial 2, bore, diameter`.
        field: Option<String>,
        /// What was expected or what to do.
        what: String,
    },
}

impl std::fmt::Display for Spot {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "line {}, column {}", self.line, self.column)
    }
}

/// The sentence for a text whose outline could not be made to its end.
pub(super) fn stopped(why: Stop, spot: Spot, outline: &Outline<'_>) -> ReadError {
    match why {
        Stop::TooDeep => ReadError::TooDeep { spot },
        Stop::TooMany => ReadError::TooMany { spot },
        Stop::TooManyComments => ReadError::TooManyComments { spot },
        Stop::LongList => {
            let mut list = outline.path_at(outline.offset(spot));
            list.pop();
            ReadError::LongList {
                spot,
                list: words(&list),
            }
        }
    }
}

/// The sentence for what the RON reader found.
pub(super) fn refused(error: &SpannedError, outline: &Outline<'_>) -> ReadError {
    let end = error.span.end;
    let at = outline.offset(Spot {
        line: end.line,
        column: end.col,
    });
    let before = at.saturating_sub(1);
    let path = outline.path_at(before);
    let field = (!path.is_empty()).then(|| words(&path));
    let value = outline
        .value_spot_at(before)
        .filter(|_| is_about_a_value(&error.code));
    let spot = value.unwrap_or_else(|| outline.spot(at));
    ReadError::Refused {
        spot,
        field,
        what: sentence(&error.code),
    }
}

/// Whether the value as a whole is wrong, rather than the signs around it.
fn is_about_a_value(error: &Ron) -> bool {
    matches!(
        error,
        Ron::Message(_)
            | Ron::ExpectedFloat
            | Ron::ExpectedInteger
            | Ron::IntegerOutOfBounds
            | Ron::ExpectedString
            | Ron::ExpectedBoolean
            | Ron::ExpectedArray
            | Ron::ExpectedStructLike
            | Ron::ExpectedNamedStructLike(_)
            | Ron::NoSuchEnumVariant { .. }
            | Ron::ExpectedDifferentLength { .. }
    )
}

fn sentence(error: &Ron) -> String {
    match error {
        Ron::Message(text) => text.clone(),
        Ron::Eof => "the file ends too early; was it cut off?".to_owned(),
        Ron::ExpectedFloat => "a number is expected here, such as 12.5".to_owned(),
        Ron::ExpectedInteger | Ron::IntegerOutOfBounds => {
            "a whole number is expected here, not below nought and not beyond reason".to_owned()
        }
        Ron::ExpectedString => "words in double quotes are expected here".to_owned(),
        Ron::ExpectedStringEnd => "the closing quote is missing".to_owned(),
        Ron::ExpectedBoolean => "true or false is expected here".to_owned(),
        Ron::ExpectedArray => "a list in square brackets is expected here".to_owned(),
        Ron::ExpectedArrayEnd => "a closing ] or a comma is missing".to_owned(),
        Ron::ExpectedStructLike | Ron::ExpectedNamedStructLike(_) => {
            "fields in round brackets are expected here".to_owned()
        }
        Ron::ExpectedStructLikeEnd => "a closing ) is missing".to_owned(),
        Ron::ExpectedMapColon => "a colon is missing after the name of a field".to_owned(),
        Ron::ExpectedComma => "a comma is missing".to_owned(),
        Ron::ExpectedIdentifier => "the name of a field or kind is expected here".to_owned(),
        Ron::UnclosedBlockComment => "a comment is opened with /* and never closed".to_owned(),
        Ron::TrailingCharacters => "something follows after the end of the design".to_owned(),
        Ron::DuplicateStructField { field, .. } => {
            format!("`{field}` is given twice; keep one of them")
        }
        Ron::NoSuchEnumVariant {
            expected, found, ..
        } => {
            format!(
                "`{}` is not known here; write {}",
                shortened(found),
                one_of(expected)
            )
        }
        Ron::ExpectedDifferentLength { expected, found } => {
            format!("{expected} is expected here, and there are {found}")
        }
        Ron::ExceededRecursionLimit => "too many brackets stand inside each other".to_owned(),
        other => format!("this is not understood ({other})"),
    }
}

fn one_of(names: &[&str]) -> String {
    match names {
        [] => "nothing".to_owned(),
        [one] => (*one).to_owned(),
        [first @ .., last] => format!("{} or {last}", first.join(", ")),
    }
}

/// A name from a file, cut to what fits in a sentence.
pub(super) fn shortened(name: &str) -> String {
    const MOST: usize = 40;
    if name.chars().count() <= MOST {
        return name.to_owned();
    }
    let start: String = name.chars().take(MOST).collect();
    format!("{start}…")
}
