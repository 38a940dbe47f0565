//! What a run makes of a design: its papers, its printed parts and the card, as bytes with their names.
//!
//! The command line and the window both ask here, so that the same design gives the same files from either.
//! Nothing is written: [`crate::file_set`] and [`crate::files`] do that.

mod papers;
mod parts;

use std::panic::{AssertUnwindSafe, catch_unwind};

use latchwright_model::Fault;
use latchwright_papers::PaperError;
use latchwright_solids::PartFault;

use crate::file_set::NewFile;

pub use papers::{Paper, Wanted, all_papers, card_pdf, sheets};
pub use parts::{files_of, parts, parts_with_tick};

/// Why something could not be made of a design.
#[derive(Debug, Clone, PartialEq)]
pub enum ProductError {
    /// A panic in the typesetter or the mesher: a fault of this program, and the design is safe.
    BrokeOff,
    /// The design has this error, which would be cut in wood.
    Wrong(Fault),
    /// The box has no name, which stands on every sheet.
    Nameless,
    /// A paper cannot be laid out.
    Paper(PaperError),
    /// Parts cannot be printed; all that stands in the way.
    Parts(Vec<PartFault>),
}

/// A panic in the typesetter or the mesher becomes an error; the design is safe.
pub fn guarded<T>(make: impl FnOnce() -> Result<T, ProductError>) -> Result<T, ProductError> {
    catch_unwind(AssertUnwindSafe(make)).unwrap_or(Err(ProductError::BrokeOff))
}

/// What goes into a folder.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ForFolder {
    /// Every file with its name.
    pub files: Vec<NewFile>,
    /// What is to be said of them, a sentence each.
    pub remarks: Vec<String>,
}

impl ForFolder {
    fn of(files: Vec<(String, Vec<u8>)>, remarks: Vec<String>) -> Self {
        let named = files.into_iter();
        Self {
            files: named.map(|(name, bytes)| NewFile { name, bytes }).collect(),
            remarks,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use latchwright_model::Design;
    use latchwright_papers::TemplateOptions;

    use crate::words::products::product_error;

    #[test]
    fn what_falls_over_while_it_is_made_is_an_error() {
        let made = guarded::<()>(|| panic!("planted"));
        assert_eq!(made, Err(ProductError::BrokeOff));
    }

    #[test]
    fn no_papers_are_made_of_a_box_without_a_name_or_with_an_error() {
        let refused = |design: &Design| {
            let made = all_papers(design, &TemplateOptions::default());
            made.expect_err("no papers")
        };
        let nameless = Design {
            title: "  ".to_owned(),
            ..Design::default()
        };
        assert_eq!(refused(&nameless), ProductError::Nameless);
        let mut wrong = Design::default();
        wrong.plate.thickness = -1.0;
        let why = refused(&wrong);
        assert!(matches!(why, ProductError::Wrong(_)), "{why:?}");
        let why = product_error(&why, wrong.units);
        assert!(
            why.starts_with("no papers are made of a design with an error: "),
            "{why}"
        );
    }
}
