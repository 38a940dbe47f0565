//! Work beside the window, on a thread of its own; papers made so that nothing they do can harm it.

use std::any::Any;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::sync::mpsc::{Receiver, RecvTimeoutError};
use std::time::Duration;

use egui::{Context, Id};
use latchwright_model::validate;
use latchwright_model::{Design, Labels};
use latchwright_model::{Fault, Severity};
use latchwright_papers::{
    Fonts, PaperOptions, Sheets, TemplateOptions, card, card_sheets, cut_list_sheets,
    setting_sheets, template_sheets, work_sheets,
};
use latchwright_session::lettering::lettering;
use latchwright_session::system_fonts;
use latchwright_session::together::NewFile;
use latchwright_solids::{Options, Part, PartFault, Region};

use crate::pages::{Paper, Wanted};

/// How many threads this machine runs at the same time.
pub fn threads() -> usize {
    std::thread::available_parallelism().map_or(1, usize::from)
}

/// Work on a thread of its own, one piece at a time.
pub struct Job<T> {
    running: Option<Receiver<T>>,
}

impl<T> Default for Job<T> {
    fn default() -> Self {
        Self { running: None }
    }
}

impl<T: Send + 'static> Job<T> {
    /// Whether something is being made.
    pub fn busy(&self) -> bool {
        self.running.is_some()
    }

    /// Starts; the window is woken when it is done.
    pub fn start(&mut self, ctx: &Context, work: impl FnOnce() -> T + Send + 'static) {
        let (sender, receiver) = std::sync::mpsc::channel();
        let ctx = ctx.clone();
        std::thread::spawn(move || {
            match catch_unwind(AssertUnwindSafe(work)) {
                Ok(done) => {
                    // the window may have been closed meanwhile
                    let _ = sender.send(done);
                }
                Err(fell) => {
                    ctx.data_mut(|data| data.insert_temp(fallen_id(), why(&*fell)));
                }
            }
            // before the window looks, so that it finds the job ended
            drop(sender);
            ctx.request_repaint();
        });
        self.running = Some(receiver);
    }

    /// What was made, once it is done; nothing where the work fell over, which [`fallen`] tells.
    pub fn poll(&mut self) -> Option<T> {
        self.poll_within(Duration::ZERO)
    }

    /// As [`Self::poll`], waiting for it so long at most.
    pub fn poll_within(&mut self, time: Duration) -> Option<T> {
        let received = self.running.as_ref()?.recv_timeout(time);
        if !matches!(received, Err(RecvTimeoutError::Timeout)) {
            self.running = None;
        }
        received.ok()
    }
}

/// How far a piece of work is, told from its thread, and the wish that it stop.
#[derive(Debug, Clone, Default)]
pub struct Reins {
    done: Arc<AtomicU64>,
    stop: Arc<AtomicBool>,
}

impl Reins {
    /// Tells how far it is, in whatever the work counts.
    pub fn tell(&self, done: u64) {
        self.done.store(done, Ordering::Relaxed);
    }

    /// What was told last.
    pub fn done(&self) -> u64 {
        self.done.load(Ordering::Relaxed)
    }

    /// Asks the work to stop.
    pub fn stop(&self) {
        self.stop.store(true, Ordering::Relaxed);
    }

    /// Whether it was asked to stop, to be looked at from the work's thread.
    pub fn stopped(&self) -> &AtomicBool {
        &self.stop
    }
}

/// Where the window finds what became of work that fell over.
fn fallen_id() -> Id {
    Id::unique("work beside the window that fell over")
}

/// A sentence about work that fell over since this was last asked.
pub fn fallen(ctx: &Context) -> Option<String> {
    ctx.data_mut(|data| data.remove_temp::<String>(fallen_id()))
}

fn why(fell: &(dyn Any + Send)) -> String {
    let what = fell
        .downcast_ref::<&str>()
        .map(ToString::to_string)
        .or_else(|| fell.downcast_ref::<String>().cloned());
    let what = what.map(|what| format!(" ({what})")).unwrap_or_default();
    format!(
        "Work beside the window broke off, a fault of this program{what}; your design is safe: save it, and try again"
    )
}

/// What is said instead of what could not be made.
pub const FAULT: &str = "it could not be made: a fault of this program; your design is safe";

/// A panic in the typesetter becomes a sentence; the design is safe.
pub fn guarded<T>(make: impl FnOnce() -> Result<T, String>) -> Result<T, String> {
    catch_unwind(AssertUnwindSafe(make)).unwrap_or_else(|_| Err(FAULT.to_owned()))
}

/// A picture, or none where drawing it panics: a fault of this program, not worth the window.
pub fn drawn<T>(draw: impl FnOnce() -> T) -> Option<T> {
    catch_unwind(AssertUnwindSafe(draw)).ok()
}

/// A paper laid out, or a sentence that says why there is none.
pub fn sheets(design: &Design, wanted: Wanted) -> Result<Sheets, String> {
    let plain = PaperOptions::default();
    guarded(|| {
        let fonts = fonts_for(design);
        let made = match wanted.paper {
            Paper::Templates => {
                let options = TemplateOptions {
                    date: None,
                    measured: wanted.correction,
                    mirrored: wanted.mirrored,
                };
                template_sheets(design, &fonts, &options)
            }
            Paper::CutList => cut_list_sheets(design, &fonts, &plain),
            Paper::Work => work_sheets(design, &fonts, &plain),
            Paper::Setting => setting_sheets(design, &fonts, &plain),
            Paper::Card => card_sheets(design, &fonts, &plain),
        };
        made.map_err(|err| err.to_string())
    })
}

/// The card as PDF, or a sentence that says why there is none.
pub fn card_pdf(design: &Design) -> Result<Vec<u8>, String> {
    guarded(|| {
        card(design, &fonts_for(design), &PaperOptions::default()).map_err(|err| err.to_string())
    })
}

/// What goes into a folder.
pub struct ForFolder {
    /// Every file with its name.
    pub files: Vec<NewFile>,
    /// What is to be said of them, a sentence each.
    pub remarks: Vec<String>,
}

impl ForFolder {
    fn of(files: Vec<(String, Vec<u8>)>, remarks: Vec<String>) -> Self {
        let named = files.into_iter();
        Self {
            files: named.map(|(name, bytes)| NewFile { name, bytes }).collect(),
            remarks,
        }
    }
}

/// Every paper as files, with what was left out; or a sentence that says why there are none.
///
/// A design with an error is refused: what is wrong with it would be cut in wood. So is one without a
/// name, which stands on every sheet.
pub fn all_papers(design: &Design, options: &TemplateOptions) -> Result<ForFolder, String> {
    if let Some(fault) = first_error(design) {
        return Err(format!(
            "no papers are made of a design with an error: {fault}"
        ));
    }
    if design.title.trim().is_empty() {
        return Err("the box has no name: give it a title, it stands on every sheet".to_owned());
    }
    guarded(|| {
        latchwright_papers::all_papers(design, &fonts_for(design), options)
            .map(|papers| ForFolder::of(papers.files, papers.left_out))
            .map_err(|err| err.to_string())
    })
}

/// The printed parts of a design, its dials' words written with fonts; or a sentence a line that says
/// why there are none.
pub fn parts(design: &Design, options: &Options) -> Result<Vec<Part>, String> {
    guarded(|| {
        let options = Options {
            labels: labels(design),
            ..options.clone()
        };
        latchwright_solids::parts(design, &options).map_err(|faults| lines(&faults))
    })
}

/// The files of these parts, with what is to be known before printing.
pub fn files_of(design: &Design, parts: &[Part]) -> Result<ForFolder, String> {
    guarded(|| {
        let printer = &design.bench.printer;
        let files = latchwright_solids::files_of(parts, printer, design.title.trim())
            .map_err(|faults| lines(&faults))?;
        let warned = parts.iter().flat_map(|part| {
            let warnings = part.warnings.iter();
            warnings.map(move |warning| format!("{}: {}", part.name, warning.message))
        });
        Ok(ForFolder::of(files, warned.collect()))
    })
}

fn lines(faults: &[PartFault]) -> String {
    let all: Vec<String> = faults.iter().map(ToString::to_string).collect();
    all.join("\n")
}

/// The outlines of the words on the dials.
fn labels(design: &Design) -> Vec<Vec<Region>> {
    let words: String = design
        .dials
        .iter()
        .filter(|dial| matches!(dial.labels, Labels::Words(_)))
        .flat_map(|dial| (0..dial.positions.min(360)).map(|mark| dial.label(mark)))
        .collect();
    if words.is_empty() {
        return Vec::new();
    }
    let bundled = Fonts::bundled_files();
    let system = system_fonts::covering(&Fonts::bundled().missing(&words));
    // the second bundled file is the bold face, whose strokes print best
    let order = [1, 0].into_iter().chain(2..bundled.len());
    let mut fonts: Vec<&[u8]> = order
        .filter_map(|index| bundled.get(index).copied())
        .collect();
    fonts.extend(system.iter().map(Vec::as_slice));
    lettering(design, &fonts)
}

/// The first thing that is wrong with the numbers of a design.
fn first_error(design: &Design) -> Option<Fault> {
    let mut faults = validate::faults(design).into_iter();
    faults.find(|fault| fault.severity == Severity::Error)
}

/// The bundled fonts, and what the system has for letters they lack.
fn fonts_for(design: &Design) -> Fonts {
    let fonts = Fonts::bundled();
    let card = &design.card;
    let words = [&card.recipient, &card.greeting, &card.from, &design.title].map(String::as_str);
    let mut missing = fonts.missing(&words.concat());
    for dial in design.dials.iter().take(12) {
        let labels: String = (0..dial.positions.min(360))
            .map(|mark| dial.label(mark))
            .collect();
        missing.extend(fonts.missing(&labels));
    }
    if missing.is_empty() {
        fonts
    } else {
        Fonts::with_extra(system_fonts::covering(&missing))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn work_that_falls_over_is_told_once_and_leaves_the_job_free() {
        let ctx = Context::default();
        let mut job = Job::<()>::default();
        job.start(&ctx, || panic!("planted"));
        while job.busy() {
            assert!(job.poll().is_none());
            std::thread::yield_now();
        }
        let told = fallen(&ctx).expect("a sentence");
        assert!(told.contains("(planted); your design is safe"), "{told}");
        assert_eq!(fallen(&ctx), None);
    }
}
