//! Units of figures.

/// The unit of a figure.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Unit {
    /// Millimetres.
    Millimetre,
    /// Degrees.
    Degree,
    /// Newtons.
    Newton,
    /// A plain ratio.
    Ratio,
    /// Megapascals.
    Megapascal,
    /// A plain count.
    Count,
}
