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

/// What the slider is made of.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Material {
    /// Solid wood of a species in the table of coefficients.
    Wood {
        /// Common name, as in the table.
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
