//! Laid out pages, ready to be saved as PDF or looked at.

use typst::World;
use typst::diag::SourceDiagnostic;
use typst::foundations::{Datetime, Label, Smart, Value};
use typst::introspection::{Introspector, MetadataElem};
use typst::layout::{Abs, Frame, FrameItem};
use typst::text::TextItem;
use typst::utils::PicoStr;
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards, Timestamp};

use crate::error::PaperError;
use crate::finish;
use crate::preview::{self, Picture};
use crate::world::PaperWorld;

/// How many layouts unused caches are kept for.
const CACHE_AGE: usize = 10;

/// Text may reach out by this much and still keeps its width: rounding, mm.
const ROUNDING_MM: f64 = 0.05;

/// A day of the calendar.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Date {
    /// Year from 1.
    pub year: i32,
    /// Month from 1.
    pub month: u8,
    /// Day from 1.
    pub day: u8,
}

/// Laid out pages.
#[derive(Debug, Clone)]
pub struct Sheets {
    document: PagedDocument,
    date: Option<Datetime>,
}

impl Sheets {
    /// Lays out the world's main template.
    pub(crate) fn lay_out(world: &PaperWorld, date: Option<Date>) -> Result<Self, PaperError> {
        let date = date.map(datetime).transpose()?;
        let result = typst::compile::<PagedDocument>(world as &dyn World);
        typst::comemo::evict(CACHE_AGE);
        let document = result.output.map_err(|faults| refused(&faults))?;
        Ok(Self { document, date })
    }

    /// Number of pages.
    pub fn count(&self) -> usize {
        self.document.pages().len()
    }

    /// The pages as a tagged PDF (PDF/UA-1; with a date also PDF/A-2a), fonts embedded, true size.
    pub fn pdf(&self) -> Result<Vec<u8>, PaperError> {
        let mut standards = vec![PdfStandard::Ua_1];
        if self.date.is_some() {
            standards.push(PdfStandard::A_2a);
        }
        let standards = PdfStandards::new(&standards).map_err(|err| PaperError::Typeset {
            message: err.message().to_string(),
        })?;
        let options = PdfOptions {
            creator: Smart::Custom(Some("Latchwright".to_owned())),
            timestamp: self.date.map(Timestamp::new_utc),
            standards,
            ..PdfOptions::default()
        };
        let bytes = typst_pdf::pdf(&self.document, &options).map_err(|faults| refused(&faults))?;
        finish::at_true_size(&bytes)
    }

    /// The pages as pictures, with so many pixels to the millimetre.
    pub fn pictures(&self, pixels_per_mm: f64) -> Vec<Picture> {
        self.document
            .pages()
            .iter()
            .map(|page| preview::picture(page, pixels_per_mm))
            .collect()
    }

    /// One page, from 0, as a picture with so many pixels to the millimetre; `None` where there is no
    /// such page.
    pub fn picture(&self, page: usize, pixels_per_mm: f64) -> Option<Picture> {
        let page = self.document.pages().get(page)?;
        Some(preview::picture(page, pixels_per_mm))
    }

    /// What the template left under `<label>` with `metadata(..)`.
    pub(crate) fn note(&self, label: &str) -> Option<Value> {
        let label = Label::new(PicoStr::intern(label))?;
        let content = self
            .document
            .introspector()
            .query_label(label)
            .ok()?
            .clone();
        content
            .to_packed::<MetadataElem>()
            .map(|note| note.value.clone())
    }

    /// The text that reaches furthest out of the clipped block it stands in, if any does by more
    /// than rounding. Templates put whatever has a width to keep into a clipped block.
    pub(crate) fn overhang(&self) -> Option<Overhang> {
        let mut seen = Seen::default();
        self.document
            .pages()
            .iter()
            .for_each(|page| seen.look(&page.frame, Abs::zero(), None));
        seen.overhang
            .filter(|overhang| overhang.over_mm > ROUNDING_MM)
    }

    /// How much of the last page's height is used, 0 to 1: up to its lowest item above the footer, which
    /// takes the last fourteenth.
    pub(crate) fn last_page_used(&self) -> f64 {
        let Some(page) = self.document.pages().last() else {
            return 1.0;
        };
        let foot = page.frame.height() * (1.0 - 1.0 / 14.0);
        lowest(&page.frame, Abs::zero(), foot) / page.frame.height()
    }

    /// The letters for which the page holds an empty box.
    pub(crate) fn boxes(&self) -> Vec<char> {
        let mut seen = Seen::default();
        self.document
            .pages()
            .iter()
            .for_each(|page| seen.look(&page.frame, Abs::zero(), None));
        seen.boxes.sort_unstable();
        seen.boxes.dedup();
        seen.boxes
    }
}

/// The lowest foot of any words, line or picture in `frame`, whose top is at `y`, above `foot`.
fn lowest(frame: &Frame, y: Abs, foot: Abs) -> Abs {
    let items = frame.items().map(|(at, item)| {
        let y = y + at.y;
        match item {
            FrameItem::Group(group) => lowest(&group.frame, y + group.transform.ty, foot),
            FrameItem::Image(_, size, _) => y + size.y,
            FrameItem::Text(_) | FrameItem::Shape(..) => y,
            _ => Abs::zero(),
        }
    });
    let above = items.filter(|lowest| *lowest < foot);
    above.fold(Abs::zero(), Abs::max)
}

/// Text that does not keep its width.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Overhang {
    /// The text.
    pub text: String,
    /// How far it reaches out to one side, mm.
    pub over_mm: f64,
}

/// What is found on the way through a page.
#[derive(Default)]
struct Seen {
    overhang: Option<Overhang>,
    boxes: Vec<char>,
}

impl Seen {
    /// Looks through `frame`, whose left edge is at `x`; text has to keep between `walls`.
    fn look(&mut self, frame: &Frame, x: Abs, walls: Option<(Abs, Abs)>) {
        for (at, item) in frame.items() {
            let x = x + at.x;
            match item {
                FrameItem::Group(group) => {
                    let x = x + group.transform.tx;
                    let walls = if group.clip.is_some() {
                        Some((x, x + group.frame.width()))
                    } else {
                        walls
                    };
                    self.look(&group.frame, x, walls);
                }
                FrameItem::Text(text) => self.measure(text, x, walls),
                _ => {}
            }
        }
    }

    fn measure(&mut self, text: &TextItem, x: Abs, walls: Option<(Abs, Abs)>) {
        for glyph in text.glyphs.iter().filter(|glyph| glyph.id == 0) {
            self.boxes
                .extend(text.text.get(glyph.range()).unwrap_or_default().chars());
        }
        let over_mm = walls.map_or(0.0, |(left, right)| {
            (x + text.width() - right).max(left - x).to_mm()
        });
        if over_mm > self.overhang.as_ref().map_or(0.0, |worst| worst.over_mm) {
            self.overhang = Some(Overhang {
                text: text.text.to_string(),
                over_mm,
            });
        }
    }
}

fn datetime(date: Date) -> Result<Datetime, PaperError> {
    let Date { year, month, day } = date;
    let calendar = Datetime::from_ymd(year, month, day).filter(|_| year >= 1);
    calendar.ok_or(PaperError::Date { year, month, day })
}

fn refused(faults: &[SourceDiagnostic]) -> PaperError {
    let messages: Vec<&str> = faults.iter().map(|fault| fault.message.as_str()).collect();
    PaperError::Typeset {
        message: messages.join("; "),
    }
}
