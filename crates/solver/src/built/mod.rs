//! One latch as it was really built, at one moment of its use: every number that a design leaves
//! open, made definite.
//!
//! [`BuiltLatch`] holds the numbers, [`Moment`] says where they put pins, shafts and tab, and
//! [`Meeting`] what one pin does with its disc. The steps are those that a box is built in: places
//! are marked out and drilled, parts grow with the air about the middle of the guide, the slider
//! lies somewhere in the play that is left, a shaft somewhere in its bore.

mod meeting;
mod moment;

pub use meeting::{Entry, Meeting, Meets, Opening};
pub use moment::{Growth, Moment, Movement};

use crate::model::{Climate, Design, Dial, Slot};

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

/// One number of a built latch: what it is, its value, its unit.
pub type Number = (String, f64, &'static str);

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

    /// Every number with its name and unit, always in the same order: enough to build the latch again.
    pub fn numbers(&self) -> Vec<Number> {
        let mut numbers = vec![
            ("temperature".to_owned(), self.air.celsius, "°C"),
            ("relative humidity".to_owned(), self.air.humidity, "%"),
            ("keeper's edge off along y".to_owned(), self.keeper, "mm"),
            (
                "guide point at the front, to the right".to_owned(),
                self.front,
                "of its play",
            ),
            (
                "guide point at the back, to the right".to_owned(),
                self.back,
                "of its play",
            ),
        ];
        for (dial, number) in self.dials.iter().zip(1_usize..) {
            dial.numbers(number, &mut numbers);
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

    fn numbers(&self, number: usize, numbers: &mut Vec<Number>) {
        let own = [
            ("pin off along x", self.pin.0, "mm"),
            ("pin off along y", self.pin.1, "mm"),
            ("bore off along x", self.bore.0, "mm"),
            ("bore off along y", self.bore.1, "mm"),
            ("rim radius", self.rim, "mm"),
            ("pin radius", self.pin_radius, "mm"),
            ("shaft off along x", self.shaft.0, "mm"),
            ("shaft off along y", self.shaft.1, "mm"),
            ("pointer off its mark, clockwise", self.reading, "°"),
            ("disc turned on its key, clockwise", self.backlash, "°"),
        ];
        let named = |(what, value, unit)| (format!("dial {number}: {what}"), value, unit);
        numbers.extend(own.map(named));
        for (slot, place) in self.slots.iter().zip(1_usize..) {
            let own = [
                ("width", slot.width),
                ("depth", slot.depth),
                ("lead-in", slot.lead_in),
            ];
            let named =
                |(what, value)| (format!("dial {number}, slot {place}: {what}"), value, "mm");
            numbers.extend(own.map(named));
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
        let numbers = built.numbers();
        assert_eq!(numbers.len(), 5 + 3 * (10 + 3));
        let mut names: Vec<_> = numbers.iter().map(|(name, ..)| name.clone()).collect();
        names.sort();
        names.dedup();
        assert_eq!(names.len(), numbers.len(), "two numbers share a name");
        built.dials[2].slots[0].lead_in = 0.9;
        assert_eq!(
            built.numbers().last(),
            Some(&("dial 3, slot 1: lead-in".to_owned(), 0.9, "mm"))
        );
    }
}
