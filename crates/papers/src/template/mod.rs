//! The templates at true size as pages: to be glued on, pricked through and worked to.

mod clear;
mod corner;
mod data;
mod join;
mod layout;
mod notes;
mod pack;
mod words;

use latchwright_model::Design;
use latchwright_words::capital;
use latchwright_words::workshop::no_template;
use latchwright_workshop::inch::Rule;
use latchwright_workshop::ruler::Correction;
use latchwright_workshop::{Template, Templates, WoodPart, templates};

use crate::bench::too_many_dials;
use crate::error::PaperError;
use crate::fonts::Fonts;
use crate::letters::{refuse_missing, written};
use crate::sheets::{Date, Sheets};
use crate::world::PaperWorld;

const TEMPLATE: &str = include_str!("../../../../assets/template/template.typ");
const LOOK: &str = include_str!("../../../../assets/paper.typ");

/// What about the template pages is not the design's.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct TemplateOptions {
    /// The date in the file's metadata; none is written unless given.
    pub date: Option<Date>,
    /// What puts this printer right, from the measured lines of an earlier print
    /// ([`latchwright_workshop::ruler::Measured::correction`]); `None` prints as drawn.
    pub measured: Option<Correction>,
    /// The exact mirror image with readable words: to be glued on the other face, or ironed on.
    pub mirrored: bool,
}

/// The template pages as PDF.
///
/// # Errors
/// As [`template_sheets`].
pub fn template_pdf(
    design: &Design,
    fonts: &Fonts,
    options: &TemplateOptions,
) -> Result<Vec<u8>, PaperError> {
    template_sheets(design, fonts, options)?.pdf()
}

/// The template pages laid out: every part of wood at 1:1 on the paper of the design's bench.
///
/// Parts that are larger than a sheet are cut into tiles, the others share sheets. Every sheet has
/// a line along x and one along y with 100 mm and 4 in marked, and corner marks 100 mm apart.
///
/// # Errors
/// A sentence where a part has no size, takes more than twenty sheets, has letters that no font can
/// draw, or where the correction is none that a printer can need.
pub fn template_sheets(
    design: &Design,
    fonts: &Fonts,
    options: &TemplateOptions,
) -> Result<Sheets, PaperError> {
    let correction = options.measured.unwrap_or(Correction::NONE);
    sound(design, correction)?;
    let Templates {
        all,
        notes,
        missing,
    } = templates(design);
    refuse_sizeless(design, &missing)?;
    let all: Vec<Template> = if options.mirrored {
        all.iter().map(Template::mirrored).collect()
    } else {
        all
    };
    let sheet = layout::sheet(design.bench.paper, correction);
    let pages = layout::pages(&all, &sheet, design.units)?;
    let data = data::Data {
        design,
        pages: &pages,
        correction: options.measured,
        head: sheet.head,
        notes: &notes,
    };
    let (json, letters) = data.json()?;
    let pieces = || pages.iter().flat_map(|page| &page.pieces);
    let letters = letters + &written(pieces().flat_map(|piece| &piece.drawing.items));
    refuse_missing(&fonts.missing(&letters))?;
    let mut world = PaperWorld::new(TEMPLATE, fonts.for_text(&letters))?
        .with_source("paper.typ", LOOK)?
        .with_file("data.json", json);
    for piece in pieces() {
        world = world.with_file(&piece.file, piece.svg());
    }
    let sheets = Sheets::lay_out(&world, options.date)?;
    refuse_missing(&sheets.boxes())?;
    Ok(sheets)
}

/// What a printer that needs `correction` does to each part of `design` whose places are pricked: the
/// factors first, then a sentence a part with the place that would come out furthest off.
pub fn correction_in_words(design: &Design, correction: Correction) -> Vec<String> {
    let mut lines = vec![words::factors(correction)];
    for template in templates(design).all {
        if let Some((hole, off)) = words::furthest(&template, correction) {
            let name = capital(&template.kind.name());
            let (hole, off) = (hole.name(), words::how_far(off, Rule::of(design)));
            lines.push(format!("{name}: uncorrected, {hole} would be {off} off."));
        }
    }
    lines
}

/// Refuses what no sheet can show.
fn sound(design: &Design, correction: Correction) -> Result<(), PaperError> {
    if let Some(reason) = too_many_dials(design) {
        return refuse(reason);
    }
    let Correction { x, y, skew_deg } = correction;
    let likely = [x, y].iter().all(|factor| (0.8..=1.25).contains(factor));
    if !likely || !(-5.0..=5.0).contains(&skew_deg) {
        return refuse(format!(
            "a correction of {x} along x, {y} along y and {skew_deg}° is more than any printer needs; \
             measure both lines again, 0.8 to 1.25 and 5° are believed"
        ));
    }
    Ok(())
}

/// Refuses a design of which a whole part is missing.
fn refuse_sizeless(design: &Design, missing: &[WoodPart]) -> Result<(), PaperError> {
    missing.first().map_or(Ok(()), |part| {
        let reason = no_template(*part, design.units);
        refuse(format!("{reason}; mend its sizes first"))
    })
}

fn refuse<T>(reason: String) -> Result<T, PaperError> {
    Err(PaperError::Template { reason })
}
