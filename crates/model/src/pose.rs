//! Where everything stands: dial pointers and slider.

use crate::Design;

/// One position of the nominal latch.
#[derive(Debug, Clone, PartialEq)]
pub struct Pose {
    /// Pointer of each dial, degrees clockwise from mark 0, seen from outside.
    pub turns_deg: Vec<f64>,
    /// Slider travel u, mm: 0 is shut.
    pub travel: f64,
}

impl Pose {
    /// Slider forward, each dial at the given mark; missing marks count as 0.
    pub fn at_marks(design: &Design, marks: &[u32]) -> Self {
        let turn = |(dial, d): (usize, &crate::Dial)| {
            f64::from(marks.get(dial).copied().unwrap_or(0)) * d.step_deg()
        };
        Self {
            turns_deg: design.dials.iter().enumerate().map(turn).collect(),
            travel: 0.0,
        }
    }

    /// Slider forward, every dial at its mark of the combination.
    pub fn at_combination(design: &Design) -> Self {
        Self::at_marks(design, &design.combination)
    }
}
