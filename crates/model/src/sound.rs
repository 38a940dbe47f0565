//! A design in which sums can be made, and one that can be shown whatever was typed: both made once, at the
//! border, so that nothing behind it has to invent a number.

use std::borrow::Cow;

use crate::change::AirSize;
use crate::wood::Mover;
use crate::{Design, Fault, Size, Unit};

/// A design that is sound: at least one dial, each with a slot; every number within the range in which it
/// means something; every wood known.
#[derive(Debug, Clone, Copy)]
pub struct Sound<'a> {
    design: &'a Design,
    movers: Movers,
}

/// What makes plate and slider move along x and y.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Movers {
    /// The plate along x.
    pub plate_x: Mover,
    /// The plate along y.
    pub plate_y: Mover,
    /// The slider along x.
    pub slider_x: Mover,
    /// The slider along y.
    pub slider_y: Mover,
}

impl<'a> Sound<'a> {
    /// `design` with its `faults`, as [`crate::validate::faults`] gives them; `None` where one of them
    /// leaves no sums to be made.
    pub fn of(design: &'a Design, faults: &[Fault]) -> Option<Self> {
        let spoilt = faults.iter().any(|fault| fault.kind.spoils_sums());
        let mut dials = design.dials.iter();
        let slotted = dials.all(|dial| !dial.disc.slots.is_empty());
        if spoilt || !slotted || design.dials.is_empty() {
            return None;
        }
        Some(Self {
            design,
            movers: Movers {
                plate_x: Mover::of_plate(design, true)?,
                plate_y: Mover::of_plate(design, false)?,
                slider_x: Mover::of_slider(design, true)?,
                slider_y: Mover::of_slider(design, false)?,
            },
        })
    }

    /// The design.
    pub fn design(&self) -> &'a Design {
        self.design
    }

    /// What makes its plate and slider move.
    pub fn movers(&self) -> Movers {
        self.movers
    }
}

/// Beyond this, mm or whatever a number measures, nothing is drawn or reckoned: more than twice the longest
/// board that a design may have. Larger, and squares of it lose the millimetres beside it.
const FURTHEST: f64 = 50_000.0;

/// Most dials, slots, boards, bits and woods that are shown; more than any lid or bench holds, so that lists
/// of a hostile file cost no time.
const MOST: usize = 64;

/// A number brought within what can be shown; one that is none is nought.
pub fn within(value: f64) -> f64 {
    if value.is_nan() {
        0.0
    } else {
        value.clamp(-FURTHEST, FURTHEST)
    }
}

/// `design` as it can be shown: numbers that are none or out of all proportion brought within bounds, lists
/// cut to what a lid or a bench could hold; a design that makes sense passes untouched and uncopied.
///
/// What is wrong with it is told by its faults; this only keeps drawings and lists of it finite.
pub fn shown(design: &Design) -> Cow<'_, Design> {
    let bench = &design.bench;
    let short = |length: usize| length <= MOST;
    let mut dials = design.dials.iter();
    let lists_are_short = dials.all(|dial| short(dial.disc.slots.len()))
        && [
            design.dials.len(),
            design.combination.len(),
            design.own_woods.len(),
            bench.boards.len(),
            bench.bits.len(),
            bench.printer.holes.len(),
        ]
        .into_iter()
        .all(short);
    if lists_are_short && sizes(design).all(|size| is_within(size, design)) {
        return Cow::Borrowed(design);
    }
    let mut shown = design.clone();
    shown.dials.truncate(MOST);
    for dial in &mut shown.dials {
        dial.disc.slots.truncate(MOST);
    }
    shown.combination.truncate(MOST);
    shown.own_woods.truncate(MOST);
    shown.bench.boards.truncate(MOST);
    shown.bench.bits.truncate(MOST);
    shown.bench.printer.holes.truncate(MOST);
    let off: Vec<Size> = sizes(&shown)
        .filter(|size| !is_within(*size, &shown))
        .collect();
    for size in off {
        if let Some(value) = size.get(&shown) {
            let (least, most) = bounds(size);
            size.set(&mut shown, within(value).clamp(least, most));
        }
    }
    Cow::Owned(shown)
}

fn sizes(design: &Design) -> impl Iterator<Item = Size> {
    Size::all(design).into_iter().chain(Size::beside(design))
}

fn is_within(size: Size, design: &Design) -> bool {
    let (least, most) = bounds(size);
    let value = size.get(design);
    value.is_none_or(|value| (least..=most).contains(&value))
}

/// Between what a number can be shown. Marks, flats and digits are bounded where they are laid out.
fn bounds(size: Size) -> (f64, f64) {
    match size {
        Size::Air(AirSize::BuiltCelsius | AirSize::DriestCelsius | AirSize::DampestCelsius) => {
            (-30.0, 60.0)
        }
        Size::Air(AirSize::BuiltHumidity | AirSize::DriestHumidity | AirSize::DampestHumidity) => {
            (0.0, 100.0)
        }
        Size::BoardCount(_) => (0.0, 1_000.0),
        _ if size.unit() == Unit::Count => (f64::NEG_INFINITY, f64::INFINITY),
        _ => (-FURTHEST, FURTHEST),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::validate::faults;

    fn is_sound(design: &Design) -> bool {
        Sound::of(design, &faults(design)).is_some()
    }

    #[test]
    fn only_what_sums_can_be_made_of_is_sound() {
        assert!(is_sound(&Design::default()));
        let spoils: [fn(&mut Design); 6] = [
            |design| design.dials.clear(),
            |design| design.dials[1].disc.slots.clear(),
            |design| design.plate.wood = "no such tree".to_owned(),
            |design| design.slider.travel = f64::NAN,
            |design| design.dials[0].pin.diameter = 0.0,
            |design| design.season.dampest.humidity = 120.0,
        ];
        for spoil in spoils {
            let mut design = Design::default();
            spoil(&mut design);
            assert!(!is_sound(&design), "{design:?}");
        }
    }

    #[test]
    fn a_fault_that_leaves_the_numbers_alone_leaves_the_design_sound() {
        let mut design = Design::default();
        design.tab.required_hold = design.tab.engagement + 1.0;
        assert!(!faults(&design).is_empty());
        assert!(is_sound(&design));
    }

    #[test]
    fn a_design_that_makes_sense_is_shown_as_it_is() {
        assert!(matches!(shown(&Design::default()), Cow::Borrowed(_)));
    }

    #[test]
    fn every_number_out_of_proportion_is_brought_within_bounds() {
        let usual = Design::default();
        let mut tried = 0;
        for size in sizes(&usual).filter(|size| size.unit() != Unit::Count) {
            for value in [1e300, -1e300] {
                let mut design = usual.clone();
                assert!(size.set(&mut design, value));
                let (least, most) = bounds(size);
                let expected = value.clamp(least, most);
                assert_eq!(size.get(&shown(&design)), Some(expected), "{size:?}");
                tried += 1;
            }
        }
        assert!(tried > 200, "{tried}");
        let mut design = usual;
        design.plate.width = f64::NAN;
        design.dials[1].disc.slots[0].depth = f64::INFINITY;
        design.dials = vec![design.dials[1].clone(); 1000];
        let shown = shown(&design);
        assert_eq!((shown.plate.width, shown.dials.len()), (0.0, MOST));
        assert_eq!(shown.dials[0].disc.slots[0].depth, FURTHEST);
    }
}
