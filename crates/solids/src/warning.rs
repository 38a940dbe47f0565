//! What is to be known about a part before it is printed, as values.

use latchwright_model::PinMake;

use crate::part::PartId;

/// Something to know about a part before it is printed. Lengths are in mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Warning {
    /// A standing pin whose layers would shear.
    StandingPin {
        /// The dial, from 0, where the part has several pins.
        dial: Option<usize>,
        /// How far it stands free.
        free: f64,
        /// Its diameter.
        diameter: f64,
        /// So many diameters would be the most.
        most_diameters: f64,
    },
    /// A pin is to be set into its socket.
    PinSetIn {
        /// What the pin is.
        make: PinMake,
        /// Of which dial, from 0.
        dial: usize,
        /// How long it is.
        long: f64,
    },
    /// How a strip of pins is let into the slider.
    UseOfStrip {
        /// Depth of the lap.
        deep: f64,
        /// Width of the lap.
        wide: f64,
    },
    /// How the drilling jig is laid on.
    UseOfJig {
        /// Where its notch goes, from the middle of the front edge to the right, seen from outside.
        notch: f64,
    },
    /// How the gauge is printed and measured.
    UseOfGauge {
        /// Width of its bar.
        width: f64,
    },
    /// Too little face is left for the screw's thread.
    NoPilot {
        /// What is left.
        face: f64,
        /// What is needed.
        needed: f64,
    },
    /// No screw that is sold joins disc and knob.
    NoScrew {
        /// What it would go through before its thread holds.
        through: f64,
        /// What there is for its thread.
        into: f64,
    },
    /// A part that the latch can do without is larger than the printer, and left out.
    LeftOut {
        /// Which.
        part: PartId,
        /// Its size along x and y, and its height.
        size: [f64; 3],
        /// The bed along x and y, and the printer's height.
        bed: [f64; 3],
    },
    /// A lying pin has a flat.
    FlatBehind {
        /// How wide.
        wide: f64,
    },
    /// Labels are lower than wished for.
    SmallLabels {
        /// How high they are.
        high: f64,
        /// How high they should have been.
        wanted: f64,
    },
    /// Strokes of labels are thinner than the nozzle.
    ThinLabels {
        /// How many labels.
        labels: usize,
        /// The nozzle.
        nozzle: f64,
    },
    /// Marks stay without a label.
    BareMarks {
        /// How many.
        bare: u32,
        /// Of how many.
        marks: u32,
    },
    /// There is no room for a ring round the knob.
    NoRing {
        /// The least height of its labels.
        least: f64,
    },
    /// The post's edges are rounded, as the star's corners print round.
    PostRelieved {
        /// The radius that the star's corners print with.
        corner: f64,
        /// What is taken off the post's edges.
        relief: f64,
        /// How far the disc then turns to either side, degrees.
        backlash_deg: f64,
    },
    /// A standing shank whose layers would shear.
    StandingShank {
        /// Its length.
        long: f64,
        /// Its diameter.
        diameter: f64,
        /// So many diameters would be the most.
        most_diameters: f64,
    },
}
