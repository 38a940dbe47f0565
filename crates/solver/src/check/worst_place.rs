//! The worst real box found for room between parts: places in the plate, and a pin beside a disc.

use latchwright_geometry::trig;

use super::Sums;
use crate::built::BuiltLatch;
use crate::proof::Check;
use crate::worst::figure::OfSlider;
use crate::worst::judge::Found;
use crate::worst::lie::Moment;
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
    (from, to): (usize, To),
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
        let play = design
            .dials
            .get(index)
            .map_or(0.0, |dial| dial.bore.shaft_play);
        if let Some(dial) = latch.dials.get_mut(index) {
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
    let measure = move |moment: &Moment<'_>, latch: &BuiltLatch| {
        let at = |index: usize| {
            let built = latch.dials.get(index)?;
            let (x, y) = moment.bore(design.dials.get(index)?, built);
            Some(if discs {
                (x + built.shaft.0, y + built.shaft.1)
            } else {
                (x, y)
            })
        };
        let rim = |index: usize| match latch.dials.get(index) {
            Some(built) if discs => built.rim,
            _ => 0.0,
        };
        let (x, y) = at(from)?;
        let (to_x, to_y) = match to {
            To::Dial(other) => at(other)?,
            To::Place(x, y) => moment.on_plate((x, y)),
        };
        let rims = rim(from) + other.map_or(0.0, rim);
        Some(trig::hypot(to_x - x, to_y - y) - rims - taken)
    };
    check.at_worst(builder, [latch], &dials, &measure)
}

/// The air in which the plate is smallest.
fn driest(sums: &Sums<'_>) -> Option<Found> {
    let x = sums.least(OfSlider::PlateX, 0.0)?;
    let y = sums.least(OfSlider::PlateY, 0.0)?;
    Some(if x.bound < y.bound { x } else { y })
}

/// Least distance from the disc of dial `disc` to the pin of dial `pin`, at the box found.
pub(super) fn beside_pin(
    sums: &Sums<'_>,
    (disc, pin): (usize, usize),
    found: &Found,
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
    let between = move |moment: &Moment<'_>, latch: &BuiltLatch| {
        let of = |index: usize| Some((design.dials.get(index)?, latch.dials.get(index)?));
        let (x, y) = moment.pin(of(pin)?, of(disc)?);
        // nearest where the slider has brought the pin level with the disc, or as near as it gets
        Some((x, y + (-y).clamp(0.0, travel)))
    };
    if let Some((x, y)) = between(&builder.moment(&latch), &latch)
        && let Some(dial) = design.dials.get(disc)
        && let Some(built) = latch.dials.get_mut(disc)
    {
        let far = trig::hypot(x, y).max(1e-9);
        let play = dial.bore.shaft_play;
        built.shaft = (play * x / far, play * y / far);
    }
    let measure = move |moment: &Moment<'_>, latch: &BuiltLatch| {
        let (x, y) = between(moment, latch)?;
        let solid = latch.dials.get(disc)?.rim + latch.dials.get(pin)?.pin_radius;
        Some(trig::hypot(x, y) - solid)
    };
    check.at_worst(builder, [latch], &[disc, pin], &measure)
}
