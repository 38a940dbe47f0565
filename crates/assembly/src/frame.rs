//! Where the four sides of the box stand under the plate; what counts as a size and as a place.

use latchwright_model::Design;

use crate::joinery::front_face;

/// One of the two directions of a sheet or of the lid seen from outside.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Axis {
    /// To the right.
    X,
    /// Up on a sheet, towards the hinge on the lid.
    Y,
}

impl Axis {
    /// Its letter.
    pub const fn letter(self) -> char {
        match self {
            Self::X => 'x',
            Self::Y => 'y',
        }
    }
}

/// From where to where something reaches along one axis, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Across {
    /// The lower end.
    pub from: f64,
    /// The upper end.
    pub to: f64,
}

impl Across {
    /// How much that is, mm.
    pub fn size(self) -> f64 {
        self.to - self.from
    }

    /// Its middle.
    pub fn middle(self) -> f64 {
        f64::midpoint(self.from, self.to)
    }

    /// What two stretches have in common; `None` where they are apart.
    pub fn common(self, other: Self) -> Option<Self> {
        let (from, to) = (self.from.max(other.from), self.to.min(other.to));
        (from < to).then_some(Self { from, to })
    }
}

/// The front side along y in the design's frame. `None` where the box has no size.
pub fn front_side(design: &Design) -> Option<Across> {
    let thickness = design.body.thickness;
    let from = front_face(design);
    let to = from + thickness;
    (from.is_finite() && to > from).then_some(Across { from, to })
}

/// Nothing smaller is a size on a bench, mm.
pub const LEAST_SIZE: f64 = 1e-3;
/// Nothing larger is a size on a bench, mm.
pub const MOST_SIZE: f64 = 1e4;

/// Whether all are sizes that a bench can hold.
pub fn sizes(sizes: &[f64]) -> bool {
    let sound = |size: &f64| (LEAST_SIZE..=MOST_SIZE).contains(size);
    sizes.iter().all(sound)
}

/// Whether all are places within ten metres.
pub fn places(places: &[f64]) -> bool {
    places.iter().all(|place| (-1e4..=1e4).contains(place))
}
