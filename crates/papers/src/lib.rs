//! Design to pages: typeset papers as PDF bytes and as pictures for the screen.
//!
//! Values in, values out: no file, no clock, no environment. What is shown is what is printed,
//! because both come from the same laid out pages. The same input gives the same bytes.
//!
//! A paper is a folder of this crate (`card`, `template`, `cut_list`, `work`, `setting`) that turns a design into plain words and
//! figures, hands them to a typst template as data, and gets [`Sheets`] back. Whatever the maker
//! types reaches the template as data and can't be read as markup.

// values in, values out, the same bits everywhere: `clippy.toml` has the list; tests may do as they like
#![cfg_attr(
    not(test),
    warn(
        clippy::disallowed_macros,
        clippy::disallowed_methods,
        clippy::disallowed_types
    )
)]

mod all;
mod bench;
mod card;
mod cut_list;
mod error;
mod finish;
mod fonts;
mod letters;
mod preview;
mod setting;
mod sheets;
mod template;
mod work;
mod world;

pub use all::{AllPapers, all_papers};
pub use bench::PaperOptions;
pub use card::{Action, CardStep, CardText, DialTurn, TurnWords, card, card_pages, card_sheets};
pub use cut_list::{cut_list_pdf, cut_list_sheets};
pub use error::PaperError;
pub use fonts::Fonts;
pub use preview::Picture;
pub use setting::{DiscSeat, SettingText, setting_pdf, setting_sheets};
pub use sheets::{Date, Sheets};
pub use template::{TemplateOptions, correction_in_words, template_pdf, template_sheets};
pub use work::{work_pdf, work_sheets};
