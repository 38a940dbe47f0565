//! Text to design: checks what it is, then reads it with every default and unknown field listed.

use latchwright_model::Design;
use ron::Options;
use ron::de::Deserializer;
use ron::extensions::Extensions;

use super::comments::Comments;
use super::error::{ReadError, refused, stopped};
use super::outline::{Outline, Spot};
use super::place::PathStep;
use super::stored::{Notes, ReadNotice};
use super::unknown::{UnknownField, name_all};
use super::v1::{DesignFile, restore};
use super::{FORMAT, LARGEST};

/// Unknown fields beyond this are no slips any more.
const MOST_UNKNOWN: usize = 100;

/// A design and what is to be said about its file.
#[derive(Debug, Clone, PartialEq)]
pub struct Loaded {
    /// The design, whole.
    pub design: Design,
    /// What the file left out, in order of the format.
    pub notices: Vec<ReadNotice>,
    /// What the file has that is not in the format, in order of the file.
    pub unknown: Vec<UnknownField>,
    /// What is written beside it for people.
    pub comments: Comments,
}

impl Loaded {
    /// Whether something in the file was not understood, so that nothing may be called proven.
    pub fn blocks_proof(&self) -> bool {
        !self.unknown.is_empty()
    }
}

/// Reads the bytes of a design file.
///
/// A design with faults reads well: what is wrong with a box is the solver's to say. This refuses
/// only what is no design file, or has something in it that cannot be a size.
pub fn read(bytes: &[u8]) -> Result<Loaded, ReadError> {
    let text = text_of(bytes)?;
    let outline = Outline::of(text);
    check_format(&outline)?;
    if let Some((why, spot)) = outline.stopped() {
        return Err(stopped(why, spot, &outline));
    }
    let mut unknown = Vec::new();
    let mut more = false;
    let file = parse(text, |path| {
        if unknown.len() < MOST_UNKNOWN {
            unknown.push(path);
        } else {
            more = true;
        }
    })
    .map_err(|error| refused(&error, &outline))?;
    if more {
        let first = unknown.first().and_then(|path| outline.find(path));
        let spot = first.unwrap_or(Spot { line: 1, column: 1 });
        return Err(ReadError::NotADesign {
            most: MOST_UNKNOWN,
            spot,
        });
    }
    let mut notes = Notes::default();
    let design = restore(file, &mut notes);
    let unknown = if unknown.is_empty() {
        Vec::new()
    } else {
        let every_field = super::write(&Design::default()).unwrap_or_default();
        name_all(&unknown, &outline, &Outline::of(&every_field))
    };
    Ok(Loaded {
        comments: Comments::of(&outline, &design),
        design,
        notices: notes.list,
        unknown,
    })
}

fn text_of(bytes: &[u8]) -> Result<&str, ReadError> {
    let size = bytes.len() as u64;
    if size > LARGEST {
        return Err(ReadError::TooLarge {
            bytes: size,
            limit: LARGEST,
        });
    }
    if bytes.iter().all(|byte| *byte == 0) && !bytes.is_empty() {
        return Err(ReadError::OnlyZeros { bytes: bytes.len() });
    }
    let text = std::str::from_utf8(bytes).map_err(|error| ReadError::NotUtf8 {
        at: error.valid_up_to() + 1,
    })?;
    let text = text.strip_prefix('\u{FEFF}').unwrap_or(text);
    if text.trim().is_empty() {
        Err(ReadError::Empty)
    } else {
        Ok(text)
    }
}

/// Before anything else, so that a newer file is called newer and not wrong.
fn check_format(outline: &Outline<'_>) -> Result<(), ReadError> {
    let path = [PathStep::field("format")];
    let (Some(spot), Some(found)) = (outline.find(&path), outline.value(&path)) else {
        return Err(ReadError::NoFormat);
    };
    match found.parse::<u64>() {
        Ok(format) if format == u64::from(FORMAT) => Ok(()),
        Ok(format) if format > u64::from(FORMAT) => Err(ReadError::NewerFormat { found: format }),
        _ => Err(ReadError::BadFormat {
            spot,
            found: super::error::shortened(found),
        }),
    }
}

fn parse(
    text: &str,
    mut unknown: impl FnMut(Vec<PathStep>),
) -> Result<DesignFile, ron::error::SpannedError> {
    let options = Options::default().with_default_extension(Extensions::IMPLICIT_SOME);
    let mut ron = Deserializer::from_str_with_options(text, &options)?;
    let file = serde_ignored::deserialize(&mut ron, |path| unknown(steps(&path)))
        .map_err(|error| ron.span_error(error))?;
    ron.end().map_err(|error| ron.span_error(error))?;
    Ok(file)
}

fn steps(path: &serde_ignored::Path<'_>) -> Vec<PathStep> {
    use serde_ignored::Path;
    match path {
        Path::Root => Vec::new(),
        Path::Seq { parent, index } => {
            let mut path = steps(parent);
            path.push(PathStep::Entry(*index));
            path
        }
        Path::Map { parent, key } => {
            let mut path = steps(parent);
            path.push(PathStep::field(key));
            path
        }
        Path::Some { parent }
        | Path::NewtypeStruct { parent }
        | Path::NewtypeVariant { parent } => steps(parent),
    }
}
