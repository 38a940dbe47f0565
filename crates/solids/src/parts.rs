//! From a design to all its printed parts.

use core::ops::ControlFlow;

use latchwright_model::Design;
use latchwright_model::validate::faults;
use latchwright_model::{Fault, KeeperMake};
use latchwright_proof::tick::{self, Tick};

use crate::fault::PartFault;
use crate::options::Options;
use crate::part::{self, Kind, LEAST_LABEL, Part, Shop};
use crate::warning::Warning;

/// All parts of `design` that are not of wood, each lying as it is to be printed; in a fixed order:
/// dial by dial disc, knob, ring, washer, pin; then slider or pin strip, slider knob, keeper if it is printed, jig,
/// gauge.
///
/// # Errors
/// All faults that stand in the way, so that nothing is written by halves: faults of the design
/// itself, options out of range, walls too thin, a recess through the knob, parts larger than the
/// bed. A jig or gauge that is larger is left out and told of ([`Warning::LeftOut`]).
pub fn parts(design: &Design, options: &Options) -> Result<Vec<Part>, Vec<PartFault>> {
    let ControlFlow::Continue(made) = parts_with_tick(design, options, &mut tick::on);
    made
}

/// As [`parts`]; `tick` is told before each part how far the work is, and where it says stop there are none. The
/// longest part, a ring with 360 labels, takes a second.
///
/// # Errors
/// As [`parts`].
pub fn parts_with_tick<Stop>(
    design: &Design,
    options: &Options,
    tick: &mut Tick<'_, Stop>,
) -> ControlFlow<Stop, Result<Vec<Part>, Vec<PartFault>>> {
    let mut wrong = options.faults();
    wrong.extend(
        faults(design)
            .into_iter()
            .filter(Fault::is_error)
            .map(PartFault::Design),
    );
    if !wrong.is_empty() {
        return ControlFlow::Continue(Err(wrong));
    }
    let shop = Shop::new(design, options);
    // five of each dial, and as many of the latch as a whole
    let most = 5.0 * (design.dials.len() + 1) as f64;
    let mut next = |made: usize| tick((made as f64 / most).min(1.0));
    let mut made: Vec<Result<Option<Part>, PartFault>> = Vec::new();
    for (index, dial) in design.dials.iter().enumerate() {
        for kind in [Kind::Disc, Kind::Knob, Kind::Ring, Kind::Washer, Kind::Pin] {
            if !options.wants(kind) {
                continue;
            }
            next(made.len())?;
            let result = match kind {
                Kind::Disc => part::disc(&shop, index, dial).map(Some),
                Kind::Knob => part::knob(&shop, index, dial).map(Some),
                Kind::Ring => part::ring(&shop, index, dial),
                Kind::Washer => part::washer(&shop, index, dial),
                _ => part::pin(&shop, index, dial),
            };
            if kind == Kind::Ring && matches!(result, Ok(None)) {
                without_ring(index, &mut made);
            }
            made.push(result);
        }
    }
    next(made.len())?;
    if shop.printed_slider() {
        made.push(part::slider(&shop).map(Some));
    } else if shop.strip() && options.wants(Kind::Pin) {
        made.push(part::pin_strip(&shop).map(Some));
    }
    if options.wants(Kind::SliderKnob) {
        next(made.len())?;
        made.push(part::slider_knob(&shop).map(Some));
    }
    if options.wants(Kind::Keeper) && design.keeper.make == KeeperMake::Printed {
        next(made.len())?;
        made.push(part::keeper(&shop).map(Some));
    }
    if options.wants(Kind::Jig) {
        next(made.len())?;
        made.extend(part::jigs(&shop).into_iter().map(|jig| jig.map(Some)));
    }
    if options.wants(Kind::Gauge) {
        next(made.len())?;
        made.push(part::gauge(&shop).map(Some));
    }
    ControlFlow::Continue(all_or_faults(made))
}

/// All that was made, or all that stands in the way. A jig or gauge larger than the bed does not: it is left out, which the
/// last part that is made tells.
fn all_or_faults(made: Vec<Result<Option<Part>, PartFault>>) -> Result<Vec<Part>, Vec<PartFault>> {
    let (mut parts, mut wrong, mut left_out) = (Vec::new(), Vec::new(), Vec::new());
    for result in made {
        match result {
            Ok(part) => parts.extend(part),
            Err(PartFault::LargerThanBed {
                part,
                size_mm,
                bed_mm,
            }) if matches!(part.kind, Kind::Jig | Kind::Gauge) => {
                left_out.push(Warning::LeftOut {
                    part,
                    size: size_mm,
                    bed: bed_mm,
                });
            }
            Err(fault) => wrong.push(fault),
        }
    }
    if !wrong.is_empty() {
        return Err(wrong);
    }
    if let Some(last) = parts.last_mut() {
        last.warnings.extend(left_out);
    }
    Ok(parts)
}

/// Says on the knob of dial `index` that it has no ring.
fn without_ring(index: usize, made: &mut [Result<Option<Part>, PartFault>]) {
    let knob = made
        .iter_mut()
        .filter_map(|result| result.as_mut().ok()?.as_mut());
    let mine = |part: &&mut Part| part.kind == Kind::Knob && part.dial == Some(index);
    if let Some(knob) = knob.rev().find(mine) {
        knob.warnings.push(Warning::NoRing { least: LEAST_LABEL });
    }
}
