//! Papers of a design with the fonts that its words need.

use std::ops::ControlFlow;

use latchwright_model::{Design, Fault, validate};
use latchwright_papers::{
    Fonts, PaperOptions, Sheets, TemplateOptions, card, card_sheets, cut_list_sheets,
    setting_sheets, template_sheets, work_sheets,
};
use latchwright_proof::Tick;
use latchwright_workshop::ruler::Correction;

use super::{ForFolder, ProductError, guarded};
use crate::system_fonts;

/// Which paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Paper {
    /// Templates at true size.
    #[default]
    Templates,
    /// Cut list and boards.
    CutList,
    /// Order of work.
    Work,
    /// Setting the combination.
    Setting,
    /// The recipient's card.
    Card,
}

/// A paper and how it is asked for.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Wanted {
    /// Which.
    pub paper: Paper,
    /// Templates only: mirrored.
    pub mirrored: bool,
    /// Templates only: put right for this printer.
    pub correction: Option<Correction>,
}

/// A paper laid out, or why there is none; `tick` is told how far that is once its fonts
/// are found. The typesetter itself, once at work on a paper, hears nothing.
pub fn sheets<Stop>(
    design: &Design,
    wanted: Wanted,
    tick: &mut Tick<'_, Stop>,
) -> ControlFlow<Stop, Result<Sheets, ProductError>> {
    let fonts = match guarded(|| Ok(fonts_for(design))) {
        Ok(fonts) => fonts,
        Err(why) => return ControlFlow::Continue(Err(why)),
    };
    tick(FONTS_FOUND)?;
    ControlFlow::Continue(lay_out(design, wanted, &fonts))
}

/// Share of the work after which the fonts of a paper are found.
const FONTS_FOUND: f64 = 0.2;

fn lay_out(design: &Design, wanted: Wanted, fonts: &Fonts) -> Result<Sheets, ProductError> {
    let plain = PaperOptions::default();
    guarded(|| {
        let made = match wanted.paper {
            Paper::Templates => {
                let options = TemplateOptions {
                    date: None,
                    measured: wanted.correction,
                    mirrored: wanted.mirrored,
                };
                template_sheets(design, fonts, &options)
            }
            Paper::CutList => cut_list_sheets(design, fonts, &plain),
            Paper::Work => work_sheets(design, fonts, &plain),
            Paper::Setting => setting_sheets(design, fonts, &plain),
            Paper::Card => card_sheets(design, fonts, &plain),
        };
        made.map_err(ProductError::Paper)
    })
}

/// The card as PDF, or why there is none.
pub fn card_pdf(design: &Design) -> Result<Vec<u8>, ProductError> {
    guarded(|| {
        card(design, &fonts_for(design), &PaperOptions::default()).map_err(ProductError::Paper)
    })
}

/// Every paper as files, with what was left out; or why there are none.
///
/// A design with an error is refused: what is wrong with it would be cut in wood. So is one without a
/// name, which stands on every sheet.
pub fn all_papers(design: &Design, options: &TemplateOptions) -> Result<ForFolder, ProductError> {
    if let Some(fault) = first_error(design) {
        return Err(ProductError::Wrong(fault));
    }
    if design.title.trim().is_empty() {
        return Err(ProductError::Nameless);
    }
    guarded(|| {
        latchwright_papers::all_papers(design, &fonts_for(design), options)
            .map(|papers| ForFolder::of(papers.files, papers.left_out))
            .map_err(ProductError::Paper)
    })
}

/// The first thing that is wrong with the numbers of a design.
fn first_error(design: &Design) -> Option<Fault> {
    validate::faults(design).into_iter().find(Fault::is_error)
}

/// The bundled fonts, and what the system has for letters they lack.
fn fonts_for(design: &Design) -> Fonts {
    let fonts = Fonts::bundled();
    let card = &design.card;
    let words = [&card.recipient, &card.greeting, &card.from, &design.title].map(String::as_str);
    let mut missing = fonts.missing(&words.concat());
    for dial in design.dials.iter().take(12) {
        let labels: String = (0..dial.positions.min(360))
            .map(|mark| dial.label(mark))
            .collect();
        missing.extend(fonts.missing(&labels));
    }
    if missing.is_empty() {
        fonts
    } else {
        Fonts::with_extra(system_fonts::covering(&missing))
    }
}
