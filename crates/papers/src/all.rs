//! Every paper of a design and its parts for machines, as files of one folder.

use latchwright_model::Design;
use latchwright_workshop::templates;

use crate::bench::PaperOptions;
use crate::card::card;
use crate::cut_list::cut_list_pdf;
use crate::error::PaperError;
use crate::fonts::Fonts;
use crate::setting::setting_pdf;
use crate::template::{TemplateOptions, template_pdf};
use crate::work::work_pdf;

/// What the folder gets.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct AllPapers {
    /// Name and bytes of every file; `/` stands between a folder and a name in it.
    pub files: Vec<(String, Vec<u8>)>,
    /// What is not there and why, one sentence each without a trailing stop.
    pub left_out: Vec<String>,
}

/// Every paper of `design`: templates, cut list, order of work and setting as PDF, the card in a
/// folder of its own because the others tell what its reader must not see, and each part of wood as
/// SVG and DXF.
///
/// With [`TemplateOptions::mirrored`] there are mirrored templates and drawings besides. Drawings are
/// for machines and are never corrected for a printer.
///
/// # Errors
/// The first of [`template_pdf`], [`cut_list_pdf`], [`work_pdf`], [`setting_pdf`]. A card that cannot
/// be made is left out and named instead, since the bench can do without it.
pub fn all_papers(
    design: &Design,
    fonts: &Fonts,
    options: &TemplateOptions,
) -> Result<AllPapers, PaperError> {
    let date = options.date;
    let (plain, bench) = (
        TemplateOptions {
            mirrored: false,
            ..*options
        },
        PaperOptions { date },
    );
    let mut all = AllPapers::default();
    all.take("templates.pdf", template_pdf(design, fonts, &plain)?);
    if options.mirrored {
        let pdf = template_pdf(design, fonts, options)?;
        all.take("templates-mirrored.pdf", pdf);
    }
    all.take("cut-list.pdf", cut_list_pdf(design, fonts, &bench)?);
    all.take("order-of-work.pdf", work_pdf(design, fonts, &bench)?);
    all.take("setting.pdf", setting_pdf(design, fonts, &bench)?);
    match card(design, fonts, &bench) {
        Ok(pdf) => all.take("for-the-recipient/card.pdf", pdf),
        Err(reason) => all.left_out.push(format!("there is no card: {reason}")),
    }
    for template in templates(design).all {
        let name = template.kind.name();
        all.part("drawings", &name, &template.flat);
        if options.mirrored {
            all.part("drawings/mirrored", &name, &template.mirrored().flat);
        }
    }
    Ok(all)
}

impl AllPapers {
    fn take(&mut self, name: impl Into<String>, bytes: Vec<u8>) {
        self.files.push((name.into(), bytes));
    }

    fn part(&mut self, folder: &str, name: &str, flat: &latchwright_drawing::FlatPart) {
        let name: String = name
            .chars()
            .map(|letter| if letter == ' ' { '-' } else { letter })
            .collect();
        self.take(format!("{folder}/{name}.svg"), flat.svg().into_bytes());
        self.take(format!("{folder}/{name}.dxf"), flat.dxf().into_bytes());
    }
}
