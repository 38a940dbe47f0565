//! The box that the lid shuts: its sides, its floor and how the lid comes off.
//!
//! The room inside is [`super::Inside`]; the outside follows from it and from the sides' thickness.

use super::{Material, Sawn};

/// Four sides and a floor, and how the lid comes off them.
#[derive(Debug, Clone, PartialEq)]
pub struct Body {
    /// Thickness of the sides as measured, mm.
    pub thickness: f64,
    /// Species of the sides; their grain runs along their length.
    pub wood: String,
    /// How the sides' boards were cut.
    pub sawn: Sawn,
    /// How the sides meet.
    pub corner: Corner,
    /// What comes off.
    pub lid: LidKind,
    /// Depth of the grooves for floor and top in the sides, mm.
    pub groove: f64,
    /// From the lower edge of the sides up to the underside of the floor, mm.
    pub foot: f64,
    /// The floor.
    pub floor: Floor,
    /// The hinges.
    pub hinge: Hinge,
}

/// How two sides meet at a corner.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Corner {
    /// Both ends cut at 45°.
    #[default]
    Mitred,
    /// The short sides stand between front and back.
    Butted,
    /// As butted, the short sides sunk into a rabbet of half the thickness.
    Rabbeted,
}

/// What comes off as the lid.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub enum LidKind {
    /// The plate alone: it lies on the sides.
    #[default]
    Plate,
    /// A band that is cut off the closed box by one kerf, with the plate in its groove.
    Band {
        /// Height that the sides of the lid keep after the cut, mm.
        height: f64,
    },
}

/// A panel in the sides' grooves.
#[derive(Debug, Clone, PartialEq)]
pub struct Floor {
    /// Thickness as measured, mm; the groove is as wide.
    pub thickness: f64,
    /// What it is made of.
    pub material: Material,
}

/// A pair of butt hinges on the back edge.
#[derive(Debug, Clone, PartialEq)]
pub struct Hinge {
    /// Length along x, mm.
    pub length: f64,
    /// Width of one leaf, from its edge to the middle of the pin, mm.
    pub leaf: f64,
    /// Thickness of one leaf, mm: how deep it is let in.
    pub thickness: f64,
    /// From the outside of the box to the hinge's nearer end, mm.
    pub inset: f64,
}

impl Default for Body {
    fn default() -> Self {
        Self {
            thickness: 12.0,
            wood: "white oak".to_owned(),
            sawn: Sawn::Flat,
            corner: Corner::Mitred,
            lid: LidKind::Plate,
            groove: 5.0,
            foot: 5.0,
            floor: Floor::default(),
            hinge: Hinge::default(),
        }
    }
}

impl Default for Floor {
    fn default() -> Self {
        Self {
            thickness: 6.0,
            material: Material::Plywood,
        }
    }
}

impl Default for Hinge {
    fn default() -> Self {
        Self {
            length: 40.0,
            leaf: 9.0,
            thickness: 1.5,
            inset: 30.0,
        }
    }
}
