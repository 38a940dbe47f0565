//! `latchwright mend`: the smallest change that makes a design proven.

use std::path::PathBuf;

use anyhow::{Result, bail};
use clap::{Args, ValueEnum};
use latchwright_proof::prove;
use latchwright_search::remedy::{Part, mend};
use latchwright_session::cut_already::CutAlready;
use latchwright_session::{Session, files, report};

use super::output;

/// What `latchwright mend` is asked for.
#[derive(Debug, Args)]
pub struct Asked {
    /// The design.
    pub file: PathBuf,
    /// What is cut, bored or printed already and stays as it is.
    #[arg(long, value_enum, value_delimiter = ',')]
    pub cut: Vec<Cut>,
    /// Where the mended design goes; it is only told where this is left out.
    #[arg(long, value_name = "NEW")]
    pub out: Option<PathBuf>,
}

/// What is cut, as it is named in the arguments.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Cut {
    /// The plate with its bores.
    Plate,
    /// The slider with tab and pins.
    Slider,
    /// The keeper.
    Keeper,
    /// All discs.
    Discs,
    /// All knobs.
    Knobs,
}

impl Cut {
    fn already(self) -> CutAlready {
        match self {
            Self::Plate => CutAlready::Plate,
            Self::Slider => CutAlready::Slider,
            Self::Keeper => CutAlready::Keeper,
            Self::Discs => CutAlready::Discs,
            Self::Knobs => CutAlready::Knobs,
        }
    }
}

/// Mends; 0 found, 1 nothing found or nothing to mend.
pub fn run(asked: &Asked) -> Result<u8> {
    let session = Session::open(&asked.file)?;
    let design = session.design();
    let proof = prove(design);
    if session.proven_by(&proof) {
        output::say("Proven as it is: there is nothing to mend.\n")?;
        return Ok(1);
    }
    let dials = design.dials.len();
    let cut: Vec<Part> = asked
        .cut
        .iter()
        .flat_map(|cut| cut.already().parts(dials))
        .collect();
    let found =
        output::with_progress(|tell| mend(design, &cut, &mut |progress| tell(progress.done)));
    let Some(found) = found else {
        let said = report::not_mended_sentences(design, &proof, !cut.is_empty());
        output::say(&format!("{said}\n"))?;
        return Ok(1);
    };
    output::say(&format!("{}\n", report::mend_sentence(design, &found)))?;
    if let Some(out) = &asked.out {
        let out = files::with_ending(out);
        if files::exists(&out) {
            bail!("{} exists already; choose another name", out.display());
        }
        files::save_with(&out, &found.change.apply(design), session.comments())?;
    }
    Ok(0)
}
