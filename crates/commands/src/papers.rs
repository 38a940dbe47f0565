//! `latchwright papers`: everything the bench needs, in one folder.

use std::path::PathBuf;

use anyhow::{Result, anyhow, bail};
use clap::Args;
use latchwright_model::Design;
use latchwright_papers::{Date, TemplateOptions, correction_in_words};
use latchwright_session::file_set::Replace;
use latchwright_session::ruler::{self, DiagonalsTyped, LinesTyped};
use latchwright_session::words::products::product_error;
use latchwright_session::words::typed::reading_error;
use latchwright_session::{Session, products};
use latchwright_workshop::ruler::Correction;

use super::folder::{self, Destination};
use super::output;

/// What `latchwright papers` is asked for.
#[derive(Debug, Args)]
pub struct Asked {
    /// The design.
    pub file: PathBuf,
    /// The folder that gets the papers; it is made where it is lacking.
    #[arg(long, value_name = "DIR")]
    pub out: PathBuf,
    /// Make mirrored templates too: to be glued on the other face, or ironed on.
    #[arg(long)]
    pub mirrored: bool,
    /// What your ruler says of the line along x of an earlier print: 97.98, or 3 15/16 in for the line
    /// of 4 in.
    #[arg(long, value_name = "LENGTH", requires = "line_y")]
    pub line_x: Option<String>,
    /// What your ruler says of the line along y.
    #[arg(long, value_name = "LENGTH", requires = "line_x")]
    pub line_y: Option<String>,
    /// Both diagonals between the corner marks: the one that rises to the right first.
    #[arg(long, value_names = ["RISING", "FALLING"], num_args = 2, requires = "line_x")]
    pub diagonals: Option<Vec<String>>,
    /// The date in the files; none unless given, so that the same design makes the same bytes.
    #[arg(long, value_name = "YYYY-MM-DD")]
    pub date: Option<String>,
    /// Replace files that are there.
    #[arg(long)]
    pub replace: bool,
}

/// Makes the papers; 0 done.
pub fn run(asked: &Asked) -> Result<u8> {
    let session = Session::open(&asked.file)?;
    let design = session.design();
    let measured = correction(asked, design)?;
    let options = TemplateOptions {
        date: asked.date.as_deref().map(date).transpose()?,
        measured,
        mirrored: asked.mirrored,
    };
    let papers = products::all_papers(design, &options)
        .map_err(|err| anyhow!(product_error(&err, design.units)))?;
    let to = Destination {
        folder: &asked.out,
        replace: Replace::if_asked(asked.replace),
    };
    let paths = folder::save(&session, &papers, &to, "cut")?;
    let mut lines = measured.map_or_else(Vec::new, |correction| {
        correction_in_words(design, correction)
    });
    lines.extend(paths);
    lines.push(
        "Print at 100 %; measure both lines on a sheet before you cut. setting.pdf tells the \
         combination: only the card is for the recipient."
            .to_owned(),
    );
    output::say(&(lines.join("\n") + "\n"))?;
    Ok(0)
}

/// What the ruler's readings ask for.
fn correction(asked: &Asked, design: &Design) -> Result<Option<Correction>> {
    let (Some(x), Some(y)) = (&asked.line_x, &asked.line_y) else {
        return Ok(None);
    };
    let diagonals = match asked.diagonals.as_deref() {
        Some([rising, falling]) => Some(DiagonalsTyped { rising, falling }),
        _ => None,
    };
    let lines = LinesTyped { x, y, diagonals };
    ruler::correction(lines, design.units)
        .map(Some)
        .map_err(|err| anyhow!(reading_error(&err, design.units)))
}

/// A day written as ISO 8601 does.
fn date(text: &str) -> Result<Date> {
    let mut parts = text.splitn(3, '-');
    let mut next = || parts.next().unwrap_or_default();
    let (year, month, day) = (next().parse(), next().parse(), next().parse());
    match (year, month, day) {
        (Ok(year), Ok(month), Ok(day)) => Ok(Date { year, month, day }),
        _ => bail!("{text} is no date; write it as 2031-05-04: year, month, day"),
    }
}
