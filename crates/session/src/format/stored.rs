//! How a value of the model stands in a file, and what is taken where a file leaves it out.

use std::fmt;

use latchwright_model::Severity;
use serde::de::{self, Deserialize, DeserializeOwned, Deserializer};

use super::place::{PathStep, dotted, quoted};
use super::write::{Tree, flat};

/// What is taken for a missing field stands in its notice up to this many letters.
const LONGEST_TAKEN: usize = 300;

/// Something a file left out, and what was taken instead.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ReadNotice {
    /// Always [`Severity::Notice`]: the proof stands without it.
    pub severity: Severity,
    /// Path of the field, counting from 0, such as `dials[1].bore`.
    pub field: String,
    /// One sentence, without a trailing stop.
    pub message: String,
}

impl fmt::Display for ReadNotice {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.message)
    }
}

/// A value that is kept in a file.
pub(super) trait Stored: Sized + Clone {
    /// Its form while it is read.
    type File: DeserializeOwned;

    /// Its form while it is written.
    fn tree(&self) -> Tree;

    /// The value of `file`, with what that leaves out from `default`.
    fn restore(file: Self::File, default: &Self, notes: &mut Notes) -> Self;
}

/// What was left out so far, and where the reading is.
#[derive(Debug, Default)]
pub(super) struct Notes {
    path: Vec<PathStep>,
    pub(super) list: Vec<ReadNotice>,
}

impl Notes {
    /// The field `name` of the part being read.
    pub(super) fn field<T: Stored>(
        &mut self,
        name: &'static str,
        given: Option<T::File>,
        default: &T,
    ) -> T {
        let Some(file) = given else {
            self.left_out(name, default);
            return default.clone();
        };
        self.inside(PathStep::field(name), |notes| {
            T::restore(file, default, notes)
        })
    }

    fn inside<T>(&mut self, step: PathStep, read: impl FnOnce(&mut Self) -> T) -> T {
        self.path.push(step);
        let value = read(self);
        self.path.pop();
        value
    }

    fn left_out<T: Stored>(&mut self, name: &str, default: &T) {
        self.path.push(PathStep::field(name));
        let taken = match flat(&default.tree()) {
            taken if taken.chars().count() <= LONGEST_TAKEN => format!("taken as {taken}"),
            _ => "the usual one is taken".to_owned(),
        };
        self.list.push(ReadNotice {
            severity: Severity::Notice,
            field: dotted(&self.path),
            message: format!("{} is not given: {taken}", quoted(&self.path)),
        });
        self.path.pop();
    }
}

/// A number that is neither infinite nor undefined.
#[derive(Debug, Clone, Copy)]
pub(super) struct Finite(f64);

impl<'de> Deserialize<'de> for Finite {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let value = f64::deserialize(deserializer)?;
        if value.is_finite() {
            return Ok(Self(value));
        }
        Err(de::Error::custom(format!(
            "this reads as {value}, which is no size; write a plain number"
        )))
    }
}

impl Stored for f64 {
    type File = Finite;

    fn tree(&self) -> Tree {
        Tree::Number(*self)
    }

    fn restore(file: Finite, _: &Self, _: &mut Notes) -> Self {
        // −0 and 0 are one size, and a file knows only the latter
        if file.0 == 0.0 { 0.0 } else { file.0 }
    }
}

impl Stored for (f64, f64) {
    type File = (Finite, Finite);

    fn tree(&self) -> Tree {
        Tree::Tuple(vec![self.0.tree(), self.1.tree()])
    }

    fn restore(file: Self::File, default: &Self, notes: &mut Notes) -> Self {
        (
            f64::restore(file.0, &default.0, notes),
            f64::restore(file.1, &default.1, notes),
        )
    }
}

impl Stored for String {
    type File = Self;

    fn tree(&self) -> Tree {
        Tree::Text(self.clone())
    }

    fn restore(file: Self, _: &Self, _: &mut Notes) -> Self {
        file
    }
}

/// Whole numbers and yes or no: a word in the file, itself in the model.
macro_rules! stored_as_word {
    ($($plain:ty),*) => {$(
        impl Stored for $plain {
            type File = Self;

            fn tree(&self) -> Tree {
                Tree::Word(self.to_string())
            }

            fn restore(file: Self, _: &Self, _: &mut Notes) -> Self {
                file
            }
        }
    )*};
}

stored_as_word!(u32, i64, bool);

impl<T: Stored + Default> Stored for Vec<T> {
    type File = Vec<T::File>;

    fn tree(&self) -> Tree {
        Tree::List(self.iter().map(Stored::tree).collect())
    }

    fn restore(file: Self::File, _: &Self, notes: &mut Notes) -> Self {
        let default = T::default();
        let entry = |(index, entry)| {
            notes.inside(PathStep::Entry(index), |notes| {
                T::restore(entry, &default, notes)
            })
        };
        file.into_iter().enumerate().map(entry).collect()
    }
}
