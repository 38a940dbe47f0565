//! The recipient's card: one page that says whose the box is and how to open and close it.

mod data;
mod english;
mod fit;
mod lid;
mod sound;
mod text;
mod turn_mark;

use latchwright_drawing::{Palette, pictogram, svg};
use latchwright_solver::model::{CardPaper, Design};

use lid::Lid;
pub use text::{Action, CardText, DialTurn, Step};

use crate::bench::PaperOptions;
use crate::error::PaperError;
use crate::fonts::Fonts;
use crate::letters::refuse_missing;
use crate::preview::Picture;
use crate::sheets::Sheets;
use crate::world::PaperWorld;

const TEMPLATE: &str = include_str!("../../../../assets/card/card.typ");
const LOOK: &str = include_str!("../../../../assets/paper.typ");

/// The card as PDF.
pub fn card(design: &Design, fonts: &Fonts, options: &PaperOptions) -> Result<Vec<u8>, PaperError> {
    card_sheets(design, fonts, options)?.pdf()
}

/// The card as a picture, with so many pixels to the millimetre.
pub fn card_pages(
    design: &Design,
    fonts: &Fonts,
    options: &PaperOptions,
    pixels_per_mm: f64,
) -> Result<Vec<Picture>, PaperError> {
    Ok(card_sheets(design, fonts, options)?.pictures(pixels_per_mm))
}

/// The card laid out: one page, to be saved, looked at, or both.
pub fn card_sheets(
    design: &Design,
    fonts: &Fonts,
    options: &PaperOptions,
) -> Result<Sheets, PaperError> {
    sound::check(design)?;
    let text = CardText::of(design);
    let lid = Lid::of(design);
    let letters = text.letters() + &lid.words;
    refuse_missing(&fonts.missing(&letters))?;
    let mut world = PaperWorld::new(TEMPLATE, fonts.for_text(&letters))?
        .with_source("paper.typ", LOOK)?
        .with_file(
            "data.json",
            data::json(design.card.paper, &text, lid.aspect)?,
        )
        .with_file("lid.svg", lid.svg.into_bytes());
    for (turn, name) in text.turns().zip(data::mark_files()) {
        world = world.with_file(&name, turn_mark::svg(turn).into_bytes());
    }
    for (name, picture) in text
        .open
        .iter()
        .chain(&text.close)
        .filter_map(data::step_picture)
    {
        world = world.with_file(name, svg(&pictogram(picture), &Palette::LIGHT).into_bytes());
    }
    let sheets = Sheets::lay_out(&world, options.date)?;
    fit::check(&sheets, sheet_in_words(design.card.paper))?;
    refuse_missing(&sheets.boxes())?;
    Ok(sheets)
}

fn sheet_in_words(paper: CardPaper) -> &'static str {
    match paper {
        CardPaper::A6 => "an A6 card",
        CardPaper::A5 => "an A5 card",
        CardPaper::FoldedA4 => "a folded A4 card",
    }
}
