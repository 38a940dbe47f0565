//! One latch as it was really built, at one moment of its use: every number that a design leaves
//! open, made definite.
//!
//! [`BuiltLatch`] holds the numbers, [`Moment`] says where they put pins, shafts and tab, and
//! [`Meeting`] what one pin does with its disc. The steps are those that a box is built in: places
//! are marked out and drilled, parts grow with the air about the middle of the guide, the slider
//! lies somewhere in the play that is left, a shaft somewhere in its bore.

use core::fmt;

mod meeting;
mod moment;

pub use meeting::{Entry, Meeting, Meets, Opening};
pub use moment::{Growth, Moment, Movement};

use latchwright_model::{Climate, Design, Dial, Slot};

/// All numbers of one built latch at one moment.
#[derive(Debug, Clone, PartialEq)]
pub struct BuiltLatch {
    /// The air of the moment.
    pub air: Climate,
    /// Error of the keeper's edge along y, mm.
    pub keeper: f64,
    /// Where the guide point at the front stands: a share of its play, −1 at the left to 1 at the
    /// right.
    pub front: f64,
    /// The same for the guide point at the back.
    pub back: f64,
    /// The dials, in the order of the design.
    pub dials: Vec<BuiltDial>,
}

/// The numbers of one dial, its disc and its pin.
#[derive(Debug, Clone, PartialEq)]
pub struct BuiltDial {
    /// Error of the pin's place on the slider along x and y, mm.
    pub pin: (f64, f64),
    /// Error of the bore's place in the plate along x and y, mm.
    pub bore: (f64, f64),
    /// Radius of the rim as made, mm.
    pub rim: f64,
    /// Radius of the pin as made, mm.
    pub pin_radius: f64,
    /// The slots as made, in the order of the design.
    pub slots: Vec<BuiltSlot>,
    /// How far the shaft stands off the middle of its bore along x and y, mm.
    pub shaft: (f64, f64),
    /// How far the pointer stands off its mark, degrees clockwise.
    pub reading: f64,
    /// How far the disc is turned on its key, degrees clockwise.
    pub backlash: f64,
}

/// One slot as made.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BuiltSlot {
    /// Between the walls, mm.
    pub width: f64,
    /// From the rim to the deepest point of the floor, mm.
    pub depth: f64,
    /// The chamfer down the wall, mm; 0 for none.
    pub lead_in: f64,
}

/// One number of a built latch, for showing and for building it again.
#[derive(Debug, Clone, PartialEq)]
pub struct Number {
    /// The dial it belongs to, from 0; `None` for the latch as a whole.
    pub dial: Option<usize>,
    /// The slot of that dial, from 0.
    pub slot: Option<usize>,
    /// What it is, in words.
    pub name: &'static str,
    /// Its value.
    pub value: f64,
    /// Its unit; empty for a share.
    pub unit: &'static str,
}

impl fmt::Display for Number {
    /// What it is and whose, without its value.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (self.dial, self.slot) {
            (Some(dial), Some(slot)) => {
                write!(f, "dial {}, slot {}: {}", dial + 1, slot + 1, self.name)
            }
            (Some(dial), None) => write!(f, "dial {}: {}", dial + 1, self.name),
            _ => f.write_str(self.name),
        }
    }
}

impl BuiltLatch {
    /// The latch with nothing off, in the air it was built in.
    pub fn nominal(design: &Design) -> Self {
        Self {
            air: design.season.built,
            keeper: 0.0,
            front: 0.0,
            back: 0.0,
            dials: design.dials.iter().map(BuiltDial::nominal).collect(),
        }
    }

    /// Every number of the latch and of the dials named (from 0), always in the same order: enough to
    /// build it again.
    pub fn numbers(&self, dials: impl IntoIterator<Item = usize>) -> Vec<Number> {
        let of = |name, value, unit| Number {
            dial: None,
            slot: None,
            name,
            value,
            unit,
        };
        let mut numbers = vec![
            of("temperature", self.air.celsius, "°C"),
            of("relative humidity", self.air.humidity, "%"),
            of("keeper off along y", self.keeper, "mm"),
            of("front of the guide, share of its play", self.front, ""),
            of("back of the guide, share of its play", self.back, ""),
        ];
        for index in dials {
            if let Some(dial) = self.dials.get(index) {
                dial.numbers(index, &mut numbers);
            }
        }
        numbers
    }
}

impl BuiltDial {
    fn nominal(dial: &Dial) -> Self {
        Self {
            pin: (0.0, 0.0),
            bore: (0.0, 0.0),
            rim: dial.disc.radius,
            pin_radius: dial.pin.diameter / 2.0,
            slots: dial.disc.slots.iter().map(BuiltSlot::nominal).collect(),
            shaft: (0.0, 0.0),
            reading: 0.0,
            backlash: 0.0,
        }
    }

    /// Middle of the pin from the middle of the disc when they touch at plain rim, mm.
    pub fn touches_at(&self) -> f64 {
        self.rim + self.pin_radius
    }

    fn numbers(&self, index: usize, numbers: &mut Vec<Number>) {
        let of = |slot, name, value, unit| Number {
            dial: Some(index),
            slot,
            name,
            value,
            unit,
        };
        let own = [
            ("pin off along x", self.pin.0, "mm"),
            ("pin off along y", self.pin.1, "mm"),
            ("bore off along x", self.bore.0, "mm"),
            ("bore off along y", self.bore.1, "mm"),
            ("rim radius", self.rim, "mm"),
            ("pin radius", self.pin_radius, "mm"),
            ("shaft in its bore along x", self.shaft.0, "mm"),
            ("shaft in its bore along y", self.shaft.1, "mm"),
            ("pointer off its mark", self.reading, "°"),
            ("disc turned on its key", self.backlash, "°"),
        ];
        numbers.extend(own.map(|(name, value, unit)| of(None, name, value, unit)));
        for (place, slot) in self.slots.iter().enumerate() {
            numbers.extend([
                of(Some(place), "slot width", slot.width, "mm"),
                of(Some(place), "slot depth", slot.depth, "mm"),
                of(Some(place), "lead-in", slot.lead_in, "mm"),
            ]);
        }
    }
}

impl BuiltSlot {
    fn nominal(slot: &Slot) -> Self {
        Self {
            width: slot.width,
            depth: slot.depth,
            lead_in: slot.lead_in,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_number_of_a_built_latch_is_told_once() {
        let mut built = BuiltLatch::nominal(&Design::default());
        let numbers = built.numbers(0..3);
        assert_eq!(numbers.len(), 5 + 3 * (10 + 3));
        let mut names: Vec<_> = numbers.iter().map(ToString::to_string).collect();
        names.sort();
        names.dedup();
        assert_eq!(names.len(), numbers.len(), "two numbers share a name");
        built.dials[2].slots[0].lead_in = 0.9;
        let numbers = built.numbers(0..3);
        let last = numbers
            .last()
            .map(|last| (last.to_string(), last.value, last.unit));
        assert_eq!(
            last,
            Some(("dial 3, slot 1: lead-in".to_owned(), 0.9, "mm"))
        );
    }
}
