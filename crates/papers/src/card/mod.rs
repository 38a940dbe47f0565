//! The recipient's card: one page that says whose the box is and how to open and close it.

mod data;
mod fit;
mod lid;
mod round_arrow;
mod sound;
mod steps;
mod text;
mod turn_mark;
mod words;

use latchwright_drawing::{Palette, pictogram, svg};
use latchwright_model::{CardPaper, CardStyle, Design};

use lid::Lid;
pub use text::{Action, CardStep, CardText, DialTurn, TurnWords};

use crate::bench::PaperOptions;
use crate::error::PaperError;
use crate::fonts::Fonts;
use crate::letters::refuse_missing;
use crate::preview::Picture;
use crate::sheets::Sheets;
use crate::world::PaperWorld;

const IN_WORDS: &str = include_str!("../../../../assets/card/card.typ");
const IN_PICTURES: &str = include_str!("../../../../assets/card/pictures.typ");
const SHARED: &str = include_str!("../../../../assets/card/shared.typ");
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
    let world = match design.card.style {
        CardStyle::Words => in_words(design, fonts, &text)?,
        CardStyle::Pictures => in_pictures(design, fonts, &text)?,
    };
    let sheets = Sheets::lay_out(&world, options.date)?;
    fit::check(&sheets, sheet_in_words(design.card.paper), design.units)?;
    refuse_missing(&sheets.boxes())?;
    Ok(sheets)
}

fn in_words(design: &Design, fonts: &Fonts, text: &CardText) -> Result<PaperWorld, PaperError> {
    let lid = Lid::of(design);
    let mut world = world(IN_WORDS, design, fonts, text, [&lid, &lid])?;
    for (turn, name) in text.turns().zip(data::mark_files()) {
        world = world.with_file(&name, turn_mark::svg(turn).into_bytes());
    }
    Ok(world)
}

fn in_pictures(design: &Design, fonts: &Fonts, text: &CardText) -> Result<PaperWorld, PaperError> {
    let lid = Lid::portrait(design);
    let set = Lid::to_set(design, text.turns());
    let world = world(IN_PICTURES, design, fonts, text, [&lid, &set])?;
    Ok(world.with_file(data::SET_LID, set.svg.into_bytes()))
}

/// What both kinds of card have: the lid, and the lid with its dials set.
fn world(
    template: &str,
    design: &Design,
    fonts: &Fonts,
    text: &CardText,
    [lid, set]: [&Lid; 2],
) -> Result<PaperWorld, PaperError> {
    let letters = text.letters() + &lid.words + &set.words;
    refuse_missing(&fonts.missing(&letters))?;
    let mut world = PaperWorld::new(template, fonts.for_text(&letters))?
        .with_source("paper.typ", LOOK)?
        .with_source("shared.typ", SHARED)?
        .with_file(
            "data.json",
            data::json(design.card.paper, text, [lid.aspect, set.aspect])?,
        )
        .with_file("lid.svg", lid.svg.clone().into_bytes());
    let actions = text.steps().flat_map(|step| &step.actions);
    for (name, picture) in actions.filter_map(data::action_picture) {
        world = world.with_file(name, svg(&pictogram(picture), &Palette::LIGHT).into_bytes());
    }
    Ok(world)
}

fn sheet_in_words(paper: CardPaper) -> &'static str {
    match paper {
        CardPaper::A6 => "an A6 card",
        CardPaper::A5 => "an A5 card",
        CardPaper::FoldedA4 => "a folded A4 card",
    }
}
