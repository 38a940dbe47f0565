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

macro_rules! measures {
    ($($(#[$doc:meta])+ $name:ident = $code:literal, $unit:ident;)+) => {
        /// What a number of a built latch is.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Measure {
            $($(#[$doc])+ $name,)+
        }

        impl Measure {
            /// Every measure.
            pub const ALL: &[Self] = &[$(Self::$name),+];

            /// Its stable name for programs.
            pub const fn code(self) -> &'static str {
                match self {
                    $(Self::$name => $code,)+
                }
            }

            /// The unit of its values.
            pub const fn unit(self) -> MeasureUnit {
                match self {
                    $(Self::$name => MeasureUnit::$unit,)+
                }
            }
        }
    };
}

measures! {
    /// Temperature of the air.
    Temperature = "temperature", Celsius;
    /// Relative humidity of the air.
    Humidity = "relative humidity", Percent;
    /// Error of the keeper's edge along y.
    Keeper = "keeper off along y", Millimetre;
    /// Where the guide point at the front stands.
    Front = "front of the guide, share of its play", Share;
    /// Where the guide point at the back stands.
    Back = "back of the guide, share of its play", Share;
    /// Error of the pin's place along x.
    PinX = "pin off along x", Millimetre;
    /// Error of the pin's place along y.
    PinY = "pin off along y", Millimetre;
    /// Error of the bore's place along x.
    BoreX = "bore off along x", Millimetre;
    /// Error of the bore's place along y.
    BoreY = "bore off along y", Millimetre;
    /// Radius of the rim.
    Rim = "rim radius", Millimetre;
    /// Radius of the pin.
    PinRadius = "pin radius", Millimetre;
    /// The shaft off the middle of its bore along x.
    ShaftX = "shaft in its bore along x", Millimetre;
    /// The shaft off the middle of its bore along y.
    ShaftY = "shaft in its bore along y", Millimetre;
    /// How far the pointer stands off its mark.
    Reading = "pointer off its mark", Degree;
    /// How far the disc is turned on its key.
    Backlash = "disc turned on its key", Degree;
    /// Width of a slot.
    SlotWidth = "slot width", Millimetre;
    /// Depth of a slot.
    SlotDepth = "slot depth", Millimetre;
    /// Lead-in of a slot.
    LeadIn = "lead-in", Millimetre;
}

/// The unit of a measure.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum MeasureUnit {
    /// Degrees Celsius.
    Celsius,
    /// Per cent.
    Percent,
    /// Millimetres.
    Millimetre,
    /// Degrees of turn.
    Degree,
    /// A share from −1 to 1.
    Share,
}

/// One number of a built latch, for showing and for building it again.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Number {
    /// The dial it belongs to, from 0; `None` for the latch as a whole.
    pub dial: Option<usize>,
    /// The slot of that dial, from 0.
    pub slot: Option<usize>,
    /// What it is.
    pub measure: Measure,
    /// Its value, in the measure's unit.
    pub value: f64,
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
        let own = [
            (Measure::Temperature, self.air.celsius),
            (Measure::Humidity, self.air.humidity),
            (Measure::Keeper, self.keeper),
            (Measure::Front, self.front),
            (Measure::Back, self.back),
        ];
        let mut numbers: Vec<Number> = own
            .map(|(measure, value)| Number {
                dial: None,
                slot: None,
                measure,
                value,
            })
            .to_vec();
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
        let of = |slot, measure, value| Number {
            dial: Some(index),
            slot,
            measure,
            value,
        };
        let own = [
            (Measure::PinX, self.pin.0),
            (Measure::PinY, self.pin.1),
            (Measure::BoreX, self.bore.0),
            (Measure::BoreY, self.bore.1),
            (Measure::Rim, self.rim),
            (Measure::PinRadius, self.pin_radius),
            (Measure::ShaftX, self.shaft.0),
            (Measure::ShaftY, self.shaft.1),
            (Measure::Reading, self.reading),
            (Measure::Backlash, self.backlash),
        ];
        numbers.extend(own.map(|(measure, value)| of(None, measure, value)));
        for (place, slot) in self.slots.iter().enumerate() {
            numbers.extend([
                of(Some(place), Measure::SlotWidth, slot.width),
                of(Some(place), Measure::SlotDepth, slot.depth),
                of(Some(place), Measure::LeadIn, slot.lead_in),
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
        let mut told: Vec<_> = numbers
            .iter()
            .map(|number| (number.dial, number.slot, number.measure))
            .collect();
        told.sort_unstable();
        told.dedup();
        assert_eq!(told.len(), numbers.len(), "two numbers are the same");
        built.dials[2].slots[0].lead_in = 0.9;
        assert_eq!(
            built.numbers(0..3).last(),
            Some(&Number {
                dial: Some(2),
                slot: Some(0),
                measure: Measure::LeadIn,
                value: 0.9
            })
        );
    }
}
