//! A plane that takes away what lies on one side of it.

use super::camera::Axes;
use crate::mesh::Vector3;

/// A point that lies in the plane counts as a hair below it, as in
/// [`section`](crate::slice::section), so that flat faces in the plane are no riddle.
const HAIR: f64 = 1e-7;

/// Across which axis a plane lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Across {
    /// Across x: a plane that shows y and z.
    X,
    /// Across y: a plane that shows x and z.
    Y,
    /// Across z: a level plane.
    Z,
}

/// Which side of a plane is kept.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kept {
    /// What has less of the axis' coordinate.
    Below,
    /// What has more of it.
    Above,
}

/// A section plane. One whose place is no number cuts nothing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cut {
    /// Its direction.
    pub across: Across,
    /// Where it crosses that axis, mm.
    pub at: f64,
    /// What is left.
    pub kept: Kept,
}

impl Cut {
    /// The side of it from which the cut faces can be seen at this turn: keeps what lies behind.
    pub fn facing(across: Across, at: f64, camera: &super::Camera) -> Self {
        let toward = camera.tamed().axes().toward;
        let kept = if toward[across.axis()] >= 0.0 {
            Kept::Below
        } else {
            Kept::Above
        };
        Self { across, at, kept }
    }

    pub(super) fn sound(cut: Option<Self>) -> Option<Self> {
        cut.filter(|cut| cut.at.is_finite())
    }

    /// Whether a place is taken away.
    pub(super) fn takes(&self, place: Vector3) -> bool {
        let above = place[self.across.axis()] > self.at + HAIR;
        above == (self.kept == Kept::Below)
    }

    /// How far along from `a` to `b`, of which it takes one, it crosses.
    pub(super) fn crossing(&self, a: Vector3, b: Vector3) -> Vector3 {
        let axis = self.across.axis();
        // always reckoned the same way round, so that two facets agree about their common edge
        let (a, b) = if a[axis] <= b[axis] { (a, b) } else { (b, a) };
        let share = (self.at + HAIR - a[axis]) / (b[axis] - a[axis]);
        let share = if share.is_finite() {
            share.clamp(0.0, 1.0)
        } else {
            0.0
        };
        [0, 1, 2].map(|axis| a[axis] + (b[axis] - a[axis]) * share)
    }

    /// The direction out of the cut faces as right, up and toward.
    pub(super) fn outwards(&self, axes: &Axes) -> Vector3 {
        let axis = self.across.axis();
        let sign = match self.kept {
            Kept::Below => 1.0,
            Kept::Above => -1.0,
        };
        [axes.right[axis], axes.up[axis], axes.toward[axis]].map(|value| value * sign)
    }
}

impl Across {
    pub(super) fn axis(self) -> usize {
        match self {
            Self::X => 0,
            Self::Y => 1,
            Self::Z => 2,
        }
    }
}
