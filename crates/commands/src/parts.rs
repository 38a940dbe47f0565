//! `latchwright parts`: everything that is printed, in one folder.

use std::path::PathBuf;

use anyhow::{Result, anyhow};
use clap::{Args, ValueEnum};
use latchwright_session::file_set::Replace;
use latchwright_session::words::products::product_error;
use latchwright_session::{Session, products};
use latchwright_solids::{Grip, Options, Relief};

use super::folder::{self, Destination};
use super::output;

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
    let made = products::parts(design, &options)
        .and_then(|parts| products::files_of(design, &parts))
        .map_err(|err| anyhow!(product_error(&err, design.units)))?;
    let to = Destination {
        folder: &asked.out,
        replace: Replace::if_asked(asked.replace),
    };
    let mut lines = folder::save(&session, &made, &to, "print")?;
    lines.push(
        "Print the gauge first and set the printer by it. parts.txt tells sizes, mass and filament. \
         Small parts: keep them from small children."
            .to_owned(),
    );
    output::say(&(lines.join("\n") + "\n"))?;
    Ok(0)
}
