//! Printed parts of a design, with the words on its dials, and their files.

use std::ops::ControlFlow;

use latchwright_model::{Design, Labels};
use latchwright_papers::Fonts;
use latchwright_proof::tick::{self, Tick};
use latchwright_solids::{Options, Part, Region, Warning};
use latchwright_words::solids::warning;

use super::{ForFolder, ProductError, guarded};
use crate::lettering::lettering;
use crate::system_fonts;

/// The printed parts of a design, its dials' words written with fonts; or why there are none.
pub fn parts(design: &Design, options: &Options) -> Result<Vec<Part>, ProductError> {
    let ControlFlow::Continue(made) = parts_with_tick(design, options, &mut tick::on);
    made
}

/// As [`parts`]; `tick` is told before each part how far the work is, and where it says stop there are none.
pub fn parts_with_tick<Stop>(
    design: &Design,
    options: &Options,
    tick: &mut Tick<'_, Stop>,
) -> ControlFlow<Stop, Result<Vec<Part>, ProductError>> {
    let made = guarded(|| {
        let options = Options {
            labels: labels(design),
            ..options.clone()
        };
        Ok(latchwright_solids::parts_with_tick(design, &options, tick))
    });
    match made {
        Ok(made) => made.map_continue(|made| made.map_err(ProductError::Parts)),
        Err(why) => ControlFlow::Continue(Err(why)),
    }
}

/// The files of these parts, with what is to be known before printing.
pub fn files_of(design: &Design, parts: &[Part]) -> Result<ForFolder, ProductError> {
    guarded(|| {
        let (printer, units) = (&design.bench.printer, design.units);
        let say = |one: &Warning| warning(one, units);
        let files = latchwright_solids::files_of(parts, printer, design.title.trim(), say)
            .map_err(ProductError::Parts)?;
        let warned = parts.iter().flat_map(|part| {
            let warnings = part.warnings.iter();
            warnings.map(move |one| format!("{}: {}", part.name, say(one)))
        });
        Ok(ForFolder::of(files, warned.collect()))
    })
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
