//! Why a handle on the plan lies where it does, as values and in words.

use latchwright_model::{Design, Units};
use latchwright_proof::check::{near::Axis, near::Keeps};
use latchwright_session::units::show_length_unit;
use latchwright_workshop::set_out::Because;

use crate::edit::Handle;
use crate::words::length;

/// Why it lies on a line, with the distance that is told of it, mm. Dials count from 0.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Reason {
    /// In the middle of the lid.
    MiddleOfTheLid,
    /// In line with a dial, as far from it.
    InLine {
        /// The other dial.
        dial: usize,
        /// Between the two; none for the tab, which is not told.
        apart: Option<f64>,
    },
    /// As far from the middle as this dial on the other side.
    Opposite(usize),
    /// Half-way between two dials.
    Midway {
        /// One.
        one: usize,
        /// The other.
        other: usize,
        /// To each.
        apart: f64,
    },
    /// As far from a dial as another one is.
    Evenly {
        /// From this one.
        from: usize,
        /// As this one.
        as_is: usize,
        /// Between each two.
        apart: f64,
    },
    /// As near to a dial as may be.
    Beside(usize, Keeps),
    /// As near to the edge as wood beside a bit of this diameter lets it.
    Edge(f64),
    /// As near to the finger knob's slot as wood beside a bit of this diameter lets it.
    Slot(f64),
    /// In line with the guide.
    Guide,
    /// In line with the finger knob.
    FingerKnob,
    /// Where it was.
    AsItWas,
}

impl Reason {
    /// Why `handle` lies on a line across `axis`.
    pub fn of(design: &Design, handle: Handle, axis: Axis, because: Because) -> Self {
        match because {
            Because::Middle => Self::MiddleOfTheLid,
            Because::InLine(dial) => Self::InLine {
                dial,
                apart: match handle {
                    Handle::Dial(_) => Some(apart(design, handle, across(axis), dial)),
                    Handle::Tab => None,
                },
            },
            Because::Opposite(dial) => Self::Opposite(dial),
            Because::Midway(one, other) => Self::Midway {
                one,
                other,
                apart: apart(design, handle, axis, one),
            },
            Because::Evenly { from, as_is } => Self::Evenly {
                from,
                as_is,
                apart: apart(design, handle, axis, from),
            },
            Because::Beside(dial, keeps) => Self::Beside(dial, keeps),
            Because::Edge(bit) => Self::Edge(bit),
            Because::Slot(bit) => Self::Slot(bit),
            Because::Guide => Self::Guide,
            Because::FingerKnob => Self::FingerKnob,
            Because::AsItWas => Self::AsItWas,
        }
    }

    /// It in words.
    pub fn words(self, units: Units) -> String {
        match self {
            Self::MiddleOfTheLid => "middle of the lid".to_owned(),
            Self::InLine { dial, apart: None } => format!("in line with dial {}", dial + 1),
            Self::InLine {
                dial,
                apart: Some(apart),
            } => {
                let apart = length(apart, units);
                format!("in line with dial {}, {apart} from it", dial + 1)
            }
            Self::Opposite(dial) => format!("opposite dial {}", dial + 1),
            Self::Midway { one, other, apart } => format!(
                "half-way between dials {} and {}, {} from each",
                one + 1,
                other + 1,
                length(apart, units)
            ),
            Self::Evenly { from, as_is, apart } => format!(
                "{} from dial {}, as dial {} is",
                length(apart, units),
                from + 1,
                as_is + 1
            ),
            Self::Beside(dial, keeps) => {
                let why = match keeps {
                    Keeps::Discs => "the discs let it",
                    Keeps::Fingers => "fingers between the knobs let it",
                    Keeps::Wood => "wood between the bores lets it",
                };
                format!("as near to dial {} as {why}", dial + 1)
            }
            Self::Edge(bit) => format!(
                "as near to the edge as wood beside a {} bit lets it",
                show_length_unit(bit, units)
            ),
            Self::Slot(bit) => format!(
                "as near to the finger knob's slot as wood beside a {} bit lets it",
                show_length_unit(bit, units)
            ),
            Self::Guide => "in line with the guide".to_owned(),
            Self::FingerKnob => "in line with the finger knob".to_owned(),
            Self::AsItWas => "as it was".to_owned(),
        }
    }
}

fn across(axis: Axis) -> Axis {
    match axis {
        Axis::X => Axis::Y,
        Axis::Y => Axis::X,
    }
}

/// How far a handle is from a dial along an axis, mm; the tab counts across the lid alone.
fn apart(design: &Design, handle: Handle, axis: Axis, from: usize) -> f64 {
    let centre = |dial: usize| {
        let dial = design.dials.get(dial);
        dial.map_or((0.0, 0.0), |dial| dial.centre)
    };
    let (one, other) = match handle {
        Handle::Dial(dial) => (centre(dial), centre(from)),
        Handle::Tab => ((design.tab.at, 0.0), (centre(from).0, 0.0)),
    };
    match axis {
        Axis::X => (one.0 - other.0).abs(),
        Axis::Y => (one.1 - other.1).abs(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_reason_holds_its_figure_and_speaks_the_makers_unit() {
        let design = Design::default();
        let (one, other) = (design.dials[0].centre, design.dials[1].centre);
        let reason = Reason::of(&design, Handle::Dial(0), Axis::Y, Because::InLine(1));
        let apart = (one.0 - other.0).abs();
        assert_eq!(
            reason,
            Reason::InLine {
                dial: 1,
                apart: Some(apart)
            }
        );
        let said = reason.words(Units::Inch);
        assert!(said.ends_with(" in from it"), "{said}");
        let tab = Reason::of(&design, Handle::Tab, Axis::X, Because::InLine(1));
        assert_eq!(tab.words(Units::Millimetre), "in line with dial 2");
    }
}
