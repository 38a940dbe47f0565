//! The order of work: numbered steps with the settings that the design implies, what to try before and
//! after the finish, which faces stay bare, and the cautions where they belong.
//!
//! Cautions are the usual ones. The manual of each tool, local rules and a qualified person's word go
//! before them.

mod bench;
mod close;
mod fittings;
mod lid;
mod source;
mod speed;

use latchwright_model::Design;

use crate::holes::{Holes, holes};
use crate::inch::Rule;
use crate::joinery::{Joinery, joinery};
use crate::note::NotesAlike;
use latchwright_model::shown;

use latchwright_assembly::bit::{Bit, Fit};
pub use latchwright_assembly::screw::{SCREWS, Screw, is_softwood, keeper_pilot};
pub use source::Source;
pub use speed::drill_speed;

/// One numbered step.
#[derive(Debug, Clone, PartialEq)]
pub struct WorkStep {
    /// From 1.
    pub number: u32,
    /// What it is, in few words.
    pub title: &'static str,
    /// What to do, in order.
    pub todo: Vec<Todo>,
    /// What to set on tools.
    pub settings: Vec<Setting>,
    /// What to try, and whether before or after the finish.
    pub fits: Vec<String>,
    /// Which faces get no coat.
    pub bare: Vec<String>,
    /// What can hurt, and how not to be hurt.
    pub cautions: Vec<String>,
    /// Where its figures and customs come from.
    pub sources: Vec<Source>,
}

/// One thing to do or to know.
#[derive(Debug, Clone, PartialEq)]
pub enum Todo {
    /// A whole sentence.
    Say(String),
    /// What is to be known of holes of this step.
    Note(NotesAlike),
}

/// One thing that is set.
#[derive(Debug, Clone, PartialEq)]
pub struct Setting {
    /// What.
    pub name: String,
    /// To what.
    pub value: Value,
}

/// What something is set to; always finite.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Value {
    /// A length that is the same with and without coats, mm.
    Mm(f64),
    /// A length as it leaves saw, plane or bit, before its coats, mm.
    Bare(f64),
    /// A bit, by its diameter, mm.
    Bit(f64),
    /// A No. 4 screw, by its length, mm.
    Screw(f64),
    /// Turns a minute: slowest, fastest.
    Rpm(u32, u32),
    /// Degrees.
    Degrees(f64),
    /// Per cent.
    Percent(f64),
    /// So many.
    Count(u32),
}

impl Value {
    /// In the maker's unit, with what rounding costs.
    pub fn say(self, rule: Rule) -> String {
        match self {
            Self::Mm(mm) => rule.say_exactly(mm),
            Self::Bare(mm) => format!("{} bare", rule.say_exactly(mm)),
            Self::Bit(mm) => latchwright_assembly::bit::length(mm, rule.units),
            Self::Screw(mm) => rule.say_screw(mm),
            Self::Rpm(slow, fast) if slow == fast => format!("{slow} rpm"),
            Self::Rpm(slow, fast) => format!("{slow} to {fast} rpm"),
            Self::Degrees(degrees) => format!("{}°", crate::inch::decimal(degrees)),
            Self::Percent(share) => format!("{} %", crate::inch::decimal(share)),
            Self::Count(count) => count.to_string(),
        }
    }
}

/// What the steps are made from.
struct Job<'a> {
    design: &'a Design,
    joinery: Joinery,
    holes: Holes,
    rule: Rule,
    film: f64,
}

/// The order of work for `design`, from choosing wood to the tests before it is given away.
///
/// It never tells the combination: that is on the setting sheet.
pub fn steps(design: &Design) -> Vec<WorkStep> {
    let design = &shown(design);
    let job = Job {
        design,
        joinery: joinery(design),
        holes: holes(design),
        rule: Rule::of(design),
        film: design.workmanship.film.max(0.0),
    };
    let all = [
        Some(job.stock()),
        Some(job.mill()),
        Some(job.saw()),
        Some(job.ends()),
        Some(job.grooves()),
        Some(job.panels()),
        Some(job.small_parts()),
        // what is bored is tried with what is printed, and a plate in a groove is worked before it is in it
        Some(job.print()),
        Some(job.plate_holes()),
        job.rabbet(),
        Some(job.dry_fit()),
        Some(job.glue_up()),
        job.lid_cut(),
        Some(job.slider()),
        Some(job.guide()),
        Some(job.hinges()),
        Some(job.keeper()),
        Some(job.finish()),
        Some(job.assembly()),
        Some(job.combination()),
        Some(job.tests()),
    ];
    let numbered = all.into_iter().flatten().zip(1..);
    numbered
        .map(|(step, number)| WorkStep { number, ..step })
        .collect()
}

impl WorkStep {
    fn new(title: &'static str) -> Self {
        Self {
            number: 0,
            title,
            todo: Vec::new(),
            settings: Vec::new(),
            fits: Vec::new(),
            bare: Vec::new(),
            cautions: Vec::new(),
            sources: Vec::new(),
        }
    }

    fn todo(mut self, sentences: &[&str]) -> Self {
        let said = sentences.iter().map(|text| Todo::Say((*text).to_owned()));
        self.todo.extend(said);
        self
    }

    fn say(mut self, sentence: String) -> Self {
        self.todo.push(Todo::Say(sentence));
        self
    }

    fn set(mut self, name: impl Into<String>, value: Value) -> Self {
        let name = name.into();
        self.settings.push(Setting { name, value });
        self
    }

    fn mm(self, name: impl Into<String>, mm: f64) -> Self {
        self.set(name, Value::Mm(mm))
    }

    /// A length before its coats.
    fn cut(self, name: impl Into<String>, mm: f64) -> Self {
        self.set(name, Value::Bare(mm))
    }

    /// A screw where there is one that is sold, with its pilot hole: bit, and how deep.
    fn screw(mut self, name: &str, length: Option<f64>, pilot: f64, deep: Option<f64>) -> Self {
        if let Some(length) = length {
            self = self.set(format!("{name}: screw"), Value::Screw(length));
        }
        self = self.set(format!("{name}: pilot hole"), Value::Bit(pilot));
        match deep {
            Some(deep) => self.mm(format!("{name}: depth of the pilot hole"), deep),
            None => self,
        }
    }

    fn fits(mut self, sentences: &[&str]) -> Self {
        self.fits
            .extend(sentences.iter().map(|text| (*text).to_owned()));
        self
    }

    fn bare(mut self, faces: &[&str]) -> Self {
        self.bare
            .extend(faces.iter().map(|text| (*text).to_owned()));
        self
    }

    fn caution(mut self, sentences: &[&str]) -> Self {
        self.cautions
            .extend(sentences.iter().map(|text| (*text).to_owned()));
        self
    }

    fn from(mut self, sources: &[Source]) -> Self {
        self.sources.extend_from_slice(sources);
        self
    }
}

/// The bit for the pilot holes of the keeper's screws in the front.
pub(crate) fn keeper_bit(design: &Design) -> Bit {
    Bit::nearest(&design.bench, keeper_pilot(design), Fit::Fast)
}

impl Job<'_> {
    fn say(&self, mm: f64) -> String {
        self.rule.say(mm)
    }

    /// What was measured, less the coats it gets.
    fn less_coats(&self, mm: f64) -> f64 {
        mm - 2.0 * self.film
    }
}

#[cfg(test)]
mod tests;
