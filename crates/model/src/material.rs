//! What a part is made of, as far as its movement with the air goes.

/// How a board was cut from the log.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sawn {
    /// Rings run along the wide face: its width moves tangentially.
    Flat,
    /// Rings stand on the wide face: its width moves radially.
    Quarter,
}

/// The axis along which the fibres run.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Grain {
    /// Along x, the width of the plate.
    AlongX,
    /// Along y, the slider's travel.
    AlongY,
}

/// A wood that the maker has measured: named in the design, found before the table.
///
/// Coefficients are fractions of a size for each per cent of moisture content, as in the table:
/// 0.002 is 0.2 mm on 100 mm.
#[derive(Debug, Clone, PartialEq)]
pub struct OwnWood {
    /// What plate and slider call it.
    pub name: String,
    /// Radial coefficient: the width of a quarter-sawn board.
    pub radial: f64,
    /// Tangential coefficient: the width of a flat-sawn board.
    pub tangential: f64,
}

impl Default for OwnWood {
    /// Moves a little more than any wood of the table, so that what is not known errs to the safe
    /// side.
    fn default() -> Self {
        Self {
            name: String::new(),
            radial: 0.0026,
            tangential: 0.0044,
        }
    }
}

/// What the slider is made of.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Material {
    /// Solid wood of a species in the table of coefficients, or of the maker's own.
    Wood {
        /// Common name, as in the table or in the design's own woods.
        species: String,
        /// How it was cut.
        sawn: Sawn,
        /// Where the fibres run.
        grain: Grain,
    },
    /// Plywood; moves alike in both directions of its face.
    Plywood,
    /// Hardboard; moves alike in both directions of its face.
    Hardboard,
    /// Medium density fibreboard; moves alike in both directions of its face.
    Mdf,
    /// A printed plastic; moves with warmth, not with damp.
    Printed,
}
