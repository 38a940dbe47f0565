//! `latchwright parts`: everything that is printed, in one folder.

use std::path::PathBuf;

use anyhow::{Result, anyhow};
use clap::{Args, ValueEnum};
use latchwright_session::Session;
use latchwright_session::together::{Replace, write_together};
use latchwright_solids::{Grip, Options, Relief};
use latchwright_solver::prove;

use super::output;
use crate::job;

/// What `latchwright parts` is asked for.
#[derive(Debug, Args)]
pub struct Asked {
    /// The design.
    pub file: PathBuf,
    /// The folder that gets the parts; it is made where it is lacking.
    #[arg(long, value_name = "DIR")]
    pub out: PathBuf,
    /// What the fingers hold.
    #[arg(long, value_enum, default_value_t = Hold::Fluted)]
    pub knobs: Hold,
    /// Sink pointers and labels, to be filled with paint, instead of raising them.
    #[arg(long)]
    pub sunk: bool,
    /// Standing pins for a wooden slider as one strip.
    #[arg(long)]
    pub pin_strip: bool,
    /// Replace files that are there.
    #[arg(long)]
    pub replace: bool,
}

/// The shape of the knobs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Hold {
    /// Round flutes all round.
    Fluted,
    /// A few large lobes.
    Lobed,
    /// Flat facets.
    Faceted,
    /// Smooth, with a nose that points.
    Plain,
}

impl Hold {
    fn grip(self) -> Grip {
        match self {
            Self::Fluted => Grip::Fluted,
            Self::Lobed => Grip::Lobed,
            Self::Faceted => Grip::Faceted,
            Self::Plain => Grip::Plain,
        }
    }
}

/// Makes the parts; 0 done.
pub fn run(asked: &Asked) -> Result<u8> {
    let session = Session::open(&asked.file)?;
    let design = session.design();
    let options = Options {
        grip: asked.knobs.grip(),
        relief: if asked.sunk {
            Relief::Sunk
        } else {
            Relief::Raised
        },
        pin_strip: asked.pin_strip,
        ..Options::default()
    };
    let made = job::parts(design, &options)
        .and_then(|parts| job::files_of(design, &parts))
        .map_err(|why| anyhow!(why))?;
    let replace = if asked.replace {
        Replace::Allowed
    } else {
        Replace::Never
    };
    write_together(&asked.out, &made.files, replace)?;
    for warning in &made.warnings {
        output::complain(&anyhow!("{warning}"));
    }
    if !prove(design).proven || session.blocks_proof() {
        output::complain(&anyhow!(
            "this latch is not proven: see latchwright prove before you print"
        ));
    }
    let names = made.files.iter().map(|file| asked.out.join(&file.name));
    let mut lines: Vec<String> = names.map(|path| path.display().to_string()).collect();
    lines.push(
        "Print the gauge first and set the printer by it. parts.txt tells sizes, mass and filament. \
         Small parts: keep them from small children."
            .to_owned(),
    );
    output::say(&(lines.join("\n") + "\n"))?;
    Ok(0)
}
