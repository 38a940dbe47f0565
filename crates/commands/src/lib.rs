//! The command line, without a window: arguments in, words to the terminal and files out.
//!
//! One module a command, each `run` from its arguments to an exit code: 0 done, or proven; 1 not proven; 2
//! could not be done. `output` is the one way to the terminal, `folder` the one way of a made folder to the
//! disk. What a command makes, finds or says comes from the crates below; a window is opened by whoever calls
//! [`run`], so that nothing here stands on window code.

mod builds;
mod card;
mod folder;
mod mend;
mod output;
mod papers;
mod parts;
mod propose;
mod prove;
mod settings;

use std::ffi::OsString;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use anyhow::Result;
use clap::{Parser, Subcommand, ValueEnum};
use latchwright_proof::Verdict;
use latchwright_proof::builds::{Plan, Spread};

/// Prove a dial latch for a wooden box before cutting it, and make what the job needs.
#[derive(Debug, Parser)]
#[command(name = "latchwright", version, args_conflicts_with_subcommands = true)]
struct Arguments {
    /// A design to open in the window.
    file: Option<PathBuf>,
    #[command(subcommand)]
    command: Option<Command>,
}

#[derive(Debug, Subcommand)]
enum Command {
    /// Say whether a latch is proven: exit 0 proven, 1 not proven, 2 could not be read.
    Prove {
        /// The design.
        file: PathBuf,
        /// Only what one mark promises, with the worst box found: the dial's number and its label.
        #[arg(long, value_name = "DIAL:LABEL")]
        mark: Option<String>,
        /// Print JSON instead of text.
        #[arg(long)]
        json: bool,
    },
    /// List every setting with what it does, in a fixed order.
    Settings {
        /// The design.
        file: PathBuf,
        /// Only settings of this verdict.
        #[arg(long, value_enum)]
        verdict: Option<Wanted>,
        /// Write a table with commas here instead of text to the terminal.
        #[arg(long, value_name = "OUT")]
        csv: Option<PathBuf>,
    },
    /// Build a latch many times over within its workmanship, and say how often it does as it should:
    /// exit 0 done, 1 where a build does not keep what was proven, 2 could not be done.
    Builds {
        /// The design.
        file: PathBuf,
        /// How many are built.
        #[arg(long, default_value_t = 100_000, value_parser = clap::value_parser!(u64).range(1..=1_000_000_000))]
        count: u64,
        /// Where the random numbers begin; the same seed builds the same latches.
        #[arg(long, default_value_t = 1)]
        seed: u64,
        /// Errors mostly near the middle, with ± taken as two standard deviations.
        #[arg(long)]
        normal: bool,
        /// Print JSON instead of text.
        #[arg(long)]
        json: bool,
    },
    /// From a lid to a proven latch: the roomiest, the one with most settings, the smallest; or why
    /// there is none. Exit 0 found, 1 nothing that is proven, 2 could not be done.
    Propose(propose::Asked),
    /// Find the smallest change that makes a design proven: exit 0 found, 1 nothing found or nothing
    /// to mend, 2 could not be done.
    Mend(mend::Asked),
    /// Make everything the bench needs in one folder: templates at true size, cut list, order of work,
    /// setting of the combination, the card, and each wooden part as SVG and DXF.
    Papers(papers::Asked),
    /// Make everything that is printed in one folder: a 3MF for each bed, an STL for each part, and a list
    /// of their sizes.
    Parts(parts::Asked),
    /// Make the recipient's card as PDF.
    Card {
        /// The design.
        file: PathBuf,
        /// Where the card goes.
        #[arg(long, value_name = "OUT.pdf")]
        out: PathBuf,
    },
}

/// What a whole setting does.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
enum Wanted {
    /// Every dial passes.
    Opens,
    /// At least one dial holds.
    Locks,
    /// Neither can be promised.
    Unsure,
}

impl Wanted {
    fn verdict(self) -> Verdict {
        match self {
            Self::Opens => Verdict::Passes,
            Self::Locks => Verdict::Holds,
            Self::Unsure => Verdict::Unsure,
        }
    }
}

/// Runs the program with these arguments, the program's own name first.
///
/// Where they name no command, `window` opens the window: on the design that they name, or on none. It
/// answers once the window is closed.
pub fn run(
    arguments: impl IntoIterator<Item = OsString>,
    window: impl FnOnce(Option<&Path>) -> Result<()>,
) -> ExitCode {
    let arguments = match Arguments::try_parse_from(arguments) {
        Ok(arguments) => arguments,
        Err(err) => {
            let code = if err.use_stderr() { 2 } else { 0 };
            // nothing is left to say where the terminal is gone
            let _ = err.print();
            return ExitCode::from(code);
        }
    };
    let done = match arguments.command {
        None => window(arguments.file.as_deref()).map(|()| 0),
        Some(Command::Prove { file, mark, json }) => match mark {
            None => prove::run(&file, json),
            Some(mark) => prove::run_mark(&file, &mark, json),
        },
        Some(Command::Settings { file, verdict, csv }) => {
            settings::run(&file, verdict.map(Wanted::verdict), csv.as_deref())
        }
        Some(Command::Builds {
            file,
            count,
            seed,
            normal,
            json,
        }) => {
            let spread = if normal {
                Spread::Normal
            } else {
                Spread::Uniform
            };
            builds::run(
                &file,
                Plan {
                    count,
                    seed,
                    spread,
                },
                json,
            )
        }
        Some(Command::Propose(asked)) => propose::run(&asked),
        Some(Command::Mend(asked)) => mend::run(&asked),
        Some(Command::Papers(asked)) => papers::run(&asked),
        Some(Command::Parts(asked)) => parts::run(&asked),
        Some(Command::Card { file, out }) => card::run(&file, &out),
    };
    match done {
        Ok(code) => ExitCode::from(code),
        Err(err) if output::reader_left(&err) => ExitCode::SUCCESS,
        Err(err) => {
            output::complain(&err);
            ExitCode::from(2)
        }
    }
}
