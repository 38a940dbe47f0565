//! `latchwright settings`: every setting, streamed, memory flat however many there are.

use std::io::{self, BufWriter, Write};
use std::path::Path;

use anyhow::{Result, anyhow};
use latchwright_model::Design;
use latchwright_proof::settings::Filter;
use latchwright_proof::{Settings, Verdict, prove};
use latchwright_session::Session;
use latchwright_session::files::{self, FileError};

/// Labels of every mark, made once.
struct Labels(Vec<Vec<String>>);

impl Labels {
    fn of(design: &Design) -> Self {
        let dial = |dial: &latchwright_model::Dial| {
            (0..dial.positions.min(360))
                .map(|mark| dial.label(mark))
                .collect()
        };
        Self(design.dials.iter().map(dial).collect())
    }

    fn label(&self, dial: usize, mark: u16) -> &str {
        self.0
            .get(dial)
            .and_then(|labels| labels.get(usize::from(mark)))
            .map_or("", String::as_str)
    }
}

fn word(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Passes => "opens",
        Verdict::Holds => "locks",
        Verdict::Unsure => "unsure",
    }
}

/// Lists the settings of the design in `file`.
pub fn run(file: &Path, filter: Filter, csv: Option<&Path>) -> Result<u8> {
    let session = Session::open(file)?;
    let design = session.design();
    match csv {
        Some(path) => {
            let told =
                |err: &dyn std::fmt::Display| anyhow!("cannot write {}: {err}", path.display());
            let to = files::create(path).map_err(|err| match err {
                FileError::System { source, .. } => told(&source),
                refused => refused.into(),
            })?;
            table(design, filter, to).map_err(|err| told(&err))?;
        }
        None => list(design, filter, io::stdout().lock())?,
    }
    Ok(0)
}

/// Text, a line a setting: labels, what it does, the dial that decides, its margin.
fn list(design: &Design, filter: Filter, to: impl Write) -> Result<()> {
    let mut to = BufWriter::with_capacity(1 << 16, to);
    let (labels, proof) = (Labels::of(design), prove(design));
    let mut settings = Settings::new(&proof.dials, filter).with(&proof.together);
    while let Some(setting) = settings.next_setting() {
        for (dial, mark) in setting.marks.iter().enumerate() {
            write!(to, "{} ", labels.label(dial, *mark))?;
        }
        let decides = setting.decided_by + 1;
        writeln!(
            to,
            " {}  dial {decides}  {:.3} mm",
            word(setting.verdict),
            setting.margin
        )?;
    }
    to.flush()?;
    Ok(())
}

/// A table with commas: a column a dial, verdict, deciding dial, margin in mm.
fn table(design: &Design, filter: Filter, to: impl Write) -> Result<()> {
    let mut to = csv::Writer::from_writer(BufWriter::with_capacity(1 << 16, to));
    let (labels, proof) = (Labels::of(design), prove(design));
    let heads = (1..=proof.dials.len()).map(|dial| format!("dial {dial}"));
    let last = ["verdict", "decided_by", "margin_mm"].map(str::to_owned);
    to.write_record(heads.chain(last))?;
    let mut settings = Settings::new(&proof.dials, filter).with(&proof.together);
    while let Some(setting) = settings.next_setting() {
        for (dial, mark) in setting.marks.iter().enumerate() {
            to.write_field(labels.label(dial, *mark))?;
        }
        to.write_field(word(setting.verdict))?;
        to.write_field((setting.decided_by + 1).to_string())?;
        to.write_field(format!("{:.4}", setting.margin))?;
        to.write_record(None::<&[u8]>)?;
    }
    to.flush()?;
    Ok(())
}
