//! What the papers of the bench share: the sheet, what they refuse, and how data reach a template.

use latchwright_drawing::{Drawing, Palette, svg};
use latchwright_model::validate::MAX_DIALS;
use latchwright_model::{Design, Labels, Material, Paper};
use latchwright_proof::prove;
use latchwright_words::capital;
use latchwright_workshop::tiles::paper_size;
use serde_json::{Value, json};

use crate::error::PaperError;
use crate::fonts::Fonts;
use crate::letters::{refuse_missing, written};
use crate::sheets::{Date, Sheets};
use crate::world::PaperWorld;

const LOOK: &str = include_str!("../../../assets/paper.typ");
const LIST: &str = include_str!("../../../assets/list.typ");

/// Longest name of a design, a wood or a mark that a list has room for, letters.
const LONGEST_NAME: usize = 120;
/// Letters of the title that the footer shows.
const FOOTER: usize = 60;
/// How large type and gaps are set, the first that leaves no last page nearly empty; else as it is.
const TIGHT: [f64; 4] = [1.0, 0.96, 0.92, 0.88];
/// A last page is nearly empty where less of its height is used.
const NEARLY_EMPTY: f64 = 0.28;
/// A word longer than this may be broken anywhere, letters.
const LONGEST_WORD: usize = 18;

/// What about a paper is not the design's.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct PaperOptions {
    /// The date in the file's metadata; none is written unless given.
    pub date: Option<Date>,
}

/// One paper, ready to be laid out.
pub(crate) struct BenchPaper {
    /// What it is called, on the paper and in errors.
    pub heading: &'static str,
    /// Its template.
    pub template: &'static str,
    /// What the template reads.
    pub data: Value,
    /// Its drawings, each under the name by which the template asks for it.
    pub drawings: Vec<(String, Drawing)>,
}

impl BenchPaper {
    /// Lays it out on the sheet that the design asks for.
    pub(crate) fn lay_out(
        mut self,
        design: &Design,
        fonts: &Fonts,
        options: &PaperOptions,
    ) -> Result<Sheets, PaperError> {
        check(design, self.heading)?;
        let (width, height) = paper_size(design.bench.paper);
        if let Value::Object(data) = &mut self.data {
            let title = one_line(&design.title);
            data.insert("heading".to_owned(), json!(self.heading));
            data.insert("footer".to_owned(), json!(cut_short(&title, FOOTER)));
            data.insert("title".to_owned(), json!(title));
            data.insert(
                "paper".to_owned(),
                json!({ "width": width, "height": height }),
            );
        }
        soften(&mut self.data);
        let mut letters = String::new();
        gather(&self.data, &mut letters);
        for (_, drawing) in &self.drawings {
            letters.push_str(&written(&drawing.items));
        }
        refuse_missing(&fonts.missing(&letters))?;
        let fonts = fonts.for_text(&letters);
        let mut first = None;
        for tight in TIGHT {
            let sheets = self.set(tight, &fonts, options)?;
            if sheets.count() < 2 || sheets.last_page_used() >= NEARLY_EMPTY {
                return Ok(sheets);
            }
            first.get_or_insert(sheets);
        }
        first.map_or_else(|| self.set(1.0, &fonts, options), Ok)
    }

    /// The pages with type and gaps `tight` times as large as usual.
    fn set(
        &mut self,
        tight: f64,
        fonts: &Fonts,
        options: &PaperOptions,
    ) -> Result<Sheets, PaperError> {
        if let Value::Object(data) = &mut self.data {
            data.insert("tight".to_owned(), json!(tight));
        }
        let bytes = serde_json::to_vec(&self.data).map_err(|err| PaperError::Typeset {
            message: err.to_string(),
        })?;
        let mut world = PaperWorld::new(self.template, fonts.clone())?
            .with_source("paper.typ", LOOK)?
            .with_source("list.typ", LIST)?
            .with_file("data.json", bytes);
        for (name, drawing) in &self.drawings {
            world = world.with_file(name, svg(drawing, &Palette::LIGHT).into_bytes());
        }
        let sheets = Sheets::lay_out(&world, options.date)?;
        refuse_missing(&sheets.boxes())?;
        Ok(sheets)
    }
}

/// What a paper of a design that is not proven says before all else.
pub(crate) fn unproven(design: &Design) -> Option<String> {
    let proven = prove(design).proven;
    (!proven).then(|| {
        "This design is not proven: the setting sheet says what is not promised. Mend it before you cut.".to_owned()
    })
}

/// Width between the margins, mm.
pub(crate) const fn width_between_margins(paper: Paper) -> f64 {
    paper_size(paper).0 - 28.0
}

/// A table for the template.
pub(crate) fn table(head: &[&str], rows: impl IntoIterator<Item = Vec<String>>) -> Value {
    let rows: Vec<Vec<String>> = rows.into_iter().collect();
    json!({ "head": head, "rows": rows })
}

/// `text` as a sentence: a capital first and a stop at the end.
pub(crate) fn sentence(text: &str) -> String {
    let stop = if text.ends_with(['.', '!', '?']) {
        ""
    } else {
        "."
    };
    format!("{}{stop}", capital(text))
}

/// Why these are more dials than a lid carries, if they are.
pub(crate) fn too_many_dials(design: &Design) -> Option<String> {
    let count = design.dials.len();
    (count > MAX_DIALS)
        .then(|| format!("there are {count} dials; a lid carries at most {MAX_DIALS}"))
}

/// Refuses what no list has room for, with place, figures and remedy.
fn check(design: &Design, paper: &'static str) -> Result<(), PaperError> {
    let refuse = |reason: String| Err(PaperError::Refused { paper, reason });
    if let Some(reason) = too_many_dials(design) {
        return refuse(reason);
    }
    let mut names = vec![
        ("the title".to_owned(), design.title.as_str()),
        ("the plate's wood".to_owned(), design.plate.wood.as_str()),
        ("the sides' wood".to_owned(), design.body.wood.as_str()),
    ];
    for (what, material) in [
        ("the floor's wood", &design.body.floor.material),
        ("the slider's wood", &design.slider.material),
    ] {
        if let Material::Wood { species, .. } = material {
            names.push((what.to_owned(), species));
        }
    }
    for (board, number) in design.bench.boards.iter().zip(1..) {
        names.push((format!("the wood of board {number}"), &board.wood));
    }
    for (dial, number) in design.dials.iter().zip(1..) {
        if let Labels::Words(words) | Labels::Pictures(words) = &dial.labels {
            let label = |word| (format!("a label of dial {number}"), word);
            names.extend(words.iter().map(String::as_str).map(label));
        }
    }
    for (what, text) in names {
        // Bytes first: counting the letters of a very long text is work in itself.
        let count = if text.len() <= LONGEST_NAME {
            0
        } else {
            text.chars().count()
        };
        if count > LONGEST_NAME {
            return refuse(format!(
                "{what} has {count} letters; there is room for {LONGEST_NAME}, so shorten it"
            ));
        }
    }
    Ok(())
}

fn one_line(text: &str) -> String {
    let words: Vec<&str> = text.split_whitespace().collect();
    if words.is_empty() {
        "Untitled box".to_owned()
    } else {
        words.join(" ")
    }
}

/// At most `most` letters of `text`, with dots where some are left out.
pub(crate) fn cut_short(text: &str, most: usize) -> String {
    if text.chars().count() <= most {
        return text.to_owned();
    }
    let kept: String = text.chars().take(most.saturating_sub(1)).collect();
    format!("{kept}…")
}

/// Lets every very long word be broken, so that it stays in its column.
fn soften(value: &mut Value) {
    match value {
        Value::String(text) => *text = softened(text),
        Value::Array(values) => values.iter_mut().for_each(soften),
        Value::Object(values) => values.values_mut().for_each(soften),
        _ => {}
    }
}

fn softened(text: &str) -> String {
    let is_long = |word: &str| word.chars().count() > LONGEST_WORD;
    if !text.split_whitespace().any(is_long) {
        return text.to_owned();
    }
    let mut soft = String::with_capacity(text.len() * 2);
    for part in text.split_inclusive(char::is_whitespace) {
        let long = is_long(part.trim_end());
        for letter in part.chars() {
            soft.push(letter);
            // A mark that belongs to a letter must stay with it: only plain letters are parted.
            if long && letter.is_alphanumeric() {
                soft.push('\u{200b}');
            }
        }
    }
    soft
}

/// All that is said in `value`.
fn gather(value: &Value, letters: &mut String) {
    match value {
        Value::String(text) => {
            letters.push_str(text);
            letters.push('\n');
        }
        Value::Array(values) => values.iter().for_each(|value| gather(value, letters)),
        Value::Object(values) => values.values().for_each(|value| gather(value, letters)),
        _ => {}
    }
}
