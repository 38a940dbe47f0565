//! The order of work: numbered steps with the settings that the design implies, what to try before and
//! after the finish, which faces stay bare, and the cautions where they belong.
//!
//! Cautions are the usual ones. The manual of each tool, local rules and a qualified person's word go
//! before them.

mod bench;
mod close;
mod fittings;
mod lid;
mod screw;
mod source;
mod speed;

use latchwright_model::Design;

use crate::holes::{Holes, holes};
use crate::inch::Rule;
use crate::joinery::{Joinery, joinery};
use crate::note::NotesAlike;
use latchwright_model::shown;

pub use screw::{SCREWS, Screw, keeper_pilot};
pub use source::Source;
pub use speed::{drill_speed, is_softwood};

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
    /// A length on wood without its coats, mm.
    Mm(f64),
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
/// It never tells the combination: that is on the maker's sheet.
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
        Some(job.dry_fit()),
        Some(job.glue_up()),
        job.lid_cut(),
        Some(job.plate_holes()),
        Some(job.rabbet()),
        Some(job.slider()),
        Some(job.guide()),
        Some(job.keeper()),
        Some(job.hinges()),
        Some(job.print()),
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
