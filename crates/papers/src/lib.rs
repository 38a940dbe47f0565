//! Design to pages: typeset papers as PDF bytes and as pictures for the screen.
//!
//! Values in, values out: no file, no clock, no environment. What is shown is what is printed,
//! because both come from the same laid out pages. The same input gives the same bytes.
//!
//! A paper is a folder of this crate (`card`, `template`) that turns a design into plain words and
//! figures, hands them to a typst template as data, and gets [`Sheets`] back. Whatever the maker
//! types reaches the template as data and can't be read as markup.

mod card;
mod error;
mod finish;
mod fonts;
mod letters;
mod preview;
mod sheets;
mod template;
mod world;

pub use card::{Action, CardOptions, CardText, DialTurn, Step, card, card_pages, card_sheets};
pub use error::PaperError;
pub use fonts::Fonts;
pub use preview::Picture;
pub use sheets::{Date, Sheets};
pub use template::{TemplateOptions, template_pdf, template_sheets};
