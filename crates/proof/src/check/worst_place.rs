//! The worst real box found for room between parts: places in the plate, and a pin beside a disc.

use latchwright_geometry::{Point, trig};

use super::Sums;
use crate::built::Moment;
use crate::results::Check;
use crate::worst::figure::SliderFigureKind;
use crate::worst::judge::LeastOverBoxes;
use crate::worst::witness::Off;

/// The other end of a distance in the plate that begins at a dial's bore.
#[derive(Debug, Clone, Copy)]
pub(super) enum To {
    /// Another dial's bore.
    Dial(usize),
    /// A place that was marked on the plate, mm.
    Place(f64, f64),
}

/// Least distance in the plate from the bore of dial `from`, less `taken` mm; with discs, less
/// their rims and the play of their shafts too.
pub(super) fn in_plate(
    sums: &Sums<'_>,
    from: usize,
    to: To,
    taken: f64,
    discs: bool,
    check: Check,
) -> Check {
    let Some(builder) = &sums.builder else {
        return check;
    };
    let design = sums.design;
    let Some(start) = design.dials.get(from) else {
        return check;
    };
    let end = match to {
        To::Dial(other) => match design.dials.get(other) {
            Some(dial) => dial.centre,
            None => return check,
        },
        To::Place(x, y) => (x, y),
    };
    let Some(driest) = driest(sums) else {
        return check;
    };
    let mut latch = builder.latch(&driest.at, None, None);
    let away = (end.0 - start.centre.0, end.1 - start.centre.1);
    let (share, other) = match to {
        To::Dial(other) => (0.5, Some(other)),
        To::Place(..) => (1.0, None),
    };
    let place = design.workmanship.bore_place;
    let lean = |length: f64| (length * share).clamp(-place, place);
    let towards = (lean(away.0), lean(away.1));
    let left = (away.0 - towards.0 / share, away.1 - towards.1 / share);
    let far = trig::hypot(left.0, left.1);
    let mut put = |index: usize, way: f64| {
        if discs {
            let off = Off {
                rim: 1.0,
                ..Off::default()
            };
            builder.put_off(&mut latch, index, off);
        }
        if let (Some(drawn), Some(dial)) = (design.dials.get(index), latch.dials.get_mut(index)) {
            let play = drawn.bore.shaft_play;
            dial.bore = (way * towards.0, way * towards.1);
            if discs && far > 0.0 {
                dial.shaft = (way * play * left.0 / far, way * play * left.1 / far);
            }
        }
    };
    put(from, 1.0);
    let mut dials = vec![from];
    if let Some(other) = other {
        put(other, -1.0);
        dials.push(other);
    }
    let measure = move |moment: &Moment<'_>| {
        let at = |index: usize| {
            let (x, y) = moment.built().dials.get(index)?.shaft;
            let shaft = if discs {
                Point::new(x, y)
            } else {
                Point::default()
            };
            Some(moment.bore(index)? + shaft)
        };
        let rim = |index: usize| match moment.built().dials.get(index) {
            Some(built) if discs => built.rim,
            _ => 0.0,
        };
        let end = match to {
            To::Dial(other) => at(other)?,
            To::Place(x, y) => moment.on_plate(Point::new(x, y)),
        };
        let rims = rim(from) + other.map_or(0.0, rim);
        Some(at(from)?.distance(end) - rims - taken)
    };
    check.at_worst(builder, [latch], &dials, &measure)
}

/// The air in which the plate is smallest.
fn driest(sums: &Sums<'_>) -> Option<LeastOverBoxes> {
    let x = sums.slider_worst.get(SliderFigureKind::PlateX)?;
    let y = sums.slider_worst.get(SliderFigureKind::PlateY)?;
    Some(if x.bound < y.bound { x } else { y })
}

/// Least distance from the disc of dial `disc` to the pin of dial `pin`, at the box found.
pub(super) fn beside_pin(
    sums: &Sums<'_>,
    disc: usize,
    pin: usize,
    found: &LeastOverBoxes,
    check: Check,
) -> Check {
    let Some(builder) = &sums.builder else {
        return check;
    };
    let design = sums.design;
    let travel = design.slider.travel;
    let mut latch = builder.latch(&found.at, Some(pin), Some(disc));
    let off = |rim: f64, pin: f64| Off {
        rim,
        pin,
        ..Off::default()
    };
    builder.put_off(&mut latch, disc, off(1.0, 0.0));
    builder.put_off(&mut latch, pin, off(0.0, 1.0));
    // nearest where the slider has brought the pin level with the disc, or as near as it gets
    let between = move |moment: &Moment<'_>| {
        let at = moment.pin_from(pin, disc)?;
        Some(at + Point::new(0.0, (-at.y).clamp(0.0, travel)))
    };
    if let Some(at) = between(&builder.moment(&latch))
        && let Some(dial) = design.dials.get(disc)
        && let Some(built) = latch.dials.get_mut(disc)
    {
        let far = at.length().max(1e-9);
        let play = dial.bore.shaft_play;
        built.shaft = (play * at.x / far, play * at.y / far);
    }
    let measure = move |moment: &Moment<'_>| {
        let dials = &moment.built().dials;
        let solid = dials.get(disc)?.rim + dials.get(pin)?.pin_radius;
        Some(between(moment)?.length() - solid)
    };
    check.at_worst(builder, [latch], &[disc, pin], &measure)
}
