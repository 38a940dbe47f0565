//! `latchwright propose`: from a lid to a proven latch.

use std::ops::ControlFlow;
use std::path::PathBuf;

use anyhow::{Result, anyhow, bail};
use clap::{Args, ValueEnum};
use latchwright_model::{Design, Units};
use latchwright_search::propose::{Outcome, Proposal, Wishes, frontier};
use latchwright_session::file_set::{NewFile, Replace, write_file_set};
use latchwright_session::format::Comments;
use latchwright_session::questions::{Answers, Care, FROM_BENCH, Signs, read_held};
use latchwright_session::words::typed::{held_error, typed_error};
use latchwright_session::{Session, format, proposals, report, threads, units};

use super::output::{self, Progress};

/// What `latchwright propose` is asked for.
#[derive(Debug, Args)]
#[expect(
    clippy::struct_excessive_bools,
    reason = "options of a command, each on its own"
)]
pub struct Asked {
    /// Width and depth of the lid: 220 140, or 8 5/8 in and so on.
    #[arg(long, num_args = 2, value_names = ["WIDTH", "DEPTH"])]
    pub lid: Vec<String>,
    /// Thickness of the plate as measured.
    #[arg(long, value_name = "LENGTH")]
    pub plate: Option<String>,
    /// How many dials.
    #[arg(long, default_value_t = 3, value_parser = clap::value_parser!(u32).range(1..=12))]
    pub dials: u32,
    /// At least so many figures round each dial.
    #[arg(long, value_name = "COUNT", value_parser = clap::value_parser!(u32).range(2..=360))]
    pub marks: Option<u32>,
    /// At least so many letters round each dial.
    #[arg(long, value_name = "COUNT", conflicts_with = "marks", value_parser = clap::value_parser!(u32).range(2..=360))]
    pub letters: Option<u32>,
    /// Your own words round each dial, with commas between.
    #[arg(long, value_delimiter = ',', conflicts_with_all = ["marks", "letters"])]
    pub words: Option<Vec<String>>,
    /// How exactly you work.
    #[arg(long, value_enum, default_value_t = How::Knife)]
    pub care: How,
    /// Age in years of the youngest who will live with the box.
    #[arg(long, default_value_t = 14)]
    pub youngest: u32,
    /// Hold a size fixed: "gap of every dial = 2.5". May be given more than once.
    #[arg(long, value_name = "SIZE=LENGTH")]
    pub hold: Vec<String>,
    /// Think in inches.
    #[arg(long)]
    pub inches: bool,
    /// A design whose bits, printer, woods and air are yours; else the usual ones.
    #[arg(long, value_name = "FILE")]
    pub bench: Option<PathBuf>,
    /// Tell, too, what smaller and larger lids and better workmanship would buy.
    #[arg(long)]
    pub frontier: bool,
    /// A folder that gets the designs.
    #[arg(long, value_name = "DIR")]
    pub out: Option<PathBuf>,
    /// Replace designs of the same names that are there.
    #[arg(long, requires = "out")]
    pub replace: bool,
    /// Print JSON instead of text.
    #[arg(long)]
    pub json: bool,
}

/// How exactly the maker works.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum How {
    /// Pencil and eye.
    Eye,
    /// Knife line, awl and stop.
    Knife,
    /// A drilling jig and fine reading marks.
    Jig,
}

/// Proposes; 0 found, 1 nothing.
pub fn run(asked: &Asked) -> Result<u8> {
    let bench = asked.bench.as_deref().map(Session::open).transpose()?;
    let wishes = wishes(asked, bench.as_ref())?;
    let outcome = with_progress(|tell| {
        proposals::run(&wishes, threads::available(), &mut |progress| {
            tell(progress.done)
        })
    });
    match outcome {
        Outcome::Found(proposals) => {
            if let Some(folder) = &asked.out {
                let comments = bench.map(|bench| bench.comments().within(&FROM_BENCH));
                let files = files(&proposals, &comments.unwrap_or_default())?;
                write_file_set(folder, &files, Replace::if_asked(asked.replace))?;
            }
            let beyond = asked
                .frontier
                .then(|| with_progress(|tell| frontier(&wishes, tell)));
            let text = if asked.json {
                let mut json = report::proposals_json(&proposals);
                if let Some(beyond) = &beyond {
                    json["frontier"] = report::frontier_json(beyond);
                }
                format!("{json:#}\n")
            } else {
                let units = wishes.base.units;
                let beyond = beyond.map(|beyond| report::frontier_text(&beyond, units));
                report::proposals_text(&proposals) + &beyond.unwrap_or_default()
            };
            output::say(&text)?;
            Ok(0)
        }
        Outcome::Nothing(nothing) => {
            let text = if asked.json {
                format!("{:#}\n", report::nothing_json(&nothing))
            } else {
                report::nothing_text(&nothing)
            };
            output::say(&text)?;
            Ok(1)
        }
        Outcome::Stopped => bail!("stopped before anything was found"),
    }
}

fn wishes(asked: &Asked, bench: Option<&Session>) -> Result<Wishes> {
    let usual = Answers::default();
    let unit = if asked.inches {
        Units::Inch
    } else {
        Units::Millimetre
    };
    let length = |name: &str, text: &str| {
        units::parse_length(text, unit).map_err(|err| anyhow!("{name}: {}", typed_error(&err)))
    };
    let [width, depth] = asked.lid.as_slice() else {
        bail!("how large is the lid? give --lid WIDTH DEPTH");
    };
    let bench = bench.map_or_else(Design::default, |bench| bench.design().as_ref().clone());
    let signs = match (&asked.words, asked.letters, asked.marks) {
        (Some(words), ..) => Signs::Words(words.clone()),
        (None, Some(count), _) => Signs::Letters(count),
        (None, None, count) => Signs::Figures(count.unwrap_or(8)),
    };
    let named = Design {
        units: unit,
        ..Design::default()
    };
    let answers = Answers {
        units: unit,
        lid: (
            length("the lid's width", width)?,
            length("the lid's depth", depth)?,
        ),
        plate: match &asked.plate {
            Some(text) => length("the plate's thickness", text)?,
            None => usual.plate,
        },
        dials: asked.dials,
        signs,
        care: match asked.care {
            How::Eye => Care::ByEye,
            How::Knife => Care::Careful,
            How::Jig => Care::WithJig,
        },
        youngest: asked.youngest,
        held: asked
            .hold
            .iter()
            .map(|text| read_held(text, &named).map_err(|err| anyhow!(held_error(&err))))
            .collect::<Result<_>>()?,
    };
    Ok(answers.wishes(&bench))
}

/// A design file each, with the comments of the bench.
fn files(proposals: &[Proposal], comments: &Comments) -> Result<Vec<NewFile>> {
    let mut files = Vec::new();
    for proposal in proposals {
        files.push(NewFile {
            name: format!("{}.latch.ron", report::kind_file(proposal.kind)),
            bytes: format::write_with(&proposal.design, comments)?.into_bytes(),
        });
    }
    Ok(files)
}

/// Does what takes a while, and tells a terminal how far it is.
fn with_progress<T>(work: impl FnOnce(&mut dyn FnMut(f64) -> ControlFlow<()>) -> T) -> T {
    let progress = Progress::begin();
    let done = work(&mut |share| {
        progress.say(format_args!("{:3.0} %", 100.0 * share));
        ControlFlow::Continue(())
    });
    progress.end();
    done
}
